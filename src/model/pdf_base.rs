//! What of a PDF an update at its end is written by: plain bytes of the objects that it changes.

use crate::geom::vocabulary::Affine;

/// An object of the file: number, generation, and its dictionary as it is written there.
#[derive(Clone, Debug, PartialEq)]
pub struct PdfObject {
    /// Number.
    pub number: u32,
    /// Generation.
    pub generation: i32,
    /// The dictionary with its brackets, as in the file.
    pub dict: Vec<u8>,
}

/// A page that is drawn on.
#[derive(Clone, Debug, PartialEq)]
pub struct PdfBasePage {
    /// The page's own object.
    pub object: PdfObject,
    /// What it draws with, its own or what it takes from the pages over it.
    pub resources: Vec<u8>,
    /// The forms and pictures among these.
    pub forms: Vec<u8>,
    /// References to the parts of its content, as they are written.
    pub content: Vec<u8>,
    /// Where it begins, from left to right, in the drawing that the pages make together, points.
    pub from: f64,
    /// Its width there, points.
    pub width: f64,
    /// From places in that drawing to places on the page as it is written.
    pub to_page: Affine,
}

/// Layers that a file has already.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PdfLayers {
    /// References to them, without brackets.
    pub groups: Vec<u8>,
    /// The dictionary of how they show at first.
    pub shown: Vec<u8>,
    /// References in the order they are listed in, without brackets.
    pub order: Vec<u8>,
    /// References to those that show at first, without brackets.
    pub on: Vec<u8>,
}

/// What an update of a file needs to know of it.
#[derive(Clone, Debug, PartialEq)]
pub struct PdfBase {
    /// The root of the file.
    pub catalog: PdfObject,
    /// Its layers, if it has any.
    pub layers: Option<PdfLayers>,
    /// Pages that are read, in their order.
    pub pages: Vec<PdfBasePage>,
    /// Whether the version it states is too old for layers.
    pub before_layers: bool,
}
