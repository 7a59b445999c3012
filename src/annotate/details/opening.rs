//! Details at openings and mounting blocks.

use super::ground::{self, channel, finish, unit};
use super::section::{Line, Section};
use super::siding::{self, Depths, off};
use crate::annotate::style::Ink;
use crate::geom::vocabulary::{Point, Rect};
use crate::job::{FrameCut, Job};
use crate::wording::sheet_lengths::short;
use crate::wording::{detail_notes as notes, details as words};

/// How far walls and openings go on, past any frame.
const FAR: f64 = 40.0;

/// What stands round the drawn edge of an opening: casing and surround.
fn around(job: &Job) -> f64 {
    job.drawing.casing + job.trim.surround
}

/// Under a window.
pub(super) fn sill(job: &Job) -> Section {
    let say = job.sheet.language;
    let (style, d) = (job.sheet.lengths, Depths::of(job));
    let mut s = Section::new(say, words::SILL, Rect::new(-3.4, -6.4, 4.6, 1.6));
    let wide = around(job);
    let barrier = ground::upright(&mut s, job, (-FAR, wide));
    unit(&mut s, Rect::new(-2.4, wide, d.trim - 0.1, FAR));
    let at = |l: f64, o: f64| Point::new(o, -l);
    if wide > 0.0 {
        let p = ground::trim_board(&mut s, d, (-wide, 0.0), &at);
        s.note(p, say.block(|lang| notes::casing(lang, &short(style, wide))));
    }
    s.line(Ink::Flashing, [Point::new(0.06, -3.0), Point::new(0.06, 0.1), Point::new(-1.6, 0.1)]);
    s.note(Point::new(0.06, -2.2), say.sentence(words::SILL_FLASHING));
    let pockets = job.siding().receivers.has_pockets();
    let clear = if pockets { job.courses.notch_clearance } else { job.end_gap() };
    if pockets {
        let p = channel(&mut s, d, 0.0, job.trim.channel_face, &at);
        s.note(p, say.sentence(words::SILL_CHANNEL));
        let p = finish(&mut s, d, 0.05, &at);
        s.note(off(p, 0.0, -0.1), say.block(|lang| notes::undersill(lang, job)));
    }
    siding::course(&mut s, job, -clear - 4.6, (-FAR, -clear));
    siding::course(&mut s, job, -clear - 4.6 - siding::exposure(job), (-FAR, -clear));
    let ends = [Point::new(d.middle(), 0.0), Point::new(d.middle(), -clear)];
    s.dim(words::OVER_CUT, ends, Line::Across(2.4), short(style, clear));
    s.note(Point::new(d.middle(), -3.4), say.block(|lang| notes::notched(lang, job)));
    s.note(Point::new(barrier.x, -4.6), say.sentence(words::BARRIER));
    s
}

/// Beside an opening, cut along the wall.
pub(super) fn jamb(job: &Job) -> Section {
    let say = job.sheet.language;
    let (style, d) = (job.sheet.lengths, Depths::of(job));
    let mut s = Section::new(say, words::JAMB, Rect::new(-3.0, -4.0, 5.0, 1.8));
    let wide = around(job);
    let at = |l: f64, o: f64| Point::new(l, -o);
    ground::level(&mut s, job, (-wide, FAR), &at);
    unit(&mut s, Rect::new(-FAR, -d.trim + 0.1, -wide, 2.4));
    if wide > 0.0 {
        let p = ground::trim_board(&mut s, d, (-wide, 0.0), &at);
        s.note(p, say.block(|lang| notes::casing(lang, &short(style, wide))));
    }
    s.line(Ink::Flashing, [at(3.2, 0.06), at(-0.1, 0.06), at(-0.1, -1.2)]);
    s.note(at(2.9, 0.06), say.sentence(words::JAMB_FLASHING));
    let gap = job.end_gap();
    if job.siding().receivers.has_pockets() {
        let face = job.trim.channel_face;
        let p = channel(&mut s, d, 0.0, face, &at);
        s.note(p, say.sentence(words::JAMB_CHANNEL));
        let ends = [at(0.0, d.trim), at(face, d.trim)];
        s.dim(words::FACE, ends, Line::At(-d.trim - 1.9), short(style, face));
    }
    siding::along(&mut s, job, (gap, FAR), ((gap, FAR), 0.0), &at);
    let ends = [at(0.0, d.middle()), at(gap, d.middle())];
    s.dim(words::END_GAP, ends, Line::At(-d.trim - 1.0), short(style, gap));
    s.note(at(3.4, d.middle()), say.block(|lang| notes::siding(lang, job)));
    s
}

/// Over an opening.
pub(super) fn head(job: &Job) -> Section {
    let say = job.sheet.language;
    let (style, d) = (job.sheet.lengths, Depths::of(job));
    let mut s = Section::new(say, words::HEAD, Rect::new(-3.4, -1.8, 4.6, 6.2));
    let wide = around(job);
    let barrier = ground::upright(&mut s, job, (-wide, FAR));
    unit(&mut s, Rect::new(-2.4, -FAR, d.trim - 0.1, -wide));
    let at = |l: f64, o: f64| Point::new(o, l);
    if wide > 0.0 {
        let p = ground::trim_board(&mut s, d, (-wide, 0.0), &at);
        s.note(p, say.block(|lang| notes::casing(lang, &short(style, wide))));
    }
    let edge = d.trim + 0.25;
    let cap = [
        Point::new(0.06, 2.6),
        Point::new(0.06, 0.04),
        Point::new(edge, 0.04),
        Point::new(edge, -0.3),
    ];
    s.line(Ink::Flashing, cap);
    s.note(Point::new(0.06, 2.2), say.sentence(words::HEAD_FLASHING));
    let pockets = job.siding().receivers.has_pockets();
    let clear = if pockets { job.courses.notch_clearance } else { job.clearances().ledge };
    if pockets {
        let p = channel(&mut s, d, 0.08, job.trim.channel_face, &at);
        s.note(p, say.sentence(words::HEAD_CHANNEL));
    }
    siding::course(&mut s, job, clear - 1.6, (clear, FAR));
    let ends = [Point::new(d.butt, 0.0), Point::new(d.butt, clear)];
    s.dim(words::OVER_CUT, ends, Line::Across(2.4), short(style, clear));
    s.note(Point::new(d.middle(), 4.4), say.block(|lang| notes::notched(lang, job)));
    s.note(Point::new(barrier.x, 5.4), say.sentence(words::BARRIER_OVER_FLASHING));
    s
}

/// An upper corner of an opening's channels from the front, with the water tab.
pub(super) fn tab(job: &Job) -> Section {
    let say = job.sheet.language;
    let style = job.sheet.lengths;
    let mut s = Section::new(say, words::TAB, Rect::new(-3.2, -3.4, 2.8, 2.6));
    let (face, tab) = (job.trim.channel_face, job.trim.tab);
    let e = job.product.face().clamp(1.0, 12.0);
    let mut y = -12.0 + 0.6;
    while y < 12.0 {
        let end = if y < face { -face } else { 12.0 };
        s.line(Ink::Face, [Point::new(-12.0, y), Point::new(end, y)]);
        y += e;
    }
    let p = |x: f64, y: f64| Point::new(x, y);
    unit(&mut s, Rect::new(0.0, -FAR, FAR, 0.0));
    s.line(Ink::Profile, [p(-face, -12.0), p(-face, face), p(12.0, face)]);
    s.line(Ink::Profile, [p(0.0, -12.0), p(0.0, 0.0), p(12.0, 0.0)]);
    match job.trim.frame {
        FrameCut::Miter => s.line(Ink::Profile, [p(0.0, 0.0), p(-face, face)]),
        FrameCut::Square => s.line(Ink::Profile, [p(0.0, 0.0), p(-face, 0.0)]),
    }
    let inset = face * 0.08;
    let ring = [p(-inset, 0.0), p(-inset, -tab), p(inset - face, -tab), p(inset - face, 0.0)];
    s.area(Ink::Offcut, Ink::Profile, &ring);
    let (left, right) = (p(inset - face, 0.0), p(inset - face, -tab));
    s.dim(words::TAB_LENGTH, [left, right], Line::Across(-face - 0.7), short(style, tab));
    s.dim(words::FACE, [p(-face, face), p(0.0, face)], Line::At(face + 0.7), short(style, face));
    s.note(p(-face / 2.0, -tab / 2.0), say.sentence(words::TAB_NOTE));
    s.note(p(1.6, face / 2.0), say.sentence(words::TAB_HEAD));
    s.note(p(-face / 2.0, -2.6), say.sentence(words::TAB_JAMB));
    s
}

/// A mounting block.
pub(super) fn block(job: &Job) -> Section {
    let say = job.sheet.language;
    let (style, d) = (job.sheet.lengths, Depths::of(job));
    let mut s = Section::new(say, words::BLOCK, Rect::new(-3.0, -4.0, 5.0, 4.0));
    let barrier = ground::upright(&mut s, job, (-FAR, FAR));
    let (half, clear) = (2.0, job.courses.notch_clearance);
    s.block(Ink::Ground, Ink::Profile, Rect::new(d.back + 0.05, -half, d.trim + 0.5, half));
    s.line(
        Ink::Flashing,
        [Point::new(0.06, half + 1.6), Point::new(0.06, half), Point::new(d.trim + 0.55, half)],
    );
    siding::course(&mut s, job, half + clear - 2.0, (half + clear, FAR));
    siding::course(&mut s, job, -half - clear - 4.0, (-FAR, -half - clear));
    for (from, to) in [(half, half + clear), (-half - clear, -half)] {
        let ends = [Point::new(d.middle(), from), Point::new(d.middle(), to)];
        s.dim(words::ROUND_BLOCK, ends, Line::Across(2.8), short(style, clear));
    }
    s.note(Point::new(d.trim, 0.0), say.sentence(words::BLOCK_NOTE));
    s.note(Point::new(0.06, half + 1.0), say.sentence(words::BLOCK_FLASHING));
    s.note(Point::new(d.middle(), -3.4), say.block(|lang| notes::notched(lang, job)));
    s.note(off(barrier, 0.0, 3.6), say.sentence(words::BARRIER));
    s
}
