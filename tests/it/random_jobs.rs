//! Any job that is accepted keeps every rule of the check, unless it names a conflict that is proven:
//! settings drawn from the bounds of the schema, over small drawings.
//!
//! `LAPWRIGHT_JOBS=2000` takes as many instead of 200, of 2,000 in the reference tests; `LAPWRIGHT_FIRST_JOB` is the first seed.
//! `LAPWRIGHT_JOB_SEEDS=458,486` takes these. What breaks a rule is written into the folder of
//! `LAPWRIGHT_JOBS_KEPT`, drawing and job.

use crate::jobcase::{case, run};

#[test]
fn jobs_drawn_from_the_schema_keep_every_rule() {
    run::hold(200);
}

/// Steps of grade and over roofs of 1/64 in, under the 1/50 in by which sides reach what they border, beside
/// level sides (212, 1677), and a block that bites a course by 1/128 in (243).
#[test]
fn hairs_in_walls_keep_every_rule() {
    run::hold_these(&[212, 243, 1677]);
}

#[test]
fn a_seed_is_one_case() {
    for seed in [1, 7, 4_000_000_000] {
        let (one, two) = (case(seed), case(seed));
        assert!(one.text == two.text && one.dxf == two.dxf, "{seed}");
        assert_ne!(one.dxf, case(seed + 1).dxf);
    }
}
