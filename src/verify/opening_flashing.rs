//! Surrounds and flashing of openings, and what they do to the siding: flashing round openings
//! (`TrimFact::SillFlashing`, `TrimFact::JambFlashing`), surround boards
//! (`LayoutFact::BandsPartWalls`).

use super::along::reach;
use super::contour;
use super::named;
use super::rule::{Cases, Found, found};
use super::shaped_flashing;
use super::tolerance::{NEAR, SAME};
use crate::geom::vocabulary::Xy;
use crate::layout::breach::trim::OpeningBreach;
use crate::layout::by_wall::ByWall;
use crate::layout::laid::LaidHouse;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::Figure::Inches;
use crate::layout::wall::{LaidElevation, LaidFiller, LaidOpening, LaidWall};
use crate::model::house::{EdgeKind, OpeningKind, OpeningSide};
use crate::model::trim::{TrimKind, TrimPiece};

/// Boards and sides shorter than this are none, inches.
const LEAST: f64 = 1.0;

/// Flashing; surrounds go to the rule of the wall's face.
pub(super) fn check(layout: &LaidHouse, at: &ByWall, face: &mut Cases) -> RuleCheck {
    let mut flashing = Cases::new(Rule::OpeningFlashing);
    for (elevation, wall) in layout.walls() {
        for opening in &wall.openings {
            let trims = at.frame(&wall.id, opening);
            let on = Opening { elevation, wall, opening, trims };
            unsided(&mut flashing, &on);
            if contour::is_rectangle(&opening.outline) {
                surround(face, layout, &on);
                flashed(&mut flashing, layout, &on);
            } else {
                shaped(face, &mut flashing, layout, &on);
            }
        }
    }
    flashing.done()
}

/// An opening with its trim.
struct Opening<'a> {
    elevation: &'a LaidElevation,
    wall: &'a LaidWall,
    opening: &'a LaidOpening,
    trims: &'a [&'a TrimPiece],
}

impl Opening<'_> {
    fn broken(&self, breach: OpeningBreach, point: Xy) -> Found {
        let at = named::place(&self.elevation.name, point);
        found(named::opening(&self.wall.id, &self.opening.id), breach).at(at)
    }

    fn middle(&self) -> Xy {
        let o = self.opening;
        [(o.left + o.right) / 2.0, (o.sill + o.head) / 2.0]
    }

    /// Trim of one sort is as long as it must be.
    fn as_long(&self, rule: &mut Cases, trim: TrimKind, want: f64, within: f64) {
        let mine = self.trims.iter().filter(|t| t.kind == trim);
        let have: f64 = mine.map(|t| t.length).sum();
        rule.case((have - want).abs() < within, || {
            let v = self.broken(OpeningBreach::Length { trim }, self.middle());
            v.measured(Inches(have)).exactly(Inches(want))
        });
    }
}

fn has_sill(o: &LaidOpening) -> bool {
    matches!(o.kind, OpeningKind::Window | OpeningKind::Vent)
}

/// Where its jambs end below: beside a door, or a window that goes on under the bottom of the wall, a first
/// course may hang below the drawn bottom, and what stands along the jamb goes down with it.
fn foot(on: &Opening) -> f64 {
    let o = on.opening;
    // A filler under it goes with its channels, not with its boards and flashing.
    let filled = |f: &LaidFiller| f.opening.as_ref() == Some(&o.id) && f.place[3] <= o.sill + NEAR;
    let ends_below = has_sill(o) && !o.cut.contains(&OpeningSide::Sill);
    if ends_below || on.wall.fillers.iter().any(filled) {
        return o.sill;
    }
    let jambs = on
        .wall
        .edges
        .iter()
        .filter(|e| e.kind == EdgeKind::Jamb && e.opening.as_ref() == Some(&o.id));
    jambs.map(|e| e.from[1].min(e.to[1])).fold(o.sill, f64::min)
}

/// 1 for a side that the opening has and that ends it, 0 for another.
fn sides_of(o: &LaidOpening) -> [f64; 4] {
    use OpeningSide::{Head, Left, Right, Sill};
    [Left, Right, Sill, Head].map(|side| {
        let none = o.cut.contains(&side) || (side == Sill && !has_sill(o));
        if none { 0.0 } else { 1.0 }
    })
}

/// No siding meets an opening at a side where it goes on over something else.
fn unsided(rule: &mut Cases, on: &Opening) {
    let o = on.opening;
    let [x, y] = on.middle();
    for side in &o.cut {
        let (axis, at, place) = match side {
            OpeningSide::Left => (0, o.left, [o.left, y]),
            OpeningSide::Right => (0, o.right, [o.right, y]),
            OpeningSide::Sill => (1, o.sill, [x, o.sill]),
            OpeningSide::Head => (1, o.head, [x, o.head]),
        };
        let met = on.wall.edges.iter().filter(|s| s.opening.as_ref() == Some(&o.id)).any(|s| {
            (s.from[axis] - at).abs() < NEAR
                && (s.to[axis] - at).abs() < NEAR
                && reach(s.from, s.to) > LEAST
        });
        rule.case(!met, || on.broken(OpeningBreach::SidingAtCutSide { side: *side }, place));
    }
}

/// Surround and flashing of another shape, sort by sort, along its outline.
fn shaped(face: &mut Cases, flashing: &mut Cases, layout: &LaidHouse, on: &Opening) {
    let wants = shaped_flashing::wanted(on.opening, &on.wall.openings, layout.job.trim.surround);
    on.as_long(face, TrimKind::Surround, wants.surround.sum, wants.surround.within);
    for (trim, want) in wants.strips {
        on.as_long(flashing, trim, want.sum, want.within);
    }
}

/// Head and sill boards run right across, jambs stand between them; over what is left of an opening by less
/// than a board's least there are none, and the jamb's runs through.
fn surround(rule: &mut Cases, layout: &LaidHouse, on: &Opening) {
    let (o, w) = (on.opening, layout.job.trim.surround);
    let [left, right, sill, head] = sides_of(o);
    let across = if o.right - o.left < LEAST { 0.0 } else { 1.0 };
    let (sill, head) = (sill * across, head * across);
    let jamb = (o.head - foot(on) - (sill + head) * w).max(0.0);
    let level = (sill + head) * (o.right - o.left);
    let want = if w > 0.0 { level + (left + right) * jamb } else { 0.0 };
    let within = NEAR + 2.0 * LEAST * f64::from(u8::from(jamb < LEAST));
    on.as_long(rule, TrimKind::Surround, want, within);
}

/// Whether an opening stands right of another, as high, with nothing between them or a filler board of their
/// height in the frame of one: the two are flashed as one.
fn mulled(w: &LaidWall, a: &LaidOpening, b: &LaidOpening) -> bool {
    let near = |u: f64, v: f64| (u - v).abs() < SAME;
    let board = |f: &LaidFiller| {
        let [x0, y0, x1, y1] = f.place;
        let whole = y0 <= a.sill + SAME && y1 >= a.head - SAME;
        f.opening.is_some() && whole && near(x0, a.right) && near(x1, b.left)
    };
    let level = contour::is_rectangle(&a.outline) && contour::is_rectangle(&b.outline);
    let high = near(a.sill, b.sill) && near(a.head, b.head) && has_sill(a) == has_sill(b);
    let ([_, right, sill, head], [left, _, s, h]) = (sides_of(a), sides_of(b));
    let ended = right + left == 2.0 && sill == s && head == h;
    let close = near(a.right, b.left) || w.fillers.iter().any(board);
    level && high && ended && b.left > a.left + SAME && close
}

/// `TrimFact::SillFlashing`, `TrimFact::JambFlashing`: 9 in past each jamb under the sill;
/// jambs from 1/2 in over the foot of the 9 in sill flashing to 8 1/2 in over the head.
fn flashed(rule: &mut Cases, layout: &LaidHouse, on: &Opening) {
    let (o, w) = (on.opening, layout.job.trim.surround);
    let [left, _, mut sill, mut head] = sides_of(o);
    let mut last = o;
    while let Some(next) = on.wall.openings.iter().find(|n| mulled(on.wall, last, n)) {
        last = next;
    }
    let [_, right, ..] = sides_of(last);
    let (mut sides, level) = (left + right, last.right - o.left + (left + right) * (9.0 - w));
    if on.wall.openings.iter().any(|before| mulled(on.wall, before, o)) {
        // The first of its row has all.
        (sides, sill, head) = (0.0, 0.0, 0.0);
    }
    // Of one that stands in this wall by less than its surround is wide, the frame may end outside it.
    let level = level.max(0.0);
    let jamb = (o.head - foot(on) + sill * (8.5 - w) + head * (8.5 - w)).max(0.0);
    on.as_long(rule, TrimKind::SillFlashing, sill * level, NEAR);
    on.as_long(rule, TrimKind::JambFlashing, sides * jamb, NEAR);
    on.as_long(rule, TrimKind::HeadFlashing, head * level, NEAR);
}
