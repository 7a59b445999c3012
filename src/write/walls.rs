//! The walls that were found, for whoever checks a drawing.

use crate::clean::terminal;
use crate::geom::polygon::bounds;
use crate::model::house::House;
use crate::units::{LengthStyle, counted};

/// The walls found, by elevation.
pub fn text(house: &House, style: LengthStyle) -> String {
    let mut text = String::new();
    for e in &house.elevations {
        text.push_str(&format!("{}\n", terminal(&e.name)));
        for w in &e.walls {
            let b = bounds(&w.outline).unwrap_or_default();
            text.push_str(&format!(
                "  {:<12} {} wide, {} high, {}, {}\n",
                w.id,
                style.length(b.width()),
                style.length(b.height()),
                counted(w.openings.len(), "opening"),
                counted(w.obstacles.len(), "fixture")
            ));
        }
    }
    text
}
