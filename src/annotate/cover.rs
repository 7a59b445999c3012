//! The cover: totals, the proof, what was assumed, what is open, cautions.

use std::collections::BTreeMap;

use super::canvas::{Canvas, fitted};
use super::elevation::view::{View, extent};
use super::flow::Flow;
use super::page::{Page, room};
use super::style::{HEADING, Ink, TEXT};
use crate::finding::lines::LineCode;
use crate::finding::{Audience, FindingCode, Severity};
use crate::geom::vocabulary::{Affine, Point, Rect};
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

pub(super) fn sheets(layout: &Layout) -> Vec<Page> {
    let area = room(layout);
    let mut c = Canvas::new(area);
    let t = &layout.job.title;
    let name = if t.project.is_empty() { layout.drawing.name.clone() } else { t.project.clone() };
    let big = HEADING * 1.6;
    let shown = fitted(&name, big, true, area.width() * 0.6);
    c.left(&shown, big, true, Point::new(area.x0, area.y1 - 0.15));
    let under = sheets::cover_subtitle(&layout.drawing.name, layout.zone.as_deref());
    let shown = fitted(&under, TEXT, false, area.width() * 0.6);
    c.left(&shown, TEXT, false, Point::new(area.x0, area.y1 - 0.45));
    let top = area.y1 - 0.62;
    let tall = (area.height() * 0.3).min(2.8);
    small_elevations(&mut c, layout, Rect::new(area.x0, top - tall, area.x1, top));
    let top = top - tall - 0.15;
    let mut flow = Flow::new(area, c, top, sheets::COVER_CONTINUED);
    for row in rows(layout) {
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
    verdict(layout, &mut out);
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

fn small_elevations(c: &mut Canvas, layout: &Layout, area: Rect) {
    let n = layout.elevations.len().max(1);
    let cell = area.width() / n as f64;
    let boxes: Vec<Rect> = layout.elevations.iter().map(extent).collect();
    let widest = boxes.iter().map(Rect::width).fold(1.0, f64::max);
    let tallest = boxes.iter().map(Rect::height).fold(1.0, f64::max);
    let k = ((cell - 0.4) / widest).min((area.height() - 0.5) / tallest);
    for (i, (e, b)) in layout.elevations.iter().zip(&boxes).enumerate() {
        let left = area.x0 + (i as f64 + 0.5) * cell - b.width() * k / 2.0;
        let map = Affine::translate((left, area.y0 + 0.42))
            * Affine::scale(k)
            * Affine::translate((-b.x0, -b.y0));
        let (style, house) = (layout.job.sheet.lengths, *b);
        let v = View { map, factor: 1.0 / k, window: house, house, style };
        for w in &e.walls {
            let pieces = w.courses.iter().flat_map(|k| &k.runs).flat_map(|r| &r.pieces);
            for p in pieces {
                c.ring(Ink::Rule, &v.points(&p.outline));
            }
            c.ring(Ink::Opening, &v.points(&w.outline));
            for o in &w.openings {
                c.ring(Ink::Opening, &v.points(&o.outline));
            }
        }
        let net: f64 = e.walls.iter().map(|w| w.net_area).sum();
        let area_words =
            format!("{} {} net", (style.area(net) * 100.0).round() / 100.0, style.area_unit());
        let at = Point::new(area.x0 + (i as f64 + 0.5) * cell, area.y0 + 0.1);
        c.centered(&fitted(&area_words, TEXT, false, cell - 0.2), TEXT, false, at);
        let name = fitted(&e.name, TEXT, true, cell - 0.2);
        c.centered(&name, TEXT, true, Point::new(at.x, area.y0 + 0.26));
    }
}
