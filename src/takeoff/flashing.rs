//! Flashing round openings, at corners and where a roof meets a wall.

use std::collections::BTreeSet;

use super::level_flashing::{self, strips};
use super::lines::{Shares, waste, whole};
use super::trims::WallParts;
use crate::geom::tol::LEVEL;
use crate::job::InsideCorner;
use crate::layout::by_wall::ByWall;
use crate::layout::laid::LaidHouse;
use crate::model::basis::Basis;
use crate::model::corner::CornerSide;
use crate::model::ids::CountedName;
use crate::model::item::{CountUnit, Item};
use crate::model::quantity::{Group, TakeoffLine};
use crate::model::takeoff::StockCut;
use crate::model::trim::{JAMB_OVER, SILL_PAST, TrimKind, TrimPiece};
use crate::packing;
use crate::units::{LengthStyle, Unit};

/// Width of the sheet at a corner: 10 in to each side (`TrimFact::CornerFlashing`).
const CORNER_SHEET: f64 = 20.0;

pub(super) fn lines(layout: &LaidHouse, cuts: &[StockCut]) -> Vec<TakeoffLine> {
    let mut out = Vec::new();
    out.extend(openings(layout, cuts));
    out.extend(corners(layout));
    out.extend(roofs(layout));
    out.extend(level_flashing::lines(layout));
    out
}

/// A line of rolls, its shares counted in inches.
fn rolls(
    layout: &LaidHouse,
    item: Item,
    basis: Basis,
    shares: Shares,
    counts: Vec<CountedName>,
) -> Option<TakeoffLine> {
    let (length, roll) = (shares.net(), roll(layout));
    (length > 0.0).then(|| TakeoffLine {
        net: length / roll,
        order: whole(length / roll),
        waste: waste(length / roll, whole(length / roll)),
        stock: Some(roll),
        length: Some(length),
        counts,
        shares: Shares::scaled(&shares.done(layout), 1.0 / roll),
        ..TakeoffLine::new(item, CountUnit::Roll, Group::Flashing, basis)
    })
}

fn roll(layout: &LaidHouse) -> f64 {
    layout.job.takeoff.flashing_roll.max(1.0)
}

/// Strips cut from the roll, with as many rolls as they are cut from.
fn openings(layout: &LaidHouse, cuts: &[StockCut]) -> Option<TakeoffLine> {
    let mut shares = Shares::default();
    let mut counts = Vec::new();
    let parts = WallParts::of(layout);
    for t in layout.trims.iter().filter(|t| t.kind.behind()) {
        shares.add((&t.elevation, &t.wall), parts.part(t), 1, t.length);
        counts.push(t.mark.as_str().into());
    }
    let basis = Basis::OpeningStrips {
        length: shares.net(),
        roll: roll(layout),
        past_jamb: SILL_PAST,
        over_head: JAMB_OVER,
    };
    let item = Item::OpeningFlashing { width: SILL_PAST };
    let mut line = rolls(layout, item, basis, shares, counts)?;
    line.order = cuts.iter().filter(|c| c.item == line.id).count() as f64;
    line.waste = waste(line.net, line.order);
    Some(line)
}

fn corners(layout: &LaidHouse) -> Option<TakeoffLine> {
    let two = layout.job.trim.inside_corner == InsideCorner::TwoChannels;
    let mut shares = Shares::default();
    let (mut counts, mut cut) = (Vec::new(), Vec::new());
    let (parts, at) = (WallParts::of(layout), ByWall::of(layout));
    for t in &layout.trims {
        let length = match t.kind {
            TrimKind::OutsidePost | TrimKind::InsidePost => t.length,
            // Where two channels stand in one corner, each counts half.
            TrimKind::CornerChannel if two => t.length - beside(&at, t) / 2.0,
            TrimKind::CornerChannel => t.length,
            _ => continue,
        };
        // Strips go whole where a roll holds them; a longer one is lapped.
        let mine = strips(length, roll(layout), layout.job.takeoff.flashing_lap);
        shares.add((&t.elevation, &t.wall), parts.part(t), 1, mine.iter().sum());
        cut.extend(mine.into_iter().filter(|l| *l > 0.0));
        counts.push(t.mark.as_str().into());
    }
    let plan = packing::plan(&cut, roll(layout), 0.0);
    let basis = Basis::CornerStrips {
        length: shares.net(),
        roll: roll(layout),
        each_side: CORNER_SHEET / 2.0,
        strips: cut.len(),
        least: plan.bound,
    };
    let item = Item::CornerFlashing { width: CORNER_SHEET };
    let mut line = rolls(layout, item, basis, shares, counts)?;
    line.order = plan.stocks.len() as f64;
    line.waste = waste(line.net, line.order);
    Some(line)
}

/// How much of a channel in an inside corner has the other wall's channel beside it.
fn beside(at: &ByWall, t: &TrimPiece) -> f64 {
    let stands = |t: &TrimPiece, s: &CornerSide| {
        t.wall == s.wall && (t.from[0] - s.at(t.from[1])).abs() <= LEVEL
    };
    let Some((corner, _)) = at.sides(&t.wall).iter().find(|(_, s)| stands(t, s)) else {
        return 0.0;
    };
    let walls: BTreeSet<&str> = corner.sides.iter().map(|s| s.wall.as_str()).collect();
    let others = walls.into_iter().flat_map(|w| at.trims(w)).filter(|o| {
        o.kind == t.kind && o.elevation != t.elevation && corner.sides.iter().any(|s| stands(o, s))
    });
    let span = |t: &TrimPiece| (t.from[1].min(t.to[1]), t.from[1].max(t.to[1]));
    let (low, high) = span(t);
    let over = others.map(|o| {
        let (l, h) = span(o);
        (high.min(h) - low.max(l)).max(0.0)
    });
    over.sum::<f64>().min(high - low)
}

/// Step flashing by the foot or meter, with its pieces, and a kick-out at the foot of each slope
/// (`TrimFact::StepFlashing`, `TrimFact::KickOut`). A slope that ends at a corner is turned round it as a
/// level run is, by one piece more that is bent there and lapped with what lies along the next wall: common
/// practice, no source.
fn roofs(layout: &LaidHouse) -> Vec<TakeoffLine> {
    let (each, unit) = match layout.job.sheet.lengths {
        LengthStyle::Feet => (Unit::Foot.inches(), CountUnit::FootOfSlope),
        LengthStyle::Mm => (Unit::M.inches(), CountUnit::MeterOfSlope),
    };
    let (mut steps, mut outs) = (Shares::default(), Shares::default());
    let exposure = layout.job.takeoff.step_exposure.max(1.0);
    let turn = layout.job.takeoff.flashing_lap;
    let (mut pieces, mut turned) = (0.0, 0);
    for (e, s) in
        layout.elevations.iter().flat_map(|e| e.roof_sides(layout).into_iter().map(move |s| (e, s)))
    {
        let place = (e.name.as_str(), s.wall.id.as_str());
        if s.sloped {
            let middle = (s.from[1] + s.to[1]) / 2.0;
            let length = s.length() + s.turns as f64 * turn;
            steps.add(place, s.wall.part_at(middle), 1, length / each);
            pieces += whole(s.length() / exposure) + 1.0 + s.turns as f64;
            turned += s.turns;
        }
        if let Some(foot) = s.kick_out {
            outs.add(place, s.wall.part_at(foot[1]), 1, 1.0);
        }
    }
    let line = |item: Item, unit: CountUnit, shares: Shares, basis: Basis| TakeoffLine {
        net: shares.net(),
        order: whole(shares.net()),
        waste: waste(shares.net(), whole(shares.net())),
        shares: shares.done(layout),
        ..TakeoffLine::new(item, unit, Group::Flashing, basis)
    };
    let basis = Basis::RoofSlopes { pieces: pieces as usize, exposure, turned, turn };
    let mut out = Vec::new();
    if steps.net() > 0.0 {
        out.push(line(Item::StepFlashing, unit, steps, basis));
    }
    if outs.net() > 0.0 {
        out.push(line(Item::KickOutFlashing, CountUnit::Piece, outs, Basis::RoofSlopeEnds));
    }
    out
}
