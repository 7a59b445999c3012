//! How long the flashing and the surround of an opening that is no level rectangle must be
//! (`TrimFact::SillFlashing`, `TrimFact::JambFlashing`): along its outline, side by side, each strip as
//! far past its ends as the published sizes say, but into no corner that the opening goes round.

use super::along::reach;
use super::contour::{LEAST, Part, parts, turn_over};
use super::tolerance::{NEAR, same};
use crate::geom::vocabulary::Xy;
use crate::layout::wall::LaidOpening;
use crate::model::house::{EdgeKind, OpeningKind, OpeningSide};
use crate::model::trim::TrimKind;
use crate::real::Real;

/// A length with how far one may be off it, inches.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Wanted {
    pub(super) sum: f64,
    pub(super) within: f64,
}

impl Wanted {
    fn add(&mut self, length: f64, within: f64) {
        self.sum += length;
        self.within += within;
    }
}

/// What is wanted of each sort.
pub(super) struct WantedTrim {
    pub(super) surround: Wanted,
    pub(super) strips: [(TrimKind, Wanted); 3],
}

fn is_door(o: &LaidOpening) -> bool {
    matches!(o.kind, OpeningKind::Door | OpeningKind::OverheadDoor)
}

/// Whether a place is on a side at which the opening goes on: a cut sill is the foot of the wall, which a first
/// course that hangs takes down with it.
fn is_cut(o: &LaidOpening, p: Xy) -> bool {
    let foot = o.outline.iter().fold(o.sill, |low, q| low.min(q[1]));
    o.cut.iter().any(|side| match side {
        OpeningSide::Left => same(p[0], o.left),
        OpeningSide::Right => same(p[0], o.right),
        OpeningSide::Sill => same(p[1], o.sill) || same(p[1], foot),
        OpeningSide::Head => same(p[1], o.head),
    })
}

/// A stretch of a part of one sort, with what stands at its ends.
struct Stretch {
    part: usize,
    kind: EdgeKind,
    points: Vec<Xy>,
}

impl Stretch {
    /// A place in its middle.
    fn middle(&self) -> Xy {
        let (a, b) = (self.points[0], self.points[self.points.len() - 1]);
        match self.points.len() {
            2 => [(a[0] + b[0]) / 2.0, (a[1] + b[1]) / 2.0],
            n => self.points[n / 2],
        }
    }
}

/// Sorts of an outline's parts: a curve goes over from head to sill where it is plumb.
fn stretches(all: &[Part]) -> Vec<Stretch> {
    let mut out = Vec::new();
    for (part, p) in all.iter().enumerate() {
        if !p.is_curved {
            out.push(Stretch { part, kind: p.kind(), points: p.points.clone() });
            continue;
        }
        let rising = |w: &[Xy]| if w[1][0] > w[0][0] { EdgeKind::Sill } else { EdgeKind::Head };
        for w in p.points.windows(2) {
            let plumb = (w[1][0] - w[0][0]).abs() <= crate::geom::tol::SAME;
            match out.last_mut().filter(|s: &&mut Stretch| s.part == part) {
                Some(s) if plumb || s.kind == rising(w) => s.points.push(w[1]),
                _ => out.push(Stretch { part, kind: rising(w), points: w.to_vec() }),
            }
        }
    }
    // A curve all round begins anywhere: its first stretch may go on from its last.
    if all.len() == 1 && out.len() > 2 && out[0].kind == out[out.len() - 1].kind {
        let first = out.remove(0);
        if let Some(last) = out.last_mut() {
            last.points.extend(first.points.into_iter().skip(1));
        }
    }
    out
}

fn angle(a: Xy, b: Xy) -> f64 {
    (b[1] - a[1]).angle_over(b[0] - a[0])
}

/// A stretch of the outline with the two beside it.
struct Between<'a> {
    before: &'a Stretch,
    own: &'a Stretch,
    after: &'a Stretch,
}

impl Between<'_> {
    /// Turns at its two ends.
    fn turns(&self) -> [f64; 2] {
        let heading = |t: &Stretch, at_end: bool| {
            let k = if at_end { t.points.len() - 2 } else { 0 };
            angle(t.points[k], t.points[k + 1])
        };
        [(self.before, self.own), (self.own, self.after)].map(|(a, b)| {
            let between = (a.points[a.points.len() - 1], b.points[0]);
            turn_over(heading(a, true), heading(b, false), between)
        })
    }

    /// How far a strip reaches past its two ends: where something of the opening stands beside it that
    /// does not turn into the opening.
    fn past(&self, stands: impl Fn(&Stretch) -> bool) -> f64 {
        let by = if self.own.kind == EdgeKind::Jamb { 8.5 } else { 9.0 };
        let meets = |a: &Stretch, b: &Stretch| {
            reach(a.points[a.points.len() - 1], b.points[0]) < LEAST + NEAR
        };
        let [first, last] = self.turns();
        let ends = [
            meets(self.before, self.own) && stands(self.before) && first.to_degrees() > -1.0,
            meets(self.own, self.after) && stands(self.after) && last.to_degrees() > -1.0,
        ];
        ends.into_iter().filter(|e| *e).count() as f64 * by
    }
}

/// Whether another opening's outline runs along all of a plumb stretch.
fn shared(own: &Stretch, o: &LaidOpening, others: &[LaidOpening]) -> bool {
    let [a, .., b] = own.points.as_slice() else { return false };
    let beside = |n: &LaidOpening| {
        let next = n.outline.iter().cycle().skip(1);
        n.outline.iter().zip(next).any(|(p, q)| {
            let heights = |u: &Xy, v: &Xy| (u[1].min(v[1]), u[1].max(v[1]));
            let ((low, high), (l, h)) = (heights(p, q), heights(a, b));
            same(p[0], a[0]) && same(q[0], a[0]) && low < l + NEAR && high > h - NEAR
        })
    };
    own.points.len() == 2 && same(a[0], b[0]) && others.iter().filter(|n| n.id != o.id).any(beside)
}

/// What is wanted round an opening whose surround is so wide, among all of its wall: where units are joined, no
/// flashing stands along the jamb.
pub(super) fn wanted(o: &LaidOpening, others: &[LaidOpening], width: f64) -> WantedTrim {
    let all = parts(&o.outline, &[]);
    let each = stretches(&all);
    let n = each.len();
    let stands = |s: &Stretch| !is_cut(o, s.middle()) && (s.kind != EdgeKind::Sill || !is_door(o));
    let none = Wanted { sum: 0.0, within: NEAR };
    let mut surround = none;
    let mut strips = [
        (EdgeKind::Sill, TrimKind::SillFlashing, none),
        (EdgeKind::Jamb, TrimKind::JambFlashing, none),
        (EdgeKind::Head, TrimKind::HeadFlashing, none),
    ];
    for (i, own) in each.iter().enumerate().filter(|(_, s)| stands(s)) {
        let (before, after) = (&each[(i + n - 1) % n], &each[(i + 1) % n]);
        let between = Between { before, own, after };
        let drawn: f64 = own.points.windows(2).map(|w| reach(w[0], w[1])).sum();
        // What is bent is put on the grid chord by chord.
        let noise = if own.points.len() > 2 { 2e-3 * drawn } else { NEAR };
        surround.add(if width > 0.0 { drawn } else { 0.0 }, noise);
        if own.kind == EdgeKind::Jamb && shared(own, o, others) {
            continue;
        }
        let strip = drawn + between.past(stands);
        for (_, _, want) in strips.iter_mut().filter(|k| k.0 == own.kind) {
            want.add(strip, noise);
        }
    }
    WantedTrim { surround, strips: strips.map(|(_, trim, want)| (trim, want)) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_rectangle_by_its_sides_has_the_published_sizes() {
        // 36 by 48: sill and head 36 + 18, jambs 48 + 17 each.
        let outline = vec![[0.0, 0.0], [36.0, 0.0], [36.0, 48.0], [0.0, 48.0]];
        let o = LaidOpening {
            id: "front-W1".into(),
            kind: OpeningKind::Window,
            outline,
            left: 0.0,
            right: 36.0,
            sill: 0.0,
            head: 48.0,
            cut: vec![],
        };
        assert_eq!(wanted(&o, &[], 0.0).strips.map(|(_, w)| w.sum), [54.0, 130.0, 54.0]);
        assert_eq!(wanted(&o, &[], 2.0).surround.sum, 2.0 * (36.0 + 48.0));
    }
}
