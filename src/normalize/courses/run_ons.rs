//! Lines a course off the last one that run on past it: grade, eaves and floor levels, no courses.

use std::collections::BTreeMap;

use super::family::Link;
use super::pieces::Piece;

/// A line sticks out this far past the courses beside it, inches, if it is none of them (common practice, no
/// source).
const OUT: f64 = 3.0;
/// Ends of courses stand plumb but for this, inches: under a rake they step.
const PLUMB: f64 = 0.5;

/// Links without those to a line at the foot or the head of courses that runs on past their plumb ends.
pub(super) fn without_run_ons(pieces: &[Piece], mut links: Vec<Link>) -> Vec<Link> {
    for up in [true, false] {
        let gone = run_ons(pieces, &links, up);
        links.retain(|l| !gone.contains(if up { &l.high } else { &l.low }));
    }
    links
}

/// Lines at the end of courses, upward or downward, that run on past them.
fn run_ons(pieces: &[Piece], links: &[Link], up: bool) -> Vec<usize> {
    let mut before: BTreeMap<usize, Vec<usize>> = BTreeMap::new();
    let mut has_beyond = vec![false; pieces.len()];
    for l in links {
        let (near, far) = if up { (l.low, l.high) } else { (l.high, l.low) };
        has_beyond[near] = true;
        before.entry(far).or_default().push(near);
    }
    let ends = before.iter().filter(|(i, _)| !has_beyond[**i]);
    let runs_on = |i: usize, near: &[usize]| {
        [true, false].into_iter().any(|left| {
            let end = |k: usize| if left { pieces[k].x0 } else { -pieces[k].x1 };
            let outermost =
                |all: &[usize]| all.iter().copied().min_by(|a, b| end(*a).total_cmp(&end(*b)));
            let Some(next) = outermost(near) else { return false };
            let again = before.get(&next).and_then(|all| outermost(all));
            let plumb = again.is_some_and(|k| (end(k) - end(next)).abs() <= PLUMB);
            plumb && end(next) - end(i) > OUT
        })
    };
    ends.filter(|(i, near)| runs_on(**i, near)).map(|(i, _)| *i).collect()
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
        let found = without_run_ons(&wall, links(&wall, 8.0, |_, _| false));
        assert_eq!((found.len(), found.iter().any(|l| l.low == 0)), (3, false));
        // A gable of 8 in 8: each line is 8 in shorter at either end.
        let gable: Vec<Piece> =
            (0..5).map(|k| 8.0 * f64::from(k)).map(|y| piece(y, y, 100.0 - y)).collect();
        assert_eq!(without_run_ons(&gable, links(&gable, 8.0, |_, _| false)).len(), 4);
    }
}
