//! SVG read back by `usvg` with the vendored typeface and no other, for PDF and PNG.

use std::sync::{Arc, LazyLock};

use crate::finding::files::WriterFault;
use crate::typeface;

/// A sheet read back, once for all pictures of it.
pub struct SheetTree(pub(super) usvg::Tree);

/// The tree of an SVG document.
///
/// # Errors
/// What `usvg` says.
pub fn tree(svg: &str) -> Result<SheetTree, WriterFault> {
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
    usvg::Tree::from_str(svg, &options).map(SheetTree).map_err(WriterFault::of)
}
