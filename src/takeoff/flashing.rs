//! Flashing round openings, at corners and where a roof meets a wall.

use super::lines::{Shares, waste, whole};
use crate::geom::tol::LEVEL;
use crate::model::house::{EdgeKind, OpeningKind};
use crate::model::layout::{Edge, Elevation, Group, Layout, Opening, TakeoffLine, Wall};
use crate::model::trim::TrimStock;
use crate::units::{LengthStyle, Unit};

/// How far sill flashing reaches past each jamb, and its height (FACTS SD-102, VSI-A).
const SILL_PAST: f64 = 9.0;
/// How far jamb flashing runs over the head (FACTS SD-103, VSI-A).
const JAMB_OVER: f64 = 8.5;
/// How far jamb flashing stops short of the foot of the sill flashing (FACTS SD-103, VSI-A).
const JAMB_SHORT: f64 = 0.5;
/// Width of the sheet at a corner: 10 in to each side (FACTS SD-96, VSI-A).
const CORNER_SHEET: f64 = 20.0;

pub(super) fn lines(layout: &Layout) -> Vec<TakeoffLine> {
    let mut out = Vec::new();
    out.extend(openings(layout));
    out.extend(corners(layout));
    out.extend(roofs(layout));
    out
}

/// Inches of flashing round one opening: under the sill, up both jambs, over the head. The head's
/// reach is taken as the sill's: common practice, no source.
pub(super) fn round_opening(o: &Opening) -> f64 {
    let (width, height) = (o.right - o.left, o.head - o.sill);
    let head = width + 2.0 * SILL_PAST;
    let sill = matches!(o.kind, OpeningKind::Window | OpeningKind::Vent);
    let (under, down) =
        if sill { (width + 2.0 * SILL_PAST, SILL_PAST - JAMB_SHORT) } else { (0.0, 0.0) };
    head + under + 2.0 * (height + JAMB_OVER + down)
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

fn openings(layout: &Layout) -> Option<TakeoffLine> {
    let mut shares = Shares::default();
    let mut counts = Vec::new();
    for (e, w) in layout.walls() {
        for o in &w.openings {
            shares.add((&e.name, &w.id), w.zone(o.sill), 1, round_opening(o));
            counts.push(o.id.clone());
        }
    }
    let style = layout.job.sheet.lengths;
    let how = format!(
        "sills {} past each jamb, jambs {} over the head, heads as sills (head: common practice)",
        style.short(SILL_PAST),
        style.short(JAMB_OVER)
    );
    let item = format!("flashing at openings, {} wide", width(style, SILL_PAST));
    rolls(layout, ("opening-flashing", item), shares, counts, &how)
}

fn corners(layout: &Layout) -> Option<TakeoffLine> {
    let mut shares = Shares::default();
    let mut counts = Vec::new();
    for t in &layout.trims {
        if matches!(t.kind.stock(), TrimStock::OutsidePost | TrimStock::InsidePost) {
            shares.add((&t.elevation, &t.wall), super::trims::zone(layout, t), 1, t.length);
            counts.push(t.mark.clone());
        }
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

#[cfg(test)]
mod tests {
    use super::*;

    fn opening(kind: OpeningKind, left: f64, right: f64, sill: f64, head: f64) -> Opening {
        Opening { id: "W".into(), kind, outline: Vec::new(), left, right, sill, head }
    }

    #[test]
    fn round_a_3040_window_and_a_3068_door() {
        // FACTS SD-102, SD-103 on TK-23 sizes: sill 36 + 18 = 54, each jamb from 1/2 over the foot of
        // the 9 in sill flashing to 8 1/2 over the head: 48 + 8.5 + 8.5 = 65; head as the sill.
        assert_eq!(round_opening(&opening(OpeningKind::Window, 0.0, 36.0, 36.0, 84.0)), 238.0);
        assert_eq!(round_opening(&opening(OpeningKind::Door, 0.0, 36.0, 0.0, 80.0)), 54.0 + 177.0);
    }
}
