//! Drawing on a sheet: shapes by what they are, text that remembers its room.

use super::place::{Off, Placer, edge_towards, text_box};
use super::style::{HEADING, Ink, TEXT};
use crate::clean::{Destination, clean};
use crate::geom::vocabulary::{Point, Rect, Vec2};
use crate::model::drawing::{Across, Dimension, Drawing, Polyline, Shape, Text, Up};

/// A sheet being drawn.
#[derive(Clone, Debug)]
pub(super) struct Canvas {
    pub(super) drawing: Drawing,
    pub(super) placer: Placer,
    /// Lines are cut here while it is set.
    pub(super) clip: Option<Rect>,
    /// Marks on white grounds, drawn last so that no leader crosses them.
    late: Vec<Late>,
}

#[derive(Clone, Debug)]
struct Late {
    text: String,
    height: f64,
    at: Point,
    framed: bool,
}

/// A mark to be placed.
#[derive(Clone, Copy, Debug)]
pub(super) struct Mark<'a> {
    pub(super) text: &'a str,
    /// What it names: where its leader ends.
    pub(super) target: Point,
    /// Where it would best stand.
    pub(super) wish: Point,
    /// How far from there it may stand.
    pub(super) reach: f64,
    pub(super) look: Look,
}

/// How a mark stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Look {
    /// Its leader ends on a surface, with a dot.
    Dotted,
    /// Its leader ends at a line.
    Plain,
    /// Without a leader.
    Bare,
    /// In a frame, as marks of trim are; its leader ends at a line.
    Framed,
}

/// Room between a mark and its frame.
const FRAME: f64 = 0.025;

/// Box of a mark about the origin.
fn mark_box(text: &str, height: f64, framed: bool) -> Rect {
    let r = text_box(text, height, false, Point::ORIGIN);
    if framed { r.inflate(FRAME, FRAME) } else { r }
}

impl Canvas {
    /// A canvas whose text stays inside `area`.
    pub(super) fn new(area: Rect) -> Self {
        Canvas {
            drawing: Drawing::default(),
            placer: Placer::new(area),
            clip: None,
            late: Vec::new(),
        }
    }

    fn add(&mut self, ink: Ink, shape: Shape) {
        let layer = self.drawing.layer(ink.layer(), ink.pen());
        self.drawing.draw(layer, shape);
    }

    pub(super) fn line(&mut self, ink: Ink, a: Point, b: Point) {
        match self.clip {
            Some(r) => {
                if let Some((a, b)) = super::meeting::clipped(a, b, &r) {
                    self.add(ink, Shape::Polyline(Polyline::line(a, b)));
                }
            }
            None => self.add(ink, Shape::Polyline(Polyline::line(a, b))),
        }
    }

    /// A line that text keeps off.
    pub(super) fn firm(&mut self, ink: Ink, a: Point, b: Point) {
        self.line(ink, a, b);
        self.placer.keep_off(a, b);
    }

    pub(super) fn polyline(&mut self, ink: Ink, line: Polyline) {
        self.add(ink, Shape::Polyline(line));
    }

    /// Text of the architect's own drawing, in its gray.
    pub(super) fn faint(&mut self, text: Text) {
        self.add(Ink::SourceText, Shape::Text(text));
    }

    pub(super) fn chain(&mut self, ink: Ink, points: &[Point]) {
        if self.whole(points) {
            return self.add(ink, Shape::Polyline(Polyline::open(points.iter().copied())));
        }
        points.windows(2).for_each(|p| self.line(ink, p[0], p[1]));
    }

    pub(super) fn ring(&mut self, ink: Ink, points: &[Point]) {
        if self.whole(points) {
            return self.add(ink, Shape::Polyline(Polyline::ring(points.iter().copied())));
        }
        let next = points.iter().cycle().skip(1);
        points.iter().zip(next).for_each(|(a, b)| self.line(ink, *a, *b));
    }

    /// A ring that text keeps off.
    pub(super) fn firm_ring(&mut self, ink: Ink, points: &[Point]) {
        self.ring(ink, points);
        let next = points.iter().cycle().skip(1);
        points.iter().zip(next).for_each(|(a, b)| self.placer.keep_off(*a, *b));
    }

    /// The edges of a panel, which no ground hides.
    pub(super) fn work_ring(&mut self, ink: Ink, points: &[Point]) {
        self.ring(ink, points);
        let next = points.iter().cycle().skip(1);
        points.iter().zip(next).for_each(|(a, b)| self.placer.work(*a, *b));
    }

    fn whole(&self, points: &[Point]) -> bool {
        let inside = |r: Rect| {
            points.iter().all(|p| p.x >= r.x0 && p.x <= r.x1 && p.y >= r.y0 && p.y <= r.y1)
        };
        self.clip.is_none_or(inside)
    }

    pub(super) fn rect(&mut self, ink: Ink, r: Rect) {
        self.ring(
            ink,
            &[
                Point::new(r.x0, r.y0),
                Point::new(r.x1, r.y0),
                Point::new(r.x1, r.y1),
                Point::new(r.x0, r.y1),
            ],
        );
    }

    /// A dimension as what it is, for whoever reads the drawing: its lines and text are drawn too.
    pub(super) fn measured(&mut self, from: Point, to: Point, text: &str) {
        let angle = if (to.y - from.y).abs() > (to.x - from.x).abs() { 90.0 } else { 0.0 };
        let text = Some(text.to_owned());
        self.add(
            Ink::Dimension,
            Shape::Dimension(Dimension {
                from,
                to,
                line: from,
                angle: Some(angle),
                text,
                ..Dimension::default()
            }),
        );
    }

    /// A dot at the end of a leader that ends on a surface (ISO 128, from memory).
    pub(super) fn dot(&mut self, at: Point) {
        let points: Vec<Point> = (0..8)
            .map(|i| at + Vec2::from_angle(f64::from(i) * std::f64::consts::FRAC_PI_4) * 0.018)
            .collect();
        self.ring(Ink::Solid, &points);
    }

    /// Text centered on a point, its room taken.
    pub(super) fn centered(&mut self, text: &str, height: f64, bold: bool, at: Point) {
        self.placer.take(text_box(text, height, bold, at));
        self.write(text, height, bold, at, Across::Center);
    }

    /// Text from a point to the right, its room taken. Returns its width.
    pub(super) fn left(&mut self, text: &str, height: f64, bold: bool, at: Point) -> f64 {
        let w = crate::typeface::width(text, height, bold);
        self.placer.take(text_box(text, height, bold, Point::new(at.x + w / 2.0, at.y)));
        self.write(text, height, bold, at, Across::Left);
        w
    }

    /// Text that ends at a point, its room taken.
    pub(super) fn right(&mut self, text: &str, height: f64, bold: bool, at: Point) {
        let w = crate::typeface::width(text, height, bold);
        self.placer.take(text_box(text, height, bold, Point::new(at.x - w / 2.0, at.y)));
        self.write(text, height, bold, at, Across::Right);
    }

    /// Text as it is, half way up at `at`, no room asked.
    fn write(&mut self, text: &str, height: f64, bold: bool, at: Point, across: Across) {
        self.write_in(Ink::Text, (text, height, bold), at, across);
    }

    fn write_in(
        &mut self,
        ink: Ink,
        (text, height, bold): (&str, f64, bool),
        at: Point,
        across: Across,
    ) {
        let (content, up) = (printable(text), Up::Middle);
        let text = Text { at, height, angle: 0.0, mirrored: false, content, across, up, bold };
        self.add(ink, Shape::Text(text));
    }

    /// A red bar in a heavy frame, with white words in it: in black-and-white print the frame and the
    /// words still stand out.
    pub(super) fn alarm(&mut self, r: Rect, words: &str) {
        self.rect(Ink::Alarm, r);
        self.rect(Ink::AlarmFrame, r);
        let height = HEADING;
        let words = fitted(words, height, true, r.width() - 0.2);
        let at = r.center();
        self.placer.take(text_box(&words, height, true, at));
        self.write_in(Ink::AlarmText, (&words, height, true), at, Across::Center);
    }

    /// A heavy circle that text keeps off, cut at the clip.
    pub(super) fn firm_circle(&mut self, ink: Ink, at: Point, radius: f64) {
        let turn = std::f64::consts::TAU / 24.0;
        let points: Vec<Point> =
            (0..24).map(|i| at + Vec2::from_angle(f64::from(i) * turn) * radius).collect();
        self.firm_ring(ink, &points);
    }

    /// Text centered on a white ground, so that lines under it do not cross it.
    pub(super) fn on_ground(&mut self, text: &str, height: f64, at: Point) {
        self.placer.take(text_box(text, height, false, at));
        self.late.push(Late { text: text.to_owned(), height, at, framed: false });
    }

    /// Draws the marks that were kept for last.
    pub(super) fn finish_marks(&mut self) {
        self.clip = None;
        let late = std::mem::take(&mut self.late);
        for m in &late {
            let w = crate::typeface::width(&m.text, m.height, false);
            let size = (w + 0.05, m.height + 0.012);
            let plain = Rect::from_center_size(m.at, size);
            let r = if m.framed { mark_frame(&m.text, m.height, m.at) } else { plain };
            // Over what is built a mark stands without a ground: lines cross it, none is hidden.
            if self.placer.hides_nothing(&r) {
                self.rect(Ink::Ground, r);
            }
            if m.framed {
                self.rect(Ink::Frame, r);
            }
        }
        for m in late {
            self.write(&m.text, m.height, false, m.at, Across::Center);
        }
    }

    /// A mark near where it is wished, with a leader where it stands off its target. Returns where
    /// it stands, `None` where there was no room.
    pub(super) fn mark(&mut self, m: Mark) -> Option<Point> {
        self.mark_clear(m).or_else(|| self.placed(m, Off::Text))
    }

    /// The same, only where it crosses no line that must be seen.
    pub(super) fn mark_clear(&mut self, m: Mark) -> Option<Point> {
        self.placed(m, Off::Lines)
    }

    /// The same, only where it crosses no edge of a panel either.
    pub(super) fn mark_off_work(&mut self, m: Mark) -> Option<Point> {
        self.placed(m, Off::Work)
    }

    pub(super) fn placed(&mut self, m: Mark, off: Off) -> Option<Point> {
        let about = mark_box(m.text, TEXT, m.look == Look::Framed);
        let at = self.placer.near(about, m.target, m.wish, m.reach, off)?;
        let frame = mark_frame(m.text, TEXT, at);
        let framed = m.look == Look::Framed;
        let r = if framed { frame } else { text_box(m.text, TEXT, false, at) };
        let edge = edge_towards(&r, m.target);
        // A mark beside its piece stands on another one: however near, its leader says whose it is.
        let near = if m.look == Look::Dotted { 0.01 } else { 0.07 };
        if m.look != Look::Bare && edge.distance(m.target) > near {
            self.line(Ink::Leader, m.target, edge);
            self.placer.keep_off(m.target, edge);
            if m.look == Look::Dotted {
                self.dot(m.target);
            }
        }
        let text = m.text.to_owned();
        self.late.push(Late { text, height: TEXT, at, framed });
        Some(at)
    }
}

/// The frame round a mark of trim.
fn mark_frame(text: &str, height: f64, at: Point) -> Rect {
    let w = crate::typeface::width(text, height, false);
    Rect::from_center_size(at, (w + 2.0 * FRAME + 0.02, height + 2.0 * FRAME))
}

/// A text as a sheet can show it: no control characters, and replacements for letters without a face.
pub(super) fn printable(text: &str) -> String {
    crate::typeface::printable(&clean(text, Destination::Sheet))
}

/// As much of a text as fits a width, with an ellipsis where it was cut.
pub(super) fn fitted(text: &str, height: f64, bold: bool, room: f64) -> String {
    let text = printable(text);
    if crate::typeface::width(&text, height, bold) <= room {
        return text;
    }
    // Letter by letter from the front: a text may be as long as a book.
    let of = |letter: &str| crate::typeface::width(letter, height, bold);
    let mut used = of("…");
    let fits = |(at, letter): &(usize, char)| {
        used += of(&text[*at..at + letter.len_utf8()]);
        used <= room
    };
    let end = text.char_indices().take_while(fits).map(|(at, c)| at + c.len_utf8()).last();
    format!("{}…", &text[..end.unwrap_or(0)])
}

/// A text in lines no wider than `room`; what stands behind the end of a line begins a new one.
pub(super) fn wrapped(text: &str, height: f64, room: f64) -> Vec<String> {
    text.split('\n').flat_map(|line| wrapped_line(line, height, room)).collect()
}

fn wrapped_line(text: &str, height: f64, room: f64) -> Vec<String> {
    let mut out: Vec<String> = Vec::new();
    // A hard space keeps a length and its fraction together.
    for word in printable(text).split_ascii_whitespace() {
        let word = word.replace('\u{a0}', " ");
        let joined = out.last().map(|l| format!("{l} {word}"));
        match joined {
            Some(j) if crate::typeface::width(&j, height, false) <= room => {
                out.pop();
                out.push(j);
            }
            _ => out.push(fitted(&word, height, false, room)),
        }
    }
    out
}
