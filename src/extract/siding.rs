//! Layers that the job names for siding: of one view (`siding_layer`), or hatch layers named as `wall`.
//! Lines are read with these hatches as siding, whatever layer role or pattern they have.

use std::borrow::Cow;
use std::collections::BTreeSet;

use super::outline::Outline;
use super::views::{View, on_layers};
use super::ways;
use crate::finding::by_hand::HandFinding;
use crate::finding::{Finding, Findings};
use crate::job::Job;
use crate::model::linework::{HatchArea, Linework, Role, Stroke};

/// The layer that the job says is a view's siding.
fn layer_of<'a>(job: &'a Job, view: &View) -> Option<&'a String> {
    job.elevation.iter().find(|e| e.is_of(&view.name)).and_then(|e| e.siding_layer.as_ref())
}

/// The lines, with hatches on layers that the job names for siding as siding. Where some of a layer's
/// hatches have level lines these alone are; where none has, each is, whatever its pattern.
pub(super) fn as_named<'a>(lines: &'a Linework, job: &Job) -> Cow<'a, Linework> {
    let of_views: Vec<String> =
        job.elevation.iter().filter_map(|e| e.siding_layer.clone()).collect();
    let as_wall = |layer: usize| {
        let known = lines.layers.get(layer).filter(|l| l.role == Some(Role::Wall));
        known.is_some_and(|l| job.names_layer(&l.layer.name))
    };
    let layers: BTreeSet<usize> = lines.hatches.iter().map(|h| h.layer).collect();
    let of_view: BTreeSet<usize> =
        layers.iter().copied().filter(|l| on_layers(lines, *l, &of_views)).collect();
    let of_wall: BTreeSet<usize> = layers.into_iter().filter(|l| as_wall(*l)).collect();
    if of_view.is_empty() && of_wall.is_empty() {
        return Cow::Borrowed(lines);
    }
    let mut out = lines.clone();
    for layer in of_view.union(&of_wall) {
        named(&mut out, *layer);
    }
    for layer in &of_wall {
        without_loose_lines(&mut out, *layer);
    }
    Cow::Owned(out)
}

/// Makes the hatches of a layer siding.
fn named(lines: &mut Linework, layer: usize) {
    let mine = |h: &&mut HatchArea| h.layer == layer;
    let level = lines.hatches.iter().any(|h| h.layer == layer && ways::hatch::is_lap(&h.hatch));
    for h in lines.hatches.iter_mut().filter(mine) {
        if ways::hatch::is_lap(&h.hatch) {
            h.role = None;
        } else if !level {
            // An area of a wall layer that is filled is siding.
            (h.role, h.hatch.solid) = (Some(Role::Wall), true);
        }
    }
}

/// Beside hatches that are siding, loose lines of their layer are courses and trim, no outlines that lack
/// something: unless closed outlines say that walls are drawn so.
fn without_loose_lines(lines: &mut Linework, layer: usize) {
    let filled = |h: &HatchArea| h.role == Some(Role::Wall) && h.hatch.solid;
    let hatched = |h: &HatchArea| h.layer == layer && (filled(h) || ways::hatch::is_siding(h));
    if !lines.hatches.iter().any(hatched) {
        return;
    }
    let mine = |s: &&mut Stroke| s.layer == layer && s.role == Some(Role::Wall) && !s.closed;
    lines.strokes.iter_mut().filter(mine).for_each(|s| s.role = Some(Role::Texture));
}

/// The walls of a view whose siding layer the job names; none where it names none.
pub(super) fn walls(
    lines: &Linework,
    view: &View,
    job: &Job,
    findings: &mut Findings,
) -> Option<Vec<Outline>> {
    let named = layer_of(job, view)?;
    let pattern = std::slice::from_ref(named);
    let on_it = |layer: usize| on_layers(lines, layer, pattern);
    let mut alone = lines.clone();
    for h in alone.hatches.iter_mut().filter(|h| !on_it(h.layer)) {
        h.role = Some(Role::Ignore);
    }
    for s in alone.strokes.iter_mut().filter(|s| s.role == Some(Role::Wall) && !on_it(s.layer)) {
        s.role = None;
    }
    // What is wrong with other views is told with them.
    let found = ways::outlines(&alone, job, &mut Findings::default());
    let mut found: Vec<Outline> =
        found.into_iter().filter(|o| on_it(o.layer) && view.holds(lines, o)).collect();
    if found.is_empty() {
        let mine = view.strokes(lines).filter(|s| on_it(s.layer));
        let whole: Vec<Stroke> = mine.map(|s| Stroke { role: None, ..s.clone() }).collect();
        found = ways::loose::of_view(lines, whole.iter(), job, findings);
    }
    if found.is_empty() {
        findings.push(empty(lines, view, named));
    }
    Some(found)
}

fn empty(lines: &Linework, view: &View, named: &str) -> Finding {
    let strokes = view.strokes(lines).map(|s| s.layer);
    let hatches = lines.hatches.iter().filter(|h| view.region.contains(h.hatch.bounds().center()));
    let layers: BTreeSet<usize> = strokes.chain(hatches.map(|h| h.layer)).collect();
    let names = layers.iter().filter_map(|l| lines.layers.get(*l)).map(|l| l.layer.name.clone());
    let (view, layers) = (view.name.clone(), names.take(MOST_LAYERS).collect());
    Finding::new(HandFinding::SidingLayerEmpty { view, named: named.to_owned(), layers })
}

/// Most layers that are listed.
const MOST_LAYERS: usize = 30;
