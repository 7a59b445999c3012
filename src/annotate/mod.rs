//! From a layout to what is drawn: sheets in paper inches, and the overlay in the source's own
//! coordinates.

mod canvas;
mod convention;
mod cover;
mod cut_list;
mod elevation;
mod overlay;
mod page;
mod place;
mod pole;
mod problems;
mod scale;
mod style;
mod trim_list;

pub use convention::convention;
pub use overlay::overlay;
pub use problems::problems;

use crate::model::layout::Layout;
use crate::model::sheet::Sheet;

/// Every sheet of a layout, in order: cover, elevations, story pole, cut list, trim list.
pub fn sheets(layout: &Layout) -> Vec<Sheet> {
    let mut pages = vec![cover::sheet(layout)];
    pages.extend((0..layout.elevations.len()).map(|i| elevation::sheet(layout, i)));
    pages.push(pole::sheet(layout));
    pages.extend(cut_list::sheets(layout));
    pages.extend(trim_list::sheets(layout));
    let count = pages.len();
    pages.into_iter().enumerate().map(|(i, p)| page::finish(p, layout, i + 1, count)).collect()
}
