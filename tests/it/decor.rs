//! Boards and flashing where walls end in something else: cut openings, bands of another set, slopes;
//! every figure reckoned by hand.

use lapwright::job::file as job_file;
use lapwright::language::Language;
use lapwright::layout::Layout;
use lapwright::layout::rule::Rule;
use lapwright::model::pole::FirstCourse;
use lapwright::model::trim::{TrimEnd, TrimKind};
use lapwright::units::LengthStyle;
use lapwright::wording;

use crate::small_walls::{job, laid, lengths, of};
use crate::support::{broken, broken_rules, dxf, lay, lay_sets, rect};

fn near(have: f64, want: f64) {
    assert!((have - want).abs() < 0.002, "{have} for {want}");
}

#[test]
fn a_frieze_along_the_rakes_takes_its_width_square_to_them() {
    // 240 wide, eaves at 96, a gable of 8 in 12: 80 over a half span of 120; rakes of
    // sqrt(120^2 + 80^2) = 144.222.
    let wall = [(0.0, 0.0), (240.0, 0.0), (240.0, 96.0), (120.0, 176.0), (0.0, 96.0)];
    let rings: [(&str, &[(f64, f64)]); 1] = [("A-WALL-OTLN", &wall)];
    let l = laid(&rings, "[trim]\nrake_frieze = 6\ndecorative = 240\n");
    // Square to the rake 6 in are 6 / cos = 6 x 144.222 / 120 = 7.2111 plumb: the field is the wall
    // with its slopes so much lower.
    let field: f64 = {
        let ring = &l.walls().next().unwrap().1.field[0];
        let pairs = ring.iter().zip(ring.iter().cycle().skip(1));
        pairs.map(|(a, b)| a[0] * b[1] - b[0] * a[1]).sum::<f64>() / 2.0
    };
    let drop = 6.0 * 144.2221 / 120.0;
    assert!((field - (240.0 * (96.0 - drop) + 120.0 * 80.0)).abs() < 0.5, "{field}");
    // Mitered at the peak by the slope's own 33.69 degrees; plumb at the foot, where the lower edge is
    // the longer one by 6 x 8 / 12 = 4: 148.222 each.
    let boards = of(&l, TrimKind::Frieze);
    assert_eq!(boards.len(), 2);
    for b in boards {
        near(b.length, 148.2221);
        for end in &b.ends {
            let TrimEnd::Miter(a) = end else { panic!("{end:?}") };
            assert!((a - 33.690).abs() < 0.01, "{a}");
        }
    }
    // The rake channel runs along the frieze's lower edge, from plumb to peak: as long as the rake.
    let channels: f64 = of(&l, TrimKind::RakeChannel)
        .iter()
        .map(|t| (t.to[0] - t.from[0]).hypot(t.to[1] - t.from[1]))
        .sum();
    assert!((channels - 2.0 * 144.2221).abs() < 1.6, "{channels}");
    let none = laid(&rings, "");
    assert!(of(&none, TrimKind::Frieze).is_empty());
    // From 12 ft stock, butted: a last board of 4.222 is none to nail, so the one before gives way and it is
    // 12 long.
    let l = laid(&rings, "[trim]\nrake_frieze = 6\n");
    let mut parts = lengths(&l, TrimKind::Frieze);
    parts.sort_by(f64::total_cmp);
    parts.iter().zip([12.0, 12.0, 136.2221, 136.2221]).for_each(|(have, want)| near(*have, want));
}

#[test]
fn an_opening_that_goes_on_over_stone_has_no_sill_here() {
    // A window from 30 to 78 with stone up to 42: what siding meets of it are the jambs from 42 and the
    // head.
    let rings: [(&str, &[(f64, f64)]); 3] = [
        ("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 96.0)),
        ("A-WALL-BASE", &rect(0.0, 0.0, 240.0, 42.0)),
        ("A-GLAZ", &rect(100.0, 30.0, 136.0, 78.0)),
    ];
    let l = laid(&rings, "");
    assert!(of(&l, TrimKind::SillFlashing).is_empty() && of(&l, TrimKind::SillChannel).is_empty());
    // TrimFact::JambFlashing: 8 1/2 in over the head, from the stone: 78 - 42 + 8 1/2;
    // TrimFact::SillFlashing at the head: 36 + 18.
    assert_eq!(lengths(&l, TrimKind::JambFlashing), [44.5, 44.5]);
    assert_eq!(lengths(&l, TrimKind::HeadFlashing), [54.0]);
    // A surround of 3 1/2: the head across 43, jambs from the stone to under it: 78 - 42.
    let l = laid(&rings, "[trim]\nsurround = 3.5\n");
    assert_eq!(lengths(&l, TrimKind::Surround), [43.0, 36.0, 36.0]);
    assert_eq!(lengths(&l, TrimKind::JambFlashing), [44.5, 44.5]);
    assert_eq!(lengths(&l, TrimKind::HeadFlashing), [54.0]);
    // A side told as cut where siding meets it is caught.
    let mut wrong = laid(&rings[..1], "");
    assert!(broken(&wrong).is_empty());
    wrong = laid(&[rings[0], rings[2]], "");
    wrong.elevations[0].walls[0].openings[0].cut = vec![lapwright::model::house::OpeningSide::Sill];
    assert!(broken_rules(&wrong).contains(&Rule::OpeningFlashing), "{:?}", broken(&wrong));
    assert!(broken(&wrong).iter().any(|b| b.contains("given as cut off")), "{:?}", broken(&wrong));
}

#[test]
fn a_band_under_another_set_of_siding_is_capped_there_and_bought_once() {
    let text = "[[zone]]\nname = \"Upper\"\n[[zone.region]]\nbottom = 104\n[zone.product]\nkind = \"vinyl\"\n";
    let drawing = dxf(&[
        ("A-WALL-OTLN", &rect(0.0, 0.0, 120.0, 200.0)),
        ("A-WALL-BAND", &rect(0.0, 96.0, 120.0, 104.0)),
    ]);
    let sets = lay_sets(drawing.as_bytes(), &job(text));
    let layouts: Vec<&Layout> = sets.iter().map(|s| &s.layout).collect();
    let [house, upper] = layouts[..] else { panic!("{} sets", layouts.len()) };
    for layout in &layouts {
        assert_eq!(broken(layout), Vec::<String>::new());
    }
    // The board is the house's; the cap goes behind the siding that stands on it.
    assert_eq!(lengths(house, TrimKind::Band), [120.0]);
    assert!(lengths(house, TrimKind::DripCap).is_empty());
    assert!(lengths(upper, TrimKind::Band).is_empty());
    assert_eq!(lengths(upper, TrimKind::DripCap), [120.0]);
}

#[test]
fn a_sloping_band_is_as_long_as_it_is_drawn() {
    // 120 along and 50 up: 130 long, by 5-12-13.
    let band = [(20.0, 30.0), (140.0, 80.0), (140.0, 88.0), (20.0, 38.0)];
    let rings: [(&str, &[(f64, f64)]); 2] =
        [("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 160.0)), ("A-WALL-BAND", &band)];
    let l = laid(&rings, "");
    // Plumb ends: the long sides stand apart by 8 x 12 / 13, each end reaching 8 x 5 / 13 past.
    let all: f64 = lengths(&l, TrimKind::Band).iter().sum();
    near(all, 130.0 + 8.0 * 5.0 / 13.0);
}

#[test]
fn a_first_course_cut_off_its_line_is_held_in_finish_trim_with_lugs() {
    // TrimFact::CutFirstCourse: no lock is left for a starter. Butt lines at -3, 5, ...:
    // the first course shows 5 of its 8 in over the wall's foot at 0.
    let wall: [(&str, &[(f64, f64)]); 1] = [("A-WALL-OTLN", &rect(0.0, 0.0, 100.0, 85.0))];
    let l = laid(&wall, "[courses]\ndatum = -3\nhang_below = 0\n");
    assert!(of(&l, TrimKind::Starter).is_empty() && of(&l, TrimKind::WallChannel).is_empty());
    let feet: Vec<f64> = of(&l, TrimKind::FinishTrim)
        .iter()
        .filter(|t| t.from[1] == 0.0)
        .map(|t| t.length)
        .collect();
    assert_eq!(feet, [100.0]);
    // Lugs every 6 in (TrimFact::UndersillLugs) along 100 less a gap of 1/4 at either end: 99 1/2 / 6
    // = 16.6.
    let w = l.walls().next().unwrap().1;
    let lugs: u32 =
        w.courses[0].runs.iter().flat_map(|r| &r.pieces).map(|p| p.edge_work.lugs).sum();
    assert_eq!(lugs, 17);
    // On its line it locks into a starter and has none.
    let l = laid(&wall, "[courses]\ndatum = 0\n");
    let w = l.walls().next().unwrap().1;
    assert!(w.courses[0].runs[0].pieces.iter().all(|p| p.edge_work.lugs == 0));
    assert!(!of(&l, TrimKind::Starter).is_empty());
}

#[test]
fn settings_that_gainsay_one_another_are_refused() {
    for (text, key) in [
        ("[weather]\nbelow_40f = true\ninstalled_f = 55\n", "weather.below_40f"),
        ("[product]\nkind = \"wood\"\n[courses]\nlug_spacing = 4\n", "courses.lug_spacing"),
        ("[fasteners]\nlengths = [\"2 1/2\\\"\", \"76mm\", 99]\n", "fasteners.lengths"),
    ] {
        let refused = job_file::parse(text, "job.toml").unwrap_err();
        let message = wording::findings::message(&refused.0, LengthStyle::Feet);
        assert!(message.contains(key), "{message}");
    }
    let job = job_file::parse("[fasteners]\nlengths = [\"2 1/2\\\"\", \"76.2mm\"]\n", "j").unwrap();
    assert_eq!(job.fasteners.lengths, [2.5, 3.0]);
}

#[test]
fn a_house_on_a_stone_base_starts_on_it() {
    // Stone to 30 in all round: the siding's start, and the height the datum is searched from. On it the
    // first course is whole: 30 is a butt line, since nothing else asks for another one.
    let rings: [(&str, &[(f64, f64)]); 2] = [
        ("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 126.0)),
        ("A-WALL-BASE", &rect(0.0, 0.0, 240.0, 30.0)),
    ];
    let l = laid(&rings, "");
    assert_eq!(l.datum, 30.0);
    assert_eq!(of(&l, TrimKind::Starter).len(), 2);
    assert_eq!(l.walls().next().unwrap().1.courses.len(), 12);
    // Where the job fixes another, the first course is cut, and no advice is given to hang it over stone.
    let l = laid(&rings, "[courses]\ndatum = 28\n");
    let effects = &l.story_pole.choices[0].effects;
    let FirstCourse::Cut { along, whole_if_hung, .. } = effects.first_course else {
        panic!("{effects:?}")
    };
    assert_eq!((along, whole_if_hung), (240.0, 0.0));
    let words = wording::pole::effects(Language::English, effects, None, LengthStyle::Feet);
    assert!(words.contains("cut along 20'-0\"") && !words.contains("hang"), "{words}");
}

#[test]
fn finish_trim_at_the_foot_is_named_for_the_first_course_not_the_top() {
    let wall: [(&str, &[(f64, f64)]); 1] = [("A-WALL-OTLN", &rect(0.0, 0.0, 100.0, 82.0))];
    let l = laid(&wall, "[courses]\ndatum = -3\nhang_below = 0\n");
    let mark = |y: f64| {
        let at = of(&l, TrimKind::FinishTrim).into_iter().find(|t| t.from[1] == y);
        at.unwrap().mark.clone()
    };
    let steps =
        wording::work::steps(Language::English, &l.work.walls[0], LengthStyle::Feet).join("\n");
    let held = format!("held in undersill (finish) trim {}, not by a starter", mark(0.0));
    assert!(steps.contains(&held), "{steps}");
    let top = format!("top course: undersill (finish) trim {}.", mark(82.0));
    assert!(steps.contains(&top), "{steps}");
}

#[test]
fn boards_of_a_rake_are_joined_clear_of_a_long_slant() {
    // The right rake falls 96 in 72, 120 long; with a board of 24 its plumb end slants by 24 x 4/3 = 32, of
    // which 16 lie beyond its middle, and its miter of 45 degrees takes as much as it gives: 152 to the long
    // points. Of boards of 144 the last may not be the 8 or 12 that lie within the slant: 120 and 32. The left
    // rake rises 96 in 128, 160 long, and slants by 18: 178, which is 144 and 34.
    let gable = [(0.0, 0.0), (200.0, 0.0), (200.0, 60.0), (128.0, 156.0), (0.0, 60.0)];
    let job = "[drawing]\nunit = \"inch\"\n[seams]\neffort = \"crew\"\n[trim]\nrake_frieze = 24\n";
    let job = lapwright::job::file::parse(job, "job").unwrap();
    let drawing = crate::support::dxf(&[("A-WALL-OTLN", &gable)]);
    let l = crate::support::lay(drawing.as_bytes(), &job);
    assert_eq!(crate::support::broken(&l), Vec::<String>::new());
    let boards = l.trims.iter().filter(|t| t.kind == lapwright::model::trim::TrimKind::Frieze);
    let mut lengths: Vec<f64> = boards.map(|t| t.length).collect();
    lengths.sort_by(f64::total_cmp);
    let wanted = [32.0, 34.0, 120.0, 144.0];
    let near = lengths.iter().zip(wanted).all(|(a, b)| (a - b).abs() < 0.01);
    assert!(lengths.len() == 4 && near, "{lengths:?}");
}

#[test]
fn a_casing_that_the_foot_of_a_wall_cuts_is_flashed_down_to_a_first_course_that_hangs() {
    // A window of 40 by 38, 2 in up: its casing of 4 makes 48 wide, from -2 to 44. The wall's foot at 0 cuts it, and
    // the first course hangs down to -3 with the jambs: no sill flashing; jambs from -3 to 8 1/2 over the head,
    // 3 + 44 + 8.5; head 9 past each jamb, 48 + 18.
    let rings = [
        ("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 97.0)[..]),
        ("A-GLAZ", &rect(90.0, 2.0, 130.0, 40.0)[..]),
    ];
    let mut job = job("[courses]\ndatum = -3\nhang_below = 4\n");
    job.drawing.casing = 4.0;
    let l = lay(dxf(&rings).as_bytes(), &job);
    assert_eq!(broken(&l), Vec::<String>::new());
    assert_eq!(lengths(&l, TrimKind::JambFlashing), [55.5; 2]);
    assert_eq!(lengths(&l, TrimKind::SillFlashing), [0.0; 0]);
    assert_eq!(lengths(&l, TrimKind::HeadFlashing), [66.0]);
}

#[test]
fn a_surround_cut_by_the_foot_and_by_a_band_goes_down_to_a_first_course_that_hangs() {
    // The same window with boards of 3 1/2: from -1.5 to 43.5, 47 wide. Under the band of 20 to 28 is left what reaches
    // from the hung start at -3 up to 20: two jambs of 23, nothing level. Over it the head of 47 and jambs from 28
    // to under it, 43.5 - 3.5 - 28; flashing from 28 to 8 1/2 over the window's head of 40, and 40 + 18 across.
    let rings = [
        ("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 97.0)[..]),
        ("A-GLAZ", &rect(90.0, 2.0, 130.0, 40.0)[..]),
    ];
    let more = "[trim]\nsurround = 3.5\n[courses]\ndatum = -3\nhang_below = 4\n\
                [[band]]\nelevation = \"elevation\"\nbottom = 20\ntop = 28\n";
    let l = laid(&rings, more);
    let sorted = |kind| {
        let mut all = lengths(&l, kind);
        all.sort_by(f64::total_cmp);
        all
    };
    assert_eq!(sorted(TrimKind::Surround), [12.0, 12.0, 23.0, 23.0, 47.0]);
    assert_eq!(sorted(TrimKind::JambFlashing), [20.5, 20.5, 23.0, 23.0]);
    assert_eq!(sorted(TrimKind::HeadFlashing), [58.0]);
}

#[test]
fn a_window_of_another_shape_cut_by_the_foot_has_nothing_under_a_first_course_that_hangs() {
    // An L from (90, 2), its shoulder of 20 at 30, its top of 20 at 40: with boards of 3 1/2 round it the foot at 0
    // cuts their lower side. Left are the jambs from the hung start at -3 up to 33 1/2 and to 43 1/2, and the one of
    // 10 over the shoulder, which is 86 1/2 to 106 1/2; the top is 106 1/2 to 133 1/2. Nothing level is below.
    let window =
        [(90.0, 2.0), (130.0, 2.0), (130.0, 40.0), (110.0, 40.0), (110.0, 30.0), (90.0, 30.0)];
    let rings = [("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 97.0)[..]), ("A-GLAZ", &window[..])];
    let l = laid(&rings, "[trim]\nsurround = 3.5\n[courses]\ndatum = -3\nhang_below = 4\n");
    let mut boards = lengths(&l, TrimKind::Surround);
    boards.sort_by(f64::total_cmp);
    assert_eq!(boards, [10.0, 20.0, 27.0, 36.5, 46.5]);
    assert_eq!(lengths(&l, TrimKind::SillFlashing), [0.0; 0]);
    assert_eq!(broken(&l), [""; 0]);
}

#[test]
fn a_window_that_ends_on_the_foot_of_a_wall_is_flashed_where_it_stands() {
    // 40 by 30 on the foot, the first course 3 in under it: its own sill stays where it is drawn. Sill flashing of
    // 9 in from 0 down, 40 + 18 long; jambs 8 1/2 under the sill and over the head, 30 + 17.
    let rings = [
        ("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 97.0)[..]),
        ("A-GLAZ", &rect(90.0, 0.0, 130.0, 30.0)[..]),
    ];
    let l = laid(&rings, "[courses]\ndatum = -3\nhang_below = 4\n");
    assert_eq!(lengths(&l, TrimKind::JambFlashing), [47.0; 2]);
    assert_eq!(lengths(&l, TrimKind::SillFlashing), [58.0]);
    assert_eq!(of(&l, TrimKind::SillFlashing)[0].from[1], -4.5);
}
