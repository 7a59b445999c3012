//! The patches that level lines of one layer and ink show.

use std::collections::BTreeSet;

use super::crossed::{is_banded, is_crossed};
use super::drawn_lines::DrawnLines;
use super::family::{Link, Span, links, together};
use super::own::Own;
use super::patch::Patch;
use super::pieces::{Key, Piece, is_level};
use super::pitch::{pitches, without_pairs};
use super::run_ons::{of_ground, without_run_ons};
use super::stone_rows::{without_bed_joints, without_stone};
use super::trace::{Traced, Tracer};
use crate::geom::polygon::Polygon;
use crate::geom::tol::MARK;
use crate::geom::vocabulary::{Point, Rect};

/// Fewest course lines that are looked at where an ink draws more than courses.
const LEAST_LINES: usize = 3;
/// Fewer lines than this a course apart may be the edges of boards.
const FIELD: usize = 4;
/// Steps from line to line that differ by no more than this share are those of one hatch.
const NEAR: f64 = 0.01;
/// Least area, square inches: a strip over a window is one.
const LEAST_AREA: f64 = 72.0;
/// An ink that draws courses alone, but for this share of its level lines, draws them one by one too.
const ALONE: f64 = 0.6;

/// Level lines of one layer and ink at one pitch.
struct OfPitch<'a> {
    key: Key,
    pitch: f64,
    pieces: &'a [Piece],
    lines: &'a DrawnLines,
    own: &'a BTreeSet<usize>,
    /// Those that are no two edges of a board, and the ground.
    fields: Own,
    /// Length of all pieces, inches.
    all: f64,
}

/// Patches of one layer and ink.
pub(super) fn patches(key: Key, pieces: Vec<Piece>, lines: &DrawnLines) -> Vec<Patch> {
    let (mut pieces, upper) = without_pairs(pieces);
    let seconds: BTreeSet<usize> = upper.into_iter().flat_map(|p| p.strokes).collect();
    let all: f64 = pieces.iter().map(Piece::length).sum();
    let (mut out, mut singles): (Vec<Patch>, Vec<Patch>) = Default::default();
    let mut rows: BTreeSet<usize> = BTreeSet::new();
    for pitch in pitches(&pieces) {
        let found = at_pitch(key, pitch, &mut pieces, (&seconds, all), lines);
        out.extend(found.patches);
        singles.extend(found.singles);
        // What is a course of one pitch is none of another.
        let taken = found.taken;
        rows.extend(taken.iter().flat_map(|i| pieces[*i].strokes.iter().copied()));
        let rest = pieces.into_iter().enumerate().filter(|(i, _)| !taken.contains(i));
        pieces = rest.map(|(_, p)| p).collect();
    }
    // Nor is a row of shingles one by itself.
    out.extend(singles.into_iter().filter(|p| !rows.contains(&p.stroke)));
    out
}

/// What is found at one pitch: lines that hang together, lines that stand alone, and the pieces that the first
/// are of.
struct Found {
    patches: Vec<Patch>,
    singles: Vec<Patch>,
    taken: BTreeSet<usize>,
}

/// Patches at one pitch; given the second lines of boards and the length of all pieces.
fn at_pitch(
    key: Key,
    pitch: f64,
    pieces: &mut [Piece],
    (seconds, all): (&BTreeSet<usize>, f64),
    lines: &DrawnLines,
) -> Found {
    let between = |over: Span, heights: Span| {
        let place = Rect::new(over.0, heights.0, over.1, heights.1);
        lines.within(place).iter().any(|((p, q), stroke)| {
            let across = q.x.min(over.1) - p.x.max(over.0);
            is_level(*p, *q) && across > 0.5 * (over.1 - over.0) && !seconds.contains(stroke)
        })
    };
    let mut links = links(pieces, pitch, between);
    links.retain(|l| !is_crossed(pieces, l));
    links.retain(|l| !is_banded(pieces, l, lines, seconds));
    without_stone(pieces, &mut links, pitch, lines);
    without_bed_joints(pieces, &mut links, lines);
    let used = used_by(&links);
    let own_length: f64 = used.iter().map(|i| pieces[*i].length()).sum();
    let alone = own_length >= ALONE * all;
    let pitch = refined(pieces, &links, pitch);
    let own = strokes(pieces, &used, seconds);
    let ground = without_run_ons(pieces, &mut links, lines);
    let groups = together(pieces.len(), &links);
    let pieces = &*pieces;
    let of_lines = |least: usize| -> BTreeSet<usize> {
        let long = groups.iter().filter(|g| levels(pieces, pitch, g).len() >= least);
        long.flat_map(|g| used_by(g)).collect()
    };
    // The two edges of a fascia or a frieze may stand a course apart: siding ends at them all the same.
    let mut fields = Own::of(of_lines(FIELD).iter().map(|i| &pieces[*i]), seconds);
    for (i, over) in &ground {
        fields.add(&pieces[*i], &of_ground(&pieces[*i], *over, lines));
    }
    let of = OfPitch { key, pitch, pieces, lines, own: &own, fields, all };
    let least = if alone { 2 } else { LEAST_LINES };
    let alone = (0..pieces.len()).filter(|i| alone && !used.contains(i));
    Found {
        patches: groups.iter().filter_map(|g| of.patch(g, least)).collect(),
        singles: alone.filter_map(|i| of.single(i)).collect(),
        taken: of_lines(least),
    }
}

/// Strokes of pieces, and second lines of boards.
fn strokes(pieces: &[Piece], used: &BTreeSet<usize>, seconds: &BTreeSet<usize>) -> BTreeSet<usize> {
    let mine = used.iter().flat_map(|i| pieces[*i].strokes.iter().copied());
    mine.chain(seconds.iter().copied()).collect()
}

fn used_by(links: &[Link]) -> BTreeSet<usize> {
    links.iter().flat_map(|l| [l.low, l.high]).collect()
}

/// Heights of the lines of some links.
fn levels(pieces: &[Piece], pitch: f64, links: &[Link]) -> Vec<f64> {
    let mut levels: Vec<f64> = used_by(links).iter().map(|i| pieces[*i].y).collect();
    levels.sort_by(f64::total_cmp);
    levels.dedup_by(|b, a| *b - *a < 0.5 * pitch);
    levels
}

/// The pitch by what most links span: lines of something else that stand about a pitch off are left out.
fn refined(pieces: &[Piece], links: &[Link], pitch: f64) -> f64 {
    let of = |l: &Link| (pieces[l.high].y - pieces[l.low].y, l.x1 - l.x0);
    let one = |(gap, _): &(f64, f64)| (gap / pitch - 1.0).abs() < 0.1;
    let mut all: Vec<(f64, f64)> = links.iter().map(of).filter(one).collect();
    all.sort_by(|a, b| a.0.total_cmp(&b.0));
    let half = all.iter().map(|g| g.1).sum::<f64>() / 2.0;
    let mut sum = 0.0;
    let middle = all.iter().find(|(_, over)| {
        sum += over;
        sum >= half
    });
    let Some((middle, _)) = middle.copied() else { return pitch };
    let near = || all.iter().filter(|(gap, _)| (gap / middle - 1.0).abs() <= NEAR);
    let (length, weighed) =
        near().fold((0.0, 0.0), |s, (gap, over)| (s.0 + over, s.1 + gap * over));
    if length > 0.0 { weighed / length } else { pitch }
}

impl OfPitch<'_> {
    fn tracer<'b>(&'b self, links: &'b [Link], used: &[usize]) -> Tracer<'b> {
        let (pieces, pitch, lines) = (self.pieces, self.pitch, self.lines);
        let mut own = self.fields.clone();
        used.iter().for_each(|i| own.add(&pieces[*i], &pieces[*i].strokes));
        Tracer { pieces, links, pitch, lines, own }
    }

    /// Lines that hang together.
    fn patch(&self, links: &[Link], least: usize) -> Option<Patch> {
        let used: Vec<usize> = used_by(links).into_iter().collect();
        let levels = levels(self.pieces, self.pitch, links).len();
        if levels < least {
            return None;
        }
        self.of(self.tracer(links, &used).trace(), &used, levels, self.unevenness(links))
    }

    /// One line between two drawn ends: a strip over or under an opening.
    fn single(&self, piece: usize) -> Option<Patch> {
        let traced = self.tracer(&[], &[piece]).single(piece);
        let is_strip = traced.open == 0.0 && !self.is_over_course(piece, &traced.areas);
        is_strip.then(|| self.of(traced, &[piece], 1, 0.0))?
    }

    /// Whether another course line is drawn in what one line with its ends would be.
    fn is_over_course(&self, piece: usize, areas: &[Polygon]) -> bool {
        let Some(b) = areas.iter().map(Polygon::bounds).reduce(|a, b| a.union(b)) else {
            return false;
        };
        let from = self.pieces.partition_point(|p| p.y <= b.y0 + MARK);
        let mut inner = self.pieces[from..].iter().take_while(|p| p.y < b.y1 - MARK);
        let own = &self.pieces[piece];
        inner.any(|p| {
            let is_course = p.strokes.iter().any(|s| self.fields.holds(*s, p.y));
            is_course && (p.y - own.y).abs() > MARK && p.over(own) > 0.5 * own.length()
        })
    }

    fn of(&self, traced: Traced, used: &[usize], lines: usize, uneven: f64) -> Option<Patch> {
        let area: f64 = traced.areas.iter().map(Polygon::area).sum();
        let mut by_height: Vec<&Piece> = used.iter().map(|i| &self.pieces[*i]).collect();
        by_height.sort_by(|a, b| a.y.total_cmp(&b.y));
        let middle = by_height.get(by_height.len() / 2)?;
        let length: f64 = by_height.iter().map(|p| p.length()).sum();
        let mut patch = Patch {
            key: self.key,
            pitch: self.pitch,
            level: Point::new(middle.x0, middle.y),
            also: Vec::new(),
            stroke: middle.strokes.first().copied().unwrap_or_default(),
            lines,
            length,
            alien: 0.0,
            share: length / self.all.max(1.0),
            uneven,
            open: traced.open,
            areas: traced.areas,
        };
        patch.alien = self.alien(&patch);
        (area >= LEAST_AREA).then_some(patch)
    }

    /// By what share of the pitch half of the lines stand off it.
    fn unevenness(&self, links: &[Link]) -> f64 {
        let gap = |l: &Link| self.pieces[l.high].y - self.pieces[l.low].y;
        let mut off: Vec<f64> = links.iter().map(|l| (gap(l) / self.pitch - 1.0).abs()).collect();
        off.sort_by(f64::total_cmp);
        off.get(off.len() / 2).copied().unwrap_or(0.0)
    }

    /// Length of other level lines of the layer and ink inside a patch, inches.
    fn alien(&self, patch: &Patch) -> f64 {
        let frame = patch.frame();
        let from = self.pieces.partition_point(|p| p.y <= frame.y0);
        let row = self.pieces[from..].iter().take_while(|p| p.y < frame.y1);
        let other = row.filter(|p| p.strokes.iter().all(|s| !self.own.contains(s)));
        let inside = |p: &&Piece| {
            let middle = Point::new(p.x0.midpoint(p.x1), p.y);
            frame.contains(middle) && patch.areas.iter().any(|a| a.contains(middle))
        };
        other.filter(inside).map(Piece::length).sum()
    }
}
