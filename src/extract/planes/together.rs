//! Which patches of siding are one plane wall: those whose course lines run on at the same levels, parted
//! only by drawn boards or openings, and those that stand on one another. A line or a board drawn where
//! siding steps at its foot or its head is a break of plane.

use std::collections::BTreeSet;

use super::columns::{Column, beside};
use super::meetings::{self, Stretch};
use crate::extract::ink::Ink;
use crate::extract::patch::Patch;
use crate::geom::vocabulary::{Point, Rect};

/// Patches nearer than this touch, inches: pens and rounded figures.
pub(super) const TOUCH: f64 = 0.5;
/// Widest drawn board, inches: the widest boards are 12 in, with room for the lines round them (common
/// practice, no source).
pub(super) const BOARD: f64 = 16.0;
/// Widest post or chimney breast that stands before a wall, inches (common practice, no source).
const POST: f64 = 30.0;
/// Highest roof or deck that parts the siding of one wall, inches (common practice, no source).
const ROOF: f64 = 60.0;
/// Widest casing beside an opening, inches (common practice, no source).
pub(super) const CASING: f64 = 12.0;
/// Patches that see one another along less than this, inches, only pass.
const LEAST: f64 = 4.0;
/// A step at a foot or a head is one from this much, inches, and from a course of the drawn pitch.
const STEP: f64 = 5.0;
/// The share of a side that a line must be drawn along.
const DRAWN: f64 = 0.6;
/// The share of it that a line is drawn along all the way.
const WHOLE: f64 = 0.98;
/// The narrowest corner board, inches (common practice, no source).
const NARROW: f64 = 2.0;
/// A corner board is seen over this height at least, inches.
const CORNER: f64 = 48.0;
/// A break of plane is seen over this height at least, inches.
const BREAK: f64 = 12.0;
/// How far over or under where it was seen a break of plane goes on, inches: a story.
const GOES_ON: f64 = 120.0;
/// Parts over one another see one another past a roof over this length at least, inches.
const SEEN: f64 = 24.0;
/// How far an end of an upper part may stand from that of the lower one, inches.
const ALIGNED: f64 = 12.0;

/// A place where one plane ends and another begins.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Break {
    pub(super) x: f64,
    low: f64,
    high: f64,
}

/// Patches by plane, each group left to right.
pub(super) struct Together {
    pub(super) groups: Vec<Vec<usize>>,
    pub(super) doubts: Doubts,
}

/// What was taken for one plane though something parts it.
#[derive(Clone, Debug, Default)]
pub(super) struct Doubts {
    /// Where, inches of the whole drawing.
    pub(super) places: Vec<Point>,
    /// Upright lines and boards.
    pub(super) uprights: usize,
    /// Roofs and decks.
    pub(super) roofs: usize,
}

/// What tells planes apart.
struct Seen<'a> {
    patches: &'a [Patch],
    openings: &'a [Rect],
    ink: &'a Ink,
    breaks: Vec<Break>,
    apart: BTreeSet<(usize, usize)>,
    group: Vec<usize>,
}

/// The planes of one view's patches.
pub(super) fn planes(patches: &[Patch], openings: &[Rect], ink: &Ink) -> Together {
    let group = (0..patches.len()).collect();
    let (breaks, apart) = (Vec::new(), BTreeSet::new());
    let mut seen = Seen { patches, openings, ink, breaks, apart, group };
    let (beside, over) = (meetings::beside(patches), meetings::over(patches));
    let mut doubts = Doubts::default();
    let close = |(i, j): (usize, usize)| patches[i].is_as_close(&patches[j]);
    for (pair, all) in beside.iter().filter(|(p, _)| close(**p)) {
        seen.break_between(*pair, all);
    }
    for (pair, all) in beside.iter().filter(|(p, _)| close(**p)) {
        if all.iter().any(|s| s.gap() <= TOUCH) && seen.touches_on(*pair, all) {
            let joined = seen.join(*pair);
            if joined && seen.is_lined(all) {
                doubts.uprights += 1;
                doubts.places.extend(middle(all));
            }
        }
    }
    for (pair, all) in over.iter().filter(|(p, _)| close(**p)) {
        if seen.stands_on(*pair, all) {
            let far = all.iter().all(|s| s.gap() > BOARD);
            if seen.join(*pair) && far {
                doubts.roofs += 1;
                doubts.places.extend(middle(all).map(|p| Point::new(p.y, p.x)));
            }
        }
    }
    for (pair, all) in beside.iter().filter(|(p, _)| close(**p)) {
        if seen.goes_on_past(*pair, all) {
            let joined = seen.join(*pair);
            let boards = all.iter().filter(|s| s.gap() > TOUCH && !seen.is_opening(s));
            if joined && length(boards) >= CORNER {
                doubts.uprights += 1;
                doubts.places.extend(middle(all));
            }
        }
    }
    let mut groups: Vec<Vec<usize>> = vec![Vec::new(); patches.len()];
    (0..patches.len()).for_each(|i| groups[seen.group[i]].push(i));
    groups.retain(|g| !g.is_empty());
    Together { groups, doubts }
}

/// The middle of the first stretch.
fn middle(all: &[Stretch]) -> Option<Point> {
    let s = all.first()?;
    Some(Point::new((s.from + s.to) / 2.0, (s.low + s.high) / 2.0))
}

fn length<'a>(all: impl Iterator<Item = &'a Stretch>) -> f64 {
    all.map(Stretch::length).sum()
}

fn reach<'a>(all: impl Iterator<Item = &'a Stretch>) -> (f64, f64) {
    all.fold((f64::INFINITY, f64::NEG_INFINITY), |r, s| (r.0.min(s.low), r.1.max(s.high)))
}

impl Seen<'_> {
    /// Finds a break of plane where two patches touch, or stand at both sides of a board.
    fn break_between(&mut self, pair: (usize, usize), all: &[Stretch]) {
        let near: Vec<Stretch> = all.iter().filter(|s| s.gap() <= BOARD).copied().collect();
        let mut places: Vec<f64> = near.iter().flat_map(|s| [s.from, s.to]).collect();
        places.sort_by(f64::total_cmp);
        places.dedup_by(|a, b| (*a - *b).abs() <= TOUCH);
        // A board or a line that ends where two areas end is what parts them.
        let found = places.iter().find(|x| self.is_break(**x, &near)).copied();
        if let Some(x) = found {
            let (low, high) = reach(near.iter());
            self.breaks.push(Break { x, low, high });
            self.apart.insert((pair.0.min(pair.1), pair.0.max(pair.1)));
        }
    }

    fn is_break(&self, x: f64, all: &[Stretch]) -> bool {
        let here =
            || all.iter().filter(|s| (s.from - x).abs() <= TOUCH || (s.to - x).abs() <= TOUCH);
        let span = reach(here());
        // Siding at both sides of a board is looked for beyond the board.
        let (from, to) =
            here().fold((x, x), |r, s| (r.0.min(s.from.min(s.to)), r.1.max(s.from.max(s.to))));
        let over = here().any(|s| s.gap() < -TOUCH);
        let (from, to) = if over { (x, x) } else { (from, to) };
        let at = |unparted: bool| {
            let left = beside(self.patches, from, -1.0, (span, unparted))?;
            Some((left, beside(self.patches, to, 1.0, (span, unparted))?))
        };
        let (Some(whole), Some(part)) = (at(false), at(true)) else { return false };
        let about = (whole.0.low.min(whole.1.low), whole.0.high.max(whole.1.high));
        let drawn: f64 = here().map(|s| self.ink.along_plumb(x, (s.low, s.high), about)).sum();
        let long = length(here());
        // A porch or a band may hide a foot; a tall board says that a corner stands there all the same, and so does
        // a line all the way up between siding where foot and head both step.
        let board = length(here().filter(|s| s.gap() >= NARROW && !self.is_opening(s)));
        let lined = here().all(|s| s.gap() <= TOUCH) && drawn >= WHOLE * long;
        let (top, foot) = self.steps(whole);
        let corner = board.max(if lined && top && foot { long } else { 0.0 });
        let stepped = (top || foot) && (self.is_stepped(part) || corner >= CORNER);
        long >= BREAK && drawn >= DRAWN * long && stepped
    }

    fn is_stepped(&self, both: (Column, Column)) -> bool {
        let (top, foot) = self.steps(both);
        top || foot
    }

    /// Whether siding at both sides of a line steps at its head, and at its foot.
    fn steps(&self, (a, b): (Column, Column)) -> (bool, bool) {
        let pitch = self.patches.first().map_or(0.0, |p| p.pitch);
        let step = STEP.max(pitch + 1.0);
        let top = a.level_top && b.level_top && (a.high - b.high).abs() > step;
        (top, (a.low - b.low).abs() > step)
    }

    /// Whether two patches that touch or overlap are one plane.
    fn touches_on(&self, (i, j): (usize, usize), all: &[Stretch]) -> bool {
        let near = || all.iter().filter(|s| s.gap() <= TOUCH);
        let (low, high) = reach(near());
        self.patches[i].runs_on(&self.patches[j], (low + high) / 2.0)
    }

    /// Whether one patch stands on another, a band or a roof between them or nothing.
    fn stands_on(&self, (lower, upper): (usize, usize), all: &[Stretch]) -> bool {
        let (a, b) = (&self.patches[lower], &self.patches[upper]);
        let (ab, bb) = (a.shape.bounds(), b.shape.bounds());
        let narrow = ab.width().min(bb.width());
        let touching = length(all.iter().filter(|s| s.gap().abs() <= TOUCH));
        if touching >= LEAST.min(narrow / 2.0) {
            return true;
        }
        let within = |most: f64| length(all.iter().filter(|s| s.gap() > TOUCH && s.gap() <= most));
        if within(BOARD) >= narrow / 2.0 {
            return true;
        }
        let aligned = (ab.x0 - bb.x0).abs() <= ALIGNED || (ab.x1 - bb.x1).abs() <= ALIGNED;
        let under = within(ROOF) >= (narrow / 2.0).min(SEEN);
        under && (a.with == b.with || (aligned && a.runs_on(b, bb.y0)))
    }

    /// Whether one patch goes on behind an opening, a board or a post that stands between the two.
    fn goes_on_past(&self, (i, j): (usize, usize), all: &[Stretch]) -> bool {
        let (a, b) = (&self.patches[i], &self.patches[j]);
        let passes = |s: &&Stretch| {
            s.gap() > TOUCH
                && a.runs_on(b, (s.low + s.high) / 2.0)
                && !self.breaks.iter().any(|k| {
                    k.x > s.from - 1.5
                        && k.x < s.to + 1.5
                        && k.low - GOES_ON < s.high
                        && k.high + GOES_ON > s.low
                })
                && (s.gap() <= BOARD || self.is_opening(s) || self.is_post(s))
        };
        length(all.iter().filter(passes)) >= LEAST.min(a.pitch)
    }

    /// Whether openings with their casings take most of what lies between.
    fn is_opening(&self, s: &Stretch) -> bool {
        let here = self.openings.iter().filter(|o| {
            o.y0 - CASING < s.high && o.y1 + CASING > s.low && o.x0 < s.to && o.x1 > s.from
        });
        let mut parts: Vec<(f64, f64)> =
            here.map(|o| ((o.x0 - CASING).max(s.from), (o.x1 + CASING).min(s.to))).collect();
        parts.sort_by(|p, q| p.0.total_cmp(&q.0));
        let (mut reached, mut sum) = (s.from, 0.0);
        for (p, q) in parts {
            sum += (q - p.max(reached)).max(0.0);
            reached = q.max(reached);
        }
        sum >= 0.8 * s.gap()
    }

    /// Whether a post stands before a wall that is as high at both sides of it.
    fn is_post(&self, s: &Stretch) -> bool {
        let span = (s.low, s.high);
        let left = beside(self.patches, s.from, -1.0, (span, false));
        let right = beside(self.patches, s.to, 1.0, (span, false));
        let even = left.zip(right).is_some_and(|both| !self.is_stepped(both));
        s.gap() <= POST && even && self.ink.plumb_between((s.from - TOUCH, s.to + TOUCH), span)
    }

    /// Whether a line runs up between two patches that touch.
    fn is_lined(&self, all: &[Stretch]) -> bool {
        let near = || all.iter().filter(|s| s.gap().abs() <= TOUCH);
        let about = reach(near());
        let drawn: f64 = near().map(|s| self.ink.along_plumb(s.from, (s.low, s.high), about)).sum();
        length(near()) >= CORNER && drawn >= DRAWN * length(near())
    }

    /// Brings two groups together unless a break of plane parts them; tells whether it did.
    fn join(&mut self, (i, j): (usize, usize)) -> bool {
        let (a, b) = (self.group[i], self.group[j]);
        let parted = |(p, q): &(usize, usize)| {
            let groups = (self.group[*p], self.group[*q]);
            groups == (a, b) || groups == (b, a)
        };
        if a == b || self.apart.iter().any(parted) {
            return false;
        }
        let (from, to) = (a.max(b), a.min(b));
        self.group.iter_mut().filter(|g| **g == from).for_each(|g| *g = to);
        true
    }
}
