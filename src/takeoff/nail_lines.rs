//! Lines of nails, of mounting blocks, and of the flashing behind joints.

use std::collections::BTreeMap;

use super::fasteners::{nails, siding_nail, through, trim_nails, trim_spacing};
use super::lines::{Shares, siding_piece, waste, whole};
use super::trims::WallParts;
use crate::geom::vocabulary::Xy;
use crate::job::siding::system::NailHold;
use crate::layout::laid::LaidHouse;
use crate::model::basis::{Basis, StockNails};
use crate::model::item::{CountUnit, Item};
use crate::model::quantity::{Group, TakeoffLine};
use crate::model::trim::TrimStock;

/// Width of the flashing behind a joint, inches: common practice, no source.
const JOINT_BACKING: f64 = 6.0;

pub(super) fn lines(layout: &LaidHouse) -> Vec<TakeoffLine> {
    let mut out = vec![siding_nails(layout)];
    if !layout.trims.is_empty() {
        out.push(trim_nail_line(layout));
    }
    out.extend(joint_backing(layout));
    out.extend(blocks(layout));
    out
}

/// A piece of flashing behind each joint that is backed: fiber-cement
/// (`TrimFact::FiberCementJoints`).
fn joint_backing(layout: &LaidHouse) -> Option<TakeoffLine> {
    let mut shares = Shares::default();
    for (e, w) in layout.walls() {
        for c in &w.courses {
            let joints: usize = c.runs.iter().map(|r| r.seams.len()).sum();
            if joints > 0 {
                shares.add((&e.name, &w.id), w.part_at(c.bottom), joints, joints as f64);
            }
        }
    }
    let item = Item::JointBacking { width: JOINT_BACKING };
    let backed = layout.job.siding().joints.is_backed();
    (backed && shares.net() > 0.0).then(|| TakeoffLine {
        net: shares.net(),
        order: shares.net(),
        shares: shares.done(layout),
        ..TakeoffLine::new(item, CountUnit::Piece, Group::Flashing, Basis::BoardJoints)
    })
}

/// How nails are bought: so many in a box, or in a pound where the job gives their weight.
#[derive(Clone, Copy)]
struct Bought {
    nails: f64,
    unit: CountUnit,
}

impl Bought {
    fn of(layout: &LaidHouse, per_pound: f64) -> Self {
        if per_pound > 0.0 {
            Bought { nails: per_pound, unit: CountUnit::Pound }
        } else {
            let nails = f64::from(layout.job.takeoff.nail_box.max(1));
            Bought { nails, unit: CountUnit::Box }
        }
    }
}

/// A line of nails in boxes or pounds, its shares counted in nails.
fn boxed(
    layout: &LaidHouse,
    item: Item,
    shares: Shares,
    basis: Basis,
    bought: Bought,
) -> TakeoffLine {
    let size = bought.nails;
    let net = shares.net() / size;
    TakeoffLine {
        net,
        order: whole(net),
        waste: waste(net, whole(net)),
        shares: Shares::scaled(&shares.done(layout), 1.0 / size),
        ..TakeoffLine::new(item, bought.unit, Group::Fasteners, basis)
    }
}

fn siding_nails(layout: &LaidHouse) -> TakeoffLine {
    let (job, piece) = (&layout.job, siding_piece(layout));
    let spacing = job.nail_spacing();
    let bought = Bought::of(layout, job.estimate.siding_nails_per_pound);
    let mut shares = Shares::default();
    for (e, w) in layout.walls() {
        for c in &w.courses {
            let part = w.part_at(c.bottom);
            for p in c.runs.iter().flat_map(|r| &r.pieces) {
                shares.add((&e.name, &w.id), part, 1, nails(p.length, spacing));
            }
        }
    }
    let basis = Basis::SidingNails {
        piece,
        nails: shares.net(),
        in_box: bought.nails,
        pieces: layout.pieces().count(),
        spacing,
        through: through(job),
        penetration: job.penetration(),
        studs: job.siding().fastening.holds == NailHold::Studs,
        shank: job.nail_shank(),
        head: job.fasteners.head,
    };
    boxed(layout, Item::SidingNails { piece, length: siding_nail(job) }, shares, basis, bought)
}

fn trim_nail_line(layout: &LaidHouse) -> TakeoffLine {
    let bought = Bought::of(layout, layout.job.estimate.trim_nails_per_pound);
    let mut shares = Shares::default();
    let mut by_stock: BTreeMap<TrimStock, f64> = BTreeMap::new();
    let parts = WallParts::of(layout);
    for t in layout.trims.iter().filter(|t| !t.kind.behind()) {
        let n = trim_nails(t, trim_spacing(layout, t.kind.stock()));
        shares.add((&t.elevation, &t.wall), parts.part(t), 1, n);
        *by_stock.entry(t.kind.stock()).or_default() += n;
    }
    let of_stock = |(stock, nails): (TrimStock, f64)| StockNails {
        stock,
        nails,
        spacing: trim_spacing(layout, stock),
    };
    let basis = Basis::TrimNails {
        nails: shares.net(),
        in_box: bought.nails,
        by_stock: by_stock.into_iter().map(of_stock).collect(),
    };
    boxed(layout, Item::TrimNails, shares, basis, bought)
}

/// Lowest height of a ring.
fn lowest(ring: &[Xy]) -> f64 {
    ring.iter().map(|p| p[1]).fold(f64::INFINITY, f64::min)
}

fn blocks(layout: &LaidHouse) -> Option<TakeoffLine> {
    let mut shares = Shares::default();
    let mut counts = Vec::new();
    for (e, w) in layout.walls() {
        for o in w.obstacles.iter().filter(|o| o.mounting_block) {
            shares.add((&e.name, &w.id), w.part_at(lowest(&o.outline)), 1, 1.0);
            counts.push(o.id.as_str().into());
        }
    }
    let line =
        |item| TakeoffLine::new(item, CountUnit::Piece, Group::Fasteners, Basis::DrawnBlocks);
    (!counts.is_empty()).then(|| TakeoffLine {
        net: shares.net(),
        order: shares.net(),
        color: layout.job.product.color.clone(),
        counts,
        shares: shares.done(layout),
        ..line(Item::MountingBlocks)
    })
}
