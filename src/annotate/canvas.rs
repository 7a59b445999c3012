//! Drawing on a sheet: shapes by what they are, text that remembers its room.

use super::place::{Placer, text_box};
use super::style::Ink;
use crate::geom::vocabulary::{Point, Rect};
use crate::model::drawing::{Across, Drawing, Polyline, Shape, Text, Up};

/// A sheet being drawn.
#[derive(Clone, Debug)]
pub(super) struct Canvas {
    pub(super) drawing: Drawing,
    pub(super) placer: Placer,
    /// Marks on white grounds, drawn last so that no leader crosses them.
    late: Vec<(String, f64, Point)>,
}

impl Canvas {
    /// A canvas whose text stays inside `area`.
    pub(super) fn new(area: Rect) -> Self {
        Canvas { drawing: Drawing::default(), placer: Placer::new(area), late: Vec::new() }
    }

    fn add(&mut self, ink: Ink, shape: Shape) {
        let layer = self.drawing.layer(ink.layer(), ink.pen());
        self.drawing.draw(layer, shape);
    }

    pub(super) fn line(&mut self, ink: Ink, a: Point, b: Point) {
        self.add(ink, Shape::Polyline(Polyline::line(a, b)));
    }

    pub(super) fn polyline(&mut self, ink: Ink, line: Polyline) {
        self.add(ink, Shape::Polyline(line));
    }

    /// Text of the architect's own drawing, in its grey.
    pub(super) fn faint(&mut self, text: Text) {
        self.add(Ink::SourceText, Shape::Text(text));
    }

    pub(super) fn chain(&mut self, ink: Ink, points: impl IntoIterator<Item = Point>) {
        self.add(ink, Shape::Polyline(Polyline::open(points)));
    }

    pub(super) fn ring(&mut self, ink: Ink, points: impl IntoIterator<Item = Point>) {
        self.add(ink, Shape::Polyline(Polyline::ring(points)));
    }

    pub(super) fn rect(&mut self, ink: Ink, r: Rect) {
        self.ring(
            ink,
            [
                Point::new(r.x0, r.y0),
                Point::new(r.x1, r.y0),
                Point::new(r.x1, r.y1),
                Point::new(r.x0, r.y1),
            ],
        );
    }

    /// Text centred on a point, its room taken.
    pub(super) fn centred(&mut self, text: &str, height: f64, bold: bool, at: Point) {
        self.placer.take(text_box(text, height, bold, at));
        self.write(text, height, bold, at, Across::Centre, Up::Middle, 0.0);
    }

    /// Text from a point to the right, its room taken. Returns its width.
    pub(super) fn left(&mut self, text: &str, height: f64, bold: bool, at: Point) -> f64 {
        let w = crate::typeface::width(text, height, bold);
        self.placer.take(text_box(text, height, bold, Point::new(at.x + w / 2.0, at.y)));
        self.write(text, height, bold, at, Across::Left, Up::Middle, 0.0);
        w
    }

    /// Text that ends at a point, its room taken.
    pub(super) fn right(&mut self, text: &str, height: f64, bold: bool, at: Point) {
        let w = crate::typeface::width(text, height, bold);
        self.placer.take(text_box(text, height, bold, Point::new(at.x - w / 2.0, at.y)));
        self.write(text, height, bold, at, Across::Right, Up::Middle, 0.0);
    }

    /// Text as it is, no room asked.
    #[expect(clippy::too_many_arguments, reason = "each is one property of a line of text")]
    pub(super) fn write(
        &mut self,
        text: &str,
        height: f64,
        bold: bool,
        at: Point,
        across: Across,
        up: Up,
        angle: f64,
    ) {
        let content = clean(text);
        self.add(Ink::Text, Shape::Text(Text { at, height, angle, content, across, up, bold }));
    }

    /// Text centred on a white ground, so that lines under it do not cross it.
    pub(super) fn on_ground(&mut self, text: &str, height: f64, at: Point) {
        self.placer.take(text_box(text, height, false, at));
        self.late.push((text.to_owned(), height, at));
    }

    /// Draws the marks that were kept for last.
    pub(super) fn finish_marks(&mut self) {
        let late = std::mem::take(&mut self.late);
        for (text, height, at) in &late {
            let w = crate::typeface::width(text, *height, false);
            self.rect(Ink::Ground, Rect::from_center_size(*at, (w + 0.05, height + 0.012)));
        }
        for (text, height, at) in late {
            self.write(&text, height, false, at, Across::Centre, Up::Middle, 0.0);
        }
    }

    /// A text near `wish`, with a leader where it had to move; false where there was no room.
    pub(super) fn mark(&mut self, text: &str, height: f64, wish: Point, reach: f64) -> bool {
        let Some(at) = self.placer.near(text, height, wish, reach) else { return false };
        let moved = at.distance(wish);
        if moved > height * 1.3 {
            let r = text_box(text, height, false, at);
            let edge = Point::new(wish.x.clamp(r.x0, r.x1), wish.y.clamp(r.y0, r.y1));
            self.line(Ink::Dimension, wish, edge);
        }
        self.late.push((text.to_owned(), height, at));
        true
    }
}

/// Text of a drawing without control and direction characters.
pub(super) fn clean(text: &str) -> String {
    let odd = |c: char| {
        c.is_control()
            || ('\u{202a}'..='\u{202e}').contains(&c)
            || ('\u{2066}'..='\u{2069}').contains(&c)
    };
    text.chars().filter(|c| !odd(*c)).collect()
}

/// As much of a text as fits a width, with an ellipsis where it was cut.
pub(super) fn fitted(text: &str, height: f64, bold: bool, room: f64) -> String {
    let text = clean(text);
    if crate::typeface::width(&text, height, bold) <= room {
        return text;
    }
    let mut out = text;
    while !out.is_empty() && crate::typeface::width(&format!("{out}…"), height, bold) > room {
        out.pop();
    }
    format!("{out}…")
}

/// A text in lines no wider than `room`.
pub(super) fn wrapped(text: &str, height: f64, room: f64) -> Vec<String> {
    let mut out: Vec<String> = Vec::new();
    for word in clean(text).split_whitespace() {
        let joined = out.last().map(|l| format!("{l} {word}"));
        match joined {
            Some(j) if crate::typeface::width(&j, height, false) <= room => {
                if let Some(last) = out.last_mut() {
                    *last = j;
                }
            }
            _ => out.push(fitted(word, height, false, room)),
        }
    }
    out
}
