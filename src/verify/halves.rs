//! Halves of ripped panels: on both the pieces keep to their part of the panel's height, the saw cut
//! between.

use std::collections::BTreeMap;

use super::named::{self, PieceOn};
use super::rule::{Cases, found};
use super::tolerance::SAME;
use crate::layout::breach::piece::PanelBreach;
use crate::layout::course::LaidCourse;
use crate::layout::laid::LaidHouse;
use crate::layout::piece::Piece;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::Figure::Inches;
use crate::model::half::Half;

/// Looked at where the job reuses halves, or a piece is said to be of one.
pub(super) fn check(layout: &LaidHouse) -> Option<RuleCheck> {
    let wanted = layout.job.seams.reuse_halves;
    let mut on: BTreeMap<&str, Vec<PieceOn>> = BTreeMap::new();
    for p in named::pieces(layout) {
        on.entry(&p.piece.panel).or_default().push(p);
    }
    if !wanted && layout.pieces().all(|(.., p)| p.half.is_none()) {
        return None;
    }
    let mut rule = Cases::new(Rule::PanelHalves);
    for (id, pieces) in &on {
        of_panel(&mut rule, layout, id, pieces);
    }
    Some(rule.done())
}

fn of_panel(rule: &mut Cases, layout: &LaidHouse, id: &str, pieces: &[PieceOn]) {
    let of = |half: Option<Half>| pieces.iter().filter(move |on| on.piece.half == half);
    if of(None).count() == pieces.len() {
        return;
    }
    let at = || pieces.first().and_then(PieceOn::middle);
    rule.case(layout.job.seams.reuse_halves, || {
        found(named::panel(id), PanelBreach::HalvesUnwanted).at(at())
    });
    let both = [Half::Lower, Half::Upper].map(|h| of(Some(h)).count() > 0);
    rule.case(of(None).count() == 0 && both == [true, true], || {
        found(named::panel(id), PanelBreach::HalfMissing).at(at())
    });
    let kerf = layout.job.seams.kerf;
    for lower in of(Some(Half::Lower)) {
        let low = part(lower.run.course, lower.piece, layout);
        for upper in of(Some(Half::Upper)) {
            let up = part(upper.run.course, upper.piece, layout);
            let room = match layout.job.product.width {
                // A board is alike all over: what counts is that both strips go into it.
                Some(width) => width - (low[1] - low[0]) - (up[1] - up[0]),
                None => up[0] - low[1],
            };
            rule.case(room >= kerf - SAME, || {
                let v = found(lower.subject(), PanelBreach::HalvesMeet).with(upper.subject());
                v.at(lower.middle()).measured(Inches(room)).at_least(Inches(kerf))
            });
        }
    }
}

/// From where to where over its butt edge a piece takes of its panel's height.
fn part(c: &LaidCourse, p: &Piece, layout: &LaidHouse) -> [f64; 2] {
    let face = c.top - c.bottom;
    let over = layout.job.product.width.map_or(layout.job.product.hem, |w| w - face);
    let [from, to] = p.rip.as_ref().map_or([0.0, face], |r| [r.from, r.to]);
    // The head of a piece that is not ripped there keeps its hem or head lap.
    [from, if to > face - SAME { face + over } else { to }]
}
