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

/// An opening in a wall 260 by 152 in.
fn with(layer: &str, ring: &[Xy], job: &Job) -> Layout {
    let wall = rect(0.0, 0.0, 260.0, 152.0);
    lay(dxf(&[("A-WALL-OTLN", &wall), (layer, ring)]).as_bytes(), job)
}

#[test]
fn a_half_round_that_touches_the_foot_of_its_wall_ends_the_siding_there() {
    // At the middle of the wall its lowest point is the middle of the foot too; a hair over the foot it
    // touches it, on a course line and off one, with and without a clearance.
    for (x, lift, sides) in
        [(130.0, 0.0, 16), (130.0, 0.004, 16), (100.0, 0.004, 15), (100.0, 0.0, 24)]
    {
        let at = |i: u32| std::f64::consts::PI * (1.0 + f64::from(i) / f64::from(sides));
        let ring: Vec<Xy> = (0..=sides)
            .map(|i| (x + 18.0 * at(i).cos(), lift + 18.0 + 18.0 * at(i).sin()))
            .collect();
        for (datum, clearance) in [(0, "0"), (-3, "0"), (0, "0.25"), (-3, "0.25")] {
            let text = format!(
                "[drawing]\nunit = \"inch\"\n[courses]\ndatum = {datum}\n\
                 notch_clearance = {clearance}\n[seams]\neffort = \"brief\"\n"
            );
            let l = with("A-GLAZ", &ring, &lapwright::job::file::parse(&text, "job").unwrap());
            assert_eq!(broken(&l), Vec::<String>::new(), "{x} {lift} {datum} {clearance}");
            let bent = of(&l, TrimKind::BentChannel);
            assert!(bent.iter().all(|t| t.path.iter().all(|p| (p[0] - x).abs() < 18.8)));
        }
    }
}

/// A round window of so many chords, two feet across.
fn round(chords: u32) -> Vec<Xy> {
    let at = |i: u32| std::f64::consts::TAU * f64::from(i) / f64::from(chords);
    (0..chords).map(|i| (110.3 + 24.0 * at(i).cos(), 70.2 + 24.0 * at(i).sin())).collect()
}

#[test]
fn round_windows_keep_wide_clearances() {
    // Chords of 14 and of 18 turn by more and by less than what is a corner; under the flat ones 1 in is kept,
    // beside the steep ones the end gap of 1/4 or 1 in.
    for chords in [14, 16, 18, 48] {
        for more in ["", "[product]\nend_gap = 1\n", "[product]\nkind = \"fiber-cement\"\n"] {
            let text = format!(
                "[drawing]\nunit = \"inch\"\n[courses]\ndatum = 0\nnotch_clearance = 1\n\
                 [seams]\neffort = \"crew\"\n{more}"
            );
            let job = lapwright::job::file::parse(&text, "job").unwrap();
            assert_eq!(broken(&with("A-GLAZ", &round(chords), &job)), Vec::<String>::new());
        }
    }
}

#[test]
fn a_bent_channel_laps_over_its_own_beginning_along_the_curve() {
    // A circle of 24 chords, each 48 sin(7.5) = 6.2653 long: 150.37 in all. Lengths of 138 in that lap by the face
    // of 6 in make two, and the ring laps over its beginning once more.
    let l = with("A-GLAZ", &round(24), &job("channel_face = 6\nflexible_channel = 138", ""));
    assert_eq!(broken(&l), Vec::<String>::new());
    let bent = of(&l, TrimKind::BentChannel);
    let sum: f64 = bent.iter().map(|t| t.length).sum();
    assert!(bent.len() == 2 && (sum - 162.37).abs() < 0.05, "{}: {sum}", bent.len());
    // All of it lies on the circle but for the depth of a chord, 24 (1 - cos 7.5) = 0.205.
    let off = |p: &[f64; 2]| ((p[0] - 110.3).hypot(p[1] - 70.2) - 24.0).abs();
    assert!(bent.iter().flat_map(|t| &t.path).all(|p| off(p) < 0.21));
}

#[test]
fn a_sloped_sill_that_a_foot_cuts_off_is_framed_as_it_lies() {
    // A surround of 1/2 in brings a sill that rises from 0.03 to 0.6 in down to the foot at one end: what is
    // left of it rises 0.107 in over 6.8 in, and siding stands under it.
    let door = [(100.0, 0.03), (136.0, 0.6), (136.0, 80.0), (100.0, 80.0)];
    let l = with("A-DOOR", &door, &job("surround = 0.5", ""));
    assert_eq!(broken(&l), Vec::<String>::new());
    let sill = of(&l, TrimKind::FinishTrim);
    assert_eq!(sill.len(), 1);
    assert!((sill[0].length - 6.8).abs() < 0.05, "{}", sill[0].length);
}

#[test]
fn a_stepped_head_counts_for_the_datum_step_by_step() {
    use lapwright::model::pole::DatumWeight;
    // Courses of 8 in from 0: the sill at 32 and the higher half of the head at 72 stand on them, the
    // lower half at 60 does not: 30 in of it.
    let window =
        [(100.0, 32.0), (160.0, 32.0), (160.0, 60.0), (130.0, 60.0), (130.0, 72.0), (100.0, 72.0)];
    let l = with("A-GLAZ", &window, &job("", ""));
    let chosen = l.story_pole.choices.iter().find(|c| c.chosen).unwrap();
    assert_eq!(chosen.datum, 0.0);
    let other = chosen.terms.iter().find(|t| t.weight == DatumWeight::OtherLine);
    assert_eq!(other.map(|t| t.amount), Some(2.5));
}
