//! Dimensions of a print: texts that state a length, beside the lines that they measure. What was one thing
//! in the drawing is a line and some letters on paper.

use super::motion::EVERYWHERE;
use super::stated;
use crate::geom::vocabulary::{Point, Rect, Vec2};
use crate::model::linework::Linework;

/// Lengths that are looked at, inches: a text of a few inches may be a thickness or a pitch.
const LENGTHS: std::ops::RangeInclusive<f64> = 12.0..=3600.0;
/// How far a text stands off its line, in heights of it (common practice, no source).
const OFF: f64 = 2.5;
/// How far its middle stands off the line's, as a share of the line (common practice, no source).
const MIDDLE: f64 = 0.12;
/// Width of a letter to its height (common practice, no source).
const LETTER: f64 = 0.8;
/// Scales nearer to one another than this share are one.
const ALIKE: f64 = 0.01;
/// Most texts that are looked at.
const MOST: usize = 2000;

/// A scale that dimensions agree on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Agreed {
    /// Inches in a unit of the drawing.
    pub(super) inches: f64,
    /// How many texts.
    pub(super) texts: usize,
}

/// Scales that texts beside lines agree on, the one of most texts first; each text counts for one.
pub(super) fn agreed(lines: &Linework, least: usize) -> Vec<Agreed> {
    agreed_in(lines, EVERYWHERE, least)
}

/// The same of the texts and lines in one part of a drawing.
pub(super) fn agreed_in(lines: &Linework, part: Rect, least: usize) -> Vec<Agreed> {
    let mut left = votes(lines, part);
    let mut out = Vec::new();
    while let Some(best) = most_alike(&left).filter(|b| b.texts >= least) {
        left.retain(|v| !v.iter().any(|k| alike(*k, best.inches)));
        out.push(best);
    }
    out
}

fn alike(a: f64, b: f64) -> bool {
    (a - b).abs() <= ALIKE * b
}

/// The scale that most texts may have, in the middle of what they say.
fn most_alike(votes: &[Vec<f64>]) -> Option<Agreed> {
    let mut all: Vec<f64> = votes.iter().flatten().copied().collect();
    all.sort_by(f64::total_cmp);
    let texts = |k: f64| votes.iter().filter(|v| v.iter().any(|o| alike(*o, k))).count();
    let best = all.iter().copied().max_by_key(|k| texts(*k))?;
    let near: Vec<f64> = all.iter().copied().filter(|k| alike(*k, best)).collect();
    Some(Agreed { inches: near[near.len() / 2], texts: texts(best) })
}

/// What scales each text may state, by the lines that it may stand at.
fn votes(lines: &Linework, part: Rect) -> Vec<Vec<f64>> {
    let sides: Vec<(Point, Point)> = lines
        .strokes
        .iter()
        .filter(|s| !s.closed && s.points.len() == 2 && s.points.iter().all(|p| part.contains(*p)))
        .map(|s| (s.points[0], s.points[1]))
        .collect();
    let texts = lines.labels.iter().filter(|l| part.contains(l.text.at)).take(MOST);
    texts
        .filter_map(|l| {
            let length = stated::sure(&l.text.content).filter(|v| LENGTHS.contains(v))?;
            let along = Vec2::from_angle(l.text.angle.to_radians());
            let wide = LETTER * l.text.height * l.text.content.chars().count() as f64;
            let middle = l.text.at + along * (wide / 2.0);
            let of = |(a, b): &(Point, Point)| {
                let (way, size) = (*b - *a, (*b - *a).hypot());
                let off = way.cross(middle - *a).abs() / size;
                let at = way.dot(middle - *a) / (size * size);
                let parallel = way.cross(along).abs() <= 0.01 * size;
                let beside =
                    off <= OFF * l.text.height && (at - 0.5).abs() <= MIDDLE + wide / (4.0 * size);
                (parallel && beside && size > wide / 2.0).then(|| length / size)
            };
            let found: Vec<f64> = sides.iter().filter_map(of).filter(|k| k.is_finite()).collect();
            (!found.is_empty()).then_some(found)
        })
        .collect()
}
