//! Boards on the wall's face and what they do to the siding: covers, friezes, surrounds; bands with
//! their caps (`LayoutFact::BandsPartWalls`, `TrimFact::DripCaps`); joints of the building
//! (`LayoutFact::MovementJoints`).

use super::along::{bare, reach};
use super::named::{self, bounds};
use super::rule::{Cases, found};
use super::tolerance::NEAR;
use crate::geom::vocabulary::Xy;
use crate::job::TopFinish;
use crate::layout::breach::trim::TrimBreach;
use crate::layout::by_wall::ByWall;
use crate::layout::laid::LaidHouse;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::Figure::Inches;
use crate::layout::violation::Subject;
use crate::layout::wall::{LaidEdge, LaidElevation, LaidWall};
use crate::model::house::EdgeKind;
use crate::model::trim::{TrimEnd, TrimKind, TrimPiece};
use crate::real::Real;

/// Boards shorter than this are none, inches.
const LEAST: f64 = 1.0;
/// Siding this far beside a joint's channel stands at it, inches: over noise, under any piece.
const BESIDE: f64 = 1.0 / 16.0;

/// What stands beside walls: surrounds are looked at with their openings.
pub(super) fn check(layout: &LaidHouse, at: &ByWall, mut face: Cases) -> [RuleCheck; 3] {
    let mut bands = Cases::new(Rule::BandBoards);
    let mut joints = Cases::new(Rule::MovementJoints);
    for (e, w) in layout.walls() {
        for s in w.edges.iter().filter(|s| s.opening.is_none() && reach(s.from, s.to) > LEAST) {
            side(&mut face, layout, at, (e, w), s);
        }
        bands_of(&mut bands, layout, (e, w), at.trims(&w.id));
        unbridged(&mut joints, layout, e, w);
    }
    covers(&mut face, layout);
    [face.done(), bands.done(), joints.done()]
}

fn side(
    rule: &mut Cases,
    layout: &LaidHouse,
    at: &ByWall,
    (e, w): (&LaidElevation, &LaidWall),
    s: &LaidEdge,
) {
    let r = &layout.job.trim;
    match s.kind {
        EdgeKind::Eave if r.frieze > 0.0 => {
            let up = |p: Xy, by: f64| [p[0], p[1] + by];
            let along = |by: f64| (up(s.from, by), up(s.to, by));
            boarded(rule, at, (e, w), TrimKind::Frieze, along(r.frieze / 2.0), 0.0);
            if r.top == TopFinish::Crown {
                boarded(rule, at, (e, w), TrimKind::Crown, along(r.frieze), 0.0);
            }
        }
        EdgeKind::Rake if r.rake_frieze > 0.0 => {
            // Counter-clockwise the wall lies on the left hand: outward is to the right.
            let length = reach(s.from, s.to);
            let half = r.rake_frieze / 2.0 / length;
            let (dx, dy) = (s.to[0] - s.from[0], s.to[1] - s.from[1]);
            let out = |p: Xy| [p[0] + dy * half, p[1] - dx * half];
            let slant = half * (dy * length / dx).abs();
            boarded(rule, at, (e, w), TrimKind::Frieze, (out(s.from), out(s.to)), slant);
        }
        _ => {}
    }
}

/// A board lies all along a side; a slanting cut leaves `slant` of its middle line at each end.
fn boarded(
    rule: &mut Cases,
    at: &ByWall,
    (e, w): (&LaidElevation, &LaidWall),
    trim: TrimKind,
    (a, b): (Xy, Xy),
    slant: f64,
) {
    let of: Vec<&TrimPiece> = at.trims(&w.id).iter().copied().filter(|t| t.kind == trim).collect();
    let open = bare(a, b, &of);
    rule.case(open < 2.0 * slant + NEAR, || {
        let breach = TrimBreach::SideBare { trim, side_length: reach(a, b) };
        let v = found(named::wall(&w.id), breach).at(named::place(&e.name, named::midway(a, b)));
        v.measured(Inches(open)).at_most(Inches(2.0 * slant))
    });
}

/// Every outside post has a cover as long as it, where the job has covers; else there is none.
fn covers(rule: &mut Cases, layout: &LaidHouse) {
    let of = |kind: TrimKind| -> f64 {
        // What laps is not counted twice.
        let mine = layout.trims.iter().filter(|t| t.kind == kind);
        mine.map(|t| {
            let spliced = matches!(t.ends[0], TrimEnd::Splice { .. });
            t.length - if spliced { layout.job.trim.post_lap } else { 0.0 }
        })
        .sum()
    };
    let (posts, covers) = (of(TrimKind::OutsidePost), of(TrimKind::CornerCover));
    let want = if layout.job.trim.corner_cover > 0.0 { posts } else { 0.0 };
    rule.case((covers - want).abs() < 1.0, || {
        let v = found(Subject::House, TrimBreach::CoverLength);
        v.measured(Inches(covers)).exactly(Inches(want))
    });
}

/// How long a band is along its longest side that is not plumb; an upright board of four corners by its
/// height.
fn length_of(ring: &[Xy]) -> f64 {
    let [x0, x1, y0, y1] = [(0, false), (0, true), (1, false), (1, true)].map(|(axis, most)| {
        let all = ring.iter().map(|p| p[axis]);
        if most { all.fold(f64::MIN, f64::max) } else { all.fold(f64::MAX, f64::min) }
    });
    let at_corner = |p: &Xy| {
        let beside = |v: f64, ends: [f64; 2]| ends.iter().any(|e| (v - e).abs() < NEAR);
        beside(p[0], [x0, x1]) && beside(p[1], [y0, y1])
    };
    if ring.len() == 4 && y1 - y0 > x1 - x0 && ring.iter().all(at_corner) {
        return y1 - y0;
    }
    let steps = ring.iter().zip(ring.iter().cycle().skip(1));
    let runs = steps.map(|(a, b)| (b[0] - a[0], b[1] - a[1])).filter(|d| d.0.abs() > NEAR);
    let Some((x, y)) = runs.max_by(|a, b| a.0.hypotenuse(a.1).total_cmp(&b.0.hypotenuse(b.1)))
    else {
        return 0.0;
    };
    let along = ring.iter().map(|p| (p[0] * x + p[1] * y) / x.hypotenuse(y));
    let (low, high) = along.fold((f64::MAX, f64::MIN), |(a, b), t| (a.min(t), b.max(t)));
    high - low
}

fn bands_of(
    rule: &mut Cases,
    layout: &LaidHouse,
    (e, w): (&LaidElevation, &LaidWall),
    mine: &[&TrimPiece],
) {
    // A zone's set stops at the house's bands.
    let boards: f64 = w.bands.iter().map(|r| length_of(r)).sum();
    let want = if layout.zone.is_some() { 0.0 } else { boards };
    let boards = mine.iter().filter(|t| t.kind == TrimKind::Band);
    let have: f64 = boards.map(|t| t.length).sum();
    rule.case((have - want).abs() < NEAR, || {
        let at = named::place(&e.name, named::middle(w.bands.iter().flatten()));
        let v = found(named::wall(&w.id), TrimBreach::BandLength);
        let v = v.at(at.or_else(|| named::at_wall(e, w)));
        v.measured(Inches(have)).exactly(Inches(want))
    });
    let bands: Vec<[f64; 4]> = w.bands.iter().map(bounds).collect();
    let free = |t: &&TrimPiece| t.kind == TrimKind::DripCap && t.opening.is_none();
    let caps: Vec<&TrimPiece> = mine.iter().copied().filter(free).collect();
    let ledge = layout.job.clearances().ledge;
    let down = |p: Xy| [p[0], p[1] - ledge];
    for s in w.edges.iter().filter(|s| s.kind == EdgeKind::BareTop) {
        let x = (s.from[0] + s.to[0]) / 2.0;
        let over = |b: &[f64; 4]| (s.from[1] - ledge - b[3]).abs() < NEAR && x > b[0] && x < b[2];
        if bands.iter().any(over) && reach(s.from, s.to) > LEAST {
            let open = bare(down(s.from), down(s.to), &caps);
            rule.case(open < NEAR, || {
                let at = named::place(&e.name, named::midway(s.from, s.to));
                let v = found(named::wall(&w.id), TrimBreach::BandCap).at(at);
                v.measured(Inches(open)).exactly(Inches(0.0))
            });
        }
    }
}

/// How much of a field stands at a place, inches up.
fn upright(field: &[Vec<Xy>], x: f64) -> f64 {
    let sides = field.iter().flat_map(|r| r.iter().zip(r.iter().cycle().skip(1)));
    let across = sides.filter(|(a, b)| (a[0] > x) != (b[0] > x));
    let mut ys: Vec<f64> =
        across.map(|(a, b)| a[1] + (x - a[0]) / (b[0] - a[0]) * (b[1] - a[1])).collect();
    ys.sort_by(f64::total_cmp);
    ys.chunks_exact(2).map(|y| y[1] - y[0]).sum()
}

/// At a joint every run ends, and on either side of it stands a channel.
fn unbridged(rule: &mut Cases, layout: &LaidHouse, e: &LaidElevation, w: &LaidWall) {
    let half = layout.job.trim.movement_gap / 2.0;
    let [low, _, high, _] = bounds(&w.outline);
    let apart = w.joints.windows(2).all(|p| p[1] - p[0] > 2.0 * half);
    rule.case(apart && w.joints.iter().all(|x| *x > low && *x < high), || {
        let breach = TrimBreach::JointPlaces { joints: w.joints.clone() };
        found(named::wall(&w.id), breach).at(named::at_wall(e, w))
    });
    for x in &w.joints {
        for c in &w.courses {
            let over = c.runs.iter().find(|r| r.x0 < x - half + NEAR && r.x1 > x + half - NEAR);
            rule.checked += 1;
            if let Some(r) = over {
                let at = named::place(&e.name, [*x, (c.bottom + c.top) / 2.0]);
                let v = found(named::run(&r.id), TrimBreach::RunAcrossJoint).at(at);
                rule.breaks(v.with(named::wall(&w.id)).measured(Inches(*x)));
            }
        }
        for (side, beside) in [(x - half, -BESIDE), (x + half, BESIDE)] {
            // A door or another cladding may leave no siding there.
            let stands = upright(&w.field, side + beside);
            let channel = w.edges.iter().any(|s| {
                s.kind == EdgeKind::Abutment
                    && (s.from[0] - side).abs() < NEAR
                    && (s.to[0] - side).abs() < NEAR
            });
            rule.case(channel || stands < LEAST, || {
                let at = named::place(&e.name, [side, named::middle(&w.outline)[1]]);
                let v = found(named::wall(&w.id), TrimBreach::JointChannel).at(at);
                v.exactly(Inches(side))
            });
        }
    }
}
