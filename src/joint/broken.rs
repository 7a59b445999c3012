//! Rules of joints that are broken, by wall: where, and whether that is proven to be so with any joints.

use std::collections::{BTreeMap, BTreeSet};

use super::ask::Ask;
use super::near::Near;
use super::places::places;
use super::proof::without_layout;
use crate::geom::tol::ROUNDING;
use crate::model::conflict::{
    Break, BrokenSeamRule, Conflict, ConflictProof, SeamAt, SeamFault, SeamRemedy,
};
use crate::model::joint::JointRules;
use crate::model::seam::SeamRules;

/// What the joints of one wall break.
#[derive(Default)]
struct OfWall {
    off: Vec<Break>,
    near: Vec<Break>,
    /// Runs and courses, of joints off studs and of joints too near.
    runs: [BTreeSet<usize>; 2],
}

/// How many joints stand off the studs or too near to others.
pub(super) fn count(
    asks: &[Ask],
    laid: &[Vec<f64>],
    rules: &SeamRules,
    joints: &JointRules,
) -> usize {
    walls(asks, laid, rules, joints).values().map(|w| w.off.len() + w.near.len()).sum()
}

/// The conflicts of a house, each break with its mark.
pub(super) fn conflicts(
    asks: &[Ask],
    laid: &[Vec<f64>],
    rules: &SeamRules,
    joints: &JointRules,
) -> Vec<Conflict> {
    let mut out: Vec<Conflict> = Vec::new();
    for (wall, found) in walls(asks, laid, rules, joints) {
        let on: Vec<&Ask> = asks.iter().filter(|a| a.wall == wall).collect();
        let [off, near] = &found.runs;
        for (breaks, runs, is_off) in [(found.off, off, true), (found.near, near, false)] {
            if breaks.is_empty() {
                continue;
            }
            let bad: BTreeSet<i32> = runs.iter().map(|i| asks[*i].course).collect();
            let least = without_layout(&on, &bad, rules, joints);
            let proof = match least {
                Some(_) => ConflictProof::NoLayoutExists,
                None => ConflictProof::NoneFound,
            };
            let rule = match is_off {
                true => BrokenSeamRule::JointOffStuds { proof },
                false => BrokenSeamRule::JointsOnOneStud { proof },
            };
            out.push(Conflict {
                elevation: on.first().map(|a| a.elevation.into()).unwrap_or_default(),
                courses: least.unwrap_or_else(|| bad.into_iter().collect()),
                runs: runs.iter().map(|i| asks[*i].run.id.clone()).collect(),
                rule,
                remedies: vec![SeamRemedy::LongerBoards],
                breaks,
            });
        }
    }
    let all = out.iter_mut().flat_map(|c| &mut c.breaks);
    all.enumerate().for_each(|(i, b)| b.mark = format!("X{}", i + 1));
    out
}

fn walls(
    asks: &[Ask],
    laid: &[Vec<f64>],
    rules: &SeamRules,
    joints: &JointRules,
) -> BTreeMap<usize, OfWall> {
    let near = Near::of(asks, rules);
    let at = |i: usize, x: f64| SeamAt { run: asks[i].run.id.clone(), course: asks[i].course, x };
    let mut out: BTreeMap<usize, OfWall> = BTreeMap::new();
    for (i, ask) in asks.iter().enumerate() {
        let studs = places(ask.run, rules, joints.studs.get(&ask.run.id).map(|s| s.1));
        let on_stud = |x: &f64| studs.iter().any(|s| (s - x).abs() < ROUNDING);
        for x in laid[i].iter().filter(|x| !on_stud(x)) {
            let wall = out.entry(ask.wall).or_default();
            let fault = SeamFault::OffStuds { course: ask.course + 1 };
            wall.off.push(Break { mark: String::new(), fault, seams: vec![at(i, *x)] });
            wall.runs[0].insert(i);
        }
        for j in near.of_run(i).iter().copied().filter(|j| asks[*j].course > ask.course) {
            for (x, y) in laid[i].iter().flat_map(|x| laid[j].iter().map(move |y| (*x, *y))) {
                if (x - y).abs() >= joints.apart - ROUNDING {
                    continue;
                }
                let fault = SeamFault::TooNear {
                    courses: [ask.course + 1, asks[j].course + 1],
                    apart: (x - y).abs(),
                    least: joints.apart,
                };
                let wall = out.entry(ask.wall).or_default();
                let seams = vec![at(i, x), at(j, y)];
                wall.near.push(Break { mark: String::new(), fault, seams });
                wall.runs[1].extend([i, j]);
            }
        }
    }
    out
}
