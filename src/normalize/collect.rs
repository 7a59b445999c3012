//! Shown items to strokes, labels, hatches and dimensions; then to inches on the grid.

use crate::geom::flatten::{SAGITTA, path_points};
use crate::geom::tol::snap;
use crate::geom::vocabulary::{Affine, Point, Rect};
use crate::job::Job;
use crate::model::drawing::{Drawing, Item, Shape, Space};
use crate::model::linework::{HatchArea, Label, LayerUse, Linework, Measured, Scale, Stroke};

/// Chords are cut for the smallest unit a house is drawn in, a millimeter, and the largest, a
/// meter, alike: by the size of the thing, never coarser than this share of it.
const CHORD_SHARE: f64 = 1.0 / 4096.0;

/// Model-space content in drawing units.
pub(super) fn collect(drawing: &Drawing, job: &Job, layers: Vec<LayerUse>) -> Linework {
    let mut out = Linework {
        name: drawing.name.clone(),
        layers,
        groups: drawing.groups.clone(),
        viewports: drawing.viewports.clone(),
        ..Default::default()
    };
    let named: Vec<bool> =
        drawing.layers.iter().map(|l| !l.shown && job.names_layer(&l.name)).collect();
    for item in &drawing.items {
        // A layer that the job names letter by letter is wanted, off or not.
        let wanted = named.get(item.layer).copied().unwrap_or_default();
        if item.shown || wanted || job.drawing.hidden_layers {
            add(&mut out, item);
        }
    }
    out
}

fn add(out: &mut Linework, item: &Item) {
    let role = out.layers.get(item.layer).and_then(|l| l.role);
    let (layer, group, origin) = (item.layer, item.group, item.origin.clone());
    if let Space::Paper(layout) = &item.space {
        if let Shape::Text(text) = &item.shape {
            let label = Label { text: text.clone(), role, layer, group, origin };
            out.paper_labels.push((layout.clone(), label));
        }
        return;
    }
    match &item.shape {
        Shape::Polyline(p) => {
            let size = extent(p.vertices.iter().map(|v| v.at));
            let points = p.points((size * CHORD_SHARE).clamp(1e-6, SAGITTA));
            out.strokes.push(Stroke { points, closed: p.closed, role, layer, group, origin });
        }
        Shape::Curve(path) => {
            let size = path_size(path);
            for (points, closed) in path_points(path, (size * CHORD_SHARE).clamp(1e-6, SAGITTA)) {
                out.strokes.push(Stroke {
                    points,
                    closed,
                    role,
                    layer,
                    group,
                    origin: origin.clone(),
                });
            }
        }
        Shape::Hatch(h) => {
            out.hatches.push(HatchArea { hatch: h.clone(), role, layer, origin });
        }
        Shape::Text(t) => out.labels.push(Label { text: t.clone(), role, layer, group, origin }),
        Shape::Dimension(d) => {
            let drawn = match d.angle {
                Some(a) => {
                    let along = crate::geom::vocabulary::Vec2::from_angle(a.to_radians());
                    (d.to - d.from).dot(along).abs()
                }
                None => d.from.distance(d.to),
            };
            out.measured.push(Measured {
                from: d.from,
                to: d.to,
                drawn,
                text: d.text.clone(),
                origin,
            });
        }
        Shape::Point(_) => {}
    }
}

fn extent(points: impl Iterator<Item = Point>) -> f64 {
    let boxes = points.map(|p| Rect::from_points(p, p));
    boxes.reduce(|a, b| a.union(b)).map_or(1.0, |r| r.width().max(r.height()))
}

fn path_size(path: &crate::geom::vocabulary::BezPath) -> f64 {
    use crate::geom::vocabulary::CurveShape;
    let r = path.bounding_box();
    r.width().max(r.height())
}

/// Scales everything to inches.
pub(super) fn to_inches(lines: &mut Linework, scale: Scale) {
    let k = scale.inches;
    let point = |p: Point| Point::new(p.x * k, p.y * k);
    for s in &mut lines.strokes {
        s.points.iter_mut().for_each(|p| *p = point(*p));
    }
    for l in &mut lines.labels {
        l.text.at = point(l.text.at);
        l.text.height *= k;
    }
    for h in &mut lines.hatches {
        h.hatch = std::mem::take(&mut h.hatch).moved(Affine::scale(k));
    }
    for m in &mut lines.measured {
        m.from = point(m.from);
        m.to = point(m.to);
        m.drawn *= k;
    }
    for g in &mut lines.groups {
        g.placed = Affine::scale(k) * g.placed;
    }
    for v in &mut lines.viewports {
        v.model =
            Rect::from_points(point(v.model.origin()), point(Point::new(v.model.x1, v.model.y1)));
    }
    lines.scale = scale;
}

/// Snaps everything to the grid, once.
pub(super) fn to_grid(lines: &mut Linework) {
    let settle = |p: &mut Point| *p = Point::new(snap(p.x), snap(p.y));
    for s in &mut lines.strokes {
        s.points.iter_mut().for_each(settle);
    }
    lines.labels.iter_mut().for_each(|l| settle(&mut l.text.at));
    for m in &mut lines.measured {
        settle(&mut m.from);
        settle(&mut m.to);
    }
    for v in &mut lines.viewports {
        let r = v.model;
        v.model = Rect::new(snap(r.x0), snap(r.y0), snap(r.x1), snap(r.y1));
    }
}
