//! The judge itself: a wall on agreed layers is judged right, and each fault put into the truth is found.

use std::collections::BTreeSet;

use super::Drawing;
use super::judge::{Fault, Verdict, judged};
use super::shape::{Area, Rect, bounds};
use super::truth::{TrueView, TrueWall, Truth};

/// A closed line of a file, and the end of it.
fn closed(layer: &str, r: Rect) -> String {
    let mut out = format!("0\nPOLYLINE\n8\n{layer}\n66\n1\n70\n1\n");
    for p in r.corners() {
        out += &format!("0\nVERTEX\n8\n{layer}\n10\n{}\n20\n{}\n", p[0], p[1]);
    }
    out + "0\nSEQEND\n"
}

const WALL: Rect = Rect { x0: 0.0, y0: 0.0, x1: 300.0, y1: 96.0 };
const WINDOW: Rect = Rect { x0: 100.0, y0: 30.0, x1: 136.0, y1: 78.0 };

fn wall(at: Rect, openings: Vec<Rect>) -> TrueWall {
    let taken = openings.iter().fold(Area::none(), |a, r| a.and(&Area::rect(*r)));
    let siding = Area::rect(at).minus(&taken);
    let outline = at.corners();
    let net = siding.size() / 144.0;
    TrueWall { siding, room: bounds(&outline), outline, net, inches: 1.0, openings }
}

/// A wall of 300 by 96 in with a window of 36 by 48 in, and what is said to be true of it.
fn verdict(walls: Vec<TrueWall>, again: Vec<TrueWall>) -> Verdict {
    let dxf = format!(
        "0\nSECTION\n2\nENTITIES\n{}{}0\nENDSEC\n0\nEOF\n",
        closed("A-WALL-OTLN", WALL),
        closed("A-GLAZ", WINDOW)
    );
    let view = |walls, again| TrueView { title: "FRONT ELEVATION".to_owned(), walls, again };
    judged(&Drawing {
        seed: 0,
        dxf,
        truth: Truth { views: vec![view(walls, false), view(again, true)], inches: 1.0 },
        habits: BTreeSet::new(),
        json: serde_json::Value::Null,
        unit: "inch",
    })
}

fn faults(v: &Verdict) -> Vec<String> {
    v.faults.iter().map(|f| f.fault.word()).collect()
}

#[test]
fn a_wall_on_agreed_layers_is_judged_right() {
    let v = verdict(vec![wall(WALL, vec![WINDOW])], Vec::new());
    assert!(v.faults.is_empty() && v.walls_right() && v.areas_right(), "{:?}", v.faults);
}

#[test]
fn each_fault_is_found() {
    let right = || wall(WALL, vec![WINDOW]);
    let far = Rect::new(600.0, 0.0, 900.0, 96.0);
    let halves = [Rect::new(0.0, 0.0, 150.0, 96.0), Rect::new(150.0, 0.0, 300.0, 96.0)];
    // One part in a hundred more than is drawn.
    let more = TrueWall { net: right().net * 1.01, ..right() };
    let none = TrueWall { openings: Vec::new(), ..right() };
    let cases: [(Vec<TrueWall>, Vec<TrueWall>, Fault); 7] = [
        (vec![more], vec![], Fault::Area(0.0, 0.0)),
        (vec![none], vec![], Fault::Openings(0, 0)),
        (vec![right(), wall(far, vec![])], vec![], Fault::Missing),
        (halves.map(|h| wall(h, vec![])).to_vec(), vec![], Fault::Merged),
        (vec![wall(far, vec![])], vec![], Fault::NoWall(0.0)),
        (vec![], vec![right()], Fault::Twice),
        (vec![wall(Rect::new(0.0, 0.0, 300.0, 192.0), vec![WINDOW])], vec![], Fault::Part(0.5)),
    ];
    for (walls, again, fault) in cases {
        let v = verdict(walls, again);
        assert!(faults(&v).contains(&fault.word()), "{fault:?}: {:?}", v.faults);
        // Nothing was said of it, so it is wrong without an alarm.
        let silent = v.silent(&BTreeSet::new()).map(|f| f.fault.word()).collect::<Vec<_>>();
        assert!(silent.contains(&fault.word()), "{fault:?}: {:?}", v.faults);
    }
}
