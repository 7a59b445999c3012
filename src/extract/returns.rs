//! Walls round a corner that the job gives because no elevation shows them
//! (`LayoutFact::HiddenWalls`): each an elevation of its own, on the heights of its corner, so that
//! courses meet there.

use crate::finding::corners::{CornerFinding, ReturnFault};
use crate::finding::{Finding, Findings};
use crate::geom::polygon::Polygon;
use crate::geom::tol::{LEVEL, snap};
use crate::geom::vocabulary::{Affine, Point, Rect};
use crate::job::{Job, ReturnWall};
use crate::model::corner::{Corner, CornerKind, CornerSide, Hand, Pairing};
use crate::model::house::{DrawnEdge, DrawnElevation, DrawnWall, EdgeKind, House, WallWay};
use crate::model::ids::CornerId;
use crate::origin::Origin;
use crate::real::Real;

/// Room between what is drawn and a wall placed beside it in the source, inches: of our own choosing.
const BESIDE: f64 = 120.0;

/// Adds the walls that the job gives.
pub(super) fn add(house: &mut House, job: &Job, findings: &mut Findings) {
    let mut free = drawn(house).map_or(Point::ZERO, |r| Point::new(r.x1, r.y0));
    for r in &job.returns {
        if r.width <= 0.0 && joined(house, r) {
            continue;
        }
        let Some(near) = open(house, &r.corner, findings) else { continue };
        if r.width <= 0.0 {
            house.corners[near].by = Pairing::Bare;
            continue;
        }
        let far = match &r.to {
            None => None,
            Some(name) => match open(house, name, findings) {
                Some(far) if far != near => Some(far),
                Some(_) => {
                    let named = r.corner.clone();
                    let fault = ReturnFault::EndsWhereItBegins;
                    let kind = CornerFinding::ReturnCornerUnknown { named, fault };
                    findings.push(Finding::new(kind));
                    continue;
                }
                None => continue,
            },
        };
        let made = made(house, r, near, far, &mut free);
        house.elevations.push(made);
    }
    house.corners.retain(|c| !c.sides.is_empty());
}

/// Whether both ends of it are one corner already, since it has no width.
fn joined(house: &House, r: &ReturnWall) -> bool {
    let one = |c: &&Corner| c.by == Pairing::Neighbor;
    let Some(to) = &r.to else { return false };
    let named = |c: &Corner, name: &str| {
        let at = |s: &CornerSide| format!("{}/{}", s.wall, s.side.id()) == name;
        c.tag.as_deref() == Some(name) || c.sides.iter().any(at)
    };
    house.corners.iter().filter(one).any(|c| named(c, &r.corner) && named(c, to))
}

/// The open corner of this name or tag.
fn open(house: &House, name: &str, findings: &mut Findings) -> Option<usize> {
    let named = |tag: bool| {
        let is = move |c: &Corner| {
            if tag { c.tag.as_deref() == Some(name) } else { c.id == name || side(c, name) }
        };
        (0..house.corners.len()).filter(move |i| is(&house.corners[*i]))
    };
    let found: Vec<usize> =
        if named(false).next().is_some() { named(false).collect() } else { named(true).collect() };
    let still: Vec<usize> =
        found.iter().copied().filter(|i| house.corners[*i].by == Pairing::Open).collect();
    if let [one] = still[..] {
        return Some(one);
    }
    let ids = |of: &[usize]| -> Vec<CornerId> {
        of.iter().map(|i| house.corners[*i].id.clone()).collect()
    };
    let all_open: Vec<usize> =
        (0..house.corners.len()).filter(|i| house.corners[*i].by == Pairing::Open).collect();
    let fault = if !still.is_empty() {
        ReturnFault::Ambiguous { corners: ids(&still) }
    } else if found.is_empty() {
        ReturnFault::NoSuchCorner { open: ids(&all_open) }
    } else {
        ReturnFault::BothWallsKnown { open: ids(&all_open) }
    };
    let named = name.to_owned();
    findings.push(Finding::new(CornerFinding::ReturnCornerUnknown { named, fault }));
    None
}

/// Whether a corner's wall and side are named so, whichever wall names the corner itself.
fn side(c: &Corner, name: &str) -> bool {
    c.sides.iter().skip(1).any(|s| format!("{}/{}", s.wall, s.side.id()) == name)
}

/// Box of everything the elevations show, source coordinates.
fn drawn(house: &House) -> Option<Rect> {
    let points = house.elevations.iter().flat_map(|e| {
        let walls = e.walls.iter().flat_map(|w| &w.outline);
        let lines = e.backdrop.iter().flat_map(|b| &b.points);
        walls.chain(lines).map(|p| e.to_source * *p)
    });
    crate::geom::polygon::bounds(&points.collect::<Vec<_>>())
}

fn made(
    house: &mut House,
    r: &ReturnWall,
    near: usize,
    far: Option<usize>,
    free: &mut Point,
) -> DrawnElevation {
    let corner = &house.corners[near];
    let at = corner.sides[0].clone();
    let (low, width) = (corner.low, snap(r.width));
    let high = r.height.map_or(corner.high, |h| snap(low + h));
    // Seen from outside, what follows a wall's right side has its own left side there.
    let hand = at.side.other();
    let name = format!("Return at {}", corner.id);
    let taken = |id: &str| house.elevations.iter().flat_map(|e| &e.walls).any(|w| w.id == id);
    let mut n = 1;
    while taken(&format!("return-{n}")) {
        n += 1;
    }
    let id = format!("return-{n}");
    let on = house.elevations.iter().find(|e| e.walls.iter().any(|w| w.id == at.wall));
    let tag = corner.tag.clone();
    let kinds = (corner.kind, far.map(|f| (house.corners[f].kind, house.corners[f].tag.clone())));
    let wall = wall(&id, (low, high, width), hand, kinds, tag);
    let ground = on.and_then(|e| nearest_grade(&e.grade, at.x));
    let grade = ground.map(|y| vec![Point::new(0.0, y), Point::new(width, y)]).unwrap_or_default();
    // Placed beside all that is drawn, its heights those of its corner's elevation.
    let from = on.map_or(Affine::IDENTITY, |e| e.to_source);
    let [a, b, c, d, ..] = from.as_coeffs();
    // An angled wall's elevation is squeezed across: heights keep the drawing's unit.
    let unit = c.hypotenuse(d);
    free.x += BESIDE * unit;
    let to_source = Affine::new([unit * a.signum(), b, c, d, free.x, (from * Point::ZERO).y]);
    free.x += width * unit;
    let mut side = |i: usize, side: Hand| {
        let x = if side == Hand::Left { 0.0 } else { width };
        let c = &mut house.corners[i];
        let (elevation, wall) = (name.as_str().into(), id.as_str().into());
        c.sides.push(CornerSide { elevation, wall, side, x, lean: 0.0, low, high });
        c.by = Pairing::Job;
        (c.low, c.high) = (c.low.min(low), c.high.max(high));
    };
    side(near, hand);
    if let Some(far) = far {
        side(far, hand.other());
    }
    one_corner(house, near, (low, high));
    DrawnElevation {
        name: name.into(),
        to_source,
        walls: vec![wall],
        grade,
        level_drawn: true,
        backdrop: Vec::new(),
        texts: Vec::new(),
        zones: Vec::new(),
    }
}

/// What a band or stone parts of a corner is one with it, where the wall round the corner goes on beside
/// both parts.
fn one_corner(house: &mut House, near: usize, (low, high): (f64, f64)) {
    let (kind, at) = (house.corners[near].kind, house.corners[near].sides[0].clone());
    for i in (0..house.corners.len()).filter(|i| *i != near) {
        let c = &mut house.corners[i];
        let beside = c.by == Pairing::Open && c.kind == kind && c.low < high && c.high > low;
        let [own] = &c.sides[..] else { continue };
        if beside && own.wall == at.wall && own.side == at.side && (own.x - at.x).abs() < LEVEL {
            let sides = std::mem::take(&mut c.sides);
            let (low, high) = (c.low, c.high);
            let into = &mut house.corners[near];
            // Sides of one elevation stand together.
            into.sides.splice(1..1, sides);
            (into.low, into.high) = (into.low.min(low), into.high.max(high));
        }
    }
}

type Far = Option<(CornerKind, Option<String>)>;

fn wall(
    id: &str,
    (low, high, width): (f64, f64, f64),
    hand: Hand,
    (near, far): (CornerKind, Far),
    tag: Option<String>,
) -> DrawnWall {
    let kind = |k: CornerKind| match k {
        CornerKind::Outside => EdgeKind::OutsideCorner,
        CornerKind::Inside => EdgeKind::InsideCorner,
    };
    let near = (kind(near), tag);
    let far = far.map_or((EdgeKind::Abutment, None), |(k, t)| (kind(k), t));
    let (left, right) = if hand == Hand::Left { (near, far) } else { (far, near) };
    let face = Polygon::rect(0.0, low, width, high);
    let p = |x: f64, y: f64| Point::new(x, y);
    let edge = |(kind, tag): (EdgeKind, Option<String>), from, to| DrawnEdge {
        kind,
        from,
        to,
        pitch: None,
        tag,
    };
    let edges = vec![
        edge((EdgeKind::Base, None), p(0.0, low), p(width, low)),
        edge(right, p(width, low), p(width, high)),
        edge((EdgeKind::Eave, None), p(width, high), p(0.0, high)),
        edge(left, p(0.0, high), p(0.0, low)),
    ];
    DrawnWall {
        id: id.into(),
        outline: face.outer.clone(),
        faces: vec![face],
        hidden: Vec::new(),
        openings: Vec::new(),
        obstacles: Vec::new(),
        bands: Vec::new(),
        joints: Vec::new(),
        fillers: Vec::new(),
        short: Vec::new(),
        edges,
        drawn_exposure: None,
        way: WallWay::Job,
        origin: Origin::default(),
    }
}

/// Height of grade where its line passes `x`, else at its nearer end.
fn nearest_grade(grade: &[Point], x: f64) -> Option<f64> {
    let pair = grade.windows(2).find(|p| p[0].x <= x && x <= p[1].x && p[1].x > p[0].x);
    let on = pair.map(|p| p[0].y + (x - p[0].x) / (p[1].x - p[0].x) * (p[1].y - p[0].y));
    let end = || grade.iter().min_by(|a, b| (a.x - x).abs().total_cmp(&(b.x - x).abs()));
    on.or_else(|| end().map(|p| p.y))
}
