//! The cover: totals, the proof, what was assumed, what is open, cautions.

use std::collections::BTreeMap;

use super::canvas::{Canvas, fitted, wrapped};
use super::flow::Flow;
use super::page::{Orientation, Page, orientations, room_in};
use super::style::{TEXT, TITLE};
use super::{key_plan, profile};
use crate::finding::lines::LineCode;
use crate::finding::{Audience, Finding, FindingCode, Severity};
use crate::geom::vocabulary::{Point, Rect};
use crate::language::{Phrase, SheetLanguage};
use crate::layout::Layout;
use crate::model::conflict::{Break, Conflict};
use crate::wording::cover_findings;
use crate::wording::proof;
use crate::wording::takeoff::items;
use crate::wording::{cautions, checks, cover, pole, report, seams, sheets, siding};

/// Distance of lines of a heading.
const LINE: f64 = 0.15;

/// A heading in lines no wider than so much; it is bold, which takes more than plain text.
fn heads(text: &str, room: f64) -> Vec<String> {
    wrapped(text, TEXT, room * 0.93)
}

/// A line of the cover's columns.
enum Row {
    Head(String),
    Text(String),
    Count { item: String, count: String, unit: String },
}

/// The cover, with an index of the sheets that follow by their titles, in the orientation in which it takes the fewest
/// sheets.
pub(super) fn sheets(layout: &Layout, titles: &[Phrase]) -> Vec<Page> {
    let each = orientations(layout).iter().map(|o| {
        // How many sheets the cover takes moves the numbers in its index, and nothing else.
        let first = made(layout, titles, 2, *o);
        match first.len() {
            1 => first,
            n => made(layout, titles, n + 1, *o),
        }
    });
    each.min_by_key(Vec::len).unwrap_or_default()
}

/// The cover, the sheets that follow numbered from `next`.
fn made(layout: &Layout, titles: &[Phrase], next: usize, orientation: Orientation) -> Vec<Page> {
    let say = layout.job.sheet.language;
    let area = room_in(layout, orientation);
    let mut c = Canvas::new(area);
    let t = &layout.job.title;
    let name = if t.project.is_empty() { layout.drawing.name.clone() } else { t.project.clone() };
    let big = TITLE;
    let shown = fitted(&name, big, true, area.width() * 0.6);
    c.left(&shown, big, true, Point::new(area.x0, area.y1 - 0.15));
    let under =
        say.line(|lang| sheets::cover_subtitle(lang, &layout.drawing.name, layout.zone.as_deref()));
    let shown = fitted(&under, TEXT, false, area.width() * 0.6);
    c.left(&shown, TEXT, false, Point::new(area.x0, area.y1 - 0.45));
    let top = area.y1 - 0.62;
    let tall = (area.height() * 0.25).min(2.8);
    let part = (area.width() * 0.25).min(4.2);
    let boxes = [(area.x0, area.x1 - part - 0.3), (area.x1 - part, area.x1)];
    let words = [cover::KEY_PLAN, cover::PROFILE];
    let mut under = 0;
    for ((left, right), words) in boxes.into_iter().zip(words) {
        let lines = heads(&say.sentence(words), right - left);
        for (i, line) in lines.iter().enumerate() {
            c.left(line, TEXT, true, Point::new(left, top - 0.04 - i as f64 * LINE));
        }
        under = under.max(lines.len().saturating_sub(1));
    }
    let high = top - 0.16 - under as f64 * LINE;
    let [plan, section] = boxes.map(|(left, right)| Rect::new(left, top - tall, right, high));
    c.placer.area = plan;
    key_plan::draw(&mut c, layout, plan);
    c.placer.area = area;
    profile::draw(&mut c, layout, section);
    c.finish_marks();
    let top = top - tall - 0.15;
    let mut flow = Flow::new(area, c, top, say.word(sheets::COVER_CONTINUED));
    let mut all = Vec::new();
    verdict(layout, &mut all);
    index(layout.job.sheet.language, titles, next, &mut all);
    revisions(layout, &mut all);
    all.extend(rows(layout));
    for row in all {
        match row {
            Row::Head(h) => flow.head(&h),
            Row::Text(t) => flow.text(&t),
            Row::Count { item, count, unit } => flow.count(&item, &count, &unit),
        }
    }
    let pages = flow.done().into_iter().enumerate();
    pages
        .map(|(i, canvas)| Page {
            orientation,
            name: if i == 0 { "cover".to_owned() } else { format!("cover-{}", i + 1) },
            title: Phrase::new(|lang| sheets::title(lang, sheets::COVER.of(lang), i == 0)),
            description: say.line(|lang| sheets::cover_description(lang, &layout.drawing.name)),
            scale: say.word(sheets::NTS),
            canvas,
        })
        .collect()
}

/// Most places listed on the cover; the report holds more.
const MOST_PLACES: usize = 300;

/// Where the check failed, and what it proves that no layout avoids.
fn verdict(layout: &Layout, out: &mut Vec<Row>) {
    let say = layout.job.sheet.language;
    let (verify, style) = (&layout.verify, layout.job.sheet.lengths);
    if !verify.passes() {
        out.push(Row::Head(say.word(checks::PLACES)));
        out.push(Row::Text(say.block(|lang| checks::bar(lang, verify.places()))));
        let listed = verify.numbered().take(MOST_PLACES);
        let words = |(n, v)| say.block(|lang| checks::numbered(lang, n, v, style));
        out.extend(listed.map(words).map(Row::Text));
        if let Some(more) = verify.places().checked_sub(MOST_PLACES).filter(|n| *n > 0) {
            out.push(Row::Text(say.block(|lang| checks::and_more(lang, more))));
        }
    }
    let proven = verify.unavoidable().count();
    if proven > 0 {
        out.push(Row::Head(say.word(checks::NO_LAYOUT)));
        out.push(Row::Text(say.block(|lang| checks::unavoidable(lang, proven))));
        let conflicts =
            layout.bound.conflicts.iter().flat_map(|c| c.breaks.iter().map(move |b| (c, b)));
        let words = |(c, b): (&Conflict, &Break)| {
            say.block(|lang| {
                let fault = seams::fault(lang, &b.fault, style);
                report::break_at(lang, &b.mark, &c.elevation, &fault)
            })
        };
        out.extend(conflicts.take(MOST_PLACES).map(words).map(Row::Text));
    }
}

fn rows(layout: &Layout) -> Vec<Row> {
    let say = layout.job.sheet.language;
    let kind = layout.job.product.kind;
    let mut out = Vec::new();
    out.push(Row::Head(say.word(siding::pieces_heading(kind))));
    let text = |out: &mut Vec<Row>, t: String| out.push(Row::Text(t));
    text(&mut out, say.block(|lang| siding::in_short(lang, &layout.job)));
    let b = &layout.bound;
    let job = &layout.job;
    let said = [
        say.block(|lang| proof::panels(lang, b, job)),
        say.block(|lang| proof::method(lang, b, job)),
        say.block(|lang| proof::beside(lang, b, job)),
    ];
    said.into_iter()
        .chain(say.blocks(|lang| proof::other_policy(lang, b, job).into_iter().collect()))
        .chain(say.blocks(|lang| proof::other_courses(lang, b, job).into_iter().collect()))
        .for_each(|t| text(&mut out, t));
    let zones = layout.elevations.iter().flat_map(|e| &e.zones);
    let mut measured: BTreeMap<(&str, Phrase, bool), f64> = BTreeMap::new();
    for z in zones {
        let cladding = Phrase::new(|lang| siding::cladding(lang, z).to_owned());
        *measured.entry((&z.zone, cladding, z.laid_out)).or_default() += z.net_area;
    }
    if !measured.is_empty() {
        out.push(Row::Head(say.word(cover::OTHER_CLADDING)));
    }
    for ((zone, cladding, laid_out), area) in measured {
        let style = layout.job.sheet.lengths;
        text(
            &mut out,
            say.block(|lang| cover::zone(lang, zone, cladding.of(lang), laid_out, area, style)),
        );
    }
    out.push(Row::Head(say.word(checks::SECTION)));
    text(&mut out, say.block(|lang| checks::summary(lang, &layout.verify.rules)));
    out.push(Row::Head(say.word(cover::TO_ORDER)));
    for l in &layout.takeoff {
        let hundredths = |v: f64| (v * 100.0).round() / 100.0;
        let (told, count) = if l.order > 0.0 {
            (hundredths(l.order), format!("{}", hundredths(l.order)))
        } else {
            (hundredths(l.net), format!("({})", hundredths(l.net)))
        };
        let unit = if told == 1.0 { items::unit(l.unit) } else { items::units(l.unit) };
        let item = say.block(|lang| items::item(lang, &l.item, layout.job.sheet.lengths));
        out.push(Row::Count { item, count, unit: say.sentence(unit) });
    }
    text(&mut out, say.sentence(cover::counts(layout.job.sold_singly())));
    out.push(Row::Head(say.word(cover::ASSUMED)));
    assumed(layout, &mut out);
    to_act(layout, &mut out);
    out.push(Row::Head(say.word(cover::CAUTIONS)));
    out.extend(cautions::all(kind).into_iter().map(|c| Row::Text(say.sentence(c))));
    out
}

/// Open questions for the architect, then what office and crew must act on.
fn to_act(layout: &Layout, out: &mut Vec<Row>) {
    let say = layout.job.sheet.language;
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
        let open: Vec<&Finding> = open.collect();
        // That nothing is asked of the architect is worth a line; of the others not.
        if open.is_empty() && audience != Audience::Architect {
            continue;
        }
        out.push(Row::Head(say.word(head)));
        if open.is_empty() {
            let none = cover::NO_QUESTIONS;
            out.push(Row::Text(say.sentence(none)));
        }
        for lang in say.each() {
            let told = cover_findings::told(*lang, &open, style);
            let numbered = told.iter().enumerate().map(|(i, m)| format!("{}. {m}", i + 1));
            out.extend(numbered.map(Row::Text));
        }
    }
}

/// What was taken for granted, with what the reader noted on its way.
fn assumed(layout: &Layout, out: &mut Vec<Row>) {
    let say = layout.job.sheet.language;
    let d = &layout.drawing;
    let style = layout.job.sheet.lengths;
    out.push(Row::Text(say.block(|lang| cover::unit(lang, d))));
    out.push(Row::Text(say.block(|lang| {
        pole::datum(lang, layout.datum, &layout.datum_reason, &layout.story_pole.divisions, style)
    })));
    out.push(Row::Text(say.block(|lang| siding::edges_as_drawn(lang, &layout.job))));
    out.push(Row::Text(say.sentence(cover::WIDTHS)));
    // The unit is told above, with whether anything proves it.
    let noted = layout.findings.iter().filter(|f| f.severity() < Severity::Warning);
    let noted = noted.filter(|f| f.code() != FindingCode::Lines(LineCode::UnitTaken));
    let noted: Vec<&Finding> = noted.collect();
    let told = say.each().iter().flat_map(|lang| cover_findings::told(*lang, &noted, style));
    out.extend(told.map(Row::Text));
}

/// The sheets that follow, by their titles; those that follow one another with one title, or whose titles differ
/// in a part alone, are one line.
fn index(say: SheetLanguage, titles: &[Phrase], first: usize, out: &mut Vec<Row>) {
    let mut lines: Vec<(String, usize, usize)> = Vec::new();
    for (i, title) in titles.iter().enumerate() {
        let (name, number) =
            (say.block(|lang| sheets::in_index(lang, title.of(lang)).to_owned()), first + i);
        match lines.last_mut() {
            Some((last, _, end)) if *last == name => *end = number,
            _ => lines.push((name, number, number)),
        }
    }
    out.push(Row::Head(say.word(cover::SHEETS)));
    let line = |(name, from, to): (String, usize, usize)| Row::Count {
        item: name,
        count: say.line(|lang| cover::sheet_numbers(lang, from, to)),
        unit: String::new(),
    };
    out.extend(lines.into_iter().map(line));
}

/// What has been issued, as the job says it.
fn revisions(layout: &Layout, out: &mut Vec<Row>) {
    let say = layout.job.sheet.language;
    let t = &layout.job.title;
    if t.revision.is_empty() && t.date.is_empty() {
        return;
    }
    out.push(Row::Head(say.word(cover::REVISIONS)));
    out.push(Row::Text(cover::revision(&t.revision, &t.date, &t.drawn_by)));
}
