//! Titles that stand farther under their views than notes do, as printed sheets have them: under the
//! ground, the section marks and the foundation, at the left end of a line that runs under the view.

use super::titles::Title;
use crate::geom::vocabulary::Rect;
use crate::real::Real;

/// How far under the siding of its view a title may stand, as a share of the view's height: under
/// ground, foundation and marks (common practice, no source).
const UNDER: f64 = 2.0;
/// How far left of the siding it may begin, as a share of the view's width: the line that it begins runs
/// under the whole view (common practice, no source).
const ASIDE: f64 = 1.0;

/// Gives views without a title of their own the one that says their side and stands nearest under them, where they
/// are the nearest views over it. `walls` are the walls of each view, `near` how far aside a title may
/// stand at least.
pub(super) fn give<'t>(
    views: &mut [(Option<&'t Title>, Rect)],
    walls: &[Rect],
    titles: &'t [Title],
    near: f64,
) {
    let taken: Vec<&Title> = views.iter().filter_map(|v| v.0).collect();
    let is_taken = |t: &Title| taken.iter().any(|u| std::ptr::eq(*u, t));
    let free: Vec<&Title> = titles
        .iter()
        .filter(|t| t.tells_side() && t.window.is_none() && t.turn.is_none() && !is_taken(t))
        .collect();
    let untitled: Vec<usize> =
        (0..views.len()).filter(|i| views[*i].0.is_none_or(Title::is_of_sheet)).collect();
    let nearest_view = |t: &Title| {
        let over = walls.iter().enumerate().filter_map(|(i, w)| Some((i, away(t, *w, near)?)));
        over.min_by(|a, b| a.1.total_cmp(&b.1)).map(|(i, _)| i)
    };
    for view in untitled {
        let mine = free.iter().filter(|t| nearest_view(t) == Some(view));
        let found = mine.filter_map(|t| Some((*t, away(t, walls[view], near)?)));
        let nearest = found.min_by(|a, b| a.1.total_cmp(&b.1)).map(|(t, _)| t);
        views[view].0 = nearest.or(views[view].0);
    }
}

/// How far a title stands from the foot of walls, if it may be theirs.
fn away(t: &Title, walls: Rect, near: f64) -> Option<f64> {
    let under = walls.y0 - t.at.y;
    let left = walls.x0 - t.at.x;
    let reach = near.max(ASIDE * walls.width());
    let fits = under > 0.0 && under <= UNDER * walls.height().max(near);
    let along = left <= reach && t.at.x <= walls.x1;
    (fits && along).then(|| under.hypotenuse(left.max(0.0)))
}
