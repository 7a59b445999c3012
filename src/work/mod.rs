//! The order of work on each wall: which way laps face, where level is checked, how panels get into
//! places with restricted access, and what goes on in which order.

mod cut_edges;
mod flashing;
mod offcuts;
mod restricted;
mod rules;
mod runs;
mod saw;
mod steps;
mod trim_index;

use self::offcuts::OnWalls;
use self::trim_index::TrimIndex;
use crate::layout::laid::LaidHouse;
use crate::layout::wall::LaidWall;
use crate::model::work::{WallWork, WorkOrder};

/// The order of work, wall by wall as they are sided. Asks courses, sides, trim and the job of it.
pub fn work(layout: &LaidHouse) -> WorkOrder {
    let job = &layout.job;
    // Where ends butt nothing laps; what stands in no pocket is set from the front.
    let (laps, pockets) = (job.siding().joints.is_lapped(), job.siding().receivers.has_pockets());
    let index = TrimIndex::new(layout);
    let on = OnWalls::new(layout);
    let mut walls = Vec::new();
    for e in &layout.elevations {
        let (seen_from, viewpoint) = runs::seen_from(e, job.work.seen(&e.name));
        let roofs = e.roof_sides(layout);
        for w in &e.walls {
            let kick_out = roofs.iter().any(|s| s.wall.id == w.id && s.kick_out.is_some());
            let mut out = WallWork {
                elevation: e.name.clone(),
                wall: w.id.clone(),
                seen_from,
                viewpoint: viewpoint.clone(),
                level_checks: level_checks(w, job.work.level_check),
                ..WallWork::default()
            };
            if laps {
                out.runs = runs::orders(w, seen_from);
            }
            if pockets {
                out.restricted = restricted::places(w, job.seams.shortest);
            }
            out.steps = steps::steps(&index, (e, w), &out, (job, kick_out));
            out.saw = saw::list(layout, &on, w);
            walls.push(out);
        }
    }
    walls.sort_by_key(|w| on.place(&w.wall).unwrap_or(usize::MAX));
    WorkOrder { everywhere: rules::everywhere(job), walls, offcuts: offcuts::plan(layout, &on) }
}

/// The same courses on every wall, so that each is checked against the next. The top course has
/// nothing on it to go wrong.
fn level_checks(w: &LaidWall, each: u32) -> Vec<i32> {
    let each = i64::from(each.max(1));
    let last = w.courses.last().map_or(i32::MIN, |c| c.index);
    let below = w.courses.iter().filter(|c| c.index < last).map(|c| c.index + 1);
    below.filter(|n| i64::from(*n) % each == 0).collect()
}
