//! Panels: contents fit, every piece on one panel, marks once; counts agree with pieces.

use std::collections::{BTreeMap, BTreeSet};

use super::{Rule, same};
use crate::job::siding::system::SoldBy;
use crate::layout::Layout;
use crate::layout::piece::Piece;
use crate::layout::verified::RuleCheck;
use crate::model::ids::PieceMark;

pub(super) fn check(layout: &Layout) -> [RuleCheck; 3] {
    [contents(layout), marks(layout), counts(layout)]
}

fn contents(layout: &Layout) -> RuleCheck {
    let mut rule = Rule::default();
    let kerf = layout.job.seams.kerf;
    let pieces: BTreeMap<&str, &Piece> =
        layout.pieces().map(|(.., p)| (p.mark.as_str(), p)).collect();
    for panel in &layout.panels {
        let product = &layout.job.product;
        let second = product.second_length.is_some_and(|l| same(panel.stock, l));
        rule.case(second || same(panel.stock, product.length), || {
            format!("panel {} is {:.3} long", panel.id, panel.stock)
        });
        let mut cuts: Vec<&Piece> =
            panel.pieces.iter().filter_map(|m| pieces.get(m.as_str()).copied()).collect();
        rule.case(cuts.len() == panel.pieces.len() && !cuts.is_empty(), || {
            format!("panel {} names a piece that is on no wall", panel.id)
        });
        cuts.sort_by(|a, b| a.start.total_cmp(&b.start));
        for p in &cuts {
            rule.case(p.panel == panel.id, || {
                format!("panel {} holds {}, which says {}", panel.id, p.mark, p.panel)
            });
            rule.case(
                p.start >= -super::SAME && p.end <= panel.stock + super::SAME && p.end > p.start,
                || {
                    format!(
                        "piece {} runs from {:.3} to {:.3} on panel {}",
                        p.mark, p.start, p.end, panel.id
                    )
                },
            );
        }
        // Pieces of one half lie beside one another; those of two halves over one another.
        let mut beside = cuts.clone();
        beside.sort_by(|a, b| a.half.cmp(&b.half).then(a.start.total_cmp(&b.start)));
        for pair in beside.windows(2).filter(|w| w[0].half == w[1].half) {
            rule.case(pair[1].start - pair[0].end >= kerf - super::SAME, || {
                format!(
                    "panel {}: no saw cut between {} and {}",
                    panel.id, pair[0].mark, pair[1].mark
                )
            });
        }
        let mut at: f64 = 0.0;
        let mut free: f64 = 0.0;
        for p in &cuts {
            free = free.max(p.start - at - if p.start > super::SAME { kerf } else { 0.0 });
            at = at.max(p.end + kerf);
        }
        free = free.max(panel.stock - at).max(0.0);
        rule.case(same(panel.offcut, free), || {
            format!("panel {}: offcut {:.3}, left over {free:.3}", panel.id, panel.offcut)
        });
    }
    rule.done("what is cut from a panel fits it, with a saw cut between")
}

fn marks(layout: &Layout) -> RuleCheck {
    let mut rule = Rule::default();
    let mut seen = BTreeSet::new();
    let listed: BTreeSet<&str> =
        layout.panels.iter().flat_map(|p| &p.pieces).map(PieceMark::as_str).collect();
    for (.., p) in layout.pieces() {
        rule.case(seen.insert(&p.mark), || format!("mark {} stands twice", p.mark));
        rule.case(listed.contains(p.mark.as_str()), || {
            format!("piece {} is cut from no panel", p.mark)
        });
    }
    let on_panels: usize = layout.panels.iter().map(|p| p.pieces.len()).sum();
    rule.case(on_panels == listed.len(), || "a piece is cut from two panels".to_owned());
    rule.done("every piece has one mark and one panel")
}

fn counts(layout: &Layout) -> RuleCheck {
    let mut rule = Rule::default();
    rule.case(layout.bound.best == layout.panels.len(), || {
        format!("{} panels counted, {} cut", layout.bound.best, layout.panels.len())
    });
    // The bound counts a panel of which both halves serve as two.
    let whole = layout.bound.best + layout.halved();
    rule.case(layout.bound.panels <= whole, || {
        format!("bound {} over {whole} panels", layout.bound.panels)
    });
    if let Some(length) = layout.job.product.second_length {
        // What is proven is a weight: its own rule looks at it.
        by_length(layout, length, &mut rule);
        blocks(layout, &mut rule);
        return rule.done("counts agree with pieces");
    }
    rule.case(layout.bound.proven == (layout.bound.panels == whole), || {
        "proven is said wrongly".to_owned()
    });
    let order = |id: &str| order(layout, id);
    let panels = layout.panels.len() as f64;
    rule.case(order("panels") == Some(panels), || {
        format!("the takeoff orders {:?} panels, {panels} are cut", order("panels"))
    });
    let all = panels + order("spare-panels").unwrap_or(0.0);
    let cartons = (all / f64::from(layout.job.product.carton.max(1))).ceil();
    let singly = layout.job.siding().sold_by == SoldBy::Piece && layout.job.product.carton == 1;
    rule.case(order("cartons") == Some(cartons) || singly, || {
        format!("the takeoff orders {:?} cartons for {all} panels", order("cartons"))
    });
    blocks(layout, &mut rule);
    rule.done("counts agree with pieces")
}

fn order(layout: &Layout, id: &str) -> Option<f64> {
    layout.takeoff.iter().find(|l| l.id == *id).map(|l| l.order)
}

/// Panels and cartons of each of two lengths, a line each for what there is.
fn by_length(layout: &Layout, second: f64, rule: &mut Rule) {
    let product = &layout.job.product;
    for (suffix, length, carton) in [
        ("", product.length, product.carton),
        ("-second", second, product.second_carton.unwrap_or(product.carton)),
    ] {
        let panels = layout.panels.iter().filter(|p| same(p.stock, length)).count() as f64;
        let ordered = |id: &str| order(layout, &format!("{id}{suffix}")).unwrap_or(0.0);
        rule.case(ordered("panels") == panels, || {
            format!("{} panels of {length} ordered, {panels} cut", ordered("panels"))
        });
        let all = panels + ordered("spare-panels");
        let cartons = (all / f64::from(carton.max(1))).ceil();
        rule.case(ordered("cartons") == cartons, || {
            format!("{} cartons ordered for {all} panels of {length}", ordered("cartons"))
        });
    }
}

fn blocks(layout: &Layout, rule: &mut Rule) {
    let order = |id: &str| order(layout, id);
    let blocks = layout.walls().flat_map(|(_, w)| &w.obstacles).filter(|o| o.mounting_block);
    let blocks = blocks.count() as f64;
    rule.case(order("mounting-blocks").unwrap_or(0.0) == blocks, || {
        format!("the takeoff orders {:?} mounting blocks of {blocks}", order("mounting-blocks"))
    });
}
