//! Our reading against the independent `dxf` crate, entity by entity, on every sample.

use dxf::entities::EntityType;
use lapwright::finding::Findings;
use lapwright::model::drawing::{Drawing, Shape, Space};
use lapwright::origin::EntityKind;
use lapwright::read::{self, Limits};

use crate::support::samples;

fn ours(bytes: &[u8]) -> Drawing {
    let mut notes = Findings::default();
    let d = read::drawing(bytes, "sample", &Limits::default(), &mut notes).unwrap();
    assert!(notes.all().iter().all(|n| n.code().word() == "entity-skipped"), "{:?}", notes.all());
    d
}

/// Layer and rounded coordinates of a shape, for comparing.
fn key(layer: &str, points: &[(f64, f64)]) -> String {
    let mut out = layer.to_uppercase();
    for (x, y) in points {
        out.push_str(&format!(" {:.4},{:.4}", x + 0.0, y + 0.0));
    }
    out
}

#[test]
fn every_sample_reads_as_the_dxf_crate_reads_it() {
    for (stem, path) in samples() {
        let bytes = std::fs::read(&path).unwrap();
        let mine = ours(&bytes);
        let theirs = dxf::Drawing::load(&mut std::io::Cursor::new(&bytes)).unwrap();
        // What stands in model space itself; block contents are compared through their inserts' places.
        let mut a: Vec<String> = Vec::new();
        for i in mine.items.iter().filter(|i| i.space == Space::Model && i.group.is_none()) {
            let layer = &mine.layers[i.layer].name;
            match &i.shape {
                Shape::Polyline(p) if i.origin.entity == EntityKind::Circle => {
                    let (u, v) = (p.vertices[0].at, p.vertices[1].at);
                    a.push(key(layer, &[((u.x + v.x) / 2.0, u.y), ((u.x - v.x) / 2.0, 0.0)]));
                }
                Shape::Polyline(p) => a.push(key(
                    layer,
                    &p.vertices.iter().map(|v| (v.at.x, v.at.y)).collect::<Vec<_>>(),
                )),
                Shape::Text(t) => {
                    a.push(format!("{} {}", key(layer, &[(t.at.x, t.at.y)]), t.content))
                }
                _ => {}
            }
        }
        for g in mine.groups.iter().filter(|g| g.parent.is_none()) {
            let o = g.placed * lapwright::geom::vocabulary::Point::ZERO;
            a.push(format!("{} {}", key(&mine.layers[g.layer].name, &[(o.x, o.y)]), g.block));
        }
        let mut b: Vec<String> = Vec::new();
        for e in theirs.entities() {
            let layer = &e.common.layer;
            match &e.specific {
                EntityType::Line(l) => b.push(key(layer, &[(l.p1.x, l.p1.y), (l.p2.x, l.p2.y)])),
                EntityType::LwPolyline(p) => {
                    b.push(key(layer, &p.vertices.iter().map(|v| (v.x, v.y)).collect::<Vec<_>>()))
                }
                EntityType::Polyline(p) => b.push(key(
                    layer,
                    &p.vertices().map(|v| (v.location.x, v.location.y)).collect::<Vec<_>>(),
                )),
                EntityType::Circle(c) => {
                    b.push(key(layer, &[(c.center.x, c.center.y), (c.radius, 0.0)]))
                }
                EntityType::Text(t) => {
                    b.push(format!("{} {}", key(layer, &[(t.location.x, t.location.y)]), t.value))
                }
                EntityType::Insert(i) => {
                    b.push(format!("{} {}", key(layer, &[(i.location.x, i.location.y)]), i.name))
                }
                _ => {}
            }
        }
        a.sort();
        b.sort();
        assert!(!a.is_empty() && a == b, "{stem}:\nours {a:#?}\ntheirs {b:#?}");
    }
}

#[test]
fn drawings_the_dxf_crate_writes_are_read_back() {
    use dxf::entities::{Arc, Circle, Entity, Insert, Line};
    let mut d = dxf::Drawing::new();
    d.header.version = dxf::enums::AcadVersion::R2000;
    let mut add = |e: EntityType, layer: &str| {
        let mut e = Entity::new(e);
        e.common.layer = layer.to_owned();
        d.add_entity(e);
    };
    add(
        EntityType::Line(Line::new(dxf::Point::new(1.0, 2.0, 0.0), dxf::Point::new(3.0, 4.5, 0.0))),
        "A",
    );
    add(EntityType::Circle(Circle::new(dxf::Point::new(10.0, 0.0, 0.0), 2.5)), "B");
    add(EntityType::Arc(Arc::new(dxf::Point::new(0.0, 0.0, 0.0), 10.0, 30.0, 120.0)), "B");
    add(EntityType::Insert(Insert { name: "NONE".into(), ..Default::default() }), "C");
    let mut bytes = Vec::new();
    d.save(&mut bytes).unwrap();
    let mut notes = Findings::default();
    let mine = read::drawing(&bytes, "w", &Limits::default(), &mut notes).unwrap();
    assert!(notes.all().iter().any(|n| n.code().word() == "block-missing"));
    let arcs: Vec<_> = mine.items.iter().filter(|i| i.origin.entity == EntityKind::Arc).collect();
    let Shape::Polyline(p) = &arcs[0].shape else { panic!() };
    // Start and end of the arc by its angles.
    let at = |deg: f64| (10.0 * deg.to_radians().cos(), 10.0 * deg.to_radians().sin());
    let (first, last) = (p.vertices[0].at, p.vertices[2].at);
    assert!((first.x - at(30.0).0).abs() < 1e-9 && (last.y - at(120.0).1).abs() < 1e-9);
}

#[test]
fn nested_mirrored_and_arrayed_blocks_stand_where_they_should() {
    let text = "0\nSECTION\n2\nBLOCKS\n0\nBLOCK\n8\n0\n2\nINNER\n10\n1\n20\n0\n0\nLINE\n8\n0\n10\n1\n20\n0\n11\n2\n21\n0\n0\nENDBLK\n\
                0\nBLOCK\n8\n0\n2\nOUTER\n10\n0\n20\n0\n0\nINSERT\n8\n0\n2\nINNER\n10\n5\n20\n0\n41\n-1\n43\n0\n0\nENDBLK\n0\nENDSEC\n\
                0\nSECTION\n2\nENTITIES\n0\nINSERT\n8\nA-GLAZ\n2\nOUTER\n10\n100\n20\n0\n50\n90\n70\n2\n44\n10\n0\nENDSEC\n0\nEOF\n";
    let mut notes = Findings::default();
    let d = read::drawing(text.as_bytes(), "n", &Limits::default(), &mut notes).unwrap();
    // Inner line from (0,0) to (1,0) mirrored at 5: (5,0)-(4,0); turned by 90 at (100,0): (100,5)-(100,4);
    // the second column 10 along the turned x axis: (100,15)-(100,14).
    let ends: Vec<(f64, f64)> = d
        .items
        .iter()
        .map(|i| match &i.shape {
            Shape::Polyline(p) => (p.vertices[0].at.y.round(), p.vertices[1].at.y.round()),
            _ => panic!(),
        })
        .collect();
    assert_eq!(ends, [(5.0, 4.0), (15.0, 14.0)]);
    // Layer 0 takes the insert's layer.
    assert!(d.items.iter().all(|i| d.layers[i.layer].name == "A-GLAZ"));
}

#[test]
fn a_block_that_inserts_itself_ends_in_a_note() {
    let text = "0\nSECTION\n2\nBLOCKS\n0\nBLOCK\n8\n0\n2\nB\n10\n0\n20\n0\n0\nINSERT\n8\n0\n2\nB\n10\n0\n20\n0\n70\n30000\n71\n30000\n0\nENDBLK\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n0\nINSERT\n8\n0\n2\nB\n10\n0\n20\n0\n0\nENDSEC\n0\nEOF\n";
    let mut notes = Findings::default();
    read::drawing(text.as_bytes(), "n", &Limits::default(), &mut notes).unwrap();
    assert!(notes.all().iter().any(|n| n.code().word() == "block-nesting"));
}
