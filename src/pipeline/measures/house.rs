//! A house as it was read moved to what was taped: walls with all that is on them, whatever they were read from, and
//! what is drawn behind them. Nothing is read again, so names, corners and what each side is stay what they were.

use super::shape::SIDE;
use super::tape::{Elevation, Tape, origin};
use super::wall::Wall;
use crate::extract;
use crate::finding::taped::TapedFinding;
use crate::finding::{Finding, Findings};
use crate::geom::boolean::{difference, union_all};
use crate::geom::polygon::{Polygon, bounds, total_area};
use crate::geom::tol::{level, plumb, snap};
use crate::geom::vocabulary::{Affine, Point, Vec2};
use crate::model::corner::{CornerSide, Hand, Pairing};
use crate::model::house::{DrawnEdge, DrawnElevation, DrawnWall, EdgeKind, House};
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
            (s.x, s.low, s.high) = ((foot.x + top.x) / 2.0, foot.y, top.y);
        }
    }

    fn elevation(&self, e: &mut DrawnElevation, findings: &mut Findings) {
        for w in &mut e.walls {
            let sloped = self.moved(w);
            if !sloped.is_empty() {
                findings.push(Finding::new(TapedFinding::Slopes { wall: w.id.clone(), sloped }));
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

    /// A wall with everything on it; the sides that are sloped now are given as what they were.
    fn moved(&self, w: &mut DrawnWall) -> Vec<EdgeKind> {
        let by = self.wall(w);
        let corner = |p: Point| self.with(by, p, Wall::moved);
        let shape = |s: &mut Polygon| *s = s.map(corner);
        let frame = bounds(&w.outline).unwrap_or_default();
        let middle = |x: f64| Point::new(x, frame.center().y);
        w.joints.iter_mut().for_each(|x| *x = self.with(by, middle(*x), Wall::moved).x);
        w.outline.iter_mut().for_each(|p| *p = self.with(by, *p, Wall::moved));
        w.short.iter_mut().for_each(shape);
        w.hidden.iter_mut().for_each(|h| shape(&mut h.shape));
        let kinds = |w: &DrawnWall| -> Vec<EdgeKind> { w.edges.iter().map(|e| e.kind).collect() };
        let was = kinds(w);
        w.edges.iter_mut().for_each(|e| edge(e, corner));
        let sloped = sloped(&was, &kinds(w));
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
        extract::moved_anew(w, self.gap);
        sloped
    }
}

/// Whether a wall has a corner's side there still: one that leans is none.
fn is_corner(w: &DrawnWall, s: &CornerSide) -> bool {
    w.edges.iter().any(|e| {
        let hand = if e.to.y > e.from.y { Hand::Right } else { Hand::Left };
        let corner = matches!(e.kind, EdgeKind::OutsideCorner | EdgeKind::InsideCorner);
        let (low, high) = (e.from.y.min(e.to.y), e.from.y.max(e.to.y));
        corner && hand == s.side && low < s.high && high > s.low && (e.from.x - s.x).abs() <= SIDE
    })
}

fn holes(w: &DrawnWall) -> impl Iterator<Item = Polygon> + '_ {
    w.openings.iter().map(|o| Polygon::simple(o.outline.clone()).wound())
}

/// What the sides were that are sloped now, each sort once.
fn sloped(was: &[EdgeKind], is: &[EdgeKind]) -> Vec<EdgeKind> {
    let mut out: Vec<EdgeKind> =
        was.iter().zip(is).filter(|(a, b)| a != b).map(|(a, _)| *a).collect();
    out.retain(|k| *k != EdgeKind::Rake);
    out.sort_unstable();
    out.dedup();
    out
}

/// A side of a wall. One that is level no more, or no more plumb, is what one that is drawn so is read as.
fn edge(e: &mut DrawnEdge, to: impl Fn(Point) -> Point) {
    use EdgeKind::{
        Abutment, BareBottom, BareTop, Base, Eave, InsideCorner, LowerRoof, OutsideCorner, Rake,
    };
    (e.from, e.to) = (to(e.from), to(e.to));
    let rise = e.to - e.from;
    let leans = !plumb(rise.x);
    e.kind = match e.kind {
        OutsideCorner | InsideCorner | Abutment if leans && rise.x > 0.0 => LowerRoof,
        OutsideCorner | InsideCorner | Abutment if leans => Rake,
        Base | BareTop if !level(rise.y) => LowerRoof,
        Eave | BareBottom if !level(rise.y) => Rake,
        Rake if level(rise.y) => Eave,
        kind => kind,
    };
    e.pitch = (!level(rise.y) && leans).then(|| (12.0 * rise.y / rise.x).abs());
}
