//! How far windows stand over one another: a story, whatever the layers are called.

use std::collections::BTreeMap;

use crate::geom::polygon::bounds;
use crate::geom::vocabulary::Rect;
use crate::model::linework::{Linework, Role};

/// A block of which either side is this share of the siding's or more is no window in it, nor one of which
/// both are no more than the second: of our own choosing, no source.
const LARGE: f64 = 0.5;
const SMALL: f64 = 0.02;
/// Most blocks that are looked at.
const MOST: usize = 1_000;
/// Fewest windows that stand over another one.
const LEAST: usize = 2;

/// The middle one of the rises from block to block over it, drawing units, of blocks inside the boxes of
/// level hatches; none where there are few.
pub(super) fn rise(lines: &Linework, siding: &[Rect], high: fn(&Rect) -> f64) -> Option<f64> {
    let across = |r: &Rect| if high(r) == r.height() { (r.x0, r.x1) } else { (r.y0, r.y1) };
    let foot = |r: &Rect| if high(r) == r.height() { r.y0 } else { r.x0 };
    let mut blocks: Vec<Rect> = boxes(lines).into_iter().filter(|b| is_in(b, siding)).collect();
    blocks.truncate(MOST);
    let mut rises: Vec<f64> = blocks
        .iter()
        .filter_map(|b| {
            let (x0, x1) = across(b);
            let over = blocks.iter().filter(|o| {
                let (a, c) = across(o);
                let shared = x1.min(c) - x0.max(a);
                shared > 0.5 * (x1 - x0).min(c - a) && foot(o) >= foot(b) + high(b)
            });
            over.map(|o| foot(o) - foot(b)).min_by(f64::total_cmp)
        })
        .collect();
    rises.sort_by(f64::total_cmp);
    (rises.len() >= LEAST).then(|| rises[rises.len() / 2])
}

/// Boxes of blocks that are no notes.
fn boxes(lines: &Linework) -> Vec<Rect> {
    let mut out: BTreeMap<usize, Rect> = BTreeMap::new();
    let of_building = |r: Option<Role>| r.is_none_or(|r| matches!(r, Role::Window | Role::Door));
    for s in lines.strokes.iter().filter(|s| of_building(s.role)) {
        if let (Some(group), Some(b)) = (s.group, bounds(&s.points)) {
            out.entry(group).and_modify(|r| *r = r.union(b)).or_insert(b);
        }
    }
    out.into_values().collect()
}

/// Whether a box has the size of a window in one of these, and stands in it.
fn is_in(b: &Rect, siding: &[Rect]) -> bool {
    siding.iter().any(|s| {
        let (wide, tall) = (b.width() / s.width(), b.height() / s.height());
        let fits = wide.max(tall) < LARGE && wide.max(tall) > SMALL;
        fits && s.contains(b.center())
    })
}
