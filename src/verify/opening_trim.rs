//! The frame of trim round each opening (`TrimFact::WindowFrame`, `TrimFact::HeadTabs`,
//! `TrimFact::UndersillInChannel`; drip caps: IRC R703.4 by `TrimFact::DripCaps`).

use super::along::{bare, reach};
use super::course_lines::on_course_line;
use super::named;
use super::rule::{Cases, Found, count, found};
use super::tolerance::NEAR;
use crate::geom::tol::SAME;
use crate::geom::vocabulary::Xy;
use crate::job::FrameCut;
use crate::layout::breach::trim::OpeningBreach;
use crate::layout::by_wall::ByWall;
use crate::layout::laid::LaidHouse;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::Figure::Inches;
use crate::layout::wall::{LaidEdge, LaidElevation, LaidOpening, LaidWall};
use crate::model::house::EdgeKind;
use crate::model::trim::{TrimEnd, TrimKind, TrimPiece, TrimStock};

pub(super) fn check(layout: &LaidHouse, at: &ByWall) -> [RuleCheck; 2] {
    let mut close = Cases::new(Rule::OpeningChannels);
    let mut water = Cases::new(Rule::OpeningDrainage);
    let pockets = layout.job.siding().receivers.has_pockets();
    for (e, w) in layout.walls() {
        for o in &w.openings {
            let frame = Frame::of(at, e, w, o);
            if pockets {
                lengths(&mut close, layout, &frame);
                sides(&mut close, &frame);
                mitered(&mut close, layout, &frame);
                on_its_wall(&mut close, &frame);
            } else {
                unchanneled(&mut close, &frame);
            }
            tabs(&mut water, layout, &frame);
            caps(&mut water, layout, &frame);
            if pockets {
                sills(&mut water, layout, &frame);
            }
        }
    }
    [close.done(), water.done()]
}

/// An opening with its sides and its trim.
struct Frame<'a> {
    elevation: &'a LaidElevation,
    wall: &'a LaidWall,
    opening: &'a LaidOpening,
    sides: Vec<&'a LaidEdge>,
    trims: Vec<&'a TrimPiece>,
    /// Its outline is a box, all of which borders the field but what a door stands on.
    plain: bool,
}

impl<'a> Frame<'a> {
    fn of(
        at: &ByWall<'a>,
        elevation: &'a LaidElevation,
        w: &'a LaidWall,
        o: &'a LaidOpening,
    ) -> Self {
        let mine = |e: &&LaidEdge| e.opening.as_deref() == Some(o.id.as_str());
        let sides: Vec<&LaidEdge> = w.edges.iter().filter(mine).collect();
        let trims = at.frame(&w.id, o).to_vec();
        let upright = |e: &&LaidEdge| {
            let (dx, dy) = ((e.from[0] - e.to[0]).abs(), (e.from[1] - e.to[1]).abs());
            dx <= SAME || dy <= SAME
        };
        let plain = o.outline.len() == 4 && sides.iter().all(upright);
        Frame { elevation, wall: w, opening: o, sides, trims, plain }
    }

    fn of_kind(&self, kind: TrimKind) -> Vec<&'a TrimPiece> {
        self.trims.iter().copied().filter(|t| t.kind == kind).collect()
    }

    /// A violation of this opening, marked half way between two places.
    fn broken(&self, breach: OpeningBreach, (a, b): (Xy, Xy)) -> Found {
        let at = named::place(&self.elevation.name, named::midway(a, b));
        found(named::opening(&self.wall.id, &self.opening.id), breach).at(at)
    }

    /// The two ends of its box at a height: sill or head.
    fn across(&self, y: f64) -> (Xy, Xy) {
        ([self.opening.left, y], [self.opening.right, y])
    }

    /// Lower left and upper right of its box: half way between is its middle.
    fn whole(&self) -> (Xy, Xy) {
        let o = self.opening;
        ([o.left, o.sill], [o.right, o.head])
    }

    fn bordering(&self, kind: EdgeKind) -> f64 {
        self.sides.iter().filter(|e| e.kind == kind).map(|e| reach(e.from, e.to)).sum()
    }
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
    let past = |along: f64| if along > 0.0 { along + 2.0 * face } else { 0.0 };
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

/// Each side of a plain opening has its channel all along.
fn sides(rule: &mut Cases, f: &Frame) {
    for e in f.sides.iter().filter(|_| f.plain) {
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
    if !(f.plain && closed && jamb_sides(f) == 2) {
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

/// On how many hands an opening has jambs.
fn jamb_sides(f: &Frame) -> usize {
    let sum: f64 = f.sides.iter().map(|e| e.from[0] + e.to[0]).sum();
    let middle = sum / (2 * f.sides.len().max(1)) as f64;
    let jambs = || f.sides.iter().filter(|e| e.kind == EdgeKind::Jamb);
    usize::from(jambs().any(|e| e.from[0] < middle))
        + usize::from(jambs().any(|e| e.from[0] >= middle))
}

/// Tabs where one channel stands over another.
fn tabs(rule: &mut Cases, layout: &LaidHouse, f: &Frame) {
    let by_rule = layout.job.trim.tab;
    let tab = |e: &TrimEnd| matches!(e, TrimEnd::Tab(by) | TrimEnd::MiterTab { tab: by, .. } if (*by - by_rule).abs() < SAME);
    let heads = f.of_kind(TrimKind::HeadChannel);
    if let (Some(first), Some(last)) = (heads.first(), heads.last()) {
        rule.case(tab(&first.ends[0]) && tab(&last.ends[1]), || {
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

/// The level sides of a sort.
fn level<'a>(f: &Frame<'a>, kind: EdgeKind) -> Vec<&'a LaidEdge> {
    let mine = f.sides.iter().copied().filter(|e| e.kind == kind);
    mine.filter(|e| (e.from[1] - e.to[1]).abs() <= SAME).collect()
}

/// A drip cap over each level head, past it at both ends.
fn caps(rule: &mut Cases, layout: &LaidHouse, f: &Frame) {
    let heads = level(f, EdgeKind::Head);
    if heads.len() != f.sides.iter().filter(|e| e.kind == EdgeKind::Head).count() {
        return;
    }
    for e in &heads {
        let past = |a: Xy, by: f64| [a[0] + by * layout.job.trim.drip_cap_past, a[1]];
        let open = bare(past(e.from, -1.0), past(e.to, 1.0), &f.of_kind(TrimKind::DripCap));
        rule.case(open < NEAR || heads.len() > 1, || {
            let v = f.broken(OpeningBreach::DripCap, (e.from, e.to));
            v.measured(Inches(open)).exactly(Inches(0.0))
        });
    }
}

/// Undersill trim under a sill that is off the course lines, and under no other.
fn sills(rule: &mut Cases, layout: &LaidHouse, f: &Frame) {
    let undersill = f.of_kind(TrimKind::FinishTrim);
    for e in level(f, EdgeKind::Sill) {
        let open = bare(e.from, e.to, &undersill);
        let spare = on_course_line(layout, e.from[1]) || fills_channel(layout, e.from[1]);
        rule.case(spare || open < NEAR, || {
            let v = f.broken(OpeningBreach::UndersillMissing, (e.from, e.to));
            v.measured(Inches(open)).exactly(Inches(0.0))
        });
        rule.case(!spare || undersill.is_empty(), || {
            f.broken(OpeningBreach::UndersillNeedless, (e.from, e.to))
        });
    }
}

/// Whether a panel cut under a sill at `y` stands out so far that it fills the channel
/// (`TrimFact::UndersillInChannel`).
fn fills_channel(layout: &LaidHouse, y: f64) -> bool {
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
