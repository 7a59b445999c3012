//! Soffit, fascia and coil stock, by the drawn lengths of eaves and rakes.

use crate::geom::tol::LEVEL;
use crate::geom::vocabulary::Xy;
use crate::layout::laid::LaidHouse;
use crate::layout::wall::LaidWall;
use crate::model::basis::{Basis, WrapLength, WrappedTrim};
use crate::model::item::{CountUnit, Item};
use crate::model::quantity::{Group, TakeoffLine};
use crate::model::trim::TrimKind;
use crate::packing;
use crate::real::Real;
use crate::takeoff::level_flashing::strips;
use crate::takeoff::lines::{Shares, waste, whole};

/// Sides of a wall's outline that lie over it, as drawn: level ones are its eaves, sloped ones its
/// rakes.
struct Tops {
    eaves: Vec<f64>,
    rakes: Vec<f64>,
}

impl Tops {
    fn of(w: &LaidWall) -> Self {
        let mut out = Tops { eaves: Vec::new(), rakes: Vec::new() };
        let sides = || w.outline.iter().zip(w.outline.iter().cycle().skip(1));
        let twice: f64 = sides().map(|(a, b)| a[0] * b[1] - b[0] * a[1]).sum();
        for (a, b) in sides() {
            // Going left with the wall on the left hand, or right with it on the right.
            let run = (b[0] - a[0]) * twice.signum();
            if run >= -LEVEL {
                continue;
            }
            let length = reach(a, b);
            if (a[1] - b[1]).abs() <= LEVEL {
                out.eaves.push(length)
            } else {
                out.rakes.push(length)
            }
        }
        out
    }
}

fn reach(a: &Xy, b: &Xy) -> f64 {
    (a[0] - b[0]).hypotenuse(a[1] - b[1])
}

pub(super) fn lines(layout: &LaidHouse) -> Vec<TakeoffLine> {
    let rules = &layout.job.estimate;
    let mut out = Vec::new();
    if rules.soffit_depth > 0.0 || rules.rake_soffit_depth > 0.0 {
        out.extend(soffit(layout));
        let (under, along) = (rules.soffit_depth > 0.0, rules.rake_soffit_depth > 0.0);
        let channel = (Item::SoffitChannel, rules.soffit_stock);
        out.extend(along_tops(layout, channel, under, along));
    }
    if rules.fascia > 0.0 {
        out.extend(along_tops(layout, (Item::Fascia, rules.fascia_stock), true, true));
    }
    out.extend(coil(layout));
    out
}

/// Panels cut across the depth, one to each width that a panel covers.
fn soffit(layout: &LaidHouse) -> Option<TakeoffLine> {
    let rules = &layout.job.estimate;
    let (stock, kerf) = (rules.soffit_stock, layout.job.seams.kerf);
    let mut shares = Shares::default();
    let mut cut = Vec::new();
    let mut drawn = [0.0, 0.0];
    for (e, w) in layout.walls() {
        let tops = Tops::of(w);
        let sorts = [(tops.eaves, rules.soffit_depth), (tops.rakes, rules.rake_soffit_depth)];
        for (i, (lengths, depth)) in sorts.into_iter().enumerate() {
            for length in lengths.into_iter().filter(|_| depth > 0.0) {
                let count = whole(length / rules.soffit_cover) as usize;
                let place = (e.name.as_str(), w.id.as_str());
                shares.add(place, None, count, count as f64 * depth / stock);
                cut.extend(std::iter::repeat_n(depth, count));
                drawn[i] += length;
            }
        }
    }
    let plan = packing::plan(&cut, stock, kerf);
    let basis = Basis::SoffitCuts {
        eaves: [drawn[0], rules.soffit_depth],
        rakes: [drawn[1], rules.rake_soffit_depth],
        cover: rules.soffit_cover,
        cuts: cut.len(),
        stock,
        least: plan.bound,
    };
    let (net, order) = (shares.net(), plan.stocks.len() as f64);
    (net > 0.0).then(|| TakeoffLine {
        net,
        order,
        waste: waste(net, order),
        stock: Some(stock),
        length: Some(cut.iter().sum()),
        shares: shares.done(layout),
        ..TakeoffLine::new(Item::Soffit, CountUnit::Piece, Group::Further, basis)
    })
}

/// Lengths along eaves and rakes, cut from stock.
fn along_tops(
    layout: &LaidHouse,
    (item, stock): (Item, f64),
    eaves: bool,
    rakes: bool,
) -> Option<TakeoffLine> {
    let mut shares = Shares::default();
    let mut cut = Vec::new();
    for (e, w) in layout.walls() {
        let tops = Tops::of(w);
        let sorts = [(tops.eaves, eaves), (tops.rakes, rakes)];
        for length in sorts.into_iter().filter(|s| s.1).flat_map(|s| s.0) {
            let pieces = strips(length, stock, 0.0);
            shares.add((&e.name, &w.id), None, pieces.len(), length / stock);
            cut.extend(pieces);
        }
    }
    let plan = packing::plan(&cut, stock, layout.job.seams.kerf);
    let length = cut.iter().sum();
    let basis = Basis::StockAlong { pieces: cut.len(), length, stock, least: plan.bound };
    let (net, order) = (shares.net(), plan.stocks.len() as f64);
    (net > 0.0).then(|| TakeoffLine {
        net,
        order,
        waste: waste(net, order),
        stock: Some(stock),
        length: Some(length),
        shares: shares.done(layout),
        ..TakeoffLine::new(item, CountUnit::Piece, Group::Further, basis)
    })
}

/// Coil stock for trim that is wrapped: strips side by side out of a roll's width.
fn coil(layout: &LaidHouse) -> Option<TakeoffLine> {
    let rules = &layout.job.estimate;
    let sorts = [
        (WrappedTrim::Fascia, rules.wrap_fascia),
        (WrappedTrim::Frieze, rules.wrap_frieze),
        (WrappedTrim::Band, rules.wrap_band),
        (WrappedTrim::Surround, rules.wrap_surround),
    ];
    let mut shares = Shares::default();
    let (mut wraps, mut used) = (Vec::new(), 0.0);
    for (trim, girth) in sorts.into_iter().filter(|s| s.1 > 0.0) {
        let strips = ((rules.coil_width / girth + 1e-9).floor() as usize).max(1);
        let mut sum = 0.0;
        for (place, length) in wrapped(layout, trim) {
            let taken = length / strips as f64;
            shares.add(place, None, 1, taken / rules.coil_length);
            (sum, used) = (sum + length, used + taken);
        }
        if sum > 0.0 {
            wraps.push(WrapLength { trim, length: sum, girth, strips });
        }
    }
    let basis = Basis::Wraps { wraps, roll: [rules.coil_width, rules.coil_length] };
    let (net, order) = (shares.net(), whole(shares.net()));
    (net > 0.0).then(|| TakeoffLine {
        net,
        order,
        waste: waste(net, order),
        stock: Some(rules.coil_length),
        length: Some(used),
        shares: shares.done(layout),
        ..TakeoffLine::new(Item::Coil, CountUnit::Roll, Group::Further, basis)
    })
}

/// Lengths of one sort of wrapped trim, each at its place.
fn wrapped(layout: &LaidHouse, trim: WrappedTrim) -> Vec<((&str, &str), f64)> {
    let kind = match trim {
        WrappedTrim::Fascia => {
            let tops = layout.walls().flat_map(|(e, w)| {
                let tops = Tops::of(w);
                let place = (e.name.as_str(), w.id.as_str());
                tops.eaves.into_iter().chain(tops.rakes).map(move |l| (place, l))
            });
            return tops.collect();
        }
        WrappedTrim::Frieze => TrimKind::Frieze,
        WrappedTrim::Band => TrimKind::Band,
        WrappedTrim::Surround => TrimKind::Surround,
    };
    let mine = layout.trims.iter().filter(|t| t.kind == kind);
    mine.map(|t| ((t.elevation.as_str(), t.wall.as_str()), t.length)).collect()
}
