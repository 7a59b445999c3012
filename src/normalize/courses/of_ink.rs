//! The patches that level lines of one layer and ink show.

use std::collections::BTreeSet;

use super::drawn_lines::DrawnLines;
use super::family::{Link, Span, links, together};
use super::patch::Patch;
use super::pieces::{Key, Piece, is_level};
use super::pitch::{pitches, without_pairs};
use super::trace::{Traced, Tracer};
use crate::geom::polygon::Polygon;
use crate::geom::vocabulary::{Point, Rect};

/// Fewest course lines that are looked at where an ink draws more than courses.
const LEAST_LINES: usize = 3;
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
    /// Length of all pieces, inches.
    all: f64,
}

/// Patches of one layer and ink.
pub(super) fn patches(key: Key, pieces: Vec<Piece>, lines: &DrawnLines) -> Vec<Patch> {
    let (mut pieces, upper) = without_pairs(pieces);
    let seconds: BTreeSet<usize> = upper.into_iter().flat_map(|p| p.strokes).collect();
    let all: f64 = pieces.iter().map(Piece::length).sum();
    let mut out = Vec::new();
    for pitch in pitches(&pieces) {
        let between = |over: Span, heights: Span| {
            let place = Rect::new(over.0, heights.0, over.1, heights.1);
            lines.within(place).iter().any(|((p, q), stroke)| {
                let across = q.x.min(over.1) - p.x.max(over.0);
                is_level(*p, *q) && across > 0.5 * (over.1 - over.0) && !seconds.contains(stroke)
            })
        };
        let links = links(&pieces, pitch, between);
        let used = used(&links);
        let own_length: f64 = used.iter().map(|i| pieces[*i].length()).sum();
        let alone = own_length >= ALONE * all;
        let mut own: BTreeSet<usize> =
            used.iter().flat_map(|i| pieces[*i].strokes.iter().copied()).collect();
        own.extend(seconds.iter().copied());
        let of = OfPitch { key, pitch, pieces: &pieces, lines, own: &own, all };
        for group in together(pieces.len(), &links) {
            out.extend(of.patch(&group, if alone { 2 } else { LEAST_LINES }));
        }
        if alone {
            let rest = (0..pieces.len()).filter(|i| !used.contains(i));
            out.extend(rest.filter_map(|i| of.single(i)));
        }
        // What is a course of one pitch is none of another.
        let rest = pieces.into_iter().enumerate().filter(|(i, _)| !used.contains(i));
        pieces = rest.map(|(_, p)| p).collect();
    }
    out
}

fn used(links: &[Link]) -> BTreeSet<usize> {
    links.iter().flat_map(|l| [l.low, l.high]).collect()
}

impl OfPitch<'_> {
    fn tracer<'b>(&'b self, links: &'b [Link]) -> Tracer<'b> {
        let (pieces, pitch, lines, own) = (self.pieces, self.pitch, self.lines, self.own);
        Tracer { pieces, links, pitch, lines, own }
    }

    /// Lines that hang together.
    fn patch(&self, links: &[Link], least: usize) -> Option<Patch> {
        let used: Vec<usize> = used(links).into_iter().collect();
        let mut levels: Vec<f64> = used.iter().map(|i| self.pieces[*i].y).collect();
        levels.sort_by(f64::total_cmp);
        levels.dedup_by(|b, a| *b - *a < 0.5 * self.pitch);
        if levels.len() < least {
            return None;
        }
        self.of(self.tracer(links).trace(), &used, levels.len(), self.unevenness(links))
    }

    /// One line between two drawn ends: a strip over or under an opening.
    fn single(&self, piece: usize) -> Option<Patch> {
        let traced = self.tracer(&[]).single(piece);
        (traced.open == 0.0).then(|| self.of(traced, &[piece], 1, 0.0))?
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
