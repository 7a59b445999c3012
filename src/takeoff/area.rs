//! Rules of thumb by area, beside the layout.

use super::lines::whole;
use super::panels::{cartons, coverage, laid, lots, spare};
use crate::layout::Layout;
use crate::layout::wall::LaidOpening;
use crate::model::quantity::{Group, TakeoffLine};
use crate::model::takeoff::Way;
use crate::sources::in_words;

/// Panels that so many square feet buy at nominal coverage.
fn panels(layout: &Layout, area: f64) -> usize {
    whole(area / coverage(layout).max(1e-9)) as usize
}

/// Panels that net area and the job's percentage would buy, at nominal coverage (length times
/// exposure, the lap not taken off, as in trade lists: FACTS section 2).
pub fn panels_by_area(layout: &Layout) -> usize {
    let net: f64 = layout.walls().map(|(_, w)| w.net_area).sum();
    panels(layout, net * (1.0 + layout.job.takeoff.area_waste / 100.0))
}

/// Square feet of an opening's outline.
fn area(o: &LaidOpening) -> f64 {
    let next = o.outline.iter().cycle().skip(1);
    let sum: f64 = o.outline.iter().zip(next).map(|(a, b)| a[0] * b[1] - b[0] * a[1]).sum();
    sum.abs() / 288.0
}

/// This layout, and what the schools of subtracting openings would buy or lack (FACTS TK-08 to
/// TK-10).
pub(super) fn ways(layout: &Layout) -> Vec<Way> {
    let rules = &layout.job.takeoff;
    let sum = |f: &dyn Fn(&crate::layout::wall::LaidWall) -> f64| -> f64 {
        layout.walls().map(|(_, w)| f(w)).sum()
    };
    let net = sum(&|w| w.net_area);
    let gross = sum(&|w| w.gross_area);
    // No more can be subtracted than the wall lost by its openings.
    let less_large = sum(&|w| {
        let large: f64 = w.openings.iter().map(area).filter(|a| *a > rules.large_opening).sum();
        w.gross_area - large.min(w.gross_area - w.net_area)
    });
    let style = layout.job.sheet.lengths;
    let large = (style.area(rules.large_opening) * 10.0).round() / 10.0;
    let large = format!("{large} {}", style.area_unit());
    let laid = laid(layout);
    let by_area = |name: String, area: f64, how: &str| {
        let panels = panels(layout, area);
        Way {
            name,
            area: Some(area),
            panels,
            cartons: cartons(layout, panels as f64) as usize,
            over: panels as i64 - laid as i64,
            cost: None,
            how: in_words(how),
        }
    };
    vec![
        Way {
            name: "this layout".into(),
            area: None,
            panels: laid,
            cartons: unspared(layout),
            over: 0,
            cost: None,
            how: format!(
                "every piece placed and cut from stock{}; spare not counted",
                by_length(layout)
            ),
        },
        by_area(
            format!("net area + {} %", rules.area_waste),
            net * (1.0 + rules.area_waste / 100.0),
            "all openings subtracted, then waste added (FACTS YARD, SAWK, WWPA)",
        ),
        by_area(
            "gross area".into(),
            gross,
            "no opening subtracted: they pay for the waste (FACTS SAWK, BCON)",
        ),
        by_area(
            format!("less openings over {large}"),
            less_large,
            "only large openings subtracted, the rest pay for the waste (contractors; threshold common practice, no source)",
        ),
    ]
}

/// Cartons that hold the panels laid, none spare.
fn unspared(layout: &Layout) -> usize {
    lots(layout).iter().map(|l| whole(l.count() / l.carton) as usize).sum()
}

/// Panels by length, where there are several: counted by length as panels of the first, so that they
/// compare with what area would buy of these.
fn by_length(layout: &Layout) -> String {
    if layout.stocks.len() < 2 {
        return String::new();
    }
    let style = layout.job.sheet.lengths;
    let each: Vec<String> = lots(layout)
        .iter()
        .map(|l| format!("{} of {}", l.count(), style.length(l.length)))
        .collect();
    format!(
        ", {}, told here by their length as panels of {}",
        each.join(" and "),
        style.length(layout.first_length())
    )
}

/// The rule of thumb as a line that is not ordered.
pub(super) fn line(layout: &Layout) -> TakeoffLine {
    let by_area = panels_by_area(layout);
    let laid = laid(layout);
    let what = layout.job.product.kind.piece();
    let verdict = match by_area.cmp(&laid) {
        std::cmp::Ordering::Less => {
            format!("{} {what}s SHORT of what this layout takes", laid - by_area)
        }
        std::cmp::Ordering::Equal => "the same as this layout".to_owned(),
        std::cmp::Ordering::Greater => {
            format!("{} {what}s more than this layout takes", by_area - laid)
        }
    };
    let spare = spare(layout);
    let aside =
        if spare > 0.0 { format!("; {spare} spare on top of either") } else { String::new() };
    TakeoffLine {
        item: format!("for comparison: net area + {} %", layout.job.takeoff.area_waste),
        id: "by-net-area".into(),
        unit: what.into(),
        group: Group::Comparison,
        net: by_area as f64,
        how: format!("not ordered; {verdict}{aside}"),
        ..Default::default()
    }
}
