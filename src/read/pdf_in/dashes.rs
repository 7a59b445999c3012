//! Dashes that a print draws one by one, joined to the line they stand for.

use crate::geom::vocabulary::Point;
use crate::model::drawing::{Ink, Polyline, Shape};

/// Fewest dashes that make a dashed line: fewer are strokes that happen to stand in one line.
const FEWEST: usize = 5;

/// Widest gap, points: 2.5 mm. Lines of ISO 128-2 have gaps of 3 line widths, 2.1 mm at the widest common
/// pen, 0.7 mm; what stands between the piers of a wall is wider on paper.
// DrawingFact::LineTypes.
const GAP: f64 = 7.1;

/// Longest dash, points: 17 mm, 24 line widths of 0.7 mm.
// DrawingFact::LineTypes.
const DASH: f64 = 48.0;

/// How far dashes may stand off their line, and differ from one another, points. From memory: what writers
/// of prints round to.
const OFF: f64 = 0.15;

/// A stroke of a page: its layer, its ink, its shape.
pub(super) type Stroke = (usize, Ink, Shape);

/// One dash of a line that may be dashed.
#[derive(Clone, Copy)]
struct Dash {
    from: Point,
    to: Point,
}

impl Dash {
    fn length(self) -> f64 {
        (self.to - self.from).hypot()
    }
}

/// Lines of dashes side by side within this distance, points, are a texture: rows of shingles or of earth.
const BESIDE: f64 = 12.0;

/// So many lines of dashes beside one make a texture of it.
const ROWS: usize = 3;

/// Most lines of dashes on a page: a page with more draws its textures so.
const MOST: usize = 4000;

/// Strokes in the order of the page, dashes that follow one another in one line joined; whether each is a
/// dashed line now.
pub(super) fn joined(strokes: Vec<Stroke>) -> Vec<(Stroke, bool)> {
    let runs = runs(strokes);
    let lines: Vec<Option<Stroke>> = runs.iter().map(|r| dashed_line(r)).collect();
    let known: Vec<&Stroke> = lines.iter().flatten().collect();
    let plain: Vec<bool> = lines
        .iter()
        .map(|l| l.as_ref().is_none_or(|l| known.len() > MOST || is_texture(l, &known)))
        .collect();
    let mut out = Vec::new();
    for ((run, line), plain) in runs.into_iter().zip(lines).zip(plain) {
        match line.filter(|_| !plain) {
            Some(line) => out.push((line, true)),
            None => out.extend(run.into_iter().map(|s| (s, false))),
        }
    }
    out
}

/// Strokes that follow one another in one line behind gaps.
fn runs(strokes: Vec<Stroke>) -> Vec<Vec<Stroke>> {
    let mut out: Vec<Vec<Stroke>> = Vec::new();
    for stroke in strokes {
        match out.last_mut().filter(|run| run.last().is_some_and(|l| follows(run, l, &stroke))) {
            Some(run) => run.push(stroke),
            None => out.push(vec![stroke]),
        }
    }
    out
}

/// The line that a run of dashes stands for.
fn dashed_line(run: &[Stroke]) -> Option<Stroke> {
    if run.len() < FEWEST {
        return None;
    }
    let dashes: Vec<Dash> = run.iter().map(|s| dash(&s.2)).collect::<Option<_>>()?;
    let (layer, ink, _) = run[0];
    let line = Polyline::line(dashes[0].from, dashes[dashes.len() - 1].to);
    is_line_type(&dashes).then_some((layer, ink, Shape::Polyline(line)))
}

/// Whether a line of dashes has others beside it, of the same pen.
fn is_texture(line: &Stroke, all: &[&Stroke]) -> bool {
    let ends = |s: &Stroke| match &s.2 {
        Shape::Polyline(l) => (l.vertices[0].at, l.vertices[l.vertices.len() - 1].at),
        _ => (Point::ZERO, Point::ZERO),
    };
    let (from, to) = ends(line);
    let length = (to - from).hypot();
    let along = (to - from) / length;
    let beside = |other: &&&Stroke| {
        let (a, b) = ends(other);
        let off = [a, b].map(|p| (p - from).cross(along).abs());
        let (near, far) = ((a - from).dot(along), (b - from).dot(along));
        (other.0, other.1) == (line.0, line.1)
            && off.iter().all(|o| *o > OFF && *o <= BESIDE)
            && near.min(far) < length
            && near.max(far) > 0.0
    };
    all.iter().filter(beside).take(ROWS).count() == ROWS
}

/// A straight stroke no longer than a dash.
fn dash(shape: &Shape) -> Option<Dash> {
    let Shape::Polyline(line) = shape else { return None };
    let [a, b] = &line.vertices[..] else { return None };
    let dash = Dash { from: a.at, to: b.at };
    let straight = !line.closed && a.bulge == 0.0;
    (straight && dash.length() <= DASH).then_some(dash)
}

/// Whether a stroke goes on the line of a run behind a gap.
fn follows(run: &[Stroke], last: &Stroke, next: &Stroke) -> bool {
    if (last.0, last.1) != (next.0, next.1) {
        return false;
    }
    let (Some(first), Some(last), Some(next)) = (dash(&run[0].2), dash(&last.2), dash(&next.2))
    else {
        return false;
    };
    // A dot has no direction: the line is that from the first point on.
    let along = next.to - first.from;
    let length = along.hypot();
    if length <= OFF {
        return false;
    }
    let along = along / length;
    let off = |p: Point| (p - first.from).cross(along).abs();
    let gap = (next.from - last.to).dot(along);
    let ahead = |d: Dash| (d.to - d.from).dot(along) >= -OFF;
    let on_line = [first.to, last.from, last.to, next.from].into_iter().all(|p| off(p) <= OFF);
    on_line && ahead(first) && ahead(last) && ahead(next) && gap > OFF && gap <= GAP
}

/// Whether dashes and gaps are those of one line type: equal gaps, and dashes of at most two lengths but for
/// the first and the last, which a line's ends cut.
fn is_line_type(dashes: &[Dash]) -> bool {
    let gaps: Vec<f64> = dashes.windows(2).map(|d| (d[1].from - d[0].to).hypot()).collect();
    let whole: Vec<f64> = dashes[1..dashes.len() - 1].iter().map(|d| d.length()).collect();
    let longest = whole.iter().copied().fold(0.0, f64::max);
    let equal = |a: f64, b: f64| (a - b).abs() <= OFF + 0.02 * a.max(b);
    let shortest = whole.iter().copied().fold(f64::INFINITY, f64::min);
    let two = whole.iter().all(|w| equal(*w, longest) || equal(*w, shortest));
    // Shorter dashes come by turns with longer ones.
    let turns = equal(longest, shortest) || !whole.windows(2).all(|w| equal(w[0], w[1]));
    let ends = [dashes[0], dashes[dashes.len() - 1]].iter().all(|d| d.length() <= longest + OFF);
    gaps.iter().all(|g| equal(*g, gaps[0])) && two && turns && ends && gaps[0] <= longest + OFF
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geom::vocabulary::Vec2;

    fn stroke(from: (f64, f64), by: Vec2) -> Stroke {
        let from = Point::from(from);
        (0, Ink::default(), Shape::Polyline(Polyline::line(from, from + by)))
    }

    /// Dashes of these lengths along a line, with gaps of 2 points between.
    fn line(y: f64, lengths: &[f64], gap: f64) -> Vec<Stroke> {
        let mut x = 10.0;
        let mut put = |length: &f64| {
            let made = stroke((x, y), Vec2::new(*length, 0.0));
            x += length + gap;
            made
        };
        lengths.iter().map(&mut put).collect()
    }

    fn ends(stroke: &Stroke) -> (Point, Point) {
        let Shape::Polyline(line) = &stroke.2 else { panic!("no line") };
        (line.vertices[0].at, line.vertices[line.vertices.len() - 1].at)
    }

    #[test]
    fn dashes_of_one_line_are_one_line() {
        let mut strokes = line(5.0, &[4.0, 8.0, 8.0, 8.0, 8.0, 3.0], 2.0);
        strokes.extend(line(9.0, &[8.0, 0.4, 8.0, 0.4, 8.0, 0.4, 8.0], 2.0));
        let made = joined(strokes);
        assert_eq!(made.len(), 2);
        assert!(made.iter().all(|(_, dashed)| *dashed));
        // 39 of dashes and five gaps of 2; 33.2 of dashes and six gaps of 2.
        assert_eq!(ends(&made[0].0), (Point::new(10.0, 5.0), Point::new(59.0, 5.0)));
        assert!((ends(&made[1].0).1.x - 55.2).abs() < 1e-9);
    }

    #[test]
    fn courses_between_windows_and_ticks_are_no_dashes() {
        let apart = |strokes: Vec<Stroke>| {
            let n = strokes.len();
            let made = joined(strokes);
            assert!(made.len() == n && made.iter().all(|(_, dashed)| !dashed), "{n}");
        };
        // Piers of 36 points between windows of 27: 1/8 in to the foot.
        apart(line(5.0, &[36.0; 6], 27.0));
        // Too few, and of any length.
        apart(line(5.0, &[8.0; 4], 2.0));
        apart(line(5.0, &[8.0, 3.0, 12.0, 5.0, 9.0, 7.0], 2.0));
        // Dots with gaps wider than themselves, as ticks of a scale.
        apart(line(5.0, &[1.0; 8], 5.0));
        // Rows of shingles.
        apart((0..6).flat_map(|row| line(5.0 + 3.0 * f64::from(row), &[8.0; 9], 2.0)).collect());
        // Upright strokes side by side.
        apart((0..8).map(|i| stroke((f64::from(i) * 2.0, 0.0), Vec2::new(0.0, 8.0))).collect());
    }
}
