//! Lines a course off the last one that run on past it: grade, eaves and floor levels, no courses.

use std::collections::BTreeMap;

use super::family::Link;
use super::pieces::Piece;

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

/// Links without those to a line at the foot or the head of courses that runs on past their plumb ends, and
/// pieces that are the ground: no courses end there.
pub(super) fn without_run_ons(pieces: &[Piece], mut links: Vec<Link>) -> (Vec<Link>, Vec<usize>) {
    let mut ground = Vec::new();
    for up in [true, false] {
        let gone = run_ons(pieces, &links, up);
        links.retain(|l| !gone.contains_key(if up { &l.high } else { &l.low }));
        let far = gone.into_iter().filter(|(_, out)| !up && *out > GROUND);
        ground.extend(far.map(|(i, _)| i));
    }
    (links, ground)
}

/// Lines at the end of courses, upward or downward, that run on past them, each with how far; with every
/// piece of them.
fn run_ons(pieces: &[Piece], links: &[Link], up: bool) -> BTreeMap<usize, f64> {
    let mut before: BTreeMap<usize, Vec<usize>> = BTreeMap::new();
    let mut has_beyond = vec![false; pieces.len()];
    for l in links {
        let (near, far) = if up { (l.low, l.high) } else { (l.high, l.low) };
        has_beyond[near] = true;
        before.entry(far).or_default().push(near);
    }
    let out = |i: usize, near: &[usize]| {
        let at = [true, false].into_iter().filter_map(|left| {
            let end = |k: usize| if left { pieces[k].x0 } else { -pieces[k].x1 };
            let outermost =
                |all: &[usize]| all.iter().copied().min_by(|a, b| end(*a).total_cmp(&end(*b)));
            let next = outermost(near)?;
            let again = before.get(&next).and_then(|all| outermost(all))?;
            let plumb = (end(again) - end(next)).abs() <= PLUMB;
            Some(end(next) - end(i)).filter(|out| plumb && *out > OUT)
        });
        at.reduce(f64::max)
    };
    let ends: Vec<usize> = before.keys().copied().filter(|i| !has_beyond[*i]).collect();
    let found: Vec<(usize, f64)> =
        ends.iter().filter_map(|i| Some((*i, out(*i, &before[i])?))).collect();
    // A line broken by a window is one line.
    let of_line = |i: usize| {
        let alike = found.iter().filter(|(k, _)| (pieces[*k].y - pieces[i].y).abs() <= LEVEL);
        alike.map(|f| f.1).reduce(f64::max)
    };
    ends.iter().filter_map(|i| Some((*i, of_line(*i)?))).collect()
}

#[cfg(test)]
mod tests {
    use super::super::family::links;
    use super::*;

    fn piece(y: f64, x0: f64, x1: f64) -> Piece {
        Piece { y, x0, x1, strokes: Vec::new(), second: None }
    }

    #[test]
    fn a_grade_line_a_course_under_the_foot_is_no_course_and_lines_under_a_rake_are() {
        // Courses of 8 in from 0 to 24 over 100 in; grade 8 in under the foot runs on by 60 in.
        let mut wall = vec![piece(-8.0, -60.0, 160.0)];
        wall.extend((0..4).map(|k| piece(8.0 * f64::from(k), 0.0, 100.0)));
        let (found, ground) = without_run_ons(&wall, links(&wall, 8.0, |_, _| false));
        assert_eq!((found.len(), found.iter().any(|l| l.low == 0), ground), (3, false, vec![0]));
        // A gable of 8 in 8: each line is 8 in shorter at either end.
        let gable: Vec<Piece> =
            (0..5).map(|k| 8.0 * f64::from(k)).map(|y| piece(y, y, 100.0 - y)).collect();
        assert_eq!(without_run_ons(&gable, links(&gable, 8.0, |_, _| false)).0.len(), 4);
        // The upper edge of a board at the foot, past corner boards of 5 in, broken by a window from 40 to 60.
        let edge = [piece(-8.0, -5.0, 40.0), piece(-8.0, 60.0, 105.0), piece(-8.0, 40.0, 60.0)];
        let all: Vec<Piece> = edge.into_iter().chain(wall[1..].to_vec()).collect();
        let (found, ground) = without_run_ons(&all, links(&all, 8.0, |_, _| false));
        assert_eq!((found.len(), ground), (3, vec![]));
    }
}
