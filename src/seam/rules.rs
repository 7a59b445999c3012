//! The rules of a seam problem in whole steps of an inch, and the whole numbers that costs are counted in.

use super::hit_sum::HitCosts;

/// One panel, in the whole numbers that costs are counted in.
pub(super) const UNIT: i64 = 1_000_000;

/// A place this near to a step, in steps, is at it.
const WITHIN: f64 = 1e-6;

/// The steps of an inch that lengths are counted in: a tape's sixteenths, or finer ones.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Steps(pub i64);

impl Steps {
    /// Whether they are no finer than the marks of a tape.
    pub(super) fn is_tape(self) -> bool {
        self.0 <= 16
    }

    /// The nearest step.
    #[inline]
    pub(super) fn whole(self, x: f64) -> i64 {
        (x * self.0 as f64).round() as i64
    }

    /// The step at a place or before it.
    pub(super) fn down(self, x: f64) -> i64 {
        (x * self.0 as f64 + WITHIN).floor() as i64
    }

    /// The step at a place or after it.
    pub(super) fn up(self, x: f64) -> i64 {
        (x * self.0 as f64 - WITHIN).ceil() as i64
    }

    /// Steps in whole inches.
    #[inline]
    pub(super) fn of(self, inches: i64) -> i64 {
        self.0 * inches
    }

    /// Inches in a number of steps.
    #[inline]
    pub(super) fn inches(self, steps: i64) -> f64 {
        steps as f64 / self.0 as f64
    }

    /// The middle of a lap whose seam is counted at its whole step: an odd lap's middle lies half a
    /// step further left.
    pub(super) fn middle(self, x: i64, lap: i64) -> f64 {
        self.inches(x) - if lap % 2 == 1 { self.inches(1) / 2.0 } else { 0.0 }
    }

    /// The whole step at which the seam is counted whose lap has this middle.
    pub(super) fn counted(self, middle: f64, lap: i64) -> i64 {
        let up = if lap % 2 == 1 { self.inches(1) / 4.0 } else { 0.0 };
        self.whole(middle + up)
    }
}

/// How far offcuts may travel, and how many may wait.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Travel {
    /// Walls in the order.
    pub walls: usize,
    /// Most that wait at the end of a wall.
    pub most: i64,
    /// Most walls from the one where a panel is opened to the last that uses it.
    pub reach: usize,
}

/// Most that one panel costs in panels of the first kind: squares of lengths times this are still sound.
const MOST_UNITS: i64 = 1000;

/// The rules, in steps.
#[derive(Clone, Debug)]
pub(super) struct Rules {
    pub steps: Steps,
    /// Length of a panel; of the first kind where several are mixed.
    pub panel: i64,
    /// What one weighs: 1 where there is one kind.
    pub weight: i64,
    /// Length and weight of panels of each further kind.
    pub more: Vec<(i64, i64)>,
    pub lap: i64,
    pub kerf: i64,
    pub shortest: i64,
    pub stagger: i64,
    pub clear: i32,
    pub jamb: i64,
    /// How near to a jamb line a seam stands on it.
    pub on_jamb: i64,
    pub seam_short: bool,
    /// How far offcuts may travel; none where they may as they like.
    pub travel: Option<Travel>,
    /// What seams at openings cost in the search.
    pub hit_costs: HitCosts,
    pub effort: crate::model::seam::Effort,
    pub seed: u64,
}

impl Rules {
    /// Panels and a saw, and nothing to keep.
    #[cfg(test)]
    pub(super) fn plain(panel: i64, kerf: i64) -> Self {
        Rules {
            steps: Steps(16),
            panel,
            weight: 1,
            more: Vec::new(),
            lap: 0,
            kerf,
            shortest: 1,
            stagger: 0,
            clear: 0,
            jamb: 0,
            on_jamb: 0,
            seam_short: false,
            travel: None,
            hit_costs: super::hit_sum::LIGHTLY_WEIGHED,
            effort: Default::default(),
            seed: 1,
        }
    }

    /// Distance between seams of a run laid with panels of the first kind.
    pub(super) fn pitch(&self) -> i64 {
        self.panel - self.lap
    }

    /// What a panel of the first kind holds when each piece is charged one kerf.
    pub(super) fn room(&self) -> i64 {
        self.panel + self.kerf
    }

    /// Kinds of panels, by number from 0.
    pub(super) fn kinds(&self) -> std::ops::Range<usize> {
        0..1 + self.more.len()
    }

    /// Whether there are several kinds of panels.
    pub(super) fn mixed(&self) -> bool {
        !self.more.is_empty()
    }

    /// The same rules with panels of one kind alone.
    pub(super) fn alone(&self, kind: usize) -> Rules {
        Rules { panel: self.panel_of(kind), weight: 1, more: Vec::new(), ..self.clone() }
    }

    /// Length of a panel of a kind.
    #[inline]
    pub(super) fn panel_of(&self, kind: usize) -> i64 {
        if kind == 0 { self.panel } else { self.more[kind - 1].0 }
    }

    pub(super) fn longest(&self) -> i64 {
        self.more.iter().map(|m| m.0).fold(self.panel, i64::max)
    }

    /// Length of the shortest kind: a run that it covers gets no seam.
    pub(super) fn shorter(&self) -> i64 {
        self.more.iter().map(|m| m.0).fold(self.panel, i64::min)
    }

    /// What a panel of a kind weighs in what is kept least: 1 where there is one kind.
    #[inline]
    pub(super) fn weight_of(&self, kind: usize) -> i64 {
        if kind == 0 { self.weight } else { self.more[kind - 1].1 }
    }

    /// The same in the numbers that costs are counted in.
    #[inline]
    pub(super) fn unit(&self, kind: usize) -> i64 {
        (UNIT * self.weight_of(kind) / self.weight).clamp(1, MOST_UNITS * UNIT)
    }
}
