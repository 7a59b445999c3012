//! Which entity types are read.

/// Types that become shapes, insertions or windows.
const READ: [&str; 19] = [
    "LINE",
    "LWPOLYLINE",
    "POLYLINE",
    "VERTEX",
    "SEQEND",
    "ARC",
    "CIRCLE",
    "ELLIPSE",
    "SPLINE",
    "INSERT",
    "HATCH",
    "SOLID",
    "TRACE",
    "TEXT",
    "MTEXT",
    "ATTRIB",
    "ATTDEF",
    "DIMENSION",
    "VIEWPORT",
];

/// The type's name if it is read, else `None`. `POINT` is read too.
pub(super) fn kind_of(value: &[u8]) -> Option<&'static str> {
    let value = value.trim_ascii();
    READ.iter().chain(&["POINT"]).find(|k| value.eq_ignore_ascii_case(k.as_bytes())).copied()
}
