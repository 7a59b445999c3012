//! Flashing round openings, at corners and where a roof meets a wall.

use super::lines::{Shares, waste, whole};
use crate::geom::tol::LEVEL;
use crate::job::InsideCorner;
use crate::model::house::EdgeKind;
use crate::model::layout::{Edge, Elevation, Group, Layout, TakeoffLine, Wall};
use crate::model::takeoff::StockCut;
use crate::model::trim::{JAMB_OVER, SILL_PAST, TrimKind};
use crate::units::{LengthStyle, Unit};

/// Width of the sheet at a corner: 10 in to each side (FACTS SD-96, VSI-A).
const CORNER_SHEET: f64 = 20.0;

pub(super) fn lines(layout: &Layout, cuts: &[StockCut]) -> Vec<TakeoffLine> {
    let mut out = Vec::new();
    out.extend(openings(layout, cuts));
    out.extend(corners(layout));
    out.extend(roofs(layout));
    out
}

fn rolls(
    layout: &Layout,
    (id, item): (&str, String),
    shares: Shares,
    counts: Vec<String>,
    how: &str,
) -> Option<TakeoffLine> {
    let roll = layout.job.takeoff.flashing_roll.max(1.0);
    let length = shares.net();
    let style = layout.job.sheet.lengths;
    (length > 0.0).then(|| TakeoffLine {
        item,
        id: id.into(),
        unit: "roll".into(),
        group: Group::Flashing,
        net: length / roll,
        order: whole(length / roll),
        waste: waste(length / roll, whole(length / roll)),
        how: format!(
            "{} in all: {how}; rolls of {}, laps not counted",
            style.length(length),
            style.length(roll)
        ),
        stock: Some(roll),
        length: Some(length),
        counts,
        shares: Shares::scaled(&shares.done(layout), 1.0 / roll),
        ..Default::default()
    })
}

/// A sheet's width as it is ordered: whole millimetres in metric.
fn width(style: LengthStyle, inches: f64) -> String {
    match style {
        LengthStyle::Feet => style.short(inches),
        LengthStyle::Mm => style.length(inches),
    }
}

/// Strips cut from the roll, with as many rolls as they are cut from.
fn openings(layout: &Layout, cuts: &[StockCut]) -> Option<TakeoffLine> {
    let mut shares = Shares::default();
    let mut counts = Vec::new();
    for t in layout.trims.iter().filter(|t| t.kind.behind()) {
        shares.add((&t.elevation, &t.wall), super::trims::zone(layout, t), 1, t.length);
        counts.push(t.mark.clone());
    }
    let style = layout.job.sheet.lengths;
    let how = format!(
        "sills {} past each jamb, jambs {} over the head, heads as sills (head: common practice)",
        style.short(SILL_PAST),
        style.short(JAMB_OVER)
    );
    let item = format!("flashing at openings, {} wide", width(style, SILL_PAST));
    let mut line = rolls(layout, ("opening-flashing", item), shares, counts, &how)?;
    line.order = cuts.iter().filter(|c| c.item == line.id).count() as f64;
    line.waste = waste(line.net, line.order);
    Some(line)
}

fn corners(layout: &Layout) -> Option<TakeoffLine> {
    let two = layout.job.trim.inside_corner == InsideCorner::TwoChannels;
    let mut shares = Shares::default();
    let mut counts = Vec::new();
    for t in &layout.trims {
        // Of two channels in one corner each counts half.
        let share = match t.kind {
            TrimKind::OutsidePost | TrimKind::InsidePost => 1.0,
            TrimKind::CornerChannel if t.shared_with.is_none() && two => 0.5,
            TrimKind::CornerChannel => 1.0,
            _ => continue,
        };
        shares.add((&t.elevation, &t.wall), super::trims::zone(layout, t), 1, share * t.length);
        counts.push(t.mark.clone());
    }
    let style = layout.job.sheet.lengths;
    let how = format!("behind every corner post, {} to each side", style.short(CORNER_SHEET / 2.0));
    let item = format!("flashing at corners, {} wide", width(style, CORNER_SHEET));
    rolls(layout, ("corner-flashing", item), shares, counts, &how)
}

/// Step flashing by the foot or metre and a kick-out at the foot of each slope (FACTS SD-117, SD-119).
fn roofs(layout: &Layout) -> Vec<TakeoffLine> {
    let (each, unit) = match layout.job.sheet.lengths {
        LengthStyle::Feet => (Unit::Foot.inches(), "ft of slope"),
        LengthStyle::Mm => (Unit::M.inches(), "m of slope"),
    };
    let (mut steps, mut outs) = (Shares::default(), Shares::default());
    for (e, w) in layout.walls() {
        let roofs: Vec<&Edge> = w.edges.iter().filter(|e| e.kind == EdgeKind::LowerRoof).collect();
        for r in &roofs {
            let length = (r.to[0] - r.from[0]).hypot(r.to[1] - r.from[1]) / each;
            shares_of_slope(&mut steps, &mut outs, (e, w), r, &roofs, length);
        }
    }
    let line = |id: &str, item: &str, unit: &str, shares: Shares, how: &str| TakeoffLine {
        item: item.into(),
        id: id.into(),
        unit: unit.into(),
        group: Group::Flashing,
        net: shares.net(),
        order: whole(shares.net()),
        waste: waste(shares.net(), whole(shares.net())),
        how: how.into(),
        shares: shares.done(layout),
        ..Default::default()
    };
    let mut out = Vec::new();
    if steps.net() > 0.0 {
        out.push(line(
            "step-flashing",
            "step flashing",
            unit,
            steps,
            "where a lower roof slopes along a wall, at least 4 x 4 in, laps not counted",
        ));
    }
    if outs.net() > 0.0 {
        out.push(line(
            "kick-out",
            "kick-out flashing",
            "piece",
            outs,
            "one at the foot of each lower roof that slopes along a wall",
        ));
    }
    out
}

fn shares_of_slope(
    steps: &mut Shares,
    outs: &mut Shares,
    (elevation, wall): (&Elevation, &Wall),
    edge: &Edge,
    roofs: &[&Edge],
    length: f64,
) {
    if (edge.to[1] - edge.from[1]).abs() <= LEVEL {
        return;
    }
    let place = (elevation.name.as_str(), wall.id.as_str());
    let zone = |y: f64| wall.zone(y);
    steps.add(place, zone((edge.from[1] + edge.to[1]) / 2.0), 1, length);
    let foot = if edge.from[1] < edge.to[1] { edge.from } else { edge.to };
    // A slope that another slope of the same roof goes on from has its foot farther down.
    let goes_on = roofs.iter().any(|o| {
        let low = if o.from[1] < o.to[1] { o.from } else { o.to };
        let touches = |p: [f64; 2]| (p[0] - foot[0]).hypot(p[1] - foot[1]) < LEVEL;
        low[1] < foot[1] - LEVEL && (touches(o.from) || touches(o.to))
    });
    if !goes_on {
        outs.add(place, zone(foot[1]), 1, 1.0);
    }
}
