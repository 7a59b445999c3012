//! One page drawn.

use hayro_interpret::hayro_syntax::Pdf;
use hayro_interpret::{Context, InterpreterCache, InterpreterSettings, interpret_page};

use super::cost;
use super::sheet::Sheet;
use crate::geom::vocabulary::{Affine, Rect, Vec2};
use crate::read::limits::Limits;

/// What stands on one page, its lower left corner at the origin, y up, as the page is turned for reading.
pub(super) fn page(pdf: &Pdf, number: usize, limits: &Limits) -> Option<Sheet> {
    let page = pdf.pages().get(number)?;
    let (width, height) = page.render_dimensions();
    let size = Vec2::new(f64::from(width), f64::from(height));
    let mut sheet = Sheet::new(number + 1, size, limits);
    if !cost::bearable(page, limits) {
        sheet.too_much = true;
        return Some(sheet);
    }
    let turned: [f64; 6] = page.initial_transform(false).as_coeffs();
    let room = Rect::new(0.0, 0.0, size.x, size.y);
    let cache = InterpreterCache::new();
    let settings = InterpreterSettings::default();
    let mut context = Context::new(Affine::new(turned), room, &cache, pdf.xref(), settings);
    interpret_page(page, &mut context, &mut sheet);
    sheet.close();
    Some(sheet)
}
