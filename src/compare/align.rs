//! Which elevation of the new layout is which of the old, and how its places go over: by title and by shape,
//! so that a drawing that was moved on its sheet, or drawn the other hand, is the same house.

use std::collections::{BTreeMap, BTreeSet};

use super::shape::{Shift, differs, plain};
use crate::geom::vocabulary::{Affine, Point, Xy};
use crate::layout::Layout;
use crate::layout::wall::LaidElevation;

/// Elevations that are one in both layouts.
pub(super) struct Paired {
    pub(super) faces: Vec<Face>,
    /// The whole house is drawn the other hand.
    pub(super) mirrored: bool,
}

/// An elevation in both layouts, by its places among theirs.
pub(super) struct Face {
    pub(super) old: usize,
    pub(super) new: usize,
    pub(super) shift: Shift,
    /// It stands elsewhere on the sheet.
    pub(super) elsewhere: bool,
}

// What follows is of our own choosing, no source: it is tried on made revisions, where what belongs together is known.

/// A corner of a wall counts as so many of openings: openings move in walls, seldom walls round them.
const WALL: f64 = 4.0;
/// What it counts that places are those of the source: most revisions are drawn where the drawing stood.
const SAME_PLACE: f64 = 0.3;
/// What it counts that the floor line is where it was.
const SAME_LEVEL: f64 = 0.15;
/// What a title counts for beside the share of corners that agree.
const TITLE: f64 = 0.7;
/// The same of a house drawn the other hand, whose left side is the right one.
const TITLE_MIRRORED: f64 = 0.2;
/// Shares of corners under this say nothing.
const NOTHING: f64 = 0.35;
/// Most corners of walls, and of openings, that shifts are guessed by.
const GUESSED_BY: [usize; 2] = [48, 24];
/// Most shifts that are tried on all corners.
const TRIED: usize = 200;
/// More elevations than this are told apart by titles alone.
const MANY: usize = 40;

/// Corners of an elevation's walls and openings.
struct Corners {
    walls: Vec<Xy>,
    openings: Vec<Xy>,
}

impl Corners {
    fn of(e: &LaidElevation) -> Self {
        let openings = e.walls.iter().flat_map(|w| &w.openings);
        let corners = openings.flat_map(|o| {
            [[o.left, o.sill], [o.right, o.sill], [o.right, o.head], [o.left, o.head]]
        });
        let walls = e.walls.iter().flat_map(|w| plain(w.drawn())).collect();
        Corners { walls, openings: corners.collect() }
    }

    fn weight(&self) -> f64 {
        WALL * self.walls.len() as f64 + self.openings.len() as f64
    }
}

/// Cells of corners, to look one up by its place.
type Cells = BTreeSet<(i64, i64)>;

const CELL: f64 = 0.125;

fn cells(points: &[Xy]) -> Cells {
    points.iter().map(cell).collect()
}

fn cell(p: &Xy) -> (i64, i64) {
    ((p[0] / CELL).round() as i64, (p[1] / CELL).round() as i64)
}

fn near(cells: &Cells, p: &Xy) -> bool {
    let (x, y) = cell(p);
    (-1..=1).any(|dx| (-1..=1).any(|dy| cells.contains(&(x + dx, y + dy))))
}

/// How places go over, with the share of corners that agree.
fn best(old: &LaidElevation, new: &LaidElevation, mirror: bool) -> (Shift, f64) {
    let (a, b) = (Corners::of(old), Corners::of(new));
    let there = [cells(&b.walls), cells(&b.openings)];
    let source = (!mirror).then(|| in_source(old, new)).flatten();
    let agree = |s: &Shift| {
        let hits = |points: &[Xy], there: &Cells| {
            points.iter().filter(|p| near(there, &s.xy(p))).count() as f64
        };
        WALL * hits(&a.walls, &there[0]) + hits(&a.openings, &there[1])
    };
    let all = a.weight().max(b.weight()).max(1.0);
    let value = |s: &Shift| {
        let same =
            source.is_some_and(|o: Shift| !differs(o.right, s.right) && !differs(o.up, s.up));
        let level = !differs(s.up, 0.0);
        let bonus = SAME_PLACE * f64::from(same) + SAME_LEVEL * f64::from(level);
        agree(s) + bonus * all
    };
    let mut tried = guesses(&a, &b, mirror);
    tried.extend(source);
    let nothing = Shift { mirror, right: 0.0, up: 0.0 };
    let mut found = (nothing, value(&nothing));
    for s in tried {
        let v = value(&s);
        if v > found.1 + 1e-9 {
            found = (s, v);
        }
    }
    (found.0, agree(&found.0) / all)
}

/// Shifts that bring a corner onto another, each once: of those that many corners speak for, the first ones.
fn guesses(a: &Corners, b: &Corners, mirror: bool) -> Vec<Shift> {
    let mut out: BTreeMap<(i64, i64), (usize, Shift)> = BTreeMap::new();
    let sets = [(&a.walls, &b.walls), (&a.openings, &b.openings)];
    for ((from, to), most) in sets.into_iter().zip(GUESSED_BY) {
        for p in from.iter().take(most) {
            for q in to.iter().take(most) {
                let right = if mirror { q[0] + p[0] } else { q[0] - p[0] };
                let up = q[1] - p[1];
                let at = out.entry(cell(&[right, up])).or_insert((0, Shift { mirror, right, up }));
                at.0 += 1;
            }
        }
    }
    let mut all: Vec<(usize, Shift)> = out.into_values().collect();
    all.sort_by_key(|g| std::cmp::Reverse(g.0));
    all.into_iter().take(TRIED).map(|g| g.1).collect()
}

/// The shift that keeps places of the source; none where the two are drawn in another scale or turned.
fn in_source(old: &LaidElevation, new: &LaidElevation) -> Option<Shift> {
    let [a, b, c, d, ..] = new.to_source;
    if !(a * d - b * c).is_finite() || (a * d - b * c).abs() < 1e-12 {
        return None;
    }
    let over = Affine::new(new.to_source).inverse() * Affine::new(old.to_source);
    let [a, b, c, d, ..] = over.as_coeffs();
    let same = [a - 1.0, b, c, d - 1.0].iter().all(|v| v.abs() < 1e-6);
    let p = over * Point::ORIGIN;
    same.then_some(Shift { mirror: false, right: p.x, up: p.y })
}

/// Pairs the elevations of two layouts. The house counts as drawn the other hand only where its corners agree
/// better so than as they are.
pub(super) fn paired(old: &Layout, new: &Layout) -> Paired {
    let as_is = pairs(old, new, false);
    let perfect = as_is.1 > as_is.0.len() as f64 - 1e-9 && as_is.0.len() == old.elevations.len();
    let other = if perfect { None } else { Some(pairs(old, new, true)) };
    let mirrored = other.filter(|o| o.1 > as_is.1 + 1e-6 && o.0.len() >= as_is.0.len());
    let flag = mirrored.is_some();
    let faces = mirrored.unwrap_or(as_is).0;
    Paired { faces, mirrored: flag }
}

/// A possible pair: elevation of the old layout, of the new, how places go over, the share that agrees.
type Guess = (usize, usize, Shift, f64);

/// The pairs, and the sum of shares that agree.
fn pairs(old: &Layout, new: &Layout, mirror: bool) -> (Vec<Face>, f64) {
    let title = |e: &LaidElevation| e.name.trim().to_uppercase();
    let (a, b) = (&old.elevations, &new.elevations);
    let by_title = if mirror { TITLE_MIRRORED } else { TITLE };
    let many = a.len().max(b.len()) > MANY;
    let mut all: Vec<(f64, Guess)> = Vec::new();
    for (i, o) in a.iter().enumerate() {
        for (j, n) in b.iter().enumerate() {
            let named = title(o) == title(n);
            if many && !named {
                continue;
            }
            let (shift, share) = best(o, n, mirror);
            if named || share > NOTHING {
                all.push((share + by_title * f64::from(named), (i, j, shift, share)));
            }
        }
    }
    all.sort_by(|x, y| y.0.total_cmp(&x.0).then(x.1.0.cmp(&y.1.0)).then(x.1.1.cmp(&y.1.1)));
    let mut faces: Vec<Face> = Vec::new();
    let mut sum = 0.0;
    for (_, (i, j, shift, share)) in all {
        if faces.iter().any(|f| f.old == i || f.new == j) {
            continue;
        }
        sum += share;
        let source = in_source(&a[i], &b[j]);
        let other = |s: Shift| differs(s.right, shift.right) || differs(s.up, shift.up);
        let elsewhere = !mirror && source.is_some_and(other);
        faces.push(Face { old: i, new: j, shift, elsewhere });
    }
    faces.sort_by_key(|f| f.new);
    (faces, sum)
}
