//! How much of what is drawn of a facade its walls cover: where that is little, some of them may not have
//! been seen.

use crate::finding::house::HouseFinding;
use crate::finding::{Finding, Findings};
use crate::geom::polygon::{bounds, total_area};
use crate::geom::vocabulary::{Point, Rect};
use crate::model::house::{DrawnElevation, House, WallWay};
use crate::model::linework::Role;

/// Walls taken from drawn siding that cover less than this of a facade, percent, are told: of our own
/// choosing, no source. Half of a house with stone, roofs and glass is sided, and a quarter seldom is not.
const LITTLE: f64 = 25.0;

/// Narrower parts between walls and beside them hold no wall, inches: of our own choosing, no source.
const NARROWEST: f64 = 36.0;

/// Tells of elevations on which drawn siding covers little of what is drawn.
pub(super) fn report(house: &House, findings: &mut Findings) {
    for e in &house.elevations {
        let of_siding = e.walls.iter().all(|w| w.way == WallWay::Hatch) && !e.walls.is_empty();
        let percent = percent(e);
        if of_siding && percent < LITTLE {
            let kind = HouseFinding::FacadeShare { percent };
            let mut places = bare(e);
            let at = places.remove(0);
            findings.push(Finding::new(kind).at(at).also_at(places).on(e.name.as_str()));
        }
    }
}

/// Between walls of an elevation and beside them, where others may be missing, the widest first: drawing units. Where
/// walls stand from end to end, their middle.
fn bare(e: &DrawnElevation) -> Vec<Point> {
    let all = walls(e).map_or(drawn(e), |w| w.union(drawn(e)));
    let mut boxes: Vec<Rect> = e.walls.iter().filter_map(|w| bounds(&w.outline)).collect();
    boxes.sort_by(|a, b| a.x0.total_cmp(&b.x0));
    let mut gaps: Vec<(f64, f64)> = Vec::new();
    let mut end = all.x0;
    for (x0, x1) in boxes.iter().map(|r| (r.x0, r.x1)).chain([(all.x1, all.x1)]) {
        gaps.push((end, x0));
        end = end.max(x1);
    }
    gaps.retain(|(from, to)| to - from >= NARROWEST);
    gaps.sort_by(|a, b| (b.1 - b.0).total_cmp(&(a.1 - a.0)));
    if gaps.is_empty() {
        return vec![e.to_source * walls(e).unwrap_or(all).center()];
    }
    let middle = all.center().y;
    gaps.iter().map(|(from, to)| e.to_source * Point::new(0.5 * (from + to), middle)).collect()
}

fn walls(e: &DrawnElevation) -> Option<Rect> {
    e.walls.iter().filter_map(|w| bounds(&w.outline)).reduce(|a, b| a.union(b))
}

/// How much of a facade its walls take, openings with them, percent.
fn percent(e: &DrawnElevation) -> f64 {
    let faces: f64 = e.walls.iter().map(|w| total_area(&w.faces)).sum();
    100.0 * faces / facade(e).max(f64::MIN_POSITIVE)
}

/// Area of the box round what is drawn of a facade, square inches.
pub fn facade(e: &DrawnElevation) -> f64 {
    let drawn = drawn(e);
    walls(e).map_or(drawn, |w| w.union(drawn)).area()
}

/// The box round what is drawn of a facade: its lines but for marks and ground, a fiftieth of their length left
/// out at each end.
fn drawn(e: &DrawnElevation) -> Rect {
    use Role::{CornerTag, Dimension, Frame, Grade, Ignore, Level, Title};
    let aside = [CornerTag, Dimension, Frame, Grade, Ignore, Level, Title];
    let lines = e.backdrop.iter().filter(|b| b.role.is_none_or(|r| !aside.contains(&r)));
    let mut sides: Vec<(f64, f64, f64)> = lines
        .flat_map(|b| b.points.windows(2))
        .map(|w| (w[0].midpoint(w[1]).x, w[0].midpoint(w[1]).y, w[0].distance(w[1])))
        .collect();
    let mut between = |of: fn(&(f64, f64, f64)) -> f64| {
        sides.sort_by(|a, b| of(a).total_cmp(&of(b)));
        let all: f64 = sides.iter().map(|s| s.2).sum();
        let (mut low, mut high, mut passed) = (0.0, 0.0, 0.0);
        for s in &sides {
            if passed <= 0.02 * all {
                low = of(s);
            }
            if passed <= 0.98 * all {
                high = of(s);
            }
            passed += s.2;
        }
        (low, high)
    };
    let ((x0, x1), (y0, y1)) = (between(|s| s.0), between(|s| s.1));
    Rect::new(x0, y0, x1, y1)
}
