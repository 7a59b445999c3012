//! A sheet as PNG, drawn by `resvg` and packed by `png`.
//!
//! A sheet is opaque: three bytes a dot. Packed fast, and nearly as small, since most of a sheet is white.

use super::svg_tree::{SheetTree, tree};
use crate::finding::files::WriterFault;
use crate::units::MM_PER_INCH;
use resvg::tiny_skia::{Color, Pixmap, Transform};

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
    let mut pixels = Pixmap::new(w, h).ok_or(WriterFault::PictureWithoutSize)?;
    pixels.fill(Color::WHITE);
    resvg::render(tree, Transform::from_scale(k, k), &mut pixels.as_mut());
    packed(&pixels, dots_per_inch).map_err(WriterFault::of)
}

/// The dots as a PNG file, which says how large they are on paper.
fn packed(pixels: &Pixmap, dots_per_inch: f64) -> Result<Vec<u8>, png::EncodingError> {
    let mut file = Vec::new();
    let mut encoder = png::Encoder::new(&mut file, pixels.width(), pixels.height());
    encoder.set_color(png::ColorType::Rgb);
    encoder.set_depth(png::BitDepth::Eight);
    encoder.set_compression(png::Compression::Fast);
    let per_meter = (dots_per_inch * 1000.0 / MM_PER_INCH).round() as u32;
    let unit = png::Unit::Meter;
    encoder.set_pixel_dims(Some(png::PixelDimensions { xppu: per_meter, yppu: per_meter, unit }));
    let mut writer = encoder.write_header()?;
    let dots: Vec<u8> =
        pixels.data().chunks_exact(4).flat_map(|dot| [dot[0], dot[1], dot[2]]).collect();
    writer.write_image_data(&dots)?;
    writer.finish()?;
    Ok(file)
}
