//! The profile of the siding: a section through two courses, marked typical.

use super::canvas::Canvas;
use super::style::{Ink, TEXT};
use crate::geom::vocabulary::{Point, Rect, Vec2};
use crate::layout::Layout;
use crate::wording::{cover, siding};

/// How far a butt edge stands out, and a face's head, as shares of a face's height: typical, not to scale.
const BUTT: f64 = 0.16;
const HEAD: f64 = 0.05;

/// Draws it in a box.
pub(super) fn draw(c: &mut Canvas, layout: &Layout, area: Rect) {
    let say = layout.job.sheet.language;
    let product = &layout.job.product;
    let style = layout.job.sheet.lengths;
    let faces = product.faces.max(1);
    let over = product.over_face(product.exposure);
    let whole = 2.0 * product.exposure + over;
    let k = (area.height() - 0.1) / whole.max(1e-6);
    let x = area.x0 + 0.55;
    let wall = |h: f64| Point::new(x, area.y0 + 0.05 + h * k);
    c.line(Ink::Wall, wall(0.0), wall(whole));
    let face = product.exposure / f64::from(faces);
    for course in 0..2 {
        let foot = f64::from(course) * product.exposure;
        let mut line: Vec<Point> = Vec::new();
        for i in 0..faces {
            let low = foot + f64::from(i) * face;
            let out = |share: f64| Vec2::new(face * share * k, 0.0);
            line.push(wall(low) + out(HEAD));
            line.push(wall(low) + out(BUTT));
            line.push(wall(low + face) + out(HEAD));
        }
        let top = foot + product.exposure;
        line.push(wall(top + over) + Vec2::new(face * HEAD * k * 0.6, 0.0));
        if product.has_foam() {
            let mut foam = line.clone();
            foam.push(wall(top));
            foam.push(wall(foot));
            c.ring(Ink::Offcut, &foam[..foam.len()]);
        }
        c.chain(Ink::Opening, &line);
    }
    let right = x + face * BUTT * k + 0.18;
    let level = |c: &mut Canvas, (low, high): (f64, f64), words: &str| {
        let at = |h: f64| Point::new(right, wall(h).y);
        for h in [low, high] {
            let tick = Vec2::new(0.05, 0.0);
            c.line(Ink::Dimension, at(h) - tick, at(h) + tick);
        }
        c.line(Ink::Dimension, at(low), at(high));
        c.left(words, TEXT, false, at(low).midpoint(at(high)) + Vec2::new(0.1, 0.0));
    };
    let exposure = say.line(|lang| cover::exposure(lang, &style.short(product.exposure)));
    level(c, (0.0, product.exposure), &exposure);
    let hem = cover::over_face(&say.word(siding::over_face(product.system())), &style.short(over));
    level(c, (2.0 * product.exposure, whole), &hem);
}
