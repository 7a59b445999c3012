//! Corner posts: each corner once, though two elevations show it. Hung short of the soffit, run
//! below the starter, spliced by the rule when taller than stock (FACTS SD-54, SD-97, SD-98).

use super::channels::merged;
use super::stock::{Place, part};
use crate::geom::tol::same;
use crate::geom::vocabulary::Point;
use crate::job::Job;
use crate::model::house::{EdgeKind, House};
use crate::model::receiver::{Field, FieldEdge};
use crate::model::trim::{TrimEnd, TrimKind, TrimPiece};

/// One corner as one elevation shows it.
struct Seen {
    elevation: usize,
    field: usize,
    kind: EdgeKind,
    tag: Option<String>,
    low: Point,
    high: Point,
    /// Whether the wall lies to the left of the corner.
    at_right: bool,
    taken: bool,
}

pub(super) fn pieces(house: &House, fields: &[Field], job: &Job) -> Vec<TrimPiece> {
    let mut seen: Vec<Seen> = fields.iter().enumerate().flat_map(|(i, f)| corners(i, f)).collect();
    let mut out = Vec::new();
    for i in 0..seen.len() {
        if seen[i].taken {
            continue;
        }
        let partner = partner(house, &seen, i);
        if let Some(j) = partner {
            seen[j].taken = true;
            // The post reaches as far as either wall's siding does.
            let (low, high) =
                (seen[j].low.y.min(seen[i].low.y), seen[j].high.y.max(seen[i].high.y));
            seen[i].low.y = low;
            seen[i].high.y = high;
        }
        let Some(place) = fields.get(seen[i].field).and_then(|f| Place::of(house, f)) else {
            continue;
        };
        let shared = partner.and_then(|j| house.elevations.get(seen[j].elevation));
        out.extend(post(&place, &seen[i], shared.map(|e| e.name.clone()), job));
    }
    out
}

fn corners(field: usize, f: &Field) -> Vec<Seen> {
    let upright =
        |e: &FieldEdge| matches!(e.kind, EdgeKind::OutsideCorner | EdgeKind::InsideCorner);
    merged(&f.edges)
        .into_iter()
        .filter(upright)
        .map(|e| {
            // Counter-clockwise: the right side of a wall runs up.
            let at_right = e.to.y > e.from.y;
            let (low, high) = if at_right { (e.from, e.to) } else { (e.to, e.from) };
            Seen {
                elevation: f.elevation,
                field,
                kind: e.kind,
                tag: e.tag,
                low,
                high,
                at_right,
                taken: false,
            }
        })
        .collect()
}

/// The same corner on another elevation: by its tag; else the outermost corners of neighbours in
/// wrap order; else the one other corner of its kind, other hand and height.
fn partner(house: &House, seen: &[Seen], i: usize) -> Option<usize> {
    let me = &seen[i];
    let free = |j: usize| {
        j > i && !seen[j].taken && seen[j].elevation != me.elevation && seen[j].kind == me.kind
    };
    if let Some(tag) = &me.tag {
        // A lower roof may part a corner: the parts at the same height belong together.
        let shared = |j: &usize| seen[*j].high.y.min(me.high.y) - seen[*j].low.y.max(me.low.y);
        return (0..seen.len())
            .filter(|j| free(*j) && seen[*j].tag.as_ref() == Some(tag) && shared(j) > 0.0)
            .max_by(|a, b| shared(a).total_cmp(&shared(b)));
    }
    let alike = |j: usize| {
        seen[j].tag.is_none() && seen[j].at_right != me.at_right && same(seen[j].high.y, me.high.y)
    };
    let n = house.elevations.len();
    if house.wraps && n > 1 {
        let next = if me.at_right { (me.elevation + 1) % n } else { (me.elevation + n - 1) % n };
        let beside =
            (0..seen.len()).filter(|j| free(*j) && alike(*j) && seen[*j].elevation == next);
        // The farther out a corner stands on its elevation, the nearer it is to the neighbour.
        let outermost = beside.min_by(|a, b| {
            let out = |j: &usize| if me.at_right { seen[*j].low.x } else { -seen[*j].low.x };
            out(a).total_cmp(&out(b))
        });
        if outermost.is_some() {
            return outermost;
        }
    }
    (0..seen.len()).find(|j| free(*j) && alike(*j))
}

fn post(place: &Place, corner: &Seen, shared: Option<String>, job: &Job) -> Vec<TrimPiece> {
    let kind = if corner.kind == EdgeKind::InsideCorner {
        TrimKind::InsidePost
    } else {
        TrimKind::OutsidePost
    };
    let low = Point::new(corner.low.x, corner.low.y - job.trim.post_below);
    let high = Point::new(corner.high.x, corner.high.y - job.trim.post_top_gap);
    if high.y <= low.y {
        return Vec::new();
    }
    let mut whole = place.piece(kind, low, high, 0.0, [TrimEnd::Square, TrimEnd::Square]);
    whole.shared_with = shared;
    part(whole, job.trim.stock(kind.stock()), job.trim.post_lap)
}
