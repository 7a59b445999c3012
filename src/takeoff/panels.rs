//! Panels, cartons and squares: separate numbers (`TakeoffFact::ThreeCounts`).

use std::collections::BTreeSet;

use super::lines::{Shares, siding_piece, waste, whole};
use super::shown::shown;
use crate::job::Stock;
use crate::layout::laid::LaidHouse;
use crate::layout::piece::{Panel, Piece};
use crate::model::basis::{Basis, SpareCover};
use crate::model::half::Half;
use crate::model::item::{CountUnit, Item, MixedStock, SidingPiece};
use crate::model::quantity::{Group, TakeoffLine, WallPart};
use crate::real::Total;

/// Square feet one panel covers: length times exposure, the lap not taken off, as in trade lists
/// (`TakeoffFact::CoveragePerPiece`).
pub(super) fn coverage(layout: &LaidHouse) -> f64 {
    covered(layout, layout.first_length())
}

fn covered(layout: &LaidHouse, length: f64) -> f64 {
    layout.job.product.exposure * length / 144.0
}

/// Panels of one stock length, each a line of its own; one for all where the job has one length.
pub(super) struct Lot<'a> {
    pub length: f64,
    pub panels: Vec<&'a Panel>,
    /// Panels or boards.
    pub piece: SidingPiece,
    /// Which of the layout's stocks it is, where there are several.
    pub mixed: Option<MixedStock>,
    /// Panels in a carton.
    pub carton: f64,
    /// Spare panels by the job's percentage.
    pub wanted: f64,
    /// Of these, what is added: none where whole cartons leave as many.
    pub spare: f64,
}

impl Lot<'_> {
    /// Panels laid.
    pub(super) fn count(&self) -> f64 {
        self.panels.len() as f64
    }

    /// Cartons that hold them and the spare ones.
    pub(super) fn cartons(&self) -> f64 {
        whole((self.count() + self.spare) / self.carton)
    }

    /// Panels in these cartons.
    pub(super) fn bought(&self) -> f64 {
        self.cartons() * self.carton
    }

    /// Panels that whole cartons of those laid leave over.
    fn left_over(&self) -> f64 {
        whole(self.count() / self.carton) * self.carton - self.count()
    }

    pub(super) fn panels_item(&self) -> Item {
        Item::Panels { piece: self.piece, stock: self.mixed }
    }

    pub(super) fn spare_item(&self) -> Item {
        Item::SparePanels { piece: self.piece, stock: self.mixed }
    }

    pub(super) fn pieces<'a>(&self, layout: &'a LaidHouse) -> Vec<&'a Piece> {
        let mine: BTreeSet<&str> = self.panels.iter().map(|p| p.id.as_str()).collect();
        layout.pieces().map(|(.., p)| p).filter(|p| mine.contains(p.panel.as_str())).collect()
    }
}

/// The lots, in the stocks' order. Of several lengths one that no panel is cut from has none.
pub(super) fn lots(layout: &LaidHouse) -> Vec<Lot<'_>> {
    let lot = |(stock, of_job): (usize, &Stock)| {
        let panels: Vec<&Panel> =
            layout.panels.iter().filter(|p| layout.stock_of(p) == stock).collect();
        let wanted = whole(panels.len() as f64 * layout.job.takeoff.spare / 100.0);
        let carton = f64::from(of_job.carton.max(1));
        let length = of_job.length;
        let mixed = (layout.stocks.len() > 1).then_some(MixedStock { place: stock, length });
        let piece = siding_piece(layout);
        let mut lot = Lot { length, panels, piece, mixed, carton, wanted, spare: 0.0 };
        if lot.left_over() < wanted {
            lot.spare = wanted;
        }
        lot
    };
    let mut out: Vec<Lot> = layout.stocks.iter().enumerate().map(lot).collect();
    if out.iter().any(|l| !l.panels.is_empty()) {
        out.retain(|l| !l.panels.is_empty());
    } else {
        out.truncate(1);
    }
    out
}

/// Spare panels by the job's percentage.
pub(super) fn spare(layout: &LaidHouse) -> f64 {
    lots(layout).iter().map(|l| l.spare).total()
}

/// Panels laid, by the length of the first.
pub(super) fn laid(layout: &LaidHouse) -> usize {
    let length: f64 = layout.panels.iter().map(|p| p.stock).total();
    match layout.stocks.len() {
        0 | 1 => layout.panels.len(),
        _ => whole(length / layout.first_length()) as usize,
    }
}

/// Cartons that hold so many panels of the first length.
pub(super) fn cartons(layout: &LaidHouse, panels: f64) -> f64 {
    whole(panels / layout.stocks.first().map_or(1.0, |s| f64::from(s.carton.max(1))))
}

/// Length that a piece takes of its panel: none from the upper half of one that is ripped for another
/// course, since that length is taken already.
pub(super) fn taken(piece: &Piece) -> f64 {
    if piece.half == Some(Half::Upper) { 0.0 } else { piece.length }
}

pub(super) fn lines(layout: &LaidHouse) -> Vec<TakeoffLine> {
    let lots = lots(layout);
    let mut out: Vec<TakeoffLine> = lots.iter().map(|l| panels(layout, l)).collect();
    out.extend(lots.iter().filter(|l| l.wanted > 0.0).map(|l| spare_panels(layout, l)));
    if !sold_singly(layout) {
        out.extend(lots.iter().map(|l| carton_line(layout, l)));
    }
    out.extend(squares(layout, &lots));
    out
}

/// A line of siding in its color.
fn line(layout: &LaidHouse, item: Item, unit: CountUnit, basis: Basis) -> TakeoffLine {
    TakeoffLine {
        color: layout.job.product.color.clone(),
        ..TakeoffLine::new(item, unit, Group::Panels, basis)
    }
}

fn spare_panels(layout: &LaidHouse, lot: &Lot) -> TakeoffLine {
    let covered = (lot.spare < lot.wanted).then(|| SpareCover::Cartons { over: lot.left_over() });
    let percent = layout.job.takeoff.spare;
    let basis = Basis::Spare { percent, of_count: lot.panels.len(), covered };
    TakeoffLine {
        net: lot.wanted,
        order: lot.spare,
        stock: Some(lot.length),
        ..line(layout, lot.spare_item(), CountUnit::Piece, basis)
    }
}

fn carton_line(layout: &LaidHouse, lot: &Lot) -> TakeoffLine {
    let panels = lot.count() + lot.spare;
    let used: f64 = lot.pieces(layout).iter().map(|p| taken(p)).total();
    let basis = Basis::Cartons {
        piece: lot.piece,
        panels,
        spare: lot.spare,
        in_carton: lot.carton,
        over: lot.bought() - panels,
    };
    TakeoffLine {
        net: panels / lot.carton,
        order: lot.cartons(),
        waste: waste(used, lot.bought() * lot.length),
        ..line(layout, Item::Cartons { stock: lot.mixed }, CountUnit::Carton, basis)
    }
}

/// Whether boards are bought by the piece.
pub(super) fn sold_singly(layout: &LaidHouse) -> bool {
    layout.job.sold_singly()
}

fn panels(layout: &LaidHouse, lot: &Lot) -> TakeoffLine {
    let (length, count) = (lot.length, lot.count());
    let mine: BTreeSet<&str> = lot.panels.iter().map(|p| p.id.as_str()).collect();
    let mut shares = Shares::default();
    for (e, w) in layout.walls() {
        for c in &w.courses {
            let pieces = c.runs.iter().flat_map(|r| &r.pieces);
            for p in pieces.filter(|p| mine.contains(p.panel.as_str())) {
                shares.add((&e.name, &w.id), w.part_at(c.bottom), 1, taken(p) / length);
            }
        }
    }
    let pieces = lot.pieces(layout);
    let used: f64 = pieces.iter().map(|p| taken(p)).total();
    let shown = shown(layout, &mine);
    let basis = Basis::SidingCut {
        piece: lot.piece,
        pieces: pieces.len(),
        bought: lot.panels.len(),
        length,
        shown: 100.0 - waste(shown, count * covered(layout, length)),
    };
    TakeoffLine {
        net: shares.net(),
        order: count,
        waste: waste(used, count * length),
        stock: Some(length),
        length: Some(used),
        counts: lot.panels.iter().map(|p| p.id.as_str().into()).collect(),
        shares: shares.done(layout),
        ..line(layout, lot.panels_item(), CountUnit::Piece, basis)
    }
}

/// Net wall area in squares, by part of each wall.
fn net_squares(layout: &LaidHouse) -> Shares {
    let mut shares = Shares::default();
    for (e, w) in layout.walls() {
        let place = (e.name.as_str(), w.id.as_str());
        match w.gable_area {
            None => shares.add(place, None, 1, w.net_area / 100.0),
            Some(gable) => {
                shares.add(place, Some(WallPart::Wall), 1, (w.net_area - gable) / 100.0);
                shares.add(place, Some(WallPart::Gable), 1, gable / 100.0);
            }
        }
    }
    shares
}

fn squares(layout: &LaidHouse, lots: &[Lot]) -> [TakeoffLine; 2] {
    let each = |l: &Lot| covered(layout, l.length);
    let laid: f64 = lots.iter().map(|l| l.count() * each(l) / 100.0).total();
    let ordered: f64 = lots.iter().map(|l| l.bought() * each(l) / 100.0).total();
    let shares = net_squares(layout);
    let (net, piece) = (shares.net(), siding_piece(layout));
    let bought =
        Basis::NetArea { piece, net: net * 100.0, coverage: lots.iter().map(each).collect() };
    let cut =
        Basis::FacesCut { piece, cut: layout.panels.len(), area: laid * 100.0, net: net * 100.0 };
    [
        TakeoffLine {
            net,
            order: ordered,
            waste: waste(net, ordered),
            shares: shares.done(layout),
            ..line(layout, Item::Squares, CountUnit::Square, bought)
        },
        TakeoffLine {
            net: laid,
            waste: waste(net, laid),
            ..line(layout, Item::SquaresLaid, CountUnit::Square, cut)
        },
    ]
}
