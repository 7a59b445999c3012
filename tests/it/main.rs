//! Integration tests, one binary.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::disallowed_types,
    clippy::disallowed_methods,
    reason = "a test or bench may stop at the first thing that is not as it should be"
)]

mod all_off;
#[path = "../architect/mod.rs"]
mod architect;
mod architect_drawings;
mod as_drawn;
mod bad_input;
mod bare_wall;
mod bars;
mod bays;
mod board_rules;
mod boards_in_courses;
mod bounds;
mod breaks;
mod built;
mod by_hand;
mod called_sizes;
mod checking;
mod commands;
mod contours;
mod corners;
mod counting_rules;
mod courses_at_slopes;
mod crumbs;
mod curved_heads;
#[path = "../cutcase/mod.rs"]
mod cutcase;
mod cuts;
mod datum;
mod decor;
mod details;
mod doubted;
mod drafting;
#[path = "../noise/mod.rs"]
mod drafting_noise;
mod drawing_noise;
mod drawn_ends;
mod drawn_shapes;
mod drawn_siding;
mod drawn_units;
mod dwg;
#[path = "../dwgcase/mod.rs"]
mod dwgcase;
mod estimate;
mod explained;
mod extended_jobs;
mod facts;
mod facts_curves;
mod facts_pitch;
mod facts_runs;
mod facts_tables;
mod faults;
mod faults_more;
mod faults_shaped;
#[path = "../few_threads/mod.rs"]
mod few_threads;
mod fillers;
mod found;
mod further_lines;
mod fuzz_words;
mod given_lengths;
mod golden;
mod hairlines;
mod halves;
mod hand;
mod hands;
mod heard;
mod held;
mod hems;
#[path = "../hostile/mod.rs"]
mod hostile;
mod house;
mod inflate;
mod jagged_grade;
#[path = "../jobcase/mod.rs"]
mod jobcase;
mod keeping;
mod kind_words;
mod layouts;
mod leaning;
mod letters;
mod level_flashing;
mod limits;
mod long_cuts;
mod many_houses;
mod measures;
mod measures_bands;
mod measures_ways;
mod mixed;
mod model_houses;
mod no_openings;
mod no_sentence;
mod no_walls;
mod odd_places;
mod odd_settings;
mod old_keys;
mod one_and_many;
mod one_length;
mod one_order;
mod overlay;
mod own_files;
mod pasted;
mod pattern_prices;
mod patterns_beside;
mod pdf_in;
mod pdf_overlay;
mod plain_words;
mod planes;
mod polygons;
mod products;
mod questions;
mod quoted;
mod raised;
mod raising_inputs;
mod random_jobs;
mod random_sheets;
mod read_back;
mod reading;
mod recount;
mod recount_estimate;
mod recount_flashing;
mod regions;
mod review;
mod revision_files;
mod revisions;
mod roof_slopes;
mod samples;
#[path = "../seamcase/mod.rs"]
mod seamcase;
mod seams;
mod seams_at_openings;
mod set_backs;
mod shapes;
mod shared_lines;
mod sheet_titles;
mod sheets;
mod small_walls;
#[path = "../smallcase/mod.rs"]
mod smallcase;
mod sources;
mod spanish;
mod spares;
mod start;
mod support;
mod terminal;
mod told_together;
mod trim_cutting;
mod trim_rules;
mod turned_views;
mod under_boards;
mod unreadable;
mod unused;
mod waiting;
mod ways;
mod wording;
mod work;
mod workbook;
mod workbook_languages;
mod writing;
