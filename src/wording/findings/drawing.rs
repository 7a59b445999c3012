//! Of the drawing's file.

use super::blocks;
use super::finding_words::FindingWords;
use super::formats;
use super::parts::{number, on_layer};
use crate::finding::Finding;
use crate::finding::drawing::{
    BlockArray, DrawingFinding, LooksLike, Named, NumberPlace, SvgExcess,
};
use crate::origin::EntityKind;
use crate::units::counted;

const OWN_FILE: &str = "Save only the elevations to a file of their own.";

pub(super) fn words(found: &DrawingFinding, finding: &Finding) -> FindingWords {
    use DrawingFinding as F;
    match found {
        F::FileTooBig { name, bytes, most } => FindingWords::new(
            format!("{name} has {bytes} bytes; the most that is read is {most}"),
            OWN_FILE,
        ),
        F::NotDxf { name, looks_like } => not_dxf(name, *looks_like),
        F::DwgUnreadable { name, fault } => formats::dwg_unreadable(name, fault),
        F::DwgTextsLost { texts } => formats::dwg_texts_lost(*texts),
        F::PdfUnreadable { name, fault } => formats::unreadable(name, *fault),
        F::PdfPages { name, pages, why, seen } => formats::no_pages(name, *pages, why, seen),
        F::PdfPagesRead { taken, pages, others } => formats::pages_read(taken, *pages, others),
        F::PdfLettersMute { letters } => formats::mute(*letters),
        F::FileTruncated { name, end_found, entities_found } => {
            truncated(name, *end_found, *entities_found)
        }
        F::LineBad { lines, first_line } => line_bad(*lines, *first_line),
        F::LayersTooMany { name, most } => layers_too_many(name, *most),
        F::ItemsTooMany { most, from_line, array } => {
            items_too_many(*most, *from_line, array.as_ref())
        }
        F::PointsTooMany { most, from_line } => points_too_many(*most, *from_line),
        F::VerticesTooMany { most, line } => vertices_too_many(*most, *line),
        F::HatchLoops { loops, most } => hatch_loops(*loops, *most),
        F::LayersAllOff { layers } => all_off(*layers),
        F::NumbersAbsurd { shapes, farthest } => numbers_absurd(*shapes, *farthest),
        F::BlockNesting { block, fault, insertions } => blocks::nesting(block, *fault, *insertions),
        F::BlockMissing { block } => FindingWords::new(
            format!("block `{block}` is inserted but not defined"),
            "Bind or purge the reference and save the drawing again.",
        ),
        F::BlockExternal { block, file, insertions } => blocks::external(block, file, *insertions),
        F::EntityBroken { entity, count, first_line } => broken(*entity, *count, *first_line),
        F::EntitySkipped { entity, count, first_line } => skipped(entity, *count, *first_line),
        F::SvgUnreadable { name, parser_says } => FindingWords::new(
            format!("{name} cannot be read as SVG: {parser_says}"),
            "Save it again as plain SVG, with text kept as text.",
        ),
        F::SvgTooBig { of, most, line } => svg_too_big(*of, *most, *line),
        F::NumberUnreadable { part, place, value, line, entities, .. } => {
            unreadable(&on_layer(finding), *part, place, value, (*line, *entities))
        }
        F::NameTooLong { of, begins, letters, most, line } => {
            name_too_long(*of, begins, [*letters, *most, *line])
        }
        F::TextTooLong { texts, most, line } => text_too_long(*texts, *most, *line),
    }
}

fn not_dxf(name: &str, looks_like: LooksLike) -> FindingWords {
    let what = match looks_like {
        LooksLike::EmptyFile => "an empty file",
        LooksLike::Dwg => "a DWG drawing",
        LooksLike::Pdf => "a PDF",
        LooksLike::Zip => "a zip archive",
        LooksLike::Gzip => "a file compressed with gzip, as SVGZ is",
        LooksLike::Compressed => "a compressed file",
        LooksLike::Tar => "an archive of files (tar)",
        LooksLike::Utf32 => "text in UTF-32",
        LooksLike::Png => "a PNG picture",
        LooksLike::Jpeg => "a JPEG picture",
        LooksLike::Tiff => "a TIFF picture",
        LooksLike::Json => "JSON",
        LooksLike::OtherXml => "XML of another sort",
        LooksLike::OtherData => "text or data of another sort",
    };
    let remedy = match looks_like {
        LooksLike::Zip | LooksLike::Gzip | LooksLike::Compressed | LooksLike::Tar => {
            "Unpack it, and give the drawing that is in it."
        }
        LooksLike::Utf32 => "Save it as UTF-8 and give that file.",
        _ => "Save or export the elevations as DXF, DWG, PDF or SVG and give that file.",
    };
    FindingWords::new(
        format!("{name} is no DXF, DWG, PDF or SVG drawing: it looks like {what}"),
        remedy,
    )
}

fn truncated(name: &str, end_found: bool, entities_found: bool) -> FindingWords {
    if entities_found {
        return FindingWords::new(
            format!("{name} is truncated: its end mark (EOF) is missing"),
            "What was read is used; save the drawing again to be sure that nothing is missing.",
        );
    }
    let what = if end_found {
        "has no section of entities"
    } else {
        "is truncated before its section of entities"
    };
    FindingWords::new(
        format!("{name} {what}; nothing can be read from it"),
        "Open it in the program that made it and save it again as DXF.",
    )
}

/// Where the first of several stands; nothing where the file has no lines, as a DWG.
fn first_at(line: usize) -> String {
    if line == 0 { String::new() } else { format!(", the first at line {line}") }
}

/// Before what is said of a line; nothing where the file has none.
fn of_line(line: usize) -> String {
    if line == 0 { String::new() } else { format!("line {line}: ") }
}

fn line_bad(lines: usize, first_line: usize) -> FindingWords {
    FindingWords::new(
        format!(
            "{} without the group code due there, passed over; the first is line {first_line}",
            counted(lines, "line")
        ),
        "Save the drawing again, and look for what is missing.",
    )
}

fn layers_too_many(name: &str, most: usize) -> FindingWords {
    FindingWords::new(
        format!("{name} has more than {most} layers, the most that is read"),
        "Purge unused layers, or save only the elevations to a file of their own.",
    )
}

/// What is left out past a limit.
fn rest(from_line: Option<usize>) -> String {
    match from_line {
        Some(line) if line > 0 => format!("what comes from line {line} on is left out"),
        _ => "the rest is left out".to_owned(),
    }
}

fn items_too_many(
    most: usize,
    from_line: Option<usize>,
    array: Option<&BlockArray>,
) -> FindingWords {
    let most = counted(most, "item");
    match array {
        Some(BlockArray { block, columns, rows }) => FindingWords::new(
            format!(
                "block `{block}` is arrayed {columns} x {rows} times: more than the {most} that are read; the rest is left out"
            ),
            "Reduce the array.",
        ),
        None => FindingWords::new(
            format!("more than {most} in all; {}", rest(from_line)),
            "Look for an array or nested block that repeats itself, or save only the elevations to a file of their own.",
        ),
    }
}

fn points_too_many(most: usize, from_line: Option<usize>) -> FindingWords {
    FindingWords::new(
        format!("more than {} in all; {}", counted(most, "point"), rest(from_line)),
        "Look for a block of many points that is inserted many times, or save only the elevations to a file of their own.",
    )
}

fn vertices_too_many(most: usize, line: usize) -> FindingWords {
    let near = if line == 0 { String::new() } else { format!(" near line {line}") };
    FindingWords::new(
        format!("an entity{near} has more than {most} vertices; the rest of it is left out"),
        "Simplify it, or save only the elevations to a file of their own.",
    )
}

fn hatch_loops(loops: usize, most: usize) -> FindingWords {
    FindingWords::new(
        format!(
            "a hatch says it has {loops} loops; the most that is read is {most}; it is left out"
        ),
        "Cut the hatch in parts, or draw the wall's outline instead.",
    )
}

fn all_off(layers: usize) -> FindingWords {
    let all = match layers {
        1 => "the only layer with something drawn on it is off or frozen: it is read".to_owned(),
        n => format!("all {n} layers with something drawn on them are off or frozen: reading them"),
    };
    FindingWords::new(
        format!("{all}, as a converter may have switched them off"),
        "Look at the sheets for what the architect had off, such as an earlier design. Name such a layer as `ignore` under [layers] in the job file.",
    )
}

fn numbers_absurd(shapes: usize, farthest: f64) -> FindingWords {
    FindingWords::new(
        format!(
            "{} with a coordinate beyond {} drawing units, left out",
            counted(shapes, "shape"),
            number(farthest)
        ),
        "Delete or mend what lies so far from the drawing.",
    )
}

fn entities(count: usize) -> String {
    if count == 1 { "1 entity".to_owned() } else { format!("{count} entities") }
}

fn broken(entity: EntityKind, count: usize, first_line: usize) -> FindingWords {
    let entities = entities(count);
    FindingWords::new(
        format!(
            "{entities} of type {entity} without a value that they need{}; left out",
            first_at(first_line)
        ),
        "Run the drawing program's audit and save the drawing again.",
    )
}

fn skipped(entity: &str, count: usize, first_line: usize) -> FindingWords {
    let entities = entities(count);
    FindingWords::new(
        format!("{entities} of type {entity}, which is not read{}", first_at(first_line)),
        "If they show walls or openings, explode them to lines.",
    )
}

/// What is the matter with a number, and where: group and line, layer and entity.
fn unreadable(
    layer: &str,
    part: EntityKind,
    place: &NumberPlace,
    value: &str,
    (line, entities): (usize, usize),
) -> FindingWords {
    let stands = match place {
        NumberPlace::Group { group } => format!("group {group} of {part}"),
        NumberPlace::Attribute { attribute } => format!("`{attribute}` of {part}"),
    };
    let says = if value.is_empty() { "is empty".to_owned() } else { format!("says `{value}`") };
    let left_out = match entities {
        1 => format!("what it belongs to{layer} is left out"),
        n => format!("{n} of its type{layer} are left out for such values"),
    };
    FindingWords::new(
        format!("{}{stands} {says}, where a number is due; {left_out}", of_line(line)),
        "Mend the number or delete what it belongs to, or save the drawing again from the program that made it.",
    )
}

fn name_too_long(of: Named, begins: &str, [letters, most, line]: [usize; 3]) -> FindingWords {
    let what = match of {
        Named::Layer => "a layer's name",
        Named::Block => "a block's name",
        Named::Element => "an element's id",
    };
    FindingWords::new(
        format!(
            "{}{what} has {letters} letters, where {most} are the most that are read: `{begins}...`",
            of_line(line)
        ),
        "Give it a shorter name.",
    )
}

fn text_too_long(texts: usize, most: usize, line: usize) -> FindingWords {
    let of = if texts == 1 { "1 text is" } else { &format!("{texts} texts are") };
    FindingWords::new(
        format!("{of} longer than {most} bytes{}: what follows is not read", first_at(line)),
        "Shorten what names a view or gives a measure; a note needs nothing.",
    )
}

fn svg_too_big(of: SvgExcess, most: usize, line: Option<usize>) -> FindingWords {
    let flatten = "Save only the elevations to a file of their own, and flatten symbols in the program that made it.";
    let (what, remedy) = match of {
        SvgExcess::Elements => (
            format!("has or repeats more than {most} elements (a text counts as several)"),
            flatten,
        ),
        SvgExcess::Levels => (format!("nests elements more than {most} levels deep"), flatten),
        SvgExcess::Uses => (
            format!(
                "has an element that uses itself, or uses in uses more than {most} levels deep"
            ),
            flatten,
        ),
        SvgExcess::Attributes => (
            format!("has an element with more than {most} attributes"),
            "Save it again as plain SVG, without the program's own data.",
        ),
        SvgExcess::Namespaces => (
            format!("declares more than {most} namespaces"),
            "Save it again as plain SVG, without the program's own data.",
        ),
        SvgExcess::Entities => (
            format!("has entities that stand for more than {most} letters"),
            "Save it again as plain SVG, with entities written out.",
        ),
        SvgExcess::Styles => (
            format!(
                "has so many style rules that they would be compared with elements more than {most} times"
            ),
            "Save it again with presentation attributes in place of a style sheet, or only the elevations.",
        ),
        SvgExcess::AllAttributes => (
            format!("has more than {most} attributes in all"),
            "Save it again as plain SVG, without the program's own data.",
        ),
        SvgExcess::LettersOfAttributes => {
            (format!("has or repeats more than {most} letters of attributes"), flatten)
        }
        SvgExcess::Letters => (format!("has or repeats more than {most} letters of text"), flatten),
    };
    let place = line.map_or(String::new(), |l| format!(" (line {l})"));
    FindingWords::new(format!("the SVG {what}{place}"), remedy)
}
