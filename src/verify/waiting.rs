//! The plan walked again: wall by wall in the order they are sided, panels opened and cut, offcuts counted that
//! wait at the end of each wall; and what the saw lists of the walls say.

use std::collections::{BTreeMap, BTreeSet};

use super::claims::Claims;
use super::named::{self, PieceOn};
use super::rule::{Cases, count, found};
use super::tolerance::SAME;
use crate::layout::breach::count::CountBreach;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::Figure::Inches;
use crate::layout::violation::{Place, Subject};
use crate::model::waiting::OffcutReach;

pub(super) fn check(claims: &Claims) -> [RuleCheck; 2] {
    let pieces: Vec<PieceOn> = named::pieces(claims.laid).collect();
    [waiting(claims, &pieces), saw_lists(claims, &pieces)]
}

/// Offcuts at the ends of walls, and the order of walls itself.
fn waiting(claims: &Claims, pieces: &[PieceOn]) -> RuleCheck {
    let mut rule = Cases::new(Rule::OffcutsWaiting);
    let order: Vec<&str> = claims.order.iter().map(|w| w.as_str()).collect();
    let walls: BTreeSet<&str> = claims.walls().map(|(_, w)| w.id.as_str()).collect();
    let once: BTreeSet<&str> = order.iter().copied().collect();
    rule.case(once == walls && order.len() == walls.len(), || {
        let v = found(Subject::House, CountBreach::WallOrder).measured(count(order.len()));
        v.exactly(count(walls.len()))
    });
    // The panels still to be cut into, each with its pieces from end to end of each half.
    let mut panels: BTreeMap<&str, Vec<&PieceOn>> = BTreeMap::new();
    pieces.iter().for_each(|on| panels.entry(on.piece.panel.as_str()).or_default().push(on));
    for cuts in panels.values_mut() {
        cuts.sort_by(|a, b| {
            let (p, q) = (a.piece, b.piece);
            p.half.cmp(&q.half).then(p.start.total_cmp(&q.start))
        });
    }
    let mut sided: BTreeSet<&str> = BTreeSet::new();
    for (turn, wall) in order.iter().enumerate() {
        sided.insert(wall);
        let lying: usize = panels.values().map(|cuts| left_over(cuts, &sided)).sum();
        let at = || place_on(pieces, wall);
        if let Some(most) = claims.job.seams.waiting.most() {
            rule.case(lying <= most, || {
                let v = found(named::wall(wall), CountBreach::OffcutsWaiting).at(at());
                v.measured(count(lying)).at_most(count(most))
            });
        }
        let told = claims.work.offcuts.at_ends.get(turn);
        let said = told.filter(|t| t.wall == **wall).map_or(usize::MAX, |t| t.waiting);
        rule.case(said == lying, || {
            let v = found(named::wall(wall), CountBreach::OffcutsTold).at(at());
            v.measured(count(said)).exactly(count(lying))
        });
    }
    let far = match claims.job.seams.offcuts {
        OffcutReach::House => return rule.done(),
        OffcutReach::NextWall => 1,
        OffcutReach::Wall => 0,
    };
    for (panel, cuts) in &panels {
        let turns = cuts.iter().filter_map(|on| order.iter().position(|w| on.run.wall.id == **w));
        let (first, last) = turns.fold((usize::MAX, 0), |(a, b), t| (a.min(t), b.max(t)));
        let gone = last.saturating_sub(first);
        rule.case(gone <= far, || {
            let at = cuts.first().and_then(|on| on.middle());
            let v = found(named::panel(panel), CountBreach::OffcutGoesFar).at(at);
            v.measured(count(gone)).at_most(count(far))
        });
    }
    rule.done()
}

/// How many lengths of a panel are still to be used once these walls are sided: none of a panel not yet opened.
fn left_over(cuts: &[&PieceOn], sided: &BTreeSet<&str>) -> usize {
    let hung = |on: &PieceOn| sided.contains(on.run.wall.id.as_str());
    if !cuts.iter().any(|on| hung(on)) {
        return 0;
    }
    let mut lengths = 0;
    let mut before = None;
    for on in cuts {
        let kept = !hung(on);
        // A length begins where the piece before is gone, or is of the other half.
        if kept && before != Some((true, on.piece.half)) {
            lengths += 1;
        }
        before = Some((kept, on.piece.half));
    }
    lengths
}

fn place_on(pieces: &[PieceOn], wall: &str) -> Option<Place> {
    pieces.iter().find(|on| on.run.wall.id == *wall).and_then(PieceOn::middle)
}

/// Every piece stands once in the list of its own wall, at its own length.
fn saw_lists(claims: &Claims, pieces: &[PieceOn]) -> RuleCheck {
    let mut rule = Cases::new(Rule::SawLists);
    let mut listed: BTreeMap<&str, Vec<(&str, f64, &str)>> = BTreeMap::new();
    for wall in &claims.work.walls {
        for batch in &wall.saw.batches {
            for p in &batch.pieces {
                let entry = (wall.wall.as_str(), batch.length, p.panel.as_str());
                listed.entry(p.mark.as_str()).or_default().push(entry);
            }
        }
    }
    for on in pieces {
        let entries = listed.remove(on.piece.mark.as_str()).unwrap_or_default();
        let own = |e: &&(&str, f64, &str)| {
            e.0 == on.run.wall.id.as_str() && e.2 == on.piece.panel.as_str()
        };
        let mine = entries.iter().find(own);
        rule.case(entries.len() == 1 && mine.is_some(), || {
            let v = found(on.subject(), CountBreach::SawListPiece).at(on.middle());
            v.measured(count(entries.len())).exactly(count(1))
        });
        let Some((_, length, _)) = mine else { continue };
        // One setting of the stop serves lengths that a tape does not tell apart.
        rule.case((length - on.piece.length).abs() <= 1.0 / 16.0 + SAME, || {
            let v = found(on.subject(), CountBreach::SawListLength).at(on.middle());
            v.measured(Inches(*length)).exactly(Inches(on.piece.length))
        });
    }
    rule.checked += 1;
    for mark in listed.keys() {
        let v = found(named::piece(mark), CountBreach::SawListPiece);
        rule.breaks(v.measured(count(1)).exactly(count(0)));
    }
    rule.done()
}
