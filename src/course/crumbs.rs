//! What is told of crumbs: blocks moved, peaks left to their channels.

use crate::finding::laying::{LayingFinding, MovedBlock};
use crate::finding::{Finding, Findings};
use crate::geom::tol::{LEVEL, MARK, SAME};
use crate::geom::vocabulary::{Affine, Point, Xy};
use crate::layout::laid::LaidHouse;
use crate::layout::wall::{LaidEdge, LaidElevation, LaidWall};
use crate::model::house::EdgeKind;

/// Adds what there is to tell, wall by wall.
pub fn tell(layout: &LaidHouse, findings: &mut Findings) {
    for (e, w) in layout.walls() {
        blocks(e, w, findings);
        peaks(layout, e, w, findings);
    }
    findings.round_places(layout.drawing.inches_per_unit);
}

fn place(e: &LaidElevation, at: Xy) -> Point {
    Affine::new(e.to_source) * Point::new(at[0], at[1])
}

fn blocks(e: &LaidElevation, w: &LaidWall, findings: &mut Findings) {
    // By less than a tape shows is where it was drawn.
    let told = |by: &f64| by.abs() > MARK;
    let moved = w.obstacles.iter().filter_map(|o| Some((o, o.moved.filter(told)?)));
    let blocks: Vec<MovedBlock> =
        moved.clone().map(|(o, by)| MovedBlock { block: o.id.clone(), by }).collect();
    let Some((first, _)) = moved.clone().next() else { return };
    let Some(at) = first.outline.first() else { return };
    let kind = LayingFinding::BlockMoved { wall: w.id.clone(), blocks };
    findings.push(Finding::new(kind).on(&e.name).at(place(e, *at)));
}

/// Peaks over the last course line with nothing laid in them.
fn peaks(layout: &LaidHouse, e: &LaidElevation, w: &LaidWall, findings: &mut Findings) {
    let rake = |s: &&LaidEdge| s.kind == EdgeKind::Rake;
    let tops = w.edges.iter().filter(rake).filter(|s| s.from[1] > s.to[1] + SAME);
    for s in tops {
        let meets = |o: &LaidEdge| o.to == s.from && o.from[1] < o.to[1] - SAME;
        if !w.edges.iter().filter(rake).any(meets) {
            continue;
        }
        let [x, y] = s.from;
        let line = layout.butt(layout.course_at(y - LEVEL));
        let over = |q: &Xy| q[1] > line + SAME;
        let laid = w.courses.iter().flat_map(|c| &c.runs).flat_map(|r| &r.pieces);
        let mut laid = laid.filter(|p| p.x0 < x && p.x1 > x);
        if y - line < layout.job.least_strip() + 1.0 && !laid.any(|p| p.outline.iter().any(over)) {
            let kind = LayingFinding::PeakLeft { wall: w.id.clone(), height: y - line };
            findings.push(Finding::new(kind).on(&e.name).at(place(e, s.from)));
        }
    }
}
