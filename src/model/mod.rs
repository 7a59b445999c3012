//! Plain data: one noun a file, no logic beyond invariants.

pub mod drawing;
pub mod seam;
