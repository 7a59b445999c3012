//! The source's own lines behind a layout: drawn in gray on its sheets, and no part of it. A layout that
//! is read back from its file has none.

use std::sync::Arc;

use crate::geom::vocabulary::Rect;
use crate::model::house::{Backdrop, DrawnElevation, House};
use crate::model::pdf_base::PdfBase;

/// Lines of the source, elevation by elevation as in the layout.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Backdrops {
    behind: Vec<Behind>,
    /// What an update of the source needs to know of it, where it is a print.
    print: Option<Arc<PdfBase>>,
}

/// What stands behind one elevation, elevation inches.
#[derive(Clone, Debug, Default, PartialEq)]
struct Behind {
    lines: Vec<Backdrop>,
    texts: Vec<Rect>,
}

impl Backdrops {
    /// What each elevation of a house was drawn with.
    pub fn of_house(house: &House) -> Self {
        let of = |e: &DrawnElevation| Behind { lines: e.backdrop.clone(), texts: e.texts.clone() };
        Backdrops { behind: house.elevations.iter().map(of).collect(), print: None }
    }

    /// With what an update of the source needs to know of it.
    pub fn on_print(self, print: Option<Arc<PdfBase>>) -> Self {
        Backdrops { print, ..self }
    }

    /// What an update of the source needs to know of it, where it is a print.
    pub fn print(&self) -> Option<&PdfBase> {
        self.print.as_deref()
    }

    /// Behind the elevation of this number.
    pub fn behind(&self, elevation: usize) -> &[Backdrop] {
        self.behind.get(elevation).map_or(&[], |b| b.lines.as_slice())
    }

    /// Where the source's texts stand in it.
    pub fn texts_behind(&self, elevation: usize) -> &[Rect] {
        self.behind.get(elevation).map_or(&[], |b| b.texts.as_slice())
    }
}
