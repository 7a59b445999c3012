//! Steps at sloping grade: the start is stepped in whole courses, or corners will not meet
//! (`LayoutFact::LowestStart`).

use crate::geom::polygon::{Polygon, bounds};
use crate::geom::strip::intervals_at;
use crate::geom::tol::{SAME, snap};
use crate::geom::vocabulary::Point;
use crate::job::CourseRules;
use crate::model::course::StoryPole;

/// Rectangles of whole courses that would stand nearer to grade than the clearance, to be taken off a
/// field. A course cut at the bottom is judged by its cut edge. What is left beside a step and is
/// narrower than the studs are apart bears no piece: a jagged line of grade steps over it. Empty without a
/// grade line.
pub(super) fn steps(
    shapes: &[Polygon],
    grade: &[Point],
    rules: &CourseRules,
    pole: &StoryPole,
) -> Vec<Polygon> {
    let clear = rules.clear_of_grade;
    let Some(all) = bounds(shapes.iter().flat_map(|p| &p.outer)) else { return Vec::new() };
    let mut out = Vec::new();
    let floor = all.y0 - 1.0;
    let mut index = pole.course_at(all.y0);
    loop {
        let butt = pole.butt(index).max(all.y0);
        let near = too_near(grade, clear, butt, (all.x0, all.x1));
        if near.is_empty() || butt >= all.y1 {
            return out;
        }
        let top = pole.butt(index + 1);
        let room = intervals_at(shapes, butt.midpoint(top.min(all.y1)));
        let narrow = pockets(&room, &near, rules.stud_spacing);
        out.extend(near.into_iter().chain(narrow).map(|(a, b)| Polygon::rect(a, floor, b, top)));
        index += 1;
    }
}

/// What steps leave of the room for a course that is narrower than `least`.
fn pockets(room: &[(f64, f64)], steps: &[(f64, f64)], least: f64) -> Vec<(f64, f64)> {
    let mut out = Vec::new();
    for &(from, to) in room {
        let mut at = from;
        let inside = steps.iter().filter(|s| s.1 > from && s.0 < to);
        let mut stepped = false;
        for &(a, b) in inside.chain([&(to, to)]) {
            let free = a.min(to) - at;
            let bounded = stepped || a < to;
            if bounded && free > 0.0 && free < least - SAME {
                out.push((at, a.min(to)));
            }
            stepped = true;
            at = b.max(at);
        }
    }
    out
}

/// Intervals of x within `span` where a panel with its butt at `butt` is nearer to grade than
/// `clear`, each grown outward to a whole sixteenth.
fn too_near(grade: &[Point], clear: f64, butt: f64, span: (f64, f64)) -> Vec<(f64, f64)> {
    let limit = butt - clear + SAME;
    let (Some(first), Some(last)) = (grade.first(), grade.last()) else { return Vec::new() };
    let mut chain = vec![Point::new(span.0 - 1.0, first.y)];
    chain.extend(grade.iter().copied().filter(|p| p.x > span.0 - 1.0 && p.x < span.1 + 1.0));
    chain.push(Point::new(span.1 + 1.0, last.y));
    if let Some(y) = interpolated(grade, span.0 - 1.0) {
        chain[0].y = y;
    }
    if let Some(y) = interpolated(grade, span.1 + 1.0) {
        let n = chain.len() - 1;
        chain[n].y = y;
    }
    let mut out: Vec<(f64, f64)> = Vec::new();
    for pair in chain.windows(2) {
        let (a, b) = (pair[0], pair[1]);
        let part = match (a.y > limit, b.y > limit) {
            (false, false) => continue,
            (true, true) => (a.x, b.x),
            (up, _) => {
                let x = a.x + (limit - a.y) / (b.y - a.y) * (b.x - a.x);
                if up { (a.x, x) } else { (x, b.x) }
            }
        };
        match out.last_mut() {
            Some(before) if part.0 <= before.1 + SAME => before.1 = part.1,
            _ => out.push(part),
        }
    }
    let whole =
        |x: f64, up: bool| if up { (x * 16.0).ceil() / 16.0 } else { (x * 16.0).floor() / 16.0 };
    out.into_iter()
        .map(|(a, b)| (whole(a, false).max(span.0 - 1.0), whole(b, true).min(span.1 + 1.0)))
        .map(|(a, b)| (snap(a), snap(b)))
        .filter(|(a, b)| *b > span.0 + SAME && *a < span.1 - SAME)
        .collect()
}

fn interpolated(grade: &[Point], x: f64) -> Option<f64> {
    let pair = grade.windows(2).find(|w| w[0].x <= x && x <= w[1].x && w[1].x > w[0].x)?;
    Some(pair[0].y + (x - pair[0].x) / (pair[1].x - pair[0].x) * (pair[1].y - pair[0].y))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_slope_of_two_feet_steps_in_whole_courses() {
        // Grade rises from -24 to 0 over 240 in; base at -8, clearance 6: a butt at y is allowed
        // where grade <= y - 6, that is x <= (y + 18) x 10. At -8: x <= 100; at 0: x <= 180.
        let wall = [Polygon::rect(0.0, -8.0, 240.0, 100.0)];
        let grade = [Point::new(0.0, -24.0), Point::new(240.0, 0.0)];
        let pole = StoryPole { datum: -8.0, exposure: 8.0, ..Default::default() };
        let rules = CourseRules { clear_of_grade: 6.0, ..Default::default() };
        let cut = steps(&wall, &grade, &rules, &pole);
        let tops: Vec<(f64, f64)> = cut.iter().map(|p| (p.bounds().x0, p.bounds().y1)).collect();
        assert_eq!(tops.len(), 2);
        assert!((tops[0].0 - 100.0).abs() <= 0.125 && tops[0].1 == 0.0);
        assert!((tops[1].0 - 180.0).abs() <= 0.125 && tops[1].1 == 8.0);
    }
    #[test]
    fn a_pocket_between_teeth_of_grade_is_stepped_over_where_no_piece_goes() {
        // Room from 0 to 100 and, beyond a door, from 140 to 200; studs 16 in apart.
        let room = [(0.0, 100.0), (140.0, 200.0)];
        let steps = [(-1.0, 2.0), (17.9, 40.0), (56.0, 90.0), (150.0, 170.0)];
        // 2 to 17.9 and 90 to 100 beside the door, and 140 to 150; 40 to 56 holds a piece, and so does 170 on.
        assert_eq!(pockets(&room, &steps, 16.0), [(2.0, 17.9), (90.0, 100.0), (140.0, 150.0)]);
        // Narrow room that no step bounds is as it was.
        assert_eq!(pockets(&[(0.0, 8.0)], &[(20.0, 30.0)], 16.0), []);
    }
}
