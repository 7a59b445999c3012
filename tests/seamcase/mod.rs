//! Seam cases outside the drawings: houses as lists of runs, a made house of many runs, and a check
//! of answers that shares no code with the search.

#![allow(dead_code, reason = "the bench and the tests each use a part")]

pub(crate) mod cases;
pub(crate) mod check;
pub(crate) mod made;
