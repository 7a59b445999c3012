//! The round figure that a coordinate of a rough drawing stands for.

use crate::real::Real;

/// Steps that lengths are drawn in, inches, the coarse first: parts of an inch, and of a meter.
const SERIES: [&[f64]; 2] = [
    &[1.0, 0.5, 0.25, 0.125, 0.0625],
    &[50.0 / 25.4, 25.0 / 25.4, 10.0 / 25.4, 5.0 / 25.4, 1.0 / 25.4],
];
/// Share of lines that stand on no step at all (of our own choosing, no source).
const STRAY: f64 = 0.1;
/// How much likelier lines must be on steps than anywhere, as a logarithm (of our own choosing, no
/// source).
const LIKELIER: f64 = 1.0;
/// The same where lines are few.
const FEW_LIKELIER: f64 = 4.0;
/// So many lines are not few; one alone shows nothing.
const FEW: usize = 4;
/// More lines are not needed to tell.
const ENOUGH: usize = 400;
/// Places tried for where steps begin.
const PHASES: usize = 64;
/// How many times its own uncertainty a line may lie off its step.
const REACH: f64 = 2.5;

/// A line with how sure its place is: a standard deviation, inches.
#[derive(Clone, Copy, Debug)]
pub(super) struct Unsure {
    pub(super) value: f64,
    pub(super) by: f64,
}

/// A row of places that lines stand on.
#[derive(Clone, Copy, Debug)]
pub(super) struct Steps {
    series: usize,
    base: usize,
    phase: f64,
}

/// The steps that these lines most likely stand on; none where they are no likelier than none.
pub(super) fn steps(all: &[Unsure]) -> Option<Steps> {
    let all = &all[..all.len().min(ENOUGH)];
    if all.len() < 2 {
        return None;
    }
    let least = if all.len() < FEW { FEW_LIKELIER } else { LIKELIER };
    let mut best: Option<(f64, Steps)> = None;
    for (series, steps) in SERIES.iter().enumerate() {
        for (base, step) in steps.iter().enumerate() {
            for k in 0..PHASES {
                let phase = step * k as f64 / PHASES as f64;
                let likely = likelier(all, phase, *step);
                if likely > best.map_or(least, |b| b.0) {
                    best = Some((likely, Steps { series, base, phase }));
                }
            }
        }
    }
    best.map(|(_, s)| Steps { phase: settled(all, &s), ..s })
}

/// How far a value lies past the nearest step.
fn off(v: f64, phase: f64, step: f64) -> f64 {
    let r = (v - phase) / step;
    (r - r.round()) * step
}

/// By how much likelier lines are where they are if they stand on steps, as a logarithm.
fn likelier(all: &[Unsure], phase: f64, step: f64) -> f64 {
    let one = |l: &Unsure| {
        let r = off(l.value, phase, step);
        let bell = |d: f64| (-d * d / (2.0 * l.by * l.by)).exponential();
        // Beside the nearest step the two beyond it.
        let near = bell(r) + bell(r - step) + bell(r + step);
        let density = near / (l.by * std::f64::consts::TAU.sqrt());
        ((1.0 - STRAY) * step * density + STRAY).natural_log()
    };
    all.iter().map(one).sum()
}

/// Where steps begin, by the lines that stand on them.
fn settled(all: &[Unsure], s: &Steps) -> f64 {
    let step = SERIES[s.series][s.base];
    let (mut sum, mut weight) = (0.0, 0.0);
    for l in all {
        let r = off(l.value, s.phase, step);
        if r.abs() <= REACH * l.by {
            sum += r / (l.by * l.by);
            weight += 1.0 / (l.by * l.by);
        }
    }
    if weight > 0.0 { s.phase + sum / weight } else { s.phase }
}

impl Steps {
    /// The roundest value that a line may stand for, or where it is.
    pub(super) fn round(&self, l: Unsure) -> f64 {
        let finer = &SERIES[self.series][self.base..];
        let on = |step: &f64| off(l.value, self.phase, *step);
        let found = finer.iter().map(on).find(|o| o.abs() <= REACH * l.by);
        found.map_or(l.value, |o| l.value - o)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const NOISE: [f64; 8] = [0.03, -0.02, 0.01, -0.03, 0.025, 0.0, -0.011, 0.02];

    fn noisy(figures: [f64; 8]) -> Vec<Unsure> {
        let line = |(v, n): (f64, f64)| Unsure { value: v + n + 0.37, by: 0.0173 };
        figures.into_iter().zip(NOISE).map(line).collect()
    }

    #[test]
    fn noisy_lines_in_whole_inches_or_centimeters_are_set_on_them() {
        let inches = [0.0, 36.0, 84.0, 116.0, 200.5, 42.0, 108.0, 288.0];
        for unit in [1.0, 10.0 / 25.4] {
            let figures = inches.map(|v| v * unit);
            let drawn = noisy(figures);
            let found = steps(&drawn).unwrap();
            let base = found.round(drawn[0]);
            for (v, d) in figures.iter().zip(&drawn) {
                assert!((found.round(*d) - base - v).abs() < 1e-9, "{v}");
            }
        }
    }

    #[test]
    fn lines_anywhere_stand_on_no_coarse_steps() {
        let drawn = noisy([0.0, 17.322, 31.817, 60.111, 77.58, 93.24, 118.693, 240.439]);
        assert!(steps(&drawn).is_none_or(|s| SERIES[s.series][s.base] < 0.3));
    }
}
