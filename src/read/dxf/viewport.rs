//! Windows of a sheet onto the model.

use super::groups::Groups;
use super::reader::Reader;
use super::tags::Tag;
use crate::geom::vocabulary::{Point, Rect};
use crate::model::drawing::Viewport;

impl<'a> Reader<'a, '_> {
    /// Keeps what a viewport shows of the model, and where it stands on its sheet.
    pub(super) fn viewport(&mut self, buffer: &[Tag<'a>]) {
        let g = Groups { tags: buffer, decoder: self.decoder };
        // Viewport 1 is the sheet itself.
        if g.int(69) == 1 {
            return;
        }
        let (Some(c), Some(w), Some(h)) = (g.point(10), g.float(40), g.float(41)) else { return };
        let (Some(view), Some(height)) = (g.point(12), g.float(45)) else { return };
        if h <= 0.0 || height <= 0.0 {
            return;
        }
        let target = g.point(17).unwrap_or(Point::ZERO).to_vec2();
        let (vw, center) = (height * w / h, view + target);
        // Some writers give the sheet's own viewport no number: it shows itself at full size.
        if center.distance(c) < 1e-9 * w && (h - height).abs() < 1e-9 * h {
            return;
        }
        self.out.viewports.push(Viewport {
            layout: String::new(),
            paper: Rect::from_center_size(c, (w, h)),
            model: Rect::from_center_size(center, (vw, height)),
            frozen: Vec::new(),
        });
    }
}
