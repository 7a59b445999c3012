//! What is cut from what, and what is left of it.

use std::collections::BTreeMap;

use super::panels::{lots, taken};
use crate::geom::tol::SAME;
use crate::layout::laid::LaidHouse;
use crate::layout::piece::Piece;
use crate::model::ids::ItemId;
use crate::model::post_angle::PostAngle;
use crate::model::quantity::TakeoffLine;
use crate::model::takeoff::{Leftover, Offcut, StockCut};
use crate::model::trim::{TrimPiece, TrimStock};
use crate::real::Total;

/// A stock length: what it is of, the angle it is made for, its number and its name.
type Length<'a> = (TrimStock, Option<PostAngle>, u32, &'a str);

/// Each stock length of trim with its pieces, by stock and number.
pub(super) fn trim_cuts(layout: &LaidHouse) -> Vec<StockCut> {
    let kerf = layout.job.seams.kerf;
    let mut on: BTreeMap<Length, Vec<&TrimPiece>> = BTreeMap::new();
    for t in &layout.trims {
        on.entry((t.kind.stock(), t.angle, t.stock.number(), &t.stock)).or_default().push(t);
    }
    let cut = |((stock, angle, _, name), mut pieces): (Length, Vec<&TrimPiece>)| {
        pieces.sort_by(|a, b| b.length.total_cmp(&a.length).then(a.mark.cmp(&b.mark)));
        let length = layout.job.stock(stock);
        let used: f64 = pieces.iter().map(|t| t.length).sum();
        StockCut {
            item: stock.line_id_at(angle),
            stock: name.into(),
            length,
            pieces: pieces.iter().map(|t| t.mark.clone()).collect(),
            used,
            left: (length - used - pieces.len() as f64 * kerf).max(0.0),
        }
    };
    on.into_iter().map(cut).collect()
}

/// Leftovers as long as the shortest piece a layout may use.
pub(super) fn leftovers(layout: &LaidHouse, trims: &[StockCut]) -> Vec<Leftover> {
    let least = layout.job.seams.shortest.max(1.0);
    let mut out = panel_leftovers(layout, least);
    let trims = trims.iter().filter(|c| c.left >= least - SAME).map(|c| Leftover {
        item: c.item.clone(),
        stock: c.stock.as_str().to_owned(),
        length: c.left,
        factory_end: true,
    });
    out.extend(trims);
    // Items stay in ordering order; a stable sort keeps stock order among equals.
    let mut order: Vec<ItemId> = Vec::new();
    for l in &out {
        if !order.contains(&l.item) {
            order.push(l.item.clone());
        }
    }
    let place = |l: &Leftover| order.iter().position(|i| *i == l.item).unwrap_or(0);
    out.sort_by(|a, b| place(a).cmp(&place(b)).then(b.length.total_cmp(&a.length)));
    out
}

fn panel_leftovers(layout: &LaidHouse, least: f64) -> Vec<Leftover> {
    let kerf = layout.job.seams.kerf;
    let pieces: BTreeMap<&str, &Piece> =
        layout.pieces().map(|(.., p)| (p.mark.as_str(), p)).collect();
    let mut out = Vec::new();
    let panels = lots(layout).into_iter().flat_map(|l| {
        let item = l.panels_item().id();
        l.panels.into_iter().map(move |p| (item.clone(), p))
    });
    for (line, panel) in panels {
        let mut cuts: Vec<&Piece> =
            panel.pieces.iter().filter_map(|m| pieces.get(m.as_str()).copied()).collect();
        cuts.sort_by(|a, b| a.start.total_cmp(&b.start));
        let mut left = |length: f64, factory_end: bool| {
            if length >= least - SAME {
                let (item, stock) = (line.clone(), panel.id.as_str().to_owned());
                out.push(Leftover { item, stock, length, factory_end });
            }
        };
        let mut at: f64 = 0.0;
        for p in cuts {
            left(p.start - at - kerf, at == 0.0);
            at = at.max(p.end + kerf);
        }
        left(panel.stock - at, true);
    }
    out
}

/// Bought, used, usable and scrap, by item.
pub(super) fn offcuts(
    layout: &LaidHouse,
    lines: &[TakeoffLine],
    trims: &[StockCut],
    left: &[Leftover],
) -> Vec<Offcut> {
    let mut out: Vec<Offcut> = Vec::new();
    let mut add =
        |item: ItemId, bought: f64, used: f64| match out.iter_mut().find(|o| o.item == item) {
            Some(o) => {
                o.bought += bought;
                o.used += used;
            }
            None => out.push(Offcut { item, bought, used, ..Default::default() }),
        };
    let lots = lots(layout);
    for l in &lots {
        let used = l.pieces(layout).iter().map(|p| taken(p)).total();
        add(l.panels_item().id(), l.panels.iter().map(|p| p.stock).total(), used);
    }
    let spares = lines.iter().filter(|l| l.item.spared().is_some() && l.order > 0.0);
    let spares: Vec<(ItemId, f64)> =
        spares.filter_map(|l| Some((l.id.clone(), l.order * l.stock?))).collect();
    for c in trims {
        add(c.item.clone(), c.length, c.used);
    }
    for (item, length) in &spares {
        add(item.clone(), *length, 0.0);
    }
    for o in &mut out {
        let mine = left.iter().filter(|l| l.item == o.item);
        o.usable = mine.map(|l| l.length).total();
        if spares.iter().any(|(item, _)| *item == o.item) {
            o.usable = o.bought;
        }
        o.scrap = (o.bought - o.used - o.usable).max(0.0);
    }
    out
}
