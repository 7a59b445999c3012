//! Places that break a rule of the check: each in a heavy circle, numbered, and named beside it.

use super::view::View;
use crate::annotate::canvas::{Canvas, Look, Mark};
use crate::annotate::elevation_index::AtElevation;
use crate::annotate::style::Ink;
use crate::geom::vocabulary::{Point, Vec2};
use crate::layout::violation::Violation;
use crate::wording::checks;

/// Radius of a circle, paper inches.
const RADIUS: f64 = 0.14;
/// Places of a circle that stand so near to one another share one.
const SHARED: f64 = 0.03;

/// The places of this sheet, on paper.
fn places<'a>(
    on: &'a AtElevation,
    v: &'a View,
) -> impl Iterator<Item = (usize, &'a Violation, Point)> {
    on.failed.iter().filter_map(|(number, violation)| {
        let [x, y] = violation.at.as_ref()?.point;
        v.holds(x, y).then(|| (*number, *violation, v.at(x, y)))
    })
}

/// Circles, which text keeps off.
pub(super) fn circles(c: &mut Canvas, on: &AtElevation, v: &View) {
    let mut drawn: Vec<Point> = Vec::new();
    for (.., at) in places(on, v) {
        if !drawn.iter().any(|p| p.distance(at) < SHARED) {
            drawn.push(at);
            c.firm_circle(Ink::Fault, at, RADIUS);
        }
    }
}

/// Numbers alone, for an overview: what each concerns stands on the wall's own sheet.
pub(super) fn numbers(c: &mut Canvas, on: &AtElevation, v: &View) {
    let say = v.say;
    for (number, _, target) in places(on, v) {
        let text = &say.line(|lang| checks::mark(lang, number));
        let wish = target + Vec2::new(0.0, RADIUS + 0.12);
        let m = Mark { text, target, wish, reach: 2.0, look: Look::Framed };
        let _ = c.mark_clear(m).or_else(|| c.mark(m));
    }
}

/// Numbers and names. Returns how many found no room.
pub(super) fn marks(c: &mut Canvas, on: &AtElevation, v: &View) -> usize {
    let say = v.say;
    let mut none = 0;
    for (number, violation, target) in places(on, v) {
        let (named, short) = (
            say.line(|lang| checks::named(lang, number, violation)),
            say.line(|lang| checks::mark(lang, number)),
        );
        let wish = target + Vec2::new(0.0, RADIUS + 0.12);
        let m = |text, reach| Mark { text, target, wish, reach, look: Look::Framed };
        let placed = c
            .mark_clear(m(&named, 2.0))
            .or_else(|| c.mark_clear(m(&short, 2.0)))
            .or_else(|| c.mark(m(&short, 6.0)));
        none += usize::from(placed.is_none());
    }
    none
}
