//! The one room that makes sentences of facts, for sheets, tables, reports and the terminal. Nothing
//! is computed here: what a sentence says comes in as data.
//!
//! What stands on sheets is said in every [`Language`](crate::language::Language), each sentence beside its
//! translation, so that none can be left out: a word is a [`Said`](crate::language::Said), a sentence with figures
//! a `say!`, whose texts must name the same figures or it does not compile.

/// A sentence with figures, in the language asked for. A figure in order, `{}`, that one of the texts leaves out
/// is refused by the compiler.
macro_rules! say {
    ($lang:expr, $en:literal, $es:literal $(, $figure:expr)* $(,)?) => {
        match $lang {
            crate::language::Language::English => format!($en $(, $figure)*),
            crate::language::Language::Spanish => format!($es $(, $figure)*),
        }
    };
}

pub mod bound_method;
pub mod cautions;
pub mod checks;
pub mod command;
pub mod compare;
pub mod compare_tables;
pub mod convention;
pub mod corners;
pub mod cover;
pub mod cover_findings;
pub mod crew_tables;
pub mod csv_columns;
pub mod cuts;
pub mod datum_effects;
pub mod detail_notes;
pub mod details;
pub mod drawn_edges;
pub mod explain;
pub mod figure;
pub mod findings;
pub mod first_job;
pub mod help;
pub mod houses;
pub mod kept;
pub mod layers;
pub mod legend;
pub mod lists;
pub mod measures;
pub mod movement;
pub mod nails;
pub mod names;
pub mod notches;
pub mod nouns;
pub mod offcuts;
#[cfg(feature = "page")]
pub mod page;
pub mod patterns;
pub mod pieces;
pub mod pole;
pub mod problems;
pub mod proof;
pub mod quick_start;
pub mod report;
pub mod restricted;
pub mod review;
pub mod seams;
pub mod sheet_lengths;
pub mod sheets;
pub mod siding;
pub mod source;
pub mod sources;
pub mod stocks;
pub mod tables;
pub mod takeoff;
pub mod terms;
pub mod told_settings;
pub mod trim;
pub mod wall_sheets;
pub mod work;
