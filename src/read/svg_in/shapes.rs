//! Nodes of the tree as shapes on layers.

use std::collections::BTreeMap;
use std::sync::Arc;

use usvg::tiny_skia_path::PathSegment;

use super::boxes::{is_outside, met, moved};
use super::names::{Named, Names};
use super::pens::STEPS;
use super::shown::Left;
use super::user::ToUser;
use crate::finding::drawing::DrawingFinding;
use crate::finding::{Finding, Findings};
use crate::geom::vocabulary::{Affine, BezPath, CurveShape, Point, Rect};
use crate::model::drawing::{
    Across, Drawing, Group, Ink, Item, Layer, LeftOut, Pen, Polyline, Shape, Space, Text, Up,
};
use crate::model::unused::Unused;
use crate::origin::{EntityKind, Origin};
use crate::read::limits::Limits;
use crate::real::Real;

struct Maker<'a> {
    names: &'a Names,
    user: &'a ToUser,
    limits: &'a Limits,
    out: &'a mut Drawing,
    index: BTreeMap<Arc<str>, usize>,
    /// Whether something shows of each element.
    seen: Vec<bool>,
    /// The `use` of each insertion.
    uses: Vec<usize>,
    /// Line from which what comes is left out.
    full: Option<usize>,
    /// Shapes too far away, and the first.
    far: Option<(usize, Origin)>,
}

/// Every drawn path and text of the tree.
pub(super) fn all(
    tree: &usvg::Tree,
    (names, left): (&Names, &[Left]),
    user: &ToUser,
    limits: &Limits,
    out: &mut Drawing,
    findings: &mut Findings,
) {
    let (index, seen, uses) = (BTreeMap::new(), vec![false; names.all.len()], Vec::new());
    let mut maker = Maker { names, user, limits, out, index, seen, uses, full: None, far: None };
    maker.group(tree.root(), None, None, None);
    maker.tell_unseen(left);
    if let Some(line) = maker.full {
        let (most, from_line) = (limits.items, Some(line).filter(|l| *l > 0));
        let kind = DrawingFinding::ItemsTooMany { most, from_line, array: None };
        findings.push(Finding::new(kind));
    }
    if let Some((shapes, first)) = maker.far {
        let farthest = limits.coordinate;
        let kind = DrawingFinding::NumbersAbsurd { shapes, farthest };
        findings.push(Finding::new(kind).about(&first));
    }
}

impl<'a> Maker<'a> {
    /// `named` is the nearest element round the group; `symbol` the insertion it is part of; `clip` the
    /// box that it is clipped to, in pixels of the tree.
    fn group(
        &mut self,
        group: &usvg::Group,
        named: Option<usize>,
        symbol: Option<usize>,
        clip: Option<Rect>,
    ) {
        let found = self.names.found(group.id());
        let own = found.or(named);
        let of_own = found.and_then(|n| self.names.all[n].clip.as_deref());
        let clip = met(clip, of_own.map(|c| moved(*c, group.abs_transform())));
        let symbol = self.symbol(found, symbol);
        for node in group.children() {
            if self.out.items.len() >= self.limits.items {
                let line = own.map_or(0, |o| self.names.all[o].line);
                self.full.get_or_insert(line);
                return;
            }
            match node {
                usvg::Node::Group(g) => self.group(g, own, symbol, clip),
                usvg::Node::Path(p) if p.is_visible() => self.path(p, own, symbol, clip),
                usvg::Node::Text(t) => self.text(t, own, symbol),
                _ => {}
            }
        }
    }

    /// A `use` is an insertion: what it brings belongs together, as a block's contents do.
    fn symbol(&mut self, element: Option<usize>, parent: Option<usize>) -> Option<usize> {
        let names = self.names;
        let used = element.filter(|n| names.all[*n].element == "use");
        let Some((at, named)) = used.map(|n| (n, &names.all[n])) else { return parent };
        let layer = self.layer(&named.layer);
        self.out.groups.push(Group {
            block: named.id.as_deref().unwrap_or_default().into(),
            parent,
            layer,
            space: Space::Model,
            placed: Affine::IDENTITY,
            attributes: Arc::default(),
            origin: origin(named),
        });
        self.uses.push(at);
        Some(self.out.groups.len() - 1)
    }

    fn layer(&mut self, name: &Arc<str>) -> usize {
        if let Some(i) = self.index.get(name) {
            return *i;
        }
        let layer = Layer { name: name.to_string(), shown: true, pen: Pen::default() };
        self.out.layers.push(layer);
        self.index.insert(name.clone(), self.out.layers.len() - 1);
        self.out.layers.len() - 1
    }

    /// The element of the source that a node came of; one that its resolver made has none of its own.
    fn named(&self, element: Option<usize>) -> Named {
        let found = element.map(|n| &self.names.all[n]);
        let of = |n: &Named| Named { text: None, ..n.clone() };
        found.map(of).unwrap_or(Named {
            layer: Arc::from("0"),
            line: 0,
            id: None,
            element: "path",
            text: None,
            unseen: None,
            clip: None,
        })
    }

    /// What a symbol brings takes its layer, unless it has one of its own.
    fn layer_in(&mut self, name: &Arc<str>, symbol: Option<usize>) -> usize {
        match symbol.map(|s| self.out.groups[s].layer) {
            Some(layer) if &**name == "0" => layer,
            _ => self.layer(name),
        }
    }

    /// Remembers that something shows of an element and of the uses that bring it.
    fn saw(&mut self, element: Option<usize>, symbol: Option<usize>) {
        if let Some(n) = element {
            self.seen[n] = true;
        }
        let mut at = symbol;
        while let Some(s) = at {
            // Those round a use that was seen were seen with it.
            let used = self.uses.get(s).copied();
            if used.is_none_or(|u| std::mem::replace(&mut self.seen[u], true)) {
                return;
            }
            at = self.out.groups[s].parent;
        }
    }

    /// Keeps a shape that does not show.
    fn leave(&mut self, layer: usize, symbol: Option<usize>, why: Unused, origin: Origin) {
        let (space, group, why) = (Space::Model, symbol, Arc::new(why));
        let (shown, count, at) = (true, 1, None);
        self.out.left_out.push(LeftOut { layer, space, group, shown, why, count, at, origin });
    }

    /// Elements that draw something and of which nothing shows.
    fn tell_unseen(&mut self, left: &[Left]) {
        if self.full.is_some() {
            return;
        }
        let names = self.names;
        for (n, named) in names.all.iter().enumerate() {
            let seen = self.seen[n];
            let Some(why) = named.unseen.clone().filter(|_| !seen) else { continue };
            let layer = self.unseen_layer(&named.layer);
            self.leave(layer, None, why, origin(named));
        }
        for l in left {
            let layer = self.unseen_layer(&l.layer);
            let at = (l.line, l.id.clone(), l.layer.clone());
            let origin =
                Origin { line: at.0, handle: at.1, entity: EntityKind::Unknown, layer: at.2 };
            self.leave(layer, None, l.why.clone(), origin);
            if let Some(last) = self.out.left_out.last_mut() {
                last.count = l.count;
            }
        }
    }

    /// A layer of which nothing was seen yet is hidden.
    fn unseen_layer(&mut self, name: &Arc<str>) -> usize {
        let known = self.index.contains_key(name);
        let layer = self.layer(name);
        self.out.layers[layer].shown &= known;
        layer
    }

    fn put(&mut self, named: &Named, symbol: Option<usize>, ink: Ink, shape: Shape) {
        let layer = self.layer_in(&named.layer, symbol);
        self.out.items.push(Item {
            layer,
            space: Space::Model,
            group: symbol,
            shown: true,
            ink,
            shape,
            origin: origin(named),
        });
    }

    fn place(&self, x: f32, y: f32) -> Point {
        let (kx, ky) = self.user.scale;
        let (ox, oy) = self.user.origin;
        Point::new(ox + f64::from(x) * kx, self.user.height - (oy + f64::from(y) * ky))
    }

    fn path(
        &mut self,
        path: &usvg::Path,
        outer: Option<usize>,
        symbol: Option<usize>,
        clip: Option<Rect>,
    ) {
        let Some(data) = path.data().clone().transform(path.abs_transform()) else { return };
        let element = self.names.found(path.id()).or(outer);
        let named = self.named(element);
        let clip = met(clip, named.clip.as_deref().map(|c| moved(*c, path.abs_transform())));
        if clip.is_some_and(|c| is_outside(data.bounds(), c)) {
            self.saw(element, symbol);
            let layer = self.layer_in(&named.layer, symbol);
            self.leave(layer, symbol, Unused::ClippedAway, origin(&named));
            return;
        }
        let ink = ink_of(path, self.user);
        for part in self.parts(&data) {
            self.saw(element, symbol);
            let b = part.bounding_box();
            let far = [b.x0, b.y0, b.x1, b.y1];
            if far.iter().any(|v| !v.is_finite() || v.abs() > self.limits.coordinate) {
                self.far.get_or_insert_with(|| (0, origin(&named))).0 += 1;
                continue;
            }
            let shape = straight(&part).map_or(Shape::Curve(part), Shape::Polyline);
            self.put(&named, symbol, ink, shape);
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

    fn text(&mut self, text: &usvg::Text, outer: Option<usize>, symbol: Option<usize>) {
        let own = self.names.found(text.id());
        let named = self.named(own.or(outer));
        let said = own.and_then(|n| self.names.all[n].text.clone());
        let Some(content) = said.filter(|t| !t.is_empty()) else { return };
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
        let angle = f64::from(-map.ky).angle_over(f64::from(map.sx)).to_degrees();
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
        self.put(&named, symbol, Ink::default(), shape);
    }
}

/// Color and width of a path's stroke as drawn; an area without one has its fill's color.
fn ink_of(path: &usvg::Path, user: &ToUser) -> Ink {
    let color = |paint: &usvg::Paint| match paint {
        usvg::Paint::Color(c) => 1 + u32::from_be_bytes([0, c.red, c.green, c.blue]),
        _ => 0,
    };
    let map = path.abs_transform();
    let scale = (map.sx * map.sy - map.kx * map.ky).abs().sqrt() * user.scale.1 as f32;
    match path.stroke() {
        Some(s) => {
            let weight = (s.width().get() * scale * STEPS).round().max(1.0) as i32;
            Ink { color: color(s.paint()), weight }
        }
        None => Ink { color: path.fill().map_or(0, |f| color(f.paint())), weight: 0 },
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
        handle: named.id.clone(),
        entity: EntityKind::named(named.element),
        layer: named.layer.clone(),
    }
}
