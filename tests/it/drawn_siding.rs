//! Siding drawn with loose lines: what they cover, against areas reckoned by hand, and lines that are none.

use std::fmt::Write;

use lapwright::finding::lines::LineCode;
use lapwright::finding::{FindingCode, Findings};
use lapwright::geom::polygon::{bounds, signed_area};
use lapwright::geom::vocabulary::Rect;
use lapwright::model::linework::{HatchArea, Linework};
use lapwright::{normalize, read};

use crate::support::inches;

/// A segment on a layer.
pub(crate) type Line = (&'static str, (f64, f64), (f64, f64));

pub(crate) fn dxf(lines: &[Line]) -> String {
    let mut out = String::from("0\nSECTION\n2\nENTITIES\n");
    for (layer, a, b) in lines {
        let _ = write!(
            out,
            "0\nLINE\n8\n{layer}\n10\n{}\n20\n{}\n11\n{}\n21\n{}\n",
            a.0, a.1, b.0, b.1
        );
    }
    out + "0\nENDSEC\n0\nEOF\n"
}

pub(crate) fn ring(layer: &'static str, b: [f64; 4]) -> Vec<Line> {
    let [x0, y0, x1, y1] = b;
    let at = [(x0, y0), (x1, y0), (x1, y1), (x0, y1), (x0, y0)];
    at.windows(2).map(|w| (layer, w[0], w[1])).collect()
}

/// Level lines from `from` on, `pitch` apart, within what `across` says of each height, less boxes.
pub(crate) fn courses(
    layer: &'static str,
    (from, to, pitch): (f64, f64, f64),
    across: impl Fn(f64) -> (f64, f64),
    boxes: &[[f64; 4]],
) -> Vec<Line> {
    let mut out = Vec::new();
    let mut y = from;
    while y < to {
        let (x0, x1) = across(y);
        let mut open = vec![(x0, x1)];
        for b in boxes.iter().filter(|b| y > b[1] && y < b[3]) {
            open = open
                .into_iter()
                .flat_map(|(a, c)| [(a, c.min(b[0])), (a.max(b[2]), c)])
                .filter(|(a, c)| c > a)
                .collect();
        }
        out.extend(open.into_iter().map(|(a, c)| (layer, (a, y), (c, y))));
        y += pitch;
    }
    out
}

pub(crate) fn lines_of(bytes: &[u8]) -> (Linework, Findings) {
    let mut findings = Findings::default();
    let d = read::drawing(bytes, "d", &read::Limits::default(), &mut findings).unwrap();
    let lines = normalize::linework(&d, &inches(), &mut findings).unwrap();
    (lines, findings)
}

/// Areas of drawn courses: box, square inches, and boxes of their holes.
pub(crate) fn patches(lines: &Linework) -> Vec<(Rect, f64, Vec<Rect>)> {
    let of = |h: &HatchArea| {
        let mut rings = h.hatch.rings();
        rings.sort_by(|a, b| signed_area(b).abs().total_cmp(&signed_area(a).abs()));
        let area = signed_area(&rings[0]).abs()
            - rings[1..].iter().map(|r| signed_area(r).abs()).sum::<f64>();
        let holes = rings[1..].iter().map(|r| bounds(r).unwrap()).collect();
        (bounds(&rings[0]).unwrap(), area, holes)
    };
    lines.hatches.iter().filter(|h| h.course_lines > 0).map(of).collect()
}

fn told(findings: &Findings, code: LineCode) -> usize {
    findings.all().iter().filter(|f| f.code() == FindingCode::Lines(code)).count()
}

/// A gable wall 240 wide, 96 to the eave, 156 to the ridge (6 in 12), with a window 40 x 42: net
/// 240 x 96 + 240 x 60 / 2 - 40 x 42 = 28,560.
const WINDOW: [f64; 4] = [100.0, 33.0, 140.0, 75.0];
const NET: f64 = 28_560.0;

fn gable(y: f64) -> (f64, f64) {
    let inset = (2.0 * (y - 96.0)).max(0.0);
    (inset, 240.0 - inset)
}

fn gable_courses() -> Vec<Line> {
    courses("siding", (2.0, 156.0, 4.0), gable, &[WINDOW])
}

#[test]
fn an_exploded_hatch_is_an_area_up_to_the_lines_drawn_round_it() {
    let mut all = gable_courses();
    all.extend(ring("glass", WINDOW));
    all.push(("house", (0.0, 0.0), (240.0, 0.0)));
    all.extend([
        ("house", (-12.0, 90.0), (120.0, 156.0)),
        ("house", (252.0, 90.0), (120.0, 156.0)),
    ]);
    let (lines, findings) = lines_of(dxf(&all).as_bytes());
    let found = patches(&lines);
    assert_eq!(found.len(), 1);
    let (frame, area, holes) = &found[0];
    assert_eq!(*frame, Rect::new(0.0, 0.0, 240.0, 156.0));
    assert!((area - NET).abs() < 1.0, "{area}");
    assert_eq!(*holes, [Rect::new(100.0, 33.0, 140.0, 75.0)]);
    assert_eq!(told(&findings, LineCode::SidingFromLines), 1);
    assert_eq!(told(&findings, LineCode::CoursesUnended), 0);
    // Its lines are 4 in apart, and stand at 2 in and on.
    let family = &lines.hatches[0].hatch.families[0];
    assert_eq!(family.offset.1, 4.0);
    assert_eq!((family.base.y - 2.0).rem_euclid(4.0), 0.0);
}

#[test]
fn where_nothing_is_drawn_round_it_rakes_are_the_line_of_the_ends_and_the_rest_is_told() {
    let (lines, findings) = lines_of(dxf(&gable_courses()).as_bytes());
    let (frame, area, holes) = patches(&lines).remove(0);
    // The first line stands at 2 in, the window's hole goes from the line at 30 to that at 78; the tip is
    // where the two lines of ends meet.
    assert_eq!(frame, Rect::new(0.0, 2.0, 240.0, 156.0));
    assert_eq!(holes, [Rect::new(100.0, 30.0, 140.0, 78.0)]);
    let expected = 240.0 * 94.0 + 240.0 * 60.0 / 2.0 - 40.0 * 48.0;
    assert!((area - expected).abs() <= 4.0, "{area}, {expected}");
    assert_eq!(told(&findings, LineCode::CoursesUnended), 1);
}

#[test]
fn one_pen_of_a_print_is_told_from_all_others_on_its_layer() {
    // Grey lines 4 in apart, every tenth 0.05 in farther, on one layer with black lines: the wall's sides
    // and window, a grid line, a leader, and short lines at odd heights.
    let mut svg = String::from(
        "<svg xmlns='http://www.w3.org/2000/svg' width='400in' height='200in' viewBox='0 0 400 200'>",
    );
    let mut draw = |a: (f64, f64), b: (f64, f64), pen: &str| {
        let (ya, yb) = (150.0 - a.1, 150.0 - b.1);
        let _ = write!(svg, "<path d='M{} {ya}L{} {yb}' {pen} fill='none'/>", a.0, b.0);
    };
    let (grey, black) = ("stroke='#c3c3c3' stroke-width='.24'", "stroke='#000' stroke-width='.24'");
    let mut y = 3.0;
    for k in 1..=24 {
        let spans = if y > 33.0 && y < 75.0 {
            vec![(0.0, 100.0), (140.0, 240.0)]
        } else {
            vec![(0.0, 240.0)]
        };
        spans.into_iter().for_each(|(a, b)| draw((a, y), (b, y), grey));
        y += if k % 10 == 0 { 4.05 } else { 4.0 };
    }
    for (_, a, b) in ring("", [0.0, 0.0, 240.0, 99.0]).into_iter().chain(ring("", WINDOW)) {
        draw(a, b, black);
    }
    draw((120.0, -20.0), (120.0, 130.0), black);
    draw((60.0, 60.0), (90.0, 110.0), black);
    for k in 0..12 {
        let x = 250.0 + 8.0 * f64::from(k);
        draw((x, 7.0 * f64::from(k % 5)), (x + 6.0, 7.0 * f64::from(k % 5)), black);
    }
    svg.push_str("</svg>");
    let found = patches(&lines_of(svg.as_bytes()).0);
    assert_eq!(found.len(), 1, "{found:?}");
    // 240 x 99 less the window's 40 x 42.
    // The page is 200 high, the wall's foot 150 from its top.
    assert_eq!(found[0].0, Rect::new(0.0, 50.0, 240.0, 149.0));
    assert!((found[0].1 - (240.0 * 99.0 - 40.0 * 42.0)).abs() < 10.0, "{found:?}");
}

#[test]
fn stone_shingles_tables_and_steps_are_no_siding() {
    let wide = |_: f64| (300.0, 540.0);
    // Blocks 16 in long and 8 in high in running bond.
    let mut blocks = courses("wall", (0.0, 97.0, 8.0), wide, &[]);
    for row in 0..12 {
        for n in 1..15 {
            let x = 300.0 + 16.0 * f64::from(n) + if row % 2 == 0 { 0.0 } else { 8.0 };
            let y = 8.0 * f64::from(row);
            blocks.push(("wall", (x, y), (x, y + 8.0)));
        }
    }
    let (lines, findings) = lines_of(dxf(&blocks).as_bytes());
    assert_eq!(patches(&lines), []);
    assert_eq!(told(&findings, LineCode::LinesNoSiding), 1);
    // A table of twelve rows 9 in high with two columns.
    let mut table = courses("table", (0.0, 109.0, 9.0), wide, &[]);
    for x in [300.0, 340.0, 440.0, 540.0] {
        table.push(("table", (x, 0.0), (x, 108.0)));
    }
    let (lines, findings) = lines_of(dxf(&table).as_bytes());
    assert_eq!(patches(&lines), []);
    assert_eq!(told(&findings, LineCode::LinesNoSiding), 1);
    // Five steps 7 in high are too few to tell.
    let steps = courses("steps", (0.0, 36.0, 7.0), |_| (300.0, 360.0), &[]);
    assert_eq!(patches(&lines_of(dxf(&steps).as_bytes()).0), []);
}

#[test]
fn boards_drawn_with_two_lines_reach_to_the_second() {
    // Twelve boards of 7 in with a second line 3/4 in over each, the sixth moved up by 1/2 in to a sill;
    // their ends stand at 0 and 200, the top line at 84.
    let mut all = Vec::new();
    for k in 0..12 {
        let y = 7.0 * f64::from(k) + if k == 5 { 0.5 } else { 0.0 };
        all.extend([
            ("front", (0.0, y), (200.0, y)),
            ("front", (0.0, y + 0.75), (200.0, y + 0.75)),
        ]);
    }
    all.push(("front", (0.0, 84.0), (200.0, 84.0)));
    let found = patches(&lines_of(dxf(&all).as_bytes()).0);
    assert_eq!(found.len(), 1);
    assert_eq!((found[0].0, found[0].1), (Rect::new(0.0, 0.0, 200.0, 84.0), 200.0 * 84.0));
}

#[test]
fn agreed_outlines_leave_drawn_courses_a_texture() {
    let mut all = gable_courses();
    all.push(("house", (0.0, 0.0), (240.0, 0.0)));
    let mut outlined = dxf(&all);
    let wall = crate::support::dxf(&[(
        "A-WALL-OTLN",
        &[(300.0, 0.0), (400.0, 0.0), (400.0, 90.0), (300.0, 90.0)],
    )]);
    let entities = wall.split("2\nENTITIES\n").nth(1).unwrap().split("0\nENDSEC").next().unwrap();
    outlined = outlined.replace("2\nENTITIES\n", &format!("2\nENTITIES\n{entities}"));
    assert_eq!(patches(&lines_of(outlined.as_bytes()).0), []);
    assert_eq!(patches(&lines_of(dxf(&all).as_bytes()).0).len(), 1);
}

/// Siding 240 x 96 in courses of 4 in with its sides and foot drawn, and a roof's shingles over it.
fn house_under(roof: Vec<Line>) -> Vec<Line> {
    let mut all = courses("one", (2.0, 96.0, 4.0), |_| (0.0, 240.0), &[]);
    all.extend(ring("one", [0.0, 0.0, 240.0, 96.0]));
    all.extend(roof);
    all
}

fn sided(lines: &Linework) -> usize {
    lines.hatches.iter().filter(|h| h.course_lines > 0 && h.no_siding.is_none()).count()
}

#[test]
fn shingles_that_reach_over_the_wall_at_both_ends_are_a_roof() {
    // 12 in out at each side, its eave 10 in over the siding; lines 5 in apart, then 4 in apart as the
    // siding's are; a hip that leans in by 40 in; each told.
    let eave = |pitch: f64, lean: f64| {
        let across = move |y: f64| (-12.0 + lean * (y - 106.0), 252.0 - lean * (y - 106.0));
        let mut roof = courses("one", (106.0 + pitch, 170.0, pitch), across, &[]);
        roof.push(("one", (-12.0, 106.0), (252.0, 106.0)));
        let (left, right) = across(170.0);
        roof.push(("one", (left, 170.0), (right, 170.0)));
        roof
    };
    for (pitch, lean) in [(5.0, 0.0), (4.0, 0.0), (5.0, 0.625)] {
        let (lines, findings) = lines_of(dxf(&house_under(eave(pitch, lean))).as_bytes());
        assert_eq!(sided(&lines), 1, "{pitch} {lean} {:?}", patches(&lines));
        assert_eq!(told(&findings, LineCode::LinesNoSiding), 1, "{pitch} {lean}");
    }
}

#[test]
fn siding_over_two_doors_with_a_pier_between_is_no_roof() {
    // Siding from 84 to 180 over doors at both ends and the pier between them: it "reaches over" the pier,
    // but under it stand the doors' jambs.
    let doors = [[4.0, -1.0, 40.0, 84.0], [100.0, -1.0, 136.0, 84.0]];
    let mut all = courses("one", (86.0, 180.0, 4.0), |_| (0.0, 140.0), &[]);
    all.extend(courses("one", (2.0, 80.0, 4.0), |_| (44.0, 96.0), &[]));
    for d in doors {
        all.extend(ring("doors", [d[0], 0.0, d[2], d[3] - 4.0]));
    }
    all.push(("one", (0.0, 84.0), (140.0, 84.0)));
    let (lines, _) = lines_of(dxf(&all).as_bytes());
    assert!(lines.hatches.iter().all(|h| h.no_siding.is_none()));
    assert_eq!(sided(&lines), 2);
}

#[test]
fn a_narrow_wall_on_the_levels_of_one_printed_twice_is_siding() {
    // A print that shows two walls through one another: courses 4 in apart from 0 and from 1.4, over 200 in;
    // past the end, on the levels of the first, a wall 24 in wide between its own lines.
    let across = |_: f64| (0.0, 200.0);
    let mut lines = courses("GRAY", (4.0, 99.0, 4.0), across, &[]);
    lines.extend(courses("GRAY", (1.4, 99.0, 4.0), across, &[]));
    lines.extend(courses("GRAY", (4.0, 99.0, 4.0), |_| (206.0, 230.0), &[]));
    lines.extend(ring("BLACK", [0.0, 0.0, 200.0, 100.0]));
    lines.extend(ring("BLACK", [206.0, 0.0, 230.0, 100.0]));
    let (found, _) = lines_of(dxf(&lines).as_bytes());
    let narrow: Vec<f64> = patches(&found).iter().filter(|p| p.0.x0 > 205.0).map(|p| p.1).collect();
    // 24 by 100 between the drawn lines.
    assert_eq!(narrow.len(), 1);
    assert!((narrow[0] - 2400.0).abs() < 24.0, "{narrow:?}");
}

#[test]
fn strokes_of_stone_a_course_under_the_last_line_are_no_course() {
    // Courses 7 in apart from 3 up to 87, 200 wide, between lines at 0 and 90 and corner boards. Under a water
    // table of 3 in, two rows of stone strokes 14 in long with gaps of 8, at -4 and -11: on the levels of the
    // courses. Joints stand at the ends of some.
    let mut lines = courses("one", (3.0, 90.0, 7.0), |_| (4.0, 196.0), &[]);
    for (y, from) in [(-4.0, 5.0), (-11.0, -6.0)] {
        for n in 0..9 {
            let x = from + 22.0 * f64::from(n);
            lines.push(("one", (f64::max(x, 0.0), y), (f64::min(x + 14.0, 200.0), y)));
            if n % 3 == 0 {
                lines.push(("one", (x + 14.0, y - 3.0), (x + 14.0, y + 2.0)));
            }
        }
    }
    for b in [[0.0, 0.0, 4.0, 90.0], [4.0, 0.0, 196.0, 90.0], [196.0, 0.0, 200.0, 90.0]] {
        lines.extend(ring("one", b));
    }
    lines.extend(ring("one", [0.0, -3.0, 200.0, 0.0]));
    lines.extend(ring("one", [0.0, -16.0, 200.0, -3.0]));
    let (found, _) = lines_of(dxf(&lines).as_bytes());
    let areas: Vec<f64> = patches(&found).iter().map(|p| p.1).collect();
    assert_eq!(areas.len(), 1);
    assert!((areas[0] - 192.0 * 90.0).abs() < 1.0, "{areas:?}");
    // A row of piers between windows is no stone: four windows 30 by 4 in, with piers of 20 between them, one
    // course high. Left of the first and right of the last are 6.
    let holes: Vec<[f64; 4]> = (0..4)
        .map(|n| 10.0 + 50.0 * f64::from(n))
        .collect::<Vec<_>>()
        .into_iter()
        .map(|x| [x, 43.0, x + 30.0, 47.0])
        .collect();
    let mut wall = courses("one", (3.0, 90.0, 7.0), |_| (0.0, 200.0), &holes);
    wall.extend(ring("one", [0.0, 0.0, 200.0, 90.0]));
    holes.iter().for_each(|b| wall.extend(ring("one", *b)));
    let (found, _) = lines_of(dxf(&wall).as_bytes());
    let areas: Vec<f64> = patches(&found).iter().map(|p| p.1).collect();
    assert_eq!(areas.len(), 1);
    assert!((areas[0] - (200.0 * 90.0 - 4.0 * 120.0)).abs() < 1.0, "{areas:?}");
}

#[test]
fn level_lines_on_layers_of_notes_are_none_of_siding() {
    // 20 lines 6 in apart, 240 long: section marks and underlines are drawn so too.
    let on = |layer: &'static str| {
        let drawn = courses(layer, (0.0, 120.0, 6.0), |_| (0.0, 240.0), &[]);
        patches(&lines_of(dxf(&drawn).as_bytes()).0).len()
    };
    for layer in ["A-NOTE", "ANNTEXT", "x$0$A-ANNO-SYMB", "wall tags"] {
        assert_eq!(on(layer), 0, "{layer}");
    }
    // Fields are whole words: a texture is no text.
    for layer in ["A-WALL-TEXTURE", "CONTEXT", "0"] {
        assert_eq!(on(layer), 1, "{layer}");
    }
}
