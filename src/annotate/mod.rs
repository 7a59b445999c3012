//! From a layout to what is drawn: sheets in paper inches, and the overlay in the source's own
//! coordinates.

mod canvas;
mod columns;
mod convention;
mod cover;
mod cut_list;
mod cuts_of;
mod cutting;
mod details;
mod elevation;
mod elevation_index;
mod faces;
mod flow;
mod key_plan;
mod measures;
mod meeting;
mod overlay;
mod overlay_failed;
mod overlay_source;
mod overview;
mod packed;
mod page;
mod place;
mod pole;
mod pole_table;
mod problems;
mod profile;
mod quick_start;
mod revisions;
mod scale;
mod seam_ends;
mod stood;
mod style;
mod wall;
mod work;

pub use convention::convention;
pub use measures::measures;
pub use overlay::overlay;
pub use overlay_source::over_source;
pub use problems::{place, problems, shown};
pub use quick_start::quick_start;

use crate::cores;
use crate::language::Phrase;
use crate::layout::Layout;
use crate::layout::backdrop::Backdrops;
use crate::model::change::Comparison;
use crate::model::sheet::Sheet;
use crate::wording::sheets as words;

/// Every sheet of a layout, in order: cover, elevations, story pole with its table, the walls with all that is
/// cut and done there, details, cutting sheets, cut list, patterns. `backdrops` are the source's own lines, drawn in
/// gray behind the elevations.
pub fn sheets(layout: &Layout, backdrops: &Backdrops) -> Vec<Sheet> {
    let standing = elevation_index::ElevationIndex::of(layout);
    let cuts = cuts_of::Cuts::of(layout);
    let mut pages = overview::sheets(layout, backdrops, &standing);
    pages.extend(pole::sheets(layout));
    pages.extend(walls(layout, &standing, &cuts, false));
    pages.extend(details::sheets(layout));
    pages.extend(cutting::sheets(layout, &cuts));
    pages.extend(cut_list::sheets(layout));
    pages.extend(cutting::patterns(layout));
    number_lists(&mut pages);
    let titles: Vec<Phrase> = pages.iter().map(|p| p.title.clone()).collect();
    pages.splice(0..0, cover::sheets(layout, &titles));
    let count = pages.len();
    pages.into_iter().enumerate().map(|(i, p)| page::finish(p, layout, i + 1, count)).collect()
}

/// The sheets of a revision: the table of what it changes, then of the layout's elevations and walls those that it
/// changes, each change in its cloud.
pub fn revised(layout: &Layout, backdrops: &Backdrops, comparison: &Comparison) -> Vec<Sheet> {
    let layout = &revisions::titled(layout, comparison);
    let standing = elevation_index::ElevationIndex::revised(layout, comparison);
    let cuts = cuts_of::Cuts::of(layout);
    let mut pages = revisions::table(layout, comparison);
    let shown = overview::sheets(layout, backdrops, &standing);
    pages.extend(shown.into_iter().filter(revisions::is_clouded));
    pages.extend(walls(layout, &standing, &cuts, true));
    revisions::finished(pages, layout)
}

/// The sheets of every wall, or of those that a revision changes, in the order of walls; they do not depend on one another.
fn walls(
    layout: &Layout,
    standing: &elevation_index::ElevationIndex,
    cuts: &cuts_of::Cuts,
    revised: bool,
) -> Vec<page::Page> {
    let panels = wall::PanelWalls::of(layout);
    let sticks = wall::Sticks::of(layout);
    let all: Vec<wall::WallAt> = wall::in_order(layout)
        .into_iter()
        .enumerate()
        .map(|(number, (elevation, wall))| wall::WallAt {
            number,
            elevation,
            wall,
            on: standing.at(elevation),
        })
        .filter(|w| !revised || !w.on.at_wall(w.wall).revised.is_empty())
        .collect();
    let each = cores::each(&all, |w| wall::sheets(layout, w, cuts, (&panels, &sticks)));
    each.into_iter().flatten().collect()
}

/// Pages of one list get their number in it, so that bookmarks differ.
fn number_lists(pages: &mut [page::Page]) {
    for title in [words::STORY_POLE, details::TITLE, words::CUT_LIST] {
        let title = Phrase::from(title);
        let mut of: Vec<&mut page::Page> = pages.iter_mut().filter(|p| p.title == title).collect();
        let n = of.len();
        if n > 1 {
            for (i, p) in of.iter_mut().enumerate() {
                p.title = Phrase::new(|lang| words::numbered(lang, title.of(lang), i + 1, n));
            }
        }
    }
}
