//! Drawings whose every layer is off or frozen, as some converters write them.

use lapwright::finding::{Findings, Severity};
use lapwright::model::house::House;
use lapwright::pipeline;

use crate::support::{advised, dxf, inches, rect, said};

const WALL: &str = "A-WALL-OTLN";
const GLASS: &str = "A-GLAZ";

/// A table of layers: name, flags (1 frozen), color (below 0 off).
fn table(layers: &[(&str, i32, i32)]) -> String {
    let rows: String = layers
        .iter()
        .map(|(name, flags, color)| format!("0\nLAYER\n2\n{name}\n70\n{flags}\n62\n{color}\n"))
        .collect();
    format!("0\nSECTION\n2\nTABLES\n0\nTABLE\n2\nLAYER\n70\n1\n{rows}0\nENDTAB\n0\nENDSEC\n")
}

/// A wall 20 ft by 8 ft with a window 36 by 40, and more entities.
fn drawing(layers: &[(&str, i32, i32)], more: &str) -> String {
    let rings =
        dxf(&[(WALL, &rect(0.0, 0.0, 240.0, 96.0)), (GLASS, &rect(60.0, 32.0, 96.0, 72.0))]);
    table(layers) + &rings.replace("0\nENDSEC\n", &format!("{more}0\nENDSEC\n"))
}

fn read(text: &str) -> (Option<House>, Findings) {
    let mut findings = Findings::default();
    let read = pipeline::reading(text.as_bytes(), "d.dxf", &inches(), &mut findings);
    (read.ok().map(|r| r.house), findings)
}

/// Openings of the house's walls.
fn openings(house: &House) -> usize {
    house.elevations.iter().flat_map(|e| &e.walls).map(|w| w.openings.len()).sum()
}

/// What is said of layers that are off.
fn told(findings: &Findings) -> Vec<String> {
    let of = ["layers-all-off", "layer-hidden"];
    findings.all().iter().filter(|f| of.contains(&f.code().word())).map(said).collect()
}

#[test]
fn layers_that_are_all_off_or_frozen_are_read_and_it_is_said_once() {
    let unused = ("SITE", 0, 7);
    for layers in [
        // All off, all frozen, one of each; a layer with nothing on it may be on.
        [(WALL, 0, -7), (GLASS, 0, -3), unused],
        [(WALL, 1, 7), (GLASS, 1, 3), unused],
        [(WALL, 0, -7), (GLASS, 1, 3), unused],
    ] {
        let (house, findings) = read(&drawing(&layers, ""));
        assert_eq!(openings(&house.unwrap()), 1);
        assert_eq!(
            told(&findings),
            [
                "all 2 layers with something drawn on them are off or frozen: reading them, as a converter may have switched them off"
            ]
        );
        let finding = findings.all().iter().find(|f| f.code().word() == "layers-all-off").unwrap();
        assert_eq!(finding.severity(), Severity::Warning);
        assert!(advised(finding).contains("`ignore`"));
    }
}

#[test]
fn one_layer_that_is_on_keeps_the_others_off() {
    let line = "0\nLINE\n8\nSITE\n10\n0\n20\n-40\n11\n240\n21\n-40\n";
    let layers = [(WALL, 0, -7), (GLASS, 0, -3), ("SITE", 0, 7)];
    let (house, findings) = read(&drawing(&layers, line));
    assert!(house.is_none());
    assert_eq!(told(&findings).len(), 2, "{:?}", told(&findings));
    assert!(told(&findings)[0].contains("left out: 1 item"));
}

#[test]
fn words_and_points_of_dimensions_alone_do_not_make_a_layer_shown() {
    // A text on a layer that is on, and a line on the layer that is never plotted.
    let more = "0\nTEXT\n8\nNOTES\n10\n0\n20\n-40\n40\n6\n1\nFRONT\n0\nLINE\n8\nDefpoints\n10\n0\n20\n-40\n11\n9\n21\n-40\n";
    let layers = [(WALL, 0, -7), (GLASS, 0, -3), ("NOTES", 0, 7), ("Defpoints", 0, 7)];
    let (house, findings) = read(&drawing(&layers, more));
    assert_eq!(openings(&house.unwrap()), 1);
    assert_eq!(told(&findings).len(), 1);
}

#[test]
fn what_is_flagged_invisible_stays_so_in_a_drawing_that_is_all_off() {
    // A second window, flagged invisible by group 60; and one in a block that is.
    let side = |x: f64| {
        let r = rect(x, 32.0, x + 36.0, 72.0);
        let corners: String = r.iter().map(|(x, y)| format!("10\n{x}\n20\n{y}\n")).collect();
        format!("90\n4\n70\n1\n{corners}")
    };
    let own = format!("0\nLWPOLYLINE\n8\n{GLASS}\n60\n1\n{}", side(120.0));
    let insert = format!("0\nINSERT\n8\n{GLASS}\n60\n1\n2\nSASH\n10\n0\n20\n0\n");
    let block = format!(
        "0\nSECTION\n2\nBLOCKS\n0\nBLOCK\n8\n0\n2\nSASH\n70\n0\n10\n0\n20\n0\n0\nLWPOLYLINE\n8\n0\n{}0\nENDBLK\n8\n0\n0\nENDSEC\n",
        side(180.0)
    );
    let text = drawing(&[(WALL, 0, -7), (GLASS, 0, -3)], &format!("{own}{insert}"));
    let text =
        text.replacen("0\nSECTION\n2\nENTITIES\n", &format!("{block}0\nSECTION\n2\nENTITIES\n"), 1);
    let (house, _) = read(&text);
    assert_eq!(openings(&house.unwrap()), 1);
    // Without the flags all three are cut.
    let (house, _) = read(&text.replace("60\n1\n", ""));
    assert_eq!(openings(&house.unwrap()), 3);
}
