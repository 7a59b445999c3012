//! Titles of views by their place and words: in and under windows of a sheet, in model space, in several
//! languages.

use std::fmt::Write;

use lapwright::finding::Findings;
use lapwright::layout::Layout;
use lapwright::pipeline;

use crate::support::{inches, lay, rect, said};

const WALL: &str = "A-WALL-OTLN";

fn ring(points: &[(f64, f64)]) -> String {
    let mut out = format!("0\nLWPOLYLINE\n8\n{WALL}\n90\n{}\n70\n1\n", points.len());
    for (x, y) in points {
        let _ = write!(out, "10\n{x}\n20\n{y}\n");
    }
    out
}

fn text(paper: bool, layer: &str, (x, y): (f64, f64), height: f64, words: &str) -> String {
    let paper = if paper { "67\n1\n" } else { "" };
    format!("0\nTEXT\n8\n{layer}\n{paper}10\n{x}\n20\n{y}\n40\n{height}\n1\n{words}\n")
}

/// A window at 1/48: its number, its middle on the sheet, its size there, its middle in the model.
fn window(number: i32, paper: (f64, f64), size: (f64, f64), model: (f64, f64)) -> String {
    format!(
        "0\nVIEWPORT\n8\n0\n67\n1\n69\n{number}\n10\n{}\n20\n{}\n40\n{}\n41\n{}\n12\n{}\n22\n{}\n45\n{}\n",
        paper.0,
        paper.1,
        size.0,
        size.1,
        model.0,
        model.1,
        48.0 * size.1
    )
}

/// The sheet itself as a window, by whatever number.
fn sheet(number: i32) -> String {
    format!(
        "0\nVIEWPORT\n8\n0\n67\n1\n69\n{number}\n10\n6\n20\n4.5\n40\n12\n41\n9\n12\n6\n22\n4.5\n45\n9\n"
    )
}

fn drawing(entities: &str) -> String {
    format!("0\nSECTION\n2\nENTITIES\n{entities}0\nENDSEC\n0\nEOF\n")
}

fn laid(entities: &str) -> Layout {
    lay(drawing(entities).as_bytes(), &inches())
}

/// Names of the elevations, left to right or in wrap order.
fn names(entities: &str) -> Vec<String> {
    laid(entities).elevations.iter().map(|e| e.name.to_string()).collect()
}

/// A wall 20 ft by 8 ft with its left foot at `x`, 0.
fn wall(x: f64) -> String {
    ring(&rect(x, 0.0, x + 240.0, 96.0))
}

/// Twenty notes on a sheet: what a title is told from by its size.
fn notes(paper: bool, height: f64) -> String {
    (0..20)
        .map(|n| text(paper, "G-NOTE", (40.0, f64::from(n) * 2.0 * height), height, "CAULK"))
        .collect()
}

#[test]
fn titles_in_and_under_windows_name_what_these_show_whatever_number_they_have() {
    // At 1/48 the walls are 5 by 2 on the sheet. The window with number 1 shows the wall at the
    // left: a converter numbered the windows anew, and the sheet itself is number 2. Its title stands under
    // it at the left end; the other's in its corner, far left of its wall.
    for (left, own) in [(1, 2), (3, 1)] {
        let entities = wall(0.0)
            + &wall(1000.0)
            + &window(left, (4.0, 3.0), (7.0, 4.0), (120.0, 48.0))
            + &sheet(own)
            + &window(4, (20.0, 3.0), (14.0, 4.0), (1000.0, 48.0))
            + &text(true, "G-TTLB", (0.6, 0.8), 0.1, "East Elevation")
            + &text(true, "G-TTLB", (13.2, 1.1), 0.1, "South Elevation (Street Side)")
            // The title block beside the windows names the sheet.
            + &text(true, "G-TTLB", (28.0, 1.0), 0.3, "Elevations - South & East")
            + &notes(true, 0.1);
        assert_eq!(names(&entities), ["South Elevation (Street Side)", "East Elevation"]);
    }
}

#[test]
fn walls_that_two_windows_show_are_two_views_however_near_they_stand() {
    // 60 in apart: without windows they are one view of two walls.
    let walls = wall(0.0) + &wall(300.0);
    assert_eq!(names(&walls), ["elevation"]);
    let windows = window(2, (4.0, 3.0), (5.6, 4.0), (120.0, 48.0))
        + &window(3, (14.0, 3.0), (5.6, 4.0), (420.0, 48.0))
        + &text(true, "T", (2.0, 0.7), 0.2, "VORDERANSICHT")
        + &text(true, "T", (12.0, 0.7), 0.2, "SEITENANSICHT RECHTS");
    let l = laid(&(walls + &windows));
    let names: Vec<&str> = l.elevations.iter().map(|e| e.name.as_str()).collect();
    assert_eq!(names, ["VORDERANSICHT", "SEITENANSICHT RECHTS"]);
    assert!(l.elevations.iter().all(|e| e.walls.len() == 1));
}

#[test]
fn a_title_as_small_as_the_notes_is_read_by_its_words_and_place() {
    // Titles 6 high among notes 6 high; the larger name of the sheet and a level's height are none.
    let entities = wall(0.0)
        + &wall(500.0)
        + &text(false, "NOTES", (80.0, -30.0), 6.0, "FACHADA NORTE")
        + &text(false, "NOTES", (580.0, -30.0), 6.0, "FACHADA SUR")
        + &text(false, "NOTES", (120.0, -20.0), 12.0, "ELEVATIONS NORTH & SOUTH")
        + &text(false, "NOTES", (620.0, -10.0), 12.0, "ELEVATION 100'-0\"")
        + &notes(false, 6.0).replace("10\n40\n", "10\n2000\n");
    // In wrap order.
    assert_eq!(names(&entities), ["FACHADA SUR", "FACHADA NORTE"]);
}

#[test]
fn a_side_and_its_view_in_two_lines_are_one_title() {
    let two = |x: f64, side: &str| {
        text(false, "T", (x, -20.0), 8.0, side) + &text(false, "T", (x, -33.0), 8.0, "ELEVATION")
    };
    let entities = wall(0.0) + &wall(500.0) + &two(60.0, "REAR") + &two(560.0, "LEFT SIDE");
    assert_eq!(names(&entities), ["REAR ELEVATION", "LEFT SIDE ELEVATION"]);
    // A side alone under the walls names them; the same words beside a window do not.
    let alone = wall(0.0)
        + &wall(500.0)
        + &text(false, "T", (60.0, -20.0), 8.0, "HINTEN")
        + &text(false, "T", (560.0, 40.0), 8.0, "LEFT");
    assert_eq!(names(&alone), ["HINTEN", "elevation 2"]);
}

#[test]
fn sides_in_other_languages_put_the_elevations_in_order_round_the_house() {
    // Drawn north, west, south, east; seen from outside the order is south, east, north, west.
    for titles in [
        ["Elewacja północna", "Elewacja zachodnia", "Elewacja południowa", "Elewacja wschodnia"],
        ["PROSPETTO NORD", "PROSPETTO OVEST", "PROSPETTO SUD", "PROSPETTO EST"],
        [
            "Alçado posterior",
            "Alçado lateral esquerdo",
            "Alçado principal",
            "Alçado lateral direito",
        ],
        ["ACHTERGEVEL", "LINKERZIJGEVEL", "VOORGEVEL", "RECHTERZIJGEVEL"],
    ] {
        let entities: String = titles
            .iter()
            .zip([0.0, 500.0, 1000.0, 1500.0])
            .map(|(t, x)| wall(x) + &text(false, "T", (x + 60.0, -30.0), 10.0, t))
            .collect();
        let l = laid(&entities);
        let names: Vec<&str> = l.elevations.iter().map(|e| e.name.as_str()).collect();
        assert_eq!(names, [titles[2], titles[3], titles[0], titles[1]]);
        // Four walls of one height round a house: four corners, each told by both elevations.
        assert_eq!(l.corners.len(), 4, "{titles:?}");
    }
}

#[test]
fn an_elevation_of_a_room_is_left_alone_and_told() {
    let entities = wall(0.0)
        + &wall(500.0)
        + &text(false, "T", (60.0, -30.0), 10.0, "FRONT ELEVATION")
        + &text(false, "T", (560.0, -30.0), 10.0, "KITCHEN ELEVATION");
    let mut findings = Findings::default();
    let text = drawing(&entities);
    let read = pipeline::reading(text.as_bytes(), "d.dxf", &inches(), &mut findings).unwrap();
    assert_eq!(read.house.elevations.len(), 1);
    let told = findings.all().iter().find(|f| f.code().word() == "view-left-alone").map(said);
    assert!(told.unwrap().starts_with("KITCHEN ELEVATION: by its title an elevation of a room"));
}

#[test]
fn a_title_far_under_its_view_and_left_of_it_names_the_nearest_view_over_it() {
    // Printed sheets: walls 240 by 96 in two rows, 700 apart; titles 190 under their walls, past ground and
    // marks, and 110 left of them, farther than the 96 in that notes belong to walls.
    let row = |y: f64| {
        let at = |x: f64| ring(&rect(x, y, x + 240.0, y + 96.0));
        at(0.0) + &at(700.0)
    };
    let titled = |x: f64, y: f64, words: &str| text(false, "T", (x - 110.0, y - 190.0), 6.0, words);
    let entities = row(0.0)
        + &row(700.0)
        + &titled(0.0, 0.0, "South Elevation")
        + &titled(700.0, 0.0, "East Elevation")
        + &titled(0.0, 700.0, "North Elevation")
        + &titled(700.0, 700.0, "West Elevation")
        // The name of the sheet goes on in a second line.
        + &text(false, "T", (100.0, -150.0), 18.0, "Elevations - South &");
    let found = names(&entities);
    assert_eq!(found, ["South Elevation", "East Elevation", "North Elevation", "West Elevation"]);
}
