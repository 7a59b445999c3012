//! The order of work, wall by wall, to be read on a ladder.

use super::canvas::Canvas;
use super::cut_list::heading;
use super::flow::Flow;
use super::page::{Page, room};
use crate::layout::Layout;
use crate::wording::{cautions, movement, nails, sheets, work};

pub(super) fn sheets(layout: &Layout) -> Vec<Page> {
    if layout.work.walls.is_empty() {
        return Vec::new();
    }
    let area = room(layout);
    let mut c = Canvas::new(area);
    let words = sheets::order_of_work();
    heading(&mut c, area, sheets::ORDER_OF_WORK, &words);
    let style = layout.job.sheet.lengths;
    let mut flow = Flow::new(area, c, area.y1 - 0.4, sheets::ORDER_OF_WORK_CONTINUED);
    flow.head(sheets::ON_EVERY_WALL);
    for rule in &layout.work.everywhere {
        flow.text(&format!("- {}", work::rule(rule, style)));
    }
    for w in &layout.work.walls {
        flow.head(&format!("{}: {}", w.wall, w.elevation));
        for (i, step) in work::steps(w, style).iter().enumerate() {
            flow.text(&format!("{}. {step}", i + 1));
        }
    }
    flow.head(sheets::FASTENERS_AND_MOVEMENT);
    let movement = movement::sentences(&layout.movement, layout.job.sheet.lengths);
    for line in nails::sentences(&layout.fastening, &layout.job).iter().chain(&movement) {
        flow.text(&format!("- {line}"));
    }
    flow.head(sheets::BEFORE_YOU_CLIMB);
    for c in cautions::BEFORE_CLIMBING {
        flow.text(c);
    }
    let pages = flow.done().into_iter().enumerate();
    pages
        .map(|(i, canvas)| Page {
            name: format!("order-of-work-{}", i + 1),
            title: sheets::ORDER_OF_WORK.to_owned(),
            description: sheets::ORDER_OF_WORK_DESCRIPTION.to_owned(),
            scale: sheets::NTS.to_owned(),
            canvas,
        })
        .collect()
}
