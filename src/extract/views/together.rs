//! Walls that stand together, with the title that stands by them.

use std::collections::BTreeMap;

use super::far_titles;
use super::titles::{Title, of_windows, plan_of, under};
use crate::extract::outline::Outline;
use crate::geom::near::clusters;
use crate::geom::vocabulary::Rect;
use crate::model::linework::Linework;

/// Walls nearer to each other than this, sideways, belong to one view: 8 ft. Views are drawn
/// farther apart (common practice, no source).
pub(super) const APART: f64 = 96.0;

/// The part of the drawing round walls that stand together, with its title. Where windows of a sheet have
/// titles of their own, what one shows stands apart from what another does.
pub(super) fn of_walls<'t>(
    lines: &Linework,
    outlines: &[Outline],
    titles: &'t [Title],
) -> Vec<(Option<&'t Title>, Rect)> {
    let titled = of_windows(titles);
    let mut shown: BTreeMap<Option<usize>, Vec<Rect>> = BTreeMap::new();
    for o in outlines {
        shown.entry(window_of(lines, &titled, o)).or_default().push(o.frame());
    }
    let (mut out, mut all_walls) = (Vec::new(), Vec::new());
    for (window, frames) in shown {
        let together = clusters(frames, APART);
        let all = window.filter(|_| together.len() == 1).and_then(|w| titled.get(&w).copied());
        for walls in together {
            let near = under(titles, walls, APART);
            let title = near.filter(|t| t.agreed).or(all).or(near);
            // What stands round the walls, half way to the next view, belongs to the view.
            let lying = title.is_some_and(|t| t.turn.quarters % 2 == 1);
            let (beside, over) = if lying { (APART, APART / 2.0) } else { (APART / 2.0, APART) };
            let round = walls.inflate(beside, over);
            let seen = window.and_then(|w| lines.viewports.get(w)).map(|v| v.model.union(walls));
            out.push((title, seen.map_or(round, |s| s.intersect(round))));
            all_walls.push(walls);
        }
    }
    far_titles::give(&mut out, &all_walls, titles, APART);
    for ((title, _), walls) in out.iter_mut().zip(&all_walls) {
        *title = title.or_else(|| plan_of(titles, *walls));
    }
    out
}

/// The smallest window with a title of its own that shows the middle of a wall.
fn window_of(lines: &Linework, titled: &BTreeMap<usize, &Title>, wall: &Outline) -> Option<usize> {
    let middle = wall.frame().center();
    let shows = |w: &usize| lines.viewports.get(*w).filter(|v| v.model.contains(middle));
    let showing = titled.keys().filter_map(|w| Some((*w, shows(w)?.model.area())));
    showing.min_by(|a, b| a.1.total_cmp(&b.1)).map(|(w, _)| w)
}
