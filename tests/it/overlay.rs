//! The overlay: the source's bytes stand; an independent reader finds ours.

use lapwright::annotate;
use lapwright::write::overlay::{separate, spliced};

use crate::support::{laid, samples};

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
        let out = spliced(&source, &annotate::overlay(&laid(&stem))).unwrap();
        assert!(out.len() > source.len() + 1000);
        let n = replaced(&source, &out);
        assert!(n <= 3, "{stem}: {n} values replaced");
    }
}

#[test]
fn an_independent_reader_finds_layers_and_pieces() {
    for (stem, path) in samples() {
        let layout = laid(&stem);
        let out = spliced(&std::fs::read(&path).unwrap(), &annotate::overlay(&layout)).unwrap();
        let drawing = dxf::Drawing::load(&mut std::io::Cursor::new(&out)).unwrap();
        for name in ["Z-ELEV-CRSE", "Z-ELEV-SEAM", "Z-ELEV-TRIM", "Z-ELEV-IDEN"] {
            assert!(drawing.layers().any(|l| l.name == name), "{stem}: no {name}");
        }
        let texts: Vec<String> = drawing
            .entities()
            .filter_map(|e| match &e.specific {
                dxf::entities::EntityType::Text(t) if e.common.layer == "Z-ELEV-IDEN" => {
                    Some(t.value.clone())
                }
                _ => None,
            })
            .collect();
        for (.., p) in layout.pieces() {
            assert_eq!(texts.iter().filter(|t| **t == p.mark).count(), 1, "{stem}: {}", p.mark);
        }
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
    // The metric sample is drawn in millimetres from (2540, 1270): its wall's foot is there.
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
    let out = spliced(bare.as_bytes(), &overlay).unwrap();
    let drawing = dxf::Drawing::load(&mut std::io::Cursor::new(&out)).unwrap();
    assert!(drawing.layers().any(|l| l.name == "Z-ELEV-CRSE"));
    assert!(spliced(lapwright::read::dxf::tags::BINARY_MAGIC, &overlay).is_err());
    let alone = dxf::Drawing::load(&mut std::io::Cursor::new(&separate(&overlay))).unwrap();
    assert!(alone.entities().count() > 20);
}
