//! What the drawing leaves open of a house that is laid out: wall without siding, feet cut around something, and posts
//! that run down past stone. Each is a question to the architect.

use super::ragged;
use crate::finding::laying::LayingFinding;
use crate::finding::{Finding, Findings};
use crate::geom::tol::{LEVEL, SAME};
use crate::geom::vocabulary::{Affine, Point, Xy};
use crate::layout::laid::LaidHouse;
use crate::layout::wall::{LaidEdge, LaidElevation, LaidOpening, LaidWall};
use crate::model::corner::{Corner, CornerSide};
use crate::model::house::EdgeKind;
use crate::model::ids::OpeningId;
use crate::model::receiver::BareBy;

/// Least area of a wall without siding that is asked about, square feet: of our own choosing.
const LEAST_ASKED: f64 = 1.0;
/// How far the siding may end beside a corner, inches: set-backs, covers. Of our own choosing.
const AT_CORNER: f64 = 16.0;

/// How long two openings touch at least to be joined, inches: of our own choosing.
const JOINED: f64 = 2.0;

/// Adds the questions, wall by wall, then corner by corner.
pub fn ask(layout: &LaidHouse, findings: &mut Findings) {
    for (e, w) in layout.walls() {
        // A clearance over a roof is flashed, not asked about.
        for by in [BareBy::NearGrade, BareBy::BehindRoof] {
            bare(e, w, by, findings);
        }
    }
    layout.walls().for_each(|(e, w)| joined(e, w, findings));
    layout.walls().for_each(|(e, w)| ragged_feet(e, w, findings));
    layout.corners.iter().for_each(|c| past_stone(layout, c, findings));
    findings.round_places(layout.drawing.inches_per_unit);
}

fn bare(e: &LaidElevation, w: &LaidWall, by: BareBy, findings: &mut Findings) {
    let parts: Vec<_> = w.bare.iter().filter(|b| b.by == by).collect();
    let area: f64 = parts.iter().map(|b| b.area).sum();
    let largest = parts.iter().max_by(|a, b| a.area.total_cmp(&b.area));
    let Some(at) = largest.filter(|_| area >= LEAST_ASKED).and_then(|b| middle(&b.outline)) else {
        return;
    };
    let above_grade = parts.iter().map(|b| b.above_grade(&e.grade)).sum();
    let kind = LayingFinding::WallBare { wall: w.id.clone(), by, area, above_grade };
    findings.push(Finding::new(kind).on(&e.name).at(place(e, at)));
}

/// Feet that are cut around something, as around a chair.
fn ragged_feet(e: &LaidElevation, w: &LaidWall, findings: &mut Findings) {
    for r in ragged::feet(&w.edges) {
        let (edges, size) = (r.edges, [r.place.width(), r.place.height()]);
        let kind = LayingFinding::RaggedFoot { wall: w.id.clone(), edges, size };
        let at = place(e, [r.place.center().x, r.place.center().y]);
        findings.push(Finding::new(kind).on(&e.name).at(at));
    }
}

/// Openings that share a side, or some of one.
fn joined(e: &LaidElevation, w: &LaidWall, findings: &mut Findings) {
    let mut found: Vec<([OpeningId; 2], Xy)> = Vec::new();
    for (i, a) in w.openings.iter().enumerate() {
        for b in &w.openings[i + 1..] {
            let both = drawn(a).into_iter().flat_map(|s| drawn(b).into_iter().map(move |t| (s, t)));
            let at = both.filter_map(|(s, t)| shared(s, t)).next();
            found.extend(at.map(|at| ([a.id.clone(), b.id.clone()], at)));
        }
    }
    let Some((_, at)) = found.first() else { return };
    let (at, others) = (place(e, *at), found[1..].iter().map(|f| place(e, f.1)).collect());
    let pairs = found.into_iter().map(|f| f.0).collect();
    let kind = LayingFinding::OpeningsJoined { wall: w.id.clone(), pairs };
    findings.push(Finding::new(kind).on(&e.name).at(at).also_at(others));
}

/// The sides of an opening as drawn, less the filler boards in its frame.
fn drawn(o: &LaidOpening) -> Vec<[Xy; 2]> {
    let own = |p: &Xy| [p[0].max(o.left).min(o.right), p[1].max(o.sill).min(o.head)];
    let next = o.outline.iter().cycle().skip(1);
    o.outline.iter().zip(next).map(|(p, q)| [own(p), own(q)]).collect()
}

/// The middle of what two plumb or level sides share.
fn shared([a, b]: [Xy; 2], [c, d]: [Xy; 2]) -> Option<Xy> {
    [0, 1].into_iter().find_map(|across| {
        let along = 1 - across;
        let in_line = [b, c, d].iter().all(|p| (p[across] - a[across]).abs() <= SAME);
        let low = a[along].min(b[along]).max(c[along].min(d[along]));
        let high = a[along].max(b[along]).min(c[along].max(d[along]));
        let mut middle = a;
        middle[along] = (low + high) / 2.0;
        (in_line && high - low > JOINED).then_some(middle)
    })
}

/// Where siding stands on stone on one side of a corner and goes on down on the other.
fn past_stone(layout: &LaidHouse, corner: &Corner, findings: &mut Findings) {
    let feet = corner.sides.iter().filter_map(|s| foot(layout, s));
    let feet: Vec<Foot> = feet.collect();
    let Some(lowest) = feet.iter().map(|f| f.at[1]).reduce(f64::min) else { return };
    let Some(stone) = feet.iter().find(|f| f.on_stone && f.at[1] > lowest + 1.0) else { return };
    let kind = LayingFinding::PostPastStone {
        corner: corner.id.clone(),
        wall: stone.wall.id.clone(),
        by: stone.at[1] - lowest,
    };
    let at = place(stone.elevation, stone.at);
    findings.push(Finding::new(kind).on(&stone.elevation.name).at(at));
}

/// Where siding ends at the foot of a corner, on one wall.
struct Foot<'a> {
    elevation: &'a LaidElevation,
    wall: &'a LaidWall,
    at: Xy,
    /// It stands on a bare area.
    on_stone: bool,
}

fn foot<'a>(layout: &'a LaidHouse, side: &CornerSide) -> Option<Foot<'a>> {
    let (elevation, wall) = layout.walls().find(|(_, w)| w.id == side.wall)?;
    let at_corner = |e: &&LaidEdge| {
        matches!(e.kind, EdgeKind::OutsideCorner | EdgeKind::InsideCorner)
            && (e.from[0] - side.x).abs() <= AT_CORNER
    };
    let low = |e: &LaidEdge| if e.from[1] < e.to[1] { e.from } else { e.to };
    let ends = wall.edges.iter().filter(at_corner).map(low);
    let at = ends.min_by(|a, b| a[1].total_cmp(&b[1]))?;
    let meets = |p: Xy| (p[0] - at[0]).abs() <= LEVEL && (p[1] - at[1]).abs() <= LEVEL;
    let on_stone =
        wall.edges.iter().any(|e| e.kind == EdgeKind::BareTop && (meets(e.from) || meets(e.to)));
    // A skirt board on the stone is no part of it.
    let skirt = wall.fillers.iter().find(|f| {
        let [left, _, right, top] = f.place;
        f.opening.is_none()
            && (top - at[1]).abs() <= LEVEL
            && (left - AT_CORNER..=right + AT_CORNER).contains(&at[0])
    });
    let at = skirt.map_or(at, |f| [at[0], f.place[1]]);
    Some(Foot { elevation, wall, at, on_stone })
}

fn middle(rings: &[Vec<Xy>]) -> Option<Xy> {
    let points: Vec<Point> = rings.iter().flatten().map(|p| Point::new(p[0], p[1])).collect();
    let c = crate::geom::polygon::bounds(&points)?.center();
    Some([c.x, c.y])
}

fn place(e: &LaidElevation, at: Xy) -> Point {
    Affine::new(e.to_source) * Point::new(at[0], at[1])
}
