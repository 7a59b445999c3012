//! Files and folders: findings of the command and of the writers.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::group::group;
pub use super::keep_faults::{KeepFault, StockFault, TicksFault};

/// What could not be written or looked into.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "target", rename_all = "kebab-case")]
pub enum OutputTarget {
    /// A folder that is replaced whole: what stood there is untouched.
    WholeFolder {
        /// The folder.
        path: String,
    },
    /// Files in a folder with others.
    FilesInFolder {
        /// The folder.
        path: String,
    },
    /// A folder that cannot be looked into.
    UnreadableFolder {
        /// The folder.
        path: String,
    },
    /// Standard output.
    StandardOutput,
}

/// What keeps a name from standing for one file or folder on every system.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum NameFault {
    /// It is empty, or says no name.
    NoName,
    /// It holds a letter that no name may hold.
    Letter {
        /// The letter.
        letter: char,
    },
    /// Windows keeps it for a device.
    Device,
    /// It ends in a period or a blank, which Windows takes off.
    End,
}

/// Why a place for results is not taken.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "reason", rename_all = "kebab-case")]
pub enum OutputRefusal {
    /// It is a file, not a folder.
    NotAFolder {
        /// The path.
        path: String,
    },
    /// A job file stands there already: it is somebody's.
    JobStands {
        /// The path.
        path: String,
    },
    /// A folder stands where a file is to be written.
    IsAFolder {
        /// The path.
        path: String,
    },
    /// A part of the path stands for no folder of that name.
    BadName {
        /// The path.
        path: String,
        /// The part.
        part: String,
        /// What is wrong with it.
        name_fault: NameFault,
    },
    /// The file is what the run reads.
    IsASource {
        /// The path.
        path: String,
    },
    /// What the run reads lies in the folder.
    HoldsASource {
        /// The folder.
        path: String,
        /// What lies in it.
        source: String,
    },
    /// It is the folder the program was started in.
    IsWorkingFolder {
        /// The path.
        path: String,
    },
    /// The folder holds what this program did not write, or what was changed since.
    HoldsOtherFiles {
        /// The folder.
        path: String,
        /// What it did not write, by path in the folder; a folder ends in a slash.
        strangers: Vec<String>,
        /// What it wrote and what was changed since.
        edited: Vec<String>,
    },
    /// The folder, by default that of the drawing, holds the results of another one.
    HoldsAnotherDrawing {
        /// The folder.
        path: String,
        /// The drawing whose results are there.
        drawing: String,
    },
    /// Another run is writing into it.
    AnotherRun {
        /// The folder.
        path: String,
    },
    /// Something in it was changed while the results were written.
    ChangedMeanwhile {
        /// The folder.
        path: String,
    },
}

/// Why an overlay is a drawing of its own.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum OverlayReason {
    /// The drawing is a binary DXF.
    BinarySource,
    /// The drawing has no complete section of entities.
    NoEntitiesSection,
    /// The drawing is a DWG.
    DwgSource,
    /// The drawing is text in UTF-16, which no DXF is.
    WideSource,
    /// The drawing is a PDF, whose pages have the overlay too.
    PdfSource,
    /// The drawing is a PDF that is locked or broken at its end, so that nothing can be added to it.
    PdfEnd,
}

/// What a writer failed at.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "fault", rename_all = "kebab-case")]
pub enum WriterFault {
    /// A sheet has no size.
    SheetWithoutSize,
    /// A sheet cannot be drawn on its page.
    SheetNotDrawn,
    /// A picture has no size, or one beyond memory.
    PictureWithoutSize,
    /// The library that makes the format refused.
    Library {
        /// What it says.
        library_says: String,
    },
}

impl WriterFault {
    /// What a library said.
    pub fn of(library_says: impl std::fmt::Display) -> Self {
        WriterFault::Library { library_says: library_says.to_string() }
    }
}

/// Why the page that holds the program is not made.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "reason", rename_all = "kebab-case")]
pub enum PageFault {
    /// This program was built without what makes it.
    LeftOut,
    /// The source is neither where it was built nor in the folders above the working folder.
    NoSource,
    /// No cargo to build with.
    NoCargo {
        /// What the system says.
        system_says: String,
    },
    /// The library was not built for this target; cargo has said why.
    NotBuilt {
        /// The target.
        target: String,
    },
    /// The library that was built cannot be bound to a page.
    NotBound {
        /// What the tool says.
        tool_says: String,
    },
}

group! {
    /// What could not be read or written.
    FileFinding, FileCode {
        /// A file cannot be read.
        FileUnreadable "file-unreadable", Error, Office {
            /// The path.
            path: String,
            /// What the system says.
            system_says: String,
        }
        /// Results cannot be written.
        OutFailed "out-failed", Error, Office {
            /// Where to.
            #[serde(flatten)]
            target: OutputTarget,
            /// What the system says.
            system_says: String,
        }
        /// Results would be put in the place of something else.
        OutRefused "out-refused", Error, Office {
            /// Why.
            #[serde(flatten)]
            refusal: OutputRefusal,
        }
        /// Two houses of a call would have one folder.
        HousesAlike "houses-alike", Error, Office {
            /// The folder.
            folder: String,
            /// One of them.
            one: String,
            /// The other.
            other: String,
        }
        /// There is nothing to lay out.
        NoHouses "no-houses", Error, Office {
            /// Where it was looked for.
            path: String,
        }
        /// An option is for one house, and there are several.
        OneHouseAlone "one-house-alone", Error, Office {
            /// The option.
            option: String,
        }
        /// A result cannot be made into its format.
        WriteFailed "write-failed", Error, Office {
            /// What the writer failed at.
            #[serde(flatten)]
            fault: WriterFault,
        }
        /// The system gives no threads.
        ThreadsMissing "threads-missing", Error, Office {
            /// How many are wanted at once.
            wanted: usize,
            /// What the system says.
            system_says: String,
        }
        /// The page that holds the program is not made.
        PageNotMade "page-not-made", Error, Office {
            /// Why.
            #[serde(flatten)]
            fault: PageFault,
        }
        /// A file is no layout of this version.
        LayoutFormat "layout-format", Error, Office {
            /// What it says it is, where it says so.
            found: Option<String>,
            /// What this version reads and writes.
            expected: String,
        }
        /// A file says it is a layout and is damaged.
        LayoutUnreadable "layout-unreadable", Error, Office {
            /// Line of the fault, from 1; 0 where it has none.
            line: usize,
            /// Its column.
            column: usize,
            /// What the reader says.
            reader_says: String,
        }
        /// A folder that should hold a layout holds none.
        NoLayoutFolder "no-layout-folder", Error, Office {
            /// The folder, or what stands there.
            path: String,
        }
        /// Nothing can be held of an earlier layout.
        LayoutNotKept "layout-not-kept", Error, Office {
            /// Why.
            #[serde(flatten)]
            fault: KeepFault,
        }
        /// A list of what lies on the site cannot be read.
        StockUnreadable "stock-unreadable", Error, Office {
            /// The file.
            file: String,
            /// Line, from 1.
            line: usize,
            /// Column, from 1.
            column: usize,
            /// What is wrong.
            #[serde(flatten)]
            fault: StockFault,
        }
        /// Saved ticks cannot be used.
        TicksUnreadable "ticks-unreadable", Error, Office {
            /// The file.
            file: String,
            /// What is wrong.
            #[serde(flatten)]
            fault: TicksFault,
        }
        /// The overlay is no copy of the drawing.
        OverlayApart "overlay-apart", Info, Office {
            /// Why.
            reason: OverlayReason,
        }
    }
}
