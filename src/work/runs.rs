//! Where each course begins: at the end farthest from where it is seen, each next panel lapping over
//! the last one, so that no edge of a lap looks at the viewer (`SidingFact::LapsFaceAway`,
//! `SidingFact::BeginFarthest`).

use crate::job::SeenFrom;
use crate::layout::course::LaidRun;
use crate::layout::wall::{LaidElevation, LaidWall};
use crate::model::house::OpeningKind;
use crate::model::work::{Begins, RunOrder, Viewpoint};

/// Where along an elevation it is seen from, and what stands there.
pub(super) fn seen_from(e: &LaidElevation, from: SeenFrom) -> (f64, Viewpoint) {
    let xs = e.walls.iter().flat_map(|w| &w.outline).map(|p| p[0]);
    let (left, right) =
        xs.fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), x| (a.min(x), b.max(x)));
    let (left, right) = if left < right { (left, right) } else { (0.0, 0.0) };
    let mut doors =
        e.walls.iter().flat_map(|w| &w.openings).filter(|o| o.kind == OpeningKind::Door);
    match (from, doors.next()) {
        (SeenFrom::Entrance, Some(o)) => {
            ((o.left + o.right) / 2.0, Viewpoint::Door { opening: o.id.clone() })
        }
        (SeenFrom::Entrance | SeenFrom::Left, _) => (left, Viewpoint::LeftEnd),
        (SeenFrom::Middle, _) => ((left + right) / 2.0, Viewpoint::Middle),
        (SeenFrom::Right, _) => (right, Viewpoint::RightEnd),
    }
}

/// Every run with a seam.
pub(super) fn orders(w: &LaidWall, seen_from: f64) -> Vec<RunOrder> {
    let of = |c: &crate::layout::course::LaidCourse| -> Vec<RunOrder> {
        let seamed = c.runs.iter().filter(|r| r.pieces.len() > 1);
        seamed.map(|r| order(c.index + 1, r, seen_from)).collect()
    };
    w.courses.iter().flat_map(of).collect()
}

fn order(course: i32, run: &LaidRun, seen_from: f64) -> RunOrder {
    // The piece before which one stands goes on last, over both its neighbors.
    let last = run.seams.iter().filter(|s| **s <= seen_from).count().min(run.pieces.len() - 1);
    let begins = if last == 0 {
        Begins::Right
    } else if last + 1 == run.pieces.len() {
        Begins::Left
    } else {
        Begins::Both
    };
    let left = run.pieces.iter().take(last);
    let right = run.pieces.iter().skip(last + 1).rev();
    let middle = run.pieces.iter().skip(last).take(1);
    let order = left.chain(right).chain(middle).map(|p| p.mark.clone()).collect();
    RunOrder { course, run: run.id.clone(), begins, order }
}
