//! From a layout to what is drawn: sheets in paper inches, and the overlay in the source's own
//! coordinates.

mod canvas;
mod convention;
mod cover;
mod cut_list;
mod cutting;
mod details;
mod elevation;
mod elevation_index;
mod faces;
mod flow;
mod overlay;
mod overlay_failed;
mod overlay_source;
mod page;
mod place;
mod pole;
mod pole_table;
mod problems;
mod scale;
mod style;
mod trim_list;
mod work;

pub use convention::convention;
pub use overlay::overlay;
pub use overlay_source::over_source;
pub use problems::problems;

use crate::cores;
use crate::layout::Layout;
use crate::layout::backdrop::Backdrops;
use crate::layout::wall::LaidElevation;
use crate::model::sheet::Sheet;
use crate::wording::sheets as words;

/// Every sheet of a layout, in order: cover, elevations, story pole
/// with its table, order of work, details, cutting sheets, cut list,
/// trim list. `backdrops` are the source's own lines, drawn in gray behind the elevations.
pub fn sheets(layout: &Layout, backdrops: &Backdrops) -> Vec<Sheet> {
    let mut pages = cover::sheets(layout);
    let standing = elevation_index::ElevationIndex::of(layout);
    // Elevations do not depend on one another.
    let numbered: Vec<(usize, &LaidElevation)> = layout.elevations.iter().enumerate().collect();
    let each = cores::each(&numbered, |(i, e)| {
        elevation::sheets(layout, e, backdrops.behind(*i), standing.at(e))
    });
    pages.extend(each.into_iter().flatten());
    pages.push(pole::sheet(layout));
    pages.extend(pole_table::sheets(layout));
    pages.extend(work::sheets(layout));
    pages.extend(details::sheets(layout));
    pages.extend(cutting::sheets(layout));
    pages.extend(cut_list::sheets(layout));
    pages.extend(trim_list::sheets(layout));
    number_lists(&mut pages);
    let count = pages.len();
    pages.into_iter().enumerate().map(|(i, p)| page::finish(p, layout, i + 1, count)).collect()
}

/// Pages of one list get their number in it, so that bookmarks differ.
fn number_lists(pages: &mut [page::Page]) {
    for title in [
        words::STORY_POLE_TABLE,
        words::ORDER_OF_WORK,
        details::TITLE,
        words::CUTTING,
        words::SQUARE_CUTS,
        words::CUT_LIST,
        words::TRIM_LIST,
    ] {
        let mut of: Vec<&mut page::Page> = pages.iter_mut().filter(|p| p.title == title).collect();
        let n = of.len();
        if n > 1 {
            for (i, p) in of.iter_mut().enumerate() {
                p.title = format!("{title}, {} of {n}", i + 1);
            }
        }
    }
}
