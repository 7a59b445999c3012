//! Crumbs: strips under the least that the datum is not said to leave, peaks and lengths of trim too short to
//! cut, blocks that bite a sliver out of a course.

use super::course_lines::{butt, course_at};
use super::named;
use super::rule::{Cases, found};
use super::tolerance::{NEAR, SAME};
use crate::layout::breach::piece::PieceBreach;
use crate::layout::breach::trim::TrimBreach;
use crate::layout::breach::wall::FieldBreach;
use crate::layout::laid::LaidHouse;
use crate::layout::piece::Piece;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::Figure::Inches;
use crate::layout::wall::{LaidElevation, LaidObstacle, LaidWall};
use crate::model::notch::NotchSide;
use crate::model::pole::StripPlace;
use crate::model::trim::TrimKind;

/// Trim shorter than this is a crumb, inches.
const LEAST_TRIM: f64 = 2.0;
/// What is thinner is no strip but noise, inches.
const STRIP: f64 = 1.0 / 64.0;
/// Trim along the sides of walls.
const ALONG: [TrimKind; 6] = [
    TrimKind::Starter,
    TrimKind::WallChannel,
    TrimKind::RakeChannel,
    TrimKind::RoofChannel,
    TrimKind::FinishTrim,
    TrimKind::TopPanel,
];

pub(super) fn check(layout: &LaidHouse) -> [RuleCheck; 2] {
    let mut crumbs = Cases::new(Rule::Crumbs);
    for (e, w) in layout.walls() {
        peaks(&mut crumbs, layout, w);
        for o in w.obstacles.iter().filter(|o| o.mounting_block) {
            block(&mut crumbs, layout, (e, w), o);
        }
    }
    let along = |k: TrimKind| ALONG.contains(&k);
    for t in layout.trims.iter().filter(|t| t.opening.is_none() && along(t.kind)) {
        crumbs.case(t.length >= LEAST_TRIM - NEAR, || {
            let v = found(named::trim(&t.mark), TrimBreach::Crumb).at(named::at_trim(t));
            v.measured(Inches(t.length)).at_least(Inches(LEAST_TRIM))
        });
    }
    [strips(layout), crumbs.done()]
}

/// What is left of a piece by its rip and its notches, with where.
fn left(w: &LaidWall, height: f64, p: &Piece) -> Vec<(StripPlace, f64)> {
    let kept = p.rip.as_ref().map_or(height, |r| r.to - r.from);
    let mut out = Vec::new();
    if let Some(r) = &p.rip {
        out.push((if r.from > 0.0 { StripPlace::AtStarts } else { StripPlace::AtTops }, kept));
    }
    for n in &p.notches {
        let glass = w.openings.iter().any(|o| n.around.iter().any(|id| **id == *o.id));
        let fixture = !glass && !n.around.is_empty();
        let place = match (n.side, glass) {
            (NotchSide::Left | NotchSide::Right | NotchSide::Hole, _) => continue,
            _ if fixture => StripPlace::AtFixtures,
            (NotchSide::Bottom, true) => StripPlace::OverHeads,
            (NotchSide::Top, true) => StripPlace::UnderSills,
            (NotchSide::Bottom, false) => StripPlace::AtStarts,
            (NotchSide::Top, false) => StripPlace::AtTops,
        };
        out.push((place, kept - n.depth));
    }
    out
}

/// No strip is lower than the least that the datum in force is said to leave at its place.
fn strips(layout: &LaidHouse) -> RuleCheck {
    let mut rule = Cases::new(Rule::LeastStrips);
    let Some(chosen) = layout.story_pole.choices.iter().find(|c| c.chosen) else {
        return rule.done();
    };
    let told = &chosen.effects;
    let promised = |place: StripPlace| {
        let of = told.thin_strips.iter().find(|t| t.place == place);
        of.map_or(told.least_strip, |t| t.least.unwrap_or(0.0))
    };
    for on in named::pieces(layout) {
        let c = on.run.course;
        for (place, strip) in left(on.run.wall, c.top - c.bottom, on.piece) {
            let least = promised(place);
            rule.case(strip <= STRIP || strip >= least - SAME, || {
                let v = found(on.subject(), PieceBreach::StripUnderLeast).at(on.middle());
                v.measured(Inches(strip)).at_least(Inches(least))
            });
        }
    }
    rule.done()
}

/// No piece ends in a peak lower than the least strip.
fn peaks(rule: &mut Cases, layout: &LaidHouse, w: &LaidWall) {
    let least = layout.job.least_strip();
    for on in named::pieces(layout).filter(|on| on.run.wall.id == w.id) {
        let b = named::bounds(&on.piece.outline);
        let (high, wide) = (b[3] - b[1], b[2] - b[0]);
        let at_top: Vec<f64> =
            on.piece.outline.iter().filter(|q| q[1] > b[3] - SAME).map(|q| q[0]).collect();
        let top = at_top.iter().fold(f64::MIN, |a, x| a.max(*x))
            - at_top.iter().fold(f64::MAX, |a, x| a.min(*x));
        let ends = &on.run.run.ends;
        let leans = ends[0].slope > 0.0 && ends[1].slope < 0.0;
        let peak = leans && top <= NEAR && wide > 0.0 && on.run.run.pieces.len() == 1;
        rule.case(!peak || high >= least - SAME, || {
            let v = found(on.subject(), PieceBreach::PeakUnderLeast).at(on.middle());
            v.measured(Inches(high)).at_least(Inches(least))
        });
    }
}

/// How many course lines a block cuts, with room round it, where it is moved by so much.
fn lines(layout: &LaidHouse, [low, high]: [f64; 2], by: f64) -> usize {
    let (low, high) = (low + by, high + by);
    let mut i = course_at(layout, low) - 1;
    let mut n = 0;
    while butt(layout, i) < high - SAME {
        n += usize::from(butt(layout, i) > low + SAME);
        i += 1;
    }
    n
}

/// A block bites no course that it need not, and is moved no farther than the job lets it.
fn block(
    rule: &mut Cases,
    layout: &LaidHouse,
    (e, w): (&LaidElevation, &LaidWall),
    o: &LaidObstacle,
) {
    let (most, clear) = (layout.job.courses.block_shift, layout.job.courses.notch_clearance);
    let b = named::bounds(&o.outline);
    let ends = [b[1] - clear, b[3] + clear];
    let by = o.moved.unwrap_or(0.0);
    let subject = || named::obstacle(&w.id, &o.id);
    let at = || named::place(&e.name, named::middle(&o.outline));
    rule.case(by.abs() <= most + SAME, || {
        let v = found(subject(), FieldBreach::BlockMoved).at(at());
        v.measured(Inches(by.abs())).at_most(Inches(most))
    });
    let now = lines(layout, ends, 0.0);
    let first = (0..).map(|i| butt(layout, course_at(layout, ends[0]) + i));
    let cut: Vec<f64> =
        first.take_while(|y| *y < ends[1] - SAME).filter(|y| *y > ends[0] + SAME).collect();
    let (Some(low), Some(high)) = (cut.first(), cut.last()) else { return };
    let free = |by: f64| {
        let hit = |r: [f64; 4]| r[0] < b[2] && r[2] > b[0] && r[1] < b[3] + by && r[3] > b[1] + by;
        !w.openings.iter().any(|q| hit(named::bounds(&q.outline)))
    };
    for shift in [low - ends[0], high - ends[1]] {
        // Where it was drawn it could be moved by the whole of what is allowed.
        let spare = shift.abs() > most + SAME || (by + shift).abs() > most + SAME;
        let helps = lines(layout, ends, shift) < now && free(shift);
        rule.case(spare || !helps, || {
            let v = found(subject(), FieldBreach::BlockBites).at(at());
            v.measured(Inches(shift.abs())).at_least(Inches(most))
        });
    }
}
