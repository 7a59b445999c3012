//! What a revision does to each wall: courses, pieces, panels and trim.

use std::collections::{BTreeMap, BTreeSet};

use super::align::Paired;
use super::shape::TOLD;
use super::walls::WallPair;
use crate::geom::tol::ROUNDING;
use crate::layout::set::LaidSet;
use crate::layout::wall::LaidWall;
use crate::model::change::{Comparison, LineEffect, WallEffect};
use crate::model::item::Item;
use crate::model::quantity::{Group, TakeoffLine};

/// Tells what each wall takes before and after; those that take the same are counted.
pub(super) fn effects(
    (old, new): (&LaidSet, &LaidSet),
    (pairs, walls): (&Paired, &[WallPair]),
    zone: Option<String>,
    out: &mut Comparison,
) {
    let mut all: Vec<WallEffect> = Vec::new();
    for p in walls {
        let was = &old.layout.elevations[p.old.0].walls[p.old.1];
        let is = &new.layout.elevations[p.new.0].walls[p.new.1];
        let shift = pairs.faces.iter().find(|f| f.new == p.new.0).map(|f| f.shift);
        let alike = shift.map_or(0, |s| {
            let there = |x: f64| s.x(x) + p.by[0];
            alike(was, is, &there, s.up + p.by[1])
        });
        let mut effect = effect((old, new), (Some(was), Some(is)), zone.clone());
        effect.pieces_alike = alike;
        all.push(effect);
    }
    let of = |set: &LaidSet, known: &BTreeSet<(usize, usize)>, gone: bool| {
        let mut found = Vec::new();
        for (e, on) in set.layout.elevations.iter().enumerate() {
            for (_, wall) in on.walls.iter().enumerate().filter(|(w, _)| !known.contains(&(e, *w)))
            {
                let both = if gone { (Some(wall), None) } else { (None, Some(wall)) };
                found.push(effect((old, new), both, zone.clone()));
            }
        }
        found
    };
    all.extend(of(old, &walls.iter().map(|p| p.old).collect(), true));
    all.extend(of(new, &walls.iter().map(|p| p.new).collect(), false));
    out.walls_alike += all.iter().filter(|w| is_alike(w)).count();
    out.walls.extend(all.into_iter().filter(|w| !is_alike(w)));
}

/// The same for a siding that one of the layouts has not.
pub(super) fn alone(set: Option<&LaidSet>, gone: bool, zone: Option<String>, out: &mut Comparison) {
    let Some(set) = set else { return };
    for (_, w) in set.layout.walls() {
        let both = if gone { (Some(w), None) } else { (None, Some(w)) };
        out.walls.push(effect((set, set), both, zone.clone()));
    }
}

fn is_alike(w: &WallEffect) -> bool {
    w.old.is_some()
        && w.new.is_some()
        && w.courses[0] == w.courses[1]
        && w.pieces[0] == w.pieces[1]
        && w.pieces_alike == w.pieces[1]
        && w.lines.is_empty()
}

fn effect(
    (old, new): (&LaidSet, &LaidSet),
    (was, is): (Option<&LaidWall>, Option<&LaidWall>),
    zone: Option<String>,
) -> WallEffect {
    let count = |w: Option<&LaidWall>, of: fn(&LaidWall) -> usize| w.map_or(0, of);
    let pieces = |w: &LaidWall| {
        w.courses.iter().flat_map(|c| &c.runs).map(|r| r.pieces.len()).sum::<usize>()
    };
    let area = |w: Option<&LaidWall>| w.map_or(0.0, |w| w.net_area);
    WallEffect {
        zone,
        old: was.map(|w| w.id.clone()),
        new: is.map(|w| w.id.clone()),
        net_area: [area(was), area(is)],
        courses: [was, is].map(|w| count(w, |w| w.courses.len())),
        pieces: [was, is].map(|w| count(w, pieces)),
        pieces_alike: 0,
        lines: lines((old, was), (new, is)),
    }
}

/// Lines of which a wall takes more or less.
fn lines(
    (old, was): (&LaidSet, Option<&LaidWall>),
    (new, is): (&LaidSet, Option<&LaidWall>),
) -> Vec<LineEffect> {
    let mut all: BTreeMap<(Group, usize), LineEffect> = BTreeMap::new();
    let mut places: Vec<&str> = Vec::new();
    for (k, (set, wall)) in [(old, was), (new, is)].into_iter().enumerate() {
        let Some(wall) = wall else { continue };
        for line in set.takeoff.lines.iter().filter(|l| is_told(l)) {
            let here = line.shares.iter().filter(|s| s.wall == wall.id);
            let net: f64 = here.map(|s| s.net).sum();
            let at = places.iter().position(|id| *id == line.id.as_str()).unwrap_or_else(|| {
                places.push(line.id.as_str());
                places.len() - 1
            });
            let effect = all.entry((line.group, at)).or_insert_with(|| LineEffect {
                id: line.id.clone(),
                item: line.item.clone(),
                unit: line.unit,
                net: [0.0, 0.0],
            });
            effect.net[k] += net;
        }
    }
    all.into_values().filter(|l| (l.net[0] - l.net[1]).abs() > ROUNDING).collect()
}

/// Lines that are told wall by wall: what hangs there. Panels once, by the piece.
fn is_told(line: &TakeoffLine) -> bool {
    let panels = matches!(line.item, Item::Panels { .. });
    panels || matches!(line.group, Group::Trim | Group::Flashing)
}

/// Pieces of a wall that hang where one hung, cut to the same length.
fn alike(was: &LaidWall, is: &LaidWall, there: &dyn Fn(f64) -> f64, up: f64) -> usize {
    let pieces = |w: &LaidWall| -> Vec<[f64; 4]> {
        let runs = w.courses.iter().flat_map(|c| c.runs.iter().map(move |r| (c.bottom, r)));
        runs.flat_map(|(y, r)| {
            r.pieces.iter().map(move |p| {
                let high = p.outline.iter().map(|q| q[1]).fold(y, f64::max);
                [p.x0, y, p.x1, high]
            })
        })
        .collect()
    };
    let mut old: Vec<[f64; 4]> = pieces(was)
        .into_iter()
        .map(|[a, y, b, h]| {
            let (a, b) = (there(a), there(b));
            [a.min(b), y + up, a.max(b), h + up]
        })
        .collect();
    let mut found = 0;
    for p in pieces(is) {
        let same = |q: &[f64; 4]| q.iter().zip(p).all(|(a, b)| (a - b).abs() < TOLD);
        if let Some(i) = old.iter().position(same) {
            old.swap_remove(i);
            found += 1;
        }
    }
    found
}
