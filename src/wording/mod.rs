//! The one room that makes sentences of facts, for sheets, tables, reports and the terminal. Nothing
//! is computed here: what a sentence says comes in as data.

pub mod cautions;
pub mod checks;
pub mod explain;
pub mod figure;
pub mod findings;
pub mod layers;
pub mod lists;
pub mod movement;
pub mod nails;
pub mod names;
pub mod pole;
pub mod proof;
pub mod restricted;
pub mod seams;
pub mod siding;
pub mod source;
pub mod sources;
pub mod stocks;
pub mod takeoff;
pub mod trim;
pub mod work;
