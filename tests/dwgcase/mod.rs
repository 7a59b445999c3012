//! One small house written twice: as a DWG by the library that reads them, and as the text of a DXF.

pub(crate) mod mutants;

use std::fmt::Write as _;

use opendwg::object::{
    BoundaryPath, Entity, EntityCommon, Hatch, HatchEdge, HatchGradient, HatchPattern, HatchVertex,
    Insert, Layer, LwPolyline, MInsert, MText, PathEdges, PatternLine, PolylinePath, RawObject,
    Text,
};
use opendwg::{Drawing, Handle, Version};

/// What stands in the house's drawing.
enum Drawn {
    /// A closed line: layer, corners with their bulges.
    Ring(&'static str, Vec<([f64; 2], f64)>),
    /// A text: layer, place, height, words.
    Words(&'static str, [f64; 2], f64, &'static str),
    /// A hatch of level lines 4 apart: layer, outer loop, islands.
    Siding(&'static str, Vec<Vec<[f64; 2]>>),
    /// The block of a window, in a row: place, columns, spacing.
    Windows([f64; 2], i16, f64),
}

/// The layers, and whether each is off.
const LAYERS: [(&str, bool); 7] = [
    ("A-WALL-OTLN", false),
    ("A-GLAZ", false),
    ("A-DOOR", false),
    ("A-WALL-PATT", false),
    ("A-ANNO-TTLB", false),
    ("A-GLAZ-IDEN", false),
    ("A-GLAZ-DEMO", true),
];

/// A window 36 by 48 with its sill at 0, as its block draws it.
const WINDOW: [[f64; 2]; 4] = [[0.0, 0.0], [36.0, 0.0], [36.0, 48.0], [0.0, 48.0]];

fn box_of(x: f64, y: f64, w: f64, h: f64) -> Vec<([f64; 2], f64)> {
    [[x, y], [x + w, y], [x + w, y + h], [x, y + h]].map(|p| (p, 0.0)).to_vec()
}

/// A wall of 25 ft by 8 ft with two windows in a row, an opening with a half-round head, a door, a hatch
/// with holes for them, and a window on a layer that is off.
fn house() -> Vec<Drawn> {
    let mut arched = box_of(190.0, 36.0, 24.0, 24.0);
    // Over its top, from right to left, half a circle: a bulge of 1.
    arched[2].1 = 1.0;
    let outer = vec![[0.0, 0.0], [300.0, 0.0], [300.0, 96.0], [0.0, 96.0]];
    let hole = vec![[250.0, 0.0], [286.0, 0.0], [286.0, 80.0], [250.0, 80.0]];
    vec![
        Drawn::Ring("A-WALL-OTLN", box_of(0.0, 0.0, 300.0, 96.0)),
        Drawn::Windows([30.0, 36.0], 2, 80.0),
        Drawn::Ring("A-GLAZ", arched),
        Drawn::Ring("A-DOOR", box_of(250.0, 0.0, 36.0, 80.0)),
        Drawn::Ring("A-GLAZ-DEMO", box_of(150.0, 36.0, 30.0, 40.0)),
        Drawn::Siding("A-WALL-PATT", vec![outer, hole]),
        Drawn::Words("A-ANNO-TTLB", [90.0, -30.0], 9.0, "FRONT ELEVATION"),
        Drawn::Words("A-GLAZ-IDEN", [40.0, 60.0], 4.0, "W1 \u{e9}\u{3b1}"),
    ]
}

/// The house as a DWG of 2018.
pub(crate) fn dwg() -> Vec<u8> {
    drawn(&house(), |_| {}).to_bytes().unwrap()
}

/// The house with a paragraph of text that cannot be decoded.
pub(crate) fn dwg_with_a_broken_text() -> Vec<u8> {
    let with = |out: &mut Drawing| {
        let kept = RawObject {
            type_code: 44,
            class_name: None,
            source_version: Version::R2018,
            data: vec![0; 4],
            data_bits: 8,
            strings: Some((Vec::new(), 0)),
            handles: Vec::new(),
            tail_handles_raw: Vec::new(),
            tail_handle_bits: 0,
        };
        put(out, "A-ANNO-TTLB", Entity::Unknown(kept));
    };
    drawn(&house(), with).to_bytes().unwrap()
}

fn layer(out: &Drawing, name: &str) -> EntityCommon {
    EntityCommon::new(out.layer_by_name(name).unwrap())
}

fn put(out: &mut Drawing, on: &str, entity: Entity) -> Handle {
    let (model, common) = (out.model_space(), layer(out, on));
    out.add_entity(model, common, entity).unwrap()
}

fn ring(corners: &[([f64; 2], f64)]) -> Entity {
    Entity::LwPolyline(Box::new(LwPolyline {
        flags: opendwg::object::entities::poly::LWPOLYLINE_CLOSED,
        const_width: 0.0,
        elevation: 0.0,
        thickness: 0.0,
        extrusion: [0.0, 0.0, 1.0],
        points: corners.iter().map(|c| c.0).collect(),
        bulges: corners.iter().map(|c| c.1).collect(),
        vertex_ids: Vec::new(),
        widths: Vec::new(),
        read_points: Default::default(),
    }))
}

fn siding(loops: &[Vec<[f64; 2]>]) -> Entity {
    // The outer loop of edges, the islands as polylines: both ways in which a hatch is stored.
    let edges = |points: &[[f64; 2]]| {
        let next = points.iter().cycle().skip(1);
        let edge = |(a, b): (&[f64; 2], &[f64; 2])| HatchEdge::Line { start: *a, end: *b };
        PathEdges::Edges(points.iter().zip(next).map(edge).collect())
    };
    let polyline = |points: &[[f64; 2]]| {
        let vertices = points.iter().map(|p| HatchVertex { point: *p, bulge: 0.0 }).collect();
        PathEdges::Polyline(PolylinePath { has_bulges: false, closed: true, vertices })
    };
    let path = |(i, points): (usize, &Vec<[f64; 2]>)| BoundaryPath {
        flags: if i == 0 { 1 } else { 18 },
        edges: if i == 0 { edges(points) } else { polyline(points) },
        boundary_objects: Vec::new(),
    };
    let line = PatternLine { angle: 0.0, base: [0.0, 0.0], offset: [0.0, 4.0], dashes: Vec::new() };
    Entity::Hatch(Box::new(Hatch {
        gradient: HatchGradient::default(),
        elevation: 0.0,
        extrusion: [0.0, 0.0, 1.0],
        pattern_name: "LAP".to_owned(),
        associative: false,
        paths: loops.iter().enumerate().map(path).collect(),
        style: 0,
        pattern_type: 2,
        pattern: Some(HatchPattern { angle: 0.0, scale: 1.0, double: false, lines: vec![line] }),
        pixel_size: 0.0,
        seed_points: Vec::new(),
        read_pattern: Default::default(),
    }))
}

fn drawn(house: &[Drawn], with: impl Fn(&mut Drawing)) -> Drawing {
    let mut out = Drawing::new();
    for (name, off) in LAYERS {
        let mut new = Layer::new(name);
        new.off = off;
        out.add_layer(new).unwrap();
    }
    let block = out.add_block("WINDOW").unwrap();
    let common = layer(&out, "A-GLAZ");
    out.add_entity(block, common, ring(&WINDOW.map(|p| (p, 0.0)))).unwrap();
    for thing in house {
        match thing {
            Drawn::Ring(on, corners) => put(&mut out, on, ring(corners)),
            Drawn::Words(on, [x, y], height, words) => {
                put(&mut out, on, MText::new([*x, *y, 0.0], *height, 0.0, words).into())
            }
            Drawn::Siding(on, loops) => put(&mut out, on, siding(loops)),
            Drawn::Windows([x, y], columns, spacing) => {
                let insert = Insert::new(block, [*x, *y, 0.0]);
                let array = MInsert {
                    insert,
                    columns: *columns,
                    rows: 1,
                    column_spacing: *spacing,
                    row_spacing: 0.0,
                    read_attrib_code: Default::default(),
                };
                put(&mut out, "A-GLAZ", Entity::MInsert(array))
            }
        };
    }
    with(&mut out);
    out
}

/// The house as the text of a DXF.
pub(crate) fn dxf() -> String {
    let mut out = String::from(
        "0\nSECTION\n2\nHEADER\n9\n$ACADVER\n1\nAC1032\n9\n$INSUNITS\n70\n1\n0\nENDSEC\n",
    );
    out += "0\nSECTION\n2\nTABLES\n0\nTABLE\n2\nLAYER\n";
    for (name, off) in LAYERS {
        let _ = write!(out, "0\nLAYER\n2\n{name}\n70\n0\n62\n{}\n", if off { -7 } else { 7 });
    }
    out += "0\nENDTAB\n0\nENDSEC\n0\nSECTION\n2\nBLOCKS\n0\nBLOCK\n8\n0\n2\nWINDOW\n70\n0\n10\n0\n20\n0\n";
    out += &ring_in_pairs("A-GLAZ", &WINDOW.map(|p| (p, 0.0)));
    out += "0\nENDBLK\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n";
    for thing in house() {
        out += &match thing {
            Drawn::Ring(on, corners) => ring_in_pairs(on, &corners),
            Drawn::Words(on, [x, y], height, words) => format!(
                "0\nMTEXT\n8\n{on}\n10\n{x}\n20\n{y}\n40\n{height}\n71\n1\n44\n1\n1\n{words}\n11\n1\n21\n0\n"
            ),
            Drawn::Siding(on, loops) => siding_in_pairs(on, &loops),
            Drawn::Windows([x, y], columns, spacing) => format!(
                "0\nINSERT\n8\nA-GLAZ\n2\nWINDOW\n10\n{x}\n20\n{y}\n70\n{columns}\n71\n1\n44\n{spacing}\n45\n0\n"
            ),
        };
    }
    out + "0\nENDSEC\n0\nEOF\n"
}

/// The house as an SVG, its layers as groups with names; y counts down.
pub(crate) fn svg() -> String {
    let mut out = String::from("<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 -100 300 160'>");
    let path = |corners: &[([f64; 2], f64)], [dx, dy]: [f64; 2]| -> String {
        let mut d = String::new();
        for (i, ([x, y], _)) in corners.iter().enumerate() {
            let bulge = if i == 0 { 0.0 } else { corners[i - 1].1 };
            let (x, y) = (x + dx, -(y + dy));
            // A bulge of 1 is half a circle; counterclockwise is seen so with y down by the sweep of 0.
            d += &match (i, bulge) {
                (0, _) => format!("M{x} {y}"),
                (_, 0.0) => format!("L{x} {y}"),
                _ => format!("A12 12 0 0 0 {x} {y}"),
            };
        }
        d + "Z"
    };
    for thing in house() {
        out += &match thing {
            Drawn::Ring("A-GLAZ-DEMO", _) | Drawn::Siding(..) => String::new(),
            Drawn::Ring(on, corners) => {
                format!("<g id='{on}'><path d='{}'/></g>", path(&corners, [0.0; 2]))
            }
            Drawn::Words(on, [x, y], height, words) => format!(
                "<g id='{on}'><text x='{x}' y='{}' font-size='{height}'>{words}</text></g>",
                -y
            ),
            Drawn::Windows([x, y], columns, spacing) => (0..columns)
                .map(|i| {
                    let at = [x + f64::from(i) * spacing, y];
                    let d = path(&WINDOW.map(|p| (p, 0.0)), at);
                    format!("<g id='A-GLAZ'><path d='{d}'/></g>")
                })
                .collect(),
        };
    }
    out + "</svg>"
}

fn ring_in_pairs(on: &str, corners: &[([f64; 2], f64)]) -> String {
    let mut out = format!("0\nLWPOLYLINE\n8\n{on}\n90\n{}\n70\n1\n", corners.len());
    for ([x, y], bulge) in corners {
        let _ = write!(out, "10\n{x}\n20\n{y}\n42\n{bulge}\n");
    }
    out
}

fn siding_in_pairs(on: &str, loops: &[Vec<[f64; 2]>]) -> String {
    let mut out = format!("0\nHATCH\n8\n{on}\n2\nLAP\n70\n0\n91\n{}\n", loops.len());
    for points in loops {
        let _ = write!(out, "92\n2\n72\n0\n73\n1\n93\n{}\n", points.len());
        for [x, y] in points {
            let _ = write!(out, "10\n{x}\n20\n{y}\n");
        }
    }
    out + "75\n0\n76\n2\n52\n0\n41\n1\n77\n0\n78\n1\n53\n0\n43\n0\n44\n0\n45\n0\n46\n4\n79\n0\n"
}

/// A text of one line, as a DWG holds it: for tests of what is written in it.
pub(crate) fn dwg_saying(words: &str) -> Vec<u8> {
    let with = |out: &mut Drawing| {
        put(out, "A-ANNO-TTLB", Text::new([10.0, -60.0, 0.0], 5.0, words).into());
    };
    drawn(&house(), with).to_bytes().unwrap()
}
