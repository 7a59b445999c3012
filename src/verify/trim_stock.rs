//! Trim pieces as they are cut: lengths, marks, stock.

use std::collections::{BTreeMap, BTreeSet};

use super::Rule;
use super::along::reach;
use crate::job::FrameCut;
use crate::layout::Layout;
use crate::layout::verified::RuleCheck;
use crate::model::house::EdgeKind;
use crate::model::trim::{TrimEnd, TrimKind, TrimStock};

pub(super) fn check(layout: &Layout) -> [RuleCheck; 2] {
    [lengths(layout), stock(layout)]
}

fn stock_of(layout: &Layout, kind: TrimKind) -> f64 {
    let r = &layout.job.trim;
    match kind.stock() {
        TrimStock::Starter => r.starter,
        TrimStock::OutsidePost => r.outside_post,
        TrimStock::InsidePost => r.inside_post,
        TrimStock::JChannel => r.j_channel,
        TrimStock::FinishTrim => r.finish_trim,
        TrimStock::DripCap => r.drip_cap,
        TrimStock::Flashing => layout.job.takeoff.flashing_roll,
        _ => r.decorative,
    }
}

/// A piece is as long as its place; trim of a curved or parted side is as long as its frame needs,
/// which the rule of frames checks.
fn lengths(layout: &Layout) -> RuleCheck {
    let mut rule = Rule::default();
    let bent: BTreeSet<&str> = layout
        .walls()
        .flat_map(|(_, w)| &w.edges)
        .filter(|e| matches!(e.kind, EdgeKind::Head | EdgeKind::Sill))
        .filter(|e| (e.from[1] - e.to[1]).abs() > 0.01)
        .filter_map(|e| e.opening.as_deref())
        .collect();
    for t in &layout.trims {
        // A jamb that stands between sill and head has its tab beyond its place.
        let square = layout.job.trim.frame == FrameCut::Square && t.kind == TrimKind::JambChannel;
        let tab =
            if square && matches!(t.ends[0], TrimEnd::Tab(_)) { layout.job.trim.tab } else { 0.0 };
        // A board along a rake is measured to the long points of its slanting cuts.
        let slant = |e: &TrimEnd| match e {
            TrimEnd::Mitre(a) if t.kind == TrimKind::Frieze => {
                layout.job.trim.rake_frieze / 2.0 * a.to_radians().tan()
            }
            _ => 0.0,
        };
        let drawn = reach(t.from, t.to) + tab + slant(&t.ends[0]) + slant(&t.ends[1]);
        let free = t.opening.as_deref().is_some_and(|o| bent.contains(o));
        let parted = t.opening.is_some() && t.length < drawn;
        rule.case(free || parted || (t.length - drawn).abs() < 0.02, || {
            format!("{}: {:.3} long, its place is {drawn:.3}", t.mark, t.length)
        });
    }
    rule.done("trim is as long as its place")
}

fn stock(layout: &Layout) -> RuleCheck {
    let mut rule = Rule::default();
    let mut on: BTreeMap<&str, (f64, usize, f64, TrimStock)> = BTreeMap::new();
    for t in &layout.trims {
        let stock = stock_of(layout, t.kind);
        rule.case(t.length > 0.0 && t.length <= stock + super::SAME, || {
            format!("{} is {:.3} long, the stock {stock}", t.mark, t.length)
        });
        let entry = on.entry(&t.stock).or_insert((0.0, 0, stock, t.kind.stock()));
        entry.0 += t.length;
        entry.1 += 1;
        let of = entry.3;
        rule.case(of == t.kind.stock(), || format!("{} is cut from {}", t.mark, t.stock));
    }
    let kerf = layout.job.seams.kerf;
    for (name, (sum, n, stock, _)) in &on {
        rule.case(sum + (n - 1) as f64 * kerf <= stock + 0.01 && !name.is_empty(), || {
            format!("{name}: pieces of {sum:.3} from {stock}")
        });
    }
    for stock in TrimStock::ALL {
        let lengths = on.values().filter(|v| v.3 == stock).count();
        // A line's short name stays whatever the siding is called; flashing goes by where it lies.
        let id = stock.line_id();
        let line = layout.takeoff.iter().find(|l| l.id == id);
        let told = line.map_or(0.0, |l| l.order);
        rule.case(told == lengths as f64, || {
            format!("the takeoff orders {told} of {}, {lengths} are cut", stock.words())
        });
    }
    let mut marks: Vec<&str> = layout.trims.iter().map(|t| t.mark.as_str()).collect();
    marks.sort_unstable();
    rule.case(marks.windows(2).all(|w| w[0] != w[1]), || "a trim mark stands twice".to_owned());
    rule.done("trim fits its stock")
}
