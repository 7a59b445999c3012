//! A drawing as the content of a page: strokes and words, each layer marked as one of the file's.

use std::fmt::Write as _;

use crate::geom::vocabulary::{Affine, Point};
use crate::model::drawing::{Across, Dash, Dimension, Drawing, Item, Pen, Shape, Text, Up};
use crate::units::MM_PER_INCH;

/// Points to the inch.
const POINTS: f64 = 72.0;
/// Height of capitals of the font to its size, and its mean width of a letter (font metrics of the first
/// of the standard fonts, from memory).
const CAPITALS: f64 = 0.718;
const LETTER: f64 = 0.556;
/// Half of a tick across the end of a dimension line, as a share of the text's height.
const TICK: f64 = 0.5;

/// How a drawing is put on a page.
pub(super) struct Placed<'a> {
    /// From the drawing to the page.
    pub(super) map: Affine,
    /// Widths of pens on the page to those on a plot.
    pub(super) thin: f64,
    /// Height of the texts of dimensions, units of the drawing.
    pub(super) text: f64,
    /// What a dimension reads, by the units it measures.
    pub(super) reads: &'a dyn Fn(f64) -> String,
}

/// What is drawn of some items, layer by layer; `name` gives each layer's name among the page's.
pub(super) fn content(
    drawing: &Drawing,
    items: &[&Item],
    placed: &Placed,
    name: impl Fn(usize) -> String,
) -> Vec<u8> {
    let mut out = String::new();
    for (i, layer) in drawing.layers.iter().enumerate() {
        let mine: Vec<&&Item> = items.iter().filter(|item| item.layer == i).collect();
        if mine.is_empty() {
            continue;
        }
        let _ = write!(out, "/OC /{} BDC\nq\n", name(i));
        out += &pen(&layer.pen, placed.thin);
        for item in mine {
            out += &shape(&item.shape, placed);
        }
        out += "Q\nEMC\n";
    }
    out.into_bytes()
}

fn pen(pen: &Pen, thin: f64) -> String {
    let width = pen.width / MM_PER_INCH * POINTS * thin;
    let [r, g, b] = pen.color.map(|c| f64::from(c) / 255.0);
    let dash = |parts: &[f64]| {
        let parts: Vec<String> = parts.iter().map(|p| figure(p * POINTS * thin)).collect();
        format!("[{}] 0 d\n", parts.join(" "))
    };
    let line = match pen.dash {
        Dash::Solid => dash(&[]),
        Dash::Dashed => dash(&[0.12, 0.06]),
        Dash::DashDot => dash(&[0.25, 0.05, 0.02, 0.05]),
        Dash::DashDotDot => dash(&[0.25, 0.05, 0.02, 0.05, 0.02, 0.05]),
        Dash::Dotted => dash(&[0.02, 0.04]),
    };
    let color = [r, g, b].map(figure).join(" ");
    format!("{} w\n{color} RG\n{color} rg\n1 J 1 j\n{line}", figure(width))
}

fn shape(shape: &Shape, placed: &Placed) -> String {
    match shape {
        Shape::Polyline(line) => {
            let points: Vec<Point> = line.vertices.iter().map(|v| v.at).collect();
            path(&points, line.closed, placed)
        }
        Shape::Text(text) => words(text, placed),
        Shape::Dimension(dimension) => measured(dimension, placed),
        // The overlay has none of these.
        Shape::Curve(_) | Shape::Hatch(_) | Shape::Point(_) => String::new(),
    }
}

fn path(points: &[Point], closed: bool, placed: &Placed) -> String {
    let mut out = String::new();
    for (i, p) in points.iter().enumerate() {
        let p = placed.map * *p;
        let _ = writeln!(out, "{} {} {}", figure(p.x), figure(p.y), if i == 0 { "m" } else { "l" });
    }
    out + if closed { "s\n" } else { "S\n" }
}

/// A number as a PDF has it: no exponent.
fn figure(v: f64) -> String {
    if !v.is_finite() {
        return "0".to_owned();
    }
    let text = format!("{v:.4}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

fn words(text: &Text, placed: &Placed) -> String {
    let size = text.height / CAPITALS;
    let long = LETTER * size * text.content.chars().count() as f64;
    let left = match text.across {
        Across::Left => 0.0,
        Across::Center => -long / 2.0,
        Across::Right => -long,
    };
    let low = match text.up {
        Up::Baseline => 0.0,
        Up::Middle => -text.height / 2.0,
        Up::Top => -text.height,
    };
    let flip = if text.mirrored { -1.0 } else { 1.0 };
    let own = Affine::translate(text.at.to_vec2())
        * Affine::rotate(text.angle.to_radians())
        * Affine::scale_non_uniform(flip, 1.0)
        * Affine::translate((left, low));
    let [a, b, c, d, e, f] = (placed.map * own).as_coeffs().map(figure);
    format!(
        "BT\n/LwF {} Tf\n{a} {b} {c} {d} {e} {f} Tm\n({}) Tj\nET\n",
        figure(size),
        escaped(&text.content)
    )
}

/// Letters of the Latin code page, brackets and strokes marked; others as a question mark.
fn escaped(text: &str) -> String {
    let mut out = String::new();
    for c in text.chars() {
        match c {
            '(' | ')' | '\\' => {
                out.push('\\');
                out.push(c);
            }
            ' '..='~' => out.push(c),
            '\u{2032}' | '\u{2019}' => out.push('\''),
            '\u{2033}' | '\u{201d}' => out.push('"'),
            '\u{2013}' | '\u{2212}' => out.push('-'),
            '\u{a0}'..='\u{ff}' => {
                let _ = write!(out, "\\{:03o}", u32::from(c));
            }
            _ => out.push('?'),
        }
    }
    out
}

/// A dimension: its line between ticks, and what it measures over the middle.
fn measured(d: &Dimension, placed: &Placed) -> String {
    let along = match d.angle {
        Some(angle) => crate::geom::vocabulary::Vec2::from_angle(angle.to_radians()),
        None => (d.to - d.from).normalize(),
    };
    let on_line = |p: Point| d.line + along * (p - d.line).dot(along);
    let (a, b) = (on_line(d.from), on_line(d.to));
    let length = (b - a).hypot();
    if !(length.is_finite() && length > 0.0) {
        return String::new();
    }
    let slant = (along + along.turn_90()) * (TICK * placed.text);
    let mut out = path(&[a, b], false, placed);
    for end in [a, b] {
        out += &path(&[end - slant, end + slant], false, placed);
    }
    let reading = if (-90.1..=89.9).contains(&along.atan2().to_degrees()) { 1.0 } else { -1.0 };
    let up = along.turn_90() * reading * (0.4 * placed.text);
    let content = d.text.clone().unwrap_or_else(|| (placed.reads)(length));
    out + &words(
        &Text {
            at: a.midpoint(b) + up,
            height: placed.text,
            angle: (along * reading).atan2().to_degrees(),
            mirrored: false,
            content,
            across: Across::Center,
            up: Up::Baseline,
            bold: false,
        },
        placed,
    )
}
