//! The pieces of a run, once it is known where its seams stand: what shows on the wall, how each
//! end is cut, what is ripped off and what is notched out.

use super::contour::{Bite, BiteSide, bites, contour, extent, slanted, stepped};
use crate::geom::boolean::difference;
use crate::geom::polygon::{Polygon, bounds};
use crate::geom::strip::clip_span;
use crate::geom::tol::{CUT, GRID, LEVEL, SAME, lies_flat, onto};
use crate::geom::vocabulary::{Point, Rect, Xy};
use crate::layout::piece::{EdgeWork, EndCut, Piece, PieceEnd, Rip};
use crate::model::course::{PlannedCourse, PlannedRun};
use crate::model::house::DrawnWall;
use crate::model::ids::{FeatureId, PanelId, PieceMark};
use crate::model::notch::{Contour, LEAST_HEM_CUT, Notch, NotchSide};
use crate::model::seam::Cut;
use crate::real::Real;
use crate::units::{LengthStyle, MM_PER_INCH};

/// Even spacings of a curve's points, widest first: of our own choosing, no source.
const INCHES: [f64; 6] = [4.0, 2.0, 1.0, 0.5, 0.25, 0.125];
const MILLIMETERS: [f64; 6] = [100.0, 50.0, 25.0, 10.0, 5.0, 2.0];
/// Slopes nearer than this are one slope, degrees: a tenth of the smallest mark on a miter saw.
const ONE_ANGLE: f64 = 0.1;

/// What the pieces of one run are made from.
#[derive(Clone, Copy, Debug)]
pub struct Making<'a> {
    /// The wall.
    pub wall: &'a DrawnWall,
    /// The course.
    pub course: &'a PlannedCourse,
    /// The run.
    pub run: &'a PlannedRun,
    /// Clearance at level cuts.
    pub notch_clearance: f64,
    /// How far two panels lap at a seam.
    pub lap: f64,
    /// Inches or millimeters, for the spacing of points on a curve.
    pub lengths: LengthStyle,
}

/// How far an end of one angle leans to the right, going up.
fn leans(end: &PieceEnd) -> f64 {
    let angled = end.contour.as_ref().filter(|_| end.cut == EndCut::Angled);
    let ends = angled.and_then(|c| Some((c.points.first()?, c.points.last()?)));
    ends.map_or(0.0, |(low, high)| high[0] - low[0])
}

/// Where an end's cut leaves the strip at its head or foot, inches from the piece's left end.
fn reaches(end: &PieceEnd, right: bool, head: bool, length: f64) -> f64 {
    let last = |c: &Contour| (if head { c.points.last() } else { c.points.first() }).map(|p| p[0]);
    end.contour.as_ref().and_then(last).unwrap_or(if right { length } else { 0.0 })
}

impl Making<'_> {
    /// The piece between `x0` and `x1` on the wall, cut as `cut` from a panel of length `stock`
    /// with the name `panel`.
    pub fn piece(
        &self,
        mark: PieceMark,
        cut: Cut,
        panel: PanelId,
        stock: f64,
        x0: f64,
        x1: f64,
    ) -> Piece {
        // A corner that stands at an end but for drawing noise leaves no sliver there.
        let clear = self.run.clear.map(|p| Point::new(onto(p.x, [x0, x1]), p.y));
        let mut parts = clip_span(&[clear], x0, x1);
        let slots = self.slots(x1);
        if !slots.is_empty() {
            parts = difference(&parts, &slots);
        }
        parts.sort_by(|a, b| b.area().total_cmp(&a.area()));
        let main = parts.first().cloned().unwrap_or_default();
        let b = main.bounds();
        let found = bites(&main, Rect::new(x0, b.y0, x1, b.y1));
        let (ends, notches): (Vec<Bite>, Vec<Bite>) =
            found.into_iter().partition(|bite| self.ends_a_piece(bite, (x0, x1)));
        let factory = [cut.start <= GRID, cut.end >= stock - GRID];
        let length = cut.end - cut.start;
        let [left, right] = [false, true].map(|right| {
            self.end(&ends, right, (x0, x1, b), (factory[usize::from(right)], length))
        });
        let rip = self.rip(&main, &notches, [&left, &right]);
        let notches = notches.into_iter().chain(holes_of(parts.get(1..).unwrap_or_default()));
        Piece {
            mark,
            panel,
            half: None,
            start: cut.start,
            end: cut.end,
            length,
            x0,
            x1,
            ends: [left, right],
            rip,
            notches: self.notches(notches, x0),
            edge_work: EdgeWork::default(),
            outline: ring(&main.outer),
            holes: parts.iter().flat_map(|p| &p.holes).map(|h| ring(h)).collect(),
            more: parts.iter().skip(1).map(|p| ring(&p.outer)).collect(),
        }
    }

    /// The slot by which the panel that ends past a bare fixture is brought round it, from the fixture
    /// on and as far as the next panel covers it (`TrimFact::CutAtObstacle`).
    fn slots(&self, x1: f64) -> Vec<Polygon> {
        let half = self.lap / 2.0;
        if !self.run.fixed.iter().any(|s| (s + half - x1).abs() < 0.0625 + SAME) {
            return Vec::new();
        }
        let bare = self.wall.obstacles.iter().filter(|o| !o.mounting_block);
        bare.filter_map(|o| bounds(&o.outline))
            .filter(|r| r.x1 >= x1 - self.lap - SAME && r.x1 <= x1 + SAME)
            .filter(|r| {
                let room = self.notch_clearance;
                let (top, bottom) = (self.course.top + room, self.course.bottom - room);
                r.y0 < top - SAME && r.y1 > bottom + SAME
            })
            .map(|r| {
                let room = self.notch_clearance;
                Polygon::rect((r.x0 - room).max(x1 - self.lap), r.y0 - room, x1 + 1.0, r.y1 + room)
            })
            .collect()
    }

    /// Whether what is cut off belongs to an end, rather than being a notch, a slot or a hole. An end
    /// at a seam stays as it left the works: what a slope takes of its corner is a notch. So is what a top takes that was
    /// taped out of level.
    fn ends_a_piece(&self, bite: &Bite, (x0, x1): (f64, f64)) -> bool {
        match bite.side {
            BiteSide::Whole { .. } => true,
            BiteSide::Corner { right, .. } => {
                let run = self.run.clear.bounds();
                let last = if right { x1 >= run.x1 - SAME } else { x0 <= run.x0 + SAME };
                let flat = |w: &[Point]| lies_flat(w[1].y - w[0].y, w[1].x - w[0].x);
                let cuts_end = !stepped(&bite.points) && !bite.points.windows(2).all(flat);
                last && cuts_end && self.around(&bite.points).is_empty()
            }
            _ => false,
        }
    }

    fn contour(&self, points: &[Point], x0: f64) -> Contour {
        let origin = Point::new(x0, self.course.bottom);
        match self.lengths {
            LengthStyle::Feet => contour(points, origin, &INCHES),
            LengthStyle::Mm => contour(points, origin, &MILLIMETERS.map(|s| s / MM_PER_INCH)),
        }
    }

    /// One end of a piece of a length that lies between `x0` and `x1` in the box `b`.
    fn end(
        &self,
        ends: &[Bite],
        right: bool,
        (x0, x1, b): (f64, f64, Rect),
        (factory, length): (bool, f64),
    ) -> PieceEnd {
        let long_point = if right { length } else { 0.0 };
        let cut = if factory { EndCut::Factory } else { EndCut::Square };
        let plain = PieceEnd::square(cut, long_point);
        let x = if right { x1 } else { x0 };
        let (mut points, mut tops): (Vec<Point>, Vec<Point>) = (Vec::new(), Vec::new());
        for bite in ends {
            match bite.side {
                BiteSide::Whole { right: r } if r == right => points.extend(&bite.points),
                BiteSide::Corner { top: false, right: r } if r == right => {
                    points.extend(&bite.points);
                }
                BiteSide::Corner { top: true, right: r } if r == right => {
                    tops.extend(&bite.points);
                }
                _ => {}
            }
        }
        // Plumb between what is cut off below and above.
        match (points.is_empty(), tops.is_empty()) {
            (true, true) => return plain,
            (true, false) => points.push(Point::new(x, b.y0)),
            (false, true) if points.last().is_some_and(|p| p.y < b.y1 - SAME) => {
                tops.push(Point::new(x, b.y1));
            }
            _ => {}
        }
        points.extend(tops);
        points.dedup_by(|q, p| p.distance(*q) < SAME);
        let (low, high) = extent(&points);
        let set = high.x - low.x;
        if set <= CUT {
            return plain;
        }
        let slopes = slanted(&points);
        let lean = |s: &(Point, Point)| (s.1.y - s.0.y).angle_over(s.1.x - s.0.x).to_degrees();
        let longest =
            slopes.iter().max_by(|p, q| p.0.distance(p.1).total_cmp(&q.0.distance(q.1))).map(lean);
        let one = longest.is_some_and(|a| slopes.iter().all(|s| (lean(s) - a).abs() < ONE_ANGLE));
        let level = points
            .windows(2)
            .any(|w| (w[0].y - w[1].y).abs() <= CUT && (w[0].x - w[1].x).abs() > CUT);
        PieceEnd {
            cut: if one && !level { EndCut::Angled } else { EndCut::Shaped },
            angle: longest.map_or(90.0, |a| a.min(180.0 - a)),
            long_point,
            short_point: if right { length - set } else { set },
            contour: Some(self.contour(&points, x0)),
        }
    }

    /// Where the panel is cut along its length: where, short of the course's face, a level side of the
    /// piece is its highest or lowest, a notch is measured from there, or an end is: one that leans in
    /// over the foot, or out under the head. What the ends' cuts leave as a mere point needs no rip by
    /// itself, but where they leave a strip beside it; a rip that is told keeps no more than shows.
    fn rip(&self, shape: &Polygon, notches: &[Bite], ends: [&PieceEnd; 2]) -> Option<Rip> {
        let b = shape.bounds();
        let (bottom, top) = (self.course.bottom, self.course.top);
        let level_at = |y: f64| {
            crate::geom::polygon::sides(&shape.outer).any(|(p, q)| {
                (p.y - y).abs() < SAME && (q.y - y).abs() < SAME && (p.x - q.x).abs() > LEVEL
            })
        };
        let notched = |head: bool| {
            notches.iter().any(|n| match n.side {
                BiteSide::Bottom => !head,
                BiteSide::Top => head,
                BiteSide::Corner { top, .. } => top == head,
                _ => false,
            })
        };
        let [left, right] = ends.map(leans);
        let (over_foot, under_head) = (left > 0.0 || right < 0.0, left < 0.0 || right > 0.0);
        let (low, high) = (b.y0 > bottom + SAME, b.y1 < top - SAME);
        let beside = |head: bool| {
            let [left, right] = [0, 1].map(|i| reaches(ends[i], i == 1, head, b.width()));
            right - left > SAME
        };
        let told = (low && (level_at(b.y0) || notched(false) || over_foot || beside(false)))
            || (high && (level_at(b.y1) || notched(true) || under_head || beside(true)));
        told.then_some(Rip {
            from: if low { b.y0 - bottom } else { 0.0 },
            to: if high { b.y1 - bottom } else { top - bottom },
        })
    }

    /// What is cut out, from left to right.
    fn notches(&self, bites: impl Iterator<Item = Bite>, x0: f64) -> Vec<Notch> {
        let mut out: Vec<Notch> = bites.map(|b| self.notch(&b, x0)).collect();
        out.sort_by(|a, b| a.left.total_cmp(&b.left));
        out
    }

    fn notch(&self, bite: &Bite, x0: f64) -> Notch {
        let mut points = bite.points.clone();
        let (low, high) = extent(&points);
        let corners = match bite.side {
            BiteSide::Corner { .. } => 3,
            BiteSide::Hole => 5,
            _ => 4,
        };
        let side = match bite.side {
            BiteSide::Bottom | BiteSide::Corner { top: false, .. } => NotchSide::Bottom,
            BiteSide::Top | BiteSide::Corner { top: true, .. } => NotchSide::Top,
            BiteSide::Left | BiteSide::Whole { right: false } => NotchSide::Left,
            BiteSide::Right | BiteSide::Whole { right: true } => NotchSide::Right,
            BiteSide::Hole => NotchSide::Hole,
        };
        // A corner's chain runs bottom up; a notch is read from left to right.
        if matches!(bite.side, BiteSide::Corner { top, right } if top == right) {
            points.reverse();
        }
        let open = matches!(side, NotchSide::Top | NotchSide::Bottom);
        let (left, right) = match (points.first(), points.last()) {
            (Some(a), Some(b)) if open => (a.x.min(b.x), a.x.max(b.x)),
            _ => (low.x, high.x),
        };
        let plain = stepped(&points) && points.len() == corners;
        Notch {
            side,
            left: left - x0,
            width: right - left,
            depth: high.y - low.y,
            foot: (!open).then_some(low.y - self.course.bottom),
            around: self.around(&bite.points),
            contour: (!plain).then(|| self.contour(&points, x0)),
        }
    }

    /// Openings and fixtures that shape what is cut off, by name: in its box, and not wholly within it,
    /// as a window under what panels keep clear of a roof is.
    fn around(&self, points: &[Point]) -> Vec<FeatureId> {
        let (low, high) = extent(points);
        // Aside, over it, under it.
        let reach = |r: Rect, [aside, over, under]: [f64; 3]| {
            r.x0 - aside < high.x - SAME
                && r.x1 + aside > low.x + SAME
                && r.y0 - under < high.y - SAME
                && r.y1 + over > low.y + SAME
        };
        let shapes = |r: Rect, [aside, over, under]: [f64; 3]| {
            let room = r.inflate(aside + CUT, over.max(under) + CUT);
            points.windows(2).any(|w| crosses((w[0], w[1]), room))
        };
        // No less than what comes off with a hem.
        let v = self.notch_clearance.max(LEAST_HEM_CUT);
        // Beside an opening, or under a sill on the course line, a notch may be the clearance alone.
        let room = [self.run.gap, 0.0, v];
        let openings = self.wall.openings.iter().map(|o| (o.id.as_str(), bounds(&o.outline), room));
        let fixtures = self
            .wall
            .obstacles
            .iter()
            .map(|o| (o.id.as_str(), bounds(&o.outline), [self.notch_clearance; 3]));
        openings
            .chain(fixtures)
            .filter(|(_, r, room)| r.is_some_and(|r| reach(r, *room) && shapes(r, *room)))
            .map(|(id, ..)| id.into())
            .collect()
    }
}

/// Holes in the smaller parts of a piece that is parted on the wall: what else is cut of those is marked
/// in place.
fn holes_of(parts: &[Polygon]) -> impl Iterator<Item = Bite> {
    let all = parts.iter().flat_map(|p| bites(p, p.bounds()));
    all.filter(|b| matches!(b.side, BiteSide::Hole))
}

/// Whether a segment has a place in a box.
fn crosses((a, b): (Point, Point), r: Rect) -> bool {
    let v = b - a;
    let (mut from, mut to) = (0.0f64, 1.0f64);
    for (at, by, low, high) in [(a.x, v.x, r.x0, r.x1), (a.y, v.y, r.y0, r.y1)] {
        if by == 0.0 {
            if at < low || at > high {
                return false;
            }
            continue;
        }
        let (s, t) = ((low - at) / by, (high - at) / by);
        (from, to) = (from.max(s.min(t)), to.min(s.max(t)));
    }
    from <= to
}

fn ring(points: &[crate::geom::vocabulary::Point]) -> Vec<Xy> {
    points.iter().map(|p| [p.x, p.y]).collect()
}
