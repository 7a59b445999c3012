//! A whole house of two elevations moved, mirrored or drawn in another unit is laid out alike, piece
//! for piece; and every piece lies in its wall's field by an engine of other people's.

use geo_booleanop::boolean::BooleanOp;
use geo_types_06::{Coordinate, LineString, MultiPolygon, Polygon as Other};
use lapwright::geom::vocabulary::Xy;
use lapwright::job::Job;
use lapwright::layout::Layout;
use lapwright::layout::piece::{Piece, PieceEnd};
use lapwright::model::seam::Effort;
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

use crate::layouts::{House, house};
use crate::support::{dxf, inches, lay};

fn quick() -> Job {
    let mut job = inches();
    job.seams.effort = Effort::Crew;
    job.courses.datum = Some(0.0);
    job
}

/// Both walls on one level line, the second 200 in past the first.
fn drawn(walls: &[House; 2], map: impl Fn((f64, f64)) -> (f64, f64)) -> String {
    let mut x = 0.0;
    let mut rings: Vec<(&str, Vec<(f64, f64)>)> = Vec::new();
    for w in walls {
        for (layer, ring) in w.rings() {
            rings.push((layer, ring.into_iter().map(|(a, b)| map((a + x, b))).collect()));
        }
        x += w.width() + 200.0;
    }
    let rings: Vec<(&str, &[(f64, f64)])> = rings.iter().map(|(l, r)| (*l, &r[..])).collect();
    dxf(&rings)
}

/// What a piece is, with its place in the drawing along `to`, in 1/64 in, ends left to right.
type Told = (i32, i64, i64, [(String, i64, i64); 2], Option<(i64, i64)>, Vec<[i64; 4]>);

fn told(layout: &Layout, inches: f64, flip: Option<f64>) -> Vec<Told> {
    let whole = |v: f64| (v * 64.0).round() as i64;
    let mut out = Vec::new();
    for e in &layout.elevations {
        let place = |x: f64| (e.to_source[0] * x + e.to_source[4]) * inches;
        let courses = e.walls.iter().flat_map(|w| &w.courses);
        for (c, p) in courses
            .flat_map(|c| c.runs.iter().flat_map(move |r| r.pieces.iter().map(move |p| (c, p))))
        {
            let end = |e: &PieceEnd| (format!("{:?}", e.cut), whole(e.angle), whole(e.set_back()));
            let mut ends = [end(&p.ends[0]), end(&p.ends[1])];
            let (mut x0, mut x1) = (place(p.x0), place(p.x1));
            let notch = |n: &lapwright::model::notch::Notch| {
                let left = if flip.is_some() { p.length - n.left - n.width } else { n.left };
                [n.side as i64, whole(left), whole(n.width), whole(n.depth)]
            };
            let mut notches: Vec<[i64; 4]> = p.notches.iter().map(notch).collect();
            if let Some(width) = flip {
                (x0, x1) = (width - x1, width - x0);
                ends.reverse();
            }
            notches.sort_unstable();
            let rip = p.rip.as_ref().map(|r| (whole(r.from), whole(r.to)));
            out.push((c.index, whole(x0), whole(x1), ends, rip, notches));
        }
    }
    out.sort();
    out
}

fn other(rings: &[&Vec<Xy>]) -> Other<f64> {
    let line = |r: &&Vec<Xy>| {
        LineString(r.iter().chain(r.first()).map(|q| Coordinate { x: q[0], y: q[1] }).collect())
    };
    let mut all = rings.iter().map(line);
    let outer = all.next().unwrap();
    Other::new(outer, all.collect())
}

fn area(m: &MultiPolygon<f64>) -> f64 {
    let ring = |l: &LineString<f64>| -> f64 {
        l.0.windows(2).map(|w| w[0].x * w[1].y - w[1].x * w[0].y).sum::<f64>().abs() / 2.0
    };
    m.0.iter().map(|p| ring(p.exterior()) - p.interiors().iter().map(ring).sum::<f64>()).sum()
}

fn of(p: &Piece) -> Other<f64> {
    other(&std::iter::once(&p.outline).chain(&p.holes).collect::<Vec<_>>())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, failure_persistence: None, rng_seed: RngSeed::Fixed(41), ..ProptestConfig::default() })]

    #[test]
    fn a_house_and_its_mirror_image_differ_in_handedness_alone(a in house(), b in house(), dx in -3000i32..3000) {
        let walls = [a, b];
        let here = lay(drawn(&walls, |p| p).as_bytes(), &quick());
        let width = walls[0].width() + 200.0 + walls[1].width();
        let there = lay(drawn(&walls, |(x, y)| (width - x, y)).as_bytes(), &quick());
        prop_assert_eq!(told(&here, 1.0, None), told(&there, 1.0, Some(width)));
        prop_assert_eq!(here.panels.len(), there.panels.len());
        // Moved, and in millimeters.
        let dx = f64::from(dx);
        let mut job = quick();
        job.drawing.unit = Some(lapwright::units::Unit::Mm);
        let moved = drawn(&walls, |(x, y)| ((x + dx) * 25.4, (y - 77.0) * 25.4));
        let moved = lay(moved.as_bytes(), &job);
        let wanted = told(&here, 1.0, None).into_iter().map(|mut t| {
            t.1 += (dx * 64.0) as i64;
            t.2 += (dx * 64.0) as i64;
            t
        });
        prop_assert_eq!(told(&moved, 1.0 / 25.4, None), wanted.collect::<Vec<_>>());
    }

    #[test]
    fn pieces_cover_the_field_by_an_independent_engine(h in house()) {
        let layout = lay(drawn(&[h.clone(), h], |p| p).as_bytes(), &quick());
        let (gap, v) = (layout.job.end_gap(), layout.job.courses.notch_clearance);
        for (_, w) in layout.walls() {
            let field = other(&w.field.iter().collect::<Vec<_>>());
            let mut bare = area(&MultiPolygon(vec![field.clone()]));
            for c in &w.courses {
                for r in &c.runs {
                    let mut laid = MultiPolygon(vec![]);
                    for p in &r.pieces {
                        let one = of(p);
                        let whole = area(&MultiPolygon(vec![one.clone()]));
                        let inside = area(&one.intersection(&field));
                        prop_assert!((whole - inside).abs() < 0.01, "{} leaves the field: {whole} {inside}", p.mark);
                        laid = laid.union(&one);
                    }
                    bare -= area(&laid);
                }
            }
            // What stays bare is clearance: a gap beside plumb and sloped sides, a strip along level
            // ones that cut a course, and at most a stamp a course that is worth no piece.
            let mut most = 0.5 * w.courses.len() as f64;
            for ring in &w.field {
                for (a, b) in ring.iter().zip(ring.iter().cycle().skip(1)) {
                    most += gap * (a[1] - b[1]).abs() + v * (a[0] - b[0]).abs();
                }
            }
            prop_assert!((-0.01..=most).contains(&bare), "{}: {bare} bare, {most} at most", w.id);
        }
    }
}
