//! Openings with their names and sizes, and fixtures.

use super::view::View;
use crate::annotate::canvas::{Canvas, Look, Mark};
use crate::annotate::place::text_box;
use crate::annotate::style::{Ink, TEXT};
use crate::geom::vocabulary::{Point, Vec2};
use crate::language::Said;
use crate::layout::wall::{LaidOpening, LaidWall};
use crate::model::house::OpeningKind;
use crate::wording::legend;
use crate::wording::sheet_lengths::length;

/// Distance of lines of text in an opening.
const LINE: f64 = 0.15;

pub(super) fn outlines(c: &mut Canvas, w: &LaidWall, v: &View) {
    for f in &w.fillers {
        let [x0, y0, x1, y1] = f.place;
        c.ring(Ink::Board, &v.points(&[[x0, y0], [x1, y0], [x1, y1], [x0, y1]]));
    }
    for ring in w.openings.iter().map(|o| &o.outline).chain(w.obstacles.iter().map(|o| &o.outline))
    {
        c.firm_ring(Ink::Opening, &v.points(ring));
    }
}

fn kind(o: &LaidOpening) -> Said {
    match o.kind {
        OpeningKind::Window => legend::WINDOW,
        OpeningKind::Door => legend::DOOR,
        OpeningKind::OverheadDoor => legend::OVERHEAD_DOOR,
        OpeningKind::Vent => legend::VENT,
    }
}

/// Names of openings, with their sizes; in an overview names alone.
pub(super) fn names(c: &mut Canvas, w: &LaidWall, v: &View, overview: bool) {
    for o in &w.openings {
        let middle = ((o.left + o.right) / 2.0, (o.sill + o.head) / 2.0);
        if !v.holds(middle.0, middle.1) {
            continue;
        }
        let name = o.id.rsplit('-').next().unwrap_or(&o.id);
        let (wide, high) = (length(v.style, o.right - o.left), length(v.style, o.head - o.sill));
        // The fullest form that fits between the jambs: width before height, as call sizes are
        // read.
        let forms: [Vec<String>; 5] = [
            vec![format!("{name} {}", v.say.word(kind(o))), format!("{wide} x {high}")],
            vec![name.to_owned(), format!("{wide} x {high}")],
            vec![name.to_owned(), wide.clone(), format!("x {high}")],
            vec![name.to_owned(), wide.clone(), "x".to_owned(), high.clone()],
            vec![format!("{name} {wide} x {high}")],
        ];
        let center = v.at(middle.0, middle.1);
        if overview {
            let lines = [name.to_owned()];
            if !inside(c, o, v, &lines, center) {
                let wish = v.at(middle.0, o.head) + Vec2::new(0.0, 0.2);
                c.mark(Mark { text: name, target: center, wish, reach: 4.0, look: Look::Dotted });
            }
            continue;
        }
        if !forms.iter().any(|lines| inside(c, o, v, lines, center)) {
            // No room between the jambs: beside or above, with a leader.
            let text = &forms[4][0];
            let wish = v.at(middle.0, o.head) + Vec2::new(0.0, 0.2);
            c.mark(Mark { text, target: center, wish, reach: 4.0, look: Look::Dotted });
        }
    }
}

/// Writes lines about the middle of an opening where they fit; marks of its trim need the rest.
fn inside(c: &mut Canvas, o: &LaidOpening, v: &View, lines: &[String], center: Point) -> bool {
    let room = ((o.right - o.left) / v.factor, (o.head - o.sill) / v.factor);
    let widest = lines.iter().map(|l| crate::typeface::width(l, TEXT, false)).fold(0.0, f64::max);
    let tall = lines.len() as f64 * LINE;
    if widest + 0.1 > room.0 || tall + 0.02 > room.1 {
        return false;
    }
    let place = |i: usize| {
        center + Vec2::new(0.0, (lines.len() as f64 - 1.0) / 2.0 * LINE - i as f64 * LINE)
    };
    let free = |(i, l): (usize, &String)| c.placer.free(&text_box(l, TEXT, i == 0, place(i)));
    if !lines.iter().enumerate().all(free) {
        return false;
    }
    for (i, l) in lines.iter().enumerate() {
        c.centered(l, TEXT, i == 0, place(i));
    }
    true
}
