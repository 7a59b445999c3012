//! Which entity types are read.

use crate::origin::EntityKind;

/// Types that become shapes, insertions or windows.
const READ: [EntityKind; 20] = [
    EntityKind::Line,
    EntityKind::LwPolyline,
    EntityKind::Polyline,
    EntityKind::Vertex,
    EntityKind::SeqEnd,
    EntityKind::Arc,
    EntityKind::Circle,
    EntityKind::Ellipse,
    EntityKind::Spline,
    EntityKind::Insert,
    EntityKind::Hatch,
    EntityKind::Solid,
    EntityKind::Trace,
    EntityKind::Text,
    EntityKind::MText,
    EntityKind::Attrib,
    EntityKind::AttDef,
    EntityKind::Dimension,
    EntityKind::Viewport,
    EntityKind::Point,
];

/// The type, if it is read.
pub(super) fn kind_of(value: &[u8]) -> Option<EntityKind> {
    let value = value.trim_ascii();
    READ.into_iter().find(|k| value.eq_ignore_ascii_case(k.word().as_bytes()))
}
