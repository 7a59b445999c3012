//! Codes of views.

use super::entry::Explanation;
use crate::finding::views::ViewCode;

pub(super) fn explanation(code: ViewCode) -> &'static Explanation {
    match code {
        ViewCode::ViewLeftAlone => &VIEW_LEFT_ALONE,
        ViewCode::ViewSection => &VIEW_SECTION,
        ViewCode::ViewTurned => &VIEW_TURNED,
        ViewCode::ViewDoubted => &VIEW_DOUBTED,
        ViewCode::ViewSetUpright => &VIEW_SET_UPRIGHT,
        ViewCode::ViewScaled => &VIEW_SCALED,
        ViewCode::ViewScaleUnknown => &VIEW_SCALE_UNKNOWN,
        ViewCode::ViewSkipped => &VIEW_SKIPPED,
        ViewCode::VariantTaken => &VARIANT_TAKEN,
        ViewCode::VariantUnknown => &VARIANT_UNKNOWN,
        ViewCode::ModelMirrored => &MODEL_MIRRORED,
        ViewCode::ViewUntitled => &VIEW_UNTITLED,
        ViewCode::OutsideViews => &OUTSIDE_VIEWS,
        ViewCode::LevelAssumed => &LEVEL_ASSUMED,
        ViewCode::WallsTooMany => &WALLS_TOO_MANY,
        ViewCode::PartUnknown => &PART_UNKNOWN,
    }
}

const VIEW_LEFT_ALONE: Explanation = Explanation {
    title: "A view is no elevation by its title",
    cause: "Walls were found in a view whose title says plan, section or detail. Nothing is laid out there.",
    remedy: "If it is an elevation, name it as [[elevation]] with its region in the job file.",
    example: "outlines on A-WALL-OTLN over the title FIRST FLOOR PLAN",
};
const VIEW_SECTION: Explanation = Explanation {
    title: "A section shows siding",
    cause: "A view is a section by its title, but siding is hatched in it: the wall behind the cut. It is laid out.",
    remedy: "If it only repeats what an elevation shows, name the elevations as [[elevation]] in the job file, so that it stays out and is not ordered twice.",
    example: "a siding hatch over the title SECTION A-A",
};
const VIEW_TURNED: Explanation = Explanation {
    title: "A view is drawn turned, mirrored or upside down",
    cause: "Text of the view reads the wrong way, or its gables, doors, grade and floor reference line say that up is elsewhere. Boards laid on it as it is drawn would be wrong from the first course on.",
    remedy: "Draw it upright. Or name it under [[elevation]] with `turn`: degrees counter-clockwise that set it upright, \"mirror\" where left and right are exchanged, \"mirror 180\" where it also stands on its head. `turn = 0` takes it as it is drawn, `skip = true` leaves it out.",
    example: "[[elevation]]\nname = \"REAR ELEVATION\"\nturn = 180",
};
const VIEW_DOUBTED: Explanation = Explanation {
    title: "A view may be drawn upside down",
    cause: "Heads of windows are mostly at one height and sills are not. Here it is the other way round, with three heads or more, and no text, door, gable, grade or floor reference line tells which way the view stands. It is laid out as it is drawn.",
    remedy: "Look at the drawing. If it stands on its head, draw it upright or set `turn = 180` under [[elevation]]; `turn = 0` says that it is right and ends the question.",
    example: "[[elevation]]\nname = \"REAR ELEVATION\"\nturn = 0",
};
const VIEW_SET_UPRIGHT: Explanation = Explanation {
    title: "A view was turned as the job says",
    cause: "The job has `turn` for this view. It is set upright before anything is laid out; the overlay lies over the view as it is drawn.",
    remedy: "Nothing to do.",
    example: "[[elevation]]\nname = \"LEFT ELEVATION\"\nturn = \"mirror\"",
};
const VIEW_SCALED: Explanation = Explanation {
    title: "A view is drawn at another scale than the rest",
    cause: "One page shows views in several scales. A known distance of the view, dimensions beside their lines, or the scale written in it tells its own, and it is laid out at that.",
    remedy: "Compare one long length of it on the sheets with the drawing. If it is off, name the view as [[elevation]] and give a distance in it: `known`.",
    example: "[[elevation]]\nname = \"REAR ELEVATION\"\nknown = \"100,400 325,400 = 25'-0\\\"\"",
};
const VIEW_SCALE_UNKNOWN: Explanation = Explanation {
    title: "Nothing tells the scale of a view",
    cause: "One page shows views in several scales, and in this view neither dimensions nor a written scale tell which is its own. At a wrong scale its order would be wrong.",
    remedy: "Name the view as [[elevation]] and give a distance in it: `known`. Or leave it out: `skip = true`.",
    example: "two elevations on a page that says 1/4\" = 1'-0\" and 1/8\" = 1'-0\", neither beside a title",
};
const VIEW_SKIPPED: Explanation = Explanation {
    title: "A view is left out as the job says",
    cause: "The job has `skip = true` for this view: nothing of it is laid out or ordered.",
    remedy: "Take `skip` out of the job file if it is to be laid out.",
    example: "[[elevation]]\nname = \"EXISTING FRONT\"\nskip = true",
};
const VARIANT_TAKEN: Explanation = Explanation {
    title: "One variant of the elevations is built",
    cause: "The job has `model.variant`. Elevations whose title has that letter or number are laid out, and those without one; elevations of other variants are left out, and so is one for all variants where the variant has its own of that side.",
    remedy: "Nothing to do.",
    example: "[model]\nvariant = \"B\"",
};
const VARIANT_UNKNOWN: Explanation = Explanation {
    title: "No elevation is titled with the variant that the job builds",
    cause: "`model.variant` names a letter or a number that stands by itself in no title of an elevation. Which elevations are built is then not known.",
    remedy: "Correct `model.variant`, or title the elevations with their letters: FRONT ELEVATION A, FRONT ELEVATION B. Names that the job gives under [[elevation]] count as titles.",
    example: "[model]\nvariant = \"D\"\n# and titles FRONT ELEVATION A, FRONT ELEVATION B",
};
const MODEL_MIRRORED: Explanation = Explanation {
    title: "The house is built the other way round",
    cause: "The job has `model.mirrored = true`. Every elevation is laid out with left and right exchanged, and those titled left and right, or east and west, change their names.",
    remedy: "Nothing to do. Look at one sheet: the garage must stand on the side that it is built on.",
    example: "[model]\nmirrored = true",
};
const VIEW_UNTITLED: Explanation = Explanation {
    title: "Views without a frame or a title",
    cause: "There are several views, and some have neither a frame on A-ELEV-FRAM nor a title. They are numbered from left to right, and corners cannot be paired by the order of elevations.",
    remedy: "Draw a frame on A-ELEV-FRAM and a title on A-ELEV-IDEN, or name the views as [[elevation]] in the job file.",
    example: "two wall outlines 40 ft apart, without a text",
};
const OUTSIDE_VIEWS: Explanation = Explanation {
    title: "Walls or openings outside every view",
    cause: "Frames say which part of the drawing is which elevation, and lines of walls or openings lie outside them all. They are left out.",
    remedy: "Draw a frame round that view on A-ELEV-FRAM, or name its region as [[elevation]] in the job file.",
    example: "four elevations framed, and a garage drawn beside them without a frame",
};
const LEVEL_ASSUMED: Explanation = Explanation {
    title: "Elevations without a floor reference line",
    cause: "Several elevations are drawn, and some have no level line on A-FLOR-LEVL. Where the bottoms of all are within 8 ft of one another in the drawing, heights are compared as drawn, and this is a note. Otherwise each elevation has heights of its own, and this is a warning: courses may not meet at corners.",
    remedy: "Draw the first-floor line across each elevation on A-FLOR-LEVL.",
    example: "front and rear drawn one above the other, without a level line",
};
const WALLS_TOO_MANY: Explanation = Explanation {
    title: "An elevation with more walls than any house",
    cause: "More than 500 outlines on wall layers lie in one view. What is drawn there is likely something else.",
    remedy: "Check what is on the wall layer, or frame each elevation as a view of its own.",
    example: "every brick drawn as a closed outline on A-WALL-OTLN",
};
const PART_UNKNOWN: Explanation = Explanation {
    title: "The job names an elevation that there is not",
    cause: "A band, a joint or a region of a zone names an elevation that no view is called. The elevations there are stand behind it.",
    remedy: "Correct the name in the job file; upper and lower case make no difference.",
    example: "[[band]]\nelevation = \"Nroth\"\nbottom = 96\ntop = 104",
};
