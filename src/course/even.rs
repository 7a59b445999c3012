//! Boards may show a little more or less: courses are evened between the main levels of the house,
//! so that butt lines meet sills, heads and tops (`LayoutFact::WoodMayVary`,
//! `LayoutFact::ButtsAtOpenings`).
//! One stick serves all walls, so the levels are those of the whole house, each weighed by the width
//! of siding along it. Levels that cannot all be met leave the lighter ones cut.

use super::levels::levels;
use super::starts::lowest;
use super::story_pole::fixed_by;
use crate::geom::tol::{GRID, SAME, snap};
use crate::job::{Job, Product};
use crate::model::course::StoryPole;
use crate::model::house::House;
use crate::model::pole::{DatumReason, EvenedCourses};

/// Levels nearer to one another than this are one.
const ONE: f64 = 1.0 / 16.0;

/// A height that courses should meet.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Level {
    y: f64,
    /// Width of siding along it, grid steps.
    weight: i64,
    /// Whether boards stand over it.
    over: bool,
    /// Whether boards end under it.
    under: bool,
}

/// Courses between two levels: how many, and their exposure. `None` where no whole number of courses
/// keeps to the limits.
pub fn divided(height: f64, product: &Product) -> Option<(u32, f64)> {
    let (least, most) = product.limits();
    let about = (height / product.exposure).floor().max(0.0);
    let of = |n: f64| (n >= 1.0).then(|| (n as u32, height / n));
    [of(about), of(about + 1.0)]
        .into_iter()
        .flatten()
        .filter(|(_, e)| *e >= least - SAME && *e <= most + SAME)
        .min_by(|a, b| {
            let off = |e: f64| (e - product.exposure).abs();
            off(a.1).total_cmp(&off(b.1))
        })
}

/// The story pole of a house sided with boards.
pub fn pole(house: &House, job: &Job) -> StoryPole {
    let p = &job.product;
    let exposure = p.exposure;
    let (datum, reason) = match (job.courses.datum, lowest(house, job)) {
        (Some(fixed), _) => (snap(fixed), fixed_by(house)),
        (None, Some(low)) => (low, DatumReason::LowestStart),
        (None, None) => (0.0, DatumReason::FloorReference),
    };
    if !job.boards.even {
        return StoryPole { datum, exposure, reason, divisions: Vec::new(), lines: Vec::new() };
    }
    let least = job.least_strip() + job.courses.notch_clearance;
    let chain = chain(datum, &wanted(house, job, datum), p, least);
    let mut lines = vec![datum];
    let mut divisions = Vec::new();
    for y in chain {
        let from = lines.last().copied().unwrap_or(datum);
        let Some((courses, each)) = divided(y - from, p) else { continue };
        lines.extend((1..=courses).map(|i| snap(from + f64::from(i) * each)));
        divisions.push(EvenedCourses { courses, exposure: each, up_to: y });
    }
    StoryPole { datum, exposure, reason, divisions, lines }
}

/// Levels over the datum, bottom up, each once.
fn wanted(house: &House, job: &Job, datum: f64) -> Vec<Level> {
    let found = levels(house, job);
    let over = [&found.feet, &found.heads].into_iter().flatten().map(|l| (l, true));
    let under = [&found.sills, &found.tops].into_iter().flatten().map(|l| (l, false));
    let lines = over.chain(under).map(|(l, over)| (l.y, l.width, over));
    let starts = found.starts.iter().map(|s| (s.y, s.width, true));
    let mut all: Vec<Level> = lines
        .chain(starts)
        .filter(|(y, width, _)| *y > datum + SAME && *width > 0)
        .map(|(y, weight, over)| Level { y, weight, over, under: !over })
        .collect();
    all.sort_by(|a, b| a.y.total_cmp(&b.y).then(b.weight.cmp(&a.weight)));
    let mut out: Vec<Level> = Vec::new();
    for l in all {
        match out.last_mut() {
            Some(last) if l.y - last.y <= ONE => {
                if l.weight > last.weight {
                    last.y = l.y;
                }
                last.weight += l.weight;
                last.over |= l.over;
                last.under |= l.under;
            }
            _ => out.push(l),
        }
    }
    out
}

/// Widths of levels that leave a strip thinner than `least` in courses of `each` from `from` up.
fn thin(levels: &[Level], from: f64, each: f64, least: f64) -> i64 {
    let cut = |l: &&Level| {
        let kept = (l.y - from).rem_euclid(each);
        let off = kept > SAME && kept < each - SAME;
        off && ((l.under && kept < least) || (l.over && each - kept < least))
    };
    levels.iter().filter(cut).map(|l| l.weight).sum()
}

/// The heaviest chain of levels that whole courses within the limits join, from the datum up, less
/// the width along which the others leave a thin strip; of equal ones the evenest.
fn chain(datum: f64, levels: &[Level], product: &Product, least: f64) -> Vec<f64> {
    // Weight, then what exposures differ from what is aimed at, in grid steps; the level before.
    let mut best: Vec<Option<(i64, i64, Option<usize>)>> = Vec::new();
    for (i, l) in levels.iter().enumerate() {
        let mut own: Option<(i64, i64, Option<usize>)> = None;
        for before in (0..i).map(Some).chain([None]) {
            let (from, weight, off, next) = match before {
                None => (datum, 0, 0, 0),
                Some(k) => match best[k] {
                    Some((w, o, _)) => (levels[k].y, w, o, k + 1),
                    None => continue,
                },
            };
            let Some((n, each)) = divided(l.y - from, product) else { continue };
            let off = off + (f64::from(n) * (each - product.exposure).abs() / GRID).round() as i64;
            let weight = weight + l.weight - thin(&levels[next..i], from, each, least);
            if own.is_none_or(|b| (weight, -off) > (b.0, -b.1)) {
                own = Some((weight, off, before));
            }
        }
        best.push(own);
    }
    let after = |i: usize| thin(&levels[i + 1..], levels[i].y, product.exposure, least);
    let ends = (0..best.len()).filter_map(|i| best[i].map(|b| (b.0 - after(i), -b.1, i)));
    let none = -thin(levels, datum, product.exposure, least);
    let mut at = ends.max().filter(|e| e.0 > none).map(|e| e.2);
    let mut out = Vec::new();
    while let Some(i) = at {
        out.push(levels[i].y);
        at = best[i].and_then(|b| b.2);
    }
    out.reverse();
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::siding::kind::{BoardSiding, Siding};

    /// Boards 12 in wide with the least lap for wood, 1 in (`SidingFact::WoodLap`).
    fn boards(exposure: f64, least: f64, width: f64) -> Product {
        Product {
            exposure,
            width: Some(width),
            head_lap: Some(1.0),
            exposure_least: Some(least),
            exposure_most: Some(width - 1.0),
            ..Product::of(Siding::Board(BoardSiding::Wood))
        }
    }

    #[test]
    fn wx_01_to_wx_03_are_divided_as_printed() {
        // Example::BoardsBesideWindow (NAVEDTRA 14044, figure 4-3): 61 in by 10: 6 courses of 10 1/6.
        let p = boards(10.0, 9.0, 12.0);
        let (n, each) = divided(61.0, &p).unwrap();
        assert_eq!(n, 6);
        assert!((each - 10.16667).abs() < 1e-4);
        // Example::BoardsUnderWindow: 31 in: 3 courses of 10 1/3.
        let (n, each) = divided(31.0, &p).unwrap();
        assert_eq!(n, 3);
        assert!((each - 10.33333).abs() < 1e-4);
        // Example::ShinglesBesideWindow: 49 in by 8: 6 courses of 8 1/6.
        let (n, each) = divided(49.0, &boards(8.0, 7.0, 10.0)).unwrap();
        assert_eq!(n, 6);
        assert!((each - 8.16667).abs() < 1e-4);
    }

    #[test]
    fn limits_are_kept() {
        // 15 in by 10: one course of 15 or two of 7 1/2, neither within 9 to 11.
        assert_eq!(divided(15.0, &boards(10.0, 9.0, 12.0)), None);
        assert_eq!(divided(0.0, &boards(10.0, 9.0, 12.0)), None);
        // Vinyl has one exposure.
        assert_eq!(divided(61.0, &Product::default()), None);
        assert_eq!(divided(64.0, &Product::default()), Some((8, 8.0)));
    }

    #[test]
    fn the_heavier_of_two_levels_is_met() {
        // 31 and 92 in: Example::BoardsUnderWindow, then Example::BoardsBesideWindow. A lighter sill
        // at 36 in cannot be met with them: 5 in.
        let p = boards(10.0, 9.0, 12.0);
        let level = |y: f64, weight: i64| Level { y, weight, over: false, under: true };
        let all = [level(31.0, 100), level(36.0, 10), level(92.0, 100)];
        assert_eq!(chain(0.0, &all, &p, 2.0), [31.0, 92.0]);
        let all = [level(31.0, 10), level(36.0, 100), level(92.0, 100)];
        assert!(!chain(0.0, &all, &p, 2.0).contains(&31.0));
        // A sill at 32 in leaves 1 in of a board over 31 in: the wider of the two is met.
        let all = [level(31.0, 100), level(32.0, 101)];
        assert_eq!(chain(0.0, &all, &p, 2.0), [32.0]);
    }
}
