//! The courses of one field: each strip of the field, clearances taken off, parted into runs.
//!
//! Clearances: the end gap, measured along the panel, at every plumb or sloped side; the notch
//! clearance, measured up and down, at level sides that cut a panel and at an opening's sides flatter
//! than 45 degrees. A level side on a course line takes none of the course over it. From under it the
//! clearance is taken of the course below, whose nail hem would stand where the window, soffit or band
//! is: it is cut as under a side a hair lower (`TrimFact::UndersillLugs`).

use super::clearance::{Corners, leans_in};
use super::ends::{Side, end_of};
use super::thin;
use crate::geom::boolean::{difference, union_all};
use crate::geom::polygon::{Polygon, bounds, is_level_rectangle, sides};
use crate::geom::sliver::without_slivers;
use crate::geom::strip::{clip_band, reach_in_band};
use crate::geom::tol::{SAME, fits, lies_flat, onto, snap};
use crate::geom::vocabulary::{Point, Rect, Vec2};
use crate::job::Job;
use crate::model::course::{PlannedCourse, PlannedRun, StoryPole};
use crate::model::house::{DrawnOpening, DrawnWall, EdgeKind};
use crate::model::ids::RunId;
use crate::model::notch::LEAST_HEM_CUT;
use crate::model::receiver::{Field, FieldEdge, Receiver};

/// Least area, square inches, of a strip worth a piece: under a postage stamp it is drawing noise. The check
/// leaves as much bare, and its own noise more (`verify/area`).
const LEAST_AREA: f64 = 0.5;

/// The courses of a field, bottom up; a course with nothing to lay is left out.
pub fn courses(field: &Field, wall: &DrawnWall, pole: &StoryPole, job: &Job) -> Vec<PlannedCourse> {
    let Some(all) = bounds(field.shapes.iter().flat_map(|p| &p.outer)) else { return Vec::new() };
    let (first, last) = (pole.course_at(all.y0), pole.course_at(all.y1 - 2.0 * SAME));
    let corners = Corners::of(field, job.end_gap(), job.courses.notch_clearance);
    (first..=last)
        .map(|index| course((field, &corners), wall, pole, job, index))
        .filter(|c| !c.runs.is_empty())
        .collect()
}

fn course(
    (field, corners): (&Field, &Corners),
    wall: &DrawnWall,
    pole: &StoryPole,
    job: &Job,
    index: i32,
) -> PlannedCourse {
    let (bottom, top) = (pole.butt(index), pole.butt(index + 1));
    let gap = job.end_gap();
    let strip = clip_band(&field.shapes, bottom, top);
    let room = (gap, job.courses.notch_clearance);
    let blocked = blocked((field, corners), wall, (bottom, top), room);
    let clear = if blocked.is_empty() { strip } else { difference(&strip, &union_all(&blocked)) };
    let mut clear: Vec<Polygon> = without_slivers(clear)
        .into_iter()
        .flat_map(|p| even_ends(p, [bottom, top]))
        .filter(|p| p.area() > LEAST_AREA)
        .collect();
    clear.sort_by(|a, b| {
        let (a, b) = (a.bounds(), b.bounds());
        a.x0.total_cmp(&b.x0).then(a.y0.total_cmp(&b.y0))
    });
    let runs = clear
        .into_iter()
        .enumerate()
        .map(|(n, clear)| {
            let id = format!("{}/{}/{}", wall.id, index, n).into();
            run(field, wall, job, (id, (bottom, top)), clear)
        })
        .filter(|r| !is_low_peak(r, job.least_strip()))
        .collect();
    PlannedCourse { index, bottom, top, avoid: avoid(wall, bottom, top), runs }
}

fn run(
    field: &Field,
    wall: &DrawnWall,
    job: &Job,
    (id, strip): (RunId, (f64, f64)),
    clear: Polygon,
) -> PlannedRun {
    let gap = job.end_gap();
    let b = clear.bounds();
    let end = |side: Side| {
        let mut end = end_of(&clear, side, field, (gap, job.courses.notch_clearance));
        // At a fixture there is no side of the field; without pockets there is no channel either.
        if !job.siding().receivers.has_pockets() && end.receiver == Receiver::JChannel {
            end.receiver = Receiver::Trim;
        }
        end
    };
    let ends = [end(Side::Left), end(Side::Right)];
    let near = |o: &&crate::model::house::DrawnObstacle| {
        bounds(&o.outline).is_some_and(|r| overlaps(r, b))
    };
    // Boards are cut round every fixture; panels get a seam at those without a block.
    let boards = job.siding().joints.is_on_studs();
    let half = job.lap().abs() / 2.0 + job.courses.notch_clearance;
    let barred = wall.obstacles.iter().filter(|o| o.mounting_block || boards).filter(near);
    let barred = barred.filter_map(|o| bounds(&o.outline)).map(|r| (r.x0 - half, r.x1 + half));
    let mut barred: Vec<(f64, f64)> = barred.collect();
    barred.extend(thin::barred(&clear, (b.x0, b.x1), &barred, job));
    let bare = || wall.obstacles.iter().filter(|o| !(o.mounting_block || boards)).filter(near);
    let (spared, seamed): (Vec<Rect>, Vec<Rect>) = bare()
        .filter_map(|o| bounds(&o.outline))
        // What takes the whole course ends the run.
        .filter(|r| r.y0 > b.y0 + SAME || r.y1 < b.y1 - SAME)
        .partition(|r| is_spared(*r, b, strip.0, job));
    barred.extend(spared.iter().map(|r| (r.x0 - half, r.x1 + half)));
    let mut fixed: Vec<f64> = seamed
        .into_iter()
        .map(|r| past(r, job))
        // One too near an end is none.
        .filter(|x| *x > b.x0 + job.lap() && *x < b.x1 - job.lap())
        .collect();
    fixed.sort_by(f64::total_cmp);
    let notched = notched(wall, strip, b, job.courses.notch_clearance);
    PlannedRun { id, x0: b.x0 - gap, x1: b.x1 + gap, ends, gap, fixed, barred, notched, clear }
}

/// Whether a run is a peak too low for a piece: it is left to the channels that meet over it. Common
/// practice, no source.
fn is_low_peak(r: &PlannedRun, least: f64) -> bool {
    let b = r.clear.bounds();
    let top = r.clear.outer.iter().filter(|p| p.y >= b.y1 - SAME).map(|p| p.x);
    let (low, high) = top.fold((f64::MAX, f64::MIN), |(a, b), x| (a.min(x), b.max(x)));
    let leans = r.ends[0].slope > 0.0 && r.ends[1].slope < 0.0;
    leans && high - low <= SAME && b.height() < least - SAME
}

/// The seam at a bare fixture, the middle of its lap: the first panel ends this far past it
/// (`TrimFact::CutAtObstacle`), at most a lap, so that the next one reaches it.
fn past(fixture: Rect, job: &Job) -> f64 {
    fixture.x1 + job.seams.past_obstacle.min(job.lap()) - job.lap() / 2.0
}

/// Whether a panel that covers a run by itself is cut round a bare fixture rather than seamed at it: where
/// the course under it has its seam there already, or a piece beside the seam would be shorter than the
/// shortest. Common practice, no source.
fn is_spared(fixture: Rect, run: Rect, bottom: f64, job: &Job) -> bool {
    let (x, half) = (past(fixture, job), job.lap() / 2.0);
    let short = (x + half - run.x0).min(run.x1 - x + half) < job.shortest() - SAME;
    let one_panel = run.width() <= job.longest_length() + SAME;
    one_panel && (short || fixture.y0 < bottom - SAME)
}

/// From where to where openings bite into a run between two butt lines: over their heads, and under
/// their sills with the clearance there.
fn notched(wall: &DrawnWall, (bottom, top): (f64, f64), b: Rect, notch: f64) -> Vec<(f64, f64)> {
    let high = top + notch.max(LEAST_HEM_CUT);
    let within = |o: &DrawnOpening| {
        let (_, _, sill, head) = o.sides();
        let reaches = sill < high - SAME && head > bottom + SAME;
        if reaches { reach_in_band(&o.outline, bottom, high) } else { None }
    };
    let over = |r: &(f64, f64)| r.0 < b.x1 - SAME && r.1 > b.x0 + SAME;
    wall.openings.iter().filter_map(within).filter(over).collect()
}

fn overlaps(a: Rect, b: Rect) -> bool {
    a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1
}

/// Jamb lines of openings beside, under or over this course: within one course of it. Of an opening with
/// slanted or stepped jambs, how far each part of it reaches to either side in this course, and in one under
/// and one over it.
fn avoid(wall: &DrawnWall, bottom: f64, top: f64) -> Vec<f64> {
    let reach = top - bottom;
    let (low, high) = (bottom - reach + SAME, top + reach - SAME);
    let mut lines: Vec<f64> = Vec::new();
    for o in &wall.openings {
        let (left, right, sill, head) = o.sides();
        if sill >= high || head <= low {
            continue;
        }
        if is_level_rectangle(&o.outline) {
            lines.extend([left, right]);
            continue;
        }
        let shape = [Polygon::simple(o.outline.clone()).wound()];
        for (from, to) in [(low, bottom), (bottom, top), (top, high)] {
            let parts = clip_band(&shape, from, to);
            lines.extend(parts.iter().map(Polygon::bounds).flat_map(|b| [snap(b.x0), snap(b.x1)]));
        }
    }
    lines.sort_by(f64::total_cmp);
    lines.dedup();
    lines
}

/// What clearances take off a strip.
fn blocked(
    (field, corners): (&Field, &Corners),
    wall: &DrawnWall,
    strip: (f64, f64),
    (gap, notch): (f64, f64),
) -> Vec<Polygon> {
    let sides = field.edges.iter().enumerate().filter(|(_, e)| {
        let (low, high) = (e.from.y.min(e.to.y), e.from.y.max(e.to.y));
        let hairline = high - low <= SAME && low > strip.0 - SAME && high < strip.1 + SAME;
        hairline || hem_is_cut(e, strip.1, notch) || (low < strip.1 - SAME && high > strip.0 + SAME)
    });
    let mut out: Vec<Polygon> = Vec::new();
    out.extend(sides.filter_map(|(i, e)| swept(e, strip, (gap, corners.past(i, gap)), notch)));
    // Of an opening that reaches into this strip, what is just under or over it counts too.
    let reaches = |i: usize| {
        let sides = wall.openings.get(i).map(|o| o.sides());
        sides.is_some_and(|(_, _, sill, head)| sill < strip.1 - SAME && head > strip.0 + SAME)
    };
    let slanting = field.edges.iter().filter(|e| {
        let (low, high) = (e.from.y.min(e.to.y), e.from.y.max(e.to.y));
        let clears = is_top(e) || e.opening.is_some_and(reaches);
        clears && low < strip.1 + notch && high > strip.0 - notch
    });
    out.extend(slanting.filter_map(|e| over_a_curve(e, notch)));
    out.extend(corners.fills(reaches).cloned());
    for o in &wall.obstacles {
        let Some(r) = bounds(&o.outline) else { continue };
        if r.y0 - notch >= strip.1 || r.y1 + notch <= strip.0 {
            continue;
        }
        let shape = Polygon::simple(o.outline.clone()).wound();
        // A panel goes round a mounting block, a pipe or a tap with room to move
        // (TrimFact::FixtureClearance).
        out.extend(grown(&shape, notch));
    }
    // A clearance that ends on a course line but for drawing noise leaves no hairline of panel.
    out.iter().map(|p| p.map(|q| Point::new(q.x, onto(q.y, [strip.0, strip.1])))).collect()
}

/// The shape with corners that stand at its ends or on the course's lines but for drawing noise put on
/// them. The end of a long slope stays: moved up by so little, all of the slope would be cut nearer to what it
/// lies along.
fn even_ends(shape: Polygon, lines: [f64; 2]) -> Vec<Polygon> {
    let b = shape.bounds();
    let ends_a_slope = |p: &Point| {
        let of = |(a, b): &(Point, Point)| {
            let (run, rise) = ((a.x - b.x).abs(), (a.y - b.y).abs());
            (a == p || b == p) && rise > SAME && rise <= run
        };
        shape.rings().flat_map(|r| sides(r)).any(|s| of(&s))
    };
    let even = |p: &Point| {
        let y = onto(p.y, lines);
        let y = if y != p.y && ends_a_slope(p) { p.y } else { y };
        Point::new(onto(p.x, [b.x0, b.x1]), y)
    };
    if shape.rings().flatten().all(|p| even(p) == *p) {
        return vec![shape];
    }
    union_all(&[shape.map(|p| even(&p))])
}

/// Whether a level side stands over a course so near its top that the clearance to it cuts the panels
/// under it: on the course line, or over it by less than the clearance. The field lies on the left hand
/// of its sides: under one that runs to the left.
fn hem_is_cut(e: &FieldEdge, top: f64, notch: f64) -> bool {
    let (low, high) = (e.from.y.min(e.to.y), e.from.y.max(e.to.y));
    let level = high - low <= SAME && e.to.x < e.from.x;
    level && low >= top - SAME && high - notch.max(LEAST_HEM_CUT) < top - SAME
}

/// The area swept by a side moved along the clearances.
fn swept(
    edge: &FieldEdge,
    strip: (f64, f64),
    (gap, past): (f64, [f64; 2]),
    notch: f64,
) -> Option<Polygon> {
    let (a, b) = (edge.from, edge.to);
    if (a.y - b.y).abs() <= SAME {
        let inside = a.y > strip.0 + SAME && a.y < strip.1 - SAME;
        let [left, right] = if a.x < b.x { past } else { [past[1], past[0]] };
        let (x0, x1) = (a.x.min(b.x) - left, a.x.max(b.x) + right);
        if inside {
            return Some(Polygon::rect(x0, a.y - notch, x1, a.y + notch));
        }
        if hem_is_cut(edge, strip.1, notch) {
            let room = notch.max(LEAST_HEM_CUT);
            return Some(Polygon::rect(x0, a.y - room, x1, a.y + room));
        }
        // On a course line but for drawing noise: no hairline of panel is left between.
        let line = if a.y < (strip.0 + strip.1) / 2.0 { strip.0 } else { strip.1 };
        let (low, high) = (a.y.min(b.y).min(line), a.y.max(b.y).max(line));
        return (low < high).then(|| Polygon::rect(x0, low, x1, high));
    }
    if let Some(r) = leans_in(edge, strip) {
        return Some(Polygon::rect(r.x0 - gap, r.y0, r.x1 + gap, r.y1));
    }
    let shift = Vec2::new(gap, 0.0);
    fits(0.0, gap)
        .then(|| Polygon::simple(vec![a - shift, a + shift, b + shift, b - shift]).wound())
}

/// Whether a side is a top that siding goes under, be it level or taped out of level.
fn is_top(e: &FieldEdge) -> bool {
    let flat = lies_flat(e.to.y - e.from.y, e.to.x - e.from.x);
    flat && matches!(e.kind, EdgeKind::Eave | EdgeKind::BareBottom) && e.opening.is_none()
}

/// The room over or under a slanted side of an opening: a curved head is kept clear of as a level one
/// is, where it is flatter than 45 degrees. So is a top out of level.
fn over_a_curve(edge: &FieldEdge, notch: f64) -> Option<Polygon> {
    let (a, b) = (edge.from, edge.to);
    let (run, rise) = ((a.x - b.x).abs(), (a.y - b.y).abs());
    let shift = Vec2::new(0.0, notch);
    (notch > 0.0 && rise > SAME && rise <= run)
        .then(|| Polygon::simple(vec![a - shift, b - shift, b + shift, a + shift]).wound())
}

/// A shape and the sweep of its sides by a square of half-width `by`.
fn grown(shape: &Polygon, by: f64) -> Vec<Polygon> {
    let mut parts = vec![shape.clone()];
    for (a, b) in crate::geom::polygon::sides(&shape.outer) {
        let corners = |p: Point| {
            [(-by, -by), (by, -by), (by, by), (-by, by)].map(|(x, y)| p + Vec2::new(x, y))
        };
        let points: Vec<Point> = corners(a).into_iter().chain(corners(b)).collect();
        parts.push(Polygon::simple(hull(points)));
    }
    union_all(&parts)
}

/// Convex hull, counter-clockwise, by the monotone chain (A. M. Andrew, 1979).
fn hull(mut points: Vec<Point>) -> Vec<Point> {
    points.sort_by(|a, b| a.x.total_cmp(&b.x).then(a.y.total_cmp(&b.y)));
    points.dedup();
    let half = |points: &mut dyn Iterator<Item = Point>| {
        let mut out: Vec<Point> = Vec::new();
        for p in points {
            while out.len() > 1
                && (out[out.len() - 1] - out[out.len() - 2]).cross(p - out[out.len() - 2]) <= 0.0
            {
                out.pop();
            }
            out.push(p);
        }
        out.pop();
        out
    };
    let mut ring = half(&mut points.iter().copied());
    ring.extend(half(&mut points.iter().rev().copied()));
    ring
}
