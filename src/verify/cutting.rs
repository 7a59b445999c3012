//! Panels: contents fit, every piece on one panel, marks once.

use std::collections::{BTreeMap, BTreeSet};

use super::named::{self, PieceOn};
use super::rule::{Cases, count, found};
use super::tolerance::{SAME, same};
use crate::layout::breach::piece::{PanelBreach, PieceBreach};
use crate::layout::laid::LaidHouse;
use crate::layout::piece::Panel;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::Figure::Inches;

pub(super) fn check(layout: &LaidHouse) -> [RuleCheck; 2] {
    [contents(layout), marks(layout)]
}

fn contents(layout: &LaidHouse) -> RuleCheck {
    let mut rule = Cases::new(Rule::PanelContents);
    let pieces: BTreeMap<&str, PieceOn> =
        named::pieces(layout).map(|on| (on.piece.mark.as_str(), on)).collect();
    for panel in &layout.panels {
        let mut cuts: Vec<PieceOn> =
            panel.pieces.iter().filter_map(|m| pieces.get(m.as_str()).copied()).collect();
        named_pieces(&mut rule, layout, panel, &cuts, &pieces);
        cuts.sort_by(|a, b| a.piece.start.total_cmp(&b.piece.start));
        cut_pieces(&mut rule, layout, panel, &cuts);
        offcut(&mut rule, layout, panel, &cuts);
    }
    rule.done()
}

/// A panel is as long as one that is stocked, and what it names stands on a wall.
fn named_pieces(
    rule: &mut Cases,
    layout: &LaidHouse,
    panel: &Panel,
    cuts: &[PieceOn],
    pieces: &BTreeMap<&str, PieceOn>,
) {
    let at = || cuts.first().and_then(PieceOn::middle);
    let stocks: Vec<f64> = layout.stocks.iter().map(|s| s.length).collect();
    rule.case(stocks.iter().any(|s| same(panel.stock, *s)), || {
        let breach = PanelBreach::StockLength { stocks: stocks.clone() };
        found(named::panel(&panel.id), breach).at(at()).measured(Inches(panel.stock))
    });
    rule.case(cuts.len() == panel.pieces.len() && !cuts.is_empty(), || {
        let unknown = panel.pieces.iter().find(|m| !pieces.contains_key(m.as_str()));
        match unknown {
            Some(mark) => {
                let v = found(named::panel(&panel.id), PanelBreach::PieceUnknown).at(at());
                v.with(named::piece(mark))
            }
            None => found(named::panel(&panel.id), PanelBreach::Empty),
        }
    });
}

/// Pieces lie within the panel, a saw cut between.
fn cut_pieces(rule: &mut Cases, layout: &LaidHouse, panel: &Panel, cuts: &[PieceOn]) {
    let kerf = layout.job.seams.kerf;
    for on in cuts {
        let p = on.piece;
        rule.case(p.panel == panel.id, || {
            let breach = PanelBreach::PieceOfAnother { named: p.panel.as_str().into() };
            found(on.subject(), breach).with(named::panel(&panel.id)).at(on.middle())
        });
        rule.case(p.start >= -SAME && p.end <= panel.stock + SAME && p.end > p.start, || {
            let breach = PanelBreach::PieceBeyondEnds { from: p.start, to: p.end };
            let v = found(on.subject(), breach).with(named::panel(&panel.id)).at(on.middle());
            v.between(Inches(0.0), Inches(panel.stock))
        });
    }
    // Pieces of one half lie beside one another; those of two halves over one another.
    let mut beside = cuts.to_vec();
    beside.sort_by(|a, b| {
        a.piece.half.cmp(&b.piece.half).then(a.piece.start.total_cmp(&b.piece.start))
    });
    for pair in beside.windows(2).filter(|w| w[0].piece.half == w[1].piece.half) {
        let between = pair[1].piece.start - pair[0].piece.end;
        rule.case(between >= kerf - SAME, || {
            let v = found(pair[0].subject(), PanelBreach::SawCutMissing).with(pair[1].subject());
            v.at(pair[0].middle()).measured(Inches(between)).at_least(Inches(kerf))
        });
    }
}

/// The longest length that nothing is cut from.
fn offcut(rule: &mut Cases, layout: &LaidHouse, panel: &Panel, cuts: &[PieceOn]) {
    let kerf = layout.job.seams.kerf;
    // Of an offcut that lay on the site, the rest is gone.
    let [mut at, end] = panel.at_hand.unwrap_or([0.0, panel.stock]);
    let begins = at;
    let mut free: f64 = 0.0;
    for p in cuts.iter().map(|on| on.piece) {
        free = free.max(p.start - at - if p.start > begins + SAME { kerf } else { 0.0 });
        at = at.max(p.end + kerf);
    }
    free = free.max(end - at).max(0.0);
    rule.case(same(panel.offcut, free), || {
        let place = cuts.first().and_then(PieceOn::middle);
        let v = found(named::panel(&panel.id), PanelBreach::Offcut).at(place);
        v.measured(Inches(panel.offcut)).exactly(Inches(free))
    });
}

fn marks(layout: &LaidHouse) -> RuleCheck {
    let mut rule = Cases::new(Rule::PieceMarks);
    let mut seen = BTreeSet::new();
    let mut listed: BTreeMap<&str, usize> = BTreeMap::new();
    for mark in layout.panels.iter().flat_map(|p| &p.pieces) {
        *listed.entry(mark.as_str()).or_default() += 1;
    }
    let mut places = BTreeMap::new();
    for on in named::pieces(layout) {
        let mark = on.piece.mark.as_str();
        places.entry(mark).or_insert_with(|| on.middle());
        rule.case(seen.insert(mark), || {
            found(on.subject(), PieceBreach::MarkTwice).at(on.middle())
        });
        rule.case(listed.contains_key(mark), || {
            found(on.subject(), PieceBreach::OfNoPanel).at(on.middle())
        });
    }
    rule.checked += 1;
    for (mark, n) in listed.into_iter().filter(|(_, n)| *n > 1) {
        let at = places.get(mark).cloned().flatten();
        let v = found(named::piece(mark), PieceBreach::OfTwoPanels).at(at);
        rule.breaks(v.measured(count(n)).exactly(count(1)));
    }
    rule.done()
}
