//! Title, scale bar, key of line types and match lines.

use super::view::View;
use crate::annotate::canvas::{Canvas, fitted};
use crate::annotate::place::text_box;
use crate::annotate::style::{Ink, TEXT, TITLE};
use crate::geom::vocabulary::{Point, Rect, Vec2};
use crate::job::paper::Scale;
use crate::language::{Said, SheetLanguage};
use crate::layout::Layout;
use crate::units::LengthStyle;
use crate::wording::legend;
use crate::wording::sheet_lengths::{length, unit_note};

/// How far upright match lines run over walls, with their words over them still in the room that walls have.
const OVER: f64 = 0.22;
/// Distance of rows of the key.
const ROW: f64 = 0.17;

/// Title with scale and scale bar, at the foot of an area.
pub(in crate::annotate) fn title(
    c: &mut Canvas,
    name: &str,
    scale: &Scale,
    layout: &Layout,
    area: Rect,
) {
    let say = layout.job.sheet.language;
    let y = area.y0 + 0.12;
    let name = fitted(name, TITLE, true, area.width());
    let mut x = area.x0 + c.left(&name, TITLE, true, Point::new(area.x0, y)) + 0.25;
    // The title block says the scale too.
    if x + crate::typeface::width(&scale.words, TEXT, false) > area.x1 {
        return;
    }
    x += c.left(&scale.words, TEXT, false, Point::new(x, y)) + 0.3;
    let style = layout.job.sheet.lengths;
    let part = bar_part(style, scale.factor);
    let len = part / scale.factor;
    let words = say.line(|lang| {
        legend::scale_bar(lang, &length(style, 4.0 * part), layout.drawing.unit_proved)
    });
    // The title block says as much where there is no room.
    if x + 4.0 * len + 0.08 + crate::typeface::width(&words, TEXT, false) > area.x1 {
        return;
    }
    for i in 0..4 {
        let left = x + f64::from(i) * len;
        let r = Rect::new(left, y - 0.03, left + len, y + 0.03);
        c.rect(if i % 2 == 0 { Ink::Solid } else { Ink::Dimension }, r);
        c.rect(Ink::Dimension, r);
    }
    x += 4.0 * len + 0.08;
    x += c.left(&words, TEXT, false, Point::new(x, y)) + 0.3;
    let note = unit_note(style);
    if x + crate::typeface::width(&say.word(note), TEXT, false) < area.x1 {
        c.left(&say.word(note), TEXT, false, Point::new(x, y));
    }
}

/// One of the four parts of a scale bar: a round length about half an inch on paper.
fn bar_part(style: LengthStyle, factor: f64) -> f64 {
    let round: [f64; 9] = match style {
        LengthStyle::Feet => [1.0, 2.0, 3.0, 6.0, 12.0, 24.0, 48.0, 96.0, 192.0],
        LengthStyle::Mm => [25.0, 50.0, 100.0, 200.0, 500.0, 1000.0, 2000.0, 5000.0, 10000.0]
            .map(|mm: f64| mm / 25.4),
    };
    round.into_iter().find(|r| r / factor >= 0.4).unwrap_or(192.0)
}

enum Sign {
    Line(Ink),
    Lap,
    Frame,
}

const KEY: [(Sign, Said); 15] = [
    (Sign::Line(Ink::Wall), legend::LIMIT_OF_SIDING),
    (Sign::Line(Ink::Course), legend::PANEL_EDGE),
    (Sign::Line(Ink::Seam), legend::SEAM),
    (Sign::Lap, legend::LAP),
    (Sign::Line(Ink::Post), legend::CORNER_POSTS),
    (Sign::Line(Ink::Starter), legend::STARTER),
    (Sign::Line(Ink::Channel), legend::CHANNELS),
    (Sign::Line(Ink::DripCap), legend::DRIP_CAP),
    (Sign::Line(Ink::Finish), legend::UNDERSILL),
    (Sign::Line(Ink::Board), legend::TRIM_BOARDS),
    (Sign::Line(Ink::Level), legend::FLOOR_REFERENCE),
    (Sign::Line(Ink::Grade), legend::GRADE),
    (Sign::Line(Ink::Source), legend::SOURCE),
    (Sign::Frame, legend::TRIM_MARK),
    (Sign::Line(Ink::Match), legend::MATCH_LINE),
];

const KEY_OF_BOARDS: [(Sign, Said); 12] = [
    (Sign::Line(Ink::Wall), legend::LIMIT_OF_SIDING),
    (Sign::Line(Ink::Course), legend::BOARD_EDGE),
    (Sign::Line(Ink::Seam), legend::JOINT),
    (Sign::Line(Ink::Post), legend::CORNER_BOARDS),
    (Sign::Line(Ink::Starter), legend::STARTER_PIECE),
    (Sign::Line(Ink::DripCap), legend::DRIP_CAP),
    (Sign::Line(Ink::Board), legend::TRIM_BOARDS),
    (Sign::Line(Ink::Level), legend::FLOOR_REFERENCE),
    (Sign::Line(Ink::Grade), legend::GRADE),
    (Sign::Line(Ink::Source), legend::SOURCE),
    (Sign::Frame, legend::TRIM_MARK),
    (Sign::Line(Ink::Match), legend::MATCH_LINE),
];

fn width(words: &str) -> f64 {
    0.46 + crate::typeface::width(words, TEXT, false) + 0.22
}

/// Rows of the key in a width: the items of each.
fn rows(say: SheetLanguage, room: f64, boards: bool) -> Vec<Vec<(&'static Sign, String)>> {
    let key: &'static [(Sign, Said)] = if boards { &KEY_OF_BOARDS } else { &KEY };
    let mut out: Vec<Vec<(&'static Sign, String)>> = Vec::new();
    let mut used = f64::INFINITY;
    for (sign, words) in key {
        let words = say.word(*words);
        let w = width(&words);
        if used + w > room {
            out.push(Vec::new());
            used = 0.0;
        }
        used += w;
        if let Some(row) = out.last_mut() {
            row.push((sign, fitted(&words, TEXT, false, room - 0.5)));
        }
    }
    out
}

/// Height that the key takes at the foot of a page.
pub(in crate::annotate) fn key_height(say: SheetLanguage, room: f64, boards: bool) -> f64 {
    0.1 + rows(say, room, boards).len() as f64 * ROW
}

/// The key of lines and signs, at the foot of a page.
pub(in crate::annotate) fn key(c: &mut Canvas, say: SheetLanguage, area: Rect, boards: bool) {
    let rows = rows(say, area.width(), boards);
    for (j, row) in rows.iter().rev().enumerate() {
        let y = area.y0 + 0.1 + j as f64 * ROW;
        let mut x = area.x0;
        for (sign, words) in row {
            draw(c, sign, Point::new(x, y));
            let w = c.left(words, TEXT, false, Point::new(x + 0.46, y));
            x += 0.46 + w + 0.22;
        }
    }
}

fn draw(c: &mut Canvas, sign: &Sign, at: Point) {
    let end = at + Vec2::new(0.4, 0.0);
    match sign {
        Sign::Line(ink) => c.line(*ink, at, end),
        Sign::Lap => {
            let foot = at + Vec2::new(0.2, -0.03);
            c.line(Ink::Seam, foot, foot + Vec2::new(0.0, 0.1));
            c.ring(Ink::Solid, &[foot, foot + Vec2::new(0.0, 0.06), foot + Vec2::new(0.07, 0.0)]);
        }
        Sign::Frame => {
            c.rect(Ink::Frame, Rect::from_center_size(at + Vec2::new(0.2, 0.0), (0.34, 0.11)));
        }
    }
}

/// Match lines on the sides where the next sheet goes on.
pub(super) fn match_lines(c: &mut Canvas, v: &View, next: &dyn Fn(i32, i32) -> Option<usize>) {
    let say = v.say;
    let p = v.paper();
    let sides = [
        ((-1, 0), Point::new(p.x0, p.y0 - 0.25), Point::new(p.x0, p.y1 + OVER)),
        ((1, 0), Point::new(p.x1, p.y0 - 0.25), Point::new(p.x1, p.y1 + OVER)),
        ((0, -1), Point::new(p.x0 - 0.2, p.y0), Point::new(p.x1 + 0.2, p.y0)),
        ((0, 1), Point::new(p.x0 - 0.2, p.y1), Point::new(p.x1 + 0.2, p.y1)),
    ];
    for ((dx, dy), a, b) in sides {
        let Some(part) = next(dx, dy) else { continue };
        c.firm(Ink::Match, a, b);
        let words = say.line(|lang| legend::match_line(lang, part));
        let w = crate::typeface::width(&words, TEXT, false) / 2.0;
        let wish = if dx != 0 {
            b + Vec2::new(-f64::from(dx) * (w + 0.06), 0.09)
        } else {
            a.midpoint(b) + Vec2::new(0.0, 0.12 * f64::from(dy))
        };
        let over = (0..12).map(|i| wish + Vec2::new(0.0, 0.15 * f64::from(i)));
        let under = Point::new(wish.x, a.y - 0.09);
        let mut spots = over.chain((dx != 0).then_some(under));
        let at = spots.find(|p| c.placer.free(&text_box(&words, TEXT, true, *p)));
        if let Some(at) = at {
            c.centered(&words, TEXT, true, at);
        }
    }
}
