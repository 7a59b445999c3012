//! Boards on the wall's face and what they do to the siding: covers, friezes, surrounds; bands with
//! their caps (FACTS OT-14, OT-15); joints of the building (OT-18); flashing round openings (SD-102,
//! SD-103).

use super::along::{bare, reach};
use super::corners::{kind, lies};
use super::{NEAR, Rule};
use crate::geom::vocabulary::Xy;
use crate::job::TopFinish;
use crate::layout::Layout;
use crate::layout::by_wall::ByWall;
use crate::layout::verified::RuleCheck;
use crate::layout::wall::{LaidOpening, LaidWall};
use crate::model::house::{EdgeKind, OpeningKind, OpeningSide};
use crate::model::trim::{TrimKind, TrimPiece};

/// Boards shorter than this are none, inches.
const LEAST: f64 = 1.0;

pub(super) fn check(layout: &Layout, at: &ByWall) -> [RuleCheck; 4] {
    let mut rules = [(); 4].map(|()| Rule::default());
    let [decor, bands, joints, flashing] = &mut rules;
    for (_, w) in layout.walls() {
        sides(decor, layout, at, w);
        for o in &w.openings {
            let of = at.frame(&w.id, o);
            surround(decor, layout, o, of);
            unsided(flashing, w, o);
            flashed(flashing, layout, o, of);
        }
        bands_of(bands, layout, w, at.trims(&w.id));
        unbridged(joints, layout, w);
    }
    covers(decor, layout);
    let [decor, bands, joints, flashing] = rules;
    [
        decor.done("siding ends at covers, friezes and surrounds, which have their boards"),
        bands.done("bands have their board and their cap"),
        joints.done("no siding bridges a joint of the building"),
        flashing.done("flashing round openings has the published sizes"),
    ]
}

fn sides(rule: &mut Rule, layout: &Layout, at: &ByWall, w: &LaidWall) {
    let r = &layout.job.trim;
    for s in w.edges.iter().filter(|s| s.opening.is_none() && reach(s.from, s.to) > LEAST) {
        match s.kind {
            EdgeKind::OutsideCorner => {
                let mut corners = at.sides(&w.id).iter().filter(|(c, _)| kind(c) == s.kind);
                let on = corners.find(|(_, k)| lies(layout, w, s, k));
                let off = on.map(|(_, k)| (k.x - (s.from[0] + s.to[0]) / 2.0).abs());
                // A side that leans is off by as much at most.
                let lean = (s.from[0] - s.to[0]).abs();
                let held = off.is_some_and(|d| (d - r.corner_cover).abs() < NEAR + lean);
                rule.case(held, || {
                    format!("{}: siding ends {off:?} from its corner, not {}", w.id, r.corner_cover)
                });
            }
            EdgeKind::Eave if r.frieze > 0.0 => {
                let up = |p: Xy, by: f64| [p[0], p[1] + by];
                let along = |by: f64| (up(s.from, by), up(s.to, by));
                boarded(rule, at, w, TrimKind::Frieze, along(r.frieze / 2.0), 0.0);
                if r.top == TopFinish::Crown {
                    boarded(rule, at, w, TrimKind::Crown, along(r.frieze), 0.0);
                }
            }
            EdgeKind::Rake if r.rake_frieze > 0.0 => {
                // Counter-clockwise the wall lies on the left hand: outward is to the right.
                let length = reach(s.from, s.to);
                let half = r.rake_frieze / 2.0 / length;
                let (dx, dy) = (s.to[0] - s.from[0], s.to[1] - s.from[1]);
                let out = |p: Xy| [p[0] + dy * half, p[1] - dx * half];
                let slant = half * (dy * length / dx).abs();
                boarded(rule, at, w, TrimKind::Frieze, (out(s.from), out(s.to)), slant);
            }
            _ => {}
        }
    }
}

/// A board lies all along a side; a slanting cut leaves `slant` of its middle line at each end.
fn boarded(
    rule: &mut Rule,
    at: &ByWall,
    w: &LaidWall,
    kind: TrimKind,
    (a, b): (Xy, Xy),
    slant: f64,
) {
    let of: Vec<&TrimPiece> = at.trims(&w.id).iter().copied().filter(|t| t.kind == kind).collect();
    let open = bare(a, b, &of);
    rule.case(open < 2.0 * slant + NEAR, || {
        format!("{}: {open:.2} in at {:.2} have no {}", w.id, a[1], kind.words())
    });
}

/// Every outside post has a cover as long as it, where the job has covers; else there is none.
fn covers(rule: &mut Rule, layout: &Layout) {
    let of = |kind: TrimKind| -> f64 {
        // What laps is not counted twice.
        let mine = layout.trims.iter().filter(|t| t.kind == kind);
        mine.map(|t| {
            let spliced = matches!(t.ends[0], crate::model::trim::TrimEnd::Splice { .. });
            t.length - if spliced { layout.job.trim.post_lap } else { 0.0 }
        })
        .sum()
    };
    let (posts, covers) = (of(TrimKind::OutsidePost), of(TrimKind::CornerCover));
    let want = if layout.job.trim.corner_cover > 0.0 { posts } else { 0.0 };
    rule.case((covers - want).abs() < 1.0, || {
        format!("{covers:.2} of corner cover, {want:.2} is needed")
    });
}

fn has_sill(o: &LaidOpening) -> bool {
    matches!(o.kind, OpeningKind::Window | OpeningKind::Vent)
}

fn sum(of: &[&TrimPiece], kind: TrimKind) -> f64 {
    of.iter().filter(|t| t.kind == kind).map(|t| t.length).sum()
}

/// 1 for a side that the opening has and that ends it, 0 for another.
fn sides_of(o: &LaidOpening) -> [f64; 4] {
    use OpeningSide::{Head, Left, Right, Sill};
    [Left, Right, Sill, Head].map(|side| {
        let none = o.cut.contains(&side) || (side == Sill && !has_sill(o));
        if none { 0.0 } else { 1.0 }
    })
}

/// No siding meets an opening at a side where it goes on over something else.
fn unsided(rule: &mut Rule, w: &LaidWall, o: &LaidOpening) {
    for side in &o.cut {
        let (axis, at) = match side {
            OpeningSide::Left => (0, o.left),
            OpeningSide::Right => (0, o.right),
            OpeningSide::Sill => (1, o.sill),
            OpeningSide::Head => (1, o.head),
        };
        let met = w.edges.iter().filter(|s| s.opening.as_ref() == Some(&o.id)).any(|s| {
            (s.from[axis] - at).abs() < NEAR
                && (s.to[axis] - at).abs() < NEAR
                && reach(s.from, s.to) > LEAST
        });
        rule.case(!met, || format!("{}: siding meets its {side:?}, which is told as cut", o.id));
    }
}

/// Head and sill boards run right across, jambs stand between them.
fn surround(rule: &mut Rule, layout: &Layout, o: &LaidOpening, of: &[&TrimPiece]) {
    let w = layout.job.trim.surround;
    let [left, right, sill, head] = sides_of(o);
    let jamb = (o.head - o.sill - (sill + head) * w).max(0.0);
    let level = (sill + head) * (o.right - o.left);
    let want = if w > 0.0 { level + (left + right) * jamb } else { 0.0 };
    let have = sum(of, TrimKind::Surround);
    rule.case((have - want).abs() < NEAR + 2.0 * LEAST * f64::from(u8::from(jamb < LEAST)), || {
        format!("{}: {have:.2} of surround, {want:.2} is needed", o.id)
    });
}

/// FACTS SD-102, SD-103 (VSI-A): 9 in past each jamb under the sill; jambs from 1/2 in over the foot of
/// the 9 in sill flashing to 8 1/2 in over the head.
fn flashed(rule: &mut Rule, layout: &Layout, o: &LaidOpening, of: &[&TrimPiece]) {
    let w = layout.job.trim.surround;
    let [left, right, sill, head] = sides_of(o);
    let level = o.right - o.left + (left + right) * (9.0 - w);
    let jamb = o.head - o.sill + sill * (8.5 - w) + head * (8.5 - w);
    let wants = [
        (TrimKind::SillFlashing, sill * level),
        (TrimKind::JambFlashing, (left + right) * jamb),
        (TrimKind::HeadFlashing, head * level),
    ];
    for (kind, want) in wants {
        let have = sum(of, kind);
        rule.case((have - want).abs() < NEAR, || {
            format!("{}: {have:.2} of {}, {want:.2} is needed", o.id, kind.words())
        });
    }
}

/// How long a band is along its longest side that is not plumb.
fn length_of(ring: &[Xy]) -> f64 {
    let steps = ring.iter().zip(ring.iter().cycle().skip(1));
    let runs = steps.map(|(a, b)| (b[0] - a[0], b[1] - a[1])).filter(|d| d.0.abs() > NEAR);
    let Some((x, y)) = runs.max_by(|a, b| a.0.hypot(a.1).total_cmp(&b.0.hypot(b.1))) else {
        return 0.0;
    };
    let along = ring.iter().map(|p| (p[0] * x + p[1] * y) / x.hypot(y));
    let (low, high) = along.fold((f64::MAX, f64::MIN), |(a, b), t| (a.min(t), b.max(t)));
    high - low
}

fn bands_of(rule: &mut Rule, layout: &Layout, w: &LaidWall, mine: &[&TrimPiece]) {
    let boxed = |ring: &Vec<Xy>| {
        let over =
            |f: fn(f64, f64) -> f64, k: usize| ring.iter().map(|p| p[k]).reduce(f).unwrap_or(0.0);
        (over(f64::min, 0), over(f64::max, 0), over(f64::max, 1))
    };
    let bands: Vec<(f64, f64, f64)> = w.bands.iter().map(boxed).collect();
    // A zone's set stops at the house's bands.
    let boards: f64 = w.bands.iter().map(|r| length_of(r)).sum();
    let want = if layout.zone.is_some() { 0.0 } else { boards };
    let have = sum(mine, TrimKind::Band);
    rule.case((have - want).abs() < NEAR, || {
        format!("{}: {have:.2} of band board, {want:.2} is needed", w.id)
    });
    let caps: Vec<&TrimPiece> = mine
        .iter()
        .copied()
        .filter(|t| t.kind == TrimKind::DripCap && t.opening.is_none())
        .collect();
    for s in w.edges.iter().filter(|s| s.kind == EdgeKind::BareTop) {
        let x = (s.from[0] + s.to[0]) / 2.0;
        let on = bands.iter().any(|(x0, x1, y)| (s.from[1] - y).abs() < NEAR && x > *x0 && x < *x1);
        if on && reach(s.from, s.to) > LEAST {
            let open = bare(s.from, s.to, &caps);
            rule.case(open < NEAR, || format!("{}: {open:.2} in of a band have no cap", w.id));
        }
    }
}

/// At a joint every run ends, and on either side of it stands a channel.
fn unbridged(rule: &mut Rule, layout: &Layout, w: &LaidWall) {
    let half = layout.job.trim.movement_gap / 2.0;
    let ends = w.outline.iter().map(|p| p[0]);
    let (low, high) = ends.fold((f64::MAX, f64::MIN), |(a, b), x| (a.min(x), b.max(x)));
    let apart = w.joints.windows(2).all(|p| p[1] - p[0] > 2.0 * half);
    rule.case(apart && w.joints.iter().all(|x| *x > low && *x < high), || {
        format!("{}: its joints {:?} are not between its ends, one by one", w.id, w.joints)
    });
    for x in &w.joints {
        for c in &w.courses {
            let over = c.runs.iter().find(|r| r.x0 < x - half + NEAR && r.x1 > x + half - NEAR);
            rule.case(over.is_none(), || {
                format!("{}, course {}: a run crosses the joint at {x:.2}", w.id, c.index + 1)
            });
        }
        for side in [x - half, x + half] {
            let channel = w.edges.iter().any(|s| {
                s.kind == EdgeKind::Abutment
                    && (s.from[0] - side).abs() < NEAR
                    && (s.to[0] - side).abs() < NEAR
            });
            rule.case(channel, || format!("{}: no channel at {side:.2}, by its joint", w.id));
        }
    }
}
