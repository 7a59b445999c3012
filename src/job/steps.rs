//! The step of length that panels are laid in.

use super::root::Job;
use super::siding::system::JointRule;

/// Steps of an inch by a tape: sixteenths.
pub const ON_TAPE: i64 = 16;
/// Steps of an inch where a length of the job lies between a tape's marks, as those in millimeters do:
/// 1/256 in, a tenth of a millimeter.
pub const FINE: i64 = 256;
/// Lengths nearer to a step than this part of it stand on it: what arithmetic leaves.
const ROUNDING: f64 = 1e-6;

/// The step at or under a length, inches.
pub fn down(x: f64, steps: i64) -> f64 {
    (x * steps as f64 + ROUNDING).floor() / steps as f64
}

/// The step at or over a length, inches.
pub fn up(x: f64, steps: i64) -> f64 {
    (x * steps as f64 - ROUNDING).ceil() / steps as f64
}

/// Panels whose foam reaches their ends lap by this at least, inches, as a lap's range has it: a seam that
/// only meets opens. Of our own choosing: no source.
const LEAST_LAP: f64 = 0.25;
/// What shows of a shortest piece is as long as its lap at least.
const LAPS_AT_LEAST: f64 = 2.0;
/// Shortest board between two joints, inches: a stud's width is 1 1/2, of which half is a joint's other
/// board's.
const LEAST_BOARD: f64 = 0.75;

impl Job {
    /// Steps of an inch that seams of panels are placed in, and their cuts reckoned: a tape's, unless
    /// a length that they hang on lies between them. Joints of boards stand on studs.
    pub fn steps(&self) -> i64 {
        if self.siding().joints.is_on_studs() {
            return ON_TAPE;
        }
        let stocks = self.panel_stocks();
        let seams = &self.seams;
        let rules = [self.product.lap(), seams.kerf, seams.shortest, seams.stagger];
        let mut lengths = stocks.iter().map(|s| s.length).chain(rules);
        let on_tape = |x: f64| up(x, ON_TAPE) <= down(x, ON_TAPE);
        if lengths.all(on_tape) { ON_TAPE } else { FINE }
    }

    /// Shortest piece of a run with a seam in force: of one that is no longer than its lap nothing shows,
    /// and its neighbor would stand out past it; a board needs some hold on its stud.
    pub fn shortest(&self) -> f64 {
        let least = match self.siding().joints {
            JointRule::Lapped(_) => LAPS_AT_LEAST * self.lap(),
            JointRule::ButtOnStuds { .. } => LEAST_BOARD,
        };
        self.seams.shortest.max(least)
    }

    /// Lap at a seam in force: up to the next step; the gap of a joint of boards is a lap below 0.
    pub fn lap(&self) -> f64 {
        match self.siding().joints {
            JointRule::Lapped(_) => up(self.product.lap().max(LEAST_LAP), self.steps()),
            JointRule::ButtOnStuds { gap, .. } => -self.boards.butt_gap.unwrap_or(gap),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{FINE, ON_TAPE};
    use crate::job::file::parse;

    #[test]
    fn lengths_between_the_marks_of_a_tape_are_laid_in_finer_steps() {
        let steps = |text: &str| parse(text, "j").unwrap().steps();
        for on in ["", "[product]\nlength = \"12'-6 1/16\\\"\"", "[seams]\nkerf = 0.0625"] {
            assert_eq!(steps(on), ON_TAPE, "{on}");
        }
        for off in [
            "[product]\nlength = \"3660mm\"",
            "[product]\nkind = \"vinyl\"\nlap = \"25mm\"",
            "[seams]\nkerf = \"2mm\"",
            "[seams]\nstagger = \"600mm\"",
            "[[stock]]\nlength = 150\n[[stock]]\nlength = \"5m\"",
        ] {
            assert_eq!(steps(off), FINE, "{off}");
        }
        // A gap needs none: panels end where it leaves them. Joints of boards stand on studs.
        assert_eq!(steps("[product]\nend_gap = \"6mm\""), ON_TAPE);
        assert_eq!(steps("[product]\nkind = \"wood\"\nlength = \"3660mm\""), ON_TAPE);
    }

    #[test]
    fn a_lap_is_never_less_than_what_was_asked() {
        let lap = |text: &str| parse(text, "j").unwrap().lap();
        assert_eq!(lap("[product]\nkind = \"vinyl\"\nlap = 1"), 1.0);
        let metric = lap("[product]\nkind = \"vinyl\"\nlap = \"25mm\"");
        // A tenth of a millimeter at most.
        assert!((25.0 / 25.4..25.1 / 25.4).contains(&metric), "{metric}");
    }
}
