//! SVG read back by `usvg` with the vendored typeface and no other, for PDF and PNG.

use std::sync::{Arc, LazyLock};

use crate::typeface;

/// The tree of an SVG document.
///
/// # Errors
/// What `usvg` says, in words.
pub(super) fn tree(svg: &str) -> Result<usvg::Tree, String> {
    // Read once: every sheet has the same letters.
    static FONTS: LazyLock<Arc<usvg::fontdb::Database>> = LazyLock::new(|| {
        let mut fonts = usvg::fontdb::Database::new();
        fonts.load_font_data(typeface::REGULAR.to_vec());
        fonts.load_font_data(typeface::BOLD.to_vec());
        Arc::new(fonts)
    });
    let options = usvg::Options {
        font_family: typeface::FAMILY.to_owned(),
        fontdb: Arc::clone(&FONTS),
        ..Default::default()
    };
    usvg::Tree::from_str(svg, &options).map_err(|e| e.to_string())
}

/// A sheet's SVG as PNG.
///
/// # Errors
/// In words, when the picture would be larger than memory or the SVG cannot be read.
pub fn png(svg: &str, dots_per_inch: f64) -> Result<Vec<u8>, String> {
    let tree = tree(svg)?;
    // usvg counts 96 pixels to the inch.
    let k = (dots_per_inch / 96.0) as f32;
    let (w, h) =
        ((tree.size().width() * k).ceil() as u32, (tree.size().height() * k).ceil() as u32);
    let mut pixels = resvg::tiny_skia::Pixmap::new(w, h).ok_or("the picture has no size")?;
    pixels.fill(resvg::tiny_skia::Color::WHITE);
    resvg::render(&tree, resvg::tiny_skia::Transform::from_scale(k, k), &mut pixels.as_mut());
    pixels.encode_png().map_err(|e| e.to_string())
}
