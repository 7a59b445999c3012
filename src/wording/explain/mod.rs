//! What each code of a finding means, at length: why it is raised, what to do, and an example.

mod by_hand;
mod corners;
mod drawing;
mod entry;
mod files;
mod house;
mod job;
mod laying;
mod letters;
mod lines;
mod prices;
mod taped;
mod views;

pub use self::entry::Explanation;
use crate::finding::{Audience, FindingCode, Severity};

/// Heading over the remedy of a finding.
pub const REMEDY: &str = "What to do";

/// What a code means.
pub fn explanation(code: FindingCode) -> &'static Explanation {
    match code {
        FindingCode::Drawing(code) => drawing::explanation(code),
        FindingCode::Lines(code) => lines::explanation(code),
        FindingCode::Views(code) => views::explanation(code),
        FindingCode::House(code) => house::explanation(code),
        FindingCode::Hand(code) => by_hand::explanation(code),
        FindingCode::Corners(code) => corners::explanation(code),
        FindingCode::Laying(code) => laying::explanation(code),
        FindingCode::Job(code) => job::explanation(code),
        FindingCode::Prices(code) => prices::explanation(code),
        FindingCode::Taped(code) => taped::explanation(code),
        FindingCode::Letters(code) => letters::explanation(code),
        FindingCode::Files(code) => files::explanation(code),
    }
}

/// How much a finding matters, in words.
pub fn severity(severity: Severity) -> &'static str {
    match severity {
        Severity::Info => "note: the layout stands",
        Severity::Warning => "warning: the layout stands, but someone should look",
        Severity::Error => "error: nothing is laid out",
    }
}

/// Who must act, in words.
pub fn audience(audience: Audience) -> &'static str {
    match audience {
        Audience::Architect => "whoever drew the house",
        Audience::Office => "whoever prepares the job, runs the program and orders",
        Audience::Crew => "whoever cuts and hangs the siding",
    }
}

/// Head of the list of codes by whom they are for.
pub const LIST_END: &str = "`lapwright explain CODE` tells more of one.";

/// What is said of a code that there is not.
pub fn unknown(code: &str, nearest: Option<&str>) -> String {
    let meant = nearest.map_or(String::new(), |n| format!(" Did you mean {n}?"));
    format!("there is no code `{code}`.{meant} `lapwright explain` lists all.")
}
