//! Lengths taped on walls of every sort: hatched with casings and a band, of course lines, of loose lines, given by
//! the job. Each is drawn twice, as the architect has it and as it was built, off by the amounts told beside it;
//! what is taped of the second, given back with the first, must be laid out as the second.

use std::collections::BTreeMap;

use lapwright::finding::taped::TapedFinding;
use lapwright::finding::{FindingKind, Findings};
use lapwright::job::{Job, file as job_file};
use lapwright::layout::Layout;
use lapwright::model::house::{EdgeKind, WallWay};
use lapwright::pipeline;
use lapwright::pipeline::measures::{measures, tell_left_out};

use crate::as_drawn::{file, hatch_of};
use crate::drawn_siding::{courses, dxf, ring};
use crate::measures::assert_alike;
use crate::smallcase::JOB;
use crate::support::{broken, rect};

/// A 1/16 in, to which a tape is read.
const TAPE: f64 = 1.0 / 16.0;

pub(crate) fn job(more: &str) -> Job {
    job_file::parse(&format!("{JOB}{more}"), "job").unwrap()
}

pub(crate) fn laid(text: &str, job: &Job) -> (Layout, Findings) {
    let mut findings = Findings::default();
    let sets = pipeline::layout(text.as_bytes(), "t.dxf", job, &mut findings, &mut |_| {});
    (sets.unwrap_or_else(|e| panic!("{e:?} {findings:?}")).house.layout, findings)
}

pub(crate) fn taped(text: &str, job: &Job) -> BTreeMap<String, f64> {
    let read = pipeline::reading(text.as_bytes(), "t.dxf", job, &mut Findings::default());
    let all = measures(&read.unwrap().house, &laid(text, job).0);
    all.into_iter().map(|m| (m.name, m.drawn)).collect()
}

fn closed(layer: &str, points: &[(f64, f64)]) -> String {
    let mut out = format!("0\nLWPOLYLINE\n8\n{layer}\n90\n{}\n70\n1\n", points.len());
    points.iter().for_each(|(x, y)| out += &format!("10\n{x}\n20\n{y}\n"));
    out
}

fn level(y: f64, to: f64) -> String {
    format!("0\nLINE\n8\nA-FLOR-LEVL\n10\n-6\n20\n{y}\n11\n{to}\n21\n{y}\n")
}

/// A wall as drawn or as built: its right side, foot and top, where its band begins, and its openings.
struct Face {
    wide: f64,
    foot: f64,
    top: f64,
    band: f64,
    low: [f64; 4],
    door: [f64; 4],
    high: [f64; 4],
}

const DRAWN: Face = Face {
    wide: 300.0,
    foot: 0.0,
    top: 200.0,
    band: 100.0,
    low: [60.0, 36.0, 104.0, 84.0],
    door: [200.0, 0.0, 244.0, 84.0],
    high: [120.0, 140.0, 164.0, 184.0],
};

/// 3/4 in wider, 1/4 in lower at its foot and 3/8 in at its soffit; the band, which nobody tapes, 1/16 in higher: the
/// window under it ends where it was drawn to, the one over it begins 1/4 in higher. The low window 1/2 in over, 1/4 in narrower, its sill 3/8 in down; the door 3/8 in over; the high window
/// 5/8 in back, 1/4 in up, 1/8 in higher.
const BUILT: Face = Face {
    wide: 300.75,
    foot: -0.25,
    top: 199.625,
    band: 100.0625,
    low: [60.5, 35.625, 104.25, 84.0],
    door: [200.375, -0.25, 244.375, 84.0],
    high: [119.375, 140.25, 163.375, 184.375],
};

/// Two patches of siding parted by a band 10 in high, holes with casings in them and a door in a notch of the foot.
fn hatched(f: &Face) -> String {
    let ([dx0, _, dx1, dh], up) = (f.door, f.band + 10.0);
    let lower = vec![
        (0.0, f.foot),
        (dx0, f.foot),
        (dx0, dh),
        (dx1, dh),
        (dx1, f.foot),
        (f.wide, f.foot),
        (f.wide, f.band),
        (0.0, f.band),
    ];
    let hole = |b: [f64; 4]| rect(b[0], b[1], b[2], b[3]).to_vec();
    let glass =
        |b: [f64; 4]| closed("A-GLAZ", &rect(b[0] + 4.0, b[1] + 4.0, b[2] - 4.0, b[3] - 4.0));
    let upper = rect(0.0, up, f.wide, f.top).to_vec();
    let entities = [
        hatch_of(&[lower, hole(f.low)], 4.0, f.foot),
        hatch_of(&[upper, hole(f.high)], 4.0, up),
        glass(f.low),
        glass(f.high),
        closed("A-ELEV", &rect(0.0, f.band, f.wide, up)),
        level(0.0, f.wide + 6.0),
    ];
    file(Some(1), "", &entities)
}

/// The same wall by its course lines alone, without its band and the window over it.
fn coursed(f: &Face) -> String {
    let top = f.top - 100.0;
    let drawn = |b: [f64; 4]| ring("one", b);
    let mut all = courses("one", (f.foot + 4.0, top, 4.0), |_| (0.0, f.wide), &[f.low]);
    all.extend(drawn([0.0, f.foot, f.wide, top]));
    all.extend(drawn(f.low));
    all.push(("A-FLOR-LEVL", (-6.0, 0.0), (f.wide + 6.0, 0.0)));
    dxf(&all)
}

/// And by loose lines that run past its corners.
fn loose(f: &Face) -> String {
    let (past, top) = (9.0, f.top - 100.0);
    let mut all = vec![
        ("A-WALL-OTLN", (-past, f.foot), (f.wide + past, f.foot)),
        ("A-WALL-OTLN", (-past, top), (f.wide + past, top)),
        ("A-WALL-OTLN", (0.0, f.foot - past), (0.0, top + past)),
        ("A-WALL-OTLN", (f.wide, f.foot - past), (f.wide, top + past)),
        ("A-FLOR-LEVL", (-6.0, 0.0), (f.wide + 6.0, 0.0)),
    ];
    all.extend(ring("A-GLAZ", f.low));
    dxf(&all)
}

/// And given by the job in a drawing that shows its windows alone.
fn given(f: &Face) -> (String, Job) {
    let window = |b: [f64; 4]| closed("A-GLAZ", &rect(b[0], b[1], b[2], b[3]));
    let entities = [window(f.low), window(f.high), level(0.0, f.wide + 6.0)];
    let [a, b, c, d] = f.door;
    let said = format!(
        "[[wall]]\noutline = [[0, {}], [{}, {}]]\n[[opening]]\nkind = \"door\"\noutline = [[{a}, {b}], [{c}, {d}]]\n",
        f.foot, f.wide, f.top
    );
    (file(Some(1), "", &entities), job(&said))
}

/// A drawing with its job.
type Drawn = (String, Job);

/// Each sort of wall: as drawn, as built, and what it is read from.
fn cases() -> Vec<(WallWay, Drawn, Drawn)> {
    let of = |draw: fn(&Face) -> String| ((draw(&DRAWN), job("")), (draw(&BUILT), job("")));
    let by = |way: WallWay, (drawn, built)| (way, drawn, built);
    vec![
        by(WallWay::Hatch, of(hatched)),
        by(WallWay::Hatch, of(coursed)),
        by(WallWay::Arrangement, of(loose)),
        by(WallWay::Job, (given(&DRAWN), given(&BUILT))),
    ]
}

#[test]
fn walls_of_every_sort_are_laid_out_as_they_were_taped() {
    for (i, (way, (drawn, on_paper), (built, of_truth))) in cases().into_iter().enumerate() {
        let truth = laid(&built, &of_truth).0;
        assert!(truth.walls().count() == 1 && truth.walls().all(|(_, w)| w.way == way), "{i}");
        let mut with_tape = on_paper.clone();
        with_tape.taped = taped(&built, &of_truth);
        let (moved, findings) = laid(&drawn, &with_tape);
        assert_alike(&moved, &truth, &format!("wall {i}"));
        assert_eq!(broken(&moved), Vec::<String>::new(), "{i}");
        let contradicts = findings.all().iter().any(|f| f.code().word() == "taped-contradicts");
        assert!(!contradicts, "{i}: {findings:?}");
        // Areas, boards and what each side is, too: 1/16 in along a band is 0.13 sq ft.
        let (a, b) = (moved.walls().next().unwrap().1, truth.walls().next().unwrap().1);
        let off = DRAWN.wide * TAPE / 144.0;
        assert!((a.net_area - b.net_area).abs() < off, "{i}: {} {}", a.net_area, b.net_area);
        assert!((a.gross_area - b.gross_area).abs() < off, "{i}");
        let boards = |w: &[Vec<[f64; 2]>]| w.concat().concat();
        let (of_a, of_b) = (boards(&a.bands), boards(&b.bands));
        assert_eq!(of_a.len(), of_b.len(), "{i}");
        assert!(
            of_a.iter().zip(&of_b).all(|(x, y)| (x - y).abs() <= TAPE),
            "{i}: {of_a:?} {of_b:?}"
        );
        let kinds = |l: &Layout| -> Vec<EdgeKind> {
            l.walls().flat_map(|(_, w)| w.edges.iter().map(|e| e.kind)).collect()
        };
        assert_eq!(kinds(&moved), kinds(&truth), "{i}");
        // And it is not the house as drawn.
        let as_drawn = laid(&drawn, &on_paper).0;
        let right =
            |l: &Layout| l.walls().flat_map(|(_, w)| &w.outline).map(|p| p[0]).fold(0.0, f64::max);
        assert!((right(&moved) - right(&as_drawn) - 0.75).abs() <= TAPE, "{i}");
    }
}

#[test]
fn a_third_of_the_blanks_left_empty_is_taken_as_drawn_and_told() {
    for (i, (_, (drawn, on_paper), (built, of_truth))) in cases().into_iter().enumerate() {
        let all = taped(&built, &of_truth);
        for left in 0..3 {
            let mut some = on_paper.clone();
            let filled = all.iter().enumerate().filter(|(k, _)| k % 3 != left);
            some.taped = filled.map(|(_, (k, v))| (k.clone(), *v)).collect();
            let (layout, findings) = laid(&drawn, &some);
            assert_eq!(broken(&layout), Vec::<String>::new(), "{i} {left}");
            let told = findings.all().iter().find_map(|f| match &f.kind {
                FindingKind::Taped(TapedFinding::Taken { taken, as_drawn, named }) => {
                    Some((*taken, *as_drawn, named.clone()))
                }
                _ => None,
            });
            let (taken, as_drawn, named) = told.unwrap();
            assert_eq!((taken + as_drawn, taken), (all.len(), some.taped.len()), "{i} {left}");
            assert!(!named.is_empty() && named.iter().all(|n| !some.taped.contains_key(n)));
        }
    }
}

#[test]
fn a_wall_too_narrow_for_two_sides_is_left_out_and_told_and_goes_along() {
    // A wall of 240 in, one of 5 in beside it, which no two sides can be taped of.
    let wall = |a: f64, b: f64| closed("A-WALL-OTLN", &rect(a, 0.0, b, 96.0));
    let text = file(Some(1), "", &[wall(0.0, 240.0), wall(240.0, 245.0), level(0.0, 250.0)]);
    let read = |job: &Job| {
        pipeline::reading(text.as_bytes(), "t.dxf", job, &mut Findings::default()).unwrap().house
    };
    let house = read(&job(""));
    let names: Vec<String> = house.elevations[0].walls.iter().map(|w| w.id.to_string()).collect();
    assert_eq!(names.len(), 2);
    let all = measures(&house, &laid(&text, &job("")).0);
    assert!(!all.is_empty() && all.iter().all(|m| m.wall == names[0]), "{all:?}");
    let mut findings = Findings::default();
    tell_left_out(&house, &mut findings);
    let told: Vec<&TapedFinding> = findings
        .all()
        .iter()
        .filter_map(|f| if let FindingKind::Taped(t) = &f.kind { Some(t) } else { None })
        .collect();
    let [TapedFinding::LeftOut { walls, .. }] = told[..] else { panic!("{told:?}") };
    assert_eq!(walls.iter().map(|w| w.to_string()).collect::<Vec<_>>(), [names[1].clone()]);
    let mut wider = job("");
    wider.taped = [(format!("{}/foot-width", names[0]), 241.0)].into();
    let beside = &read(&wider).elevations[0].walls[1].outline;
    let ends = |f: fn(f64, f64) -> f64, from: f64| beside.iter().map(|p| p.x).fold(from, f);
    assert_eq!((ends(f64::min, f64::MAX), ends(f64::max, 0.0)), (241.0, 246.0));
}
