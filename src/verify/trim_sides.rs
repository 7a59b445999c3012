//! Trim along the other sides of a wall: starters, channels, finish trim.

use std::collections::BTreeMap;

use super::along::{bare, reach};
use super::named;
use super::rule::{Cases, Found, found};
use super::tolerance::NEAR;
use crate::job::TopFinish;
use crate::layout::breach::trim::TrimBreach;
use crate::layout::laid::LaidHouse;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::Figure::Inches;
use crate::layout::wall::{LaidEdge, LaidElevation, LaidWall};
use crate::model::house::EdgeKind;
use crate::model::receiver::Receiver;
use crate::model::trim::{TrimKind, TrimPiece};

/// Sides shorter than this take no trim of their own, inches.
const LEAST: f64 = 2.0;

pub(super) fn check(layout: &LaidHouse) -> RuleCheck {
    let mut rule = Cases::new(Rule::SideTrim);
    let index = TrimIndex::new(layout);
    for (e, w) in layout.walls() {
        for s in w.edges.iter().filter(|s| s.opening.is_none() && reach(s.from, s.to) >= LEAST) {
            for trim in trim_of(layout, s) {
                along(&mut rule, layout, &index, (e, w, s), *trim);
            }
        }
    }
    rule.done()
}

/// Trim of a wall by kind, by the lower of its ends' x.
struct TrimIndex<'a> {
    of: BTreeMap<(&'a str, TrimKind), Vec<&'a TrimPiece>>,
    longest: f64,
}

fn left(t: &TrimPiece) -> f64 {
    t.from[0].min(t.to[0])
}

impl<'a> TrimIndex<'a> {
    fn new(layout: &'a LaidHouse) -> Self {
        let mut of: BTreeMap<(&str, TrimKind), Vec<&TrimPiece>> = BTreeMap::new();
        for t in layout.trims.iter().filter(|t| t.opening.is_none()) {
            of.entry((&t.wall, t.kind)).or_default().push(t);
        }
        of.values_mut().for_each(|list| list.sort_by(|a, b| left(a).total_cmp(&left(b))));
        let longest = layout.trims.iter().map(|t| reach(t.from, t.to)).fold(0.0, f64::max);
        TrimIndex { of, longest }
    }

    /// Trim of a kind on a wall that may lie along a side.
    fn near(&self, w: &'a LaidWall, kind: TrimKind, s: &LaidEdge) -> &[&'a TrimPiece] {
        let all = self.of.get(&(w.id.as_str(), kind)).map_or(&[][..], Vec::as_slice);
        let (low, high) = (s.from[0].min(s.to[0]), s.from[0].max(s.to[0]));
        let first = all.partition_point(|t| left(t) < low - self.longest - NEAR);
        let last = all.partition_point(|t| left(t) <= high + NEAR);
        &all[first..last.max(first)]
    }
}

/// What trim lies along a side by its kind and what takes panels there
/// (`TrimFact::StarterLocksFirstCourse`, `TrimFact::CutFirstCourse`, `TrimFact::UndersillLugs`,
/// `TrimFact::RakeGap`); corners are looked at apart.
fn trim_of(layout: &LaidHouse, s: &LaidEdge) -> &'static [TrimKind] {
    let under_frieze = layout.job.trim.frieze > 0.0;
    match (s.receiver, s.kind) {
        (Receiver::Trim, _) => &[],
        (Receiver::Starter, _) => &[TrimKind::Starter],
        (_, EdgeKind::BareBottom) => &[TrimKind::FinishTrim],
        // TrimFact::TopFinish; under a frieze the cut edge is held as under any band.
        (_, EdgeKind::Eave) => match layout.job.trim.top {
            TopFinish::TwoPiece if !under_frieze => &[TrimKind::TopBase, TrimKind::TopFace],
            TopFinish::TopPanel if !under_frieze => &[TrimKind::TopPanel],
            TopFinish::Crown if !under_frieze => &[TrimKind::TopBase, TrimKind::Crown],
            _ => &[TrimKind::FinishTrim],
        },
        (_, EdgeKind::Rake) => &[TrimKind::RakeChannel],
        (_, EdgeKind::LowerRoof) => &[TrimKind::RoofChannel],
        // TrimFact::CutFirstCourse: a bottom without its lock.
        (_, EdgeKind::Base | EdgeKind::BareTop) => &[TrimKind::FinishTrim],
        (_, EdgeKind::Abutment) => &[TrimKind::WallChannel],
        _ => &[],
    }
}

fn along(
    rule: &mut Cases,
    layout: &LaidHouse,
    index: &TrimIndex,
    (e, w, s): (&LaidElevation, &LaidWall, &LaidEdge),
    trim: TrimKind,
) {
    let whole = reach(s.from, s.to);
    let pieces = index.near(w, trim, s);
    let open = bare(s.from, s.to, pieces);
    let gap = layout.job.trim_gaps().starter;
    let most = if trim == TrimKind::Starter {
        if whole <= 2.0 * gap + LEAST {
            return;
        }
        // A gap at each end, and between lengths (TrimFact::StarterGaps).
        gap * (1.0 + (whole / layout.job.trim.starter).ceil())
    } else {
        0.0
    };
    let broken = |breach: TrimBreach| -> Found {
        let at = named::place(&e.name, named::midway(s.from, s.to));
        found(named::wall(&w.id), breach).at(at).measured(Inches(open))
    };
    rule.case(open <= most + NEAR, || {
        broken(TrimBreach::SideBare { trim, side_length: whole }).at_most(Inches(most))
    });
    // Starters keep their gap from posts and from one another.
    rule.case(trim != TrimKind::Starter || open >= 2.0 * gap - NEAR, || {
        broken(TrimBreach::StarterGap).at_least(Inches(2.0 * gap))
    });
}
