//! Openings and fixtures: inserted blocks by the outline of their linework, and closed loops.

use std::collections::BTreeMap;

use super::frame::ViewFrame;
use super::ink::Ink;
use super::limits::MOST_TOLD;
use crate::finding::house::HouseFinding;
use crate::finding::{Finding, Findings};
use crate::geom::boolean::union_all;
use crate::geom::offset::moved_out;
use crate::geom::polygon::{Polygon, bounds, is_level_rectangle, signed_area};
use crate::geom::tol::{SAME, snap};
use crate::geom::vocabulary::{Point, Rect, Ring};
use crate::model::house::{DrawnObstacle, DrawnOpening, OpeningKind};
use crate::model::linework::{Role, Stroke};
use crate::origin::Origin;

/// A door wider than this, inches, is an overhead door: the widest pair of hinged doors is 6 ft,
/// the narrowest garage door 8 ft (`TakeoffFact::CallSizes`).
pub(super) const OVERHEAD: f64 = 84.0;
/// Holes of a hatch smaller than this, square inches, hold a tag, and so may smaller loops: half a
/// square foot.
pub(super) const LEAST: f64 = 72.0;
/// Narrower or lower loops than this, inches, are hardware: the smallest thing that siding is cut
/// round is a 4 in vent (common practice, no source).
pub(super) const NARROW: f64 = 4.0;

/// What was drawn as one thing: an insertion, or one loop.
struct DrawnItem {
    outline: Ring,
    block: Option<String>,
    role: Role,
    stroke: Stroke,
}

/// Whether a loop is large enough for an opening.
pub(super) fn is_sized(local: &ViewFrame, outline: &[Point]) -> bool {
    let b = bounds(outline).unwrap_or_default();
    // A slot of half a square foot is cut, however narrow.
    let large = signed_area(outline).abs() >= LEAST;
    (large || b.width().min(b.height()) >= NARROW - SAME) && !is_tag(local, outline)
}

/// Whether a loop is a small one round a text: a tag that names the opening beside it.
pub(super) fn is_tag(local: &ViewFrame, outline: &[Point]) -> bool {
    let b = bounds(outline).unwrap_or_default();
    let in_it = |p: Point| b.contains(local.place(p));
    signed_area(outline).abs() < LEAST && local.lines.labels.iter().any(|l| in_it(l.text.at))
}

/// The openings of a view.
pub(super) fn openings(local: &ViewFrame) -> Vec<DrawnOpening> {
    let mut found: Vec<DrawnItem> = things(local, &[Role::Window, Role::Door]);
    found.retain(|d| is_sized(local, &d.outline));
    let found = outermost(found);
    found
        .into_iter()
        .map(|d| {
            let casing = local.job.drawing.casing;
            let outline = if casing > 0.0 {
                cased(&d.outline, casing, d.role == Role::Door)
            } else {
                d.outline
            };
            let b = bounds(&outline).unwrap_or_default();
            let is_glazed =
                || Ink::of(local.lines, local.view).is_in_lights(b + local.origin.to_vec2());
            let layer = &local.lines.layers[d.stroke.layer].layer.name;
            let kind = kind(d.role, d.block.as_deref(), layer, b.width(), is_glazed);
            DrawnOpening {
                id: Default::default(),
                kind,
                outline,
                unfilled: None,
                cut: Vec::new(),
                block: d.block,
                origin: d.stroke.origin,
            }
        })
        .collect()
}

/// Tells of openings that lie on no wall: in a drawn roof or stone, and off drawn siding, all at once, for
/// siding is drawn where it is.
pub(super) fn report_outside(
    local: &ViewFrame,
    is_drawn: bool,
    off: Vec<(Origin, Point)>,
    findings: &mut Findings,
) {
    let is_cover = |s: &&Stroke| {
        matches!(s.role, Some(Role::Roof | Role::Bare)) && s.closed && s.points.len() >= 3
    };
    let strokes = local.lines.strokes.iter().filter(is_cover);
    let covers: Vec<Polygon> = strokes
        .map(|s| Polygon::simple(s.points.iter().map(|p| local.lines.source(*p)).collect()))
        .collect();
    let in_cover = |o: &(Origin, Point)| is_drawn || covers.iter().any(|c| c.contains(o.1));
    let (off, lost): (Vec<_>, Vec<_>) = off.into_iter().partition(in_cover);
    let accepted = local.job.drawing.accept.iter().any(|c| c == "opening-outside");
    for (origin, at) in &lost {
        let finding = Finding::new(HouseFinding::OpeningOutside { accepted }).about(origin);
        findings.push(finding.at(*at).on(&local.view.name));
    }
    let Some((first, at)) = off.first() else { return };
    let kind = HouseFinding::OpeningsOffSiding { openings: off.len() };
    let mut finding = Finding::new(kind).about(first).at(*at).on(&local.view.name);
    finding.also.extend(off.iter().skip(1).take(MOST_TOLD).map(|o| o.1));
    findings.push(finding);
}

/// The fixtures of a view.
pub(super) fn obstacles(local: &ViewFrame) -> Vec<DrawnObstacle> {
    let found = outermost(things(local, &[Role::MountingBlock, Role::Obstacle]));
    found
        .into_iter()
        .map(|d| DrawnObstacle {
            id: Default::default(),
            outline: d.outline,
            mounting_block: d.role == Role::MountingBlock,
            moved: 0.0,
            origin: d.stroke.origin,
        })
        .collect()
}

/// Insertions and closed loops of some roles.
fn things(local: &ViewFrame, roles: &[Role]) -> Vec<DrawnItem> {
    let mut groups: BTreeMap<(usize, Role), Vec<&Stroke>> = BTreeMap::new();
    let mut out = Vec::new();
    for role in roles {
        for s in local.strokes(*role) {
            match s.part_of {
                Some(root) => groups.entry((root, *role)).or_default().push(s),
                None if s.closed && s.points.len() >= 3 => {
                    out.push(DrawnItem {
                        outline: wound(local.ring(s)),
                        block: None,
                        role: *role,
                        stroke: s.clone(),
                    });
                }
                None => {}
            }
        }
    }
    for ((group, role), strokes) in groups {
        let Some(outline) = group_outline(local, &strokes) else { continue };
        let block = local.lines.groups.get(group).map(|g| g.block.to_string());
        out.push(DrawnItem { outline, block, role, stroke: strokes[0].clone() });
    }
    out
}

fn wound(ring: Ring) -> Ring {
    Polygon::simple(ring).wound().outer
}

/// The outside of a block's linework: its largest loop if that holds the rest, the union of its
/// loops, else the box round its lines.
fn group_outline(local: &ViewFrame, strokes: &[&Stroke]) -> Option<Ring> {
    let points: Vec<Point> =
        strokes.iter().flat_map(|s| s.points.iter().map(|p| local.place(*p))).collect();
    let all = bounds(&points)?;
    let loops: Vec<Polygon> = strokes
        .iter()
        .filter(|s| s.closed && s.points.len() >= 3)
        .map(|s| Polygon::simple(local.ring(s)).wound())
        .collect();
    let largest = loops.iter().max_by(|a, b| a.area().total_cmp(&b.area()));
    if let Some(one) = largest.filter(|l| l.bounds() == all) {
        return Some(one.outer.clone());
    }
    let merged = union_all(&loops);
    let whole = merged.iter().max_by(|a, b| a.area().total_cmp(&b.area()));
    match whole {
        // Lines that leave the loops by more than a frame's thickness are sills and swings.
        Some(w) if w.bounds().area() > 0.5 * all.area() => Some(w.outer.clone()),
        _ => Some(Polygon::rect(all.x0, all.y0, all.x1, all.y1).outer),
    }
}

/// Things that stand inside another are its panes and panels.
fn outermost(found: Vec<DrawnItem>) -> Vec<DrawnItem> {
    let boxes: Vec<_> = found.iter().map(|d| bounds(&d.outline).unwrap_or_default()).collect();
    let keep = kept_outermost(&boxes);
    found.into_iter().zip(keep).filter(|(_, k)| *k).map(|(d, _)| d).collect()
}

/// Which of some boxes lie in no other; of two alike the first.
pub(super) fn kept_outermost(boxes: &[Rect]) -> Vec<bool> {
    let inside = |i: usize, j: usize| {
        let (a, b) = (boxes[i], boxes[j]);
        let within = a.x0 >= b.x0 - SAME
            && a.x1 <= b.x1 + SAME
            && a.y0 >= b.y0 - SAME
            && a.y1 <= b.y1 + SAME;
        within && (a != b || j < i)
    };
    // Left to right: what holds a thing begins no later than it does, and ends no sooner.
    let mut order: Vec<usize> = (0..boxes.len()).collect();
    order.sort_by(|i, j| boxes[*i].x0.total_cmp(&boxes[*j].x0).then(i.cmp(j)));
    let mut keep = vec![true; boxes.len()];
    let mut open: Vec<usize> = Vec::new();
    let mut next = 0;
    for &i in &order {
        while let Some(&j) = order.get(next).filter(|j| boxes[**j].x0 <= boxes[i].x0 + SAME) {
            open.push(j);
            next += 1;
        }
        open.retain(|j| boxes[*j].x1 >= boxes[i].x0 - SAME);
        keep[i] = !open.iter().any(|j| *j != i && inside(i, *j));
    }
    keep
}

fn kind(
    role: Role,
    block: Option<&str>,
    layer: &str,
    width: f64,
    is_glazed: impl Fn() -> bool,
) -> OpeningKind {
    let words = format!("{} {}", block.unwrap_or(""), layer).to_lowercase();
    let says = |list: &[&str]| list.iter().any(|w| words.contains(w));
    if says(&["vent", "louv"]) {
        return OpeningKind::Vent;
    }
    if role == Role::Door {
        // Glass doors that slide are as wide as overhead doors.
        let wide = says(&["garage", "overhead", "ovhd"]) || (width > OVERHEAD && !is_glazed());
        return if wide { OpeningKind::OverheadDoor } else { OpeningKind::Door };
    }
    OpeningKind::Window
}

/// The outline with casing round it: sides, head and, but for doors, sill.
pub(super) fn cased(ring: &Ring, casing: f64, door: bool) -> Ring {
    let b = bounds(ring).unwrap_or_default();
    if is_level_rectangle(ring) {
        let sill = if door { b.y0 } else { b.y0 - casing };
        let (left, right) = (snap(b.x0 - casing), snap(b.x1 + casing));
        return Polygon::rect(left, snap(sill), right, snap(b.y1 + casing)).outer;
    }
    let foot =
        |p: Point, q: Point| door && (p.y - b.y0).abs() <= SAME && (q.y - b.y0).abs() <= SAME;
    moved_out(
        &Polygon::simple(ring.clone()).wound().outer,
        |p, q| if foot(p, q) { 0.0 } else { casing },
    )
}
