//! Lines a course off the last one that run on past it: grade, eaves and floor levels, no courses.

use std::collections::BTreeMap;

use super::drawn_lines::DrawnLines;
use super::family::{Link, Span};
use super::pieces::Piece;
use super::sloped::beside_roof;
use crate::geom::segment::Segment;
use crate::geom::vocabulary::{Point, Rect};

/// A line sticks out this far past the courses beside it, inches, if it is none of them (common practice, no
/// source).
const OUT: f64 = 3.0;
/// Ends of courses stand plumb but for this, inches: under a rake they step.
const PLUMB: f64 = 0.5;

/// Farther out than this, inches, at the foot it is the ground, and siding does not go on to it: corner
/// boards are narrower (common practice, no source).
const GROUND: f64 = 16.0;
/// Pieces of one line stand at one level but for this, inches.
const LEVEL: f64 = 1.0 / 32.0;
/// Lines that end this near to one another meet, inches.
const MEETS: f64 = 1.0 / 8.0;
/// Of a line that ends, no more than this share goes on.
const LITTLE: f64 = 0.2;

/// Takes the links to a line at the foot or the head of courses that runs on past their plumb ends. Gives the
/// pieces that are the ground, each with where the courses over it stand: none end there. A course that is
/// drawn along a roof's edge is cut off where the edge runs on.
pub(super) fn without_run_ons(
    pieces: &mut [Piece],
    links: &mut Vec<Link>,
    lines: &DrawnLines,
) -> Vec<(usize, Span)> {
    let mut ground = Vec::new();
    // The lower edge of a fascia runs on as its upper one does: what is last without that is looked at again.
    for up in [true, true, false] {
        let mut gone = run_ons(pieces, links, lines, up);
        let over = |i: usize| {
            let on = links.iter().filter(|l| if up { l.high == i } else { l.low == i });
            let on = on.map(|l| if up { &pieces[l.low] } else { &pieces[l.high] });
            let on = on.map(|p| (p.x0, p.x1)).reduce(|a, b| (a.0.min(b.0), a.1.max(b.1)));
            on.unwrap_or_default()
        };
        let courses: Vec<(usize, Course)> = gone
            .keys()
            .filter_map(|i| Some((*i, along_edge(&pieces[*i], over(*i), lines)?)))
            .collect();
        let far = gone
            .iter()
            .filter(|(i, out)| !up && **out > GROUND && courses.iter().all(|(k, _)| k != *i));
        ground.extend(far.map(|(i, _)| (*i, over(*i))));
        for (i, course) in courses {
            gone.remove(&i);
            (pieces[i].x0, pieces[i].x1) = course.0;
            pieces[i].strokes = course.1;
            for l in links.iter_mut().filter(|l| l.low == i || l.high == i) {
                (l.x0, l.x1) = (l.x0.max(course.0.0), l.x1.min(course.0.1));
            }
        }
        links.retain(|l| !gone.contains_key(&l.low) && !gone.contains_key(&l.high) && l.x1 > l.x0);
    }
    ground
}

/// Where a course goes, and its strokes.
type Course = (Span, Vec<usize>);

/// The course that is drawn along the edge of a roof that runs on past it: as wide as the courses beside it,
/// where slopes end at the end of what runs on.
fn along_edge(piece: &Piece, over: Span, lines: &DrawnLines) -> Option<Course> {
    let row = Rect::new(piece.x0, piece.y - LEVEL, piece.x1, piece.y + LEVEL);
    let found = lines.within(row);
    let drawn = found.iter().filter(|(_, s)| piece.strokes.contains(s));
    let is_out = |(p, q): &Segment| p.x < over.0 - OUT || q.x > over.1 + OUT;
    let (out, own): (Vec<_>, Vec<_>) = drawn.copied().partition(|(g, _)| is_out(g));
    let ends = out.iter().map(|((p, q), _)| (p.x, q.x));
    let (x0, x1) = ends.reduce(|a, b| (a.0.min(b.0), a.1.max(b.1)))?;
    let edge = (x0 >= over.0 - OUT || ends_slope(lines, Point::new(x0, piece.y)))
        && (x1 <= over.1 + OUT || ends_slope(lines, Point::new(x1, piece.y)));
    let span = own.iter().map(|((p, q), _)| (p.x, q.x));
    let span = span.reduce(|a, b| (a.0.min(b.0), a.1.max(b.1)))?;
    let whole = (span.0 - over.0).abs() <= PLUMB && (span.1 - over.1).abs() <= PLUMB;
    (whole && edge).then(|| (span, own.iter().map(|(_, s)| *s).collect()))
}

/// Of the strokes of a line that is the ground those that run out: the foot of a wall may be drawn on it.
pub(super) fn of_ground(piece: &Piece, over: Span, lines: &DrawnLines) -> Vec<usize> {
    let row = Rect::new(piece.x0, piece.y - LEVEL, piece.x1, piece.y + LEVEL);
    let found = lines.within(row);
    // The feet of walls beside this one are drawn on the same line.
    let runs_out = |stroke: &usize| {
        let is_out = |(p, q): &Segment| {
            p.x < over.1 && q.x > over.0 && (p.x < over.0 - GROUND || q.x > over.1 + GROUND)
        };
        found.iter().any(|(g, s)| s == stroke && is_out(g))
    };
    piece.strokes.iter().copied().filter(runs_out).collect()
}

/// Lines at the end of courses, upward or downward, that run on past them, each with how far; with every
/// piece of them.
fn run_ons(pieces: &[Piece], links: &[Link], lines: &DrawnLines, up: bool) -> BTreeMap<usize, f64> {
    let mut before: BTreeMap<usize, Vec<usize>> = BTreeMap::new();
    let mut beyond: BTreeMap<usize, Vec<usize>> = BTreeMap::new();
    let mut goes_on: BTreeMap<usize, f64> = BTreeMap::new();
    for l in links {
        let (near, far) = if up { (l.low, l.high) } else { (l.high, l.low) };
        beyond.entry(near).or_default().push(far);
        before.entry(far).or_default().push(near);
        *goes_on.entry(near).or_default() += l.x1 - l.x0;
    }
    // Where little of a line goes on, the rest of it ends there.
    beyond.retain(|i, _| goes_on[i] > LITTLE * pieces[*i].length());
    let out = |i: usize, near: &[usize]| {
        let at = [true, false].into_iter().filter_map(|left| {
            let end = |k: usize| if left { pieces[k].x0 } else { -pieces[k].x1 };
            let outermost =
                |all: &[usize]| all.iter().copied().min_by(|a, b| end(*a).total_cmp(&end(*b)));
            let next = outermost(near)?;
            // Both edges of a fascia a course high run on.
            let is_fascia = up && near.iter().any(|k| ends_alike(&pieces[*k], &pieces[i]));
            let next = if is_fascia { outermost(before.get(&next)?)? } else { next };
            let again = before.get(&next).and_then(|all| outermost(all))?;
            let off = (end(again) - end(next)).abs();
            let out = end(next) - end(i);
            // The wall's own foot may be drawn out to the corners of its boards, over the ground.
            let far = !up && out > GROUND + 2.0 * off && off <= GROUND;
            // Beside a roof's slope a line goes as far as the roof lets it.
            let at = Point::new(if left { pieces[i].x0 } else { pieces[i].x1 }, pieces[i].y);
            if out <= GROUND && beside_roof(lines, at, left) && !ends_slope(lines, at) {
                return None;
            }
            Some(out).filter(|out| (off <= PLUMB || far) && *out > OUT)
        });
        at.reduce(f64::max)
    };
    let ends: Vec<usize> = before.keys().copied().filter(|i| !beyond.contains_key(i)).collect();
    let found: Vec<(usize, f64)> =
        ends.iter().filter_map(|i| Some((*i, out(*i, &before[i])?))).collect();
    // A line broken by a window is one line; where a roof's slope meets it, it is not.
    let is_one = |a: usize, b: usize| {
        let (a, b) = (&pieces[a], &pieces[b]);
        let at = if a.x1 <= b.x0 + MEETS { a.x1 } else { b.x1 };
        (a.y - b.y).abs() <= LEVEL && !ends_slope(lines, Point::new(at, a.y))
    };
    let of_line = |i: usize| {
        let alike = found.iter().filter(|(k, _)| *k == i || is_one(i, *k));
        alike.map(|f| f.1).reduce(f64::max)
    };
    ends.iter().filter_map(|i| Some((*i, of_line(*i)?))).collect()
}

/// Whether two lines end over one another at both hands.
fn ends_alike(a: &Piece, b: &Piece) -> bool {
    (a.x0 - b.x0).abs() <= PLUMB && (a.x1 - b.x1).abs() <= PLUMB
}

/// Whether a slope ends at a place.
fn ends_slope(lines: &DrawnLines, Point { x, y }: Point) -> bool {
    let here = Rect::new(x - MEETS, y - MEETS, x + MEETS, y + MEETS);
    let slopes = |(p, q): &Segment| (p.x - q.x).abs() > OUT && (p.y - q.y).abs() > OUT;
    let ends = |(p, q): &Segment| here.contains(*p) || here.contains(*q);
    lines.within(here).iter().any(|(s, _)| slopes(s) && ends(s))
}

#[cfg(test)]
mod tests {
    use super::super::family::links;
    use super::*;
    use crate::model::linework::Linework;

    fn piece(y: f64, x0: f64, x1: f64) -> Piece {
        Piece { y, x0, x1, strokes: Vec::new(), second: None }
    }

    #[test]
    fn a_grade_line_a_course_under_the_foot_is_no_course_and_lines_under_a_rake_are() {
        let none = DrawnLines::of(&Linework::default(), |_| true);
        let without = |mut pieces: Vec<Piece>| {
            let mut found = links(&pieces, 8.0, |_, _| false);
            let ground = without_run_ons(&mut pieces, &mut found, &none);
            (found, ground)
        };
        // Courses of 8 in from 0 to 24 over 100 in; grade 8 in under the foot runs on by 60 in.
        let mut wall = vec![piece(-8.0, -60.0, 160.0)];
        wall.extend((0..4).map(|k| piece(8.0 * f64::from(k), 0.0, 100.0)));
        let (found, ground) = without(wall.clone());
        assert_eq!(
            (found.len(), found.iter().any(|l| l.low == 0), ground),
            (3, false, vec![(0, (0.0, 100.0))])
        );
        // A gable of 8 in 8: each line is 8 in shorter at either end.
        let gable: Vec<Piece> =
            (0..5).map(|k| 8.0 * f64::from(k)).map(|y| piece(y, y, 100.0 - y)).collect();
        assert_eq!(without(gable).0.len(), 4);
        // The upper edge of a board at the foot, past corner boards of 5 in, broken by a window from 40 to 60.
        let edge = [piece(-8.0, -5.0, 40.0), piece(-8.0, 60.0, 105.0), piece(-8.0, 40.0, 60.0)];
        let all: Vec<Piece> = edge.into_iter().chain(wall[1..].to_vec()).collect();
        let (found, ground) = without(all);
        assert_eq!((found.len(), ground), (3, vec![]));
    }
}
