//! What stands at each elevation, looked up by its name once: sheets of large drawings are made in time
//! that grows with their size.

use std::collections::{BTreeMap, BTreeSet};

use crate::geom::polygon::bounds;
use crate::geom::tol::LEVEL;
use crate::geom::vocabulary::{Point, Rect, Xy};
use crate::layout::Layout;
use crate::layout::violation::Violation;
use crate::layout::wall::{LaidElevation, LaidWall};
use crate::model::change::{Change, Comparison};
use crate::model::conflict::Break;
use crate::model::corner::{Corner, CornerKind, CornerSide, Hand, Pairing};
use crate::model::house::EdgeKind;
use crate::model::ids::WallId;
use crate::model::trim::TrimPiece;
use crate::model::work::WallWork;

/// What stands at one elevation, each in the layout's order.
#[derive(Default)]
pub(super) struct AtElevation<'a> {
    /// Trim that shows.
    pub trims: Vec<&'a TrimPiece>,
    /// Sides of corners whose other wall no elevation shows.
    pub open: Vec<&'a CornerSide>,
    /// Sides of corners that are not square, with their degrees.
    pub turned: Vec<(&'a CornerSide, f64)>,
    /// The work of its walls.
    pub work: Vec<&'a WallWork>,
    /// Broken seam rules.
    pub breaks: Vec<&'a Break>,
    /// What stands in corners and shows.
    pub posts: Vec<PostShown>,
    /// Places that break a rule of the check, by number.
    pub failed: Vec<(usize, &'a Violation)>,
    /// What a revision changes.
    pub revised: Vec<RevisedAt<'a>>,
}

/// A change with the letter of its revision.
#[derive(Clone, Copy)]
pub(super) struct RevisedAt<'a> {
    /// Letter of the revision.
    pub letter: &'a str,
    /// The change.
    pub change: &'a Change,
}

/// A corner post, corner board or cover as an elevation shows it, elevation inches.
#[derive(Clone, Debug)]
pub(super) struct PostShown {
    /// Its wall.
    pub wall: WallId,
    /// Which way its corner turns.
    pub corner: CornerKind,
    /// Degrees between its walls, where it is not square and known.
    pub angle: Option<f64>,
    /// How far off the corner siding is reckoned from.
    pub set_back: f64,
    /// The drawn corner, at the foot and at the top.
    pub corner_at: [f64; 2],
    /// The edge of its face on the wall, likewise.
    pub face: [f64; 2],
    /// Foot and top of the siding beside it.
    pub heights: (f64, f64),
}

impl<'a> AtElevation<'a> {
    /// What stands at one of its walls.
    pub(super) fn at_wall(&self, w: &LaidWall) -> AtElevation<'a> {
        let runs: BTreeSet<&str> =
            w.courses.iter().flat_map(|k| &k.runs).map(|r| r.id.as_str()).collect();
        let points: Vec<Point> = w.outline.iter().map(|p| Point::new(p[0], p[1])).collect();
        let near = bounds(&points).map(|r| r.inflate(LEVEL, LEVEL));
        let here = |v: &&(usize, &Violation)| {
            let at = v.1.at.as_ref().map(|at| Point::new(at.point[0], at.point[1]));
            at.is_some_and(|p| {
                near.is_some_and(|r| p.x >= r.x0 && p.x <= r.x1 && p.y >= r.y0 && p.y <= r.y1)
            })
        };
        AtElevation {
            trims: self.trims.iter().copied().filter(|t| t.wall == w.id).collect(),
            open: self.open.iter().copied().filter(|s| s.wall == w.id).collect(),
            turned: self.turned.iter().copied().filter(|s| s.0.wall == w.id).collect(),
            work: self.work.iter().copied().filter(|k| k.wall == w.id).collect(),
            breaks: self
                .breaks
                .iter()
                .copied()
                .filter(|b| b.seams.first().is_some_and(|s| runs.contains(s.run.as_str())))
                .collect(),
            posts: self.posts.iter().filter(|p| p.wall == w.id).cloned().collect(),
            failed: self.failed.iter().filter(here).copied().collect(),
            revised: self.revised.iter().filter(|r| touches(r.change, w, near)).copied().collect(),
        }
    }

    /// Without what its walls' own sheets show, but for places that break a rule.
    pub(super) fn overview(&self) -> AtElevation<'a> {
        AtElevation {
            trims: self.trims.clone(),
            open: self.open.clone(),
            turned: self.turned.clone(),
            posts: self.posts.clone(),
            failed: self.failed.clone(),
            revised: self.revised.clone(),
            ..AtElevation::default()
        }
    }
}

/// Whether a change concerns a wall: it is told of it, or of no wall and lies along it, or what is gone stood
/// where it stands.
fn touches(change: &Change, w: &LaidWall, near: Option<Rect>) -> bool {
    let apart = |p: &[f64; 4], r: Rect| p[2] < r.x0 || p[0] > r.x1;
    let over = |p: &[f64; 4], r: Rect| !apart(p, r) && p[3] >= r.y0 && p[1] <= r.y1;
    let Some(near) = near else { return false };
    match (&change.wall, change.gone.is_empty()) {
        (Some(wall), _) if *wall == w.id => true,
        (Some(_), true) => false,
        (Some(_), false) => change.places.iter().any(|p| over(p, near)),
        (None, _) => change.places.iter().any(|p| !apart(p, near)),
    }
}

impl PostShown {
    /// The line along its face's edge.
    pub(super) fn edge(&self) -> [Xy; 2] {
        [[self.face[0], self.heights.0], [self.face[1], self.heights.1]]
    }
}

/// What stands in the corners of an elevation's walls: a post shared with another elevation is counted
/// there and shown on both.
fn posts(layout: &Layout, e: &LaidElevation, sides: &CornerSides) -> Vec<PostShown> {
    let set_backs = layout.job.set_backs();
    let mut out = Vec::new();
    for (w, s) in e.walls.iter().flat_map(|w| w.edges.iter().map(move |s| (w, s))) {
        let kind = match s.kind {
            EdgeKind::OutsideCorner => CornerKind::Outside,
            EdgeKind::InsideCorner => CornerKind::Inside,
            _ => continue,
        };
        // The field lies on the left hand: the right side of a wall runs up.
        let hand = if s.to[1] > s.from[1] { Hand::Right } else { Hand::Left };
        let (low, high) = (s.from[1].min(s.to[1]), s.from[1].max(s.to[1]));
        let x = (s.from[0] + s.to[0]) / 2.0;
        let here = |c: &Corner, k: &CornerSide| {
            let back = set_backs.at(c, &k.wall);
            c.kind == kind
                && k.side == hand
                && (k.low < high && k.high > low)
                && ((x - k.at((low + high) / 2.0)).abs() - back).abs() < LEVEL
        };
        let of_wall = sides.get(w.id.as_str()).into_iter().flatten();
        let Some((c, k)) = of_wall.copied().find(|(c, k)| here(c, k)) else { continue };
        let wide = layout.job.corner_face_at(c);
        let wide = if hand == Hand::Left { wide } else { -wide };
        let corner_at = [k.at(low), k.at(high)];
        out.push(PostShown {
            wall: w.id.clone(),
            corner: kind,
            angle: c.angle,
            set_back: set_backs.at(c, &k.wall),
            corner_at,
            face: corner_at.map(|x| x + wide),
            heights: (low, high),
        });
    }
    out
}

/// Sides of corners by their walls.
type CornerSides<'a> = BTreeMap<&'a str, Vec<(&'a Corner, &'a CornerSide)>>;

/// What stands at every elevation of a layout.
pub(super) struct ElevationIndex<'a> {
    by: BTreeMap<&'a str, AtElevation<'a>>,
    none: AtElevation<'a>,
}

impl<'a> ElevationIndex<'a> {
    /// The same with what a revision changes.
    pub(super) fn revised(layout: &'a Layout, comparison: &'a Comparison) -> Self {
        let mut out = Self::of(layout);
        for change in comparison.changes.iter().filter(|c| c.zone == layout.zone) {
            if let Some(e) = &change.elevation {
                let letter = comparison.revision.as_str();
                let at = out.by.entry(e.as_str()).or_default();
                at.revised.push(RevisedAt { letter, change });
            }
        }
        out
    }

    pub(super) fn of(layout: &'a Layout) -> Self {
        let mut by: BTreeMap<&'a str, AtElevation<'a>> = BTreeMap::new();
        for t in layout.trims.iter().filter(|t| !t.kind.behind()) {
            by.entry(&t.elevation).or_default().trims.push(t);
        }
        let open = layout.corners.iter().filter(|c| c.by == Pairing::Open);
        for s in open.flat_map(|c| &c.sides) {
            by.entry(&s.elevation).or_default().open.push(s);
        }
        for (c, angle) in layout.corners.iter().filter_map(|c| Some((c, c.angle?))) {
            for s in &c.sides {
                by.entry(&s.elevation).or_default().turned.push((s, angle));
            }
        }
        let mut sides: CornerSides = BTreeMap::new();
        for c in &layout.corners {
            for k in &c.sides {
                sides.entry(&k.wall).or_default().push((c, k));
            }
        }
        for e in &layout.elevations {
            by.entry(&e.name).or_default().posts = posts(layout, e, &sides);
        }
        for w in &layout.work.walls {
            by.entry(&w.elevation).or_default().work.push(w);
        }
        for c in &layout.bound.conflicts {
            by.entry(&c.elevation).or_default().breaks.extend(&c.breaks);
        }
        for (number, v) in layout.verify.numbered() {
            if let Some(at) = &v.at {
                by.entry(&at.elevation).or_default().failed.push((number, v));
            }
        }
        ElevationIndex { by, none: AtElevation::default() }
    }

    pub(super) fn at(&self, e: &LaidElevation) -> &AtElevation<'a> {
        self.by.get(e.name.as_str()).unwrap_or(&self.none)
    }
}
