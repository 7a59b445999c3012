//! What was drawn and not used, layer by layer.

use super::finding_words::FindingWords;
use super::parts::number;
use crate::model::linework::Role;
use crate::model::unused::{Unused, UnusedCount};
use crate::units::{LengthStyle, counted};

pub(super) fn words(
    layer: &str,
    role: Role,
    [drawn, used]: [usize; 2],
    left: &[UnusedCount],
    style: LengthStyle,
) -> FindingWords {
    let not: usize = left.iter().map(|c| c.things).sum();
    let reasons: Vec<String> = left.iter().map(|c| reason(c, style)).collect();
    let message = format!(
        "{layer}: {drawn} drawn, {used} {}, {not} not ({})",
        verb(role),
        reasons.join(", ")
    );
    let mut remedies: Vec<&str> = Vec::new();
    for r in left.iter().map(|c| remedy(&c.why)) {
        if !remedies.contains(&r) {
            remedies.push(r);
        }
    }
    FindingWords::new(message, remedies.join(" "))
}

/// Things on a layer whose name alone speaks of openings.
pub(super) fn speaks(layer: &str, role: Role, things: usize) -> FindingWords {
    let (one, key) = match role {
        Role::Door => ("doors", "door"),
        _ => ("windows", "window"),
    };
    FindingWords::new(
        format!(
            "layer {layer} has no role, though its name speaks of {one}: {} on walls, not cut; siding is laid over it",
            counted(things, "thing")
        ),
        format!(
            "Name the layer under [layers] in the job file, as `{key}`, or as `ignore` if it shows none. `lapwright layers DRAWING --suggest` writes the lines."
        ),
    )
}

/// What becomes of a thing with a role.
fn verb(role: Role) -> &'static str {
    match role {
        Role::Window | Role::Door => "cut",
        Role::Wall => "laid out",
        Role::MountingBlock | Role::Obstacle => "cut round",
        _ => "used",
    }
}

/// A distance to the hundredth of an inch, or the tenth of a millimeter.
pub(super) fn gap(inches: f64, style: LengthStyle) -> String {
    match style {
        LengthStyle::Feet => format!("{} in", number((inches * 100.0).round() / 100.0)),
        LengthStyle::Mm => style.short(inches),
    }
}

fn reason(count: &UnusedCount, style: LengthStyle) -> String {
    let n = count.things;
    let one = n == 1;
    let apart = count.gap.map_or(String::new(), |g| {
        let widest = if one { "" } else { "up to " };
        format!(" {widest}{} apart", gap(g, style))
    });
    let of_lines = match count.lines {
        // One open polyline says so itself.
        Some(lines) if one && lines > 1 => format!(" of {lines} lines"),
        _ => String::new(),
    };
    if count.why == Unused::LooseLines {
        return match (n, count.lines) {
            (1, Some(lines)) if lines > 1 => format!("{lines} loose lines"),
            (1, _) => "loose line".to_owned(),
            (n, Some(lines)) if lines > n => format!("{n} groups of loose lines"),
            (n, _) => format!("{n} loose lines"),
        };
    }
    let (single, many) = phrase(&count.why);
    if one { format!("{single}{of_lines}{apart}") } else { format!("{n} {many}{apart}") }
}

/// Why, of one thing and of several.
fn phrase(why: &Unused) -> (String, String) {
    let same = |one: &str, many: &str| (one.to_owned(), many.to_owned());
    let of = |what: String| (what.clone(), what);
    match why {
        Unused::HiddenLayer => same("hidden layer", "on hidden layer"),
        Unused::HiddenInsert => same("block on a hidden layer", "in blocks on a hidden layer"),
        Unused::Invisible => same("invisible", "invisible"),
        Unused::ClippedAway => same("clipped away", "clipped away"),
        Unused::NotPainted => same("neither line nor fill", "with neither line nor fill"),
        Unused::OnSheet => same("on a sheet, not in the model", "on sheets, not in the model"),
        Unused::ExternalReference { file } if file.is_empty() => {
            same("external reference", "external references")
        }
        Unused::ExternalReference { file } => {
            (format!("external reference {file}"), format!("external references to {file}"))
        }
        Unused::BlockMissing { block } => of(format!("block `{block}` not defined")),
        Unused::BlockEmpty { block } => of(format!("block `{block}` empty")),
        Unused::BlockNested { block } => of(format!("block `{block}` in itself or too deep")),
        Unused::BlockOnOtherLayers { block } => {
            of(format!("block `{block}` drawn on layers without a role"))
        }
        Unused::NotRead { entity } if entity.is_empty() => {
            same("type that is not read", "of types that are not read")
        }
        Unused::NotRead { entity } => (entity.clone(), format!("{entity} entities")),
        Unused::NotFlat => same("3DFACE not flat in the view", "3DFACE not flat in the view"),
        Unused::Unreadable => same("cannot be read", "that cannot be read"),
        Unused::TooFar => same("too far out", "too far out"),
        Unused::TooManyLoops => same("hatch of too many loops", "hatches of too many loops"),
        Unused::PointOnly => same("point without a size", "points without a size"),
        Unused::OpenLoop => same("open loop", "open loops"),
        Unused::LooseLines => same("loose lines", "groups of loose lines"),
        Unused::TooSmall => same("too small", "too small"),
        Unused::HatchPattern => {
            same("hatch pattern that is not read", "hatch patterns that are not read")
        }
        Unused::OutsideViews => same("outside every elevation", "outside every elevation"),
        Unused::OutsideRegions => {
            same("outside the job's elevations", "outside the job's elevations")
        }
        Unused::InOtherView => same("in a plan, section or detail", "in a plan, section or detail"),
        Unused::OffWalls => same("on no wall", "on no wall"),
        Unused::OnOtherCladding => same("on another cladding", "on another cladding"),
        Unused::Covered => same("covered by a roof or band", "covered by a roof or band"),
        Unused::OnSkippedWall => {
            same("on a wall that the job skips", "on a wall that the job skips")
        }
        Unused::MarksNothing => {
            same("line that marks nothing there", "lines that mark nothing there")
        }
    }
}

fn remedy(why: &Unused) -> &'static str {
    match why {
        Unused::HiddenLayer | Unused::HiddenInsert => {
            "If they are part of the house, show the layer, name it in the job file, or set `hidden_layers = true` under [drawing]."
        }
        Unused::ExternalReference { .. } | Unused::BlockMissing { .. } => {
            "Bind the external reference into the drawing and save it again."
        }
        Unused::OnSheet => "Draw the house in model space.",
        Unused::OutsideRegions
        | Unused::InOtherView
        | Unused::OnOtherCladding
        | Unused::OnSkippedWall => "Nothing to do if they are to stay out.",
        Unused::OutsideViews => "Frame or title their view, or give it a region in the job.",
        Unused::OffWalls | Unused::Covered | Unused::MarksNothing => {
            "Move them to where they belong, or to a layer without a role."
        }
        Unused::BlockOnOtherLayers { .. } => {
            "Draw the block's lines on layer 0, or give their layers a role in the job file."
        }
        _ => "Draw what belongs to the house as a block or a closed outline.",
    }
}
