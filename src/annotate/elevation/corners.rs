//! Corners whose other wall no elevation shows: asked for on the sheet; corners that are not square.

use super::view::View;
use crate::annotate::canvas::{Canvas, Look, Mark};
use crate::annotate::elevation_index::AtElevation;
use crate::geom::vocabulary::Vec2;
use crate::model::corner::Hand;
use crate::wording::legend;

/// Lower corners are ends of bands and steps, not worth a mark, inches.
const LEAST: f64 = 12.0;

pub(super) fn open(c: &mut Canvas, on: &AtElevation, v: &View) {
    for side in &on.open {
        let y = side.low + (side.high - side.low) * 0.62;
        if side.high - side.low < LEAST || !v.holds(side.at(y), y) {
            continue;
        }
        let target = v.at(side.at(y), y);
        let out = if side.side == Hand::Left { -0.5 } else { 0.5 };
        let wish = target + Vec2::new(out, 0.0);
        let text = legend::RETURN_WIDTH;
        c.mark(Mark { text: &v.say.word(text), target, wish, reach: 3.0, look: Look::Dotted });
    }
}

/// The angle of corners that are not square, for whoever orders and sets their posts.
pub(super) fn turned(c: &mut Canvas, on: &AtElevation, v: &View) {
    let say = v.say;
    for (side, angle) in &on.turned {
        let y = side.low + (side.high - side.low) * 0.38;
        if side.high - side.low < LEAST || !v.holds(side.at(y), y) {
            continue;
        }
        let target = v.at(side.at(y), y);
        let out = if side.side == Hand::Left { -0.5 } else { 0.5 };
        let wish = target + Vec2::new(out, 0.0);
        let text = &say.line(|lang| legend::post_angle(lang, *angle));
        c.mark(Mark { text, target, wish, reach: 3.0, look: Look::Dotted });
    }
}
