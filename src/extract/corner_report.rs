//! What is asked and told of corners.

use super::corners::LEAST;
use crate::finding::corners::{CornerFinding, HeightOn};
use crate::finding::{Finding, Findings};
use crate::geom::tol::LEVEL;
use crate::geom::vocabulary::Point;
use crate::model::corner::{Corner, CornerKind, CornerSide, Pairing};
use crate::model::house::{House, WallWay};
use crate::model::ids::WallId;

/// Two elevations may show a corner this much higher or lower before it is told, inches: common
/// practice, no source (`LayoutFact::CornersAgree`).
const AGREE: f64 = 1.0;

/// Asks for the walls that are not drawn (`LayoutFact::HiddenWalls`), and tells where two elevations
/// disagree about one corner (`LayoutFact::CornersAgree`).
pub(super) fn report(house: &House, findings: &mut Findings) {
    let source = |s: &CornerSide, y: f64| {
        let e = house.elevations.iter().find(|e| e.name == s.elevation);
        e.map_or(Point::ZERO, |e| e.to_source * Point::new(s.x, y))
    };
    let open: Vec<&Corner> =
        house.corners.iter().filter(|c| c.by == Pairing::Open && c.high - c.low > LEAST).collect();
    let alone = house.elevations.len() == 1;
    if let (true, Some(first)) = (alone, open.first()) {
        let mut finding = not_drawn(first);
        if let CornerFinding::ReturnNotDrawn { only_elevation, others, .. } = &mut finding {
            *only_elevation = true;
            *others = open.iter().skip(1).map(|c| c.id.clone()).collect();
        }
        let side = &first.sides[0];
        let finding = Finding::new(finding).on(&side.elevation);
        findings.push(finding.at(source(side, first.low)));
    }
    for (n, c) in open.iter().enumerate().filter(|_| !alone) {
        // Where a plane ends and the next one begins there is one question for both.
        if open[..n].iter().any(|before| is_one_break(house, before, c)) {
            continue;
        }
        let side = &c.sides[0];
        let mut finding = not_drawn(c);
        if let CornerFinding::ReturnNotDrawn { others, .. } = &mut finding {
            let more = open[n + 1..].iter().filter(|after| is_one_break(house, c, after));
            others.extend(more.map(|after| after.id.clone()));
        }
        findings.push(Finding::new(finding).on(&side.elevation).at(source(side, c.low)));
    }
    for c in house.corners.iter().filter(|c| c.by == Pairing::Neighbor) {
        let (corner, turns, angle) = (c.id.clone(), c.kind, c.angle);
        let finding = Finding::new(CornerFinding::PostAngle { corner, turns, angle });
        let side = &c.sides[0];
        findings.push(finding.on(&side.elevation).at(source(side, c.low)));
    }
    for c in house.corners.iter().filter(|c| c.paired() && c.by != Pairing::Job) {
        disagree(house, c, &source, findings);
    }
}

/// How far apart two ends of planes stand that are one break, inches: a corner board.
const BREAK: f64 = 8.0;

/// Whether one plane of drawn siding ends where the other begins, on one elevation.
fn is_one_break(house: &House, a: &Corner, b: &Corner) -> bool {
    let (s, t) = (&a.sides[0], &b.sides[0]);
    let walls = || house.elevations.iter().flat_map(|e| &e.walls);
    let drawn = |id: &WallId| walls().any(|w| w.id == *id && w.way == WallWay::Hatch);
    if ![&s.wall, &t.wall].into_iter().all(drawn) {
        return false;
    }
    s.elevation == t.elevation
        && s.wall != t.wall
        && s.side != t.side
        && (s.x - t.x).abs() <= BREAK
        && s.low < t.high
        && t.low < s.high
}

fn not_drawn(c: &Corner) -> CornerFinding {
    CornerFinding::ReturnNotDrawn {
        corner: c.id.clone(),
        turns: c.kind,
        tag: c.tag.clone(),
        height: c.high - c.low,
        only_elevation: false,
        others: Vec::new(),
    }
}

/// How far a wall's outline reaches up at a corner: what stone, bands and roofs hide of it counts.
fn drawn(house: &House, s: &CornerSide) -> (f64, f64) {
    let walls = house.elevations.iter().flat_map(|e| &e.walls).filter(|w| w.id == s.wall);
    let sides = walls.flat_map(|w| crate::geom::polygon::sides(&w.outline));
    let upright = sides.filter(|(a, b)| (a.x - b.x).abs() <= LEVEL && (a.x - s.x).abs() <= LEVEL);
    upright.fold((s.low, s.high), |r, (a, b)| (r.0.min(a.y).min(b.y), r.1.max(a.y).max(b.y)))
}

fn disagree(
    house: &House,
    c: &Corner,
    source: &dyn Fn(&CornerSide, f64) -> Point,
    findings: &mut Findings,
) {
    let first = &c.sides[0];
    let reach = |here: bool| {
        let mine = c.sides.iter().filter(|s| (s.elevation == first.elevation) == here);
        mine.map(|s| drawn(house, s))
            .fold((f64::INFINITY, f64::NEG_INFINITY), |r, s| (r.0.min(s.0), r.1.max(s.1)))
    };
    let ((low, high), (low2, high2)) = (reach(true), reach(false));
    let Some(other) = c.round() else { return };
    let both = |here: f64, there: f64| {
        let on = |wall: &str, height: f64| HeightOn { wall: WallId::from(wall), height };
        let apart = (here - there).abs() > AGREE;
        apart.then(|| [on(&first.wall, here), on(&other.wall, there)])
    };
    let (tops, bottoms) = (both(high, high2), both(low, low2));
    if tops.is_none() && bottoms.is_none() {
        return;
    }
    // A soffit goes level round an outside corner. Bottoms may differ as foundations step, and the top
    // of an inside corner where a roof crosses it.
    let usual = tops.is_none() || c.kind != CornerKind::Outside;
    let corner = c.id.clone();
    let kind = CornerFinding::CornerHeightsDisagree { corner, tops, bottoms, usual };
    findings.push(Finding::new(kind).on(&first.elevation).at(source(first, high)));
}
