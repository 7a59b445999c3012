//! The overlay on the pages of a PDF: the source byte for byte, then an update at its end that draws
//! the layout on each page to its scale, on layers of its own (ISO 32000-1, 7.5.6 and 8.11).
//!
//! No library of PDF objects is used: those at hand write whole files anew, and an update is a few
//! dictionaries, written as text.

mod content;
mod scan;

use std::collections::{BTreeMap, BTreeSet};

use self::content::Placed;
use crate::finding::files::OverlayReason;
use crate::geom::vocabulary::Point;
use crate::model::drawing::{Drawing, Item, Shape};
use crate::model::pdf_base::{PdfBase, PdfBasePage, PdfLayers, PdfObject};
use crate::units::LengthStyle;
use crate::write::overlay::Measure;

/// Points on a page for an inch of a plot at 1/4 in to the foot.
const PLOT: f64 = 48.0 / 72.0;
/// Heights of the texts of dimensions, plotted inches.
const TEXT: f64 = 3.0 / 32.0;
/// The typeface of words: one of those that every reader has.
const FONT: &str =
    "<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica /Encoding /WinAnsiEncoding >>";

/// The end of a source, where an update goes on from.
struct End {
    /// Place of the last table of objects.
    table: usize,
    /// Whether that is written as a stream.
    is_stream: bool,
    /// Its dictionary.
    trailer: Vec<u8>,
    /// Count of objects.
    size: u32,
}

/// Objects that are new or written anew.
struct Update {
    next: u32,
    /// By number, with the generation.
    objects: BTreeMap<u32, (i32, Vec<u8>)>,
}

impl Update {
    fn add(&mut self, bytes: Vec<u8>) -> u32 {
        let number = self.next;
        self.next += 1;
        self.objects.insert(number, (0, bytes));
        number
    }

    fn stream(&mut self, content: &[u8]) -> u32 {
        let mut bytes = format!("<< /Length {} >>\nstream\n", content.len()).into_bytes();
        bytes.extend([content, b"\nendstream"].concat());
        self.add(bytes)
    }

    fn renew(&mut self, object: &PdfObject, dict: Vec<u8>) {
        self.objects.insert(object.number, (object.generation, dict));
    }
}

/// The source with the overlay drawn on its pages.
///
/// # Errors
/// Why, when the file is locked or its end is not as the format has it: then its parts were found by
/// searching, and nothing can go on from there.
pub fn updated(
    source: &[u8],
    base: &PdfBase,
    overlay: &Drawing,
    measure: Measure,
) -> Result<Vec<u8>, OverlayReason> {
    with_update(source, base, overlay, measure).ok_or(OverlayReason::PdfEnd)
}

fn with_update(
    source: &[u8],
    base: &PdfBase,
    overlay: &Drawing,
    measure: Measure,
) -> Option<Vec<u8>> {
    let end = end(source)?;
    let mut update = Update { next: end.size, objects: BTreeMap::new() };
    let shown: BTreeSet<usize> = overlay.items.iter().map(|i| i.layer).collect();
    let group = |update: &mut Update, layer: usize| {
        let name = &overlay.layers[layer].name;
        let name: String =
            name.chars().filter(|c| c.is_ascii_alphanumeric() || *c == '-').collect();
        (layer, update.add(format!("<< /Type /OCG /Name ({name}) >>").into_bytes()))
    };
    let groups: BTreeMap<usize, u32> =
        shown.into_iter().map(|layer| group(&mut update, layer)).collect();
    let font = update.add(FONT.as_bytes().to_vec());
    let before = update.stream(b"q");
    for (i, page) in base.pages.iter().enumerate() {
        let items: Vec<&Item> =
            overlay.items.iter().filter(|item| page_of(&base.pages, item) == i).collect();
        if items.is_empty() {
            continue;
        }
        draw(&mut update, page, (overlay, &items, measure), (&groups, font, before))?;
    }
    let refs: Vec<u32> = groups.values().copied().collect();
    update.renew(&base.catalog, catalog(base, &refs)?);
    Some(written(source, &end, update))
}

/// Whether a source's end takes an update.
pub fn takes(source: &[u8]) -> bool {
    end(source).is_some()
}

/// The page that something is drawn on: the nearest one.
fn page_of(pages: &[PdfBasePage], item: &Item) -> usize {
    let x = match &item.shape {
        Shape::Polyline(line) => line.vertices.first().map_or(0.0, |v| v.at.x),
        Shape::Text(text) => text.at.x,
        Shape::Dimension(d) => d.line.x,
        Shape::Point(p) => p.x,
        Shape::Curve(_) | Shape::Hatch(_) => 0.0,
    };
    let away = |p: &PdfBasePage| (p.from - x).max(x - p.from - p.width).max(0.0);
    let nearest = pages.iter().enumerate().min_by(|a, b| away(a.1).total_cmp(&away(b.1)));
    nearest.map_or(0, |(i, _)| i)
}

/// Draws on a page: a form with the layers and the font among its own resources, after all of the page.
fn draw(
    update: &mut Update,
    page: &PdfBasePage,
    (overlay, items, measure): (&Drawing, &[&Item], Measure),
    (groups, font, before): (&BTreeMap<usize, u32>, u32, u32),
) -> Option<()> {
    let feet = measure.style == LengthStyle::Feet;
    let reads = |units: f64| {
        let inches = units * measure.inches;
        if feet { measure.style.length(inches) } else { format!("{:.0}", inches * 25.4) }
    };
    let text = TEXT * 48.0 / measure.inches;
    let thin = PLOT / measure.inches;
    let placed = Placed { map: page.to_page, thin, text, reads: &reads };
    let drawn = content::content(overlay, items, &placed, |layer| format!("LwL{layer}"));
    let names: String = groups.iter().map(|(l, r)| format!("/LwL{l} {r} 0 R ")).collect();
    let mut form = format!(
        "<< /Type /XObject /Subtype /Form /BBox {} /Resources << /Font << /LwF {font} 0 R >> \
         /Properties << {names}>> >> /Length {} >>\nstream\n",
        room(page),
        drawn.len()
    )
    .into_bytes();
    form.extend([&drawn[..], b"\nendstream"].concat());
    let form = update.add(form);
    let after = update.stream(b"Q q /LwOverlay Do Q");
    let forms = scan::with(&page.forms, &[("LwOverlay", format!("{form} 0 R").into_bytes())])?;
    let resources = scan::with(&page.resources, &[("XObject", forms)])?;
    let parts =
        [format!("[{before} 0 R ").as_bytes(), &page.content, format!(" {after} 0 R]").as_bytes()]
            .concat();
    let dict = scan::with(&page.object.dict, &[("Contents", parts), ("Resources", resources)])?;
    update.renew(&page.object, dict);
    Some(())
}

/// Room for all that may be drawn on a page and round it.
fn room(page: &PdfBasePage) -> String {
    let a = page.to_page * Point::new(page.from - page.width, -page.width);
    let b = page.to_page * Point::new(page.from + 2.0 * page.width, 2.0 * page.width);
    let (x0, y0) = (a.x.min(b.x), a.y.min(b.y));
    format!("[{x0:.1} {y0:.1} {:.1} {:.1}]", a.x.max(b.x), a.y.max(b.y))
}

/// The root of the file with the new layers beside those it has.
fn catalog(base: &PdfBase, groups: &[u32]) -> Option<Vec<u8>> {
    let new: String = groups.iter().map(|r| format!(" {r} 0 R")).collect();
    let none = PdfLayers::default();
    let known = base.layers.as_ref().unwrap_or(&none);
    let list = |old: &[u8]| [b"[", old, new.as_bytes(), b"]"].concat();
    let mut shown = vec![("Order", list(&known.order))];
    // Where layers are off unless they are listed, the new ones are.
    if !known.on.is_empty() || scan::value(&known.shown, "BaseState") == Some(b"/OFF") {
        shown.push(("ON", list(&known.on)));
    }
    let shown = scan::with(&known.shown, &shown)?;
    let layers = [b"<< /OCGs ", &list(&known.groups)[..], b" /D ", &shown[..], b" >>"].concat();
    let mut changed = vec![("OCProperties", layers)];
    if base.before_layers {
        changed.push(("Version", b"/1.5".to_vec()));
    }
    scan::with(&base.catalog.dict, &changed)
}

/// The end of a source that is whole and not locked.
fn end(source: &[u8]) -> Option<End> {
    const MARK: &[u8] = b"startxref";
    if !source.starts_with(b"%PDF-") {
        return None;
    }
    let mark = source.windows(MARK.len()).rposition(|w| w == MARK)?;
    let at = scan::next(source, mark + MARK.len());
    let digits: Vec<u8> =
        source[at..].iter().take_while(|b| b.is_ascii_digit()).take(12).copied().collect();
    let table: usize = std::str::from_utf8(&digits).ok()?.parse().ok()?;
    let is_stream = !source.get(table..)?.starts_with(b"xref");
    let from = if is_stream {
        // `12 0 obj` before its dictionary.
        let number = scan::object_end(source, table)?;
        let generation = scan::object_end(source, scan::next(source, number))?;
        let word = scan::next(source, generation);
        source.get(word..)?.starts_with(b"obj").then(|| scan::next(source, word + 3))?
    } else {
        const WORD: &[u8] = b"trailer";
        let word = source[table..].windows(WORD.len()).position(|w| w == WORD)?;
        scan::next(source, table + word + WORD.len())
    };
    if !source.get(from..)?.starts_with(b"<<") {
        return None;
    }
    let trailer = source.get(from..scan::object_end(source, from)?)?.to_vec();
    let size = scan::value(&trailer, "Size")?;
    let size: u32 = std::str::from_utf8(size).ok()?.parse().ok()?;
    let free = scan::value(&trailer, "Encrypt").is_none() && size < 8_000_000;
    free.then_some(End { table, is_stream, trailer, size })
}

/// The source, its new objects and their table, in the form that the last one has.
fn written(source: &[u8], end: &End, update: Update) -> Vec<u8> {
    let mut out = source.to_vec();
    if !out.ends_with(b"\n") && !out.ends_with(b"\r") {
        out.push(b'\n');
    }
    let mut places: Vec<(u32, i32, usize)> = Vec::new();
    for (number, (generation, bytes)) in &update.objects {
        places.push((*number, *generation, out.len()));
        out.extend(format!("{number} {generation} obj\n").into_bytes());
        out.extend([bytes, &b"\nendobj\n"[..]].concat());
    }
    let table = out.len();
    let keep = ["Root", "Info", "ID"].into_iter();
    let kept: Vec<(&str, Vec<u8>)> =
        keep.filter_map(|k| Some((k, scan::value(&end.trailer, k)?.to_vec()))).collect();
    let mut said: String = format!("/Prev {}", end.table);
    for (key, value) in kept {
        said += &format!(" /{key} {}", latin(&value));
    }
    if end.is_stream {
        places.push((update.next, 0, table));
        let size = update.next + 1;
        let (rows, index) = (rows(&places), sections(&places));
        let index: String = index.iter().map(|s| format!("{} {} ", s[0].0, s.len())).collect();
        let head = format!(
            "{} 0 obj\n<< /Type /XRef /Size {size} /W [1 8 2] /Index [{index}] /Length {} {said} >>\nstream\n",
            update.next,
            rows.len()
        );
        out.extend([&unlatin(&head)[..], &rows, b"\nendstream\nendobj\n"].concat());
    } else {
        // The first object, which is none, is said again: some readers look for it.
        out.extend(b"xref\n0 1\n0000000000 65535 f \n");
        for section in sections(&places) {
            out.extend(format!("{} {}\n", section[0].0, section.len()).into_bytes());
            for (_, generation, at) in section {
                out.extend(format!("{at:010} {generation:05} n \n").into_bytes());
            }
        }
        out.extend(unlatin(&format!("trailer\n<< /Size {} {said} >>\n", update.next)));
    }
    out.extend(format!("startxref\n{table}\n%%EOF\n").into_bytes());
    out
}

/// Bytes as letters of the same numbers, and back: an `ID` may hold any.
fn latin(bytes: &[u8]) -> String {
    bytes.iter().map(|b| char::from(*b)).collect()
}

fn unlatin(text: &str) -> Vec<u8> {
    text.chars().map(|c| u8::try_from(u32::from(c)).unwrap_or(b'?')).collect()
}

/// Objects with numbers that follow one another.
fn sections(places: &[(u32, i32, usize)]) -> Vec<&[(u32, i32, usize)]> {
    places.chunk_by(|a, b| a.0 + 1 == b.0).collect()
}

/// The table of objects as a stream has it: kind, place in eight bytes, generation in two.
fn rows(places: &[(u32, i32, usize)]) -> Vec<u8> {
    let row = |(_, generation, at): &(u32, i32, usize)| {
        let generation = u16::try_from(*generation).unwrap_or_default();
        [&[1][..], &(*at as u64).to_be_bytes(), &generation.to_be_bytes()].concat()
    };
    places.iter().flat_map(row).collect()
}
