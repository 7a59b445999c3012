//! How few panels there can be, in words.

use super::area::panels_by_area;
use crate::layout::Layout;
use crate::layout::bound::Bound;
use crate::model::seam::{Certificate, SeamPlan};

/// The panel count with its proof, in figures and in words.
pub fn proof(layout: &Layout, plan: &SeamPlan) -> Bound {
    let c = &plan.certificate;
    let what = layout.job.product.kind.piece();
    let by_area = panels_by_area(layout);
    let (mut words, beside) = mixed_words(layout, plan, by_area).map_or_else(
        || (bound_words(&plan.certificate, what), None),
        |(words, beside)| (words, Some(beside)),
    );
    let mut c = c.clone();
    if layout.job.seams.reuse_halves {
        let (saved, cut) = (layout.halved(), layout.panels.len());
        let without = "under these rules and without reuse of ripped halves";
        words = words.replace("under these rules", without);
        let fewer = format!("{saved} {what}{}", if saved == 1 { "" } else { "s" });
        words.push_str(&format!(
            " Reuse takes {fewer} less: {cut} {what}s are cut, {saved} of them for two courses."
        ));
        c.excludes.retain(|e| !e.starts_with("reuse of"));
        c.excludes.push(format!(
            "reuse of ripped halves, by which this layout takes {fewer} less than it counts; another might take less still"
        ));
    }
    Bound {
        panels: c.bound,
        best: layout.panels.len(),
        proven: c.proven,
        method: c.method.clone(),
        excludes: c.excludes.clone(),
        words,
        certificate: c.clone(),
        crew: plan.crew_panels,
        by_area,
        beside,
        other_policy: plan.other_policy_panels,
        conflicts: plan.conflicts.clone(),
    }
}

fn bound_words(c: &Certificate, what: &str) -> String {
    if c.proven {
        format!("{} {what}s; no layout under these rules can use fewer.", c.panels)
    } else {
        format!("{} {what}s; no layout under these rules can use fewer than {}.", c.panels, c.bound)
    }
}

/// What a purchase of several lengths comes to and how near it is to the least; and what one length
/// alone, a crew and the rule of thumb would take.
fn mixed_words(layout: &Layout, plan: &SeamPlan, by_area: usize) -> Option<(String, String)> {
    const NUMBERS: [&str; 7] = ["two", "three", "four", "five", "six", "seven", "eight"];
    let proof = plan.certificate.mixed.as_ref()?;
    let style = layout.job.sheet.lengths;
    let costs = layout.stocks.iter().all(|s| s.cost.is_some());
    let first = proof.stocks.first()?;
    let first_length = style.length(first.length);
    // A weight as a length, or as panels of the first length.
    let bought = |weight: i64| {
        let panels = weight as f64 / first.weight.max(1) as f64;
        if costs {
            format!("{} panels of {first_length}", (panels * 100.0).round() / 100.0)
        } else {
            style.length(panels * first.length)
        }
    };
    let verb = if costs { "cost" } else { "buy" };
    let least = if plan.certificate.proven {
        String::new()
    } else {
        format!(" than {}", bought(proof.bound))
    };
    let all = &proof.stocks;
    let each: Vec<String> =
        all.iter().map(|s| format!("{} of {}", s.panels, style.length(s.length))).collect();
    let words = format!(
        "{} panels, {}, {} {}; no layout with these {} lengths under these rules can {verb} less{least}.",
        plan.certificate.panels,
        in_a_row(&each),
        if costs { "costing as much as" } else { "together" },
        bought(proof.weight),
        NUMBERS.get(all.len().saturating_sub(2)).copied().unwrap_or("many")
    );
    let alone = all.iter().map(|s| match s.alone {
        Some(n) => {
            format!("{n} of {} alone, {}", style.length(s.length), bought(n as i64 * s.weight))
        }
        None => format!("{} alone keeps not every rule", style.length(s.length)),
    });
    let alone: Vec<String> = alone.collect();
    let crews: Vec<String> =
        all.iter().map(|s| format!("{} of {}", s.crew, style.length(s.length))).collect();
    let beside = format!(
        "With one length: {}. A careful crew that starts each run with an offcut: {}. Net area + {} %: {by_area} of {first_length}.",
        alone.join("; "),
        crews.join(", or "),
        layout.job.takeoff.area_waste
    );
    Some((words, beside))
}

/// Things in a row: `a`, `a and b`, `a, b and c`.
fn in_a_row(things: &[String]) -> String {
    match things {
        [] => String::new(),
        [one] => one.clone(),
        [before @ .., last] => format!("{} and {last}", before.join(", ")),
    }
}
