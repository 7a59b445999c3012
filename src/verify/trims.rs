//! The frame of trim round each opening (FACTS SD-104, SD-105, PR-14, PR-15; drip caps: IRC R703.4
//! by OT-15).

use super::NEAR;
use super::along::{bare, reach};
use super::{Rule, on_course_line};
use crate::geom::tol::SAME;
use crate::job::FrameCut;
use crate::layout::Layout;
use crate::layout::by_wall::ByWall;
use crate::layout::verified::RuleCheck;
use crate::layout::wall::{LaidEdge, LaidOpening, LaidWall};
use crate::model::house::EdgeKind;
use crate::model::ids::OpeningId;
use crate::model::trim::{TrimEnd, TrimKind, TrimPiece, TrimStock};

pub(super) fn check(layout: &Layout, at: &ByWall) -> [RuleCheck; 2] {
    let (mut close, mut water) = (Rule::default(), Rule::default());
    for (_, w) in layout.walls() {
        for o in &w.openings {
            let trims = Frame::of(at, w, o);
            closes(&mut close, layout, w, &trims);
            sheds(&mut water, layout, &trims);
        }
    }
    [
        close.done("channels close round every opening"),
        water.done("water runs over each channel into the next"),
    ]
}

/// An opening with its sides and its trim.
struct Frame<'a> {
    opening: &'a LaidOpening,
    sides: Vec<&'a LaidEdge>,
    trims: Vec<&'a TrimPiece>,
    /// Its outline is a box, all of which borders the field but what a door stands on.
    plain: bool,
}

impl<'a> Frame<'a> {
    fn of(at: &ByWall<'a>, w: &'a LaidWall, o: &'a LaidOpening) -> Self {
        let mine = |id: &Option<OpeningId>| id.as_deref() == Some(o.id.as_str());
        let sides: Vec<&LaidEdge> = w.edges.iter().filter(|e| mine(&e.opening)).collect();
        let trims = at.frame(&w.id, o).to_vec();
        let upright = |e: &&LaidEdge| {
            let (dx, dy) = ((e.from[0] - e.to[0]).abs(), (e.from[1] - e.to[1]).abs());
            dx <= SAME || dy <= SAME
        };
        let plain = o.outline.len() == 4 && sides.iter().all(upright);
        Frame { opening: o, sides, trims, plain }
    }

    fn of_kind(&self, kind: TrimKind) -> Vec<&'a TrimPiece> {
        self.trims.iter().copied().filter(|t| t.kind == kind).collect()
    }

    fn bordering(&self, kind: EdgeKind) -> f64 {
        self.sides.iter().filter(|e| e.kind == kind).map(|e| reach(e.from, e.to)).sum()
    }
}

/// Net length of pieces: what laps over a neighbour is not counted twice.
fn net(pieces: &[&TrimPiece], lap: f64) -> f64 {
    let laps = |t: &&TrimPiece| t.ends.iter().filter(|e| matches!(e, TrimEnd::Lap(_))).count();
    pieces.iter().map(|t| t.length - laps(t) as f64 * lap).sum()
}

fn closes(rule: &mut Rule, layout: &Layout, w: &LaidWall, f: &Frame) {
    if !layout.job.siding().receivers.has_pockets() {
        let others = [TrimKind::DripCap, TrimKind::Surround];
        let channels =
            f.trims.iter().filter(|t| !others.contains(&t.kind) && !t.kind.behind()).count();
        rule.case(channels == 0, || format!("{}: {channels} channels round boards", f.opening.id));
        return;
    }
    let (o, face) = (f.opening, layout.job.trim.channel_face);
    let side = |kind: EdgeKind| f.bordering(kind);
    let (head, jamb, sill) = (side(EdgeKind::Head), side(EdgeKind::Jamb), side(EdgeKind::Sill));
    let covered = |x: bool| if x { face } else { 0.0 };
    // A jamb reaches past a face at each end where it meets a channel.
    let jambs = jamb_sides(f);
    let wants = [
        (TrimKind::HeadChannel, head, if head > 0.0 { head + 2.0 * face } else { 0.0 }),
        (TrimKind::SillChannel, sill, if sill > 0.0 { sill + 2.0 * face } else { 0.0 }),
        (
            TrimKind::JambChannel,
            jamb,
            jamb + jambs as f64
                * match layout.job.trim.frame {
                    FrameCut::Mitre => covered(head > 0.0) + covered(sill > 0.0),
                    FrameCut::Square if sill > 0.0 => layout.job.trim.tab,
                    FrameCut::Square => 0.0,
                },
        ),
    ];
    for (kind, along, want) in wants {
        let pieces = f.of_kind(kind);
        let have = net(&pieces, face);
        rule.case((have - want).abs() < NEAR, || {
            format!("{}: {} of {have:.3} along {along:.3}, {want:.3} is needed", o.id, kind.words())
        });
    }
    if f.plain {
        for e in &f.sides {
            let kind = match e.kind {
                EdgeKind::Head => TrimKind::HeadChannel,
                EdgeKind::Sill => TrimKind::SillChannel,
                _ => TrimKind::JambChannel,
            };
            let open = bare(e.from, e.to, &f.of_kind(kind));
            rule.case(open < NEAR, || {
                let name = kind.words();
                format!("{}: {open:.2} in of its {:?} have no {name}", o.id, e.kind)
            });
        }
    }
    if f.plain && head > 0.0 && sill > 0.0 && jambs == 2 {
        // Four corners of two ends each, mitred at half a right angle or not at all.
        let mitre = |e: &TrimEnd| matches!(e, TrimEnd::Mitre(a) | TrimEnd::MitreTab { angle: a, .. } if (a - 45.0).abs() < 0.1);
        let channels = f.trims.iter().filter(|t| t.kind.stock() == TrimStock::JChannel);
        let n = channels.flat_map(|t| &t.ends).filter(|e| mitre(e)).count();
        let want = if layout.job.trim.frame == FrameCut::Mitre { 8 } else { 0 };
        rule.case(n == want, || format!("{}: {n} mitred ends, {want} are needed", o.id));
    }
    for t in &f.trims {
        rule.case(t.wall == w.id, || format!("{} frames {} on another wall", t.mark, o.id));
    }
}

/// On how many hands an opening has jambs.
fn jamb_sides(f: &Frame) -> usize {
    let sum: f64 = f.sides.iter().map(|e| e.from[0] + e.to[0]).sum();
    let middle = sum / (2 * f.sides.len().max(1)) as f64;
    let jambs = || f.sides.iter().filter(|e| e.kind == EdgeKind::Jamb);
    usize::from(jambs().any(|e| e.from[0] < middle))
        + usize::from(jambs().any(|e| e.from[0] >= middle))
}

/// Tabs where one channel stands over another; a drip cap over each level head; finish trim under a
/// sill that is off the course lines.
fn sheds(rule: &mut Rule, layout: &Layout, f: &Frame) {
    let (o, r) = (f.opening, &layout.job.trim);
    let tab = |e: &TrimEnd| matches!(e, TrimEnd::Tab(by) | TrimEnd::MitreTab { tab: by, .. } if (*by - r.tab).abs() < SAME);
    let heads = f.of_kind(TrimKind::HeadChannel);
    if let (Some(first), Some(last)) = (heads.first(), heads.last()) {
        rule.case(tab(&first.ends[0]) && tab(&last.ends[1]), || {
            format!("{}: the head channel is not tabbed down at both ends", o.id)
        });
    }
    let over_sill = f.bordering(EdgeKind::Sill) > 0.0;
    for t in f.of_kind(TrimKind::JambChannel).iter().filter(|t| over_sill && foot(t, f)) {
        rule.case(tab(&t.ends[0]), || {
            format!("{}: jamb channel {} is not tabbed over the sill's", o.id, t.mark)
        });
    }
    let level = |kind: EdgeKind| -> Vec<&LaidEdge> {
        let mine = f.sides.iter().copied().filter(|e| e.kind == kind);
        mine.filter(|e| (e.from[1] - e.to[1]).abs() <= SAME).collect()
    };
    let heads = level(EdgeKind::Head);
    if !heads.is_empty()
        && heads.len() == f.sides.iter().filter(|e| e.kind == EdgeKind::Head).count()
    {
        for e in &heads {
            let past = |a: [f64; 2], way: f64| [a[0] + way * r.drip_cap_past, a[1]];
            let (from, to) = (past(e.from, -1.0), past(e.to, 1.0));
            let open = bare(from, to, &f.of_kind(TrimKind::DripCap));
            rule.case(open < NEAR || heads.len() > 1, || {
                format!("{}: {open:.2} in of its head have no drip cap", o.id)
            });
        }
    }
    for e in level(EdgeKind::Sill) {
        let open = bare(e.from, e.to, &f.of_kind(TrimKind::FinishTrim));
        if !layout.job.siding().receivers.has_pockets() {
            break;
        }
        let spare = on_course_line(layout, e.from[1]) || fills_channel(layout, e.from[1]);
        rule.case(spare || open < NEAR, || {
            format!("{}: {open:.2} in of cut edge under its sill have no finish trim", o.id)
        });
        rule.case(!spare || f.of_kind(TrimKind::FinishTrim).is_empty(), || {
            format!("{}: finish trim under its sill, where the panel needs none", o.id)
        });
    }
}

/// Whether a panel cut under a sill at `y` stands out so far that it fills the channel (FACTS PR-14).
fn fills_channel(layout: &Layout, y: f64) -> bool {
    let p = &layout.job.product;
    let cut = y - layout.job.courses.notch_clearance;
    // The course is the sill's own; the cut may fall at its very foot, where nothing is kept.
    let over_butt = (y - layout.datum).rem_euclid(p.exposure) - (y - cut);
    let over_face = over_butt.rem_euclid(p.exposure / f64::from(p.faces));
    over_butt > SAME && over_face > SAME && over_face <= layout.job.channel_alone() + SAME
}

/// Whether a jamb channel is the lowest on its hand.
fn foot(t: &TrimPiece, f: &Frame) -> bool {
    let low = |t: &TrimPiece| t.from[1].min(t.to[1]);
    f.of_kind(TrimKind::JambChannel)
        .iter()
        .filter(|q| (q.from[0] - t.from[0]).abs() < NEAR)
        .all(|q| low(q) >= low(t) - SAME)
}
