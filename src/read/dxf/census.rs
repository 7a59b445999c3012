//! Which entity types are read.

use crate::origin::EntityKind;

/// Types that become shapes, insertions or windows.
const READ: [EntityKind; 21] = [
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
    EntityKind::Face,
    EntityKind::Text,
    EntityKind::MText,
    EntityKind::Attrib,
    EntityKind::AttDef,
    EntityKind::Dimension,
    EntityKind::Viewport,
    EntityKind::Point,
];

/// Types that say something of a drawing and are no shape of it (DXF reference).
const SAID: [&str; 12] = [
    "ACAD_TABLE",
    "ARC_DIMENSION",
    "ARCALIGNEDTEXT",
    "DIMENSION",
    "GEOPOSITIONMARKER",
    "LARGE_RADIAL_DIMENSION",
    "LEADER",
    "MULTILEADER",
    "MLEADER",
    "RTEXT",
    "TOLERANCE",
    "VIEWPORT",
];

/// Whether a type is a note or a measure rather than a shape.
pub(super) fn is_said(value: &[u8]) -> bool {
    let value = value.trim_ascii();
    SAID.iter().any(|t| value.eq_ignore_ascii_case(t.as_bytes()))
}

/// The type, if it is read.
pub(super) fn kind_of(value: &[u8]) -> Option<EntityKind> {
    let value = value.trim_ascii();
    READ.into_iter().find(|k| value.eq_ignore_ascii_case(k.word().as_bytes()))
}
