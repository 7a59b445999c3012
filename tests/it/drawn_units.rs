//! Which unit a drawing is in: what the job states, the header's vote, and sizes in the views.

use std::fmt::Write;

use lapwright::finding::{Finding, Findings, Severity};
use lapwright::job::file as job_file;
use lapwright::model::linework::Linework;
use lapwright::normalize;
use lapwright::pipeline;
use lapwright::read::{self, Limits};
use lapwright::units::Unit;

use crate::support::{advised, rect, said};

const WALL: &str = "A-WALL-OTLN";
/// `$INSUNITS` of a header (DXF reference).
const INCHES: i32 = 1;
const FEET: i32 = 2;
const MM: i32 = 4;
const CM: i32 = 5;
const METERS: i32 = 6;

fn ring(layer: &str, [x0, y0, x1, y1]: [f64; 4]) -> String {
    let mut out = format!("0\nLWPOLYLINE\n8\n{layer}\n90\n4\n70\n1\n");
    for (x, y) in rect(x0, y0, x1, y1) {
        let _ = write!(out, "10\n{x}\n20\n{y}\n");
    }
    out
}

/// A level dimension at the foot, its text typed over.
fn dimension(to: f64, says: &str) -> String {
    format!(
        "0\nDIMENSION\n8\nA-ANNO-DIMS\n70\n0\n1\n{says}\n10\n0\n20\n-20\n13\n0\n23\n0\n14\n{to}\n24\n0\n50\n0\n"
    )
}

fn drawing(header: Option<i32>, entities: &str) -> String {
    let head = header.map_or(String::new(), |code| {
        format!("0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n{code}\n0\nENDSEC\n")
    });
    format!("{head}0\nSECTION\n2\nENTITIES\n{entities}0\nENDSEC\n0\nEOF\n")
}

/// The lines in inches, and what was found of the unit.
fn read(text: &str, job: &str) -> (Option<Linework>, Vec<Finding>) {
    let job = job_file::parse(job, "job").unwrap();
    let mut findings = Findings::default();
    let drawing = read::drawing(text.as_bytes(), "d.dxf", &Limits::default(), &mut findings);
    let lines = normalize::in_inches(&drawing.unwrap(), &job, &mut findings);
    let mut told: Vec<Finding> = findings.all().to_vec();
    let lines = lines.map_err(|r| told.push(*r.0)).ok();
    told.retain(|f| f.code().word().starts_with("unit-"));
    (lines, told)
}

/// The unit taken, and the codes of warnings about it.
fn unit(text: &str, job: &str) -> (Option<Unit>, Vec<&'static str>) {
    let (lines, told) = read(text, job);
    let warnings = told.iter().filter(|f| f.severity() != Severity::Info);
    (lines.and_then(|l| l.scale.unit), warnings.map(|f| f.code().word()).collect())
}

/// A front of a story and a gable: 20 by 15 ft, a door of 36 by 80 and a window of 36 by 48 in, drawn
/// in a unit.
fn front(unit: Unit, door: bool, window: bool) -> String {
    let k = 1.0 / unit.inches();
    let at = |r: [f64; 4]| r.map(|v| v * k);
    let mut out = ring(WALL, at([0.0, 0.0, 240.0, 180.0]));
    if door {
        out += &ring("A-DOOR", at([30.0, 0.0, 66.0, 80.0]));
    }
    if window {
        out += &ring("A-GLAZ", at([120.0, 32.0, 156.0, 80.0]));
    }
    out
}

#[test]
fn a_wrong_header_is_outvoted_by_sizes_and_it_is_told() {
    let codes = [
        (Unit::Inch, INCHES),
        (Unit::Foot, FEET),
        (Unit::Mm, MM),
        (Unit::Cm, CM),
        (Unit::M, METERS),
    ];
    for (drawn, right) in codes {
        let text = front(drawn, true, true);
        assert_eq!(unit(&drawing(Some(right), &text), ""), (Some(drawn), vec![]));
        // No header, and every wrong one: a door of 80 in says which.
        let wrong = codes.iter().map(|c| Some(c.1)).filter(|c| *c != Some(right));
        for header in wrong.chain([None]) {
            let found = unit(&drawing(header, &text), "");
            assert_eq!(found, (Some(drawn), vec!["unit-assumed"]), "{drawn:?} {header:?}");
        }
    }
    // 180 in said to be mm stand 7 in high; a wall of 15 ft is drawn.
    let (_, told) = read(&drawing(Some(MM), &front(Unit::Inch, true, true)), "");
    assert_eq!(
        said(&told[0]),
        "the header says mm, but then walls stand 180 mm high; inch is taken, by the size of walls and doors; walls then stand 15'-0\" high"
    );
}

#[test]
fn without_doors_walls_nearest_to_stories_decide_and_likeness_is_told() {
    // 15 ft: 4572 mm, 15 ft, 180 in. In cm 457.2 and in inches 180 may be told from the others by
    // height alone but for the one that is also a story: 457.2 said to be inches is 38 ft.
    for (drawn, header) in
        [(Unit::Inch, MM), (Unit::Mm, INCHES), (Unit::M, INCHES), (Unit::Foot, MM)]
    {
        let found = unit(&drawing(Some(header), &front(drawn, false, false)), "");
        assert_eq!(found, (Some(drawn), vec!["unit-assumed"]), "{drawn:?} {header}");
    }
    // 250 units: 20'-10" in inches, 2.5 m in cm. The header decides, with a warning; a window 48 high
    // is one in inches and 19 in in cm, so it does not help; one of 120 is 47 in in cm and none in inches.
    let wall = ring(WALL, [0.0, 0.0, 600.0, 250.0]);
    for (header, taken) in [(INCHES, Unit::Inch), (CM, Unit::Cm)] {
        assert_eq!(unit(&drawing(Some(header), &wall), ""), (Some(taken), vec!["unit-unsure"]));
        let tall = wall.clone() + &ring("A-GLAZ", [100.0, 90.0, 200.0, 210.0]);
        let (found, told) = unit(&drawing(Some(header), &tall), "");
        let told_of_inch = if taken == Unit::Inch { vec!["unit-unsure"] } else { vec![] };
        assert_eq!((found, told), (Some(taken), told_of_inch));
    }
    // What the job states is not told again.
    let (found, told) = unit(&drawing(Some(INCHES), &wall), "[drawing]\nunit = \"cm\"\n");
    assert_eq!((found, told), (Some(Unit::Cm), vec![]));
}

#[test]
fn dimensions_prove_a_unit_by_what_they_state_metric_too() {
    // A wall 250 units high and 310 wide, which height alone leaves open.
    let wall = ring(WALL, [0.0, 0.0, 310.0, 250.0]);
    for (says, drawn) in [
        // 3.10 m in 310 units, 3100 mm; 25'-10" in 310 units.
        ("3.10", Unit::Cm),
        ("3,10", Unit::Cm),
        ("3100", Unit::Cm),
        ("25'-10\"", Unit::Inch),
    ] {
        for header in [INCHES, CM] {
            let text = drawing(Some(header), &(wall.clone() + &dimension(310.0, says)));
            let right = (header == INCHES) == (drawn == Unit::Inch);
            let told = if right { vec![] } else { vec!["unit-assumed"] };
            assert_eq!(unit(&text, ""), (Some(drawn), told), "{says} {header}");
        }
    }
    // A bare metric figure does not disagree with what it measures in an inch drawing: 3.10 m are 122.05 in.
    let text = ring(WALL, [0.0, 0.0, 122.047, 96.0]) + &dimension(122.047, "3.10");
    let mut findings = Findings::default();
    let job = job_file::parse("[drawing]\nunit = \"inch\"\n", "job").unwrap();
    let read = pipeline::reading(drawing(None, &text).as_bytes(), "d.dxf", &job, &mut findings);
    assert!(read.is_ok(), "{:?}", findings.all().iter().map(said).collect::<Vec<_>>());
}

#[test]
fn what_the_job_states_wins_with_a_warning_that_leads_out() {
    // 2400 units high: the job says inches, 200 ft. It is taken; the warning names mm, and with mm there is
    // nothing to tell.
    let text = drawing(Some(MM), &ring(WALL, [0.0, 0.0, 7000.0, 2400.0]));
    let (lines, told) = read(&text, "[drawing]\nunit = \"inch\"\n");
    assert_eq!(lines.unwrap().scale.inches, 1.0);
    assert_eq!(told[0].code().word(), "unit-implausible");
    assert_eq!(told[0].severity(), Severity::Warning);
    assert!(said(&told[0]).contains("In mm they stand 2400 mm: that is the likely unit."));
    assert!(advised(&told[0]).contains("set `unit = \"mm\"`"), "{}", advised(&told[0]));
    assert_eq!(unit(&text, "[drawing]\nunit = \"mm\"\n"), (Some(Unit::Mm), vec![]));
    // A known distance is doubted too: 100 units for 1 ft make walls of 24 ft, for 1 in of 2 ft, for
    // 0.1 in of 2.4 in.
    for (inches, warnings) in [("12\\\"", 0), ("1\\\"", 0), ("0.1\\\"", 1)] {
        let job = format!("[drawing]\nknown = \"0,0 100,0 = {inches}\"\n");
        assert_eq!(unit(&text, &job).1.len(), warnings, "{inches}");
    }
}

#[test]
fn every_unit_that_a_finding_names_can_be_stated() {
    // Whatever stands in the header or the job, no pair of findings sends anyone in a circle: the named unit
    // stated in the job is taken without a warning.
    for drawn in Unit::ALL {
        let text = drawing(None, &front(drawn, true, false));
        for stated in Unit::ALL {
            let (_, told) = read(&text, &format!("[drawing]\nunit = \"{}\"\n", stated.word()));
            let Some(warning) = told.iter().find(|f| f.severity() == Severity::Warning) else {
                assert_eq!(stated, drawn);
                continue;
            };
            assert!(advised(warning).contains(&format!("`unit = \"{}\"`", drawn.word())));
        }
    }
}

#[test]
fn what_lies_outside_of_views_does_not_count() {
    // A front of 8 ft with a construction line of 3,000 in on its layer beside it, and a plan of 60 ft.
    let wall = ring(WALL, [0.0, 0.0, 240.0, 96.0]);
    let line = format!("0\nLINE\n8\n{WALL}\n10\n900\n20\n-1500\n11\n900\n21\n1500\n");
    let plan = ring(WALL, [1200.0, 0.0, 1700.0, 720.0]);
    let region = "[[elevation]]\nname = \"front\"\nregion = [-50.0, -50.0, 300.0, 150.0]\n";
    for job in ["", region] {
        let found = unit(&drawing(Some(INCHES), &(wall.clone() + &line + &plan)), job);
        assert_eq!(found, (Some(Unit::Inch), vec![]), "{job}");
    }
    // Loose lines for walls: the construction line is far taller than any of them.
    let side = |x: f64| format!("0\nLINE\n8\n{WALL}\n10\n{x}\n20\n0\n11\n{x}\n21\n96\n");
    let loose = side(0.0) + &side(240.0) + &side(120.0) + &line;
    assert_eq!(unit(&drawing(Some(INCHES), &loose), ""), (Some(Unit::Inch), vec![]));
    // A frame does what a region does: what is large outside of it is not seen.
    let frame = ring("A-ELEV-FRAM", [-50.0, -50.0, 300.0, 150.0]);
    let framed = wall + &frame + &ring(WALL, [1200.0, 0.0, 1700.0, 9000.0]);
    assert_eq!(unit(&drawing(Some(INCHES), &framed), ""), (Some(Unit::Inch), vec![]));
}

/// A front drawn in cm under a header that says inch, with two doors that are swung open on a plan far away: one
/// leaf of 90 cm, and a pair. As inches these would be doors of 90 in; the front's own is 80 in high in cm alone.
#[test]
fn doors_swung_open_on_a_plan_are_no_doors_of_a_height() {
    let swing = |x: f64| {
        let leaf = format!("0\nLINE\n8\nA-DOOR\n10\n{x}\n20\n0\n11\n{x}\n21\n90\n");
        leaf + &format!("0\nARC\n8\nA-DOOR\n10\n{x}\n20\n0\n40\n90\n50\n0\n51\n90\n")
    };
    let pair = ring("A-DOOR", [3000.0, 0.0, 3180.0, 90.0]);
    for plan in [swing(2000.0), pair, swing(620.0)] {
        let text = front(Unit::Cm, true, false) + &plan;
        let found = unit(&drawing(Some(INCHES), &text), "");
        assert_eq!(found, (Some(Unit::Cm), vec!["unit-assumed"]));
    }
}
