//! The sheets of a revision: what it changes and what that does as a table, then the elevations and the walls it
//! changes, each change in its cloud.

use super::canvas::Canvas;
use super::flow::Flow;
use super::page::{Orientation, Page, finish, room};
use super::style::{Ink, TITLE};
use crate::geom::vocabulary::Point;
use crate::job::revision::Revision;
use crate::language::{Language, Phrase};
use crate::layout::Layout;
use crate::model::change::{Comparison, OrderChange};
use crate::model::sheet::Sheet;
use crate::units::LengthStyle;
use crate::wording::takeoff::items;
use crate::wording::{compare as words, compare_tables as heads, sheets as sheet_words};

/// The layout as the sheets of a revision show it: its letter in the title block, its line in the table there.
pub(super) fn titled(layout: &Layout, c: &Comparison) -> Layout {
    let mut out = layout.clone();
    out.laid.job.title.revision.clone_from(&c.revision);
    if !out.job.revision.iter().any(|r| r.letter == c.revision) {
        let what = words::in_table(c.changes.len());
        let (letter, date) = (c.revision.clone(), c.date.clone());
        out.laid.job.revision.push(Revision { letter, date, what });
    }
    out
}

/// The table of what is changed, and what that does.
pub(super) fn table(layout: &Layout, c: &Comparison) -> Vec<Page> {
    let style = layout.job.sheet.lengths;
    let area = room(layout);
    let mut canvas = Canvas::new(area);
    canvas.left(words::SHEET_TITLE, TITLE, true, Point::new(area.x0, area.y1 - 0.12));
    let mut flow = Flow::new(area, canvas, area.y1 - 0.3, words::SHEET_TITLE.to_owned());
    flow.head(words::CHANGES);
    flow.text(&format!("{}.", words::revision(&c.revision, &c.date)));
    flow.text(&words::drawing(heads::DRAWINGS[0], &c.old.name, &c.old.sha256));
    flow.text(&words::drawing(heads::DRAWINGS[1], &c.new.name, &c.new.sha256));
    c.remarks.iter().for_each(|r| flow.text(&words::remark(r)));
    if c.changes.is_empty() {
        flow.text(words::NOTHING);
    }
    let mut at = None;
    for change in &c.changes {
        let here = change.elevation.as_ref().map(|e| e.to_string()).unwrap_or_default();
        if at.as_ref() != Some(&here) {
            flow.head(&here.clone().to_uppercase());
            at = Some(here);
        }
        flow.text(&format!("{}. {}", change.number, words::change(change, style)));
    }
    flow.text(words::CLOUDS);
    flow.text(&words::datum(c.datum, style));
    for (title, sign) in [(words::MORE, 1.0), (words::OVER, -1.0)] {
        let of: Vec<&OrderChange> = c.orders.iter().filter(|o| o.more * sign > 0.0).collect();
        if !of.is_empty() {
            flow.head(title);
            of.iter().for_each(|o| order(&mut flow, o, style));
        }
    }
    flow.text(&words::panels(c.panels, layout.job.product.kind.piece()));
    flow.text(words::BEFORE_ORDERING);
    let canvases = flow.done();
    let page = |(i, canvas): (usize, Canvas)| Page {
        orientation: Orientation::Landscape,
        name: if i == 0 { "revisions".to_owned() } else { format!("revisions-{}", i + 1) },
        // What a revision changes is told in English alone.
        title: Phrase::new(|_| sheet_words::title(Language::English, words::SHEET_TITLE, i == 0)),
        description: words::sheet_description(c.changes.len()),
        scale: sheet_words::NTS.en.to_owned(),
        canvas,
    };
    canvases.into_iter().enumerate().map(page).collect()
}

fn order(flow: &mut Flow, o: &OrderChange, style: LengthStyle) {
    let count = format!("{:.2}", o.more.abs());
    let count = count.strip_suffix(".00").map(str::to_owned).unwrap_or(count);
    flow.count(&items::item(Language::English, &o.item, style), &count, items::unit(o.unit).en);
}

/// Whether a page shows a cloud.
pub(super) fn is_clouded(page: &Page) -> bool {
    let layers = page.canvas.drawing.layers.iter();
    layers.filter(|l| l.name == Ink::Cloud.layer()).count() > 0
}

/// Numbered, in their border.
pub(super) fn finished(pages: Vec<Page>, layout: &Layout) -> Vec<Sheet> {
    let count = pages.len();
    pages.into_iter().enumerate().map(|(i, p)| finish(p, layout, i + 1, count)).collect()
}
