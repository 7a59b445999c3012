//! Places too narrow for siding: none is left in a field, each filler stands where one is, and has its
//! board. Sides are found anew, by looking across the field from side to side.

use super::along::reach;
use super::contour;
use super::course_lines::{butt, course_at, on_course_line};
use super::named;
use super::rule::{Cases, Found, found};
use super::tolerance::{NEAR, SAME, same};
use crate::geom::vocabulary::Xy;
use crate::layout::breach::wall::FieldBreach;
use crate::layout::laid::LaidHouse;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::Figure::{Inches, SquareFeet};
use crate::layout::wall::{LaidEdge, LaidElevation, LaidFiller, LaidWall};
use crate::model::corner::CornerKind;
use crate::model::filler::FilledTo;
use crate::model::house::EdgeKind;
use crate::model::receiver::Receiver;
use crate::model::trim::TrimKind;

/// Two sides beside one another for less than this make a neck, not a slot, inches.
const LEAST_LONG: f64 = 2.0;

pub(super) fn check(layout: &LaidHouse) -> RuleCheck {
    let mut rule = Cases::new(Rule::NarrowPlaces);
    for (e, w) in layout.walls() {
        for across in [0, 1] {
            slots(&mut rule, layout, (e, w), across);
        }
        for f in &w.fillers {
            filler(&mut rule, layout, (e, w), f);
        }
        boards(&mut rule, layout, (e, w));
    }
    rule.done()
}

/// The face of the trim at a side, from where a panel's end touches it.
fn face(layout: &LaidHouse, kind: EdgeKind, receiver: Option<Receiver>) -> f64 {
    let job = &layout.job;
    let post = |kind: CornerKind| (job.corner_face(kind) - job.set_backs().most(kind)).max(0.0);
    match (kind, receiver) {
        _ if !job.siding().receivers.has_pockets() => 0.0,
        (_, Some(Receiver::Starter)) => 0.0,
        (EdgeKind::OutsideCorner, _) => post(CornerKind::Outside),
        (EdgeKind::InsideCorner, _) => post(CornerKind::Inside),
        _ => job.trim.channel_face,
    }
}

/// What has the same face as what a filler stands against.
fn kind(to: FilledTo) -> EdgeKind {
    match to {
        FilledTo::OutsideCorner => EdgeKind::OutsideCorner,
        FilledTo::InsideCorner => EdgeKind::InsideCorner,
        _ => EdgeKind::Abutment,
    }
}

/// Whether a side is part of a curve of its opening.
fn is_curved(w: &LaidWall, e: &LaidEdge) -> bool {
    let Some(o) = w.openings.iter().find(|o| Some(&o.id) == e.opening.as_ref()) else {
        return false;
    };
    let m = named::midway(e.from, e.to);
    let on = |p: &[Xy]| reach(p[0], m) + reach(m, p[1]) - reach(p[0], p[1]) < NEAR;
    let parts = contour::parts(&o.outline, &[]);
    parts.iter().filter(|p| p.is_curved).any(|p| p.points.windows(2).any(on))
}

/// Looks across a wall from each side that bounds the field to the next one: `across` is 0 for plumb sides,
/// 1 for level ones.
fn slots(rule: &mut Cases, layout: &LaidHouse, (e, w): (&LaidElevation, &LaidWall), across: usize) {
    let along = 1 - across;
    let lies = |s: &&LaidEdge| (s.from[across] - s.to[across]).abs() <= SAME && !is_curved(w, s);
    // The field is on the left hand: right of what runs down, over what runs to the right.
    let opens = |s: &&LaidEdge| if across == 0 { s.to[1] < s.from[1] } else { s.to[0] > s.from[0] };
    let mut breaks: Vec<f64> = w.edges.iter().flat_map(|s| [s.from[along], s.to[along]]).collect();
    breaks.sort_by(f64::total_cmp);
    for s in w.edges.iter().filter(lies).filter(opens) {
        let (low, high) = (s.from[along].min(s.to[along]), s.from[along].max(s.to[along]));
        let first = breaks.partition_point(|b| *b <= low);
        let inside = breaks[first..].iter().take_while(|b| **b < high).copied();
        let cuts: Vec<f64> = [low].into_iter().chain(inside).chain([high]).collect();
        let mut near: Vec<(&LaidEdge, f64, f64)> = Vec::new();
        for pair in cuts.windows(2) {
            let at = (pair[0] + pair[1]) / 2.0;
            let Some(o) = next(w, s, (across, at)).filter(lies) else { continue };
            match near.last_mut() {
                Some(last) if std::ptr::eq(last.0, o) => last.2 = pair[1],
                _ => near.push((o, pair[0], pair[1])),
            }
        }
        for (o, from, to) in near {
            let apart = o.from[across] - s.from[across];
            let of = |s: &LaidEdge| face(layout, s.kind, Some(s.receiver));
            let least = of(s) + of(o) + layout.job.courses.least_width;
            rule.case(apart >= least - NEAR || to - from < LEAST_LONG + NEAR, || {
                let mut place = [0.0; 2];
                place[across] = s.from[across] + apart / 2.0;
                place[along] = (from + to) / 2.0;
                broken((e, w), FieldBreach::TooNarrow, place)
                    .measured(Inches(apart))
                    .at_least(Inches(least))
            });
        }
    }
}

/// The next side beyond one, at a place along it.
fn next<'a>(w: &'a LaidWall, s: &LaidEdge, (across, at): (usize, f64)) -> Option<&'a LaidEdge> {
    let along = 1 - across;
    let crossing = w.edges.iter().filter_map(|o| {
        let (a, b) = (o.from, o.to);
        let spans = a[along].min(b[along]) < at && a[along].max(b[along]) > at;
        if !spans {
            return None;
        }
        let share = (at - a[along]) / (b[along] - a[along]);
        let here = a[across] + share * (b[across] - a[across]);
        (here > s.from[across] + SAME).then_some((o, here))
    });
    crossing.min_by(|a, b| a.1.total_cmp(&b.1)).map(|(o, _)| o)
}

fn broken((e, w): (&LaidElevation, &LaidWall), breach: FieldBreach, at: Xy) -> Found {
    found(named::wall(&w.id), breach).at(named::place(&e.name, at))
}

fn middle(f: &LaidFiller) -> Xy {
    let [x0, y0, x1, y1] = f.place;
    [(x0 + x1) / 2.0, (y0 + y1) / 2.0]
}

/// A filler is no wider than a place that takes no siding, stands in no opening, and has its board.
fn filler(
    rule: &mut Cases,
    layout: &LaidHouse,
    (e, w): (&LaidElevation, &LaidWall),
    f: &LaidFiller,
) {
    let of = |i: usize| face(layout, kind(f.between[i].to), None);
    let skirt = f.between[1].to == FilledTo::Course;
    let (room, rules) = (of(0) + of(1), &layout.job.courses);
    let most = if skirt {
        layout.job.least_strip() + rules.notch_clearance
    } else {
        room + rules.least_width
    };
    let [x0, y0, x1, y1] = f.place;
    // A skirt board goes up to where a whole course starts.
    rule.case(!skirt || on_course_line(layout, y1), || {
        let v = broken((e, w), FieldBreach::FillerNeedless, [(x0 + x1) / 2.0, y1]);
        v.measured(Inches(y1)).exactly(Inches(butt(layout, course_at(layout, y1))))
    });
    let wide = same(f.width, x1 - x0) && same(f.length, y1 - y0);
    let high = same(f.width, y1 - y0) && same(f.length, x1 - x0);
    rule.case(f.width > 0.0 && f.width <= most + SAME && (wide || high), || {
        let v = broken((e, w), FieldBreach::FillerNeedless, middle(f));
        v.measured(Inches(f.width)).at_most(Inches(most))
    });
    let over = |o: &crate::layout::wall::LaidOpening| {
        let wide = x1.min(o.right) - x0.max(o.left);
        let high = y1.min(o.head) - y0.max(o.sill);
        wide > NEAR && high > NEAR
    };
    for o in w.openings.iter().filter(|o| contour::is_rectangle(&o.outline)) {
        rule.case(!over(o), || {
            broken((e, w), FieldBreach::FillerInOpening, middle(f))
                .with(named::opening(&w.id, &o.id))
        });
    }
    let within = |p: Xy| p[0] > x0 && p[0] < x1 && p[1] > y0 && p[1] < y1;
    let mine = layout.trims.iter().filter(|t| t.kind == TrimKind::Filler && t.wall == w.id);
    let mine = mine.filter(|t| within(t.place(0.5)));
    let ripped = mine.filter(|t| t.width.is_some_and(|width| same(width, f.width)));
    let have: f64 = ripped.map(|t| t.length).sum();
    rule.case((have - f.length).abs() <= NEAR, || {
        let v = broken((e, w), FieldBreach::FillerBoard, middle(f));
        v.measured(Inches(have)).exactly(Inches(f.length))
    });
}

/// Boards cover fillers and nothing else, and what they cover is told as bare by its area.
fn boards(rule: &mut Cases, layout: &LaidHouse, (e, w): (&LaidElevation, &LaidWall)) {
    let mine = layout.trims.iter().filter(|t| t.kind == TrimKind::Filler && t.wall == w.id);
    let laid: f64 = mine.map(|t| t.length * t.width.unwrap_or(0.0)).sum();
    let placed: f64 = w.fillers.iter().map(|f| f.width * f.length).sum();
    let told = w.filler_area();
    let off = (laid - placed).abs().max((told * 144.0 - placed).abs());
    rule.case(off <= 0.01 + 1e-4 * placed, || {
        let v = found(named::wall(&w.id), FieldBreach::FillerArea).at(named::at_wall(e, w));
        v.measured(SquareFeet(told)).exactly(SquareFeet(placed / 144.0))
    });
}
