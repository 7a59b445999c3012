//! Seams at fixtures: kept off mounting blocks, and past each fixture without one
//! (`TrimFact::CutAtObstacle`), but where one panel spans the run and the seam would be the second at one
//! fixture, or leave a piece too short.

use super::named::{self, RunOn, bounds};
use super::rule::{Cases, found};
use super::tolerance::{SAME, same};
use crate::geom::tol::CUT;
use crate::layout::breach::piece::RunBreach;
use crate::layout::laid::LaidHouse;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::Figure::Inches;
use crate::layout::wall::LaidObstacle;

/// Seams are placed in whole sixteenths.
const SIXTEENTH: f64 = 1.0 / 16.0;

pub(super) fn check(layout: &LaidHouse) -> RuleCheck {
    let mut rule = Cases::new(Rule::SeamsAtFixtures);
    for (e, w) in layout.walls().filter(|(_, w)| !w.obstacles.is_empty()) {
        for on in named::runs_of(e, w) {
            at_run(&mut rule, layout, on);
        }
    }
    rule.done()
}

fn at_run(rule: &mut Cases, layout: &LaidHouse, on: RunOn) {
    let (lap, past) = (layout.job.lap(), layout.job.seams.past_obstacle);
    let boards = layout.job.siding().joints.is_on_studs();
    let longest = layout.stocks.iter().map(|s| s.length).fold(0.0, f64::max);
    let laid = bounds(on.run.pieces.iter().flat_map(|p| &p.outline));
    // Where a seam must stand, and where one may.
    let (mut wanted, mut lawful) = (Vec::new(), Vec::new());
    for o in &on.wall.obstacles {
        let b = bounds(&o.outline);
        let near = b[0] < laid[2] && b[2] > laid[0] && b[1] < laid[3] && b[3] > laid[1];
        if near && (o.mounting_block || boards) {
            off_block(rule, layout, on, o, b);
        } else if near {
            // The first panel ends past it; its seam is half a lap back. A fixture as high as the
            // course ends the run; where a hair is left, it may.
            let x = b[2] + past.min(lap) - lap / 2.0;
            let less = |by: f64| b[1] > laid[1] + by || b[3] < laid[3] - by;
            // One panel that spans the run is cut round it, where the course below has the seam or a
            // piece beside it would be too short.
            let reach = [x + lap / 2.0 - laid[0], laid[2] - x + lap / 2.0];
            let short = reach[0].min(reach[1]) < layout.job.shortest() - SAME;
            let spanned = laid[2] - laid[0] <= longest + SAME;
            if spanned && (short || b[1] < on.course.bottom - SAME) {
                continue;
            }
            lawful.extend(less(SAME).then_some(x));
            wanted.extend(less(CUT).then_some((x, o)));
        }
    }
    let fixed = &on.run.fixed;
    for (x, o) in &wanted {
        // Nearer than a lap to the run's end, or to another such seam, there is no room.
        let stands = |s: &f64, by: f64| (s - x).abs() <= by;
        let ends = [laid[0] + lap, laid[2] - lap];
        let none = *x <= ends[0] + SIXTEENTH || *x >= ends[1] - SIXTEENTH;
        let there = fixed.iter().any(|s| stands(s, SIXTEENTH));
        let crowded = fixed.iter().any(|s| stands(s, 2.0 * lap + SIXTEENTH));
        rule.case(there || none || crowded, || {
            let v = found(on.subject(), RunBreach::SeamMissing).at(on.at(*x));
            v.with(named::obstacle(&on.wall.id, &o.id)).exactly(Inches(*x))
        });
    }
    for s in fixed {
        let known = lawful.iter().any(|x| (s - x).abs() <= SIXTEENTH);
        rule.case(known && on.run.seams.contains(s), || {
            let v = found(on.subject(), RunBreach::SeamFixedByNothing).at(on.at(*s));
            v.measured(Inches(*s))
        });
    }
}

/// No seam laps over a mounting block, nor a joint of boards over any fixture.
fn off_block(rule: &mut Cases, layout: &LaidHouse, on: RunOn, o: &LaidObstacle, b: [f64; 4]) {
    let room = layout.job.lap().abs() / 2.0 + layout.job.courses.notch_clearance - SIXTEENTH;
    let fixed = |s: &f64| on.run.fixed.iter().any(|f| same(*f, *s));
    for s in on.run.seams.iter().filter(|s| !fixed(s)) {
        rule.case(*s <= b[0] - room || *s >= b[2] + room, || {
            let v = found(on.subject(), RunBreach::SeamOverObstacle).at(on.at(*s));
            v.with(named::obstacle(&on.wall.id, &o.id)).measured(Inches(*s))
        });
    }
}
