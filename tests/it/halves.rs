//! Both halves of a ripped panel in use: walls reckoned by hand, never more panels than without, the
//! rules kept, and what the check says where halves do not fit.

use lapwright::job::siding::kind::{BoardSiding, Siding};
use lapwright::job::{Job, Product, Stock};
use lapwright::language::Language;
use lapwright::layout::Layout;
use lapwright::layout::bound::HalvesReused;
use lapwright::layout::rule::Rule;
use lapwright::model::half::Half;
use lapwright::model::seam::Effort;
use lapwright::model::seam::Exclusion;
use lapwright::takeoff::quantities;
use lapwright::wording::proof;
use lapwright::write::{csv, report};

use crate::sheets::legible;
use crate::support::{broken, broken_rules, dxf, inches, job, lay, lay_set, rect, samples};

/// A wall so wide and high, courses of 8 in counted from `datum`.
fn wall(wide: f64, high: f64, datum: f64, change: &dyn Fn(&mut Job)) -> Layout {
    let mut job = inches();
    job.courses.datum = Some(datum);
    job.seams.reuse_halves = true;
    change(&mut job);
    lay(dxf(&[("A-WALL-OTLN", &rect(0.0, 0.0, wide, high))]).as_bytes(), &job)
}

#[test]
fn a_top_and_a_first_course_come_from_one_panel() {
    // The butt line of the first course 4 in below the wall: its upper 4 in less a clearance are kept, and
    // the hem. The fourth course ends at 23 1/2, of which 3 1/2 in less a clearance: they and a saw cut of
    // 1/8 lie under the first course's part. Each course is one panel: four, or three.
    let layout = wall(150.0, 23.5, -4.0, &|_| {});
    assert_eq!(broken(&layout), Vec::<String>::new());
    let rips: Vec<_> = layout.pieces().map(|(.., p)| (p.half, p.rip.clone())).collect();
    assert_eq!(rips.len(), 4);
    assert_eq!(rips[0].0, Some(Half::Upper));
    assert!((4.0..4.5).contains(&rips[0].1.as_ref().unwrap().from), "{rips:?}");
    assert_eq!(rips[3].0, Some(Half::Lower));
    assert!(rips[3].1.as_ref().unwrap().to <= 3.5);
    assert!(rips[1..3].iter().all(|r| *r == (None, None)));
    assert_eq!((layout.panels.len(), layout.bound.best, layout.bound.panels), (3, 3, 4));
    let shared: Vec<usize> = layout.panels.iter().map(|p| p.pieces.len()).collect();
    assert_eq!(shared.iter().sum::<usize>(), 4);
    let names: Vec<&str> = layout.panels.iter().map(|p| p.id.as_str()).collect();
    assert_eq!(names, ["P1", "P2", "P3"]);
    // The certificate says what it leaves out and by how much the answer goes under it.
    let bound = &layout.bound;
    assert_eq!(bound.reuse, Some(HalvesReused { saved: 1, cut: 3 }));
    assert!(bound.excludes.contains(&Exclusion::ReusedHalves { saved: 1 }));
    assert!(!bound.excludes.contains(&Exclusion::RippedHalves));
    let words = proof::panels(Language::English, bound, &layout.job);
    assert!(words.contains("Reuse takes 1 panel less: 3 panels are cut"), "{words}");
    assert!(words.contains("without reuse of ripped halves"), "{words}");
    assert!(proof::method(Language::English, bound, &layout.job).contains("takes 1 panel less"));
    let takeoff = quantities(&layout);
    assert_eq!(takeoff.line("panels").unwrap().order, 3.0);
    assert!(report::text(&layout, &takeoff).contains("Reuse takes 1 panel less"));
    let list = String::from_utf8(csv::cut_list(&layout)).unwrap();
    assert_eq!((list.matches("lower half").count(), list.matches("upper half").count()), (1, 1));
    crate::recount::check(&crate::recount::written(&layout), "halves");
}

#[test]
fn parts_that_do_not_fit_or_are_not_wanted_stay_apart() {
    // 5 in of the fourth course lie over the 4 in where the first one's part begins.
    let high = wall(150.0, 25.0, -4.0, &|_| {});
    assert_eq!((high.panels.len(), high.halved()), (4, 0));
    assert_eq!(broken(&high), Vec::<String>::new());
    let off = wall(150.0, 23.5, -4.0, &|j| j.seams.reuse_halves = false);
    assert_eq!((off.panels.len(), off.halved()), (4, 0));
    assert!(off.verify.rules.iter().all(|r| r.rule != Rule::PanelHalves));
}

#[test]
fn long_walls_share_whole_panels() {
    // 40 ft: two or three whole panels in each course, of which those of the first and the last pair.
    let layout = wall(480.0, 23.5, -4.0, &|_| {});
    assert_eq!(broken(&layout), Vec::<String>::new());
    let off = wall(480.0, 23.5, -4.0, &|j| j.seams.reuse_halves = false);
    assert!(layout.halved() >= 2, "{}", layout.halved());
    assert_eq!(layout.panels.len() + layout.halved(), off.panels.len());
}

#[test]
fn boards_give_any_second_strip() {
    let boards = |reuse: bool| {
        wall(140.0, 23.5, 0.0, &|j| {
            j.product = Product::of(Siding::Board(BoardSiding::FiberCement));
            // Courses of 7 in, not to be evened: the last is 2 1/2 in high.
            j.product.exposure_least = Some(7.0);
            j.seams.reuse_halves = reuse;
            j.courses.datum = None;
        })
    };
    let (on, off) = (boards(true), boards(false));
    assert_eq!(broken(&on), Vec::<String>::new());
    assert!(on.panels.len() + on.halved() == off.panels.len());
}

#[test]
fn samples_take_no_more_and_keep_every_rule() {
    let mut saved = 0;
    for (stem, path) in samples() {
        let source = std::fs::read(&path).unwrap();
        let mut off = job(&path);
        off.seams.effort = Effort::Brief;
        // A first course cut at its foot.
        let plain = lay(&source, &off);
        off.courses.datum = Some(plain.datum - 4.5);
        let plain = lay(&source, &off);
        let mut on = off.clone();
        on.seams.reuse_halves = true;
        let layout = lay(&source, &on);
        assert_eq!(broken(&layout), broken(&plain), "{stem}");
        assert_eq!(layout.panels.len() + layout.halved(), plain.panels.len(), "{stem}");
        crate::recount::check(&crate::recount::written(&layout), &stem);
        saved += layout.halved();
    }
    println!("{saved} panels fewer on all samples");
    assert!(saved > 0);
}

#[test]
fn random_houses_keep_every_rule_and_their_sheets_are_legible() {
    let (mut saved, mut houses) = (0, 0);
    for seed in 1.. {
        let (rings, mut job) = crate::random_sheets::house(seed);
        // No gable; a top course of half a course less 1 1/2 in, a first one that leaves more.
        let (eave, course) = (rings[0].1[2].1, job.product.exposure);
        let top = course / 2.0 - 1.5;
        let below = course - (eave - top).rem_euclid(course);
        if rings[0].1.len() > 4 || top < 1.0 || below < course / 2.0 {
            continue;
        }
        houses += 1;
        if houses > 5 {
            break;
        }
        let drawn: Vec<(&str, &[(f64, f64)])> =
            rings.iter().map(|(l, r)| (*l, r.as_slice())).collect();
        let source = dxf(&drawn);
        job.courses.datum = Some(-below);
        job.seams.effort = Effort::Brief;
        if seed % 2 == 0 {
            job.stocks = two(job.product.length);
        }
        let plain = lay(source.as_bytes(), &job);
        job.seams.reuse_halves = true;
        let set = lay_set(source.as_bytes(), &job);
        let layout = &set.layout;
        assert_eq!(broken(layout), broken(&plain), "house {seed}");
        assert_eq!(layout.panels.len() + layout.halved(), plain.panels.len(), "house {seed}");
        let name = format!("house {seed}");
        let sheets = crate::support::sheets(&set);
        sheets.iter().for_each(|s| legible(&name, s));
        saved += layout.halved();
    }
    assert!(saved > 0);
}

/// Panels of a length and of 200 in.
fn two(length: f64) -> Vec<Stock> {
    [length, 200.0].map(|length| Stock { length, carton: 24, cost: None }).to_vec()
}

#[test]
fn both_settings_go_together() {
    let layout = wall(480.0, 47.5, -4.0, &|j| {
        j.stocks = two(j.product.length);
        j.takeoff.spare = 5.0;
    });
    assert_eq!(broken(&layout), Vec::<String>::new());
    assert!(layout.halved() > 0);
    crate::recount::check(&crate::recount::written(&layout), "both");
}

#[test]
fn halves_that_overlap_are_refused() {
    let layout = wall(150.0, 23.5, -4.0, &|_| {});
    let refused = |what: &str, change: &dyn Fn(&mut Layout)| {
        let mut other = layout.clone();
        change(&mut other);
        assert!(broken_rules(&other).contains(&Rule::PanelHalves), "{what}: {:?}", broken(&other));
    };
    let each = |l: &mut Layout, change: &dyn Fn(&mut lapwright::layout::piece::Piece)| {
        let walls = l.elevations.iter_mut().flat_map(|e| &mut e.walls);
        let courses = walls.flat_map(|w| &mut w.courses);
        courses.flat_map(|c| &mut c.runs).flat_map(|r| &mut r.pieces).for_each(change);
    };
    refused("a half told of none", &|l| {
        each(l, &|p| {
            if p.half == Some(Half::Lower) {
                p.half = None;
            }
        })
    });
    refused("the lower too high", &|l| {
        each(l, &|p| {
            if let Some(r) = p.rip.as_mut().filter(|_| p.half == Some(Half::Lower)) {
                r.to = 4.4;
            }
        })
    });
    refused("the upper too low", &|l| {
        each(l, &|p| {
            if let Some(r) = p.rip.as_mut().filter(|_| p.half == Some(Half::Upper)) {
                r.from = 3.3;
            }
        })
    });
    refused("not wanted", &|l| l.job.seams.reuse_halves = false);
}
