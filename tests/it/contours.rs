//! Openings of any shape by their true contour: undersill trim along every sill and nowhere else, bent
//! channel round curves, and no rule broken, for random shapes at random places over the courses. What
//! is a sill is reckoned here from the drawn polygon alone.

use lapwright::job::Job;
use lapwright::layout::Layout;
use lapwright::model::trim::{TrimKind, TrimPiece};

use crate::shapes::{Shape, shape};
use crate::support::{broken, dxf, lay, rect};

/// A job whose courses begin at 0, in which every cut under a sill asks for undersill trim.
fn job(trim: &str, more: &str) -> Job {
    let text = format!(
        "[drawing]\nunit = \"inch\"\n[courses]\ndatum = 0\n[seams]\neffort = \"brief\"\n\
         [trim]\nchannel_alone = 0\n{trim}\n{more}"
    );
    lapwright::job::file::parse(&text, "job").unwrap()
}

fn laid(shape: &Shape, job: &Job) -> Layout {
    let wall = rect(0.0, 0.0, 260.0, 152.0);
    lay(dxf(&[("A-WALL-OTLN", &wall), ("A-GLAZ", &shape.ring)]).as_bytes(), job)
}

type Xy = (f64, f64);

/// The straight sides of a drawn polygon that bound siding from above, within 45 degrees of level. Under a
/// level one on a course line panels are cut too: their hem is in the way.
fn sills(shape: &Shape) -> Vec<(Xy, Xy)> {
    let n = shape.ring.len();
    let each = (0..n).filter(|i| !shape.curved[*i]);
    each.map(|i| (shape.ring[i], shape.ring[(i + 1) % n]))
        // Counter-clockwise the opening is over what runs to the right.
        .filter(|(a, b)| b.0 > a.0 && (b.1 - a.1).abs() <= (b.0 - a.0) * 1.003)
        .collect()
}

fn of(l: &Layout, kind: TrimKind) -> Vec<&TrimPiece> {
    l.trims.iter().filter(|t| t.kind == kind && t.opening.is_some()).collect()
}

/// What is wrong with a layout of one shape.
fn faults(shape: &Shape, l: &Layout) -> Vec<String> {
    let mut out = broken(l);
    let mut want = sills(shape);
    let mut have: Vec<(Xy, Xy)> = of(l, TrimKind::FinishTrim)
        .iter()
        .map(|t| ((t.from[0], t.from[1]), (t.to[0], t.to[1])))
        .map(|(a, b)| if a.0 < b.0 { (a, b) } else { (b, a) })
        .collect();
    let by_x = |a: &(Xy, Xy), b: &(Xy, Xy)| a.0.0.total_cmp(&b.0.0);
    want.sort_by(by_x);
    have.sort_by(by_x);
    let near = |a: Xy, b: Xy| (a.0 - b.0).abs() < 0.01 && (a.1 - b.1).abs() < 0.01;
    let same = want.len() == have.len()
        && want.iter().zip(&have).all(|(w, h)| near(w.0, h.0) && near(w.1, h.1));
    if !same {
        out.push(format!("undersill trim along {have:?}, sills are {want:?}"));
    }
    let bent: f64 = of(l, TrimKind::BentChannel).iter().map(|t| t.length).sum();
    let n = shape.ring.len();
    let long = |i: usize| {
        let (a, b) = (shape.ring[i], shape.ring[(i + 1) % n]);
        (a.0 - b.0).hypot(a.1 - b.1)
    };
    let curved: f64 = (0..n).filter(|i| shape.curved[*i]).map(long).sum();
    // Laps and miters at its ends are no more than two faces each.
    if bent < curved - 0.1 || bent > curved + 6.0 {
        out.push(format!("{bent} in of bent channel, {curved} in of curves"));
    }
    out
}

/// How many shapes are tried: `LAPWRIGHT_SHAPES=2000` tries more.
fn count() -> u64 {
    std::env::var("LAPWRIGHT_SHAPES").ok().and_then(|n| n.parse().ok()).unwrap_or(270)
}

#[test]
fn random_shapes_keep_every_rule_and_have_undersill_trim_under_every_sill() {
    let vinyl = "[product]\nkind = \"vinyl\"\n";
    let jobs = [job("", ""), job("frame = \"square\"", ""), job("", vinyl)];
    let mut wrong = Vec::new();
    for seed in 0..count() {
        let shape = shape(seed);
        let job = &jobs[(seed % 3) as usize];
        let found = faults(&shape, &laid(&shape, job));
        if !found.is_empty() {
            wrong.push(format!("{seed}: {} {:?}: {found:#?}", shape.sort, shape.ring));
        }
    }
    assert!(wrong.is_empty(), "{} wrong: {}", wrong.len(), wrong.join("\n"));
}
