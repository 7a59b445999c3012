//! The sides of each field: named all round, each for what it borders, each with its trim.

use std::collections::BTreeMap;

use super::contour;
use super::corner_sides::{is_upright, runs_level, runs_upright};
use super::course_lines::{butt, course_at, on_course_line};
use super::named;
use super::rule::{Cases, found};
use super::tolerance::{NEAR, same};
use crate::geom::tol::{LEVEL, SAME};
use crate::geom::vocabulary::Xy;
use crate::job::{InsideCorner, TopFinish};
use crate::layout::breach::wall::FieldBreach;
use crate::layout::laid::LaidHouse;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::Figure::Degrees;
use crate::layout::wall::{LaidEdge, LaidElevation, LaidOpening, LaidWall};
use crate::model::house::EdgeKind;
use crate::model::receiver::Receiver;
use crate::pitch;
use crate::real::Real;

/// Slopes nearer than this are one slope, degrees (`LayoutFact::DrawnSlope`, proposal).
const SAME_SLOPE: f64 = 0.5;
/// The finest mark of most tapes, inches.
const TAPE: f64 = 1.0 / 16.0;

pub(super) fn check(layout: &LaidHouse) -> [RuleCheck; 2] {
    let mut round = Cases::new(Rule::SidesAllRound);
    let mut names = Cases::new(Rule::SideNames);
    for (e, w) in layout.walls() {
        all_round(&mut round, e, w);
        let openings: BTreeMap<&str, &LaidOpening> =
            w.openings.iter().map(|o| (o.id.as_str(), o)).collect();
        for side in &w.edges {
            name(&mut names, layout, (e, w), &openings, side);
        }
    }
    [round.done(), names.done()]
}

/// Bits of a place, for exact look-up; both zeros are one.
fn key(p: Xy) -> (u64, u64) {
    ((p[0] + 0.0).to_bits(), (p[1] + 0.0).to_bits())
}

/// Each side of the field is walked from end to end along named sides, and none is left over.
fn all_round(rule: &mut Cases, on: &LaidElevation, w: &LaidWall) {
    let mut from: BTreeMap<(u64, u64), Vec<&LaidEdge>> = BTreeMap::new();
    for e in &w.edges {
        from.entry(key(e.from)).or_default().push(e);
    }
    let broken = |breach: FieldBreach, a: Xy, b: Xy| {
        found(named::wall(&w.id), breach).at(named::place(&on.name, named::midway(a, b)))
    };
    for ring in &w.field {
        for i in 0..ring.len() {
            let (a, b) = (ring[i], ring[(i + 1) % ring.len()]);
            let length = (b[0] - a[0]).hypotenuse(b[1] - a[1]);
            if length > SAME {
                let walked = walk(&mut from, a, b, length);
                rule.case(walked, || broken(FieldBreach::SideUnnamed { from: a, to: b }, a, b));
            }
        }
    }
    for e in from.into_values().flatten() {
        let (side, from, to) = (e.kind, e.from, e.to);
        rule.case(false, || broken(FieldBreach::SideElsewhere { side, from, to }, from, to));
    }
}

/// Takes the named sides along `a` to `b`; false if one is missing or leaves the line.
fn walk(from: &mut BTreeMap<(u64, u64), Vec<&LaidEdge>>, a: Xy, b: Xy, length: f64) -> bool {
    let along = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
    let (mut at, mut done) = (a, 0.0);
    while key(at) != key(b) {
        let Some(list) = from.get_mut(&key(at)) else { return false };
        let on_line = list.iter().position(|e| {
            let d = [e.to[0] - a[0], e.to[1] - a[1]];
            let t = d[0] * along[0] + d[1] * along[1];
            let off = d[0] * along[1] - d[1] * along[0];
            off.abs() < NEAR && t > done && t < length + NEAR
        });
        let Some(i) = on_line else { return false };
        let e = list.remove(i);
        at = e.to;
        done = (at[0] - a[0]) * along[0] + (at[1] - a[1]) * along[1];
    }
    true
}

fn name(
    rule: &mut Cases,
    layout: &LaidHouse,
    (on, w): (&LaidElevation, &LaidWall),
    openings: &BTreeMap<&str, &LaidOpening>,
    e: &LaidEdge,
) {
    let side = e.kind;
    let middle = named::midway(e.from, e.to);
    let broken =
        |breach: FieldBreach| found(named::wall(&w.id), breach).at(named::place(&on.name, middle));
    let of_opening = matches!(e.kind, EdgeKind::Jamb | EdgeKind::Head | EdgeKind::Sill);
    let borders = match e.opening.as_deref().map(|id| openings.get(id)) {
        None => !of_opening,
        Some(None) => false,
        Some(Some(o)) => of_opening && on_ring(&o.outline, middle),
    };
    let curved = is_curved(openings, e, middle);
    rule.case(runs_as_named(e, curved), || broken(FieldBreach::SideDirection { side }));
    rule.case(borders, || {
        let v = broken(FieldBreach::SideBorder { side });
        match &e.opening {
            Some(id) => v.with(named::opening(&w.id, id)),
            None => v,
        }
    });
    let boards = !layout.job.siding().receivers.has_pockets();
    let bottom = matches!(e.kind, EdgeKind::Base | EdgeKind::BareTop | EdgeKind::LowerRoof);
    let needed = match takes(layout, e, curved) {
        // Under every first board lies a starter piece, cut or not (TrimFact::FiberCementStarter).
        _ if boards && bottom && (e.from[1] - e.to[1]).abs() <= LEVEL => Receiver::Starter,
        // Boards butt against trim wherever panels stand in a channel (TrimFact::FiberCementJoints).
        Receiver::JChannel | Receiver::FinishTrim | Receiver::RakeChannel if boards => {
            Receiver::Trim
        }
        other => other,
    };
    let receiver = e.receiver;
    rule.case(receiver == needed, || broken(FieldBreach::SideReceiver { side, receiver, needed }));
    let (dx, dy) = (e.to[0] - e.from[0], e.to[1] - e.from[1]);
    if !is_upright(side) && dx.abs() > LEVEL && dy.abs() > LEVEL && dx.hypotenuse(dy) > 1.0 {
        let drawn = pitch::angle(pitch::in_twelve(dx, dy));
        let given = e.pitch.map(pitch::angle);
        rule.case(given.is_some_and(|angle| (angle - drawn).abs() < SAME_SLOPE), || {
            let v = broken(FieldBreach::SidePitch { side }).exactly(Degrees(drawn));
            v.measured(Degrees(given.unwrap_or(f64::NAN)))
        });
    }
}

/// Whether a side runs as one of its name does: the field lies on the left hand, so going right it is
/// above, going left below.
fn runs_as_named(e: &LaidEdge, curved: bool) -> bool {
    let (dx, dy) = (e.to[0] - e.from[0], e.to[1] - e.from[1]);
    let named = contour::kind(e.to, e.from);
    match e.kind {
        // Along a curve a head goes on as one until it is plumb, and a sill too.
        EdgeKind::Head if curved => dx > 0.0,
        EdgeKind::Sill if curved => dx < 0.0,
        EdgeKind::Jamb if curved => dx.abs() <= LEVEL,
        EdgeKind::Head | EdgeKind::Sill | EdgeKind::Jamb => named == e.kind,
        EdgeKind::Base | EdgeKind::BareTop => dx > 0.0 && dy.abs() <= LEVEL,
        EdgeKind::LowerRoof => dx > 0.0,
        EdgeKind::Eave => dx < 0.0 && runs_level(e.from, e.to),
        EdgeKind::Rake => dx < 0.0 && dy.abs() > SAME,
        EdgeKind::BareBottom => dx < 0.0,
        // Or leaning as a post may.
        EdgeKind::OutsideCorner | EdgeKind::InsideCorner | EdgeKind::Abutment => {
            runs_upright(e.from, e.to)
        }
    }
}

/// What takes panels at a side (`TrimFact::StarterLocksFirstCourse`, `TrimFact::CutFirstCourse`,
/// `TrimFact::UndersillLugs`, `TrimFact::RakeGap`; a butt edge off its course line has no lock for a
/// starter).
fn takes(layout: &LaidHouse, e: &LaidEdge, curved: bool) -> Receiver {
    match e.kind {
        // Undersill trim is straight.
        EdgeKind::Sill if curved => Receiver::JChannel,
        EdgeKind::Base | EdgeKind::BareTop => {
            // Or under one by no more than a tape shows, in the clearance: no strip is laid there.
            let above = butt(layout, course_at(layout, e.from[1]) + 1) - e.from[1];
            let hair = TAPE.min(layout.job.courses.notch_clearance);
            if on_course_line(layout, e.from[1]) || above <= hair {
                Receiver::Starter
            } else {
                Receiver::FinishTrim
            }
        }
        EdgeKind::OutsideCorner => Receiver::OutsidePost,
        EdgeKind::InsideCorner => match layout.job.trim.inside_corner {
            InsideCorner::Post => Receiver::InsidePost,
            InsideCorner::OneChannel | InsideCorner::TwoChannels => Receiver::JChannel,
        },
        // Under a frieze the cut edge is held as under any band.
        EdgeKind::Eave
            if layout.job.trim.frieze <= 0.0 && layout.job.trim.top != TopFinish::FinishTrim =>
        {
            Receiver::TopFinish
        }
        EdgeKind::Eave | EdgeKind::BareBottom | EdgeKind::Sill => Receiver::FinishTrim,
        EdgeKind::Rake => Receiver::RakeChannel,
        EdgeKind::Abutment | EdgeKind::LowerRoof | EdgeKind::Jamb | EdgeKind::Head => {
            Receiver::JChannel
        }
    }
}

/// Whether a side with this middle borders a curve of its opening.
fn is_curved(openings: &BTreeMap<&str, &LaidOpening>, e: &LaidEdge, middle: Xy) -> bool {
    let Some(o) = e.opening.as_deref().and_then(|id| openings.get(id)) else { return false };
    if o.outline.len() < 5 {
        return false;
    }
    let parts = contour::parts(&o.outline, &[]);
    parts.iter().filter(|p| p.is_curved).any(|p| {
        let mut chords = p.points.windows(2);
        chords.any(|w| on_ring(w, middle))
    })
}

fn on_ring(ring: &[Xy], p: Xy) -> bool {
    (0..ring.len()).any(|i| {
        let (a, b) = (ring[i], ring[(i + 1) % ring.len()]);
        let length = (b[0] - a[0]).hypotenuse(b[1] - a[1]);
        if length <= SAME {
            return same(a[0], p[0]) && same(a[1], p[1]);
        }
        let along = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
        let d = [p[0] - a[0], p[1] - a[1]];
        let t = d[0] * along[0] + d[1] * along[1];
        (d[0] * along[1] - d[1] * along[0]).abs() < NEAR && t > -NEAR && t < length + NEAR
    })
}
