//! The overlay: the source's bytes stand; an independent reader finds ours.

use lapwright::annotate;
use lapwright::finding::Findings;
use lapwright::layout::backdrop::Backdrops;
use lapwright::model::drawing::{Across, Drawing, Shape, Space, Text, Up};
use lapwright::units::LengthStyle;
use lapwright::write::overlay::{Measure, separate, spliced};

use crate::support::{laid, laid_set, samples};

fn measure(layout: &lapwright::layout::Layout) -> Measure {
    Measure { inches: layout.drawing.inches_per_unit, style: layout.job.sheet.lengths }
}

const INCHES: Measure = Measure { inches: 1.0, style: LengthStyle::Feet };

/// Walks both by lines, endings included: the source's lines must stand in order, with whole
/// insertions between. Returns how many lines hold another value.
fn replaced(source: &[u8], out: &[u8]) -> usize {
    let lines =
        |b: &'static [u8]| -> Vec<&'static [u8]> { b.split_inclusive(|c| *c == b'\n').collect() };
    let (a, b) = (lines(source.to_vec().leak()), lines(out.to_vec().leak()));
    let (mut i, mut j, mut count) = (0, 0, 0);
    while i < a.len() {
        if j < b.len() && a[i] == b[j] {
            i += 1;
            j += 1;
        } else if i + 2 < a.len() && j + 2 < b.len() && a[i + 1..i + 3] == b[j + 1..j + 3] {
            count += 1;
            i += 1;
            j += 1;
        } else {
            // An insertion ends where the next three lines of the source stand together.
            let want = &a[i..(i + 3).min(a.len())];
            let k = b[j..].windows(want.len()).position(|w| w == want);
            j += k.unwrap_or_else(|| panic!("source line {} is gone", i + 1));
        }
    }
    count
}

#[test]
fn every_byte_of_the_source_stands_but_seed_and_counts() {
    for (stem, path) in samples() {
        let source = std::fs::read(&path).unwrap();
        let layout = laid(&stem);
        let out =
            spliced(&source, &annotate::overlay(&layout, &Backdrops::default()), measure(&layout))
                .unwrap();
        assert!(out.len() > source.len() + 1000);
        let n = replaced(&source, &out);
        // The seed, and the counts of five tables.
        assert!(n <= 6, "{stem}: {n} values replaced");
    }
}

#[test]
fn an_independent_reader_finds_layers_and_pieces() {
    for (stem, path) in samples() {
        let layout = laid(&stem);
        let source = std::fs::read(&path).unwrap();
        let out =
            spliced(&source, &annotate::overlay(&layout, &Backdrops::default()), measure(&layout))
                .unwrap();
        let drawing = dxf::Drawing::load(&mut std::io::Cursor::new(&out)).unwrap();
        for name in ["Z-ELEV-CRSE", "Z-ELEV-SEAM", "Z-ELEV-TRIM", "Z-ELEV-IDEN"] {
            assert!(drawing.layers().any(|l| l.name == name), "{stem}: no {name}");
        }
        let marks: Vec<String> = drawing
            .entities()
            .filter_map(|e| match &e.specific {
                dxf::entities::EntityType::Insert(i) if e.common.layer == "Z-ELEV-IDEN" => {
                    let mark = i.attributes().find(|a| a.attribute_tag == "MARK");
                    Some(mark.unwrap().value.clone())
                }
                _ => None,
            })
            .collect();
        let texts: Vec<&str> = drawing
            .entities()
            .filter_map(|e| match &e.specific {
                dxf::entities::EntityType::Text(t) if e.common.layer == "Z-ELEV-IDEN" => {
                    Some(t.value.as_str())
                }
                _ => None,
            })
            .collect();
        for (.., p) in layout.pieces() {
            assert_eq!(texts.iter().filter(|t| **t == p.mark).count(), 1, "{stem}: {}", p.mark);
            assert_eq!(marks.iter().filter(|t| **t == p.mark).count(), 1, "{stem}: {}", p.mark);
        }
        // Flashing lies behind the siding: nothing of it is drawn on the face.
        let seen = || layout.trims.iter().filter(|t| !t.kind.behind());
        assert!(
            seen().all(|t| marks.iter().any(|m| **m == t.mark)) && seen().count() > 0,
            "{stem}"
        );
        let seams = drawing.entities().filter(|e| e.common.layer == "Z-ELEV-SEAM").count();
        assert_eq!(
            seams,
            layout
                .pieces()
                .map(|(_, _, r, _)| (r.id.clone(), r.seams.len()))
                .collect::<std::collections::BTreeMap<_, _>>()
                .values()
                .sum::<usize>(),
            "{stem}"
        );
    }
}

#[test]
fn places_are_the_sources_own() {
    // The metric sample is drawn in millimeters from (2540, 1270): its wall's foot is there.
    let layout = laid("metric");
    let to = layout.elevations[0].to_source;
    let foot = layout.elevations[0].walls[0]
        .outline
        .iter()
        .fold([f64::MAX; 2], |a, p| [a[0].min(p[0]), a[1].min(p[1])]);
    let x = to[0] * foot[0] + to[2] * foot[1] + to[4];
    let y = to[1] * foot[0] + to[3] * foot[1] + to[5];
    assert!((x - 2540.0).abs() < 0.02 && (y - 1270.0).abs() < 0.02, "{x} {y}");
}

#[test]
fn sources_without_tables_and_binary_ones_get_theirs() {
    let overlay = annotate::overlay(&laid("one-wall"), &Backdrops::default());
    let bare =
        crate::support::dxf(&[("A-WALL-OTLN", &crate::support::rect(0.0, 0.0, 300.0, 96.0))]);
    let out = spliced(bare.as_bytes(), &overlay, INCHES).unwrap();
    let drawing = dxf::Drawing::load(&mut std::io::Cursor::new(&out)).unwrap();
    assert!(drawing.layers().any(|l| l.name == "Z-ELEV-CRSE"));
    assert!(spliced(lapwright::read::dxf::tags::BINARY_MAGIC, &overlay, INCHES).is_err());
    let alone = dxf::Drawing::load(&mut std::io::Cursor::new(&separate(&overlay, INCHES))).unwrap();
    assert!(alone.entities().count() > 20);
}

#[test]
fn dimensions_are_true_ones_with_blocks_that_exist() {
    for (stem, path) in samples() {
        let layout = laid(&stem);
        let source = std::fs::read(&path).unwrap();
        let out =
            spliced(&source, &annotate::overlay(&layout, &Backdrops::default()), measure(&layout))
                .unwrap();
        let drawing = dxf::Drawing::load(&mut std::io::Cursor::new(&out)).unwrap();
        if stem == "r12" {
            // This reader knows dimensions by markers that R12 has not; tests/reference has more.
            continue;
        }
        let unit = layout.drawing.inches_per_unit;
        let mut widths = Vec::new();
        for e in drawing.entities().filter(|e| e.common.layer == "Z-ELEV-DIMS") {
            let dxf::entities::EntityType::RotatedDimension(d) = &e.specific else { continue };
            let block = &d.dimension_base.block_name;
            let shown = drawing.blocks().find(|b| b.name == *block);
            assert!(shown.is_some_and(|b| b.entities.len() >= 4), "{stem}: {block}");
            assert_eq!(d.dimension_base.dimension_style_name, "Z-DIMS");
            let (a, b) = (&d.definition_point_2, &d.definition_point_3);
            widths.push((b.x - a.x).abs() * unit);
        }
        // The string over all of the first elevation is as wide as its walls.
        let walls = layout.elevations[0].walls.iter().flat_map(|w| &w.outline).map(|p| p[0]);
        let width = walls.fold(0.0, f64::max);
        assert!(widths.iter().any(|w| (w - width).abs() < 0.02), "{stem}: {width} in {widths:?}");
    }
}

#[test]
fn an_overlay_over_an_overlay_keeps_names_single() {
    let layout = laid("one-window");
    let source = std::fs::read(crate::support::root().join("sample-drawings/one-window.dxf"));
    let overlay = annotate::overlay(&layout, &Backdrops::default());
    let once = spliced(&source.unwrap(), &overlay, measure(&layout)).unwrap();
    let twice = spliced(&once, &overlay, measure(&layout)).unwrap();
    let drawing = dxf::Drawing::load(&mut std::io::Cursor::new(&twice)).unwrap();
    let mut names: Vec<&str> = drawing.blocks().map(|b| b.name.as_str()).collect();
    names.sort_unstable();
    let count = names.len();
    names.dedup();
    assert_eq!(names.len(), count, "a block stands twice");
}

/// A box in source coordinates.
type Box4 = (f64, f64, f64, f64);

/// Boxes of the texts of an overlay: of notes and marks, and of dimensions over the middle of their line.
fn text_boxes(overlay: &Drawing) -> Vec<(String, Box4)> {
    let mut out = Vec::new();
    for item in &overlay.items {
        if let Shape::Text(t) = &item.shape {
            out.push((t.content.clone(), drawn_box(t)));
        }
    }
    out
}

/// Box of a text by the sheets' typeface: an outside measure of the width of letters.
fn drawn_box(t: &Text) -> Box4 {
    let wide = lapwright::typeface::width(&t.content, t.height, false);
    let x = match t.across {
        Across::Left => t.at.x,
        Across::Center => t.at.x - wide / 2.0,
        Across::Right => t.at.x - wide,
    };
    let y = match t.up {
        Up::Baseline => t.at.y,
        Up::Middle => t.at.y - t.height / 2.0,
        Up::Top => t.at.y - t.height,
    };
    (x, y, x + wide, y + t.height)
}

fn overlap(a: &Box4, b: &Box4) -> bool {
    a.0 < b.2 && b.0 < a.2 && a.1 < b.3 && b.1 < a.3
}

/// Whether a segment comes into a box, by halving it.
fn enters(a: [f64; 2], b: [f64; 2], r: &Box4, depth: u32) -> bool {
    let outside = a[0].max(b[0]) < r.0
        || a[0].min(b[0]) > r.2
        || a[1].max(b[1]) < r.1
        || a[1].min(b[1]) > r.3;
    if outside {
        return false;
    }
    let inside = |p: [f64; 2]| p[0] >= r.0 && p[0] <= r.2 && p[1] >= r.1 && p[1] <= r.3;
    let middle = [(a[0] + b[0]) / 2.0, (a[1] + b[1]) / 2.0];
    inside(a)
        || inside(b)
        || depth > 0 && (enters(a, middle, r, depth - 1) || enters(middle, b, r, depth - 1))
}

#[test]
fn texts_of_the_overlay_keep_off_one_another_and_off_those_of_the_source() {
    let mut seen = 0;
    for (stem, path) in samples() {
        let set = laid_set(&stem);
        let texts = text_boxes(&annotate::overlay(&set.layout, &set.backdrops));
        for (i, (a, own)) in texts.iter().enumerate() {
            for (b, other) in &texts[i + 1..] {
                assert!(!overlap(own, other), "{stem}: `{a}` over `{b}`");
            }
        }
        let source = std::fs::read(&path).unwrap();
        let (limits, mut findings) = (Default::default(), Findings::default());
        let source = lapwright::read::drawing(&source, "d", &limits, &mut findings).unwrap();
        for item in source.items.iter().filter(|i| i.shown && i.space == Space::Model) {
            let Shape::Text(t) = &item.shape else { continue };
            let theirs = drawn_box(t);
            seen += 1;
            for (a, own) in &texts {
                assert!(!overlap(own, &theirs), "{stem}: `{a}` over the source's `{}`", t.content);
            }
        }
    }
    assert!(seen > 20, "{seen}");
}

#[test]
fn marks_of_the_overlay_keep_off_seams_and_outlines_where_there_is_room() {
    let (mut marks, mut crossed) = (0, Vec::new());
    for (stem, _) in samples() {
        let set = laid_set(&stem);
        let overlay = annotate::overlay(&set.layout, &set.backdrops);
        let on = |name: &str| {
            let layer = overlay.layers.iter().position(|l| l.name == name).unwrap();
            overlay.items.iter().filter(move |i| i.layer == layer)
        };
        let mut lines: Vec<([f64; 2], [f64; 2])> = Vec::new();
        for item in on("Z-ELEV-SEAM").chain(on("Z-ELEV-OTLN")) {
            let Shape::Polyline(p) = &item.shape else { continue };
            let points: Vec<[f64; 2]> = p.vertices.iter().map(|v| [v.at.x, v.at.y]).collect();
            let next = points.iter().skip(1).chain(points.first().filter(|_| p.closed));
            lines.extend(points.iter().zip(next).map(|(a, b)| (*a, *b)));
        }
        for item in on("Z-ELEV-IDEN") {
            let Shape::Text(t) = &item.shape else { continue };
            marks += 1;
            let own = drawn_box(t);
            if lines.iter().any(|(a, b)| enters(*a, *b, &own, 16)) {
                crossed.push(format!("{stem} {}", t.content));
            }
        }
    }
    assert!(marks > 500, "{marks}");
    assert!(crossed.len() * 50 < marks, "{} of {marks}: {crossed:?}", crossed.len());
}

#[test]
fn nothing_of_the_overlay_has_a_ground_that_could_hide_what_is_under_it() {
    for (stem, path) in samples() {
        let set = laid_set(&stem);
        let source = std::fs::read(&path).unwrap();
        let overlay = annotate::overlay(&set.layout, &set.backdrops);
        let out = spliced(&source, &overlay, measure(&set.layout)).unwrap();
        // Filled shapes, masks and texts that may have one; and a dimension style that fills (69).
        for kind in
            ["MTEXT", "WIPEOUT", "SOLID", "TRACE", "HATCH", "IMAGE", "MLEADER", "MULTILEADER"]
        {
            let count = |bytes: &[u8]| {
                let text = String::from_utf8_lossy(bytes).replace('\r', "");
                text.matches(&format!("\n  0\n{kind}\n")).count()
            };
            assert_eq!(count(&out), count(&source), "{stem}: {kind}");
        }
        let text = String::from_utf8_lossy(&out).replace('\r', "");
        let style = text.split("\nZ-DIMS\n").nth(1).unwrap_or_default();
        let style = style.split("\n  0\n").next().unwrap_or_default();
        assert!(!style.contains("\n 69\n"), "{stem}: dimensions fill their ground");
    }
}

/// Handles of a DXF with what carries them, and how many things there are.
fn handles(bytes: &[u8]) -> (Vec<(String, u64)>, u64) {
    let text = String::from_utf8_lossy(bytes).replace('\r', "");
    let lines: Vec<&str> = text.lines().map(str::trim).collect();
    let (mut out, mut things, mut kind, mut in_head) = (Vec::new(), 0, "", false);
    for pair in lines.chunks_exact(2) {
        match (pair[0], pair[1]) {
            ("0", what) => {
                things += 1;
                kind = what;
            }
            ("2", name) if kind == "SECTION" => in_head = name == "HEADER",
            ("5", h) if kind != "DIMSTYLE" && !in_head => {
                out.extend(u64::from_str_radix(h, 16).map(|h| (kind.to_owned(), h)));
            }
            ("105", h) => out.extend(u64::from_str_radix(h, 16).map(|h| (kind.to_owned(), h))),
            _ => {}
        }
    }
    (out, things)
}

/// The wall of the oldest form, with what stands before and after its entities.
fn old(before: &str, after: &str) -> String {
    let ring = crate::support::rect(0.0, 0.0, 300.0, 96.0);
    let plain = crate::support::dxf(&[("A-WALL-OTLN", &ring)]);
    before.to_owned()
        + &plain.replace("0\nENDSEC\n0\nEOF\n", &format!("0\nENDSEC\n{after}0\nEOF\n"))
}

#[test]
fn handles_of_an_overlay_stay_clear_of_those_a_reader_gives_out() {
    let overlay = annotate::overlay(&laid("one-wall"), &Backdrops::default());
    let splice = |source: &str| spliced(source.as_bytes(), &overlay, INCHES).unwrap();
    let layers = "0\nSECTION\n2\nTABLES\n0\nTABLE\n2\nLAYER\n70\n1\n0\nLAYER\n2\n0\n70\n0\n62\n7\n6\nCONTINUOUS\n0\nENDTAB\n0\nENDSEC\n";
    // Nothing has a handle: nothing of ours has. The name of an arrow's block is none, nor is an empty one.
    let style = "0\nSECTION\n2\nTABLES\n0\nTABLE\n2\nDIMSTYLE\n70\n1\n0\nDIMSTYLE\n2\nA\n70\n0\n5\nADD\n0\nENDTAB\n0\nENDSEC\n";
    let empty = old(layers, "").replace("0\nVERTEX\n", "0\nVERTEX\n5\n\n");
    for source in [old("", ""), old(layers, ""), old(style, ""), empty] {
        let (given, _) = handles(&splice(&source));
        assert!(given.is_empty(), "{given:?}");
    }
    // Something has one, in whichever section, and no seed says from where on they are free: what a reader
    // gives to all the rest, counting up from 1, must not come upon one of ours.
    let objects = "0\nSECTION\n2\nOBJECTS\n0\nDICTIONARY\n5\nC\n0\nDICTIONARY\n5\n17\n0\nENDSEC\n";
    let some = old(layers, "").replacen("0\nVERTEX\n", "0\nVERTEX\n5\n2A\n", 1);
    let table = old(&layers.replace("0\nLAYER\n2\n0", "0\nLAYER\n5\n10\n2\n0"), "");
    for source in [old(layers, objects), some, table] {
        let (before, _) = handles(source.as_bytes());
        let out = splice(&source);
        let (after, things) = handles(&out);
        let ours: Vec<u64> =
            after.iter().map(|h| h.1).filter(|h| !before.iter().any(|b| b.1 == *h)).collect();
        assert!(ours.len() > 50, "{}", ours.len());
        assert_eq!(ours.len() + before.len(), after.len(), "a handle stands twice");
        let without = things - after.len() as u64;
        assert!(ours.iter().all(|h| *h > without), "{} of {without}", ours.iter().min().unwrap());
    }
}

#[test]
fn old_names_of_versions_and_files_without_an_end_get_what_a_strict_reader_takes() {
    let overlay = annotate::overlay(&laid("one-wall"), &Backdrops::default());
    for version in ["AC1009", "AC1006", "AC2.10", "AC2.22", "AC1.50"] {
        let head = format!("0\nSECTION\n2\nHEADER\n9\n$ACADVER\n1\n{version}\n0\nENDSEC\n");
        let out = spliced(old(&head, "").as_bytes(), &overlay, INCHES).unwrap();
        let text = String::from_utf8(out).unwrap();
        // LWPOLYLINE and subclass markers (100) came with R13 and R14 (DXF reference).
        assert!(!text.contains("LWPOLYLINE") && !text.contains("\n100\n"), "{version}");
    }
    let cut = old("", "").replace("0\nEOF\n", "");
    for source in [cut.clone(), cut.trim_end().to_owned(), cut.replace('\n', "\r\n")] {
        let out = spliced(source.as_bytes(), &overlay, INCHES).unwrap();
        let text = String::from_utf8(out).unwrap().replace('\r', "");
        assert!(text.ends_with("ENDSEC\n  0\nEOF\n"), "{:?}", &text[text.len() - 40..]);
    }
}
