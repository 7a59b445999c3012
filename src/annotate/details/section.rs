//! One detail before it is on paper: lines in real inches, y up, with dimensions and notes.

use crate::annotate::canvas::{Canvas, Look, Mark, wrapped};
use crate::annotate::meeting::clipped;
use crate::annotate::style::{Ink, TEXT};
use crate::geom::polygon::Polygon;
use crate::geom::strip::{clip_band, clip_span};
use crate::geom::vocabulary::{Point, Rect, Vec2};
use crate::language::{Said, SheetLanguage};

/// Distance of lines of notes, paper inches.
const LINE: f64 = 0.15;
/// Room between the drawing and its notes, paper inches.
pub(super) const GAP: f64 = 0.22;
/// Share of its room that bold text may take, set as plain text is.
const BOLD: f64 = 0.93;
/// Height of the title over the drawing, paper inches.
pub(super) const TITLE: f64 = 0.3;

/// A detail.
pub(super) struct Section {
    say: SheetLanguage,
    title: String,
    /// What of it is shown; everything is cut at it.
    pub(super) frame: Rect,
    shapes: Vec<(Ink, Vec<Point>)>,
    fills: Vec<(Ink, Vec<Point>)>,
    dims: Vec<Dim>,
    notes: Vec<(Point, String)>,
}

/// A dimension: level where its line stands at a height, upright where at a place across.
struct Dim {
    from: Point,
    to: Point,
    line: Line,
    text: String,
}

/// Where a dimension's line stands.
#[derive(Clone, Copy)]
pub(super) enum Line {
    /// Level, at this height.
    At(f64),
    /// Upright, at this place across.
    Across(f64),
}

impl Section {
    pub(super) fn new(say: SheetLanguage, title: Said, frame: Rect) -> Self {
        Section {
            say,
            title: say.word(title),
            frame,
            shapes: Vec::new(),
            fills: Vec::new(),
            dims: Vec::new(),
            notes: Vec::new(),
        }
    }

    /// A line through points.
    pub(super) fn line(&mut self, ink: Ink, points: impl IntoIterator<Item = Point>) {
        self.shapes.push((ink, points.into_iter().collect()));
    }

    /// A filled area with its outline in another ink.
    pub(super) fn area(&mut self, fill: Ink, outline: Ink, ring: &[Point]) {
        let within = Polygon::simple(ring.to_vec()).wound();
        let f = self.frame;
        for part in clip_span(&clip_band(&[within], f.y0, f.y1), f.x0, f.x1) {
            self.fills.push((fill, part.outer));
        }
        self.line(outline, ring.iter().chain(ring.first()).copied());
    }

    /// A rectangle as [`Self::area`].
    pub(super) fn block(&mut self, fill: Ink, outline: Ink, r: Rect) {
        self.area(fill, outline, &corners(r));
    }

    /// A dimension of what `name` says between two points; a note where they are not in the frame, as
    /// with a length that no usual house has.
    pub(super) fn dim(&mut self, name: Said, ends: [Point; 2], line: Line, text: String) {
        let [from, to] = ends;
        let f = self.frame.inflate(-0.1, -0.1);
        let shown = |p: &Point| p.x >= f.x0 && p.x <= f.x1 && p.y >= f.y0 && p.y <= f.y1;
        if shown(&from) && shown(&to) {
            self.dims.push(Dim { from, to, line, text });
        } else {
            let name = self.say.word(name);
            self.note(from, format!("{name}: {text}"));
        }
    }

    /// A note with a leader to a point.
    pub(super) fn note(&mut self, at: Point, text: String) {
        let f = self.frame.inflate(-0.1, -0.1);
        self.notes.push((Point::new(at.x.clamp(f.x0, f.x1), at.y.clamp(f.y0, f.y1)), text));
    }

    /// Height on paper.
    pub(super) fn height(&self, factor: f64, notes: f64) -> f64 {
        let title = self.heading(0, factor, notes).len() as f64 * LINE;
        let lines: usize = self.notes.iter().map(|n| wrapped(&n.1, TEXT, notes).len()).sum();
        let text = lines as f64 * LINE + self.notes.len() as f64 * LINE * 0.4;
        TITLE - LINE + title + (self.frame.height() / factor).max(text) + 0.12
    }

    /// Its title with its number, in lines.
    fn heading(&self, number: usize, factor: f64, notes: f64) -> Vec<String> {
        let room = self.frame.width() / factor + GAP + notes;
        wrapped(&format!("{number}. {}", self.title), TEXT, room * BOLD)
    }

    /// Draws it with its upper left corner at a point; its notes take `notes` paper inches.
    pub(super) fn draw(&self, c: &mut Canvas, at: Point, factor: f64, notes: f64, number: usize) {
        let title = self.heading(number, factor, notes);
        for (i, line) in title.iter().enumerate() {
            c.left(line, TEXT, true, Point::new(at.x, at.y - 0.1 - i as f64 * LINE));
        }
        let top = at.y - TITLE - (title.len() as f64 - 1.0) * LINE;
        let (f, left) = (self.frame, at.x);
        let place =
            |p: &Point| Point::new(left + (p.x - f.x0) / factor, top - (f.y1 - p.y) / factor);
        let paper = Rect::from_points(place(&f.origin()), place(&Point::new(f.x1, f.y1)));
        for (ink, ring) in &self.fills {
            c.ring(*ink, &ring.iter().map(place).collect::<Vec<_>>());
        }
        c.clip = Some(paper);
        for (ink, points) in &self.shapes {
            let points: Vec<Point> = points.iter().map(place).collect();
            c.chain(*ink, &points);
            // Words keep off what is cut, not off lines in the distance.
            if *ink != Ink::Face {
                let parts = points.windows(2).filter_map(|w| clipped(w[0], w[1], &paper));
                parts.for_each(|(a, b)| c.placer.keep_off(a, b));
            }
        }
        c.clip = None;
        c.rect(Ink::Rule, paper);
        self.leaders(c, paper, &place, notes);
        let dims = self.dims.iter().map(|d| (d.lines(c, &place), d.text.as_str()));
        let dims: Vec<(Point, &str)> = dims.collect();
        for (middle, text) in dims {
            let wish = middle + Vec2::new(0.0, 0.09);
            c.mark(Mark { text, target: middle, wish, reach: 0.7, look: Look::Plain });
        }
    }

    /// Notes right of the drawing, from the top down, each with a leader.
    fn leaders(&self, c: &mut Canvas, paper: Rect, place: &impl Fn(&Point) -> Point, room: f64) {
        let mut notes: Vec<(Point, Vec<String>)> =
            self.notes.iter().map(|(p, t)| (place(p), wrapped(t, TEXT, room))).collect();
        notes.sort_by(|a, b| b.0.y.total_cmp(&a.0.y).then(a.0.x.total_cmp(&b.0.x)));
        let tall = |lines: &[String]| (lines.len() as f64 + 0.4) * LINE;
        let mut below: f64 = notes.iter().map(|n| tall(&n.1)).sum();
        let mut y = paper.y1;
        let x = paper.x1 + GAP;
        for (target, lines) in notes {
            // As high as its target, where what comes below still has its room.
            let most = (paper.y1 - LINE * 0.5).min(y);
            let least = paper.y1.min(paper.y0 + below).min(most);
            let start = (target.y + tall(&lines) / 2.0).clamp(least, most);
            for (i, l) in lines.iter().enumerate() {
                c.left(l, TEXT, false, Point::new(x, start - (i as f64 + 0.5) * LINE));
            }
            let end = Point::new(x - 0.05, start - LINE * 0.5);
            c.line(Ink::Leader, target, end);
            c.dot(target);
            c.placer.keep_off(target, end);
            y = start - tall(&lines);
            below -= tall(&lines);
        }
    }
}

impl Dim {
    /// Its lines; the middle of them on paper.
    fn lines(&self, c: &mut Canvas, place: &impl Fn(&Point) -> Point) -> Point {
        let on_line = |p: Point| match self.line {
            Line::At(y) => Point::new(p.x, y),
            Line::Across(x) => Point::new(x, p.y),
        };
        let (a, b) = (on_line(self.from), on_line(self.to));
        for (p, q) in [(self.from, a), (self.to, b)] {
            c.line(Ink::Dimension, place(&p), place(&q));
        }
        let (a, b) = (place(&a), place(&b));
        let along = (b - a) / a.distance(b).max(1e-6) * 0.06;
        // Past its ends, so that ticks of a hair's width stay apart.
        c.line(Ink::Dimension, a - along, b + along);
        c.placer.keep_off(a, b);
        for p in [a, b] {
            let tick = Vec2::new(0.035, 0.035);
            c.line(Ink::Wall, p - tick, p + tick);
        }
        c.measured(a, b, &self.text);
        a.midpoint(b)
    }
}

/// The corners of a rectangle.
pub(super) fn corners(r: Rect) -> [Point; 4] {
    [Point::new(r.x0, r.y0), Point::new(r.x1, r.y0), Point::new(r.x1, r.y1), Point::new(r.x0, r.y1)]
}
