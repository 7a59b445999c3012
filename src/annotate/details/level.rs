//! Details where siding starts and ends up and down: at grade, over a roof, under a soffit.

use super::ground::{self, BOARD, channel, finish};
use super::section::{Line, Section};
use super::siding::{self, Depths, off};
use crate::annotate::style::Ink;
use crate::geom::vocabulary::{Point, Rect};
use crate::job::Job;
use crate::job::TopFinish;
use crate::wording::sheet_lengths::short;
use crate::wording::{detail_notes as notes, details as words};

/// The first course over finished grade.
pub(super) fn grade(job: &Job) -> Section {
    let say = job.sheet.language;
    let (style, d) = (job.sheet.lengths, Depths::of(job));
    let clear = job.courses.clear_of_grade;
    let mut s = Section::new(say, words::STARTER, Rect::new(-3.6, -clear.min(6.0) - 1.2, 4.4, 2.6));
    let foot = -1.0;
    // Concrete or masonry carries the wall.
    s.block(Ink::Ground, Ink::Opening, Rect::new(-6.0, -40.0, -job.fasteners.sheathing, foot));
    let barrier = ground::upright(&mut s, job, (foot, 12.0));
    siding::course(&mut s, job, 0.0, (-1.0, 12.0));
    let pockets = job.siding().receivers.has_pockets();
    let lock = job.product.lock;
    if pockets {
        let top = Point::new(d.back + 0.05, job.trim.starter_line);
        let [a, b, c] = siding::hook(d, Point::new, lock);
        s.line(Ink::Profile, [top, Point::new(d.back + 0.05, lock), a, b, c]);
        let line = short(style, job.trim.starter_line.abs());
        s.dim(words::STARTER_LINE, [top, Point::new(d.butt, 0.0)], Line::Across(2.4), line);
        s.note(off(top, 0.0, -0.2), say.block(|lang| notes::starter(lang, job)));
    } else {
        let thick = job.starter_thickness();
        s.block(Ink::Ground, Ink::Profile, Rect::new(d.back, 0.1, d.back + thick, 1.35));
        s.note(
            Point::new(d.back + thick / 2.0, 0.8),
            say.block(|lang| notes::starter_piece(lang, job)),
        );
    }
    let level = Point::new(-job.fasteners.sheathing, -clear);
    s.line(Ink::Grade, [level, Point::new(9.0, -clear)]);
    let ends = [Point::new(d.butt, 0.0), Point::new(d.butt, -clear)];
    s.dim(words::CLEAR_OF_GRADE, ends, Line::Across(3.2), short(style, clear));
    s.note(Point::new(d.middle(), 2.0), say.block(|lang| notes::first(lang, job)));
    s.note(off(barrier, 0.0, 0.6), say.sentence(words::BARRIER));
    s.note(Point::new(-2.0, foot - 1.5), say.sentence(words::FOUNDATION));
    s.note(Point::new(2.0, -clear), say.sentence(words::GRADE));
    s
}

/// A wall over a lower roof, cut square to the wall.
pub(super) fn roof(job: &Job) -> Section {
    let say = job.sheet.language;
    let (style, d) = (job.sheet.lengths, Depths::of(job));
    let clear = job.clearances().roof;
    let mut s = Section::new(say, words::ROOF, Rect::new(-3.0, -1.8, 5.0, 6.2));
    let barrier = ground::upright(&mut s, job, (-9.0, 12.0));
    // Roof sheathing and roofing, a tenth of an inch of room for the flashing.
    s.block(Ink::Offcut, Ink::Opening, Rect::new(0.1, -0.75, 9.0, -0.25));
    s.block(Ink::Ground, Ink::Opening, Rect::new(0.1, -0.25, 9.0, 0.0));
    let flashing = [Point::new(0.08, 4.0), Point::new(0.08, -0.12), Point::new(4.0, -0.12)];
    s.line(Ink::Flashing, flashing);
    let at = |along: f64, out: f64| Point::new(out, along);
    let low = if job.siding().receivers.has_pockets() {
        let point = channel(&mut s, d, clear, job.trim.channel_face, &at);
        s.note(point, say.sentence(words::ROOF_CHANNEL));
        clear + job.end_gap()
    } else {
        clear
    };
    siding::course(&mut s, job, low - 2.0, (low, 12.0));
    let ends = [Point::new(d.butt, clear), Point::new(d.butt, 0.0)];
    s.dim(words::CLEAR_OF_ROOF, ends, Line::Across(2.6), short(style, clear));
    s.note(Point::new(d.middle(), 4.6), say.block(|lang| notes::roof_siding(lang, job)));
    s.note(off(barrier, 0.0, 3.2), say.sentence(words::BARRIER_OVER_FLASHING));
    s.note(Point::new(0.08, 2.6), say.sentence(words::STEP_FLASHING));
    s.note(Point::new(3.2, 0.0), say.sentence(words::ROOFING));
    s
}

/// A skirt board over a level roof or ledge, the first course whole on it.
pub(super) fn skirt(job: &Job) -> Section {
    let say = job.sheet.language;
    let (style, d) = (job.sheet.lengths, Depths::of(job));
    let clear = job.clearances().roof;
    let mut s = Section::new(say, words::SKIRT, Rect::new(-3.0, -1.8, 5.0, 6.2));
    let barrier = ground::upright(&mut s, job, (-9.0, 12.0));
    s.block(Ink::Ground, Ink::Opening, Rect::new(0.1, -0.75, 9.0, 0.0));
    let flashing = [Point::new(0.08, 5.0), Point::new(0.08, -0.04), Point::new(4.0, -0.04)];
    s.line(Ink::Flashing, flashing);
    let at = |along: f64, out: f64| Point::new(out, along);
    // As high as the lowest strip that siding is laid for: each board is as high as its place.
    let top = clear + job.least_strip().max(0.5);
    let board = ground::trim_board(&mut s, d, (clear, top), &at);
    s.note(board, say.sentence(words::SKIRT_BOARD));
    start(&mut s, job, top);
    siding::course(&mut s, job, top, (top, 12.0));
    let ends = [Point::new(d.butt, clear), Point::new(d.butt, 0.0)];
    s.dim(words::CLEAR_OF_ROOF, ends, Line::Across(2.6), short(style, clear));
    s.note(Point::new(d.middle(), top + 2.4), say.block(|lang| notes::first(lang, job)));
    s.note(off(barrier, 0.0, 3.2), say.sentence(words::BARRIER_OVER_FLASHING));
    s.note(Point::new(0.08, top + 0.6), say.sentence(words::SKIRT_FLASHING));
    s.note(Point::new(3.2, -0.3), say.sentence(words::ROOF_OR_LEDGE));
    s
}

/// What a first course stands on, its butt line at a height.
fn start(s: &mut Section, job: &Job, butt: f64) {
    let say = job.sheet.language;
    let d = Depths::of(job);
    if !job.siding().receivers.has_pockets() {
        let thick = job.starter_thickness();
        let piece = Rect::new(d.back, butt + 0.1, d.back + thick, butt + 1.35);
        s.block(Ink::Ground, Ink::Profile, piece);
        s.note(
            Point::new(d.back + thick / 2.0, butt + 0.8),
            say.block(|lang| notes::starter_piece(lang, job)),
        );
        return;
    }
    let (lock, over) = (job.product.lock, |x: f64, y: f64| Point::new(x, butt + y));
    let [a, b, c] = siding::hook(d, over, lock);
    let top = over(d.back + 0.05, job.trim.starter_line);
    s.line(Ink::Profile, [top, over(d.back + 0.05, lock), a, b, c]);
    s.note(off(top, 0.0, -0.2), say.block(|lang| notes::starter(lang, job)));
}

/// The low end of a roof against a wall that goes on, seen from the front.
pub(super) fn kick_out(job: &Job) -> Section {
    let say = job.sheet.language;
    let style = job.sheet.lengths;
    let clear = job.clearances().roof;
    let mut s = Section::new(say, words::KICK_OUT, Rect::new(-4.0, -4.4, 4.0, 3.6));
    let e = job.product.face().clamp(1.0, 12.0);
    let rise = 0.5;
    let roof = |x: f64| -x * rise;
    let face = if job.siding().receivers.has_pockets() { job.trim.channel_face } else { 0.0 };
    // Beside the kick-out on the slope, and past the roof's low end, where the wall goes on down.
    let (before, past) = (-1.4, 1.2);
    let lowest = -5.0 - (-5.0_f64).rem_euclid(e) + 0.3;
    for y in (0..12).map(|i| lowest + f64::from(i) * e) {
        let start = (clear + face - y) / rise;
        if start < before {
            s.line(Ink::Course, [Point::new(start, y), Point::new(before, y)]);
        }
        s.line(Ink::Course, [Point::new(past, y), Point::new(9.0, y)]);
    }
    if face > 0.0 {
        for over in [clear, clear + face] {
            let ends = [-9.0, before].map(|x| Point::new(x, roof(x) + over));
            s.line(Ink::Profile, ends);
        }
    }
    let ring = [
        Point::new(-9.0, roof(-9.0)),
        Point::new(0.3, roof(0.3)),
        Point::new(0.3, roof(0.3) - 0.8),
        Point::new(-9.0, roof(-9.0) - 0.8),
    ];
    s.area(Ink::Offcut, Ink::Opening, &ring);
    let kick = [
        Point::new(-1.2, roof(-1.2)),
        Point::new(-1.2, roof(-1.2) + 3.0),
        Point::new(0.5, roof(0.5) + 3.0),
        Point::new(0.9, roof(0.9) + 0.4),
        Point::new(0.5, roof(0.5)),
    ];
    s.area(Ink::Ground, Ink::Flashing, &kick);
    let gutter = [
        Point::new(0.4, -0.5),
        Point::new(0.5, -2.4),
        Point::new(2.6, -2.4),
        Point::new(3.0, -0.5),
    ];
    s.line(Ink::Opening, gutter);
    s.note(Point::new(0.4, 1.8), say.block(|lang| notes::kick_out(lang, job)));
    s.note(Point::new(-2.5, roof(-2.5) - 0.4), say.sentence(words::ROOF_LOW_END));
    s.note(Point::new(2.5, -2.4), say.sentence(words::GUTTER));
    s.note(
        Point::new(2.6, 2.4),
        say.block(|lang| {
            notes::cut_round_kick_out(lang, &short(style, job.courses.notch_clearance))
        }),
    );
    s
}

/// The top of a wall under a level soffit.
pub(super) fn soffit(job: &Job) -> Section {
    let say = job.sheet.language;
    let (style, d) = (job.sheet.lengths, Depths::of(job));
    let mut s = Section::new(say, words::SOFFIT, Rect::new(-3.4, -6.4, 4.6, 1.6));
    let barrier = ground::upright(&mut s, job, (-12.0, 4.0));
    s.block(Ink::Ground, Ink::Opening, Rect::new(d.back, 0.0, 9.0, 0.4));
    s.note(Point::new(3.4, 0.2), say.sentence(words::SOFFIT_PANEL));
    let mut top = 0.0;
    let at = |along: f64, out: f64| Point::new(out, -along);
    if job.trim.frieze > 0.0 {
        let high = job.trim.frieze;
        let p = ground::trim_board(&mut s, d, (0.0, high), &at);
        let ends = [Point::new(d.trim, 0.0), Point::new(d.trim, -high)];
        s.dim(words::FRIEZE, ends, Line::Across(3.2), short(style, high));
        s.note(p, say.sentence(words::FRIEZE));
        top = -high;
    }
    let pockets = job.siding().receivers.has_pockets();
    let cut = if pockets { top - job.courses.notch_clearance } else { top - job.end_gap() };
    if pockets {
        let under = |along: f64, out: f64| Point::new(out, top - along);
        let point = match job.trim.top {
            TopFinish::FinishTrim => finish(&mut s, d, 0.0, &under),
            TopFinish::TwoPiece | TopFinish::Crown | TopFinish::TopPanel => {
                ground::trim_board(&mut s, d, (0.0, BOARD), &|a, o| under(a, o + d.trim - d.back));
                channel(&mut s, d, 0.0, 2.0, &under)
            }
        };
        s.note(point, say.block(|lang| notes::top_finish(lang, job)));
        let ends = [Point::new(d.middle(), top), Point::new(d.middle(), cut)];
        s.dim(words::OVER_CUT, ends, Line::Across(2.2), short(style, top - cut));
    }
    siding::course(&mut s, job, cut - 5.0, (-12.0, cut));
    siding::course(&mut s, job, cut - 5.0 - siding::exposure(job), (-12.0, cut));
    s.note(Point::new(d.middle(), cut - 1.6), say.block(|lang| notes::ripped(lang, job)));
    // A hem is seen over the next butt line, a board's nail over its own.
    let below = if pockets { siding::exposure(job) } else { 0.0 };
    let nail = siding::nail(&mut s, job, cut - 5.0 - below);
    s.note(nail, say.block(|lang| notes::nails(lang, job)));
    s.note(off(barrier, 0.0, -1.0), say.sentence(words::BARRIER));
    s
}
