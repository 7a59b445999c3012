//! Courses and runs.

use super::receiver::Receiver;
use crate::geom::polygon::Polygon;

/// The heights of the whole house on one stick.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct StoryPole {
    /// Butt line of course 0, house inches.
    pub datum: f64,
    /// Height of a course.
    pub exposure: f64,
    /// How the datum was chosen, in words.
    pub why: String,
}

impl StoryPole {
    /// Butt line of a course.
    pub fn butt(&self, index: i32) -> f64 {
        crate::geom::tol::snap(self.datum + f64::from(index) * self.exposure)
    }

    /// The course whose face holds height `y`; a height on a butt line belongs to the course above.
    pub fn course_at(&self, y: f64) -> i32 {
        ((y - self.datum + crate::geom::tol::SAME) / self.exposure).floor() as i32
    }
}

/// One level row of panels of a wall.
#[derive(Clone, Debug, PartialEq)]
pub struct Course {
    /// Counted from the datum, 0 first; the same level has the same number on every wall.
    pub index: i32,
    /// Butt line.
    pub bottom: f64,
    /// Butt line of the next course.
    pub top: f64,
    /// Jamb lines of openings that this course or a neighbour touches.
    pub avoid: Vec<f64>,
    /// Runs, left to right then bottom to top.
    pub runs: Vec<Run>,
}

/// An uninterrupted part of a course.
#[derive(Clone, Debug, PartialEq)]
pub struct Run {
    /// Name, unique in the house.
    pub id: String,
    /// Left end at its long point, pocket bottom.
    pub x0: f64,
    /// Right end at its long point, pocket bottom.
    pub x1: f64,
    /// Left end.
    pub left: RunEnd,
    /// Right end.
    pub right: RunEnd,
    /// End gap.
    pub gap: f64,
    /// What the run's panels cover: the field in this course, clearances taken off.
    pub clear: Polygon,
    /// Fixed seams, from obstacles without a mounting block.
    pub fixed: Vec<f64>,
    /// Intervals where no seam may stand.
    pub barred: Vec<(f64, f64)>,
}

/// How a run ends.
#[derive(Clone, Debug, PartialEq)]
pub struct RunEnd {
    /// What takes it.
    pub receiver: Receiver,
    /// Sideways move of the end per inch of height, positive where the end leans to the right
    /// going up; 0 for a plumb end.
    pub slope: f64,
}
