//! Boards by their own rules, reckoned by hand: nails, clearances over roofs and ledges, starter pieces.

use lapwright::job::Job;
use lapwright::job::file as job_file;
use lapwright::layout::Layout;
use lapwright::model::fastening::LayerKind;
use lapwright::model::house::EdgeKind;
use lapwright::model::item::{Item, SidingPiece};
use lapwright::model::receiver::Receiver;
use lapwright::model::trim::TrimKind;

use crate::support::{broken, dxf, lay, rect};

fn job(kind: &str, more: &str) -> Job {
    let text = format!(
        "[drawing]\nunit = \"inch\"\n[seams]\neffort = \"crew\"\n[product]\nkind = \"{kind}\"\n{more}"
    );
    job_file::parse(&text, "job").unwrap()
}

fn nail(layout: &Layout) -> f64 {
    let line = layout.takeoff.iter().find(|l| l.id == "panel-nails").unwrap();
    let Item::SidingNails { piece: SidingPiece::Board, length } = line.item else {
        panic!("{:?}", line.item)
    };
    length
}

#[test]
fn fiber_cement_is_nailed_through_its_sheathing_into_studs() {
    // NailFact::FiberCementPenetration (IBC 1405.16): 1 in into studs. Board 5/16, sheathing 7/16: 1 3/4
    // in all. Over 1 in of foam board 2 3/4; over sheathing of 5/8 in 1 15/16, so 2 in.
    let wall = rect(0.0, 0.0, 120.0, 42.0);
    let drawn = dxf(&[("A-WALL-OTLN", &wall)]);
    let of = |more: &str| lay(drawn.as_bytes(), &job("fiber-cement", more));
    for (more, length) in [
        ("", 1.75),
        ("[fasteners]\nfoam_board = 1\n", 2.75),
        ("[fasteners]\nsheathing = 0.625\n", 2.0),
        ("[fasteners]\nsheathing = 0\n", 1.5),
    ] {
        assert_eq!(nail(&of(more)), length, "{more}");
    }
    let layers: Vec<(LayerKind, f64)> =
        of("").fastening.layers.iter().map(|l| (l.layer, l.thickness)).collect();
    let by_hand =
        [(LayerKind::Board, 0.3125), (LayerKind::Sheathing, 0.4375), (LayerKind::Studs, 1.0)];
    assert_eq!(layers, by_hand);
    // Wood goes 1 1/2 in into sheathing and stud together (Example::NailsThroughBoards): 2 in.
    assert_eq!(nail(&lay(drawn.as_bytes(), &job("wood", ""))), 2.0);
    let refused =
        job_file::parse("[product]\nkind = \"wood\"\n[fasteners]\nsheathing = 0.5\n", "j");
    assert!(crate::support::said(&refused.unwrap_err().0).contains("fasteners.sheathing"));
}

/// A wall of 20 x 9 ft on a ledge of stone 24 in high, and a level roof 60 in wide and 40 in high
/// before its right end.
fn ledge_and_roof() -> String {
    let wall = rect(0.0, 0.0, 240.0, 108.0);
    let (stone, roof) = (rect(0.0, 0.0, 180.0, 24.0), rect(180.0, 0.0, 240.0, 40.0));
    dxf(&[("A-WALL-OTLN", &wall), ("A-WALL-BASE", &stone), ("A-ROOF-OTLN", &roof)])
}

fn heights(layout: &Layout, kind: EdgeKind) -> Vec<f64> {
    let edges = layout.walls().flat_map(|(_, w)| &w.edges);
    edges.filter(|e| e.kind == kind).map(|e| e.from[1]).collect()
}

#[test]
fn boards_keep_their_own_room_over_roofs_and_stone() {
    let drawn = ledge_and_roof();
    for (kind, more, stone, roof) in [
        // TrimFact::BoardRoofClearance (Ontario Building Code 9.27.2.4: 50 mm), TrimFact::LedgeClearance.
        ("fiber-cement", "", 24.25, 42.0),
        ("wood", "", 24.25, 42.0),
        ("wood", "[courses]\nclear_of_roof = 1\nclear_of_ledge = 0.5\n", 24.5, 41.0),
        // TrimFact::RoofClearance: 1/2 in for vinyl; its starter stands on the stone.
        ("vinyl", "", 24.0, 40.5),
        ("steel", "", 24.0, 40.5),
        ("vinyl", "[courses]\nclear_of_ledge = 0.5\n", 24.5, 40.5),
    ] {
        let layout = lay(drawn.as_bytes(), &job(kind, more));
        assert_eq!(broken(&layout), Vec::<String>::new(), "{kind} {more}");
        assert_eq!(heights(&layout, EdgeKind::BareTop), [stone], "{kind} {more}");
        assert_eq!(heights(&layout, EdgeKind::LowerRoof), [roof], "{kind} {more}");
        crate::recount::check(&crate::recount::written(&layout), kind);
    }
}

#[test]
fn a_starter_piece_lies_under_every_first_board() {
    // On stone and over the level roof boards start as well, on a course line or not: 180 and 60 in.
    // Boards, and the piece under them, end at the corner boards, 3 1/2 in wide at both outside corners:
    // 176 1/2 and 56 1/2 in of starter piece, whose lengths butt one another and the boards.
    let layout = lay(ledge_and_roof().as_bytes(), &job("fiber-cement", ""));
    let starts = layout.walls().flat_map(|(_, w)| &w.edges);
    let starts = starts.filter(|e| e.receiver == Receiver::Starter);
    let widths: f64 = starts.map(|e| (e.to[0] - e.from[0]).abs()).sum();
    assert!((widths - 233.0).abs() < 0.01, "{widths}");
    let line = layout.takeoff.iter().find(|l| l.id == "starter-strip").unwrap();
    assert!((line.length.unwrap() - 233.0).abs() < 0.01, "{:?}", line.length);
}

#[test]
fn corner_boards_stand_from_the_lowest_butt_line_to_the_soffit() {
    // A wall of 108 in: boards butt the soffit and stand even with the first board's butt: 108 in. A post
    // hangs 1/4 in short of it and runs 3/4 in below the starter: 108 1/2 (TrimFact::PostTopGap,
    // TrimFact::PostPastStarter). The job goes before either.
    let drawn = dxf(&[("A-WALL-OTLN", &rect(0.0, 0.0, 120.0, 108.0))]);
    let told = "[trim]\npost_top_gap = 0.5\npost_below = 0.25\nstarter_gap = 0.125\n";
    for (kind, more, post, starter) in [
        // Between corner boards 3 1/2 in wide 113 in are left, between posts' pockets 2 in off 116.
        ("fiber-cement", "", 108.0, 113.0),
        ("wood", "", 108.0, 113.0),
        ("wood", told, 107.75, 112.75),
        ("vinyl", "", 108.5, 115.5),
        ("vinyl", told, 107.75, 115.75),
    ] {
        let layout = lay(drawn.as_bytes(), &job(kind, more));
        assert_eq!(broken(&layout), Vec::<String>::new(), "{kind} {more}");
        let long = |k: TrimKind| -> Vec<f64> {
            layout.trims.iter().filter(|t| t.kind == k).map(|t| t.length).collect()
        };
        assert_eq!(long(TrimKind::OutsidePost), [post; 2], "{kind} {more}");
        assert_eq!(long(TrimKind::Starter), [starter], "{kind} {more}");
    }
}
