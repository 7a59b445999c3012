//! The jobs of `tests/it/random_jobs.rs`, ten times as many.

use crate::jobcase::run;

#[test]
fn jobs_drawn_from_the_schema_keep_every_rule() {
    run::hold(2000);
}
