//! The search for the datum: the free height of the first course, tried sixteenth by sixteenth and at
//! every height that brings a head, sill, eave or band to a course line (FACTS OT-01 to OT-08).
//!
//! A datum is a residue: what matters of a height is where it falls within a course. The panels of a
//! course that a level line cuts are ripped or notched there; a strip is what is kept of them.

use super::effects::effects;
use super::levels::{Levels, Line, Start, Steps, feet, levels};
use super::story_pole::lowest;
use crate::geom::tol::{SAME, same, snap};
use crate::job::Job;
use crate::model::house::House;
use crate::model::pole::{DatumChoice, DatumTerm, DatumWeight as Weight, WeighedIn};

/// Height from which a top course is no shorter than it should be (FACTS OT-06: 4 in is quoted for
/// shingles).
const TALL_TOP: f64 = 4.0;
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

/// What a datum does to the lines of a house.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Tally {
    pub(super) over_head: Steps,
    pub(super) under_sill: Steps,
    pub(super) at_top: Steps,
    pub(super) at_start: Steps,
    pub(super) main_head: Steps,
    pub(super) main_sill: Steps,
    pub(super) other_line: Steps,
    pub(super) short_top: f64,
    pub(super) cut_start: Steps,
    pub(super) steps: usize,
    pub(super) bare: f64,
    pub(super) cut_panels: f64,
    /// Length of wall bottom that the first course hangs below, and how far at most.
    pub(super) hung: (Steps, f64),
    /// How far the course line lies under a wall bottom whose first course is cut, at most.
    pub(super) cut_by: f64,
    /// What is kept of the first course where it is cut; of the thinnest top course.
    pub(super) first: f64,
    pub(super) top: f64,
}

/// Searches; `choices` is empty for a house without walls.
pub fn search(house: &House, job: &Job) -> Found {
    let levels = levels(house, job);
    let Some(low) = lowest(house, &job.courses) else { return Found::default() };
    let e = job.product.exposure;
    let below = |butt: f64| (low - butt).rem_euclid(e);
    let mut tried: Vec<f64> = (0..(e * 16.0).ceil() as i64).map(|k| k as f64 / 16.0).collect();
    let lines = [&levels.feet, &levels.heads, &levels.sills, &levels.tops];
    tried.extend(lines.into_iter().flatten().map(|l| below(l.y)));
    tried.extend(levels.starts.iter().map(|s| below(s.y)));
    // A residue just under a whole course is that course.
    tried.iter_mut().filter(|t| e - **t <= SAME).for_each(|t| *t = 0.0);
    tried.sort_by(f64::total_cmp);
    tried.dedup_by(|a, b| (*a - *b).abs() <= SAME);
    let count = tried.len();
    let judge = Judge { levels: &levels, main: main_lines(&levels), job };
    let mut all: Vec<DatumChoice> = tried.iter().map(|t| judge.choice(low, *t)).collect();
    let valley = |i: usize| {
        let near = |j: &usize| apart(all[*j].below, all[i].below, e) <= APART / 2.0;
        (0..all.len()).filter(near).all(|j| points(&all[j]) >= points(&all[i]))
    };
    let mut order: Vec<(bool, usize)> = (0..all.len()).map(|i| (!valley(i), i)).collect();
    order.sort_by_key(|(slope, i)| (*slope, points(&all[*i]), *i));
    let mut picked: Vec<DatumChoice> = Vec::new();
    if let Some(fixed) = job.courses.datum {
        let mut own = judge.choice(low, below(fixed));
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

/// Heights of the main heads and sills: those that most window width shares, else most width.
fn main_lines(levels: &Levels) -> (Option<f64>, Option<f64>) {
    let widest = |lines: &[Line]| {
        let by = |l: &&Line| (l.windows, l.width, (l.y / SAME) as i64);
        lines.iter().max_by_key(by).map(|l| l.y)
    };
    (widest(&levels.heads), widest(&levels.sills))
}

pub(super) struct Judge<'a> {
    levels: &'a Levels,
    /// Heights of main heads and main sills.
    pub(super) main: (Option<f64>, Option<f64>),
    pub(super) job: &'a Job,
}

impl Judge<'_> {
    /// The choice whose butt lines lie `below` under the lowest start and whole courses from there.
    fn choice(&self, low: f64, below: f64) -> DatumChoice {
        // A cut first course stands below the drawn bottom; grade leaves no course there.
        let drawn = self.levels.starts.iter().any(|s| same(s.y, low));
        let up = if drawn || below <= SAME { 0.0 } else { self.job.product.exposure };
        let datum = snap(low - below + up);
        let tally = self.tally(datum);
        let terms = self.terms(&tally);
        DatumChoice {
            datum,
            below: low - datum,
            chosen: false,
            // An empty sum is minus nothing.
            score: terms.iter().map(|t| t.points).sum::<f64>() + 0.0,
            effects: effects(self, datum, &tally),
            terms,
        }
    }

    /// How far a height stands over the butt line under it; 0 on a course line.
    pub(super) fn over(&self, datum: f64, y: f64) -> f64 {
        let e = self.job.product.exposure;
        let over = (y - datum).rem_euclid(e);
        if over <= SAME || e - over <= SAME { 0.0 } else { over }
    }

    fn tally(&self, datum: f64) -> Tally {
        let rules = &self.job.courses;
        let (e, v, least) =
            (self.job.product.exposure, rules.notch_clearance, self.job.least_strip() - SAME);
        let mut t = Tally { first: e, top: e, ..Tally::default() };
        let stock = self.job.product.length / 12.0;
        for s in &self.levels.starts {
            self.start(&mut t, s, datum);
        }
        for l in &self.levels.feet {
            let over = self.over(datum, l.y);
            if over > 0.0 {
                t.at_start += if e - over - v < least { l.width } else { 0 };
                t.cut_panels += feet(l.width) / stock;
            }
        }
        let (head, sill) = self.main;
        for l in &self.levels.heads {
            let over = self.over(datum, l.y);
            if over > 0.0 {
                t.over_head += if e - over - v < least { l.width } else { 0 };
                let main = head == Some(l.y);
                *(if main { &mut t.main_head } else { &mut t.other_line }) += l.width;
                t.cut_panels += l.count as f64;
            }
        }
        for l in &self.levels.sills {
            let over = self.over(datum, l.y);
            if over > 0.0 {
                t.under_sill += if over - v < least { l.width } else { 0 };
                let main = sill == Some(l.y);
                *(if main { &mut t.main_sill } else { &mut t.other_line }) += l.width;
                t.cut_panels += l.count as f64;
            }
        }
        for l in &self.levels.tops {
            let over = self.over(datum, l.y);
            if over > 0.0 {
                let kept = (over - v).max(0.0);
                t.at_top += if kept < least { l.width } else { 0 };
                t.short_top += feet(l.width) * (1.0 - kept / TALL_TOP.min(e)).max(0.0);
                t.cut_panels += feet(l.width) / stock;
                t.top = t.top.min(kept);
            }
        }
        t
    }

    fn start(&self, t: &mut Tally, s: &Start, datum: f64) {
        let rules = &self.job.courses;
        let e = self.job.product.exposure;
        let over = self.over(datum, s.y);
        let hung = over > 0.0 && over <= s.hang + SAME;
        // Where grade is too near, whole courses are left out and the first one is whole.
        let drawn = s.floors.iter().filter(|f| **f <= s.y + SAME).count();
        let width = s.width * drawn as Steps / s.floors.len().max(1) as Steps;
        if hung {
            t.hung = (t.hung.0 + s.width, t.hung.1.max(over));
        } else if over > 0.0 && width > 0 {
            let kept = e - over - rules.notch_clearance;
            t.cut_start += width;
            t.cut_by = if s.stone { t.cut_by } else { t.cut_by.max(over) };
            t.at_start += if kept < self.job.least_strip() - SAME { width } else { 0 };
            t.cut_panels += feet(width) / (self.job.product.length / 12.0);
            t.first = t.first.min(kept.max(0.0));
        }
        // Where grade is nearer than the drawn bottom allows, whole courses are left out.
        let mut last: Option<f64> = None;
        for floor in &s.floors {
            let near = *floor > s.y + SAME;
            let over = self.over(datum, *floor);
            let from = if near && over > 0.0 { floor - over + e } else { *floor };
            t.bare += feet(s.each) * (from - floor) / 12.0;
            t.steps += usize::from(last.is_some_and(|l| (l - from).abs() > SAME));
            last = Some(from);
        }
    }

    fn terms(&self, t: &Tally) -> Vec<DatumTerm> {
        let w = &self.job.courses.weights;
        let term = |weight: Weight, amount: f64, unit: WeighedIn, by: f64| DatumTerm {
            weight,
            amount,
            unit,
            points: amount * by,
        };
        let along =
            |weight: Weight, width: Steps, by: f64| term(weight, feet(width), WeighedIn::Feet, by);
        let mut out = vec![
            along(Weight::StripOverHead, t.over_head, w.strip_over_head),
            along(Weight::StripUnderSill, t.under_sill, w.strip_under_sill),
            along(Weight::StripAtTop, t.at_top, w.strip_at_top),
            along(Weight::StripAtStart, t.at_start, w.strip_at_start),
            along(Weight::MainHead, t.main_head, w.main_head),
            along(Weight::MainSill, t.main_sill, w.main_sill),
            along(Weight::OtherLine, t.other_line, w.other_line),
            term(Weight::ShortTop, t.short_top, WeighedIn::Feet, w.short_top),
            along(Weight::CutStart, t.cut_start, w.cut_start),
            term(Weight::Step, t.steps as f64, WeighedIn::Steps, w.step),
            term(Weight::LeftBare, t.bare, WeighedIn::SquareFeet, w.left_bare),
            term(Weight::CutPanel, t.cut_panels, WeighedIn::Panels, w.cut_panel),
        ];
        out.retain(|t| t.amount > 0.0);
        out
    }
}
