//! How few hits at openings a layout can have: of each run by itself, then of two runs of near courses together,
//! whose seams keep the stagger from each other.
//!
//! Intervals are shorter than the rules' by what lies between two steps: of the ends of notches, and of the runs,
//! which are posed in whole steps.

use std::collections::BTreeMap;

use super::hit_sum::Hits;
use super::hits::{open, within};
use super::part::{Digest, Part, Span};
use super::rules::Rules;
use super::stagger::{first_seam, row};
use crate::model::at_openings::{AtOpenings, LeastAtOpenings};

/// Steps by which an interval may be wider than it truly is, at either end.
const BETWEEN_STEPS: i64 = 2;

/// A stretch of first-piece lengths of one way, and the hits all along it.
struct Choice {
    hits: Hits,
    way: usize,
    span: Span,
}

/// How few hits any layout of these runs has.
pub(super) fn least_at_openings(digest: &Digest) -> LeastAtOpenings {
    let choices: Vec<Vec<Choice>> =
        digest.parts.iter().map(|p| choices(p, &digest.rules)).collect();
    let in_turn = told(in_turn(digest, &choices));
    let mut each = [0; 3];
    for of in choices.iter().filter(|of| !of.is_empty()) {
        for (i, sum) in each.iter_mut().enumerate() {
            *sum += of.iter().map(|c| c.hits.each()[i]).min().unwrap_or(0);
        }
    }
    let mut each = told(each);
    // What comes first in turn is of that sort by itself.
    each.in_notches = each.in_notches.max(in_turn.in_notches);
    LeastAtOpenings { each, in_turn }
}

fn told(each: [i64; 3]) -> AtOpenings {
    let [in_notches, on_jambs, near_jambs] = each.map(|n| usize::try_from(n).unwrap_or(0));
    AtOpenings { in_notches, on_jambs, near_jambs }
}

/// All ways to lay a part that must have a seam; none of one that needs none.
fn choices(part: &Part, rules: &Rules) -> Vec<Choice> {
    let mut out = Vec::new();
    if part.one_piece {
        return out;
    }
    for (way, w) in part.ways.iter().enumerate() {
        let steps = within(part, *w, rules, BETWEEN_STEPS);
        out.extend(open(part, way, &steps).map(|(hits, span)| Choice { hits, way, span }));
    }
    out.sort_by_key(|c| (c.hits, c.way, c.span));
    out
}

/// The fewest of the first sort, of the second where there are so few of the first, and so on: the sum over all
/// parts, and what pairs of them, none in two pairs, have over the sum of their own.
fn in_turn(digest: &Digest, choices: &[Vec<Choice>]) -> [i64; 3] {
    let least = |p: usize| choices[p].first().map_or(Hits::NONE, |c| c.hits);
    let mut sum = (0..choices.len()).fold(Hits::NONE, |sum, p| sum + least(p));
    let lawful = |p: usize| digest.parts[p].lawful > 0 && !choices[p].is_empty();
    let mut more: Vec<(Hits, usize, usize)> = Vec::new();
    for p in (0..choices.len()).filter(|p| lawful(*p)) {
        for q in digest.parts[p].near.iter().copied().filter(|q| *q > p && lawful(*q)) {
            let alone = least(p) + least(q);
            let both = together(digest, (p, &choices[p]), (q, &choices[q])).unwrap_or(alone);
            if both > alone {
                more.push((both + alone.times(-1), p, q));
            }
        }
    }
    more.sort_by_key(|(more, p, q)| (std::cmp::Reverse(*more), *p, *q));
    let mut paired = vec![false; choices.len()];
    for (more, p, q) in more {
        if !paired[p] && !paired[q] {
            (paired[p], paired[q]) = (true, true);
            sum = sum + more;
        }
    }
    sum.each()
}

/// The fewest hits of two parts whose seams keep the stagger; none where they cannot keep it.
fn together(
    digest: &Digest,
    (p, of_p): (usize, &[Choice]),
    (q, of_q): (usize, &[Choice]),
) -> Option<Hits> {
    let mut too_near: BTreeMap<(usize, usize), Vec<Span>> = BTreeMap::new();
    let mut sums: Vec<(Hits, &[Choice], &[Choice])> = Vec::new();
    for a in alike(of_p) {
        sums.extend(alike(of_q).map(|b| (a[0].hits + b[0].hits, a, b)));
    }
    sums.sort_by_key(|s| s.0);
    let mut can = |a: &Choice, b: &Choice| {
        let off = too_near.entry((a.way, b.way)).or_insert_with(|| {
            too_near_by(&digest.rules, (&digest.parts[p], a.way), (&digest.parts[q], b.way))
        });
        let (low, high) = (a.span.0 - b.span.1, a.span.1 - b.span.0);
        let before = off.partition_point(|o| o.0 < low);
        before == 0 || off[before - 1].1 <= high
    };
    let stands =
        |s: &&(Hits, &[Choice], &[Choice])| s.1.iter().any(|a| s.2.iter().any(|b| can(a, b)));
    sums.iter().find(stands).map(|s| s.0)
}

/// Choices of a part in groups of the same hits, fewest first.
fn alike(of: &[Choice]) -> impl Iterator<Item = &[Choice]> {
    of.chunk_by(|a, b| a.hits == b.hits)
}

/// By how much the first piece of one part is longer than that of another where some seams of both are nearer than
/// the stagger: open intervals, none meeting another, rising.
fn too_near_by(rules: &Rules, (p, way): (&Part, usize), (q, other): (&Part, usize)) -> Vec<Span> {
    let (reach, (x, seams, pitch)) = (rules.stagger - BETWEEN_STEPS, row(q, other, 0, rules));
    let w = p.ways[way];
    let mut all: Vec<Span> = Vec::new();
    for i in 0..w.k - 1 {
        let own = first_seam(p, 0, rules) + i * w.pitch(rules);
        all.extend((0..seams).map(|j| x + j * pitch - own).map(|d| (d - reach, d + reach)));
    }
    all.sort_unstable();
    let mut out: Vec<Span> = Vec::new();
    for (a, b) in all.into_iter().filter(|s| s.0 < s.1) {
        match out.last_mut() {
            // Where two only touch, a seam may stand between them.
            Some(last) if a < last.1 => last.1 = last.1.max(b),
            _ => out.push((a, b)),
        }
    }
    out
}
