//! Trim by stock length.

use std::collections::{BTreeMap, BTreeSet};

use super::lines::{Shares, waste, whole};
use crate::geom::tol::same;
use crate::layout::laid::LaidHouse;
use crate::layout::wall::LaidWall;
use crate::model::basis::Basis;
use crate::model::filler::RippedWidth;
use crate::model::item::{CountUnit, Item};
use crate::model::post_angle::PostAngle;
use crate::model::quantity::{Group, KindShare, TakeoffLine, WallPart};
use crate::model::takeoff::StockCut;
use crate::model::trim::{TrimEnd, TrimKind, TrimPiece, TrimStock};
use crate::packing;

pub(super) fn lines(layout: &LaidHouse, cuts: &[StockCut]) -> Vec<TakeoffLine> {
    let lots: BTreeSet<(TrimStock, Option<PostAngle>)> =
        layout.trims.iter().map(|t| (t.kind.stock(), t.angle)).collect();
    lots.into_iter()
        .filter(|(stock, _)| *stock != TrimStock::Flashing)
        .filter_map(|lot| line(layout, cuts, lot))
        .flat_map(|line| {
            let spare = spare(layout, &line);
            std::iter::once(line).chain(spare)
        })
        .collect()
}

/// Spare lengths beside those that the cutting plan takes.
fn spare(layout: &LaidHouse, of: &TakeoffLine) -> Option<TakeoffLine> {
    let Item::Trim { stock, boards, angle } = of.item else { return None };
    let percent = layout.job.takeoff.trim_spare;
    let lengths = whole(of.order * percent / 100.0);
    let basis = Basis::Spare { percent, of_count: of.order as usize, covered: None };
    let item = Item::SpareTrim { stock, boards, angle };
    (lengths > 0.0).then(|| TakeoffLine {
        net: lengths,
        order: lengths,
        color: of.color.clone(),
        stock: of.stock,
        ..TakeoffLine::new(item, CountUnit::Piece, Group::Trim, basis)
    })
}

/// Caps of posts that stop over an overhang (`TrimFact::PostCap`).
pub(super) fn caps(layout: &LaidHouse) -> Option<TakeoffLine> {
    let mut shares = Shares::default();
    let mut counts = Vec::new();
    let parts = WallParts::of(layout);
    for t in layout.trims.iter().filter(|t| t.ends.contains(&TrimEnd::Capped)) {
        if t.kind.stock() == TrimStock::OutsidePost {
            shares.add((&t.elevation, &t.wall), parts.part(t), 1, 1.0);
            counts.push(t.mark.as_str().into());
        }
    }
    (!counts.is_empty()).then(|| TakeoffLine {
        net: shares.net(),
        order: shares.net(),
        color: color(layout, TrimStock::OutsidePost),
        counts,
        shares: shares.done(layout),
        ..TakeoffLine::new(Item::PostCaps, CountUnit::Piece, Group::Trim, Basis::PostCaps)
    })
}

/// The line of a stock, of posts for one angle.
fn line(
    layout: &LaidHouse,
    cuts: &[StockCut],
    (stock, angle): (TrimStock, Option<PostAngle>),
) -> Option<TakeoffLine> {
    let of = |t: &&TrimPiece| t.kind.stock() == stock && t.angle == angle;
    let mine: Vec<&TrimPiece> = layout.trims.iter().filter(of).collect();
    if mine.is_empty() {
        return None;
    }
    let boards = !layout.job.siding().receivers.has_pockets();
    let length = layout.job.stock(stock);
    let mut shares = Shares::default();
    let parts = WallParts::of(layout);
    for t in &mine {
        shares.add((&t.elevation, &t.wall), parts.part(t), 1, t.length / length);
    }
    let used: f64 = mine.iter().map(|t| t.length).sum();
    let item = Item::Trim { stock, boards, angle };
    let bought = cuts.iter().filter(|c| c.item == item.id()).count();
    let lengths: Vec<f64> = mine.iter().map(|t| t.length.min(length)).collect();
    let basis = Basis::TrimCut {
        pieces: mine.len(),
        used,
        bought,
        length,
        pocket: (pocketed(stock) && !boards).then(|| layout.job.pocket()),
        least: packing::bound(&lengths, length, layout.job.seams.kerf, bought),
        bent_laps: (stock == TrimStock::FlexibleChannel).then(|| laps(&mine)),
        widths: widths(&mine),
    };
    Some(TakeoffLine {
        net: shares.net(),
        order: bought as f64,
        waste: waste(used, bought as f64 * length),
        color: color(layout, stock),
        stock: Some(length),
        length: Some(used),
        counts: mine.iter().map(|t| t.mark.as_str().into()).collect(),
        kinds: kinds(&mine),
        shares: shares.done(layout),
        ..TakeoffLine::new(item, CountUnit::Piece, Group::Trim, basis)
    })
}

/// Pieces by the width they are ripped to, narrow ones first.
fn widths(pieces: &[&TrimPiece]) -> Vec<RippedWidth> {
    let mut out: Vec<RippedWidth> = Vec::new();
    for t in pieces {
        let Some(width) = t.width else { continue };
        let Some(of) = out.iter_mut().find(|w| same(w.width, width)) else {
            out.push(RippedWidth { width, pieces: 1, length: t.length });
            continue;
        };
        of.pieces += 1;
        of.length += t.length;
    }
    out.sort_by(|a, b| a.width.total_cmp(&b.width));
    out
}

/// How much of the length of pieces is laps.
fn laps(pieces: &[&TrimPiece]) -> f64 {
    let of = |e: &TrimEnd| if let TrimEnd::Lap(lap) = e { *lap } else { 0.0 };
    pieces.iter().flat_map(|t| &t.ends).map(of).sum()
}

/// Pieces and length of each kind.
fn kinds(pieces: &[&TrimPiece]) -> Vec<KindShare> {
    let mut kinds: BTreeMap<TrimKind, KindShare> = BTreeMap::new();
    for t in pieces {
        let share = KindShare { kind: t.kind, pieces: 0, length: 0.0 };
        let share = kinds.entry(t.kind).or_insert(share);
        share.pieces += 1;
        share.length += t.length;
    }
    kinds.into_values().collect()
}

/// Whether a stock takes the ends of panels in a pocket.
pub(super) fn pocketed(stock: TrimStock) -> bool {
    use TrimStock::{FlexibleChannel, InsidePost, JChannel, OutsidePost};
    matches!(stock, OutsidePost | InsidePost | JChannel | FlexibleChannel)
}

/// Parts of walls that trim stands on, looked up by wall.
pub(super) struct WallParts<'a>(BTreeMap<(&'a str, &'a str), &'a LaidWall>);

impl<'a> WallParts<'a> {
    pub(super) fn of(layout: &'a LaidHouse) -> Self {
        WallParts(layout.walls().map(|(e, w)| ((e.name.as_str(), w.id.as_str()), w)).collect())
    }

    /// The part a piece of trim stands on: that of its middle.
    pub(super) fn part(&self, t: &TrimPiece) -> Option<WallPart> {
        let wall = self.0.get(&(t.elevation.as_str(), t.wall.as_str()))?;
        wall.part_at(t.place(0.5)[1])
    }
}

/// Starter strip is behind the siding and takes no color unless the job gives it one.
fn color(layout: &LaidHouse, stock: TrimStock) -> String {
    let own = layout.job.trim.colors.get(&stock).cloned();
    let panels = || match stock {
        TrimStock::Starter => String::new(),
        _ => layout.job.product.color.clone(),
    };
    own.unwrap_or_else(panels)
}
