//! One stick for the whole house: the datum and the butt lines above it (`LayoutFact::OneDatum`,
//! `LayoutFact::StoryPole`).

use super::datum::Found;
use crate::geom::tol::{SAME, snap};
use crate::job::Job;
use crate::model::course::StoryPole;
use crate::model::house::House;
use crate::model::pole::DatumReason;

/// The story pole: the job's datum, else the best the search found; the floor reference line for a
/// house without a start.
pub fn story_pole(house: &House, found: &Found, job: &Job) -> StoryPole {
    let (datum, reason) = match (job.courses.datum, found.choices.first()) {
        (Some(fixed), _) => (snap(fixed), fixed_by(house)),
        (None, Some(best)) => {
            let below = if best.below.abs() <= SAME { 0.0 } else { best.below };
            (best.datum, DatumReason::Searched { below, tried: found.tried })
        }
        (None, None) => (0.0, DatumReason::FloorReference),
    };
    StoryPole { datum, exposure: job.product.exposure, reason, ..Default::default() }
}

/// Who fixes a datum: a zone laid out by itself takes the house's.
pub(super) fn fixed_by(house: &House) -> DatumReason {
    if house.zone.is_some() { DatumReason::OfTheHouse } else { DatumReason::FixedByJob }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_shift_of_four_inches_brings_sill_and_head_to_course_lines() {
        // Example::DatumShift: double 4 from 0: sill 36 at course 4.5, head 84 at 10.5; shifted 4 in
        // both fall on butt lines (40 / 8 = 5, 88 / 8 = 11).
        let at = |datum: f64, y: f64| (y - datum) / 8.0;
        assert_eq!((at(0.0, 36.0), at(0.0, 84.0)), (4.5, 10.5));
        let pole = StoryPole { datum: -4.0, exposure: 8.0, ..Default::default() };
        assert_eq!((pole.butt(5), pole.butt(11)), (36.0, 84.0));
        assert_eq!(pole.course_at(36.0), 5);
        assert_eq!(pole.course_at(35.9), 4);
    }
}
