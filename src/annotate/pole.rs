//! The story pole: every butt line of the house on one stick with its height over the floor reference line,
//! and beside it what else stands at which height (`LayoutFact::StoryPole`); with it what holds on every
//! wall.

use super::canvas::{Canvas, wrapped};
use super::columns::{Rows, count, tops_under, width};
use super::cut_list::heading;
use super::page::{Orientation, Page, room};
use super::scale::fit;
use super::style::{Ink, TEXT, TITLE};
use super::{pole_table, work};
use crate::geom::vocabulary::{Point, Rect};
use crate::language::Said;
use crate::layout::Layout;
use crate::model::pole::{LineKind, PoleLine};
use crate::wording::pole::line;
use crate::wording::sheet_lengths::length;
use crate::wording::sheets;

/// Distance of the stick from the left of its column.
const STICK: f64 = 0.75;
/// Its width on paper.
const WIDE: f64 = 0.22;
/// Distance of the lines beside it.
const LEADING: f64 = TEXT * 1.55;

/// The sheets of the story pole and of what holds on every wall.
pub(super) fn sheets(layout: &Layout) -> Vec<Page> {
    let say = layout.job.sheet.language;
    let area = room(layout);
    let mut c = Canvas::new(area);
    let head = sheets::STORY_POLE;
    let style = layout.job.sheet.lengths;
    let about = say.block(|lang| sheets::story_pole(lang, layout.datum, style));
    let top = heading(&mut c, area, say, (head, true), &about);
    // Under a heading of several lines there is less room.
    let under = Rect::new(area.x0, area.y0, area.x1, top + 0.4);
    let scale = stick(&mut c, layout, under);
    let mut rows = Rows::new(area);
    pole_table::rows(&mut rows, layout);
    work::rows(&mut rows, layout);
    // The stick has the first column, and all its height; on one column its lists follow on the next page.
    let tops = tops_under(under, area.x0 + width(area) * 0.9, area.y0);
    let tops = [if count(area) == 1 { vec![area.y0] } else { tops }];
    let next = || {
        let mut c = Canvas::new(area);
        let title = say.line(|lang| sheets::title(lang, head.of(lang), false));
        c.left(&title, TITLE, true, Point::new(area.x0, area.y1 - 0.12));
        c
    };
    let pages = rows.draw(area, &tops, vec![c], next).into_iter().enumerate();
    pages
        .map(|(i, canvas)| Page {
            orientation: Orientation::Landscape,
            name: format!("story-pole-{}", i + 1),
            title: head.into(),
            description: say.word(sheets::STORY_POLE_DESCRIPTION),
            scale: if i == 0 { scale.clone() } else { say.word(sheets::NTS) },
            canvas,
        })
        .collect()
}

/// The stick with its marks; the scale it is drawn at.
fn stick(c: &mut Canvas, layout: &Layout, area: Rect) -> String {
    let say = layout.job.sheet.language;
    let courses: Vec<_> = layout.walls().flat_map(|(_, w)| &w.courses).collect();
    let low = courses.iter().map(|k| k.bottom).fold(f64::INFINITY, f64::min);
    let high = courses.iter().map(|k| k.top).fold(f64::NEG_INFINITY, f64::max);
    if low >= high {
        return say.word(sheets::NTS);
    }
    let room = (area.width(), area.height() - 0.55);
    let s = fit((1.0, high - low), room, layout.job.sheet.lengths);
    let y = |h: f64| area.y0 + 0.1 + (h - low) / s.factor;
    let x = area.x0 + STICK;
    c.rect(Ink::Wall, Rect::new(x, y(low), x + WIDE, y(high)));
    butts(c, layout, (low, high), x, &y, s.factor);
    others(c, layout, (x + WIDE + 0.45, area.y1 - 0.34), &y);
    s.words
}

fn butts(
    c: &mut Canvas,
    layout: &Layout,
    span: (f64, f64),
    x: f64,
    y: &impl Fn(f64) -> f64,
    factor: f64,
) {
    let exposure = layout.job.product.limits().0;
    let first = layout.course_at(span.0);
    let count = layout.course_at(span.1) - first;
    let every = ((TEXT * 1.5) / (exposure / factor)).ceil().max(1.0) as i32;
    for i in 0..=count {
        let at = layout.butt(first + i);
        c.line(Ink::Course, Point::new(x, y(at)), Point::new(x + WIDE, y(at)));
        if i % every == 0 {
            let words = length(layout.job.sheet.lengths, at);
            c.right(&words, TEXT, false, Point::new(x - 0.06, y(at)));
            if i < count {
                let middle = y((at + layout.butt(first + i + 1)) / 2.0);
                let words = format!("{}", first + i + 1);
                c.centered(&words, TEXT, true, Point::new(x + WIDE + 0.14, middle));
            }
        }
    }
}

/// Starts, heads, sills and tops, once for each height; the table beside says whose they are.
fn others(c: &mut Canvas, layout: &Layout, (x, top): (f64, f64), y: &impl Fn(f64) -> f64) {
    let say = layout.job.sheet.language;
    let style = layout.job.sheet.lengths;
    let mut lines: Vec<&PoleLine> =
        layout.story_pole.lines.iter().filter(|l| l.kind != LineKind::Butt).collect();
    lines.sort_by(|a, b| a.height.total_cmp(&b.height));
    let mut rows: Vec<(f64, Vec<Said>)> = Vec::new();
    for l in lines {
        let name = line(l.kind);
        match rows.last_mut() {
            Some((h, names)) if (*h - l.height).abs() < 0.01 => {
                if !names.contains(&name) {
                    names.push(name);
                }
            }
            _ => rows.push((l.height, vec![name])),
        }
    }
    // The lowest stays over the area's edge with its last line.
    let mut last = c.placer.area.y0 - LEADING / 2.0;
    for (h, names) in rows {
        let at = y(h);
        let words = format!(
            "{}  {}",
            length(style, h),
            say.line(|lang| {
                let names: Vec<&str> = names.iter().map(|n| n.of(lang)).collect();
                names.join(", ")
            })
        );
        let lines = wrapped(&words, TEXT, width(c.placer.area) - STICK - 0.9);
        let row = at.max(last + LEADING * lines.len() as f64);
        if row > top {
            break;
        }
        c.line(Ink::Dimension, Point::new(x, at), Point::new(x + 0.12, at));
        c.line(Ink::Dimension, Point::new(x + 0.12, at), Point::new(x + 0.2, row));
        for (i, line) in lines.iter().enumerate() {
            c.left(line, TEXT, false, Point::new(x + 0.24, row - LEADING * i as f64));
        }
        last = row;
    }
}
