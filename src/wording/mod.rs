//! The one room that makes sentences of facts, for sheets, tables, reports and the terminal. Nothing
//! is computed here: what a sentence says comes in as data.

pub mod cautions;
pub mod checks;
pub mod command;
pub mod convention;
pub mod corners;
pub mod cover;
pub mod csv_columns;
pub mod cuts;
pub mod explain;
pub mod figure;
pub mod findings;
pub mod first_job;
pub mod help;
pub mod layers;
pub mod legend;
pub mod lists;
pub mod movement;
pub mod nails;
pub mod names;
pub mod pieces;
pub mod pole;
pub mod proof;
pub mod report;
pub mod restricted;
pub mod seams;
pub mod sheet_lengths;
pub mod sheets;
pub mod siding;
pub mod source;
pub mod sources;
pub mod stocks;
pub mod tables;
pub mod takeoff;
pub mod trim;
pub mod work;
