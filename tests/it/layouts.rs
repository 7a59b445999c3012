//! Layouts of random walls: every rule kept, areas agree with an independent engine; moved,
//! mirrored or redrawn in another unit, a house takes the same panels.

use lapwright::layout::Layout;
use lapwright::layout::rule::Rule;
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

use crate::support::{broken, broken_rules, dxf, inches, lay};

/// A wall with a gable or without, openings in a row that do not touch, whole inches.
#[derive(Clone, Debug)]
pub(crate) struct House {
    pub(crate) width: f64,
    height: f64,
    pitch: f64,
    pub(crate) openings: Vec<(f64, f64, f64, f64)>,
}

pub(crate) fn house() -> impl Strategy<Value = House> {
    (
        10u32..60,
        7u32..20,
        0u32..13,
        prop::collection::vec((6u32..40, 24u32..73, 0u32..50, 20u32..60), 0..5),
    )
        .prop_map(|(feet, high, pitch, parts)| {
            let (width, height) = (f64::from(feet * 12), f64::from(high * 12 / 2 + 40));
            let mut x = 0.0;
            let mut openings = Vec::new();
            for (gap, w, sill, h) in parts {
                let (left, right) = (x + f64::from(gap), x + f64::from(gap + w));
                let (low, top) = (f64::from(sill), f64::from(sill + h).min(height - 6.0));
                if right < width - 6.0 && top - low > 12.0 {
                    openings.push((left, low, right, top));
                    x = right;
                }
            }
            House { width, height, pitch: f64::from(pitch), openings }
        })
}

impl House {
    pub(crate) fn width(&self) -> f64 {
        self.width
    }

    /// Its outline and its openings, each on its layer.
    pub(crate) fn rings(&self) -> Vec<(&'static str, Vec<(f64, f64)>)> {
        let (w, h) = (self.width, self.height);
        let mut wall = vec![(0.0, 0.0), (w, 0.0), (w, h)];
        if self.pitch > 0.0 {
            wall.push((w / 2.0, h + w / 2.0 * self.pitch / 12.0));
        }
        wall.push((0.0, h));
        let openings = self.openings.iter();
        let openings =
            openings.map(|(a, b, c, d)| ("A-GLAZ", crate::support::rect(*a, *b, *c, *d).to_vec()));
        std::iter::once(("A-WALL-OTLN", wall)).chain(openings).collect()
    }

    pub(crate) fn drawn(&self, map: impl Fn((f64, f64)) -> (f64, f64)) -> String {
        let (w, h) = (self.width, self.height);
        let peak = h + w / 2.0 * self.pitch / 12.0;
        let mut wall = vec![(0.0, 0.0), (w, 0.0), (w, h)];
        if self.pitch > 0.0 {
            wall.push((w / 2.0, peak));
        }
        wall.push((0.0, h));
        let wall: Vec<(f64, f64)> = wall.into_iter().map(&map).collect();
        let openings: Vec<Vec<(f64, f64)>> = self
            .openings
            .iter()
            .map(|(a, b, c, d)| crate::support::rect(*a, *b, *c, *d).map(&map).to_vec())
            .collect();
        let mut rings: Vec<(&str, &[(f64, f64)])> = vec![("A-WALL-OTLN", &wall)];
        rings.extend(openings.iter().map(|o| ("A-GLAZ", &o[..])));
        dxf(&rings)
    }

    fn area(&self) -> f64 {
        let gable = self.width * self.width / 4.0 * self.pitch / 12.0;
        let holes: f64 = self.openings.iter().map(|(a, b, c, d)| (c - a) * (d - b)).sum();
        (self.width * self.height + gable - holes) / 144.0
    }
}

fn net(l: &Layout) -> f64 {
    l.walls().map(|(_, w)| w.net_area).sum()
}

#[test]
fn a_band_across_a_window_leaves_two_openings_and_every_rule_kept() {
    use crate::support::rect;
    let d = dxf(&[
        ("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 112.0)),
        ("A-WALL-BASE", &rect(0.0, 50.0, 240.0, 58.0)),
        ("A-GLAZ", &rect(90.0, 30.0, 130.0, 84.0)),
    ]);
    let layout = lay(d.as_bytes(), &inches());
    let w = &layout.elevations[0].walls[0];
    let mut parts: Vec<(f64, f64)> = w.openings.iter().map(|o| (o.sill, o.head)).collect();
    parts.sort_by(|a, b| a.0.total_cmp(&b.0));
    assert_eq!(parts, [(30.0, 50.0), (58.0, 84.0)]);
    // 240 x 112 less the band, less the window's two parts.
    assert!((w.net_area * 144.0 - (240.0 * 104.0 - 40.0 * 46.0)).abs() < 1e-6);
    assert_eq!(broken(&layout), Vec::<String>::new());
}

#[test]
fn a_small_part_of_an_opening_beside_stone_counts_too() {
    use crate::support::rect;
    // Stone covers all of the window but its lowest 2 in over 8 in: 16 sq in, and 40 - 8 in more of
    // its width stands on stone.
    let d = dxf(&[
        ("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 112.0)),
        ("A-WALL-BASE", &rect(0.0, 32.0, 240.0, 112.0)),
        ("A-WALL-BASE", &rect(98.0, 0.0, 240.0, 32.0)),
        ("A-GLAZ", &rect(90.0, 30.0, 130.0, 84.0)),
    ]);
    let layout = lay(d.as_bytes(), &inches());
    let w = &layout.elevations[0].walls[0];
    assert!((w.net_area * 144.0 - (98.0 * 32.0 - 16.0)).abs() < 1e-6, "{}", w.net_area * 144.0);
}

#[test]
fn outlines_that_touch_at_a_corner_stay_two_walls() {
    // Two rings closed by repeating their first point, which they share.
    let ring = |points: &[(f64, f64)]| {
        let mut out = String::from("0\nPOLYLINE\n8\nA-WALL-OTLN\n66\n1\n70\n0\n");
        for (x, y) in points {
            out.push_str(&format!("0\nVERTEX\n8\nA-WALL-OTLN\n10\n{x}\n20\n{y}\n"));
        }
        out + "0\nSEQEND\n"
    };
    let a = ring(&[(0.0, 0.0), (0.0, 96.0), (-120.0, 96.0), (-120.0, 0.0), (0.0, 0.0)]);
    let b = ring(&[(0.0, 0.0), (120.0, 0.0), (120.0, 96.0), (0.0, 96.0), (0.0, 0.0)]);
    let d = format!("0\nSECTION\n2\nENTITIES\n{a}{b}0\nENDSEC\n0\nEOF\n");
    let layout = lay(d.as_bytes(), &inches());
    let areas: Vec<f64> = layout.walls().map(|(_, w)| w.net_area).collect();
    assert_eq!(areas, [80.0, 80.0]);
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 60, failure_persistence: None, rng_seed: RngSeed::Fixed(20),  ..ProptestConfig::default() })]

    #[test]
    fn random_walls_keep_every_rule(h in house()) {
        let layout = lay(h.drawn(|p| p).as_bytes(), &inches());
        let fillers: f64 = layout.walls().map(|(_, w)| w.filler_area()).sum();
        prop_assert!((net(&layout) + fillers - h.area()).abs() < 0.01, "{} {}", net(&layout), h.area());
        let seam_conflict = !layout.bound.conflicts.is_empty();
        let found: Vec<Rule> = broken_rules(&layout).into_iter().filter(|r| !(seam_conflict && [Rule::SeamStagger, Rule::ShortestPiece].contains(r))).collect();
        prop_assert_eq!(found, Vec::<Rule>::new());
    }

    #[test]
    fn place_and_unit_change_nothing(h in house(), dx in -5000i32..5000, dy in -5000i32..5000) {
        let job = inches();
        let here = lay(h.drawn(|p| p).as_bytes(), &job);
        let there = lay(h.drawn(|(x, y)| (x + f64::from(dx), y + f64::from(dy))).as_bytes(), &job);
        let mut metric = job.clone();
        metric.drawing.unit = Some(lapwright::units::Unit::Mm);
        let mm = lay(h.drawn(|(x, y)| (x * 25.4, y * 25.4)).as_bytes(), &metric);
        for other in [&there, &mm] {
            prop_assert_eq!(here.panels.len(), other.panels.len());
            let marks = |l: &Layout| -> Vec<(String, i64)> { l.pieces().map(|(.., p)| (p.mark.to_string(), (p.length * 64.0).round() as i64)).collect() };
            prop_assert_eq!(marks(&here), marks(other));
        }
    }

    #[test]
    fn a_mirrored_wall_has_mirrored_courses(h in house()) {
        let here = lay(h.drawn(|p| p).as_bytes(), &inches());
        let w = h.width;
        let there = lay(h.drawn(|(x, y)| (w - x, y)).as_bytes(), &inches());
        prop_assert!((net(&here) - net(&there)).abs() < 1e-6);
        let runs = |l: &Layout, flip: bool| -> Vec<(i64, i64)> {
            let mut out: Vec<(i64, i64)> = l.pieces().map(|(_, c, r, _)| (i64::from(c.index), r)).map(|(i, r)| (i, if flip { w - r.x1 } else { r.x0 })).map(|(i, x)| (i, (x * 100.0).round() as i64)).collect();
            out.sort_unstable();
            out.dedup();
            out
        };
        prop_assert_eq!(runs(&here, false), runs(&there, true));
        // The bound knows no left and right.
        prop_assert_eq!(here.bound.panels, there.bound.panels);
    }
}
