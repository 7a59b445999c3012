//! Halves of ripped panels: on both the pieces keep to their part of the panel's height, the saw cut
//! between.

use std::collections::BTreeMap;

use super::Rule;
use crate::layout::Layout;
use crate::layout::course::LaidCourse;
use crate::layout::piece::Piece;
use crate::layout::verified::RuleCheck;
use crate::model::half::Half;

/// Looked at where the job reuses halves, or a piece is said to be of one.
pub(super) fn check(layout: &Layout) -> Option<RuleCheck> {
    let wanted = layout.job.seams.reuse_halves;
    let mut on: BTreeMap<&str, Vec<(&LaidCourse, &Piece)>> = BTreeMap::new();
    for (_, c, _, p) in layout.pieces() {
        on.entry(&p.panel).or_default().push((c, p));
    }
    if !wanted && layout.pieces().all(|(.., p)| p.half.is_none()) {
        return None;
    }
    let mut rule = Rule::default();
    for (id, pieces) in &on {
        let of = |half: Option<Half>| pieces.iter().filter(move |(_, p)| p.half == half);
        if of(None).count() == pieces.len() {
            continue;
        }
        rule.case(wanted, || format!("panel {id} serves in halves, which the job does not want"));
        let both = [Half::Lower, Half::Upper].map(|h| of(Some(h)).count() > 0);
        rule.case(of(None).count() == 0 && both == [true, true], || {
            format!("panel {id}: not every piece is of a half, or a half has none")
        });
        let lowers = of(Some(Half::Lower)).map(|(c, p)| part(c, p, layout));
        let uppers: Vec<[f64; 2]> =
            of(Some(Half::Upper)).map(|(c, p)| part(c, p, layout)).collect();
        let kerf = layout.job.seams.kerf;
        for low in lowers {
            for up in &uppers {
                let room = match layout.job.product.width {
                    // A board is alike all over: what counts is that both strips go into it.
                    Some(width) => width - (low[1] - low[0]) - (up[1] - up[0]),
                    None => up[0] - low[1],
                };
                rule.case(room >= kerf - super::SAME, || {
                    format!("panel {id}: its halves leave {room:.3} for the saw cut between them")
                });
            }
        }
    }
    Some(rule.done("both halves of a ripped panel fit it"))
}

/// From where to where over its butt edge a piece takes of its panel's height.
fn part(c: &LaidCourse, p: &Piece, layout: &Layout) -> [f64; 2] {
    let face = c.top - c.bottom;
    let over = layout.job.product.width.map_or(layout.job.product.hem, |w| w - face);
    let [from, to] = p.rip.as_ref().map_or([0.0, face], |r| [r.from, r.to]);
    // The head of a piece that is not ripped there keeps its hem or head lap.
    [from, if to > face - super::SAME { face + over } else { to }]
}
