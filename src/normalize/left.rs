//! Shapes on layers with a role that are not laid out from: hidden ones, those on sheets, and those
//! that the reader could make nothing of. They are kept so that each layer can tell of them.

use super::shapes::strokes;
use crate::model::drawing::{Drawing, Item, LeftOut, Shape, Space};
use crate::model::linework::{Beside, LeftStroke, Linework, Role, Stroke};
use crate::model::unused::Unused;

/// The role of a layer that is accounted for.
fn role_of(out: &Linework, layer: usize) -> Option<Role> {
    out.layers.get(layer).and_then(|l| l.role).filter(|r| r.shapes_layout())
}

/// Keeps the lines of an item with why it is left out; a text is only counted.
fn keep(out: &mut Linework, item: &Item, why: Unused) {
    let Some(role) = role_of(out, item.layer) else { return };
    if matches!(item.shape, Shape::Text(_) | Shape::Dimension(_)) {
        out.asides.entry(item.layer).or_default().said += 1;
        return;
    }
    // Parts of one entity are left out with it.
    let all = strokes(item, Some(role)).into_iter().filter(|s| s.entities > 0);
    out.left.extend(all.map(|stroke| LeftStroke { stroke, why: why.clone() }));
}

/// What hides an item.
fn hidden_by(out: &Linework, layer: usize, group: Option<usize>) -> Unused {
    let off = |layer: usize| out.layers.get(layer).is_some_and(|l| !l.layer.shown);
    if off(layer) {
        return Unused::HiddenLayer;
    }
    let mut at = group;
    while let Some(g) = at.and_then(|g| out.groups.get(g)) {
        if off(g.layer) {
            return Unused::HiddenInsert;
        }
        at = g.parent;
    }
    Unused::Invisible
}

/// A shape that is not shown.
pub(super) fn hidden(out: &mut Linework, item: &Item) {
    let why = hidden_by(out, item.layer, item.group);
    keep(out, item, why);
}

/// A shape of a sheet.
pub(super) fn on_sheet(out: &mut Linework, item: &Item) {
    keep(out, item, Unused::OnSheet);
}

/// A point on a layer of outlines: it has no size.
pub(super) fn point(out: &mut Linework, item: &Item) {
    keep(out, item, Unused::PointOnly);
}

/// Types of entities that show a picture or a page of another file (DXF reference, SVG).
const PICTURES: [&str; 6] =
    ["IMAGE", "OLEFRAME", "OLE2FRAME", "PDFUNDERLAY", "DWFUNDERLAY", "DGNUNDERLAY"];

/// Counts what the drawing holds beside what is read.
pub(super) fn beside(drawing: &Drawing) -> Beside {
    let is_picture = |l: &&LeftOut| match l.why.as_ref() {
        Unused::NotRead { entity } => PICTURES.iter().any(|p| entity.eq_ignore_ascii_case(p)),
        _ => false,
    };
    let pictures = drawing.left_out.iter().filter(is_picture).map(|l| l.count).sum();
    let on_sheets = drawing.items.iter().filter(|i| i.space != Space::Model).count();
    Beside { pictures, on_sheets }
}

/// What the reader left out. That it is hidden, or on a sheet, is said first: nobody asks then what
/// it is.
pub(super) fn unread(out: &mut Linework, drawing: &Drawing) {
    for l in &drawing.left_out {
        let Some(role) = role_of(out, l.layer) else { continue };
        let why = match (&l.space, l.shown) {
            (_, false) => match l.why.as_ref() {
                Unused::Invisible => Unused::Invisible,
                _ => hidden_by(out, l.layer, l.group),
            },
            (Space::Paper(_), _) => Unused::OnSheet,
            _ => l.why.as_ref().clone(),
        };
        out.left.push(LeftStroke { stroke: place_of(l, role), why });
    }
}

/// A stroke of no length where something stands.
fn place_of(l: &LeftOut, role: Role) -> Stroke {
    Stroke {
        points: l.at.into_iter().collect(),
        closed: false,
        role: Some(role),
        layer: l.layer,
        group: l.group,
        part_of: None,
        ink: Default::default(),
        entities: l.count,
        origin: l.origin.clone(),
    }
}
