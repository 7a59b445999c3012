//! A sheet as SVG, by the `svg` crate, which escapes what a drawing's text holds. Text stays text;
//! title and description are there for readers that cannot see. Units are points, 1/72 in.

use svg::node::Text as Plain;
use svg::node::element::path::Data;
use svg::node::element::{
    Definitions, Description, Group, Path, Style, Text as TextElement, Title,
};
use svg::{Document, Node};

use crate::clean::{Destination, clean};
use crate::geom::vocabulary::{PathEl, Point};
use crate::model::drawing::{Across, Dash, Layer, Pen, Polyline, Shape, Text, Up};
use crate::model::sheet::Sheet;
use crate::typeface;

const POINTS: f64 = 72.0;

/// A number with at most three decimals: 1/1000 point, far below what paper holds.
fn n(v: f64) -> f64 {
    let r = (v * 1000.0).round() / 1000.0;
    if r == 0.0 { 0.0 } else { r }
}

struct Out<'a> {
    sheet: &'a Sheet,
}

impl Out<'_> {
    fn x(&self, p: Point) -> f64 {
        n(p.x * POINTS)
    }

    fn y(&self, p: Point) -> f64 {
        n((self.sheet.height - p.y) * POINTS)
    }

    fn polyline(&self, line: &Polyline) -> Option<Data> {
        let points = line.points(1e-3);
        let (first, rest) = points.split_first()?;
        let mut data = Data::new().move_to((self.x(*first), self.y(*first)));
        for p in rest {
            data = data.line_to((self.x(*p), self.y(*p)));
        }
        Some(if line.closed { data.close() } else { data })
    }

    fn curve(&self, path: &crate::geom::vocabulary::BezPath) -> Data {
        let mut d = Data::new();
        for el in path.elements() {
            d = match *el {
                PathEl::MoveTo(p) => d.move_to((self.x(p), self.y(p))),
                PathEl::LineTo(p) => d.line_to((self.x(p), self.y(p))),
                PathEl::QuadTo(a, p) => {
                    d.quadratic_curve_to((self.x(a), self.y(a), self.x(p), self.y(p)))
                }
                PathEl::CurveTo(a, b, p) => d.cubic_curve_to((
                    self.x(a),
                    self.y(a),
                    self.x(b),
                    self.y(b),
                    self.x(p),
                    self.y(p),
                )),
                PathEl::ClosePath => d.close(),
            };
        }
        d
    }

    fn text(&self, t: &Text) -> TextElement {
        let size = t.height / typeface::CAPITALS * POINTS;
        let capitals = t.height * POINTS;
        let down = match t.up {
            Up::Baseline => 0.0,
            Up::Middle => capitals / 2.0,
            Up::Top => capitals,
        };
        let anchor = match t.across {
            Across::Left => "start",
            Across::Center => "middle",
            Across::Right => "end",
        };
        let (x, y) = (self.x(t.at), self.y(t.at));
        let mut el = TextElement::new(clean(&typeface::printable(&t.content), Destination::Svg))
            .set("font-size", n(size))
            .set("text-anchor", anchor);
        if t.bold {
            el = el.set("font-weight", "bold");
        }
        if t.angle == 0.0 {
            el.set("x", x).set("y", n(y + down))
        } else {
            el.set(
                "transform",
                format!("translate({x} {y}) rotate({}) translate(0 {})", n(-t.angle), n(down)),
            )
        }
    }
}

fn dashes(pen: &Pen) -> Option<&'static str> {
    match pen.dash {
        Dash::Solid => None,
        Dash::Dashed => Some("6 2.5"),
        Dash::DashDot => Some("10 2 1.5 2"),
        Dash::DashDotDot => Some("10 2 1.5 2 1.5 2"),
        Dash::Dotted => Some("1.5 2"),
    }
}

fn color(c: [u8; 3]) -> String {
    format!("#{:02x}{:02x}{:02x}", c[0], c[1], c[2])
}

fn layer_group(layer: &Layer) -> Group {
    let pen = &layer.pen;
    let mut g = Group::new()
        .set("stroke", if pen.width > 0.0 { color(pen.color) } else { "none".to_owned() })
        .set("stroke-width", n(pen.width / 25.4 * POINTS))
        .set("fill", pen.fill.map_or("none".to_owned(), color));
    if let Some(d) = dashes(pen) {
        g = g.set("stroke-dasharray", d);
    }
    g
}

/// The sheet as an SVG document.
pub fn document(sheet: &Sheet) -> String {
    let out = Out { sheet };
    let (w, h) = (n(sheet.width * POINTS), n(sheet.height * POINTS));
    let mut doc = Document::new()
        .set("width", format!("{}in", n(sheet.width)))
        .set("height", format!("{}in", n(sheet.height)))
        .set("viewBox", (0, 0, w, h))
        .set("role", "img")
        .add(Title::new(clean(&sheet.title, Destination::Svg)))
        .add(Description::new().add(Plain::new(clean(&sheet.description, Destination::Svg))))
        .add(
            Definitions::new()
                .add(Style::new(format!("text{{font-family:'{}',sans-serif}}", typeface::FAMILY))),
        )
        .add(Path::new().set("d", format!("M0 0H{w}V{h}H0Z")).set("fill", "#ffffff"));
    // Items keep their order where a later one covers an earlier: white grounds and what they cover
    // are drawn in runs of one layer.
    let mut run: Option<(usize, Group)> = None;
    for item in &sheet.drawing.items {
        let Some(layer) = sheet.drawing.layers.get(item.layer) else { continue };
        let is_text = matches!(item.shape, Shape::Text(_));
        if run.as_ref().is_none_or(|r| r.0 != item.layer) {
            if let Some((_, g)) = run.take() {
                doc.append(g);
            }
            let mut g = layer_group(layer);
            if is_text {
                g = g.set("stroke", "none").set("fill", color(layer.pen.color));
            }
            run = Some((item.layer, g.set("class", layer.name.clone())));
        }
        let Some((_, group)) = run.as_mut() else { continue };
        match &item.shape {
            Shape::Polyline(line) => {
                if let Some(d) = out.polyline(line) {
                    group.append(Path::new().set("d", d));
                }
            }
            Shape::Curve(path) => group.append(Path::new().set("d", out.curve(path))),
            Shape::Hatch(hatch) => {
                for l in &hatch.loops {
                    group.append(Path::new().set("d", out.curve(l)));
                }
            }
            Shape::Text(t) => group.append(out.text(t)),
            Shape::Dimension(_) | Shape::Point(_) => {}
        }
    }
    if let Some((_, g)) = run {
        doc.append(g);
    }
    format!("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n{doc}\n")
}
