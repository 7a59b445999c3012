//! A sheet as PNG, drawn by `resvg` and packed by `png`.
//!
//! A sheet is opaque: three bytes a dot. Packed for speed.

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
    // Dots of a drawing repeat as they are: a filter makes the file no smaller. Deflate at level 2 takes a third of
    // the time of level 6 for a tenth more bytes.
    encoder.set_filter(png::Filter::NoFilter);
    encoder.set_deflate_compression(png::DeflateCompression::Level(2));
    let per_meter = (dots_per_inch * 1000.0 / MM_PER_INCH).round() as u32;
    let unit = png::Unit::Meter;
    encoder.set_pixel_dims(Some(png::PixelDimensions { xppu: per_meter, yppu: per_meter, unit }));
    let mut writer = encoder.write_header()?;
    let mut dots = vec![0; pixels.data().len() / 4 * 3];
    for (rgb, rgba) in dots.chunks_exact_mut(3).zip(pixels.data().chunks_exact(4)) {
        rgb.copy_from_slice(&rgba[..3]);
    }
    writer.write_image_data(&dots)?;
    writer.finish()?;
    Ok(file)
}
