//! Windows of a sheet onto the model.

use std::collections::BTreeSet;

use super::groups::Groups;
use super::reader::Reader;
use super::tags::Tag;
use crate::geom::vocabulary::{Point, Rect};
use crate::model::drawing::Viewport;

impl<'a> Reader<'a, '_> {
    /// Keeps what a viewport shows of the model, and where it stands on its sheet.
    pub(super) fn viewport(&mut self, buffer: &[Tag<'a>]) {
        let g = Groups { tags: buffer, decoder: self.decoder };
        let (Some(c), Some(w), Some(h)) = (g.point(10), g.float(40), g.float(41)) else { return };
        let (Some(view), Some(height)) = (g.point(12), g.float(45)) else { return };
        if h <= 0.0 || height <= 0.0 {
            return;
        }
        let target = g.point(17).unwrap_or(Point::ZERO).to_vec2();
        let (vw, center) = (height * w / h, view + target);
        self.out.viewports.push(Viewport {
            layout: String::new(),
            number: g.int(69),
            paper: Rect::from_center_size(c, (w, h)),
            model: Rect::from_center_size(center, (vw, height)),
            frozen: Vec::new(),
        });
    }
}

/// Takes out the viewports that are the sheets themselves: those that show their own place at full size,
/// and where a sheet has none of these, its number 1. Some converters number windows anew.
pub(super) fn without_sheets(viewports: &mut Vec<Viewport>) {
    let own = |v: &Viewport| {
        let (paper, model) = (v.paper, v.model);
        paper.center().distance(model.center()) < 1e-9 * paper.width()
            && (paper.height() - model.height()).abs() < 1e-9 * paper.height()
    };
    let known: BTreeSet<String> =
        viewports.iter().filter(|v| own(v)).map(|v| v.layout.clone()).collect();
    viewports.retain(|v| !own(v) && (v.number != 1 || known.contains(&v.layout)));
}
