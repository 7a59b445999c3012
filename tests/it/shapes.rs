//! Random shapes of openings, counter-clockwise, on the sixteenth of an inch.

/// An outline, with which of its sides are chords of a curve.
pub(crate) struct Shape {
    pub(crate) sort: &'static str,
    pub(crate) ring: Vec<(f64, f64)>,
    pub(crate) curved: Vec<bool>,
}

/// Splitmix: the same numbers on every machine.
struct Dice(u64);

impl Dice {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// A length between two, in sixteenths.
    fn length(&mut self, low: f64, high: f64) -> f64 {
        let share = (self.next() >> 11) as f64 / (1u64 << 53) as f64;
        ((low + share * (high - low)) * 16.0).round() / 16.0
    }

    fn one_in(&mut self, n: u64) -> bool {
        self.next().is_multiple_of(n)
    }
}

type Xy = (f64, f64);

fn straight(sort: &'static str, ring: Vec<Xy>) -> Shape {
    let curved = vec![false; ring.len()];
    Shape { sort, ring, curved }
}

/// Points of an arc round a middle, from one angle to another in degrees, both ends included.
fn arc(middle: Xy, (rx, ry): (f64, f64), (from, to): (f64, f64), chords: u32) -> Vec<Xy> {
    (0..=chords)
        .map(|i| {
            let a = (from + (to - from) * f64::from(i) / f64::from(chords)).to_radians();
            (middle.0 + rx * a.cos(), middle.1 + ry * a.sin())
        })
        .collect()
}

/// A ring that begins with chords of a curve and goes on straight through `rest`.
fn bent(sort: &'static str, curve: Vec<Xy>, rest: &[Xy]) -> Shape {
    let chords = curve.len() - 1;
    let mut ring = curve;
    ring.extend(rest);
    let curved = (0..ring.len()).map(|i| i < chords).collect();
    Shape { sort, ring, curved }
}

/// The shape of a seed: one of fifteen sorts, of a random size at a random place.
pub(crate) fn shape(seed: u64) -> Shape {
    let mut d = Dice(seed.wrapping_mul(0x0a1b_2c3d_4e5f));
    let (w, h) = (d.length(18.0, 90.0), d.length(18.0, 72.0));
    let mut s = drawn(seed % 15, w, h, &mut d);
    let (x, y) = (d.length(12.0, 150.0), d.length(9.0, 70.0));
    // The office's snap, or a sill on a course line now and then.
    let y = if d.one_in(6) { (y / 8.0).round() * 8.0 } else { y };
    for p in &mut s.ring {
        *p = (p.0 + x, p.1 + y);
    }
    s
}

#[allow(clippy::too_many_lines)] // One table: a shape a sort.
fn drawn(sort: u64, w: f64, h: f64, d: &mut Dice) -> Shape {
    let (a, b) = (d.length(3.0, w / 2.0 - 2.0), d.length(3.0, h / 2.0 - 2.0));
    let chords = 2 * (6 + (d.next() % 30) as u32);
    match sort {
        // A leg down, on either hand, or up.
        0 => straight(
            "L",
            match d.next() % 4 {
                0 => vec![(0.0, 0.0), (a, 0.0), (a, b), (w, b), (w, h), (0.0, h)],
                1 => vec![(0.0, b), (a, b), (a, 0.0), (w, 0.0), (w, h), (0.0, h)],
                2 => vec![(0.0, 0.0), (w, 0.0), (w, h - b), (a, h - b), (a, h), (0.0, h)],
                _ => vec![(0.0, 0.0), (w, 0.0), (w, h), (a, h), (a, h - b), (0.0, h - b)],
            },
        ),
        1 if d.one_in(2) => straight("sloped sill", vec![(0.0, 0.0), (w, b), (w, h), (0.0, h)]),
        1 => straight("sloped sill", vec![(0.0, b), (w, 0.0), (w, h), (0.0, h)]),
        2 => match d.next() % 3 {
            0 => straight("parallelogram", vec![(0.0, 0.0), (w, b), (w, b + h), (0.0, h)]),
            1 => straight("parallelogram", vec![(0.0, 0.0), (w, 0.0), (w + a, h), (a, h)]),
            _ => straight("parallelogram", vec![(a, 0.0), (w + a, 0.0), (w, h), (0.0, h)]),
        },
        3 if d.one_in(2) => {
            let m = h / 2.0;
            straight("hexagon", vec![(a, 0.0), (w - a, 0.0), (w, m), (w - a, h), (a, h), (0.0, m)])
        }
        3 => {
            let m = w / 2.0;
            straight("hexagon", vec![(m, 0.0), (w, b), (w, h - b), (m, h), (0.0, h - b), (0.0, b)])
        }
        4 => {
            // Regular, or with corners cut off at some other slope.
            let (w, h, a, b) = if d.one_in(2) {
                let c = w / (2.0 + 2.0_f64.sqrt());
                (w, w, c, c)
            } else {
                (w, h, a, b)
            };
            straight(
                "octagon",
                vec![
                    (a, 0.0),
                    (w - a, 0.0),
                    (w, b),
                    (w, h - b),
                    (w - a, h),
                    (a, h),
                    (0.0, h - b),
                    (0.0, b),
                ],
            )
        }
        5 => {
            let r = w / 2.0;
            let mut ring = arc((r, r), (r, r), (0.0, 360.0), chords);
            ring.pop();
            Shape { sort: "round", curved: vec![true; ring.len()], ring }
        }
        6 => {
            let r = w / 2.0;
            if d.one_in(3) {
                return bent("half-round below", arc((r, r), (r, r), (180.0, 360.0), chords), &[]);
            }
            bent("half-round", arc((r, 0.0), (r, r), (0.0, 180.0), chords), &[])
        }
        7 => match d.next() % 3 {
            0 => straight("trapezoid", vec![(0.0, 0.0), (w, 0.0), (w, h), (0.0, h - b)]),
            1 => straight("trapezoid", vec![(0.0, 0.0), (w, 0.0), (w - a, h), (a, h)]),
            _ => straight("trapezoid", vec![(a, 0.0), (w - a, 0.0), (w, h), (0.0, h)]),
        },
        8 => {
            // Half round over jambs, or a segment.
            let r = w / 2.0;
            if d.one_in(2) {
                let curve = arc((r, h), (r, r), (0.0, 180.0), chords);
                return bent("arch", curve, &[(0.0, 0.0), (w, 0.0)]);
            }
            let rise = r * 0.3;
            let radius = (r * r + rise * rise) / (2.0 * rise);
            let half = (r / radius).asin().to_degrees();
            let middle = (r, h + rise - radius);
            let curve = arc(middle, (radius, radius), (90.0 - half, 90.0 + half), chords);
            bent("arch", curve, &[(0.0, 0.0), (w, 0.0)])
        }
        9 => match d.next() % 4 {
            0 => straight("triangle", vec![(0.0, 0.0), (w, 0.0), (w / 2.0, h)]),
            1 => straight("triangle", vec![(w / 2.0, 0.0), (w, h), (0.0, h)]),
            2 => straight("triangle", vec![(0.0, 0.0), (w, 0.0), (0.0, h)]),
            _ => straight("triangle", vec![(w, 0.0), (w, h), (0.0, h)]),
        },
        10 => {
            let (m, n) = (w / 2.0, h / 2.0);
            straight("diamond", vec![(m, 0.0), (w, n), (m, h), (0.0, n)])
        }
        11 => {
            let mut ring =
                arc((w / 2.0, h / 2.0), (w / 2.0, h / 2.0), (0.0, 360.0), chords.max(24));
            ring.pop();
            Shape { sort: "oval", curved: vec![true; ring.len()], ring }
        }
        12 => straight(
            "T",
            vec![
                (a, 0.0),
                (w - a, 0.0),
                (w - a, h - b),
                (w, h - b),
                (w, h),
                (0.0, h),
                (0.0, h - b),
                (a, h - b),
            ],
        ),
        13 => straight(
            "gable head",
            vec![(0.0, 0.0), (w, 0.0), (w, h - b), (w / 2.0, h), (0.0, h - b)],
        ),
        _ => {
            let r = w.min(h);
            bent("quarter round", arc((0.0, 0.0), (r, r), (0.0, 90.0), chords), &[(0.0, 0.0)])
        }
    }
}
