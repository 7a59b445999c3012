//! Rulers along the picture: where it is in the drawing, in the units that findings tell places in, so that a
//! place is found, and two ends of a known length are read off.

use crate::annotate::canvas::Canvas;
use crate::annotate::place::text_box;
use crate::annotate::style::{Ink, TEXT};
use crate::geom::vocabulary::{Affine, Point, Rect};
use crate::real::Real;

/// Figures stand no nearer than this on the page, inches.
const APART: f64 = 1.2;
/// Lengths of marks with figures, and of those between, inches.
const LONG: f64 = 0.12;
const SHORT: f64 = 0.06;
/// Marks from figure to figure.
const PARTS: i64 = 10;

/// Draws rulers at the foot and at the left side of what is shown; `map` brings it onto the page.
pub(super) fn rulers(canvas: &mut Canvas, window: Rect, map: Affine, scale: f64) {
    let Some(step) = step(APART / scale) else { return };
    let part = step / PARTS as f64;
    let marks = |from: f64, to: f64| (from / part).ceil() as i64..=(to / part).floor() as i64;
    let length = |k: i64| if k % PARTS == 0 { LONG } else { SHORT };
    for k in marks(window.x0, window.x1) {
        let at = map * Point::new(k as f64 * part, window.y0);
        canvas.line(Ink::Rule, at, Point::new(at.x, at.y + length(k)));
        if k % PARTS == 0 {
            let text = figure(k / PARTS, step);
            figure_at(canvas, &text, Point::new(at.x, at.y + LONG + TEXT));
        }
    }
    // At the corner the figures of the foot stand.
    for k in marks(window.y0, window.y1) {
        let at = map * Point::new(window.x0, k as f64 * part);
        canvas.line(Ink::Rule, at, Point::new(at.x + length(k), at.y));
        let clear = (at.y - (map * window.origin()).y) > 4.0 * TEXT;
        if k % PARTS == 0 && clear {
            let text = figure(k / PARTS, step);
            let wide = text.len() as f64 * TEXT * 0.6;
            figure_at(canvas, &text, Point::new(at.x + LONG + 0.06 + wide / 2.0, at.y));
        }
    }
}

/// A figure, but not at a circle, where it would be taken for its number.
fn figure_at(canvas: &mut Canvas, text: &str, at: Point) {
    if canvas.placer.clear(&text_box(text, TEXT, false, at)) {
        canvas.on_ground(text, TEXT, at);
    }
}

/// The least of 1, 2 and 5 times a power of ten that is no less; none where there is no such length.
fn step(least: f64) -> Option<f64> {
    if !(1e-9..1e12).contains(&least) {
        return None;
    }
    let power = 10f64.powi(least.decimal_log().floor() as i32);
    [1.0, 2.0, 5.0, 10.0].into_iter().map(|n| n * power).find(|s| *s >= least * (1.0 - 1e-9))
}

/// So many steps, without digits that say nothing.
fn figure(steps: i64, step: f64) -> String {
    let digits = (-step.decimal_log().floor()).clamp(0.0, 9.0) as usize;
    format!("{:.digits$}", steps as f64 * step)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn steps_are_round_and_figures_short() {
        assert_eq!([0.7, 1.0, 11.0, 30.0, 60.0].map(step), [1.0, 1.0, 20.0, 50.0, 100.0].map(Some));
        assert_eq!(figure(3, 0.2), "0.6");
        assert_eq!(figure(-2, 500.0), "-1000");
        assert_eq!(step(0.0), None);
    }
}
