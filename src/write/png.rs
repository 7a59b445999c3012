//! A sheet as PNG, by `resvg`.

use super::svg_tree::{SheetTree, tree};
use crate::finding::files::WriterFault;

/// A sheet's SVG as PNG.
///
/// # Errors
/// When the picture would be larger than memory or the SVG cannot be read.
pub fn picture(svg: &str, dots_per_inch: f64) -> Result<Vec<u8>, WriterFault> {
    of_tree(&tree(svg)?, dots_per_inch)
}

/// The same of a sheet that is read already.
///
/// # Errors
/// When the picture would be larger than memory.
pub fn of_tree(SheetTree(tree): &SheetTree, dots_per_inch: f64) -> Result<Vec<u8>, WriterFault> {
    // usvg counts 96 pixels to the inch.
    let k = (dots_per_inch / 96.0) as f32;
    let (w, h) =
        ((tree.size().width() * k).ceil() as u32, (tree.size().height() * k).ceil() as u32);
    let mut pixels = resvg::tiny_skia::Pixmap::new(w, h).ok_or(WriterFault::PictureWithoutSize)?;
    pixels.fill(resvg::tiny_skia::Color::WHITE);
    resvg::render(tree, resvg::tiny_skia::Transform::from_scale(k, k), &mut pixels.as_mut());
    pixels.encode_png().map_err(WriterFault::of)
}
