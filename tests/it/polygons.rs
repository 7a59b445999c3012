//! The boolean engine against an independent one, `geo-booleanop`, on walls less openings.

use geo_booleanop::boolean::BooleanOp;
use geo_types_06::{Coordinate, LineString, MultiPolygon, Polygon as Other};
use lapwright::geom::boolean::{difference, intersection, union_all};
use lapwright::geom::polygon::{Polygon, total_area};
use lapwright::geom::vocabulary::Point;
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

fn other(p: &Polygon) -> Other<f64> {
    let ring = |r: &Vec<Point>| {
        LineString(r.iter().chain(r.first()).map(|q| Coordinate { x: q.x, y: q.y }).collect())
    };
    Other::new(ring(&p.outer), p.holes.iter().map(ring).collect())
}

fn area(m: &MultiPolygon<f64>) -> f64 {
    let ring = |l: &LineString<f64>| -> f64 {
        l.0.windows(2).map(|w| w[0].x * w[1].y - w[1].x * w[0].y).sum::<f64>().abs() / 2.0
    };
    m.0.iter().map(|p| ring(p.exterior()) - p.interiors().iter().map(ring).sum::<f64>()).sum()
}

fn gable() -> impl Strategy<Value = Polygon> {
    (100u32..700, 40u32..200, 0u32..300).prop_map(|(w, h, rise)| {
        let (w, h, peak) = (f64::from(w), f64::from(h), f64::from(h + rise));
        Polygon::simple(
            [(0.0, 0.0), (w, 0.0), (w, h), (w / 2.0, peak), (0.0, h)].map(Point::from).to_vec(),
        )
    })
}

fn boxes() -> impl Strategy<Value = Vec<Polygon>> {
    prop::collection::vec((0u32..650, 0u32..300, 8u32..90, 8u32..90), 1..7).prop_map(|v| {
        v.into_iter()
            .map(|(x, y, w, h)| Polygon::rect(x.into(), y.into(), (x + w).into(), (y + h).into()))
            .collect()
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, failure_persistence: None, rng_seed: RngSeed::Fixed(20),  ..ProptestConfig::default() })]

    #[test]
    fn areas_agree(wall in gable(), holes in boxes()) {
        let merged = union_all(&holes);
        let ours = total_area(&difference(std::slice::from_ref(&wall), &merged));
        let mut theirs = MultiPolygon(vec![other(&wall)]);
        for h in &holes {
            theirs = theirs.difference(&other(h));
        }
        prop_assert!((ours - area(&theirs)).abs() < 1e-6 * wall.area(), "{ours} {}", area(&theirs));
        // What is taken off and what is left make the whole.
        let cut = total_area(&intersection(std::slice::from_ref(&wall), &merged));
        prop_assert!((ours + cut - wall.area()).abs() < 1e-6 * wall.area());
    }
}
