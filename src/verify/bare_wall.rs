//! Wall that gets no siding: all of it is told, none is told that is sided, each part is where its
//! reason is, and its areas are those of its outlines. What is bare is found anew by level scans: the
//! outline less what hides it, openings and the field.

use super::area::Area;
use super::claims::Claims;
use super::grade::too_near;
use super::named;
use super::rule::{Cases, Found, found};
use super::scan::{Spans, length, without};
use super::sweep::{Height, Shapes, Slab};
use super::taken::{decorated, noise, over_ledges, over_roofs};
use crate::geom::vocabulary::Xy;
use crate::layout::breach::count::CountBreach;
use crate::layout::breach::wall::FieldBreach;
use crate::layout::by_wall::ByWall;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::Figure::{Quantity, SquareFeet, SquareInches};
use crate::layout::wall::{LaidBare, LaidElevation, LaidWall};
use crate::model::house::HiddenBy;
use crate::model::receiver::BareBy;

/// Square inches in a square foot.
const SQUARE_FOOT: f64 = 144.0;
/// The line of the takeoff that measures it.
const LINE: &str = "bare-wall";

pub(super) fn check(layout: &Claims, at: &ByWall) -> RuleCheck {
    let mut rule = Cases::new(Rule::BareWall);
    let mut told = 0.0;
    for (e, w) in layout.walls() {
        told += w.bare.iter().map(|b| b.area).sum::<f64>();
        wall(&mut rule, layout, at, (e, w));
    }
    let line = layout.takeoff.iter().find(|l| l.id == *LINE).map_or(0.0, |l| l.net);
    rule.case((line - told / 100.0).abs() <= 1e-6, || {
        let v = found(named::takeoff_line(LINE), CountBreach::Measured);
        v.measured(Quantity(line)).exactly(Quantity(told / 100.0))
    });
    rule.done()
}

fn wall(rule: &mut Cases, layout: &Claims, at: &ByWall, (e, w): (&LaidElevation, &LaidWall)) {
    let (parts, noise) = (parts(layout, e, w), noise(w));
    let keep = layout.job.clearances();
    let roofs = over_roofs(w, keep.roof);
    // A gap of boards to a ledge is theirs, as the gap at an end is.
    let gaps = decorated(layout, at, w) + over_ledges(w, keep.ledge);
    for (area, most, breach) in [
        (&parts.untold, gaps, FieldBreach::BareUntold),
        (&parts.sided, 0.0, FieldBreach::BareSided),
        (&parts.misnamed, 0.0, FieldBreach::BareMisnamed),
        (&parts.over_roofs, roofs, FieldBreach::BareOverRoofs),
    ] {
        rule.case(area.sum <= most + noise, || {
            let at = area.at.and_then(|p| named::place(&e.name, p));
            let v = found(named::wall(&w.id), breach).at(at);
            v.measured(SquareInches(area.sum)).at_most(SquareInches(most))
        });
    }
    let told = |b: &LaidBare, area: f64| -> Found {
        let first = b.outline.iter().flatten().next();
        let at = first.and_then(|p| named::place(&e.name, *p)).or(named::at_wall(e, w));
        let v = found(named::wall(&w.id), FieldBreach::BareArea).at(at);
        v.measured(SquareFeet(b.area)).exactly(SquareFeet(area / SQUARE_FOOT))
    };
    for (b, area) in w.bare.iter().zip(&parts.each) {
        // Rounding to the grid along its sides is noise.
        let off = (b.area * SQUARE_FOOT - area).abs();
        rule.case(off <= 0.01 + 1e-6 * area && *area > 0.0, || told(b, *area));
    }
    let behind = w.bare.iter().filter(|b| b.by == BareBy::BehindRoof);
    let behind: f64 = behind.map(|b| b.area * SQUARE_FOOT).sum();
    let hidden = parts.behind_roofs.sum;
    rule.case((behind - hidden).abs() <= noise, || {
        let at = parts.behind_roofs.at.and_then(|p| named::place(&e.name, p));
        let v = found(named::wall(&w.id), FieldBreach::BareBehindRoofs);
        let v = v.at(at.or(named::at_wall(e, w)));
        v.measured(SquareFeet(behind / SQUARE_FOOT)).exactly(SquareFeet(hidden / SQUARE_FOOT))
    });
}

/// What is bare of a wall, square inches.
#[derive(Debug, Default)]
struct Parts {
    /// Outside the field, and not told.
    untold: Area,
    /// Told, and in the field or off the wall.
    sided: Area,
    /// Told as too near to grade where it is not.
    misnamed: Area,
    /// Told as over a roof.
    over_roofs: Area,
    /// Wall with a lower roof in front of it.
    behind_roofs: Area,
    /// Area of each part that is told, by its outline.
    each: Vec<f64>,
}

/// Numbers of the shapes, in the order they are added: the outline is 0, the field 1.
struct Numbers {
    /// First of what hides the wall, each with whether a roof does.
    hidden: Vec<(usize, bool)>,
    openings: usize,
    /// Rectangles too near to grade.
    near: usize,
    /// What is told.
    told: usize,
}

fn parts(layout: &Claims, e: &LaidElevation, w: &LaidWall) -> Parts {
    let mut out = Parts { each: vec![0.0; w.bare.len()], ..Parts::default() };
    let b = named::bounds(w.outline.iter().chain(w.bare.iter().flat_map(|b| &b.outline).flatten()));
    if b[0] >= b[2] {
        return out;
    }
    let mut shapes = Shapes::default();
    shapes.add([&w.outline]);
    shapes.add(&w.field);
    let hidden =
        w.hidden.iter().map(|h| (shapes.add(&h.outline), h.by == HiddenBy::Roof)).collect();
    let openings = shapes.count();
    for o in &w.openings {
        shapes.add([&o.outline]);
    }
    let near = shapes.count();
    let wall: Vec<Xy> = w.outline.clone();
    for ring in &too_near(layout.laid, (e, w), named::bounds(&wall)) {
        shapes.add([ring]);
    }
    let told = shapes.count();
    for b in &w.bare {
        shapes.add(&b.outline);
    }
    let numbers = Numbers { hidden, openings, near, told };
    shapes.slabs(b[1], b[3]).iter().for_each(|s| out.add(s, &numbers, &w.bare));
    out
}

impl Parts {
    fn add(&mut self, slab: &Slab, n: &Numbers, bare: &[LaidBare]) {
        let of = |keep: &dyn Fn(usize) -> bool| slab.union(Height::Middle, keep);
        let both = |a: &Spans, b: &Spans| without(a, &without(a, b));
        let by = |why: BareBy| of(&|i| i >= n.told && bare[i - n.told].by == why);
        // A filler board beside an opening stands in its frame.
        let openings = of(&|i| i >= n.openings && i < n.near);
        let (outline, holes) = (of(&|i| i == 0), without(&openings, &by(BareBy::Filler)));
        let roofs = of(&|i| n.hidden.contains(&(i, true)));
        let behind = without(&both(&outline, &roofs), &holes);
        let wall = without(&without(&outline, &of(&|i| i > 1 && i < n.openings)), &holes);
        let free = without(&wall, &of(&|i| i == 1));
        let (near, over) = (by(BareBy::NearGrade), by(BareBy::OverRoof));
        // What an outline stops short by lies outside it.
        let short = by(BareBy::StopsShort);
        let outside = [BareBy::BehindRoof, BareBy::StopsShort];
        let told = of(&|i| i >= n.told && !outside.contains(&bare[i - n.told].by));
        let rise = slab.rise();
        let add = |area: &mut Area, spans: Spans| area.add(slab, rise * length(&spans), &spans);
        add(&mut self.untold, without(&free, &told));
        add(&mut self.sided, without(&told, &free));
        add(&mut self.sided, both(&short, &outline));
        add(&mut self.misnamed, without(&near, &of(&|i| i >= n.near && i < n.told)));
        add(&mut self.over_roofs, over);
        add(&mut self.behind_roofs, behind);
        for (i, each) in self.each.iter_mut().enumerate() {
            *each += rise * length(&of(&|k| k == n.told + i));
        }
    }
}
