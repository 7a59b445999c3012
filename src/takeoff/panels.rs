//! Panels, cartons and squares: separate numbers (FACTS TK-22).

use std::collections::BTreeSet;

use super::lines::{Shares, waste, whole};
use crate::geom::vocabulary::Xy;
use crate::job::Stock;
use crate::job::siding::system::SoldBy;
use crate::layout::Layout;
use crate::layout::piece::{Panel, Piece};
use crate::model::half::Half;
use crate::model::quantity::{Group, TakeoffLine, Zone};
use crate::model::takeoff::stock_suffix;

/// Square feet one panel covers: length times exposure, the lap not taken off, as in trade lists
/// (FACTS section 2, coverage per piece).
pub(super) fn coverage(layout: &Layout) -> f64 {
    covered(layout, layout.first_length())
}

fn covered(layout: &Layout, length: f64) -> f64 {
    layout.job.product.exposure * length / 144.0
}

/// Panels of one stock length, each a line of its own; one for all where the job has one length.
pub(super) struct Lot<'a> {
    pub length: f64,
    pub panels: Vec<&'a Panel>,
    /// Its place among the layout's stocks.
    pub stock: usize,
    /// Panels in a carton.
    pub carton: f64,
    /// Spare panels by the job's percentage.
    pub spare: f64,
}

impl Lot<'_> {
    /// Panels laid.
    pub(super) fn count(&self) -> f64 {
        self.panels.len() as f64
    }

    /// Cartons that hold them and the spare ones.
    pub(super) fn cartons(&self) -> f64 {
        whole((self.count() + self.spare) / self.carton)
    }

    /// Panels in these cartons.
    pub(super) fn bought(&self) -> f64 {
        self.cartons() * self.carton
    }

    pub(super) fn id(&self, of: &str) -> String {
        format!("{of}{}", stock_suffix(self.stock))
    }

    /// Words for a line: with the length where there are several.
    fn item(&self, layout: &Layout, of: &str) -> String {
        match layout.stocks.len() {
            0 | 1 => of.to_owned(),
            _ => format!("{of} of {}", layout.job.sheet.lengths.length(self.length)),
        }
    }

    pub(super) fn pieces<'a>(&self, layout: &'a Layout) -> Vec<&'a Piece> {
        let mine: BTreeSet<&str> = self.panels.iter().map(|p| p.id.as_str()).collect();
        layout.pieces().map(|(.., p)| p).filter(|p| mine.contains(p.panel.as_str())).collect()
    }
}

/// The lots, in the stocks' order. Of several lengths one that no panel is cut from has none.
pub(super) fn lots(layout: &Layout) -> Vec<Lot<'_>> {
    let lot = |(stock, of_job): (usize, &Stock)| {
        let panels: Vec<&Panel> =
            layout.panels.iter().filter(|p| layout.stock_of(p) == stock).collect();
        let spare = whole(panels.len() as f64 * layout.job.takeoff.spare / 100.0);
        let carton = f64::from(of_job.carton.max(1));
        Lot { length: of_job.length, panels, stock, carton, spare }
    };
    let mut out: Vec<Lot> = layout.stocks.iter().enumerate().map(lot).collect();
    if out.iter().any(|l| !l.panels.is_empty()) {
        out.retain(|l| !l.panels.is_empty());
    } else {
        out.truncate(1);
    }
    out
}

/// Spare panels by the job's percentage.
pub(super) fn spare(layout: &Layout) -> f64 {
    lots(layout).iter().map(|l| l.spare).sum()
}

/// Panels laid, by the length of the first.
pub(super) fn laid(layout: &Layout) -> usize {
    let length: f64 = layout.panels.iter().map(|p| p.stock).sum();
    match layout.stocks.len() {
        0 | 1 => layout.panels.len(),
        _ => whole(length / layout.first_length()) as usize,
    }
}

/// Cartons that hold so many panels of the first length.
pub(super) fn cartons(layout: &Layout, panels: f64) -> f64 {
    whole(panels / layout.stocks.first().map_or(1.0, |s| f64::from(s.carton.max(1))))
}

/// Length that a piece takes of its panel: none from the upper half of one that is ripped for another
/// course, since that length is taken already.
pub(super) fn taken(piece: &Piece) -> f64 {
    if piece.half == Some(Half::Upper) { 0.0 } else { piece.length }
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
    let lots = lots(layout);
    let mut out: Vec<TakeoffLine> = lots.iter().map(|l| panels(layout, l)).collect();
    let what = layout.job.product.kind.piece();
    let base = |item: &str, id: &str, unit: &str| TakeoffLine {
        item: item.into(),
        id: id.into(),
        unit: unit.into(),
        group: Group::Panels,
        colour: layout.job.product.color.clone(),
        ..Default::default()
    };
    for l in lots.iter().filter(|l| l.spare > 0.0) {
        out.push(TakeoffLine {
            order: l.spare,
            waste: 100.0,
            how: format!(
                "{} % of {} {what}s, for damage, by the job; rounded up",
                layout.job.takeoff.spare,
                l.count()
            ),
            ..base(&l.item(layout, &format!("spare {what}s")), &l.id("spare-panels"), "piece")
        });
    }
    for l in lots.iter().filter(|_| !sold_singly(layout)) {
        let all = l.count() + l.spare;
        let used: f64 = l.pieces(layout).iter().map(|p| taken(p)).sum();
        out.push(TakeoffLine {
            net: all / l.carton,
            order: l.cartons(),
            waste: waste(used, l.bought() * l.length),
            how: format!(
                "{all} {what}s, spare included, {} to a carton, rounded up; {} {what}s over",
                l.carton,
                l.bought() - all
            ),
            ..base(&l.item(layout, "cartons"), &l.id("cartons"), "carton")
        });
    }
    out.extend(squares(layout, &lots, base));
    out
}

/// Whether boards are bought by the piece.
pub(super) fn sold_singly(layout: &Layout) -> bool {
    let p = &layout.job.product;
    p.system().sold_by == SoldBy::Piece && layout.stocks.iter().all(|s| s.carton == 1)
}

fn panels(layout: &Layout, lot: &Lot) -> TakeoffLine {
    let product = &layout.job.product;
    let (length, count) = (lot.length, lot.count());
    let mine: BTreeSet<&str> = lot.panels.iter().map(|p| p.id.as_str()).collect();
    let mut shares = Shares::default();
    for (e, w) in layout.walls() {
        for c in &w.courses {
            let pieces = c.runs.iter().flat_map(|r| &r.pieces);
            for p in pieces.filter(|p| mine.contains(p.panel.as_str())) {
                shares.add((&e.name, &w.id), w.zone(c.bottom), 1, taken(p) / length);
            }
        }
    }
    let pieces = lot.pieces(layout);
    let used: f64 = pieces.iter().map(|p| taken(p)).sum();
    let shown: f64 = pieces.iter().map(|p| face(p)).sum();
    let style = layout.job.sheet.lengths;
    // The sentence begins with the count, which stands here already.
    let words = layout.bound.words.as_str();
    let verdict = words.split_once("; ").map_or(words, |(_, rest)| rest);
    TakeoffLine {
        item: lot.item(layout, &format!("{}s", product.kind.piece())),
        id: lot.id("panels"),
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
            if product.system().courses.is_evened() { " exposed" } else { "" },
            pieces.len(),
            product.kind.piece(),
            style.length(length),
            verdict,
            100.0 - waste(shown, count * covered(layout, length))
        ),
        colour: layout.job.product.color.clone(),
        stock: Some(length),
        length: Some(used),
        counts: lot.panels.iter().map(|p| p.id.to_string()).collect(),
        shares: shares.done(layout),
        ..Default::default()
    }
}

fn squares(
    layout: &Layout,
    lots: &[Lot],
    base: impl Fn(&str, &str, &str) -> TakeoffLine,
) -> [TakeoffLine; 2] {
    let each = |l: &Lot| covered(layout, l.length);
    let laid: f64 = lots.iter().map(|l| l.count() * each(l) / 100.0).sum();
    let ordered: f64 = lots.iter().map(|l| l.bought() * each(l) / 100.0).sum();
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
    let rates: Vec<String> =
        lots.iter().map(|l| format!("{:.3} {}", style.area(each(l)), style.area_unit())).collect();
    [
        TakeoffLine {
            net,
            order: ordered,
            waste: waste(net, ordered),
            how: format!(
                "net wall area {}; ordered as whole cartons at {} a {}",
                area(net * 100.0),
                rates.join(" or "),
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
