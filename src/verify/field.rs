//! The field panels go on: inside its wall, out of openings, and as large as wall, openings, steps
//! at grade and clearance over roofs leave it.

use super::along::reach;
use super::area::Area;
use super::grade::too_near;
use super::named;
use super::rule::{Cases, found};
use super::scan::{length, without};
use super::sweep::{Height, Shapes};
use super::taken::{decorated, kept_clear};
use crate::geom::tol::GRID;
use crate::geom::vocabulary::Xy;
use crate::layout::breach::wall::FieldBreach;
use crate::layout::by_wall::ByWall;
use crate::layout::laid::LaidHouse;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::Figure::SquareInches;
use crate::layout::wall::{LaidElevation, LaidWall};

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
        let missing = (w.net_area + w.bare_area()) * 144.0 - areas.field;
        let fillers = w.filler_area() * 144.0;
        let most = areas.near_grade + kept_clear(layout, w) + decorated(layout, at, w) + fillers;
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
    for near in too_near(layout, (e, w), b) {
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
