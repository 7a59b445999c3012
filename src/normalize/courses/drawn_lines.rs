//! Every other line of the drawing: where courses end at one.

use crate::geom::near::Near;
use crate::geom::segment::Segment;
use crate::geom::vocabulary::{Point, Rect};
use crate::model::layer_name::own_name;
use crate::model::linework::{Linework, Role};

/// Words in names of layers that hold what is said of a building, not the building (US National CAD
/// Standard; grids from memory).
const SAID: [&str; 7] = ["anno", "iden", "dims", "text", "note", "grid", "symb"];

/// Lines that siding may end at, and upright ones.
pub(super) struct DrawnLines {
    segments: Vec<(Segment, usize)>,
    near: Near,
}

impl DrawnLines {
    pub(super) fn of(lines: &Linework, seen: impl Fn(Rect) -> bool) -> Self {
        let said: Vec<bool> = lines
            .layers
            .iter()
            .map(|l| {
                // A reference's prefix says nothing: `residence$0$A-WALL` is no tag.
                let name = own_name(&l.layer.name).to_lowercase();
                SAID.iter().any(|w| name.contains(w))
            })
            .collect();
        let mut segments = Vec::new();
        for (i, s) in lines.strokes.iter().enumerate() {
            use Role::{CornerTag, Dimension, Frame, InsideCorner, Level, Title};
            let of_paper = [CornerTag, Dimension, Frame, InsideCorner, Level, Title];
            let apart = s.role.is_some_and(|r| of_paper.contains(&r));
            let said = said.get(s.layer).copied().unwrap_or_default();
            if apart || (said && s.role.is_none_or(|r| r == Role::Ignore)) {
                continue;
            }
            let closing = s.closed.then(|| s.points.last().zip(s.points.first())).flatten();
            let sides = s.points.windows(2).map(|w| (w[0], w[1]));
            let all = sides.chain(closing.map(|(a, b)| (*a, *b)));
            segments.extend(all.filter(|(p, q)| seen(Rect::from_points(*p, *q))).map(|g| (g, i)));
        }
        let near = Near::of(segments.iter().map(|(s, _)| *s));
        DrawnLines { segments, near }
    }

    /// Lines in a box, each from left to right, with the stroke it is of; upright ones too.
    pub(super) fn within(&self, over: Rect) -> Vec<(Segment, usize)> {
        let found = self.near.within(over, 0.0).into_iter().map(|i| self.segments[i]);
        found
            .map(|((p, q), i)| (if p.x <= q.x { (p, q) } else { (q, p) }, i))
            .filter(|((p, q), _)| {
                let b = Rect::from_points(*p, *q);
                b.x0 <= over.x1 && b.x1 >= over.x0 && b.y0 <= over.y1 && b.y1 >= over.y0
            })
            .collect()
    }

    /// Short upright lines in a box, no higher than `most` and no lower than `least`: their middles.
    pub(super) fn upright(&self, over: Rect, least: f64, most: f64) -> Vec<(Point, usize)> {
        let short = |(p, q): &Segment| {
            let rise = (p.y - q.y).abs();
            (least..=most).contains(&rise) && (p.x - q.x).abs() <= 0.05 * rise
        };
        let all = self.segments.iter().filter(|(s, _)| short(s));
        all.map(|((p, q), i)| (p.midpoint(*q), *i)).filter(|(m, _)| over.contains(*m)).collect()
    }
}
