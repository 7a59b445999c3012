//! Where the seams of a run may stand by the rules of the run alone, reckoned anew from the layout's
//! runs and the job: no seam search is asked. Everything is a little wider than the rules, so that what
//! has no place here has none.

use super::named::{RunOn, bounds};
use super::scan::{joined, without};
use super::tolerance::SAME;
use crate::layout::laid::LaidHouse;

/// One way to part a run: whole panels between two end pieces.
#[derive(Clone, Debug)]
pub(super) struct Pattern {
    /// Places of its seams from the first.
    pub(super) offsets: Vec<f64>,
    /// Where the first may stand, elevation inches.
    pub(super) spans: Vec<(f64, f64)>,
}

/// A run, or a part of one between seams that fixtures fix.
#[derive(Clone, Debug)]
pub(super) struct Part {
    /// Its course.
    pub(super) course: i32,
    /// From where to where it goes.
    pub(super) reach: (f64, f64),
    /// Every way to part it; without one it cannot be laid by the rules.
    pub(super) patterns: Vec<Pattern>,
}

/// Most ways to part one run that are looked at; with more nothing is proven.
const MOST: usize = 2000;

/// The parts of a run that need a seam. `None` where there are too many ways to look at.
pub(super) fn parts(layout: &LaidHouse, on: &RunOn) -> Option<Vec<Part>> {
    let lap = layout.job.lap();
    let (mut at, end) = (on.run.x0 + on.run.gap, on.run.x1 - on.run.gap);
    let mut spans = Vec::new();
    for s in &on.run.fixed {
        spans.push((at, s + lap / 2.0));
        at = s - lap / 2.0;
    }
    spans.push((at, end));
    let barred = barred(layout, on);
    let boards = layout.job.siding().joints.is_on_studs();
    let longest = stocks(layout).iter().copied().fold(0.0, f64::max);
    let mut out = Vec::new();
    for reach in spans {
        // What one piece covers needs no seam.
        if reach.1 - reach.0 <= longest + SAME {
            continue;
        }
        let mut patterns =
            if boards { joints(layout, on, reach)? } else { laps(layout, reach, longest)? };
        patterns.iter_mut().for_each(|p| p.bar(&barred));
        patterns.retain(|p| !p.spans.is_empty());
        out.push(Part { course: on.course.index, reach, patterns });
    }
    Some(out)
}

fn stocks(layout: &LaidHouse) -> Vec<f64> {
    layout.stocks.iter().map(|s| s.length).collect()
}

impl Pattern {
    /// Keeps its seams out of open intervals.
    pub(super) fn bar(&mut self, barred: &[(f64, f64)]) {
        let mut off: Vec<(f64, f64)> = Vec::new();
        for (low, high) in barred {
            off.extend(self.offsets.iter().map(|o| (low - o, high - o)));
        }
        self.spans = without(&joined(std::mem::take(&mut self.spans)), &joined(off));
    }
}

/// Laps of panels: any whole panels between two end pieces, each as long as the shortest allows.
fn laps(layout: &LaidHouse, (from, to): (f64, f64), longest: f64) -> Option<Vec<Pattern>> {
    let (lap, shortest) = (layout.job.lap(), layout.job.seams.shortest - SAME);
    let (stocks, longest) = (stocks(layout), longest + SAME);
    let mut out = Vec::new();
    // Whole panels laid so far.
    let mut todo: Vec<Vec<f64>> = vec![Vec::new()];
    while let Some(whole) = todo.pop() {
        let ends = to - from + (whole.len() + 1) as f64 * lap - whole.iter().sum::<f64>();
        if ends < 2.0 * shortest.max(0.0) || out.len() + todo.len() > MOST {
            if out.len() + todo.len() > MOST {
                return None;
            }
            continue;
        }
        let (least, most) = (shortest.max(ends - longest), longest.min(ends - shortest));
        if least <= most {
            let mut offsets = vec![0.0];
            for w in &whole {
                offsets.push(offsets[offsets.len() - 1] + w - lap);
            }
            let first = from - lap / 2.0;
            out.push(Pattern { offsets, spans: vec![(first + least, first + most)] });
        }
        // A panel no longer than its lap would go on for ever.
        for stock in stocks.iter().filter(|s| **s > lap + 1.0) {
            todo.push(whole.iter().copied().chain([*stock]).collect());
        }
    }
    Some(out)
}

/// Joints of boards: any studs that leave no board too long or too short.
fn joints(layout: &LaidHouse, on: &RunOn, (from, to): (f64, f64)) -> Option<Vec<Pattern>> {
    let (b, gap) = (&layout.job.boards, -layout.job.lap());
    let left = bounds(&on.wall.outline)[0] + b.first_stud;
    let (low, high) = ((from - left) / b.stud_spacing, (to - left) / b.stud_spacing);
    let studs: Vec<f64> = (low.floor() as i64..=high.ceil() as i64)
        .map(|n| left + n as f64 * b.stud_spacing)
        .filter(|x| *x > from && *x < to)
        .collect();
    let longest = stocks(layout).iter().copied().fold(0.0, f64::max) + SAME;
    let shortest = layout.job.seams.shortest - SAME;
    let fits = |length: f64| length >= shortest && length <= longest;
    let mut out = Vec::new();
    let mut todo: Vec<Vec<f64>> = vec![Vec::new()];
    let mut looked = 0;
    while let Some(set) = todo.pop() {
        looked += 1;
        if looked > 20 * MOST || out.len() > MOST {
            return None;
        }
        let at = set.last().map_or(from, |x| x + gap / 2.0);
        if !set.is_empty() && fits(to - at) {
            let offsets = set.iter().map(|x| x - set[0]).collect();
            out.push(Pattern { offsets, spans: vec![(set[0] - SAME, set[0] + SAME)] });
        }
        let next = studs.iter().filter(|x| fits(**x - gap / 2.0 - at));
        todo.extend(next.map(|x| set.iter().copied().chain([*x]).collect()));
    }
    Some(out)
}

/// Where fixtures on blocks, for boards every fixture, leave no seam a place.
fn barred(layout: &LaidHouse, on: &RunOn) -> Vec<(f64, f64)> {
    let boards = layout.job.siding().joints.is_on_studs();
    // As the rule of seams at fixtures has it, a sixteenth less.
    let room = layout.job.lap().abs() / 2.0 + layout.job.courses.notch_clearance - 1.0 / 16.0;
    let laid = bounds(on.run.pieces.iter().flat_map(|p| &p.outline));
    let mut out = Vec::new();
    for o in on.wall.obstacles.iter().filter(|o| o.mounting_block || boards) {
        let b = bounds(&o.outline);
        if b[0] < laid[2] && b[2] > laid[0] && b[1] < laid[3] && b[3] > laid[1] {
            out.push((b[0] - room + SAME, b[2] + room - SAME));
        }
    }
    out
}
