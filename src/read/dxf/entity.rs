//! One entity's group pairs to one shape.

use std::sync::Arc;

use super::groups::Groups;
use super::paths::arc_path;
use super::tags::{EMBEDDED, Tag};
use super::text::{lines, plain};
use crate::geom::vocabulary::{Affine, BezPath, Point, Vec2};
use crate::model::drawing::{Across, Dimension, Polyline, Shape, Text, Up, Vertex};
use crate::model::hatch::Hatch;
use crate::real::Real;

/// An insertion as it stands in the file.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Insert {
    pub block: Arc<str>,
    /// The block's name in capitals, as blocks are looked up.
    pub key: Arc<str>,
    pub placed: Affine,
    pub columns: i64,
    pub rows: i64,
    /// Column and row spacing, along the rotated axes.
    pub spacing: (f64, f64),
    pub angle: f64,
    /// Shared by all that an array inserts.
    pub attributes: Arc<Vec<(String, String)>>,
}

impl<'a> Groups<'a, '_> {
    /// The shape; `None` if a value it needs is missing or no number.
    pub(super) fn shape(&self, kind: &str) -> Option<Vec<Shape>> {
        let one = |s: Option<Shape>| s.map(|s| vec![s]);
        match kind {
            "LINE" => one(Some(Shape::Polyline(Polyline::line(self.point(10)?, self.point(11)?)))),
            "LWPOLYLINE" => one(self.lwpolyline()),
            "ARC" => one(self.arc()),
            "CIRCLE" => one(self.circle()),
            "ELLIPSE" => one(self.ellipse()),
            "SPLINE" => one(super::spline::shape(self)),
            "HATCH" => one(Some(Shape::Hatch(super::hatch::hatch(self)?))),
            "SOLID" | "TRACE" => one(self.solid()),
            "3DFACE" => one(self.face()),
            "TEXT" | "ATTRIB" => one(self.line_of_text()),
            "MTEXT" => self.mtext(),
            "DIMENSION" => Some(self.dimension().into_iter().collect()),
            "POINT" => one(Some(Shape::Point(self.point(10)?))),
            _ => None,
        }
    }

    fn lwpolyline(&self) -> Option<Shape> {
        let mut vertices: Vec<Vertex> = Vec::new();
        let mut x = None;
        for t in self.tags {
            match t.code {
                // A vertex without its y is none.
                10 if x.is_some() => return None,
                10 => x = Some(t.float()?),
                20 => vertices.push(Vertex { at: Point::new(x.take()?, t.float()?), bulge: 0.0 }),
                42 => {
                    if let Some(v) = vertices.last_mut() {
                        v.bulge = t.float()?;
                    }
                }
                _ => {}
            }
        }
        if x.is_some() {
            return None;
        }
        let closed = self.int(70) & 1 == 1;
        let shape = Shape::Polyline(Polyline { vertices, closed });
        Some(super::paths::moved(shape, self.ocs(self.float(38).unwrap_or(0.0))))
    }

    fn arc(&self) -> Option<Shape> {
        let (center, radius) = (self.point(10)?, self.float(40)?);
        if radius <= 0.0 {
            return None;
        }
        let (a, b) = (self.float(50)?.to_radians(), self.float(51)?.to_radians());
        let sweep = (b - a).rem_euclid(std::f64::consts::TAU);
        let sweep = if sweep < 1e-12 { std::f64::consts::TAU } else { sweep };
        let at = |angle: f64| center + radius * Vec2::from_angle(angle);
        // A bulge near a whole circle is huge: two halves are exact.
        let bulge = (sweep / 8.0).tangent();
        let v = |angle: f64, bulge: f64| Vertex { at: at(angle), bulge };
        let vertices = vec![v(a, bulge), v(a + sweep / 2.0, bulge), v(a + sweep, 0.0)];
        let shape = Shape::Polyline(Polyline { vertices, closed: false });
        Some(super::paths::moved(shape, self.ocs(self.float(30).unwrap_or(0.0))))
    }

    fn circle(&self) -> Option<Shape> {
        let (center, radius) = (self.point(10)?, self.float(40)?);
        if radius <= 0.0 {
            return None;
        }
        let v = |dx: f64| Vertex { at: center + Vec2::new(dx, 0.0), bulge: 1.0 };
        let shape = Polyline { vertices: vec![v(radius), v(-radius)], closed: true };
        let ocs = self.ocs(self.float(30).unwrap_or(0.0));
        Some(super::paths::moved(Shape::Polyline(shape), ocs))
    }

    fn ellipse(&self) -> Option<Shape> {
        let (center, major) = (self.point(10)?, self.point(11)?.to_vec2());
        let ratio = self.float(40)?;
        let (a, b) =
            (self.float(41).unwrap_or(0.0), self.float(42).unwrap_or(std::f64::consts::TAU));
        let flip = self.float(230).is_some_and(|z| z < 0.0);
        let minor = if flip { -ratio } else { ratio };
        let path = arc_path(center, major, minor, a, (b - a).rem_euclid(std::f64::consts::TAU))?;
        Some(Shape::Curve(path))
    }

    fn solid(&self) -> Option<Shape> {
        let mut points = vec![self.point(10)?, self.point(11)?];
        // The third and fourth corners are crossed over in the file.
        points.extend(self.point(13));
        points.push(self.point(12)?);
        let ocs = self.ocs(self.float(30).unwrap_or(0.0));
        let mut path = BezPath::new();
        path.move_to(ocs * points[0]);
        points[1..].iter().for_each(|p| path.line_to(ocs * *p));
        path.close_path();
        Some(Shape::Hatch(Hatch { loops: vec![path], solid: true, ..Default::default() }))
    }

    /// Whether a face in space is seen at a slant or on its edge, y and x being the view.
    pub(super) fn is_tilted(&self) -> bool {
        let heights = [30, 31, 32, 33].map(|code| self.float(code));
        let first = heights[0].unwrap_or(0.0);
        let reach = [10, 20, 11, 21, 12, 22].iter().filter_map(|c| self.float(*c));
        let size = reach.fold(1.0, |most: f64, v| most.max(v.abs()));
        heights.iter().flatten().any(|z| (z - first).abs() > 1e-6 * size)
    }

    /// A face: its corners in order, the fourth again the third where it has three.
    fn face(&self) -> Option<Shape> {
        let mut points = vec![self.point(10)?, self.point(11)?, self.point(12)?];
        points.extend(self.point(13));
        let mut path = BezPath::new();
        path.move_to(points[0]);
        points[1..].iter().for_each(|p| path.line_to(*p));
        path.close_path();
        Some(Shape::Hatch(Hatch { loops: vec![path], solid: true, ..Default::default() }))
    }

    fn line_of_text(&self) -> Option<Shape> {
        let (h, v) = (self.int(72), self.int(if self.tags[0].is("ATTRIB") { 74 } else { 73 }));
        let ocs = self.ocs(self.float(30).unwrap_or(0.0));
        let anchored = h != 0 || v != 0;
        let at = if anchored { self.point(11).or(self.point(10)) } else { self.point(10) }?;
        // Text drawn backward, or on its head, says so itself (DXF reference, group 71).
        let generation = self.generation();
        let (backward, headlong) = (generation & 2 != 0, generation & 4 != 0);
        let text = Text {
            at,
            height: self.float(40).filter(|h| *h > 0.0).unwrap_or(1.0),
            angle: self.float(50).unwrap_or(0.0) + if backward { 180.0 } else { 0.0 },
            mirrored: backward != headlong,
            content: match self.get(EMBEDDED) {
                Some(_) => lines(&self.text(1)?).join(" "),
                None => plain(&self.text(1)?),
            },
            across: match h {
                1 | 4 => Across::Center,
                2 => Across::Right,
                _ => Across::Left,
            },
            up: match v {
                2 => Up::Middle,
                3 => Up::Top,
                _ if h == 4 => Up::Middle,
                _ => Up::Baseline,
            },
            bold: false,
        };
        Some(super::paths::moved(Shape::Text(text), ocs))
    }

    /// Group 71 of a text; of an attribute's own groups, which follow its text's, it says that it has
    /// several lines (DXF reference).
    fn generation(&self) -> i64 {
        let own = |t: &Tag| t.code == 100 && t.is("AcDbAttribute");
        let of_text = self.tags.iter().take_while(|t| !own(t)).find(|t| t.code == 71);
        of_text.and_then(Tag::int).unwrap_or(0)
    }

    fn mtext(&self) -> Option<Vec<Shape>> {
        let at = self.point(10)?;
        let height = self.float(40).filter(|h| *h > 0.0).unwrap_or(1.0);
        let angle = match self.point(11).map(Point::to_vec2) {
            Some(v) if v.hypot() > 1e-12 => v.atan2().to_degrees(),
            _ => self.float(50).unwrap_or(0.0),
        };
        let mut bytes: Vec<u8> = Vec::new();
        // Long texts come in parts of group 3 before the last one in group 1.
        for t in self.tags.iter().filter(|t| t.code == 3) {
            bytes.extend(t.value);
        }
        bytes.extend(self.get(1).map_or(&[][..], |t| t.value));
        let all = lines(&self.decoder.text(&bytes));
        let corner = self.int(71).clamp(1, 9) - 1;
        let across = [Across::Left, Across::Center, Across::Right][(corner % 3) as usize];
        // Lines stand 5/3 of the capitals apart, as the format defines single spacing.
        let pitch = height * 5.0 / 3.0 * self.float(44).filter(|s| *s > 0.0).unwrap_or(1.0);
        let total = height + pitch * (all.len().max(1) - 1) as f64;
        let top = [0.0, total / 2.0, total][(corner / 3) as usize];
        let down = Affine::rotate(angle.to_radians());
        let shapes = all.into_iter().enumerate().filter(|(_, l)| !l.trim().is_empty());
        let shapes = shapes.map(|(i, content)| {
            let offset = down * Point::new(0.0, top - pitch * i as f64);
            let at = at + offset.to_vec2();
            let (up, mirrored, bold) = (Up::Top, false, false);
            Shape::Text(Text { at, height, angle, mirrored, content, across, up, bold })
        });
        Some(shapes.collect())
    }

    /// A linear dimension; none for the other kinds (diameters, angles, ordinates) and for one that leaves
    /// its points to its block: neither says a distance that could be compared.
    fn dimension(&self) -> Option<Shape> {
        let kind = self.int(70) & 7;
        let (from, to) = (self.point(13)?, self.point(14)?);
        if kind > 1 {
            return None;
        }
        let text = self.text(1).filter(|t| !t.is_empty() && t != "<>");
        Some(Shape::Dimension(Dimension {
            from,
            to,
            line: self.point(10).unwrap_or(to),
            angle: (kind == 0).then(|| self.float(50).unwrap_or(0.0)),
            measured: self.float(42),
            text: text.map(|t| lines(&t).join(" ")),
            picture: self.text(2),
            lettered: None,
        }))
    }

    /// An INSERT with its placing; scales of 0 count as 1 (many writers leave z at 0).
    pub(super) fn insert(&self) -> Option<Insert> {
        let scale = |code| self.float(code).filter(|s| *s != 0.0).unwrap_or(1.0);
        let angle = self.float(50).unwrap_or(0.0);
        let at = self.point(10)?;
        let placed = self.ocs(self.float(30).unwrap_or(0.0))
            * Affine::translate(at.to_vec2())
            * Affine::rotate(angle.to_radians())
            * Affine::scale_non_uniform(scale(41), scale(42));
        let block = self.text(2)?;
        Some(Insert {
            key: Arc::from(block.to_uppercase()),
            block: Arc::from(block),
            placed,
            columns: self.int(70).max(1),
            rows: self.int(71).max(1),
            spacing: (self.float(44).unwrap_or(0.0), self.float(45).unwrap_or(0.0)),
            angle,
            attributes: Arc::default(),
        })
    }
}
