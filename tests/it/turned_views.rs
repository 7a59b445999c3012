//! Views drawn turned, mirrored or upside down are refused by name, and laid out as the upright one
//! where the job says how they are turned.

use std::fmt::Write;

use lapwright::finding::views::{Tells, ViewFinding};
use lapwright::finding::{FindingKind, Findings, Refusal};
use lapwright::geom::vocabulary::{Affine, Point};
use lapwright::job::Job;
use lapwright::layout::Layout;
use lapwright::model::turn::Turn;

use crate::small_walls::job;

/// How a house is drawn otherwise than upright.
struct Drawn {
    map: Affine,
    /// Whether text is turned with the rest.
    text: bool,
}

fn drawn(turn: &str, text: bool) -> Drawn {
    // What the turn undoes.
    Drawn { map: Turn::named(turn).unwrap().about(Point::new(300.0, 40.0)).inverse(), text }
}

impl Drawn {
    fn ring(&self, layer: &str, points: &[(f64, f64)]) -> String {
        let mut out = format!("0\nPOLYLINE\n8\n{layer}\n66\n1\n70\n1\n");
        for (x, y) in points {
            let p = self.map * Point::new(*x, *y);
            let _ = write!(out, "0\nVERTEX\n8\n{layer}\n10\n{}\n20\n{}\n", p.x, p.y);
        }
        out + "0\nSEQEND\n"
    }

    fn line(&self, layer: &str, a: (f64, f64), b: (f64, f64)) -> String {
        let (a, b) = (self.map * Point::from(a), self.map * Point::from(b));
        format!("0\nLINE\n8\n{layer}\n10\n{}\n20\n{}\n11\n{}\n21\n{}\n", a.x, a.y, b.x, b.y)
    }

    /// A text; group 71 says of mirrored ones that they are drawn backward.
    fn text(&self, at: (f64, f64), words: &str) -> String {
        let p = self.map * Point::from(at);
        let [a, b, c, d, ..] = self.map.as_coeffs();
        let mirrored = self.text && a * d - b * c < 0.0;
        let along = if mirrored { (-a, -b) } else { (a, b) };
        let angle = if self.text { along.1.atan2(along.0).to_degrees() } else { 0.0 };
        let flags = if mirrored { "71\n2\n" } else { "" };
        format!(
            "0\nTEXT\n8\nA-ELEV-IDEN\n10\n{}\n20\n{}\n40\n9\n50\n{angle}\n{flags}1\n{words}\n",
            p.x, p.y
        )
    }

    /// A gabled front with a door, windows, grade and a level line.
    fn house(&self) -> String {
        let rect = crate::support::rect;
        let wall = [(0.0, 0.0), (360.0, 0.0), (360.0, 100.0), (180.0, 190.0), (0.0, 100.0)];
        let all = [
            self.ring("A-WALL-OTLN", &wall),
            self.ring("A-DOOR", &rect(60.0, 0.0, 96.0, 80.0)),
            self.ring("A-GLAZ", &rect(140.0, 36.0, 176.0, 80.0)),
            self.ring("A-GLAZ", &rect(240.0, 30.0, 276.0, 80.0)),
            self.line("C-TOPO-PROF", (-40.0, -20.0), (400.0, -24.0)),
            self.line("A-FLOR-LEVL", (-20.0, 2.0), (380.0, 2.0)),
            self.text((100.0, -50.0), "FRONT ELEVATION"),
        ];
        format!("0\nSECTION\n2\nENTITIES\n{}0\nENDSEC\n0\nEOF\n", all.concat())
    }
}

fn lay(source: &str, job: &Job) -> (Result<Layout, Refusal>, Findings) {
    let mut findings = Findings::default();
    let done =
        lapwright::pipeline::layout(source.as_bytes(), "d.dxf", job, &mut findings, &mut |_| {});
    (done.map(|s| s.house.layout), findings)
}

/// The view that is refused, its turn and what tells.
fn refused(source: &str) -> Option<(String, Turn, Vec<Tells>)> {
    let (done, _) = lay(source, &job(""));
    match done.map_err(|e| e.0.kind) {
        Ok(_) => None,
        Err(FindingKind::Views(ViewFinding::ViewTurned { view, turn, tells, accepted: false })) => {
            Some((view, turn, tells))
        }
        Err(other) => unreachable!("{other:?}"),
    }
}

/// Trim and pieces without the marks that tell nothing of where they are.
#[allow(clippy::type_complexity)] // Walls, order lines, heights.
fn laid_as(l: &Layout) -> (Vec<(f64, f64)>, Vec<(String, f64)>, Vec<f64>) {
    let pieces = l.pieces().map(|(.., p)| (p.start, p.end)).collect();
    let orders = l.takeoff.iter().map(|t| (format!("{:?}", t.item), t.order)).collect();
    (pieces, orders, l.trims.iter().map(|t| t.length).collect())
}

#[test]
fn a_view_that_stands_upright_is_laid_out() {
    assert_eq!(refused(&drawn("0", true).house()), None);
}

#[test]
fn every_turn_is_refused_and_laid_as_the_upright_view_where_the_job_says_it() {
    let (clean, _) = lay(&drawn("0", true).house(), &job(""));
    let clean = clean.unwrap();
    for word in ["90", "180", "270", "mirror", "mirror 90", "mirror 180", "mirror 270"] {
        let source = drawn(word, true).house();
        let (view, turn, tells) = refused(&source).unwrap();
        assert_eq!((view.as_str(), turn.word()), ("FRONT ELEVATION", word));
        assert_eq!(tells[0], Tells::Title, "{word}");
        // Left for right only letters tell.
        assert_eq!(tells.len() > 1, word != "mirror", "{word}: {tells:?}");
        let asked = format!("[[elevation]]\nname = \"front elevation\"\nturn = \"{word}\"\n");
        let (laid, findings) = lay(&source, &job(&asked));
        let laid = laid.unwrap();
        assert_eq!(laid_as(&laid), laid_as(&clean), "{word}");
        let codes: Vec<&str> = findings.all().iter().map(|f| f.code().word()).collect();
        assert!(
            codes.contains(&"view-set-upright") && !codes.contains(&"view-turned"),
            "{codes:?}"
        );
        // Over the source the layout lies as the view is drawn.
        let at = |l: &Layout| Affine::new(l.elevations[0].to_source) * Point::new(30.0, 50.0);
        let over = drawn(word, true).map * at(&clean);
        assert!(over.distance(at(&laid)) < 0.01, "{word}: {over:?} {:?}", at(&laid));
    }
}

#[test]
fn a_house_on_its_head_tells_so_though_its_text_reads() {
    let (view, turn, tells) = refused(&drawn("180", false).house()).unwrap();
    assert_eq!((view.is_empty(), turn.word()), (false, "180"));
    assert!(tells.contains(&Tells::Gables) && tells.contains(&Tells::Doors), "{tells:?}");
    assert!(tells.contains(&Tells::Grade) && !tells.contains(&Tells::Title), "{tells:?}");
}

#[test]
fn text_that_was_turned_by_itself_turns_no_house() {
    // Upright in all but its title, and a note on its side.
    let upright = drawn("0", true);
    let on_head = drawn("180", true).text((100.0, 130.0), "FRONT ELEVATION");
    let title = upright.text((100.0, -50.0), "FRONT ELEVATION");
    let source = upright.house().replace(&title, &on_head);
    assert_eq!(refused(&source), None);
    let note = "0\nTEXT\n8\nNOTES\n10\n-30\n20\n20\n40\n6\n50\n90\n1\n16 ft\n";
    let notes = note.repeat(6);
    let source = upright.house().replace("0\nENDSEC", &format!("{notes}0\nENDSEC"));
    assert_eq!(refused(&source), None);
}

#[test]
fn a_window_inserted_mirrored_with_its_text_mirrors_no_view() {
    let block = "0\nSECTION\n2\nBLOCKS\n0\nBLOCK\n8\n0\n2\nW\n70\n0\n10\n0\n20\n0\n0\nTEXT\n8\n0\n10\n4\n20\n4\n40\n4\n1\nW1\n0\nENDBLK\n8\n0\n0\nENDSEC\n";
    let insert = "0\nINSERT\n8\nA-GLAZ\n2\nW\n10\n170\n20\n40\n41\n-1\n";
    let upright = drawn("0", true);
    let title = upright.text((100.0, -50.0), "FRONT ELEVATION");
    let source = upright.house().replace(&title, "");
    let source = format!("{block}{}", source.replace("0\nENDSEC", &format!("{insert}0\nENDSEC")));
    assert_eq!(refused(&source), None);
}

#[test]
fn the_job_may_take_a_view_as_it_is_drawn_or_leave_it_out() {
    let source = drawn("mirror", true).house();
    let name = "[[elevation]]\nname = \"FRONT ELEVATION\"\n";
    let (laid, findings) = lay(&source, &job(&format!("{name}turn = 0\n")));
    assert!(laid.is_ok());
    let told = findings.all().iter().filter(|f| f.code().word() == "view-turned");
    assert!(told.clone().count() == 1 && findings.refuse_on_error().is_ok());
    let (left, findings) = lay(&source, &job(&format!("{name}skip = true\n")));
    assert!(left.is_err(), "there is nothing else in it");
    assert!(findings.all().iter().any(|f| f.code().word() == "view-skipped"));
    let (unknown, _) = lay(&source, &job("[[elevation]]\nname = \"Norht\"\nturn = 180\n"));
    assert_eq!(unknown.unwrap_err().0.code().word(), "part-unknown");
}

#[test]
fn one_view_of_two_is_refused_and_may_be_skipped() {
    let upright = drawn("0", true).house();
    let other = Drawn { map: Affine::translate((900.0, 0.0)) * drawn("180", true).map, text: true };
    let more = other.house().replace("FRONT", "REAR");
    let body = more.split_once("ENTITIES\n").unwrap().1;
    let source = upright.replace("0\nENDSEC\n0\nEOF\n", body);
    let (view, turn, _) = refused(&source).unwrap();
    assert_eq!((view.as_str(), turn.word()), ("REAR ELEVATION", "180"));
    let skip = "[[elevation]]\nname = \"REAR ELEVATION\"\nskip = true\n";
    let (laid, _) = lay(&source, &job(skip));
    let names: Vec<String> = laid.unwrap().elevations.iter().map(|e| e.name.to_string()).collect();
    assert_eq!(names, ["FRONT ELEVATION"]);
    let turn = "[[elevation]]\nname = \"REAR ELEVATION\"\nturn = 180\n";
    let (laid, _) = lay(&source, &job(turn));
    let laid = laid.unwrap();
    let counts: Vec<usize> = laid.elevations.iter().map(|e| e.walls[0].openings.len()).collect();
    assert_eq!(counts, [3, 3]);
}

#[test]
fn a_gable_that_hangs_is_upside_down_and_a_foot_along_the_ground_is_not() {
    let refused = |ring: &[(f64, f64)]| {
        refused(&crate::support::dxf(&[
            ("A-WALL-OTLN", ring),
            ("A-GLAZ", &crate::support::rect(90.0, 110.0, 126.0, 150.0)),
        ]))
    };
    let hangs = [(0.0, 170.0), (240.0, 170.0), (240.0, 74.0), (120.0, 0.0), (0.0, 74.0)];
    let (_, turn, tells) = refused(&hangs).unwrap();
    assert_eq!((turn.word(), tells), ("180", vec![Tells::Gables]));
    // Ground that falls to the middle by 1 in 10 from both sides, and by 4 in 10 to one side.
    let hollow = [(0.0, 170.0), (240.0, 170.0), (240.0, 24.0), (120.0, 12.0), (0.0, 24.0)];
    let slope = [(0.0, 170.0), (240.0, 170.0), (240.0, 96.0), (0.0, 0.0)];
    // As steep, under a gable that stands.
    let both =
        [(0.0, 170.0), (120.0, 244.0), (240.0, 170.0), (240.0, 74.0), (120.0, 0.0), (0.0, 74.0)];
    for ring in [&hollow[..], &slope[..], &both[..]] {
        assert_eq!(refused(ring), None, "{ring:?}");
    }
}

#[test]
fn a_door_that_hangs_from_the_top_of_its_wall_turns_the_view_by_itself() {
    let wall = crate::support::rect(0.0, 0.0, 480.0, 108.0);
    let of = |door: [f64; 4]| {
        let [x0, y0, x1, y1] = door;
        refused(&crate::support::dxf(&[
            ("A-WALL-OTLN", &wall),
            ("A-DOOR", &crate::support::rect(x0, y0, x1, y1)),
        ]))
    };
    let (_, turn, tells) = of([60.0, 28.0, 96.0, 108.0]).unwrap();
    assert_eq!((turn.word(), tells), ("180", vec![Tells::Doors]));
    // With a header over it, on a stoop; from foot to top; in a wall of a shop.
    for upright in [[60.0, 18.0, 96.0, 98.0], [60.0, 0.0, 96.0, 108.0], [60.0, 9.0, 96.0, 106.0]] {
        assert_eq!(of(upright), None, "{upright:?}");
    }
}

#[test]
fn sills_in_line_under_heads_that_are_not_are_a_warning_unless_something_stands_upright() {
    let wall = crate::support::rect(0.0, 0.0, 480.0, 108.0);
    let windows = |on_head: bool| -> String {
        // Heads at 80, sills at 30, 44 and 20; on its head 108 less these.
        let all = [(60.0, 30.0), (160.0, 44.0), (300.0, 20.0)].map(|(x, sill)| {
            let (y0, y1) = if on_head { (28.0, 108.0 - sill) } else { (sill, 80.0) };
            crate::support::rect(x, y0, x + 36.0, y1)
        });
        let rings: Vec<(&str, &[(f64, f64)])> = std::iter::once(("A-WALL-OTLN", &wall[..]))
            .chain(all.iter().map(|r| ("A-GLAZ", &r[..])))
            .collect();
        crate::support::dxf(&rings)
    };
    let doubted = |source: &str, more: &str| {
        let (laid, findings) = lay(source, &job(more));
        assert!(laid.is_ok());
        findings.all().iter().filter(|f| f.code().word() == "view-doubted").count()
    };
    assert_eq!(doubted(&windows(true), ""), 1);
    assert_eq!(doubted(&windows(false), ""), 0);
    // A door that stands on the foot, and a job that says so, end the question.
    let door = crate::support::dxf(&[("A-DOOR", &crate::support::rect(400.0, 0.0, 436.0, 80.0))]);
    let door = door.split_once("ENTITIES\n").unwrap().1;
    assert_eq!(doubted(&windows(true).replace("0\nENDSEC\n0\nEOF\n", door), ""), 0);
    let asked = "[[elevation]]\nname = \"elevation\"\nturn = 0\n";
    assert_eq!(doubted(&windows(true), asked), 0);
}
