//! Where text goes: boxes that do not overlap one another or leave their area, and that keep off
//! the lines a reader must see where there is room.

use super::meeting::{clipped, overlaps};
use super::stood::{KeptOff, Stood};
use crate::geom::vocabulary::{Point, Rect, Vec2};
use crate::typeface;

/// Boxes and lines so far, by the squares of the page they touch.
#[derive(Clone, Debug)]
pub(super) struct Placer {
    pub(super) area: Rect,
    squares: Vec<Square>,
    grid: Grid,
    /// Places round a wish, ring by ring.
    rings: Vec<Vec<Vec2>>,
    /// Texts and lines that may still be looked at, so that no sheet takes for ever.
    budget: usize,
}

/// Texts and lines looked at for one sheet at most; an ordinary one takes some hundred thousands.
const BUDGET: usize = 20_000_000;

#[derive(Clone, Debug, Default)]
struct Square {
    taken: Vec<Rect>,
    lines: Vec<(Point, Point)>,
    work: Vec<(Point, Point)>,
}

impl Square {
    /// Its texts, and the lines that such a text keeps off.
    #[inline]
    fn kept_off(&self, off: Off) -> KeptOff<'_> {
        let lines = if off == Off::Text { &[] } else { self.lines.as_slice() };
        let work = if off == Off::Work { self.work.as_slice() } else { &[] };
        KeptOff { texts: &self.taken, lines: [lines, work] }
    }

    /// Whether a box stands on none of its texts.
    #[inline]
    fn is_apart(&self, r: &Rect) -> bool {
        !self.taken.iter().any(|t| overlaps(t, r))
    }
}

/// Whether a box stands on none of the lines.
#[inline]
fn is_off(lines: &[(Point, Point)], r: &Rect) -> bool {
    !lines.iter().any(|(a, b)| clipped(*a, *b, r).is_some())
}

/// What a text keeps off.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Off {
    /// Other text, all lines that must be seen, and the edges of panels.
    Work,
    /// Other text, and the lines that must be seen.
    Lines,
    /// The same, of a text without a leader, which may stand past other text.
    LinesAlone,
    /// Other text.
    Text,
}

/// Side of a square, inches, on anything up to the largest paper.
const SIDE: f64 = 0.5;
/// Most squares; over a larger area each is larger.
const MOST: f64 = 50_000.0;

/// Squares over an area; what lies beyond goes into the outermost.
#[derive(Clone, Copy, Debug)]
struct Grid {
    origin: Point,
    side: f64,
    across: usize,
    up: usize,
}

impl Grid {
    fn over(area: Rect) -> Self {
        let side = (area.area().abs() / MOST).sqrt().max(area.width().max(area.height()) / MOST);
        let side = if side.is_finite() { side.max(SIDE) } else { SIDE };
        let count = |length: f64| (length / side).ceil().clamp(1.0, MOST) as usize;
        let (across, up) = (count(area.width()), count(area.height()));
        Grid { origin: area.origin(), side, across, up }
    }

    /// The squares a box touches.
    fn touched(self, r: &Rect) -> Touched {
        // What is under 0 is 0, and the rest is cut down to whole numbers, which is to round it down.
        let index = |v: f64, n: usize| ((v / self.side) as usize).min(n.saturating_sub(1));
        let (x0, y0) = (self.origin.x, self.origin.y);
        Touched {
            columns: (index(r.x0 - x0, self.across), index(r.x1 - x0, self.across)),
            rows: (index(r.y0 - y0, self.up), index(r.y1 - y0, self.up)),
            across: self.across,
        }
    }
}

/// Squares from the first to the last of some columns and rows.
#[derive(Clone, Copy, Debug)]
struct Touched {
    columns: (usize, usize),
    rows: (usize, usize),
    across: usize,
}

impl Touched {
    /// Their indices.
    #[inline]
    fn indices(self) -> impl Iterator<Item = usize> {
        let ((left, right), (low, high)) = (self.columns, self.rows);
        (low..=high).flat_map(move |y| (left..=right).map(move |x| y * self.across + x))
    }
}

/// Room round a text, inches.
const AIR: f64 = 0.015;

/// Box of a line of text of that height about a center.
pub(super) fn text_box(text: &str, height: f64, bold: bool, center: Point) -> Rect {
    let w = typeface::width(text, height, bold);
    // Descenders reach below the capitals' box; figures, as in marks of pieces, have none.
    let figures = text.chars().all(|c| c.is_ascii_digit() || c == '-');
    let below = if figures { AIR } else { height / typeface::CAPITALS * typeface::DESCENT * 0.75 };
    Rect::new(
        center.x - w / 2.0 - AIR,
        center.y - height / 2.0 - below,
        center.x + w / 2.0 + AIR,
        center.y + height / 2.0 + AIR,
    )
}

/// The point of a box nearest to `p`.
pub(super) fn edge_towards(r: &Rect, p: Point) -> Point {
    Point::new(p.x.clamp(r.x0, r.x1), p.y.clamp(r.y0, r.y1))
}

/// How far rings of places stand apart, inches.
const STEP: f64 = 0.085;

/// Places of a ring, from straight above on, alternating sides.
fn spots(ring: i32) -> Vec<Vec2> {
    let spots = if ring == 0 { 1 } else { 8 * ring };
    (0..spots)
        .map(|k| {
            let turn = if k % 2 == 0 { k / 2 } else { -(k + 1) / 2 };
            let angle = std::f64::consts::FRAC_PI_2
                + std::f64::consts::TAU * f64::from(turn) / f64::from(spots);
            Vec2::from_angle(angle) * (STEP * f64::from(ring))
        })
        .collect()
}

impl Placer {
    pub(super) fn new(area: Rect) -> Self {
        let grid = Grid::over(area);
        Placer {
            area,
            squares: vec![Square::default(); grid.across * grid.up],
            grid,
            rings: Vec::new(),
            budget: BUDGET,
        }
    }

    /// Inside the area and off every text.
    pub(super) fn free(&self, r: &Rect) -> bool {
        self.is_inside(r) && self.apart(r)
    }

    fn is_inside(&self, r: &Rect) -> bool {
        let a = &self.area;
        r.x0 >= a.x0 && r.x1 <= a.x1 && r.y0 >= a.y0 && r.y1 <= a.y1
    }

    /// Off every text, inside the area or not.
    pub(super) fn apart(&self, r: &Rect) -> bool {
        self.on(self.grid.touched(r)).all(|s| s.is_apart(r))
    }

    /// Off the lines a reader must see.
    pub(super) fn off_lines(&self, r: &Rect) -> bool {
        self.on(self.grid.touched(r)).all(|s| is_off(&s.lines, r))
    }

    /// Whether a ground of that shape would hide nothing that is built.
    pub(super) fn hides_nothing(&self, r: &Rect) -> bool {
        self.on(self.grid.touched(r)).all(|s| is_off(&s.lines, r) && is_off(&s.work, r))
    }

    /// Free, and off the lines a reader must see.
    pub(super) fn clear(&self, r: &Rect) -> bool {
        self.free(r) && self.off_lines(r)
    }

    fn on(&self, touched: Touched) -> impl Iterator<Item = &Square> {
        touched.indices().filter_map(|i| self.squares.get(i))
    }

    pub(super) fn take(&mut self, r: Rect) {
        for i in self.grid.touched(&r).indices() {
            if let Some(s) = self.squares.get_mut(i) {
                s.taken.push(r);
            }
        }
    }

    /// A line that text shall keep off.
    pub(super) fn keep_off(&mut self, a: Point, b: Point) {
        self.note(a, b, |s| &mut s.lines);
    }

    /// The edge of a panel: text stands on it where there is no other room, but hides nothing of it.
    pub(super) fn work(&mut self, a: Point, b: Point) {
        self.note(a, b, |s| &mut s.work);
    }

    fn note(&mut self, a: Point, b: Point, of: fn(&mut Square) -> &mut Vec<(Point, Point)>) {
        let Grid { origin, side, across, up } = self.grid;
        for i in self.grid.touched(&Rect::from_points(a, b)).indices() {
            let (x, y) = (i % across, i / across);
            let corner = origin + Vec2::new(x as f64 * side, y as f64 * side);
            // Squares at the border stand for all that lies beyond them.
            let border = x == 0 || y == 0 || x + 1 == across || y + 1 == up;
            let square = Rect::from_origin_size(corner, (side, side));
            if let Some(s) = self.squares.get_mut(i)
                && (border || clipped(a, b, &square).is_some())
            {
                of(s).push((a, b));
            }
        }
    }

    fn leader_clear(&self, target: Point, r: &Rect) -> bool {
        let end = edge_towards(r, target);
        let around = Rect::from_points(target, end);
        let crossed = |s: &Square| s.taken.iter().any(|t| clipped(target, end, t).is_some());
        !self.on(self.grid.touched(&around)).any(crossed)
    }

    /// The free place nearest to `wish` for a box of that shape about its center, within `reach`;
    /// but where it keeps off text alone, one whose leader from `target` crosses no text. Taken at
    /// once.
    pub(super) fn near(
        &mut self,
        about: Rect,
        target: Point,
        wish: Point,
        reach: f64,
        off: Off,
    ) -> Option<Point> {
        let mut stood = Stood::default();
        for ring in 0..=(reach / STEP).ceil() as usize {
            if self.rings.len() <= ring {
                self.rings.push(spots(ring as i32));
            }
            for k in 0..self.rings.get(ring).map_or(0, Vec::len) {
                let at = wish + self.rings[ring][k];
                let r = about + at.to_vec2();
                self.budget = self.budget.checked_sub(1)?;
                if !self.is_inside(&r) || stood.on(&r) {
                    continue;
                }
                let touched = self.grid.touched(&r);
                let of = |s: &Square| s.taken.len() + s.lines.len() + s.work.len();
                let looks: usize = self.on(touched).map(of).sum();
                self.budget = self.budget.checked_sub(looks)?;
                let led = matches!(off, Off::Lines | Off::Work);
                let good = !self.on(touched).any(|s| stood.is_met(&s.kept_off(off), &r))
                    && (!led || self.leader_clear(target, &r));
                if good {
                    self.take(r);
                    return Some(at);
                }
            }
        }
        None
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn texts_asked_for_at_one_place_stand_apart() {
        let mut p = Placer::new(Rect::new(0.0, 0.0, 4.0, 4.0));
        let wish = Point::new(2.0, 2.0);
        let about = text_box("12-2", 0.094, false, Point::ORIGIN);
        let at: Vec<Point> =
            (0..12).filter_map(|_| p.near(about, wish, wish, 2.0, Off::Text)).collect();
        assert_eq!(at.len(), 12);
        for (i, a) in at.iter().enumerate() {
            for b in &at[i + 1..] {
                assert!(!overlaps(&(about + a.to_vec2()), &(about + b.to_vec2())));
            }
        }
    }

    #[test]
    fn what_has_no_room_is_not_placed() {
        let mut p = Placer::new(Rect::new(0.0, 0.0, 0.2, 0.2));
        let about = text_box("a long text", 0.094, false, Point::ORIGIN);
        let wish = Point::new(0.1, 0.1);
        assert!(p.near(about, wish, wish, 5.0, Off::Text).is_none());
    }

    #[test]
    fn text_keeps_off_a_line_where_there_is_room() {
        let mut p = Placer::new(Rect::new(0.0, 0.0, 4.0, 4.0));
        p.keep_off(Point::new(0.0, 2.0), Point::new(4.0, 2.0));
        let wish = Point::new(2.0, 2.0);
        let about = text_box("OP1", 0.094, false, Point::ORIGIN);
        let at = p.near(about, wish, wish, 2.0, Off::Lines).unwrap();
        let r = about + at.to_vec2();
        assert!(r.y0 >= 2.0 || r.y1 <= 2.0);
    }
}
