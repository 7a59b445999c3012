//! Nails and mounting blocks.

use std::collections::BTreeMap;

use super::lines::{Shares, waste, whole};
use super::trims::Zones;
use crate::geom::vocabulary::Xy;
use crate::job::Job;
use crate::layout::Layout;
use crate::model::fastening::{Fastening, NailLayer, Nails, UNDER_HEAD};
use crate::model::quantity::{Group, TakeoffLine};
use crate::model::trim::{TrimPiece, TrimStock};
use crate::sources::in_words;
use crate::units::{LengthStyle, inches_fraction};

/// Nails of one piece: at most `spacing` apart and one more (FACTS SD-20, TK-18).
pub(super) fn nails(length: f64, spacing: f64) -> f64 {
    whole(length / spacing.max(1.0)) + 1.0
}

/// Penetration into nailable material in force.
fn penetration(job: &Job) -> f64 {
    job.fasteners.penetration.unwrap_or(job.siding().fastening.penetration)
}

/// Shortest nail in force.
fn shortest(job: &Job) -> f64 {
    job.fasteners.shortest.unwrap_or(job.siding().fastening.shortest)
}

/// The least nail to buy that reaches through what holds no nail and far enough into what does
/// (FACTS SD-37): of the job's lengths, else as nails are stocked. The 1/32 in under the head (SD-25)
/// alone does not call for the next size; the worked example leaves it out too.
fn nail_length(job: &Job, through: f64) -> f64 {
    let least = (through + penetration(job)).max(shortest(job));
    let parts = job.siding().fastening.lengths_per_inch;
    let reaches = job.fasteners.lengths.iter().copied().filter(|l| *l >= least - 1e-9);
    reaches.reduce(f64::min).unwrap_or_else(|| (whole(least * parts) / parts).max(shortest(job)))
}

/// What a panel's nail goes through before it holds: name and thickness.
fn through(job: &Job) -> Vec<(&'static str, f64)> {
    let f = &job.fasteners;
    vec![
        ("stand-off of the hem", job.stand_off()),
        ("board", job.product.thickness.unwrap_or(0.0)),
        ("foam board, holds no nail", f.foam_board),
        ("other layers that hold no nail", f.other_layers),
    ]
}

fn total(layers: &[(&str, f64)]) -> f64 {
    layers.iter().map(|l| l.1).sum()
}

/// What a panel's nail goes through, and its length (FACTS SD-37, SD-29, SD-30).
fn built_up(layout: &Layout) -> Fastening {
    let job = &layout.job;
    // What is nailed to studs is nailed tight; a hem hangs under the head.
    let head = if job.siding().fastening.through.is_slotted() { UNDER_HEAD } else { 0.0 };
    let layers: Vec<NailLayer> = std::iter::once(("room under the head", head))
        .chain(through(job))
        .chain([("nailable sheathing and framing", penetration(job))])
        .filter(|(_, thickness)| *thickness > 0.0)
        .map(|(what, thickness)| NailLayer { what: what.to_owned(), thickness })
        .collect();
    Fastening {
        needed: layers.iter().map(|l| l.thickness).sum(),
        layers,
        length: nail_length(job, total(&through(job))),
        shank: job.nail_shank(),
        head: job.fasteners.head,
        nails: Vec::new(),
        words: Vec::new(),
    }
}

/// Nails of a house: length, spacing and counts.
pub fn fastening(layout: &Layout) -> Fastening {
    let mut out = built_up(layout);
    let spacing = layout.job.nail_spacing();
    let (pieces, nailed) =
        layout.pieces().fold((0, 0.0), |(n, sum), (.., p)| (n + 1, sum + nails(p.length, spacing)));
    let what = format!("{}s", layout.job.product.kind.piece());
    out.nails.push(Nails { what, spacing, pieces, nails: nailed });
    for stock in TrimStock::ALL {
        let mine = || {
            let trims = layout.trims.iter().filter(|t| !t.kind.behind());
            trims.filter(|t| t.kind.stock() == stock)
        };
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
    let piece = layout.job.product.kind.piece();
    let mut out = vec![format!(
        "Nails for {piece}s, {}: {}. Shank {} or more, head {} or more, corrosion-resistant. Fix as the maker and the code say; wind design stays with them.",
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
        _ => f.strip_spacing,
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
    out.extend(joint_backing(layout));
    out.extend(blocks(layout));
    out
}

/// A piece of flashing behind each joint that is backed: fiber-cement (FACTS SD-132, JLC-F).
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
    let backed = layout.job.siding().joints.is_backed();
    (backed && shares.net() > 0.0).then(|| TakeoffLine {
        item: format!("joint backing, {} wide", layout.job.sheet.lengths.short(6.0)),
        id: "joint-backing".into(),
        unit: "piece".into(),
        group: Group::Flashing,
        net: shares.net(),
        order: shares.net(),
        how: in_words(
            "one behind each joint of two boards, lapped over the board below (FACTS SD-132, JLC-F)",
        ),
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
    let job = &layout.job;
    let (kind, count) = (job.product.kind, layout.pieces().count());
    let holds_none = total(&through(job));
    let spacing = style.short(job.nail_spacing());
    let how = if !job.siding().fastening.through.is_slotted() {
        format!(
            "one to each stud, {spacing} apart, and one more in each of {count} pieces; length by {} of board and layers that hold no nail and {} into nailable material",
            style.short(holds_none),
            style.short(penetration(job))
        )
    } else {
        format!(
            "at most {spacing} apart and one more in each of {count} pieces; length by {} of stand-off and layers that hold no nail and {} into nailable material; shank {} or more, head {} or more",
            style.short(holds_none),
            style.short(penetration(job)),
            thin(style, job.nail_shank()),
            style.short(job.fasteners.head)
        )
    };
    // Nails are sold by the inch in both series.
    let item = format!("nails for {}s, {}", kind.piece(), inches_fraction(built_up(layout).length));
    boxed(layout, "panel-nails", item, shares, how)
}

fn trim_nail_line(layout: &Layout) -> TakeoffLine {
    let style = layout.job.sheet.lengths;
    let mut shares = Shares::default();
    let mut by_stock: BTreeMap<TrimStock, f64> = BTreeMap::new();
    let zones = Zones::of(layout);
    for t in layout.trims.iter().filter(|t| !t.kind.behind()) {
        let n = trim_nails(t, trim_spacing(layout, t.kind.stock()));
        shares.add((&t.elevation, &t.wall), zones.zone(t), 1, n);
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
            counts.push(o.id.to_string());
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
        colour: layout.job.product.color.clone(),
        counts,
        shares: shares.done(layout),
        ..Default::default()
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::siding::kind::{BoardSiding, PanelSiding, Siding};

    #[test]
    fn nail_length_of_the_worked_example() {
        // FACTS SD-37: 3/4 hem stand-off and 1/2 foam board: 3/4 + 1/2 + 1 1/4 = 2 1/2.
        let of = |kind: Siding, through: f64| {
            let mut job = Job { product: crate::job::Product::of(kind), ..Job::default() };
            let plain = nail_length(&job, through);
            job.fasteners.lengths = vec![1.5, 1.75, 2.0, 2.5, 3.0, 3.25, 3.5];
            (plain, nail_length(&job, through))
        };
        assert_eq!(of(Siding::Panel(PanelSiding::FoamBacked), 1.25), (2.5, 2.5));
        assert_eq!(of(Siding::Panel(PanelSiding::FoamBacked), 0.75), (2.5, 2.5)); // PR-06
        assert_eq!(of(Siding::Panel(PanelSiding::FoamBacked), 1.75), (3.0, 3.0));
        // FACTS SD-38 (HAB): 1 1/2 to 2 in for plain vinyl.
        assert_eq!(of(Siding::Panel(PanelSiding::Vinyl), 0.0), (1.5, 1.5));
        assert_eq!(of(Siding::Panel(PanelSiding::Vinyl), 0.5), (2.0, 1.75));
        // FACTS WX-15 (CRA): 1 1/2 in of penetration in all, foam counts nothing; 1/2 in bevel siding
        // takes 2 in (6d), 3/4 in boards over 1 in of foam 3 1/4 in (12d).
        assert_eq!(of(Siding::Board(BoardSiding::Wood), 0.5), (2.0, 2.0));
        assert_eq!(of(Siding::Board(BoardSiding::Wood), 1.75), (3.25, 3.25));
        assert_eq!(of(Siding::Panel(PanelSiding::FoamBacked), 3.75).1, 5.0); // over the list
    }

    #[test]
    fn nails_of_a_square_of_double_four() {
        // FACTS TK-18: about 125 a square for D4 at 16 in: 12 pieces of 12 ft 6 in, 150/16 + 1 each.
        let exact: f64 = 12.0 * (150.0 / 16.0 + 1.0);
        assert!((exact - 125.0).abs() < 1.0);
        assert_eq!(12.0 * nails(150.0, 16.0), 132.0); // whole nails a piece
    }
}
