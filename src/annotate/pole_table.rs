//! The story pole as a table, and the datum with what else could be.

use super::canvas::Canvas;
use super::cut_list::heading;
use super::flow::Flow;
use super::page::{Page, room};
use crate::layout::Layout;
use crate::model::pole::{LineKind, PoleLine};
use crate::wording::pole as words;
use crate::wording::sheet_lengths::{length, short};
use crate::wording::sheets;

/// Distances of the table's columns.
const COURSE: f64 = 0.85;
const OVER: f64 = 1.35;
const WHAT: f64 = 2.05;

pub(super) fn sheets(layout: &Layout) -> Vec<Page> {
    if layout.story_pole.lines.is_empty() {
        return Vec::new();
    }
    let area = room(layout);
    let mut c = Canvas::new(area);
    let about = sheets::story_pole_table(layout.job.sheet.lengths);
    heading(&mut c, area, sheets::STORY_POLE_TABLE, &about);
    let mut flow = Flow::new(area, c, area.y1 - 0.45, sheets::STORY_POLE_TABLE_CONTINUED);
    choices(&mut flow, layout);
    table(&mut flow, layout);
    let pages = flow.done().into_iter().enumerate();
    pages
        .map(|(i, canvas)| Page {
            name: format!("story-pole-table-{}", i + 1),
            title: sheets::STORY_POLE_TABLE.to_owned(),
            description: sheets::STORY_POLE_TABLE_DESCRIPTION.to_owned(),
            scale: sheets::NTS.to_owned(),
            canvas,
        })
        .collect()
}

fn choices(flow: &mut Flow, layout: &Layout) {
    let pole = &layout.story_pole;
    flow.head("Datum");
    flow.text(&words::search(pole));
    let style = layout.job.sheet.lengths;
    for c in &pole.choices {
        flow.text(&words::choice(c, &length(style, c.datum), layout.reworked(), style));
    }
    flow.text(words::STRIKE);
}

fn table(flow: &mut Flow, layout: &Layout) {
    let style = layout.job.sheet.lengths;
    flow.head(sheets::LINES_TOP_DOWN);
    flow.cells(&[(0.0, "height"), (COURSE, "course"), (OVER, "over butt"), (WHAT, "what")], true);
    let all = layout.elevations.len();
    for l in layout.story_pole.lines.iter().rev() {
        let height = length(style, l.height);
        let course = l.course.to_string();
        let over = if l.over == 0.0 { String::new() } else { short(style, l.over) };
        let what = what(l, all);
        flow.cells(&[(0.0, &height), (COURSE, &course), (OVER, &over), (WHAT, &what)], false);
    }
}

fn what(l: &PoleLine, all: usize) -> String {
    let belongs = match l.kind {
        LineKind::Butt if l.elevations.len() == all && all > 1 => "all elevations".to_owned(),
        LineKind::Butt => l.elevations.join(", "),
        _ => l.names.join(", "),
    };
    format!("{}: {belongs}", words::line(l.kind))
}
