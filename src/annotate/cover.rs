//! The cover: totals, the proof, what was assumed, what is open, cautions.

use std::collections::BTreeMap;

use super::canvas::{Canvas, fitted};
use super::flow::Flow;
use super::page::{Page, room};
use super::style::{TEXT, TITLE};
use super::{key_plan, profile};
use crate::finding::lines::LineCode;
use crate::finding::{Audience, FindingCode, Severity};
use crate::geom::vocabulary::{Point, Rect};
use crate::layout::Layout;
use crate::model::conflict::{Break, Conflict};
use crate::wording::findings::message;
use crate::wording::proof;
use crate::wording::takeoff::items;
use crate::wording::{cautions, checks, cover, pole, report, seams, sheets, siding};

/// A line of the cover's columns.
enum Row {
    Head(&'static str),
    Text(String),
    Count { item: String, count: String, unit: String },
}

/// The cover, with an index of the sheets that follow by their titles.
pub(super) fn sheets(layout: &Layout, titles: &[String]) -> Vec<Page> {
    // How many sheets the cover takes moves the numbers in its index, and nothing else.
    let first = made(layout, titles, 2);
    match first.len() {
        1 => first,
        n => made(layout, titles, n + 1),
    }
}

/// The cover, the sheets that follow numbered from `next`.
fn made(layout: &Layout, titles: &[String], next: usize) -> Vec<Page> {
    let area = room(layout);
    let mut c = Canvas::new(area);
    let t = &layout.job.title;
    let name = if t.project.is_empty() { layout.drawing.name.clone() } else { t.project.clone() };
    let big = TITLE;
    let shown = fitted(&name, big, true, area.width() * 0.6);
    c.left(&shown, big, true, Point::new(area.x0, area.y1 - 0.15));
    let under = sheets::cover_subtitle(&layout.drawing.name, layout.zone.as_deref());
    let shown = fitted(&under, TEXT, false, area.width() * 0.6);
    c.left(&shown, TEXT, false, Point::new(area.x0, area.y1 - 0.45));
    let top = area.y1 - 0.62;
    let tall = (area.height() * 0.25).min(2.8);
    let part = (area.width() * 0.25).min(4.2);
    let plan = Rect::new(area.x0, top - tall, area.x1 - part - 0.3, top - 0.16);
    let section = Rect::new(area.x1 - part, top - tall, area.x1, top - 0.16);
    for (r, words) in [(plan, cover::KEY_PLAN), (section, cover::PROFILE)] {
        let words = fitted(words, TEXT, true, r.width());
        c.left(&words, TEXT, true, Point::new(r.x0, top - 0.04));
    }
    c.placer.area = plan;
    key_plan::draw(&mut c, layout, plan);
    c.placer.area = area;
    profile::draw(&mut c, layout, section);
    c.finish_marks();
    let top = top - tall - 0.15;
    let mut flow = Flow::new(area, c, top, sheets::COVER_CONTINUED);
    let mut all = Vec::new();
    verdict(layout, &mut all);
    index(titles, next, &mut all);
    revisions(layout, &mut all);
    all.extend(rows(layout));
    for row in all {
        match row {
            Row::Head(h) => flow.head(h),
            Row::Text(t) => flow.text(&t),
            Row::Count { item, count, unit } => flow.count(&item, &count, &unit),
        }
    }
    let pages = flow.done().into_iter().enumerate();
    pages
        .map(|(i, canvas)| Page {
            name: if i == 0 { "cover".to_owned() } else { format!("cover-{}", i + 1) },
            title: if i == 0 {
                sheets::COVER.to_owned()
            } else {
                sheets::title(sheets::COVER, false)
            },
            description: sheets::cover_description(&layout.drawing.name),
            scale: sheets::NTS.to_owned(),
            canvas,
        })
        .collect()
}

/// Most places listed on the cover; the report holds more.
const MOST_PLACES: usize = 300;

/// Where the check failed, and what it proves that no layout avoids.
fn verdict(layout: &Layout, out: &mut Vec<Row>) {
    let (verify, style) = (&layout.verify, layout.job.sheet.lengths);
    if !verify.passes() {
        out.push(Row::Head(checks::PLACES));
        out.push(Row::Text(checks::bar(verify.places())));
        let listed = verify.numbered().take(MOST_PLACES);
        let words = |(n, v)| format!("{}: {}.", checks::mark(n), checks::in_full(v, style));
        out.extend(listed.map(words).map(Row::Text));
        if let Some(more) = verify.places().checked_sub(MOST_PLACES).filter(|n| *n > 0) {
            out.push(Row::Text(checks::and_more(more)));
        }
    }
    let proven = verify.unavoidable().count();
    if proven > 0 {
        out.push(Row::Head(checks::NO_LAYOUT));
        out.push(Row::Text(checks::unavoidable(proven)));
        let conflicts =
            layout.bound.conflicts.iter().flat_map(|c| c.breaks.iter().map(move |b| (c, b)));
        let words = |(c, b): (&Conflict, &Break)| {
            report::break_at(&b.mark, &c.elevation, &seams::fault(&b.fault, style))
        };
        out.extend(conflicts.take(MOST_PLACES).map(words).map(Row::Text));
    }
}

fn rows(layout: &Layout) -> Vec<Row> {
    let kind = layout.job.product.kind;
    let mut out = Vec::new();
    out.push(Row::Head(siding::pieces_heading(kind)));
    let text = |out: &mut Vec<Row>, t: String| out.push(Row::Text(t));
    text(&mut out, siding::in_short(&layout.job));
    let b = &layout.bound;
    let job = &layout.job;
    let said = [proof::panels(b, job), proof::method(b, job), proof::beside(b, job)];
    said.into_iter()
        .chain(proof::other_policy(b, job))
        .chain(proof::other_courses(b, job))
        .for_each(|t| text(&mut out, t));
    let zones = layout.elevations.iter().flat_map(|e| &e.zones);
    let mut measured: BTreeMap<(&str, &str, bool), f64> = BTreeMap::new();
    for z in zones {
        *measured.entry((&z.zone, siding::cladding(z), z.laid_out)).or_default() += z.net_area;
    }
    if !measured.is_empty() {
        out.push(Row::Head(cover::OTHER_CLADDING));
    }
    for ((zone, cladding, laid_out), area) in measured {
        let style = layout.job.sheet.lengths;
        text(&mut out, cover::zone(zone, cladding, laid_out, area, style));
    }
    out.push(Row::Head(checks::SECTION));
    text(&mut out, checks::summary(&layout.verify.rules));
    out.push(Row::Head(cover::TO_ORDER));
    for l in &layout.takeoff {
        let hundredths = |v: f64| (v * 100.0).round() / 100.0;
        let count = if l.order > 0.0 {
            format!("{}", hundredths(l.order))
        } else {
            format!("({})", hundredths(l.net))
        };
        let item = items::item(&l.item, layout.job.sheet.lengths);
        out.push(Row::Count { item, count, unit: items::unit(l.unit).to_owned() });
    }
    text(&mut out, cover::counts(layout.job.sold_singly()).to_owned());
    out.push(Row::Head(cover::ASSUMED));
    assumed(layout, &mut out);
    to_act(layout, &mut out);
    out.push(Row::Head(cover::CAUTIONS));
    out.extend(cautions::all(kind).into_iter().map(|c| Row::Text(c.to_owned())));
    out
}

/// Open questions for the architect, then what office and crew must act on.
fn to_act(layout: &Layout, out: &mut Vec<Row>) {
    let style = layout.job.sheet.lengths;
    for (audience, head) in [
        (Audience::Architect, cover::OPEN_QUESTIONS),
        (Audience::Office, cover::FOR_OFFICE),
        (Audience::Crew, cover::FOR_CREW),
    ] {
        let open = layout
            .findings
            .iter()
            .filter(|f| f.severity() >= Severity::Warning && f.audience() == audience);
        let open: Vec<String> = open.map(|f| message(f, style)).collect();
        // That nothing is asked of the architect is worth a line; of the others not.
        if open.is_empty() && audience != Audience::Architect {
            continue;
        }
        out.push(Row::Head(head));
        if open.is_empty() {
            let none = cover::NO_QUESTIONS;
            out.push(Row::Text(none.to_owned()));
        }
        let numbered = open.iter().enumerate().map(|(i, m)| format!("{}. {m}", i + 1));
        out.extend(numbered.map(Row::Text));
    }
}

/// What was taken for granted, with what the reader noted on its way.
fn assumed(layout: &Layout, out: &mut Vec<Row>) {
    let d = &layout.drawing;
    let style = layout.job.sheet.lengths;
    out.push(Row::Text(cover::unit(d)));
    out.push(Row::Text(pole::datum(
        layout.datum,
        &layout.datum_reason,
        &layout.story_pole.divisions,
        style,
    )));
    out.push(Row::Text(siding::edges_as_drawn(&layout.job)));
    out.push(Row::Text(cover::WIDTHS.to_owned()));
    // The unit is told above, with whether anything proves it.
    let noted = layout.findings.iter().filter(|f| f.severity() < Severity::Warning);
    let noted = noted.filter(|f| f.code() != FindingCode::Lines(LineCode::UnitTaken));
    out.extend(noted.map(|f| Row::Text(message(f, style))));
}

/// The sheets that follow, by their titles; those that follow one another with one title, or whose titles differ
/// in a part alone, are one line.
fn index(titles: &[String], first: usize, out: &mut Vec<Row>) {
    let mut lines: Vec<(&str, usize, usize)> = Vec::new();
    for (i, title) in titles.iter().enumerate() {
        let (name, number) = (sheets::in_index(title), first + i);
        match lines.last_mut() {
            Some((last, _, end)) if *last == name => *end = number,
            _ => lines.push((name, number, number)),
        }
    }
    out.push(Row::Head(cover::SHEETS));
    let line = |(name, from, to): (&str, usize, usize)| Row::Count {
        item: name.to_owned(),
        count: cover::sheet_numbers(from, to),
        unit: String::new(),
    };
    out.extend(lines.into_iter().map(line));
}

/// What has been issued, as the job says it.
fn revisions(layout: &Layout, out: &mut Vec<Row>) {
    let t = &layout.job.title;
    if t.revision.is_empty() && t.date.is_empty() {
        return;
    }
    out.push(Row::Head(cover::REVISIONS));
    out.push(Row::Text(cover::revision(&t.revision, &t.date, &t.drawn_by)));
}
