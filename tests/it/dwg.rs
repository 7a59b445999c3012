//! A DWG against the DXF of the same house, and DWGs that are none, broken, or changed by chance.

use dxf::entities::EntityType;
use lapwright::finding::Findings;
use lapwright::layout::set::LaidSet;
use lapwright::model::drawing::{Drawing, Shape};
use lapwright::outputs;
use lapwright::pipeline;
use lapwright::read::{self, Limits};

use crate::dwgcase::{dwg, dwg_saying, dwg_with_a_broken_text, dxf as dxf_text, svg};
use crate::support::{inches, lay_set, root};

fn read(bytes: &[u8]) -> (Drawing, Vec<&'static str>) {
    let mut findings = Findings::default();
    let drawing = read::drawing(bytes, "house", &Limits::default(), &mut findings).unwrap();
    (drawing, findings.all().iter().map(|f| f.code().word()).collect())
}

fn refused(bytes: &[u8]) -> &'static str {
    let error = pipeline::reading(bytes, "x.dwg", &inches(), &mut Findings::default()).unwrap_err();
    error.0.code().word()
}

#[test]
fn shapes_layers_and_words_are_those_of_the_dxf() {
    let ((ours, told), (theirs, _)) = (read(&dwg()), read(dxf_text().as_bytes()));
    assert_eq!(told, Vec::<&str>::new());
    let of = |d: &Drawing| -> Vec<(String, bool, Shape)> {
        let layer = |i: usize| d.layers[i].name.clone();
        d.items.iter().map(|i| (layer(i.layer), i.shown, i.shape.clone())).collect()
    };
    let (a, b) = (of(&ours), of(&theirs));
    // The wall, two windows of the block, the arch, the door, a window on a layer that is off, the
    // hatch, two texts.
    assert_eq!(a.len(), 9);
    for (a, b) in a.iter().zip(&b) {
        match (&a.2, &b.2) {
            // One loop is drawn by edges, the same one by corners: their paths close in two ways.
            (Shape::Hatch(x), Shape::Hatch(y)) => {
                assert_eq!((x.rings(), &x.families), (y.rings(), &y.families));
                assert_eq!(x.level_spacing(), Some(4.0));
            }
            _ => assert_eq!(a, b),
        }
    }
    assert_eq!(ours.unit, theirs.unit);
    assert_eq!(ours.dialect.format, "DWG AC1032");
    assert_eq!(ours.groups.len(), 2);
    // Entities are named by their handles; a DWG has no lines.
    assert!(ours.items.iter().all(|i| i.origin.line == 0 && i.origin.handle.is_some()));
}

#[test]
fn dwg_dxf_and_svg_give_the_same_order() {
    let (a, b) = (lay_set(&dwg(), &inches()), lay_set(dxf_text().as_bytes(), &inches()));
    assert_eq!(a.layout.elevations[0].name, "FRONT ELEVATION");
    let c = lay_set(svg().as_bytes(), &inches());
    assert_eq!(a.takeoff.lines, b.takeoff.lines);
    assert_eq!(a.layout.panels, b.layout.panels);
    // The arc of an SVG is flattened at other places: what is ordered is the same.
    let order = |set: &LaidSet| -> Vec<(String, f64)> {
        set.takeoff.lines.iter().map(|l| (l.id.to_string(), l.order)).collect()
    };
    assert_eq!(order(&a), order(&c));
    // 25 ft by 8 ft less two windows of 36 by 48, a door of 36 by 80 and an arch of 24 by 24 under half
    // a circle of 12; what is on a layer that is off is not there.
    let half_round = std::f64::consts::PI * 12.0 * 12.0 / 2.0;
    let openings = 2.0 * 36.0 * 48.0 + 36.0 * 80.0 + 24.0 * 24.0 + half_round;
    let net = (300.0 * 96.0 - openings) / 144.0;
    assert!((a.layout.elevations[0].walls[0].net_area - net).abs() < 0.02);
}

#[test]
fn line_breaks_and_carets_in_words_end_no_value() {
    // A word with a line break in it, and what would be pairs of its own.
    let (drawing, told) = read(&dwg_saying("sill\n0\nEOF"));
    assert_eq!(told, Vec::<&str>::new());
    let said = |d: &Drawing| -> Vec<String> {
        let text = |s: &Shape| match s {
            Shape::Text(t) => Some(t.content.clone()),
            _ => None,
        };
        d.items.iter().filter_map(|i| text(&i.shape)).collect()
    };
    assert_eq!(drawing.items.len(), 10);
    assert!(said(&drawing).iter().any(|t| t.starts_with("sill") && t.ends_with("EOF")));
}

#[test]
fn texts_that_cannot_be_decoded_are_counted() {
    let (drawing, told) = read(&dwg_with_a_broken_text());
    assert_eq!(told, ["dwg-texts-lost"]);
    assert_eq!(drawing.items.len(), 9);
}

#[test]
fn what_is_no_dwg_that_is_read_is_named() {
    let whole = dwg();
    assert_eq!(refused(b"AC1014\0\0\0\0\0"), "dwg-unreadable");
    assert_eq!(refused(&whole[..whole.len() / 3]), "dwg-unreadable");
    assert_eq!(refused(b"AC1032"), "dwg-unreadable");
}

/// Mutants end in a drawing or a named refusal, never in a panic.
#[test]
fn two_hundred_mutants_end_in_a_drawing_or_a_refusal() {
    let (read, refused) = crate::dwgcase::mutants::run(&dwg(), 0..200);
    assert_eq!(read + refused, 200);
    // Both ends are met: a change in a checked part is refused, one in unused bytes is not seen.
    assert!(read > 0 && refused > 0, "{read} read, {refused} refused");
}

#[test]
fn two_hundred_mutants_of_unpacked_sections_end_in_a_drawing_or_a_refusal() {
    let (read, refused, unpacked) = crate::dwgcase::mutants::run_sections(&dwg(), 0..200);
    assert_eq!(read + refused + unpacked, 200);
    assert!(read > 20 && unpacked < 50, "{read} read, {refused} refused, {unpacked} not packed");
}

#[test]
fn the_sample_on_disk_is_this_house() {
    let kept = std::fs::read(root().join("tests/samples/house.dwg")).unwrap();
    assert_eq!(read(&kept).0.items, read(&dwg()).0.items);
}

#[test]
fn the_overlay_of_a_dwg_stands_on_its_lines() {
    let set = lay_set(&dwg(), &inches());
    let files = outputs::set::files(&set, &dwg(), false).unwrap();
    let overlay = &files.iter().find(|f| f.0 == "overlay.dxf").unwrap().1;
    // An independent reader finds the wall's four corners on the layer beneath.
    let found = dxf::Drawing::load(&mut std::io::Cursor::new(overlay)).unwrap();
    let mut corners = Vec::new();
    for e in found.entities().filter(|e| e.common.layer == "Z-ELEV-BASE") {
        match &e.specific {
            EntityType::Polyline(line) => {
                corners.extend(line.vertices().map(|v| (v.location.x, v.location.y)))
            }
            EntityType::Line(line) => {
                corners.extend([(line.p1.x, line.p1.y), (line.p2.x, line.p2.y)])
            }
            _ => {}
        }
    }
    for corner in [(0.0, 0.0), (300.0, 0.0), (300.0, 96.0), (0.0, 96.0)] {
        assert!(corners.contains(&corner), "{corner:?} is not among {corners:?}");
    }
    // Over it stand the pieces.
    assert!(found.entities().any(|e| e.common.layer == "Z-ELEV-SEAM"));
}
