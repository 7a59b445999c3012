//! What is held of an earlier layout is where that has it.

use std::collections::BTreeMap;

use super::claims::Claims;
use super::named::{self, PieceOn};
use super::rule::{Cases, count, found};
use super::tolerance::CUT;
use crate::layout::breach::count::CountBreach;
use crate::layout::breach::piece::{HeldBreach, PieceBreach};
use crate::layout::kept::KeptPiece;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::Figure::Inches;
use crate::layout::violation::Subject;

/// Nothing where nothing is held.
pub(super) fn check(claims: &Claims) -> Option<RuleCheck> {
    let kept = claims.laid.kept.as_ref()?;
    let mut rule = Cases::new(Rule::KeptPieces);
    let all: Vec<PieceOn> = named::pieces(claims.laid).collect();
    let by: BTreeMap<&str, &PieceOn> = all.iter().map(|on| (on.piece.mark.as_str(), on)).collect();
    for k in &kept.pieces {
        let subject = || named::piece(&k.mark);
        let Some(on) = by.get(k.mark.as_str()) else {
            let wall = claims.laid.walls().find(|(_, w)| w.id == k.wall);
            let at = wall.and_then(|(e, _)| named::place(&e.name, [k.x[0], k.bottom]));
            rule.case(false, || found(subject(), held(HeldBreach::Gone)).at(at));
            continue;
        };
        let (p, at) = (on.piece, || on.middle());
        let place = on.run.wall.id == k.wall && (on.run.course.bottom - k.bottom).abs() <= CUT;
        let worst = (p.x0 - k.x[0]).abs().max((p.x1 - k.x[1]).abs());
        rule.case(place && worst <= CUT, || {
            found(subject(), held(HeldBreach::Elsewhere))
                .at(at())
                .measured(Inches(p.x0))
                .exactly(Inches(k.x[0]))
        });
        let cut = (p.start - k.cut[0]).abs().max((p.end - k.cut[1]).abs());
        rule.case(p.panel == k.panel && cut <= CUT, || {
            let breach = held(HeldBreach::Cut { panel: k.panel.clone() });
            found(subject(), breach).at(at()).measured(Inches(p.start)).exactly(Inches(k.cut[0]))
        });
        rule.case(is_offcut_of_before(claims, k), || {
            found(subject(), held(HeldBreach::Offcut { panel: k.panel.clone() })).at(at())
        });
    }
    // A wall that is held has no other pieces.
    for wall in &kept.walls {
        let on_wall = all.iter().filter(|on| on.run.wall.id == *wall).count();
        let listed = kept.pieces.iter().filter(|k| k.wall == *wall).count();
        rule.case(on_wall == listed, || {
            let at = all.iter().find(|on| on.run.wall.id == *wall).and_then(PieceOn::middle);
            found(named::wall(wall), CountBreach::KeptWall)
                .at(at)
                .measured(count(on_wall))
                .exactly(count(listed))
        });
    }
    let panels: std::collections::BTreeSet<&str> =
        kept.pieces.iter().map(|k| k.panel.as_str()).collect();
    rule.case(panels.len() == kept.panels, || {
        let v = found(Subject::House, CountBreach::KeptPanels).measured(count(kept.panels));
        v.exactly(count(panels.len()))
    });
    Some(rule.done())
}

/// Whether the panel is the offcut that it was before, or a whole one as before.
fn is_offcut_of_before(claims: &Claims, k: &KeptPiece) -> bool {
    let is = claims.laid.panels.iter().find(|p| p.id == k.panel).and_then(|p| p.at_hand);
    match (is, k.at_hand) {
        (Some(a), Some(b)) => (a[0] - b[0]).abs().max((a[1] - b[1]).abs()) <= CUT,
        (a, b) => a.is_none() && b.is_none(),
    }
}

fn held(how: HeldBreach) -> PieceBreach {
    PieceBreach::Held { how }
}
