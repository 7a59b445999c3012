//! What one datum does to the lines of a house, counted and weighed.

use super::levels::{GridWidth, Levels, Line, Start, Tip, feet, steps};
use crate::geom::strip::reach_in_band;
use crate::geom::tol::SAME;
use crate::job::Job;
use crate::model::pole::{DatumTerm, DatumWeight as Weight, WeighedIn};

/// Height from which a top course is no shorter than it should be (`LayoutFact::LeastTopCourse`: 4 in
/// is quoted for shingles).
const TALL_TOP: f64 = 4.0;
/// What a datum does to the lines of a house.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Tally {
    pub(super) over_head: GridWidth,
    pub(super) under_sill: GridWidth,
    pub(super) at_top: GridWidth,
    pub(super) at_start: GridWidth,
    pub(super) main_head: GridWidth,
    pub(super) other_line: GridWidth,
    pub(super) short_top: f64,
    pub(super) cut_start: GridWidth,
    pub(super) steps: usize,
    pub(super) bare: f64,
    pub(super) cut_panels: f64,
    /// Length of wall bottom that the first course hangs below, and how far at most.
    pub(super) hung: (GridWidth, f64),
    /// How far the course line lies under a wall bottom whose first course is cut, at most.
    pub(super) cut_by: f64,
    /// What is kept of the first course where it is cut; of the thinnest top course.
    pub(super) first: f64,
    pub(super) top: f64,
}

/// Heights of the main heads and sills: those that most window width shares, else most width.
fn main_lines(levels: &Levels) -> (Option<f64>, Option<f64>) {
    let widest = |lines: &[Line]| {
        let by = |l: &&Line| (l.windows, l.width, (l.y / SAME) as i64);
        lines.iter().max_by_key(by).map(|l| l.y)
    };
    (widest(&levels.heads), widest(&levels.sills))
}

/// Weighs datums of one house.
pub(super) struct Judge<'a> {
    pub(super) levels: &'a Levels,
    /// Heights of main heads and main sills.
    pub(super) main: (Option<f64>, Option<f64>),
    pub(super) job: &'a Job,
}

impl<'a> Judge<'a> {
    /// For the levels of a house.
    pub(super) fn new(levels: &'a Levels, job: &'a Job) -> Self {
        Judge { levels, main: main_lines(levels), job }
    }

    /// How far a height stands over the butt line under it; 0 on a course line.
    pub(super) fn over(&self, datum: f64, y: f64) -> f64 {
        let e = self.job.product.exposure;
        let over = (y - datum).rem_euclid(e);
        if over <= SAME || e - over <= SAME { 0.0 } else { over }
    }

    /// How far a height that panels end under stands over the butt line of the course that is cut
    /// there. On a course line, or over it by no more than the clearance, that is the course below,
    /// whose hem is in the way.
    pub(super) fn under(&self, datum: f64, y: f64) -> f64 {
        let over = self.over(datum, y);
        let hem = over <= self.job.courses.notch_clearance + SAME;
        if hem { over + self.job.product.exposure } else { over }
    }

    pub(super) fn tally(&self, datum: f64) -> Tally {
        let rules = &self.job.courses;
        let (e, v, least) =
            (self.job.product.exposure, rules.notch_clearance, self.job.least_strip() - SAME);
        let mut t = Tally { first: e, top: e, ..Tally::default() };
        let stock = self.job.first_length() / 12.0;
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
        let head = self.main.0;
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
            let kept = self.under(datum, l.y) - v;
            t.under_sill += if kept < least { l.width } else { 0 };
            t.cut_panels += l.count as f64;
        }
        self.levels.tips.iter().for_each(|tip| self.tip(&mut t, tip, datum));
        for l in &self.levels.tops {
            let kept = (self.under(datum, l.y) - v).max(0.0);
            t.at_top += if kept < least { l.width } else { 0 };
            t.short_top += feet(l.width) * (1.0 - kept / TALL_TOP.min(e)).max(0.0);
            t.cut_panels += feet(l.width) / stock;
            t.top = t.top.min(kept);
        }
        t
    }

    /// The strip over a pointed or curved head, or under such a sill: as wide as the opening is where less
    /// than the least is kept, clearance taken off.
    fn tip(&self, t: &mut Tally, tip: &Tip, datum: f64) {
        let (e, v) = (self.job.product.exposure, self.job.courses.notch_clearance);
        let least = self.job.least_strip() - SAME;
        let (kept, y) = if tip.is_head {
            (e - self.over(datum, tip.y) - v, tip.y)
        } else {
            (self.under(datum, tip.y) - v, tip.y)
        };
        let lacks = least - kept;
        let whole = tip.is_head && self.over(datum, tip.y) == 0.0;
        if lacks <= 0.0 || whole {
            return;
        }
        let (low, high) = if tip.is_head { (y - lacks, y) } else { (y, y + lacks) };
        let width = reach_in_band(&tip.outline, low, high).map_or(0, |(a, b)| steps(b - a));
        *(if tip.is_head { &mut t.over_head } else { &mut t.under_sill }) += width;
    }

    fn start(&self, t: &mut Tally, s: &Start, datum: f64) {
        let rules = &self.job.courses;
        let e = self.job.product.exposure;
        let over = self.over(datum, s.y);
        let hung = over > 0.0 && over <= s.hang + SAME;
        // Where grade is too near, whole courses are left out and the first one is whole.
        let drawn = s.floors.iter().filter(|f| **f <= s.y + SAME).count();
        let width = s.width * drawn as GridWidth / s.floors.len().max(1) as GridWidth;
        if hung {
            t.hung = (t.hung.0 + s.width, t.hung.1.max(over));
        } else if over > 0.0 && width > 0 {
            let kept = e - over - rules.notch_clearance;
            t.cut_start += width;
            t.cut_by = if s.stone { t.cut_by } else { t.cut_by.max(over) };
            t.at_start += if kept < self.job.least_strip() - SAME { width } else { 0 };
            t.cut_panels += feet(width) / (self.job.first_length() / 12.0);
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

    pub(super) fn terms(&self, t: &Tally) -> Vec<DatumTerm> {
        let w = &self.job.courses.weights;
        let term = |weight: Weight, amount: f64, unit: WeighedIn, by: f64| DatumTerm {
            weight,
            amount,
            unit,
            points: amount * by,
        };
        let along = |weight: Weight, width: GridWidth, by: f64| {
            term(weight, feet(width), WeighedIn::Feet, by)
        };
        let mut out = vec![
            along(Weight::StripOverHead, t.over_head, w.strip_over_head),
            along(Weight::StripUnderSill, t.under_sill, w.strip_under_sill),
            along(Weight::StripAtTop, t.at_top, w.strip_at_top),
            along(Weight::StripAtStart, t.at_start, w.strip_at_start),
            along(Weight::MainHead, t.main_head, w.main_head),
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
