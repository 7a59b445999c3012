//! Published counting rules beside the layout's own counts (`TakeoffFact::GableTriangle` to
//! `TakeoffFact::NailsBySquare`).

use std::collections::BTreeMap;

use super::lines::siding_piece;
use super::rules;
use crate::geom::polygon::{Polygon, bounds, total_area};
use crate::geom::strip::clip_band;
use crate::geom::tol::LEVEL;
use crate::geom::vocabulary::Point;
use crate::job::siding::system::SoldBy;
use crate::layout::laid::LaidHouse;
use crate::layout::wall::{LaidEdge, LaidWall};
use crate::model::counting::CountingRule;
use crate::model::house::{EdgeKind, OpeningKind};
use crate::model::ids::WallId;
use crate::model::item::{CountUnit, Item};
use crate::model::quantity::TakeoffLine;
use crate::model::takeoff::CrossCheck;
use crate::model::trim::TrimStock;
use crate::real::{Real, Total};

/// A story for the rule that counts posts by story: the usual post stock, 10 ft
/// (`TrimFact::PostStock`).
const STORY: f64 = 120.0;

pub(super) fn checks(layout: &LaidHouse, lines: &[TakeoffLine]) -> Vec<CrossCheck> {
    let mut out: Vec<CrossCheck> =
        trim_rules(layout).into_iter().filter_map(|r| by_stock(lines, r)).collect();
    if layout.job.siding().sold_by == SoldBy::Piece {
        out.push(running_feet(layout));
    }
    out.push(nails(layout));
    out.push(pounds(layout));
    out.extend(layout.walls().map(|(_, w)| courses(layout, w)));
    out.extend(layout.walls().filter_map(|(_, w)| gable(w)));
    out
}

/// Rules that count stock lengths of trim, each with what it counts.
fn trim_rules(layout: &LaidHouse) -> Vec<(TrimStock, CountingRule, f64)> {
    let trim = &layout.job.trim;
    let (perimeter, doors) = perimeter_and_doors(layout);
    let starter = rules::starter(perimeter, doors, trim.starter);
    let mut out = vec![(TrimStock::Starter, CountingRule::StarterByPerimeter, starter)];
    for stock in [TrimStock::OutsidePost, TrimStock::InsidePost] {
        let rule = CountingRule::PostsByStory { stock, story: STORY };
        out.push((stock, rule, posts(layout, stock)));
    }
    if layout.job.siding().receivers.has_pockets() {
        let level = rules::utility(tops_and_sills(layout), trim.finish_trim);
        out.push((TrimStock::JChannel, CountingRule::ChannelsByOpening, channels(layout)));
        out.push((TrimStock::FinishTrim, CountingRule::FinishTrimByLength, level));
    }
    out
}

/// The rule beside what is ordered of the stock; nothing where neither counts any.
fn by_stock(
    lines: &[TakeoffLine],
    (stock, counting_rule, rule): (TrimStock, CountingRule, f64),
) -> Option<CrossCheck> {
    let id = stock.line_id();
    // Posts for every angle are posts.
    let of = |l: &&TakeoffLine| matches!(l.item, Item::Trim { stock: s, .. } if s == stock);
    let layout: f64 = lines.iter().filter(of).map(|l| l.order).sum();
    let check = CrossCheck { item: Some(id), counting_rule, unit: CountUnit::Piece, rule, layout };
    (rule > 0.0 || layout > 0.0).then_some(check)
}

fn length(e: &LaidEdge) -> f64 {
    (e.to[0] - e.from[0]).hypotenuse(e.to[1] - e.from[1])
}

fn outline(w: &LaidWall) -> Vec<Point> {
    w.outline.iter().map(|p| Point::new(p[0], p[1])).collect()
}

/// Width of every wall, and of the doors in them.
fn perimeter_and_doors(layout: &LaidHouse) -> (f64, f64) {
    let width = |w: &LaidWall| bounds(&outline(w)).map_or(0.0, |b| b.width());
    let doors = layout.walls().flat_map(|(_, w)| &w.openings);
    let doors = doors.filter(|o| matches!(o.kind, OpeningKind::Door | OpeningKind::OverheadDoor));
    (layout.walls().map(|(_, w)| width(w)).total(), doors.map(|o| o.right - o.left).total())
}

/// Posts by corner and story: lengths of one corner stand over one another.
fn posts(layout: &LaidHouse, stock: TrimStock) -> f64 {
    let mut corners: BTreeMap<(&str, i64), f64> = BTreeMap::new();
    for t in layout.trims.iter().filter(|t| t.kind.stock() == stock) {
        *corners.entry((&t.elevation, t.from[0].round() as i64)).or_default() += t.length;
    }
    corners.values().map(|l| rules::posts(1.0, (l / STORY - 1e-9).ceil())).total()
}

fn rakes(w: &LaidWall) -> Vec<&LaidEdge> {
    w.edges.iter().filter(|e| e.kind == EdgeKind::Rake && length(e) >= 12.0).collect()
}

fn channels(layout: &LaidHouse) -> f64 {
    let openings = layout.walls().flat_map(|(_, w)| &w.openings);
    let of_openings: f64 =
        openings.map(|o| rules::opening_channels(o.right - o.left, o.head - o.sill)).sum();
    let gables = layout.walls().filter(|(_, w)| rakes(w).len() >= 2).count() as f64;
    of_openings + gables * rules::GABLE_CHANNELS + 0.0
}

fn tops_and_sills(layout: &LaidHouse) -> f64 {
    let edges = layout.walls().flat_map(|(_, w)| &w.edges);
    let mine =
        edges.filter(|e| matches!(e.kind, EdgeKind::Eave | EdgeKind::BareBottom | EdgeKind::Sill));
    mine.map(length).total()
}

fn net(layout: &LaidHouse) -> f64 {
    layout.walls().map(|(_, w)| w.net_area).total()
}

/// Running feet of boards: 12 by the exposed face, a square foot (`TakeoffFact::WoodCoverage`,
/// `Example::BoardCoverage`).
fn running_feet(layout: &LaidHouse) -> CrossCheck {
    let each = rules::running_feet(layout.job.product.exposure);
    CrossCheck {
        item: None,
        counting_rule: CountingRule::RunningFeet { each },
        unit: CountUnit::Foot,
        rule: each * net(layout),
        layout: layout.pieces().map(|(.., p)| p.length).total() / 12.0,
    }
}

fn nails(layout: &LaidHouse) -> CrossCheck {
    let (p, spacing, piece) =
        (&layout.job.product, layout.job.nail_spacing(), siding_piece(layout));
    let each = rules::nails_a_square(p.exposure, p.length, spacing);
    let needed = |length: f64| super::fasteners::nails(length, spacing);
    CrossCheck {
        item: Some("panel-nails".into()),
        counting_rule: CountingRule::NailsBySquare { piece, each },
        unit: CountUnit::Nail,
        rule: (each * net(layout) / 100.0).ceil(),
        layout: layout.pieces().map(|(.., piece)| needed(piece.length)).total(),
    }
}

fn pounds(layout: &LaidHouse) -> CrossCheck {
    CrossCheck {
        item: None,
        counting_rule: CountingRule::NailPounds,
        unit: CountUnit::Pound,
        rule: rules::nail_pounds(net(layout)),
        layout: 0.0,
    }
}

fn courses(layout: &LaidHouse, w: &LaidWall) -> CrossCheck {
    let exposure = layout.job.product.exposure;
    let height = bounds(&outline(w)).map_or(0.0, |b| b.height());
    CrossCheck {
        item: None,
        counting_rule: CountingRule::CoursesByHeight { wall: WallId::from(w.id.as_str()) },
        unit: CountUnit::Course,
        rule: f64::from(rules::courses(height, exposure)),
        layout: w.courses.len() as f64,
    }
}

/// A gable of two rakes whose feet are level as drawn: base x height / 2 beside the drawn outline over them.
fn gable(w: &LaidWall) -> Option<CrossCheck> {
    let rakes = rakes(w);
    let [a, b] = rakes.as_slice() else { return None };
    let (p, q) = (drawn_foot(w, a), drawn_foot(w, b));
    let peak = [a.from[1], a.to[1], b.from[1], b.to[1]].into_iter().fold(f64::MIN, f64::max);
    let foot = p.y.min(q.y);
    if (p.y - q.y).abs() > 1.0 || peak <= foot {
        return None;
    }
    let shape = [Polygon::simple(outline(w)).wound()];
    Some(CrossCheck {
        item: None,
        counting_rule: CountingRule::GableTriangle { wall: WallId::from(w.id.as_str()) },
        unit: CountUnit::SquareFoot,
        rule: rules::triangle((p.x - q.x).abs(), peak - foot) / 144.0,
        layout: total_area(&clip_band(&shape, foot, peak + 1.0)) / 144.0,
    })
}

/// The low end of a rake as drawn: siding, and with it the rake, ends short of a corner by its set-back.
fn drawn_foot(w: &LaidWall, rake: &LaidEdge) -> Point {
    let (low, high) =
        if rake.from[1] < rake.to[1] { (rake.from, rake.to) } else { (rake.to, rake.from) };
    let (low, high) = (Point::new(low[0], low[1]), Point::new(high[0], high[1]));
    let along = (high - low).normalize();
    let off = |p: Point| (p - low).cross(along).abs();
    let ring = outline(w);
    let sides = (0..ring.len()).map(|i| (ring[i], ring[(i + 1) % ring.len()]));
    let on_rake = sides.filter(|(p, q)| off(*p) <= LEVEL && off(*q) <= LEVEL);
    let ends = on_rake.map(|(p, q)| if p.y < q.y { p } else { q });
    ends.filter(|p| p.y <= low.y).min_by(|p, q| p.y.total_cmp(&q.y)).unwrap_or(low)
}
