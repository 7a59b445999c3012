//! Findings as facts: what the program has to say to its user, each with a code, its numbers and names,
//! and a place. No sentence: those are made in `wording::findings`.
//!
//! [`FindingKind`] is the register of all there are. [`Findings`] is the one in-out parameter of the
//! flow, only ever added to. [`Refusal`] is how the head of the flow (read, normalize, extract, job) says
//! that it cannot go on.

pub mod by_hand;
pub mod corners;
pub mod drawing;
pub mod files;
pub mod formats;
mod gathered;
mod group;
pub mod house;
pub mod job;
pub mod job_value;
mod keep_faults;
pub mod laying;
pub mod letters;
pub mod lines;
pub mod prices;
pub mod record;
pub mod register;
pub mod seen;
pub mod severity;
mod subject;
pub mod taped;
pub mod views;

pub use self::gathered::{Gathered, Kind, gathered};
pub use self::record::{Finding, Findings, Refusal};
pub use self::register::{FindingCode, FindingKind};
pub use self::severity::{Audience, Severity};
pub use self::subject::Subject;
