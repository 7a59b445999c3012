//! What a drawing shows where there is nothing to side: the reason, as far as it can be seen.

use std::collections::BTreeMap;

use super::outline::stroke_box;
use super::turns;
use super::ways::hatch::{is_lap, is_siding};
use crate::finding::Refusal;
use crate::finding::house::HouseFinding;
use crate::finding::lines::LayerCount;
use crate::finding::seen::{NoCourses, Seen};
use crate::finding::views::OtherView;
use crate::geom::vocabulary::{Point, Rect};
use crate::job::Job;
use crate::job::drawing::View;
use crate::job::layers::wildcard;
use crate::model::ids::WallId;
use crate::model::layer_name::own_name;
use crate::model::linework::{HatchArea, Linework, Role};
use crate::units::sixteenths;

/// Nothing to side: says what the drawing holds instead. `others` are the titles of views that are none,
/// `left_out` the walls that were found and that the job leaves out.
pub(super) fn refusal(
    lines: &Linework,
    job: &Job,
    others: &[(OtherView, String)],
    left_out: Vec<WallId>,
) -> Refusal {
    let layers = lines.layers.iter().filter(|l| l.items > 0).take(30).map(LayerCount::from);
    let (wall_layers, layers) = (job.patterns(Role::Wall), layers.collect());
    let seen = match left_out.is_empty() {
        true => seen(lines, job, others),
        false => vec![Seen::LeftOut { walls: left_out }],
    };
    Refusal::new(HouseFinding::NoWalls { wall_layers, layers, seen })
}

/// What is seen, the telling things first.
fn seen(lines: &Linework, job: &Job, others: &[(OtherView, String)]) -> Vec<Seen> {
    let mut out = empty_regions(lines, job);
    out.extend(empty_layers(lines, job));
    out.extend(titles(others));
    out.extend(hatches(lines));
    let beside = lines.beside;
    let only = lines.strokes.is_empty() && lines.hatches.is_empty();
    if beside.pictures > 0 {
        out.push(Seen::Pictures { pictures: beside.pictures, only });
    }
    let off: Vec<usize> =
        lines.layers.iter().filter(|l| !l.layer.shown && l.items > 0).map(|l| l.items).collect();
    if !off.is_empty() && !job.drawing.hidden_layers {
        out.push(Seen::LayersOff { layers: off.len(), items: off.iter().sum() });
    }
    if only && beside.on_sheets > 0 {
        out.push(Seen::OnSheets { items: beside.on_sheets });
    }
    out.extend(open_lines(lines));
    if out.is_empty() {
        let loose = lines.strokes.iter().filter(|s| s.role.is_none()).count();
        let other = Seen::OtherLines { lines: loose };
        out.push(if only { Seen::Nothing } else { other });
    }
    out.retain(|s| !matches!(s, Seen::OtherLines { lines: 0 }));
    out
}

/// Regions of the job in which no stroke has its middle.
fn empty_regions(lines: &Linework, job: &Job) -> Vec<Seen> {
    let k = lines.scale.inches;
    let boxes: Vec<Rect> = lines.strokes.iter().map(stroke_box).collect();
    let all = boxes.iter().copied().reduce(|a, b| a.union(b));
    let drawn = all.map(|b| [b.x0 / k, b.y0 / k, b.x1 / k, b.y1 / k]);
    let empty = |v: &&View| {
        let Some([a, b, c, d]) = v.region else { return false };
        let region = Rect::from_points(Point::new(a * k, b * k), Point::new(c * k, d * k));
        let region = turns::region_of(lines, v, region);
        !boxes.iter().any(|b| region.contains(b.center()))
    };
    let found = job.views().filter(|v| !v.skip).filter(empty);
    found.map(|v| Seen::RegionEmpty { view: v.name.clone(), drawn }).collect()
}

/// Layers that the job names for walls, and that no layer with anything on it matches.
fn empty_layers(lines: &Linework, job: &Job) -> Vec<Seen> {
    let named = job.layers.get(&Role::Wall).into_iter().flatten();
    let holds = |pattern: &str| {
        let pattern = pattern.to_lowercase();
        let full = lines.layers.iter().filter(|l| l.items > 0);
        full.map(|l| l.layer.name.to_lowercase()).any(|whole| {
            // Prefixes of bound references are taken off, as for roles.
            let name = own_name(&whole);
            wildcard(&pattern, &whole) || wildcard(&pattern, name)
        })
    };
    let empty = named.filter(|p| !holds(p));
    empty.map(|p| Seen::LayerEmpty { layer: p.clone() }).collect()
}

/// Titles of plans and other views, by what they show.
fn titles(others: &[(OtherView, String)]) -> Vec<Seen> {
    let mut found: Vec<(OtherView, usize, &str)> = Vec::new();
    for (shows, title) in others {
        match found.iter_mut().find(|f| f.0 == *shows) {
            Some(f) => f.1 += 1,
            None => found.push((*shows, 1, title)),
        }
    }
    let told = |(shows, titles, first): (OtherView, usize, &str)| Seen::Titles {
        shows,
        titles,
        first: first.to_owned(),
    };
    found.into_iter().map(told).collect()
}

/// Which way the lines of a hatch run.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Way {
    Upright,
    Level(NoCourses),
    Crossed,
}

fn way(h: &HatchArea) -> Option<Way> {
    if h.hatch.solid || h.hatch.families.is_empty() {
        return None;
    }
    if h.hatch.level_spacing().is_some() {
        let why = if !is_lap(&h.hatch) {
            NoCourses::Spacing
        } else if is_siding(h) {
            NoCourses::Small
        } else {
            NoCourses::Layer
        };
        return Some(Way::Level(why));
    }
    Some(if h.hatch.upright_spacing().is_some() { Way::Upright } else { Way::Crossed })
}

/// Hatches by the way and distance of their lines, those that are most first.
fn hatches(lines: &Linework) -> Vec<Seen> {
    let mut found: BTreeMap<(Way, i64), Vec<&HatchArea>> = BTreeMap::new();
    for h in &lines.hatches {
        let Some(way) = way(h) else { continue };
        let apart = h.hatch.upright_spacing().or(h.hatch.level_spacing()).unwrap_or(0.0);
        let apart = if way == Way::Crossed { 0 } else { sixteenths(apart) };
        found.entry((way, apart)).or_default().push(h);
    }
    let mut all: Vec<((Way, i64), Vec<&HatchArea>)> = found.into_iter().collect();
    all.sort_by_key(|(key, list)| (std::cmp::Reverse(list.len()), *key));
    let told = |((way, apart), list): ((Way, i64), Vec<&HatchArea>)| {
        let (hatches, apart, layer) = (list.len(), apart as f64 / 16.0, layer_of(lines, &list));
        match way {
            Way::Upright => Seen::Upright { hatches, apart, layer },
            Way::Level(why) => Seen::Level { hatches, apart, layer, why },
            Way::Crossed => Seen::Crossed { hatches },
        }
    };
    all.into_iter().take(MOST_SORTS).map(told).collect()
}

/// Most sorts of hatches that are told.
const MOST_SORTS: usize = 3;

/// The layer that most of some hatches are on.
fn layer_of(lines: &Linework, list: &[&HatchArea]) -> String {
    let mut on: BTreeMap<usize, usize> = BTreeMap::new();
    list.iter().for_each(|h| *on.entry(h.layer).or_default() += 1);
    let most = on.into_iter().max_by_key(|(layer, n)| (*n, std::cmp::Reverse(*layer)));
    let named = most.and_then(|(layer, _)| lines.layers.get(layer));
    named.map_or_else(String::new, |l| l.layer.name.clone())
}

/// Lines on wall layers, of which none closes.
fn open_lines(lines: &Linework) -> Vec<Seen> {
    let mut on: BTreeMap<usize, usize> = BTreeMap::new();
    let walls = lines.strokes.iter().filter(|s| s.role == Some(Role::Wall));
    walls.for_each(|s| *on.entry(s.layer).or_default() += s.entities);
    let name = |layer: usize| lines.layers.get(layer).map(|l| l.layer.name.clone());
    let told =
        on.into_iter().filter_map(|(l, lines)| Some(Seen::OpenLines { layer: name(l)?, lines }));
    told.collect()
}
