//! Lengths longer than stock parted, pieces marked, and each assigned to a stock length.

use std::collections::{BTreeMap, BTreeSet};

use super::by_wall;
use crate::geom::tol::{ROUNDING, snap};
use crate::geom::vocabulary::Point;
use crate::job::Job;
use crate::model::house::{DrawnElevation, DrawnWall, House};
use crate::model::ids::{TrimMark, TrimStockId, WallId};
use crate::model::post_angle::PostAngle;
use crate::model::receiver::Field;
use crate::model::trim::{TrimEnd, TrimKind, TrimPiece, TrimStock};
use crate::real::Real;

/// Shortest length at the end of a run of boards, inches, where the one before can give way: common
/// practice, no source.
pub(super) const LEAST_LAST: f64 = 12.0;
/// Shortest side or board worth a piece, inches: less is drawing noise, no source.
pub(super) const LEAST: f64 = 1.0;

/// Shortest length of trim along a side of a wall, inches: a shorter side is left to its neighbors, and the
/// last length of a run takes as much from the one before. Common practice, no source.
pub(super) const LEAST_ALONG: f64 = 2.0;

/// The wall a trim piece is on.
#[derive(Clone, Copy, Debug)]
pub(super) struct Place<'a> {
    /// Its elevation.
    pub elevation: &'a DrawnElevation,
    /// The wall.
    pub wall: &'a DrawnWall,
}

impl<'a> Place<'a> {
    /// The place of a field, if its indices stand.
    pub(super) fn of(house: &'a House, field: &Field) -> Option<Self> {
        let elevation = house.elevations.get(field.elevation)?;
        Some(Place { elevation, wall: elevation.walls.get(field.wall)? })
    }

    /// A piece from `from` to `to`, as long as they are apart and `extra` more.
    pub(super) fn piece(
        &self,
        kind: TrimKind,
        from: Point,
        to: Point,
        extra: f64,
        ends: [TrimEnd; 2],
    ) -> TrimPiece {
        TrimPiece {
            mark: TrimMark::default(),
            kind,
            elevation: self.elevation.name.clone(),
            wall: self.wall.id.clone(),
            opening: None,
            from: [from.x, from.y],
            to: [to.x, to.y],
            path: Vec::new(),
            length: snap(from.distance(to) + extra),
            width: None,
            angle: None,
            ends,
            stock: TrimStockId::default(),
            shared_with: None,
        }
    }
}

/// Parts a piece longer than `stock` into stock lengths from its `from` end, each next one lapped
/// over the last by `lap` (negative for a gap between butted lengths), none shorter than the least.
pub(super) fn part(piece: TrimPiece, stock: f64, lap: f64) -> Vec<TrimPiece> {
    parted(piece, stock, lap, LEAST_ALONG)
}

/// As [`part`], the last length no shorter than `least` where the one before it can give way.
pub(super) fn parted(piece: TrimPiece, stock: f64, lap: f64, least: f64) -> Vec<TrimPiece> {
    if piece.length <= stock + ROUNDING || stock <= lap.max(0.0) + 1.0 {
        return vec![piece];
    }
    if !piece.path.is_empty() {
        return parted_bent(piece, stock, lap);
    }
    let (from, to) = (at(piece.from), at(piece.to));
    let drawn = from.distance(to);
    if drawn <= 0.0 {
        return vec![piece];
    }
    // The drawn ends stand inside the cut length where tabs or slants add to it.
    let before = beyond(&piece, piece.length - drawn);
    let place = |cut: f64| match before {
        Some(before) => from + (to - from) / drawn * (cut - before).clamp(0.0, drawn),
        None => from + (to - from) / piece.length * cut,
    };
    let mut out = Vec::new();
    let mut done = 0.0;
    while done < piece.length - ROUNDING {
        let mut length = stock.min(piece.length - done);
        let left = piece.length - done - length;
        // The last one begins a lap before the one before it ends.
        if left > ROUNDING && left + lap < least && length > 2.0 * least + lap.abs() {
            length -= least - left - lap;
        }
        let mut next = piece.clone();
        next.length = snap(length);
        next.from = pair(place(done));
        next.to = pair(place(done + length));
        let last = done + length >= piece.length - ROUNDING;
        if done > 0.0 {
            next.ends[0] = TrimEnd::Square;
        }
        if !last {
            next.ends[1] = if lap > 0.0 { TrimEnd::Lap(lap) } else { TrimEnd::Square };
        }
        out.push(next);
        if last {
            break;
        }
        done += length - lap;
    }
    out
}

/// How much of what a piece is cut longer than drawn lies before its drawn beginning; `None` where it is
/// no longer.
fn beyond(piece: &TrimPiece, more: f64) -> Option<f64> {
    if more <= ROUNDING {
        return None;
    }
    let slant = |e: &TrimEnd| match e {
        TrimEnd::Miter(angle) => angle.to_radians().tangent(),
        _ => 0.0,
    };
    let [first, last] = [&piece.ends[0], &piece.ends[1]].map(slant);
    let tabbed = matches!(piece.ends[0], TrimEnd::Tab(_) | TrimEnd::MiterTab { .. });
    Some(match first + last > 0.0 && !tabbed {
        true => more * first / (first + last),
        false => more,
    })
}

/// A bent piece in lengths along its line, each next one lapped over the last.
fn parted_bent(piece: TrimPiece, stock: f64, lap: f64) -> Vec<TrimPiece> {
    let pitch = stock - lap;
    let count = ((piece.length - lap) / pitch - ROUNDING).ceil().max(1.0) as usize;
    (0..count)
        .map(|k| {
            let from = k as f64 * pitch;
            let to = (from + stock).min(piece.length);
            let mut next = piece.clone();
            next.path = stretch(&piece.path, from, to);
            next.length = snap(to - from);
            next.from = next.path.first().copied().unwrap_or(piece.from);
            next.to = next.path.last().copied().unwrap_or(piece.to);
            if k > 0 {
                next.ends[0] = TrimEnd::Square;
            }
            if k + 1 < count {
                next.ends[1] = if lap > 0.0 { TrimEnd::Lap(lap) } else { TrimEnd::Square };
            }
            next
        })
        .collect()
}

/// The part of a line between two distances along it.
fn stretch(line: &[[f64; 2]], from: f64, to: f64) -> Vec<[f64; 2]> {
    let mut out: Vec<[f64; 2]> = Vec::new();
    let mut done = 0.0;
    for w in line.windows(2) {
        let (a, b) = (at(w[0]), at(w[1]));
        let long = a.distance(b);
        let (low, high) = ((from - done).max(0.0), (to - done).min(long));
        if long > 0.0 && high > low {
            let on = |s: f64| pair(a + (b - a) * (s / long));
            if out.is_empty() {
                out.push(on(low));
            }
            out.push(on(high));
        }
        done += long;
    }
    out
}

fn at(p: [f64; 2]) -> Point {
    Point::new(p[0], p[1])
}

fn pair(p: Point) -> [f64; 2] {
    [snap(p.x), snap(p.y)]
}

/// Mark prefix of a kind, by the trade's words.
fn prefix(kind: TrimKind) -> &'static str {
    match kind {
        TrimKind::Starter => "ST",
        TrimKind::OutsidePost => "OP",
        TrimKind::InsidePost => "IP",
        TrimKind::JambChannel => "JJ",
        TrimKind::HeadChannel => "JH",
        TrimKind::SillChannel => "JS",
        TrimKind::BentChannel => "JB",
        TrimKind::WallChannel => "JW",
        TrimKind::CornerChannel => "JC",
        TrimKind::RakeChannel => "JR",
        TrimKind::RoofChannel => "JL",
        TrimKind::FinishTrim => "FT",
        TrimKind::DripCap => "DC",
        TrimKind::Surround => "SU",
        TrimKind::CornerCover => "CC",
        TrimKind::Frieze => "FR",
        TrimKind::Band => "BB",
        TrimKind::Filler => "FB",
        TrimKind::TopBase => "TB",
        TrimKind::TopFace => "TF",
        TrimKind::TopPanel => "TP",
        TrimKind::Crown => "CR",
        TrimKind::SillFlashing => "FS",
        TrimKind::JambFlashing => "FJ",
        TrimKind::HeadFlashing => "FH",
    }
}

/// Marks every piece and gives it its stock length: the fewest of each stock, each for one wall where it can be.
pub(super) fn mark_and_cut(pieces: &mut [TrimPiece], job: &Job) {
    for kind in TrimKind::ALL {
        for (n, p) in pieces.iter_mut().filter(|p| p.kind == kind).enumerate() {
            p.mark = format!("{}{}", prefix(kind), n + 1).into();
        }
    }
    let mut places: BTreeMap<WallId, usize> = BTreeMap::new();
    for p in pieces.iter() {
        let next = places.len();
        places.entry(p.wall.clone()).or_insert(next);
    }
    let place = |p: &TrimPiece| places.get(&p.wall).copied().unwrap_or(0);
    // Posts for one angle are cut from stock made for it.
    let lots: BTreeSet<(TrimStock, Option<PostAngle>)> =
        pieces.iter().map(|p| (p.kind.stock(), p.angle)).collect();
    for (stock, angle) in lots {
        let length = job.stock(stock);
        let of = |p: &TrimPiece| (p.kind.stock(), p.angle) == (stock, angle);
        let mine: Vec<usize> = (0..pieces.len()).filter(|i| of(&pieces[*i])).collect();
        let lengths: Vec<f64> = mine.iter().map(|i| pieces[*i].length.min(length)).collect();
        let walls: Vec<usize> = mine.iter().map(|i| place(&pieces[*i])).collect();
        let plan = by_wall::plan(&lengths, &walls, length, job.seams.kerf);
        for (n, bin) in plan.iter().enumerate() {
            for k in bin {
                pieces[mine[*k]].stock = stock.length_id(angle, n + 1);
            }
        }
    }
}
