//! The overlay: the source's bytes stand; an independent reader finds ours.

use lapwright::annotate;
use lapwright::units::LengthStyle;
use lapwright::write::overlay::{Measure, separate, spliced};

use crate::support::{laid, samples};

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
        let out = spliced(&source, &annotate::overlay(&layout), measure(&layout)).unwrap();
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
        let out = spliced(&source, &annotate::overlay(&layout), measure(&layout)).unwrap();
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
    let overlay = annotate::overlay(&laid("one-wall"));
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
        let out = spliced(&source, &annotate::overlay(&layout), measure(&layout)).unwrap();
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
    let overlay = annotate::overlay(&layout);
    let once = spliced(&source.unwrap(), &overlay, measure(&layout)).unwrap();
    let twice = spliced(&once, &overlay, measure(&layout)).unwrap();
    let drawing = dxf::Drawing::load(&mut std::io::Cursor::new(&twice)).unwrap();
    let mut names: Vec<&str> = drawing.blocks().map(|b| b.name.as_str()).collect();
    names.sort_unstable();
    let count = names.len();
    names.dedup();
    assert_eq!(names.len(), count, "a block stands twice");
}
