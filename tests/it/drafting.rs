//! Sheets are drawn by drafting practice: three heights of letters, work in wider lines than what is said of
//! it, all of it clear in gray. Read from the SVG of each sheet, as a printer gets it.

use std::collections::{BTreeMap, BTreeSet};

use lapwright::typeface;
use lapwright::write::svg;

use crate::support::{laid_set, samples};

/// DrawingFact::TextSizes, inches of capitals.
const SIZES: [f64; 3] = [3.0 / 32.0, 1.0 / 8.0, 3.0 / 16.0];
/// DrawingFact::LineWidths: the ISO 128 series, mm.
const WIDTHS: [f64; 9] = [0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1.0, 1.4, 2.0];
/// What is built, by layer.
const WORK: [&str; 12] = [
    "walls",
    "openings",
    "courses",
    "seams",
    "posts",
    "starter",
    "channels",
    "drip-cap",
    "finish-trim",
    "boards",
    "grade",
    "profiles",
];
/// What is said of it.
const NOTES: [&str; 6] = ["dimensions", "leaders", "frames", "rules", "source", "faces"];

/// Groups of one layer: color of its lines, width in points, dashes; and of its letters.
struct Group {
    layer: String,
    /// Color and width, points.
    lines: Option<([u8; 3], f64)>,
    dashes: String,
    letters: Option<[u8; 3]>,
    /// Font sizes, points.
    sizes: Vec<f64>,
}

fn color(hex: &str) -> Option<[u8; 3]> {
    let v = u32::from_str_radix(hex.strip_prefix('#')?, 16).ok()?;
    Some([(v >> 16) as u8, (v >> 8) as u8, v as u8])
}

fn groups(text: &str) -> Vec<Group> {
    let doc = usvg::roxmltree::Document::parse(text).unwrap();
    let all = doc.descendants().filter(|n| n.has_tag_name("g"));
    all.map(|g| {
        let of = |name: &str| g.attribute(name).unwrap_or("").to_owned();
        let sizes: Vec<f64> = g
            .children()
            .filter(|n| n.has_tag_name("text"))
            .map(|n| n.attribute("font-size").unwrap().parse().unwrap())
            .collect();
        let width: f64 = of("stroke-width").parse().unwrap();
        Group {
            layer: of("class"),
            lines: color(&of("stroke")).map(|c| (c, width)),
            dashes: of("stroke-dasharray"),
            letters: color(&of("fill")).filter(|_| !sizes.is_empty()),
            sizes,
        }
    })
    .collect()
}

/// Relative luminance of a color, as WCAG 2.1 defines it: what a gray print keeps of it.
fn luminance(c: [u8; 3]) -> f64 {
    let part = |v: u8| {
        let v = f64::from(v) / 255.0;
        if v <= 0.03928 { v / 12.92 } else { ((v + 0.055) / 1.055).powf(2.4) }
    };
    0.2126 * part(c[0]) + 0.7152 * part(c[1]) + 0.0722 * part(c[2])
}

/// Contrast of two colors, 1 to 21.
fn contrast(a: [u8; 3], b: [u8; 3]) -> f64 {
    let (a, b) = (luminance(a) + 0.05, luminance(b) + 0.05);
    a.max(b) / a.min(b)
}

#[test]
fn contrast_is_reckoned_as_published() {
    // WCAG 2.1: black on white is 21; #777777 on white is known as the gray that just misses 4.5.
    assert!((contrast([0; 3], [255; 3]) - 21.0).abs() < 1e-9);
    let gray = contrast([0x77; 3], [255; 3]);
    assert!(gray > 4.4 && gray < 4.5, "{gray}");
}

#[test]
fn every_sheet_keeps_three_heights_of_letters_wide_work_lines_and_contrast_in_gray() {
    let mut seen: BTreeMap<String, (f64, String)> = BTreeMap::new();
    let mut heights: BTreeSet<usize> = BTreeSet::new();
    for (stem, _) in samples() {
        for s in crate::support::sheets(&laid_set(&stem)) {
            let mut titles = 0;
            for g in groups(&svg::document(&s)) {
                let at = format!("{stem} {} {}", s.name, g.layer);
                for size in &g.sizes {
                    let tall = size * typeface::CAPITALS / 72.0;
                    let which = SIZES.iter().position(|s| (s - tall).abs() < 1e-3);
                    heights.insert(which.unwrap_or_else(|| panic!("{at}: letters of {tall} in")));
                    titles += usize::from(which == Some(2));
                }
                // DrawingFact::Contrast: letters 4.5 to 1, lines 3 to 1; white words stand on the alarm's red.
                let ground = if g.layer == "alarm-text" { [160, 0, 0] } else { [255; 3] };
                if let Some(c) = g.letters {
                    assert!(contrast(c, ground) >= 4.5, "{at}: letters {c:?}");
                }
                let Some((c, width)) = g.lines.filter(|_| g.layer != "ground") else { continue };
                assert!(contrast(c, [255; 3]) >= 3.0, "{at}: lines {c:?}");
                let mm = width / 72.0 * 25.4;
                assert!(WIDTHS.iter().any(|w| (w - mm).abs() < 1e-3), "{at}: {mm} mm");
                seen.insert(g.layer.clone(), (mm, g.dashes.clone()));
            }
            assert!(titles <= 1, "{stem} {}: {titles} titles", s.name);
        }
    }
    assert_eq!(heights.len(), 3);
    let widths = |layers: &[&str]| -> Vec<f64> {
        layers.iter().filter_map(|l| seen.get(*l)).map(|(w, _)| *w).collect()
    };
    let (work, notes) = (widths(&WORK), widths(&NOTES));
    assert!(work.len() >= 10 && notes.len() >= 5, "{seen:?}");
    let thinnest = work.iter().copied().fold(f64::MAX, f64::min);
    let thickest = notes.iter().copied().fold(0.0, f64::max);
    assert!(thinnest >= 1.5 * thickest, "work from {thinnest}, notes to {thickest} mm");
    // Kinds of trim are told apart without color.
    let trims = ["posts", "starter", "channels", "drip-cap", "finish-trim"];
    let kinds: BTreeSet<String> =
        trims.iter().filter_map(|l| seen.get(*l)).map(|(_, d)| d.clone()).collect();
    assert_eq!(kinds.len(), trims.len(), "{seen:?}");
}
