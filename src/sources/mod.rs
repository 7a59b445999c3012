//! What the trade, the codes and the standards say: each fact by a name of its own, with its value, who
//! published it, in which section, and how sure it is.
//!
//! A comment beside a default or a check cites the fact by name, `TrimFact::PostSplice`; who reads a
//! schema, a job file, a report or a takeoff is told the source by its title.

pub mod drawing;
pub mod examples;
pub mod layout;
pub mod nails;
pub mod published;
pub mod record;
pub mod safety;
pub mod siding;
pub mod takeoff;
pub mod trim;
