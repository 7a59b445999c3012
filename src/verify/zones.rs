//! Zones with another cladding: no panel in them, each measured.

use super::area::Area;
use super::named;
use super::rule::{Cases, found};
use super::scan::{length, without};
use super::sweep::{Height, Shapes};
use crate::geom::vocabulary::Xy;
use crate::layout::breach::wall::FieldBreach;
use crate::layout::laid::LaidHouse;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::Figure::{SquareFeet, SquareInches};
use crate::layout::wall::{LaidElevation, LaidZone};

/// Area that counts as none, square inches.
const NOISE: f64 = 1.0;

fn ring_area(ring: &[Xy]) -> f64 {
    let next = ring.iter().cycle().skip(1);
    ring.iter().zip(next).map(|(a, b)| a[0] * b[1] - b[0] * a[1]).sum::<f64>() / 2.0
}

pub(super) fn check(layout: &LaidHouse) -> Option<RuleCheck> {
    let mut rule = Cases::new(Rule::CladdingZones);
    for e in &layout.elevations {
        for z in &e.zones {
            measured(&mut rule, e, z);
            let both = laid(e, z);
            rule.case(both.sum < NOISE, || {
                let at = both.at.and_then(|p| named::place(&e.name, p));
                let v = found(named::zone(&z.id), FieldBreach::ZoneLaid).at(at);
                v.measured(SquareInches(both.sum)).exactly(SquareInches(0.0))
            });
        }
    }
    (rule.checked > 0).then(|| rule.done())
}

/// A zone's areas are those of its outline.
fn measured(rule: &mut Cases, e: &LaidElevation, z: &LaidZone) {
    // Holes are wound the other way.
    let gross = z.outline.iter().map(|r| ring_area(r)).sum::<f64>().abs() / 144.0;
    let near = (gross - z.gross_area).abs() < 0.01;
    rule.case(near && z.net_area <= z.gross_area + 0.01 && z.net_area >= 0.0, || {
        let at = named::place(&e.name, named::middle(z.outline.iter().flatten()));
        let of_zone = |breach: FieldBreach| found(named::zone(&z.id), breach).at(at);
        if near {
            let v = of_zone(FieldBreach::ZoneNet).measured(SquareFeet(z.net_area));
            v.between(SquareFeet(0.0), SquareFeet(z.gross_area))
        } else {
            let v = of_zone(FieldBreach::ZoneGross).measured(SquareFeet(z.gross_area));
            v.exactly(SquareFeet(gross))
        }
    });
}

/// What is laid of a zone, square inches.
fn laid(e: &LaidElevation, z: &LaidZone) -> Area {
    let mut shapes = Shapes::default();
    let zone = shapes.add(&z.outline);
    let courses = e.walls.iter().flat_map(|w| &w.courses);
    for p in courses.flat_map(|c| &c.runs).flat_map(|r| &r.pieces) {
        shapes.add(std::iter::once(&p.outline).chain(&p.more));
    }
    let [_, low, _, high] = named::bounds(z.outline.iter().flatten());
    let mut both = Area::default();
    for slab in shapes.slabs(low, high) {
        let of_zone = slab.union(Height::Middle, |i| i == zone);
        let laid = slab.union(Height::Middle, |i| i != zone);
        let inside = without(&of_zone, &without(&of_zone, &laid));
        both.add(&slab, slab.rise() * length(&inside), &inside);
    }
    both
}
