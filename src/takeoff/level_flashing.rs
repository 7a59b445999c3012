//! Flashing along level runs, by length, and by roll with laps: over the level ends of lower roofs, deck
//! ledgers, ledges of stone, changes of cladding and bands (`TrimFact::FlashingPlaces`); pans under doors.
//!
//! A run that ends at a corner is turned round it by as much as lengths lap, under or over the next wall's:
//! common practice, no source.

use super::lines::{Shares, waste, whole};
use crate::geom::tol::{LEVEL, SAME};
use crate::geom::vocabulary::Xy;
use crate::layout::drawn_ends::{corner_ends, drawn_ends, skirt_under};
use crate::layout::laid::LaidHouse;
use crate::layout::wall::{LaidEdge, LaidElevation, LaidOpening, LaidWall};
use crate::model::basis::Basis;
use crate::model::filler::FilledTo;
use crate::model::flashed_run::{FlashedLength, FlashedRun};
use crate::model::house::{EdgeKind, HiddenBy, OpeningKind};
use crate::model::item::{CountUnit, Item};
use crate::model::quantity::{Group, TakeoffLine};
use crate::packing;
use crate::units::{LengthStyle, Unit};

/// Width of the sheet along level runs, inches: 4 in up the wall and over what is below, hemmed: common
/// practice, no source.
const SHEET: f64 = 10.0;
/// Shortest run worth a strip, inches: drawing noise, no source.
const LEAST: f64 = 1.0;
/// How far over a roof a door's foot may stand that makes it a deck, inches: a step, no source.
const STEP: f64 = 9.0;
/// How far beyond a side its other hand is looked at, inches.
const BEYOND: f64 = 0.5;

/// A level run on a wall.
struct Run<'a> {
    over: FlashedRun,
    elevation: &'a LaidElevation,
    wall: &'a LaidWall,
    y: f64,
    length: f64,
    /// Corners it is turned round.
    turns: usize,
}

impl Run<'_> {
    /// What it is cut to, laps of its lengths left out.
    fn cut(&self, lap: f64) -> f64 {
        self.length + self.turns as f64 * lap
    }
}

/// Length lines of each sort of run, then the rolls of all, then the pans.
pub(super) fn lines(layout: &LaidHouse) -> Vec<TakeoffLine> {
    let runs: Vec<Run> = layout.walls().flat_map(|(e, w)| on_wall(layout, e, w)).collect();
    let mut out: Vec<TakeoffLine> =
        FlashedRun::ALL.into_iter().filter_map(|over| length(layout, &runs, over)).collect();
    out.extend(rolls(layout, &runs));
    out.extend(pans(layout));
    out
}

/// A level side, left to right, up to the drawn corners: flashing lies behind posts and corner boards.
#[derive(Clone, Copy)]
struct Side {
    x: (f64, f64),
    y: f64,
    /// Ends at corners.
    turns: usize,
}

impl Side {
    fn run<'a>(
        &self,
        over: FlashedRun,
        elevation: &'a LaidElevation,
        wall: &'a LaidWall,
    ) -> Run<'a> {
        let (length, turns) = (self.x.1 - self.x.0, self.turns);
        Run { over, elevation, wall, y: self.y, length, turns }
    }
}

/// Level sides of a kind. One on a skirt board counts as what the board stands on: flashing lies behind it.
fn level_sides(layout: &LaidHouse, w: &LaidWall, kind: EdgeKind) -> Vec<Side> {
    let of_kind = |e: &&LaidEdge| match skirt_under(w, e) {
        Some(f) if f.between[0].to == FilledTo::LowerRoof => kind == EdgeKind::LowerRoof,
        _ => e.kind == kind,
    };
    let mine = w.edges.iter().filter(|e| e.opening.is_none()).filter(of_kind);
    let level = mine.filter(|e| (e.from[1] - e.to[1]).abs() <= LEVEL);
    let side = |e: &LaidEdge| {
        let [a, b] = drawn_ends(layout, w, e);
        let turns = corner_ends(layout, w, e);
        let y = skirt_under(w, e).map_or(a[1], |f| f.place[1]);
        Side { x: (a[0].min(b[0]), a[0].max(b[0])), y, turns }
    };
    let mut out: Vec<Side> = level.map(side).collect();
    out.sort_by(|a, b| a.y.total_cmp(&b.y).then(a.x.0.total_cmp(&b.x.0)));
    out
}

fn is_door(o: &LaidOpening) -> bool {
    matches!(o.kind, OpeningKind::Door | OpeningKind::OverheadDoor)
}

fn on_wall<'a>(layout: &LaidHouse, e: &'a LaidElevation, w: &'a LaidWall) -> Vec<Run<'a>> {
    let keep = layout.job.clearances();
    let mut out = Vec::new();
    for s in joined(layout, w, keep.roof) {
        let stands = |o: &&LaidOpening| {
            o.left < s.x.1 && o.right > s.x.0 && (-keep.roof - 1.0..=STEP).contains(&(o.sill - s.y))
        };
        let deck = w.openings.iter().filter(|o| is_door(o)).any(|o| stands(&o));
        let over = if deck { FlashedRun::Deck } else { FlashedRun::Roof };
        out.push(s.run(over, e, w));
    }
    for s in level_sides(layout, w, EdgeKind::BareTop) {
        let over = below(layout, e, w, &s, keep.ledge);
        out.push(s.run(over, e, w));
    }
    for s in level_sides(layout, w, EdgeKind::BareBottom) {
        if other_above(e, w, &s) {
            out.push(s.run(FlashedRun::Cladding, e, w));
        }
    }
    out.retain(|r| r.length >= LEAST);
    out
}

/// Level sides over lower roofs; what a door that stands on one interrupts runs on under it.
fn joined(layout: &LaidHouse, w: &LaidWall, clear: f64) -> Vec<Side> {
    let mut out: Vec<Side> = Vec::new();
    for s in level_sides(layout, w, EdgeKind::LowerRoof) {
        let bridged = |from: f64| {
            s.x.0 - from <= SAME
                || w.openings.iter().filter(|o| is_door(o)).any(|o| {
                    let ends = (o.left - from).abs() < 1.0 && (o.right - s.x.0).abs() < 1.0;
                    ends && o.sill <= s.y + LEVEL && o.sill >= s.y - clear - 1.0
                })
        };
        match out.last_mut().filter(|l| (l.y - s.y).abs() <= LEVEL && bridged(l.x.1)) {
            Some(last) => {
                last.x.1 = s.x.1;
                last.turns += s.turns;
            }
            None => out.push(s),
        }
    }
    out
}

/// Whether a place lies in rings, even-odd.
fn holds<'r>(rings: impl IntoIterator<Item = &'r Vec<Xy>>, p: Xy) -> bool {
    let crossed = |ring: &Vec<Xy>| {
        let sides = ring.iter().zip(ring.iter().cycle().skip(1));
        let over = sides.filter(|(a, b)| {
            (a[1] > p[1]) != (b[1] > p[1])
                && p[0] < (b[0] - a[0]) * (p[1] - a[1]) / (b[1] - a[1]) + a[0]
        });
        over.count()
    };
    rings.into_iter().map(crossed).sum::<usize>() % 2 == 1
}

/// What lies under the top of an area without siding.
fn below(layout: &LaidHouse, e: &LaidElevation, w: &LaidWall, s: &Side, ledge: f64) -> FlashedRun {
    let at = [(s.x.0 + s.x.1) / 2.0, s.y - ledge - BEYOND];
    if w.bands.iter().any(|band| holds([band], at)) {
        return FlashedRun::Band;
    }
    let hides = |by: HiddenBy| w.hidden.iter().any(|h| h.by == by && holds(&h.outline, at));
    let zoned = e.zones.iter().any(|z| holds(&z.outline, at));
    if zoned || (layout.zone.is_some() && hides(HiddenBy::OtherZone)) {
        FlashedRun::Cladding
    } else {
        FlashedRun::Ledge
    }
}

/// Whether cladding that is not laid out stands over a side: a set of its own counts its own foot.
fn other_above(e: &LaidElevation, w: &LaidWall, s: &Side) -> bool {
    let at = [(s.x.0 + s.x.1) / 2.0, s.y + BEYOND];
    if w.bands.iter().any(|band| holds([band], at)) {
        return false;
    }
    if let Some(zone) = e.zones.iter().find(|z| holds(&z.outline, at)) {
        return !zone.laid_out;
    }
    w.hidden.iter().any(|h| h.by == HiddenBy::NotSided && holds(&h.outline, at))
}

/// The length of the runs over one sort of place.
fn length(layout: &LaidHouse, runs: &[Run], over: FlashedRun) -> Option<TakeoffLine> {
    let (each, unit) = match layout.job.sheet.lengths {
        LengthStyle::Feet => (Unit::Foot.inches(), CountUnit::Foot),
        LengthStyle::Mm => (Unit::M.inches(), CountUnit::Meter),
    };
    let mut shares = Shares::default();
    let mut sum = 0.0;
    for r in runs.iter().filter(|r| r.over == over) {
        let place = (r.elevation.name.as_str(), r.wall.id.as_str());
        shares.add(place, r.wall.part_at(r.y), 1, r.length / each);
        sum += r.length;
    }
    (sum > 0.0).then(|| TakeoffLine {
        net: shares.net(),
        length: Some(sum),
        shares: shares.done(layout),
        ..TakeoffLine::new(Item::FlashedLength { over }, unit, Group::Flashing, Basis::LevelRun)
    })
}

/// Lengths that a run is cut to: whole rolls but for the last, each lapped over the one before.
pub(super) fn strips(length: f64, roll: f64, lap: f64) -> Vec<f64> {
    let lap = lap.min(roll / 2.0);
    let count = ((length - lap) / (roll - lap) - 1e-9).ceil().max(1.0) as usize;
    let whole = length + (count - 1) as f64 * lap;
    let mut out = vec![roll; count - 1];
    out.push(whole - (count - 1) as f64 * roll);
    out
}

/// Rolls that hold the strips of all runs: the fewest.
fn rolls(layout: &LaidHouse, runs: &[Run]) -> Option<TakeoffLine> {
    let rules = &layout.job.takeoff;
    let (roll, lap) = (rules.flashing_roll.max(1.0), rules.flashing_lap);
    let mut shares = Shares::default();
    let mut cut: Vec<f64> = Vec::new();
    for r in runs {
        let strips = strips(r.cut(lap), roll, lap);
        let place = (r.elevation.name.as_str(), r.wall.id.as_str());
        let length: f64 = strips.iter().sum();
        shares.add(place, r.wall.part_at(r.y), strips.len(), length / roll);
        cut.extend(strips);
    }
    let plan = packing::plan(&cut, roll, 0.0);
    let length: f64 = cut.iter().sum();
    let of = |over: FlashedRun| {
        let mine = runs.iter().filter(|r| r.over == over).map(|r| r.length);
        let length: f64 = mine.sum();
        (length > 0.0).then_some(FlashedLength { over, length })
    };
    let basis = Basis::RunStrips {
        runs: FlashedRun::ALL.into_iter().filter_map(of).collect(),
        strips: cut.len(),
        lap,
        length,
        roll,
        least: plan.bound,
    };
    let (net, order) = (shares.net(), plan.stocks.len() as f64);
    (net > 0.0).then(|| TakeoffLine {
        net,
        order,
        waste: waste(net, order),
        stock: Some(roll),
        length: Some(length),
        shares: shares.done(layout),
        ..TakeoffLine::new(
            Item::RunFlashing { width: SHEET },
            CountUnit::Roll,
            Group::Flashing,
            basis,
        )
    })
}

/// A pan under each door that is walked through, turned up at both jambs: common practice, no source.
fn pans(layout: &LaidHouse) -> Option<TakeoffLine> {
    let up = layout.job.takeoff.door_pan_up;
    let mut shares = Shares::default();
    let mut counts = Vec::new();
    let mut length = 0.0;
    for (e, w) in layout.walls() {
        for o in w.openings.iter().filter(|o| o.kind == OpeningKind::Door) {
            shares.add((&e.name, &w.id), w.part_at(o.sill), 1, 1.0);
            counts.push(o.id.as_str().into());
            length += o.right - o.left + 2.0 * up;
        }
    }
    (!counts.is_empty()).then(|| TakeoffLine {
        net: shares.net(),
        order: whole(shares.net()),
        length: Some(length),
        counts,
        shares: shares.done(layout),
        ..TakeoffLine::new(
            Item::DoorPans,
            CountUnit::Piece,
            Group::Flashing,
            Basis::DoorPans { turned_up: up, length },
        )
    })
}

#[cfg(test)]
mod tests {
    use super::strips;

    #[test]
    fn a_run_longer_than_a_roll_is_lapped() {
        // 50 ft rolls, 4 in laps: 36 ft are one strip; 100 ft are three, 1,208 in with two laps.
        assert_eq!(strips(432.0, 600.0, 4.0), [432.0]);
        assert_eq!(strips(600.0, 600.0, 4.0), [600.0]);
        assert_eq!(strips(1200.0, 600.0, 4.0), [600.0, 600.0, 8.0]);
    }
}
