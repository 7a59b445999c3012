//! Sealant in beads, and furring behind cut edges that stand off the wall (`TrimFact::FurredUndersill`).

use crate::geom::tol::CUT;
use crate::layout::course::LaidCourse;
use crate::layout::laid::LaidHouse;
use crate::layout::piece::Piece;
use crate::layout::wall::{LaidEdge, LaidOpening, LaidWall};
use crate::model::basis::Basis;
use crate::model::house::EdgeKind;
use crate::model::item::{CountUnit, Item};
use crate::model::quantity::{Group, TakeoffLine};
use crate::packing;
use crate::real::Real;
use crate::takeoff::level_flashing::strips;
use crate::takeoff::lines::{Shares, waste, whole};

/// Cubic inches in a fluid ounce: 231 to a gallon of 128.
const OUNCE: f64 = 231.0 / 128.0;

pub(super) fn lines(layout: &LaidHouse) -> Vec<TakeoffLine> {
    sealant(layout).into_iter().chain(furring(layout)).collect()
}

fn reach(e: &LaidEdge) -> f64 {
    (e.from[0] - e.to[0]).hypotenuse(e.from[1] - e.to[1])
}

/// Beads on a wall, each its height in the middle and its length. Boards have one where they butt against
/// trim. Panels take none: an opening has one behind its flanges at head and jambs, also where a filler
/// board stands beside it, the sill left open to drain. Common practice, no source.
fn beads(w: &LaidWall, boards: bool) -> Vec<(f64, f64)> {
    use EdgeKind::{Abutment, InsideCorner, Jamb, OutsideCorner, Rake};
    if !boards {
        return w.openings.iter().flat_map(|o| flanges(w, o)).collect();
    }
    let butted =
        |e: &&LaidEdge| matches!(e.kind, OutsideCorner | InsideCorner | Abutment | Rake | Jamb);
    let along = |e: &LaidEdge| ((e.from[1] + e.to[1]) / 2.0, reach(e));
    w.edges.iter().filter(butted).map(along).collect()
}

/// Sides of an opening that are no sill, and at which no other one touches it: units joined there.
fn flanges(w: &LaidWall, o: &LaidOpening) -> Vec<(f64, f64)> {
    // As wide as it is drawn: the outline takes in boards in its frame.
    let drawn: Vec<[f64; 2]> =
        o.outline.iter().map(|p| [p[0].max(o.left).min(o.right), p[1]]).collect();
    let next = drawn.iter().cycle().skip(1);
    // Outlines go round counterclockwise: a sill goes right.
    let sides = drawn.iter().zip(next).filter(|(a, b)| b[0] < a[0] + CUT);
    let joined = |y: f64, x: f64| {
        let others = w.openings.iter().filter(|n| n.id != o.id && n.sill < y && y < n.head);
        others.flat_map(|n| [n.left, n.right]).any(|side| (side - x).abs() <= CUT)
    };
    sides
        .map(|(a, b)| ([(a[0] + b[0]) / 2.0, (a[1] + b[1]) / 2.0], a, b))
        .filter(|(m, a, b)| (a[0] - b[0]).abs() > CUT || !joined(m[1], m[0]))
        .map(|(m, a, b)| (m[1], (a[0] - b[0]).hypotenuse(a[1] - b[1])))
        .collect()
}

fn sealant(layout: &LaidHouse) -> Option<TakeoffLine> {
    let rules = &layout.job.estimate;
    let boards = !layout.job.siding().receivers.has_pockets();
    // What a cartridge fills of a square bead.
    let each = rules.sealant_cartridge * OUNCE / rules.sealant_bead.powi(2);
    let mut shares = Shares::default();
    let mut length = 0.0;
    for (e, w) in layout.walls() {
        for (middle, reach) in beads(w, boards) {
            shares.add((&e.name, &w.id), w.part_at(middle), 1, reach / each);
            length += reach;
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
