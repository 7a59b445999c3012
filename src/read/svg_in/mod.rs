//! SVG elevations, from a vector PDF or a drawing program: `usvg` resolves styles, uses and
//! transforms; layers are named groups, by their labels in the source. It bounds nothing, so what it is
//! given is counted first (`markup`, `budget`) and written anew without what moves no line (`plain`).

mod boxes;
mod budget;
mod css;
mod escape;
mod excess;
mod faults;
mod kept;
mod lines;
mod markup;
mod names;
mod numbers;
mod pens;
mod plain;
mod shapes;
mod shown;
mod user;

use std::borrow::Cow;

use self::lines::Lines;
use self::plain::Plain;
use self::user::{to_user, view_box};
use crate::finding::drawing::{DrawingFinding, SvgExcess};
use crate::finding::{Findings, Refusal};
use crate::model::drawing::{Dialect, Drawing};
use crate::read::limits::Limits;
use crate::typeface;
use crate::units::Unit;

/// Most bytes of an SVG: several times what two hundred thousand paths take.
const MOST_BYTES: usize = 1 << 28;

/// Reads an SVG. Coordinates are the user units of its `viewBox`, y turned up. Where width and
/// height are stated in millimeters or inches and the `viewBox` counts the same, that is the unit;
/// a drawing at a scale needs a known distance.
///
/// # Errors
/// `svg-unreadable` with the parser's reason and place; `svg-too-big` and others for what asks for more than
/// any drawing does.
pub(in crate::read) fn drawing(
    bytes: &[u8],
    name: &str,
    limits: &Limits,
    findings: &mut Findings,
) -> Result<Drawing, Refusal> {
    let unreadable = |parser_says: String| {
        Refusal::new(DrawingFinding::SvgUnreadable { name: name.to_owned(), parser_says })
    };
    if bytes.len() > MOST_BYTES {
        let (name, bytes) = (name.to_owned(), bytes.len());
        return Err(Refusal::new(DrawingFinding::FileTooBig { name, bytes, most: MOST_BYTES }));
    }
    let (text, encoding) = decoded(bytes);
    let lines = Lines::of(&text);
    markup::within(&text, &lines)?;
    let options = usvg::roxmltree::ParsingOptions {
        allow_dtd: true,
        // Texts and comments stand between elements.
        nodes_limit: u32::try_from(4 * limits.elements).unwrap_or(u32::MAX),
        ..Default::default()
    };
    let xml =
        usvg::roxmltree::Document::parse_with_options(&text, options).map_err(|e| match e {
            usvg::roxmltree::Error::NodesLimitReached => {
                excess::refused(SvgExcess::Elements, limits.elements, None)
            }
            e => unreadable(e.to_string()),
        })?;
    let sheet = plain::sheet(&xml);
    budget::within(&xml, &sheet, &lines, limits)?;
    let Plain { text: plain, names, left } = plain::plain(&xml, &sheet, &lines, limits, findings)?;
    let tree = usvg::Tree::from_str(&plain, &settings()).map_err(|e| unreadable(e.to_string()))?;
    drop(plain);
    let mut out = Drawing {
        name: name.to_owned(),
        unit: unit(&xml),
        dialect: Dialect { format: "SVG".to_owned(), binary: false, encoding: encoding.to_owned() },
        ..Default::default()
    };
    shapes::all(&tree, (&names, &left), &to_user(&xml, &tree), limits, &mut out, findings);
    pens::as_layers(&mut out);
    Ok(out)
}

/// Text in the encoding that the XML declaration names, and the encoding's name; UTF-8 where it names none,
/// or one that is not known.
fn decoded(bytes: &[u8]) -> (Cow<'_, str>, &'static str) {
    let bytes = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes);
    if let Ok(text) = std::str::from_utf8(bytes) {
        return (Cow::Borrowed(text), encoding_rs::UTF_8.name());
    }
    let encoding = declared(bytes).unwrap_or(encoding_rs::UTF_8);
    (encoding.decode_without_bom_handling(bytes).0, encoding.name())
}

fn declared(bytes: &[u8]) -> Option<&'static encoding_rs::Encoding> {
    let head = String::from_utf8_lossy(&bytes[..bytes.len().min(200)]);
    let (declaration, _) = head.trim_start().strip_prefix("<?xml")?.split_once("?>")?;
    let (_, value) = declaration.split_once("encoding")?;
    let label = value.trim_start_matches([' ', '=', '"', '\'']).split(['"', '\'']).next()?;
    encoding_rs::Encoding::for_label(label.as_bytes())
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
