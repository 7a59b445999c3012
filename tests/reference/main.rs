//! Checks against general-purpose Python libraries, ezdxf, shapely and pypdf, in an environment of
//! pinned versions that this test makes under `target/`.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "helpers of tests: a failure is the test's failure"
)]

mod checks;
mod random_houses;
mod truth;
mod venv;
