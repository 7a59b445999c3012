//! Trim piece by piece on small walls, every figure reckoned by hand.

use lapwright::cli::job_file;
use lapwright::job::Job;
use lapwright::model::layout::Layout;
use lapwright::model::trim::{TrimEnd, TrimKind, TrimPiece};

use crate::support::{broken, dxf, lay, rect};

fn job(more: &str) -> Job {
    let text = format!("[drawing]\nunit = \"inch\"\n[seams]\neffort = \"crew\"\n{more}");
    job_file::parse(&text, "job").unwrap()
}

fn laid(rings: &[(&str, &[(f64, f64)])], more: &str) -> Layout {
    let l = lay(dxf(rings).as_bytes(), &job(more));
    assert_eq!(broken(&l), Vec::<String>::new());
    l
}

fn of(l: &Layout, kind: TrimKind) -> Vec<&TrimPiece> {
    l.trims.iter().filter(|t| t.kind == kind).collect()
}

fn lengths(l: &Layout, kind: TrimKind) -> Vec<f64> {
    of(l, kind).iter().map(|t| t.length).collect()
}

#[test]
fn a_post_taller_than_stock_is_spliced_by_the_rule() {
    // FACTS SD-54, SD-97: a corner of 20 ft: 240 + 3/4 below - 1/4 short = 240 1/2. Of 10 ft stock
    // with laps of 3/4 (SD-98): 120 + 120 would leave 240.5 + 1.5 - 240 = 2 in; no length under
    // 12 in is cut, so 120, 110 and 12: together 242 = 240.5 + 2 x 3/4.
    let l = laid(&[("A-WALL-OTLN", &rect(0.0, 0.0, 120.0, 240.0))], "");
    let one: Vec<&TrimPiece> =
        of(&l, TrimKind::OutsidePost).into_iter().filter(|t| t.from[0] == 0.0).collect();
    assert_eq!(one.iter().map(|t| t.length).collect::<Vec<_>>(), [120.0, 110.0, 12.0]);
    assert_eq!((one[0].from[1], one[2].to[1]), (-0.75, 239.75));
    // The upper length laps 3/4 over the lower one; 1 in of its flange is cut off, 1/4 left to move.
    assert_eq!(one[1].from[1], one[0].to[1] - 0.75);
    assert_eq!(one[0].ends, [TrimEnd::Square, TrimEnd::Square]);
    assert_eq!(one[1].ends[0], TrimEnd::Splice { lap: 0.75, cut: 1.0 });
    // In one length of 20 ft 6 in there is no splice.
    let l = laid(&[("A-WALL-OTLN", &rect(0.0, 0.0, 120.0, 240.0))], "[trim]\noutside_post = 246\n");
    assert_eq!(lengths(&l, TrimKind::OutsidePost), [240.5; 2]);
}

#[test]
fn a_post_over_an_overhang_is_capped() {
    // The upper storey stands out 12 in on either side of the lower one (FACTS SD-101).
    let l = laid(
        &[
            ("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 96.0)),
            ("A-WALL-OTLN", &rect(-12.0, 100.0, 252.0, 196.0)),
        ],
        "",
    );
    let feet: Vec<(f64, bool)> = of(&l, TrimKind::OutsidePost)
        .iter()
        .map(|t| (t.from[0], t.ends[0] == TrimEnd::Capped))
        .collect();
    // The elevation begins at its leftmost wall point: 12 in more.
    assert_eq!(feet, [(0.0, true), (264.0, true), (12.0, false), (252.0, false)]);
}

/// An L: the front's left half stands back; an inside corner is drawn where they meet.
fn with_inside_corner(more: &str) -> Layout {
    let line = [(120.0, 0.0), (120.0, 96.0)];
    let text = dxf(&[
        ("A-WALL-OTLN", &rect(0.0, 0.0, 120.0, 96.0)),
        ("A-WALL-OTLN", &rect(500.0, 0.0, 560.0, 96.0)),
    ]);
    // Corner lines are open: two polylines put in by hand.
    let open = |x: f64| {
        format!(
            "0\nPOLYLINE\n8\nA-WALL-CNRI\n66\n1\n70\n0\n0\nVERTEX\n8\nA-WALL-CNRI\n10\n{x}\n20\n{}\n0\nVERTEX\n8\nA-WALL-CNRI\n10\n{x}\n20\n{}\n0\nSEQEND\n",
            line[0].1, line[1].1
        )
    };
    let lines = format!("{}{}0\nENDSEC\n0\nEOF\n", open(120.0), open(500.0));
    let text = text.replace("0\nENDSEC\n0\nEOF\n", &lines);
    let views = "[[elevation]]\nname = \"FRONT\"\nregion = [-50.0, -50.0, 200.0, 150.0]\n[[elevation]]\nname = \"LEFT\"\nregion = [450.0, -50.0, 700.0, 150.0]\n";
    let l = lay(text.as_bytes(), &job(&format!("{more}{views}")));
    assert_eq!(broken(&l), Vec::<String>::new());
    l
}

#[test]
fn an_inside_corner_is_a_post_or_one_or_two_channels() {
    // FACTS SD-100. The front's right side and the left side of the wall that faces left are one
    // corner: the wall turns towards who looks at it.
    let l = with_inside_corner("");
    assert_eq!(lengths(&l, TrimKind::InsidePost), [96.5]);
    assert_eq!(of(&l, TrimKind::InsidePost)[0].shared_with.as_deref(), Some("LEFT"));
    let l = with_inside_corner("[trim]\ninside_corner = \"one-channel\"\n");
    assert_eq!(of(&l, TrimKind::InsidePost).len(), 0);
    let one = of(&l, TrimKind::CornerChannel);
    assert_eq!((one.len(), one[0].length, one[0].elevation.as_str()), (1, 96.5, "LEFT"));
    let l = with_inside_corner("[trim]\ninside_corner = \"two-channels\"\n");
    let two = of(&l, TrimKind::CornerChannel);
    assert_eq!(two.len(), 2);
    assert!(two.iter().all(|t| t.length == 96.5 && t.shared_with.is_none()));
    assert!(two[0].elevation != two[1].elevation);
}

#[test]
fn a_frame_is_mitred_or_square() {
    // FACTS SD-104: a 36 x 48 opening in 3/4 channel: 37 1/2 and 49 1/2, mitred at 45 degrees, the
    // head's ends and the jambs' feet tabbed by 3/4 (SD-105).
    let rings: [(&str, &[(f64, f64)]); 2] = [
        ("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 100.0)),
        ("A-GLAZ", &rect(100.0, 30.0, 136.0, 78.0)),
    ];
    let l = laid(&rings, "");
    assert_eq!(lengths(&l, TrimKind::HeadChannel), [37.5]);
    assert_eq!(lengths(&l, TrimKind::SillChannel), [37.5]);
    assert_eq!(lengths(&l, TrimKind::JambChannel), [49.5; 2]);
    let (plain, tabbed) = (TrimEnd::Mitre(45.0), TrimEnd::MitreTab { angle: 45.0, tab: 0.75 });
    assert_eq!(of(&l, TrimKind::HeadChannel)[0].ends, [tabbed.clone(), tabbed.clone()]);
    assert_eq!(of(&l, TrimKind::JambChannel)[0].ends, [tabbed, plain.clone()]);
    assert_eq!(of(&l, TrimKind::SillChannel)[0].ends, [plain.clone(), plain]);
    // Square: jambs between sill and head, 48, and a tab of 3/4 down into the sill's channel.
    let l = laid(&rings, "[trim]\nframe = \"square\"\n");
    assert_eq!(lengths(&l, TrimKind::HeadChannel), [37.5]);
    assert_eq!(lengths(&l, TrimKind::SillChannel), [37.5]);
    assert_eq!(lengths(&l, TrimKind::JambChannel), [48.75; 2]);
    assert_eq!(of(&l, TrimKind::JambChannel)[0].ends, [TrimEnd::Tab(0.75), TrimEnd::Square]);
}

#[test]
fn rake_channels_are_mitred_at_the_peak_and_plumb_at_the_foot() {
    // FACTS WY-05: 24 ft span at 4 in 12, rake 151 13/16; atan(4/12) = 18.435 degrees. At the peak two
    // pieces meet at 180 - 2 x 18.435; half of what is missing to straight: 18.435 off square. A plumb
    // foot is off square by the rake's own angle.
    let wall = [(0.0, 0.0), (288.0, 0.0), (288.0, 96.0), (144.0, 144.0), (0.0, 96.0)];
    let l = laid(&[("A-WALL-OTLN", &wall)], "");
    let rakes = of(&l, TrimKind::RakeChannel);
    let whole: f64 = rakes.iter().map(|t| t.length).sum();
    // Of 150 in stock each is lapped once, by one face of 3/4.
    assert!((whole - 2.0 * (151.789 + 0.75)).abs() < 0.02, "{whole}");
    let cuts: Vec<f64> = rakes
        .iter()
        .flat_map(|t| &t.ends)
        .filter_map(|e| if let TrimEnd::Mitre(a) = e { Some(*a) } else { None })
        .collect();
    assert_eq!(cuts.len(), 4);
    assert!(cuts.iter().all(|a| (a - 18.435).abs() < 0.01), "{cuts:?}");
}
