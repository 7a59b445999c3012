//! Ends of loose lines that should meet: where they miss by as much as drawing noise puts vertices off, a
//! part is drawn rough, though no side of it may lean.

use super::noise::{HAIR, LONG, Lie, STEP, shows};
use crate::geom::vocabulary::Point;
use crate::model::linework::{Linework, Role, Stroke};

/// Side of a cell in which ends are looked for, inches: wider than any miss.
const CELL: f64 = 0.125;
/// So many ends at one place tell no more than those before.
const ENOUGH: usize = 8;

/// What lines that meet are alike in.
type Kind = (Option<Role>, usize, Option<usize>);

/// An end by its cell, with the index of its stroke and its place.
type End = ((i64, i64), usize, Point);

fn kind(s: &Stroke) -> Kind {
    (s.role, s.layer, s.group)
}

fn cell(p: Point) -> (i64, i64) {
    ((p.x / CELL).floor() as i64, (p.y / CELL).floor() as i64)
}

/// Strokes with by how much the nearest end of another like it misses each of their own, as a side that
/// leans by so much. Ends that meet nothing say nothing.
pub(super) fn misses(lines: &Linework) -> impl Iterator<Item = (usize, Lie)> + '_ {
    let open = |s: &Stroke| shows(s.role) && !s.closed && s.points.len() > 1;
    let mut ends: Vec<End> = Vec::new();
    for (i, s) in lines.strokes.iter().enumerate().filter(|(_, s)| open(s)) {
        ends.extend(s.points.first().into_iter().chain(s.points.last()).map(|p| (cell(*p), i, *p)));
    }
    ends.sort_by(|a, b| a.0.cmp(&b.0).then(a.1.cmp(&b.1)));
    let miss = move |k: usize| {
        let (at, i, p) = ends[k];
        let around = (-1..=1).flat_map(|dx| (-1..=1).map(move |dy| (dx, dy)));
        let near = around.flat_map(|(dx, dy)| {
            let c = (at.0.saturating_add(dx), at.1.saturating_add(dy));
            let from = ends.partition_point(|e| e.0 < c);
            ends[from..].iter().take_while(move |e| e.0 == c).take(ENOUGH)
        });
        let alike = |j: usize| j != i && kind(&lines.strokes[j]) == kind(&lines.strokes[i]);
        let off = |q: Point| (p.x - q.x).abs().max((p.y - q.y).abs());
        let found = near.filter(|e| alike(e.1)).map(|e| off(e.2)).fold(f64::INFINITY, f64::min);
        let lie = Lie { length: LONG, angle: 0.0, lean: found, level: true };
        (found <= STEP + HAIR).then_some((i, lie))
    };
    let count = 2 * lines.strokes.iter().filter(|s| open(s)).count();
    (0..count).filter_map(miss)
}
