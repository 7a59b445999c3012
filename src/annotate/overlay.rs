//! The overlay on the architect's own drawing: source coordinates, layers in the field order of the
//! US National CAD Standard, discipline Z (`DrawingFact::LayerNames`, `DrawingFact::ShopDiscipline`).

use super::elevation::breaks;
use super::elevation::marks::middle;
use super::elevation::view::extent;
use super::elevation_index::{AtElevation, ElevationIndex};
use super::place::{Placer, text_box};
use crate::geom::vocabulary::{Affine, Point, Rect, Xy};
use crate::layout::Layout;
use crate::layout::wall::LaidElevation;
use crate::model::drawing::{
    Across, Dash, Dimension, Drawing, Group, Pen, Polyline, Shape, Space, Text, Up,
};
use crate::model::trim::TrimKind;
use crate::origin::Origin;
use crate::wording::legend;

/// House inches in a plotted inch the overlay's text is sized for: 1/4 in to the foot.
const PLOT: f64 = 48.0;

const LAYERS: [(&str, f64, [u8; 3], Dash); 9] = [
    ("Z-ELEV-OTLN", 0.5, [0, 0, 0], Dash::Solid),
    ("Z-ELEV-CRSE", 0.18, [110, 110, 110], Dash::Solid),
    ("Z-ELEV-SEAM", 0.5, [200, 0, 0], Dash::Solid),
    ("Z-ELEV-TRIM", 0.35, [0, 70, 160], Dash::Dashed),
    ("Z-ELEV-CUTS", 0.35, [150, 90, 0], Dash::Solid),
    ("Z-ELEV-IDEN", 0.18, [0, 0, 0], Dash::Solid),
    ("Z-ELEV-DIMS", 0.18, [0, 110, 0], Dash::Solid),
    ("Z-ELEV-NOTE", 0.18, [0, 0, 0], Dash::Solid),
    ("Z-ELEV-FACE", 0.13, [175, 175, 175], Dash::Solid),
];

/// Room round an elevation for marks, elevation inches.
const MARGIN: f64 = 24.0;

/// Indices of layers above.
const OUTLINE: usize = 0;
const COURSE: usize = 1;
const SEAM: usize = 2;
const TRIM: usize = 3;
const CUTS: usize = 4;
const IDEN: usize = 5;
const DIMS: usize = 6;
const NOTE: usize = 7;
const FACE: usize = 8;

struct OverlayBuilder<'a> {
    out: Drawing,
    map: Affine,
    /// Source units in an inch.
    unit: f64,
    elevation: &'a LaidElevation,
    style: crate::units::LengthStyle,
    /// Lower left of what is marked, elevation inches, and room taken there in plotted inches.
    low: Point,
    placer: Placer,
}

/// The layout over the source, in its coordinates and units.
pub fn overlay(layout: &Layout) -> Drawing {
    let mut out = Drawing { name: "overlay".to_owned(), ..Default::default() };
    for (name, width, color, dash) in LAYERS {
        out.layer(name, Pen { width, color, dash, fill: None });
    }
    let standing = ElevationIndex::of(layout);
    for elevation in &layout.elevations {
        let on = standing.at(elevation);
        let map = Affine::new(elevation.to_source);
        // Upright, since a wall at an angle is drawn narrower than it is.
        let [.., c, d, _, _] = elevation.to_source;
        let unit = c.hypot(d);
        let style = layout.job.sheet.lengths;
        let house = extent(elevation);
        let low = Point::new(house.x0 - MARGIN, house.y0 - MARGIN);
        let high = (house.width() + 2.0 * MARGIN, house.height() + 2.0 * MARGIN);
        let placer = Placer::new(Rect::new(0.0, 0.0, high.0 / PLOT, high.1 / PLOT));
        let mut over = OverlayBuilder { out, map, unit, elevation, style, low, placer };
        over.faces(layout);
        over.walls();
        over.trims(on);
        over.dimensions();
        over.breaks(on);
        out = over.out;
    }
    out
}

impl OverlayBuilder<'_> {
    fn at(&self, p: Xy) -> Point {
        self.map * Point::new(p[0], p[1])
    }

    fn ring(&mut self, layer: usize, points: &[Xy]) {
        let ring = Polyline::ring(points.iter().map(|p| self.at(*p)).collect::<Vec<_>>());
        self.out.draw(layer, Shape::Polyline(ring));
    }

    fn line(&mut self, layer: usize, a: Xy, b: Xy) {
        let line = Polyline::line(self.at(a), self.at(b));
        self.out.draw(layer, Shape::Polyline(line));
    }

    fn text(&mut self, layer: usize, content: String, at: Xy, paper_height: f64, across: Across) {
        let height = paper_height * PLOT * self.unit;
        let at = self.at(at);
        self.out.draw(
            layer,
            Shape::Text(Text {
                at,
                height,
                angle: 0.0,
                content,
                across,
                up: Up::Middle,
                bold: false,
            }),
        );
    }

    /// A mark as text every program shows, and as an insertion with its attribute, hidden, for
    /// programs that list attributes. Marks keep off one another; one that had to move has a leader.
    fn mark(&mut self, block: &str, mark: &str, target: Xy) {
        let plotted = 3.0 / 32.0 * 0.8;
        let height = plotted * PLOT * self.unit;
        let paper = |p: Xy| Point::new((p[0] - self.low.x) / PLOT, (p[1] - self.low.y) / PLOT);
        let wish = paper(target);
        // The plain stroked font of the overlay is wider than the sheets' own.
        let about = text_box(mark, plotted, true, Point::ORIGIN).inflate(0.04, 0.01);
        let spot = [true, false]
            .iter()
            .find_map(|strict| self.placer.near(about, wish, wish, 1.5, *strict))
            .unwrap_or(wish);
        let at = [spot.x * PLOT + self.low.x, spot.y * PLOT + self.low.y];
        if spot.distance(wish) > 0.15 {
            self.line(IDEN, target, at);
        }
        let place = self.at(at);
        self.out.groups.push(Group {
            block: block.into(),
            parent: None,
            layer: IDEN,
            space: Space::Model,
            placed: Affine::translate(place.to_vec2()) * Affine::scale(height),
            attributes: vec![("MARK".to_owned(), mark.to_owned())].into(),
            origin: Origin::default(),
        });
        self.text(IDEN, mark.to_owned(), at, plotted, Across::Center);
    }

    /// Number and height of every course, once, at the right end of the elevation.
    fn levels(&mut self) {
        let walls = &self.elevation.walls;
        let right = walls.iter().flat_map(|w| &w.outline).map(|p| p[0]);
        let right = right.fold(f64::NEG_INFINITY, f64::max);
        let levels: std::collections::BTreeMap<i32, f64> =
            walls.iter().flat_map(|w| &w.courses).map(|c| (c.index, c.bottom)).collect();
        for (index, bottom) in levels {
            let words = format!("{}  {}", index + 1, self.style.length(bottom));
            self.text(DIMS, words, [right + 4.0, bottom], 3.0 / 32.0, Across::Left);
        }
    }

    /// Strings of dimensions: openings and walls below, all of it under them, heights on the left.
    fn dimensions(&mut self) {
        let walls = &self.elevation.walls;
        let points: Vec<Point> =
            walls.iter().flat_map(|w| &w.outline).map(|p| Point::new(p[0], p[1])).collect();
        let Some(house) = crate::geom::polygon::bounds(&points) else { return };
        let mut xs: Vec<f64> =
            walls.iter().flat_map(|w| w.openings.iter().flat_map(|o| [o.left, o.right])).collect();
        for w in walls {
            let ends = w.outline.iter().map(|p| p[0]);
            xs.extend(ends.clone().reduce(f64::min));
            xs.extend(ends.reduce(f64::max));
        }
        let low = self.elevation.grade.iter().map(|p| p[1]).fold(house.y0, f64::min);
        for (xs, row) in [(xs, 30.0), (vec![house.x0, house.x1], 48.0)] {
            for pair in apart(xs).windows(2) {
                let at = |x: f64| [x, house.y0];
                self.dimension(at(pair[0]), at(pair[1]), [pair[0], low - row], 0.0);
            }
        }
        let mut ys: Vec<f64> = walls
            .iter()
            .flat_map(|w| &w.edges)
            .filter(|s| s.opening.is_none() && (s.from[1] - s.to[1]).abs() < 0.1)
            .map(|s| s.from[1])
            .collect();
        ys.extend([house.y0, house.y1]);
        for pair in apart(ys).windows(2) {
            let at = |y: f64| [house.x0, y];
            self.dimension(at(pair[0]), at(pair[1]), [house.x0 - 30.0, pair[0]], 90.0);
        }
    }

    fn dimension(&mut self, from: Xy, to: Xy, line: Xy, angle: f64) {
        let [a, b, c, d, ..] = self.elevation.to_source;
        // A wall at an angle is drawn short: its true width stands in place of the drawn one.
        let short = (a.hypot(b) - c.hypot(d)).abs() > 1e-9 * c.hypot(d);
        let along = (to[0] - from[0]).hypot(to[1] - from[1]);
        let text = (short && angle == 0.0).then(|| self.style.length(along));
        let dimension = Dimension {
            from: self.at(from),
            to: self.at(to),
            line: self.at(line),
            angle: Some(angle),
            measured: None,
            text,
        };
        self.out.draw(DIMS, Shape::Dimension(dimension));
    }

    /// The faces each panel shows.
    fn faces(&mut self, layout: &Layout) {
        let heights = super::faces::heights(layout);
        let courses = self.elevation.walls.iter().flat_map(|w| &w.courses);
        for (k, p) in
            courses.flat_map(|k| k.runs.iter().flat_map(|r| &r.pieces).map(move |p| (k, p)))
        {
            for (a, b) in super::faces::lines(p, k, &heights) {
                self.line(FACE, a, b);
            }
        }
    }

    fn walls(&mut self) {
        let elevation = self.elevation;
        for w in &elevation.walls {
            for ring in &w.field {
                self.ring(OUTLINE, ring);
            }
            for c in &w.courses {
                for r in &c.runs {
                    for p in &r.pieces {
                        let cut = p.rip.is_some() || !p.notches.is_empty() || !p.is_square();
                        let layer = if cut { CUTS } else { COURSE };
                        for ring in std::iter::once(&p.outline).chain(&p.holes).chain(&p.more) {
                            self.ring(layer, ring);
                        }
                        let (x, y) = middle(c, p);
                        self.mark("Z-MARK-PIECE", &p.mark, [x, y]);
                    }
                    for s in &r.seams {
                        if let Some((low, high)) = r.seam_height(*s) {
                            self.line(SEAM, [*s, low], [*s, high]);
                        }
                    }
                }
            }
        }
        for z in &elevation.zones {
            for ring in &z.outline {
                self.ring(OUTLINE, ring);
            }
            if let Some(p) = z.outline.first().and_then(|r| r.first()) {
                let words = legend::overlay_zone(z, self.style);
                self.text(NOTE, words, [p[0] + 6.0, p[1] + 6.0], 3.0 / 32.0, Across::Left);
            }
        }
        self.levels();
        let foot = elevation
            .walls
            .iter()
            .flat_map(|w| &w.outline)
            .map(|p| p[1])
            .fold(f64::INFINITY, f64::min);
        let words = legend::overlay_notice(&elevation.name);
        if foot.is_finite() {
            self.text(NOTE, words, [0.0, foot - 14.0], 3.0 / 32.0, Across::Left);
        }
    }

    /// Broken seam rules: a diamond round each seam, a line between the two, and their mark.
    fn breaks(&mut self, on: &AtElevation) {
        let elevation = self.elevation;
        for b in &on.breaks {
            let at: Vec<Xy> = b
                .seams
                .iter()
                .filter_map(|s| breaks::place(elevation, s))
                .map(|(x, y)| [x, y])
                .collect();
            for p in &at {
                let ring = breaks::diamond(Point::new(p[0], p[1]), 3.0).map(|q| [q.x, q.y]);
                self.ring(NOTE, &ring);
            }
            at.windows(2).for_each(|p| self.line(NOTE, p[0], p[1]));
            if let Some(p) = at.first() {
                self.mark("Z-MARK-BREAK", &b.mark, *p);
            }
        }
    }

    fn trims(&mut self, on: &AtElevation) {
        for t in &on.trims {
            self.line(TRIM, t.from, t.to);
            let middle = [(t.from[0] + t.to[0]) / 2.0, (t.from[1] + t.to[1]) / 2.0];
            let off = if t.kind == TrimKind::FinishTrim { -5.0 } else { 5.0 };
            self.mark("Z-MARK-TRIM", &t.mark, [middle[0] + off, middle[1] + off]);
        }
    }
}

/// Places in order, those nearer than 1/16 in as one.
fn apart(mut places: Vec<f64>) -> Vec<f64> {
    places.sort_by(f64::total_cmp);
    places.dedup_by(|a, b| (*a - *b).abs() < 1.0 / 16.0);
    places
}
