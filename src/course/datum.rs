//! The search for the datum: the free height of the first course, tried sixteenth by sixteenth and at
//! every height that brings a head, sill, eave or band to a course line (`LayoutFact::OneDatum` to
//! `LayoutFact::NotchRoundSills`).
//! A datum is a residue: what matters of a height is where it falls within a course. The panels of a
//! course that a level line cuts are ripped or notched there; a strip is what is kept of them.

use super::effects::effects;
use super::judge::Judge;
use super::levels::levels;
use super::starts::lowest;
use crate::geom::tol::{SAME, same, snap};
use crate::job::Job;
use crate::model::house::House;
use crate::model::pole::DatumChoice;
use crate::real::Total;

/// Two datums nearer than this are one choice, inches: common practice, no source.
const APART: f64 = 1.0;
/// Choices told.
const TOLD: usize = 3;

/// What was found.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Found {
    /// The one in force, then the best that differ from it.
    pub choices: Vec<DatumChoice>,
    /// Heights tried.
    pub tried: usize,
}

/// Searches; `choices` is empty for a house without walls.
pub fn search(house: &House, job: &Job) -> Found {
    let levels = levels(house, job);
    let Some(low) = lowest(house, job) else { return Found::default() };
    let e = job.product.exposure;
    let below = |butt: f64| (low - butt).rem_euclid(e);
    let mut tried: Vec<f64> = (0..(e * 16.0).ceil() as i64).map(|k| k as f64 / 16.0).collect();
    let lines = [&levels.feet, &levels.heads, &levels.sills, &levels.tops];
    tried.extend(lines.into_iter().flatten().map(|l| below(l.y)));
    tried.extend(levels.starts.iter().map(|s| below(s.y)));
    tried.extend(levels.tips.iter().map(|t| below(t.y)));
    // A residue just under a whole course is that course.
    tried.iter_mut().filter(|t| e - **t <= SAME).for_each(|t| *t = 0.0);
    tried.sort_by(f64::total_cmp);
    tried.dedup_by(|a, b| (*a - *b).abs() <= SAME);
    let count = tried.len();
    let judge = Judge::new(&levels, job);
    let mut all: Vec<DatumChoice> = tried.iter().map(|t| choice(&judge, low, *t)).collect();
    let valley = |i: usize| {
        let near = |j: &usize| apart(all[*j].below, all[i].below, e) <= APART / 2.0;
        (0..all.len()).filter(near).all(|j| points(&all[j]) >= points(&all[i]))
    };
    let mut order: Vec<(bool, usize)> = (0..all.len()).map(|i| (!valley(i), i)).collect();
    order.sort_by_key(|(slope, i)| (*slope, points(&all[*i]), *i));
    let mut picked: Vec<DatumChoice> = Vec::new();
    if let Some(fixed) = job.courses.datum {
        let mut own = choice(&judge, low, below(fixed));
        own.datum = snap(fixed);
        picked.push(own);
    } else if let Some(best) = (0..all.len()).min_by_key(|i| (points(&all[*i]), *i)) {
        picked.push(all[best].clone());
    }
    for (_, i) in order {
        let far = picked.iter().all(|p| apart(p.below, all[i].below, e) >= APART - SAME);
        if far && picked.len() < TOLD {
            picked.push(std::mem::take(&mut all[i]));
        }
    }
    if let Some(first) = picked.first_mut() {
        first.chosen = true;
    }
    Found { choices: picked, tried: count }
}

/// Points in millionths: whole numbers have one order on every machine.
fn points(c: &DatumChoice) -> i64 {
    (c.score * 1e6).round() as i64
}

/// How far two residues lie apart, round the course.
fn apart(a: f64, b: f64, exposure: f64) -> f64 {
    let d = (a - b).rem_euclid(exposure);
    d.min(exposure - d)
}

/// The choice whose butt lines lie `below` under the lowest start and whole courses from there.
fn choice(judge: &Judge, low: f64, below: f64) -> DatumChoice {
    // A cut first course stands below the drawn bottom; grade leaves no course there.
    let drawn = judge.levels.starts.iter().any(|s| same(s.y, low));
    let up = if drawn || below <= SAME { 0.0 } else { judge.job.product.exposure };
    let datum = snap(low - below + up);
    let tally = judge.tally(datum);
    let terms = judge.terms(&tally);
    DatumChoice {
        datum,
        below: low - datum,
        chosen: false,
        // An empty sum is minus nothing.
        score: terms.iter().map(|t| t.points).total(),
        effects: effects(judge, datum, &tally),
        terms,
    }
}
