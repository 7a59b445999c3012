//! Each wall whole: its net area reckoned from its outline, what hides it and its openings, made up by
//! pieces and by bare areas that have a name: too near to grade, over a roof, under a board, in a
//! clearance. A wall without pieces, or bare by more than a quarter, is not laid out.

use super::area::Area;
use super::grade::too_near;
use super::named;
use super::rule::{Cases, found};
use super::scan::{Spans, length, without};
use super::sweep::{Height, Shapes, Slab};
use super::taken::{decorated, kept_clear, noise};
use crate::layout::breach::wall::FieldBreach;
use crate::layout::by_wall::ByWall;
use crate::layout::laid::LaidHouse;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::Figure::{Count, SquareFeet};
use crate::layout::wall::{LaidElevation, LaidWall};
use crate::model::receiver::BareBy;

/// Most of a wall that may be bare: a house is sided, and what leaves more of a wall bare is more
/// likely a fault of the drawing than meant. Of our own choosing: no source.
const MOST_BARE: f64 = 0.25;
/// A wall smaller than this bears no piece, square inches: the least that is cut for a course.
const STAMP: f64 = 0.5;
/// Square inches in a square foot.
const SQUARE_FOOT: f64 = 144.0;

pub(super) fn check(layout: &LaidHouse, at: &ByWall) -> RuleCheck {
    let mut rule = Cases::new(Rule::WallCovered);
    for (e, w) in layout.walls() {
        let parts = parts(layout, e, w);
        let boards = decorated(layout, at, w);
        net(&mut rule, (e, w), &parts);
        bare(&mut rule, (e, w), &parts, boards);
        let named = kept_clear(layout, w) + boards;
        let unnamed = parts.unnamed.sum;
        rule.case(unnamed <= named + parts.noise, || {
            let at = parts.unnamed.at.and_then(|p| named::place(&e.name, p));
            let v = found(named::wall(&w.id), FieldBreach::Unaccounted).at(at);
            v.measured(feet(unnamed)).at_most(feet(named))
        });
    }
    rule.done()
}

/// Square inches as square feet.
fn feet(square_inches: f64) -> crate::layout::violation::Figure {
    SquareFeet(square_inches / SQUARE_FOOT)
}

/// The net area that is told is that of the outline.
fn net(rule: &mut Cases, (e, w): (&LaidElevation, &LaidWall), parts: &Parts) {
    // What gets no siding is told apart; its own rule looks at that.
    let told = w.net_area + w.bare_area() - w.filler_area();
    let off = (told * SQUARE_FOOT - parts.net).abs();
    rule.case(off <= parts.noise, || {
        let v = found(named::wall(&w.id), FieldBreach::NetOfOutline).at(named::at_wall(e, w));
        v.measured(SquareFeet(told)).exactly(feet(parts.net))
    });
}

/// A wall bears siding, on three quarters of it at least.
fn bare(rule: &mut Cases, (e, w): (&LaidElevation, &LaidWall), parts: &Parts, boards: f64) {
    let pieces = w.courses.iter().flat_map(|c| &c.runs).map(|r| r.pieces.len()).sum::<usize>();
    // Between two posts there may be no room for siding.
    let room = parts.net - boards;
    let bears = (pieces > 0 && parts.laid > 0.0) || room <= STAMP + parts.noise;
    let grade = parts.grade / SQUARE_FOOT;
    rule.case(bears, || {
        let v = found(named::wall(&w.id), FieldBreach::NoSiding { grade });
        v.at(named::at_wall(e, w)).measured(Count(0)).at_least(Count(1))
    });
    // What boards cover is not bare; none stands under the start of the siding.
    let bare = (parts.net - parts.laid - boards).max(parts.grade);
    let most = MOST_BARE * parts.net + parts.noise;
    rule.case(!bears || bare <= most, || {
        let clearance = (bare / SQUARE_FOOT - grade).max(0.0);
        let at = parts.bare.at.and_then(|p| named::place(&e.name, p));
        let v = found(named::wall(&w.id), FieldBreach::TooBare { grade, clearance }).at(at);
        v.measured(feet(bare)).at_most(feet(most))
    });
}

/// A wall by what it is made up of, square inches.
#[derive(Debug, Default)]
struct Parts {
    /// Outline less what hides it, less openings and filler boards.
    net: f64,
    /// Of that, what pieces cover.
    laid: f64,
    /// What no piece covers.
    bare: Area,
    /// Of the bare, what lies in whole courses too near to grade.
    grade: f64,
    /// What is bare, outside the field and not near grade: over roofs and under boards.
    unnamed: Area,
    /// What rounding to the grid and drawing noise along every side may add.
    noise: f64,
}

/// Numbers of the shapes of a wall, in the order they are added.
struct Numbers {
    hidden: usize,
    near: usize,
    pieces: usize,
}

/// The outline is shape 0, the field 1.
fn parts(layout: &LaidHouse, e: &LaidElevation, w: &LaidWall) -> Parts {
    let mut shapes = Shapes::default();
    shapes.add([&w.outline]);
    shapes.add(&w.field);
    let hidden = shapes.count();
    for part in &w.hidden {
        shapes.add(&part.outline);
    }
    for o in &w.openings {
        shapes.add([&o.outline]);
    }
    for filler in w.bare.iter().filter(|b| b.by == BareBy::Filler) {
        shapes.add(&filler.outline);
    }
    let near = shapes.count();
    let b = named::bounds(&w.outline);
    if b[0] >= b[2] {
        return Parts::default();
    }
    for ring in &too_near(layout, (e, w), b) {
        shapes.add([ring]);
    }
    let pieces = shapes.count();
    for p in w.courses.iter().flat_map(|c| &c.runs).flat_map(|r| &r.pieces) {
        shapes.add(std::iter::once(&p.outline).chain(&p.holes).chain(&p.more));
    }
    let numbers = Numbers { hidden, near, pieces };
    let mut out = Parts::default();
    shapes.slabs(b[1], b[3]).iter().for_each(|s| out.add(s, &numbers));
    out.noise = noise(w);
    out
}

impl Parts {
    fn add(&mut self, slab: &Slab, n: &Numbers) {
        let of = |keep: &dyn Fn(usize) -> bool| slab.union(Height::Middle, keep);
        let both = |a: &Spans, b: &Spans| without(a, &without(a, b));
        let off = of(&|i| i >= n.hidden && i < n.near);
        let net = without(&of(&|i| i == 0), &off);
        let laid = both(&net, &of(&|i| i >= n.pieces));
        let bare = without(&net, &laid);
        let near = both(&bare, &of(&|i| i >= n.near && i < n.pieces));
        let field = of(&|i| i == 1);
        let unnamed = without(&without(&bare, &near), &field);
        let rise = slab.rise();
        self.net += rise * length(&net);
        self.laid += rise * length(&laid);
        self.grade += rise * length(&near);
        self.bare.add(slab, rise * length(&bare), &bare);
        self.unnamed.add(slab, rise * length(&unnamed), &unnamed);
    }
}
