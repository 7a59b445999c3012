//! Wall without siding, reckoned by hand from the drawing beside it: a line of its own, and in neither
//! squares nor comparisons.

use lapwright::layout::Layout;
use lapwright::layout::rule::Rule;
use lapwright::layout::wall::LaidWall;
use lapwright::model::basis::Basis;
use lapwright::model::counting::CountingMethod;
use lapwright::model::quantity::Group;
use lapwright::model::receiver::BareBy;
use lapwright::model::takeoff::Takeoff;
use lapwright::takeoff::quantities;

use crate::faults::{Break, each_is_caught};
use crate::support::{broken, dxf, lay, rect, said, sheets};

/// A view laid by the careful crew with its first butt line at the floor.
fn laid(rings: &[(&str, &[(f64, f64)])]) -> (Layout, Takeoff) {
    let text = "[drawing]\nunit = \"inch\"\n[seams]\neffort = \"crew\"\n[courses]\ndatum = 0\n";
    let job = lapwright::job::file::parse(text, "job").unwrap();
    let layout = lay(dxf(rings).as_bytes(), &job);
    assert_eq!(broken(&layout), Vec::<String>::new());
    let takeoff = quantities(&layout);
    (layout, takeoff)
}

fn wall(l: &Layout) -> &LaidWall {
    &l.elevations[0].walls[0]
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() < 0.02
}

fn net(t: &Takeoff, id: &str) -> f64 {
    t.line(id).unwrap_or_else(|| panic!("no line {id}")).net
}

#[test]
fn wall_above_steps_at_grade_is_no_net_area() {
    // A wall of 360 in from 0 (its foot) to 104: 360 x 104 = 37440 sq in = 260 sq ft; a window of 36 x
    // 40 takes 10. Grade rises from -10 at the left end to 14 at the right: 24 in 360, 1 in 15. A butt
    // line at y is clear of it by 6 in where grade is at or under y - 6: x <= 15 (y + 4). Course 1, at
    // 0, to x = 60; course 2, at 8, to 180; course 3, at 16, to 300; course 4, at 24, all along (420).
    // Bare: 8 x (300 + 180 + 60) = 4320 sq in = 30 sq ft. Net: 260 - 10 - 30 = 220.
    let grade = [(0.0, -10.0), (360.0, 14.0), (180.0, 2.0)];
    let (layout, takeoff) = laid(&[
        ("A-WALL-OTLN", &rect(0.0, 0.0, 360.0, 104.0)),
        ("A-GLAZ", &rect(100.0, 48.0, 136.0, 88.0)),
        ("C-TOPO-PROF", &grade),
    ]);
    let w = wall(&layout);
    assert!(
        near(w.gross_area, 260.0) && near(w.net_area, 220.0),
        "{} {}",
        w.gross_area,
        w.net_area
    );
    let [bare] = w.bare.as_slice() else { panic!("{:?}", w.bare) };
    assert!(bare.by == BareBy::NearGrade && near(bare.area, 30.0), "{bare:?}");
    // Squares are what is sided; the bare part is a line that is measured and not ordered.
    assert!(near(net(&takeoff, "squares"), 2.2) && near(net(&takeoff, "bare-wall"), 0.3));
    let line = takeoff.line("bare-wall").unwrap();
    assert_eq!((line.group, line.order), (Group::Measured, 0.0));
    let Basis::BareWall { near_grade, above_grade, over_roofs, behind_roofs, fillers, .. } =
        line.basis
    else {
        panic!()
    };
    assert!(near(near_grade, 30.0) && over_roofs + behind_roofs + fillers == 0.0);
    // Grade passes the wall's foot at 150 in and stands 14 in over it at 360: 210 x 14 / 2 = 1470 sq in =
    // 10.21 sq ft lie under it, 19.79 over it.
    assert!(near(above_grade, 30.0 - 1470.0 / 144.0), "{above_grade}");
    let asked = layout.findings.iter().find(|f| f.code().word() == "wall-bare").unwrap();
    assert!(said(asked).contains(
        "30.0 sq ft under the start of the siding gets none, 19.8 sq ft of it over grade"
    ));
    // Schools of openings: net and 10 % is 242, none off 230, all under 20 sq ft stay in: 230.
    let area = |keep: fn(&CountingMethod) -> bool| {
        takeoff.comparison.iter().find(|c| keep(&c.method)).unwrap().area.unwrap()
    };
    assert!(near(area(|m| matches!(m, CountingMethod::NetArea { .. })), 242.0));
    assert!(near(area(|m| matches!(m, CountingMethod::GrossArea)), 230.0));
    assert!(near(area(|m| matches!(m, CountingMethod::LargeOpenings { .. })), 230.0));
    // 242 sq ft at 8 1/3 a panel (Double 4, 12 ft 6 in) is 29.04: 30 panels.
    assert_eq!(net(&takeoff, "by-net-area"), 30.0);
}

#[test]
fn wall_over_and_behind_a_porch_roof_is_no_net_area() {
    // 360 x 240 = 600 sq ft; a porch roof from 96 to 120 right across hides 360 x 24 = 60 sq ft, which
    // gross area leaves out; siding keeps 1/2 in clear over it (`courses.clear_of_roof`): 360 x 1/2 =
    // 180 sq in = 1.25 sq ft. Net: 600 - 60 - 1.25 = 538.75.
    let (layout, takeoff) = laid(&[
        ("A-WALL-OTLN", &rect(0.0, 0.0, 360.0, 240.0)),
        ("A-ROOF-OTLN", &rect(-12.0, 96.0, 372.0, 120.0)),
    ]);
    let w = wall(&layout);
    assert!(
        near(w.gross_area, 540.0) && near(w.net_area, 538.75),
        "{} {}",
        w.gross_area,
        w.net_area
    );
    let by = |by: BareBy| w.bare.iter().filter(|b| b.by == by).map(|b| b.area).sum::<f64>();
    assert!(near(by(BareBy::BehindRoof), 60.0) && near(by(BareBy::OverRoof), 1.25));
    assert!(near(w.bare_area(), 1.25));
    assert!((net(&takeoff, "bare-wall") - 0.6125).abs() < 1e-3);
    assert!(near(net(&takeoff, "squares"), 5.3875));
    // A reader's sum agrees: 540 gross less 1.25 are 538.75; the 60 were never in gross.
    let told = lapwright::wording::report::bare_wall(w, layout.job.sheet.lengths).unwrap();
    let (in_gross, beyond) = told.split_once("; ").unwrap();
    assert!(in_gross.ends_with("in the clearance over lower roofs"), "{told}");
    assert_eq!(beyond, "outside its gross area: 60.0 sq ft behind lower roofs.");
}

/// A wall of 240 by 96 in, a roof line 6 in over its top, another wall 4 in beside it, 120 by 90.
fn short_of_both() -> (Layout, Takeoff) {
    laid(&[
        ("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 96.0)),
        ("A-WALL-OTLN", &rect(244.0, 0.0, 364.0, 90.0)),
        ("A-ROOF-OTLN", &rect(-12.0, 102.0, 240.0, 150.0)),
    ])
}

#[test]
fn strips_that_siding_stops_short_by_are_counted_and_drawn() {
    // Under the roof 240 x 6 = 1440 sq in = 10 sq ft, between the walls 4 x 90 = 360 = 2 1/2; neither is in
    // gross or net area: 240 x 96 = 160 sq ft and 120 x 90 = 75.
    let (layout, takeoff) = short_of_both();
    let [one, other] = layout.elevations[0].walls.as_slice() else { panic!() };
    let short: Vec<f64> =
        one.bare.iter().filter(|b| b.by == BareBy::StopsShort).map(|b| b.area).collect();
    assert!(short.len() == 1 && near(short[0], 12.5), "{:?}", one.bare);
    assert!(other.bare.is_empty());
    assert!(near(one.gross_area, 160.0) && near(one.net_area, 160.0) && near(other.net_area, 75.0));
    assert!(near(one.bare_area(), 0.0));
    assert!(near(net(&takeoff, "bare-wall"), 0.125) && near(net(&takeoff, "squares"), 2.35));
    let Basis::BareWall { stops_short, near_grade, .. } = takeoff.line("bare-wall").unwrap().basis
    else {
        panic!()
    };
    assert!(near(stops_short, 12.5) && near_grade == 0.0);
    let set = lapwright::layout::set::LaidSet { layout, takeoff, backdrops: Default::default() };
    let drawn = format!("{:?}", sheets(&set)[1]);
    assert!(drawn.contains(lapwright::wording::sheets::NO_SIDING.en), "no mark");
}

/// Faults of it.
const SHORT: [(&str, Rule, Break); 2] = [
    ("a strip told larger than it is", Rule::BareWall, |l| {
        l.elevations[0].walls[0].bare[0].area += 1.0
    }),
    ("a strip told where the wall is", Rule::BareWall, |l| {
        let rings = &mut l.elevations[0].walls[0].bare[0].outline;
        rings.iter_mut().flatten().for_each(|p| p[1] -= 10.0);
    }),
];

#[test]
fn strips_told_wrongly_are_caught() {
    each_is_caught(&short_of_both().0, &SHORT);
}
