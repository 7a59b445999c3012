//! Rules of thumb by area, beside the layout.

use super::lines::{siding_piece, whole};
use super::panels::{Lot, cartons, coverage, laid, lots, spare};
use crate::layout::bound::Bound;
use crate::layout::laid::LaidHouse;
use crate::layout::wall::{LaidOpening, LaidWall};
use crate::model::basis::Basis;
use crate::model::counting::{CountingMethod, LengthCount};
use crate::model::item::{CountUnit, Item};
use crate::model::quantity::{Group, TakeoffLine};
use crate::model::takeoff::{Comparison, Takeoff};
use crate::real::Total;

/// Panels that so many square feet buy at nominal coverage.
fn panels(layout: &LaidHouse, area: f64) -> usize {
    whole(area / coverage(layout).max(1e-9)) as usize
}

/// Panels that net area and the job's percentage would buy, at nominal coverage (length times
/// exposure, the lap not taken off, as in trade lists: `TakeoffFact::CoveragePerPiece`).
pub(super) fn panels_by_area(layout: &LaidHouse) -> usize {
    let net: f64 = layout.walls().map(|(_, w)| w.net_area).total();
    panels(layout, net * (1.0 + layout.job.takeoff.area_waste / 100.0))
}

/// Square feet of an opening's outline.
fn area(o: &LaidOpening) -> f64 {
    let next = o.outline.iter().cycle().skip(1);
    let sum: f64 = o.outline.iter().zip(next).map(|(a, b)| a[0] * b[1] - b[0] * a[1]).sum();
    sum.abs() / 288.0
}

/// This layout, and what the schools of subtracting openings would buy or lack
/// (`TakeoffFact::AllOpeningsOff`, `TakeoffFact::NoOpeningsOff`, `TakeoffFact::LargeOpeningsOff`).
pub(super) fn comparison(layout: &LaidHouse) -> Vec<Comparison> {
    let rules = &layout.job.takeoff;
    let sum = |f: &dyn Fn(&LaidWall) -> f64| -> f64 { layout.walls().map(|(_, w)| f(w)).total() };
    // Wall that gets no siding buys none by any school.
    let sided = |w: &LaidWall| w.gross_area - w.bare_area();
    // No more can be subtracted than the wall lost by its openings.
    let less_large = sum(&|w| {
        let large: f64 = w.openings.iter().map(area).filter(|a| *a > rules.large_opening).sum();
        sided(w) - large.min(sided(w) - w.net_area)
    });
    let laid = laid(layout);
    let by_area = |method: CountingMethod, area: f64| {
        let panels = panels(layout, area);
        Comparison {
            method,
            area: Some(area),
            panels,
            cartons: cartons(layout, panels as f64) as usize,
            over: panels as i64 - laid as i64,
            cost: None,
        }
    };
    let waste = rules.area_waste;
    vec![
        Comparison {
            method: CountingMethod::ThisLayout {
                by_length: by_length(layout),
                first: layout.first_length(),
            },
            area: None,
            panels: laid,
            cartons: unspared(layout),
            over: 0,
            cost: None,
        },
        by_area(CountingMethod::NetArea { waste }, sum(&|w| w.net_area) * (1.0 + waste / 100.0)),
        by_area(CountingMethod::GrossArea, sum(&sided)),
        by_area(CountingMethod::LargeOpenings { over: rules.large_opening }, less_large),
    ]
}

/// What each of several lengths alone would buy, as the search found it, beside the rest.
pub fn with_lengths_alone(mut takeoff: Takeoff, layout: &LaidHouse, bound: &Bound) -> Takeoff {
    let Some(proof) = &bound.certificate.mixed else { return takeoff };
    let first = layout.first_length();
    let each = proof.stocks.iter().zip(layout.job.stock_weights()).enumerate();
    let rows = each.filter_map(|(place, (share, stock))| {
        let (panels, carton) = (share.alone?, stock.carton.max(1) as usize);
        let as_first = whole(panels as f64 * stock.length / first.max(1.0)) as i64;
        Some(Comparison {
            method: CountingMethod::OneLength { place, length: stock.length },
            area: None,
            panels,
            cartons: panels.div_ceil(carton),
            over: as_first - laid(layout) as i64,
            cost: None,
        })
    });
    let rows: Vec<Comparison> = rows.collect();
    let first = takeoff.comparison.len().min(1);
    takeoff.comparison.splice(first..first, rows);
    takeoff
}

/// Cartons that hold the panels laid, none spare.
fn unspared(layout: &LaidHouse) -> usize {
    lots(layout).iter().map(|l| whole(l.count() / l.carton) as usize).sum()
}

/// Panels by length, where there are several.
fn by_length(layout: &LaidHouse) -> Vec<LengthCount> {
    if layout.stocks.len() < 2 {
        return Vec::new();
    }
    let count = |l: &Lot| LengthCount { length: l.length, count: l.panels.len() };
    lots(layout).iter().map(count).collect()
}

/// The rule of thumb as a line that is not ordered.
pub(super) fn line(layout: &LaidHouse) -> TakeoffLine {
    let by_area = panels_by_area(layout);
    let piece = siding_piece(layout);
    let basis = Basis::RuleOfThumb {
        piece,
        over: by_area as i64 - laid(layout) as i64,
        spare: spare(layout),
    };
    let item = Item::ByNetArea { waste: layout.job.takeoff.area_waste };
    TakeoffLine {
        net: by_area as f64,
        ..TakeoffLine::new(item, CountUnit::of_siding(piece), Group::Comparison, basis)
    }
}
