//! Codes of what was taped on site.

use super::entry::Explanation;
use crate::finding::taped::TapedCode;

pub(super) fn explanation(code: TapedCode) -> &'static Explanation {
    match code {
        TapedCode::Unreadable => &UNREADABLE,
        TapedCode::Unknown => &UNKNOWN,
        TapedCode::LeftOut => &LEFT_OUT,
        TapedCode::Taken => &TAKEN,
        TapedCode::Leans => &LEANS,
        TapedCode::LevelStart => &LEVEL_START,
        TapedCode::Top => &TOP,
        TapedCode::Slopes => &SLOPES,
        TapedCode::Contradicts => &CONTRADICTS,
    }
}

const UNREADABLE: Explanation = Explanation {
    title: "A table of taped lengths cannot be read",
    cause: "The table lacks the column measure or taped, a quotation mark stays open, a length is none, cannot be (a width under nothing, a side that leans 10 ft) or is off the drawn one by more than half of it and more than 10 ft, as where the unit is another; or a measure stands there twice. The line is given.",
    remedy: "Fill in the table that `lapwright measure` writes. A length is 12'-6 1/2\", 3810mm, or a number of inches.",
    example: "measure,taped\nfront-1/foot-width,about 24 ft",
};
const UNKNOWN: Explanation = Explanation {
    title: "A taped length is of nothing that is drawn",
    cause: "The name of a measure fits no wall, opening or band of this drawing read with this job: another drawing, another job, or a wall that `lapwright measure` leaves out.",
    remedy: "Run `lapwright measure` with the same drawing and job, and take the names from its table.",
    example: "[taped]\n\"frnot-1/foot-width\" = \"24'-0\\\"\"",
};
const LEFT_OUT: Explanation = Explanation {
    title: "Walls that no sheet to tape by shows",
    cause: "A wall is taped by its two sides, and a drawn side may lean by 3 in: on a wall no wider than 6 in one side cannot be told from the other.",
    remedy: "Measure such a wall on site before its panels are cut. Where taped lengths are given back it keeps its drawn size, and goes along with the wall beside it.",
    example: "a return of 4 in beside a porch",
};
const TAKEN: Explanation = Explanation {
    title: "The house is laid out as it was taped",
    cause: "Lengths taped on site go over the drawing: walls and openings are moved to them before anything is laid out. What was left blank is taken as drawn; where the foot alone of a wall was taped, its top has the same difference, and the other way round.",
    remedy: "Nothing to do. The worst of what is blank comes first in the table of `lapwright measure`.",
    example: "lapwright layout house.dxf --measured measured.csv",
};
const LEANS: Explanation = Explanation {
    title: "Corners lean as they were taped",
    cause: "A corner was taped out of plumb, by more than 0.1 degree (3/16 in on a side 9 ft high) and no more than 1 in on 8 ft. Its post stands along it, siding ends at the post, and panels are cut square, each course to its own length. Less than 0.1 degree is taken as plumb; more than 1 in on 8 ft is laid out as a slope.",
    remedy: "Set each post along its corner. Where it is shimmed plumb instead, leave its blanks (out of plumb) empty.",
    example: "front-1: left side 1/2 in out of plumb",
};
const LEVEL_START: Explanation = Explanation {
    title: "Siding starts level where the start was taped out of level",
    cause: "The two corners of a wall were taped to start at heights that differ, by 1 in at most, though they are drawn level. Courses are level: siding starts from the lower corner, and hangs over the foot of the wall at the other one.",
    remedy: "Snap one level line from the lower corner. See that the starter has wood behind it all along and that clearances to grade are kept. Where siding shall start elsewhere, give its height for both corners.",
    example: "front-1: the left corner starts 5/8 in lower than the right one",
};
const TOP: Explanation = Explanation {
    title: "The top course is cut to a top that was taped out of level",
    cause: "The heights of a wall at its two corners were taped so that its soffit or band is out of level, by more than 0.1 degree or 1/4 in and no more than 1 in on 8 ft. Courses stay level; pieces of the top course are ripped narrower at one end than at the other, and finish trim or a frieze runs along the soffit. Less is taken as level; more is laid out as a slope.",
    remedy: "Nothing to do in the office. On site measure both ends of a piece before it is ripped.",
    example: "front-1: the top is 5/8 in out of level as taped, lower at the left",
};
const SLOPES: Explanation = Explanation {
    title: "Sides slope as they were taped",
    cause: "A side that is drawn plumb was taped more than 1 in on 8 ft out of plumb, a start more than 1 in out of level, or a top more than 1 in on 8 ft. Panels are cut to it as it is, but it is laid out as a slope is: with the channel of a rake or of a roof below, not with a corner post, a starter or finish trim.",
    remedy: "Put posts, starter and finish trim of these sides into the order by hand. Where the side is shimmed plumb or the start is snapped level, leave its blanks (out of plumb, level of the start) empty.",
    example: "front-1: left side 2 in out of plumb on 9 ft",
};
const CONTRADICTS: Explanation = Explanation {
    title: "Taped lengths do not go together",
    cause: "The two widths of a wall and the lean of its left side tell the lean of its right side, and another was taped; or an opening as taped would lie over the next or beyond its wall. What is missing to close is given.",
    remedy: "Tape these lengths again.",
    example: "front-1: foot 24'-0\", top 24'-0\", both sides plumb but the right one 1 in to the right",
};
