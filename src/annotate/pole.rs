//! The story pole: every butt line, sill, head and top of the house on one stick
//! (`LayoutFact::StoryPole`).

use super::canvas::Canvas;
use super::page::{Page, room};
use super::scale::fit;
use super::style::{HEADING, Ink, TEXT};
use crate::geom::vocabulary::{Point, Rect};
use crate::layout::Layout;
use crate::layout::wall::LaidElevation;
use crate::model::house::EdgeKind;
use crate::model::pole::LineKind;
use crate::wording::pole::line;
use crate::wording::sheet_lengths::length;
use crate::wording::sheets;

pub(super) fn sheet(layout: &Layout) -> Page {
    let area = room(layout);
    let mut c = Canvas::new(area);
    c.left(sheets::STORY_POLE, HEADING, true, Point::new(area.x0, area.y1 - 0.12));
    c.left(
        &sheets::story_pole(layout.datum, layout.job.sheet.lengths),
        TEXT,
        false,
        Point::new(area.x0 + 1.3, area.y1 - 0.12),
    );
    let courses: Vec<_> = layout.walls().flat_map(|(_, w)| &w.courses).collect();
    let low = courses.iter().map(|k| k.bottom).fold(f64::INFINITY, f64::min);
    let high = courses.iter().map(|k| k.top).fold(f64::NEG_INFINITY, f64::max);
    let mut scale = sheets::NTS.to_owned();
    if low < high {
        let s = fit((1.0, high - low), (area.width(), area.height() - 0.8), &layout.job.sheet);
        let y = |h: f64| area.y0 + 0.2 + (h - low) / s.factor;
        let x = area.x0 + 1.6;
        c.rect(Ink::Wall, Rect::new(x, y(low), x + 0.22, y(high)));
        butts(&mut c, layout, (low, high), x, &y, s.factor);
        columns(
            &mut c,
            layout,
            x + 1.1,
            (area.x1 - x - 1.2) / layout.elevations.len().max(1) as f64,
            &y,
        );
        scale = s.words;
    }
    Page {
        name: "story-pole".to_owned(),
        title: sheets::STORY_POLE.to_owned(),
        description: sheets::STORY_POLE_DESCRIPTION.to_owned(),
        scale,
        canvas: c,
    }
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
        c.line(Ink::Course, Point::new(x, y(at)), Point::new(x + 0.22, y(at)));
        if i % every == 0 {
            c.right(
                &length(layout.job.sheet.lengths, at),
                TEXT,
                false,
                Point::new(x - 0.08, y(at)),
            );
            if i < count {
                c.centered(
                    &format!("{}", first + i + 1),
                    TEXT,
                    true,
                    Point::new(x + 0.36, y((at + layout.butt(first + i + 1)) / 2.0)),
                );
            }
        }
    }
}

fn columns(c: &mut Canvas, layout: &Layout, x0: f64, width: f64, y: &impl Fn(f64) -> f64) {
    let style = layout.job.sheet.lengths;
    for (i, e) in layout.elevations.iter().enumerate() {
        let x = x0 + i as f64 * width;
        let rows = heights_of(e);
        let top = c.placer.area.y1 - 0.42;
        c.left(
            &super::canvas::fitted(&e.name, TEXT, true, width - 0.1),
            TEXT,
            true,
            Point::new(x, top),
        );
        let mut last = f64::NEG_INFINITY;
        for (h, names) in rows {
            let at = y(h);
            let row = at.max(last + TEXT * 1.55);
            if row > top - 0.12 {
                break;
            }
            c.line(Ink::Dimension, Point::new(x, at), Point::new(x + 0.12, at));
            c.line(Ink::Dimension, Point::new(x + 0.12, at), Point::new(x + 0.2, row));
            let words = format!("{}  {names}", length(style, h));
            let lines = super::canvas::wrapped(&words, TEXT, width - 0.35);
            // Upwards, so that the first line stands at its height.
            for (i, l) in lines.iter().rev().enumerate() {
                last = row + i as f64 * TEXT * 1.55;
                c.left(l, TEXT, false, Point::new(x + 0.24, last));
            }
        }
    }
}

/// Heights that matter on an elevation, from the lowest up, with what stands there.
fn heights_of(e: &LaidElevation) -> Vec<(f64, String)> {
    let mut marks: Vec<(f64, String)> = Vec::new();
    for w in &e.walls {
        for o in &w.openings {
            let name = o.id.rsplit('-').next().unwrap_or(&o.id);
            marks.push((o.head, format!("{name} head")));
            marks.push((o.sill, format!("{name} sill")));
        }
        for s in w.edges.iter().filter(|s| s.opening.is_none() && (s.from[1] - s.to[1]).abs() < 0.1)
        {
            let what = match s.kind {
                EdgeKind::Base => "start",
                EdgeKind::BareTop => line(LineKind::StoneTop),
                EdgeKind::BareBottom => "band",
                EdgeKind::Eave => "soffit",
                EdgeKind::LowerRoof => "lower roof",
                _ => continue,
            };
            marks.push((s.from[1], what.to_owned()));
        }
    }
    marks.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
    marks.dedup_by(|a, b| a.0 == b.0 && a.1 == b.1);
    // One line of text for each height, names joined.
    let mut rows: Vec<(f64, String)> = Vec::new();
    for (h, name) in marks {
        match rows.last_mut() {
            Some(last) if (last.0 - h).abs() < 0.01 => last.1 = format!("{}, {name}", last.1),
            _ => rows.push((h, name)),
        }
    }
    rows
}
