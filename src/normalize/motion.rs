//! Parts of a drawing moved as a whole, with the way back kept.

use std::collections::BTreeSet;

use crate::geom::polygon::bounds;
use crate::geom::vocabulary::{Affine, Point, Rect};
use crate::model::linework::{Linework, Moved};

/// Every place of a drawing, inches.
pub(super) const EVERYWHERE: Rect = Rect::new(-1e12, -1e12, 1e12, 1e12);

/// A window of the sheet that shows less than this many times a part's area shows that part.
const OWN_WINDOW: f64 = 4.0;

/// Moves what has its middle in `region`, and keeps the way back.
pub(super) fn moved(lines: &mut Linework, region: Rect, map: Affine, view: Option<String>) {
    let mut groups = BTreeSet::new();
    let left = lines.left.iter_mut().map(|l| &mut l.stroke);
    for s in lines.strokes.iter_mut().chain(left) {
        if bounds(&s.points).is_some_and(|b| region.contains(b.center())) {
            s.points.iter_mut().for_each(|p| *p = map * *p);
            groups.extend(s.group);
        }
    }
    for l in lines.labels.iter_mut().filter(|l| region.contains(l.text.at)) {
        l.text = l.text.clone().moved(map);
        groups.extend(l.group);
    }
    for h in &mut lines.hatches {
        if region.contains(h.hatch.bounds().center()) {
            h.hatch = std::mem::take(&mut h.hatch).moved(map);
        }
    }
    for m in lines.measured.iter_mut().filter(|m| region.contains(m.from.midpoint(m.to))) {
        m.from = map * m.from;
        m.to = map * m.to;
    }
    for (i, g) in lines.groups.iter_mut().enumerate() {
        if groups.contains(&i) {
            g.placed = map * g.placed;
        }
    }
    for v in &mut lines.viewports {
        let own = v.model.contains(region.center()) && v.model.area() <= OWN_WINDOW * region.area()
            || region == EVERYWHERE;
        if own {
            v.model = box_of(v.model, map);
        }
    }
    let now = if region == EVERYWHERE { region } else { box_of(region, map) };
    lines.moved.push(Moved { now, back: map.inverse(), view });
}

/// The box round a moved box.
pub(super) fn box_of(r: Rect, map: Affine) -> Rect {
    let corners = [(r.x0, r.y0), (r.x1, r.y0), (r.x1, r.y1), (r.x0, r.y1)];
    let corners = corners.map(|(x, y)| map * Point::new(x, y));
    bounds(&corners).unwrap_or(r)
}
