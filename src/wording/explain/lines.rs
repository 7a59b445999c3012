//! Codes of lines, layers, unit and dimensions.

use super::entry::Explanation;
use crate::finding::lines::LineCode;

pub(super) fn explanation(code: LineCode) -> &'static Explanation {
    match code {
        LineCode::UnitAssumed => &UNIT_ASSUMED,
        LineCode::UnitUnsure => &UNIT_UNSURE,
        LineCode::UnitTaken => &UNIT_TAKEN,
        LineCode::UnitImplausible => &UNIT_IMPLAUSIBLE,
        LineCode::KnownUnreadable => &KNOWN_UNREADABLE,
        LineCode::ScaleUnknown => &SCALE_UNKNOWN,
        LineCode::ScaleOfPaper => &SCALE_OF_PAPER,
        LineCode::ScalesOnPage => &SCALES_ON_PAGE,
        LineCode::DimensionDisagrees => &DIMENSION_DISAGREES,
        LineCode::DimensionsMore => &DIMENSIONS_MORE,
        LineCode::PointLeftOut => &POINT_LEFT_OUT,
        LineCode::LayerUnmapped => &LAYER_UNMAPPED,
        LineCode::LayerHidden => &LAYER_HIDDEN,
        LineCode::LineZero => &LINE_ZERO,
        LineCode::LineTwice => &LINE_TWICE,
        LineCode::LinesSquared => &LINES_SQUARED,
        LineCode::GapsClosed => &GAPS_CLOSED,
        LineCode::EndsJoined => &ENDS_JOINED,
        LineCode::SidingFromLines => &SIDING_FROM_LINES,
        LineCode::CoursesUnended => &COURSES_UNENDED,
        LineCode::LinesNoSiding => &LINES_NO_SIDING,
    }
}

const UNIT_ASSUMED: Explanation = Explanation {
    title: "The unit is taken by sizes",
    cause: "The job states no unit, and the drawing's header names none, or one in which walls or doors are as no house has them. The unit is taken that sizes speak for most: what dimensions state beside what they measure, doors of about 80 in, walls of 8 to 30 ft, windows and the distance of drawn courses. Only what lies in views counts. Inches are taken where nothing speaks for another.",
    remedy: "Ask what the drawing is in, and set `unit` under [drawing] in the job file.",
    example: "an old DXF without $INSUNITS, and no job file",
};
const UNIT_UNSURE: Explanation = Explanation {
    title: "The header alone says which unit it is",
    cause: "In the unit of the drawing's header and in another one walls are as high as houses are, and neither doors nor dimensions tell which is right. Headers are often wrong, since they come from templates. The header's unit is taken.",
    remedy: "Compare one length on a sheet with the drawing. Set `unit` under [drawing] in the job file: what the job states is taken, and this is not told again.",
    example: "walls drawn 250 units high without a door: 20'-10\" in inches, 2500 mm in cm",
};
const UNIT_TAKEN: Explanation = Explanation {
    title: "The unit in force",
    cause: "Every layout says which unit was taken, by what, and whether door heights or written dimensions agree with it.",
    remedy: "Nothing to do if it is right. If not, set `unit` under [drawing] in the job file.",
    example: "[drawing]\nunit = \"inch\"",
};
const UNIT_IMPLAUSIBLE: Explanation = Explanation {
    title: "The unit gives walls that no house has",
    cause: "Walls would stand lower than 8 in or higher than 50 ft, or doors and dimensions speak for another unit. What the job states, a unit or a known distance, is taken all the same, and this is a warning that names the likely unit. Where the job states none and sizes fit no unit at all, nothing is laid out.",
    remedy: "Set `unit` under [drawing] in the job file to inch, foot, mm, cm or m. Give the views as [[elevation]] with regions, if what lies outside of them misleads.",
    example: "[drawing]\nunit = \"inch\"\n# and a wall drawn 2400 high, in millimeters",
};
const KNOWN_UNREADABLE: Explanation = Explanation {
    title: "A known distance cannot be read",
    cause: "What --known gives is not two points in drawing units, an equals sign and a length.",
    remedy: "Write it as \"x1,y1 x2,y2 = 16'-0\\\"\". Measure the two points in the drawing program.",
    example: "lapwright check house.dxf --known \"16 feet\"",
};
const SCALE_UNKNOWN: Explanation = Explanation {
    title: "The scale of the page is not known",
    cause: "A PDF is measured in points of paper. The scale written on it is what the sheet was made for, not what it was printed at: a set printed at half size still says 1/4\" = 1'-0\". So no written scale is taken for true.",
    remedy: "Give one length that you know, by its two ends in points of the page, y counted up from the lower edge: `known = \"x1,y1 x2,y2 = 6'-8\\\"\"` under [drawing], or `--known`. The longest dimension on the sheet is best.",
    example: "lapwright check elevations.pdf --known \"402,318 936,318 = 40'-0\\\"\"",
};
const SCALE_OF_PAPER: Explanation = Explanation {
    title: "The scale that a page of paper is taken in",
    cause: "A PDF is measured in points of paper. The known distance of the job sets its scale; without one, three dimensions or more that agree, each beside the line that it measures. A scale written on the sheet is told with how many percent of it the page was printed at, and settles nothing. Where one of these says something else the finding is a warning.",
    remedy: "Compare one length on the sheet that comes out, the longest you know, with the drawing. If it is off, give a known distance, or correct the one given: `known` under [drawing], or `--known`.",
    example: "known = \"402,318 936,318 = 40'-0\\\"\"",
};
const SCALES_ON_PAGE: Explanation = Explanation {
    title: "A page shows views in several scales",
    cause: "The sheet states more than one scale, or its dimensions fall into groups that each agree on another one: a detail or a part stands beside the elevations. One scale is taken for all that is read.",
    remedy: "Lay out the views of one scale at a time: name each by its region as [[elevation]], leave the others out, and give a known distance that lies in them.",
    example: "[[elevation]]\nname = \"Front\"\nregion = [72, 300, 700, 560]",
};
const DIMENSION_DISAGREES: Explanation = Explanation {
    title: "A dimension's text disagrees with what it measures",
    cause: "The text of a dimension was typed over: it states a length that differs by more than an inch from the distance it is drawn across. One of the two is wrong. The drawn size is what is laid out.",
    remedy: "Ask which is right, and correct the drawing or the text. To go on with the drawn size, put \"dimension-disagrees\" into `accept` under [drawing]: the finding is then a warning.",
    example: "a dimension drawn 240 in long whose text says 24'-0\"",
};
const DIMENSIONS_MORE: Explanation = Explanation {
    title: "More dimensions disagree",
    cause: "More than 100 dimensions disagree with what they measure. The first 100 are listed one by one; this is the number of the rest.",
    remedy: "Look at the first ones: a scale factor or a wrong unit of dimensions is a likely cause of all.",
    example: "a drawing scaled by 1/2 after its dimensions were typed over",
};
const POINT_LEFT_OUT: Explanation = Explanation {
    title: "Points on a layer of outlines",
    cause: "Points stand on a layer whose contents are drawn as outlines or blocks: fixtures, openings, walls. A point has no size, so that nothing can be laid round it.",
    remedy: "Draw what it stands for as a block or a closed outline.",
    example: "0\nPOINT\n8\nA-ELEV-MBLK\n10\n60\n20\n40",
};
const LAYER_UNMAPPED: Explanation = Explanation {
    title: "Layers without a role",
    cause: "Something is drawn on layers that neither the agreed names nor the job give a role. It is left out of the layout.",
    remedy: "If one holds walls or openings, name it under [layers] in the job file. `lapwright layers DRAWING --suggest` guesses at roles.",
    example: "[layers]\nwall = [\"FACADE\"]    # names the layer and so ends the note",
};
const LAYER_HIDDEN: Explanation = Explanation {
    title: "A layer is off or frozen",
    cause: "A layer with a role, or one that the job names, is off or frozen in the drawing. It is left out, unless the job names it.",
    remedy: "Thaw it in the drawing, name it in the job file, or set `hidden_layers = true` under [drawing]. Nothing to do if it is to stay out.",
    example: "A-GLAZ frozen, 12 windows on it",
};
const LINE_ZERO: Explanation = Explanation {
    title: "Lines of no length",
    cause: "Both ends of a line are at one place. Such lines show nothing and are left out.",
    remedy: "Nothing to do; purge them when convenient.",
    example: "0\nLINE\n8\nA-WALL-OTLN\n10\n5\n20\n5\n11\n5\n21\n5",
};
const LINE_TWICE: Explanation = Explanation {
    title: "Lines that appear twice",
    cause: "Two lines or outlines on one layer have exactly the same points. One of each pair is left out, so that a wall is not counted twice.",
    remedy: "Nothing to do; purge duplicates when convenient.",
    example: "a wall outline pasted onto itself",
};
const LINES_SQUARED: Explanation = Explanation {
    title: "Drawing noise was taken out",
    cause: "Lines lie a little off level or plumb, or parts of one line lie a little apart: the drawing was moved, scaled, traced or turned by hand. A tilt that all sides have in common is undone as one turn: up to 2 degrees as noise, up to 40 degrees with a warning where next to nothing of a view stands upright. A side over 24 in that lies within 0.1 degree and 1/4 in of level or plumb is squared, with what stands on it. Where a third of the long sides of a view lean, shorter sides are squared too, lines within 1/16 in of one another become one, steps up to 1/16 in are closed, and a line that lies off a round figure by no more than the others do is set on it. Steeper slopes and larger steps are built so and stay.",
    remedy: "Nothing to do where little was moved. Where a corner was moved by more than 1/16 in (a warning), look whether the side is meant to lean, and draw it at its true slope. Where a view was turned by more than 2 degrees (a warning too), draw it upright, or make sure that what was laid out is what is meant.",
    example: "a drawing turned by 0.01 degree with the mouse",
};
const GAPS_CLOSED: Explanation = Explanation {
    title: "Loops with gaps were closed",
    cause: "Lines on a layer of outlines go round but miss one another at a corner by more than the weld distance and less than 1/4 in. They are taken to meet, so that the outline counts as closed.",
    remedy: "Nothing to do. Wider gaps are never closed: they are told as an open loop.",
    example: "four lines round a window, two of them 0.1 in apart at a corner",
};
const ENDS_JOINED: Explanation = Explanation {
    title: "Ends that nearly meet were joined",
    cause: "Ends of lines are apart by less than the weld distance, 1/16 in unless the job sets it. They are taken to meet.",
    remedy: "Nothing to do. `weld` under [drawing] sets the distance; of larger gaps only loops under 1/4 in are closed.",
    example: "[drawing]\nweld = 0.25",
};
const SIDING_FROM_LINES: Explanation = Explanation {
    title: "Level lines were taken for siding",
    cause: "The drawing has no wall outlines. Level lines on one layer, in one color and line weight, stand over one another at one spacing, as an exploded hatch or a print leaves them. What lies between them is taken for siding, up to the line drawn next over the top one and under the bottom one. They are a texture: the layout has its own courses.",
    remedy: "Look at each wall on the sheet. Closed outlines on A-WALL-OTLN take precedence, or name the layer of the walls under [layers] in the job file. To keep such lines out, give their layer the role `ignore`.",
    example: "[layers]\nignore = [\"LOUVERS\"]",
};
const COURSES_UNENDED: Explanation = Explanation {
    title: "No line is drawn where courses end",
    cause: "Over the top one or under the bottom one of the level lines that were taken for siding, no line is drawn within one spacing. The siding is taken to end at that line, so that a strip of up to one spacing may be missing.",
    remedy: "Draw the line at which the siding ends: the soffit, the frieze, the sill, the foot of the wall. Or draw the wall as a closed outline on A-WALL-OTLN.",
    example: "the courses of a gable without its rake",
};
const LINES_NO_SIDING: Explanation = Explanation {
    title: "Level lines were not taken for siding",
    cause: "Level lines at one spacing cover an area, but do not look like siding: short upright lines stand between them as in stone or shingles, or words and columns as in a table, or other level lines run among them, or they are few beside what else is drawn with their layer, color and weight, or they stand apart from the siding.",
    remedy: "Look at the places named. If one is siding, draw its closed outline on A-WALL-OTLN, or put its lines on a layer of their own.",
    example: "the rows of a window schedule beside the elevation",
};
