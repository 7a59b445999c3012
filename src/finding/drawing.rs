//! The drawing's file and what it holds: findings of `read`.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::formats::{DwgFault, PdfFault, PdfPageSeen, PdfPagesWhy};
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
    /// A file compressed with gzip, as SVGZ is.
    Gzip,
    /// A file compressed in another way.
    Compressed,
    /// Files put together without compression.
    Tar,
    /// Text in four bytes a letter.
    Utf32,
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

/// Where a value stands that should be a number.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case", tag = "stands_in")]
pub enum NumberPlace {
    /// In a group of a DXF.
    Group {
        /// Its code.
        group: i32,
    },
    /// In an attribute of an SVG.
    Attribute {
        /// Its name.
        attribute: String,
    },
}

/// What has a name.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Named {
    /// A layer, or a group that is one.
    Layer,
    /// A block.
    Block,
    /// An element of an SVG, by its id.
    Element,
}

/// What an SVG has more of than is read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum SvgExcess {
    /// Elements, repeated ones counted each time.
    Elements,
    /// Elements in elements.
    Levels,
    /// Uses in uses, or an element that uses itself.
    Uses,
    /// Attributes of one element.
    Attributes,
    /// Attributes of all elements.
    AllAttributes,
    /// Namespaces that are declared.
    Namespaces,
    /// Letters that its entities stand for.
    Entities,
    /// Comparisons of style rules with elements.
    Styles,
    /// Letters of attributes, repeated ones counted each time.
    LettersOfAttributes,
    /// Letters of texts, repeated ones counted each time.
    Letters,
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
        /// A DWG that cannot be read.
        DwgUnreadable "dwg-unreadable", Error, Architect {
            /// The file.
            name: String,
            /// Why.
            #[serde(flatten)]
            fault: DwgFault,
        }
        /// Texts of a DWG that could not be decoded.
        DwgTextsLost "dwg-texts-lost", Warning, Architect {
            /// How many.
            texts: usize,
        }
        /// A PDF that cannot be read.
        PdfUnreadable "pdf-unreadable", Error, Architect {
            /// The file.
            name: String,
            /// Why.
            fault: PdfFault,
        }
        /// No pages of a PDF can be taken.
        PdfPages "pdf-pages", Error, Office {
            /// The file.
            name: String,
            /// How many pages it has.
            pages: usize,
            /// Why.
            #[serde(flatten)]
            why: PdfPagesWhy,
            /// What was seen on them.
            seen: Vec<PdfPageSeen>,
        }
        /// Which pages of a PDF are read.
        PdfPagesRead "pdf-pages-read", Info, Office {
            /// These.
            taken: Vec<usize>,
            /// Of so many.
            pages: usize,
            /// What was seen on the others.
            others: Vec<PdfPageSeen>,
        }
        /// Letters of a PDF whose font does not say which they are.
        PdfLettersMute "pdf-letters-mute", Warning, Architect {
            /// How many.
            letters: usize,
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
        ItemsTooMany "items-too-many", Error, Office {
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
        PointsTooMany "points-too-many", Error, Office {
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
        /// Every layer with geometry is off or frozen: all of them are read.
        LayersAllOff "layers-all-off", Warning, Architect {
            /// How many there are with geometry.
            layers: usize,
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
        /// A value that places, turns or scales something is no number.
        NumberUnreadable "number-unreadable", Error or Warning if words_only, Architect {
            /// The entity it stands in: the vertex or attribute, where it is in one.
            part: EntityKind,
            /// Where in it.
            #[serde(flatten)]
            place: NumberPlace,
            /// The value, or its beginning.
            value: String,
            /// Its line.
            line: usize,
            /// Entities of that type left out on that layer, this one counted.
            entities: usize,
            /// Only words or a sheet's window are left out, nothing that could be a wall or an opening.
            words_only: bool,
        }
        /// A name has more letters than any has.
        NameTooLong "name-too-long", Error, Architect {
            /// Of what.
            of: Named,
            /// Its first letters.
            begins: String,
            /// How many it has.
            letters: usize,
            /// The most read.
            most: usize,
            /// Its line.
            line: usize,
        }
        /// Texts are so long that they are read in part.
        TextTooLong "text-too-long", Warning, Architect {
            /// How many.
            texts: usize,
            /// Bytes of one that are read.
            most: usize,
            /// Line of the first.
            line: usize,
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
        /// The SVG asks for more than any drawing does.
        SvgTooBig "svg-too-big", Error, Office {
            /// Of what.
            of: SvgExcess,
            /// The most read.
            most: usize,
            /// Line of the element where it is too much; none where no one element is.
            #[serde(skip_serializing_if = "Option::is_none")]
            line: Option<usize>,
        }
    }
}
