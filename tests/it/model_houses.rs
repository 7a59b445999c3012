//! A house built the other way round from its drawing is the house of the mirrored drawing; a variant is what its
//! titles say.

use lapwright::finding::Findings;
use lapwright::geom::vocabulary::Rect;
use lapwright::job::file as job_file;
use lapwright::layout::Layout;
use lapwright::pipeline;

use crate::smallcase::{JOB, Side, drawing, house, mirrored};
use crate::support::{broken, lay_set};

fn laid(sides: &[Side], more: &str) -> (Layout, Vec<String>) {
    let job = job_file::parse(&format!("{JOB}{more}"), "job.toml").unwrap();
    let mut findings = Findings::default();
    let text = drawing(sides);
    let sets = pipeline::layout(text.as_bytes(), "t.dxf", &job, &mut findings, &mut |_| {});
    let codes = findings.all().iter().map(|f| f.code().word().to_owned()).collect();
    (sets.unwrap_or_else(|e| panic!("{e:?}")).house.layout, codes)
}

/// What is laid of each elevation: its name, walls, openings, courses, and each trim piece.
fn told(layout: &Layout) -> Vec<String> {
    let mut out = Vec::new();
    for e in &layout.elevations {
        out.push(e.name.to_string());
        for w in &e.walls {
            out.push(format!("{} {:?} {:.4} {:.4}", w.id, w.outline, w.gross_area, w.net_area));
            for o in &w.openings {
                out.push(format!("{} {} {} {} {}", o.id, o.left, o.right, o.sill, o.head));
            }
            for c in &w.courses {
                let lengths = c.runs.iter().flat_map(|r| &r.pieces).map(|p| p.length);
                out.push(format!("{} {:?}", c.bottom, lengths.collect::<Vec<_>>()));
            }
        }
    }
    out.extend(layout.trims.iter().map(|t| format!("{:?} {} {}", t.kind, t.wall, t.length)));
    out.extend(layout.takeoff.iter().map(|l| format!("{} {} {}", l.id, l.net, l.order)));
    out
}

#[test]
fn a_mirrored_house_is_that_of_the_mirrored_drawing() {
    for seed in 1..=6 {
        let sides = house(seed);
        let (by_job, codes) = laid(&sides, "[model]\nmirrored = true\n");
        assert!(codes.iter().any(|c| c == "model-mirrored"), "{codes:?}");
        // Drawn mirrored in place: front, then what was the right side and is the left one.
        let (by_hand, _) = laid(&mirrored(&sides), "");
        assert_eq!(told(&by_job), told(&by_hand), "house {seed}");
        assert_eq!(broken(&by_job), Vec::<String>::new());
        // And it is another house than the one drawn.
        assert_ne!(told(&by_job), told(&laid(&sides, "").0), "house {seed}");
    }
}

#[test]
fn the_overlay_of_a_mirrored_house_lies_on_the_drawing() {
    let sides = house(3);
    let (layout, _) = laid(&sides, "[model]\nmirrored = true\n");
    // The front is drawn first, from 0 on: its left corner as built is its right one as drawn.
    let front = &layout.elevations[0];
    let [a, b, c, d, e, f] = front.to_source;
    let at = |x: f64, y: f64| (a * x + c * y + e, b * x + d * y + f);
    let (left, right) = (at(0.0, 0.0), at(sides[0].width, 0.0));
    assert!((left.0 - sides[0].width).abs() < 1e-6 && right.0.abs() < 1e-6, "{left:?} {right:?}");
}

/// Notes in the front, 6 in high from their left end on the baseline: level, reading up, and drawn backward.
const NOTES: [(f64, f64, &str); 3] =
    [(90.0, 50.0, ""), (80.0, 40.0, "50\n90\n"), (180.0, 60.0, "71\n2\n")];

/// Where the texts of the front stand, elevation inches.
fn texts(sides: &[Side], more: &str) -> Vec<Rect> {
    let note = |(x, y, how): (f64, f64, &str)| {
        format!("0\nTEXT\n8\nA-ANNO-NOTE\n10\n{x}\n20\n{y}\n40\n6\n{how}1\n16 OC\n")
    };
    let notes: String = NOTES.into_iter().map(note).collect();
    let drawn = drawing(sides).replace("0\nENDSEC", &format!("{notes}0\nENDSEC"));
    let job = job_file::parse(&format!("{JOB}{more}"), "job.toml").unwrap();
    let set = lay_set(drawn.as_bytes(), &job);
    set.backdrops.texts_behind(0).iter().copied().filter(|r| r.y0 > 0.0).collect()
}

/// Labels of the overlay keep clear of the architect's notes: these stand mirrored where the house is, whichever
/// way they read.
#[test]
fn notes_stand_where_they_are_drawn_and_mirrored_with_their_house() {
    let sides = house(3);
    let drawn = texts(&sides, "");
    // Capitals are 6 in, and 1.8 in more on either side of them. The first stands up from its baseline at 50 and
    // goes right from 90; the second, turned to the left, stands left of its line at 80 and goes up from 40; the
    // third is backward: it goes left from 180, and stands up from 60 as any other.
    let [level, up, backward] = drawn[..] else { panic!("{drawn:?}") };
    let near = |a: f64, b: f64| assert!((a - b).abs() < 1e-6, "{a} {b}: {drawn:?}");
    for (a, b) in [(level.x0, 90.0), (level.y0, 48.2), (level.y1, 57.8)] {
        near(a, b);
    }
    for (a, b) in [(up.x0, 72.2), (up.x1, 81.8), (up.y0, 40.0)] {
        near(a, b);
    }
    for (a, b) in [(backward.x1, 180.0), (backward.y0, 58.2), (backward.y1, 67.8)] {
        near(a, b);
    }
    let mirrored = texts(&sides, "[model]\nmirrored = true\n");
    assert_eq!(mirrored.len(), 3);
    for (a, b) in drawn.iter().zip(&mirrored) {
        let width = sides[0].width;
        near(width - a.x1, b.x0);
        near(width - a.x0, b.x1);
        near(a.y0, b.y0);
        near(a.y1, b.y1);
    }
}

#[test]
fn elevations_without_titles_are_wrapped_the_other_way_round() {
    // Two walls, drawn left to right without names: mirrored, the second stands first.
    let text = "[[elevation]]\nname = \"one\"\nregion = [-20, -20, 210, 150]\n[[elevation]]\nname = \"two\"\nregion = [220, -20, 900, 150]\n[model]\nmirrored = true\n";
    let ring = |x: f64, w: f64| crate::smallcase::rect(x, 0.0, x + w, 96.0);
    let side = |rings| Side { title: "-".to_owned(), width: 200.0, rings };
    let both =
        vec![side(vec![("A-WALL-OTLN", ring(0.0, 200.0)), ("A-WALL-OTLN", ring(400.0, 300.0))])];
    let (layout, _) = laid(&both, text);
    let names: Vec<_> = layout.elevations.iter().map(|e| e.name.to_string()).collect();
    assert_eq!(names, ["two", "one"], "regions of the job are the drawing's own");
    assert_eq!(layout.elevations[0].walls[0].gross_area, 300.0 * 96.0 / 144.0);
}

fn variants(variant: &str) -> (Vec<String>, Vec<String>) {
    let mut sides = house(7);
    sides[0].title = "FRONT ELEVATION A".to_owned();
    sides.push(Side { title: "FRONT ELEVATION 'B'".to_owned(), ..house(8)[0].clone() });
    sides.push(Side { title: "LEFT ELEVATION - B".to_owned(), ..house(8)[3].clone() });
    let (layout, codes) = laid(&sides, &format!("[model]\nvariant = \"{variant}\"\n"));
    (layout.elevations.iter().map(|e| e.name.to_string()).collect(), codes)
}

#[test]
fn a_variant_takes_its_own_elevations_and_those_of_all() {
    let (names, codes) = variants("A");
    assert_eq!(names, ["FRONT ELEVATION A", "RIGHT ELEVATION", "REAR ELEVATION", "LEFT ELEVATION"]);
    assert!(codes.iter().any(|c| c == "model-variant"));
    // B has a left side of its own, which takes the place of the one for all.
    let (names, _) = variants("b");
    let plain: Vec<String> = names.iter().map(|n| n.replace('\'', "")).collect();
    assert_eq!(
        plain,
        ["FRONT ELEVATION B", "RIGHT ELEVATION", "REAR ELEVATION", "LEFT ELEVATION - B"]
    );
}

#[test]
fn a_variant_that_no_title_has_is_refused_with_those_there_are() {
    let mut sides = house(7);
    sides[0].title = "FRONT ELEVATION A".to_owned();
    let job = job_file::parse(&format!("{JOB}[model]\nvariant = \"D\"\n"), "job.toml").unwrap();
    let mut findings = Findings::default();
    let text = drawing(&sides);
    let laid = pipeline::layout(text.as_bytes(), "t.dxf", &job, &mut findings, &mut |_| {});
    assert!(laid.is_err());
    let said: Vec<String> = findings.all().iter().map(crate::support::said).collect();
    assert!(
        said.iter().any(|s| s.contains("variant D") && s.contains("titles have A")),
        "{said:?}"
    );
}
