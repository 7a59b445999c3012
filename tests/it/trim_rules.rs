//! Trim piece by piece on small walls, every figure reckoned by hand.

use lapwright::job::file as job_file;
use lapwright::layout::Layout;
use lapwright::layout::rule::Rule;
use lapwright::model::trim::{TrimEnd, TrimKind, TrimPiece};

use crate::small_walls::{job, laid, lengths, of};
use crate::support::{broken, broken_rules, dxf, lay, rect};

#[test]
fn a_post_taller_than_stock_is_spliced_by_the_rule() {
    // TrimFact::PostTopGap, TrimFact::PostPastStarter: a corner of 20 ft: 240 + 3/4 below - 1/4 short
    // = 240 1/2. Of 10 ft stock with laps of 3/4 (TrimFact::PostSplice): 120 + 120 would leave 240.5
    // + 1.5 - 240 = 2 in; no length under 12 in is cut, so 120, 110 and 12: together 242 = 240.5 + 2
    // x 3/4.
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
fn a_post_gives_up_its_tail_where_that_saves_a_splice() {
    // A corner of 10 ft: 120 - 1/4 short = 119 3/4 over the starter's lower edge; one length of 120 leaves
    // 1/4 in of the 3/4 below it.
    let posts = |high: f64| -> Vec<(f64, f64)> {
        let l = laid(&[("A-WALL-OTLN", &rect(0.0, 0.0, 120.0, high))], "");
        let all = of(&l, TrimKind::OutsidePost).into_iter().filter(|t| t.from[0] == 0.0);
        all.map(|t| (t.from[1], t.length)).collect()
    };
    assert_eq!(posts(120.0), [(-0.25, 120.0)]);
    // Nor is it cut above that edge: 120 1/2 - 1/4 = 120 1/4 takes a splice, and has its whole tail.
    assert_eq!(posts(120.5), [(-0.75, 109.75), (108.25, 12.0)]);
    // Two lengths lap 3/4: 239 1/4 of both. A corner of 239 takes 238 3/4, and has 1/2 in of its tail.
    assert_eq!(posts(239.0), [(-0.5, 120.0), (118.75, 120.0)]);
}

#[test]
fn a_post_over_an_overhang_is_capped() {
    // The upper story stands out 12 in on either side of the lower one (TrimFact::PostCap).
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
    let caps = l.takeoff.iter().find(|t| t.id == "post-cap").unwrap();
    assert_eq!((caps.order, caps.counts.len()), (2.0, 2));
}

/// An L: the front's left half stands back; an inside corner is drawn where they meet.
fn with_inside_corner(more: &str) -> Layout {
    with_corner_over(0.0, more)
}

/// The same with stone up to `stone` on the wall that faces left.
fn with_corner_over(stone: f64, more: &str) -> Layout {
    let line = [(120.0, 0.0), (120.0, 96.0)];
    let walls = [
        ("A-WALL-OTLN", rect(0.0, 0.0, 120.0, 96.0)),
        ("A-WALL-OTLN", rect(500.0, 0.0, 560.0, 96.0)),
        ("A-WALL-BASE", rect(500.0, 0.0, 560.0, stone)),
    ];
    let shown = if stone > 0.0 { 3 } else { 2 };
    let rings: Vec<(&str, &[(f64, f64)])> =
        walls[..shown].iter().map(|(l, r)| (*l, r.as_slice())).collect();
    let text = dxf(&rings);
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
    // TrimFact::InsideCorner. The front's right side and the left side of the wall that faces left
    // are one corner: the wall turns towards who looks at it.
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
    let boards = "[product]\nkind = \"wood\"\n[trim]\ninside_corner = \"one-channel\"\n";
    let refused = job_file::parse(boards, "job").unwrap_err();
    assert!(crate::support::said(&refused.0).contains("inside_corner"));
    assert!(two.iter().all(|t| t.length == 96.5 && t.shared_with.is_none()));
    assert!(two[0].elevation != two[1].elevation);
    // Over stone 42 high on one wall its channel is 54 + 3/4 - 1/4; behind both stands one sheet of
    // flashing as high as the corner (TrimFact::CornerFlashing).
    let l = with_corner_over(42.0, "[trim]\ninside_corner = \"two-channels\"\n");
    let mut heights = lengths(&l, TrimKind::CornerChannel);
    heights.sort_by(f64::total_cmp);
    assert_eq!(heights, [54.5, 96.5]);
    let sheets = |l: &Layout| l.takeoff.iter().find(|t| t.id == "corner-flashing").unwrap().length;
    let outside: f64 = lengths(&l, TrimKind::OutsidePost).iter().sum();
    assert!((sheets(&l).unwrap() - outside - 96.5).abs() < 1e-6, "{:?}", sheets(&l));
}

#[test]
fn a_frame_is_mitered_or_square() {
    // TrimFact::WindowFrame: a 36 x 48 opening in 3/4 channel: 37 1/2 and 49 1/2, mitered at 45
    // degrees, the head's ends and the jambs' feet tabbed by 3/4 (TrimFact::HeadTabs).
    let rings: [(&str, &[(f64, f64)]); 2] = [
        ("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 100.0)),
        ("A-GLAZ", &rect(100.0, 30.0, 136.0, 78.0)),
    ];
    let l = laid(&rings, "");
    assert_eq!(lengths(&l, TrimKind::HeadChannel), [37.5]);
    assert_eq!(lengths(&l, TrimKind::SillChannel), [37.5]);
    assert_eq!(lengths(&l, TrimKind::JambChannel), [49.5; 2]);
    let (plain, tabbed) = (TrimEnd::Miter(45.0), TrimEnd::MiterTab { angle: 45.0, tab: 0.75 });
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
fn rake_channels_are_mitered_at_the_peak_and_plumb_at_the_foot() {
    // Example::GableOfFour: 24 ft span at 4 in 12, rake 151 13/16; atan(4/12) = 18.435 degrees. At
    // the peak two pieces meet at 180 - 2 x 18.435; half of what is missing to straight: 18.435 off
    // square. A plumb foot is off square by the rake's own angle.
    let wall = [(0.0, 0.0), (288.0, 0.0), (288.0, 96.0), (144.0, 144.0), (0.0, 96.0)];
    let l = laid(&[("A-WALL-OTLN", &wall)], "");
    let rakes = of(&l, TrimKind::RakeChannel);
    let whole: f64 = rakes.iter().map(|t| t.length).sum();
    // Of 150 in stock each is lapped once, by one face of 3/4.
    assert!((whole - 2.0 * (151.789 + 0.75)).abs() < 0.02, "{whole}");
    let cuts: Vec<f64> = rakes
        .iter()
        .flat_map(|t| &t.ends)
        .filter_map(|e| if let TrimEnd::Miter(a) = e { Some(*a) } else { None })
        .collect();
    assert_eq!(cuts.len(), 4);
    assert!(cuts.iter().all(|a| (a - 18.435).abs() < 0.01), "{cuts:?}");
}

#[test]
fn the_starter_breaks_at_a_door_and_keeps_its_gaps() {
    // TrimFact::StarterGaps: 1/4 in to a post and between lengths. A wall of 20 ft, a door from 100
    // to 136: 100 less 2 x 1/4 and 104 less 2 x 1/4, one length of 10 ft stock each.
    let l = laid(
        &[
            ("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 96.0)),
            ("A-DOOR", &rect(100.0, 0.0, 136.0, 80.0)),
        ],
        "",
    );
    let starters: Vec<(f64, f64)> =
        of(&l, TrimKind::Starter).iter().map(|t| (t.from[0], t.length)).collect();
    assert_eq!(starters, [(0.25, 99.5), (136.25, 103.5)]);
}

#[test]
fn flashing_is_cut_by_the_published_sizes() {
    // TrimFact::SillFlashing, TrimFact::JambFlashing on a 3040 window (TakeoffFact::CallSizes): sill
    // 36 + 2 x 9 = 54; each jamb from 1/2 over the foot of the 9 in sill flashing to 8 1/2 over the
    // head: 48 + 8 1/2 + 8 1/2 = 65; head as the sill. A door has no sill: jambs 80 + 8 1/2.
    let l = laid(
        &[
            ("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 100.0)),
            ("A-GLAZ", &rect(30.0, 36.0, 66.0, 84.0)),
            ("A-DOOR", &rect(120.0, 0.0, 156.0, 80.0)),
        ],
        "",
    );
    assert_eq!(lengths(&l, TrimKind::SillFlashing), [54.0]);
    assert_eq!(lengths(&l, TrimKind::JambFlashing), [65.0, 65.0, 88.5, 88.5]);
    assert_eq!(lengths(&l, TrimKind::HeadFlashing), [54.0, 54.0]);
    // 469 in of it: in one roll of 50 ft.
    let line = l.takeoff.iter().find(|t| t.id == "opening-flashing").unwrap();
    assert_eq!((line.length, line.order), (Some(469.0), 1.0));
}

#[test]
fn a_surround_takes_its_width_of_the_siding_and_the_channel_goes_round_it() {
    let rings: [(&str, &[(f64, f64)]); 2] = [
        ("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 100.0)),
        ("A-GLAZ", &rect(100.0, 30.0, 136.0, 78.0)),
    ];
    let bare = laid(&rings, "");
    let l = laid(&rings, "[trim]\nsurround = 3.5\n");
    // 36 x 48 and 3 1/2 all round is 43 x 55: 637 sq in less siding.
    let net = |l: &Layout| l.walls().map(|(_, w)| w.net_area * 144.0).sum::<f64>();
    assert!((net(&bare) - net(&l) - (43.0 * 55.0 - 36.0 * 48.0)).abs() < 1e-6);
    // Head and sill boards 43, jambs the opening's 48 between them.
    assert_eq!(lengths(&l, TrimKind::Surround), [43.0, 43.0, 48.0, 48.0]);
    // TrimFact::WindowFrame round the surround: 43 + 1 1/2 and 55 + 1 1/2.
    assert_eq!(lengths(&l, TrimKind::HeadChannel), [44.5]);
    assert_eq!(lengths(&l, TrimKind::JambChannel), [56.5; 2]);
    // Flashing is the opening's own: 36 + 18.
    assert_eq!(lengths(&l, TrimKind::SillFlashing), [54.0]);
}

#[test]
fn a_corner_cover_and_a_frieze_take_their_part_of_the_siding() {
    let wall: [(&str, &[(f64, f64)]); 1] = [("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 104.0))];
    let l = laid(&wall, "[trim]\ncorner_cover = 4\nfrieze = 8\ntop = \"crown\"\n");
    // 240 less 4 at each end, 104 less 8: runs of 232 from 4 to 236, 12 courses of 8 in.
    let w = l.walls().next().unwrap().1;
    assert_eq!(w.courses.len(), 12);
    assert!(w.courses.iter().flat_map(|c| &c.runs).all(|r| (r.x0, r.x1) == (4.0, 236.0)));
    // The post ends under the frieze: 96 + 3/4 - 1/4; a cover as long.
    assert_eq!(lengths(&l, TrimKind::OutsidePost), [96.5; 2]);
    assert_eq!(lengths(&l, TrimKind::CornerCover), [96.5; 2]);
    assert!(of(&l, TrimKind::OutsidePost).iter().all(|t| [0.0, 240.0].contains(&t.from[0])));
    // 20 ft of frieze and of crown from 12 ft stock: 144 and 96; finish trim under the frieze along
    // 232 of siding, of 144 lapped by 3/4: 144 and 88 3/4.
    for kind in [TrimKind::Frieze, TrimKind::Crown] {
        assert_eq!(lengths(&l, kind), [144.0, 96.0]);
    }
    assert_eq!(lengths(&l, TrimKind::FinishTrim), [144.0, 88.75]);
    assert!(of(&l, TrimKind::TopBase).is_empty());
    // Starter: 232 less a gap of 1/4 at each end and one between: 120 and 111 1/4.
    assert_eq!(lengths(&l, TrimKind::Starter), [120.0, 111.25]);
}

#[test]
fn the_top_is_finished_as_the_job_says() {
    let wall: [(&str, &[(f64, f64)]); 1] = [("A-WALL-OTLN", &rect(0.0, 0.0, 120.0, 100.0))];
    let kinds = |top: &str| -> Vec<(TrimKind, f64)> {
        let l = laid(&wall, &format!("[trim]\ntop = \"{top}\"\n"));
        let top = l.trims.iter().filter(|t| t.from[1] == 100.0 && t.to[1] == 100.0);
        top.map(|t| (t.kind, t.length)).collect()
    };
    assert_eq!(kinds("finish-trim"), [(TrimKind::FinishTrim, 120.0)]);
    assert_eq!(kinds("two-piece"), [(TrimKind::TopBase, 120.0), (TrimKind::TopFace, 120.0)]);
    assert_eq!(kinds("top-panel"), [(TrimKind::TopPanel, 120.0)]);
    assert_eq!(kinds("crown"), [(TrimKind::TopBase, 120.0), (TrimKind::Crown, 120.0)]);
    let refused = job_file::parse("[trim]\nfrieze = 8\ntop = \"two-piece\"\n", "job");
    assert!(crate::support::said(&refused.unwrap_err().0).contains("frieze"));
}

#[test]
fn a_band_parts_the_field_and_is_capped() {
    // A band from 96 to 104 on a wall of 200 in: below it 12 courses of 8, over it 12 from 104, which
    // is a course line of the same datum; the siding over it starts anew on a starter.
    let wall = rect(0.0, 0.0, 240.0, 200.0);
    let check = |l: &Layout| {
        let w = l.walls().next().unwrap().1;
        assert!((w.net_area * 144.0 - 240.0 * 192.0).abs() < 1e-6);
        assert_eq!(w.courses.len(), 24);
        assert_eq!(lengths(l, TrimKind::Band), [144.0, 96.0]);
        let caps: f64 = lengths(l, TrimKind::DripCap).iter().sum();
        // 240 in of 10 ft stock, lapped by 3/4 twice.
        assert_eq!(caps, 241.5);
        let starts: Vec<f64> = of(l, TrimKind::Starter).iter().map(|t| t.from[1]).collect();
        assert_eq!(starts, [0.0, 0.0, 104.0, 104.0]);
        let under = of(l, TrimKind::FinishTrim).iter().filter(|t| t.from[1] == 96.0).count();
        assert_eq!(under, 2);
    };
    check(&laid(&[("A-WALL-OTLN", &wall), ("A-WALL-BAND", &rect(0.0, 96.0, 240.0, 104.0))], ""));
    check(&laid(&[("A-WALL-OTLN", &wall)], "[[band]]\nbottom = 96\ntop = 104\n"));
}

#[test]
fn a_joint_of_the_building_is_not_bridged() {
    let views = "[[elevation]]\nname = \"FRONT\"\nregion = [-10.0, -10.0, 500.0, 200.0]\n";
    let wall: [(&str, &[(f64, f64)]); 1] = [("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 96.0))];
    let l = laid(&wall, &format!("{views}[[joint]]\nelevation = \"front\"\nat = 100\n"));
    let w = l.walls().next().unwrap().1;
    assert_eq!(w.joints, [100.0]);
    // Two channels back to back, 1/2 in apart, as high as the wall.
    let channels: Vec<(f64, f64)> =
        of(&l, TrimKind::WallChannel).iter().map(|t| (t.from[0], t.length)).collect();
    assert_eq!(channels, [(99.75, 96.0), (100.25, 96.0)]);
    assert!(w.courses.iter().all(|c| c.runs.len() == 2));
    assert!(w.courses.iter().flat_map(|c| &c.runs).all(|r| r.x1 <= 99.75 || r.x0 >= 100.25));
    // The same from a line on the agreed layer.
    let line = "0\nLINE\n8\nA-WALL-JNTC\n10\n100\n20\n0\n11\n100\n21\n96\n0\nENDSEC\n0\nEOF\n";
    let text = dxf(&wall).replace("0\nENDSEC\n0\nEOF\n", line);
    let l = lay(text.as_bytes(), &job(""));
    assert_eq!(broken(&l), Vec::<String>::new());
    assert_eq!(l.walls().next().unwrap().1.joints, [100.0]);
}

/// The rule that catches a fault put into a sound layout.
fn caught(l: &Layout, fault: impl Fn(&mut Layout)) -> Vec<Rule> {
    let mut l = l.clone();
    fault(&mut l);
    broken_rules(&l)
}

#[test]
fn faults_of_boards_bands_and_joints_are_caught() {
    let gone = |kind: TrimKind| move |l: &mut Layout| l.trims.retain(|t| t.kind != kind);
    let decor = Rule::FaceBoards;
    let rings: [(&str, &[(f64, f64)]); 2] = [
        ("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 240.0)),
        ("A-GLAZ", &rect(100.0, 30.0, 136.0, 78.0)),
    ];
    let more = "[[elevation]]\nname = \"FRONT\"\nregion = [-10.0, -10.0, 500.0, 300.0]\n[trim]\noutside_post = 100\ncorner_cover = 4\nfrieze = 8\nsurround = 3\n[[band]]\nbottom = 120\ntop = 128\n[[joint]]\nelevation = \"FRONT\"\nat = 60\n";
    let l = laid(&rings, more);
    for kind in [TrimKind::CornerCover, TrimKind::Frieze, TrimKind::Surround] {
        assert!(caught(&l, gone(kind)).contains(&decor), "{kind:?}");
    }
    // Siding that ends at the corner itself, as if there were no cover.
    assert!(caught(&l, |l| l.job.trim.corner_cover = 0.0).contains(&decor));
    let field = Rule::FieldExtent;
    assert!(caught(&l, |l| l.job.trim.frieze = 0.0).contains(&field));
    let bands = Rule::BandBoards;
    assert!(caught(&l, gone(TrimKind::Band)).contains(&bands));
    assert!(
        caught(&l, |l| l.trims.retain(|t| t.kind != TrimKind::DripCap || t.opening.is_some()))
            .contains(&bands)
    );
    let joint = Rule::MovementJoints;
    let bridge = |l: &mut Layout| l.elevations[0].walls[0].courses[2].runs[0].x1 = 90.0;
    assert!(caught(&l, bridge).contains(&joint));
    let posts = Rule::CornerPosts;
    let unspliced = |l: &mut Layout| {
        for t in &mut l.trims {
            if let TrimEnd::Splice { .. } = t.ends[0] {
                t.ends[0] = TrimEnd::Square;
            }
        }
    };
    assert!(caught(&l, unspliced).contains(&posts));
    // A tail cut where nothing is saved by it.
    let short = |l: &mut Layout| {
        let foot = l.trims.iter_mut().filter(|t| t.kind == TrimKind::OutsidePost);
        foot.take(1).for_each(|t| (t.from[1], t.length) = (t.from[1] + 0.5, t.length - 0.5));
    };
    assert!(caught(&l, short).contains(&posts));
}
