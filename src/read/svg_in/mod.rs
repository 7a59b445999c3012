//! SVG elevations, from a vector PDF or a drawing program: `usvg` resolves styles, uses and
//! transforms; layers are named groups, by their labels in the source.

mod names;
mod shapes;
mod user;

use self::names::Names;
use self::user::{to_user, view_box};
use crate::finding::drawing::DrawingFinding;
use crate::finding::{Findings, Refusal};
use crate::model::drawing::{Dialect, Drawing};
use crate::read::limits::Limits;
use crate::typeface;
use crate::units::Unit;

/// Reads an SVG. Coordinates are the user units of its `viewBox`, y turned up. Where width and
/// height are stated in millimeters or inches and the `viewBox` counts the same, that is the unit;
/// a drawing at a scale needs a known distance.
///
/// # Errors
/// `svg-unreadable` with the parser's reason and place; `svg-too-big` for uses that multiply.
pub(in crate::read) fn drawing(
    bytes: &[u8],
    name: &str,
    limits: &Limits,
    findings: &mut Findings,
) -> Result<Drawing, Refusal> {
    let unreadable = |parser_says: String| {
        Refusal::new(DrawingFinding::SvgUnreadable { name: name.to_owned(), parser_says })
    };
    let text = decoded(bytes);
    let options = usvg::roxmltree::ParsingOptions {
        allow_dtd: true,
        // Texts and comments stand between elements.
        nodes_limit: u32::try_from(4 * limits.elements).unwrap_or(u32::MAX),
        ..Default::default()
    };
    let xml =
        usvg::roxmltree::Document::parse_with_options(&text, options).map_err(|e| match e {
            usvg::roxmltree::Error::NodesLimitReached => names::too_big(limits),
            e => unreadable(e.to_string()),
        })?;
    names::within_limits(&xml, limits)?;
    let names = Names::of(&xml);
    let marked = names::marked(&xml, &text);
    let tree = usvg::Tree::from_str(&marked, &settings()).map_err(|e| unreadable(e.to_string()))?;
    let mut out = Drawing {
        name: name.to_owned(),
        unit: unit(&xml),
        dialect: Dialect { format: "SVG".to_owned(), binary: false, encoding: "UTF-8".to_owned() },
        ..Default::default()
    };
    shapes::all(&tree, &names, &to_user(&xml, &tree), limits, &mut out, findings);
    Ok(out)
}

fn decoded(bytes: &[u8]) -> String {
    String::from_utf8_lossy(bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes)).into_owned()
}

/// The vendored typeface stands in for every font: without one, texts would be dropped. Pictures
/// and linked files are never opened.
fn settings() -> usvg::Options<'static> {
    let mut fonts = usvg::fontdb::Database::new();
    fonts.load_font_data(typeface::REGULAR.to_vec());
    usvg::Options {
        font_family: typeface::FAMILY.to_owned(),
        fontdb: std::sync::Arc::new(fonts),
        image_href_resolver: usvg::ImageHrefResolver {
            resolve_data: Box::new(|_, _, _| None),
            resolve_string: Box::new(|_, _| None),
        },
        font_resolver: usvg::FontResolver {
            select_font: Box::new(|_, db| db.faces().next().map(|f| f.id)),
            select_fallback: Box::new(|_, _, _| None),
        },
        ..Default::default()
    }
}

/// The unit of the user's coordinates, where width and `viewBox` say the same number.
fn unit(xml: &usvg::roxmltree::Document) -> Option<Unit> {
    let width = xml.root_element().attribute("width")?.trim();
    let split = width.find(|c: char| c.is_ascii_alphabetic())?;
    let (number, word) = width.split_at(split);
    let number: f64 = number.trim().parse().ok()?;
    let unit = match word {
        "mm" => Unit::Mm,
        "cm" => Unit::Cm,
        "in" => Unit::Inch,
        _ => return None,
    };
    let [_, _, w, _] = view_box(xml)?;
    ((number - w).abs() <= 1e-6 * w.abs()).then_some(unit)
}
