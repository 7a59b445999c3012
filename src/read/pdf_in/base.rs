//! What an update at a PDF's end needs to know of the file.

use hayro_interpret::hayro_syntax::object::{Array, Dict, Stream};
use hayro_interpret::hayro_syntax::page::Page;
use hayro_interpret::hayro_syntax::{Pdf, PdfVersion};

use super::pages;
use crate::geom::vocabulary::{Affine, Vec2};
use crate::model::pdf_base::{PdfBase, PdfBasePage, PdfLayers, PdfObject};
use crate::read::limits::Limits;

/// Deepest nesting of pages under pages that is followed.
const DEEPEST: usize = 32;

/// What an update of these pages needs to know; none where the file cannot be read or an object that
/// must be written anew has no number. Pages stand `apart` by that share of their width.
pub(super) fn base(bytes: &[u8], limits: &Limits, apart: f64) -> Option<PdfBase> {
    let pdf = Pdf::new(bytes.to_vec()).ok()?;
    let root = pdf.xref().root_id();
    let catalog: Dict = pdf.xref().get(root)?;
    let taken = pages::read(&pdf, "", limits).ok()?.taken;
    let (mut out, mut x) = (Vec::new(), 0.0);
    for sheet in &taken {
        let page = pdf.pages().get(sheet.number - 1)?;
        out.push(base_page(page, (x, sheet.size.x))?);
        x += sheet.size.x * (1.0 + apart);
    }
    let layers = catalog.get::<Dict>("OCProperties").map(|p| layers(&p));
    let catalog = PdfObject {
        number: root.obj_number,
        generation: root.gen_number,
        dict: catalog.data().to_vec(),
    };
    let before_layers = pdf.version() < PdfVersion::Pdf15;
    Some(PdfBase { catalog, layers, pages: out, before_layers })
}

fn base_page(page: &Page, (from, width): (f64, f64)) -> Option<PdfBasePage> {
    let raw = page.raw();
    let id = raw.obj_id()?;
    let object =
        PdfObject { number: id.obj_number, generation: id.gen_number, dict: raw.data().to_vec() };
    let turned: [f64; 6] = page.initial_transform(false).as_coeffs();
    let to_page = Affine::new(turned).inverse() * Affine::translate(Vec2::new(-from, 0.0));
    let resources = inherited(raw, 0).map(|d| d.data().to_vec()).unwrap_or_default();
    let forms = page.resources().x_objects.data().to_vec();
    Some(PdfBasePage { object, resources, forms, content: content(raw), from, width, to_page })
}

/// What a page draws with.
fn inherited<'a>(node: &Dict<'a>, depth: usize) -> Option<Dict<'a>> {
    if let Some(own) = node.get::<Dict>("Resources") {
        return Some(own);
    }
    let parent = node.get::<Dict>("Parent").filter(|_| depth < DEEPEST)?;
    inherited(&parent, depth + 1)
}

/// References to the streams of a page's content.
fn content(page: &Dict) -> Vec<u8> {
    if let Some(array) = page.get::<Array>("Contents") {
        return within(array.data()).to_vec();
    }
    let one = page.get_ref("Contents").filter(|_| page.get::<Stream>("Contents").is_some());
    one.map(|r| format!("{} {} R", r.obj_number, r.gen_number).into_bytes()).unwrap_or_default()
}

fn layers(properties: &Dict) -> PdfLayers {
    let list = |of: &Dict, key: &str| {
        of.get::<Array>(key).map(|a| within(a.data()).to_vec()).unwrap_or_default()
    };
    let shown = properties.get::<Dict>("D").unwrap_or_else(Dict::empty);
    PdfLayers {
        groups: list(properties, "OCGs"),
        order: list(&shown, "Order"),
        on: list(&shown, "ON"),
        shown: shown.data().to_vec(),
    }
}

/// The bytes of an array without its brackets.
fn within(data: &[u8]) -> &[u8] {
    let data = data.trim_ascii();
    let data = data.strip_prefix(b"[").unwrap_or(data);
    data.strip_suffix(b"]").unwrap_or(data)
}
