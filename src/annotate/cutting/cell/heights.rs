//! Heights of a cut: what is kept of its face, and where notches begin or end.

use crate::annotate::canvas::Canvas;
use crate::annotate::place::text_box;
use crate::annotate::style::{Ink, TEXT};
use crate::geom::polygon::ring_contains;
use crate::geom::vocabulary::{Point, Rect, Xy};
use crate::layout::course::LaidCourse;
use crate::layout::piece::Piece;
use crate::model::notch::NotchSide;
use crate::units::LengthStyle;
use crate::wording::cuts;
use crate::wording::sheet_lengths::short;

/// A cut's heights.
pub(super) struct Heights<'a> {
    pub(super) piece: &'a Piece,
    /// Its figures as they are told.
    pub(super) told: &'a Piece,
    pub(super) course: &'a LaidCourse,
    pub(super) style: LengthStyle,
}

/// From a piece's own place to a drawn face; along and up have scales of their own.
pub(super) fn place(p: &Piece, k: &LaidCourse, face: Rect) -> impl Fn(&Xy) -> Point + use<> {
    let (sx, sy) = (face.width() / (p.x1 - p.x0).max(1e-6), face.height() / (k.top - k.bottom));
    let (x0, y0) = (p.x0, k.bottom);
    move |q: &Xy| Point::new(face.x0 + (q[0] - x0) * sx, face.y0 + (q[1] - y0) * sy)
}

impl Heights<'_> {
    /// Height kept on the right, depths of notches inside them.
    pub(super) fn draw(&self, c: &mut Canvas, face: Rect) {
        let height = self.course.top - self.course.bottom;
        let y = |h: f64| face.y0 + h / height * face.height();
        if let Some(r) = &self.piece.rip {
            let x = face.x1 + 0.1;
            for h in [r.from, r.to] {
                c.line(
                    Ink::Dimension,
                    Point::new(face.x1 + 0.03, y(h)),
                    Point::new(x + 0.05, y(h)),
                );
            }
            c.line(Ink::Dimension, Point::new(x, y(r.from)), Point::new(x, y(r.to)));
            let told = self.told.rip.as_ref().map_or(0.0, |r| r.to - r.from);
            let words = short(self.style, told);
            let at = Point::new(x + 0.06, y((r.from + r.to) / 2.0));
            c.left(&words, TEXT, false, at);
        }
        self.notch_heights(c, face, &y);
    }

    /// From the butt edge to where each notch begins or ends, beside its left side.
    fn notch_heights(&self, c: &mut Canvas, face: Rect, y: &impl Fn(f64) -> f64) {
        let kept: Vec<Point> =
            self.piece.outline.iter().map(place(self.piece, self.course, face)).collect();
        for (n, told) in self.piece.notches.iter().zip(&self.told.notches) {
            let scale = face.width() / self.piece.length.max(1e-6);
            let (left, wide) = (face.x0 + n.left * scale, n.width * scale);
            let (from, to) = cuts::notch_span(n, &self.piece.rip, self.course);
            let (low, high) = cuts::notch_span(told, &self.told.rip, self.course);
            let words = if n.side == NotchSide::Top { low } else { high };
            let words = short(self.style, words);
            let at = Point::new(left + wide / 2.0, y((from + to) / 2.0));
            let r = text_box(&words, TEXT, false, at);
            // A round head cuts less than its box: the height then stands in the words below alone.
            let corners = [(r.x0, r.y0), (r.x1, r.y0), (r.x1, r.y1), (r.x0, r.y1)];
            let cut_off = corners.iter().all(|q| !ring_contains(&kept, Point::new(q.0, q.1)));
            let deep = y(to) - y(from);
            if r.width() < wide && deep > TEXT && cut_off && c.placer.free(&r) {
                c.centered(&words, TEXT, false, at);
            }
        }
    }
}
