//! Level lines of one layer and ink, piece by piece: what drawn courses are looked for among.

use std::collections::BTreeMap;

use crate::geom::polygon::bounds;
use crate::geom::vocabulary::{Point, Rect};
use crate::model::drawing::Ink;
use crate::model::layer_name::own_name;
use crate::model::linework::{Linework, Role, Stroke};

/// A line leans no more than this over its length, and in all, inches: prints round their points.
const LEAN: f64 = 0.01;
const LEAN_MOST: f64 = 1.0 / 16.0;
/// Shorter lines, inches, are dots.
const SHORTEST: f64 = 0.25;
/// Ends nearer than this, inches, stand over one another; no end is moved farther (prints round their
/// points).
const ENDS: f64 = 1.0 / 16.0;
/// Boards drawn as closed outlines are no higher than this, inches, the widest exposure.
const BOARD: f64 = 14.0;

/// Fields of layer names that say notes and marks (the fields of the US National CAD Standard, and words).
const NOTES: [&str; 9] = ["note", "notes", "text", "texts", "txt", "iden", "symb", "tag", "tags"];

/// Layer and ink of lines drawn in one go.
pub(super) type Key = (usize, Ink);

/// A level line, or what is left of one between openings.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Piece {
    pub(super) y: f64,
    pub(super) x0: f64,
    pub(super) x1: f64,
    /// Indices of the strokes it is drawn by: more than one where they overlap.
    pub(super) strokes: Vec<usize>,
    /// How far over it the second line of the same board is drawn, inches; none where boards have one.
    pub(super) second: Option<f64>,
}

impl Piece {
    pub(super) fn length(&self) -> f64 {
        self.x1 - self.x0
    }

    /// What it shares with another from side to side.
    pub(super) fn over(&self, other: &Piece) -> f64 {
        self.x1.min(other.x1) - self.x0.max(other.x0)
    }
}

/// Whether a line may be one of drawn courses: not what is drawn on a layer for something else.
pub(in crate::normalize) fn may_be_course(s: &Stroke) -> bool {
    s.part_of.is_none() && matches!(s.role, None | Some(Role::Texture | Role::Wall))
}

/// Whether a layer holds notes and marks by its name: lines in them are section marks and underlines.
fn is_of_notes(name: &str) -> bool {
    let name = own_name(name).to_lowercase();
    let mut fields = name.split(|c: char| !c.is_alphanumeric());
    fields.any(|f| NOTES.contains(&f) || f.starts_with("anno") || f.starts_with("anntext"))
}

/// Which layers hold notes and marks.
pub(in crate::normalize) fn of_notes(lines: &Linework) -> Vec<bool> {
    lines.layers.iter().map(|l| is_of_notes(&l.layer.name)).collect()
}

/// Level pieces by layer and ink, each list bottom to top and left to right. `seen` says which places are
/// looked at.
pub(super) fn by_key(
    lines: &Linework,
    seen: impl Fn(Rect) -> bool,
    most: usize,
) -> BTreeMap<Key, Vec<Piece>> {
    let mut out: BTreeMap<Key, Vec<Piece>> = BTreeMap::new();
    let (mut count, notes) = (0, of_notes(lines));
    // A layer that the job gives a role is what the job says.
    let noted = |s: &Stroke| s.role.is_none() && notes.get(s.layer) == Some(&true);
    let all = lines.strokes.iter().enumerate();
    for (i, s) in all.filter(|(_, s)| may_be_course(s) && !noted(s)) {
        let Some(b) = bounds(&s.points) else { continue };
        if (s.closed && (s.points.len() > 5 || b.height() > BOARD)) || !seen(b) {
            continue;
        }
        let closing = s.closed.then(|| s.points.last().zip(s.points.first())).flatten();
        let sides = s.points.windows(2).map(|w| (w[0], w[1]));
        for (p, q) in sides.chain(closing.map(|(a, b)| (*a, *b))) {
            if count < most && is_level(p, q) {
                count += 1;
                out.entry((s.layer, s.ink)).or_default().push(Piece {
                    y: p.y.midpoint(q.y),
                    x0: p.x.min(q.x),
                    x1: p.x.max(q.x),
                    strokes: vec![i],
                    second: None,
                });
            }
        }
    }
    out.into_iter().map(|(k, list)| (k, settled(list))).collect()
}

/// Whether a line is level but for rounding.
pub(super) fn is_level(p: Point, q: Point) -> bool {
    let (rise, run) = ((p.y - q.y).abs(), (p.x - q.x).abs());
    run >= SHORTEST && rise <= (LEAN * run).clamp(1.0 / 64.0, LEAN_MOST)
}

/// Pieces in order, those that overlap at one level joined, ends that stand over one another plumb.
fn settled(mut list: Vec<Piece>) -> Vec<Piece> {
    plumb_ends(&mut list);
    list.sort_by(|a, b| a.y.total_cmp(&b.y).then(a.x0.total_cmp(&b.x0)));
    let mut out: Vec<Piece> = Vec::new();
    let mut row: Vec<Piece> = Vec::new();
    for p in list {
        if row.first().is_some_and(|f| p.y - f.y > 1.0 / 64.0) {
            out.extend(joined(std::mem::take(&mut row)));
        }
        row.push(p);
    }
    out.extend(joined(row));
    out
}

/// Pieces of one level, those that overlap made one; what only meets end to end stays two.
fn joined(mut row: Vec<Piece>) -> Vec<Piece> {
    row.sort_by(|a, b| a.x0.total_cmp(&b.x0).then(a.x1.total_cmp(&b.x1)));
    let mut out: Vec<Piece> = Vec::new();
    for p in row {
        match out.last_mut() {
            Some(last) if p.x0 < last.x1 - ENDS => {
                last.x1 = last.x1.max(p.x1);
                last.strokes.extend(p.strokes);
            }
            _ => out.push(p),
        }
    }
    out
}

/// Ends that stand over one another but for rounding are set to the middle one of them.
fn plumb_ends(list: &mut [Piece]) {
    let mut ends: Vec<(f64, usize, bool)> = Vec::new();
    for (i, p) in list.iter().enumerate() {
        ends.extend([(p.x0, i, false), (p.x1, i, true)]);
    }
    ends.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
    let mut from = 0;
    while from < ends.len() {
        let start = ends[from].0;
        let to = from + ends[from..].iter().take_while(|e| e.0 - start <= ENDS).count();
        let middle = ends[from + (to - from) / 2].0;
        for (_, i, right) in &ends[from..to] {
            if *right {
                list[*i].x1 = middle;
            } else {
                list[*i].x0 = middle;
            }
        }
        from = to;
    }
    // A piece no longer than what ends are moved by stays as it is drawn, turned the right way.
    list.iter_mut().filter(|p| p.x0 > p.x1).for_each(|p| std::mem::swap(&mut p.x0, &mut p.x1));
}

#[cfg(test)]
mod tests {
    use super::*;

    fn piece(y: f64, x0: f64, x1: f64) -> Piece {
        Piece { y, x0, x1, strokes: vec![0], second: None }
    }

    #[test]
    fn what_overlaps_is_one_piece_and_rounded_ends_stand_plumb() {
        let list = vec![
            piece(4.0, 0.02, 60.0),
            piece(0.0, 0.0, 50.0),
            piece(0.0, 40.0, 100.0),
            piece(4.0, 60.0, 100.03),
        ];
        let found = settled(list);
        assert_eq!(found.len(), 3);
        assert_eq!((found[0].x1, found[0].strokes.len()), (found[2].x1, 2));
        assert_eq!(found[0].x0, found[1].x0);
        assert_eq!((found[1].x1, found[2].x0), (60.0, 60.0));
    }
}
