//! Sizes that tags and names of blocks state, beside the openings that are drawn.

use std::fmt::Write;

use lapwright::finding::Findings;
use lapwright::pipeline;

use crate::support::{inches, rect, said};

const GLASS: &str = "A-GLAZ";

fn ring(layer: &str, [x0, y0, x1, y1]: [f64; 4]) -> String {
    let mut out = format!("0\nLWPOLYLINE\n8\n{layer}\n90\n4\n70\n1\n");
    for (x, y) in rect(x0, y0, x1, y1) {
        let _ = write!(out, "10\n{x}\n20\n{y}\n");
    }
    out
}

/// A window of that size with its left foot at `x`, 30 and its tag in it.
fn tagged(x: f64, width: f64, height: f64, tag: &str) -> String {
    let at = (x + 8.0, 50.0);
    ring(GLASS, [x, 30.0, x + width, 30.0 + height])
        + &format!("0\nTEXT\n8\nA-GLAZ-IDEN\n10\n{}\n20\n{}\n40\n5\n1\n{tag}\n", at.0, at.1)
}

/// What is said of sizes on a wall 50 ft by 10 ft with these windows, and blocks defined.
fn told(blocks: &[(&str, [f64; 2])], entities: &str) -> Vec<String> {
    let defined: String = blocks
        .iter()
        .map(|(name, [w, h])| {
            let outline = ring("0", [0.0, 0.0, *w, *h]);
            format!("0\nBLOCK\n8\n0\n2\n{name}\n70\n0\n10\n0\n20\n0\n{outline}0\nENDBLK\n8\n0\n")
        })
        .collect();
    let wall = ring("A-WALL-OTLN", [0.0, 0.0, 600.0, 120.0]);
    let text = format!(
        "0\nSECTION\n2\nBLOCKS\n{defined}0\nENDSEC\n0\nSECTION\n2\nENTITIES\n{wall}{entities}0\nENDSEC\n0\nEOF\n"
    );
    let mut findings = Findings::default();
    let read = pipeline::reading(text.as_bytes(), "d.dxf", &inches(), &mut findings);
    assert!(read.is_ok());
    let of = |f: &&lapwright::finding::Finding| f.code().word() == "opening-size-disagrees";
    findings.all().iter().filter(of).map(said).collect()
}

fn insert(name: &str, x: f64, y: f64) -> String {
    format!("0\nINSERT\n8\n{GLASS}\n2\n{name}\n10\n{x}\n20\n{y}\n")
}

#[test]
fn a_window_that_is_not_of_its_tags_size_is_told_once_for_all_alike() {
    // 3040 is 36 by 48. Two are drawn so; two are 30 wide: 6 too few.
    let good = tagged(20.0, 36.0, 48.0, "3040") + &tagged(80.0, 36.0, 48.0, "3040");
    assert_eq!(told(&[], &good), Vec::<String>::new());
    let odd = good
        + &tagged(140.0, 36.0, 48.0, "3040")
        + &tagged(200.0, 30.0, 48.0, "3040")
        + &tagged(260.0, 30.0, 48.0, "3040");
    assert_eq!(
        told(&[], &odd),
        ["3040 is 3'-0\" x 4'-0\", but 2 openings with it are drawn 2'-6\" x 4'-0\""]
    );
}

#[test]
fn drawn_casing_and_pairs_agree_with_their_sizes() {
    // Casings of 4 in at three sides; a pair of 36 by 48 in one outline with a mullion of 2.
    let cased = tagged(20.0, 44.0, 52.0, "36x48") + &tagged(120.0, 74.0, 48.0, "36x48");
    assert_eq!(told(&[], &cased), Vec::<String>::new());
    // Where three are drawn with casings, one drawn as large as its size is odd: 8 in narrower.
    let alike: String =
        [20.0, 100.0, 180.0].iter().map(|x| tagged(*x, 44.0, 52.0, "36x48")).collect();
    assert_eq!(told(&[], &(alike + &tagged(260.0, 36.0, 48.0, "36x48"))).len(), 1);
}

#[test]
fn figures_that_number_the_openings_are_no_sizes() {
    // As sizes 1025 to 1027 are 12 by 29 to 31: no window is drawn so.
    let numbered: String = [("1025", 20.0), ("1026", 100.0), ("1027", 180.0)]
        .iter()
        .map(|(tag, x)| tagged(*x, 36.0, 48.0, tag))
        .collect();
    assert_eq!(told(&[], &numbered), Vec::<String>::new());
    // Nor is a maker's number with letters before its figures.
    assert_eq!(told(&[], &tagged(20.0, 30.0, 50.0, "AX281")), Vec::<String>::new());
}

#[test]
fn names_of_blocks_state_sizes_too() {
    let blocks = [("Awning 36x48", [36.0, 48.0]), ("Fixed - 24_ x 30-1_2_-77", [30.0, 48.0])];
    let entities =
        insert("Awning 36x48", 20.0, 30.0) + &insert("Fixed - 24_ x 30-1_2_-77", 100.0, 30.0);
    // 24 by 30 1/2, drawn 30 by 48: 17 1/2 too high for any casing.
    assert_eq!(
        told(&blocks, &entities),
        ["24_ x 30-1_2_ is 2'-0\" x 2'-6 1/2\", but 1 opening with it is drawn 2'-6\" x 4'-0\""]
    );
}
