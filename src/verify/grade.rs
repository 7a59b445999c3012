//! Height of finished grade.

use crate::layout::wall::LaidElevation;

/// Height of grade at `x`, level beyond its ends.
pub(super) fn grade_at(e: &LaidElevation, x: f64) -> Option<f64> {
    let (first, last) = (e.grade.first()?, e.grade.last()?);
    if x <= first[0] {
        return Some(first[1]);
    }
    if x >= last[0] {
        return Some(last[1]);
    }
    let pair = e.grade.windows(2).find(|p| p[0][0] <= x && x <= p[1][0] && p[1][0] > p[0][0])?;
    Some(pair[0][1] + (x - pair[0][0]) / (pair[1][0] - pair[0][0]) * (pair[1][1] - pair[0][1]))
}
