//! The pieces of a run, once it is known where its seams stand: what shows on the wall, how each
//! end is cut, what is ripped off and what is notched out.

use super::ends::{Side, lean};
use crate::geom::polygon::{Polygon, bounds};
use crate::geom::strip::clip_span;
use crate::geom::tol::{LEVEL, SAME};
use crate::geom::vocabulary::Rect;
use crate::model::course::{Course, Run};
use crate::model::house::Wall;
use crate::model::layout::{EndCut, Notch, NotchSide, Piece, Rip, Xy};
use crate::model::seam::Cut;

/// What the pieces of one run are made from.
#[derive(Clone, Copy, Debug)]
pub struct Making<'a> {
    /// The wall.
    pub wall: &'a Wall,
    /// The course.
    pub course: &'a Course,
    /// The run.
    pub run: &'a Run,
    /// Clearance at level cuts.
    pub notch_clearance: f64,
}

impl Making<'_> {
    /// The piece between `x0` and `x1` on the wall, cut as `cut` from a panel of length `stock`
    /// with the name `panel`.
    pub fn piece(
        &self,
        mark: String,
        cut: Cut,
        panel: String,
        stock: f64,
        x0: f64,
        x1: f64,
    ) -> Piece {
        let mut parts = clip_span(std::slice::from_ref(&self.run.clear), x0, x1);
        parts.sort_by(|a, b| b.area().total_cmp(&a.area()));
        let main = parts.first().cloned().unwrap_or_default();
        let left =
            self.end(&main, Side::Left, cut.start <= SAME, x0 <= self.run.clear.bounds().x0 + SAME);
        let at_end = cut.end >= stock - SAME;
        let right = self.end(&main, Side::Right, at_end, x1 >= self.run.clear.bounds().x1 - SAME);
        Piece {
            mark,
            panel,
            start: cut.start,
            end: cut.end,
            length: cut.end - cut.start,
            x0,
            x1,
            left_end: left.0,
            right_end: right.0,
            left_angle: left.1,
            right_angle: right.1,
            left_set: left.2,
            right_set: right.2,
            rip: self.rip(&main),
            notches: self.notches(x0, x1),
            outline: ring(&main.outer),
            holes: main.holes.iter().map(|h| ring(h)).collect(),
            more: parts.iter().skip(1).map(|p| ring(&p.outer)).collect(),
        }
    }

    /// Cut, angle with the panel's long edge, and long point to short point of one end.
    fn end(
        &self,
        shape: &Polygon,
        side: Side,
        factory: bool,
        at_receiver: bool,
    ) -> (EndCut, f64, f64) {
        let lean = if at_receiver { lean(shape, side) } else { None };
        match lean {
            Some(v) => (EndCut::Angled, (v.y / v.x.abs()).atan().to_degrees(), v.x.abs()),
            None if factory => (EndCut::Factory, 90.0, 0.0),
            None => (EndCut::Square, 90.0, 0.0),
        }
    }

    /// Where the panel is cut along its length: where a level side of the piece, short of the
    /// course's face, is its highest or lowest.
    fn rip(&self, shape: &Polygon) -> Option<Rip> {
        let b = shape.bounds();
        let (bottom, top) = (self.course.bottom, self.course.top);
        let level_at = |y: f64| {
            crate::geom::polygon::sides(&shape.outer).any(|(p, q)| {
                (p.y - y).abs() < SAME && (q.y - y).abs() < SAME && (p.x - q.x).abs() > LEVEL
            })
        };
        let low = b.y0 > bottom + SAME && level_at(b.y0);
        let high = b.y1 < top - SAME && level_at(b.y1);
        (low || high).then_some(Rip {
            from: if low { b.y0 - bottom } else { 0.0 },
            to: if high { b.y1 - bottom } else { top - bottom },
        })
    }

    /// Notches of openings and fixtures that reach into this piece from its top or butt edge.
    fn notches(&self, x0: f64, x1: f64) -> Vec<Notch> {
        let (gap, v) = (self.run.gap, self.notch_clearance);
        let openings = self.wall.openings.iter().map(|o| (&o.id, bounds(&o.outline), gap, v));
        let blocks = self.wall.obstacles.iter().map(|o| {
            let room = if o.mounting_block { v } else { 0.0 };
            (&o.id, bounds(&o.outline), room, room)
        });
        let inside = self.run.clear.bounds();
        let mut out: Vec<Notch> = openings
            .chain(blocks)
            .filter_map(|(id, b, dx, dy)| {
                let b = b?;
                self.notch(
                    id,
                    Rect::new(b.x0 - dx, b.y0 - dy, b.x1 + dx, b.y1 + dy),
                    b,
                    (x0, x1),
                    inside,
                )
            })
            .collect();
        out.sort_by(|a, b| a.left.total_cmp(&b.left));
        out
    }

    fn notch(
        &self,
        id: &str,
        room: Rect,
        drawn: Rect,
        span: (f64, f64),
        inside: Rect,
    ) -> Option<Notch> {
        let (bottom, top) = (self.course.bottom, self.course.top);
        let (left, right) = (room.x0.max(span.0), room.x1.min(span.1));
        // An opening that takes the whole height ends the run; one beyond the run is another's.
        let under = drawn.y0 > bottom + SAME && drawn.y0 < top - SAME && drawn.y1 >= top - SAME;
        let over = drawn.y1 > bottom + SAME && drawn.y1 < top - SAME && drawn.y0 <= bottom + SAME;
        if right - left <= SAME || !(under || over) {
            return None;
        }
        let (side, depth) = if under {
            (NotchSide::Top, top - room.y0.max(bottom))
        } else {
            (NotchSide::Bottom, room.y1.min(top) - bottom)
        };
        // A run that lies wholly above or below the cut is ripped, not notched.
        let cut = if under { room.y0 } else { room.y1 };
        let ripped = if under { inside.y1 <= cut + SAME } else { inside.y0 >= cut - SAME };
        (!ripped).then(|| Notch {
            side,
            left: left - span.0,
            width: right - left,
            depth,
            around: id.to_owned(),
        })
    }
}

fn ring(points: &[crate::geom::vocabulary::Point]) -> Vec<Xy> {
    points.iter().map(|p| [p.x, p.y]).collect()
}
