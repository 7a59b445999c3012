//! One elevation: the source in grey, panels with courses, seams and marks, trim, dimensions.

use super::canvas::Canvas;
use super::page::{Page, room, size};
use super::place::text_box;
use super::scale::{Scale, fit};
use super::style::{HEADING, Ink, TEXT};
use crate::geom::polygon::ring_contains;
use crate::geom::vocabulary::{Affine, Point, Rect, Vec2};
use crate::model::house::{EdgeKind, OpeningKind};
use crate::model::layout::{Course, Elevation, Layout, Piece, Wall, Xy};
use crate::model::linework::Role;
use crate::model::trim::{TrimKind, TrimPiece};
use crate::units::{feet_inches, inches_fraction};

/// Paper room kept beside the walls for course numbers and heights, and below for dimensions.
const BESIDE: f64 = 1.25;
const BELOW: f64 = 1.75;
const ABOVE: f64 = 0.5;

/// From elevation inches to paper.
pub(super) struct View {
    pub(super) map: Affine,
    pub(super) factor: f64,
}

impl View {
    pub(super) fn at(&self, x: f64, y: f64) -> Point {
        self.map * Point::new(x, y)
    }

    fn xy(&self, p: &Xy) -> Point {
        self.at(p[0], p[1])
    }
}

/// Box round the walls of an elevation.
pub(super) fn extent(e: &Elevation) -> Rect {
    let points: Vec<Point> =
        e.walls.iter().flat_map(|w| &w.outline).map(|p| Point::new(p[0], p[1])).collect();
    crate::geom::polygon::bounds(&points).unwrap_or(Rect::new(0.0, 0.0, 1.0, 1.0))
}

/// The sheet of one elevation.
pub(super) fn sheet(layout: &Layout, index: usize) -> Page {
    let e = &layout.elevations[index];
    let area = room(layout);
    let house = extent(e);
    let style = layout.job.sheet.lengths;
    let free = (area.width() - 2.0 * BESIDE, area.height() - BELOW - ABOVE - 0.5);
    let scale =
        fit((house.width(), house.height()), free, style, layout.job.sheet.scale.as_deref());
    let k = 1.0 / scale.factor;
    // The walls stand in the middle of the sheet, over the dimensions.
    let left = area.center().x - house.width() * k / 2.0;
    let bottom = area.y0 + BELOW + 0.45 + (free.1 - house.height() * k).max(0.0) / 2.0;
    let map = Affine::translate((left, bottom))
        * Affine::scale(k)
        * Affine::translate((-house.x0, -house.y0));
    let view = View { map, factor: scale.factor };
    let (w, h) = size(layout);
    let mut c = Canvas::new(area.intersect(Rect::new(0.0, 0.0, w, h)));
    backdrop(&mut c, e, &view, area);
    title(&mut c, e, &scale, layout, area);
    for wall in &e.walls {
        panels(&mut c, wall, &view);
        outlines(&mut c, wall, &view);
    }
    ground(&mut c, e, &view, house);
    for wall in &e.walls {
        openings(&mut c, wall, &view);
    }
    trim_lines(&mut c, layout, e, &view);
    heights(&mut c, e, &view, house);
    widths(&mut c, e, &view, house);
    slopes(&mut c, e, &view);
    bare(&mut c, e, &view);
    let unplaced = marks(&mut c, e, &view) + trim_marks(&mut c, layout, e, &view);
    key(&mut c, area, unplaced);
    c.finish_marks();
    let panels: usize =
        e.walls.iter().flat_map(|w| &w.courses).flat_map(|c| &c.runs).map(|r| r.pieces.len()).sum();
    Page {
        name: slug(&e.name),
        title: e.name.clone(),
        description: format!(
            "{} with {} pieces of siding on {} walls, at {}",
            e.name,
            panels,
            e.walls.len(),
            scale.words
        ),
        scale: scale.words,
        canvas: c,
    }
}

/// A name as a plain file stem.
fn slug(name: &str) -> String {
    let words: Vec<String> = name
        .to_lowercase()
        .split(|c: char| !c.is_ascii_alphanumeric())
        .filter(|w| !w.is_empty())
        .take(5)
        .map(str::to_owned)
        .collect();
    if words.is_empty() {
        "elevation".to_owned()
    } else {
        words.join("-").chars().take(40).collect()
    }
}

fn backdrop(c: &mut Canvas, e: &Elevation, v: &View, area: Rect) {
    let shown = |r: Option<Role>| {
        !matches!(
            r,
            Some(Role::Frame | Role::Grade | Role::Level | Role::InsideCorner | Role::Wall)
        )
    };
    for b in e.backdrop.iter().filter(|b| shown(b.role)) {
        let points: Vec<Point> = b.points.iter().map(|p| v.map * *p).collect();
        if points.iter().any(|p| !area.contains(*p)) {
            continue;
        }
        if b.closed { c.ring(Ink::Source, points) } else { c.chain(Ink::Source, points) }
    }
}

fn title(c: &mut Canvas, e: &Elevation, scale: &Scale, layout: &Layout, area: Rect) {
    let y = area.y0 + 0.12;
    let w = c.left(
        &super::canvas::fitted(&e.name, HEADING, true, 6.0),
        HEADING,
        true,
        Point::new(area.x0, y),
    );
    c.left(&scale.words, TEXT, false, Point::new(area.x0 + w + 0.25, y));
    // Scale bar: four parts of a round length.
    let part = if scale.factor >= 90.0 {
        96.0
    } else if scale.factor >= 40.0 {
        48.0
    } else {
        12.0
    };
    let (x0, len) = (area.x0 + w + 1.9, part / scale.factor);
    for i in 0..4 {
        let x = x0 + f64::from(i) * len;
        let r = Rect::new(x, y - 0.03, x + len, y + 0.03);
        c.rect(if i % 2 == 0 { Ink::Dimension } else { Ink::Offcut }, r);
    }
    let end = x0 + 4.0 * len;
    let words = if layout.drawing.unit_proved {
        feet_inches(4.0 * part)
    } else {
        format!("{} DO NOT SCALE", feet_inches(4.0 * part))
    };
    c.left(&words, TEXT, false, Point::new(end + 0.08, y));
}

fn panels(c: &mut Canvas, w: &Wall, v: &View) {
    for course in &w.courses {
        for run in &course.runs {
            for p in &run.pieces {
                for ring in std::iter::once(&p.outline).chain(&p.holes).chain(&p.more) {
                    c.ring(Ink::Course, ring.iter().map(|q| v.xy(q)).collect::<Vec<_>>());
                }
            }
            for s in &run.seams {
                if let Some((low, high)) = run.seam_height(*s) {
                    c.line(Ink::Seam, v.at(*s, low), v.at(*s, high));
                }
            }
        }
    }
}

fn outlines(c: &mut Canvas, w: &Wall, v: &View) {
    for ring in &w.field {
        c.ring(Ink::Wall, ring.iter().map(|p| v.xy(p)).collect::<Vec<_>>());
    }
}

fn openings(c: &mut Canvas, w: &Wall, v: &View) {
    for o in &w.openings {
        c.ring(Ink::Opening, o.outline.iter().map(|p| v.xy(p)).collect::<Vec<_>>());
        let name = o.id.rsplit('-').next().unwrap_or(&o.id);
        let size = format!("{} x {}", feet_inches(o.right - o.left), feet_inches(o.head - o.sill));
        let centre = v.at((o.left + o.right) / 2.0, (o.sill + o.head) / 2.0);
        let room = (o.right - o.left) / v.factor;
        let kind = match o.kind {
            OpeningKind::Window => "window",
            OpeningKind::Door => "door",
            OpeningKind::OverheadDoor => "overhead door",
            OpeningKind::Vent => "vent",
        };
        let lines = [format!("{name} {kind}"), size];
        let widest =
            lines.iter().map(|l| crate::typeface::width(l, TEXT, false)).fold(0.0, f64::max);
        if widest + 0.06 <= room && (o.head - o.sill) / v.factor > 0.4 {
            c.centred(&lines[0], TEXT, false, centre + Vec2::new(0.0, 0.08));
            c.centred(&lines[1], TEXT, false, centre - Vec2::new(0.0, 0.08));
        } else if crate::typeface::width(name, TEXT, true) + 0.04 <= room {
            c.centred(name, TEXT, true, centre);
        }
    }
    for o in &w.obstacles {
        c.ring(Ink::Opening, o.outline.iter().map(|p| v.xy(p)).collect::<Vec<_>>());
    }
}

fn ground(c: &mut Canvas, e: &Elevation, v: &View, house: Rect) {
    let inside = |p: &&Xy| p[0] >= house.x0 - 8.0 && p[0] <= house.x1 + 8.0;
    let points: Vec<Point> = e.grade.iter().filter(inside).map(|p| v.xy(p)).collect();
    if points.len() > 1 {
        c.chain(Ink::Grade, points);
    }
    c.line(
        Ink::Level,
        v.at(house.x0, 0.0) - Vec2::new(0.2, 0.0),
        v.at(house.x1, 0.0) + Vec2::new(0.2, 0.0),
    );
}

fn ink(kind: TrimKind) -> Ink {
    match kind {
        TrimKind::OutsidePost | TrimKind::InsidePost => Ink::Post,
        TrimKind::Starter => Ink::Starter,
        TrimKind::FinishTrim => Ink::Finish,
        _ => Ink::Channel,
    }
}

fn trim_lines(c: &mut Canvas, layout: &Layout, e: &Elevation, v: &View) {
    // A post shared with another elevation is counted there and shown on both.
    let corners = e.walls.iter().flat_map(|w| &w.edges);
    for s in corners.filter(|s| matches!(s.kind, EdgeKind::OutsideCorner | EdgeKind::InsideCorner))
    {
        c.line(Ink::Post, v.xy(&s.from), v.xy(&s.to));
    }
    for t in layout.trims.iter().filter(|t| t.elevation == e.name) {
        // Drawn a hair off the edge it follows, so that both lines are seen.
        let off = match t.kind {
            TrimKind::Starter => Vec2::new(0.0, -0.02),
            TrimKind::FinishTrim => Vec2::new(0.0, -0.03),
            TrimKind::DripCap => Vec2::new(0.0, 0.05),
            TrimKind::HeadChannel => Vec2::new(0.0, 0.02),
            TrimKind::SillChannel => Vec2::new(0.0, -0.02),
            _ => Vec2::ZERO,
        };
        // A channel over a curved head is bent along it.
        let curve = t
            .opening
            .as_ref()
            .filter(|_| t.kind == TrimKind::HeadChannel)
            .and_then(|id| curved_head(e, id));
        match curve {
            Some(points) => {
                c.chain(Ink::Channel, points.iter().map(|p| v.xy(p) + off).collect::<Vec<_>>())
            }
            None => c.line(ink(t.kind), v.xy(&t.from) + off, v.xy(&t.to) + off),
        }
    }
}

/// The points of an opening's head over its jambs, where it is not one level line.
fn curved_head(e: &Elevation, opening: &str) -> Option<Vec<Xy>> {
    let heads = e.walls.iter().flat_map(|w| &w.edges);
    let sides: Vec<_> = heads
        .filter(|s| s.kind == EdgeKind::Head && s.opening.as_deref() == Some(opening))
        .collect();
    if sides.len() < 3 {
        return None;
    }
    let mut points: Vec<Xy> = sides.iter().flat_map(|s| [s.from, s.to]).collect();
    points.sort_by(|a, b| a[0].total_cmp(&b[0]));
    points.dedup();
    Some(points)
}

/// Course numbers on the left, butt heights and rips on the right.
fn heights(c: &mut Canvas, e: &Elevation, v: &View, house: Rect) {
    let mut levels: Vec<&Course> = e.walls.iter().flat_map(|w| &w.courses).collect();
    levels.sort_by_key(|c| c.index);
    levels.dedup_by_key(|c| c.index);
    let (x0, x1) = (v.at(house.x0, 0.0).x - 0.25, v.at(house.x1, 0.0).x + 0.25);
    // Where courses stand nearer than text is high, every second, third.. is written.
    let pitch = levels.first().map_or(1.0, |l| (l.top - l.bottom) / v.factor);
    let every = ((TEXT * 1.5) / pitch).ceil().max(1.0) as usize;
    for (i, l) in levels.iter().enumerate() {
        let y = v.at(0.0, l.bottom).y;
        c.line(Ink::Dimension, Point::new(x0 + 0.02, y), Point::new(x0 + 0.2, y));
        c.line(Ink::Dimension, Point::new(x1 - 0.2, y), Point::new(x1 - 0.02, y));
        if i % every != 0 {
            continue;
        }
        c.right(&format!("{}", l.index + 1), TEXT, true, Point::new(x0, y + pitch / 2.0));
        let rips: Vec<f64> = e
            .walls
            .iter()
            .flat_map(|w| &w.courses)
            .filter(|c| c.index == l.index)
            .flat_map(|c| &c.runs)
            .flat_map(|r| &r.pieces)
            .filter_map(|p| p.rip.as_ref())
            .map(|r| r.to - r.from)
            .collect();
        let rip = rips
            .iter()
            .copied()
            .reduce(f64::min)
            .map_or(String::new(), |r| format!("  rip {}", inches_fraction(r)));
        c.left(&format!("{}{rip}", feet_inches(l.bottom)), TEXT, false, Point::new(x1, y));
    }
}

/// A chain of widths under the walls: wall ends and opening sides, then the whole.
fn widths(c: &mut Canvas, e: &Elevation, v: &View, house: Rect) {
    let mut xs: Vec<f64> =
        e.walls.iter().flat_map(|w| [bound(w, f64::min), bound(w, f64::max)]).collect();
    xs.extend(
        e.walls
            .iter()
            .flat_map(|w| &w.openings)
            .filter(|o| o.sill < 100.0)
            .flat_map(|o| [o.left, o.right]),
    );
    let base =
        v.at(0.0, house.y0).y.min(e.grade.iter().map(|p| v.xy(p).y).fold(f64::INFINITY, f64::min));
    chain(c, v, &mut xs, base - 0.35);
    chain(c, v, &mut vec![house.x0, house.x1], base - 0.85);
}

fn bound(w: &Wall, f: fn(f64, f64) -> f64) -> f64 {
    w.outline.iter().map(|p| p[0]).reduce(f).unwrap_or(0.0)
}

/// One string of dimensions: ticks, and each length over its part, moved below where it does not
/// fit.
fn chain(c: &mut Canvas, v: &View, xs: &mut Vec<f64>, y: f64) {
    xs.sort_by(f64::total_cmp);
    xs.dedup_by(|a, b| (*a - *b).abs() < 1.0 / 32.0);
    let at = |x: f64| Point::new(v.at(x, 0.0).x, y);
    for x in xs.iter() {
        let p = at(*x);
        c.line(Ink::Dimension, p - Vec2::new(0.04, 0.04), p + Vec2::new(0.04, 0.04));
        c.line(Ink::Dimension, p - Vec2::new(0.0, 0.07), p + Vec2::new(0.0, 0.07));
    }
    for pair in xs.windows(2) {
        c.line(Ink::Dimension, at(pair[0]), at(pair[1]));
        let words = feet_inches(pair[1] - pair[0]);
        let middle = at((pair[0] + pair[1]) / 2.0);
        let spots = [0.09, -0.11, 0.24, -0.26, 0.39].map(|dy| middle + Vec2::new(0.0, dy));
        let fits = |c: &Canvas, p: &Point| c.placer.free(&text_box(&words, TEXT, false, *p));
        if let Some(p) = spots.iter().find(|p| fits(c, p)) {
            c.centred(&words, TEXT, false, *p);
            if (p.y - middle.y).abs() > 0.15 {
                c.line(
                    Ink::Dimension,
                    middle,
                    *p - Vec2::new(0.0, (p.y - middle.y).signum() * 0.07),
                );
            }
        } else {
            c.mark(&words, TEXT, middle, 1.0);
        }
    }
}

/// The 12-base triangle on every slope (FACTS DR-42).
fn slopes(c: &mut Canvas, e: &Elevation, v: &View) {
    for w in &e.walls {
        for edge in w.edges.iter().filter(|s| s.kind == EdgeKind::Rake && s.opening.is_none()) {
            let Some(pitch) = edge.pitch else { continue };
            let (a, b) = (v.xy(&edge.from), v.xy(&edge.to));
            // Short ones are undersides of lower roofs; the main slopes say enough.
            if a.distance(b) < 1.8 {
                continue;
            }
            let middle = a.midpoint(b);
            let out = if a.y > b.y { -1.0 } else { 1.0 };
            // Outside, above the rake.
            let corner = middle
                + Vec2::new(
                    -0.05 * out - if out < 0.0 { 0.35 } else { 0.0 }
                        + if out > 0.0 { 0.35 } else { 0.0 },
                    0.3,
                );
            let run = 0.3;
            let rise = run * pitch / 12.0;
            // The hypotenuse lies along the rake's own slope.
            let tip = corner + Vec2::new(-out * run, 0.0);
            let up = Point::new(tip.x, tip.y + rise);
            c.line(Ink::Dimension, corner, tip);
            c.line(Ink::Dimension, tip, up);
            c.line(Ink::Dimension, up, corner);
            c.mark("12", TEXT, corner.midpoint(tip) - Vec2::new(0.0, 0.09), 0.3);
            let words = format!("{}", (pitch * 100.0).round() / 100.0);
            c.mark(&words, TEXT, Point::new(tip.x - out * 0.12, tip.y + rise / 2.0), 0.3);
        }
    }
}

/// Areas inside walls that take no siding are named.
fn bare(c: &mut Canvas, e: &Elevation, v: &View) {
    for b in e.backdrop.iter().filter(|b| b.role == Some(Role::Bare) && b.closed) {
        let Some(r) = crate::geom::polygon::bounds(&b.points) else { continue };
        c.mark("not sided", TEXT, v.map * Point::new(r.x0 + r.width() / 4.0, r.center().y), 1.0);
    }
}

/// A place on the piece: half way along, half up what shows of it.
fn middle(k: &Course, p: &Piece) -> (f64, f64) {
    let spans = p.outline.iter().map(|q| q[1]);
    let (low, high) =
        spans.fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), y| (a.min(y), b.max(y)));
    let y = (low.max(k.bottom) + high.min(k.top)) / 2.0;
    let x = (p.x0 + p.x1) / 2.0;
    let ring: Vec<Point> = p.outline.iter().map(|q| Point::new(q[0], q[1])).collect();
    // Where an opening or slope takes the middle, the nearest place along that is on the piece.
    let step = (p.x1 - p.x0) / 40.0;
    let mut along =
        (0..40).map(|i| x + step * f64::from(if i % 2 == 0 { i / 2 } else { -(i + 1) / 2 }));
    (along.find(|x| ring_contains(&ring, Point::new(*x, y))).unwrap_or(x), y)
}

/// Piece marks, without the wall's own prefix, which stands once beside the wall. Returns how many
/// found no room.
fn marks(c: &mut Canvas, e: &Elevation, v: &View) -> usize {
    let mut small = Vec::new();
    let mut none = 0;
    for w in &e.walls {
        let pieces = w
            .courses
            .iter()
            .flat_map(|k| k.runs.iter().flat_map(move |r| r.pieces.iter().map(move |p| (k, p))));
        for (k, p) in pieces {
            let mark = short_mark(&p.mark);
            let (x, y) = middle(k, p);
            let centre = v.at(x, y);
            let room = (p.x1 - p.x0) / v.factor;
            let r = text_box(mark, TEXT, false, centre);
            if r.width() <= room && c.placer.free(&r) {
                c.on_ground(mark, TEXT, centre);
            } else {
                small.push((mark.to_owned(), centre, room));
            }
        }
        let prefix = w
            .courses
            .first()
            .and_then(|k| k.runs.first())
            .and_then(|r| r.pieces.first())
            .and_then(|p| p.mark.split('-').next());
        if let Some(prefix) = prefix {
            let top = w.outline.iter().map(|p| p[1]).fold(f64::NEG_INFINITY, f64::max);
            let at =
                v.at((bound(w, f64::min) + bound(w, f64::max)) / 2.0, top) + Vec2::new(0.0, 0.2);
            c.mark(&format!("wall {prefix}: marks read {prefix}-course-piece"), TEXT, at, 1.5);
        }
    }
    for (mark, centre, room) in small {
        // First along the piece, then wherever there is room, with a leader.
        let slid = (1..=6)
            .flat_map(|i| [f64::from(i), -f64::from(i)])
            .map(|i| centre + Vec2::new(i * room / 14.0, 0.0));
        let along = slid.into_iter().find(|p| {
            let r = text_box(&mark, TEXT, false, *p);
            (p.x - centre.x).abs() + r.width() / 2.0 <= room / 2.0 && c.placer.free(&r)
        });
        match along {
            Some(p) => c.on_ground(&mark, TEXT, p),
            None => none += usize::from(!c.mark(&mark, TEXT, centre, 4.0)),
        }
    }
    none
}

fn short_mark(mark: &str) -> &str {
    mark.split_once('-').map_or(mark, |(_, rest)| rest)
}

fn trim_marks(c: &mut Canvas, layout: &Layout, e: &Elevation, v: &View) -> usize {
    let mine: Vec<&TrimPiece> = layout.trims.iter().filter(|t| t.elevation == e.name).collect();
    mine.iter()
        .filter(|t| {
            let middle = v.xy(&t.from).midpoint(v.xy(&t.to));
            let off = match t.kind {
                TrimKind::Starter => Vec2::new(0.0, -0.1),
                TrimKind::HeadChannel => Vec2::new(0.0, -0.1),
                TrimKind::SillChannel | TrimKind::DripCap => Vec2::new(0.0, 0.1),
                _ => Vec2::new(0.1, 0.0),
            };
            !c.mark(&t.mark, TEXT, middle + off, 5.0)
        })
        .count()
}

fn key(c: &mut Canvas, area: Rect, unplaced: usize) {
    let items = [
        (Ink::Seam, "seam"),
        (Ink::Post, "corner post OP, IP"),
        (Ink::Starter, "starter ST"),
        (Ink::Channel, "J-channel JH JJ JS JW JR JL, drip cap DC"),
        (Ink::Finish, "finish trim FT"),
        (Ink::Level, "level line"),
        (Ink::Grade, "grade"),
    ];
    let mut x = area.x0;
    let y = area.y0 + 0.42;
    for (ink, words) in items {
        c.line(ink, Point::new(x, y), Point::new(x + 0.4, y));
        let w = c.left(words, TEXT, false, Point::new(x + 0.46, y));
        x += 0.46 + w + 0.25;
    }
    if unplaced > 0 {
        c.left(
            &format!("{unplaced} marks found no room: see the cut list"),
            TEXT,
            true,
            Point::new(x, y),
        );
    }
}
