//! The bound by prices of what one panel can give: a wall reckoned by hand, tiny houses against every
//! way to cut them, and what the check says of prices that prove nothing.

use lapwright::job::file as job_file;
use lapwright::language::Language;
use lapwright::layout::Layout;
use lapwright::layout::rule::Rule;
use lapwright::model::price_list::PriceList;
use lapwright::model::seam::{
    Dual, Effort, SeamCourse, SeamElevation, SeamProblem, SeamRules, SeamRun,
};
use lapwright::model::waiting::Waiting;
use lapwright::seam::plan;
use lapwright::wording::proof;

use crate::faults::Break;
use crate::seamcase::cases::rules;
use crate::support::{bare_corners, broken, dxf, lay, rect};

/// Four courses of 58 in and one of 36 in, from panels of 12 ft 6 in. By length two panels would do: four
/// times 58 and 36 are 268 of 300. But two of the long ones leave less than 34 in of a panel, too little
/// for the short one, and three are too long; so two panels that give the four give no more, and it
/// takes three. No seam helps: a run that one panel covers gets none.
pub(crate) fn priced() -> Layout {
    let (wide, narrow) = (rect(0.0, 0.0, 58.5, 48.0), rect(300.0, 0.0, 336.5, 12.0));
    let rings: [(&str, &[(f64, f64)]); 2] = [("A-WALL-OTLN", &wide), ("A-WALL-OTLN", &narrow)];
    let text = "[drawing]\nunit = \"inch\"\n[product]\nlength = 150\nexposure = 12\n\
        [courses]\ndatum = 0\n[seams]\nwaiting = \"any\"\n";
    lay(dxf(&rings).as_bytes(), &bare_corners(job_file::parse(text, "job").unwrap()))
}

#[test]
fn three_panels_that_two_would_hold_by_length_are_proven() {
    let l = priced();
    let covers: Vec<i64> = l
        .walls()
        .flat_map(|(_, w)| &w.courses)
        .flat_map(|c| &c.runs)
        .map(|r| (r.x1 - r.x0 - 2.0 * r.gap).round() as i64)
        .collect();
    assert_eq!(covers, [58, 58, 58, 58, 36]);
    assert_eq!(broken(&l), Vec::<String>::new());
    assert_eq!((l.bound.panels, l.bound.best, l.bound.proven), (3, 3, true));
    assert!(l.bound.certificate.prices.is_some());
    assert!(proof::method(Language::English, &l.bound, &l.job).contains("prices of pieces"));
}

fn prices(l: &mut Layout) -> &mut PriceList {
    l.bound.certificate.prices.as_mut().unwrap()
}

/// Faults of prices.
pub(crate) const PRICED: [(&str, Rule, Break); 7] = [
    ("a price at which a panel gives more than it is worth", Rule::PanelBound, |l| {
        let scale = l.bound.certificate.scale;
        prices(l).seamless[0].price += scale;
    }),
    ("all that end pieces cost raised over a panel", Rule::PanelBound, |l| {
        let scale = l.bound.certificate.scale;
        prices(l).beyond = scale;
    }),
    ("a price under nothing", Rule::PanelBound, |l| prices(l).beyond = -1),
    ("prices out of order", Rule::PanelBound, |l| prices(l).seamless.reverse()),
    ("prices lowered under what they sum to", Rule::PanelBound, |l| {
        prices(l).seamless[0].price -= 1
    }),
    ("a function beside prices", Rule::PanelBound, |l| {
        l.bound.certificate.function = Dual::Rounded(1)
    }),
    ("the prices left out", Rule::PanelBound, |l| l.bound.certificate.prices = None),
];

/// Runs without a seam, whole inches, of panels of 20 in and without a saw cut.
fn seamless(covers: &[i64]) -> SeamProblem {
    let rules = SeamRules { gap: 0.0, kerf: 0.0, ..rules(20.0, 1.0, 2.0, Effort::Usual) };
    let run = |(i, cover): (usize, &i64)| SeamCourse {
        index: i as i32,
        runs: vec![SeamRun {
            id: i.to_string().into(),
            wall: 0,
            x0: 0.0,
            x1: *cover as f64,
            fixed: vec![],
            barred: vec![],
            notched: Vec::new(),
        }],
        ..Default::default()
    };
    let courses = covers.iter().enumerate().map(run).collect();
    let elevation = SeamElevation { name: "t".into(), courses, ..Default::default() };
    SeamProblem { rules, elevations: vec![elevation], waiting: Waiting::default() }
}

/// Fewest panels by every way to cut the pieces, those from the first on into panels with this left.
fn fewest(pieces: &[i64], left: &mut Vec<i64>, least: usize) -> usize {
    let Some((first, others)) = pieces.split_first() else { return left.len() };
    let mut best = least;
    for i in 0..=left.len() {
        if i == left.len() {
            left.push(20);
        }
        if left[i] >= *first && left.len() < best {
            left[i] -= first;
            best = best.min(fewest(others, left, best));
            left[i] += first;
        }
    }
    left.pop();
    best
}

#[test]
fn no_bound_is_over_the_fewest_of_every_way_to_cut() {
    // By length two panels hold each of these, and no function tells more; every way to cut takes three.
    let known: [&[i64]; 4] =
        [&[8, 8, 8, 8, 5], &[8, 8, 8, 8, 6], &[8, 8, 8, 7, 6], &[11, 11, 6, 6, 4]];
    for covers in known {
        assert_eq!(fewest(covers, &mut Vec::new(), covers.len() + 1), 3);
        let got = plan(&seamless(covers), &mut |_| {}).certificate;
        assert!(got.proven && got.bound == 3 && got.prices.is_some(), "{covers:?}: {got:?}");
    }
    let (mut s, mut proven, mut by_prices) = (7u64, 0, 0);
    for _ in 0..150 {
        let mut next = |n: u64| {
            s = s.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
            ((s >> 33) % n) as i64
        };
        let sorts: Vec<i64> = (0..3).map(|_| 4 + next(10)).collect();
        let pieces = 5 + next(4);
        let covers: Vec<i64> = (0..pieces).map(|_| sorts[next(3) as usize]).collect();
        let fewest = fewest(&covers, &mut Vec::new(), covers.len() + 1);
        let got = plan(&seamless(&covers), &mut |_| {});
        assert!(got.certificate.bound <= fewest, "{covers:?}: {:?}", got.certificate);
        assert_eq!(got.panels, fewest, "{covers:?}");
        proven += usize::from(got.certificate.proven);
        by_prices += usize::from(got.certificate.prices.is_some());
    }
    // Such houses are seldom ones that no prices settle, and functions alone leave some open.
    assert!(proven >= 145 && by_prices >= 1, "{proven} proven, {by_prices} by prices");
}
