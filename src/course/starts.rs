//! Where siding may start: over the base of a wall and over finished grade.

use crate::geom::tol::{SAME, snap};
use crate::geom::vocabulary::Point;
use crate::job::Job;
use crate::model::house::{DrawnElevation, DrawnWall, EdgeKind, House};

/// The lowest height at which siding may start anywhere on the house (`LayoutFact::LowestStart`,
/// `TrimFact::OneLevelLine`: find the lowest point, strike one level line round the house).
pub(super) fn lowest(house: &House, job: &Job) -> Option<f64> {
    let (grade, ledge) = (job.courses.clear_of_grade, job.clearances().ledge);
    let starts = house
        .elevations
        .iter()
        .flat_map(|e| e.walls.iter().filter_map(|w| lowest_start(e, w, grade)));
    // A house on a stone base all round starts on it.
    let edges = house.elevations.iter().flat_map(|e| &e.walls).flat_map(|w| &w.edges);
    let stone = edges.filter(|e| e.kind == EdgeKind::BareTop).map(|e| e.from.y.min(e.to.y) + ledge);
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
    fn grade_between_its_points() {
        let grade = [Point::new(0.0, -20.0), Point::new(100.0, 0.0)];
        assert_eq!(grade_at(&grade, 50.0), Some(-10.0));
        assert_eq!(grade_at(&grade, -5.0), Some(-20.0));
        assert_eq!(grade_at(&[], 0.0), None);
    }
}
