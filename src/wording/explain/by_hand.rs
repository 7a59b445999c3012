//! Codes of what the job says of walls by hand.

use super::entry::Explanation;
use crate::finding::by_hand::HandCode;

pub(super) fn explanation(code: HandCode) -> &'static Explanation {
    match code {
        HandCode::WallUnknown => &WALL_UNKNOWN,
        HandCode::LeftOutByJob => &LEFT_OUT_BY_JOB,
        HandCode::GivenStays => &GIVEN_STAYS,
        HandCode::WallsJoined => &WALLS_JOINED,
        HandCode::WallsApart => &WALLS_APART,
        HandCode::WallGivesWay => &WALL_GIVES_WAY,
        HandCode::GivenOutside => &GIVEN_OUTSIDE,
        HandCode::SidingLayerEmpty => &SIDING_LAYER_EMPTY,
    }
}

const WALL_UNKNOWN: Explanation = Explanation {
    title: "The job names a wall that there is not",
    cause: "`skip` or `join` names what is neither a wall nor, for `skip`, an opening or a fixture. Names are those of the layout without `skip` and `join`, and stay the same as these grow.",
    remedy: "Take the name from a finding, a sheet or `lapwright check`; the walls there are stand behind the finding.",
    example: "skip = [\"suoth-3\"]",
};
const LEFT_OUT_BY_JOB: Explanation = Explanation {
    title: "Walls, openings or fixtures are left out as the job says",
    cause: "The job names them under `skip`. A wall left out is not sided, and neither are openings on it; where an opening or a fixture alone is left out, siding goes over its place.",
    remedy: "Take the name out of `skip` if it is to be laid out.",
    example: "skip = [\"south-3\", \"south-W2\"]",
};
const GIVEN_STAYS: Explanation = Explanation {
    title: "What the job gives outright is not left out by its name",
    cause: "`skip` names a wall or an opening that has its name from a [[wall]] or an [[opening]] of the job. `skip` leaves out what is drawn; the given one stands in its place and stays.",
    remedy: "Nothing to do if that is meant. To leave the place out, take the [[wall]] or the [[opening]] out of the job file.",
    example: "skip = [\"south-3\"]\n[[wall]]\noutline = [[0, 0], [240, 96]]",
};
const WALLS_JOINED: Explanation = Explanation {
    title: "Walls are taken as one, as the job says",
    cause: "The job names them together under `join`: they are one plane, which the drawing shows in parts. What parts them is an opening with its casing or a board where one is drawn, else it is left bare, and this is a warning.",
    remedy: "Look at the bare part. Where siding goes on over it, give the whole wall as [[wall]]; where something stands there, give it as [[opening]].",
    example: "join = [[\"south-1\", \"south-2\"]]",
};
const WALLS_APART: Explanation = Explanation {
    title: "Walls that the job joins cannot be one",
    cause: "They are in several elevations, one of them faces none of the others, or another wall stands between them.",
    remedy: "Correct `join`; name the wall between them too, or give the whole wall as [[wall]].",
    example: "join = [[\"south-1\", \"west-1\"]]",
};
const WALL_GIVES_WAY: Explanation = Explanation {
    title: "A drawn wall gives way to a given one",
    cause: "A [[wall]] of the job lies over a wall that the drawing shows. The given one is laid out, the drawn one is not; this is a warning where the given one leaves more than a twentieth of it uncovered. Openings found with the drawn one stay.",
    remedy: "Give what is left of the drawn wall as a further [[wall]], if it is sided.",
    example: "[[wall]]\noutline = [[0, 0], [240, 96]]",
};
const GIVEN_OUTSIDE: Explanation = Explanation {
    title: "A given wall or opening lies in no elevation",
    cause: "A [[wall]] or an [[opening]] names an elevation that there is not, or names none and lies outside the part of the drawing that each of them shows.",
    remedy: "Correct `elevation` or the points. Points are in the drawing's own units and from its own origin, as the places that findings tell.",
    example: "[[opening]]\nelevation = \"Nroth\"\noutline = [[40, 36], [76, 84]]",
};
const SIDING_LAYER_EMPTY: Explanation = Explanation {
    title: "The siding layer of a view shows no siding",
    cause: "`siding_layer` under [[elevation]] names a layer on which that view has neither a hatch nor level lines at one pitch.",
    remedy: "Correct the layer; those that have something in the view stand behind the finding.",
    example: "[[elevation]]\nname = \"SOUTH\"\nsiding_layer = \"A-WALL-PTAT\"",
};
