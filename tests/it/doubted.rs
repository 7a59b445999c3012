//! Walls from drawn siding that something speaks against: laid out all the same, and told at their place.

use lapwright::finding::house::{HouseFinding, WallDoubt};
use lapwright::finding::{FindingKind, Findings};
use lapwright::geom::vocabulary::Point;
use lapwright::job::file as job_file;
use lapwright::pipeline;

use crate::support::rect;

/// A hatch of level lines so far apart, inches.
fn siding(ring: &[(f64, f64)], pitch: f64) -> String {
    let mut out = format!(
        "0\nHATCH\n8\nA-WALL-PATT\n10\n0\n20\n0\n30\n0\n2\nLINES\n70\n0\n71\n0\n91\n1\n92\n7\n72\n0\n73\n1\n93\n{}\n",
        ring.len()
    );
    ring.iter().for_each(|(x, y)| out.push_str(&format!("10\n{x}\n20\n{y}\n")));
    let family = format!("53\n0\n43\n0\n44\n0\n45\n0\n46\n{pitch}\n79\n0\n98\n0\n");
    out + "97\n0\n75\n0\n76\n0\n52\n0\n41\n1\n77\n0\n78\n1\n" + &family
}

fn line((x0, y0): (f64, f64), (x1, y1): (f64, f64)) -> String {
    format!("0\nLINE\n8\nX\n10\n{x0}\n20\n{y0}\n11\n{x1}\n21\n{y1}\n")
}

/// What is found of walls when entities are read, with its places.
fn found(entities: &[String], more: &str) -> Vec<(HouseFinding, Vec<Point>)> {
    let text = format!(
        "0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n1\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n{}0\nENDSEC\n0\nEOF\n",
        entities.concat()
    );
    let job = job_file::parse(&format!("[drawing]\nunit = \"inch\"\n{more}"), "job").unwrap();
    let mut findings = Findings::default();
    let _ = pipeline::reading(text.as_bytes(), "t.dxf", &job, &mut findings);
    let of_house = findings.all().iter().filter_map(|f| match &f.kind {
        FindingKind::House(kind) => {
            Some((kind.clone(), f.at.iter().chain(&f.also).copied().collect()))
        }
        _ => None,
    });
    of_house.collect()
}

fn doubts(entities: &[String]) -> Vec<(WallDoubt, Point)> {
    let of = |(kind, at): (HouseFinding, Vec<Point>)| match kind {
        HouseFinding::WallDoubted { why, .. } => Some((why, at[0])),
        _ => None,
    };
    found(entities, "").into_iter().filter_map(of).collect()
}

/// A wall 240 x 108 in, courses of 4 in, and over its frieze of 12 in what is hatched 240 x 60 in: with lines 6 in
/// apart it may be the roof, with courses of 4 in it is not asked.
#[test]
fn lines_at_another_distance_over_a_wall_may_be_its_roof() {
    let over = |pitch: f64| {
        doubts(&[
            siding(&rect(0.0, 0.0, 240.0, 108.0), 4.0),
            siding(&rect(0.0, 120.0, 240.0, 180.0), pitch),
        ])
    };
    let told = WallDoubt::OtherCourses { own: 6.0, below: 4.0 };
    assert_eq!(over(6.0), [(told, Point::new(120.0, 150.0))]);
    assert_eq!(over(4.0), []);
}

/// A wall of 240 x 108 in with a part of so much by 20 in past its right end, or its left one, from 60 in up.
#[test]
fn what_juts_out_past_an_end_may_be_the_end_of_a_lower_roof() {
    let right = |by: f64, head: f64| {
        let [a, b, ..] = rect(0.0, 0.0, 240.0, 108.0);
        let out = [(240.0, 60.0), (240.0 + by, 60.0), (240.0 + by, head), (240.0, head)];
        let ring: Vec<(f64, f64)> =
            [a, b].into_iter().chain(out).chain([(240.0, 108.0), (0.0, 108.0)]).collect();
        ring
    };
    let told = [(WallDoubt::JutsOut { by: 12.0, height: 20.0 }, Point::new(246.0, 70.0))];
    assert_eq!(doubts(&[siding(&right(12.0, 80.0), 4.0)]), told);
    let mut left: Vec<(f64, f64)> =
        right(12.0, 80.0).into_iter().map(|(x, y)| (240.0 - x, y)).collect();
    left.reverse();
    let told = [(WallDoubt::JutsOut { by: 12.0, height: 20.0 }, Point::new(-6.0, 70.0))];
    assert_eq!(doubts(&[siding(&left, 4.0)]), told);
    // From there to the head the wall is wider; 48 in is a wing, 5 ft and more is no roof's end.
    assert_eq!(doubts(&[siding(&right(12.0, 108.0), 4.0)]), []);
    assert_eq!(doubts(&[siding(&right(60.0, 80.0), 4.0)]), []);
}

/// Siding of 60 x 96 in at the foot of a front of 600 x 400 in, at its left end and from 300 in on: at half the
/// height, the middle of what is bare at the right (350 to 600) is at 475, that between (60 to 300) at 180.
#[test]
fn little_siding_is_told_where_the_rest_is_missing() {
    let corners = rect(0.0, 0.0, 600.0, 400.0);
    let mut drawn =
        vec![siding(&rect(0.0, 0.0, 60.0, 96.0), 4.0), siding(&rect(300.0, 0.0, 350.0, 96.0), 4.0)];
    drawn.extend((0..4).map(|i| line(corners[i], corners[(i + 1) % 4])));
    let view = "[[elevation]]\nname = \"S\"\nregion = [-9.0, -9.0, 609.0, 409.0]\n";
    let share = found(&drawn, view).into_iter().find_map(|(kind, at)| match kind {
        HouseFinding::FacadeShare { .. } => Some(at),
        _ => None,
    });
    assert_eq!(share, Some(vec![Point::new(475.0, 200.0), Point::new(180.0, 200.0)]));
}
