//! Which level lines that hang together are siding: not stone, tables, stairs.

use std::collections::BTreeMap;

use super::drawn_lines::DrawnLines;
use super::patch::{Family, Patch};
use super::pieces::Key;
use crate::geom::near::clusters;
use crate::geom::polygon::Polygon;
use crate::geom::vocabulary::{Point, Rect};
use crate::model::linework::Linework;
use crate::model::no_siding::NoSiding;

/// A family has at least one patch of so many lines, and so large, square inches: 20 sq ft. Smaller ones
/// count beside it (common practice, no source).
const SEED_LINES: usize = 6;
const SEED_AREA: f64 = 2880.0;
/// How far off a larger patch of its family a small one may stand, inches.
const BESIDE: f64 = 96.0;
/// Fewer lines than this may be the edges of a fascia.
const FEW: usize = 4;
/// Lines of one family stand on one another's levels but for this share of the pitch.
const PHASE: f64 = 0.08;
/// Of all level lines of its layer and ink inside a patch, its own have at least this share.
const OWN: f64 = 0.8;
/// More corners of its outline than this, and so many more for each line, show that its lines hang together
/// by chance.
const RAGGED: (usize, usize) = (16, 6);
/// So do lines of which half stand off the pitch by more than this share of it.
const LOOSE: f64 = 0.012;
/// Upright joints every so many inches of course or nearer are those of stone, brick and shingles: shingle
/// tabs are 12 in, blocks 16 in wide (common practice, no source).
const JOINT_EVERY: f64 = 60.0;
/// The main family has at least this share of the level lines of its layer and ink, another family of
/// another ink this one, another of the same ink this one.
const MAIN_SHARE: f64 = 0.15;
const OTHER_SHARE: f64 = 0.5;
const SAME_INK_SHARE: f64 = 0.08;
/// Pitches that differ by no more than this share of themselves are one (common practice, no source).
const SAME_PITCH: f64 = 0.012;
/// A second family away from the first is another elevation's from this share of its area on.
const APART_SHARE: f64 = 0.5;

/// A patch with why it is no siding.
pub(super) type Refused = (Patch, NoSiding);

/// Patches that are siding, and those that are not; `seen` says which places are looked at.
pub(super) fn judged(
    found: Vec<Patch>,
    lines: &Linework,
    (drawn, seen): (&DrawnLines, &impl Fn(Rect) -> bool),
) -> (Vec<Patch>, Vec<Refused>) {
    let (mut kept, mut refused) = (Vec::new(), Vec::new());
    for patch in found {
        match looks(&patch, lines, drawn) {
            Some(why) => refused.push((patch, why)),
            None => kept.push(patch),
        }
    }
    let (kept, stone) = without_more_stone(kept, &refused);
    refused.extend(stone.into_iter().map(|p| (p, NoSiding::UprightJoints)));
    let (kept, strays) = grown(kept);
    // A few lines that stand alone are drawing detail: windows, steps, louvers.
    refused.extend(strays.into_iter().map(|p| (p, NoSiding::Few)));
    by_family(kept, hatched(lines, seen), refused)
}

/// A few lines in the rows of stone or brick are some of its own, where too few joints stand between them to show
/// it; those apart.
fn without_more_stone(kept: Vec<Patch>, refused: &[Refused]) -> (Vec<Patch>, Vec<Patch>) {
    let stone = refused.iter().filter(|(_, why)| *why == NoSiding::UprightJoints);
    let stone: Vec<(Key, Rect)> = stone.map(|(p, _)| (p.key, p.frame())).collect();
    let among = |p: &Patch| {
        let b = p.frame();
        let beside = |r: &Rect| r.inflate(p.pitch, 0.0).overlaps(b);
        let level = |r: &Rect| r.y1.min(b.y1) - r.y0.max(b.y0) > 0.5 * b.height();
        p.lines < FEW && stone.iter().any(|(key, r)| *key == p.key && beside(r) && level(r))
    };
    kept.into_iter().partition(|p| !among(p))
}

/// What a patch looks like by itself, if not like siding.
fn looks(patch: &Patch, lines: &Linework, drawn: &DrawnLines) -> Option<NoSiding> {
    let corners: usize = patch.areas.iter().flat_map(Polygon::rings).map(Vec::len).sum();
    // Lines that meet a spacing by chance meet it loosely, and leave a ragged outline.
    let ragged = corners > RAGGED.0 + RAGGED.1 * patch.lines;
    let loose = patch.uneven > LOOSE && corners > RAGGED.0 + patch.lines;
    if patch.length < OWN * (patch.length + patch.alien) || ragged || loose {
        return Some(NoSiding::Mixed);
    }
    let frame = patch.frame();
    let inside = |p: Point| patch.areas.iter().any(|a| a.contains(p));
    let upright = drawn.upright(frame, 0.4 * patch.pitch, 1.2 * patch.pitch);
    let joints = upright.iter().filter(|(p, _)| inside(*p)).count();
    if joints >= 4 && joints as f64 * JOINT_EVERY > patch.length {
        return Some(NoSiding::UprightJoints);
    }
    let words = lines.labels.iter().filter(|l| inside(l.text.at)).count();
    let written = words >= 3 && 2 * words >= patch.lines;
    (written || has_columns(patch, drawn)).then_some(NoSiding::Table)
}

/// Whether the patch is a rectangle with upright lines from its foot to its top: a table.
fn has_columns(patch: &Patch, drawn: &DrawnLines) -> bool {
    let [one] = &patch.areas[..] else { return false };
    let b = one.bounds();
    if one.area() < 0.99 * b.area() {
        return false;
    }
    let inner = Rect::new(b.x0 + 2.0, b.y0, b.x1 - 2.0, b.y1);
    let mut columns: BTreeMap<i64, (f64, f64, f64)> = BTreeMap::new();
    for ((p, q), _) in drawn.within(inner) {
        if (p.x - q.x).abs() > 0.1 {
            continue;
        }
        let (low, high) = (p.y.min(q.y), p.y.max(q.y));
        let none = (f64::INFINITY, f64::NEG_INFINITY, 0.0);
        let column = columns.entry((p.x * 8.0).round() as i64).or_insert(none);
        *column = (column.0.min(low), column.1.max(high), column.2 + high - low);
    }
    // From the foot to the top and no farther, in one part or in several.
    let near = |a: f64, b: f64| (a - b).abs() <= 0.25;
    columns.values().any(|(low, high, length)| {
        near(*low, b.y0) && near(*high, b.y1) && *length >= 0.9 * b.height()
    })
}

/// Large patches, and small ones beside them whose lines stand on their levels; the rest apart.
fn grown(all: Vec<Patch>) -> (Vec<Patch>, Vec<Patch>) {
    let seeds: Vec<usize> = (0..all.len())
        .filter(|i| all[*i].lines >= SEED_LINES && all[*i].area() >= SEED_AREA)
        .collect();
    // What stands over or under a patch of its own wall is on the levels of that one, not of another beside it.
    let beside = |p: &Patch| {
        let b = p.frame();
        let near =
            |s: &&Patch| s.family() == p.family() && s.frame().inflate(BESIDE, BESIDE).overlaps(b);
        let near: Vec<&Patch> = seeds.iter().map(|s| &all[*s]).filter(near).collect();
        let over = |s: &Patch| {
            let f = s.frame();
            (f.x1.min(b.x1) - f.x0.max(b.x0)).max(0.0)
        };
        let on_levels = |s: &Patch| s.off_levels(p.level.y) <= PHASE;
        // It may run along several walls, as an eave does.
        let all: f64 = near.iter().map(|s| over(s)).sum();
        let own: f64 = near.iter().filter(|s| on_levels(s)).map(|s| over(s)).sum();
        let stacked = p.lines < FEW && all > 0.5 * b.width();
        near.iter().any(|s| on_levels(s)) && (!stacked || own >= 0.5 * all)
    };
    // A few lines at the edge of another family are that one's, at this spacing by chance.
    let of_other = |p: &Patch| {
        let b = p.frame();
        seeds.iter().map(|s| &all[*s]).filter(|s| s.family() != p.family()).any(|s| {
            let f = s.frame();
            let over = f.x1.min(b.x1) - f.x0.max(b.x0);
            over > 0.5 * b.width() && ((b.y0 - f.y1).abs() < 0.5 || (b.y1 - f.y0).abs() < 0.5)
        })
    };
    let keep: Vec<bool> = (0..all.len())
        .map(|i| seeds.contains(&i) || (beside(&all[i]) && !of_other(&all[i])))
        .collect();
    let (kept, rest): (Vec<_>, Vec<_>) = all.into_iter().zip(keep).partition(|(_, k)| *k);
    let plain = |v: Vec<(Patch, bool)>| v.into_iter().map(|(p, _)| p).collect();
    (plain(kept), plain(rest))
}

/// Boxes of hatches with level lines in places that are looked at.
fn hatched(lines: &Linework, seen: impl Fn(Rect) -> bool) -> Vec<Polygon> {
    let level = lines.hatches.iter().filter(|h| h.hatch.level_spacing().is_some());
    let boxes = level.map(|h| h.hatch.bounds()).filter(|b| seen(*b));
    boxes.map(|b| Polygon::rect(b.x0, b.y0, b.x1, b.y1)).collect()
}

/// One family of a drawing is its siding; others are where they stand beside it, or are as large.
fn by_family(
    all: Vec<Patch>,
    hatched: Vec<Polygon>,
    mut refused: Vec<Refused>,
) -> (Vec<Patch>, Vec<Refused>) {
    let mut sums: BTreeMap<Family, (f64, f64)> = BTreeMap::new();
    for p in &all {
        let sum = sums.entry(p.family()).or_default();
        *sum = (sum.0 + p.area(), sum.1 + p.share);
    }
    let likely = sums.iter().filter(|(_, s)| s.1 >= MAIN_SHARE);
    let main = likely.max_by(|a, b| a.1.0.total_cmp(&b.1.0)).map(|(f, s)| (*f, s.0));
    let hatched_area: f64 = hatched.iter().map(Polygon::area).sum();
    let main = main.filter(|m| m.1 >= hatched_area);
    let mine = all.iter().filter(|p| main.is_some_and(|m| m.0 == p.family())).map(Patch::frame);
    let sided: Vec<Rect> = match main {
        Some(_) => mine.collect(),
        None => hatched.iter().map(Polygon::bounds).collect(),
    };
    let places = clusters(sided.clone(), BESIDE);
    let most = main.map_or(hatched_area, |m| m.1);
    let mut kept = Vec::new();
    for p in all {
        let sum = sums.get(&p.family()).copied().unwrap_or_default();
        let frame = p.frame();
        let here = places.iter().any(|c| c.inflate(BESIDE, BESIDE).overlaps(frame));
        let share = match main {
            Some(m) if m.0.0 == p.key => SAME_INK_SHARE,
            _ => OTHER_SHARE,
        };
        let is_main = main.is_some_and(|m| m.0 == p.family());
        // Each elevation may have a layer of its own: what is as far apart is the same siding.
        let pitch = main.map_or(0.0, |m| f64::from_bits(m.0.1));
        let alike = |apart: f64| (apart - pitch).abs() <= SAME_PITCH * pitch;
        let as_main = alike(p.pitch) && sum.1 >= SAME_INK_SHARE;
        // The main siding of its elevation, where each has a layer of its own.
        let of_ink = sums.iter().filter(|(f, _)| f.0 == p.key && alike(f64::from_bits(f.1)));
        let beside = of_ink.map(|(_, s)| s.0).fold(0.0, f64::max);
        match (sum.1 >= share, here) {
            _ if is_main || as_main => kept.push(p),
            (true, true) => kept.push(p),
            // Under a roof that is drawn with more lines than its walls.
            (false, _) if beside > 0.0 && sum.0 >= APART_SHARE * beside => kept.push(p),
            (true, false) if sum.0 >= APART_SHARE * most && sum.1 >= OTHER_SHARE => kept.push(p),
            (true, false) => refused.push((p, NoSiding::Apart)),
            (false, _) => refused.push((p, NoSiding::Few)),
        }
    }
    (kept, refused)
}
