//! Hatches: boundaries and families of lines.

use crate::geom::flatten::{SAGITTA, path_points};
use crate::geom::tol::snap;
use crate::geom::vocabulary::{Affine, BezPath, CurveShape, PathEl, Point, Rect, Ring, Vec2};
use crate::real::Real;

/// A filled or patterned area.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Hatch {
    /// Boundary loops, even-odd.
    pub loops: Vec<BezPath>,
    /// Solid fill rather than lines.
    pub solid: bool,
    /// Pattern name as written; it means nothing by itself.
    pub pattern: String,
    /// The families of parallel lines that make the pattern.
    pub families: Vec<LineFamily>,
}

impl Hatch {
    /// The spacing of its lines, drawing units, if it is drawn like lap siding: level families of
    /// whole lines only. Names of patterns mean nothing (common practice).
    // LayoutFact::HatchIsNoLayout.
    pub fn level_spacing(&self) -> Option<f64> {
        if self.solid || !self.families.iter().all(LineFamily::level) {
            return None;
        }
        self.families.first().map(LineFamily::spacing)
    }

    /// Height of one of its lines, if it is drawn like lap siding.
    pub fn level_line(&self) -> Option<f64> {
        self.level_spacing()?;
        self.families.first().map(|f| f.base.y)
    }

    /// The spacing of its lines, drawing units, if all of them are whole and upright.
    pub fn upright_spacing(&self) -> Option<f64> {
        if self.solid || !self.families.iter().all(LineFamily::upright) {
            return None;
        }
        self.families.first().map(LineFamily::spacing)
    }

    /// The box round its loops.
    pub fn bounds(&self) -> Rect {
        self.loops
            .iter()
            .map(CurveShape::bounding_box)
            .reduce(|a, b| a.union(b))
            .unwrap_or_default()
    }

    /// Its loops as rings on the grid, those without area left out.
    pub fn rings(&self) -> Vec<Ring> {
        let snapped = |points: Vec<Point>| -> Ring {
            let mut ring: Ring = points.iter().map(|p| Point::new(snap(p.x), snap(p.y))).collect();
            ring.dedup();
            while ring.len() > 1 && ring.first() == ring.last() {
                ring.pop();
            }
            ring
        };
        let all = self.loops.iter().flat_map(|l| path_points(l, SAGITTA));
        all.map(|(points, _)| snapped(points)).filter(|r| r.len() >= 3).collect()
    }

    /// Moves every place of its loops, and the lines with the middle of all.
    pub fn move_places(&mut self, to: &dyn Fn(Point) -> Point) {
        let middle = self.bounds().center();
        for path in &mut self.loops {
            for el in path.elements_mut() {
                *el = match *el {
                    PathEl::MoveTo(p) => PathEl::MoveTo(to(p)),
                    PathEl::LineTo(p) => PathEl::LineTo(to(p)),
                    PathEl::QuadTo(p, q) => PathEl::QuadTo(to(p), to(q)),
                    PathEl::CurveTo(p, q, r) => PathEl::CurveTo(to(p), to(q), to(r)),
                    PathEl::ClosePath => PathEl::ClosePath,
                };
            }
        }
        let by = to(middle) - middle;
        self.families.iter_mut().for_each(|f| f.base += by);
    }

    /// The hatch with loops and lines moved.
    pub fn moved(mut self, map: Affine) -> Self {
        let [a, b, c, d, ..] = map.as_coeffs();
        let turned = |v: Vec2| Vec2::new(a * v.x + c * v.y, b * v.x + d * v.y);
        self.loops = self.loops.into_iter().map(|l| map * l).collect();
        for f in &mut self.families {
            f.angle = turned(Vec2::from_angle(f.angle.to_radians())).atan2().to_degrees();
            f.base = map * f.base;
            let step = turned(Vec2::new(f.offset.0, f.offset.1));
            f.offset = (step.x, step.y);
        }
        self
    }
}

/// Parallel lines of a hatch pattern.
#[derive(Clone, Debug, PartialEq)]
pub struct LineFamily {
    /// Direction of the lines, degrees counter-clockwise from x.
    pub angle: f64,
    /// A point on one line.
    pub base: Point,
    /// From one line to the next, drawing units.
    pub offset: (f64, f64),
    /// Dash lengths, empty for a continuous line.
    pub dashes: Vec<f64>,
}

impl LineFamily {
    /// Whether its lines are whole and level, within half a degree.
    fn level(&self) -> bool {
        let lean = self.angle.rem_euclid(180.0);
        lean.min(180.0 - lean) <= 0.5 && self.dashes.iter().all(|d| *d >= 0.0)
    }

    /// Whether its lines are whole and upright, within half a degree.
    fn upright(&self) -> bool {
        let lean = self.angle.rem_euclid(180.0);
        (lean - 90.0).abs() <= 0.5 && self.dashes.iter().all(|d| *d >= 0.0)
    }

    /// From line to line across, drawing units.
    fn spacing(&self) -> f64 {
        let (s, c) = self.angle.to_radians().sine_cosine();
        (self.offset.1 * c - self.offset.0 * s).abs()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_level_whole_lines_are_drawn_like_lap_siding() {
        let family = |angle: f64, offset: (f64, f64), dashes: &[f64]| LineFamily {
            angle,
            base: Point::ZERO,
            offset,
            dashes: dashes.to_vec(),
        };
        let of =
            |families: Vec<LineFamily>| Hatch { families, ..Default::default() }.level_spacing();
        assert_eq!(of(vec![family(0.0, (0.0, 4.0), &[])]), Some(4.0));
        assert_eq!(of(vec![family(180.0, (3.0, -8.0), &[])]), Some(8.0));
        let plumb = family(90.0, (8.0, 0.0), &[]);
        assert_eq!(of(vec![plumb.clone()]), None);
        // Brick: level lines with plumb ones between.
        assert_eq!(of(vec![family(0.0, (0.0, 2.67), &[]), plumb]), None);
        assert_eq!(of(vec![family(45.0, (2.0, 2.0), &[])]), None);
        assert_eq!(of(vec![family(0.0, (0.0, 4.0), &[6.0, -2.0])]), None);
        assert_eq!(of(vec![]), None);
        assert_eq!(Hatch { solid: true, ..Default::default() }.level_spacing(), None);
    }
}
