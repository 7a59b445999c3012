//! Published counting rules beside the layout's own counts (FACTS TK-11 to TK-18).

use std::collections::BTreeMap;

use super::rules;
use crate::geom::polygon::{Polygon, bounds, total_area};
use crate::geom::strip::clip_band;
use crate::geom::vocabulary::Point;
use crate::job::siding::system::SoldBy;
use crate::layout::Layout;
use crate::layout::wall::{LaidEdge, LaidWall};
use crate::model::house::{EdgeKind, OpeningKind};
use crate::model::quantity::TakeoffLine;
use crate::model::takeoff::CrossCheck;
use crate::model::trim::TrimStock;
use crate::sources::in_words;

/// A storey for the rule that counts posts by storey: the usual post stock, 10 ft (FACTS SD-99).
const STOREY: f64 = 120.0;

pub(super) fn checks(layout: &Layout, lines: &[TakeoffLine]) -> Vec<CrossCheck> {
    let mut out = Vec::new();
    let order = |id: &str| lines.iter().find(|l| l.id == id).map_or(0.0, |l| l.order);
    let mut pieces = |item: &str, what: &str, rule: f64, how: &str| {
        if rule > 0.0 || order(item) > 0.0 {
            out.push(CrossCheck {
                item: item.into(),
                what: what.into(),
                unit: "piece".into(),
                rule,
                layout: order(item),
                how: how.into(),
            });
        }
    };
    let trim = &layout.job.trim;
    let (perimeter, doors) = foot(layout);
    pieces(
        "starter-strip",
        "starter strip",
        rules::starter(perimeter, doors, trim.starter),
        "perimeter less door widths, by the stock length (FACTS TK-13, YARD, HAB)",
    );
    for (stock, what) in [
        (TrimStock::OutsidePost, "outside corner posts"),
        (TrimStock::InsidePost, "inside corner posts"),
    ] {
        pieces(
            &super::trims::id(stock),
            what,
            posts(layout, stock),
            "one a corner and storey, a storey taken as 10 ft (FACTS TK-14, YARD)",
        );
    }
    let system = layout.job.siding();
    if system.receivers.has_pockets() {
        pieces(
            "j-channel",
            "J-channel",
            channels(layout),
            "2 for an opening smaller than 6 x 5 ft, 3 for a larger one, 4 a gable end (FACTS TK-15, YARD)",
        );
        pieces(
            "finish-trim",
            "finish trim",
            rules::utility(tops_and_sills(layout), trim.finish_trim),
            "level tops and sills, by the stock length (FACTS TK-16, YARD)",
        );
    }
    if system.sold_by == SoldBy::Piece {
        out.push(running_feet(layout));
    }
    out.push(nails(layout));
    out.push(pounds(layout));
    out.extend(layout.walls().map(|(_, w)| courses(layout, w)));
    out.extend(layout.walls().filter_map(|(_, w)| gable(w)));
    out.iter_mut().for_each(|c| c.how = in_words(&c.how));
    out
}

fn length(e: &LaidEdge) -> f64 {
    (e.to[0] - e.from[0]).hypot(e.to[1] - e.from[1])
}

fn outline(w: &LaidWall) -> Vec<Point> {
    w.outline.iter().map(|p| Point::new(p[0], p[1])).collect()
}

/// Width of every wall, and of the doors in them.
fn foot(layout: &Layout) -> (f64, f64) {
    let width = |w: &LaidWall| bounds(&outline(w)).map_or(0.0, |b| b.width());
    let doors = layout.walls().flat_map(|(_, w)| &w.openings);
    let doors = doors.filter(|o| matches!(o.kind, OpeningKind::Door | OpeningKind::OverheadDoor));
    (
        layout.walls().map(|(_, w)| width(w)).sum(),
        doors.map(|o| o.right - o.left).sum::<f64>() + 0.0,
    )
}

/// Posts by corner and storey: lengths of one corner stand over one another.
fn posts(layout: &Layout, stock: TrimStock) -> f64 {
    let mut corners: BTreeMap<(&str, i64), f64> = BTreeMap::new();
    for t in layout.trims.iter().filter(|t| t.kind.stock() == stock) {
        *corners.entry((&t.elevation, t.from[0].round() as i64)).or_default() += t.length;
    }
    corners.values().map(|l| rules::posts(1.0, (l / STOREY - 1e-9).ceil())).sum::<f64>() + 0.0
}

fn rakes(w: &LaidWall) -> Vec<&LaidEdge> {
    w.edges.iter().filter(|e| e.kind == EdgeKind::Rake && length(e) >= 12.0).collect()
}

fn channels(layout: &Layout) -> f64 {
    let openings = layout.walls().flat_map(|(_, w)| &w.openings);
    let of_openings: f64 =
        openings.map(|o| rules::opening_channels(o.right - o.left, o.head - o.sill)).sum();
    let gables = layout.walls().filter(|(_, w)| rakes(w).len() >= 2).count() as f64;
    of_openings + gables * rules::GABLE_CHANNELS + 0.0
}

fn tops_and_sills(layout: &Layout) -> f64 {
    let edges = layout.walls().flat_map(|(_, w)| &w.edges);
    let mine =
        edges.filter(|e| matches!(e.kind, EdgeKind::Eave | EdgeKind::BareBottom | EdgeKind::Sill));
    mine.map(length).sum::<f64>() + 0.0
}

fn net(layout: &Layout) -> f64 {
    layout.walls().map(|(_, w)| w.net_area).sum()
}

/// Running feet of boards: 12 by the exposed face, a square foot (FACTS TK-20, WX-14, WWPA).
fn running_feet(layout: &Layout) -> CrossCheck {
    let each = rules::running_feet(layout.job.product.exposure);
    CrossCheck {
        item: String::new(),
        what: "running feet of boards".into(),
        unit: "ft".into(),
        rule: each * net(layout),
        layout: layout.pieces().map(|(.., p)| p.length).sum::<f64>() / 12.0,
        how: format!(
            "{each:.2} a square foot of net area, no waste (FACTS TK-20, WX-14, WWPA); the layout counts rips and notches whole"
        ),
    }
}

fn nails(layout: &Layout) -> CrossCheck {
    let (p, spacing) = (&layout.job.product, layout.job.nail_spacing());
    let each = rules::nails_a_square(p.exposure, p.length, spacing);
    CrossCheck {
        item: "panel-nails".into(),
        what: format!("nails for {}s", p.kind.piece()),
        unit: "nail".into(),
        rule: (each * net(layout) / 100.0).ceil(),
        layout: layout
            .pieces()
            .map(|(.., piece)| super::fasteners::nails(piece.length, spacing))
            .sum(),
        how: format!("{each:.0} a square of net area (FACTS TK-18, computed)"),
    }
}

fn pounds(layout: &Layout) -> CrossCheck {
    let pounds = rules::nail_pounds(net(layout));
    CrossCheck {
        item: String::new(),
        what: "nails by weight".into(),
        unit: "lb".into(),
        rule: pounds,
        layout: 0.0,
        how: "1 lb a square of net area, 1 1/2 in roofing nails (FACTS TK-17, YARD); the layout counts nails, longer ones weigh more".into(),
    }
}

fn courses(layout: &Layout, w: &LaidWall) -> CrossCheck {
    let exposure = layout.job.product.exposure;
    let height = bounds(&outline(w)).map_or(0.0, |b| b.height());
    CrossCheck {
        item: String::new(),
        what: format!("courses, {}", w.id),
        unit: "course".into(),
        rule: f64::from(rules::courses(height, exposure)),
        layout: w.courses.len() as f64,
        how: "height by exposure, rounded up (FACTS TK-12, RETAIL); the layout starts all walls on one level and clear of grade".into(),
    }
}

/// A gable of two rakes whose feet are level: base x height / 2 beside the drawn outline over them.
fn gable(w: &LaidWall) -> Option<CrossCheck> {
    let rakes = rakes(w);
    let foot = w.rake_foot()?;
    let [a, b] = rakes.as_slice() else { return None };
    let low = |e: &LaidEdge| if e.from[1] < e.to[1] { e.from } else { e.to };
    let (p, q) = (low(a), low(b));
    let peak = [a.from[1], a.to[1], b.from[1], b.to[1]].into_iter().fold(f64::MIN, f64::max);
    if (p[1] - q[1]).abs() > 1.0 || peak <= foot {
        return None;
    }
    let shape = [Polygon::simple(outline(w)).wound()];
    Some(CrossCheck {
        item: String::new(),
        what: format!("gable, {}", w.id),
        unit: "sq ft".into(),
        rule: rules::triangle((p[0] - q[0]).abs(), peak - foot) / 144.0,
        layout: total_area(&clip_band(&shape, foot, peak + 1.0)) / 144.0,
        how: "base x height / 2 (FACTS TK-11); the layout's figure is the drawn outline over the rakes' feet, openings in".into(),
    })
}
