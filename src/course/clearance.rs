//! What clearances take of the field round the corners of slanted openings, so that a cut runs from one
//! side to the next in one corner.

use crate::geom::polygon::Polygon;
use crate::geom::tol::{CUT, SAME, upright};
use crate::geom::vocabulary::{Point, Rect, Vec2};
use crate::model::house::EdgeKind;
use crate::model::notch::LEAST_HEM_CUT;
use crate::model::receiver::{Field, FieldEdge};

/// How far a sharp corner of what is kept clear may lie from the opening's, in clearances: a sharper one
/// is cut off, of our own choosing.
const FARTHEST: f64 = 4.0;

/// Sine of the least turn that is a corner: 20 degrees, more than from chord to chord of a curve.
const CORNER: f64 = 0.342;

/// Corners of openings that are no rectangles.
pub(super) struct Corners {
    /// What is kept clear between a side flatter than 45 degrees and a steeper one, with the opening.
    fills: Vec<(usize, Polygon)>,
    /// Ends of level sides, by the places of the sides, that a slope flatter than 45 degrees goes on
    /// from: the clearance ends there with the side. At its beginning, at its end.
    bare: Vec<[bool; 2]>,
    /// How far, at least, the clearance at a level side of the wall goes on under a slope that comes down to it, or over
    /// one that goes up from it: to where the slope itself ends what it keeps clear.
    under: Vec<[f64; 2]>,
}

/// The box in which a corner, or another upright side, leans within a strip by more than a cutter tells: panels
/// are cut square where it comes in farthest, each course to its own length (common practice, no source).
pub(super) fn leans_in(e: &FieldEdge, strip: (f64, f64)) -> Option<Rect> {
    use EdgeKind::{Abutment, InsideCorner, OutsideCorner};
    let (run, rise) = (e.to.x - e.from.x, e.to.y - e.from.y);
    let stands = matches!(e.kind, OutsideCorner | InsideCorner | Abutment);
    if !stands || e.opening.is_some() || !upright(run, rise) {
        return None;
    }
    let (low, high) = (e.from.y.min(e.to.y).max(strip.0), e.from.y.max(e.to.y).min(strip.1));
    let [a, b] = [low, high].map(|y| e.from.x + run * (y - e.from.y) / rise);
    ((b - a).abs() > CUT).then(|| Rect::new(a.min(b), low, a.max(b), high))
}

fn is_level(e: &FieldEdge) -> bool {
    (e.from.y - e.to.y).abs() <= SAME
}

fn turns_left(e: &FieldEdge, f: &FieldEdge) -> bool {
    (e.to - e.from).cross(f.to - f.from) > 0.0
}

/// From where a slope meets a level side to where it is farther up or down than what is kept clear of that.
fn under(slope: &FieldEdge, notch: f64) -> f64 {
    let (run, rise) = ((slope.to.x - slope.from.x).abs(), (slope.to.y - slope.from.y).abs());
    run.min(notch.max(LEAST_HEM_CUT) * run / rise)
}

fn is_flat(e: &FieldEdge) -> bool {
    (e.from.y - e.to.y).abs() <= (e.from.x - e.to.x).abs()
}

impl Corners {
    /// The corners of a field's openings.
    pub(super) fn of(field: &Field, gap: f64, notch: f64) -> Self {
        let edges = &field.edges;
        let n = edges.len();
        let mut out =
            Corners { fills: Vec::new(), bare: vec![[false; 2]; n], under: vec![[0.0; 2]; n] };
        let mut first = 0;
        for i in 0..n {
            let e = &edges[i];
            // A ring ends where the next side does not go on.
            let goes_on = |j: usize| edges.get(j).is_some_and(|f| f.from.distance(e.to) <= SAME);
            let next = if goes_on(i + 1) { i + 1 } else { first };
            if next == first {
                first = i + 1;
            }
            let Some(f) = edges.get(next).filter(|_| goes_on(next)) else { continue };
            if e.opening.is_none() && f.opening.is_none() && turns_left(e, f) {
                match (is_level(e), is_level(f)) {
                    (true, false) => out.under[i][1] = under(f, notch),
                    (false, true) => out.under[next][0] = under(e, notch),
                    _ => {}
                }
            }
            let Some(opening) = e.opening.filter(|o| f.opening == Some(*o)) else { continue };
            // The field lies on the left hand: the opening sticks out where the way turns right.
            let (u, w) = (e.to - e.from, f.to - f.from);
            if u.cross(w) > -CORNER * u.hypot() * w.hypot() {
                continue;
            }
            match (is_level(e), is_level(f)) {
                (true, false) => out.bare[i][1] = is_flat(f),
                (false, true) => out.bare[next][0] = is_flat(e),
                (false, false) if is_flat(e) != is_flat(f) => {
                    out.fills.push((opening, fill(e, f, gap, notch)));
                }
                _ => {}
            }
        }
        out
    }

    /// How far what is kept clear at a level side reaches past its beginning and its end.
    pub(super) fn past(&self, edge: usize, gap: f64) -> [f64; 2] {
        let under = self.under.get(edge).copied().unwrap_or_default();
        let bare = self.bare.get(edge).copied().unwrap_or_default();
        [0, 1].map(|k| if bare[k] { 0.0 } else { gap.max(under[k]) })
    }

    /// What is kept clear at corners of openings that `reaches` says of.
    pub(super) fn fills<'a>(
        &'a self,
        reaches: impl Fn(usize) -> bool + 'a,
    ) -> impl Iterator<Item = &'a Polygon> + 'a {
        self.fills.iter().filter(move |f| reaches(f.0)).map(|f| &f.1)
    }
}

/// From a side to where what is kept clear of it ends: straight up or down where it is flatter than 45
/// degrees, straight aside where it is steeper.
fn away(e: &FieldEdge, gap: f64, notch: f64) -> Vec2 {
    let run = e.to - e.from;
    if is_flat(e) {
        Vec2::new(0.0, notch.max(gap * (run.y / run.x).abs()).copysign(run.x))
    } else {
        Vec2::new(gap.copysign(-run.y), 0.0)
    }
}

/// The corner between what is kept clear of two sides: where their lines meet past both, else straight from
/// one to the other, as where the clearance under a flat side is much more than the gap beside a steep one.
fn fill(e: &FieldEdge, f: &FieldEdge, gap: f64, notch: f64) -> Polygon {
    let v = e.to;
    let (a, b) = (v + away(e, gap, notch), v + away(f, gap, notch));
    let (u, w) = (e.to - e.from, f.to - f.from);
    let [past, before] = [w, u].map(|d| (b - a).cross(d) / u.cross(w));
    let meets: Point = a + u * past;
    let near = meets.distance(v) <= FARTHEST * gap.max(notch);
    let ring =
        if near && past >= 0.0 && before <= 0.0 { vec![v, a, meets, b] } else { vec![v, a, b] };
    Polygon::simple(ring).wound()
}
