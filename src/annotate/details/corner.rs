//! Details of corners, cut along the wall.

use super::ground::{self, channel, trim_board};
use super::section::{Line, Section};
use super::siding::{self, Depths};
use crate::annotate::style::Ink;
use crate::geom::vocabulary::{Point, Rect};
use crate::job::{InsideCorner, Job};
use crate::model::corner::CornerKind;
use crate::wording::sheet_lengths::short;
use crate::wording::{detail_notes as notes, details as words};

/// How far walls go on, past any frame.
const FAR: f64 = 40.0;

/// An outside corner.
pub(super) fn outside(job: &Job) -> Section {
    let say = job.sheet.language;
    let d = Depths::of(job);
    let mut s = Section::new(say, words::OUTSIDE, Rect::new(-5.6, -3.6, 2.4, 4.4));
    let (a, b) = (|l: f64, o: f64| Point::new(-l, -o), |l: f64, o: f64| Point::new(o, l));
    ground::level(&mut s, job, (-job.fasteners.sheathing, FAR), &a);
    ground::level(&mut s, job, (0.0, FAR), &b);
    let back = job.set_backs().outside;
    let face = job.corner_face(CornerKind::Outside);
    let point = if job.siding().receivers.has_pockets() {
        // Each side of the post has a pocket; its faces meet at the corner.
        for at in [&a as &dyn Fn(f64, f64) -> Point, &b] {
            let set_back = job.post_set_back(CornerKind::Outside);
            let (near, out) = (d.back + 0.05, d.trim);
            s.line(Ink::Profile, [at(set_back + 1.4, near), at(set_back, near), at(set_back, out)]);
            s.line(Ink::Profile, [at(face, out - 0.1), at(face, out), at(-out, out)]);
        }
        a(face * 0.4, d.trim)
    } else {
        trim_board(&mut s, d, (-(d.back + ground::BOARD).max(d.trim), back), &a);
        trim_board(&mut s, d, (0.0, back), &b)
    };
    ends(&mut s, job, (back, back), (&a, &b));
    let down = -(d.trim.max(d.back + ground::BOARD)) - 0.8;
    set_back_dims(&mut s, job, back, (&a, down));
    if job.siding().receivers.has_pockets() {
        let text = short(job.sheet.lengths, face);
        s.dim(words::FACE, [a(0.0, d.trim), a(face, d.trim)], Line::At(down - 0.75), text);
    }
    s.note(point, say.block(|lang| notes::outside(lang, job)));
    s.note(b(back + 2.2, d.middle()), say.block(|lang| notes::siding(lang, job)));
    s
}

/// An inside corner.
pub(super) fn inside(job: &Job) -> Section {
    let say = job.sheet.language;
    let d = Depths::of(job);
    let mut s = Section::new(say, words::INSIDE, Rect::new(-2.6, -2.6, 5.4, 5.4));
    let (a, b) = (|l: f64, o: f64| Point::new(l, o), |l: f64, o: f64| Point::new(o, l));
    ground::level(&mut s, job, (-job.fasteners.sheathing, FAR), &a);
    ground::level(&mut s, job, (0.0, FAR), &b);
    let set_backs = job.set_backs();
    let (first, second) = (set_backs.inside_first, set_backs.inside);
    let pockets = job.siding().receivers.has_pockets();
    let face = job.corner_face(CornerKind::Inside);
    let point = match job.trim.inside_corner {
        _ if !pockets => {
            let side = second.max(0.01);
            s.block(
                Ink::Ground,
                Ink::Profile,
                Rect::new(d.back, d.back, d.back + side, d.back + side),
            );
            Point::new(d.back + side / 2.0, d.back + side)
        }
        InsideCorner::Post => {
            for at in [&a as &dyn Fn(f64, f64) -> Point, &b] {
                let (near, out) = (d.back + 0.05, d.trim);
                s.line(Ink::Profile, [at(second + 1.4, near), at(second, near), at(second, out)]);
                s.line(Ink::Profile, [at(face, out - 0.1), at(face, out), at(out, out)]);
            }
            a((face + d.trim) / 2.0, d.trim)
        }
        InsideCorner::OneChannel => channel(&mut s, d, second, face, &b),
        InsideCorner::TwoChannels => {
            channel(&mut s, d, 0.0, face, &b);
            channel(&mut s, d, 0.0, face, &a)
        }
    };
    ends(&mut s, job, (first, second), (&a, &b));
    set_back_dims(&mut s, job, first, (&a, -job.fasteners.sheathing - 0.8));
    s.note(point, say.block(|lang| notes::inside(lang, job)));
    s.note(b(second + 2.4, d.middle()), say.block(|lang| notes::siding(lang, job)));
    s
}

/// A seam of panels, or a joint of boards on a stud, seen from above.
pub(super) fn seam(job: &Job) -> Section {
    let say = job.sheet.language;
    let (style, d) = (job.sheet.lengths, Depths::of(job));
    let lapped = job.siding().joints.is_lapped();
    let title = if lapped { words::SEAM } else { words::JOINT };
    let mut s = Section::new(say, title, Rect::new(-4.0, -3.6, 4.0, 2.6));
    let at = |l: f64, o: f64| Point::new(l, -o);
    ground::level(&mut s, job, (-FAR, FAR), &at);
    let lap = job.lap();
    let half = lap / 2.0;
    if !lapped {
        let t = job.fasteners.sheathing;
        s.block(Ink::Ground, Ink::Opening, Rect::new(-0.75, t, 0.75, 9.0));
        if job.siding().joints.is_backed() {
            s.line(Ink::Flashing, [at(-3.0, d.back + 0.03), at(3.0, d.back + 0.03)]);
            s.note(at(1.8, d.back + 0.03), say.sentence(words::JOINT_FLASHING));
        }
        s.note(Point::new(0.3, 1.6), say.block(|lang| notes::stud(lang, job)));
    }
    let set_back = job.product.foam_set_back;
    siding::along(&mut s, job, (-FAR, half), ((-FAR, half - set_back), 0.07), &at);
    siding::along(&mut s, job, (-half, FAR), ((set_back - half, FAR), 0.0), &at);
    let row = -d.trim - 0.7;
    let text = short(style, lap.abs());
    let name = if lapped { words::LAP } else { words::JOINT_GAP };
    s.dim(name, [at(-half, d.middle()), at(half, d.middle())], Line::At(row), text);
    if job.product.has_foam() {
        let ends = [at(half - set_back, d.back + 0.3), at(half, d.middle())];
        s.dim(words::FOAM_SET_BACK, ends, Line::At(row - 0.75), short(style, set_back));
        s.note(at(-2.6, d.back + 0.4), say.sentence(words::FOAM));
    }
    s.note(at(-2.0, d.middle() + 0.07), say.block(|lang| notes::seam_first(lang, job)));
    s.note(at(2.4, d.middle()), say.block(|lang| notes::seam_second(lang, job)));
    s
}

type At<'a> = &'a dyn Fn(f64, f64) -> Point;

/// The siding of both walls, ended by the gap off `first` and `second` from the corner.
fn ends(s: &mut Section, job: &Job, (first, second): (f64, f64), (a, b): (At, At)) {
    let gap = job.end_gap();
    for (back, at) in [(first, a), (second, b)] {
        let start = back + gap;
        siding::along(s, job, (start, FAR), ((start, FAR), 0.0), &at);
    }
}

/// Set-back and gap along one wall, in two strings one under the other.
fn set_back_dims(s: &mut Section, job: &Job, back: f64, (at, row): (At, f64)) {
    let (style, out) = (job.sheet.lengths, Depths::of(job).middle());
    if back > 0.0 {
        let ends = [at(0.0, out), at(back, out)];
        s.dim(words::SET_BACK, ends, Line::At(row), short(style, back));
    }
    let ends = [at(back, out), at(back + job.end_gap(), out)];
    s.dim(words::END_GAP, ends, Line::At(row), short(style, job.end_gap()));
}
