//! The frame of trim round each opening (`TrimFact::WindowFrame`, `TrimFact::HeadTabs`,
//! `TrimFact::UndersillInChannel`; drip caps: IRC R703.4 by `TrimFact::DripCaps`).

use super::along::bare;
use super::named;
use super::opening_frame::Frame;
use super::rule::{Cases, count, found};
use super::tolerance::NEAR;
use super::{shaped_trim, undersill};
use crate::geom::tol::SAME;
use crate::geom::vocabulary::Xy;
use crate::job::FrameCut;
use crate::layout::breach::trim::OpeningBreach;
use crate::layout::by_wall::ByWall;
use crate::layout::laid::LaidHouse;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::Figure::Inches;
use crate::layout::wall::LaidEdge;
use crate::model::house::EdgeKind;
use crate::model::trim::{TrimEnd, TrimKind, TrimPiece, TrimStock};

pub(super) fn check(layout: &LaidHouse, at: &ByWall) -> [RuleCheck; 3] {
    let mut close = Cases::new(Rule::OpeningChannels);
    let mut water = Cases::new(Rule::OpeningDrainage);
    let mut under = Cases::new(Rule::UndersillPlaces);
    let pockets = layout.job.siding().receivers.has_pockets();
    for (e, w) in layout.walls() {
        for o in &w.openings {
            let frame = Frame::of(at, e, w, o);
            if pockets {
                undersill::check(&mut under, layout, &frame);
                on_its_wall(&mut close, &frame);
            } else {
                unchanneled(&mut close, &frame);
            }
            if frame.plain {
                plain(&mut close, &mut water, layout, &frame);
                continue;
            }
            if pockets {
                shaped_trim::channels(&mut close, &mut water, layout, &frame);
            }
            shaped_trim::caps(&mut water, layout, &frame);
        }
    }
    [close.done(), water.done(), under.done()]
}

/// A level rectangle, all of which borders the field but what a door stands on.
fn plain(close: &mut Cases, water: &mut Cases, layout: &LaidHouse, f: &Frame) {
    if layout.job.siding().receivers.has_pockets() {
        lengths(close, layout, f);
        sides(close, f);
        mitered(close, layout, f);
        level_ends(close, layout, f);
    }
    tabs(water, layout, f);
    caps(water, layout, f);
}

/// Net length of pieces: what laps over a neighbor is not counted twice.
fn net(pieces: &[&TrimPiece], lap: f64) -> f64 {
    let laps = |t: &&TrimPiece| t.ends.iter().filter(|e| matches!(e, TrimEnd::Lap(_))).count();
    pieces.iter().map(|t| t.length - laps(t) as f64 * lap).sum()
}

/// Boards butt against trim: no channel stands round their openings.
fn unchanneled(rule: &mut Cases, f: &Frame) {
    let others = [TrimKind::DripCap, TrimKind::Surround];
    let channels = f.trims.iter().filter(|t| !others.contains(&t.kind) && !t.kind.behind()).count();
    rule.case(channels == 0, || {
        let v = f.broken(OpeningBreach::ChannelsAtBoards, f.whole());
        v.measured(count(channels)).exactly(count(0))
    });
}

/// Channels of each sort are as long as the sides they stand on, with what they reach past.
fn lengths(rule: &mut Cases, layout: &LaidHouse, f: &Frame) {
    let face = layout.job.trim.channel_face;
    let side = |kind: EdgeKind| f.bordering(kind);
    let (head, jamb, sill) = (side(EdgeKind::Head), side(EdgeKind::Jamb), side(EdgeKind::Sill));
    let covered = |x: bool| if x { face } else { 0.0 };
    // Level ones reach a face past each jamb; where none stands they end with the frame.
    let hands = f64::from(u8::from(stands(f, true))) + f64::from(u8::from(stands(f, false)));
    let past = |along: f64| if along > 0.0 { along + hands * face } else { 0.0 };
    // A jamb reaches past a face at each end where it meets a channel.
    let ends = match layout.job.trim.frame {
        FrameCut::Miter => covered(head > 0.0) + covered(sill > 0.0),
        FrameCut::Square if sill > 0.0 => layout.job.trim.tab,
        FrameCut::Square => 0.0,
    };
    for (trim, want) in [
        (TrimKind::HeadChannel, past(head)),
        (TrimKind::SillChannel, past(sill)),
        (TrimKind::JambChannel, jamb + jamb_sides(f) as f64 * ends),
    ] {
        let have = net(&f.of_kind(trim), face);
        rule.case((have - want).abs() < NEAR, || {
            let v = f.broken(OpeningBreach::Length { trim }, f.whole());
            v.measured(Inches(have)).exactly(Inches(want))
        });
    }
}

/// Each side has its channel all along.
fn sides(rule: &mut Cases, f: &Frame) {
    for e in &f.sides {
        let trim = match e.kind {
            EdgeKind::Head => TrimKind::HeadChannel,
            EdgeKind::Sill => TrimKind::SillChannel,
            _ => TrimKind::JambChannel,
        };
        let open = bare(e.from, e.to, &f.of_kind(trim));
        rule.case(open < NEAR, || {
            let breach = OpeningBreach::SideBare { trim, side: e.kind };
            f.broken(breach, (e.from, e.to)).measured(Inches(open)).exactly(Inches(0.0))
        });
    }
}

/// Four corners of two ends each, mitered at half a right angle or not at all.
fn mitered(rule: &mut Cases, layout: &LaidHouse, f: &Frame) {
    let closed = f.bordering(EdgeKind::Head) > 0.0 && f.bordering(EdgeKind::Sill) > 0.0;
    if !(closed && jamb_sides(f) == 2) {
        return;
    }
    let miter = |e: &TrimEnd| matches!(e, TrimEnd::Miter(a) | TrimEnd::MiterTab { angle: a, .. } if (a - 45.0).abs() < 0.1);
    let channels = f.trims.iter().filter(|t| t.kind.stock() == TrimStock::JChannel);
    let n = channels.flat_map(|t| &t.ends).filter(|e| miter(e)).count();
    let want = if layout.job.trim.frame == FrameCut::Miter { 8 } else { 0 };
    rule.case(n == want, || {
        let v = f.broken(OpeningBreach::MiteredEnds, f.whole());
        v.measured(count(n)).exactly(count(want))
    });
}

fn on_its_wall(rule: &mut Cases, f: &Frame) {
    for t in &f.trims {
        rule.case(t.wall == f.wall.id, || {
            let subject = named::opening(&f.wall.id, &f.opening.id);
            let v = found(named::trim(&t.mark), OpeningBreach::OnAnotherWall);
            v.with(subject).at(named::at_trim(t))
        });
    }
}

/// Whether a jamb stands on a hand.
fn stands(f: &Frame, left: bool) -> bool {
    let sum: f64 = f.sides.iter().map(|e| e.from[0] + e.to[0]).sum();
    let middle = sum / (2 * f.sides.len().max(1)) as f64;
    f.sides.iter().any(|e| e.kind == EdgeKind::Jamb && (e.from[0] < middle) == left)
}

/// On how many hands an opening has jambs.
fn jamb_sides(f: &Frame) -> usize {
    usize::from(stands(f, true)) + usize::from(stands(f, false))
}

/// Level trim without a jamb at its end stays within the siding, out of the pocket of a corner post; where
/// the like trim of another opening goes on, one of the two laps over the other.
fn level_ends(rule: &mut Cases, layout: &LaidHouse, f: &Frame) {
    let level = [TrimKind::HeadChannel, TrimKind::SillChannel, TrimKind::DripCap];
    let lap = layout.job.trim.channel_face;
    for left in [true, false].into_iter().filter(|left| !stands(f, *left)) {
        let end = |t: &TrimPiece| {
            let ends = [t.from[0], t.to[0]];
            if left { ends[0].min(ends[1]) } else { ends[0].max(ends[1]) }
        };
        for t in f.trims.iter().filter(|t| level.contains(&t.kind)) {
            let sides = f.sides.iter().flat_map(|e| [e.from[0], e.to[0]]);
            let last =
                if left { sides.fold(f64::MAX, f64::min) } else { sides.fold(f64::MIN, f64::max) };
            let over = if left { last - end(t) } else { end(t) - last };
            let laps =
                t.ends.iter().any(|e| matches!(e, TrimEnd::Lap(by) if (*by - lap).abs() < SAME));
            rule.case(over < NEAR || laps && over < lap + NEAR, || {
                let v = f.broken(OpeningBreach::Length { trim: t.kind }, (t.from, t.to));
                v.measured(Inches(over)).exactly(Inches(0.0))
            });
        }
    }
}

/// Tabs where one channel stands over another.
fn tabs(rule: &mut Cases, layout: &LaidHouse, f: &Frame) {
    let by_rule = layout.job.trim.tab;
    let tab = |e: &TrimEnd| matches!(e, TrimEnd::Tab(by) | TrimEnd::MiterTab { tab: by, .. } if (*by - by_rule).abs() < SAME);
    let heads = f.of_kind(TrimKind::HeadChannel);
    if let (Some(first), Some(last)) = (heads.first(), heads.last()) {
        let done = |end, left| tab(end) || !stands(f, left);
        rule.case(done(&first.ends[0], true) && done(&last.ends[1], false), || {
            f.broken(OpeningBreach::HeadTabs, f.across(f.opening.head))
        });
    }
    let over_sill = f.bordering(EdgeKind::Sill) > 0.0;
    for t in f.of_kind(TrimKind::JambChannel).iter().filter(|t| over_sill && foot(t, f)) {
        rule.case(tab(&t.ends[0]), || {
            let low = if t.from[1] < t.to[1] { t.from } else { t.to };
            f.broken(OpeningBreach::JambTab, (low, low)).with(named::trim(&t.mark))
        });
    }
}

/// A drip cap over each head, past it at both ends.
fn caps(rule: &mut Cases, layout: &LaidHouse, f: &Frame) {
    let heads: Vec<&LaidEdge> =
        f.sides.iter().copied().filter(|e| e.kind == EdgeKind::Head).collect();
    for e in &heads {
        let past = |a: Xy, left: bool| {
            let by = if stands(f, left) { layout.job.trim.drip_cap_past } else { 0.0 };
            [a[0] + if left { -by } else { by }, a[1]]
        };
        let (left, right) = if e.from[0] < e.to[0] { (e.from, e.to) } else { (e.to, e.from) };
        let open = bare(past(left, true), past(right, false), &f.of_kind(TrimKind::DripCap));
        rule.case(open < NEAR || heads.len() > 1, || {
            let v = f.broken(OpeningBreach::DripCap, (e.from, e.to));
            v.measured(Inches(open)).exactly(Inches(0.0))
        });
    }
}

/// Whether a jamb channel is the lowest on its hand.
fn foot(t: &TrimPiece, f: &Frame) -> bool {
    let low = |t: &TrimPiece| t.from[1].min(t.to[1]);
    f.of_kind(TrimKind::JambChannel)
        .iter()
        .filter(|q| (q.from[0] - t.from[0]).abs() < NEAR)
        .all(|q| low(q) >= low(t) - SAME)
}
