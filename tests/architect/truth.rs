//! What is true of a drawing, in its own coordinates.

use serde_json::{Value, json};

use super::habit::Style;
use super::house::Plane;
use super::ink::Ink;
use super::shape::{Area, P, Rect, cuts};
use super::sheet::Placed;

/// A plane wall.
#[derive(Clone, Debug)]
pub(crate) struct TrueWall {
    /// What is sided, in the drawing's coordinates.
    pub(crate) siding: Area,
    /// Box round its outline.
    pub(crate) room: Rect,
    pub(crate) outline: Vec<P>,
    /// Square feet.
    pub(crate) net: f64,
    /// Inches in a unit of the drawing.
    pub(crate) inches: f64,
    /// Outlines of openings with their casings.
    pub(crate) openings: Vec<Rect>,
}

impl TrueWall {
    /// Its net area by level strips, square feet: without the boolean engine that made it.
    pub(crate) fn scanned(&self) -> f64 {
        let (rings, room) = (self.siding.rings(), self.siding.bounds());
        let strips = 4000;
        let high = room.height() / f64::from(strips);
        let wide = |k: i32| -> f64 {
            let y = room.y0 + (f64::from(k) + 0.5) * high;
            cuts(&rings, y).iter().map(|(a, z)| z - a).sum()
        };
        (0..strips).map(wide).sum::<f64>() * high * self.inches.powi(2) / 144.0
    }

    /// Its outline less what of its openings stands in the siding's room, square feet.
    pub(crate) fn less_openings(&self) -> f64 {
        let twice: f64 = (0..self.outline.len())
            .map(|i| {
                let (a, b) = (self.outline[i], self.outline[(i + 1) % self.outline.len()]);
                a[0] * b[1] - b[0] * a[1]
            })
            .sum();
        let holes: f64 = self.openings.iter().map(|r| r.width() * r.height()).sum();
        (twice / 2.0 - holes) * self.inches.powi(2) / 144.0
    }
}

/// An elevation.
#[derive(Clone, Debug)]
pub(crate) struct TrueView {
    pub(crate) title: String,
    pub(crate) walls: Vec<TrueWall>,
    /// It shows a part of another again: no wall of its own.
    pub(crate) again: bool,
}

/// All that is true of a drawing.
#[derive(Clone, Debug)]
pub(crate) struct Truth {
    pub(crate) views: Vec<TrueView>,
    /// Inches in a unit of the drawing.
    pub(crate) inches: f64,
}

impl Truth {
    pub(crate) fn of(placed: &[Placed], style: &Style) -> Self {
        let inches = style.unit.inches;
        let views = placed.iter().map(|p| TrueView {
            title: p.view.title.clone(),
            walls: p.view.planes.iter().map(|w| wall(w, p.at, style)).collect(),
            again: p.view.part_of.is_some(),
        });
        Truth { views: views.collect(), inches }
    }

    /// The walls to side.
    pub(crate) fn walls(&self) -> impl Iterator<Item = &TrueWall> {
        self.views.iter().filter(|v| !v.again).flat_map(|v| &v.walls)
    }

    /// As a file.
    pub(crate) fn json(&self, seed: u64, style: &Style, ink: &Ink) -> Value {
        let boxed = |r: &Rect| json!([r.x0, r.y0, r.x1, r.y1]);
        let walls = |v: &TrueView| -> Vec<Value> {
            v.walls
                .iter()
                .map(|w| {
                    json!({
                        "outline": w.outline,
                        "net_square_feet": w.net,
                        "openings": w.openings.iter().map(boxed).collect::<Vec<_>>(),
                    })
                })
                .collect()
        };
        let views: Vec<Value> = self
            .views
            .iter()
            .map(|v| json!({ "title": v.title, "shown_again": v.again, "walls": walls(v) }))
            .collect();
        json!({
            "seed": seed,
            "unit": style.unit.word,
            "header": style.header,
            "habits": ink.shown.iter().map(|h| h.word()).collect::<Vec<_>>(),
            "views": views,
        })
    }
}

fn wall(plane: &Plane, at: P, style: &Style) -> TrueWall {
    // From drafting units, inches or millimeters, to those of the file.
    let scale = 1.0 / style.per_inch() / style.unit.inches;
    let put = |p: P| [(p[0] + at[0]) * scale, (p[1] + at[1]) * scale];
    let outline: Vec<P> = plane.outline.iter().map(|p| put(*p)).collect();
    let boxed = |r: Rect| {
        let (a, z) = (put([r.x0, r.y0]), put([r.x1, r.y1]));
        Rect::new(a[0], a[1], z[0], z[1])
    };
    TrueWall {
        siding: plane.siding.moved(put),
        room: super::shape::bounds(&outline),
        outline,
        inches: style.unit.inches,
        net: plane.siding.size() / style.per_inch().powi(2) / 144.0,
        openings: plane.sided_openings().iter().map(|o| boxed(o.outer)).collect(),
    }
}
