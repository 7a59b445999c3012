//! One stick for the whole house: the datum and the butt lines above it (FACTS OT-01, OT-03).

use super::datum::Found;
use crate::geom::tol::{SAME, snap};
use crate::geom::vocabulary::Point;
use crate::job::{CourseRules, Job};
use crate::model::course::StoryPole;
use crate::model::house::{DrawnElevation, DrawnWall, EdgeKind, House};
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

/// The lowest height at which siding may start anywhere on the house (FACTS OT-02, SD-92: find the
/// lowest point, strike one level line round the house).
pub(super) fn lowest(house: &House, rules: &CourseRules) -> Option<f64> {
    let starts = house
        .elevations
        .iter()
        .flat_map(|e| e.walls.iter().filter_map(|w| lowest_start(e, w, rules.clear_of_grade)));
    // A house on a stone base all round starts on it.
    let edges = house.elevations.iter().flat_map(|e| &e.walls).flat_map(|w| &w.edges);
    let stone = edges.filter(|e| e.kind == EdgeKind::BareTop).map(|e| e.from.y.min(e.to.y));
    starts.min_by(f64::total_cmp).or_else(|| stone.min_by(f64::total_cmp)).map(snap)
}

/// The lowest height at which this wall's siding may start: its base, or grade plus clearance
/// where that is higher.
fn lowest_start(elevation: &DrawnElevation, wall: &DrawnWall, clear: f64) -> Option<f64> {
    let bases = wall.edges.iter().filter(|e| e.kind == EdgeKind::Base);
    let starts = bases.flat_map(|edge| {
        let (x0, x1) = (edge.from.x.min(edge.to.x), edge.from.x.max(edge.to.x));
        let ends = [Point::new(x0, edge.from.y), Point::new(x1, edge.to.y)];
        let turns = elevation.grade.iter().filter(move |g| g.x > x0 && g.x < x1);
        let at =
            |x: f64, base: f64| grade_at(&elevation.grade, x).map_or(base, |g| base.max(g + clear));
        let mut out: Vec<f64> = ends.iter().map(|p| at(p.x, p.y)).collect();
        out.extend(turns.map(|g| at(g.x, edge.from.y)));
        out
    });
    starts.min_by(f64::total_cmp)
}

/// Height of finished grade at `x`; beyond its ends the nearest end's height. `None` without one.
pub fn grade_at(grade: &[Point], x: f64) -> Option<f64> {
    let first = grade.first()?;
    let last = grade.last()?;
    if x <= first.x + SAME {
        return Some(first.y);
    }
    if x >= last.x - SAME {
        return Some(last.y);
    }
    let pair = grade.windows(2).find(|w| w[0].x <= x && x <= w[1].x)?;
    let run = pair[1].x - pair[0].x;
    let along = if run > 0.0 { (x - pair[0].x) / run } else { 0.0 };
    Some(pair[0].y + along * (pair[1].y - pair[0].y))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_shift_of_four_inches_brings_sill_and_head_to_course_lines() {
        // FACTS WY-11: double 4 from 0: sill 36 at course 4.5, head 84 at 10.5; shifted 4 in both
        // fall on butt lines (40 / 8 = 5, 88 / 8 = 11).
        let at = |datum: f64, y: f64| (y - datum) / 8.0;
        assert_eq!((at(0.0, 36.0), at(0.0, 84.0)), (4.5, 10.5));
        let pole = StoryPole { datum: -4.0, exposure: 8.0, ..Default::default() };
        assert_eq!((pole.butt(5), pole.butt(11)), (36.0, 84.0));
        assert_eq!(pole.course_at(36.0), 5);
        assert_eq!(pole.course_at(35.9), 4);
    }

    #[test]
    fn grade_between_its_points() {
        let grade = [Point::new(0.0, -20.0), Point::new(100.0, 0.0)];
        assert_eq!(grade_at(&grade, 50.0), Some(-10.0));
        assert_eq!(grade_at(&grade, -5.0), Some(-20.0));
        assert_eq!(grade_at(&[], 0.0), None);
    }
}
