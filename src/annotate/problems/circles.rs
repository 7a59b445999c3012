//! A circle round each place where something was found, with the marks of what it was.

use super::groups::Marked;
use crate::annotate::canvas::{Canvas, Look, Mark};
use crate::annotate::place::Off;
use crate::annotate::style::{Ink, TEXT};
use crate::finding::Severity;
use crate::geom::vocabulary::{Affine, Point, Rect, Vec2};
use crate::model::drawing::{Polyline, Vertex};

/// Radius of a circle round a finding, inches.
const RADIUS: f64 = 0.15;
/// A circle has no marks of its own where another with the same ones is nearer than this, inches.
const SHARED: f64 = 0.6;
/// How far marks may stand from their circle, inches: over the whole picture.
const REACH: f64 = 16.0;

/// A circle on the page, and what was found there.
pub(super) type Circled<'a> = (Point, Vec<&'a Marked<'a>>);

/// Draws the circles, which figures keep off.
pub(super) fn circles<'a>(
    canvas: &mut Canvas,
    found: &'a [Marked<'a>],
    window: Rect,
    map: Affine,
) -> Vec<Circled<'a>> {
    let mut places: Vec<Circled> = Vec::new();
    for f in found {
        for p in f.places.iter().filter(|p| window.contains(**p)).map(|p| map * *p) {
            match places.iter_mut().find(|(q, _)| q.distance(p) < RADIUS) {
                // Two of a kind at one place need its mark once.
                Some((_, list)) if list.iter().any(|g| g.mark == f.mark) => {}
                Some((_, list)) => list.push(f),
                None => places.push((p, vec![f])),
            }
        }
    }
    for (p, list) in &places {
        let worst = list.iter().map(|f| f.severity()).max().unwrap_or(Severity::Info);
        let v = |dx: f64| Vertex { at: Point::new(p.x + dx, p.y), bulge: 1.0 };
        canvas
            .polyline(ink(worst), Polyline { vertices: vec![v(RADIUS), v(-RADIUS)], closed: true });
        keep_off_disk(canvas, *p);
    }
    places
}

/// Writes the marks: off one another and off every circle, so that none is taken for another's. Where a picture
/// has no room left for one, its circle stands alone.
pub(super) fn marks(canvas: &mut Canvas, places: &[Circled]) {
    let mut marked: Vec<(Point, String)> = Vec::new();
    for (p, list) in places {
        let marks: Vec<&str> = list.iter().map(|f| f.mark.as_str()).collect();
        let text = marks.join(", ");
        if marked.iter().any(|(q, other)| *other == text && q.distance(*p) < SHARED) {
            continue;
        }
        let wish = Point::new(p.x, p.y + RADIUS + TEXT);
        let mark = || Mark { text: &text, target: *p, wish, reach: REACH, look: Look::Plain };
        if canvas.mark_clear(mark()).or_else(|| canvas.placed(mark(), Off::LinesAlone)).is_some() {
            marked.push((*p, text));
        }
    }
}

/// Marks keep off a circle and its inside: no mark is so small that it stands beside the spokes.
fn keep_off_disk(canvas: &mut Canvas, at: Point) {
    const PARTS: u32 = 12;
    let turn = std::f64::consts::TAU / f64::from(PARTS);
    let on = |i: u32| at + Vec2::from_angle(f64::from(i) * turn) * RADIUS;
    for i in 0..PARTS {
        canvas.placer.keep_off(on(i), on(i + 1));
        if i % 3 == 0 {
            canvas.placer.keep_off(at, on(i));
        }
    }
}

fn ink(severity: Severity) -> Ink {
    match severity {
        Severity::Error => Ink::Fault,
        Severity::Warning => Ink::Doubt,
        Severity::Info => Ink::Remark,
    }
}
