//! A house as it was read moved to what was taped: walls with all that is on them, whatever they were read from, and
//! what is drawn behind them. Nothing is read again, so names, corners and what each side is stay what they were.

use super::shape::{SIDE, Side};
use super::tape::{Elevation, Tape, origin};
use super::wall::Wall;
use crate::extract;
use crate::finding::taped::TapedFinding;
use crate::finding::{Finding, Findings};
use crate::geom::boolean::{difference, union_all};
use crate::geom::polygon::{Polygon, bounds, sides, total_area};
use crate::geom::tol::{BESIDE, level, lies_flat, plumb, snap, upright};
use crate::geom::vocabulary::{Affine, Point, Vec2};
use crate::model::corner::{CornerSide, Hand, Pairing};
use crate::model::house::{DrawnEdge, DrawnElevation, DrawnWall, EdgeKind, HiddenBy, House};
use crate::model::ids::ElevationName;
use crate::model::linework::Linework;

impl Tape {
    /// Moves a house, or one of its zones.
    pub(crate) fn move_house(&self, lines: &Linework, house: &mut House, findings: &mut Findings) {
        for i in 0..house.elevations.len() {
            let Some(on) = On::of(self, lines, &house.elevations[i]) else { continue };
            on.corners(house, i);
            on.elevation(&mut house.elevations[i], findings);
        }
        let walls = house.elevations.iter().flat_map(|e| e.walls.iter().map(move |w| (&e.name, w)));
        let walls: Vec<(&ElevationName, &DrawnWall)> = walls.collect();
        for c in &mut house.corners {
            let stands = |s: &CornerSide| {
                walls.iter().any(|(e, w)| **e == s.elevation && w.id == s.wall && is_corner(w, s))
            };
            let had = c.sides.len();
            c.sides.retain(stands);
            if had > 1 && c.sides.len() == 1 {
                c.by = Pairing::Open;
            }
        }
        house.corners.retain(|c| !c.sides.is_empty());
        for c in &mut house.corners {
            c.low = c.sides.iter().map(|s| s.low).fold(f64::INFINITY, f64::min);
            c.high = c.sides.iter().map(|s| s.high).fold(f64::NEG_INFINITY, f64::max);
        }
    }
}

/// An elevation that is moved, by the one that was taped.
struct On<'a> {
    taped: &'a Elevation,
    /// From its own places to those of the elevation that was taped: a zone's begin elsewhere.
    there: Vec2,
    /// How far its left end goes: its places begin there.
    left: f64,
    /// Width at a joint of the building.
    gap: f64,
}

impl<'a> On<'a> {
    fn of(tape: &'a Tape, lines: &Linework, e: &DrawnElevation) -> Option<Self> {
        let own = |name: &str| e.name == *name || e.name.starts_with(&format!("{name}, "));
        let taped = tape.elevations.iter().find(|t| own(&t.name))?;
        let there = origin(lines, e) - taped.origin;
        let mut on = On { taped, there, left: 0.0, gap: tape.gap };
        let left = |points: Vec<Point>| bounds(&points).map(|b| b.x0);
        let all = || e.walls.iter().flat_map(|w| w.outline.iter().map(move |p| (w, *p)));
        let was = left(all().map(|(_, p)| p).collect())?;
        let is = left(all().map(|(w, p)| on.with(on.wall(w), p, Wall::moved)).collect())?;
        on.left = snap(is - was);
        Some(on)
    }

    /// The wall that moves one of the elevation's: its own, or that which a zone is on.
    fn wall(&self, w: &DrawnWall) -> Option<&'a Wall> {
        let middle = bounds(&w.outline).unwrap_or_default().center() + self.there;
        self.taped.wall(&w.id).or_else(|| self.taped.nearest(middle))
    }

    /// Where a place goes by a wall.
    fn with(&self, wall: Option<&Wall>, p: Point, how: impl Fn(&Wall, Point) -> Point) -> Point {
        let there = p + self.there;
        let to = wall.map_or(there, |w| how(w, there)) - self.there;
        Point::new(snap(to.x - self.left), snap(to.y))
    }

    /// Sides of corners on the elevation.
    fn corners(&self, house: &mut House, i: usize) {
        let e = &house.elevations[i];
        for s in house.corners.iter_mut().flat_map(|c| &mut c.sides) {
            let Some(w) = e.walls.iter().find(|w| w.id == s.wall) else { continue };
            let to = |y: f64| self.with(self.wall(w), Point::new(s.x, y), Wall::moved);
            let (foot, top) = (to(s.low), to(s.high));
            let leans = top.x - foot.x;
            s.lean = if plumb(leans) { 0.0 } else { leans / (top.y - foot.y) };
            (s.x, s.low, s.high) = ((foot.x + top.x) / 2.0, foot.y, top.y);
        }
    }

    fn elevation(&self, e: &mut DrawnElevation, findings: &mut Findings) {
        for w in &mut e.walls {
            let (sloped, off) = self.moved(w);
            if !sloped.is_empty() {
                findings.push(Finding::new(TapedFinding::Slopes { wall: w.id.clone(), sloped }));
            }
            if let Some([left, right]) = self.leans(w) {
                let wall = w.id.clone();
                findings.push(Finding::new(TapedFinding::Leans { wall, left, right }));
            }
            if let Some(off) = off {
                findings.push(Finding::new(TapedFinding::Top { wall: w.id.clone(), off }));
            }
        }
        e.grade.iter_mut().for_each(|p| self.loose(p));
        for b in &mut e.backdrop {
            let Some(frame) = bounds(&b.points) else { continue };
            self.drawn(|points, by| by.drawn(b.role, frame + self.there, points), &mut b.points);
        }
        for t in &mut e.texts {
            let mut at = [t.center()];
            self.drawn(|points, by| by.drawn(None, *t + self.there, points), &mut at);
            *t = *t + (at[0] - t.center());
        }
        let holes: Vec<Polygon> = e.walls.iter().flat_map(holes).collect();
        for z in &mut e.zones {
            for shape in &mut z.shapes {
                let wall = self.taped.nearest(shape.bounds().center() + self.there);
                *shape = shape.map(|p| self.with(wall, p, Wall::moved));
            }
            z.gross = total_area(&z.shapes);
            z.net = total_area(&difference(&z.shapes, &union_all(&holes)));
        }
        e.to_source *= Affine::translate((self.left, 0.0));
    }

    /// How far the corners of a wall that is as taped lean to the right, from foot to top: left, right. None where
    /// both are plumb.
    fn leans(&self, w: &DrawnWall) -> Option<[f64; 2]> {
        let by = self.taped.wall(&w.id)?;
        let leaning =
            |hand: Hand| w.edges.iter().any(|e| is_on(e, hand) && !plumb(e.to.x - e.from.x));
        let of = |side: Side, hand| if leaning(hand) { side.top.x - side.foot.x } else { 0.0 };
        let both = [of(by.taped.left, Hand::Left), of(by.taped.right, Hand::Right)];
        both.iter().any(|lean| *lean != 0.0).then_some(both)
    }

    /// Points that are drawn in the elevation.
    fn drawn(&self, by: impl Fn(&mut [Point], &Elevation), points: &mut [Point]) {
        points.iter_mut().for_each(|p| *p += self.there);
        by(points, self.taped);
        points.iter_mut().for_each(|p| *p = *p - self.there - Vec2::new(self.left, 0.0));
    }

    fn loose(&self, p: &mut Point) {
        let to = self.taped.moved(*p + self.there) - self.there;
        *p = Point::new(snap(to.x - self.left), snap(to.y));
    }

    /// A wall with everything on it; the sides that are sloped now are given as what they were, and how far a top is
    /// out of level.
    fn moved(&self, w: &mut DrawnWall) -> (Vec<EdgeKind>, Option<f64>) {
        let by = self.wall(w);
        let corner = |p: Point| self.with(by, p, Wall::moved);
        let shape = |s: &mut Polygon| *s = s.map(corner);
        let frame = bounds(&w.outline).unwrap_or_default();
        let middle = |x: f64| Point::new(x, frame.center().y);
        w.joints.iter_mut().for_each(|x| *x = self.with(by, middle(*x), Wall::moved).x);
        w.outline.iter_mut().for_each(|p| *p = self.with(by, *p, Wall::moved));
        w.short.iter_mut().for_each(shape);
        for h in &mut w.hidden {
            let along = by.and_then(|b| b.strip_of(h.shape.bounds()));
            let ring: Vec<Point> = h.shape.outer.iter().map(|p| *p + self.there).collect();
            h.shape = h.shape.map(|p| match along {
                None => Point::new(
                    by.and_then(|b| b.jamb_of(p + self.there, &ring))
                        .map_or(corner(p).x, |i| self.with(by, p, |b, p| b.at_opening(i, p)).x),
                    corner(p).y,
                ),
                // A strip goes with the opening that it ends with.
                Some((i, upright)) => {
                    let (at, own) = (corner(p), self.with(by, p, |b, p| b.at_opening(i, p)));
                    if upright { Point::new(at.x, own.y) } else { Point::new(own.x, at.y) }
                }
            });
        }
        let leans = by.map_or([false; 2], Wall::leans_too_far);
        let was = w.edges.clone();
        w.edges.iter_mut().for_each(|e| edge(e, corner, leans));
        let told = (sloped(&was, &w.edges), out_of_level(&was, &w.edges));
        for o in &mut w.openings {
            let own = by.and_then(|b| b.opening(&o.id));
            let to = |p: Point| match own {
                Some(i) => self.with(by, p, |b, p| b.at_opening(i, p)),
                None => corner(p),
            };
            let rings = std::iter::once(&mut o.outline).chain(&mut o.unfilled);
            rings.flatten().for_each(|p| *p = to(*p));
        }
        for o in &mut w.obstacles {
            let at = bounds(&o.outline).unwrap_or_default().center();
            let shift = self.with(by, at, Wall::moved) - at;
            o.outline
                .iter_mut()
                .for_each(|p| *p = Point::new(snap(p.x + shift.x), snap(p.y + shift.y)));
        }
        // Faces are the outline less what hides it, to the grid; boards are bands less openings.
        let mut hidden = w.hidden.clone();
        hidden.retain(|h| h.by != HiddenBy::Joint);
        w.hidden.iter_mut().for_each(|h| h.shape = past_leaning(&w.outline, &h.shape));
        extract::moved_anew(w, self.gap);
        w.hidden.iter_mut().zip(hidden).for_each(|(h, own)| *h = own);
        told
    }
}

/// How far what hides a wall goes past a side of it that leans, inches: to the grid it would end beside it, and leave
/// a hairline.
const OVER: f64 = 0.25;
/// How steep a side is that leans, rise over run. Of our own choosing, no source.
const STEEP: f64 = 8.0;

/// A shape that ends at leaning sides of a wall, ending past them.
fn past_leaning(outline: &[Point], shape: &Polygon) -> Polygon {
    let leans = |v: Vec2| v.x != 0.0 && v.y.abs() > STEEP * v.x.abs();
    let leaning: Vec<(Point, Point)> = sides(outline).filter(|(a, b)| leans(*b - *a)).collect();
    shape.map(|p| {
        let on = |(a, b): &&(Point, Point)| {
            let (from, side) = (p - *a, *b - *a);
            let along = from.dot(side) / side.hypot2();
            (0.0..=1.0).contains(&along) && from.cross(side).abs() <= BESIDE * side.hypot()
        };
        // The wall lies on the left hand: its right side runs up.
        let out = leaning.iter().find(on).map_or(0.0, |(a, b)| OVER * (b.y - a.y).signum());
        Point::new(p.x + out, p.y)
    })
}

/// How far the right end of a top that was drawn level lies over its left end as taped, of such tops the one most out
/// of level. None where all are level still.
fn out_of_level(was: &[DrawnEdge], is: &[DrawnEdge]) -> Option<f64> {
    let tops = was.iter().zip(is).filter(|(was, is)| {
        matches!(is.kind, EdgeKind::Eave | EdgeKind::BareBottom) && level(was.to.y - was.from.y)
    });
    // The wall lies on the left hand: a top runs to the left.
    let off = tops.map(|(_, e)| e.from.y - e.to.y).filter(|off| !level(*off));
    off.max_by(|a, b| a.abs().total_cmp(&b.abs()))
}

/// Whether a wall has a corner's side there still: one that leans is none.
fn is_corner(w: &DrawnWall, s: &CornerSide) -> bool {
    w.edges.iter().any(|e| {
        let (low, high) = (e.from.y.min(e.to.y), e.from.y.max(e.to.y));
        is_on(e, s.side) && low < s.high && high > s.low && (e.from.x - s.x).abs() <= SIDE
    })
}

/// Whether a side is a corner on one hand of its wall.
fn is_on(e: &DrawnEdge, side: Hand) -> bool {
    let hand = if e.to.y > e.from.y { Hand::Right } else { Hand::Left };
    matches!(e.kind, EdgeKind::OutsideCorner | EdgeKind::InsideCorner) && hand == side
}

fn holes(w: &DrawnWall) -> impl Iterator<Item = Polygon> + '_ {
    w.openings.iter().map(|o| Polygon::simple(o.outline.clone()).wound())
}

/// What the sides were that are sloped now, each sort once.
fn sloped(was: &[DrawnEdge], is: &[DrawnEdge]) -> Vec<EdgeKind> {
    let changed = was.iter().zip(is).filter(|(a, b)| a.kind != b.kind);
    let mut out: Vec<EdgeKind> = changed.map(|(a, _)| a.kind).collect();
    out.retain(|k| *k != EdgeKind::Rake);
    out.sort_unstable();
    out.dedup();
    out
}

/// A side of a wall. An upright one that leans no more than a post may stays what it was drawn as, and a top that is
/// no more out of level; any other is what one that is drawn so is read as.
/// `too_far` are the left and the right side of the wall.
fn edge(e: &mut DrawnEdge, to: impl Fn(Point) -> Point, too_far: [bool; 2]) {
    use EdgeKind::{
        Abutment, BareBottom, BareTop, Base, Eave, InsideCorner, LowerRoof, OutsideCorner, Rake,
    };
    (e.from, e.to) = (to(e.from), to(e.to));
    let rise = e.to - e.from;
    // Parts of one side are of one sort, so that its corner is whole.
    let of_side = !plumb(rise.x) && too_far[usize::from(rise.y > 0.0)];
    let leans = of_side || !upright(rise.x, rise.y);
    e.kind = match e.kind {
        OutsideCorner | InsideCorner | Abutment if leans && rise.x > 0.0 => LowerRoof,
        OutsideCorner | InsideCorner | Abutment if leans => Rake,
        Base | BareTop if !level(rise.y) => LowerRoof,
        Eave | BareBottom if !lies_flat(rise.y, rise.x) => Rake,
        Rake if level(rise.y) => Eave,
        kind => kind,
    };
    let sloped = matches!(e.kind, LowerRoof | Rake | BareTop | BareBottom | Base | Eave);
    e.pitch = (sloped && !level(rise.y) && !plumb(rise.x)).then(|| (12.0 * rise.y / rise.x).abs());
}
