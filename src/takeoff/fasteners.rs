//! Nails and mounting blocks.

use std::collections::BTreeMap;

use super::lines::{Shares, waste, whole};
use crate::job::Kind;
use crate::model::layout::{Group, Layout, TakeoffLine, Xy};
use crate::model::trim::{TrimPiece, TrimStock};
use crate::units::inches_fraction;

/// Nails of one piece: at most `spacing` apart and one more (FACTS SD-20, TK-18).
pub(super) fn nails(length: f64, spacing: f64) -> f64 {
    whole(length / spacing.max(1.0)) + 1.0
}

/// Penetration into nailable material: vinyl (FACTS SD-29, VSI-H), wood (SD-135, NAV14044),
/// fibre-cement (SD-133, IBC 1405.16).
fn penetration(kind: Kind) -> f64 {
    match kind {
        Kind::FoamBacked | Kind::Vinyl => 1.25,
        Kind::Wood => 1.5,
        Kind::FibreCement => 1.0,
    }
}
/// Shortest nail: for foam-backed siding (FACTS PR-06, common practice, no source), for plain vinyl
/// (SD-38, HAB).
fn shortest(kind: Kind) -> f64 {
    match kind {
        Kind::FoamBacked => 2.5,
        Kind::Vinyl => 1.5,
        Kind::Wood | Kind::FibreCement => 0.0,
    }
}

/// Nail length in the next half inch: stand-off and penetration (FACTS SD-37). The 1/32 in under
/// the head (SD-25) alone does not call for the next size; the worked example leaves it out too.
pub(super) fn nail_length(kind: Kind, stand_off: f64) -> f64 {
    // Nails through boards are stocked by the quarter inch (FACTS WX-15: 2, 3 1/4).
    let parts = if kind.is_board() { 4.0 } else { 2.0 };
    (whole((stand_off + penetration(kind)) * parts) / parts).max(shortest(kind))
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
    out.extend(joint_backing(layout));
    out.extend(blocks(layout));
    out
}

/// A piece of flashing behind each joint of fibre-cement (FACTS SD-132, JLC-F).
fn joint_backing(layout: &Layout) -> Option<TakeoffLine> {
    let mut shares = Shares::default();
    for (e, w) in layout.walls() {
        for c in &w.courses {
            let joints: usize = c.runs.iter().map(|r| r.seams.len()).sum();
            if joints > 0 {
                shares.add((&e.name, &w.id), w.zone(c.bottom), joints, joints as f64);
            }
        }
    }
    let fibre_cement = layout.job.product.kind == Kind::FibreCement;
    (fibre_cement && shares.net() > 0.0).then(|| TakeoffLine {
        item: format!("joint backing, {} wide", layout.job.sheet.lengths.short(6.0)),
        id: "joint-backing".into(),
        unit: "piece".into(),
        group: Group::Flashing,
        net: shares.net(),
        order: shares.net(),
        how: "one behind each joint of two boards, lapped over the board below (SD-132, JLC-F)"
            .into(),
        shares: shares.done(layout),
        ..Default::default()
    })
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
    let style = layout.job.sheet.lengths;
    let mut shares = Shares::default();
    for (e, w) in layout.walls() {
        for c in &w.courses {
            let zone = w.zone(c.bottom);
            for p in c.runs.iter().flat_map(|r| &r.pieces) {
                shares.add((&e.name, &w.id), zone, 1, nails(p.length, layout.job.nail_spacing()));
            }
        }
    }
    let (kind, count) = (layout.job.product.kind, layout.pieces().count());
    let through = layout.job.stand_off() + layout.job.product.thickness.unwrap_or(0.0);
    let spacing = style.short(layout.job.nail_spacing());
    let how = if kind.is_board() {
        format!(
            "one to each stud, {spacing} apart, and one more in each of {count} pieces; length by {} of board and {} into nailable material",
            style.short(through),
            style.short(penetration(kind))
        )
    } else {
        format!(
            "at most {spacing} apart and one more in each of {count} pieces; length by a stand-off of {} and {} into nailable material, foam not counted",
            style.short(through),
            style.short(penetration(kind))
        )
    };
    // Nails are sold by the inch in both series.
    let length = inches_fraction(nail_length(kind, through));
    let item = format!("nails for {}s, {length}", kind.piece());
    boxed(layout, "panel-nails", item, shares, how)
}

fn trim_nail_line(layout: &Layout) -> TakeoffLine {
    let spacing = layout.job.takeoff.trim_nail_spacing;
    let mut shares = Shares::default();
    let mut by_stock: BTreeMap<TrimStock, f64> = BTreeMap::new();
    for t in layout.trims.iter().filter(|t| !t.kind.behind()) {
        let n = trim_nails(t, spacing);
        shares.add((&t.elevation, &t.wall), super::trims::zone(layout, t), 1, n);
        *by_stock.entry(t.kind.stock()).or_default() += n;
    }
    let each: Vec<String> = by_stock.iter().map(|(s, n)| format!("{} {n}", s.words())).collect();
    let how = format!(
        "{} apart and one more a piece, posts on both flanges: {}",
        layout.job.sheet.lengths.short(spacing),
        each.join(", ")
    );
    boxed(layout, "trim-nails", "nails for trim".into(), shares, how)
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

    #[test]
    fn nail_length_of_the_worked_example() {
        // FACTS SD-37: 3/4 hem stand-off and 1/2 foam board: 3/4 + 1/2 + 1 1/4 = 2 1/2.
        assert_eq!(nail_length(Kind::FoamBacked, 1.25), 2.5);
        assert_eq!(nail_length(Kind::FoamBacked, 0.75), 2.5); // PR-06
        assert_eq!(nail_length(Kind::FoamBacked, 1.75), 3.0);
        // FACTS SD-38 (HAB): 1 1/2 to 2 in for plain vinyl.
        assert_eq!(nail_length(Kind::Vinyl, 0.0), 1.5);
        assert_eq!(nail_length(Kind::Vinyl, 0.5), 2.0);
        // FACTS WX-15 (CRA): 1/2 in bevel siding 2 in; 3/4 in boards over 1 in of foam 3 1/4 in.
        assert_eq!(nail_length(Kind::Wood, 0.5), 2.0);
        assert_eq!(nail_length(Kind::Wood, 1.75), 3.25);
    }

    #[test]
    fn nails_of_a_square_of_double_four() {
        // FACTS TK-18: about 125 a square for D4 at 16 in: 12 pieces of 12 ft 6 in, 150/16 + 1 each.
        let exact: f64 = 12.0 * (150.0 / 16.0 + 1.0);
        assert!((exact - 125.0).abs() < 1.0);
        assert_eq!(12.0 * nails(150.0, 16.0), 132.0); // whole nails a piece
    }
}
