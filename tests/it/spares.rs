//! Spare pieces: three percent, where neither whole cartons nor multiples leave as many; and what a crew
//! takes that does not cut by the list.

use lapwright::finding::laying::LayingFinding;
use lapwright::finding::{Finding, FindingKind};
use lapwright::language::Language;
use lapwright::layout::Layout;
use lapwright::layout::rule::Rule;
use lapwright::model::basis::{Basis, SpareCover};
use lapwright::model::takeoff::Takeoff;
use lapwright::takeoff::{price, quantities};
use lapwright::wording::takeoff::items;

use crate::small_walls::{job, laid};
use crate::support::{broken_rules, dxf, lay, rect};

/// A wall of 140 x 96 in: twelve courses of 8, each of one panel of 150, whose end of 10 in less gaps is
/// too short for another.
fn twelve(more: &str) -> Layout {
    laid(&[("A-WALL-OTLN", &rect(0.0, 0.0, 140.0, 96.0))], more)
}

/// Needed and ordered of a line.
fn line(t: &Takeoff, id: &str) -> Option<(f64, f64)> {
    t.line(id).map(|l| (l.net, l.order))
}

fn covered(t: &Takeoff, id: &str) -> Option<SpareCover> {
    let Basis::Spare { covered, .. } = t.line(id).unwrap().basis else { panic!("{id}") };
    covered
}

#[test]
fn three_percent_are_spare_unless_cartons_leave_as_many() {
    // 3 % of 12 is 0.36: one panel. A carton of 24 leaves twelve: none is added.
    let t = quantities(&twelve(""));
    assert_eq!((line(&t, "panels").unwrap().1, line(&t, "cartons").unwrap().1), (12.0, 1.0));
    assert_eq!(line(&t, "spare-panels"), Some((1.0, 0.0)));
    assert_eq!(covered(&t, "spare-panels"), Some(SpareCover::Cartons { over: 12.0 }));
    // Cartons of 12 leave none: the spare one calls for a second.
    let t = quantities(&twelve("[product]\ncarton = 12\n"));
    assert_eq!((line(&t, "spare-panels"), covered(&t, "spare-panels")), (Some((1.0, 1.0)), None));
    assert_eq!(line(&t, "cartons"), Some((13.0 / 12.0, 2.0)));
    // Of 13 to a carton the one over is the spare one.
    let t = quantities(&twelve("[product]\ncarton = 13\n"));
    assert_eq!((line(&t, "spare-panels"), line(&t, "cartons").unwrap().1), (Some((1.0, 0.0)), 1.0));
    // 25 % of 12 are three; 0 none, and no line.
    let t = quantities(&twelve("[product]\ncarton = 12\n[takeoff]\nspare = 25\n"));
    assert_eq!(line(&t, "spare-panels"), Some((3.0, 3.0)));
    let t = quantities(&twelve("[product]\ncarton = 12\n[takeoff]\nspare = 0\n"));
    assert_eq!((line(&t, "spare-panels"), line(&t, "cartons")), (None, Some((1.0, 1.0))));
    crate::recount::check(&crate::recount::written(&twelve("[product]\ncarton = 12\n")), "twelve");
}

#[test]
fn each_trim_sold_by_length_has_its_spare_after_the_cutting_plan() {
    // The starter runs along 140 in less what posts take: more than one length of 120, no more than two.
    // 3 % of two is one. Two posts of 8 ft, one a length of 10 ft: one spare. Flashing comes in rolls.
    let t = quantities(&twelve(""));
    assert_eq!(line(&t, "starter-strip").unwrap().1, 2.0);
    assert_eq!(line(&t, "spare-starter-strip"), Some((1.0, 1.0)));
    assert_eq!(line(&t, "outside-corner-post").unwrap().1, 2.0);
    assert_eq!(line(&t, "spare-outside-corner-post"), Some((1.0, 1.0)));
    assert!(t.lines.iter().all(|l| !l.id.contains("spare-flashing")));
    let t = quantities(&twelve("[takeoff]\ntrim_spare = 60\n"));
    assert_eq!(line(&t, "spare-starter-strip"), Some((2.0, 2.0)), "60 % of 2 is 1.2");
    let t = quantities(&twelve("[takeoff]\ntrim_spare = 0\n"));
    assert!(t.lines.iter().all(|l| !l.id.starts_with("spare-starter")));
    // Bought, and whole of it usable.
    let t = quantities(&twelve(""));
    let o = t.offcuts.iter().find(|o| o.item == "spare-starter-strip").unwrap();
    assert_eq!((o.bought, o.used, o.usable, o.scrap), (120.0, 0.0, 120.0, 0.0));
}

fn priced(layout: &Layout, rows: &str) -> Takeoff {
    let text = format!("item,unit,price,order multiple,currency\n{rows}");
    let list = price::parse(text.as_bytes(), "p").unwrap();
    let style = layout.job.sheet.lengths;
    price::applied(quantities(layout), &list, "p", &|l| {
        items::item_and_unit(Language::English, l, style)
    })
    .unwrap()
}

/// Units bought and their cost, hundredths.
fn bought(t: &Takeoff, id: &str) -> Option<(u64, i64)> {
    let lines = &t.cost.as_ref().unwrap().lines;
    lines.iter().find(|p| p.item == *id).map(|p| (p.quantity, p.extended))
}

#[test]
fn what_is_sold_in_multiples_may_leave_the_spare_ones() {
    let layout = twelve("");
    // Singly: twelve and one. Cartons would have left enough, but none are bought.
    let t = priced(&layout, "panels,piece,10.00,1,USD\n");
    assert_eq!(bought(&t, "panels"), Some((12, 12_000)));
    assert_eq!(bought(&t, "spare-panels"), Some((1, 1_000)));
    // By tens: 20, eight over.
    let t = priced(&layout, "panels,piece,10.00,10,USD\n");
    assert_eq!((bought(&t, "panels"), bought(&t, "spare-panels")), (Some((20, 20_000)), None));
    let cover = SpareCover::Multiple { of: 10, over: 8.0 };
    assert_eq!(covered(&t, "spare-panels"), Some(cover));
    // By sixes: twelve leave none, thirteen take 18: six more.
    let t = priced(&layout, "panels,piece,10.00,6,USD\nstarter-strip,piece,5.00,3,USD\n");
    assert_eq!(
        (bought(&t, "panels"), bought(&t, "spare-panels")),
        (Some((12, 12_000)), Some((6, 6_000)))
    );
    // Starter by threes: two lengths are three, the third is the spare one.
    assert_eq!(
        (bought(&t, "starter-strip"), bought(&t, "spare-starter-strip")),
        (Some((3, 1_500)), None)
    );
    // By cartons nothing changes: the carton holds it.
    let t = priced(&layout, "cartons,carton,400.00,1,USD\n");
    assert_eq!((bought(&t, "cartons"), bought(&t, "spare-panels")), (Some((1, 40_000)), None));
}

#[test]
fn a_takeoff_without_its_spare_ones_is_found_out() {
    let sound = twelve("[product]\ncarton = 12\n");
    let without = |id: &str| {
        let mut l = sound.clone();
        l.takeoff.retain(|t| t.id != *id);
        broken_rules(&l)
    };
    assert_eq!(without("spare-panels"), [Rule::PieceCounts]);
    assert_eq!(without("spare-starter-strip"), [Rule::TrimStock]);
    let mut l = twelve("");
    l.takeoff.iter_mut().filter(|t| t.id == "spare-panels").for_each(|t| t.order = 1.0);
    assert_eq!(broken_rules(&l), [Rule::PieceCounts], "the carton holds it");
}

/// Two elevations with a wall of 70 x 88 in each: eleven courses, two of their pieces out of a panel of
/// 150 and not three.
fn two_sides(more: &str) -> Layout {
    let rings: [(&str, &[(f64, f64)]); 2] = [
        ("A-WALL-OTLN", &rect(0.0, 0.0, 70.0, 88.0)),
        ("A-WALL-OTLN", &rect(500.0, 0.0, 570.0, 88.0)),
    ];
    let views = "[[elevation]]\nname = \"FRONT\"\nregion = [-50.0, -50.0, 200.0, 150.0]\n[[elevation]]\nname = \"LEFT\"\nregion = [450.0, -50.0, 700.0, 150.0]\n";
    lay(dxf(&rings).as_bytes(), &job(&format!("{more}{views}")))
}

#[test]
fn each_elevation_by_itself_carries_no_offcut_over() {
    // 22 pieces are 11 panels; 11 by themselves are 6, twice that 12.
    let l = two_sides("");
    assert_eq!((l.panels.len(), l.bound.each_elevation), (11, Some(12)));
    assert!(
        lapwright::wording::proof::beside(Language::English, &l.bound, &l.job)
            .contains("no offcut carried over, takes 12.")
    );
    // One elevation by itself is the house.
    assert_eq!(twelve("").bound.each_elevation, None);
}

fn crew(l: &Layout) -> Option<(usize, usize)> {
    l.findings.iter().find_map(|f: &Finding| match &f.kind {
        FindingKind::Laying(LayingFinding::CrewTakesMore { crew, bought, .. }) => {
            Some((*crew, *bought))
        }
        _ => None,
    })
}

#[test]
fn a_crew_that_would_run_short_is_told() {
    // A wall of 20 x 8 ft with a window: runs of 240 in less what posts take are a panel and an end
    // piece; the search cuts end pieces two and three to a panel where the last offcut will not do.
    let rings: [(&str, &[(f64, f64)]); 2] =
        [("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 96.0)), ("A-GLAZ", &rect(60.0, 40.0, 100.0, 72.0))];
    let laid = |more: &str| {
        let text = format!(
            "[drawing]\nunit = \"inch\"\n[seams]\neffort = \"brief\"\n[courses]\ndatum = 0\n{more}"
        );
        lay(dxf(&rings).as_bytes(), &lapwright::job::file::parse(&text, "job").unwrap())
    };
    // Bought singly and none spare: the crew's own count is over what is laid.
    let l = laid("[product]\ncarton = 1\n[takeoff]\nspare = 0\n");
    let (takes, panels) = (l.bound.crew, l.panels.len());
    assert!(takes > panels && takes <= 24, "{takes} {panels}");
    assert_eq!(crew(&l), Some((takes, panels)));
    // As many spare ones as it takes more, or a whole carton, and it does not run short.
    let short = (takes - panels) as f64 / panels as f64 * 100.0;
    assert_eq!(
        crew(&laid(&format!("[product]\ncarton = 1\n[takeoff]\nspare = {short:.3}\n"))),
        None
    );
    assert_eq!(crew(&laid("[product]\ncarton = 24\n[takeoff]\nspare = 0\n")), None);
}

#[test]
fn faces_that_show_count_a_lap_once() {
    // Runs of 240 in less what ends take, of two pieces or more, twelve courses of 8. What shows of a course
    // is from its first piece's left end to its last one's right end, once.
    let l = laid(&[("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 96.0))], "");
    let runs = l.walls().flat_map(|(_, w)| &w.courses).flat_map(|c| &c.runs);
    let covered: f64 = runs
        .map(|r| {
            assert!(r.pieces.len() >= 2);
            // The top course is cut a little short of the soffit.
            let heights = || r.pieces[0].outline.iter().map(|p| p[1]);
            let height = heights().fold(f64::MIN, f64::max) - heights().fold(f64::MAX, f64::min);
            (r.pieces[r.pieces.len() - 1].x1 - r.pieces[0].x0) * height
        })
        .sum();
    let line = l.takeoff.iter().find(|t| t.id == "panels").unwrap();
    let Basis::SidingCut { shown, .. } = line.basis else { panic!() };
    let wanted = 100.0 * covered / (l.panels.len() as f64 * 150.0 * 8.0);
    assert!((shown - wanted).abs() < 1e-6, "{shown} {wanted}");
}

#[test]
fn points_of_a_datum_add_up_as_they_are_told() {
    let l = crate::support::laid_by_a_crew("curlew-cottage");
    for c in &l.story_pole.choices {
        let said = lapwright::wording::pole::points(Language::English, c, l.job.sheet.lengths);
        // Each term: amount x weight = points.
        let terms: Vec<&str> = said.trim_end_matches('.').split("; ").collect();
        assert_eq!(terms.len(), c.terms.len());
        let number = |t: &str| -> f64 {
            let t = t.trim_start_matches("about ");
            t.split(' ').next().unwrap().parse().unwrap()
        };
        let mut sum = 0.0;
        for t in terms {
            let (left, points) = t.split_once(" = ").unwrap();
            let (amount, weight) = left.rsplit_once(" x ").unwrap();
            let digit = amount.find(|c: char| c.is_ascii_digit()).unwrap();
            let (amount, weight) = (number(&amount[digit..]), number(weight));
            let points: f64 = points.parse().unwrap();
            // As printed: amount and points to a tenth.
            assert!((amount * weight - points).abs() <= 0.05 + 0.05 * weight + 1e-9, "{t}");
            sum += points;
        }
        assert!((sum - c.score).abs() <= 0.05 * (c.terms.len() + 1) as f64, "{sum} {}", c.score);
        // The total told is what a reader sums.
        let whole = lapwright::wording::pole::choice(
            Language::English,
            c,
            "",
            l.reworked(),
            l.job.sheet.lengths,
        );
        assert!(whole.contains(&format!(", {sum:.1} points: ")), "{sum}: {whole}");
    }
    // Of the one in force the cut list's own pieces are told.
    let list = l.pieces().filter(|(.., p)| p.rip.is_some() || !p.notches.is_empty()).count();
    let said = lapwright::wording::pole::choice(
        Language::English,
        &l.story_pole.choices[0],
        "",
        l.reworked(),
        l.job.sheet.lengths,
    );
    assert!(said.contains(&format!("{list} pieces ripped or notched in the cut list")), "{said}");
}
