//! Course lines, reckoned from the datum and the story pole alone.

use crate::layout::laid::LaidHouse;

/// Butt line of a course, counted from the datum: as high as the next, unless boards are evened.
pub(super) fn butt(layout: &LaidHouse, index: i32) -> f64 {
    let (exposure, evened) = (layout.job.product.exposure, &layout.story_pole.evened);
    let steps = |n: i32| f64::from(n) * exposure;
    let Some(top) = evened.last().filter(|_| index >= 0) else {
        return layout.datum + steps(index);
    };
    let over = index - (evened.len() as i32 - 1);
    if over > 0 { top + steps(over) } else { evened[index as usize] }
}

/// The course that holds a height, found by looking at one after another from a guess.
pub(super) fn course_at(layout: &LaidHouse, y: f64) -> i32 {
    let least = layout.job.product.limits().0.max(0.5);
    let mut i = ((y - layout.datum) / layout.job.product.exposure).floor() as i32;
    // Evened courses differ by less than a course in a course.
    let far =
        2 + (layout.story_pole.evened.len() as f64 * layout.job.product.exposure / least) as i32;
    for _ in 0..far {
        if butt(layout, i) > y {
            i -= 1;
        } else if butt(layout, i + 1) <= y {
            i += 1;
        } else {
            break;
        }
    }
    i
}

/// Whether a height is a course line.
pub(super) fn on_course_line(layout: &LaidHouse, y: f64) -> bool {
    let below = course_at(layout, y);
    let near = |i: i32| (y - butt(layout, i)).abs();
    near(below).min(near(below + 1)) <= crate::geom::tol::SAME + 1e-9
}
