//! Parts of a drawing moved as a whole, with the way back kept.

use std::collections::BTreeSet;

use crate::geom::polygon::bounds;
use crate::geom::vocabulary::{Affine, Point, Rect};
use crate::model::linework::{Linework, Moved, ViewScale, ViewTurn};
use crate::model::text::{Across, Up};
use crate::real::Real;

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
        m.middle = map * m.middle;
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

/// Mirrors everything at an upright axis; texts change their places and read as before.
pub(super) fn mirrored(lines: &mut Linework, axis: f64) {
    let map = Affine::new([-1.0, 0.0, 0.0, 1.0, 2.0 * axis, 0.0]);
    let as_read: Vec<(f64, bool)> =
        lines.labels.iter().map(|l| (l.text.angle, l.text.mirrored)).collect();
    moved(lines, EVERYWHERE, map, None);
    for (l, (angle, mirrored)) in lines.labels.iter_mut().zip(as_read) {
        // What stood to the right of the place of a text stands to its left now.
        (l.text.angle, l.text.mirrored) = (angle, mirrored);
        let (up, along) = angle.to_radians().sine_cosine();
        if along.abs() > up.abs() {
            l.text.across = match l.text.across {
                Across::Left => Across::Right,
                Across::Center => Across::Center,
                Across::Right => Across::Left,
            };
        } else {
            // Of one that is read up or down the sheet, its letters' tops stand to the side.
            l.text.up = match l.text.up {
                Up::Baseline => Up::Top,
                Up::Middle => Up::Middle,
                Up::Top => Up::Baseline,
            };
        }
    }
}

/// How far a view that finds no room where it is drawn is set aside, inches.
const ASIDE: f64 = 240.0;

/// Turns a view about its middle; one that would come to lie on another is set aside.
pub(super) fn turned(lines: &mut Linework, asked: &ViewTurn) {
    let region = asked.region;
    let map = asked.turn.about(region.center());
    // A half turn or a mirror leaves the box where it was.
    let map = if asked.turn.quarters % 2 == 1 { with_room(lines, region, map) } else { map };
    moved(lines, region, map, Some(asked.view.clone()));
}

/// Draws a view as many times as large as it is drawn at the scale taken, about its middle; one that would
/// come to lie on another is set aside.
pub(super) fn scaled(lines: &mut Linework, asked: &ViewScale) {
    let region = asked.region;
    let map = Affine::scale_about(asked.times, region.center());
    let map = if asked.times > 1.0 { with_room(lines, region, map) } else { map };
    moved(lines, region, map, Some(asked.view.clone()));
}

/// A motion of a view that ends beside everything else where the view would come to lie on another.
fn with_room(lines: &Linework, region: Rect, map: Affine) -> Affine {
    let now = box_of(region, map);
    let boxes = || lines.strokes.iter().filter_map(|s| bounds(&s.points));
    let meets = |b: &Rect| b.x0 < now.x1 && now.x0 < b.x1 && b.y0 < now.y1 && now.y0 < b.y1;
    if !boxes().filter(|b| !region.contains(b.center())).any(|b| meets(&b)) {
        return map;
    }
    let right = boxes().map(|b| b.x1).fold(now.x1, f64::max);
    Affine::translate((right + ASIDE - now.x0, 0.0)) * map
}

/// The box round a moved box.
pub(super) fn box_of(r: Rect, map: Affine) -> Rect {
    let corners = [(r.x0, r.y0), (r.x1, r.y0), (r.x1, r.y1), (r.x0, r.y1)];
    let corners = corners.map(|(x, y)| map * Point::new(x, y));
    bounds(&corners).unwrap_or(r)
}
