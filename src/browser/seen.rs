//! What a page shows of a drawing that was read, in the drawing's own coordinates, y up.

use std::collections::BTreeMap;

use serde::Serialize;

use crate::annotate::{place, shown};
use crate::finding::{Audience, Finding, Findings, Severity, gathered};
use crate::geom::flatten::{bulge_points, path_points};
use crate::geom::vocabulary::{Affine, Point};
use crate::job::edit::Said;
use crate::model::drawing::{Drawing, Item, Polyline, Shape};
use crate::model::house::{DrawnElevation, House, OpeningKind, WallWay};
use crate::model::linework::{Linework, Role};
use crate::pipeline::Checked;
use crate::units::LengthStyle;
use crate::wording::findings::{FindingWords, head, words};

/// Most texts that are shown.
const MOST_TEXTS: usize = 4_000;
/// Share of the drawing's size that a chord may stand off a curve: of our own choosing.
const FINE: f64 = 1.0 / 8192.0;

/// A drawing as it was read.
#[derive(Debug, Serialize)]
pub struct Seen {
    /// Name of its file.
    pub name: String,
    /// How it was written, `DXF AC1015`.
    pub format: String,
    /// Inches in one unit of the drawing; none where no scale was found.
    pub inches: Option<f64>,
    /// What the job says, as it stands in its text.
    pub said: Said,
    /// Box round everything shown: left, bottom, right, top.
    pub bounds: Option<[f64; 4]>,
    /// Layers with what is drawn on them.
    pub layers: Vec<SeenLayer>,
    /// Texts.
    pub texts: Vec<SeenText>,
    /// Walls found.
    pub walls: Vec<SeenWall>,
    /// Openings found.
    pub openings: Vec<SeenOpening>,
    /// What was found on the way.
    pub findings: Vec<SeenFinding>,
    /// Whether no house came of it.
    pub stopped: bool,
}

/// A layer.
#[derive(Debug, Serialize)]
pub struct SeenLayer {
    /// Name.
    pub name: String,
    /// What is read from it; none where it is not read.
    pub role: Option<Role>,
    /// Lines, each as x and y by turns.
    pub lines: Vec<Vec<f64>>,
}

/// A text.
#[derive(Debug, Serialize)]
pub struct SeenText {
    /// Place.
    pub at: [f64; 2],
    /// Height.
    pub height: f64,
    /// Direction, degrees.
    pub angle: f64,
    /// What it says.
    pub text: String,
}

/// A wall.
#[derive(Debug, Serialize)]
pub struct SeenWall {
    /// Its name, as the job may use it.
    pub id: String,
    /// Its elevation.
    pub elevation: String,
    /// Its parts to side, each as x and y by turns.
    pub faces: Vec<Vec<f64>>,
    /// Area of them without openings, as the job writes areas.
    pub area: String,
    /// How it was found.
    pub way: WallWay,
}

/// An opening.
#[derive(Debug, Serialize)]
pub struct SeenOpening {
    /// Its name.
    pub id: String,
    /// The wall it is in.
    pub wall: String,
    /// What it is.
    pub kind: OpeningKind,
    /// Its outline, x and y by turns.
    pub outline: Vec<f64>,
    /// Width and height, as the job writes lengths.
    pub size: String,
}

/// A finding in words.
#[derive(Debug, Serialize)]
pub struct SeenFinding {
    /// The head it is told under with those after it that have the same; empty where it is told by itself.
    pub head: String,
    /// Its code.
    pub code: String,
    /// How much it matters.
    pub severity: Severity,
    /// Who must act.
    pub audience: Audience,
    /// What was found.
    pub message: String,
    /// What to do.
    pub help: String,
    /// The elevation it is in.
    pub elevation: Option<String>,
    /// Where it stands.
    pub at: Option<[f64; 2]>,
}

/// What there is to show of a drawing that was read as far as it goes.
pub fn seen(checked: &Checked, said: Said, findings: &Findings, style: LengthStyle) -> Seen {
    let (drawing, lines) = (&checked.drawing, &checked.lines);
    let shown = shown(drawing, &lines.layers_read());
    let bounds = shown.iter().map(|i| i.1).reduce(|a, b| a.union(b));
    let items: Vec<&Item> = shown.into_iter().map(|i| i.0).collect();
    let sagitta = bounds.map_or(1.0, |b| b.width().max(b.height()).max(1e-6) * FINE);
    let house = checked.house.as_ref().ok();
    let faces = house.into_iter().flat_map(|h| &h.elevations);
    Seen {
        name: drawing.name.clone(),
        format: drawing.dialect.format.clone(),
        inches: Some(lines.scale.inches).filter(|v| *v > 0.0),
        said,
        bounds: bounds.map(|b| [b.x0, b.y0, b.x1, b.y1]),
        layers: layers(drawing, lines, &items, sagitta),
        texts: texts(&items),
        walls: faces.clone().flat_map(|e| walls(e, style)).collect(),
        openings: house.map(|h| openings(h, style)).unwrap_or_default(),
        findings: told(findings.all(), Some(drawing), style),
        stopped: house.is_none(),
    }
}

/// Findings in words, those about one subject together under one head.
pub fn told<'a>(
    list: impl IntoIterator<Item = &'a Finding>,
    drawing: Option<&Drawing>,
    style: LengthStyle,
) -> Vec<SeenFinding> {
    let mut out = Vec::new();
    for group in gathered(list) {
        let head = if group.kinds.len() > 1 { head(&group, "note") } else { String::new() };
        let all = group.kinds.iter().flat_map(|k| k.all());
        out.extend(all.map(|f| SeenFinding { head: head.clone(), ..finding(f, drawing, style) }));
    }
    out
}

/// A finding in words, with its place in the drawing.
pub fn finding(f: &Finding, drawing: Option<&Drawing>, style: LengthStyle) -> SeenFinding {
    let FindingWords { message, help } = words(f, style);
    let at = drawing.map_or(f.at, |d| place(d, f)).filter(|p| p.is_finite());
    SeenFinding {
        head: String::new(),
        code: f.code().word().to_owned(),
        severity: f.severity(),
        audience: f.audience(),
        message,
        help,
        elevation: f.elevation.as_ref().map(ToString::to_string),
        at: at.map(|p| [p.x, p.y]),
    }
}

fn layers(drawing: &Drawing, lines: &Linework, items: &[&Item], sagitta: f64) -> Vec<SeenLayer> {
    let mut by_layer: BTreeMap<usize, Vec<Vec<f64>>> = BTreeMap::new();
    for item in items {
        let drawn = drawn(&item.shape, sagitta);
        if !drawn.is_empty() {
            by_layer.entry(item.layer).or_default().extend(drawn);
        }
    }
    let layer = |(i, lines_of): (usize, Vec<Vec<f64>>)| {
        let name = drawing.layers.get(i).map(|l| l.name.clone()).unwrap_or_default();
        SeenLayer { name, role: lines.layers.get(i).and_then(|l| l.role), lines: lines_of }
    };
    by_layer.into_iter().map(layer).collect()
}

/// A shape as lines of points.
fn drawn(shape: &Shape, sagitta: f64) -> Vec<Vec<f64>> {
    let path = |path| {
        let all = path_points(path, sagitta).into_iter();
        all.map(|(points, closed)| flat(&points, closed)).collect::<Vec<_>>()
    };
    match shape {
        Shape::Polyline(p) => vec![polyline(p, sagitta)],
        Shape::Curve(c) => path(c),
        Shape::Hatch(h) => h.loops.iter().flat_map(path).collect(),
        Shape::Text(_) | Shape::Dimension(_) | Shape::Point(_) => Vec::new(),
    }
}

fn polyline(p: &Polyline, sagitta: f64) -> Vec<f64> {
    let Some(first) = p.vertices.first() else { return Vec::new() };
    let next = p.vertices.iter().skip(1).chain(p.closed.then_some(first));
    let mut points = vec![first.at];
    for (a, b) in p.vertices.iter().zip(next) {
        points.extend(bulge_points(a.at, b.at, a.bulge, sagitta));
    }
    flat(&points, false)
}

/// Points as x and y by turns; a closed line ends where it begins.
fn flat(points: &[Point], closed: bool) -> Vec<f64> {
    let again = points.first().filter(|_| closed);
    points.iter().chain(again).filter(|p| p.is_finite()).flat_map(|p| [p.x, p.y]).collect()
}

fn texts(items: &[&Item]) -> Vec<SeenText> {
    let text = |i: &&Item| match &i.shape {
        Shape::Text(t) if t.at.is_finite() => Some(SeenText {
            at: [t.at.x, t.at.y],
            height: t.height,
            angle: t.angle,
            text: t.content.clone(),
        }),
        _ => None,
    };
    items.iter().filter_map(text).take(MOST_TEXTS).collect()
}

fn placed(map: Affine, ring: &[Point]) -> Vec<f64> {
    flat(&ring.iter().map(|p| map * *p).collect::<Vec<_>>(), false)
}

fn walls(on: &DrawnElevation, style: LengthStyle) -> Vec<SeenWall> {
    let wall = |w: &crate::model::house::DrawnWall| {
        let inside: f64 = w.faces.iter().map(|f| f.area().abs()).sum();
        SeenWall {
            id: w.id.to_string(),
            elevation: on.name.to_string(),
            faces: w
                .faces
                .iter()
                .flat_map(|f| f.rings())
                .map(|r| placed(on.to_source, r))
                .collect(),
            area: format!("{:.1} {}", style.area(inside / 144.0), style.area_unit()),
            way: w.way,
        }
    };
    on.walls.iter().map(wall).collect()
}

fn openings(house: &House, style: LengthStyle) -> Vec<SeenOpening> {
    let mut out = Vec::new();
    for on in &house.elevations {
        for w in &on.walls {
            out.extend(w.openings.iter().map(|o| {
                let (left, right, sill, head) = o.sides();
                SeenOpening {
                    id: o.id.to_string(),
                    wall: w.id.to_string(),
                    kind: o.kind,
                    outline: placed(on.to_source, &o.outline),
                    size: style.size(right - left, head - sill),
                }
            }));
        }
    }
    out
}
