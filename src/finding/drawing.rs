//! The drawing's file and what it holds: findings of `read`.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::group::group;
use crate::origin::EntityKind;

/// What a file that is no drawing looks like.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum LooksLike {
    /// Nothing in it.
    EmptyFile,
    /// A DWG drawing.
    Dwg,
    /// A PDF.
    Pdf,
    /// A zip archive.
    Zip,
    /// A PNG picture.
    Png,
    /// A JPEG picture.
    Jpeg,
    /// A TIFF picture.
    Tiff,
    /// JSON.
    Json,
    /// XML, but no SVG.
    OtherXml,
    /// Text or data of another sort.
    OtherData,
}

/// Why a block could not be put where it is inserted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum BlockFault {
    /// It holds an insertion of itself.
    InsertsItself,
    /// Blocks in blocks, more levels than are followed.
    NestedTooDeep,
}

/// A block inserted in rows and columns.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct BlockArray {
    /// The block.
    pub block: String,
    /// Columns.
    pub columns: i64,
    /// Rows.
    pub rows: i64,
}

group! {
    /// What is wrong with a drawing's file, or left out of it.
    DrawingFinding, DrawingCode {
        /// The file is larger than any that is read.
        FileTooBig "file-too-big", Error, Office {
            /// The file.
            name: String,
            /// Its size.
            bytes: usize,
            /// The largest read.
            most: usize,
        }
        /// The file is neither DXF nor SVG.
        NotDxf "not-dxf", Error, Office {
            /// The file.
            name: String,
            /// What it looks like.
            looks_like: LooksLike,
        }
        /// The file ends before it is whole.
        FileTruncated "file-truncated", Error or Warning if entities_found, Architect {
            /// The file.
            name: String,
            /// Whether its end mark is there.
            end_found: bool,
            /// Whether there are entities to go on with.
            entities_found: bool,
        }
        /// Lines stand where a group code is due.
        LineBad "line-bad", Warning, Architect {
            /// How many.
            lines: usize,
            /// The first.
            first_line: usize,
        }
        /// There are more layers than any drawing has.
        LayersTooMany "layers-too-many", Error, Office {
            /// The file.
            name: String,
            /// The most read.
            most: usize,
        }
        /// There are more shapes than are read.
        ItemsTooMany "items-too-many", Warning, Office {
            /// The most read.
            most: usize,
            /// Line of the file from which the rest is left out.
            #[serde(skip_serializing_if = "Option::is_none")]
            from_line: Option<usize>,
            /// The array of blocks that is too many.
            #[serde(skip_serializing_if = "Option::is_none")]
            array: Option<BlockArray>,
        }
        /// There are more points than are read.
        PointsTooMany "points-too-many", Warning, Office {
            /// The most read.
            most: usize,
            /// Line of the file from which the rest is left out.
            #[serde(skip_serializing_if = "Option::is_none")]
            from_line: Option<usize>,
        }
        /// An entity has more vertices than are read.
        VerticesTooMany "vertices-too-many", Error, Office {
            /// The most read.
            most: usize,
            /// Line near which it stands.
            line: usize,
        }
        /// A hatch has more loops than are read.
        HatchLoops "hatch-loops", Warning, Office {
            /// Loops it says it has.
            loops: usize,
            /// The most read.
            most: usize,
        }
        /// Shapes lie farther out than any house.
        NumbersAbsurd "numbers-absurd", Warning, Architect {
            /// How many.
            shapes: usize,
            /// The farthest coordinate read, drawing units.
            farthest: f64,
        }
        /// A block inserts itself, or lies too deep in others.
        BlockNesting "block-nesting", Warning, Architect {
            /// The block.
            block: String,
            /// Why.
            fault: BlockFault,
            /// Insertions left out.
            insertions: usize,
        }
        /// A block is inserted but not defined.
        BlockMissing "block-missing", Warning, Architect {
            /// The block.
            block: String,
        }
        /// A block stands in another file.
        BlockExternal "block-external", Warning, Architect {
            /// The block.
            block: String,
            /// The file, as the drawing names it.
            file: String,
            /// How often it is inserted.
            insertions: usize,
        }
        /// Entities lack a value that they need.
        EntityBroken "entity-broken", Warning, Architect {
            /// Their type.
            entity: EntityKind,
            /// How many.
            count: usize,
            /// Line of the first.
            first_line: usize,
        }
        /// Entities are of a type that is not read.
        EntitySkipped "entity-skipped", Info, Architect {
            /// Their type, as the file names it.
            entity: String,
            /// How many.
            count: usize,
            /// Line of the first.
            first_line: usize,
        }
        /// The SVG cannot be parsed.
        SvgUnreadable "svg-unreadable", Error, Office {
            /// The file.
            name: String,
            /// What the parser says.
            parser_says: String,
        }
        /// The SVG has more elements than are read, or nests them too deep.
        SvgTooBig "svg-too-big", Error, Office {
            /// Most elements, repeated ones counted each time.
            most_elements: usize,
            /// Most levels.
            most_levels: usize,
        }
    }
}
