//! A made house of many runs, the same on every machine: walls with windows and doors on three
//! floors, until enough runs stand.

use lapwright::model::seam::{SeamCourse, SeamElevation, SeamRun};

use super::cases::{Case, number_walls};

/// Knuth's multiplier (MMIX): any even spread does here.
struct Numbers(u64);

impl Numbers {
    /// A whole number from `low` to `high`.
    fn between(&mut self, low: u64, high: u64) -> u64 {
        self.0 =
            self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        low + (self.0 >> 33) % (high - low + 1)
    }

    /// Inches on a whole eighth.
    fn inches(&mut self, low: u64, high: u64) -> f64 {
        self.between(low * 8, high * 8) as f64 / 8.0
    }
}

/// An opening: left, right, sill, head.
type Hole = [f64; 4];

/// A house of `runs` runs or a few more.
pub(crate) fn house(runs: usize, seed: u64) -> Case {
    let mut numbers = Numbers(seed);
    let mut elevations = Vec::new();
    let mut made = 0;
    while made < runs {
        let e = elevation(elevations.len(), &mut numbers);
        made += e.courses.iter().map(|c| c.runs.len()).sum::<usize>();
        elevations.push(e);
    }
    number_walls(&mut elevations);
    Case { name: format!("made{runs}"), elevations }
}

fn elevation(number: usize, numbers: &mut Numbers) -> SeamElevation {
    let width = numbers.inches(240, 960);
    let exposure = 8.0;
    let floors = numbers.between(1, 3);
    let height = 108.0 * floors as f64;
    let mut holes: Vec<Hole> = Vec::new();
    let mut entrances = Vec::new();
    for floor in 0..floors {
        let base = 108.0 * floor as f64;
        let mut x = numbers.inches(18, 90);
        while x + 60.0 < width {
            let wide = numbers.inches(24, 72).min(width - 12.0 - x);
            let door = floor == 0 && numbers.between(0, 5) == 0;
            let (sill, head) = if door { (0.0, 82.0) } else { (base + 32.0, base + 84.0) };
            if door {
                entrances.push(x + wide / 2.0);
            }
            holes.push([x, x + wide, sill, head]);
            x += wide + numbers.inches(20, 140);
        }
    }
    let count = (height / exposure).ceil() as i32;
    let courses = (0..count)
        .map(|i| course(number, i, (f64::from(i) * exposure, exposure), width, &holes))
        .collect();
    SeamElevation { name: format!("e{number}").into(), entrances, courses }
}

/// The runs a course of `(bottom, height)` has between its openings.
fn course(number: usize, index: i32, at: (f64, f64), width: f64, holes: &[Hole]) -> SeamCourse {
    let (bottom, top) = (at.0, at.0 + at.1);
    let touched = holes.iter().filter(|h| h[2] <= top && h[3] >= bottom);
    let mut avoid: Vec<f64> = touched.flat_map(|h| [h[0], h[1]]).collect();
    avoid.sort_by(f64::total_cmp);
    // An opening parts a course that it crosses in full height; others are notched.
    let mut ends = vec![0.0];
    for h in holes.iter().filter(|h| h[2] <= bottom && h[3] >= top) {
        ends.extend([h[0], h[1]]);
    }
    ends.push(width);
    let runs = ends
        .chunks(2)
        .enumerate()
        .map(|(n, e)| SeamRun {
            id: format!("e{number}/{index}/{n}").into(),
            wall: 0,
            x0: e[0],
            x1: e[1],
            fixed: vec![],
            barred: vec![],
            notched: Vec::new(),
        })
        .collect();
    SeamCourse { index, avoid, ripped: false, runs }
}

/// A random house of up to four elevations: gables, whose runs shorten towards the ridge; openings;
/// steps at grade, where the lowest courses begin further in; with an odd `seed` obstacles too, whose
/// seams are fixed, and mounting blocks, on which none may stand.
pub(crate) fn random(seed: u64) -> Case {
    let mut numbers = Numbers(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) ^ 0x5eed);
    let obstacles = seed % 2 == 1;
    let count = numbers.between(1, 4) as usize;
    let mut elevations: Vec<SeamElevation> = (0..count)
        .map(|e| {
            let mut made = elevation(e, &mut numbers);
            let width = made.courses.iter().flat_map(|c| &c.runs).map(|r| r.x1).fold(0.0, f64::max);
            if numbers.between(0, 1) == 1 {
                gable(e, width, &mut made, &mut numbers);
            }
            if numbers.between(0, 2) == 0 {
                step(&mut made, numbers.inches(12, 90), numbers.between(1, 3) as usize);
            }
            if obstacles {
                obstruct(&mut made, &mut numbers);
            }
            made
        })
        .collect();
    number_walls(&mut elevations);
    Case { name: format!("random{seed}"), elevations }
}

/// Courses over the eave that shorten by the roof's pitch on both sides, ends at the long point.
fn gable(number: usize, width: f64, on: &mut SeamElevation, numbers: &mut Numbers) {
    let rise = numbers.between(4, 14) as f64 / 12.0;
    let first = on.courses.len() as i32;
    for i in 0.. {
        let inset = (8.0 * f64::from(i) / rise * 16.0).floor() / 16.0;
        if width - 2.0 * inset < 12.0 {
            break;
        }
        let run = SeamRun {
            id: format!("e{number}/{}/g", first + i).into(),
            wall: 0,
            x0: inset,
            x1: width - inset,
            fixed: vec![],
            barred: vec![],
            notched: Vec::new(),
        };
        let index = first + i;
        on.courses.push(SeamCourse { index, avoid: vec![], ripped: false, runs: vec![run] });
    }
}

/// The lowest courses begin further in.
fn step(on: &mut SeamElevation, inset: f64, courses: usize) {
    for c in on.courses.iter_mut().take(courses) {
        for r in &mut c.runs {
            r.x0 = r.x0.max(inset);
        }
        c.runs.retain(|r| r.x1 - r.x0 > 6.0);
    }
}

/// A seam that an obstacle fixes, or a block that bars some, on a long run here and there.
fn obstruct(on: &mut SeamElevation, numbers: &mut Numbers) {
    for c in &mut on.courses {
        for r in c.runs.iter_mut().filter(|r| r.x1 - r.x0 > 220.0) {
            match numbers.between(0, 9) {
                0 => r.fixed = vec![r.x0 + numbers.inches(30, 190)],
                1 => {
                    let x = r.x0 + numbers.inches(30, 180);
                    r.barred = vec![(x, x + 8.0)];
                }
                _ => {}
            }
        }
    }
}
