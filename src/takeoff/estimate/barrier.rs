//! Weather barrier by area and laps, and tape for its seams (`TakeoffFact::BarrierLaps`).

use crate::layout::laid::LaidHouse;
use crate::model::basis::Basis;
use crate::model::item::{CountUnit, Item};
use crate::model::quantity::{Group, TakeoffLine};
use crate::model::receiver::BareBy;
use crate::real::Total;
use crate::takeoff::lines::{Shares, waste, whole};

/// A line in rolls, its shares counted in rolls.
fn rolls(layout: &LaidHouse, item: Item, shares: Shares, basis: Basis) -> TakeoffLine {
    let net = shares.net();
    TakeoffLine {
        net,
        order: whole(net),
        waste: waste(net, whole(net)),
        shares: shares.done(layout),
        ..TakeoffLine::new(item, CountUnit::Roll, Group::Further, basis)
    }
}

pub(super) fn lines(layout: &LaidHouse) -> Vec<TakeoffLine> {
    let rules = &layout.job.estimate;
    let area: f64 = layout.walls().map(|(_, w)| w.gross_area).sum();
    if !rules.barrier || area <= 0.0 {
        return Vec::new();
    }
    // What a roll covers once its upper edge and its end are lapped.
    let wide = (rules.barrier_width - rules.barrier_lap).max(1.0);
    let long = (rules.barrier_length - rules.barrier_end_lap).max(1.0);
    let (mut sheet, mut tape) = (Shares::default(), Shares::default());
    let mut seams = 0.0;
    for (e, w) in layout.walls() {
        let inches = w.gross_area * 144.0;
        let place = (e.name.as_str(), w.id.as_str());
        sheet.add(place, None, 1, inches / (wide * long));
        // A level seam for each width of barrier, an upright one for each length.
        let length = inches / wide + inches / long;
        tape.add(place, None, 1, length / rules.tape_roll);
        seams += length;
    }
    let of = |by: BareBy| {
        let all = layout.walls().flat_map(|(_, w)| &w.bare).filter(|b| b.by == by);
        all.map(|b| b.area).total()
    };
    let laid = Basis::BarrierArea {
        area,
        left_out: [of(BareBy::BehindRoof), of(BareBy::StopsShort)],
        roll: [rules.barrier_width, rules.barrier_length],
        laps: [rules.barrier_lap, rules.barrier_end_lap],
    };
    let mut tape = rolls(
        layout,
        Item::BarrierTape,
        tape,
        Basis::BarrierSeams { length: seams, roll: rules.tape_roll },
    );
    (tape.stock, tape.length) = (Some(rules.tape_roll), Some(seams));
    vec![rolls(layout, Item::Barrier, sheet, laid), tape]
}
