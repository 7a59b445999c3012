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
mod overlay;
mod overlay_failed;
mod overlay_source;
mod overview;
mod page;
mod place;
mod pole;
mod pole_table;
mod problems;
mod profile;
mod scale;
mod seam_ends;
mod style;
mod wall;
mod work;

pub use convention::convention;
pub use overlay::overlay;
pub use overlay_source::over_source;
pub use problems::{place, problems, shown};

use crate::cores;
use crate::language::Phrase;
use crate::layout::Layout;
use crate::layout::backdrop::Backdrops;
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
    pages.extend(walls(layout, &standing, &cuts));
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

/// The sheets of every wall, in the order of walls; they do not depend on one another.
fn walls(
    layout: &Layout,
    standing: &elevation_index::ElevationIndex,
    cuts: &cuts_of::Cuts,
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
