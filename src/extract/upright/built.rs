//! Where the top of a view is by what is built: doors stand at the foot of their walls, gables point
//! up, grade and the first floor lie low, roofs high.

use std::collections::BTreeMap;

use crate::extract::outline::{Outline, stroke_box};
use crate::extract::views::View;
use crate::finding::views::Tells;
use crate::geom::polygon::{sides, signed_area};
use crate::geom::vocabulary::{Point, Rect, Vec2};
use crate::model::linework::{Linework, Role, Stroke};

/// How far a door may stand off the foot of its wall, inches (common practice, no source).
const AT_FOOT: f64 = 12.0;
/// A door that stands nearer to the top of its wall than this, and not at its foot, hangs, inches (common
/// practice, no source: over an upright door stands its header).
const HANGS: f64 = 3.0;
/// Sides that lie nearer to an axis than this are no slopes of a roof: the sine of 5 degrees.
const SLOPE: f64 = 0.087;
/// The sine of the slope of 3 in 12, the least of most roofs that shed water (common practice, no source).
const LEAST_PITCH: f64 = 0.2425;
/// Less of a roof than this, inches, points nowhere.
const GABLE: f64 = 24.0;
/// Grade and floor lie in the lowest part of the walls, roofs in the highest (common practice).
const LOW: f64 = 0.35;
/// Heights nearer than this are one, inches.
const ONE_HEIGHT: f64 = 1.0;

/// Something that tells where the top is.
#[derive(Clone, Copy, Debug)]
pub(super) struct Top {
    pub(super) by: Tells,
    /// Quarter turns counter-clockwise from up.
    pub(super) top: u8,
    /// Whether it hardly ever misleads.
    pub(super) firm: bool,
    /// Whether it needs nothing beside it.
    pub(super) alone: bool,
}

/// Everything that tells.
pub(super) fn tops(lines: &Linework, view: &View, walls: &[Outline], frame: Rect) -> Vec<Top> {
    let strokes: Vec<&Stroke> = view.strokes(lines).collect();
    let of = |role: Role| strokes.iter().copied().filter(move |s| s.role == Some(role));
    let doors = things(of(Role::Door));
    let windows = things(of(Role::Window));
    let titles: Vec<Point> =
        view.labels(lines).filter(|l| l.role == Some(Role::Title)).map(|l| l.text.at).collect();
    let all = [
        (Tells::Gables, gables(walls), true),
        (Tells::Doors, standing(&doors, walls), true),
        (Tells::Grade, lying(of(Role::Grade), frame), true),
        (Tells::LevelLine, lying(of(Role::Level), frame), false),
        (Tells::Roofs, roofs(of(Role::Roof), frame), false),
        (Tells::Heads, heads(&windows), false),
        (Tells::TitlePlace, outside(&titles, frame), false),
    ];
    let hanging = hangs(walls);
    let alone = |by: Tells, top: u8| {
        top == 2 && (hanging && by == Tells::Gables || by == Tells::Doors && hang(&doors, walls))
    };
    let told = |(by, top, firm): (Tells, Option<u8>, bool)| {
        top.map(|top| Top { by, top, firm, alone: alone(by, top) })
    };
    all.into_iter().filter_map(told).collect()
}

/// The quarter that a direction points to; none where it points between two.
fn quarter(v: Vec2) -> Option<u8> {
    if v.y.abs() >= 2.0 * v.x.abs() && v.y != 0.0 {
        Some(if v.y > 0.0 { 0 } else { 2 })
    } else if v.x.abs() >= 2.0 * v.y.abs() && v.x != 0.0 {
        Some(if v.x > 0.0 { 3 } else { 1 })
    } else {
        None
    }
}

/// Things by their boxes: a block is one.
fn things<'a>(strokes: impl Iterator<Item = &'a Stroke>) -> Vec<Rect> {
    let mut out: BTreeMap<(Option<usize>, usize), Rect> = BTreeMap::new();
    for (i, s) in strokes.enumerate() {
        let key = (s.group, if s.group.is_some() { 0 } else { i });
        let b = stroke_box(s);
        out.entry(key).and_modify(|r| *r = r.union(b)).or_insert(b);
    }
    out.into_values().collect()
}

/// Which way the slopes of the walls' tops look, taken together.
fn gables(walls: &[Outline]) -> Option<u8> {
    let mut sum = Vec2::ZERO;
    for o in walls {
        let turn = signed_area(&o.ring).signum();
        for (a, b) in sides(&o.ring) {
            let along = (b - a) * turn;
            let length = along.hypot();
            let slopes = along.x.abs().min(along.y.abs()) > SLOPE * length;
            // Counter-clockwise the outside lies to the right hand.
            sum += if slopes { Vec2::new(along.y, -along.x) } else { Vec2::ZERO };
        }
    }
    quarter(sum).filter(|_| sum.hypot() >= GABLE)
}

/// Whether walls end below in a gable, as steep as roofs are on both sides of it, and have no slope above:
/// ground falls one way, and less.
fn hangs(walls: &[Outline]) -> bool {
    let (mut above, mut below) = (0.0, [0.0; 2]);
    for o in walls {
        let turn = signed_area(&o.ring).signum();
        for (a, b) in sides(&o.ring) {
            let along = (b - a) * turn;
            let out = Vec2::new(along.y, -along.x) / along.hypot();
            if out.y > 0.0 && out.x.abs() > SLOPE {
                above += along.hypot();
            } else if out.y < 0.0 && out.x.abs() > LEAST_PITCH {
                below[usize::from(out.x > 0.0)] += along.hypot();
            }
        }
    }
    above == 0.0 && below.iter().all(|length| *length >= GABLE)
}

/// The smallest wall round a thing.
fn wall_of(thing: &Rect, walls: &[Outline]) -> Option<Rect> {
    let frames = walls.iter().map(Outline::frame).filter(|f| f.contains(thing.center()));
    frames.min_by(|a, b| a.area().total_cmp(&b.area()))
}

/// Whether every door hangs from the top of its wall.
fn hang(doors: &[Rect], walls: &[Outline]) -> bool {
    let hangs = |(d, w): (&Rect, Rect)| w.y1 - d.y1 <= HANGS && d.y0 - w.y0 > AT_FOOT;
    let mut on_walls = doors.iter().filter_map(|d| Some((d, wall_of(d, walls)?))).peekable();
    on_walls.peek().is_some() && on_walls.all(hangs)
}

/// The side of its wall that each door stands at, where it stands at one alone; what most say.
fn standing(doors: &[Rect], walls: &[Outline]) -> Option<u8> {
    let mut said = [0usize; 4];
    for d in doors {
        let Some(w) = wall_of(d, walls) else { continue };
        // Where the foot is the top is opposite.
        let off = [d.y0 - w.y0, w.x1 - d.x1, w.y1 - d.y1, d.x0 - w.x0];
        let at: Vec<usize> = (0..4).filter(|q| off[*q] <= AT_FOOT).collect();
        if let [one] = at[..] {
            said[one] += 1;
        }
    }
    let total: usize = said.iter().sum();
    (0..4u8).find(|q| total > 0 && 3 * said[usize::from(*q)] >= 2 * total)
}

/// Where the middle of lines lies along the walls: 0 at their foot or left, 1 at their top or right.
fn share(strokes: &[Rect], frame: Rect) -> Vec2 {
    let middle = strokes.iter().map(|b| b.center().to_vec2()).sum::<Vec2>() / strokes.len() as f64;
    let off = middle - frame.origin().to_vec2();
    Vec2::new(off.x / frame.width().max(1.0), off.y / frame.height().max(1.0))
}

/// The top, where long lines lie low.
fn lying<'a>(strokes: impl Iterator<Item = &'a Stroke>, frame: Rect) -> Option<u8> {
    let boxes: Vec<Rect> = strokes.map(stroke_box).collect();
    let all = boxes.iter().copied().reduce(|a, b| a.union(b))?;
    let at = share(&boxes, frame);
    if all.width() >= 3.0 * all.height() && all.width() >= 0.5 * frame.width() {
        low(at.y, [0, 2])
    } else if all.height() >= 3.0 * all.width() && all.height() >= 0.5 * frame.height() {
        low(at.x, [3, 1])
    } else {
        None
    }
}

fn low(share: f64, [if_low, if_high]: [u8; 2]) -> Option<u8> {
    if share <= LOW {
        Some(if_low)
    } else if share >= 1.0 - LOW {
        Some(if_high)
    } else {
        None
    }
}

/// The top, where roofs lie beyond one side of the walls' middle.
fn roofs<'a>(strokes: impl Iterator<Item = &'a Stroke>, frame: Rect) -> Option<u8> {
    let boxes: Vec<Rect> = strokes.filter(|s| s.closed).map(stroke_box).collect();
    if boxes.is_empty() {
        return None;
    }
    let at = share(&boxes, frame);
    match (low(at.x, [1, 3]), low(at.y, [2, 0])) {
        (None, Some(q)) | (Some(q), None) => Some(q),
        _ => None,
    }
}

/// Up or down, where windows have heads in common and sills not, or the other way.
fn heads(windows: &[Rect]) -> Option<u8> {
    let heights = |of: fn(&Rect) -> f64| {
        let mut all: Vec<f64> = windows.iter().map(of).collect();
        all.sort_by(f64::total_cmp);
        all.dedup_by(|b, a| *b - *a <= ONE_HEIGHT);
        all.len()
    };
    let (heads, sills) = (heights(|b| b.y1), heights(|b| b.y0));
    if sills >= 2 * heads && sills > 2 {
        Some(0)
    } else if heads >= 2 * sills && heads > 2 {
        Some(2)
    } else {
        None
    }
}

/// The top, where titles stand beyond the opposite side of the walls.
fn outside(titles: &[Point], frame: Rect) -> Option<u8> {
    let one = |p: &Point| {
        let at = [p.y < frame.y0, p.x > frame.x1, p.y > frame.y1, p.x < frame.x0];
        let sides: Vec<u8> = (0..4u8).filter(|q| at[usize::from(*q)]).collect();
        if let [one] = sides[..] { Some(one) } else { None }
    };
    let first = titles.first().and_then(one)?;
    titles.iter().all(|p| one(p) == Some(first)).then_some(first)
}
