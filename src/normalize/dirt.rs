//! Dirt that is mended and listed: zero lengths, exact duplicates; and dimensions whose text
//! disagrees with what they measure.

use std::collections::BTreeSet;

use super::stated;
use crate::finding::lines::LineFinding;
use crate::finding::{Finding, Findings};
use crate::geom::polygon::bounds;
use crate::geom::tol::{LEVEL, SAME};
use crate::geom::vocabulary::Point;
use crate::job::Job;
use crate::model::linework::{Linework, Role, Stroke};
use crate::origin::Origin;
use crate::units::Unit;

/// Most dimensions that are told one by one.
const MOST_TOLD: usize = 100;

/// Most places of one kind of dirt that are kept beside the first: a page shows no more.
const MOST_PLACES: usize = 200;

/// Where dirt was found.
type Places = Vec<(Origin, Point)>;

/// Takes out zero-length strokes and exact duplicates, with one finding for each kind.
pub(super) fn mend(lines: &mut Linework, weld: f64, findings: &mut Findings) {
    let mut zero: Places = vec![];
    let asides = &mut lines.asides;
    lines.strokes.retain_mut(|s| {
        // Points nearer than lengths are told apart make spurs that cross their neighbors.
        s.points.dedup_by(|b, a| a.distance(*b) <= SAME);
        while s.closed && s.points.len() > 1 && s.points.first() == s.points.last() {
            s.points.pop();
        }
        let Some(first) = s.points.first().copied() else { return false };
        if s.points.len() < 2 || is_speck(s, weld) {
            asides.entry(s.layer).or_default().empty += s.entities;
            zero.push((s.origin.clone(), first));
            return false;
        }
        true
    });
    let twice = duplicates(&mut lines.strokes);
    let mut tell = |kind: LineFinding, list: Places| {
        if let Some((origin, at)) = list.first() {
            let place = |p: &Point| lines.source(*p);
            let others = list.iter().skip(1).take(MOST_PLACES).map(|(_, p)| place(p)).collect();
            let finding = Finding::new(kind).about(origin).at(place(at)).also_at(others);
            findings.push(finding);
        }
    };
    tell(LineFinding::LineZero { lines: zero.len() }, zero);
    tell(LineFinding::LineTwice { lines: twice.len() }, twice);
}

/// Whether an open line of an outline is no longer than a tape shows and what ends are joined over: it
/// goes from no corner to another.
fn is_speck(s: &Stroke, weld: f64) -> bool {
    let outline = s.role.is_some_and(Role::is_outline) && !s.closed;
    outline && bounds(&s.points).is_some_and(|b| b.width().max(b.height()) <= weld.min(LEVEL))
}

/// Takes out strokes that say what an earlier one says, and tells where they stood. Millions of
/// strokes are compared by a fingerprint first, in order, so that none is copied.
fn duplicates(strokes: &mut Vec<Stroke>) -> Places {
    let mut prints: Vec<(u64, usize)> =
        strokes.iter().enumerate().map(|(i, s)| (fingerprint(s), i)).collect();
    prints.sort_unstable();
    let mut gone: BTreeSet<usize> = BTreeSet::new();
    let mut again: Vec<(usize, usize)> = Vec::new();
    for same in prints.chunk_by(|a, b| a.0 == b.0).filter(|c| c.len() > 1) {
        // Those kept of one fingerprint are few: as a rule one.
        let mut kept: Vec<usize> = Vec::new();
        for (_, i) in same {
            let first = kept.iter().find(|j| says_the_same(&strokes[*i], &strokes[**j]));
            if let Some(first) = first {
                gone.insert(*i);
                again.push((*first, strokes[*i].entities));
            } else {
                kept.push(*i);
            }
        }
    }
    for (first, entities) in again {
        strokes[first].entities += entities;
    }
    let twice = gone.iter().map(|i| (strokes[*i].origin.clone(), strokes[*i].points[0])).collect();
    let mut at = 0;
    strokes.retain(|_| {
        at += 1;
        !gone.contains(&(at - 1))
    });
    twice
}

/// Bits of every coordinate, an open stroke read from its lesser end.
fn bits(s: &Stroke) -> impl Iterator<Item = (u64, u64)> + '_ {
    let pair = |p: &Point| (p.x.to_bits(), p.y.to_bits());
    let turned = !s.closed && s.points.last().map(pair) < s.points.first().map(pair);
    let n = s.points.len();
    (0..n).map(move |i| pair(&s.points[if turned { n - 1 - i } else { i }]))
}

fn says_the_same(a: &Stroke, b: &Stroke) -> bool {
    a.layer == b.layer && a.closed == b.closed && bits(a).eq(bits(b))
}

/// FNV-1a over words: equal strokes have equal ones.
fn fingerprint(s: &Stroke) -> u64 {
    let mix = |h: u64, word: u64| (h ^ word).wrapping_mul(0x0100_0000_01b3).rotate_left(29);
    let start = mix(0xcbf2_9ce4_8422_2325, s.layer as u64 * 2 + u64::from(s.closed));
    bits(s).fold(start, |h, (x, y)| mix(mix(h, x), y))
}

/// A text override that disagrees with its dimension is reported, never obeyed
/// (`DrawingFact::DimensionOverride`). It stops the program unless the job accepts it: one of the two
/// figures is wrong.
pub(super) fn dimensions(lines: &Linework, job: &Job, findings: &mut Findings) {
    let unit = lines.scale.unit.unwrap_or(Unit::Inch);
    let accepted = job.drawing.accept.iter().any(|c| c == "dimension-disagrees");
    let mut told = 0;
    for m in &lines.measured {
        let Some(text) = &m.text else { continue };
        let Some(stated) = stated::nearest(text, unit, m.drawn) else { continue };
        // Drafters round to the sixteenth, or to the inch on small scales.
        if (stated - m.drawn).abs() <= 1.0 + SAME {
            continue;
        }
        told += 1;
        if told > MOST_TOLD {
            continue;
        }
        let at = lines.source(m.from);
        let kind = LineFinding::DimensionDisagrees { stated, measured: m.drawn, unit, accepted };
        findings.push(Finding::new(kind).about(&m.origin).at(at));
    }
    if told > MOST_TOLD {
        findings.push(Finding::new(LineFinding::DimensionsMore { count: told - MOST_TOLD }));
    }
}
