//! Level patterns that cover roofs: no siding, though they are drawn like it.

use std::collections::{BTreeMap, BTreeSet};

use crate::finding::lines::LineFinding;
use crate::finding::{Finding, Findings};
use crate::geom::boolean::even_odd;
use crate::geom::polygon::{Polygon, bounds, sides};
use crate::geom::vocabulary::{Point, Rect};
use crate::model::linework::{Linework, Role};
use crate::model::no_siding::NoSiding;

/// Words for roofs in names of layers, in the languages of several countries (from memory).
const ROOF: [&str; 9] =
    ["roof", "dach", "toit", "techo", "tejado", "cubierta", "tetto", "copertura", "telhado"];
/// A roof's eave reaches over the wall below by this at least, inches (common practice, no source).
const OVERHANG: f64 = 3.0;
/// And by no more than this.
const WIDEST: f64 = 48.0;
/// Siding ends short of a wall's corner by no more than a corner board, inches (common practice, no source).
const BOARD: f64 = 8.0;
/// Heights of casings and corner boards, inches.
const CASING: std::ops::RangeInclusive<f64> = 12.0..=144.0;
/// From the foot of a roof's pattern down to the wall's siding: fascia, soffit and frieze, inches (common
/// practice, no source).
const EAVE: f64 = 40.0;
/// A hip leans in by this at least on each side, inches.
const LEAN: f64 = 12.0;
/// Its sides lean from the eave on: a wall's stand plumb, up to where its gable begins. How much of a roof's
/// height may be plumb at its foot (a fascia that is hatched with it), of 1.
const PLUMB: f64 = 0.2;
/// Patches no farther from one another than this, inches, are of one elevation.
const APART: f64 = 96.0;
/// A pattern of which this share shows a roof is a roof's.
const SHARE: f64 = 0.3;
/// Patterns of more areas than this are left as they are: each is compared with all others.
const MOST: usize = 2_000;

/// How an area is drawn: layer, lines (rather than a hatch) and spacing in 64ths of an inch.
type Pattern = (usize, bool, i64);

/// One area of level lines.
struct Cover {
    hatch: usize,
    pattern: Pattern,
    shape: Vec<Polygon>,
    frame: Rect,
    area: f64,
    named: bool,
}

/// Marks hatches, and drawn courses, that cover roofs; in the regions alone where there are any.
pub(super) fn mark(lines: &mut Linework, regions: &[Rect], findings: &mut Findings) {
    let seen = |r: Rect| regions.is_empty() || regions.iter().any(|v| v.contains(r.center()));
    let mut covers = covers(lines);
    covers.retain(|c| seen(c.frame));
    if covers.len() > MOST {
        return;
    }
    let upright = upright(lines);
    let looks: Vec<bool> = (0..covers.len()).map(|i| is_like_roof(&covers, i, &upright)).collect();
    let main = main_pattern(&covers, &looks);
    let inset =
        |i: usize| main.is_some_and(|m| m.2 != covers[i].pattern.2) && is_inset(&covers, i, main);
    let insets: Vec<bool> = (0..covers.len()).map(inset).collect();
    let shows: Vec<bool> = looks.iter().zip(&insets).map(|(a, b)| *a || *b).collect();
    let of_roof = roof_patterns(&covers, &shows, main);
    let mut roofs: BTreeSet<usize> = BTreeSet::new();
    for (i, c) in covers.iter().enumerate() {
        let alone =
            looks[i] && (Some(c.pattern) != main || c.shape.iter().all(|p| p.holes.is_empty()));
        if c.named || of_roof.contains(&c.pattern) || alone || insets[i] {
            roofs.insert(i);
        }
    }
    let mut by_pattern: BTreeMap<Pattern, Vec<&Cover>> = BTreeMap::new();
    for i in roofs {
        by_pattern.entry(covers[i].pattern).or_default().push(&covers[i]);
    }
    for found in by_pattern.values() {
        for c in found {
            lines.hatches[c.hatch].no_siding = Some(NoSiding::Roof);
        }
        tell(lines, found, findings);
    }
}

fn covers(lines: &Linework) -> Vec<Cover> {
    let named = |layer: usize| {
        let name = lines.layers.get(layer).map(|l| l.layer.name.to_lowercase()).unwrap_or_default();
        ROOF.iter().any(|w| name.contains(w))
    };
    let of = |(hatch, h): (usize, &crate::model::linework::HatchArea)| {
        // What stands on a wall layer is a wall's, and what is known otherwise needs no judging.
        let known = h.role.is_some_and(|r| r != Role::Texture);
        let spacing = h.hatch.level_spacing().filter(|s| *s > 0.5 && *s < 24.0 && !known)?;
        let rings = h.hatch.rings();
        let shape = even_odd(&rings);
        let frame = bounds(rings.iter().flatten())?;
        Some(Cover {
            hatch,
            pattern: (h.layer, h.course_lines > 0, (spacing * 64.0).round() as i64),
            area: shape.iter().map(Polygon::area).sum(),
            shape,
            frame,
            named: named(h.layer),
        })
    };
    lines.hatches.iter().enumerate().filter_map(of).filter(|c| c.area > 144.0).collect()
}

/// Whether an area reaches over the siding below it at both ends, or leans in at both as a hip does.
fn is_like_roof(all: &[Cover], i: usize, upright: &[Rect]) -> bool {
    let c = &all[i];
    let b = c.frame;
    let below = all.iter().enumerate().filter(|(j, o)| {
        let drop = b.y0 - o.frame.y1;
        let over = o.frame.x1.min(b.x1) - o.frame.x0.max(b.x0);
        *j != i && (-2.0..=EAVE).contains(&drop) && over > 0.5 * o.frame.width()
    });
    let under = below.map(|(_, o)| o.frame).reduce(|a, r| a.union(r));
    let foot = level_extent(c, b.y0);
    let overhangs = |u: Rect| match foot {
        Some((x0, x1)) => {
            let eave = |out: f64| (OVERHANG..=WIDEST).contains(&out);
            // Under an eave is air: where a window or a door stands there, its casing does.
            let built = |x0: f64, x1: f64| {
                let under = Rect::new(x0 + 1.0, b.y0 - 2.0 * EAVE, x1 - 1.0, b.y0 - 8.0);
                x1 - x0 > 2.0 && upright.iter().any(|r| meets(*r, under))
            };
            let (left, right) = (u.x0 - BOARD, u.x1 + BOARD);
            eave(u.x0 - x0) && eave(x1 - u.x1) && !built(x0, left) && !built(right, x1)
        }
        None => false,
    };
    if is_porch(all, i, upright) {
        return true;
    }
    if under.is_some_and(|u| overhangs(u) || (is_other(all, i) && reaches_out(foot, u, c, upright)))
    {
        return true;
    }
    let (Some(foot), Some(top)) = (foot, level_extent(c, b.y1)) else { return false };
    let hip = top.0 - foot.0 >= LEAN && foot.1 - top.1 >= LEAN;
    hip && plumb(c, foot) < PLUMB * b.height()
        && top.1 - top.0 > LEAN
        && foot.1 - foot.0 > 0.9 * b.width()
        && under.is_some()
}

/// Whether an area slopes out at its foot past all siding of other patterns that it stands before: a porch's roof.
fn is_porch(all: &[Cover], i: usize, upright: &[Rect]) -> bool {
    let c = &all[i];
    let b = c.frame;
    let (Some(foot), Some(top)) = (level_extent(c, b.y0), level_extent(c, b.y1)) else {
        return false;
    };
    let behind = |o: &&Cover| {
        let beside = o.frame.x1.min(b.x1) - o.frame.x0.max(b.x0);
        let near = o.frame.y0 < b.y1 + EAVE && o.frame.y1 > b.y0 - EAVE;
        o.pattern.2 != c.pattern.2 && near && beside > 0.5 * o.frame.width().min(b.width())
    };
    let walls: Vec<Rect> = all.iter().filter(behind).map(|o| o.frame).collect();
    let air = |x0: f64, x1: f64| {
        let under = Rect::new(x0 + 1.0, b.y0 - 2.0 * EAVE, x1 - 1.0, b.y0 - 8.0);
        x1 - x0 <= 2.0 || !upright.iter().any(|r| meets(*r, under))
    };
    let eave = |out: f64| (OVERHANG..=WIDEST).contains(&out);
    let left = |w: &Rect| eave(w.x0 - foot.0) && air(foot.0, w.x0 - BOARD);
    let right = |w: &Rect| eave(foot.1 - w.x1) && air(w.x1 + BOARD, foot.1);
    let stands = walls.iter().any(|w| w.y0 < b.y0);
    let slopes = (top.0 - foot.0 >= OVERHANG, foot.1 - top.1 >= OVERHANG);
    stands && (slopes.0 && walls.iter().all(left) || slopes.1 && walls.iter().all(right))
}

/// Whether all that lies under a pattern, and nothing over it, is drawn at another spacing.
fn is_other(all: &[Cover], i: usize) -> bool {
    let b = all[i].frame;
    let beside = |o: &Cover| o.frame.x1.min(b.x1) - o.frame.x0.max(b.x0) > 1.0;
    let apart = |o: &Cover| o.pattern.2 != all[i].pattern.2;
    let under = |o: &Cover| (-2.0..=EAVE).contains(&(b.y0 - o.frame.y1));
    let over = |o: &Cover| (-2.0..=EAVE).contains(&(foot_over(o, b) - b.y1));
    let near = || all.iter().enumerate().filter(|(j, o)| *j != i && beside(o)).map(|(_, o)| o);
    near().filter(|o| under(o)).all(apart) && !near().any(|o| over(o) && apart(o))
}

/// Whether an eave reaches out over what lies under it at one end, and stands no farther in at the other:
/// where the next part of the house begins there is none.
fn reaches_out(foot: Option<(f64, f64)>, under: Rect, c: &Cover, upright: &[Rect]) -> bool {
    let Some((x0, x1)) = foot else { return false };
    let (left, right) = (under.x0 - x0, x1 - under.x1);
    let eave = |out: f64| (OVERHANG..=WIDEST).contains(&out);
    let flush = |out: f64| (-OVERHANG..=WIDEST).contains(&out);
    let built = |x0: f64, x1: f64| {
        let air = Rect::new(x0 + 1.0, c.frame.y0 - 2.0 * EAVE, x1 - 1.0, c.frame.y0 - 8.0);
        x1 - x0 > 2.0 && upright.iter().any(|r| meets(*r, air))
    };
    let at_left = eave(left) && flush(right) && !built(x0, under.x0 - BOARD);
    at_left || (eave(right) && flush(left) && !built(under.x1 + BOARD, x1))
}

/// Boxes of upright lines as high as casings and corner boards are: shorter than grid lines, longer than
/// drawing detail.
fn upright(lines: &Linework) -> Vec<Rect> {
    let all = lines.strokes.iter().flat_map(|s| {
        let closing = s.closed.then(|| s.points.last().zip(s.points.first())).flatten();
        let open = s.points.windows(2).map(|w| (w[0], w[1]));
        open.chain(closing.map(|(a, b)| (*a, *b))).collect::<Vec<_>>()
    });
    all.filter(|(p, q)| (p.x - q.x).abs() < 0.5 && CASING.contains(&(p.y - q.y).abs()))
        .map(|(p, q)| Rect::from_points(p, q))
        .collect()
}

fn meets(a: Rect, b: Rect) -> bool {
    a.x0 <= b.x1 && a.x1 >= b.x0 && a.y0 <= b.y1 && a.y1 >= b.y0
}

/// From where to where an area is level at a height.
fn level_extent(c: &Cover, y: f64) -> Option<(f64, f64)> {
    let all = c.shape.iter().flat_map(|p| sides(&p.outer));
    let level = all.filter(|(p, q)| (p.y - y).abs() < 1.0 && (q.y - y).abs() < 1.0);
    let xs: Vec<f64> = level.flat_map(|(p, q)| [p.x, q.x]).collect();
    let (x0, x1) = (xs.iter().copied().reduce(f64::min)?, xs.iter().copied().reduce(f64::max)?);
    (x1 - x0 > 1.0).then_some((x0, x1))
}

/// The foot of an area over most of what stands under it: beside a roof it may go farther down.
fn foot_over(o: &Cover, under: Rect) -> f64 {
    let all = o.shape.iter().flat_map(|p| sides(&p.outer));
    // A shape lies on the left hand of its sides: its feet run to the right.
    let feet = all.filter(|(p, q)| (p.y - q.y).abs() < 1.0 && q.x > p.x);
    let found = feet.map(|(p, q)| (q.x.min(under.x1) - p.x.max(under.x0), p.y.min(q.y)));
    let most = found.filter(|f| f.0 > 1.0).max_by(|a, b| a.0.total_cmp(&b.0));
    most.map_or(o.frame.y0, |f| f.1)
}

/// How far an area's sides stand plumb over the ends of its foot, inches: the less of both.
fn plumb(c: &Cover, foot: (f64, f64)) -> f64 {
    let along = |x: f64| -> f64 {
        let at = |p: Point| (p.x - x).abs() < 1.0;
        let all = c.shape.iter().flat_map(|p| sides(&p.outer));
        all.filter(|(p, q)| at(*p) && at(*q)).map(|(p, q)| (p.y - q.y).abs()).sum()
    };
    along(foot.0).min(along(foot.1))
}

/// The pattern of the siding: of what shows no roof the one that covers most.
fn main_pattern(all: &[Cover], looks: &[bool]) -> Option<Pattern> {
    let roofs = roof_spacings(all, looks);
    let most = |of: &dyn Fn(&Cover) -> bool| {
        let mut sums: BTreeMap<Pattern, f64> = BTreeMap::new();
        for (c, _) in all.iter().zip(looks).filter(|(c, roof)| !**roof && !c.named && of(c)) {
            *sums.entry(c.pattern).or_default() += c.area;
        }
        sums.into_iter().max_by(|a, b| a.1.total_cmp(&b.1)).map(|s| s.0)
    };
    most(&|c| !roofs.contains(&c.pattern.2)).or_else(|| most(&|_| true))
}

/// Spacings that one elevation shows on a roof over siding of another, and no elevation under anything: what
/// covers most may be the roofs of the others.
fn roof_spacings(all: &[Cover], looks: &[bool]) -> BTreeSet<i64> {
    let shown = (0..all.len()).filter(|i| looks[*i] && is_on_top(all, *i));
    let mut out: BTreeSet<i64> = shown.map(|i| all[i].pattern.2).collect();
    let under = |c: &Cover| {
        all.iter().any(|o| {
            let beside = o.frame.x1.min(c.frame.x1) - o.frame.x0.max(c.frame.x0) > 1.0;
            beside && (-2.0..=EAVE).contains(&(foot_over(o, c.frame) - c.frame.y1))
        })
    };
    for c in all.iter().filter(|c| under(c)) {
        out.remove(&c.pattern.2);
    }
    out
}

/// Patterns other than the siding's of which a good part shows a roof; where one area does, those too that
/// stand over siding alone and have no window. At another spacing than the siding's one spacing is one
/// pattern on all layers: each elevation may have its own.
fn roof_patterns(all: &[Cover], shows: &[bool], main: Option<Pattern>) -> BTreeSet<Pattern> {
    let key = |p: Pattern| match main {
        Some(m) if m.2 != p.2 => (0, p.1, p.2),
        _ => (p.0 + 1, p.1, p.2),
    };
    let mut sums: BTreeMap<Pattern, Sum> = BTreeMap::new();
    for (i, (c, roof)) in all.iter().zip(shows).enumerate() {
        let sum = sums.entry(key(c.pattern)).or_insert(Sum { area: 0.0, roof: 0.0, on_top: true });
        sum.area += c.area;
        sum.roof += if *roof { c.area } else { 0.0 };
        sum.on_top &= *roof || is_on_top(all, i);
    }
    let is_roof = |p: &Pattern| {
        let sum = sums.get(&key(*p)).filter(|_| Some(*p) != main);
        sum.is_some_and(|s| s.roof >= SHARE * s.area || s.roof > 0.0 && s.on_top)
    };
    all.iter().map(|c| c.pattern).filter(is_roof).collect()
}

/// What the areas of one pattern are together.
struct Sum {
    /// Square inches, and of those that show a roof.
    area: f64,
    roof: f64,
    /// Whether all others stand over siding and under none.
    on_top: bool,
}

/// Whether an area without a window stands over siding of another pattern, and none of that over it.
fn is_on_top(all: &[Cover], i: usize) -> bool {
    let c = &all[i];
    let under = |o: &Cover| {
        let over = o.frame.x1.min(c.frame.x1) - o.frame.x0.max(c.frame.x0);
        over > 1.0 && (-2.0..=EAVE).contains(&(c.frame.y0 - o.frame.y1))
    };
    let has_wall = all.iter().any(|o| o.pattern.2 != c.pattern.2 && under(o));
    has_wall && is_other(all, i) && c.shape.iter().all(|p| p.holes.is_empty())
}

/// Whether an area of another pattern stands under siding and between its ends: a porch's roof, or a bay's,
/// rather than a field of the wall.
fn is_inset(all: &[Cover], i: usize, main: Option<Pattern>) -> bool {
    let b = all[i].frame;
    let holes = all[i].shape.iter().any(|p| !p.holes.is_empty());
    let above = all.iter().enumerate().filter(|(j, o)| {
        let rise = foot_over(o, b) - b.y1;
        let over = o.frame.x1.min(b.x1) - o.frame.x0.max(b.x0);
        *j != i && Some(o.pattern) == main && (-2.0..=EAVE).contains(&rise) && over > 0.0
    });
    let over = above.map(|(_, o)| o.frame).reduce(|a, r| a.union(r));
    let flush = |u: Rect| (u.x0 - b.x0).abs() < OVERHANG || (u.x1 - b.x1).abs() < OVERHANG;
    !holes && over.is_some_and(|u| !flush(u) && u.inflate(APART, 0.0).overlaps(b))
}

fn tell(lines: &Linework, found: &[&Cover], findings: &mut Findings) {
    let Some(first) = found.first() else { return };
    let h = &lines.hatches[first.hatch];
    let layer = lines.layers.get(h.layer).map(|l| l.layer.name.clone()).unwrap_or_default();
    let kind = LineFinding::LinesNoSiding {
        beside_hatches: false,
        layer,
        why: NoSiding::Roof,
        spacing: h.hatch.level_spacing().unwrap_or_default(),
        patches: found.len(),
        area: found.iter().map(|c| c.area).sum::<f64>() / 144.0,
    };
    let mut places: Vec<Point> = found.iter().map(|c| lines.source(c.frame.center())).collect();
    let at = places.remove(0);
    findings.push(Finding::new(kind).about(&h.origin).at(at).also_at(places));
}
