//! Entities in the source's own version of the format.

use super::scan::Scan;
use crate::clean::{Destination, clean};
use crate::geom::flatten::path_points;
use crate::geom::vocabulary::Point;
use crate::model::drawing::{Across, Drawing, Polyline, Shape, Text, Up};

/// Writes group pairs.
pub(super) struct Emitter<'a> {
    pub(super) scan: &'a Scan,
    pub(super) next: u64,
    pub(super) out: String,
    /// Whom the entities in hand belong to: model space, a block or an insert.
    pub(super) owner: Option<String>,
    /// Text style of the overlay, where the source has a table for it.
    pub(super) style: Option<&'static str>,
}

/// Handles a reader may give to what it adds of its own: tables, layouts, dictionaries.
const READERS_OWN: u64 = 4096;

impl<'a> Emitter<'a> {
    pub(super) fn new(scan: &'a Scan) -> Self {
        let owner = scan.model_space.clone();
        // Where no seed says from which number on handles are free, a reader counts them from 1 for
        // whatever has none: ours stand above all it can count to.
        let counted = if scan.seed.is_some() { 0 } else { scan.things + READERS_OWN };
        let next = scan.top_handle.max(counted) + 1;
        Emitter { scan, next, out: String::new(), owner, style: None }
    }

    /// R13 and later: subclass markers, owners, handles always.
    pub(super) fn modern(&self) -> bool {
        self.scan.version >= 1012
    }

    /// R2000 and later: line weights.
    pub(super) fn weighted(&self) -> bool {
        self.scan.version >= 1015
    }

    /// R14 and later have LWPOLYLINE.
    pub(super) fn light(&self) -> bool {
        self.scan.version >= 1014
    }

    /// The seed for whatever comes next.
    pub(super) fn seed(&self) -> String {
        format!("{:X}", self.next)
    }

    pub(super) fn pair(&mut self, code: i32, value: &str) {
        self.out.push_str(&format!("{code:>3}{}{value}{}", self.scan.newline, self.scan.newline));
    }

    pub(super) fn float(&mut self, code: i32, v: f64) {
        let mut text = format!("{v:.9}");
        while text.ends_with('0') && !text.ends_with(".0") {
            text.pop();
        }
        self.pair(code, &text);
    }

    pub(super) fn point(&mut self, code: i32, p: Point) {
        self.float(code, p.x);
        self.float(code + 10, p.y);
        self.float(code + 20, 0.0);
    }

    /// Text in any code page: what is not ASCII is escaped where the file is not UTF-8.
    pub(super) fn text_value(&mut self, code: i32, text: &str) {
        let utf8 = self.scan.version >= 1021;
        let text = clean(text, Destination::Dxf { utf8 });
        self.pair(code, &text);
    }

    /// The handle of what comes next, and its pair; empty where the source has none.
    pub(super) fn handle(&mut self) -> String {
        self.handle_as(5)
    }

    pub(super) fn handle_as(&mut self, code: i32) -> String {
        if !self.modern() && !self.scan.handles {
            return String::new();
        }
        let h = format!("{:X}", self.next);
        self.next += 1;
        self.pair(code, &h);
        h
    }

    /// What `write` emits, by itself.
    pub(super) fn gathered(&mut self, write: impl FnOnce(&mut Self)) -> String {
        let kept = std::mem::take(&mut self.out);
        write(self);
        std::mem::replace(&mut self.out, kept)
    }

    /// What `write` emits, owned by another.
    pub(super) fn owned(&mut self, owner: &str, write: impl FnOnce(&mut Self)) {
        let kept = self.owner.replace(owner.to_owned());
        write(self);
        self.owner = kept;
    }

    /// One shape that needs no block.
    pub(super) fn shape(&mut self, layer: &str, shape: &Shape) {
        match shape {
            Shape::Polyline(p) => self.polyline(layer, p),
            Shape::Curve(path) => self.path(layer, path),
            Shape::Hatch(h) => h.loops.iter().for_each(|l| self.path(layer, l)),
            Shape::Text(t) => self.text(layer, t),
            Shape::Dimension(_) | Shape::Point(_) => {}
        }
    }

    fn path(&mut self, layer: &str, path: &crate::geom::vocabulary::BezPath) {
        for (points, closed) in path_points(path, 1.0 / 64.0) {
            let line = Polyline { closed, ..Polyline::open(points) };
            self.polyline(layer, &line);
        }
    }

    /// What every entity begins with. Returns its handle.
    pub(super) fn begin(&mut self, kind: &str, layer: &str, class: &str) -> String {
        self.pair(0, kind);
        let handle = self.handle();
        if self.modern() {
            if let Some(owner) = self.owner.clone() {
                self.pair(330, &owner);
            }
            self.pair(100, "AcDbEntity");
        }
        self.text_value(8, layer);
        if self.modern() && !class.is_empty() {
            self.pair(100, class);
        }
        handle
    }

    pub(super) fn polyline(&mut self, layer: &str, line: &Polyline) {
        if line.vertices.len() < 2 {
            return;
        }
        let straight = line.vertices.iter().all(|v| v.bulge == 0.0);
        if line.vertices.len() == 2 && !line.closed && straight {
            return self.line(layer, line.vertices[0].at, line.vertices[1].at);
        }
        let closed = if line.closed { "1" } else { "0" };
        if self.light() {
            self.begin("LWPOLYLINE", layer, "AcDbPolyline");
            self.pair(90, &line.vertices.len().to_string());
            self.pair(70, closed);
            for v in &line.vertices {
                self.float(10, v.at.x);
                self.float(20, v.at.y);
                if v.bulge != 0.0 {
                    self.float(42, v.bulge);
                }
            }
        } else if self.modern() {
            // R13 has neither form without ownership chains: plain lines say the same.
            let points = line.points(1.0 / 64.0);
            let ends = points.iter().skip(1).chain(points.first().filter(|_| line.closed));
            points.iter().zip(ends).for_each(|(a, b)| self.line(layer, *a, *b));
        } else {
            self.begin("POLYLINE", layer, "");
            self.pair(66, "1");
            self.point(10, Point::ZERO);
            self.pair(70, closed);
            for v in &line.vertices {
                self.begin("VERTEX", layer, "");
                self.point(10, v.at);
                if v.bulge != 0.0 {
                    self.float(42, v.bulge);
                }
            }
            self.begin("SEQEND", layer, "");
        }
    }

    pub(super) fn line(&mut self, layer: &str, a: Point, b: Point) {
        self.begin("LINE", layer, "AcDbLine");
        self.point(10, a);
        self.point(11, b);
    }

    pub(super) fn text(&mut self, layer: &str, t: &Text) {
        self.begin("TEXT", layer, "AcDbText");
        self.point(10, t.at);
        self.float(40, t.height);
        self.text_value(1, &t.content);
        if let Some(style) = self.style {
            self.pair(7, style);
        }
        if t.angle != 0.0 {
            self.float(50, t.angle);
        }
        let across = match t.across {
            Across::Left => 0,
            Across::Center => 1,
            Across::Right => 2,
        };
        let up = match t.up {
            Up::Baseline => 0,
            Up::Middle => 2,
            Up::Top => 3,
        };
        if across != 0 || up != 0 {
            self.pair(72, &across.to_string());
            self.point(11, t.at);
        }
        if self.modern() {
            self.pair(100, "AcDbText");
        }
        if up != 0 {
            self.pair(73, &up.to_string());
        }
    }
}

/// Source units in a plotted inch, by the overlay's own text: 3/32 in capitals.
pub(super) fn plotted(overlay: &Drawing) -> f64 {
    let heights = overlay.items.iter().filter_map(|i| match &i.shape {
        Shape::Text(t) => Some(t.height),
        _ => None,
    });
    let highest = heights.fold(0.0, f64::max);
    // Without text, inches at 1/4 in to the foot.
    if highest > 0.0 { highest * 32.0 / 3.0 } else { 48.0 }
}
