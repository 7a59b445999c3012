//! Revisions by construction: known things are changed in a drawing, and `compare` tells exactly these. What is
//! expected is what the generator did, in the drawing's own inches; nothing is taken from the program.

use std::fmt::Write;

use lapwright::job::Job;
use lapwright::layout::set::LaidSets;
use lapwright::model::change::{Change, Comparison, How, Remark, Subject, WallSide};
use lapwright::model::house::OpeningKind;
use lapwright::pipeline::compared;

use crate::support::{inches, lay_sets};

/// A box: left, bottom, right, top, from the foot of its elevation's wall.
type Box4 = [f64; 4];

#[derive(Clone, Debug)]
pub(crate) struct Face {
    pub(crate) title: String,
    /// Where the lower left corner of its wall stands on the sheet.
    pub(crate) at: (f64, f64),
    /// Corners of its wall.
    pub(crate) wall: Vec<(f64, f64)>,
    pub(crate) windows: Vec<Box4>,
    pub(crate) doors: Vec<Box4>,
    pub(crate) fixtures: Vec<Box4>,
    pub(crate) floor: f64,
    pub(crate) grade: f64,
}

#[derive(Clone, Debug)]
pub(crate) struct Drawn {
    pub(crate) faces: Vec<Face>,
}

impl Drawn {
    /// As a DXF, mirrored left to right with its titles where asked.
    pub(crate) fn dxf(&self, mirror: bool) -> Vec<u8> {
        let x = |x: f64| if mirror { -x } else { x };
        let mut out = String::from("0\nSECTION\n2\nENTITIES\n");
        let ring = |out: &mut String, layer: &str, points: &[(f64, f64)]| {
            write!(out, "0\nPOLYLINE\n8\n{layer}\n66\n1\n70\n1\n").unwrap();
            for (px, py) in points {
                write!(out, "0\nVERTEX\n8\n{layer}\n10\n{}\n20\n{py}\n", x(*px)).unwrap();
            }
            out.push_str("0\nSEQEND\n");
        };
        let line = |out: &mut String, layer: &str, a: (f64, f64), b: (f64, f64)| {
            let (ax, bx) = (x(a.0), x(b.0));
            write!(out, "0\nLINE\n8\n{layer}\n10\n{ax}\n20\n{}\n11\n{bx}\n21\n{}\n", a.1, b.1)
                .unwrap();
        };
        for f in &self.faces {
            let (ox, oy) = f.at;
            let there = |b: &Box4| {
                let [l, s, r, h] = *b;
                [(ox + l, oy + s), (ox + r, oy + s), (ox + r, oy + h), (ox + l, oy + h)]
            };
            let wall: Vec<_> = f.wall.iter().map(|p| (ox + p.0, oy + p.1)).collect();
            ring(&mut out, "A-WALL-OTLN", &wall);
            f.windows.iter().for_each(|b| ring(&mut out, "A-GLAZ", &there(b)));
            f.doors.iter().for_each(|b| ring(&mut out, "A-DOOR", &there(b)));
            f.fixtures.iter().for_each(|b| ring(&mut out, "A-ELEV-MBLK", &there(b)));
            ring(&mut out, "A-ELEV-FRAM", &there(&[-120.0, -100.0, 620.0, 300.0]));
            line(&mut out, "A-FLOR-LEVL", (ox - 90.0, oy + f.floor), (ox + 560.0, oy + f.floor));
            line(&mut out, "C-TOPO-PROF", (ox - 90.0, oy + f.grade), (ox + 560.0, oy + f.grade));
            let at = x(ox + 100.0);
            let (y, title) = (oy - 80.0, &f.title);
            write!(out, "0\nTEXT\n8\nA-ELEV-IDEN\n10\n{at}\n20\n{y}\n40\n9\n1\n{title}\n").unwrap();
        }
        out.push_str("0\nENDSEC\n0\nEOF\n");
        out.into_bytes()
    }
}

/// Numbers by a linear congruence (Knuth's multiplier): the same on every machine.
pub(crate) struct Dice(pub(crate) u64);

impl Dice {
    pub(crate) fn below(&mut self, n: u64) -> u64 {
        self.0 =
            self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % n
    }

    /// A whole number of inches in a range, up or down.
    fn by(&mut self, least: u64, most: u64) -> f64 {
        let size = (least + self.below(most - least + 1)) as f64;
        if self.below(2) == 0 { size } else { -size }
    }
}

/// A house of four elevations: two level walls and two gables, none of which is another's mirror image.
pub(crate) fn house(dice: &mut Dice) -> Drawn {
    let mut faces = Vec::new();
    for (i, title) in ["FRONT", "RIGHT", "REAR", "LEFT"].into_iter().enumerate() {
        let wide = 300.0 + 12.0 * dice.below(10) as f64 + i as f64;
        let high = 108.0;
        let mut wall = vec![(0.0, 0.0), (wide, 0.0), (wide, high)];
        if i % 2 == 1 {
            wall.push((wide / 2.0, high + wide / 4.0));
        }
        wall.push((0.0, high));
        // Windows of different sizes, in bays of 84 in that leave room to move.
        let windows = (0..3)
            .map(|k| {
                let left = 24.0 + 84.0 * k as f64 + dice.below(12) as f64;
                let (w, h) = (28.0 + 4.0 * k as f64, 36.0 + 3.0 * (k + i) as f64);
                [left, 36.0, left + w, 36.0 + h]
            })
            .collect();
        let doors = if i % 2 == 0 { vec![[262.0, 0.0, 298.0 - 2.0, 84.0]] } else { Vec::new() };
        let fixtures = vec![[8.0, 60.0, 16.0, 68.0]];
        let title = format!("{title} ELEVATION");
        let at = (900.0 * i as f64, 0.0);
        faces.push(Face { title, at, wall, windows, doors, fixtures, floor: 4.0, grade: -10.0 });
    }
    Drawn { faces }
}

fn crew() -> Job {
    let mut job = inches();
    job.seams.effort = lapwright::model::seam::Effort::Crew;
    job
}

fn lay(d: &Drawn) -> LaidSets {
    lay_sets(&d.dxf(false), &crew())
}

/// A change as a line: what, where, how, figures to the sixteenth.
fn line(c: &Change) -> String {
    let elevation = c.elevation.as_ref().map(|e| e.to_string()).unwrap_or_default();
    let n = |v: f64| format!("{:.2}", (v * 16.0).round() / 16.0 + 0.0);
    let how = match &c.how {
        How::Added { size, openings } => {
            format!("added {:?} {openings}", size.map(|s| s.map(n)))
        }
        How::Removed { size, openings } => {
            format!("removed {:?} {openings}", size.map(|s| s.map(n)))
        }
        How::Moved { right, up } => format!("moved {} {}", n(*right), n(*up)),
        How::Resized { sides, .. } => format!("resized {:?}", sides.map(n)),
        How::SideMoved { side, by } => format!("side {side:?} {}", n(*by)),
        How::Pitch { from, to } => format!("pitch {} {}", n(*from), n(*to)),
        How::Raised { up } => format!("raised {}", n(*up)),
        How::Kind { from, to } => format!("kind {from:?} {to:?}"),
        How::Renamed { from, to } => format!("renamed {from} {to}"),
        other => format!("{other:?}"),
    };
    format!("{:?} {elevation}: {how}", c.subject)
}

fn told(c: &Comparison) -> Vec<String> {
    let mut out: Vec<String> = c.changes.iter().map(line).collect();
    out.sort();
    out
}

/// A change expected: what, on which elevation, how.
fn expect(out: &mut Vec<String>, subject: Subject, face: &Face, how: How) {
    out.push(expected(subject, &face.title, how));
}

fn expected(subject: Subject, elevation: &str, how: How) -> String {
    let change = Change {
        number: 0,
        zone: None,
        elevation: Some(elevation.into()),
        wall: None,
        opening: None,
        subject,
        old_name: None,
        new_name: None,
        how,
        places: Vec::new(),
        gone: Vec::new(),
    };
    line(&change)
}

fn size(b: Box4) -> Option<[f64; 2]> {
    Some([b[2] - b[0], b[3] - b[1]])
}

/// Changes one thing of an elevation, and says what should be told.
fn change(f: &mut Face, what: u64, dice: &mut Dice, out: &mut Vec<String>) {
    let pick = dice.below(3) as usize;
    match what {
        // A window slides within its bay.
        0 => {
            let (right, up) = (dice.by(2, 14).max(-12.0), dice.by(1, 8));
            let b = &mut f.windows[pick];
            *b = [b[0] + right, b[1] + up, b[2] + right, b[3] + up];
            expect(out, Subject::Opening, f, How::Moved { right, up });
        }
        // A head goes up or down.
        1 => {
            let head = dice.by(2, 10);
            let from = f.windows[pick];
            f.windows[pick][3] += head;
            let (from, to) = (size(from).unwrap(), size(f.windows[pick]).unwrap());
            let sides = [0.0, 0.0, 0.0, head];
            expect(out, Subject::Opening, f, How::Resized { from, to, sides });
        }
        // A window grows to both sides.
        2 => {
            let from = size(f.windows[pick]).unwrap();
            f.windows[pick][0] -= 5.0;
            f.windows[pick][2] += 7.0;
            let (to, sides) = (size(f.windows[pick]).unwrap(), [-5.0, 0.0, 7.0, 0.0]);
            expect(out, Subject::Opening, f, How::Resized { from, to, sides });
        }
        3 => {
            let gone = f.windows.remove(pick);
            expect(out, Subject::Opening, f, How::Removed { size: size(gone), openings: 0 });
        }
        // A small one over the others.
        4 => {
            let left = 30.0 + 60.0 * pick as f64;
            let new = [left, 90.0, left + 19.0, 100.0];
            f.windows.push(new);
            expect(out, Subject::Opening, f, How::Added { size: size(new), openings: 0 });
        }
        _ => change_wall(f, what, (pick, dice), out),
    }
}

/// The same of walls, levels, titles and fixtures.
fn change_wall(f: &mut Face, what: u64, (pick, dice): (usize, &mut Dice), out: &mut Vec<String>) {
    match what {
        // The wall is widened to the right: a gable's slopes go with it.
        5 if f.wall.len() == 4 => {
            let by = 6.0 + dice.below(48) as f64;
            f.wall[1].0 += by;
            f.wall[2].0 += by;
            expect(out, Subject::Wall, f, How::SideMoved { side: WallSide::Right, by });
        }
        // To the left: the rest stays where it is on the sheet.
        6 if f.wall.len() == 4 => {
            let by = 6.0 + dice.below(48) as f64;
            f.wall[0].0 -= by;
            f.wall[3].0 -= by;
            expect(out, Subject::Wall, f, How::SideMoved { side: WallSide::Left, by: -by });
        }
        7 => {
            let by = 4.0 + dice.below(20) as f64;
            let gable = f.wall.len() == 5;
            f.wall.iter_mut().skip(2).for_each(|p| p.1 += by);
            let side = if gable { WallSide::Rake } else { WallSide::Top };
            let each = How::SideMoved { side, by };
            expect(out, Subject::Wall, f, each);
        }
        // The foot of a wall without a door goes down.
        8 if f.doors.is_empty() => {
            let by = -(1.0 + dice.below(3) as f64);
            f.wall[0].1 += by;
            f.wall[1].1 += by;
            expect(out, Subject::Wall, f, How::SideMoved { side: WallSide::Foot, by });
        }
        9 => {
            let up = dice.by(1, 5);
            f.grade += up;
            expect(out, Subject::Grade, f, How::Raised { up });
        }
        10 => {
            let from = f.title.clone();
            f.title = format!("ELEVATION TO THE {}", ["LANE", "YARD", "COURT"][pick]);
            let to = f.title.clone();
            expect(out, Subject::Elevation, f, How::Renamed { from, to });
        }
        11 => {
            let up = dice.by(3, 20);
            let b = &mut f.fixtures[0];
            *b = [b[0], b[1] + up, b[2], b[3] + up];
            expect(out, Subject::Fixture, f, How::Moved { right: 0.0, up });
        }
        12 => {
            let gone = f.fixtures.remove(0);
            let how = How::Removed { size: size(gone), openings: 0 };
            expect(out, Subject::Fixture, f, how);
        }
        13 => {
            let up = dice.by(2, 6);
            f.floor += up;
            expect(out, Subject::FloorLine, f, How::Raised { up });
        }
        _ => {}
    }
}

/// Titles are told once all else is done: the rest is on the elevation by its new name.
fn revise(d: &Drawn, dice: &mut Dice) -> (Drawn, Vec<String>) {
    let mut new = d.clone();
    let mut out = Vec::new();
    let faces = 1 + dice.below(3) as usize;
    let first_face = dice.below(4) as usize;
    for i in 0..faces {
        let f = &mut new.faces[(i + first_face) % 4];
        let (first, second) = (dice.below(14), dice.below(14));
        let mut own = Vec::new();
        let before = f.title.clone();
        change(f, first, dice, &mut own);
        // Two changes of one thing would be one.
        let apart = |a: u64| match a {
            0..=4 => 0,
            11 | 12 => 1,
            a => a,
        };
        if apart(first) != apart(second) {
            change(f, second, dice, &mut own);
        }
        let now = f.title.clone();
        let to_now = |l: String| l.replacen(&format!(" {before}:"), &format!(" {now}:"), 1);
        out.extend(own.into_iter().map(to_now));
    }
    out.sort();
    (new, out)
}

#[test]
fn fifty_revisions_are_told_as_they_were_made() {
    let mut kinds = std::collections::BTreeSet::new();
    for seed in 0..50 {
        let mut dice = Dice(seed);
        let old = house(&mut dice);
        let (mut new, expected) = revise(&old, &mut dice);
        // Every other drawing stands elsewhere on its sheet too.
        if seed % 2 == 1 {
            new.faces.iter_mut().for_each(|f| f.at = (f.at.0 + 1234.5, f.at.1 - 77.25));
        }
        let found = compared(&lay(&old), &lay(&new), None);
        assert_eq!(told(&found), expected, "seed {seed}");
        kinds.extend(expected.iter().map(|l| l.split([' ', ':']).next().unwrap().to_owned()));
        let moved = found.remarks.iter().any(|r| matches!(r, Remark::Moved { .. }));
        assert_eq!(moved, seed % 2 == 1, "seed {seed}: {:?}", found.remarks);
    }
    assert!(kinds.len() >= 6, "only {kinds:?} were changed");
}

#[test]
fn drawings_that_were_moved_or_mirrored_tell_nothing() {
    for seed in [3, 8, 21] {
        let old = house(&mut Dice(seed));
        let first = lay(&old);
        // Each view by itself, as an architect makes room on a sheet.
        let mut moved = old.clone();
        for (i, f) in moved.faces.iter_mut().enumerate() {
            f.at = (f.at.0 * 1.5 + 31.0, f.at.1 + 40.0 * i as f64);
        }
        let found = compared(&first, &lay(&moved), None);
        assert_eq!(told(&found), Vec::<String>::new(), "seed {seed}, moved");
        assert!(found.orders.is_empty() && found.walls.is_empty(), "seed {seed}, moved");
        let named = |r: &Remark| matches!(r, Remark::Moved { elevations } if elevations.len() == 4);
        assert!(found.remarks.iter().any(named), "{:?}", found.remarks);
        // The whole drawing, left to right, under the same titles.
        let other = lay_sets(&old.dxf(true), &crew());
        let found = compared(&first, &other, None);
        assert_eq!(told(&found), Vec::<String>::new(), "seed {seed}, mirrored");
        assert_eq!(found.remarks, [Remark::Mirrored], "seed {seed}");
        // The house the other hand: what was its left is its right.
        let mut hand = old.clone();
        let titles: Vec<String> = hand.faces.iter().map(|f| f.title.clone()).collect();
        for (i, from) in [(1, 3), (3, 1)] {
            hand.faces[i].title.clone_from(&titles[from]);
        }
        let found = compared(&first, &lay_sets(&hand.dxf(true), &crew()), None);
        assert_eq!(told(&found), Vec::<String>::new(), "seed {seed}, other hand");
        assert_eq!(found.remarks, [Remark::Mirrored], "seed {seed}");
    }
}

#[test]
fn things_drawn_in_another_order_tell_nothing() {
    let old = house(&mut Dice(5));
    let mut new = old.clone();
    new.faces.reverse();
    new.faces.iter_mut().for_each(|f| f.windows.reverse());
    let found = compared(&lay(&old), &lay(&new), None);
    assert_eq!(told(&found), Vec::<String>::new());
    assert!(found.remarks.is_empty(), "{:?}", found.remarks);
    // Not even noise of the sixteenth of an inch that no tape tells.
    let mut noisy = old.clone();
    for (i, p) in noisy.faces.iter_mut().flat_map(|f| &mut f.wall).enumerate() {
        p.1 += if i % 2 == 0 { 1.0 / 32.0 } else { 0.0 };
    }
    assert_eq!(told(&compared(&lay(&old), &lay(&noisy), None)), Vec::<String>::new());
}

#[test]
fn elevations_walls_and_kinds_that_come_and_go_are_told_once() {
    let old = house(&mut Dice(11));
    let first = lay(&old);
    // An elevation that is gone goes with its openings: three windows, and the door of the rear.
    let mut new = old.clone();
    let gone = new.faces.remove(2);
    let found = compared(&first, &lay(&new), None);
    let size = Some([gone.wall[1].0, 108.0]);
    let how = How::Removed { size, openings: 4 };
    assert_eq!(told(&found), [expected(Subject::Elevation, &gone.title, how)]);
    // And comes as it went.
    let found = compared(&lay(&new), &first, None);
    let how = How::Added { size, openings: 4 };
    assert_eq!(told(&found), [expected(Subject::Elevation, &gone.title, how)]);
    // A window is drawn on the layer of doors.
    let mut new = old.clone();
    let window = new.faces[0].windows.remove(0);
    new.faces[0].doors.push(window);
    let found = compared(&first, &lay(&new), None);
    let how = How::Kind { from: OpeningKind::Window, to: OpeningKind::Door };
    assert_eq!(told(&found), [expected(Subject::Opening, &old.faces[0].title, how)]);
}

#[test]
fn orders_differ_by_what_the_two_takeoffs_say() {
    let old = house(&mut Dice(2));
    let mut new = old.clone();
    // A gable less: its windows and its posts' lengths go, panels with them.
    new.faces.remove(3);
    let (was, is) = (lay(&old), lay(&new));
    let found = compared(&was, &is, None);
    assert!(found.orders.iter().any(|o| o.more < 0.0), "{:?}", found.orders);
    let order = |sets: &LaidSets, id: &str| {
        sets.house.takeoff.line(id).filter(|l| sets.house.takeoff.buys(l)).map_or(0.0, |l| l.order)
    };
    for o in &found.orders {
        assert_eq!(o.order, [order(&was, &o.id), order(&is, &o.id)], "{}", o.id);
        assert_eq!(o.more, o.order[1] - o.order[0], "{}", o.id);
    }
    // Each line that differs is told.
    for l in was.house.takeoff.lines.iter().filter(|l| was.house.takeoff.buys(l)) {
        let told = found.orders.iter().any(|o| o.id == l.id);
        assert_eq!(told, order(&is, &l.id) != l.order, "{}", l.id);
    }
    // By walls, parts of each line sum to what the lines need.
    let panels = |sets: &LaidSets| sets.house.takeoff.line("panels").unwrap().net;
    let parts: f64 = found
        .walls
        .iter()
        .flat_map(|w| &w.lines)
        .filter(|l| l.id == *"panels")
        .map(|l| l.net[1] - l.net[0])
        .sum();
    assert!((parts - (panels(&is) - panels(&was))).abs() < 1e-6, "{parts}");
}

#[test]
fn the_sheets_of_a_revision_show_what_changed_and_nothing_else() {
    let old = house(&mut Dice(7));
    let mut new = old.clone();
    let mut made = Vec::new();
    change(&mut new.faces[0], 0, &mut Dice(1), &mut made);
    change(&mut new.faces[3], 3, &mut Dice(1), &mut made);
    let (was, is) = (lay(&old), lay(&new));
    let found = compared(&was, &is, Some("C"));
    assert_eq!((found.changes.len(), found.revision.as_str()), (2, "C"));
    let sheets = lapwright::annotate::revised(&is.house.layout, &is.house.backdrops, &found);
    let names: Vec<&str> = sheets.iter().map(|s| s.name.as_str()).collect();
    assert!(names[0].contains("revisions"), "{names:?}");
    // Walls of two elevations, and overviews that show them; the others are as they were.
    let walls = names.iter().filter(|n| n.contains("wall-")).collect::<Vec<_>>();
    assert!(walls.iter().any(|n| n.contains("wall-f")), "{names:?}");
    assert!(walls.iter().any(|n| n.contains("wall-l")), "{names:?}");
    assert!(!walls.iter().any(|n| n.contains("wall-re") || n.contains("wall-ri")), "{names:?}");
    let says = |s: &lapwright::model::sheet::Sheet, words: &str| {
        crate::sheets::texts(s).any(|t| t.content.starts_with(words))
    };
    // In triangles, in the title block and in the table over it; on the first sheet without triangles.
    let letters = |s| crate::sheets::texts(s).filter(|t| t.content == "C").count();
    assert_eq!(letters(&sheets[0]), 2);
    for s in &sheets[1..] {
        assert!(letters(s) > 2, "{}: no letter", s.name);
    }
    for s in &sheets {
        assert!(says(s, "2 changes: see the sheet of"), "{}", s.name);
    }
    for s in &sheets {
        crate::sheets::legible("revision", s);
    }
}
