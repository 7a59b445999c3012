//! The overlay on the architect's own drawing: source coordinates, layers in the field order of the
//! US National CAD Standard, discipline Z (`DrawingFact::LayerNames`, `DrawingFact::ShopDiscipline`).

mod layers;
mod room;

use self::layers::{
    COURSE, CUTS, DIMS, FACE, FAIL, FAILED, IDEN, LAYERS, NOTE, OUTLINE, SEAM, TRIM,
};
use self::room::{MOVE, MOVES, PLOT, Room, apart};
use super::elevation::breaks;
use super::elevation::marks::middle;
use super::elevation::view::extent;
use super::elevation_index::{AtElevation, ElevationIndex, PostShown};
use super::overlay_failed;
use crate::geom::vocabulary::{Affine, Point, Xy};
use crate::layout::Layout;
use crate::layout::backdrop::Backdrops;
use crate::layout::wall::LaidElevation;
use crate::model::drawing::{
    Across, Dimension, Drawing, Group, Pen, Polyline, Shape, Space, Text, Up,
};
use crate::model::trim::TrimKind;
use crate::origin::{Origin, round_place};
use crate::real::Real;
use crate::wording::legend;

/// Height of plain text in plotted inches (`DrawingFact::TextHeight`).
const PLAIN: f64 = 3.0 / 32.0;
/// Height of marks.
const MARK: f64 = PLAIN * 0.8;
/// The frame of a mark of trim in plotted inches, as its block draws it.
const FRAME: (f64, f64) = (4.2 * MARK, 1.8 * MARK);
/// How far strings of dimensions stand off the house at least, elevation inches.
const ROW: f64 = 30.0;

/// Name of the block of a mark of trim.
const TRIM_MARK: &str = "Z-MARK-TRIM";

struct OverlayBuilder<'a> {
    out: Drawing,
    map: Affine,
    /// Source units in an inch.
    unit: f64,
    /// Inches in a source unit.
    inches: f64,
    elevation: &'a LaidElevation,
    style: crate::units::LengthStyle,
    room: Room,
}

/// The layout over the source, in its coordinates and units; its text keeps off the source's own, which
/// `backdrops` has.
pub fn overlay(layout: &Layout, backdrops: &Backdrops) -> Drawing {
    let mut out = Drawing { name: "overlay".to_owned(), ..Default::default() };
    for (name, width, color, dash) in LAYERS {
        out.layer(name, Pen { width, color, dash, fill: None });
    }
    if !layout.verify.passes() {
        let (name, width, color, dash) = FAILED;
        out.layer(name, Pen { width, color, dash, fill: None });
    }
    let standing = ElevationIndex::of(layout);
    for (i, elevation) in layout.elevations.iter().enumerate() {
        let on = standing.at(elevation);
        let map = Affine::new(elevation.to_source);
        // Upright, since a wall at an angle is drawn narrower than it is.
        let [.., c, d, _, _] = elevation.to_source;
        let unit = c.hypotenuse(d);
        let (style, inches) = (layout.job.sheet.lengths, layout.drawing.inches_per_unit);
        let room = Room::of(elevation, backdrops.behind(i), backdrops.texts_behind(i));
        let mut over = OverlayBuilder { out, map, unit, inches, elevation, style, room };
        // What stands at a place of its own first: marks then find room beside it.
        over.faces(layout);
        let under = over.dimensions();
        over.levels();
        over.notes(under);
        over.failed(on);
        over.bar(layout.verify.places());
        over.walls();
        over.trims(on);
        over.breaks(on);
        out = over.out;
    }
    out
}

impl OverlayBuilder<'_> {
    /// A place in the source's coordinates, to no more figures than the grid holds: what was drawn at
    /// 960 mm is there again, and a dimension between such places reads as drawn.
    fn at(&self, p: Xy) -> Point {
        round_place(self.map * Point::new(p[0], p[1]), self.inches)
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
                angle: self.elevation.reading(),
                mirrored: false,
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
        let height = MARK * PLOT * self.unit;
        let frame = (block == TRIM_MARK).then_some(FRAME);
        let at = self.room.mark(mark, target, MARK, frame);
        let moved = (at[0] - target[0]).hypotenuse(at[1] - target[1]);
        if moved > 0.15 * PLOT {
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
        self.text(IDEN, mark.to_owned(), at, MARK, Across::Center);
    }

    /// Number and height of every course, once, at the right end of the elevation.
    fn levels(&mut self) {
        let walls = &self.elevation.walls;
        let right = walls.iter().flat_map(|w| &w.outline).map(|p| p[0]);
        let right = right.fold(f64::NEG_INFINITY, f64::max);
        let levels: std::collections::BTreeMap<i32, f64> =
            walls.iter().flat_map(|w| &w.courses).map(|c| (c.index, c.bottom)).collect();
        let words = |(index, bottom): (i32, f64)| {
            (format!("{}  {}", index + 1, self.style.length(bottom)), bottom)
        };
        let levels: Vec<(String, f64)> = levels.into_iter().map(words).collect();
        let across = |i: usize| right + 4.0 + MOVE * i as f64;
        let column = |i: usize| {
            let boxed = |(words, y): &(String, f64)| self.room.level(words, [across(i), *y], PLAIN);
            levels.iter().map(boxed).collect()
        };
        let ways: Vec<_> = (0..MOVES).map(column).collect();
        let x = across(self.room.settle(&ways));
        for (words, bottom) in levels {
            self.text(DIMS, words, [x, bottom], PLAIN, Across::Left);
        }
    }

    /// What the overlay says under the elevation and its dimensions, and of each zone in it.
    fn notes(&mut self, under: Option<f64>) {
        let elevation = self.elevation;
        if let Some(y) = under {
            self.note(legend::overlay_notice(&elevation.name), [0.0, y], -MOVE);
        }
        for z in &elevation.zones {
            if let Some(p) = z.outline.first().and_then(|r| r.first()) {
                let words = legend::overlay_zone(z, self.style);
                self.note(words, [p[0] + 6.0, p[1] + 6.0], MOVE);
            }
        }
    }

    /// A note at a place, or so many steps up or down from there where something is in its way.
    fn note(&mut self, words: String, [x, y]: Xy, step: f64) {
        let height = |i: usize| y + step * i as f64;
        let way = |i: usize| vec![self.room.level(&words, [x, height(i)], PLAIN)];
        let ways: Vec<_> = (0..MOVES).map(way).collect();
        let y = height(self.room.settle(&ways));
        self.text(NOTE, words, [x, y], PLAIN, Across::Left);
    }

    /// Strings of dimensions: openings and walls below, all of it under them, heights on the left.
    /// Returns where there is room under all of them.
    fn dimensions(&mut self) -> Option<f64> {
        let walls = &self.elevation.walls;
        let points: Vec<Point> =
            walls.iter().flat_map(|w| &w.outline).map(|p| Point::new(p[0], p[1])).collect();
        let house = crate::geom::polygon::bounds(&points)?;
        let mut xs: Vec<f64> =
            walls.iter().flat_map(|w| w.openings.iter().flat_map(|o| [o.left, o.right])).collect();
        for w in walls {
            let ends = w.outline.iter().map(|p| p[0]);
            xs.extend(ends.clone().reduce(f64::min));
            xs.extend(ends.reduce(f64::max));
        }
        let low = self.elevation.grade.iter().map(|p| p[1]).fold(house.y0, f64::min);
        let mut row = low - ROW;
        for xs in [apart(xs), apart(vec![house.x0, house.x1])] {
            let (off, rows) = self.aside(&xs, false, row);
            for (pair, back) in xs.windows(2).zip(&rows) {
                let at = |x: f64| [x, house.y0];
                self.dimension(at(pair[0]), at(pair[1]), [pair[0], row - off - back], 0.0);
            }
            row -= off + rows.iter().copied().fold(0.0, f64::max) + 18.0;
        }
        let mut ys: Vec<f64> = walls
            .iter()
            .flat_map(|w| &w.edges)
            .filter(|s| s.opening.is_none() && (s.from[1] - s.to[1]).abs() < 0.1)
            .map(|s| s.from[1])
            .collect();
        ys.extend([house.y0, house.y1]);
        let ys = apart(ys);
        let (off, rows) = self.aside(&ys, true, house.x0 - ROW);
        for (pair, back) in ys.windows(2).zip(&rows) {
            let at = |y: f64| [house.x0, y];
            let line = house.x0 - ROW - off - back;
            self.dimension(at(pair[0]), at(pair[1]), [line, pair[0]], 90.0);
        }
        Some(row)
    }

    /// See [`Room::string`].
    fn aside(&mut self, places: &[f64], upright: bool, row: f64) -> (f64, Vec<f64>) {
        let texts: Vec<(String, f64)> = places
            .windows(2)
            .map(|pair| (self.style.length(pair[1] - pair[0]), pair[0].midpoint(pair[1])))
            .collect();
        self.room.string(&texts, upright, (row, PLAIN))
    }

    fn dimension(&mut self, from: Xy, to: Xy, line: Xy, angle: f64) {
        let [a, b, c, d, ..] = self.elevation.to_source;
        // A wall at an angle is drawn short: its true width stands in place of the drawn one.
        let short = (a.hypotenuse(b) - c.hypotenuse(d)).abs() > 1e-9 * c.hypotenuse(d);
        let along = (to[0] - from[0]).hypotenuse(to[1] - from[1]);
        let text = (short && angle == 0.0).then(|| self.style.length(along));
        let dimension = Dimension {
            from: self.at(from),
            to: self.at(to),
            line: self.at(line),
            angle: Some(angle + self.elevation.reading()),
            text,
            ..Dimension::default()
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

    /// Places that break a rule of the check: circled, numbered, and named beside the circle.
    fn failed(&mut self, on: &AtElevation) {
        for place in overlay_failed::places(on) {
            self.ring(FAIL, &place.circle);
            let at = self.room.mark(&place.words, place.wish, MARK, None);
            self.text(FAIL, place.words, at, MARK, Across::Center);
        }
    }

    /// Over the elevation of a layout that breaks rules: that the check failed, in a heavy frame.
    fn bar(&mut self, places: usize) {
        let Some(bar) = overlay_failed::bar(places, extent(self.elevation)) else { return };
        bar.frames.iter().for_each(|r| self.ring(FAIL, r));
        self.text(FAIL, bar.words, bar.at, bar.height / PLOT, Across::Left);
    }

    fn trims(&mut self, on: &AtElevation) {
        on.trims.iter().for_each(|t| self.room.keep_off(t.from, t.to));
        on.posts.iter().map(PostShown::edge).for_each(|[a, b]| self.line(TRIM, a, b));
        for t in &on.trims {
            t.line().windows(2).for_each(|w| self.line(TRIM, w[0], w[1]));
            let off = if t.kind == TrimKind::FinishTrim { -5.0 } else { 5.0 };
            let at = [0.5, 0.3, 0.7].map(|along| t.place(along).map(|v| v + off));
            self.mark(TRIM_MARK, &t.mark, self.room.first_free(at));
        }
    }
}
