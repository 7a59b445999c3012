//! The field panels go on: inside its wall, out of openings, and as large as wall, openings, steps
//! at grade and clearance over roofs leave it.

use super::along::reach;
use super::area::Area;
use super::course_lines::{butt, course_at};
use super::grade::grade_at;
use super::named;
use super::rule::{Cases, found};
use super::scan::{length, without};
use super::sweep::{Height, Shapes};
use crate::geom::tol::{GRID, SAME};
use crate::geom::vocabulary::Xy;
use crate::layout::breach::wall::FieldBreach;
use crate::layout::by_wall::ByWall;
use crate::layout::laid::LaidHouse;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::Figure::SquareInches;
use crate::layout::wall::{LaidEdge, LaidElevation, LaidWall};
use crate::model::corner::CornerKind;
use crate::model::house::EdgeKind;
use crate::model::trim::TrimKind;

pub(super) fn check(layout: &LaidHouse, at: &ByWall) -> RuleCheck {
    let mut rule = Cases::new(Rule::FieldExtent);
    for (e, w) in layout.walls() {
        let areas = areas(layout, e, w);
        // The field is snapped to the grid once more, so half a step all round is noise.
        let limit = 0.01 + 1e-6 * w.gross_area * 144.0 + areas.round * GRID / 2.0;
        for (area, breach) in [
            (&areas.outside, FieldBreach::OutsideWall),
            (&areas.in_openings, FieldBreach::InOpenings),
        ] {
            rule.case(area.sum <= limit, || {
                let at = area.at.and_then(|p| named::place(&e.name, p));
                let v = found(named::wall(&w.id), breach).at(at);
                v.measured(SquareInches(area.sum)).exactly(SquareInches(0.0))
            });
        }
        let missing = w.net_area * 144.0 - areas.field;
        let most = areas.near_grade
            + over_roofs(w, layout.job.courses.clear_of_roof)
            + decorated(layout, at, w);
        rule.case(missing >= -limit && missing <= most + limit, || {
            let v = found(named::wall(&w.id), FieldBreach::AreaMissing).at(named::at_wall(e, w));
            v.measured(SquareInches(missing)).between(SquareInches(0.0), SquareInches(most))
        });
    }
    rule.done()
}

/// Square inches.
#[derive(Debug, Default)]
struct Areas {
    field: f64,
    outside: Area,
    in_openings: Area,
    /// Of the wall, in whole courses nearer to grade than the clearance.
    near_grade: f64,
    /// Length of the field's sides, inches.
    round: f64,
}

fn areas(layout: &LaidHouse, e: &LaidElevation, w: &LaidWall) -> Areas {
    let mut shapes = Shapes::default();
    let outline = shapes.add([&w.outline]);
    let field = shapes.add(&w.field);
    for o in &w.openings {
        shapes.add([&o.outline]);
    }
    let steps = shapes.count();
    let b = named::bounds(w.field.iter().chain([&w.outline]).flatten());
    let side = |r: &Vec<Xy>, i: usize| reach(r[i], r[(i + 1) % r.len()]);
    let round = w.field.iter().map(|r| (0..r.len()).map(|i| side(r, i)).sum::<f64>()).sum();
    let mut out = Areas { round, ..Areas::default() };
    if b[0] >= b[2] {
        return out;
    }
    for near in too_near(layout, e, b) {
        shapes.add([&near]);
    }
    for slab in shapes.slabs(b[1], b[3]) {
        let of = |keep: &dyn Fn(usize) -> bool| slab.union(Height::Middle, keep);
        let (wall, laid) = (of(&|i| i == outline), of(&|i| i == field));
        let (holes, near) = (of(&|i| i > field && i < steps), of(&|i| i >= steps));
        let clear = without(&wall, &holes);
        let rise = slab.rise();
        out.field += rise * length(&laid);
        let outside = without(&laid, &wall);
        out.outside.add(&slab, rise * length(&outside), &outside);
        let in_holes = without(&laid, &without(&laid, &holes));
        out.in_openings.add(&slab, rise * length(&in_holes), &in_holes);
        out.near_grade += rise * (length(&clear) - length(&without(&clear, &near)));
    }
    out
}

/// How far beside a turn of the grade its height is taken, inches.
const BESIDE: f64 = 1e-6;

/// Rectangles of whole courses whose butt line would stand nearer to grade than the clearance.
fn too_near(layout: &LaidHouse, e: &LaidElevation, b: [f64; 4]) -> Vec<Vec<Xy>> {
    let clear = layout.job.courses.clear_of_grade;
    let turns = e.grade.iter().map(|g| g[0]).filter(|x| *x > b[0] - 1.0 && *x < b[2] + 1.0);
    let mut xs: Vec<f64> = [b[0] - 1.0, b[2] + 1.0].into_iter().chain(turns).collect();
    xs.sort_by(f64::total_cmp);
    let mut out = Vec::new();
    let mut index = course_at(layout, b[1]);
    loop {
        let (butt, top) = (butt(layout, index), butt(layout, index + 1));
        let limit = butt.max(b[1]) - clear;
        let before = out.len();
        for pair in xs.windows(2).filter(|p| p[1] - p[0] > 4.0 * BESIDE) {
            // Just inside: grade may stand plumb at a turn, as at a retaining wall.
            let inside = (pair[0] + BESIDE, pair[1] - BESIDE);
            let (Some(y0), Some(y1)) = (grade_at(e, inside.0), grade_at(e, inside.1)) else {
                continue;
            };
            if y0.max(y1) <= limit {
                continue;
            }
            let at = |y: f64| (limit - y0) / (y - y0) * (pair[1] - pair[0]) + pair[0];
            let (from, to) = match (y0 > limit, y1 > limit) {
                (true, true) => (pair[0], pair[1]),
                (true, false) => (pair[0], at(y1)),
                _ => (at(y1), pair[1]),
            };
            // A step stands in whole sixteenths, outward.
            let (from, to) = (from - 0.0625, to + 0.0625);
            out.push(vec![[from, b[1]], [to, b[1]], [to, top], [from, top]]);
        }
        if out.len() == before || top >= b[3] {
            return out;
        }
        index += 1;
    }
}

/// Area over lower roofs that the clearance to them takes at most, square inches.
fn over_roofs(w: &LaidWall, clear: f64) -> f64 {
    // Beside the plumb end of a roof as over its slope.
    let plumb = |e: &LaidEdge| e.kind == EdgeKind::Abutment && !on_outline(w, e);
    let roofs = w.edges.iter().filter(|e| e.kind == EdgeKind::LowerRoof || plumb(e));
    // Square to the roof, with a corner at each end.
    roofs.map(|e| (reach(e.from, e.to) + 2.0 * clear + 1.0) * clear).sum()
}

/// Whether a plumb side is one of the wall itself.
fn on_outline(w: &LaidWall, side: &LaidEdge) -> bool {
    let middle = named::midway(side.from, side.to);
    (0..w.outline.len()).any(|i| {
        let (a, b) = (w.outline[i], w.outline[(i + 1) % w.outline.len()]);
        let (low, high) = (a[1].min(b[1]), a[1].max(b[1]));
        (a[0] - middle[0]).abs() < SAME
            && (b[0] - middle[0]).abs() < SAME
            && low <= middle[1]
            && high >= middle[1]
    })
}

/// Area that corner covers and friezes take at most, square inches.
fn decorated(layout: &LaidHouse, at: &ByWall, w: &LaidWall) -> f64 {
    let rules = &layout.job.trim;
    let (cover, frieze) = (rules.corner_cover, rules.frieze.max(rules.rake_frieze));
    let sides = at.sides(&w.id).iter().filter(|(c, _)| c.kind == CornerKind::Outside);
    // Along a slope a cover goes on by its own width and pitch.
    let covers: f64 = sides.map(|(_, k)| (k.high - k.low + 3.0 * cover) * cover).sum();
    // What a frieze takes is covered by its boards; its foot may be put on a course line.
    let boards = at.trims(&w.id).iter().filter(|t| t.kind == TrimKind::Frieze);
    covers + boards.map(|t| t.length * (frieze + SAME)).sum::<f64>()
}
