//! Tests against independent libraries, in a pinned Python environment made under `target/`:
//! `cargo test --features reference`. README.md lists each outside source and what it checks.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "helpers of tests: a failure is the test's failure"
)]

mod random_houses;
mod samples;
mod venv;
