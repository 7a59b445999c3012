//! Writes entities as DXF text.

use super::habit::Version;
use super::ink::{Entity, Shape};
use super::layers;
use super::shape::{Family, P};
use super::tags::Tags;

impl Tags<'_> {
    /// An entity; within a block on layer 0, so that it takes the insert's.
    pub(super) fn shape(&mut self, e: &Entity, owner: &str, on_zero: bool) {
        let (layer, color) = layers::layer(self.style, self.views, e);
        let at = if on_zero { ("0", None) } else { (layer.as_str(), color) };
        let begin = |t: &mut Self, kind: &str| t.begin(kind, owner, at.0, at.1);
        match &e.shape {
            Shape::Line(..)
            | Shape::Dashed(..)
            | Shape::Circle(..)
            | Shape::Arc(..)
            | Shape::Fill(_) => {
                self.plain(&e.shape, owner, at);
            }
            Shape::Poly { points, closed } => self.polyline(points, *closed, owner, at),
            Shape::Text { at: p, high, words } => {
                begin(self, "TEXT");
                self.text(*p, *high, words);
            }
            Shape::Notes { at: p, high, words } if self.is_new() => {
                begin(self, "MTEXT");
                self.class("AcDbMText");
                self.point3(10, *p);
                self.length(40, *high);
                self.length(41, *high * words.len() as f64);
                self.tag(71, 7);
                self.tag(72, 1);
                let words = self.encoded(words);
                self.tag(1, words);
            }
            Shape::Notes { at: p, high, words } => {
                begin(self, "TEXT");
                self.text(*p, *high, words);
            }
            Shape::Insert { block, at: p, mirrored } => {
                begin(self, "INSERT");
                self.class("AcDbBlockReference");
                self.tag(2, block);
                self.point3(10, *p);
                if *mirrored {
                    self.tag(41, "-1.0");
                }
            }
            Shape::Hatch { rings, families } => {
                begin(self, "HATCH");
                self.hatch(rings, families);
            }
            Shape::Dimension { from, to, line, upright, block } => {
                begin(self, "DIMENSION");
                self.dimension((*from, *to, *line), *upright, block);
            }
        }
    }

    /// Lines, circles, arcs and filled triangles.
    fn plain(&mut self, shape: &Shape, owner: &str, at: (&str, Option<i16>)) {
        match shape {
            Shape::Line(a, b) | Shape::Dashed(a, b) => {
                self.begin("LINE", owner, at.0, at.1);
                if matches!(shape, Shape::Dashed(..)) {
                    self.tag(6, "DASHED");
                }
                self.class("AcDbLine");
                self.point3(10, *a);
                self.point3(11, *b);
            }
            Shape::Circle(c, r) => {
                self.begin("CIRCLE", owner, at.0, at.1);
                self.class("AcDbCircle");
                self.point3(10, *c);
                self.length(40, *r);
            }
            Shape::Arc(c, r, from, to) => {
                self.begin("ARC", owner, at.0, at.1);
                self.class("AcDbCircle");
                self.point3(10, *c);
                self.length(40, *r);
                self.class("AcDbArc");
                self.real(50, *from);
                self.real(51, *to);
            }
            Shape::Fill([a, b, c]) => {
                self.begin("SOLID", owner, at.0, at.1);
                self.class("AcDbTrace");
                for (k, p) in [(10, a), (11, b), (12, c), (13, c)] {
                    self.point3(k, *p);
                }
            }
            _ => {}
        }
    }

    fn text(&mut self, p: P, high: f64, words: &str) {
        self.class("AcDbText");
        self.point3(10, p);
        self.length(40, high);
        let words = self.encoded(words);
        self.tag(1, words);
        self.class("AcDbText");
    }

    fn polyline(&mut self, points: &[P], closed: bool, owner: &str, at: (&str, Option<i16>)) {
        let flag = u8::from(closed);
        if self.is_new() {
            self.begin("LWPOLYLINE", owner, at.0, at.1);
            self.class("AcDbPolyline");
            self.tag(90, points.len());
            self.tag(70, flag);
            for p in points {
                self.point(10, *p);
            }
            return;
        }
        self.begin("POLYLINE", owner, at.0, at.1);
        self.tag(66, 1);
        self.point3(10, [0.0, 0.0]);
        self.tag(70, flag);
        for p in points {
            self.begin("VERTEX", owner, at.0, at.1);
            self.point3(10, *p);
        }
        self.begin("SEQEND", owner, at.0, at.1);
    }

    fn hatch(&mut self, rings: &[Vec<P>], families: &[Family]) {
        self.class("AcDbHatch");
        self.point3(10, [0.0, 0.0]);
        for (k, v) in [(210, "0.0"), (220, "0.0"), (230, "1.0")] {
            self.tag(k, v);
        }
        self.patterns += 1;
        let name = format!("FP_{}", self.patterns);
        self.tag(2, name);
        self.tag(70, 0);
        self.tag(71, 0);
        self.tag(91, rings.len());
        for (i, r) in rings.iter().enumerate() {
            self.boundary(r, i == 0);
        }
        for (k, v) in [(75, "0"), (76, "2"), (52, "0.0"), (41, "1.0"), (77, "0")] {
            self.tag(k, v);
        }
        self.tag(78, families.len());
        for f in families {
            self.real(53, f.angle);
            self.length(43, f.base[0]);
            self.length(44, f.base[1]);
            let step = f.offset();
            self.length(45, step[0]);
            self.length(46, step[1]);
            self.tag(79, f.dashes.len());
            for d in &f.dashes {
                self.length(49, *d);
            }
        }
        self.tag(98, 0);
    }

    fn boundary(&mut self, ring: &[P], is_first: bool) {
        let outer = u8::from(is_first);
        if self.style.edge_loops {
            self.tag(92, outer);
            self.tag(93, ring.len());
            for (i, a) in ring.iter().enumerate() {
                self.tag(72, 1);
                self.point(10, *a);
                self.point(11, ring[(i + 1) % ring.len()]);
            }
        } else {
            self.tag(92, 2 + outer);
            self.tag(72, 0);
            self.tag(73, 1);
            self.tag(93, ring.len());
            for p in ring {
                self.point(10, *p);
            }
        }
        self.tag(97, 0);
    }

    fn dimension(&mut self, (from, to, line): (P, P, P), upright: bool, block: &str) {
        self.class("AcDbDimension");
        self.tag(2, block);
        self.point3(10, line);
        self.point3(11, [(from[0] + to[0]) / 2.0, (from[1] + to[1]) / 2.0]);
        self.tag(70, 32);
        self.tag(1, "");
        let size = if upright { to[1] - from[1] } else { to[0] - from[0] };
        if self.style.version > Version::R12 {
            self.length(42, size.abs());
        }
        self.tag(3, "STANDARD");
        self.class("AcDbAlignedDimension");
        self.point3(13, from);
        self.point3(14, to);
        self.real(50, if upright { 90.0 } else { 0.0 });
        self.class("AcDbRotatedDimension");
    }
}
