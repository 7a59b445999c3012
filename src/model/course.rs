//! Courses and runs.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::ids::RunId;
use super::pole::{DatumReason, EvenedCourses};
use super::receiver::Receiver;
use crate::geom::polygon::Polygon;
use crate::geom::tol::{SAME, snap};

/// The heights of the whole house on one stick.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct StoryPole {
    /// Butt line of course 0, house inches.
    pub datum: f64,
    /// Height of a course.
    pub exposure: f64,
    /// How the datum was chosen.
    pub reason: DatumReason,
    /// How the exposures of boards were evened.
    pub divisions: Vec<EvenedCourses>,
    /// Butt lines from course 0 up, where exposures are evened; empty where every course is as high
    /// as the next. Beyond them courses have `exposure`.
    pub lines: Vec<f64>,
}

impl StoryPole {
    /// Butt line of a course.
    pub fn butt(&self, index: i32) -> f64 {
        butt(&self.lines, self.datum, self.exposure, index)
    }

    /// The course whose face holds height `y`; a height on a butt line belongs to the course above.
    pub fn course_at(&self, y: f64) -> i32 {
        course_at(&self.lines, self.datum, self.exposure, y)
    }

    /// The butt line that height `y` stands on but for drawing noise; the height itself where it
    /// stands on none.
    pub fn settled(&self, y: f64) -> f64 {
        self.settled_within(y, SAME)
    }

    /// The same where noise may put a height off by as much as `reach`, inches.
    pub fn settled_within(&self, y: f64, reach: f64) -> f64 {
        let course = self.course_at(y);
        let lines = [self.butt(course), self.butt(course + 1)];
        lines.into_iter().find(|line| (line - y).abs() <= reach).unwrap_or(y)
    }
}

/// Butt line of a course on a stick with `lines` from course 0 up, courses of `exposure` beyond.
pub(crate) fn butt(lines: &[f64], datum: f64, exposure: f64, index: i32) -> f64 {
    let last = lines.len().saturating_sub(1) as i32;
    match (usize::try_from(index).ok().and_then(|i| lines.get(i)), lines.last()) {
        (Some(y), _) => *y,
        (None, Some(top)) if index > last => snap(top + f64::from(index - last) * exposure),
        _ => snap(datum + f64::from(index) * exposure),
    }
}

/// The course whose face holds a height: see [`StoryPole::course_at`].
pub(crate) fn course_at(lines: &[f64], datum: f64, exposure: f64, y: f64) -> i32 {
    let over = |from: f64| ((y - from + SAME) / exposure).floor() as i32;
    match lines.last() {
        Some(top) if y + SAME >= *top => lines.len() as i32 - 1 + over(*top),
        Some(_) if y + SAME >= datum => lines.partition_point(|l| *l <= y + SAME) as i32 - 1,
        _ => over(datum),
    }
}

/// One level row of panels of a wall.
#[derive(Clone, Debug, PartialEq)]
pub struct PlannedCourse {
    /// Counted from the datum, 0 first; the same level has the same number on every wall.
    pub index: i32,
    /// Butt line.
    pub bottom: f64,
    /// Butt line of the next course.
    pub top: f64,
    /// Jamb lines of openings that this course or a neighbor touches.
    pub avoid: Vec<f64>,
    /// Runs, left to right then bottom to top.
    pub runs: Vec<PlannedRun>,
}

/// An uninterrupted part of a course.
#[derive(Clone, Debug, PartialEq)]
pub struct PlannedRun {
    /// Name, unique in the house.
    pub id: RunId,
    /// Left end at its long point, pocket bottom.
    pub x0: f64,
    /// Right end at its long point, pocket bottom.
    pub x1: f64,
    /// Left end and right end.
    pub ends: [RunEnd; 2],
    /// End gap.
    pub gap: f64,
    /// What the run's panels cover: the field in this course, clearances taken off.
    pub clear: Polygon,
    /// Fixed seams, from obstacles without a mounting block.
    pub fixed: Vec<f64>,
    /// Intervals where no seam may stand.
    pub barred: Vec<(f64, f64)>,
    /// From where to where its panels are notched over heads and under sills: the openings themselves.
    pub notched: Vec<(f64, f64)>,
}

/// How a run ends: planned, and so laid.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct RunEnd {
    /// What takes it.
    pub receiver: Receiver,
    /// Sideways move of the end per inch of height, positive where the end leans to the right
    /// going up; 0 for a plumb end.
    pub slope: f64,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn evened_lines_and_courses_beyond_them() {
        let lines = vec![2.0, 9.0, 16.0, 22.0];
        let pole = StoryPole { datum: 2.0, exposure: 8.0, lines, ..Default::default() };
        for (i, y) in [(-1, -6.0), (0, 2.0), (1, 9.0), (2, 16.0), (3, 22.0), (4, 30.0), (5, 38.0)] {
            assert_eq!((pole.butt(i), pole.course_at(y)), (y, i));
            assert_eq!(pole.course_at(y - 0.1), i - 1);
        }
    }
}
