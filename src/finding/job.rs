//! What is wrong with a job or its file: findings of `job` and of what reads it.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::group::group;
use super::job_value::ValueFault;

/// A place in a text file.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
pub struct FilePlace {
    /// Line, from 1.
    pub line: usize,
    /// Column, from 1, in characters.
    pub column: usize,
}

/// A key that no job has.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct UnknownKey {
    /// Where it stands.
    #[serde(flatten)]
    pub place: FilePlace,
    /// The key, dotted.
    pub key: String,
    /// The key that may be meant.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub nearest: Option<String>,
}

/// Why a file that a job extends cannot be read.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "why", rename_all = "kebab-case")]
pub enum ExtendsFault {
    /// The system gives none.
    Unreadable {
        /// What the system says.
        system_says: String,
    },
    /// It comes round to a file that is read already.
    Circle {
        /// The files, each extending the next.
        through: Vec<String>,
    },
    /// More files than are read.
    TooMany {
        /// The most.
        most: usize,
    },
    /// Only the text of one file is at hand, as on the page.
    NoFiles,
}

/// What is wrong with a job file before its values are looked at.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "fault", rename_all = "kebab-case")]
pub enum JobFileFault {
    /// It is no TOML, or a value is of the wrong form.
    Form {
        /// Where.
        #[serde(skip_serializing_if = "Option::is_none")]
        place: Option<FilePlace>,
        /// The key whose value it is, dotted.
        #[serde(skip_serializing_if = "Option::is_none")]
        key: Option<String>,
        /// What the parser says.
        parser_says: String,
    },
    /// Keys that no job has.
    UnknownKeys {
        /// The first of them.
        keys: Vec<UnknownKey>,
        /// How many more.
        more: usize,
    },
    /// The file that it extends cannot be read.
    Extends {
        /// Where it names that file.
        place: FilePlace,
        /// The file as it is written there.
        extends: String,
        /// Why.
        why: ExtendsFault,
    },
    /// A key stands there twice, as it is spelled now and as it was before.
    GivenTwice {
        /// Where it is spelled as before.
        place: FilePlace,
        /// The key as it is spelled now, dotted.
        key: String,
        /// Its last word as it was before.
        old: String,
    },
}

/// Where a job's values come from.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "given_by", rename_all = "kebab-case")]
pub enum JobSource {
    /// A job file.
    File {
        /// Its name.
        file: String,
    },
    /// Options of the command.
    CommandLine,
    /// A program that calls the library.
    Program,
}

/// A value no layout can be made with.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct PlacedFault {
    /// Where it stands, where that is known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub place: Option<FilePlace>,
    /// The zone whose product it is about, from 0.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub zone: Option<usize>,
    /// What is wrong.
    #[serde(flatten)]
    pub fault: ValueFault,
}

group! {
    /// What is wrong with a job.
    JobFinding, JobCode {
        /// The job file cannot be read.
        JobUnreadable "job-unreadable", Error, Office {
            /// The file.
            file: String,
            /// What is wrong.
            #[serde(flatten)]
            fault: JobFileFault,
        }
        /// A house is given by a job that names no drawing.
        NoDrawing "job-no-drawing", Error, Office {
            /// The file.
            file: String,
        }
        /// A job stands beside the drawing under its name, and none is given.
        NotGiven "job-not-given", Warning, Office {
            /// The file.
            file: String,
        }
        /// A key or a word of the job file is spelled as it was before; it is read.
        OldSpelling "job-old-spelling", Info, Office {
            /// The file.
            file: String,
            /// Where.
            place: FilePlace,
            /// The key as it is spelled now, or whose value it is, dotted.
            key: String,
            /// The word in the file.
            old: String,
            /// How it is spelled now.
            new: String,
        }
        /// Values of the job are such that no layout can be made with them.
        JobValue "job-value", Error, Office {
            /// Where they come from.
            #[serde(flatten)]
            source: JobSource,
            /// The first of them.
            faults: Vec<PlacedFault>,
            /// How many more.
            more: usize,
        }
    }
}
