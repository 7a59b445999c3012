//! Panels, cartons and squares: separate numbers (FACTS TK-22).

use super::lines::{Shares, waste, whole};
use crate::model::layout::{Group, Layout, Piece, TakeoffLine, Xy, Zone};

/// Square feet one panel covers: length times exposure, the lap not taken off, as in trade lists
/// (FACTS section 2, coverage per piece).
pub(super) fn coverage(layout: &Layout) -> f64 {
    layout.job.product.exposure * layout.job.product.length / 144.0
}

/// Spare panels by the job's percentage.
pub(super) fn spare(layout: &Layout) -> f64 {
    whole(layout.panels.len() as f64 * layout.job.takeoff.spare / 100.0)
}

/// Cartons that hold so many panels.
pub(super) fn cartons(layout: &Layout, panels: f64) -> f64 {
    whole(panels / f64::from(layout.job.product.carton.max(1)))
}

/// Square feet of a piece that show.
fn face(piece: &Piece) -> f64 {
    let ring = |r: &Vec<Xy>| {
        let next = r.iter().cycle().skip(1);
        r.iter().zip(next).map(|(a, b)| a[0] * b[1] - b[0] * a[1]).sum::<f64>().abs() / 2.0
    };
    let holes: f64 = piece.holes.iter().map(ring).sum();
    (ring(&piece.outline) + piece.more.iter().map(ring).sum::<f64>() - holes) / 144.0
}

pub(super) fn lines(layout: &Layout) -> Vec<TakeoffLine> {
    let mut out = vec![panels(layout)];
    let count = layout.panels.len() as f64;
    let spare = spare(layout);
    let what = layout.job.product.kind.piece();
    let base = |item: &str, id: &str, unit: &str| TakeoffLine {
        item: item.into(),
        id: id.into(),
        unit: unit.into(),
        group: Group::Panels,
        colour: layout.job.product.colour.clone(),
        ..Default::default()
    };
    if spare > 0.0 {
        out.push(TakeoffLine {
            order: spare,
            waste: 100.0,
            how: format!(
                "{} % of {count} {what}s, for damage, by the job; rounded up",
                layout.job.takeoff.spare
            ),
            ..base(&format!("spare {what}s"), "spare-panels", "piece")
        });
    }
    let per_carton = f64::from(layout.job.product.carton.max(1));
    let all = count + spare;
    let bought = cartons(layout, all) * per_carton;
    let used: f64 = layout.pieces().map(|(.., p)| p.length).sum();
    let carton = TakeoffLine {
        net: all / per_carton,
        order: cartons(layout, all),
        waste: waste(used, bought * layout.job.product.length),
        how: format!(
            "{all} {what}s, spare included, {per_carton} to a carton, rounded up; {} {what}s over",
            bought - all
        ),
        ..base("cartons", "cartons", "carton")
    };
    if !sold_singly(layout) {
        out.push(carton);
    }
    out.extend(squares(layout, bought, base));
    out
}

/// Whether boards are bought by the piece.
pub(super) fn sold_singly(layout: &Layout) -> bool {
    let p = &layout.job.product;
    p.kind.is_board() && p.carton == 1
}

fn panels(layout: &Layout) -> TakeoffLine {
    let product = &layout.job.product;
    let length = product.length;
    let count = layout.panels.len() as f64;
    let mut shares = Shares::default();
    for (e, w) in layout.walls() {
        for c in &w.courses {
            for p in c.runs.iter().flat_map(|r| &r.pieces) {
                shares.add((&e.name, &w.id), w.zone(c.bottom), 1, p.length / length);
            }
        }
    }
    let used: f64 = layout.pieces().map(|(.., p)| p.length).sum();
    let shown: f64 = layout.pieces().map(|(.., p)| face(p)).sum();
    let style = layout.job.sheet.lengths;
    // The sentence begins with the count, which stands here already.
    let words = layout.bound.words.as_str();
    let verdict = words.split_once("; ").map_or(words, |(_, rest)| rest);
    TakeoffLine {
        item: format!("{}s", product.kind.piece()),
        id: "panels".into(),
        unit: "piece".into(),
        group: Group::Panels,
        net: shares.net(),
        order: count,
        waste: waste(used, count * length),
        how: format!(
            "{}, {} {}{}: {} pieces cut from {count} {}s of {}; {} Of the faces bought {:.1} % show; the rest is offcut, rips, notches and laps",
            product.kind.words(),
            product.profile(),
            style.short(product.face()),
            if product.kind.is_board() { " exposed" } else { "" },
            layout.pieces().count(),
            product.kind.piece(),
            style.length(length),
            verdict,
            100.0 - waste(shown, count * coverage(layout))
        ),
        colour: layout.job.product.colour.clone(),
        stock: Some(length),
        length: Some(used),
        counts: layout.panels.iter().map(|p| p.id.clone()).collect(),
        shares: shares.done(layout),
        ..Default::default()
    }
}

fn squares(
    layout: &Layout,
    bought: f64,
    base: impl Fn(&str, &str, &str) -> TakeoffLine,
) -> [TakeoffLine; 2] {
    let each = coverage(layout);
    let laid = layout.panels.len() as f64 * each / 100.0;
    let ordered = bought * each / 100.0;
    let mut shares = Shares::default();
    for (e, w) in layout.walls() {
        let place = (e.name.as_str(), w.id.as_str());
        match w.gable_area {
            None => shares.add(place, None, 1, w.net_area / 100.0),
            Some(gable) => {
                shares.add(place, Some(Zone::Wall), 1, (w.net_area - gable) / 100.0);
                shares.add(place, Some(Zone::Gable), 1, gable / 100.0);
            }
        }
    }
    let net = shares.net();
    let style = layout.job.sheet.lengths;
    let area = |square_feet: f64| format!("{:.1} {}", style.area(square_feet), style.area_unit());
    [
        TakeoffLine {
            net,
            order: ordered,
            waste: waste(net, ordered),
            how: format!(
                "net wall area {}; ordered as whole cartons at {} a {}",
                area(net * 100.0),
                format_args!("{:.3} {}", style.area(each), style.area_unit()),
                layout.job.product.kind.piece()
            ),
            shares: shares.done(layout),
            ..base("squares", "squares", "100 sq ft")
        },
        TakeoffLine {
            net: laid,
            waste: waste(net, laid),
            how: format!(
                "not ordered by itself: {} {}s cut up, {}, for a net wall area of {}",
                layout.panels.len(),
                layout.job.product.kind.piece(),
                area(laid * 100.0),
                area(net * 100.0)
            ),
            ..base("squares laid", "squares-laid", "100 sq ft")
        },
    ]
}
