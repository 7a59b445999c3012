//! Room for the overlay's text: off the texts of the source and its own, and off the lines of both
//! wherever there is room. Text has no ground of its own, so that nothing under it is hidden.

use super::super::elevation::view::extent;
use super::super::place::{Off, Placer, text_box};
use crate::geom::vocabulary::{Point, Rect, Vec2, Xy};
use crate::layout::wall::LaidElevation;
use crate::model::house::Backdrop;
use crate::model::linework::Role;

/// House inches in a plotted inch the overlay's text is sized for: 1/4 in to the foot.
pub(super) const PLOT: f64 = 48.0;

/// Room round an elevation for marks, elevation inches.
const MARGIN: f64 = 24.0;
/// How far from where it is wished a mark may stand, plotted inches.
const REACH: f64 = 1.5;

/// How far texts in rows move at a time, elevation inches, where something stands in their way, and how
/// often.
pub(super) const MOVE: f64 = 8.0;
pub(super) const MOVES: usize = 12;
/// Rows that dimensions of one string may stand in.
const BACK: usize = 4;

/// Places taken on one elevation.
pub(super) struct Room {
    /// Lower left of what is marked, elevation inches.
    low: Point,
    /// In plotted inches from there.
    placer: Placer,
}

impl Room {
    /// The room of an elevation with the source's lines and texts in it.
    pub(super) fn of(elevation: &LaidElevation, lines: &[Backdrop], texts: &[Rect]) -> Self {
        let house = extent(elevation);
        let low = Point::new(house.x0 - MARGIN, house.y0 - MARGIN);
        let high = (house.width() + 2.0 * MARGIN, house.height() + 2.0 * MARGIN);
        let placer = Placer::new(Rect::new(0.0, 0.0, high.0 / PLOT, high.1 / PLOT));
        let mut room = Room { low, placer };
        for line in lines.iter().filter(|l| l.role.is_some_and(must_be_seen)) {
            let last = line.points.first().filter(|_| line.closed);
            let next = line.points.iter().skip(1).chain(last);
            line.points.iter().zip(next).for_each(|(a, b)| room.keep_off([a.x, a.y], [b.x, b.y]));
        }
        for w in &elevation.walls {
            w.field.iter().for_each(|ring| room.keep_off_ring(ring));
            let seams = w.courses.iter().flat_map(|c| &c.runs);
            for r in seams {
                for (s, (low, high)) in r.seams.iter().filter_map(|s| Some((s, r.seam_height(*s)?)))
                {
                    room.keep_off([*s, low], [*s, high]);
                }
            }
        }
        elevation.zones.iter().flat_map(|z| &z.outline).for_each(|ring| room.keep_off_ring(ring));
        for t in texts {
            let (a, b) = (room.paper([t.x0, t.y0]), room.paper([t.x1, t.y1]));
            room.placer.take(Rect::from_points(a, b));
        }
        room
    }

    /// A line that text keeps off.
    pub(super) fn keep_off(&mut self, a: Xy, b: Xy) {
        self.placer.keep_off(self.paper(a), self.paper(b));
    }

    fn keep_off_ring(&mut self, ring: &[Xy]) {
        let next = ring.iter().cycle().skip(1);
        ring.iter().zip(next).for_each(|(a, b)| self.keep_off(*a, *b));
    }

    /// The first place that no text stands over, else the first: a leader that began under a text could
    /// not be read.
    pub(super) fn first_free(&self, places: [Xy; 3]) -> Xy {
        let free = |p: &Xy| {
            let at = self.paper(*p);
            self.placer.apart(&Rect::from_points(at, at))
        };
        places.into_iter().find(free).unwrap_or(places[0])
    }

    fn paper(&self, p: Xy) -> Point {
        Point::new((p[0] - self.low.x) / PLOT, (p[1] - self.low.y) / PLOT)
    }

    /// The first of some ways to place texts, as their boxes, in which each stands off all others and off
    /// lines, else the first in which each stands off all others, else the first of all; its room is
    /// taken.
    pub(super) fn settle(&mut self, ways: &[Vec<Rect>]) -> usize {
        let apart = |way: &Vec<Rect>| way.iter().all(|r| self.placer.apart(r));
        let clear = |way: &Vec<Rect>| apart(way) && way.iter().all(|r| self.placer.off_lines(r));
        let best = ways.iter().position(clear).or_else(|| ways.iter().position(apart));
        let best = best.unwrap_or(0);
        for r in ways.get(best).into_iter().flatten() {
            self.placer.take(*r);
        }
        best
    }

    /// How far from `row` a string of dimensions must stand off, so that its texts, which are over their
    /// line, cover no other text; and how much farther back each stands whose text is longer than what
    /// it measures. Each text is its words and its middle along the string.
    pub(super) fn string(
        &mut self,
        texts: &[(String, f64)],
        upright: bool,
        (row, height): (f64, f64),
    ) -> (f64, Vec<f64>) {
        let mut ends = [f64::NEG_INFINITY; BACK];
        let back = texts.iter().map(|(words, middle)| {
            let half = about(words, height).width() * PLOT / 2.0;
            let free = ends.iter().position(|end| *end <= middle - half).unwrap_or(BACK - 1);
            ends[free] = middle + half;
            MOVE * free as f64
        });
        let back: Vec<f64> = back.collect();
        let off = |i: usize| MOVE * i as f64;
        let way = |i: usize| -> Vec<Rect> {
            let over = row - off(i) + if upright { -height } else { height } * PLOT;
            let boxed = |((words, middle), back): (&(String, f64), &f64)| {
                let at = if upright { [over - back, *middle] } else { [*middle, over - back] };
                self.centered(words, at, height, upright)
            };
            texts.iter().zip(&back).map(boxed).collect()
        };
        let ways: Vec<_> = (0..MOVES).map(way).collect();
        (off(self.settle(&ways)), back)
    }

    /// Box of a level text of that height from a place to the right.
    pub(super) fn level(&self, words: &str, at: Xy, height: f64) -> Rect {
        let about = about(words, height);
        about + (self.paper(at).to_vec2() - Vec2::new(about.x0, 0.0))
    }

    /// Box of a text of that height about its middle, read from below where it is `upright`.
    fn centered(&self, words: &str, at: Xy, height: f64, upright: bool) -> Rect {
        let about = about(words, height);
        let turned = Rect::new(-about.y1, about.x0, -about.y0, about.x1);
        (if upright { turned } else { about }) + self.paper(at).to_vec2()
    }

    /// A place near `target` for a mark of that height, in a frame as wide as `framed` where it has one:
    /// off texts and lines, else off texts alone, else where it is wished.
    pub(super) fn mark(
        &mut self,
        mark: &str,
        target: Xy,
        height: f64,
        framed: Option<(f64, f64)>,
    ) -> Xy {
        let wish = self.paper(target);
        let about = about(mark, height);
        let about =
            framed.map_or(about, |size| about.union(Rect::from_center_size(Point::ORIGIN, size)));
        let spot = [Off::Lines, Off::LinesAlone, Off::Text]
            .iter()
            .find_map(|off| self.placer.near(about, wish, wish, REACH, *off))
            .unwrap_or(wish);
        [spot.x * PLOT + self.low.x, spot.y * PLOT + self.low.y]
    }
}

/// Box of a text about its middle: the plain stroked font of the overlay is wider than the sheets' own.
fn about(words: &str, height: f64) -> Rect {
    text_box(words, height, true, Point::ORIGIN).inflate(0.04, 0.01)
}

/// Whether a reader must see lines of this role whole: drawn siding is behind everything anyway.
fn must_be_seen(role: Role) -> bool {
    role.is_outline()
        || matches!(role, Role::Level | Role::Grade | Role::InsideCorner | Role::Joint)
}

/// Places in order, those nearer than 1/16 in as one.
pub(super) fn apart(mut places: Vec<f64>) -> Vec<f64> {
    places.sort_by(f64::total_cmp);
    places.dedup_by(|a, b| (*a - *b).abs() < 1.0 / 16.0);
    places
}
