//! Of lines, layers, unit and dimensions.

use super::finding_words::FindingWords;
use super::paper_scale;
use super::parts::{fullest_layers, on_layer};
use super::unused::gap;
use crate::finding::Finding;
use crate::finding::lines::{HeightInUnit, LayerCount, LineFinding};
use crate::model::no_siding::NoSiding;
use crate::model::source::UnitBasis;
use crate::units::{LengthStyle, Unit, counted};
use crate::wording::figure;
use crate::wording::source::unit_basis as by;

const SET_UNIT: &str = "Set `unit` under [drawing] in the job file";
const PURGE: &str = "Nothing to do; purge them when convenient.";

pub(super) fn words(found: &LineFinding, finding: &Finding, style: LengthStyle) -> FindingWords {
    use LineFinding as F;
    match found {
        F::UnitAssumed { unit, basis, header, taken } => {
            assumed(*unit, *basis, header.as_ref(), taken.as_ref())
        }
        F::UnitUnsure { taken, other } => unsure(taken, other),
        F::UnitTaken { unit, basis, proved } => unit_taken(*unit, *basis, *proved),
        F::UnitImplausible { basis, tallest, likely, stated } => {
            implausible(*basis, tallest, likely.as_ref(), *stated)
        }
        F::KnownUnreadable { text } => {
            FindingWords::new(format!("the known distance `{text}` cannot be read"), known_form())
        }
        F::ScaleUnknown { written } => scale_unknown(written),
        F::ScaleOfPaper { inches, by, written, dimensions, by_dimensions, .. } => {
            paper_scale::taken((*inches, *by), written, (*dimensions, *by_dimensions))
        }
        F::ScalesOnPage { written, by_dimensions } => paper_scale::several(written, by_dimensions),
        F::DimensionDisagrees { stated, measured, unit, accepted } => {
            disagrees(unit.style(), *stated, *measured, *accepted)
        }
        F::DimensionsMore { count } => disagree_too(*count),
        F::PointLeftOut { layer, points } => FindingWords::new(
            format!("{} on layer {layer} left out: a point has no size", counted(*points, "point")),
            "Draw what it stands for as a block or a closed outline.",
        ),
        F::LayerUnmapped { layers } => unmapped(layers),
        F::LayerHidden { layer, items, read } => hidden(layer, *items, *read),
        F::LineZero { lines } => {
            let what = format!("{} of no length", counted(*lines, "line"));
            FindingWords::new(format!("{what} left out, the first{}", on_layer(finding)), PURGE)
        }
        F::LineTwice { lines } => {
            let what = counted(*lines, "exact duplicate");
            FindingWords::new(format!("{what} left out, the first{}", on_layer(finding)), PURGE)
        }
        F::LinesSquared { sides, steps, most, tilt, slight } => {
            squared((*sides, *steps), *most, *tilt, *slight, style)
        }
        F::GapsClosed { layer, loops, widest } => gaps_closed(layer, *loops, &gap(*widest, style)),
        F::EndsJoined { ends, weld, loose } => ends_joined(*ends, *weld, *loose, style),
        F::SidingFromLines { layer, spacing, patches, area } => {
            from_lines(layer, *spacing, *patches, *area, style)
        }
        F::CoursesUnended { layer, length } => unended(layer, *length, style),
        F::LinesNoSiding { layer, why, spacing, patches, area, .. } => {
            no_siding((layer, *why), *spacing, *patches, *area, style)
        }
    }
}

/// How a known distance is written.
pub(super) fn known_form() -> &'static str {
    "Write it as \"x1,y1 x2,y2 = 16'-0\\\"\" with two points in drawing units."
}

fn unit_taken(unit: Unit, basis: UnitBasis, proved: bool) -> FindingWords {
    let backing = if proved {
        "door heights or written dimensions agree"
    } else {
        "nothing else in the drawing proves it"
    };
    FindingWords::new(
        format!("1 drawing unit is 1 {}, by {}; {backing}", unit.word(), by(basis).en),
        "Set `unit` under [drawing] if that is wrong.",
    )
}

/// A height in the measure of its unit.
fn high(t: &HeightInUnit) -> String {
    t.unit.style().length(t.height)
}

fn assumed(
    unit: Unit,
    basis: UnitBasis,
    header: Option<&HeightInUnit>,
    taken: Option<&HeightInUnit>,
) -> FindingWords {
    let says = match header {
        Some(h) if h.height > 0.0 => {
            format!("the header says {}, but then walls stand {} high", h.unit.word(), high(h))
        }
        Some(h) => format!("the header says {}, but sizes speak against it", h.unit.word()),
        None => "the drawing names no unit".to_owned(),
    };
    let stand = taken.map_or(String::new(), |t| format!("; walls then stand {} high", high(t)));
    FindingWords::new(
        format!("{says}; {} is taken, by {}{stand}", unit.word(), by(basis).en),
        format!("{SET_UNIT} to be sure: what the job states is taken."),
    )
}

fn unsure(taken: &HeightInUnit, other: &HeightInUnit) -> FindingWords {
    FindingWords::new(
        format!(
            "only the header says that the unit is {}, in which walls stand {} high; in {} they stand {}, which is as likely",
            taken.unit.word(),
            high(taken),
            other.unit.word(),
            high(other)
        ),
        format!("Compare one length with the drawing. {SET_UNIT}: what the job states is taken."),
    )
}

fn scale_unknown(written: &[String]) -> FindingWords {
    let says = match written {
        [] => "it states no scale".to_owned(),
        all => format!("it says {}, but prints are often made smaller or larger", all.join(", ")),
    };
    FindingWords::new(
        format!("the scale of the page is not known: {says}"),
        "Give a length you know, a door or a dimension, by its two ends in points of the page: `--known 'x1,y1 x2,y2 = 80in'`, or `known` under [drawing]. problems.svg shows the page with its points.",
    )
}

fn implausible(
    basis: UnitBasis,
    tallest: &HeightInUnit,
    likely: Option<&HeightInUnit>,
    stated: bool,
) -> FindingWords {
    let more = likely.map_or(String::new(), |l| {
        format!(" In {} they stand {}: that is the likely unit.", l.unit.word(), high(l))
    });
    let walls = if tallest.height > 0.0 {
        format!("walls stand {} high", high(tallest))
    } else {
        "sizes speak against it".to_owned()
    };
    let message = match basis {
        UnitBasis::KnownDistance => format!("by {} {walls}.{more}", by(basis).en),
        _ => {
            format!(
                "by {} the unit is {}, but then {walls}.{more}",
                by(basis).en,
                tallest.unit.word()
            )
        }
    };
    let advice = match (stated, basis, likely) {
        (true, UnitBasis::KnownDistance, _) => {
            "It is taken, since the job states it. Measure the two points of `known` again."
                .to_owned()
        }
        (true, _, Some(l)) => format!(
            "It is taken, since the job states it. If it is wrong, set `unit = \"{}\"` under [drawing].",
            l.unit.word()
        ),
        (true, ..) => "It is taken, since the job states it. Look whether it is right.".to_owned(),
        _ => format!(
            "{SET_UNIT} to inch, foot, mm, cm or m: what the job states is taken. Or name the views as [[elevation]] with regions, if what lies outside of them misleads."
        ),
    };
    FindingWords::new(message, advice)
}

fn disagrees(style: LengthStyle, stated: f64, measured: f64, accepted: bool) -> FindingWords {
    let message = format!(
        "a dimension says {} but measures {}; its text was typed over",
        style.length(stated),
        style.length(measured)
    );
    FindingWords::new(
        message,
        if accepted {
            "The drawn size is used, since the job accepts this. Ask which of the two is right."
        } else {
            "Correct the drawing or the text. To go on with the drawn size, put \"dimension-disagrees\" into `accept` under [drawing]."
        },
    )
}

fn disagree_too(count: usize) -> FindingWords {
    let more =
        if count == 1 { "1 more dimension".into() } else { format!("{count} more dimensions") };
    FindingWords::new(
        format!("{more} disagree with what they measure"),
        "Correct those that are listed first: the rest may well have the same cause.",
    )
}

fn unmapped(layers: &[LayerCount]) -> FindingWords {
    let listed = fullest_layers(layers, |l| format!("{} ({})", l.layer, counted(l.items, "item")));
    FindingWords::new(
        format!("layers without a role, left out of the layout: {listed}"),
        "If one holds walls or openings, name it under [layers] in the job file.",
    )
}

fn hidden(layer: &str, items: usize, read: bool) -> FindingWords {
    let items = counted(items, "item");
    if read {
        return FindingWords::new(
            format!("layer {layer} is off or frozen; the job names it, so its {items} are read"),
            "Take it out of the job file if it is to stay out.",
        );
    }
    FindingWords::new(
        format!("layer {layer} is off or frozen; left out: {items}"),
        "Thaw it in the drawing, name it in the job file, or set `hidden_layers = true` under [drawing].",
    )
}

/// A tilt beyond this is no noise: the view was turned; degrees.
const TURNED: f64 = 2.0;

fn squared(
    (sides, steps): (usize, usize),
    most: f64,
    tilt: Option<f64>,
    slight: bool,
    style: LengthStyle,
) -> FindingWords {
    let mut done = Vec::new();
    if let Some(tilt) = tilt {
        let way = if tilt > 0.0 { "counter-clockwise" } else { "clockwise" };
        done.push(format!("a tilt of {} degrees {way} undone", figure::trimmed(tilt.abs(), 4)));
    }
    if sides > 0 {
        done.push(format!("{} squared", counted(sides, "side")));
    }
    if steps > 0 {
        done.push(format!("{} closed", counted(steps, "step")));
    }
    let far = if most > 0.0 {
        format!("; the farthest corner was moved by {}", figure::length(most, style))
    } else {
        String::new()
    };
    let turned = tilt.is_some_and(|t| t.abs() > TURNED);
    let what = if turned { "set upright" } else { "drawing noise taken out" };
    let message = format!("{what}: {}{far}", done.join(", "));
    FindingWords::new(
        message,
        if slight {
            "Nothing to do: less than two marks of a tape are apart."
        } else if turned {
            "Draw the view upright, or make sure on the sheets that what was laid out stands as it is meant."
        } else {
            "Look there: a side that is built at a slope so slight must be drawn steeper, or over 1/4 in."
        },
    )
}

fn gaps_closed(layer: &str, loops: usize, widest: &str) -> FindingWords {
    FindingWords::new(
        format!("{} on layer {layer} closed over gaps of up to {widest}", counted(loops, "loop")),
        "Nothing to do; if one of them is no outline, move it to another layer.",
    )
}

fn ends_joined(ends: usize, weld: f64, loose: bool, style: LengthStyle) -> FindingWords {
    let ends = counted(ends, "end");
    let weld = style.short(weld);
    let message = if loose {
        format!(
            "{ends} of loose lines, apart from what they meet by less than the weld distance ({weld}): joined"
        )
    } else {
        format!("{ends} apart by less than the weld distance ({weld}): joined")
    };
    FindingWords::new(message, "Nothing to do; `weld` under [drawing] sets the distance.")
}

fn from_lines(
    layer: &str,
    spacing: f64,
    patches: usize,
    area: f64,
    style: LengthStyle,
) -> FindingWords {
    FindingWords::new(
        format!(
            "level lines on layer {layer}, {} apart, are taken for siding: {}, {area:.0} sq ft",
            figure::length(spacing, style),
            counted(patches, "area"),
        ),
        "Check each wall on the sheet. If they are no siding, give their layer the role `ignore` under [layers]; closed outlines on A-WALL-OTLN take precedence.",
    )
}

fn unended(layer: &str, length: f64, style: LengthStyle) -> FindingWords {
    FindingWords::new(
        format!(
            "over {} no line is drawn where the level lines on layer {layer} end; the siding ends at the last of them there",
            style.length(length)
        ),
        "Compare these places with the drawing: a strip of up to one spacing may be missing. Draw the line at which the siding ends.",
    )
}

fn no_siding(
    (layer, why): (&str, NoSiding),
    spacing: f64,
    patches: usize,
    area: f64,
    style: LengthStyle,
) -> FindingWords {
    let why = match why {
        NoSiding::UprightJoints => {
            "short upright lines stand between them, as in stone or shingles"
        }
        NoSiding::Table => "they are rows of a table",
        NoSiding::Mixed => "other level lines run among them",
        NoSiding::Few => "they are few beside what else is drawn in their color and weight",
        NoSiding::Apart => "they stand apart from the siding",
        NoSiding::Roof => "they cover a roof",
        NoSiding::NoWall => "no wall comes of what they cover",
    };
    FindingWords::new(
        format!(
            "level lines on layer {layer}, {} apart, are not taken for siding: {why} ({}, {area:.0} sq ft)",
            figure::length(spacing, style),
            counted(patches, "area"),
        ),
        "Look at these places. If one is siding, draw its closed outline on A-WALL-OTLN, or put its lines on a layer of their own.",
    )
}
