//! Which pieces are cut alike: cut square, cut along a rake and nothing else, or shaped; a shaped cut and
//! its mirror image are one.

use std::collections::BTreeMap;

use super::seam_ends::cut_at_seams;
use crate::layout::Layout;
use crate::layout::course::LaidCourse;
use crate::layout::piece::{EndCut, Piece, PieceEnd};
use crate::layout::told;
use crate::model::half::Half;
use crate::model::hold::Hold;
use crate::model::notch::{Contour, Notch, NotchSide};
use crate::units::LengthStyle;

/// How a piece is cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum CutKind {
    /// Square, or not at all.
    Square,
    /// Along a rake, and nothing else.
    Raked,
    /// As a cutting sheet shows: its number there, and whether it is the mirror image.
    Shaped(usize, bool),
}

/// Pieces with one cut.
pub(super) struct Cut<'a> {
    /// Its number on the cutting sheets.
    pub(super) number: usize,
    /// Which ends are cut and meet a seam.
    pub(super) meets: (bool, bool),
    /// The piece that is drawn.
    pub(super) piece: &'a Piece,
    pub(super) course: &'a LaidCourse,
    /// Pieces cut so.
    pub(super) pieces: Vec<&'a Piece>,
    /// Pieces that are its mirror image.
    pub(super) mirrored: Vec<&'a Piece>,
    /// Ripped along its whole length and nothing else: its pieces may differ in length.
    pub(super) ripped_alone: bool,
}

/// The shaped cuts of a house, and the kind of every piece.
pub(super) struct Cuts<'a> {
    pub(super) shaped: Vec<Cut<'a>>,
    kinds: BTreeMap<&'a str, CutKind>,
}

/// Kind, angle in hundredths, contour: along and up in 1/256 in, from its own end.
type EndKey = (u8, i64, Vec<[i64; 2]>);
/// Edge, left, width, depth, foot in 1/256 in, contour.
type NotchKey = (u8, [i64; 4], Vec<[i64; 2]>);

/// What makes two pieces the same cut, from figures as they are told.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct Key {
    notched: bool,
    ripped: bool,
    length: i64,
    ends: [EndKey; 2],
    rip: Option<(i64, i64)>,
    notches: Vec<NotchKey>,
    work: ([u32; 3], bool, Vec<Hold>),
    /// What a piece has over its face hangs on the course; a cut end at a seam has more to cut.
    face: i64,
    meets: [bool; 2],
    half: Option<Half>,
}

fn fine(inches: f64) -> i64 {
    (inches * 256.0).round() as i64
}

impl Key {
    fn of(p: &Piece, k: &LaidCourse, meets: (bool, bool), style: LengthStyle) -> Self {
        let p = told::piece(p, style);
        let alone = ripped_alone(&p);
        let w = &p.edge_work;
        // The length of a plain rip, and what is punched along it, stand beside its mark.
        let work = if alone { [0; 3] } else { [w.slots, w.lugs, w.trim_nails] };
        let mut notches: Vec<NotchKey> = p.notches.iter().map(notch).collect();
        notches.sort();
        Key {
            notched: !p.notches.is_empty(),
            ripped: p.rip.is_some(),
            length: if alone { 0 } else { fine(p.length) },
            ends: [end(&p.ends[0], 0.0, 1.0), end(&p.ends[1], p.length, -1.0)],
            rip: p.rip.as_ref().map(|r| (fine(r.from), fine(r.to))),
            notches,
            work: (work, w.furring, w.holds.clone()),
            face: fine(k.top - k.bottom),
            meets: [meets.0, meets.1],
            half: p.half,
        }
    }

    /// The key of the mirror image.
    fn mirrored(&self) -> Self {
        let turned = |q: &[i64; 2]| [self.length - q[0], q[1]];
        let one = |(side, [left, width, depth, foot], points): &NotchKey| {
            let side = match side {
                2 => 3,
                3 => 2,
                other => *other,
            };
            let mut points: Vec<[i64; 2]> = points.iter().map(turned).collect();
            if side < 2 {
                points.reverse();
            }
            (side, [self.length - left - width, *width, *depth, *foot], points)
        };
        let mut notches: Vec<NotchKey> = self.notches.iter().map(one).collect();
        notches.sort();
        let [left, right] = self.ends.clone();
        let [l, r] = self.meets;
        Key { ends: [right, left], notches, meets: [r, l], ..self.clone() }
    }
}

/// An end, its contour measured from `at` inwards.
fn end(e: &PieceEnd, at: f64, inwards: f64) -> EndKey {
    let kind = match e.cut {
        // A factory end is as good as a square cut at the same place.
        EndCut::Factory | EndCut::Square => 0,
        EndCut::Angled => 1,
        EndCut::Shaped => 2,
    };
    let points = e.contour.iter().flat_map(|c| &c.points);
    let points = points.map(|q| [fine((q[0] - at) * inwards), fine(q[1])]).collect();
    (kind, (e.angle * 100.0).round() as i64, points)
}

fn notch(n: &Notch) -> NotchKey {
    let side = match n.side {
        NotchSide::Top => 0,
        NotchSide::Bottom => 1,
        NotchSide::Left => 2,
        NotchSide::Right => 3,
        NotchSide::Hole => 4,
    };
    let points = |c: &Contour| c.points.iter().map(|q| [fine(q[0]), fine(q[1])]).collect();
    let contour = n.contour.as_ref().map(points).unwrap_or_default();
    (side, [n.left, n.width, n.depth, n.foot.unwrap_or(0.0)].map(fine), contour)
}

/// Whether a piece is ripped along its whole length and not cut otherwise.
fn ripped_alone(p: &Piece) -> bool {
    p.rip.is_some() && p.notches.is_empty() && p.is_square() && p.more.is_empty()
}

/// Whether nothing is done to a piece but at its ends.
fn ends_alone(p: &Piece) -> bool {
    p.rip.is_none() && p.notches.is_empty() && p.more.is_empty() && p.edge_work.is_none()
}

/// Whether an end is straight.
fn is_straight(e: &PieceEnd) -> bool {
    e.cut != EndCut::Shaped && e.contour.as_ref().is_none_or(|c| c.points.len() == 2)
}

fn kind(p: &Piece, meets: (bool, bool)) -> Option<CutKind> {
    if meets != (false, false) || !ends_alone(p) {
        return None;
    }
    if p.is_square() {
        return Some(CutKind::Square);
    }
    p.ends.iter().all(is_straight).then_some(CutKind::Raked)
}

impl<'a> Cuts<'a> {
    pub(super) fn of(layout: &'a Layout) -> Self {
        let style = layout.job.sheet.lengths;
        let mut kinds = BTreeMap::new();
        let mut by: BTreeMap<Key, Cut> = BTreeMap::new();
        for (_, course, run, piece) in layout.pieces() {
            let meets = cut_at_seams(&layout.job.product, run, piece);
            if let Some(kind) = kind(piece, meets) {
                kinds.insert(piece.mark.as_str(), kind);
                continue;
            }
            let key = Key::of(piece, course, meets, style);
            let other = key.mirrored();
            if other != key
                && let Some(cut) = by.get_mut(&other)
            {
                cut.mirrored.push(piece);
                continue;
            }
            let ripped_alone = ripped_alone(piece);
            let (pieces, mirrored) = (Vec::new(), Vec::new());
            let empty = Cut { number: 0, meets, piece, course, pieces, mirrored, ripped_alone };
            by.entry(key).or_insert(empty).pieces.push(piece);
        }
        // Rips, ends, then notches; the longest first within each.
        let mut sorted: Vec<(Key, Cut)> = by.into_iter().collect();
        sorted.sort_by_key(|(k, _)| (k.notched, !k.ripped, std::cmp::Reverse(k.length)));
        let mut shaped: Vec<Cut> = sorted.into_iter().map(|(_, c)| c).collect();
        for (i, cut) in shaped.iter_mut().enumerate() {
            cut.number = i + 1;
            for (pieces, mirrored) in [(&cut.pieces, false), (&cut.mirrored, true)] {
                let of = pieces.iter().map(|p| (p.mark.as_str(), CutKind::Shaped(i + 1, mirrored)));
                kinds.extend(of);
            }
        }
        Cuts { shaped, kinds }
    }

    pub(super) fn kind(&self, p: &Piece) -> CutKind {
        self.kinds.get(p.mark.as_str()).copied().unwrap_or(CutKind::Square)
    }
}
