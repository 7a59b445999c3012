//! Every kind of siding on the samples: all rules kept, counted again, told in its own words.

use lapwright::job::file as job_file;
use lapwright::job::siding::kind::{BoardSiding, PanelSiding, Siding};
use lapwright::job::{Job, Product};
use lapwright::language::Language;
use lapwright::layout::Layout;
use lapwright::layout::set::LaidSet;
use lapwright::model::seam::Effort;
use lapwright::pipeline;

use crate::support::{
    bare_corners, broken, dxf, inches, laid_set, lay, lay_set, lay_sets, rect, root, said,
};

fn read(name: &str) -> Job {
    let path = root().join("sample-drawings").join(name);
    let mut job = job_file::parse(&std::fs::read_to_string(path).unwrap(), name).unwrap();
    job.seams.effort = Effort::Brief;
    job
}

fn laid(stem: &str, job: &Job) -> Layout {
    laid_as(stem, job).layout
}

fn laid_as(stem: &str, job: &Job) -> LaidSet {
    let path = root().join("sample-drawings").join(format!("{stem}.dxf"));
    lay_set(&std::fs::read(path).unwrap(), job)
}

/// Every rule kept, every quantity counted again.
fn sound(name: &str, layout: &Layout) {
    assert_eq!(broken(layout), Vec::<String>::new(), "{name}");
    crate::recount::check(&crate::recount::written(layout), name);
}

#[test]
fn plain_vinyl_on_the_samples() {
    let job = read("vinyl.toml");
    for stem in ["curlew-cottage", "one-gable", "one-window"] {
        let layout = laid(stem, &job);
        sound(stem, &layout);
        // SidingFact::PlainLap: half of a factory notch of 2 in.
        assert!(layout.pieces().all(|(_, c, ..)| c.top - c.bottom == 12.0));
        for (_, _, r, _) in layout.pieces() {
            for pair in r.pieces.windows(2) {
                assert!((pair[0].x1 - pair[1].x0 - 1.0).abs() < 1e-9);
            }
        }
        let takeoff = lapwright::takeoff::quantities(&layout);
        let report = lapwright::write::report::text(&layout, &takeoff);
        let words: Vec<&str> = report.split_whitespace().collect();
        let words = words.join(" ");
        assert!(words.contains("vinyl lap siding, triple 4\""), "{report}");
        assert!(!words.contains("foam to foam"), "{report}");
        let nails = takeoff.lines.iter().find(|l| l.id == "panel-nails").unwrap();
        // NailFact::PlainVinylNails: 1 1/2 to 2 in.
        let piece = lapwright::model::item::SidingPiece::Panel;
        assert_eq!(nails.item, lapwright::model::item::Item::SidingNails { piece, length: 1.5 });
    }
}

#[test]
fn plain_vinyl_takes_fewer_seams_of_less_lap() {
    // Example::RunOfTwentyFiveFeet, lap 1 in: 25 ft take three panels of 12 ft 6 in;
    // Example::LongRuns: 28 ft three, 40 ft four.
    let mut job = inches();
    job.product = job_file::parse("[product]\nkind = \"vinyl\"\n", "job").unwrap().product;
    let job = bare_corners(job);
    for (feet, pieces) in [(25.0, 3), (28.0, 3), (40.0, 4)] {
        let wall = rect(0.0, 0.0, feet * 12.0, 8.0);
        let layout = lay(dxf(&[("A-WALL-OTLN", &wall)]).as_bytes(), &job);
        assert_eq!(layout.pieces().count(), pieces, "{feet}");
        sound("WY", &layout);
    }
}

#[test]
fn no_output_names_a_source_that_its_reader_cannot_look_up() {
    // Two capitals, a hyphen and two digits after a bracket or a blank: a number of our own lists.
    let ours = |text: &str| -> Option<String> {
        let bytes = text.as_bytes();
        let at = bytes.windows(6).position(|w| {
            b"( ,;".contains(&w[0])
                && w[1..3].iter().all(u8::is_ascii_uppercase)
                && w[3] == b'-'
                && w[4..6].iter().all(u8::is_ascii_digit)
        });
        let names =
            ["FACTS", "VSI-", "JLC-", "NAV14", "YARD", "SAWK", "WWPA", "RETAIL", "BCON", "EST18"];
        let at = at.or_else(|| names.iter().find_map(|n| text.find(n)))?;
        Some(
            String::from_utf8_lossy(&bytes[at.saturating_sub(60)..(at + 40).min(bytes.len())])
                .into(),
        )
    };
    let mut read_through = 0;
    for job in
        [None, Some("vinyl.toml"), Some("steel.toml"), Some("wood.toml"), Some("fiber-cement.toml")]
    {
        let stem = "one-gable";
        let set = job.map_or_else(|| laid_set(stem), |name| laid_as(stem, &read(name)));
        let drawing = root().join("sample-drawings").join(stem).with_extension("dxf");
        let source = std::fs::read(drawing).unwrap();
        for (name, bytes) in lapwright::outputs::set::files(&set, &source, false).unwrap() {
            if [".json", ".csv", ".txt", ".svg"].iter().any(|e| name.ends_with(e)) {
                let text = String::from_utf8(bytes).unwrap();
                assert_eq!(ours(&text), None, "{name} of {job:?}");
                read_through += 1;
            }
        }
    }
    assert!(read_through > 40, "{read_through}");
}

#[test]
fn a_long_panel_asks_for_its_gap() {
    // SidingFact::LongPanelGap: from 20 ft on the maker states a larger gap.
    let warned = |text: &str| {
        let mut job = job_file::parse(text, "job").unwrap();
        job.seams.effort = Effort::Crew;
        job.drawing.unit = Some(lapwright::units::Unit::Inch);
        let wall = rect(0.0, 0.0, 400.0, 8.0);
        let layout = lay(dxf(&[("A-WALL-OTLN", &wall)]).as_bytes(), &job);
        assert_eq!(broken(&layout), Vec::<String>::new());
        layout.findings.iter().any(|n| {
            n.code().word() == "long-panel-gap"
                && crate::support::advised(n).contains("`product.end_gap`")
        })
    };
    assert!(warned("[product]\nlength = 240\n"));
    assert!(!warned("[product]\nlength = 239\n"));
    assert!(!warned("[product]\nlength = 240\nend_gap = 0.375\n"));
}

fn steel(more: &str) -> Job {
    let mut job = inches();
    let read = job_file::parse(&format!("[product]\nkind = \"steel\"\n{more}"), "job").unwrap();
    (job.product, job.weather) = (read.product, read.weather);
    bare_corners(job)
}

#[test]
fn steel_on_the_samples() {
    let job = read("steel.toml");
    for stem in ["curlew-cottage", "one-gable", "one-window"] {
        let layout = laid(stem, &job);
        sound(stem, &layout);
        for (_, _, r, _) in layout.pieces() {
            // Factory ends lap by 1 1/4 in, 1/8 in is free at each end.
            for pair in r.pieces.windows(2) {
                assert!((pair[0].x1 - pair[1].x0 - 1.25).abs() < 1e-9);
            }
        }
        assert_eq!(layout.job.end_gap(), 0.125);
        // Sheet steel takes no lugs: its cut edges are nailed.
        assert!(layout.pieces().all(|(.., p)| p.edge_work.lugs == 0), "{stem}");
        let takeoff = lapwright::takeoff::quantities(&layout);
        let nails = takeoff.lines.iter().find(|l| l.id == "panel-nails").unwrap();
        // IRC Table R703.3(1), steel over wood sheathing: 0.113 in by 1 3/4 in (from memory).
        let piece = lapwright::model::item::SidingPiece::Panel;
        assert_eq!(nails.item, lapwright::model::item::Item::SidingNails { piece, length: 1.75 });
        assert_eq!(layout.fastening.shank, 0.113);
        let report = lapwright::write::report::text(&layout, &takeoff);
        let words = report.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(words.contains("steel lap siding, double 4\""), "{report}");
        for said in
            ["cut-resistant gloves", "never an abrasive wheel", "metal panels and trim conduct"]
        {
            assert!(words.contains(said), "{stem}: {said}");
        }
        for not in ["vinyl", "foam to foam", "snap-lock", "lugs", "Silica"] {
            assert!(!words.contains(not), "{stem}: {not}");
        }
    }
}

#[test]
fn a_wall_of_steel_reckoned_by_hand() {
    // Two panels of 150 in lap by 1 1/4 and keep 1/8 free at both ends: 298 3/4 + 1/4 = 299 in.
    for (width, pieces) in [(299.0, 2), (299.0625, 3)] {
        let wall = rect(0.0, 0.0, width, 8.0);
        let layout = lay(dxf(&[("A-WALL-OTLN", &wall)]).as_bytes(), &steel(""));
        sound("steel", &layout);
        let counts: Vec<usize> =
            layout.walls().flat_map(|(_, w)| &w.courses).map(|c| c.runs[0].pieces.len()).collect();
        assert_eq!(counts, [pieces], "{width}");
    }
    // 36 in of sill at 21 in, in the course from 16 to 24: a notch with 1/4 in of play on both sides
    // is 36 1/2 in wide, its edge held by nails at most 16 in apart: three, and no lugs. Under the soffit
    // on the course line at 96 the top course, 139 3/4 in, is cut too: nine.
    let (wall, glass) = (rect(0.0, 0.0, 140.0, 96.0), rect(50.0, 21.0, 86.0, 72.0));
    let drawn = dxf(&[("A-WALL-OTLN", &wall), ("A-GLAZ", &glass)]);
    let layout = lay(drawn.as_bytes(), &steel(""));
    sound("steel under a sill", &layout);
    let nailed: Vec<u32> =
        layout.pieces().map(|(.., p)| p.edge_work.trim_nails).filter(|n| *n > 0).collect();
    assert_eq!(nailed, [3, 9]);
    assert!(layout.pieces().all(|(.., p)| p.edge_work.lugs == 0));
}

#[test]
fn steel_hardly_moves() {
    // A panel of 12 ft 6 in from 50 to 150 F. Handbooks of steel construction: 0.00065 to a length and
    // 100 F, so 150 x 0.00065 = 0.0975 in. EN 1993-1-1, 3.2.6, has 12e-6 to a K: 3810 mm x 12e-6 x
    // 500/9 K = 2.54 mm, 0.1000 in.
    let text = "[weather]\ninstalled_f = 50\nlowest_f = 50\nhighest_f = 150\n";
    let wall = rect(0.0, 0.0, 299.0, 32.0);
    let layout = lay(dxf(&[("A-WALL-OTLN", &wall)]).as_bytes(), &steel(text));
    let panel = &layout.movement.rows[0];
    assert!((panel.length - 150.0).abs() < 1e-9 && (panel.longer - 0.0975).abs() < 1e-6);
    let eurocode = 3810.0 * 12e-6 * 500.0 / 9.0 / 25.4;
    assert!((panel.longer - eurocode).abs() < 0.03 * eurocode, "{} {eurocode}", panel.longer);
    // Half of it goes to each end: 1/8 in covers it, as 1/4 in does not for vinyl
    // (SidingFact::GapsAgainstSwing).
    assert!(panel.covered && (panel.needed - 0.04875).abs() < 1e-6);
    let mut vinyl = inches();
    let read = job_file::parse(&format!("[product]\nkind = \"vinyl\"\n{text}"), "job").unwrap();
    (vinyl.product, vinyl.weather) = (read.product, read.weather);
    let layout = lay(dxf(&[("A-WALL-OTLN", &wall)]).as_bytes(), &vinyl);
    assert!(!layout.movement.rows[0].covered);
}

#[test]
fn what_says_nothing_about_steel_is_refused() {
    for (text, key) in [
        ("[courses]\nlug_spacing = 8\n", "courses.lug_spacing"),
        ("[boards]\nfirst_stud = 8\n", "boards.first_stud"),
        ("foam_set_back = 0.5\n", "product.foam_set_back"),
        ("width = 8\n", "product.width"),
    ] {
        let text = format!("[product]\nkind = \"steel\"\n{text}");
        let e = said(&job_file::parse(&text, "job.toml").unwrap_err().0);
        assert!(e.contains(&format!("`{key}`")) && e.contains("steel"), "{text}: {e}");
    }
    // What steel has in common with vinyl is taken.
    let text = "[product]\nkind = \"steel\"\n[courses]\nslot_spacing = 12\n[trim]\npocket = 0.625\n[seams]\nstagger = 36\n";
    assert!(job_file::parse(text, "job").is_ok());
}

#[test]
fn settings_of_the_house_are_not_held_against_a_zone_of_another_kind() {
    let zone = "[[zone]]\nname = \"Gable\"\nlayers = [\"X\"]\n[zone.product]\n";
    for (house, own) in [
        ("[product]\nkind = \"wood\"\n[boards]\nfirst_stud = 8\n", "kind = \"vinyl\"\n"),
        ("[courses]\nlug_spacing = 8\n", "kind = \"steel\"\n"),
    ] {
        assert!(job_file::parse(&format!("{house}{zone}{own}"), "job").is_ok(), "{house}{own}");
        // Its own product is still held to its kind.
        let wrong = format!("{house}{zone}{own}width = 9\n");
        let e = said(&job_file::parse(&wrong, "job").unwrap_err().0);
        assert!(e.contains("zone.0.product.width"), "{e}");
    }
}

#[test]
fn what_contradicts_itself_is_refused_by_its_key() {
    for (text, key, place) in [
        ("[product]\nexposure = 8\nfaces = 2\nface_height = 5\n", "product.face_height", ":4:"),
        ("[product]\nkind = \"vinyl\"\nfoam_set_back = 0.5\n", "product.foam_set_back", ":3:"),
        ("[product]\nkind = \"tin\"\n", "tin", ":2:"),
    ] {
        let e = said(&job_file::parse(text, "job.toml").unwrap_err().0);
        assert!(e.contains(key) && e.contains(place), "{e}");
    }
}

/// Heights of the butt lines of a layout, bottom up.
fn butts(layout: &Layout) -> Vec<f64> {
    let mut out: Vec<f64> =
        layout.walls().flat_map(|(_, w)| &w.courses).map(|c| c.bottom).collect();
    out.sort_by(f64::total_cmp);
    out.dedup();
    out
}

#[test]
fn boards_on_the_samples() {
    for name in ["wood.toml", "fiber-cement.toml"] {
        let job = read(name);
        for stem in ["curlew-cottage", "one-gable", "one-window"] {
            let layout = laid(stem, &job);
            sound(&format!("{stem}, {name}"), &layout);
            assert!(layout.bound.conflicts.is_empty(), "{stem}: {:?}", layout.bound.conflicts);
            let (least, most) = job.product.limits();
            for (_, c, r, p) in layout.pieces() {
                let height = c.top - c.bottom;
                assert!(height > least - 0.01 && height < most + 0.01, "{stem}: {height}");
                assert!(p.length <= job.product.length + 1e-6, "{stem} {}", p.mark);
                assert_eq!(r.seams.len() + 1, r.pieces.len());
            }
            // No strip, no channel, no lap: words and trim are those of boards.
            let takeoff = lapwright::takeoff::quantities(&layout);
            let has = |id: &str| takeoff.lines.iter().any(|l| l.id == id);
            assert!(!has("j-channel") && !has("finish-trim") && !has("cartons"), "{stem}");
            let report = lapwright::write::report::text(&layout, &takeoff);
            let words = report.split_whitespace().collect::<Vec<_>>().join(" ");
            let silica = words.contains("29 CFR 1926.1153");
            assert_eq!(silica, name == "fiber-cement.toml", "{stem}");
            assert!(!words.contains("vinyl softens") && !words.contains("foam to foam"), "{stem}");
            assert!(has("joint-backing") == silica || stem != "curlew-cottage", "{stem}");
        }
    }
}

#[test]
fn a_window_is_met_by_evened_courses() {
    // Example::BoardsUnderWindow then Example::BoardsBesideWindow (NAVEDTRA 14044, figure 4-3): 31 in to the
    // sill, 61 in from sill to head, boards of 12 in aimed at 10: 3 courses of 10 1/3, then 6 of 10
    // 1/6.
    let mut job = inches();
    let text = "[product]\nkind = \"wood\"\nwidth = 12\n";
    job.product = job_file::parse(text, "job").unwrap().product;
    assert_eq!(job.product.exposure, 10.0); // SidingFact::WoodExposure: 12 in board, 10 in
    let (wall, glass) = (rect(0.0, 0.0, 240.0, 112.0), rect(90.0, 31.0, 130.0, 92.0));
    let drawn = dxf(&[("A-WALL-OTLN", &wall), ("A-GLAZ", &glass)]);
    let layout = lay(drawn.as_bytes(), &job);
    sound("WX", &layout);
    let found = butts(&layout);
    let third = |i: usize| 31.0 / 3.0 * i as f64;
    let sixth = |i: usize| 31.0 + 61.0 / 6.0 * i as f64;
    // From the head to the top 20 in: two courses of 10.
    let wanted: Vec<f64> =
        (0..3).map(third).chain((0..6).map(sixth)).chain([92.0, 102.0]).collect();
    assert_eq!(found.len(), wanted.len(), "{found:?}");
    assert!(found.iter().zip(&wanted).all(|(a, b)| (a - b).abs() < 0.001), "{found:?}");
    // At the window the head lap alone, 1 2/3 in, is in the way of the sill: it is cut off with 1/4 in of
    // room. Likewise at the top. Over the head and beside the window boards are whole.
    let notches: Vec<f64> =
        layout.pieces().flat_map(|(.., p)| &p.notches).map(|n| n.depth).collect();
    assert_eq!(notches, [0.25]);
    let rips: Vec<i32> =
        layout.pieces().filter(|(.., p)| p.rip.is_some()).map(|(_, c, ..)| c.index).collect();
    assert!(!rips.is_empty() && rips.iter().all(|i| *i == 10), "{rips:?}");
}

#[test]
fn courses_of_boards_may_keep_one_exposure_and_what_evening_costs_is_told() {
    // A wall of 12 ft less a hair by 94 in, boards of 12 ft, 8 1/4 in wide showing 7: one board a course.
    // All the way up 94 / 7 = 13.43: 14 courses, the last ripped. Evened within 5 to 7 in (the exposure is
    // the most that 1 1/4 in of lap leaves): 13 would take 7.23, so 14 of 6.71. No board between them.
    let job = |more: &str| {
        let text = format!(
            "[drawing]\nunit = \"inch\"\n[seams]\neffort = \"brief\"\n[product]\nkind = \"fiber-cement\"\nwidth = 8.25\nhead_lap = 1.25\n{more}"
        );
        job_file::parse(&text, "job").unwrap()
    };
    let even = |drawn: &str, even: bool| {
        lay(drawn.as_bytes(), &job(&format!("[boards]\neven = {even}\n")))
    };
    let plain = dxf(&[("A-WALL-OTLN", &rect(0.0, 0.0, 143.0, 94.0))]);
    let (evened, fixed) = (even(&plain, true), even(&plain, false));
    sound("evened", &evened);
    sound("fixed", &fixed);
    let steps = |l: &Layout| butts(l).windows(2).map(|b| b[1] - b[0]).collect::<Vec<f64>>();
    assert!(steps(&fixed).iter().all(|s| *s == 7.0), "{:?}", steps(&fixed));
    assert!(steps(&evened).iter().all(|s| (s - 94.0 / 14.0).abs() < 0.001), "{:?}", steps(&evened));
    assert_eq!((evened.panels.len(), fixed.panels.len()), (14, 14));
    assert_eq!((evened.bound.other_courses, fixed.bound.other_courses), (Some(14), Some(14)));
    // A window from 33 to 66 in: evened, 33 in take five courses of 6.6 both times and 28 in above it
    // four of 7: 14. All the way up 14 too; with a sill at 30, 30 takes five of 6 (four would be 7 1/2),
    // 36 to a head at 66 six of 6, 28 four: 15 courses, one more than 14.
    let glazed = dxf(&[
        ("A-WALL-OTLN", &rect(0.0, 0.0, 143.0, 94.0)),
        ("A-GLAZ", &rect(50.0, 30.0, 90.0, 66.0)),
    ]);
    let (evened, fixed) = (even(&glazed, true), even(&glazed, false));
    sound("evened round a window", &evened);
    sound("fixed round a window", &fixed);
    assert_eq!((butts(&evened).len(), butts(&fixed).len()), (15, 14));
    let (more, less) = (evened.panels.len(), fixed.panels.len());
    assert!(more > less, "{more} {less}");
    assert_eq!((evened.bound.other_courses, fixed.bound.other_courses), (Some(less), Some(more)));
    let said = |l: &Layout| {
        lapwright::wording::proof::other_courses(Language::English, &l.bound, &l.job).unwrap()
    };
    let boards = |n: usize| if n == 1 { "1 board".to_owned() } else { format!("{n} boards") };
    let wanted = format!("{} more than the {}", boards(more - less), boards(less));
    assert!(said(&evened).contains(&wanted), "{}", said(&evened));
    assert!(
        said(&fixed).contains(&format!("{}, {} more", boards(more), more - less)),
        "{}",
        said(&fixed)
    );
    // Panels have one exposure: the setting says nothing of them.
    let text = "[boards]\neven = false\n";
    assert!(job_file::parse(text, "job").is_err());
    assert_eq!(crate::support::laid_by_a_crew("one-wall").bound.other_courses, None);
}

#[test]
fn running_feet_of_boards_are_checked_by_the_associations_rule() {
    use lapwright::takeoff::rules;
    // Example::BoardCoverage: nominal width and exposed face; running and board feet a square
    // foot.
    for (nominal, face, running, board) in [
        (4.0, 2.5, 4.8, 1.6),
        (6.0, 4.5, 2.667, 1.333),
        (8.0, 6.25, 1.92, 1.28),
        (10.0, 8.25, 1.4545, 1.2121),
    ] {
        assert!((rules::running_feet(face) - running).abs() < 1e-3, "{nominal}");
        assert!((rules::board_feet(nominal, face) - board).abs() < 1e-3, "{nominal}");
    }
    // A wall of whole boards, 16 by 10 ft at 6 in: 12 / 6 x 160 = 320 ft, less end gaps of 1/4 in.
    let mut job = inches();
    job.product = job_file::parse("[product]\nkind = \"wood\"\n", "job").unwrap().product;
    let job = bare_corners(job);
    let wall = rect(0.0, 0.0, 192.0, 120.0);
    let layout = lay(dxf(&[("A-WALL-OTLN", &wall)]).as_bytes(), &job);
    sound("running feet", &layout);
    let takeoff = lapwright::takeoff::quantities(&layout);
    let check = takeoff.checks.iter().find(|c| {
        matches!(c.counting_rule, lapwright::model::counting::CountingRule::RunningFeet { .. })
    });
    let check = check.unwrap();
    assert!((check.rule - 320.0).abs() < 1e-6, "{}", check.rule);
    assert!((check.layout - (320.0 - 20.0 * 0.25 / 12.0)).abs() < 1e-6, "{}", check.layout);
    assert_eq!(layout.panels.len(), 20);
}

#[test]
fn joints_stand_on_studs_and_change_studs() {
    // A wall of 40 ft, boards of 12 ft: four boards a course, three joints.
    let mut job = inches();
    let text =
        "[product]\nkind = \"fiber-cement\"\n[boards]\nstud_spacing = 24\nfirst_stud = 23.25\n";
    let read = job_file::parse(text, "job").unwrap();
    (job.product, job.boards) = (read.product, read.boards);
    let wall = rect(0.0, 0.0, 480.0, 70.0);
    let layout = lay(dxf(&[("A-WALL-OTLN", &wall)]).as_bytes(), &job);
    sound("studs", &layout);
    let courses: Vec<Vec<f64>> =
        layout.walls().flat_map(|(_, w)| &w.courses).map(|c| c.runs[0].seams.clone()).collect();
    assert_eq!(courses.len(), 10); // exposure 7 in, TrimFact::FiberCementLap: 8 1/4 less 1 1/4
    for joints in &courses {
        assert_eq!(joints.len(), 3);
        assert!(joints.iter().all(|x| ((x - 23.25) / 24.0).fract().abs() < 1e-9), "{joints:?}");
    }
    for (i, low) in courses.iter().enumerate() {
        for high in courses.iter().skip(i + 1).take(3) {
            assert!(low.iter().all(|x| !high.contains(x)), "{low:?} {high:?}");
        }
    }
    for (_, _, r, _) in layout.pieces() {
        for pair in r.pieces.windows(2) {
            assert!((pair[1].x0 - pair[0].x1 - 0.125).abs() < 1e-9); // TrimFact::FiberCementJoints's gap
        }
    }
}

#[test]
fn what_is_of_another_kind_is_refused() {
    for (text, key) in [
        ("[product]\nwidth = 8\n", "product.width"),
        ("[boards]\nfirst_stud = 12\n", "boards.first_stud"),
        ("[product]\nkind = \"wood\"\nlap = 1\n", "product.lap"),
        ("[product]\nkind = \"wood\"\nfaces = 2\n", "product.faces"),
        ("[product]\nkind = \"wood\"\nexposure = 9\n", "product.exposure"),
        ("[product]\nkind = \"wood\"\nexposure_most = 7.5\n", "product.exposure_most"),
        ("[product]\nkind = \"wood\"\n[trim]\npocket = 1\n", "trim.pocket"),
        ("[product]\nkind = \"wood\"\n[seams]\nstagger = 30\n", "seams.stagger"),
    ] {
        let e = said(&job_file::parse(text, "job.toml").unwrap_err().0);
        assert!(e.contains(&format!("`{key}`")), "{text}: {e}");
    }
}

#[test]
fn random_houses_keep_every_rule_with_every_product() {
    for (n, kind) in Siding::ALL.into_iter().enumerate() {
        for seed in 0..4 {
            let (rings, mut job) = crate::random_sheets::house(100 + seed * 4 + n as u64);
            job.product = Product::of(kind);
            let system = kind.system();
            if !system.courses.is_evened() {
                // Single 7, double 4 1/2, triple 3: names in use (SidingFact::ProfileNames).
                let (faces, face) = [(1, 7.0), (2, 4.5), (3, 3.0), (2, 4.0)][seed as usize];
                job.product.exposure = f64::from(faces) * face;
                job.product.faces = faces;
                job.seams.effort = Effort::Brief;
            } else {
                job.boards.stud_spacing = [16.0, 24.0, 19.2, 16.0][seed as usize];
                job.boards.first_stud = [16.0, 15.25, 0.0, 8.0][seed as usize];
            }
            job.courses.least_strip = 2.0;
            let drawn: Vec<(&str, &[(f64, f64)])> =
                rings.iter().map(|(l, r)| (*l, r.as_slice())).collect();
            let set = lay_set(dxf(&drawn).as_bytes(), &job);
            let layout = &set.layout;
            let name = format!("{kind:?}, house {seed}");
            let conflicts = layout.bound.conflicts.len();
            let kept = broken(layout);
            assert!(kept.is_empty() || conflicts > 0, "{name}: {kept:?}");
            assert!(
                conflicts == 0 || system.joints.is_lapped(),
                "{name}: {:?}",
                layout.bound.conflicts
            );
            crate::recount::check(&crate::recount::written(layout), &name);
            let sheets = crate::support::sheets(&set);
            sheets.iter().for_each(|s| crate::sheets::legible(&name, s));
            crate::sheets::marked_once(&name, layout, &sheets);
        }
    }
}

/// A wall of 25 x 8 ft under a gable 8 ft high: 200 and 100 sq ft (`Example::WallAndGable`); a vent
/// of 2 x 2 ft in the gable.
fn gabled() -> String {
    let wall = [(0.0, 0.0), (300.0, 0.0), (300.0, 96.0), (150.0, 192.0), (0.0, 96.0)];
    let gable = [(0.0, 96.0), (300.0, 96.0), (150.0, 192.0)];
    let vent = rect(138.0, 120.0, 162.0, 144.0);
    dxf(&[("A-WALL-OTLN", &wall), ("A-WALL-SHNG", &gable), ("A-GLAZ", &vent)])
}

fn with(text: &str) -> Job {
    let text = format!("[drawing]\nunit = \"inch\"\n[seams]\neffort = \"brief\"\n{text}");
    job_file::parse(&text, "job").unwrap()
}

#[test]
fn a_zone_not_laid_out_is_measured_and_said_so() {
    let job =
        with("[[zone]]\nname = \"Gable\"\nlayers = [\"A-WALL-SH*\"]\ncladding = \"shingle\"\n");
    let set = lay_set(gabled().as_bytes(), &job);
    let layout = &set.layout;
    sound("shingles", layout);
    let z = &layout.elevations[0].zones[0];
    assert!((z.gross_area - 100.0).abs() < 0.01 && (z.net_area - 96.0).abs() < 0.01, "{z:?}");
    // The wall below is sided to the gable's foot and no higher, under finish trim
    // (LayoutFact::BandsPartWalls).
    let w = &layout.elevations[0].walls[0];
    assert!((w.net_area - 200.0).abs() < 0.01 && w.courses.len() == 12 && w.openings.is_empty());
    let top = w.edges.iter().find(|e| e.kind == lapwright::model::house::EdgeKind::BareBottom);
    assert_eq!(top.unwrap().receiver, lapwright::model::receiver::Receiver::FinishTrim);
    let line = layout.takeoff.iter().find(|l| l.id == "zone-gable").unwrap();
    assert!((line.net - 0.96).abs() < 1e-4 && line.order == 0.0);
    let other = lapwright::model::item::Item::OtherCladding {
        zone: "Gable".to_owned(),
        cladding: "shingle".to_owned(),
    };
    assert_eq!(line.item, other);
    let takeoff = lapwright::takeoff::quantities(layout);
    let report = lapwright::write::report::text(layout, &takeoff);
    assert!(report.contains("OTHER CLADDING") && report.contains("96.0 sq ft net"), "{report}");
    let sheets = crate::support::sheets(&set);
    for (i, words) in
        [(0, "Gable: shingle, 96.0 sq ft net"), (1, "shingle: not laid out, 96.0 sq ft net")]
    {
        let svg = lapwright::write::svg::document(&sheets[i]);
        assert!(svg.contains(words), "sheet {i}");
    }
    sheets.iter().for_each(|s| crate::sheets::legible("zone", s));
}

#[test]
fn a_zone_must_be_whole() {
    for (text, key) in [
        ("[[zone]]\nlayers = [\"X\"]\ncladding = \"shingle\"\n", "zone.0.name"),
        ("[[zone]]\nname = \"A\"\ncladding = \"shingle\"\n", "zone.0.layers"),
        ("[[zone]]\nname = \"A\"\nlayers = [\"X\"]\n", "zone.0.cladding"),
        (
            "[[zone]]\nname = \"A\"\nlayers = [\"X\"]\ncladding = \"brick\"\n[zone.product]\nkind = \"wood\"\n",
            "zone.0.cladding",
        ),
        (
            "[[zone]]\nname = \"A\"\nlayers = [\"X\"]\n[zone.product]\nkind = \"wood\"\nlap = 1\n",
            "zone.0.product.lap",
        ),
    ] {
        let e = said(&job_file::parse(text, "job.toml").unwrap_err().0);
        assert!(e.contains(&format!("`{key}`")), "{text}: {e}");
    }
}

#[test]
fn a_zone_with_siding_of_its_own_is_a_set_on_the_same_datum() {
    let text = "[[zone]]\nname = \"Gable\"\nlayers = [\"A-WALL-SHNG\"]\n[zone.product]\n";
    for (own, kind, stands) in [
        ("kind = \"vinyl\"\nfaces = 1\nface_height = 6\n", Siding::Panel(PanelSiding::Vinyl), 96.0),
        // Boards over vinyl stand over flashing, as over a ledge: 1/4 in clear of it, so that water
        // finds its way out and the lower edge stays dry (TrimFact::LedgeClearance).
        ("kind = \"wood\"\n", Siding::Board(BoardSiding::Wood), 96.25),
    ] {
        let job = with(&format!("{text}{own}"));
        let mut notes = lapwright::finding::Findings::default();
        let drawing = gabled();
        let sets =
            pipeline::layout(drawing.as_bytes(), "z.dxf", &job, &mut notes, &mut |_| {}).unwrap();
        let layouts: Vec<&Layout> = sets.iter().map(|s| &s.layout).collect();
        let [house, gable] = layouts[..] else { panic!("{} sets", layouts.len()) };
        sound("house", house);
        sound("gable", gable);
        assert!(house.zone.is_none() && gable.zone.as_deref() == Some("Gable"));
        assert_eq!((house.datum, gable.datum), (0.0, 0.0));
        assert_eq!(house.job.product.kind, Siding::Panel(PanelSiding::FoamBacked));
        assert_eq!(gable.job.product.kind, kind);
        let (below, above) = (&house.elevations[0].walls[0], &gable.elevations[0].walls[0]);
        assert!((below.net_area - 200.0).abs() < 0.01 && (above.net_area - 96.0).abs() < 0.01);
        // Eaves at 96 in: a butt line of both panels (12 x 8, 16 x 6); boards are evened to the foot that
        // they stand on. A starter takes the first course over the joint, finish trim the last one under
        // it (LayoutFact::BandsPartWalls).
        let foot = above.edges.iter().find(|e| e.from[1] == stands && e.to[1] == stands).unwrap();
        assert_eq!(foot.receiver, lapwright::model::receiver::Receiver::Starter);
        assert_eq!(above.courses[0].bottom, stands);
        assert!(above.openings.len() == 1 && below.openings.is_empty());
        // Its area is told with the house's set, and not as one left out.
        assert!(house.elevations[0].zones[0].laid_out);
        assert!(!house.takeoff.iter().any(|l| l.id.starts_with("zone-")));
        let marks =
            |l: &Layout| -> Vec<String> { l.pieces().map(|(.., p)| p.mark.to_string()).collect() };
        assert!(marks(gable).iter().all(|m| !marks(house).contains(m)));
        assert_eq!(lapwright::outputs::names::set_folder(gable).as_deref(), Some("zone-1-gable"));
        for set in sets.iter() {
            crate::support::sheets(set).iter().for_each(|s| crate::sheets::legible("set", s));
        }
    }
}

#[test]
fn a_region_of_the_job_is_as_good_as_a_drawn_zone() {
    let drawn =
        with("[[zone]]\nname = \"Gable\"\nlayers = [\"A-WALL-SHNG\"]\ncladding = \"shingle\"\n");
    let given = "[[zone]]\nname = \"Gable\"\ncladding = \"shingle\"\n[[zone.region]]\n";
    let here = with(&format!("{given}elevation = \"Elevation\"\nbottom = \"8'\"\n"));
    let there = with(&format!("{given}elevation = \"rear\"\nbottom = 96\n"));
    let drawing = gabled();
    let (a, b) = (lay(drawing.as_bytes(), &drawn), lay(drawing.as_bytes(), &here));
    sound("region", &b);
    let shown = |l: &Layout| format!("{:?}", (&l.elevations[0].zones, &l.elevations[0].walls));
    assert_eq!(shown(&a), shown(&b));
    // An elevation that is none is refused, a region without a side or turned over too.
    let mut notes = lapwright::finding::Findings::default();
    let refused = pipeline::layout(drawing.as_bytes(), "z.dxf", &there, &mut notes, &mut |_| {});
    assert!(refused.is_err());
    for (region, key) in
        [("", "zone.0.region.0"), ("left = 9\nright = 3\n", "zone.0.region.0.right")]
    {
        let e = said(&job_file::parse(&format!("{given}{region}"), "job.toml").unwrap_err().0);
        assert!(e.contains(&format!("`{key}`")), "{e}");
    }
    // What a zone's product cannot go with is told of the zone.
    let short = format!("{given}top = 9\n[zone.product]\nlength = 40\n")
        .replace("cladding = \"shingle\"\n", "");
    let e = said(&job_file::parse(&short, "job.toml").unwrap_err().0);
    assert!(e.contains("zone.0.product.length"), "{e}");
}

#[test]
fn a_zone_inside_a_wall_is_bordered_all_round() {
    let wall = rect(0.0, 0.0, 240.0, 96.0);
    let panel = rect(80.0, 24.0, 160.0, 72.0);
    let drawing = dxf(&[("A-WALL-OTLN", &wall), ("ACCENT", &panel)]);
    let text =
        "[[zone]]\nname = \"Accent\"\nlayers = [\"accent\"]\n[zone.product]\nkind = \"vinyl\"\n";
    let sets = lay_sets(drawing.as_bytes(), &with(text));
    sets.iter().for_each(|s| sound("accent", &s.layout));
    use lapwright::model::house::EdgeKind;
    let kinds = |l: &Layout| -> Vec<EdgeKind> {
        let mut out: Vec<EdgeKind> =
            l.elevations[0].walls[0].edges.iter().map(|e| e.kind).collect();
        out.sort();
        out
    };
    use EdgeKind::{Abutment, BareBottom, BareTop};
    assert_eq!(kinds(&sets.zones[0].layout), [Abutment, Abutment, BareTop, BareBottom]);
    // The house's field goes round it; its courses meet it on butt lines.
    assert!(
        (sets.house.layout.elevations[0].walls[0].net_area - (240.0 * 96.0 - 80.0 * 48.0) / 144.0)
            .abs()
            < 0.01
    );
    assert!(sets.house.layout.trims.iter().all(|t| t.opening.is_none()));
}
