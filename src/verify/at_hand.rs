//! What is built so far, and what is cut from what lies on the site.

use std::collections::{BTreeMap, BTreeSet};

use super::claims::Claims;
use super::named::{self, PieceOn};
use super::rule::{Cases, count, found};
use super::tolerance::CUT;
use crate::layout::at_hand::{AtHand, BuiltSoFar, FactoryEnd};
use crate::layout::breach::count::CountBreach;
use crate::layout::breach::piece::PanelBreach;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::Figure::Inches;
use crate::layout::violation::Subject;

/// Nothing where nothing hangs.
pub(super) fn check(claims: &Claims) -> Option<RuleCheck> {
    let kept = claims.laid.kept.as_ref()?;
    let built = kept.built.as_ref()?;
    let mut rule = Cases::new(Rule::StockAtHand);
    let mut cuts: BTreeMap<&str, Vec<PieceOn>> = BTreeMap::new();
    for on in named::pieces(claims.laid) {
        cuts.entry(on.piece.panel.as_str()).or_default().push(on);
    }
    // What hangs may be cut from offcuts of an earlier list: they lie on the site no more.
    let hung: BTreeSet<&str> = kept.pieces.iter().map(|k| k.panel.as_str()).collect();
    // Each offcut gives no more than it is long.
    let mut used: Vec<(f64, FactoryEnd)> = Vec::new();
    for panel in &claims.laid.panels {
        let Some([from, to]) = panel.at_hand else { continue };
        let on = cuts.get(panel.id.as_str()).map_or(&[][..], Vec::as_slice);
        for on in on {
            let over = (from - on.piece.start).max(on.piece.end - to);
            rule.case(over <= CUT, || {
                let v = found(named::panel(&panel.id), PanelBreach::BeyondOffcut { from, to });
                v.at(on.middle()).measured(Inches(on.piece.end)).at_most(Inches(to))
            });
        }
        if hung.contains(panel.id.as_str()) {
            continue;
        }
        let end = match (from <= CUT, to >= panel.stock - CUT) {
            (true, true) => FactoryEnd::Both,
            (true, false) => FactoryEnd::Left,
            (false, true) => FactoryEnd::Right,
            (false, false) => FactoryEnd::None,
        };
        used.push((to - from, end));
    }
    listed(&mut rule, built, &used);
    told(&mut rule, claims, built, used.len());
    Some(rule.done())
}

/// Whether each offcut used is one of those on the site: the longest first, each from the shortest that it can be.
fn listed(rule: &mut Cases, built: &BuiltSoFar, used: &[(f64, FactoryEnd)]) {
    let mut left: Vec<AtHand> = built.stock.clone().unwrap_or_default();
    left.retain(|s| s.end != FactoryEnd::Both);
    left.sort_by(|a, b| a.length.total_cmp(&b.length));
    let mut missing = 0;
    let mut used = used.to_vec();
    used.sort_by(|a, b| b.0.total_cmp(&a.0));
    for (length, end) in used {
        let fits = |s: &&mut AtHand| {
            s.count > 0 && s.length >= length - CUT && (end == FactoryEnd::None || s.end == end)
        };
        match left.iter_mut().find(fits) {
            Some(s) => s.count -= 1,
            None => missing += 1,
        }
    }
    rule.case(missing == 0, || {
        found(Subject::House, CountBreach::NotAtHand).measured(count(missing)).exactly(count(0))
    });
}

/// The figures told of what is built and what the rest takes, counted from the pieces.
fn told(rule: &mut Cases, claims: &Claims, built: &BuiltSoFar, offcuts: usize) {
    let pieces = claims.laid.kept.iter().flat_map(|k| &k.pieces);
    let hung: BTreeSet<&str> = pieces.clone().map(|p| p.panel.as_str()).collect();
    let fresh = claims.laid.panels.iter().filter(|p| p.at_hand.is_none());
    let more = fresh.filter(|p| !hung.contains(p.id.as_str())).count();
    let whole = built.stock.iter().flatten().filter(|s| s.end == FactoryEnd::Both);
    let on_site: usize = whole.map(|s| s.count).sum();
    for (said, counted) in [
        (built.hung, pieces.count()),
        (built.hung_panels, hung.len()),
        (built.more, more),
        (built.on_site, on_site),
        (built.offcuts_used, offcuts),
        (built.order, more.saturating_sub(on_site)),
    ] {
        rule.case(said == counted, || {
            found(Subject::House, CountBreach::BuiltTold)
                .measured(count(said))
                .exactly(count(counted))
        });
    }
    rule.case(built.at_least <= more, || {
        let v = found(Subject::House, CountBreach::BuiltBound).measured(count(built.at_least));
        v.at_most(count(more))
    });
}
