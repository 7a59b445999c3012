//! Checks against general-purpose Python libraries, ezdxf, shapely and pypdf, in an environment of
//! pinned versions that this test makes under `target/`.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::disallowed_types,
    clippy::disallowed_methods,
    reason = "a test or bench may stop at the first thing that is not as it should be"
)]

#[path = "../architect/mod.rs"]
mod architect;
mod architect_drawings;
mod checks;
#[cfg(feature = "corpus")]
mod corpus;
#[path = "../cutcase/mod.rs"]
mod cutcase;
mod dwg_mutants;
#[path = "../dwgcase/mod.rs"]
#[allow(dead_code, reason = "of the small house only its DWG and what changes it are used here")]
mod dwgcase;
mod estimates;
#[path = "../jobcase/mod.rs"]
mod jobcase;
#[path = "../noise/mod.rs"]
mod noise;
mod noisy_houses;
mod prints;
mod random_houses;
mod random_jobs;
mod raw_ways;
#[path = "../taping/mod.rs"]
mod taping;
mod tapings;
mod truth;
mod venv;
#[path = "../watched/mod.rs"]
mod watched;
mod whole;
