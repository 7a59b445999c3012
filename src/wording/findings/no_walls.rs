//! Of a drawing in which there is nothing to side: why, and what to do.

use super::finding_words::FindingWords;
use super::parts::{fullest_layers, listed};
use crate::finding::lines::LayerCount;
use crate::finding::seen::{NoCourses, Seen};
use crate::finding::views::OtherView;
use crate::units::{LengthStyle, counted};
use crate::wording::figure;

const DRAW: &str = "Draw each wall as a closed outline on A-WALL-OTLN inside its view, or name the layer that holds the walls as `wall` under [layers] in the job file; `lapwright layers DRAWING --suggest` makes a beginning.";
const LEFT_OUT: &str = "Take those that are sided out of `skip` in the job file, or give them as [[wall]]: their corners, in drawing units.";

pub(super) fn words(
    wall_layers: &[String],
    layers: &[LayerCount],
    seen: &[Seen],
    style: LengthStyle,
) -> FindingWords {
    if let [all @ Seen::LeftOut { .. }] = seen {
        return FindingWords::new(format!("nothing to side: {}", fact(all, style)), LEFT_OUT);
    }
    let found = fullest_layers(layers, |l| {
        let hidden = if l.shown { "" } else { ", hidden" };
        format!("{} ({}{hidden})", l.layer, l.items)
    });
    let found = if found.is_empty() { "none with anything on it" } else { &found };
    let why: Vec<String> = seen.iter().map(|s| fact(s, style)).collect();
    let why = if why.is_empty() { String::new() } else { format!(" Seen: {}.", why.join("; ")) };
    let mut advice: Vec<String> = Vec::new();
    for a in seen.iter().take(MOST_ADVICE).map(advice_for) {
        if !advice.contains(&a) {
            advice.push(a);
        }
    }
    if advice.is_empty() {
        advice.push(DRAW.to_owned());
    }
    FindingWords::new(
        format!(
            "nothing to side: there is neither a closed outline on a wall layer ({}) nor a siding hatch with level lines.{why} Layers found: {found}",
            listed(wall_layers)
        ),
        advice.join(" "),
    )
}

/// Most facts that are answered: the telling ones come first.
const MOST_ADVICE: usize = 2;

fn shown(of: OtherView, several: bool) -> &'static str {
    match (of, several) {
        (OtherView::Plan, false) => "a plan",
        (OtherView::Plan, true) => "plans",
        (OtherView::Section, false) => "a section",
        (OtherView::Section, true) => "sections",
        (OtherView::Detail, false) => "a detail",
        (OtherView::Detail, true) => "details",
        (OtherView::Interior, false) => "an elevation of a room",
        (OtherView::Interior, true) => "elevations of rooms",
        (OtherView::Partial, false) => "part of an elevation",
        (OtherView::Partial, true) => "parts of elevations",
    }
}

/// `24 hatches`.
fn hatched(n: usize) -> String {
    if n == 1 { "1 hatch".to_owned() } else { format!("{n} hatches") }
}

fn no_courses(why: NoCourses) -> &'static str {
    match why {
        NoCourses::Spacing => "which no courses are",
        NoCourses::Small => "too small for walls",
        NoCourses::Layer => "a layer of something else",
    }
}

fn fact(seen: &Seen, style: LengthStyle) -> String {
    match seen {
        Seen::LeftOut { walls } => {
            format!(
                "the job leaves out every wall that was found: {}",
                listed(walls.iter().map(|w| w.as_str()))
            )
        }
        Seen::Nothing => "nothing is drawn in model space".to_owned(),
        Seen::Pictures { pictures, only } => {
            let alone = if *only { "pictures only" } else { "pictures beside lines" };
            format!("{alone} ({pictures})")
        }
        Seen::OnSheets { items } => {
            format!("{} on sheets, none in model space", counted(*items, "item"))
        }
        Seen::LayersOff { layers, items } => format!(
            "{} off or frozen, {} on {} not read",
            if *layers == 1 { "1 layer is".to_owned() } else { format!("{layers} layers are") },
            counted(*items, "item"),
            if *layers == 1 { "it" } else { "them" }
        ),
        Seen::RegionEmpty { view, drawn } => {
            let drawn = drawn.map_or(String::new(), |[a, b, c, d]| {
                format!(", while strokes lie from ({a:.0}, {b:.0}) to ({c:.0}, {d:.0})")
            });
            format!("0 strokes in the region of {view}{drawn}")
        }
        Seen::LayerEmpty { layer } => format!("nothing on {layer}, which the job names as `wall`"),
        Seen::Titles { shows, titles: 1, first } => {
            format!("{}, by the title {first}", shown(*shows, false))
        }
        Seen::Titles { shows, titles, first } => {
            format!("{titles} {}, by titles such as {first}", shown(*shows, true))
        }
        Seen::Upright { hatches, apart, layer } => format!(
            "{} with upright lines {} apart on {layer}",
            hatched(*hatches),
            figure::length(*apart, style)
        ),
        Seen::Level { hatches, apart, layer, why } => {
            format!(
                "{} with level lines {} apart on {layer}, {}",
                hatched(*hatches),
                figure::length(*apart, style),
                no_courses(*why)
            )
        }
        Seen::Crossed { hatches } => {
            format!("{} with sloped, broken or crossing lines", hatched(*hatches))
        }
        Seen::OpenLines { layer, lines } => {
            format!("{} on {layer} that close to no outline", counted(*lines, "line"))
        }
        Seen::OtherLines { lines } => {
            format!("{} on layers without a role", counted(*lines, "line"))
        }
    }
}

fn advice_for(seen: &Seen) -> String {
    let text = match seen {
        Seen::Pictures { .. } => {
            "A picture holds no lines to lay out: ask the architect for the drawing itself as DXF, DWG or SVG."
        }
        Seen::OnSheets { .. } => {
            "Walls are read from model space: move what is drawn on the sheet there, full size, and save it again."
        }
        Seen::LayersOff { .. } => {
            "Switch the layers of the elevations on, name them in the job file, or set `hidden_layers = true` under [drawing]."
        }
        Seen::RegionEmpty { .. } => {
            "Correct `region` under [[elevation]]: left, bottom, right and top in drawing units."
        }
        Seen::LayerEmpty { .. } => {
            "Correct the name under [layers]; `lapwright layers DRAWING` lists the layers there are."
        }
        Seen::Titles { .. } => {
            "Give the sheet that shows the elevations. If one is an elevation after all, name it as [[elevation]] with its region in the job file."
        }
        Seen::Upright { .. } | Seen::Crossed { .. } => {
            "Such lines are boards and battens, metal, shingles, brick or stone, not lap siding. If lap siding goes there, draw each wall as a closed outline on A-WALL-OTLN."
        }
        Seen::Level { why: NoCourses::Layer, .. } => {
            "If they are siding, name their layer as `wall` under [layers] in the job file."
        }
        Seen::Level { why: NoCourses::Spacing, .. } => {
            "If they are siding, look whether the unit is right, or draw each wall as a closed outline on A-WALL-OTLN."
        }
        Seen::OpenLines { .. } => {
            "Close the outlines, or name the view as [[elevation]] with its region in the job file: walls are then read from loose lines."
        }
        Seen::LeftOut { .. } => LEFT_OUT,
        Seen::Nothing | Seen::Level { .. } | Seen::OtherLines { .. } => DRAW,
    };
    text.to_owned()
}
