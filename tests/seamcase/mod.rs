//! Seam cases outside the drawings: houses as lists of runs, a made house of many runs, and a check
//! of answers that shares no code with the search.

pub(crate) mod cases;
pub(crate) mod check;
pub(crate) mod made;
