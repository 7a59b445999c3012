//! Codes of the drawing's file.

use super::entry::Explanation;
use crate::finding::drawing::DrawingCode;

pub(super) fn explanation(code: DrawingCode) -> &'static Explanation {
    match code {
        DrawingCode::FileTooBig => &FILE_TOO_BIG,
        DrawingCode::NotDxf => &NOT_DXF,
        DrawingCode::DwgUnreadable => &DWG_UNREADABLE,
        DrawingCode::DwgTextsLost => &DWG_TEXTS_LOST,
        DrawingCode::PdfUnreadable => &PDF_UNREADABLE,
        DrawingCode::PdfPages => &PDF_PAGES,
        DrawingCode::PdfPagesRead => &PDF_PAGES_READ,
        DrawingCode::PdfLettersMute => &PDF_LETTERS_MUTE,
        DrawingCode::FileTruncated => &FILE_TRUNCATED,
        DrawingCode::LineBad => &LINE_BAD,
        DrawingCode::LayersTooMany => &LAYERS_TOO_MANY,
        DrawingCode::ItemsTooMany => &ITEMS_TOO_MANY,
        DrawingCode::PointsTooMany => &POINTS_TOO_MANY,
        DrawingCode::VerticesTooMany => &VERTICES_TOO_MANY,
        DrawingCode::HatchLoops => &HATCH_LOOPS,
        DrawingCode::LayersAllOff => &LAYERS_ALL_OFF,
        DrawingCode::NumbersAbsurd => &NUMBERS_ABSURD,
        DrawingCode::BlockNesting => &BLOCK_NESTING,
        DrawingCode::BlockMissing => &BLOCK_MISSING,
        DrawingCode::BlockExternal => &BLOCK_EXTERNAL,
        DrawingCode::EntityBroken => &ENTITY_BROKEN,
        DrawingCode::NumberUnreadable => &NUMBER_UNREADABLE,
        DrawingCode::NameTooLong => &NAME_TOO_LONG,
        DrawingCode::TextTooLong => &TEXT_TOO_LONG,
        DrawingCode::EntitySkipped => &ENTITY_SKIPPED,
        DrawingCode::SvgUnreadable => &SVG_UNREADABLE,
        DrawingCode::SvgTooBig => &SVG_TOO_BIG,
    }
}

const FILE_TOO_BIG: Explanation = Explanation {
    title: "The file is larger than any that is read",
    cause: "The drawing has more than 1 GiB. It is refused before it is read, so that it cannot fill the memory.",
    remedy: "Copy the elevations into a drawing of their own and save only that.",
    example: "lapwright check whole-subdivision.dxf    (1.2 GiB)",
};
const NOT_DXF: Explanation = Explanation {
    title: "The file is no drawing that is read",
    cause: "The file does not begin as a DXF (text or binary), a DWG, a PDF or an SVG does. What it looks like by its first bytes is named: a picture, a compressed file, an empty file. Text in UTF-16 is read as it is.",
    remedy: "Save or export the elevations as DXF, DWG, PDF or SVG from the program that made them, and give that file. A compressed file (zip, gzip, SVGZ) is to be unpacked first. Renaming a file does not change what it is.",
    example: "lapwright check elevations.png",
};
const DWG_UNREADABLE: Explanation = Explanation {
    title: "The DWG cannot be read",
    cause: "A DWG of versions 2000 to 2018 (its first letters are AC1015 to AC1032) is read. Another version, one locked with a password, and one whose parts do not fit together, as after a copy that broke off, are not.",
    remedy: "Open it in the program that drew it and save it as DWG of version 2018 or as DXF, without a password. A broken one is repaired there first.",
    example: "lapwright check elevations.dwg    (saved in 1997: AC1014)",
};
const DWG_TEXTS_LOST: Explanation = Explanation {
    title: "Texts of the DWG could not be read",
    cause: "Some texts of a DWG are stored in a way that is not known here. Lines, hatches and blocks are read; of these texts nothing is, so titles of views, tags and levels may be missing.",
    remedy: "Compare the views and their names with the drawing; give names and regions in the job where they are missing. Or save the drawing as DXF, of which all texts are read.",
    example: "52 texts of the DWG could not be read",
};
const PDF_UNREADABLE: Explanation = Explanation {
    title: "The PDF cannot be read",
    cause: "A PDF that is locked with a password, or whose list of pages is broken, is not read.",
    remedy: "Ask for a PDF without a password, or print it to a new PDF. Best ask the architect for the DWG or DXF: nothing is lost in it.",
    example: "lapwright check locked.pdf",
};
const PDF_PAGES: Explanation = Explanation {
    title: "No page of the PDF can be taken",
    cause: "Pages with the title of an elevation are read; where none has one, all pages with lines, if they are four at most. A page that is a picture, as a scan is, has nothing to measure. Named pages must be there.",
    remedy: "Name the pages with elevations: `--page 3`, or `pages = [3, 4]` under [drawing]. Of a scan ask for the PDF as printed from the drawing.",
    example: "lapwright check set.pdf    (60 pages)",
};
const PDF_PAGES_READ: Explanation = Explanation {
    title: "Which pages of the PDF are read",
    cause: "A PDF has several pages. Those that look like elevations, or those named, are read and stand side by side; what was seen on the others is told.",
    remedy: "Nothing, if these are the elevations. To read others, name them: `--page 3`, or `pages = [3, 4]` under [drawing].",
    example: "pages 3, 4 of 12 read; not read: page 5 is a picture",
};
const PDF_LETTERS_MUTE: Explanation = Explanation {
    title: "Letters of the PDF cannot be told",
    cause: "A font in the PDF draws its letters and does not say which they are. What they spell is not known to the program, so titles of views may be missing.",
    remedy: "Give views their names in the job, or ask for the DWG or DXF.",
    example: "412 letters of the PDF cannot be told",
};
const FILE_TRUNCATED: Explanation = Explanation {
    title: "The DXF ends before it is whole",
    cause: "A DXF ends with `0 EOF`. Where that is missing, the copy broke off: what was read is used, and this is a warning. Where the section of entities is missing too, nothing can be read, and this is an error.",
    remedy: "Open the drawing in the program that made it and save it again. Where only the end mark is missing, compare the sheets with the drawing before you rely on them.",
    example: "0\nSECTION\n2\nHEADER\n9\n$ACADVER\n1\nAC1015\n    (here the file ends)",
};
const LINE_BAD: Explanation = Explanation {
    title: "Lines without a group code",
    cause: "A DXF is pairs of lines: a whole number, the group code, and its value. A line stands where a code is due and is no number, as after a faulty edit or copy. It is passed over, and reading goes on at the next code.",
    remedy: "Save the drawing again from the program that made it, and look for what is missing on the sheets.",
    example: "0\nLINE\n8\nA-WALL-OTLN\nten\n0.0",
};
const LAYERS_TOO_MANY: Explanation = Explanation {
    title: "More layers than are read",
    cause: "The drawing has more than 20,000 layers. What tells layers apart grows with their number, so such a file is refused.",
    remedy: "Purge unused layers, or copy the elevations into a drawing of their own.",
    example: "a table of 25,000 layers, left over from bound references",
};
const ITEMS_TOO_MANY: Explanation = Explanation {
    title: "More shapes than are read",
    cause: "After blocks are inserted and arrays are counted out, the drawing has more than 1,500,000 shapes or 500,000 insertions. What comes past the limit is left out, and could be a wall or an opening: nothing is laid out.",
    remedy: "Look for an array or a nested block that repeats itself, and reduce it. Else save only the elevations to a file of their own.",
    example: "0\nINSERT\n2\nBRICK\n70\n1000    (columns)\n71\n1000    (rows)",
};
const POINTS_TOO_MANY: Explanation = Explanation {
    title: "More points than are read",
    cause: "All shapes together, after blocks are inserted, have more than 20,000,000 points: more than fits the memory. Letters of texts and lines of hatch patterns are counted as points that take as much room. What comes past the limit is left out, and could be a wall or an opening: nothing is laid out.",
    remedy: "Look for a block of many points (a plant, a terrain, a scanned outline) that is inserted many times, and freeze or delete it.",
    example: "a block of 200,000 vertices, inserted 150 times",
};
const VERTICES_TOO_MANY: Explanation = Explanation {
    title: "An entity with more vertices than are read",
    cause: "One polyline, spline or hatch has more than 1,000,000 vertices. The rest of it is left out, so that its shape would be wrong: nothing is laid out.",
    remedy: "Simplify the entity, or delete it where it shows nothing of the elevations.",
    example: "0\nLWPOLYLINE\n90\n1200000",
};
const HATCH_LOOPS: Explanation = Explanation {
    title: "A hatch with more loops than are read",
    cause: "The hatch says that it has more than 5,000 boundary loops. Areas of so many take too long to make, so the hatch is left out. A wall that only this hatch shows is then missing.",
    remedy: "Cut the hatch in parts, or draw the wall's outline on A-WALL-OTLN.",
    example: "0\nHATCH\n91\n6000",
};
const LAYERS_ALL_OFF: Explanation = Explanation {
    title: "Every layer is off or frozen, and read all the same",
    cause: "All layers on which something is drawn are off or frozen. Nobody draws a sheet to show nothing: some converters write every layer so. All layers are read, also those that the architect had off, such as an earlier design that lies in the same place. Where a single layer with something on it is shown, layers that are off stay off.",
    remedy: "Look at the sheets for what should not be there. Give such a layer to `ignore` under [layers] in the job file, or open the drawing, switch on what shall be read, and save it again.",
    example: "0\nLAYER\n2\nA-WALL-PATT\n62\n-8    (a negative color: off, and so on all layers)",
};
const NUMBERS_ABSURD: Explanation = Explanation {
    title: "Shapes farther out than any house",
    cause: "Shapes have a coordinate beyond 1,000,000,000 drawing units, or none that is a number. They are left out: areas made with such numbers come out wrong without a word.",
    remedy: "Delete or mend what lies so far from the drawing. Zoom to the extents of the drawing to find it.",
    example: "0\nLINE\n8\n0\n10\n2e9\n20\n0\n11\n2e9\n21\n10",
};
const BLOCK_NESTING: Explanation = Explanation {
    title: "A block inserts itself or lies too deep in others",
    cause: "The block holds an insertion of itself, straight or through other blocks, or blocks are nested more than 16 levels deep. These insertions are left out.",
    remedy: "Explode or redraw the block.",
    example: "block A holds INSERT B, and block B holds INSERT A",
};
const BLOCK_MISSING: Explanation = Explanation {
    title: "A block is inserted but not defined",
    cause: "An insertion names a block that the file does not define, as with a reference that was not bound. Whatever it shows, a window for instance, is missing from the layout.",
    remedy: "Bind the reference, or purge it if it shows nothing of the elevations, and save the drawing again.",
    example: "0\nINSERT\n8\nA-GLAZ\n2\nWINDOW-36    (no such block)",
};
const BLOCK_EXTERNAL: Explanation = Explanation {
    title: "A block stands in another file",
    cause: "An insertion shows an external reference: its block is empty here and names another drawing. Only one file is read, so that what the reference shows, windows for instance, is missing from the layout.",
    remedy: "Bind the reference into the drawing, so that its contents become a block of this file, and save it again.",
    example: "0\nBLOCK\n2\nWINDOWS\n70\n4\n1\nwindows.dwg",
};
const ENTITY_BROKEN: Explanation = Explanation {
    title: "Entities without a value that they need",
    cause: "Entities lack a coordinate, a radius or another value without which they cannot be drawn, or hold one that is no number. They are left out.",
    remedy: "Run the drawing program's audit, and save the drawing again.",
    example: "0\nCIRCLE\n8\nA-GLAZ\n10\n60\n20\n40    (no radius, group 40)",
};
const NUMBER_UNREADABLE: Explanation = Explanation {
    title: "A number that cannot be read",
    cause: "A coordinate, length, scale, angle or count is written as something that is no number: a word, a comma for the point, nothing at all. It is not taken for 0 or 1: the entity is left out, the whole polyline for one bad vertex, and nothing is laid out, since a wall or an opening could be missing. Where only a text or a sheet's window is left out, this is a warning.",
    remedy: "Go to the line in a text editor and mend the number or delete the entity, or open the drawing in the program that made it, run its audit and save again.",
    example: "0\nVERTEX\n8\nA-WALL-OTLN\n10\n24o.0    (a letter for a zero)\n20\n96",
};
const NAME_TOO_LONG: Explanation = Explanation {
    title: "A name longer than any is",
    cause: "A layer, a block or an element's id has a name of more than 500 letters. Names are looked up, compared and shown many times, so such a file is refused. The DXF reference allows 255 letters.",
    remedy: "Rename the layer or block in the drawing program.",
    example: "0\nLAYER\n2\nAAAAAAAAAAAA..    (20,000 letters)",
};
const TEXT_TOO_LONG: Explanation = Explanation {
    title: "A text longer than is read",
    cause: "A text has more than is read of one. Its beginning is read, the rest is left out. General notes do not matter; a title or a measure has its words at the beginning.",
    remedy: "Nothing, where it is a note. Else write it as several texts.",
    example: "an MTEXT that holds a whole specification",
};
const ENTITY_SKIPPED: Explanation = Explanation {
    title: "Entities of a type that is not read",
    cause: "The drawing holds types that show no line of an elevation by themselves: solids, meshes, pictures, leaders, proxies of add-ons. They are passed over.",
    remedy: "If they show walls or openings, explode them to lines in the drawing program.",
    example: "0\n3DFACE\n8\nA-WALL",
};
const SVG_UNREADABLE: Explanation = Explanation {
    title: "The SVG cannot be parsed",
    cause: "The file begins as an SVG does, but it is no well-formed XML, or no SVG that can be drawn. What the parser says stands behind the file's name.",
    remedy: "Save it again as plain SVG, with text kept as text.",
    example: "<svg xmlns=\"http://www.w3.org/2000/svg\"><rect width=\"9\"",
};
const SVG_TOO_BIG: Explanation = Explanation {
    title: "The SVG asks for more than any drawing does",
    cause: "Elements, levels, uses, attributes, style rules, path data or letters are more than are read, each counted as often as it is repeated by uses: an element that uses itself never ends. The message says which, where, and the limit. It is refused before it is drawn, so that it can fill neither memory nor hours.",
    remedy: "Save only the elevations to a file of their own, and flatten symbols in the program that made it.",
    example: "<g id=\"a\"><use href=\"#a\"/></g>",
};
