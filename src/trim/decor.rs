//! Boards on the wall's face: flat surrounds of openings, friezes, bands with their caps
//! (`LayoutFact::BandsPartWalls`, `TrimFact::DripCaps`).

use super::channels::merged;
use super::shaped_flashing;
use super::stock::{LEAST, LEAST_LAST, Place, part, parted};
use crate::geom::polygon::{bounds, is_level_rectangle, sides};
use crate::geom::tol::{LEVEL, SAME, level, snap};
use crate::geom::vocabulary::{Point, Vec2};
use crate::job::{Job, TopFinish};
use crate::model::house::{DrawnEdge, EdgeKind, OpeningSide};
use crate::model::receiver::Field;
use crate::model::trim::{TrimEnd, TrimKind, TrimPiece};
use crate::real::Real;

/// Boards of one wall. A wall may have several fields: what hangs on the drawn wall alone is made
/// with the first of them. Band boards are the house's; a zone's set only stops at them.
pub(super) fn pieces(
    place: &Place,
    field: &Field,
    (first, of_house): (bool, bool),
    job: &Job,
) -> Vec<TrimPiece> {
    let mut out = caps(place, field, job);
    if first && of_house {
        out.extend(bands(place, job));
    }
    if first {
        out.extend(friezes(place, job));
        out.extend(rake_friezes(place, job));
        out.extend(surrounds(place, job));
    }
    out
}

/// A board from `a` to `b`, in lengths that butt.
fn board(place: &Place, kind: TrimKind, a: Point, b: Point, job: &Job) -> Vec<TrimPiece> {
    if a.distance(b) < LEAST {
        return Vec::new();
    }
    let whole = place.piece(kind, a, b, 0.0, [TrimEnd::Square, TrimEnd::Square]);
    parted(whole, job.stock(kind.stock()), 0.0, LEAST_LAST)
}

fn bands(place: &Place, job: &Job) -> Vec<TrimPiece> {
    let lines = place.wall.bands.iter().filter_map(|p| middle_line(&p.outer));
    lines.flat_map(|(a, b)| board(place, TrimKind::Band, a, b, job)).collect()
}

/// The middle line of a band, left to right, along its longest side that is not plumb; of an upright
/// board, foot to head.
fn middle_line(ring: &[Point]) -> Option<(Point, Point)> {
    let b = bounds(ring)?;
    if is_level_rectangle(ring) && b.height() > b.width() {
        let x = snap((b.x0 + b.x1) / 2.0);
        return Some((Point::new(x, b.y0), Point::new(x, b.y1)));
    }
    let run =
        |s: &(Point, Point)| if (s.1.x - s.0.x).abs() > LEVEL { s.0.distance(s.1) } else { 0.0 };
    let (a, b) = sides(ring).max_by(|s, t| run(s).total_cmp(&run(t)))?;
    let along = if b.x > a.x { b - a } else { a - b } / run(&(a, b)).max(LEVEL);
    let over = |axis: Vec2| {
        let all = ring.iter().map(|p| (*p - a).dot(axis));
        all.fold((f64::MAX, f64::MIN), |(low, high), t| (low.min(t), high.max(t)))
    };
    let ((from, to), (low, high)) = (over(along), over(Vec2::new(-along.y, along.x)));
    let foot = a + Vec2::new(-along.y, along.x) * ((low + high) / 2.0);
    let at = |t: f64| {
        let p = foot + along * t;
        Point::new(snap(p.x), snap(p.y))
    };
    Some((at(from), at(to)))
}

/// A cap over each band that siding stands on: its flashing runs behind the siding above and over
/// the board below.
fn caps(place: &Place, field: &Field, job: &Job) -> Vec<TrimPiece> {
    // Boards keep clear of the cap itself.
    let ledge = job.clearances().ledge;
    let on_band = |y: f64, x: f64| {
        let top = |p: &crate::geom::polygon::Polygon| {
            let b = p.bounds();
            (b.y1 - y).abs() < 0.1 && x > b.x0 - 0.1 && x < b.x1 + 0.1
        };
        place.wall.bands.iter().any(top)
    };
    merged(&field.edges)
        .iter()
        .filter(|e| {
            e.kind == EdgeKind::BareTop && on_band(e.from.y - ledge, e.from.midpoint(e.to).x)
        })
        .flat_map(|e| {
            let (a, b) = if e.from.x < e.to.x { (e.from, e.to) } else { (e.to, e.from) };
            let down = Vec2::new(0.0, -ledge);
            let (a, b) = (a + down, b + down);
            let whole =
                place.piece(TrimKind::DripCap, a, b, 0.0, [TrimEnd::Square, TrimEnd::Square]);
            part(whole, job.trim.drip_cap, job.trim.channel_face)
        })
        .collect()
}

/// A frieze along every level top, and a crown over it where the job has one.
fn friezes(place: &Place, job: &Job) -> Vec<TrimPiece> {
    let height = job.trim.frieze;
    if height <= 0.0 {
        return Vec::new();
    }
    let tops = place.wall.edges.iter().filter(|e| e.kind == EdgeKind::Eave);
    tops.flat_map(|e| {
        let (a, b) = if e.from.x < e.to.x { (e.from, e.to) } else { (e.to, e.from) };
        let down = |p: Point| Point::new(p.x, p.y - height / 2.0);
        let mut out = board(place, TrimKind::Frieze, down(a), down(b), job);
        if job.trim.top == TopFinish::Crown {
            out.extend(board(place, TrimKind::Crown, a, b, job));
        }
        out
    })
    .collect()
}

/// A board along every rake: mitered where two rakes meet, cut plumb at a plumb side, where its lower
/// edge is the longer one.
fn rake_friezes(place: &Place, job: &Job) -> Vec<TrimPiece> {
    let width = job.trim.rake_frieze;
    if width <= 0.0 {
        return Vec::new();
    }
    let edges = &place.wall.edges;
    let rakes = edges.iter().filter(|e| e.kind == EdgeKind::Rake);
    rakes
        .flat_map(|e| {
            let (a, b) = if e.from.x < e.to.x { (e.from, e.to) } else { (e.to, e.from) };
            let along = (b - a) / a.distance(b).max(SAME);
            // Rakes run leftward, the wall on their left hand: down is inward.
            let down = Vec2::new(along.y, -along.x) * (width / 2.0);
            let (left, right) = (end_cut(edges, e, a), end_cut(edges, e, b));
            // Along its middle a board ends half a slant short of its long point.
            let (past_left, past_right) = (left.past(width), right.past(width));
            let (from, to) = (a + down - along * past_left, b + down + along * past_right);
            if from.distance(to) < LEAST {
                return Vec::new();
            }
            let (first, last) = (past_left.abs(), past_right.abs());
            let ends = [left.end(), right.end()];
            let whole = place.piece(TrimKind::Frieze, from, to, first + last, ends);
            let (length, mut done) = (whole.length, 0.0);
            // A joint stands clear of the slant of the last end: a board is cut square there.
            let least = LEAST_LAST.max(2.0 * last);
            let mut out = parted(whole, job.stock(TrimKind::Frieze.stock()), 0.0, least);
            for t in &mut out {
                let at = |s: f64| from + along * (s.clamp(first, length - last) - first);
                let (p, q) = (at(done), at(done + t.length));
                (t.from, t.to) = ([snap(p.x), snap(p.y)], [snap(q.x), snap(q.y)]);
                done += t.length;
            }
            out
        })
        .collect()
}

/// What a board along a rake meets at its end.
enum RakeEnd {
    /// Another rake: half of the angle between them, off square.
    Rake(f64),
    /// A plumb side: the rake's own angle.
    Plumb(f64),
    /// Neither.
    Free,
}

impl RakeEnd {
    /// How far the middle of a board goes past the rake's end, square to the rake: as far as its long
    /// point goes past the middle, one way or the other.
    fn past(&self, width: f64) -> f64 {
        match self {
            RakeEnd::Rake(angle) => -width / 2.0 * angle.to_radians().tangent(),
            RakeEnd::Plumb(angle) => width / 2.0 * angle.to_radians().tangent(),
            RakeEnd::Free => 0.0,
        }
    }

    fn end(&self) -> TrimEnd {
        match self {
            RakeEnd::Rake(angle) | RakeEnd::Plumb(angle) => TrimEnd::Miter(*angle),
            RakeEnd::Free => TrimEnd::Square,
        }
    }
}

fn end_cut(edges: &[DrawnEdge], rake: &DrawnEdge, at: Point) -> RakeEnd {
    let touches = |e: &DrawnEdge| e.from.distance(at) < SAME || e.to.distance(at) < SAME;
    let steep = |e: &DrawnEdge| {
        let rise = if e.to.x > e.from.x { e.to - e.from } else { e.from - e.to };
        rise.y.angle_over(rise.x).to_degrees()
    };
    let others = || edges.iter().filter(|e| !std::ptr::eq(*e, rake) && touches(e));
    if let Some(o) = others().find(|e| e.kind == EdgeKind::Rake) {
        return RakeEnd::Rake((steep(rake) - steep(o)).abs() / 2.0);
    }
    if others().any(|e| level(e.to.x - e.from.x)) {
        return RakeEnd::Plumb(steep(rake).abs());
    }
    RakeEnd::Free
}

/// Flat boards round each opening: jambs between head and sill of a rectangle.
fn surrounds(place: &Place, job: &Job) -> Vec<TrimPiece> {
    let w = job.trim.surround;
    if w <= 0.0 {
        return Vec::new();
    }
    let mut out = Vec::new();
    for o in &place.wall.openings {
        if !is_level_rectangle(&o.outline) {
            out.extend(shaped_flashing::surround(place, o, job));
            continue;
        }
        let (left, right, low, high) = o.own_sides();
        // Where a zone ends so near to a jamb that nothing is worth a board over it, the jamb's runs through.
        let wide = right - left >= LEAST;
        let sill = wide && o.kind.has_sill() && o.ends_at(OpeningSide::Sill);
        let head = wide && o.ends_at(OpeningSide::Head);
        let (foot, top) = (if sill { low + w } else { low }, if head { high - w } else { high });
        let p = |x: f64, y: f64| Point::new(x, y);
        let mut lines = Vec::new();
        if head {
            lines.push((p(left, high - w / 2.0), p(right, high - w / 2.0)));
        }
        if sill {
            lines.push((p(left, low + w / 2.0), p(right, low + w / 2.0)));
        }
        for (side, x) in
            [(OpeningSide::Left, left + w / 2.0), (OpeningSide::Right, right - w / 2.0)]
        {
            if o.ends_at(side) && top > foot + SAME {
                lines.push((p(x, foot), p(x, top)));
            }
        }
        let mut mine: Vec<TrimPiece> = lines
            .into_iter()
            .flat_map(|(a, b)| board(place, TrimKind::Surround, a, b, job))
            .collect();
        mine.iter_mut().for_each(|t| t.opening = Some(o.id.clone()));
        out.extend(mine);
    }
    out
}
