//! One distinct cut: its shape with dimensions, and what it makes.

mod heights;

use self::heights::Heights;
use crate::annotate::canvas::{Canvas, wrapped};
use crate::annotate::cuts_of::Cut;
use crate::annotate::faces::{heights as face_heights, lines};
use crate::annotate::place::text_box;
use crate::annotate::style::{Ink, TEXT};
use crate::geom::tol::MARK;
use crate::geom::vocabulary::{Point, Rect, Vec2, Xy};
use crate::language::SheetLanguage;
use crate::layout::Layout;
use crate::layout::course::LaidCourse;
use crate::layout::piece::Piece;
use crate::layout::told;
use crate::model::notch::NotchSide;
use crate::units::LengthStyle;
use crate::wording::sheet_lengths::length;
use crate::wording::{cuts, sheets};

/// Height of a drawn panel face.
const FACE: f64 = 0.36;
/// Distance of lines of text: half as much again as capitals are high (ISO 3098, from memory).
const LINE: f64 = 1.5 * TEXT;
/// Distance of a dimension from the shape, and of two.
const FIRST: f64 = 0.17;
const NEXT: f64 = 0.19;
/// Height of a drawn hem, and of a drawn lock.
const HEM: f64 = 0.09;
const LOCK: f64 = 0.04;
/// Distance of the slots drawn in a hem.
const SLOTS: f64 = 0.16;
/// How near to the face's edge a piece must reach to keep what is beyond, inches.
const EDGE: f64 = 1.0 / 32.0;
/// Room on both sides of the shape for its heights.
const SIDE: f64 = 0.5;
/// Of that, what lies under the rule.
pub(super) const UNDER: f64 = 0.05;
/// Room under the last line, with the rule.
const FOOT: f64 = 0.13;

/// The row of dimensions a notch stands in: slots and holes under the shape.
fn row_of(side: NotchSide) -> NotchSide {
    if side == NotchSide::Top { NotchSide::Top } else { NotchSide::Bottom }
}

/// A cut ready to be drawn in a column of some width.
pub(super) struct Cell<'a> {
    piece: &'a Piece,
    /// Its figures as they are told.
    told: Piece,
    course: &'a LaidCourse,
    style: LengthStyle,
    say: SheetLanguage,
    number: usize,
    /// Heights of the faces' lines.
    faces: Vec<f64>,
    /// Whether panels have a hem over the face and a lock under it, rather than boards.
    hem: bool,
    width: f64,
    /// Lines of marks over the shape.
    marks: Vec<String>,
    /// Whether the shape is drawn: not in what a column goes on with.
    drawn: bool,
    /// Whether its pieces are of one length.
    one_length: bool,
    /// Lines of words under the shape.
    words: Vec<String>,
}

impl<'a> Cell<'a> {
    pub(super) fn of(k: &Cut<'a>, layout: &Layout, width: f64) -> Self {
        let say = layout.job.sheet.language;
        let style = layout.job.sheet.lengths;
        let product = &layout.job.product;
        let of = |pieces: &[&Piece]| -> String {
            let one = |p: &&Piece| {
                if k.ripped_alone {
                    say.line(|lang| cuts::marked_length(lang, p, style))
                } else {
                    p.mark.to_string()
                }
            };
            pieces.iter().map(one).collect::<Vec<_>>().join(", ")
        };
        let mut marks = wrapped(
            &say.line(|lang| sheets::cut(lang, k.number, &of(&k.pieces))),
            TEXT,
            width * 0.9,
        );
        if !k.mirrored.is_empty() {
            marks.extend(wrapped(
                &say.line(|lang| sheets::mirrored(lang, &of(&k.mirrored))),
                TEXT,
                width * 0.9,
            ));
        }
        let words = say.blocks(|lang| {
            cuts::piece(lang, k.piece, k.course, product, (k.meets, k.ripped_alone), style)
        });
        let words = words.iter().flat_map(|w| wrapped(w, TEXT, width - 0.1)).collect();
        Cell {
            piece: k.piece,
            told: told::piece(k.piece, style),
            course: k.course,
            style,
            say,
            number: k.number,
            faces: face_heights(layout),
            hem: layout.job.siding().receivers.has_pockets(),
            width,
            marks,
            drawn: true,
            one_length: !k.ripped_alone,
            words,
        }
    }

    /// The cell in parts no higher than a column: a long list of marks or of points goes on in the
    /// next one.
    pub(super) fn parts(mut self, column: f64) -> Vec<Self> {
        let lines = |rest: f64| ((column - rest) / LINE + 1e-6).floor().max(0.0) as usize;
        let mut out = Vec::new();
        // No paper has a column too low for a shape with three lines.
        while self.height() > column && lines(self.rest()) > 2 {
            // The last line says that there is more.
            let with_shape = lines(self.rest()) - 1;
            let (marks, words) = if with_shape > self.marks.len() {
                (self.marks.len(), with_shape - self.marks.len())
            } else {
                (self.marks.len().min(lines(FOOT) - 1), 0)
            };
            let more = self.words.split_off(words.min(self.words.len()));
            let rest = self.marks.split_off(marks.min(self.marks.len()));
            // Where the marks fill the column, the shape stands in the next one.
            let drawn = self.drawn;
            self.drawn &= words > 0;
            let mut head = vec![self.say.line(|lang| sheets::cut_continued(lang, self.number))];
            head.extend(rest);
            let next = Cell {
                told: self.told.clone(),
                faces: self.faces.clone(),
                marks: head,
                drawn: drawn && !self.drawn,
                words: more,
                ..self
            };
            self.words.push(self.say.word(sheets::CONTINUED_AFTER_COLUMN));
            out.push(std::mem::replace(&mut self, next));
        }
        out.push(self);
        out
    }

    /// Whether an edge has a row of dimensions of its own.
    fn has_row(&self, side: NotchSide) -> bool {
        let (a, b) = self.edge(side);
        self.piece.notches.iter().any(|n| row_of(n.side) == side)
            || ((a > MARK || b < self.piece.length - MARK) && b - a > 0.5)
    }

    fn over(&self) -> f64 {
        HEM + if self.has_row(NotchSide::Top) { 0.24 } else { 0.06 }
    }

    fn under(&self) -> f64 {
        LOCK + FIRST + 0.1 + if self.has_row(NotchSide::Bottom) { NEXT } else { 0.0 }
    }

    /// Height of all but the lines.
    fn rest(&self) -> f64 {
        FOOT + if self.drawn { self.over() + FACE + self.under() } else { 0.0 }
    }

    pub(super) fn height(&self) -> f64 {
        (self.marks.len() + self.words.len()) as f64 * LINE + self.rest()
    }

    /// Draws the cut with its upper left corner at a point.
    pub(super) fn draw(&self, c: &mut Canvas, at: Point) {
        let mut y = at.y - 0.08;
        for l in &self.marks {
            c.left(l, TEXT, true, Point::new(at.x, y));
            y -= LINE;
        }
        if self.drawn {
            y -= self.over() - 0.06;
            let face = Rect::new(at.x + SIDE, y - FACE, at.x + self.width - SIDE, y);
            self.shape(c, face);
            self.hem_and_lock(c, face);
            self.lengths(c, face);
            let (piece, told, course) = (self.piece, &self.told, self.course);
            Heights { piece, told, course, style: self.style }.draw(c, face);
            y = face.y0 - self.under() - 0.06;
        }
        for l in &self.words {
            c.left(l, TEXT, false, Point::new(at.x + 0.1, y));
            y -= LINE;
        }
        let foot = at.y - self.height() + 0.05;
        c.line(Ink::Rule, Point::new(at.x, foot), Point::new(at.x + self.width, foot));
    }

    fn place(&self, face: Rect) -> impl Fn(&Xy) -> Point + use<> {
        heights::place(self.piece, self.course, face)
    }

    fn shape(&self, c: &mut Canvas, face: Rect) {
        // The whole face of the panel in gray, what is kept over it.
        c.rect(Ink::Offcut, face);
        let place = self.place(face);
        let p = self.piece;
        for ring in std::iter::once(&p.outline).chain(&p.more) {
            let points: Vec<Point> = ring.iter().map(&place).collect();
            c.ring(Ink::Ground, &points);
            c.ring(Ink::Opening, &points);
        }
        for (a, b) in lines(p, self.course, &self.faces) {
            c.line(Ink::Face, place(&a), place(&b));
        }
        for hole in &p.holes {
            let points: Vec<Point> = hole.iter().map(&place).collect();
            c.ring(Ink::Offcut, &points);
            c.ring(Ink::Opening, &points);
        }
    }

    /// The hem with its slots over the face, and the lock under it, where they are kept.
    fn hem_and_lock(&self, c: &mut Canvas, face: Rect) {
        if !self.hem {
            return;
        }
        let place = self.place(face);
        let high = self.course.top - self.course.bottom;
        // A hair inside the face: where it reaches its edge, what is beyond stays on.
        for (a, b) in lines(self.piece, self.course, &[high - EDGE]) {
            let (a, b) = (place(&a).x, place(&b).x);
            let hem = Rect::new(a, face.y1, b, face.y1 + HEM);
            c.rect(Ink::Face, hem);
            let slots = ((b - a) / SLOTS).floor() as i32;
            for i in 0..slots {
                let x = a + (f64::from(i) + 0.5) * SLOTS;
                let y = face.y1 + HEM / 2.0;
                c.line(Ink::Rule, Point::new(x - 0.05, y), Point::new(x + 0.05, y));
            }
        }
        for (a, b) in lines(self.piece, self.course, &[EDGE]) {
            let (a, b) = (place(&a).x, place(&b).x);
            // The butt edge turned up behind the face, as it would be seen from below.
            let y = face.y0 - LOCK;
            c.line(Ink::Rule, Point::new(a, face.y0), Point::new(a, y));
            c.line(Ink::Opening, Point::new(a, y), Point::new(b, y));
            c.line(Ink::Rule, Point::new(b, face.y0), Point::new(b, y));
        }
    }

    /// Long point to long point under the shape, shorter edges at themselves, notches where they
    /// open.
    fn lengths(&self, c: &mut Canvas, face: Rect) {
        let p = self.piece;
        let x = |d: f64| face.x0 + d * face.width() / (p.x1 - p.x0).max(1e-6);
        let mut row = face.y0 - LOCK - FIRST;
        for (side, y) in [(NotchSide::Bottom, row), (NotchSide::Top, face.y1 + HEM + 0.07)] {
            let of_side = p.notches.iter().filter(|n| row_of(n.side) == side);
            let places: Vec<f64> = of_side.flat_map(|n| [n.left, n.left + n.width]).collect();
            let edge = self.edge(side);
            let shorter = edge.0 > MARK || edge.1 < p.length - MARK;
            if !places.is_empty() {
                self.string(c, &x, places, y);
            } else if let Some((a, b)) =
                told::edge(p, side == NotchSide::Top, self.style).filter(|_| shorter)
                && edge.1 - edge.0 > 0.5
            {
                self.level(c, (x(edge.0), x(edge.1)), y, &length(self.style, b - a));
            } else {
                continue;
            }
            if side == NotchSide::Bottom {
                row -= NEXT;
            }
        }
        let whole = if self.one_length {
            length(self.style, self.told.length)
        } else {
            self.say.word(sheets::LENGTHS_ABOVE)
        };
        self.level(c, (x(0.0), x(p.length)), row, &whole);
    }

    /// From where to where the upper or lower edge goes, from the piece's left end.
    fn edge(&self, side: NotchSide) -> (f64, f64) {
        self.piece.edge(side == NotchSide::Top)
    }

    /// A string of places from the left end of the piece to its right end.
    fn string(&self, c: &mut Canvas, x: &dyn Fn(f64) -> f64, mut at: Vec<f64>, y: f64) {
        at.extend([0.0, self.piece.length]);
        at.sort_by(f64::total_cmp);
        at.dedup_by(|a, b| (*a - *b).abs() < MARK);
        for pair in at.windows(2) {
            let told = |x: f64| told::place(self.piece, x, self.style);
            let words = length(self.style, told(pair[1]) - told(pair[0]));
            self.level(c, (x(pair[0]), x(pair[1])), y, &words);
        }
    }

    /// A level dimension; its text is left to the lines below where it does not fit.
    fn level(&self, c: &mut Canvas, ends: (f64, f64), y: f64, words: &str) {
        for x in [ends.0, ends.1] {
            let p = Point::new(x, y);
            c.line(Ink::Dimension, p - Vec2::new(0.03, 0.03), p + Vec2::new(0.03, 0.03));
        }
        c.line(Ink::Dimension, Point::new(ends.0, y), Point::new(ends.1, y));
        let at = Point::new((ends.0 + ends.1) / 2.0, y + 0.085);
        let room = ends.1 - ends.0 > crate::typeface::width(words, TEXT, false) - 0.02;
        if room && c.placer.free(&text_box(words, TEXT, false, at)) {
            c.centered(words, TEXT, false, at);
        }
    }
}
