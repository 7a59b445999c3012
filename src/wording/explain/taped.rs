//! Codes of what was taped on site.

use super::entry::Explanation;
use crate::finding::taped::TapedCode;

pub(super) fn explanation(code: TapedCode) -> &'static Explanation {
    match code {
        TapedCode::Unreadable => &UNREADABLE,
        TapedCode::Unknown => &UNKNOWN,
        TapedCode::Taken => &TAKEN,
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
    cause: "The name of a measure fits no wall or opening of this drawing read with this job: another drawing, another job, or walls that are not read from closed outlines.",
    remedy: "Run `lapwright measure` with the same drawing and job, and take the names from its table.",
    example: "[taped]\n\"frnot-1/foot-width\" = \"24'-0\\\"\"",
};
const TAKEN: Explanation = Explanation {
    title: "The house is laid out as it was taped",
    cause: "Lengths taped on site go over the drawing: walls and openings are moved to them before anything is laid out. What was left blank is taken as drawn; where the foot alone of a wall was taped, its top has the same difference, and the other way round.",
    remedy: "Nothing to do. The worst of what is blank comes first in the table of `lapwright measure`.",
    example: "lapwright layout house.dxf --measured measured.csv",
};
const CONTRADICTS: Explanation = Explanation {
    title: "Taped lengths do not go together",
    cause: "The two widths of a wall and the lean of its left side tell the lean of its right side, and another was taped; or an opening as taped would lie over the next or beyond its wall. What is missing to close is given.",
    remedy: "Tape these lengths again.",
    example: "front-1: foot 24'-0\", top 24'-0\", both sides plumb but the right one 1 in to the right",
};
