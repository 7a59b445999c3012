//! Zones with another cladding: no panel in them, each measured.

use super::sweep::{Height, Shapes};
use super::{Rule, scan};
use crate::geom::vocabulary::Xy;
use crate::layout::Layout;
use crate::layout::verified::RuleCheck;

/// Area that counts as none, square inches.
const NOISE: f64 = 1.0;

fn ring_area(ring: &[Xy]) -> f64 {
    let next = ring.iter().cycle().skip(1);
    ring.iter().zip(next).map(|(a, b)| a[0] * b[1] - b[0] * a[1]).sum::<f64>() / 2.0
}

pub(super) fn check(layout: &Layout) -> Option<RuleCheck> {
    let mut rule = Rule::default();
    for e in &layout.elevations {
        for z in &e.zones {
            // Holes are wound the other way.
            let gross = z.outline.iter().map(|r| ring_area(r)).sum::<f64>().abs() / 144.0;
            let near = (gross - z.gross_area).abs() < 0.01;
            rule.case(near && z.net_area <= z.gross_area + 0.01 && z.net_area >= 0.0, || {
                format!("{}: {:.3} sq ft gross, its outline holds {gross:.3}", z.id, z.gross_area)
            });
            let mut shapes = Shapes::default();
            let zone = shapes.add(&z.outline);
            let courses = e.walls.iter().flat_map(|w| &w.courses);
            for p in courses.flat_map(|c| &c.runs).flat_map(|r| &r.pieces) {
                shapes.add(std::iter::once(&p.outline).chain(&p.more));
            }
            let ys = z.outline.iter().flatten().map(|p| p[1]);
            let (low, high) =
                ys.fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), y| (a.min(y), b.max(y)));
            let mut both = 0.0;
            for slab in shapes.slabs(low, high) {
                let of_zone = slab.union(Height::Middle, |i| i == zone);
                let laid = slab.union(Height::Middle, |i| i != zone);
                let outside = scan::without(&of_zone, &laid);
                both += slab.rise() * (scan::length(&of_zone) - scan::length(&outside));
            }
            rule.case(both < NOISE, || format!("{}: {both:.2} sq in of it are laid", z.id));
        }
    }
    (rule.checked > 0).then(|| rule.done("zones of other cladding are measured and bear no panel"))
}
