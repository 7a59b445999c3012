//! What the sheets of one wall are made of, and how its drawing stands on them.

use crate::annotate::canvas::{Canvas, Look, Mark};
use crate::annotate::columns::{Rows, left_of_lists, tops_under};
use crate::annotate::elevation::round;
use crate::annotate::elevation::view::{View, extent, top};
use crate::annotate::elevation::{LeftOff, Shown, Shows, labels};
use crate::annotate::elevation_index::AtElevation;
use crate::annotate::page::Orientation;
use crate::geom::vocabulary::{Affine, Point, Rect};
use crate::job::paper::Scale;
use crate::language::{Phrase, SheetLanguage};
use crate::layout::Layout;
use crate::layout::wall::{LaidElevation, LaidWall};
use crate::wording::sheets as sheet_words;

/// Height of a sheet's heading.
pub(super) const HEAD: f64 = 0.28;
/// Room between a drawing and what stands under it.
pub(super) const UNDER: f64 = 0.12;

/// What the sheets of one wall are made of.
pub(super) struct Made<'a> {
    pub(super) layout: &'a Layout,
    /// The elevation with this wall alone.
    pub(super) alone: LaidElevation,
    pub(super) on: AtElevation<'a>,
    pub(super) house: Rect,
    /// From its foot to grade, elevation inches.
    pub(super) drop: f64,
    pub(super) prefix: &'a str,
    pub(super) title: Phrase,
    pub(super) rows: Rows,
    pub(super) shows: Shows,
    /// Paper room that the drawing takes round the wall.
    pub(super) round: Rect,
    pub(super) orientation: Orientation,
}

/// An elevation with one of its walls, and the zones beside it.
pub(super) fn alone(e: &LaidElevation, w: &LaidWall) -> LaidElevation {
    let mut one = LaidElevation { walls: vec![w.clone()], zones: Vec::new(), ..e.clone() };
    let house = extent(&one);
    let near = |z: &&crate::layout::wall::LaidZone| {
        let points = z.outline.iter().flatten();
        points.into_iter().any(|p| house.contains(Point::new(p[0], p[1])))
    };
    one.zones = e.zones.iter().filter(near).cloned().collect();
    one
}

/// Size of the drawing on paper at a scale, with what stands round it.
pub(super) fn block(m: &Made, factor: f64) -> (f64, f64) {
    let r = m.round;
    let high = m.house.height() + m.drop;
    (m.house.width() / factor + r.x0 + r.x1, high / factor + r.y0 + r.y1)
}

/// Where the lists begin beside and under the drawing.
pub(super) fn tops(m: &Made, area: Rect, factor: f64) -> Vec<f64> {
    let (w, h) = block(m, factor);
    tops_under(area, area.x0 + w, area.y1 - HEAD - h - UNDER)
}

/// Where the drawing of a wall may stand: as far right as no list does.
pub(super) fn body(m: &Made, area: Rect, factor: f64) -> Rect {
    let (w, h) = block(m, factor);
    let bottom = area.y1 - HEAD - h;
    Rect::new(area.x0, bottom, left_of_lists(area, area.x0 + w), area.y1 - HEAD)
}

/// A part of the wall without the sky over it: where its walls end lower than the whole, a course over them.
pub(super) fn without_sky(m: &Made, window: Rect) -> Rect {
    let course = m.layout.job.product.exposure;
    let top = top(&m.alone, window) + course;
    let highest = window.y1 >= m.house.y1;
    if highest && top + course < window.y1 { Rect { y1: top, ..window } } else { window }
}

/// Paper room that the drawing of a part takes round it.
pub(super) fn round_part(m: &Made, window: Rect) -> Rect {
    let own = round::wall(&m.alone, window, m.layout.job.sheet.lengths);
    Rect { y0: own.y0, ..m.round }
}

/// The map that puts a window's lower left corner, with so much room round it, at a corner of its block.
pub(super) fn view(m: &Made, (window, round): (Rect, Rect), corner: Point, factor: f64) -> View {
    let k = 1.0 / factor;
    let foot = if window.y0 <= m.house.y0 { m.drop * k } else { 0.0 };
    let map = Affine::translate((corner.x + round.x0, corner.y + foot + round.y0))
        * Affine::scale(k)
        * Affine::translate((-window.x0, -window.y0));
    View {
        map,
        factor,
        window,
        house: m.house,
        style: m.layout.job.sheet.lengths,
        say: m.layout.job.sheet.language,
    }
}

pub(super) fn shown<'a>(m: &'a Made, shows: Shows) -> Shown<'a> {
    Shown { layout: m.layout, elevation: &m.alone, behind: &[], on: &m.on, shows }
}

/// A sheet of the wall with its heading.
pub(super) fn begun(m: &Made, area: Rect, scale: &Scale, title: &Phrase) -> Canvas {
    let say = m.layout.job.sheet.language;
    let mut c = Canvas::new(area);
    let line = Rect::new(area.x0, area.y1 - 0.22, area.x1, area.y1);
    labels::title(&mut c, &say.name(title), scale, m.layout, line);
    c
}

/// Marks last, and what found no room.
pub(super) fn finish(say: SheetLanguage, c: &mut Canvas, area: Rect, left: LeftOff) {
    c.placer.area = area;
    let mut said = Vec::new();
    said.extend(
        (left.marks > 0).then(|| say.line(|lang| sheet_words::marks_left_off(lang, left.marks))),
    );
    said.extend(
        (left.names > 0).then(|| say.line(|lang| sheet_words::failed_left_off(lang, left.names))),
    );
    for words in said {
        let wish = Point::new(area.x1 - 2.5, area.y1 - 0.1);
        let m = Mark { text: &words, target: wish, wish, reach: 12.0, look: Look::Bare };
        c.mark(m);
    }
    c.finish_marks();
}
