//! Notches: each round an opening or fixture of its wall that reaches into the course there, and
//! where that is a rectangle, as large as its clearances ask.

use super::named::{self, PieceOn, bounds};
use super::rule::{Cases, found};
use super::tolerance::{HEM_CUT, NEAR, same};
use crate::geom::tol::SAME;
use crate::layout::breach::piece::{NotchSize, PieceBreach};
use crate::layout::laid::LaidHouse;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::{Place, Subject};
use crate::layout::wall::LaidWall;
use crate::model::notch::{Notch, NotchSide};

pub(super) fn check(layout: &LaidHouse) -> RuleCheck {
    let mut rule = Cases::new(Rule::NotchPlaces);
    for on in named::pieces(layout) {
        for n in &on.piece.notches {
            place(&mut rule, layout, on, n);
        }
    }
    rule.done()
}

/// Bounding box of an opening or a fixture with the room panels keep to its sides, and over or
/// under it.
fn around(layout: &LaidHouse, w: &LaidWall, id: &str) -> Option<([f64; 4], f64, f64)> {
    let (gap, v) = (layout.job.end_gap(), layout.job.courses.notch_clearance);
    let opening = w.openings.iter().find(|o| o.id == id).map(|o| (&o.outline, gap, v));
    let fixture = w.obstacles.iter().find(|o| o.id == id).map(|o| (&o.outline, v, v));
    let (outline, aside, over) = opening.or(fixture)?;
    Some((bounds(outline), aside, over))
}

/// Where a notch opens, half way up the course.
fn at(on: PieceOn, n: &Notch) -> Option<Place> {
    on.run.at(on.piece.x0 + n.left + n.width / 2.0)
}

/// An opening or a fixture by its name.
fn bites(w: &LaidWall, id: &str) -> Subject {
    if w.openings.iter().any(|o| o.id == id) {
        named::opening(&w.id, id)
    } else {
        named::obstacle(&w.id, id)
    }
}

fn place(rule: &mut Cases, layout: &LaidHouse, on: PieceOn, n: &Notch) {
    let (w, c, p) = (on.run.wall, on.run.course, on.piece);
    // A step of the wall itself goes round nothing.
    for id in &n.around {
        let Some(bite) = around(layout, w, id) else {
            rule.case(false, || {
                let breach = PieceBreach::NotchOfNothing { around: id.clone() };
                found(on.subject(), breach).at(at(on, n))
            });
            return;
        };
        let ([left, low, right, high], aside, over) = bite;
        let (x0, x1) = (p.x0 + n.left, p.x0 + n.left + n.width);
        let meets = left - aside < x1 && right + aside > x0;
        rule.case(meets && low - over.max(HEM_CUT) < c.top && high + over > c.bottom, || {
            found(on.subject(), PieceBreach::NotchElsewhere).with(bites(w, id)).at(at(on, n))
        });
        if n.around == [id.clone()]
            && n.contour.is_none()
            && square(w, id)
            && !joined_beside(w, bite.0)
        {
            size(rule, on, n, (bites(w, id), bite));
        }
    }
}

/// Whether an opening or fixture is a level rectangle.
fn square(w: &LaidWall, id: &str) -> bool {
    let openings = w.openings.iter().map(|o| (o.id.as_str(), &o.outline));
    let fixtures = w.obstacles.iter().map(|o| (o.id.as_str(), &o.outline));
    openings.chain(fixtures).find(|(name, _)| *name == id).is_some_and(|(_, ring)| {
        ring.len() == 4
            && (0..4).all(|i| {
                let (a, b) = (ring[i], ring[(i + 1) % 4]);
                same(a[0], b[0]) || same(a[1], b[1])
            })
    })
}

/// Whether a filler that is in no frame touches a box, or a drawn board or other part without siding stands
/// along its side: a notch goes round both.
fn joined_beside(w: &LaidWall, [left, low, right, high]: [f64; 4]) -> bool {
    let touches = |[x0, y0, x1, y1]: [f64; 4]| {
        x0 <= right + NEAR && x1 >= left - NEAR && y0 <= high + NEAR && y1 >= low - NEAR
    };
    let along = |[x0, _, x1, _]: [f64; 4]| x1 <= left + NEAR || x0 >= right - NEAR;
    let mut fillers = w.fillers.iter().filter(|f| f.opening.is_none()).map(|f| f.place);
    let mut hidden = w.hidden.iter().flat_map(|h| &h.outline).map(bounds);
    fillers.any(touches) || hidden.any(|part| touches(part) && along(part))
}

/// Whether it is a fixture without a mounting block.
fn is_bare(w: &LaidWall, subject: &Subject) -> bool {
    let Subject::Obstacle { obstacle, .. } = subject else { return false };
    w.obstacles.iter().any(|o| o.id == *obstacle && !o.mounting_block)
}

/// The room a rectangle asks, against the notch round it.
fn size(
    rule: &mut Cases,
    on: PieceOn,
    n: &Notch,
    (subject, ([left, low, right, high], aside, over)): (Subject, ([f64; 4], f64, f64)),
) {
    let (c, p) = (on.run.course, on.piece);
    let rip = p.rip.as_ref().map_or((c.bottom, c.top), |r| (c.bottom + r.from, c.bottom + r.to));
    let to_end = same(p.x0 + n.left + n.width, p.x1);
    // A bare fixture at the edge of a course: the slot by which the panel is brought round it.
    let right = if is_bare(on.run.wall, &subject) && to_end { p.x1 } else { right };
    let (x0, x1) = ((left - aside).max(p.x0), (right + aside).min(p.x1));
    // No saw leaves what is thinner than drawing noise at the piece's end.
    let x0 = if x0 - p.x0 <= SAME { p.x0 } else { x0 };
    let x1 = if p.x1 - x1 <= SAME { p.x1 } else { x1 };
    let depth = match n.side {
        // On the course line it takes the hem off, and some of the face with it.
        NotchSide::Top if low >= c.top - SAME => rip.1 - (low - over.max(HEM_CUT)).max(rip.0),
        NotchSide::Top => rip.1 - (low - over).max(rip.0),
        NotchSide::Bottom => (high + over).min(rip.1) - rip.0,
        // A slot reaches from the fixture to the piece's end.
        NotchSide::Left | NotchSide::Right | NotchSide::Hole => high - low + 2.0 * over,
    };
    let end = matches!(n.side, NotchSide::Left | NotchSide::Right);
    let wide = end || (same(p.x0 + n.left, x0) && same(n.width, x1 - x0));
    let agrees = wide && same(n.depth, depth);
    rule.case(agrees && n.width > 0.0 && n.depth > 0.0, || {
        let said = NotchSize { left: n.left, width: n.width, depth: n.depth };
        let needed = NotchSize { left: x0 - p.x0, width: x1 - x0, depth };
        let breach = PieceBreach::NotchSize { said, needed };
        found(on.subject(), breach).with(subject).at(at(on, n))
    });
}
