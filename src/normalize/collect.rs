//! Shown items to strokes, labels, hatches and dimensions; then to inches on the grid.

use super::left;
use super::shapes::strokes;
use crate::finding::drawing::DrawingFinding;
use crate::finding::{Finding, Findings};
use crate::geom::flatten::MOST_POINTS;
use crate::geom::tol::snap;
use crate::geom::vocabulary::{Affine, Point, Rect, Vec2};
use crate::job::Job;
use crate::model::drawing::{Drawing, Item, Shape, Space};
use crate::model::linework::{HatchArea, Label, LayerUse, Linework, Measured, Scale};

/// Most points of all curves together, flattened: what a drawing may take of memory.
const MOST_OF_ALL: usize = 20_000_000;

/// Model-space content in drawing units. A drawing whose curves take more points than any has is told of,
/// and collected in part.
pub(super) fn collect(
    drawing: &Drawing,
    job: &Job,
    layers: Vec<LayerUse>,
    findings: &mut Findings,
) -> Linework {
    let mut out = Linework {
        name: drawing.name.clone(),
        layers,
        groups: drawing.groups.clone(),
        viewports: drawing.viewports.clone(),
        beside: left::beside(drawing),
        ..Default::default()
    };
    let named: Vec<bool> =
        drawing.layers.iter().map(|l| !l.shown && job.names_layer(&l.name)).collect();
    let mut points = 0;
    for item in &drawing.items {
        let before = out.strokes.len();
        // A layer that the job names letter by letter is wanted, off or not.
        let wanted = named.get(item.layer).copied().unwrap_or_default();
        if item.shown || wanted || job.drawing.hidden_layers {
            add(&mut out, item);
        } else {
            left::hidden(&mut out, item);
        }
        let of_item: usize = out.strokes[before..].iter().map(|s| s.points.len()).sum();
        points += of_item;
        let straight = matches!(&item.shape, Shape::Polyline(p) if p.vertices.len() == of_item);
        if points > MOST_OF_ALL || (of_item >= MOST_POINTS && !straight) {
            let (most, from_line) = (points.min(MOST_OF_ALL), Some(item.origin.line));
            let kind = DrawingFinding::PointsTooMany { most, from_line };
            findings.push(Finding::new(kind).about(&item.origin));
            break;
        }
    }
    left::unread(&mut out, drawing);
    out
}

fn add(out: &mut Linework, item: &Item) {
    let role = out.layers.get(item.layer).and_then(|l| l.role);
    let (layer, group, origin) = (item.layer, item.group, item.origin.clone());
    if let Space::Paper(layout) = &item.space {
        left::on_sheet(out, item);
        if let Shape::Text(text) = &item.shape {
            let label = Label { text: text.clone(), role, layer, group, origin };
            out.paper_labels.push((layout.clone(), label));
        }
        return;
    }
    if matches!(item.shape, Shape::Text(_) | Shape::Dimension(_)) {
        out.asides.entry(layer).or_default().said += 1;
    }
    match &item.shape {
        Shape::Polyline(_) | Shape::Curve(_) => out.strokes.extend(strokes(item, role)),
        Shape::Hatch(h) => {
            let hatch = h.clone();
            let (outlined, course_lines, no_siding) = (false, 0, None);
            let area =
                HatchArea { hatch, role, layer, group, outlined, course_lines, no_siding, origin };
            out.hatches.push(area);
        }
        Shape::Text(t) => out.labels.push(Label { text: t.clone(), role, layer, group, origin }),
        Shape::Dimension(d) => {
            let between = d.to - d.from;
            let along = match d.angle {
                Some(a) => Vec2::from_angle(a.to_radians()),
                None => between / between.hypot().max(f64::MIN_POSITIVE),
            };
            let halfway = d.from.midpoint(d.to) - d.line;
            out.measured.push(Measured {
                from: d.from,
                to: d.to,
                drawn: d.angle.map_or(between.hypot(), |_| between.dot(along).abs()),
                middle: d.line + along * halfway.dot(along),
                text: d.text.clone(),
                lettered: d.lettered.clone(),
                origin,
            });
        }
        Shape::Point(_) => left::point(out, item),
    }
}

/// Scales everything to inches.
pub(super) fn to_inches(lines: &mut Linework, scale: Scale) {
    let k = scale.inches;
    let point = |p: Point| Point::new(p.x * k, p.y * k);
    let left = lines.left.iter_mut().map(|l| &mut l.stroke);
    for s in lines.strokes.iter_mut().chain(left) {
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
        m.middle = point(m.middle);
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
    let left = lines.left.iter_mut().map(|l| &mut l.stroke);
    for s in lines.strokes.iter_mut().chain(left) {
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
