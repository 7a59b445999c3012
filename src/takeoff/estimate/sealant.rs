//! Sealant in beads, and furring behind cut edges that stand off the wall (`TrimFact::FurredUndersill`).

use crate::geom::tol::CUT;
use crate::layout::course::LaidCourse;
use crate::layout::laid::LaidHouse;
use crate::layout::piece::Piece;
use crate::layout::wall::LaidEdge;
use crate::model::basis::Basis;
use crate::model::house::EdgeKind;
use crate::model::item::{CountUnit, Item};
use crate::model::quantity::{Group, TakeoffLine};
use crate::packing;
use crate::takeoff::level_flashing::strips;
use crate::takeoff::lines::{Shares, waste, whole};

/// Cubic inches in a fluid ounce: 231 to a gallon of 128.
const OUNCE: f64 = 231.0 / 128.0;

pub(super) fn lines(layout: &LaidHouse) -> Vec<TakeoffLine> {
    sealant(layout).into_iter().chain(furring(layout)).collect()
}

fn reach(e: &LaidEdge) -> f64 {
    (e.from[0] - e.to[0]).hypot(e.from[1] - e.to[1])
}

/// Whether a bead goes along a side: boards, where they butt against trim; panels take none, and
/// openings behind their flanges at head and jambs, the sill left open to drain: common practice, no
/// source.
fn sealed(e: &LaidEdge, boards: bool) -> bool {
    use EdgeKind::{Abutment, Head, InsideCorner, Jamb, OutsideCorner, Rake};
    match e.kind {
        OutsideCorner | InsideCorner | Abutment | Rake => boards,
        Jamb => true,
        Head => !boards,
        _ => false,
    }
}

fn sealant(layout: &LaidHouse) -> Option<TakeoffLine> {
    let rules = &layout.job.estimate;
    let boards = !layout.job.siding().receivers.has_pockets();
    // What a cartridge fills of a square bead.
    let each = rules.sealant_cartridge * OUNCE / rules.sealant_bead.powi(2);
    let mut shares = Shares::default();
    let mut length = 0.0;
    for (e, w) in layout.walls() {
        for s in w.edges.iter().filter(|s| sealed(s, boards)) {
            let middle = (s.from[1] + s.to[1]) / 2.0;
            shares.add((&e.name, &w.id), w.part_at(middle), 1, reach(s) / each);
            length += reach(s);
        }
    }
    let basis = Basis::Beads {
        length,
        bead: rules.sealant_bead,
        cartridge: rules.sealant_cartridge,
        boards,
    };
    let (net, order) = (shares.net(), whole(shares.net()));
    (rules.sealant && net > 0.0).then(|| TakeoffLine {
        net,
        order,
        waste: waste(net, order),
        stock: Some(each),
        length: Some(length),
        shares: shares.done(layout),
        ..TakeoffLine::new(Item::Sealant, CountUnit::Cartridge, Group::Further, basis)
    })
}

/// Length of the level cut edges of a piece under its course's top.
fn cut_edges(p: &Piece, c: &LaidCourse) -> Vec<f64> {
    let next = p.outline.iter().cycle().skip(1);
    let upper = p.outline.iter().zip(next).filter(|(a, b)| b[0] < a[0] - CUT);
    let level = upper.filter(|(a, b)| (a[1] - b[1]).abs() <= CUT && a[1] < c.top - CUT);
    level.map(|(a, b)| a[0] - b[0]).collect()
}

fn furring(layout: &LaidHouse) -> Option<TakeoffLine> {
    let rules = &layout.job.estimate;
    let stock = rules.furring_stock;
    let mut shares = Shares::default();
    let (mut cut, mut counts) = (Vec::new(), Vec::new());
    for (e, w) in layout.walls() {
        for c in &w.courses {
            for p in c.runs.iter().flat_map(|r| &r.pieces).filter(|p| p.edge_work.furring) {
                for length in cut_edges(p, c) {
                    shares.add((&e.name, &w.id), w.part_at(c.bottom), 1, length / stock);
                    cut.extend(strips(length, stock, 0.0));
                }
                counts.push(p.mark.as_str().into());
            }
        }
    }
    let plan = packing::plan(&cut, stock, layout.job.seams.kerf);
    let length = cut.iter().sum();
    let basis = Basis::StockAlong { pieces: cut.len(), length, stock, least: plan.bound };
    let (net, order) = (shares.net(), plan.stocks.len() as f64);
    (rules.furring && net > 0.0).then(|| TakeoffLine {
        net,
        order,
        waste: waste(net, order),
        stock: Some(stock),
        length: Some(length),
        counts,
        shares: shares.done(layout),
        ..TakeoffLine::new(Item::Furring, CountUnit::Piece, Group::Further, basis)
    })
}
