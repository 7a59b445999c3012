//! The siding itself as a saw would show it: a course cut across, a length cut along. Figures that no job
//! holds are of our own choosing, for the look alone, and never dimensioned.

use super::section::Section;
use crate::annotate::style::Ink;
use crate::geom::polygon::Polygon;
use crate::geom::strip::clip_band;
use crate::geom::vocabulary::{Point, Vec2};
use crate::job::Job;

/// How far siding and trim stand off the sheathing, inches.
#[derive(Clone, Copy, Debug)]
pub(super) struct Depths {
    /// Boards and other layers between sheathing and siding.
    pub(super) back: f64,
    /// The nail hem, or a board's back.
    pub(super) hem: f64,
    /// Where a face is nearest.
    pub(super) face: f64,
    /// Where a butt stands out.
    pub(super) butt: f64,
    /// The faces of posts and channels.
    pub(super) trim: f64,
}

impl Depths {
    pub(super) fn of(job: &Job) -> Self {
        let back = job.fasteners.foam_board + job.fasteners.other_layers;
        if !job.siding().receivers.has_pockets() {
            let thick = thickness(job);
            let butt = back + 2.0 * thick;
            return Depths { back, hem: back, face: back + thick, butt, trim: butt + 0.4 };
        }
        let hem = back + job.stand_off().max(0.06);
        let trim = (back + job.pocket()).max(hem + 0.25);
        let butt = trim - 0.08;
        let face = (hem + 0.3).min(butt - 0.12);
        Depths { back, hem, face, butt, trim }
    }

    /// Half way between a face's top and its butt.
    pub(super) fn middle(self) -> f64 {
        (self.face + self.butt) / 2.0
    }
}

/// Thickness of a board, inches.
pub(super) fn thickness(job: &Job) -> f64 {
    job.product.thickness.unwrap_or(0.5)
}

/// How high a course is drawn, inches.
pub(super) fn exposure(job: &Job) -> f64 {
    job.product.exposure
}

/// A course with its butt line at `butt`, what lies between two heights of it.
pub(super) fn course(s: &mut Section, job: &Job, butt: f64, (low, high): (f64, f64)) {
    if job.siding().receivers.has_pockets() {
        panel(s, job, butt, (low, high));
    } else {
        board(s, job, butt, (low, high));
    }
}

fn panel(s: &mut Section, job: &Job, butt: f64, (low, high): (f64, f64)) {
    let d = Depths::of(job);
    let p = &job.product;
    let at = |x: f64, up: f64| Point::new(x, butt + up);
    let (top, lock) = (p.exposure, p.lock);
    if p.has_foam() {
        let foot = lock + 0.2;
        let mut ring = vec![at(d.back + 0.03, foot)];
        ring.extend(
            faces(job, d, -0.05).into_iter().map(|q| at(q.x, q.y)).filter(|q| q.y > butt + foot),
        );
        ring.insert(1, at(d.middle() - 0.05, foot));
        ring.push(at(d.hem - 0.04, top - 0.05));
        ring.push(at(d.hem - 0.04, top + p.hem - 0.1));
        ring.push(at(d.back + 0.03, top + p.hem - 0.1));
        for part in clip_band(&[Polygon::simple(ring).wound()], low, high) {
            s.area(Ink::Offcut, Ink::Face, &part.outer);
        }
    }
    let mut path = vec![
        at(d.hem + 0.18, lock * 0.62),
        at(d.hem + 0.1, lock * 0.85),
        at(d.hem + 0.1, 0.0),
        at(d.butt, 0.0),
    ];
    path.extend(faces(job, d, 0.0).into_iter().map(|q| at(q.x, q.y)));
    path.push(at(d.hem, top - 0.03));
    path.push(at(d.hem, top + p.hem));
    between(s, &path, (low, high));
    between(s, &hook(d, |x, up| at(x, top + up), lock), (low, high));
}

/// Corners of the faces from the first butt up, over the butt line; `off` moves them outward.
fn faces(job: &Job, d: Depths, off: f64) -> Vec<Point> {
    let n = job.product.faces.max(1);
    let high = job.product.face();
    let mut out = Vec::new();
    for i in 1..=n {
        out.push(Point::new(d.face + off, f64::from(i) * high - 0.08));
        if i < n {
            out.push(Point::new(d.butt + off, f64::from(i) * high));
        }
    }
    out
}

/// The hook that a lock snaps into, over a butt line.
pub(super) fn hook(d: Depths, at: impl Fn(f64, f64) -> Point, lock: f64) -> [Point; 3] {
    [at(d.hem, lock), at(d.hem + 0.22, lock), at(d.hem + 0.22, lock * 0.4)]
}

fn board(s: &mut Section, job: &Job, butt: f64, (low, high): (f64, f64)) {
    let d = Depths::of(job);
    let (thick, width) = (thickness(job), job.product.width.unwrap_or(exposure(job)));
    let ring = vec![
        Point::new(d.face, butt),
        Point::new(d.butt, butt),
        Point::new(d.back + thick, butt + width),
        Point::new(d.back, butt + width),
    ];
    for part in clip_band(&[Polygon::simple(ring).wound()], low, high) {
        s.area(Ink::Ground, Ink::Wall, &part.outer);
    }
}

/// What of a line lies between two heights.
fn between(s: &mut Section, path: &[Point], (low, high): (f64, f64)) {
    for w in path.windows(2) {
        let (mut a, mut b) = (w[0], w[1]);
        if a.y > b.y {
            (a, b) = (b, a);
        }
        if b.y < low || a.y > high {
            continue;
        }
        let cut = |y: f64| a + (b - a) * ((y - a.y) / (b.y - a.y));
        let (from, to) =
            (if a.y < low { cut(low) } else { a }, if b.y > high { cut(high) } else { b });
        s.line(Ink::Wall, [from, to]);
    }
}

/// The nail that holds a course with its butt line at `butt`.
pub(super) fn nail(s: &mut Section, job: &Job, butt: f64) -> Point {
    let d = Depths::of(job);
    let (x, y, tip) = if job.siding().receivers.has_pockets() {
        let y = butt + job.product.exposure + job.product.hem * 0.72;
        // The gap under the head: a dime's thickness or so.
        (d.hem + 0.06, y, -job.penetration())
    } else {
        // Through the face, over the head of the board below.
        let lap = job.product.head_lap.unwrap_or(1.0);
        (d.butt - 0.02, butt + lap, -job.fasteners.sheathing - job.penetration())
    };
    let head = job.fasteners.head / 2.0;
    s.line(Ink::Opening, [Point::new(x, y), Point::new(tip, y)]);
    s.line(Ink::Wall, [Point::new(x, y - head), Point::new(x, y + head)]);
    Point::new(x, y)
}

/// A length cut along, from `start` to `end` along a wall; `at` puts (along, out) into the section.
/// `over` is how far it stands over another that it laps, `foam` from where to where its foam goes.
pub(super) fn along(
    s: &mut Section,
    job: &Job,
    (start, end): (f64, f64),
    (foam, over): ((f64, f64), f64),
    at: &impl Fn(f64, f64) -> Point,
) {
    let d = Depths::of(job);
    if !job.siding().receivers.has_pockets() {
        let ring = [at(start, d.back), at(end, d.back), at(end, d.face), at(start, d.face)];
        return s.area(Ink::Ground, Ink::Wall, &ring);
    }
    let out = d.middle();
    if job.product.has_foam() {
        let (a, b) = foam;
        let ring =
            [at(a, d.back + 0.03), at(b, d.back + 0.03), at(b, out - 0.06), at(a, out - 0.06)];
        s.area(Ink::Offcut, Ink::Face, &ring);
    }
    s.line(Ink::Wall, [at(start, out + over), at(end, out + over)]);
}

/// A point moved, for leaders.
pub(super) fn off(p: Point, x: f64, y: f64) -> Point {
    p + Vec2::new(x, y)
}
