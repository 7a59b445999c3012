//! Of the drawing's file.

use super::finding_words::FindingWords;
use super::parts::number;
use crate::finding::drawing::{BlockArray, BlockFault, DrawingFinding, LooksLike};
use crate::origin::EntityKind;
use crate::units::counted;

const OWN_FILE: &str = "Save only the elevations to a file of their own.";

pub(super) fn words(found: &DrawingFinding) -> FindingWords {
    use DrawingFinding as F;
    match found {
        F::FileTooBig { name, bytes, most } => FindingWords::new(
            format!("{name} has {bytes} bytes; the most that is read is {most}"),
            OWN_FILE,
        ),
        F::NotDxf { name, looks_like } => not_dxf(name, *looks_like),
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
        F::NumbersAbsurd { shapes, farthest } => numbers_absurd(*shapes, *farthest),
        F::BlockNesting { block, fault, insertions } => nesting(block, *fault, *insertions),
        F::BlockMissing { block } => FindingWords::new(
            format!("block `{block}` is inserted but not defined"),
            "Bind or purge the reference and save the drawing again.",
        ),
        F::BlockExternal { block, file, insertions } => external(block, file, *insertions),
        F::EntityBroken { entity, count, first_line } => broken(*entity, *count, *first_line),
        F::EntitySkipped { entity, count, first_line } => skipped(entity, *count, *first_line),
        F::SvgUnreadable { name, parser_says } => FindingWords::new(
            format!("{name} cannot be read as SVG: {parser_says}"),
            "Save it again as plain SVG, with text kept as text.",
        ),
        F::SvgTooBig { most_elements, most_levels } => svg_too_big(*most_elements, *most_levels),
    }
}

fn not_dxf(name: &str, looks_like: LooksLike) -> FindingWords {
    let what = match looks_like {
        LooksLike::EmptyFile => "an empty file",
        LooksLike::Dwg => "a DWG drawing",
        LooksLike::Pdf => "a PDF",
        LooksLike::Zip => "a zip archive",
        LooksLike::Png => "a PNG picture",
        LooksLike::Jpeg => "a JPEG picture",
        LooksLike::Tiff => "a TIFF picture",
        LooksLike::Json => "JSON",
        LooksLike::OtherXml => "XML of another sort",
        LooksLike::OtherData => "text or data of another sort",
    };
    FindingWords::new(
        format!("{name} is neither a DXF nor an SVG drawing: it looks like {what}"),
        "Save or export the elevations as DXF or SVG and give that file.",
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
        Some(line) => format!("what comes from line {line} on is left out"),
        None => "the rest is left out".to_owned(),
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
    FindingWords::new(
        format!(
            "an entity near line {line} has more than {most} vertices; the rest of it is left out"
        ),
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

fn nesting(block: &str, fault: BlockFault, insertions: usize) -> FindingWords {
    let why = match fault {
        BlockFault::InsertsItself => "inserts itself",
        BlockFault::NestedTooDeep => "is nested too deep",
    };
    FindingWords::new(
        format!("block `{block}` {why}: {} left out", counted(insertions, "insertion")),
        "Explode or redraw the block.",
    )
}

fn external(block: &str, file: &str, insertions: usize) -> FindingWords {
    let times = if insertions == 1 { "once".to_owned() } else { format!("{insertions} times") };
    let named = if file.is_empty() { String::new() } else { format!(" ({file})") };
    FindingWords::new(
        format!(
            "block `{block}`, inserted {times}, stands in another file{named}, which is not read: what it shows is missing"
        ),
        "Bind the external reference into the drawing and save it again.",
    )
}

fn entities(count: usize) -> String {
    if count == 1 { "1 entity".to_owned() } else { format!("{count} entities") }
}

fn broken(entity: EntityKind, count: usize, first_line: usize) -> FindingWords {
    let entities = entities(count);
    FindingWords::new(
        format!(
            "{entities} of type {entity} without a value that they need, the first at line {first_line}; left out"
        ),
        "Run the drawing program's audit and save the drawing again.",
    )
}

fn skipped(entity: &str, count: usize, first_line: usize) -> FindingWords {
    let entities = entities(count);
    FindingWords::new(
        format!("{entities} of type {entity}, which is not read, the first at line {first_line}"),
        "If they show walls or openings, explode them to lines.",
    )
}

fn svg_too_big(most_elements: usize, most_levels: usize) -> FindingWords {
    FindingWords::new(
        format!(
            "the SVG has, nests or repeats more than {most_elements} elements or {most_levels} levels"
        ),
        "Save only the elevations to a file of their own, and flatten symbols in the program that made it.",
    )
}
