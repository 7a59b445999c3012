//! The source's own lines beneath the overlay, where it stands in no copy of the source.

use crate::geom::vocabulary::{Affine, Point};
use crate::layout::Layout;
use crate::layout::backdrop::Backdrops;
use crate::model::drawing::{Drawing, Pen, Polyline, Shape};
use crate::origin::round_place;

/// The layer of the source's lines, and how they are drawn.
const NAME: &str = "Z-ELEV-BASE";
const WIDTH: f64 = 0.13;
const COLOR: [u8; 3] = [150, 150, 150];

/// The overlay with the lines of its source on a layer of their own, drawn first; what is near no
/// elevation is left out.
pub fn over_source(mut out: Drawing, layout: &Layout, backdrops: &Backdrops) -> Drawing {
    let over = std::mem::take(&mut out.items);
    let layer = out.layer(NAME, Pen { width: WIDTH, color: COLOR, ..Pen::default() });
    for (i, elevation) in layout.elevations.iter().enumerate() {
        let map = Affine::new(elevation.to_source);
        let at = |p: &Point| round_place(map * *p, layout.drawing.inches_per_unit);
        for line in backdrops.behind(i) {
            let mut drawn = Polyline::open(line.points.iter().map(at));
            drawn.closed = line.closed;
            out.draw(layer, Shape::Polyline(drawn));
        }
    }
    out.items.extend(over);
    out
}
