//! Nodes of the tree as shapes on layers.

use std::collections::BTreeMap;
use std::sync::Arc;

use usvg::tiny_skia_path::PathSegment;

use super::names::{Named, Names};
use super::user::ToUser;
use crate::finding::drawing::DrawingFinding;
use crate::finding::{Finding, Findings};
use crate::geom::vocabulary::{Affine, BezPath, CurveShape, Point};
use crate::model::drawing::{
    Across, Drawing, Group, Item, Layer, Pen, Polyline, Shape, Space, Text, Up,
};
use crate::origin::{EntityKind, Origin};
use crate::read::limits::Limits;

struct Maker<'a> {
    names: &'a Names,
    user: &'a ToUser,
    limits: &'a Limits,
    out: &'a mut Drawing,
    index: BTreeMap<String, usize>,
    full: bool,
    far: usize,
}

/// Every drawn path and text of the tree.
pub(super) fn all(
    tree: &usvg::Tree,
    names: &Names,
    user: &ToUser,
    limits: &Limits,
    out: &mut Drawing,
    findings: &mut Findings,
) {
    let mut maker = Maker { names, user, limits, out, index: BTreeMap::new(), full: false, far: 0 };
    maker.group(tree.root(), None, None);
    if maker.full {
        let most = limits.items;
        let kind = DrawingFinding::ItemsTooMany { most, from_line: None, array: None };
        findings.push(Finding::new(kind));
    }
    if maker.far > 0 {
        let (shapes, farthest) = (maker.far, limits.coordinate);
        findings.push(Finding::new(DrawingFinding::NumbersAbsurd { shapes, farthest }));
    }
}

impl Maker<'_> {
    /// `named` is the nearest element round the group; `symbol` the insertion it is part of.
    fn group(&mut self, group: &usvg::Group, named: Option<&str>, symbol: Option<usize>) {
        let own = Some(group.id()).filter(|i| self.names.0.contains_key(*i)).or(named);
        let symbol = self.symbol(group.id(), symbol);
        for node in group.children() {
            if self.out.items.len() >= self.limits.items {
                self.full = true;
                return;
            }
            match node {
                usvg::Node::Group(g) => self.group(g, own, symbol),
                usvg::Node::Path(p) if p.is_visible() => self.path(p, own, symbol),
                usvg::Node::Text(t) => self.text(t, own, symbol),
                _ => {}
            }
        }
    }

    /// A `use` is an insertion: what it brings belongs together, as a block's contents do.
    fn symbol(&mut self, id: &str, parent: Option<usize>) -> Option<usize> {
        let Some(named) = self.names.0.get(id).filter(|n| n.element == "use").cloned() else {
            return parent;
        };
        let layer = self.layer(&named.layer);
        self.out.groups.push(Group {
            block: named.id.clone().unwrap_or_default(),
            parent,
            layer,
            space: Space::Model,
            placed: Affine::IDENTITY,
            attributes: Vec::new(),
            origin: origin(&named),
        });
        Some(self.out.groups.len() - 1)
    }

    fn layer(&mut self, name: &str) -> usize {
        if let Some(i) = self.index.get(name) {
            return *i;
        }
        let layer = Layer { name: name.to_owned(), shown: true, pen: Pen::default() };
        self.out.layers.push(layer);
        self.index.insert(name.to_owned(), self.out.layers.len() - 1);
        self.out.layers.len() - 1
    }

    fn named(&self, id: &str, outer: Option<&str>) -> Named {
        let found = self.names.0.get(id).or_else(|| outer.and_then(|o| self.names.0.get(o)));
        found.cloned().unwrap_or(Named {
            layer: "0".to_owned(),
            line: 0,
            id: None,
            element: "path",
            text: None,
        })
    }

    fn put(&mut self, named: &Named, symbol: Option<usize>, shape: Shape) {
        // What a symbol brings takes its layer, unless it has one of its own.
        let outer = symbol.map(|s| self.out.groups[s].layer);
        let layer = match outer {
            Some(layer) if named.layer == "0" => layer,
            _ => self.layer(&named.layer),
        };
        self.out.items.push(Item {
            layer,
            space: Space::Model,
            group: symbol,
            shown: true,
            shape,
            origin: origin(named),
        });
    }

    fn place(&self, x: f32, y: f32) -> Point {
        let (kx, ky) = self.user.scale;
        let (ox, oy) = self.user.origin;
        Point::new(ox + f64::from(x) * kx, self.user.height - (oy + f64::from(y) * ky))
    }

    fn path(&mut self, path: &usvg::Path, outer: Option<&str>, symbol: Option<usize>) {
        let Some(data) = path.data().clone().transform(path.abs_transform()) else { return };
        let named = self.named(path.id(), outer);
        for part in self.parts(&data) {
            let b = part.bounding_box();
            let far = [b.x0, b.y0, b.x1, b.y1];
            if far.iter().any(|v| !v.is_finite() || v.abs() > self.limits.coordinate) {
                self.far += 1;
                continue;
            }
            let shape = straight(&part).map_or(Shape::Curve(part), Shape::Polyline);
            self.put(&named, symbol, shape);
        }
    }

    /// Each subpath for itself.
    fn parts(&self, data: &usvg::tiny_skia_path::Path) -> Vec<BezPath> {
        let at = |p: usvg::tiny_skia_path::Point| self.place(p.x, p.y);
        let mut out: Vec<BezPath> = Vec::new();
        for s in data.segments() {
            if let PathSegment::MoveTo(p) = s {
                let mut path = BezPath::new();
                path.move_to(at(p));
                out.push(path);
                continue;
            }
            let Some(path) = out.last_mut() else { continue };
            match s {
                PathSegment::MoveTo(_) => {}
                PathSegment::LineTo(p) => path.line_to(at(p)),
                PathSegment::QuadTo(a, b) => path.quad_to(at(a), at(b)),
                PathSegment::CubicTo(a, b, c) => path.curve_to(at(a), at(b), at(c)),
                PathSegment::Close => path.close_path(),
            }
        }
        out.retain(|p| p.elements().len() > 1);
        out
    }

    fn text(&mut self, text: &usvg::Text, outer: Option<&str>, symbol: Option<usize>) {
        let named = self.named(text.id(), outer);
        let Some(content) = named.text.clone().filter(|t| !t.is_empty()) else { return };
        let b = text.abs_bounding_box();
        let size = text
            .chunks()
            .iter()
            .flat_map(|c| c.spans())
            .map(|s| s.font_size().get())
            .fold(0.0_f32, f32::max);
        let map = text.abs_transform();
        let scale = map.get_scale().1;
        // The page has y down.
        let angle = f64::from(-map.ky).atan2(f64::from(map.sx)).to_degrees();
        let mirrored = map.sx * map.sy - map.kx * map.ky < 0.0;
        let shape = Shape::Text(Text {
            at: self.place(b.left(), b.bottom()),
            height: f64::from(size * scale) * self.user.scale.1 * crate::typeface::CAPITALS,
            angle,
            mirrored,
            content,
            across: Across::Left,
            up: Up::Baseline,
            bold: false,
        });
        self.put(&named, symbol, shape);
    }
}

/// A path of straight lines as a polyline.
fn straight(path: &BezPath) -> Option<Polyline> {
    use crate::geom::vocabulary::PathEl;
    let mut points = Vec::new();
    let mut closed = false;
    for e in path.elements() {
        match e {
            PathEl::MoveTo(p) | PathEl::LineTo(p) => points.push(*p),
            PathEl::ClosePath => closed = true,
            PathEl::QuadTo(..) | PathEl::CurveTo(..) => return None,
        }
    }
    Some(if closed { Polyline::ring(points) } else { Polyline::open(points) })
}

fn origin(named: &Named) -> Origin {
    Origin {
        line: named.line,
        handle: named.id.as_deref().map(Box::from),
        entity: EntityKind::named(named.element),
        layer: Arc::from(named.layer.as_str()),
    }
}
