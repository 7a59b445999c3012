//! An elevation as a picture of the page: inches, y down.

use crate::language::Language;
use std::collections::BTreeSet;
use std::fmt::Write;

use super::html::{escaped, n};
use crate::geom::vocabulary::Xy;
use crate::layout::Layout;
use crate::layout::backdrop::Backdrops;
use crate::layout::piece::Piece;
use crate::layout::wall::{LaidElevation, LaidWall};
use crate::model::trim::TrimStock;
use crate::units::LengthStyle;
use crate::wording::sheet_lengths::length;
use crate::wording::{review as words, trim};

/// Room round an elevation, inches of the house.
const ROOM: f64 = 18.0;
/// Height of the letters on pieces, inches of the house: under the least exposure that a course has.
const LETTERS: f64 = 2.6;
/// Width of a letter to its height (from memory: letters of a device's own typeface).
const WIDE: f64 = 0.56;
/// Most points of the drawing behind one elevation: more would make the page too large to send.
const MOST_BEHIND: usize = 40_000;

/// The box round everything that is laid on an elevation.
pub(super) struct Frame {
    left: f64,
    top: f64,
    width: f64,
    height: f64,
}

impl Frame {
    pub(super) fn of(e: &LaidElevation) -> Self {
        let points = e.walls.iter().flat_map(|w| &w.outline).chain(&e.grade);
        let (mut low, mut high) = ([f64::INFINITY; 2], [f64::NEG_INFINITY; 2]);
        for p in points {
            low = [low[0].min(p[0]), low[1].min(p[1])];
            high = [high[0].max(p[0]), high[1].max(p[1])];
        }
        if low[0] > high[0] {
            (low, high) = ([0.0; 2], [1.0; 2]);
        }
        Frame {
            left: low[0] - ROOM,
            top: high[1] + ROOM,
            width: high[0] - low[0] + 2.0 * ROOM,
            height: high[1] - low[1] + 2.0 * ROOM,
        }
    }

    /// A place of the elevation in the picture.
    pub(super) fn at(&self, p: &Xy) -> (f64, f64) {
        (n(p[0] - self.left), n(self.top - p[1]))
    }

    fn ring(&self, ring: &[Xy]) -> String {
        let mut out = String::new();
        for (i, p) in ring.iter().enumerate() {
            let (x, y) = self.at(p);
            let _ = write!(out, "{}{x} {y}", if i == 0 { "M" } else { "L" });
        }
        out + "Z"
    }

    fn line(&self, points: &[Xy], closed: bool) -> String {
        let ring = self.ring(points);
        if closed { ring } else { ring.trim_end_matches('Z').to_owned() }
    }
}

/// The picture of the elevation of this number.
pub(super) fn picture(layout: &Layout, backdrops: &Backdrops, number: usize) -> String {
    let e = &layout.elevations[number];
    let (frame, style) = (Frame::of(e), layout.job.sheet.lengths);
    let pieces = |w: &LaidWall| -> usize {
        w.courses.iter().flat_map(|c| &c.runs).map(|r| r.pieces.len()).sum()
    };
    let count: usize = e.walls.iter().map(pieces).sum();
    let mut out = format!(
        "<svg class=\"view\" viewBox=\"0 0 {} {}\" role=\"img\" aria-label=\"{}\" tabindex=\"0\">",
        n(frame.width),
        n(frame.height),
        escaped(&words::picture(&e.name, count)),
    );
    out.push_str(&behind(&frame, backdrops, number));
    let _ = write!(out, "<path class=\"grade\" d=\"{}\"/>", frame.line(&e.grade, false));
    for w in &e.walls {
        out.push_str(&wall(&frame, w, style));
    }
    out.push_str(&trims(&frame, layout, e));
    out + "</svg>"
}

/// The source's own lines, as many as the page can carry.
fn behind(frame: &Frame, backdrops: &Backdrops, number: usize) -> String {
    let mut left = MOST_BEHIND;
    let mut d = String::new();
    for line in backdrops.behind(number) {
        let Some(rest) = left.checked_sub(line.points.len()) else { break };
        left = rest;
        let points: Vec<Xy> = line.points.iter().map(|p| [p.x, p.y]).collect();
        d.push_str(&frame.line(&points, line.closed));
    }
    format!("<path class=\"source\" d=\"{d}\"/>")
}

fn wall(frame: &Frame, w: &LaidWall, style: LengthStyle) -> String {
    let mut out = format!("<path class=\"wall\" d=\"{}\"/>", frame.ring(&w.outline));
    for c in &w.courses {
        for p in c.runs.iter().flat_map(|r| &r.pieces) {
            out.push_str(&piece(frame, p, c.index + 1, style));
        }
    }
    for o in &w.openings {
        let _ = write!(out, "<path class=\"openings\" d=\"{}\"/>", frame.ring(&o.outline));
        let name = o.id.rsplit('-').next().unwrap_or_default();
        let (x, y) = frame.at(&[(o.left + o.right) / 2.0, (o.sill + o.head) / 2.0]);
        let _ =
            write!(out, "<text class=\"openings\" x=\"{x}\" y=\"{y}\">{}</text>", escaped(name));
    }
    for o in &w.obstacles {
        let _ = write!(out, "<path class=\"openings\" d=\"{}\"/>", frame.ring(&o.outline));
    }
    out
}

/// A piece with its length, which stands on it where it is long enough.
fn piece(frame: &Frame, p: &Piece, course: i32, style: LengthStyle) -> String {
    let rings = std::iter::once(&p.outline).chain(&p.holes).chain(&p.more);
    let d: String = rings.map(|ring| frame.ring(ring)).collect();
    let told = length(style, style.to_cut(p.length));
    let mark = escaped(&p.mark);
    let mut out = format!(
        "<path class=\"pc\" id=\"m-{mark}\" data-mark=\"{mark}\" data-course=\"{course}\" d=\"{d}\"><title>{}</title></path>",
        escaped(&words::piece(&p.mark, &told)),
    );
    let ys = p.outline.iter().map(|q| q[1]);
    let (low, high) =
        (ys.clone().fold(f64::INFINITY, f64::min), ys.fold(f64::NEG_INFINITY, f64::max));
    let (letters, middle) = (told.chars().count() as f64, (low + high) / 2.0);
    let (x, room) = free(p, middle);
    let size = LETTERS.min(0.6 * (high - low)).min(room / (WIDE * (letters + 1.0)));
    if size > 0.4 {
        let (x, y) = frame.at(&[x, middle - 0.36 * size]);
        let _ = write!(
            out,
            "<text class=\"lengths\" x=\"{x}\" y=\"{y}\" font-size=\"{}\">{}</text>",
            n(size),
            escaped(&told)
        );
    }
    out
}

/// The widest part of a piece half way up it, where no hole and no notch parts it: its middle and its width.
fn free(p: &Piece, y: f64) -> (f64, f64) {
    let rings = std::iter::once(&p.outline).chain(&p.holes).chain(&p.more);
    let sides = rings.flat_map(|r| r.iter().zip(r.iter().cycle().skip(1)));
    let mut crossed: Vec<f64> = sides
        .filter(|(a, b)| (a[1] > y) != (b[1] > y))
        .map(|(a, b)| a[0] + (y - a[1]) / (b[1] - a[1]) * (b[0] - a[0]))
        .collect();
    crossed.sort_by(f64::total_cmp);
    let spans = crossed.chunks_exact(2).map(|s| ((s[0] + s[1]) / 2.0, s[1] - s[0]));
    spans.max_by(|a, b| a.1.total_cmp(&b.1)).unwrap_or(((p.x0 + p.x1) / 2.0, 0.0))
}

fn trims(frame: &Frame, layout: &Layout, e: &LaidElevation) -> String {
    let (style, boards) = (layout.job.sheet.lengths, !layout.job.siding().receivers.has_pockets());
    let walls: BTreeSet<&str> = e.walls.iter().map(|w| w.id.as_str()).collect();
    let mut out = String::from("<g class=\"trims\">");
    let mine =
        layout.trims.iter().filter(|t| t.elevation == e.name && walls.contains(t.wall.as_str()));
    for t in mine {
        let points = if t.path.is_empty() { vec![t.from, t.to] } else { t.path.clone() };
        // Flashing lies under the siding.
        let class = if t.kind.stock() == TrimStock::Flashing { "under" } else { "over" };
        let told = words::piece(&t.mark, &trim::piece_on(Language::English, t, style, boards));
        let d = frame.line(&points, false);
        let _ = write!(
            out,
            "<path class=\"{class}\" d=\"{d}\"><title>{}</title></path>",
            escaped(&told)
        );
    }
    out + "</g>"
}
