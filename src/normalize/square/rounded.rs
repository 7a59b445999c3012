//! The round figure that a coordinate of a rough drawing stands for.

/// Steps that lengths are drawn in, inches, the coarse first: parts of an inch, and of a meter.
const SERIES: [&[f64]; 2] =
    [&[1.0, 0.5, 0.25, 0.125], &[50.0 / 25.4, 25.0 / 25.4, 10.0 / 25.4, 5.0 / 25.4]];
/// Of the inch series the last is only taken for what the first ones leave: noise hides it.
const BASES: [usize; 2] = [3, 4];
/// Share of the lines that must stand on a step (of our own choosing, no source).
const SHARE: f64 = 0.8;
/// Fewer lines than this show nothing.
const FEWEST: usize = 4;
/// A step is told from noise that is less than this share of it.
const FINEST: f64 = 2.5;

/// A row of places that lines stand on.
#[derive(Clone, Copy, Debug)]
pub(super) struct Steps {
    series: usize,
    base: usize,
    phase: f64,
    /// How far a line may lie off its place, inches.
    reach: f64,
}

/// The coarsest steps that most of these lines stand on, each with its weight; none where there is no
/// such.
pub(super) fn steps(all: &[(f64, f64)], noise: f64) -> Option<Steps> {
    let reach = 1.6 * noise;
    if all.len() < FEWEST || reach <= 0.0 {
        return None;
    }
    let total: f64 = all.iter().map(|(_, w)| w).sum();
    // Both series by falling steps: a meter's 50 mm is coarser than an inch.
    let mut tried: Vec<(f64, usize, usize)> = (0..SERIES.len())
        .flat_map(|s| (0..BASES[s]).map(move |b| (SERIES[s][b], s, b)))
        .filter(|(step, ..)| *step >= FINEST * reach)
        .collect();
    tried.sort_by(|a, b| b.0.total_cmp(&a.0));
    tried.into_iter().find_map(|(step, series, base)| {
        let phase = phase(all, step, reach);
        let on: f64 = all.iter().filter(|(v, _)| off(*v, phase, step).abs() <= reach).map(|(_, w)| w).sum();
        (on >= SHARE * total).then_some(Steps { series, base, phase, reach })
    })
}

/// How far a value lies past the nearest step.
fn off(v: f64, phase: f64, step: f64) -> f64 {
    let r = (v - phase) / step;
    (r - r.round()) * step
}

/// Where steps begin, by the mean direction of what lies past them; then again by those alone that
/// stand on a step.
fn phase(all: &[(f64, f64)], step: f64, reach: f64) -> f64 {
    let turn = std::f64::consts::TAU / step;
    let mean = |of: &mut dyn Iterator<Item = &(f64, f64)>| {
        let (s, c) = of.fold((0.0, 0.0), |(s, c), (v, w)| {
            (s + w * (v * turn).sin(), c + w * (v * turn).cos())
        });
        f64::atan2(s, c) / turn
    };
    let first = mean(&mut all.iter());
    mean(&mut all.iter().filter(|(v, _)| off(*v, first, step).abs() <= 2.0 * reach))
}

impl Steps {
    /// The roundest value that a coordinate may stand for, or itself.
    pub(super) fn round(&self, v: f64) -> f64 {
        let finer = &SERIES[self.series][self.base..];
        let fits = |step: &&f64| **step >= FINEST * self.reach || **step == finer[0];
        let on = |step: &f64| off(v, self.phase, *step);
        let found = finer.iter().filter(fits).map(on).find(|o| o.abs() <= self.reach);
        found.map_or(v, |o| v - o)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn noisy_lines_in_whole_inches_are_told_from_lines_anywhere() {
        let noise = [0.03, -0.02, 0.01, -0.03, 0.025, 0.0, -0.011, 0.02];
        let inches = [0.0, 36.0, 84.0, 116.0, 200.5, 42.0, 108.0, 288.0];
        let drawn: Vec<(f64, f64)> =
            inches.iter().zip(noise).map(|(v, n)| (v + n + 0.37, 1.0)).collect();
        let found = steps(&drawn, 0.03).unwrap();
        let base = found.round(drawn[0].0);
        for (v, (d, _)) in inches.iter().zip(&drawn) {
            assert!((found.round(*d) - base - v).abs() < 1e-9, "{v}");
        }
        let anywhere: Vec<(f64, f64)> =
            (0..12).map(|i| (f64::from(i) * 17.3219, 1.0)).collect();
        assert!(steps(&anywhere, 0.03).is_none());
    }
}
