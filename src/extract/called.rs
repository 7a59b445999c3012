//! Openings beside the sizes that tags and names of blocks state for them.

use std::collections::{BTreeMap, BTreeSet};

use super::call_size::{CallSize, of_text};
use super::frame::ViewFrame;
use crate::finding::house::HouseFinding;
use crate::finding::{Finding, Findings};
use crate::geom::polygon::bounds;
use crate::geom::vocabulary::{Point, Rect};
use crate::model::house::{DrawnElevation, DrawnOpening};
use crate::model::linework::{Linework, Role};
use crate::units::{Unit, sixteenths};

/// An opening is drawn no more than this smaller than its size, inches: a sash for its frame (common
/// practice, no source).
const UNDER: f64 = 1.5;
/// And no more than this larger: casings of 6 in at either side and the room round a frame (common
/// practice, no source).
const OVER: f64 = 14.0;
/// Openings of one view are drawn larger than their sizes by about as much, inches, all with casing or none: one
/// that is by more less than the others is odd (common practice, no source).
const ALIKE: f64 = 3.0;
/// So many sizes of a view tell by how much.
const ENOUGH: usize = 3;
/// Most units side by side, or one over another, in one opening.
const MOST_UNITS: usize = 4;
/// Most disagreements that are told of one view.
const MOST_TOLD: usize = 12;
/// A tag stands in its opening or no farther out than this, inches.
const BESIDE: f64 = 2.0;

/// An opening with what is stated of it.
struct Sized<'a> {
    opening: &'a DrawnOpening,
    size: CallSize,
    drawn: [f64; 2],
    /// By how much it is drawn larger than as many units as fit best.
    over: [f64; 2],
}

impl Sized<'_> {
    fn fits(&self) -> bool {
        self.over.iter().all(|o| (-UNDER..=OVER).contains(o))
    }
}

/// Tells where a size that is stated and the opening that is drawn disagree, each pair of sizes once.
pub(super) fn check(local: &ViewFrame, made: &DrawnElevation, findings: &mut Findings) {
    let stated = Stated::of(local);
    let openings = made.walls.iter().flat_map(|w| &w.openings);
    let mut found: Vec<Sized> = openings.filter_map(|o| sized(o, &stated)).collect();
    // Four figures are sizes where most of them fit: else they number the openings.
    let figures = found.iter().filter(|s| s.size.figures);
    let (all, fit) = (figures.clone().count(), figures.filter(|s| s.fits()).count());
    found.retain(|s| !s.size.figures || 2 * fit > all);
    let usual = [0, 1].map(|i| usual(found.iter().filter(|s| s.fits()).map(|s| s.over[i])));
    let off = |s: &&Sized| {
        let far = |i: usize| usual[i].is_some_and(|u| u - s.over[i] > ALIKE);
        !s.fits() || far(0) || far(1)
    };
    let mut told: BTreeMap<(&str, [i64; 2]), Vec<&Sized>> = BTreeMap::new();
    for s in found.iter().filter(off) {
        told.entry((&s.size.text, s.drawn.map(sixteenths))).or_default().push(s);
    }
    for list in told.into_values().take(MOST_TOLD) {
        let first = list[0];
        let kind = HouseFinding::OpeningSize {
            says: first.size.text.clone(),
            stated: [first.size.width, first.size.height],
            drawn: first.drawn,
            openings: list.len(),
        };
        let place = |s: &&Sized| Some(local.source(bounds(&s.opening.outline)?.center()));
        let mut places = list.iter().filter_map(place);
        let at = places.next().unwrap_or(Point::ZERO);
        let finding = Finding::new(kind).about(&first.opening.origin).at(at);
        findings.push(finding.also_at(places.collect()).on(&made.name));
    }
}

/// The middle one of some measures, where there are enough.
fn usual(over: impl Iterator<Item = f64>) -> Option<f64> {
    let mut all: Vec<f64> = over.collect();
    all.sort_by(f64::total_cmp);
    all.get(all.len() / 2).copied().filter(|_| all.len() >= ENOUGH)
}

fn sized<'a>(opening: &'a DrawnOpening, stated: &Stated) -> Option<Sized<'a>> {
    let b = bounds(&opening.outline)?;
    let size = stated.of_opening(b)?;
    let drawn = [b.width(), b.height()];
    let over = [over(drawn[0], size.width), over(drawn[1], size.height)];
    Some(Sized { opening, size, drawn, over })
}

/// By how much a measure is larger than the most units that it has room for.
fn over(drawn: f64, unit: f64) -> f64 {
    let units = ((drawn + UNDER) / unit).floor().clamp(1.0, MOST_UNITS as f64);
    drawn - units * unit
}

/// Sizes that a view states, with where.
struct Stated {
    /// Inserted windows and doors: the box of each, and the size that its name or attributes state.
    inserted: Vec<(Rect, Option<CallSize>)>,
    /// Texts that state a size.
    tags: Vec<(Point, CallSize)>,
}

impl Stated {
    fn of(local: &ViewFrame) -> Self {
        let lines = local.lines;
        let unit = lines.scale.unit.unwrap_or(Unit::Inch);
        let mut boxes: BTreeMap<usize, Rect> = BTreeMap::new();
        for s in [Role::Window, Role::Door].into_iter().flat_map(|r| local.strokes(r)) {
            if let (Some(root), Some(b)) = (s.part_of, bounds(&local.ring(s))) {
                boxes.entry(root).and_modify(|r| *r = r.union(b)).or_insert(b);
            }
        }
        let inserted = boxes.into_iter().map(|(g, b)| (b, of_group(lines, g, unit))).collect();
        let labels = local.view.labels(lines).filter(|l| l.role != Some(Role::Dimension));
        let tags = labels
            .filter_map(|l| Some((local.place(l.text.at), of_text(&l.text.content, unit)?)))
            .collect();
        Stated { inserted, tags }
    }

    /// The size stated of an opening, if one is and no other.
    fn of_opening(&self, opening: Rect) -> Option<CallSize> {
        let mut inside = self.inserted.iter().filter(|(b, _)| opening.contains(b.center()));
        let (first, second) = (inside.next(), inside.next());
        if second.is_some() {
            return None;
        }
        if let Some(size) = first.and_then(|(_, size)| size.clone()) {
            return Some(size);
        }
        let near = opening.inflate(BESIDE, BESIDE);
        let tags = self.tags.iter().filter(|(at, _)| near.contains(*at));
        let sizes: BTreeSet<[i64; 2]> =
            tags.clone().map(|(_, s)| [s.width, s.height].map(sixteenths)).collect();
        tags.map(|(_, s)| s.clone()).next().filter(|_| sizes.len() == 1)
    }
}

/// The size that an insertion's attributes or its block's name state.
fn of_group(lines: &Linework, group: usize, unit: Unit) -> Option<CallSize> {
    let g = lines.groups.get(group)?;
    let attributes = g.attributes.iter().find_map(|(_, value)| of_text(value, unit));
    attributes.or_else(|| of_text(&g.block, unit))
}
