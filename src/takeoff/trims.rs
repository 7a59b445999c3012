//! Trim by stock length.

use std::collections::BTreeMap;

use super::lines::{Shares, waste};
use crate::layout::Layout;
use crate::layout::wall::LaidWall;
use crate::model::quantity::{Group, KindShare, TakeoffLine, Zone};
use crate::model::takeoff::StockCut;
use crate::model::trim::{TrimEnd, TrimKind, TrimPiece, TrimStock};
use crate::packing;

/// Short name of a stock's line.
pub(super) fn id(stock: TrimStock) -> String {
    if stock == TrimStock::Flashing {
        return "opening-flashing".to_owned();
    }
    stock.words().to_lowercase().replace(' ', "-")
}

pub(super) fn lines(layout: &Layout, cuts: &[StockCut]) -> Vec<TakeoffLine> {
    TrimStock::ALL
        .into_iter()
        .filter(|s| *s != TrimStock::Flashing)
        .filter_map(|stock| line(layout, cuts, stock))
        .collect()
}

/// Caps of posts that stop over an overhang (FACTS SD-101).
pub(super) fn caps(layout: &Layout) -> Option<TakeoffLine> {
    let mut shares = Shares::default();
    let mut counts = Vec::new();
    let zones = Zones::of(layout);
    for t in layout.trims.iter().filter(|t| t.ends.contains(&TrimEnd::Capped)) {
        if t.kind.stock() == TrimStock::OutsidePost {
            shares.add((&t.elevation, &t.wall), zones.zone(t), 1, 1.0);
            counts.push(t.mark.to_string());
        }
    }
    (!counts.is_empty()).then(|| TakeoffLine {
        item: "post caps".into(),
        id: "post-cap".into(),
        unit: "piece".into(),
        group: Group::Trim,
        net: shares.net(),
        order: shares.net(),
        how: "one at the foot of each corner post that stops over an overhang".into(),
        colour: colour(layout, TrimStock::OutsidePost),
        counts,
        shares: shares.done(layout),
        ..Default::default()
    })
}

fn line(layout: &Layout, cuts: &[StockCut], stock: TrimStock) -> Option<TakeoffLine> {
    let mine: Vec<&TrimPiece> = layout.trims.iter().filter(|t| t.kind.stock() == stock).collect();
    if mine.is_empty() {
        return None;
    }
    let boards = !layout.job.siding().receivers.has_pockets();
    let length = layout.job.stock(stock);
    let mut shares = Shares::default();
    let mut kinds: BTreeMap<TrimKind, (usize, f64)> = BTreeMap::new();
    let zones = Zones::of(layout);
    for t in &mine {
        shares.add((&t.elevation, &t.wall), zones.zone(t), 1, t.length / length);
        let kind = kinds.entry(t.kind).or_default();
        kind.0 += 1;
        kind.1 += t.length;
    }
    let used: f64 = mine.iter().map(|t| t.length).sum();
    let id = id(stock);
    let order = cuts.iter().filter(|c| c.item == id).count() as f64;
    let lengths: Vec<f64> = mine.iter().map(|t| t.length.min(length)).collect();
    let least = packing::bound(&lengths, length, layout.job.seams.kerf);
    let proof = if order as usize <= least {
        "no cutting plan takes fewer".to_owned()
    } else {
        format!("no cutting plan takes fewer than {least}")
    };
    let style = layout.job.sheet.lengths;
    Some(TakeoffLine {
        item: stock.words_on(boards).into(),
        unit: "piece".into(),
        group: Group::Trim,
        net: shares.net(),
        order,
        waste: waste(used, order * length),
        how: format!(
            "{} lengths, {} in all, cut from {order} of {}{}; {proof}",
            mine.len(),
            style.length(used),
            style.length(length),
            if pocketed(stock) && !boards {
                format!(" with a pocket of {}", style.short(layout.job.pocket()))
            } else {
                String::new()
            }
        ),
        colour: colour(layout, stock),
        stock: Some(length),
        length: Some(used),
        counts: mine.iter().map(|t| t.mark.to_string()).collect(),
        kinds: kinds
            .into_iter()
            .map(|(k, (pieces, length))| KindShare {
                kind: k.words_on(boards).into(),
                pieces,
                length,
            })
            .collect(),
        shares: shares.done(layout),
        id,
    })
}

/// Whether a stock takes the ends of panels in a pocket.
fn pocketed(stock: TrimStock) -> bool {
    matches!(stock, TrimStock::OutsidePost | TrimStock::InsidePost | TrimStock::JChannel)
}

/// Zones of trim, looked up by wall.
pub(super) struct Zones<'a>(BTreeMap<(&'a str, &'a str), &'a LaidWall>);

impl<'a> Zones<'a> {
    pub(super) fn of(layout: &'a Layout) -> Self {
        Zones(layout.walls().map(|(e, w)| ((e.name.as_str(), w.id.as_str()), w)).collect())
    }

    /// The zone of a piece of trim: that of its middle.
    pub(super) fn zone(&self, t: &TrimPiece) -> Option<Zone> {
        let wall = self.0.get(&(t.elevation.as_str(), t.wall.as_str()))?;
        wall.zone((t.from[1] + t.to[1]) / 2.0)
    }
}

/// Starter strip is behind the siding and takes no colour unless the job gives it one.
fn colour(layout: &Layout, stock: TrimStock) -> String {
    let own = layout.job.trim.colors.get(&stock).cloned();
    let panels = || match stock {
        TrimStock::Starter => String::new(),
        _ => layout.job.product.color.clone(),
    };
    own.unwrap_or_else(panels)
}
