//! The order of work on each wall: which way laps face, where level is checked, how panels get into
//! tight places, and all of it in sentences to be read on a ladder.

mod runs;
mod steps;
mod tight;

use crate::layout::Layout;
use crate::model::work::{WallWork, WorkOrder};

/// The order of work, wall by wall as in the layout. Asks courses, sides, trim and the job of it.
pub fn work(layout: &Layout) -> WorkOrder {
    let rules = &layout.job.work;
    // Where ends butt nothing laps; what stands in no pocket is set from the front.
    let laps = layout.job.siding().joints.is_lapped();
    let pockets = layout.job.siding().receivers.has_pockets();
    let index = steps::Index::of(layout);
    let seen = layout.elevations.iter().map(|e| (e, runs::seen_from(e, rules.seen(&e.name))));
    let walls = seen
        .flat_map(|(e, seen)| e.walls.iter().map(move |w| (e, w, seen.clone())))
        .map(|(e, w, (seen_from, seen_from_what))| {
            let each = i64::from(rules.level_check.max(1));
            let last = w.courses.last().map_or(i32::MIN, |c| c.index);
            let mut out = WallWork {
                elevation: e.name.clone(),
                wall: w.id.clone(),
                seen_from,
                seen_from_what,
                runs: if laps { runs::orders(w, seen_from) } else { Vec::new() },
                // The same courses on every wall, so that each is checked against the next. The top
                // course has nothing on it to go wrong.
                level_checks: w
                    .courses
                    .iter()
                    .filter(|c| c.index < last)
                    .map(|c| c.index + 1)
                    .filter(|n| i64::from(*n) % each == 0)
                    .collect(),
                tight: if pockets {
                    tight::spots(w, layout.job.seams.shortest, layout.job.sheet.lengths)
                } else {
                    Vec::new()
                },
                steps: Vec::new(),
            };
            out.steps = steps::steps(layout, &index, (e, w), &out);
            out
        })
        .collect();
    WorkOrder { everywhere: steps::everywhere(layout), walls }
}
