//! What whole panels of several lengths and weights can sum to.

use super::rules::Rules;

/// The least common multiple of two numbers over 0.
pub(super) fn common_multiple(a: i64, b: i64) -> i64 {
    let (mut divisor, mut left) = (a, b);
    while left != 0 {
        (divisor, left) = (left, divisor % left);
    }
    a / divisor.max(1) * b
}

/// What whole panels can advance a run by, up to `most`, with the least that they weigh.
pub(super) fn wholes(most: i64, rules: &Rules) -> Vec<(i64, i64)> {
    let Ok(most) = usize::try_from(most) else { return Vec::new() };
    let mut lightest: Vec<Option<i64>> = vec![None; most + 1];
    lightest[0] = Some(0);
    for kind in rules.kinds() {
        let pitch = usize::try_from(rules.panel_of(kind) - rules.lap).unwrap_or(0).max(1);
        for at in pitch..=most {
            let with = lightest[at - pitch].map(|w| w + rules.weight_of(kind));
            lightest[at] = [lightest[at], with].into_iter().flatten().min();
        }
    }
    let reached = lightest.into_iter().enumerate();
    reached.filter_map(|(at, w)| Some((i64::try_from(at).ok()?, w?))).collect()
}

/// The least weight of whole panels that is no less than this.
pub(super) fn whole_panels(least: i64, weights: &[i64]) -> i64 {
    let Some(smallest) = weights.iter().copied().min().filter(|w| *w > 0) else { return least };
    // By what it leaves when parted by the smallest weight: the least weight that panels can have.
    let mut reached: Vec<Option<i64>> = vec![None; smallest as usize];
    reached[0] = Some(0);
    for weight in weights {
        // Adding one weight again and again leads round in circles: twice round each settles it.
        let step = weight % smallest;
        let circles = greatest_divisor(step, smallest);
        for start in 0..circles {
            let mut at = start;
            for _ in 0..2 * (smallest / circles) {
                let next = (at + step) % smallest;
                let with = reached[at as usize].map(|w| w + weight);
                let known = reached[next as usize];
                reached[next as usize] = [known, with].into_iter().flatten().min();
                at = next;
            }
        }
    }
    let up = |(rest, known): (usize, &Option<i64>)| {
        let least = least.max((*known)?);
        Some(least + (rest as i64 - least).rem_euclid(smallest))
    };
    reached.iter().enumerate().filter_map(up).min().unwrap_or(least)
}

fn greatest_divisor(a: i64, b: i64) -> i64 {
    if b == 0 { a.max(1) } else { greatest_divisor(b, a % b) }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The weights under 300 that panels of these can have, by adding one panel after another.
    fn possible(weights: &[i64]) -> Vec<i64> {
        let mut can = vec![false; 300];
        can[0] = true;
        for at in 0..300 {
            for w in weights {
                let next = at + *w as usize;
                if can[at] && next < 300 {
                    can[next] = true;
                }
            }
        }
        (0..300).filter(|w| can[*w as usize]).collect()
    }

    #[test]
    fn whole_panels_by_counting() {
        let sets: [&[i64]; 9] = [
            &[3, 4],
            &[5, 7],
            &[25, 24],
            &[1, 1],
            &[10, 3],
            &[9, 13],
            &[6, 10, 15],
            &[12, 20, 31],
            &[9, 12, 21, 34],
        ];
        for weights in sets {
            let can = possible(weights);
            for w in 0..250 {
                let least = can.iter().find(|v| **v >= w);
                assert_eq!(Some(&whole_panels(w, weights)), least, "{w} of {weights:?}");
            }
        }
    }

    #[test]
    fn whole_panels_advance_a_run_by_their_pitches() {
        // Panels of 10 weighing 5, of 14 weighing 6, laps of 1: 9 and 13 on. 18 = 9 + 9, 22 = 9 + 13,
        // 26 = 13 + 13, 27 = 9 + 9 + 9.
        let rules = Rules { weight: 5, more: vec![(14, 6)], lap: 1, ..Rules::plain(10, 0) };
        let found = wholes(27, &rules);
        assert_eq!(found, [(0, 0), (9, 5), (13, 6), (18, 10), (22, 11), (26, 12), (27, 15)]);
        assert!(wholes(-1, &rules).is_empty());
    }
}
