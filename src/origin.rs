//! Where in the source an entity stands.

use std::fmt;
use std::sync::Arc;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::geom::tol::GRID;
use crate::geom::vocabulary::Point;

macro_rules! entity_kinds {
    ($($(#[$about:meta])* $name:ident = $word:literal),* $(,)?) => {
        /// The type of an entity, one byte: there is one for every item of a drawing.
        #[derive(
            Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize,
            Deserialize, JsonSchema,
        )]
        pub enum EntityKind {
            /// Not known, or made by the program.
            #[default]
            #[serde(rename = "none")]
            Unknown,
            $($(#[$about])* #[serde(rename = $word)] $name),*
        }

        impl EntityKind {
            /// Every type that a file names.
            pub const ALL: &'static [EntityKind] = &[$(EntityKind::$name),*];

            /// As the file names it.
            pub fn word(self) -> &'static str {
                match self {
                    EntityKind::Unknown => "",
                    $(EntityKind::$name => $word),*
                }
            }
        }
    };
}

entity_kinds! {
    /// DXF: a line.
    Line = "LINE",
    /// DXF: a polyline in one entity.
    LwPolyline = "LWPOLYLINE",
    /// DXF: a polyline with its vertices behind it.
    Polyline = "POLYLINE",
    /// DXF: a vertex of one.
    Vertex = "VERTEX",
    /// DXF: the end of vertices or attributes.
    SeqEnd = "SEQEND",
    /// DXF: an arc.
    Arc = "ARC",
    /// DXF: a circle.
    Circle = "CIRCLE",
    /// DXF: an ellipse or a part of one.
    Ellipse = "ELLIPSE",
    /// DXF: a spline.
    Spline = "SPLINE",
    /// DXF: a block inserted.
    Insert = "INSERT",
    /// DXF: a hatch.
    Hatch = "HATCH",
    /// DXF: a filled corner.
    Solid = "SOLID",
    /// DXF: the same in an older form.
    Trace = "TRACE",
    /// DXF: a flat face in space.
    Face = "3DFACE",
    /// DXF: a line of text.
    Text = "TEXT",
    /// DXF: a paragraph.
    MText = "MTEXT",
    /// DXF: an attribute of an insertion.
    Attrib = "ATTRIB",
    /// DXF: an attribute as its block defines it.
    AttDef = "ATTDEF",
    /// DXF: a dimension.
    Dimension = "DIMENSION",
    /// DXF: a window of a sheet.
    Viewport = "VIEWPORT",
    /// DXF: a point.
    Point = "POINT",
    /// DXF: a block as it is defined.
    Block = "BLOCK",
    /// PDF: a stroke.
    PdfStroke = "stroke",
    /// PDF: a fill.
    PdfFill = "fill",
    /// PDF: letters.
    PdfText = "letters",
    /// SVG: a group.
    SvgGroup = "g",
    /// SVG: a path.
    SvgPath = "path",
    /// SVG: a line.
    SvgLine = "line",
    /// SVG: an open polygon.
    SvgPolyline = "polyline",
    /// SVG: a polygon.
    SvgPolygon = "polygon",
    /// SVG: a rectangle.
    SvgRect = "rect",
    /// SVG: a circle.
    SvgCircle = "circle",
    /// SVG: an ellipse.
    SvgEllipse = "ellipse",
    /// SVG: a text.
    SvgText = "text",
    /// SVG: something used again.
    SvgUse = "use",
    /// SVG: a drawing, whole or within another.
    Svg = "svg",
    /// SVG: something to be used.
    SvgSymbol = "symbol",
    /// SVG: a part of a text.
    SvgPartOfText = "tspan",
}

impl EntityKind {
    /// The type that a file names so.
    pub fn named(word: &str) -> EntityKind {
        EntityKind::ALL.iter().copied().find(|k| k.word() == word).unwrap_or_default()
    }
}

impl fmt::Display for EntityKind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.word())
    }
}

/// Where in the source an entity stands. Small: there is one for every item of a drawing.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Origin {
    /// Line of the entity's first group in a text file, from 1; byte offset in a binary DXF; 0 in a DWG,
    /// which has neither.
    pub line: usize,
    /// The entity's handle (group 5), or an SVG id.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub handle: Option<Box<str>>,
    /// The entity's type as the file names it.
    pub entity: EntityKind,
    /// Its layer.
    pub layer: Arc<str>,
}

impl Origin {
    /// The type with a blank behind it, for words to follow; empty where it is not known.
    pub fn before(&self) -> String {
        let word = self.entity.word();
        if word.is_empty() { String::new() } else { format!("{word} ") }
    }

    /// Its line, as it is told behind its layer; nothing where the file has no lines.
    pub fn in_file(&self) -> String {
        if self.line == 0 { String::new() } else { format!(", line {}", self.line) }
    }
}

impl Default for Origin {
    fn default() -> Self {
        Origin { line: 0, handle: None, entity: EntityKind::Unknown, layer: Arc::from("") }
    }
}

/// A place in a drawing's own unit, to no more figures than the grid holds.
pub fn round_place(p: Point, inches_per_unit: f64) -> Point {
    if (inches_per_unit / GRID).fract() == 0.0 {
        // Inches and feet are on the grid as they are drawn.
        return p;
    }
    // The finest decimal place that is no finer than the grid.
    let mut parts = 1.0;
    while parts < 1e6 && inches_per_unit >= GRID * parts * 10.0 {
        parts *= 10.0;
    }
    Point::new((p.x * parts).round() / parts, (p.y * parts).round() / parts)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_origin_takes_no_more_room_than_its_parts() {
        // Line 8, handle 16, layer 16, the type in what is left of a word.
        assert!(size_of::<Origin>() <= 48, "{}", size_of::<Origin>());
        assert_eq!(size_of::<EntityKind>(), 1);
    }

    #[test]
    fn every_type_is_found_by_its_name() {
        for kind in EntityKind::ALL {
            assert_eq!(EntityKind::named(kind.word()), *kind);
        }
        assert_eq!(EntityKind::named("REGION"), EntityKind::Unknown);
    }
}
