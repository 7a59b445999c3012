//! Channel round curved heads: bent, a line of its own, as long as the curve and its laps.

use lapwright::job::Job;
use lapwright::job::file as job_file;
use lapwright::layout::Layout;
use lapwright::model::basis::Basis;
use lapwright::model::quantity::TakeoffLine;
use lapwright::model::trim::TrimKind;

use crate::support::{broken, lay};

fn job(more: &str) -> Job {
    let text = format!("[drawing]\nunit = \"inch\"\n[seams]\neffort = \"crew\"\n{more}");
    job_file::parse(&text, "job").unwrap()
}

/// A wall of 20 x 9 ft with a window from 100 to 136 in, its jambs from 30 to 66 in, its head an arc of
/// this bulge: the tangent of a quarter of its angle (DXF reference).
fn arched(bulge: f64) -> String {
    let ring = |layer: &str, points: &[(f64, f64, f64)]| {
        let mut out = format!("0\nPOLYLINE\n8\n{layer}\n66\n1\n70\n1\n");
        for (x, y, b) in points {
            out.push_str(&format!("0\nVERTEX\n8\n{layer}\n10\n{x}\n20\n{y}\n42\n{b}\n"));
        }
        out + "0\nSEQEND\n"
    };
    let wall = [(0.0, 0.0, 0.0), (240.0, 0.0, 0.0), (240.0, 108.0, 0.0), (0.0, 108.0, 0.0)];
    let glass = [(100.0, 30.0, 0.0), (136.0, 30.0, 0.0), (136.0, 66.0, bulge), (100.0, 66.0, 0.0)];
    let (wall, glass) = (ring("A-WALL-OTLN", &wall), ring("A-GLAZ", &glass));
    format!("0\nSECTION\n2\nENTITIES\n{wall}{glass}0\nENDSEC\n0\nEOF\n")
}

fn flexible(layout: &Layout) -> Option<&TakeoffLine> {
    layout.takeoff.iter().find(|l| l.id == "flexible-j-channel")
}

#[test]
fn a_half_circle_takes_its_arc_and_two_laps() {
    // DrawingFact::Bulge: bulge 1 on 36 in is a half circle of 18 in: pi x 18 = 56.549 in of arc.
    // Where it goes on from the jambs it laps a face, 3/4 in, at each end: 58.049 in, one of 12 ft.
    let layout = lay(arched(1.0).as_bytes(), &job(""));
    assert_eq!(broken(&layout), Vec::<String>::new());
    let line = flexible(&layout).unwrap();
    assert!((line.length.unwrap() - 58.049).abs() < 0.03, "{:?}", line.length);
    assert!((line.net - 58.049 / 144.0).abs() < 1e-3 && line.order == 1.0);
    assert_eq!((line.counts.len(), line.stock), (1, Some(144.0)));
    let Basis::TrimCut { bent_laps: Some(laps), .. } = &line.basis else { panic!("{line:?}") };
    assert!((laps - 1.5).abs() < 1e-9);
    let words = lapwright::wording::takeoff::basis::basis(line, &layout.job, &layout.bound);
    assert!(
        words.contains("of developed length, 4'-8 9/16\" along curves and 1 1/2\" in laps"),
        "{words}"
    );
    // The straight channel is the two jambs and the sill alone: no head.
    let kinds: Vec<TrimKind> = layout.trims.iter().map(|t| t.kind).collect();
    assert!(!kinds.contains(&TrimKind::HeadChannel));
    crate::recount::check(&crate::recount::written(&layout), "half circle");
}

#[test]
fn a_shallow_arc_is_mitered_and_bent() {
    // Bulge 1/4 on a chord of 36 in: an angle of 4 x atan(1/4) = 0.97991, a radius of 36 x (1 + 1/16) / (4 x
    // 1/4) = 38.25 in, an arc of 38.25 x 0.97991 = 37.482 in. It meets the jambs at a corner: half the
    // turn of 90 - 28.07 = 61.93 degrees is 30.96, which a face of 3/4 in reaches 0.45 in past.
    let layout = lay(arched(0.25).as_bytes(), &job(""));
    assert_eq!(broken(&layout), Vec::<String>::new());
    let line = flexible(&layout).unwrap();
    let reach = 0.75 * 30.96f64.to_radians().tan();
    assert!((line.length.unwrap() - (37.482 + 2.0 * reach)).abs() < 0.1, "{:?}", line.length);
}

#[test]
fn boards_take_no_channel_round_a_curve() {
    let layout = lay(arched(1.0).as_bytes(), &job("[product]\nkind = \"fiber-cement\"\n"));
    assert_eq!(broken(&layout), Vec::<String>::new());
    assert!(flexible(&layout).is_none());
}
