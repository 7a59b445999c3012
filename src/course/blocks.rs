//! Mounting blocks moved up or down by a little, so that none bites a sliver out of the course over or under
//! its own: a block has that much room round its box. Common practice, no source.

use crate::geom::polygon::bounds;
use crate::geom::tol::{GRID, SAME};
use crate::geom::vocabulary::{Rect, Vec2};
use crate::job::Job;
use crate::model::course::StoryPole;
use crate::model::house::{DrawnWall, House};

/// The house with blocks moved; none where none is.
pub fn moved(house: &House, pole: &StoryPole, job: &Job) -> Option<House> {
    let (most, clear) = (job.courses.block_shift, job.courses.notch_clearance);
    let mut out: Option<House> = None;
    for (e, on) in house.elevations.iter().enumerate() {
        for (w, wall) in on.walls.iter().enumerate() {
            let blocks = wall.obstacles.iter().enumerate().filter(|(_, o)| o.mounting_block);
            for (i, o) in blocks {
                let shift = bounds(&o.outline).and_then(|b| shift(wall, b, pole, (most, clear)));
                let Some(by) = shift else { continue };
                let all = out.get_or_insert_with(|| house.clone());
                let block = &mut all.elevations[e].walls[w].obstacles[i];
                block.outline.iter_mut().for_each(|p| *p += Vec2::new(0.0, by));
                block.moved = by;
            }
        }
    }
    out
}

/// How far a block is moved, up where positive: the least that keeps it out of a course.
fn shift(wall: &DrawnWall, b: Rect, pole: &StoryPole, (most, clear): (f64, f64)) -> Option<f64> {
    let lines = |by: f64, least: f64| -> Vec<f64> {
        let (low, high) = (b.y0 - clear + by, b.y1 + clear + by);
        let (first, last) = (pole.course_at(low), pole.course_at(high) + 1);
        let all = (first..=last).map(|i| pole.butt(i));
        all.filter(|y| *y > low + least && *y < high - least).collect()
    };
    let crossed = lines(0.0, GRID);
    let up = crossed.first()? - (b.y0 - clear);
    let down = (b.y1 + clear) - crossed.last()?;
    let free = |by: f64| {
        let at = b + Vec2::new(0.0, by);
        let hit = |r: Rect| r.x0 < at.x1 && r.x1 > at.x0 && r.y0 < at.y1 && r.y1 > at.y0;
        !wall.openings.iter().filter_map(|o| bounds(&o.outline)).any(hit)
    };
    let mut ways = [up, -down];
    ways.sort_by(|a, b| a.abs().total_cmp(&b.abs()));
    // Even a bite that no saw takes is one, for out of a course costs nothing; but rather that than a real one.
    let fewer = |by: f64| [GRID, SAME].iter().any(|l| lines(by, *l).len() < lines(0.0, *l).len());
    let helps = |by: f64| by.abs() <= most + SAME && fewer(by) && free(by);
    ways.into_iter().find(|by| helps(*by))
}
