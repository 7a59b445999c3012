//! A house moved to what was taped. Each wall is moved by the places of its corners, its openings as boxes from
//! its left side; walls that stand beside one another in an elevation stay side by side. What is blank stays as it
//! is drawn, but for the top of a wall whose foot alone was taped, and the other way round: it has the same difference.

use std::collections::{BTreeMap, BTreeSet};

use super::bands::BandShape;
use super::joined::joined;
use super::list::of_house;
use super::shape::{OpeningShape, Side, WallShape};
use super::tape::{Elevation, Tape, origin};
use super::wall::Wall;
use crate::finding::taped::TapedFinding;
use crate::finding::{Finding, Findings};
use crate::geom::tol::LEVEL;
use crate::geom::vocabulary::Point;
use crate::job::Job;
use crate::model::house::{DrawnElevation, DrawnWall, House};
use crate::model::linework::Linework;
use crate::model::measure::MeasureKind as What;

/// What closes within this needs no word, inches: what a tape is read to (common practice, no source).
const CLOSES: f64 = 1.0 / 16.0;
/// Walls whose sides are within this stand side by side, inches. Of our own choosing, no source.
const BESIDE: f64 = 2.0;
/// Blanks that are named.
const NAMED: usize = 8;

/// What was taped of a house that was read from these lines. Says what was taken, what stayed as drawn, and what
/// contradicts.
pub(in crate::pipeline) fn tape(
    lines: &Linework,
    house: &House,
    job: &Job,
    findings: &mut Findings,
) -> Tape {
    let taped = &job.taped;
    if taped.is_empty() {
        return Tape::default();
    }
    let known: BTreeSet<String> = of_house(house).into_iter().map(|m| m.name).collect();
    let unknown: Vec<String> = taped.keys().filter(|k| !known.contains(*k)).cloned().collect();
    if !unknown.is_empty() {
        findings.push(Finding::new(TapedFinding::Unknown { measures: unknown }));
        return Tape::default();
    }
    let blank: Vec<String> = known.iter().filter(|k| !taped.contains_key(*k)).cloned().collect();
    let (taken, as_drawn) = (taped.len(), blank.len());
    let named = blank.into_iter().take(NAMED).collect();
    findings.push(Finding::new(TapedFinding::Taken { taken, as_drawn, named }));
    let elevations = house.elevations.iter().map(|e| Elevation {
        name: e.name.clone(),
        walls: walls(e, taped, findings),
        origin: origin(lines, e),
    });
    Tape { elevations: elevations.collect(), gap: job.trim.movement_gap }
}

/// The walls of an elevation, left to right, each beside the ones before it.
fn walls(e: &DrawnElevation, taped: &BTreeMap<String, f64>, findings: &mut Findings) -> Vec<Wall> {
    let shapes = e.walls.iter().filter_map(|w| Some((w, WallShape::of(w)?)));
    let mut shapes: Vec<(&DrawnWall, WallShape)> = shapes.collect();
    let place = |s: &WallShape| (s.left.foot.x, s.left.foot.y);
    shapes.sort_by(|a, b| {
        let (a, b) = (place(&a.1), place(&b.1));
        a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1))
    });
    let mut out: Vec<Wall> = Vec::new();
    for (wall, drawn) in shapes {
        let x = drawn.left.foot.x;
        let shift = |w: &Wall| {
            let at = Point::new(x.clamp(w.frame.x0, w.frame.x1), drawn.left.foot.y);
            w.moved(at).x - at.x
        };
        let beside = out.iter().rev().find(|w| (w.drawn.right.foot.x - x).abs() <= BESIDE);
        let over = || out.iter().rev().find(|w| w.frame.x0 <= x && x <= w.frame.x1);
        let shift = beside.or_else(over).or(out.last()).map_or(0.0, shift);
        let built = taped_shape(&wall.id, &drawn, shift, taped, findings);
        let Some(made) = Wall::of(wall, drawn, built) else { continue };
        let openings = joined(&made, wall);
        out.push(made.with_openings(openings));
    }
    out
}

/// The shape that the tape says.
fn taped_shape(
    id: &str,
    drawn: &WallShape,
    shift: f64,
    taped: &BTreeMap<String, f64>,
    findings: &mut Findings,
) -> WallShape {
    let said = |kind: What| taped.get(&kind.of(id)).copied();
    let (l, r) = (drawn.left, drawn.right);
    let of = |kind: What, as_drawn: f64| said(kind).unwrap_or(as_drawn);
    let (foot, top) = (r.foot.x - l.foot.x, r.top.x - l.top.x);
    let lean = of(What::LeftLean, l.top.x - l.foot.x);
    let from_lean = |foot: f64| said(What::RightLean).map(|right| foot - lean + right);
    let (foot, top) = match (said(What::FootWidth), said(What::TopWidth)) {
        (Some(f), Some(t)) => (f, t),
        (Some(f), None) => (f, from_lean(f).unwrap_or(top + f - foot)),
        (None, Some(t)) => {
            let by_lean = said(What::RightLean).map(|right| t + lean - right);
            (by_lean.unwrap_or(foot + t - top), t)
        }
        (None, None) => (foot, from_lean(foot).unwrap_or(top + (l.top.x - l.foot.x) - lean)),
    };
    if let Some(right) = said(What::RightLean) {
        let off = lean + top - foot - right;
        if off.abs() > CLOSES {
            let measures = [What::FootWidth, What::TopWidth, What::LeftLean, What::RightLean]
                .map(|k| k.of(id));
            let (wall, measures) = (id.into(), measures.to_vec());
            findings.push(Finding::new(TapedFinding::Contradicts { wall, measures, off }));
        }
    }
    let left_foot = Point::new(l.foot.x + shift, of(What::LeftFoot, l.foot.y));
    let right_foot = Point::new(left_foot.x + foot, of(What::RightFoot, r.foot.y));
    let left_height = of(What::LeftHeight, l.top.y - l.foot.y);
    let right_height = of(What::RightHeight, r.top.y - r.foot.y);
    let left_top = Point::new(left_foot.x + lean, left_foot.y + left_height);
    let right_top = Point::new(left_top.x + top, right_foot.y + right_height);
    // Under a peak no side joins the two soffits.
    let (left_top, right_top) = match drawn.peak {
        None => {
            let blank = [What::LeftHeight, What::RightHeight].map(|k| said(k).is_none());
            level(soffit((left_top, right_top), (l.top, r.top), blank))
        }
        Some(_) => (left_top, right_top),
    };
    let (left_foot, right_foot) = started(id, drawn, (left_foot, right_foot), findings);
    let (left, right) = (side(l, left_foot, left_top), side(r, right_foot, right_top));
    let peak = drawn.peak.map(|p| {
        let place = of(What::PeakPlace, p.x - l.foot.x);
        Point::new(left.foot.x + place, of(What::PeakLevel, p.y))
    });
    let bands = bands(id, drawn, taped, findings);
    let mut built = WallShape { left, right, peak, openings: Vec::new(), bands };
    built.openings =
        drawn.openings.iter().map(|o| taped_opening(o, drawn, &built, taped)).collect();
    in_order(id, drawn, &mut built, findings);
    built
}

/// A side as taped, plumb where it is so but for noise.
fn side(drawn: Side, foot: Point, top: Point) -> Side {
    let (foot, top) = plumb((foot, top));
    Side { foot, top, ..drawn }
}

/// How far the start of a wall may lie out of level and siding still starts on one level line, inches: panels hang so
/// far over its foot at the higher corner (common practice, no source).
const START: f64 = 1.0;

/// Where the siding of a wall starts: on one level line, from the lower of its corners (`TrimFact::OneLevelLine`),
/// where they are drawn level and taped out of it by no more than panels may hang.
fn started(
    id: &str,
    drawn: &WallShape,
    (left, right): (Point, Point),
    findings: &mut Findings,
) -> (Point, Point) {
    let (a, b) = level((left, right));
    let (off, was) = (b.y - a.y, drawn.right.foot.y - drawn.left.foot.y);
    if off.abs() <= LEVEL || was.abs() > LEVEL || off.abs() > START {
        return (a, b);
    }
    findings.push(Finding::new(TapedFinding::LevelStart { wall: id.into(), off }));
    let low = a.y.min(b.y);
    (Point::new(a.x, low), Point::new(b.x, low))
}

/// The two ends of a soffit that is drawn level: where a height is blank it is taken as level, by the other one or,
/// where both are, as far over the middle of the start as it is drawn.
fn soffit(
    (left, right): (Point, Point),
    (l, r): (Point, Point),
    blank: [bool; 2],
) -> (Point, Point) {
    let y = match blank {
        _ if (l.y - r.y).abs() > LEVEL => return (left, right),
        [false, false] => return (left, right),
        [true, true] => (left.y + right.y) / 2.0,
        [true, false] => right.y,
        [false, true] => left.y,
    };
    (Point::new(left.x, y), Point::new(right.x, y))
}

/// Two places as level as what is drawn so little out of it is read: `normalize` squares the like.
fn level((a, b): (Point, Point)) -> (Point, Point) {
    let (run, off) = ((b.x - a.x).abs(), (b.y - a.y).abs());
    let y = (a.y + b.y) / 2.0;
    if off > 0.0 && is_slight(run, off) { (Point::new(a.x, y), Point::new(b.x, y)) } else { (a, b) }
}

/// The same of two places over one another.
fn plumb((a, b): (Point, Point)) -> (Point, Point) {
    let turned = |p: Point| Point::new(p.y, p.x);
    let (a, b) = level((turned(a), turned(b)));
    (turned(a), turned(b))
}

/// How long a side is that is squared, inches, how flat it lies, rise over run (0.1 degree), and how far its ends
/// are out, inches: as a drawing's noise (common practice, no source).
const LONG: f64 = 24.0;
const FLAT: f64 = 0.001_745;
const SLIGHT: f64 = 0.25;

fn is_slight(run: f64, off: f64) -> bool {
    run >= LONG && off <= FLAT * run && off <= SLIGHT
}

fn taped_opening(
    o: &OpeningShape,
    drawn: &WallShape,
    built: &WallShape,
    taped: &BTreeMap<String, f64>,
) -> OpeningShape {
    let of = |kind: What, as_drawn: f64| taped.get(&kind.of(&o.id)).copied().unwrap_or(as_drawn);
    let sill = of(What::Sill, o.sill);
    // What nobody taped goes along with the foot of the wall, so that openings in line stay in line.
    let beside = |at: f64| built.left.at(sill) + at;
    let along = built.left.foot.x - drawn.left.foot.x;
    let left = taped.get(&What::Place.of(&o.id)).map_or(o.left + along, |at| beside(*at));
    let right = left + of(What::Width, o.right - o.left);
    OpeningShape {
        id: o.id.clone(),
        left,
        right,
        sill,
        head: sill + of(What::Height, o.head - o.sill),
        cut: o.cut,
        square: o.square,
    }
}

/// Bands as taped; one that would lie over another stays as drawn, and is told with how far it is off.
fn bands(
    id: &str,
    drawn: &WallShape,
    taped: &BTreeMap<String, f64>,
    findings: &mut Findings,
) -> Vec<BandShape> {
    let mut out: Vec<BandShape> = drawn.bands.iter().map(|d| d.as_taped(taped)).collect();
    for (i, d) in drawn.bands.iter().enumerate() {
        let others = |all: &[BandShape]| [&all[..i], &all[i + 1..]].concat();
        let as_drawn = out[i].taped == [false; 2] || d.clash(&others(&drawn.bands)).is_some();
        let Some(off) = out[i].clash(&others(&out)).filter(|_| !as_drawn) else { continue };
        let measures = [What::BandBottom, What::BandTop].map(|k| k.of(&d.id)).to_vec();
        findings.push(Finding::new(TapedFinding::Contradicts { wall: id.into(), measures, off }));
        out[i] = d.clone();
    }
    out
}

/// Openings keep their order: one that would come to lie over the next, or beyond its wall, stays as drawn beside
/// the left side, and is told with how far it is off.
fn in_order(id: &str, drawn: &WallShape, built: &mut WallShape, findings: &mut Findings) {
    let shift = built.left.foot.x - drawn.left.foot.x;
    for i in 0..built.openings.len() {
        let o = &built.openings[i];
        let apart = |a: &OpeningShape, b: &OpeningShape| {
            a.right <= b.left || b.right <= a.left || a.head <= b.sill || b.head <= a.sill
        };
        let clash = (0..i).find(|j| {
            apart(&drawn.openings[*j], &drawn.openings[i]) && !apart(&built.openings[*j], o)
        });
        let beyond = (o.right - built.right.at(o.sill)).max(built.left.at(o.sill) - o.left);
        let off = clash.map(|j| built.openings[j].right - o.left).unwrap_or(beyond);
        let was_within = drawn.openings[i].right <= drawn.right.at(drawn.openings[i].sill) + CLOSES;
        if clash.is_some() || beyond > CLOSES && was_within {
            let measures = [What::Place, What::Width].map(|k| k.of(&o.id)).to_vec();
            findings.push(Finding::new(TapedFinding::Contradicts {
                wall: id.into(),
                measures,
                off,
            }));
            let d = &drawn.openings[i];
            built.openings[i] =
                OpeningShape { left: d.left + shift, right: d.right + shift, ..d.clone() };
        }
    }
}
