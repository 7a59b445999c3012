//! Where text goes: boxes that do not overlap one another or leave their area.

use crate::geom::vocabulary::{Point, Rect, Vec2};
use crate::typeface;

/// Boxes taken so far.
#[derive(Clone, Debug)]
pub(super) struct Placer {
    pub(super) area: Rect,
    taken: Vec<Rect>,
}

/// Room round a text, inches.
const AIR: f64 = 0.015;

/// Box of a line of text of that height about a centre.
pub(super) fn text_box(text: &str, height: f64, bold: bool, centre: Point) -> Rect {
    let w = typeface::width(text, height, bold);
    // Descenders reach below the capitals' box; the box holds both.
    let below = height / typeface::CAPITALS * typeface::DESCENT * 0.75;
    Rect::new(
        centre.x - w / 2.0 - AIR,
        centre.y - height / 2.0 - below,
        centre.x + w / 2.0 + AIR,
        centre.y + height / 2.0 + AIR,
    )
}

fn overlaps(a: &Rect, b: &Rect) -> bool {
    a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1
}

impl Placer {
    pub(super) fn new(area: Rect) -> Self {
        Placer { area, taken: Vec::new() }
    }

    pub(super) fn free(&self, r: &Rect) -> bool {
        let a = &self.area;
        r.x0 >= a.x0
            && r.x1 <= a.x1
            && r.y0 >= a.y0
            && r.y1 <= a.y1
            && !self.taken.iter().any(|t| overlaps(t, r))
    }

    pub(super) fn take(&mut self, r: Rect) {
        self.taken.push(r);
    }

    /// The free place nearest to `wish` for a line of text, within `reach`; taken at once.
    pub(super) fn near(
        &mut self,
        text: &str,
        height: f64,
        wish: Point,
        reach: f64,
    ) -> Option<Point> {
        let step = height * 1.2;
        // The box about the origin, measured once and moved.
        let about = text_box(text, height, false, Point::ORIGIN);
        let rings = (reach / step).ceil() as i32;
        for ring in 0..=rings {
            let spots = 8 * ring.max(1);
            for k in 0..if ring == 0 { 1 } else { spots } {
                // Round the ring from straight above, alternating sides.
                let turn = if k % 2 == 0 { k / 2 } else { -(k + 1) / 2 };
                let angle = std::f64::consts::FRAC_PI_2
                    + std::f64::consts::TAU * f64::from(turn) / f64::from(spots);
                let at = wish + Vec2::from_angle(angle) * (step * f64::from(ring));
                let r = about + at.to_vec2();
                if self.free(&r) {
                    self.take(r);
                    return Some(at);
                }
            }
        }
        None
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn texts_asked_for_at_one_place_stand_apart() {
        let mut p = Placer::new(Rect::new(0.0, 0.0, 4.0, 4.0));
        let at: Vec<Point> =
            (0..12).filter_map(|_| p.near("12-2", 0.094, Point::new(2.0, 2.0), 2.0)).collect();
        assert_eq!(at.len(), 12);
        for (i, a) in at.iter().enumerate() {
            for b in &at[i + 1..] {
                assert!(!overlaps(
                    &text_box("12-2", 0.094, false, *a),
                    &text_box("12-2", 0.094, false, *b)
                ));
            }
        }
    }

    #[test]
    fn what_has_no_room_is_not_placed() {
        let mut p = Placer::new(Rect::new(0.0, 0.0, 0.2, 0.2));
        assert!(p.near("a long text", 0.094, Point::new(0.1, 0.1), 5.0).is_none());
    }
}
