//! Nails and mounting blocks.

use std::collections::BTreeMap;

use super::lines::{Shares, waste, whole};
use crate::model::fastening::{Fastening, NailLayer, Nails};
use crate::model::layout::{Group, Layout, TakeoffLine, Xy};
use crate::model::trim::{TrimPiece, TrimStock};
use crate::units::{LengthStyle, inches_fraction};

/// Nails of one piece: at most `spacing` apart and one more (FACTS SD-20, TK-18).
pub(super) fn nails(length: f64, spacing: f64) -> f64 {
    whole(length / spacing.max(1.0)) + 1.0
}

/// Room under a nail's head (FACTS SD-25, VSI-H).
const UNDER_HEAD: f64 = 1.0 / 32.0;

/// The least stock length that reaches: over the last, every half inch. The room under the head
/// alone does not call for the next size; the worked example of FACTS SD-37 leaves it out too.
pub(super) fn nail_length(needed: f64, shortest: f64, stock: &[f64]) -> f64 {
    let least = (needed - UNDER_HEAD).max(shortest);
    let reaches = stock.iter().copied().filter(|l| *l >= least - 1e-9);
    reaches.reduce(f64::min).unwrap_or_else(|| whole(least * 2.0) / 2.0)
}

/// What a panel's nail goes through, and its length (FACTS SD-37, SD-29, SD-30).
fn built_up(layout: &Layout) -> Fastening {
    let f = &layout.job.fasteners;
    let mut layers: Vec<NailLayer> = Vec::new();
    for (what, thickness) in [
        ("room under the head", UNDER_HEAD),
        ("stand-off of the panel's hem", layout.job.takeoff.stand_off),
        ("foam board, holds no nail", f.foam_board),
        ("other layers that hold no nail", f.other_layers),
        ("nailable sheathing and framing", f.penetration),
    ] {
        if thickness > 0.0 {
            layers.push(NailLayer { what: what.to_owned(), thickness });
        }
    }
    let needed = layers.iter().map(|l| l.thickness).sum();
    let length = nail_length(needed, f.shortest, &f.lengths);
    Fastening {
        layers,
        needed,
        length,
        shank: f.shank,
        head: f.head,
        nails: Vec::new(),
        words: Vec::new(),
    }
}

/// Nails of a house: length, spacing and counts.
pub fn fastening(layout: &Layout) -> Fastening {
    let mut out = built_up(layout);
    let spacing = layout.job.takeoff.nail_spacing;
    let (pieces, nailed) =
        layout.pieces().fold((0, 0.0), |(n, sum), (.., p)| (n + 1, sum + nails(p.length, spacing)));
    out.nails.push(Nails { what: "panels".to_owned(), spacing, pieces, nails: nailed });
    for stock in TrimStock::ALL {
        let mine = || layout.trims.iter().filter(|t| t.kind.stock() == stock);
        if mine().next().is_some() {
            let spacing = trim_spacing(layout, stock);
            out.nails.push(Nails {
                what: stock.words().to_owned(),
                spacing,
                pieces: mine().count(),
                nails: mine().map(|t| trim_nails(t, spacing)).sum(),
            });
        }
    }
    out.words = words(layout, &out);
    out
}

fn words(layout: &Layout, f: &Fastening) -> Vec<String> {
    let style = layout.job.sheet.lengths;
    let each: Vec<String> = f
        .layers
        .iter()
        .map(|l| {
            let fine = l.thickness < 1.0 / 16.0;
            let thick = if fine { thin(style, l.thickness) } else { style.short(l.thickness) };
            format!("{} {thick}", l.what)
        })
        .collect();
    let mut out = vec![format!(
        "Panel nails {}: {}. Shank {} or more, head {} or more, corrosion-resistant. Fix into framing as the maker and the code say; wind design stays with them.",
        style.short(f.length),
        each.join(", "),
        thin(style, f.shank),
        style.short(f.head)
    )];
    out.extend(f.nails.iter().map(|n| {
        format!(
            "{}: at most {} apart, {} nails in {} pieces.",
            n.what,
            style.short(n.spacing),
            n.nails,
            n.pieces
        )
    }));
    out
}

/// Spacing of nails in a stock of trim.
fn trim_spacing(layout: &Layout, stock: TrimStock) -> f64 {
    let f = &layout.job.fasteners;
    let own = match stock {
        TrimStock::OutsidePost | TrimStock::InsidePost => f.post_spacing,
        TrimStock::JChannel => f.channel_spacing,
        TrimStock::Starter | TrimStock::FinishTrim | TrimStock::DripCap => f.strip_spacing,
    };
    own.unwrap_or(layout.job.takeoff.trim_nail_spacing)
}

fn trim_nails(t: &TrimPiece, spacing: f64) -> f64 {
    // A post has a flange on both walls.
    let post = matches!(t.kind.stock(), TrimStock::OutsidePost | TrimStock::InsidePost);
    (if post { 2.0 } else { 1.0 }) * nails(t.length, spacing)
}

pub(super) fn lines(layout: &Layout) -> Vec<TakeoffLine> {
    let mut out = vec![panel_nails(layout)];
    if !layout.trims.is_empty() {
        out.push(trim_nail_line(layout));
    }
    out.extend(blocks(layout));
    out
}

/// A line of nails in boxes, its shares counted in nails.
fn boxed(layout: &Layout, id: &str, item: String, shares: Shares, how: String) -> TakeoffLine {
    let size = f64::from(layout.job.takeoff.nail_box.max(1));
    let net = shares.net() / size;
    TakeoffLine {
        item,
        id: id.into(),
        unit: "box".into(),
        group: Group::Fasteners,
        net,
        order: whole(net),
        waste: waste(net, whole(net)),
        how: format!("{} nails {how}; {size} to a box", shares.net()),
        shares: Shares::scaled(&shares.done(layout), 1.0 / size),
        ..Default::default()
    }
}

fn panel_nails(layout: &Layout) -> TakeoffLine {
    let (rules, f) = (&layout.job.takeoff, &layout.job.fasteners);
    let style = layout.job.sheet.lengths;
    let mut shares = Shares::default();
    for (e, w) in layout.walls() {
        for c in &w.courses {
            let zone = w.zone(c.bottom);
            for p in c.runs.iter().flat_map(|r| &r.pieces) {
                shares.add((&e.name, &w.id), zone, 1, nails(p.length, rules.nail_spacing));
            }
        }
    }
    let how = format!(
        "at most {} apart and one more in each of {} pieces; length by a stand-off of {}, layers that hold no nail of {} and {} into nailable material, foam not counted; shank {} or more, head {} or more",
        style.short(rules.nail_spacing),
        layout.pieces().count(),
        style.short(rules.stand_off),
        style.short(f.foam_board + f.other_layers),
        style.short(f.penetration),
        thin(style, f.shank),
        style.short(f.head)
    );
    // Nails are sold by the inch in both series.
    let item = format!("nails for panels, {}", inches_fraction(built_up(layout).length));
    boxed(layout, "panel-nails", item, shares, how)
}

fn trim_nail_line(layout: &Layout) -> TakeoffLine {
    let style = layout.job.sheet.lengths;
    let mut shares = Shares::default();
    let mut by_stock: BTreeMap<TrimStock, f64> = BTreeMap::new();
    for t in &layout.trims {
        let n = trim_nails(t, trim_spacing(layout, t.kind.stock()));
        shares.add((&t.elevation, &t.wall), super::trims::zone(layout, t), 1, n);
        *by_stock.entry(t.kind.stock()).or_default() += n;
    }
    let each: Vec<String> = by_stock
        .iter()
        .map(|(s, n)| format!("{} {n} at {}", s.words(), style.short(trim_spacing(layout, *s))))
        .collect();
    let how = format!("one more than spaces a piece, posts on both flanges: {}", each.join(", "));
    boxed(layout, "trim-nails", "nails for trim".into(), shares, how)
}

/// A thickness finer than sixteenths.
fn thin(style: LengthStyle, inches: f64) -> String {
    match style {
        LengthStyle::Feet => format!("{inches:.3}\""),
        LengthStyle::Mm => style.short(inches),
    }
}

/// Lowest height of a ring.
fn lowest(ring: &[Xy]) -> f64 {
    ring.iter().map(|p| p[1]).fold(f64::INFINITY, f64::min)
}

fn blocks(layout: &Layout) -> Option<TakeoffLine> {
    let mut shares = Shares::default();
    let mut counts = Vec::new();
    for (e, w) in layout.walls() {
        for o in w.obstacles.iter().filter(|o| o.mounting_block) {
            shares.add((&e.name, &w.id), w.zone(lowest(&o.outline)), 1, 1.0);
            counts.push(o.id.clone());
        }
    }
    (!counts.is_empty()).then(|| TakeoffLine {
        item: "mounting blocks".into(),
        id: "mounting-blocks".into(),
        unit: "piece".into(),
        group: Group::Fasteners,
        net: shares.net(),
        order: shares.net(),
        how: "fixtures drawn with a mounting block; the kind of each fits its fixture".into(),
        colour: layout.job.product.colour.clone(),
        counts,
        shares: shares.done(layout),
        ..Default::default()
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    const STOCK: [f64; 7] = [1.5, 1.75, 2.0, 2.5, 3.0, 3.5, 4.0];

    #[test]
    fn nail_length_of_the_worked_example() {
        // FACTS SD-37: 3/4 hem stand-off and 1/2 foam board: 3/4 + 1/2 + 1 1/4 = 2 1/2.
        let needed = |stand_off: f64, foam: f64| UNDER_HEAD + stand_off + foam + 1.25;
        assert_eq!(nail_length(needed(0.75, 0.5), 2.5, &STOCK), 2.5);
        assert_eq!(nail_length(needed(0.75, 0.0), 2.5, &STOCK), 2.5); // PR-06
        assert_eq!(nail_length(needed(0.75, 1.0), 2.5, &STOCK), 3.0);
        // Plain vinyl: 1 1/2 to 2 in (SD-38, HAB).
        assert_eq!(nail_length(needed(0.25, 0.0), 1.5, &STOCK), 1.5);
        assert_eq!(nail_length(needed(0.5, 0.0), 1.5, &STOCK), 1.75);
        assert_eq!(nail_length(needed(0.75, 3.0), 2.5, &STOCK), 5.0); // over the list
    }

    #[test]
    fn wood_siding_nails_of_the_published_example() {
        // FACTS WX-15 (CRA): 1 1/2 in of penetration in all, foam counts nothing, plywood counts;
        // 1/2 in bevel takes 2 in (6d), 3/4 in boards over 1 in of foam 3 1/4 in (12d).
        let penny = [2.0, 2.25, 2.5, 3.0, 3.25, 3.5];
        assert_eq!(nail_length(UNDER_HEAD + 0.5 + 1.5, 0.0, &penny), 2.0);
        assert_eq!(nail_length(UNDER_HEAD + 0.75 + 1.0 + 1.5, 0.0, &penny), 3.25);
    }

    #[test]
    fn nails_of_a_square_of_double_four() {
        // FACTS TK-18: about 125 a square for D4 at 16 in: 12 pieces of 12 ft 6 in, 150/16 + 1 each.
        let exact: f64 = 12.0 * (150.0 / 16.0 + 1.0);
        assert!((exact - 125.0).abs() < 1.0);
        assert_eq!(12.0 * nails(150.0, 16.0), 132.0); // whole nails a piece
    }
}
