//! Channels, tabs and caps round an opening that is no level rectangle, part by part along its outline
//! (`TrimFact::WindowFrame`, `TrimFact::HeadTabs`, `TrimFact::DripCaps`): straight channel along what is
//! straight, bent channel along curves, and at each corner the upper one over the lower.

use super::along::{bare, reach};
use super::contour::{LEAST, Part, turn_over};
use super::named;
use super::opening_frame::Frame;
use super::rule::{Cases, count};
use super::tolerance::NEAR;
use crate::geom::tol::SAME;
use crate::geom::vocabulary::Xy;
use crate::job::FrameCut;
use crate::layout::breach::trim::OpeningBreach;
use crate::layout::laid::LaidHouse;
use crate::layout::violation::Figure::{Degrees, Inches};
use crate::layout::wall::LaidEdge;
use crate::model::house::EdgeKind;
use crate::model::trim::{TrimEnd, TrimKind, TrimPiece};
use crate::real::Real;

/// A corner sharper than 30 degrees is lapped, not mitered.
const SHARPEST: f64 = 150.0;
/// How far a miter may be off half its corner, degrees; beside a curve its chords decide.
const ONE_ANGLE: f64 = 0.2;
const BESIDE_CURVE: f64 = 2.0;

/// The channel that goes along a part.
fn channel_of(p: &Part) -> TrimKind {
    match p.kind() {
        _ if p.is_curved => TrimKind::BentChannel,
        EdgeKind::Head => TrimKind::HeadChannel,
        EdgeKind::Sill => TrimKind::SillChannel,
        _ => TrimKind::JambChannel,
    }
}

/// What a channel does at one end of its part.
#[derive(Clone, Copy, Debug, Default)]
struct EndWanted {
    /// How far past the corner it is cut, what laps over the next left out.
    past: f64,
    /// Half the corner, where it is mitered.
    miter: Option<f64>,
    /// Whether it runs over the other one, and may be lapped rather than tabbed.
    over: Option<Over>,
    /// How far the miter may be off.
    within: f64,
    /// The corner's degrees; left out, siding ends here.
    turn: Option<f64>,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Over {
    Tabbed,
    Lapped,
}

/// What is wanted at the corner from one part's end to the next one's beginning, of either.
fn at_corner(a: &Part, b: &Part, layout: &LaidHouse) -> [EndWanted; 2] {
    let rules = &layout.job.trim;
    let (into, on) = (a.heading(true), b.heading(false));
    let degrees = turn_over(into, on, (a.ends().1, b.ends().0)).to_degrees();
    let back = into + std::f64::consts::PI;
    let curves = a.is_curved || b.is_curved;
    let (end, start) = (a.ends().1, b.ends().0);
    // Going back along one another: the one that stands higher.
    let upper_is_a = if degrees.abs() > 179.0 && (end[1] - start[1]).abs() > SAME {
        end[1] > start[1]
    } else if (back.sine() - on.sine()).abs() > 0.01 {
        back.sine() > on.sine()
    } else {
        back.cosine() < on.cosine()
    };
    let upright = |angle: f64| angle.sine().abs().min(angle.cosine().abs()) < 0.002;
    let squared = !curves
        && (degrees.abs() - 90.0).abs() < 0.1
        && upright(into)
        && rules.frame == FrameCut::Square;
    [(a, upper_is_a), (b, !upper_is_a)].map(|(p, is_upper)| {
        let tabbed = is_upper.then_some(Over::Tabbed);
        let plain = EndWanted { turn: Some(degrees), over: tabbed, ..EndWanted::default() };
        if (curves && degrees.abs() <= 30.5) || degrees.abs() > SHARPEST {
            return EndWanted { over: is_upper.then_some(Over::Lapped), ..plain };
        }
        if squared {
            let past = match p.kind() {
                EdgeKind::Jamb if is_upper => rules.tab,
                EdgeKind::Jamb => 0.0,
                _ if degrees > 0.0 => rules.channel_face,
                _ => 0.0,
            };
            return EndWanted { past, ..plain };
        }
        let half = degrees.abs() / 2.0;
        let past =
            if degrees > 0.0 { rules.channel_face * half.to_radians().tangent() } else { 0.0 };
        let within = if curves { BESIDE_CURVE } else { ONE_ANGLE };
        EndWanted { past, miter: Some(half), within, ..plain }
    })
}

/// What is wanted at both ends of each part: where siding meets both of two neighbors, they meet.
fn wanted(parts: &[Part], layout: &LaidHouse, f: &Frame) -> Vec<[EndWanted; 2]> {
    let n = parts.len();
    let mut out = vec![[EndWanted::default(); 2]; n];
    for i in 0..n {
        let j = (i + 1) % n;
        let near = meet(parts[i].ends().1, parts[j].ends().0, f);
        if n > 1 && near && parts[i].is_met(true) && parts[j].is_met(false) {
            let [a, b] = at_corner(&parts[i], &parts[j], layout);
            (out[i][1], out[j][0]) = (a, b);
        }
    }
    out
}

/// Whether two parts meet: in one place, or across a side too short for trim that siding meets too.
fn meet(end: Xy, start: Xy, f: &Frame) -> bool {
    let between = |s: &LaidEdge| {
        (reach(s.from, start) < NEAR && reach(s.to, end) < NEAR)
            || (reach(s.from, end) < NEAR && reach(s.to, start) < NEAR)
    };
    let apart = reach(end, start);
    apart < NEAR || (apart < LEAST + NEAR && f.sides.iter().any(|s| between(s)))
}

/// Distance of a place from the line of a part.
fn off(part: &Part, p: Xy) -> f64 {
    let each = part.points.windows(2).map(|w| {
        let d = [w[1][0] - w[0][0], w[1][1] - w[0][1]];
        let long = (d[0] * d[0] + d[1] * d[1]).max(SAME * SAME);
        let t = ((p[0] - w[0][0]) * d[0] + (p[1] - w[0][1]) * d[1]) / long;
        let t = t.clamp(0.0, 1.0);
        reach(p, [w[0][0] + d[0] * t, w[0][1] + d[1] * t])
    });
    each.fold(f64::INFINITY, f64::min)
}

/// Whether a piece lies all along a part, but for what it reaches past at its ends.
pub(super) fn lies_on(t: &TrimPiece, part: &Part, past: f64) -> bool {
    let line = t.line();
    let ends = [line[0], line[line.len() - 1]];
    // Between what it reaches past by at either end.
    let end = (past / t.length.max(SAME)).min(0.5);
    let inner = [0.0, 0.25, 0.5, 0.75, 1.0].map(|k| t.place(end + (1.0 - 2.0 * end) * k));
    let bends = if part.is_curved { NEAR + 1.0 / 64.0 } else { NEAR };
    let straight_on = |p: Xy| {
        let (a, b) = part.ends();
        let long = reach(a, b).max(SAME);
        ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])).abs() / long
    };
    let on = |p: Xy, by: f64| off(part, p) < by + bends;
    if part.is_curved {
        return ends.iter().all(|p| on(*p, past)) && inner.iter().all(|p| on(*p, 0.0));
    }
    t.path.is_empty() && ends.iter().all(|p| straight_on(*p) < NEAR && on(*p, past))
}

/// Channels and their corners.
pub(super) fn channels(close: &mut Cases, water: &mut Cases, layout: &LaidHouse, f: &Frame) {
    let face = layout.job.trim.channel_face;
    let parts = f.parts();
    let wants = wanted(&parts, layout, f);
    let mut placed = 0;
    for (part, ends) in parts.iter().zip(&wants).filter(|(p, _)| !p.met.is_empty()) {
        let trim = channel_of(part);
        let most = ends.iter().map(|e| e.past).fold(0.0, f64::max) + face;
        let mine: Vec<&TrimPiece> =
            f.of_kind(trim).into_iter().filter(|t| lies_on(t, part, most)).collect();
        placed += mine.len();
        long_enough(close, f, (part, ends, trim), &mine, face);
        covered(close, f, (part, trim), &mine);
        for (at_end, end) in [(false, ends[0]), (true, ends[1])] {
            corner(close, water, layout, f, (part, at_end, end), &mine);
        }
    }
    let channels = [
        TrimKind::HeadChannel,
        TrimKind::SillChannel,
        TrimKind::JambChannel,
        TrimKind::BentChannel,
    ];
    for trim in channels {
        for t in f.of_kind(trim) {
            let of_kind = |p: &&Part| !p.met.is_empty() && channel_of(p) == trim;
            let most = 4.0 * face + layout.job.trim.tab;
            let on = parts.iter().filter(of_kind).any(|p| lies_on(t, p, most));
            close.case(on, || {
                f.broken(OpeningBreach::OffContour { trim }, (t.place(0.5), t.place(0.5)))
                    .with(named::trim(&t.mark))
            });
        }
    }
    let all: usize = channels.iter().map(|k| f.of_kind(*k).len()).sum();
    close.case(placed == all, || {
        f.broken(OpeningBreach::ChannelCount, f.whole()).measured(count(all)).exactly(count(placed))
    });
}

/// Channel along a part is as long as siding meets it, with what its corners ask.
fn long_enough(
    rule: &mut Cases,
    f: &Frame,
    (part, ends, trim): (&Part, &[EndWanted; 2], TrimKind),
    mine: &[&TrimPiece],
    face: f64,
) {
    let met: f64 = part.met.iter().map(|s| s.1 - s.0).sum();
    let want = met + ends[0].past + ends[1].past;
    let laps = |t: &&TrimPiece| t.ends.iter().filter(|e| matches!(e, TrimEnd::Lap(_))).count();
    let have: f64 = mine.iter().map(|t| t.length - laps(t) as f64 * face).sum();
    let noise = NEAR * (1.0 + ends.iter().filter(|e| e.within > ONE_ANGLE).count() as f64)
        + 1e-3 * mine.len() as f64
        + 2e-3 * if part.is_curved { met } else { 0.0 };
    rule.case((have - want).abs() < noise, || {
        let v = f.broken(OpeningBreach::Length { trim }, part.ends());
        v.measured(Inches(have)).exactly(Inches(want))
    });
}

/// Wherever siding meets a part there is its channel.
fn covered(rule: &mut Cases, f: &Frame, (part, trim): (&Part, TrimKind), mine: &[&TrimPiece]) {
    for s in &part.met {
        let (a, b) = (part.place(s.0), part.place(s.1));
        let open = if part.is_curved { bare_of_bent(part, *s, mine) } else { bare(a, b, mine) };
        rule.case(open < NEAR, || {
            let v = f.broken(OpeningBreach::SideBare { trim, side: part.kind() }, (a, b));
            v.measured(Inches(open)).exactly(Inches(0.0))
        });
    }
}

/// Length of a curve along which no bent piece lies, looked at every inch.
fn bare_of_bent(part: &Part, (low, high): (f64, f64), mine: &[&TrimPiece]) -> f64 {
    let n = (high - low).ceil().max(1.0);
    let step = (high - low) / n;
    let lines: Vec<Part> =
        mine.iter().map(|t| Part { points: t.line(), is_curved: true, met: Vec::new() }).collect();
    let open = (0..n as usize).filter(|i| {
        let p = part.place(low + (*i as f64 + 0.5) * step);
        lines.iter().all(|l| off(l, p) > NEAR)
    });
    open.count() as f64 * step
}

/// The end of a channel at a corner: mitered at half of it; the upper one tabbed or lapped over.
fn corner(
    close: &mut Cases,
    water: &mut Cases,
    layout: &LaidHouse,
    f: &Frame,
    (part, at_end, want): (&Part, bool, EndWanted),
    mine: &[&TrimPiece],
) {
    if want.turn.is_none() || mine.is_empty() {
        return;
    }
    let place = if at_end { part.ends().1 } else { part.ends().0 };
    // It is cut past the corner: of a side shorter than that the other end would be nearer.
    let cut_at = part.place_past(at_end, want.past);
    let nearest = mine
        .iter()
        .flat_map(|t| [(t.from, &t.ends[0]), (t.to, &t.ends[1])])
        .min_by(|a, b| reach(a.0, cut_at).total_cmp(&reach(b.0, cut_at)));
    let Some((_, end)) = nearest else { return };
    let cut = match end {
        TrimEnd::Miter(angle) | TrimEnd::MiterTab { angle, .. } => Some(*angle),
        _ => None,
    };
    let agrees = match (cut, want.miter) {
        (Some(cut), Some(angle)) => (cut - angle).abs() < want.within,
        (cut, angle) => cut.is_none() && angle.is_none(),
    };
    close.case(agrees, || {
        let v = f.broken(OpeningBreach::CornerCut, (place, place));
        v.measured(Degrees(cut.unwrap_or(0.0))).exactly(Degrees(want.miter.unwrap_or(0.0)))
    });
    let tab = layout.job.trim.tab;
    let runs_over = match want.over {
        None => true,
        Some(Over::Lapped) => matches!(end, TrimEnd::Lap(_)),
        Some(Over::Tabbed) => match end {
            TrimEnd::Tab(by) | TrimEnd::MiterTab { tab: by, .. } => (by - tab).abs() < SAME,
            _ => false,
        },
    };
    water.case(runs_over, || f.broken(OpeningBreach::CornerTab, (place, place)));
}

/// A drip cap over each straight head that siding meets; past it where it ends free or over a jamb.
pub(super) fn caps(rule: &mut Cases, layout: &LaidHouse, f: &Frame) {
    let past = layout.job.trim.drip_cap_past;
    let parts = f.parts();
    let wants = wanted(&parts, layout, f);
    let is_head = |p: &Part| !p.is_curved && p.kind() == EdgeKind::Head;
    let n = parts.len();
    let mut want = 0.0;
    let caps = f.of_kind(TrimKind::DripCap);
    for (i, part) in parts.iter().enumerate().filter(|(_, p)| is_head(p) && !p.met.is_empty()) {
        for s in &part.met {
            let (a, b) = (part.place(s.0), part.place(s.1));
            let open = bare(a, b, &caps);
            rule.case(open < NEAR, || {
                let v = f.broken(OpeningBreach::DripCap, (a, b));
                v.measured(Inches(open)).exactly(Inches(0.0))
            });
            want += s.1 - s.0;
        }
        for (end, other) in [(0, (i + n - 1) % n), (1, (i + 1) % n)] {
            let stops = wants[i][end].turn.is_some_and(|degrees| {
                let mitered = is_head(&parts[other]) && degrees.abs() <= SHARPEST;
                let smooth = parts[other].is_curved && degrees.abs() <= 30.5;
                mitered || smooth || degrees < 0.0
            });
            want += if stops { 0.0 } else { past };
        }
        // Each stretch between two that siding does not meet ends free.
        want += 2.0 * past * (part.met.len() - 1) as f64;
    }
    let laps = |t: &&&TrimPiece| t.ends.iter().any(|e| matches!(e, TrimEnd::Lap(_)));
    let lapped = caps.iter().filter(laps).count() as f64 * layout.job.trim.channel_face;
    let have = caps.iter().map(|t| t.length).sum::<f64>() - lapped;
    rule.case((have - want).abs() < NEAR * (1.0 + caps.len() as f64), || {
        let v = f.broken(OpeningBreach::Length { trim: TrimKind::DripCap }, f.whole());
        v.measured(Inches(have)).exactly(Inches(want))
    });
}
