//! Codes of corners, and of walls that a job gives.

use super::entry::Explanation;
use crate::finding::corners::CornerCode;

pub(super) fn explanation(code: CornerCode) -> &'static Explanation {
    match code {
        CornerCode::ReturnNotDrawn => &RETURN_NOT_DRAWN,
        CornerCode::SetBackTaken => &SET_BACK_TAKEN,
        CornerCode::PostAngle => &POST_ANGLE,
        CornerCode::WallBehindPosts => &WALL_BEHIND_POSTS,
        CornerCode::CornerHeightsDisagree => &CORNER_HEIGHTS_DISAGREE,
        CornerCode::ReturnCornerUnknown => &RETURN_CORNER_UNKNOWN,
        CornerCode::AngledUnknown => &ANGLED_UNKNOWN,
        CornerCode::AngledNarrow => &ANGLED_NARROW,
        CornerCode::AngledOutside => &ANGLED_OUTSIDE,
        CornerCode::AngledZone => &ANGLED_ZONE,
    }
}

const RETURN_NOT_DRAWN: Explanation = Explanation {
    title: "The wall round a corner is not drawn",
    cause: "A corner was found on one elevation, and no elevation shows the wall on its other side: a bay, a recess, a side nobody drew. Nothing is laid out there. Where only one elevation is drawn at all, this is a note.",
    remedy: "Ask for the width. Draw the wall, or put the same tag at the corner in both elevations, or give it in the job; 0 where there is no siding.",
    example: "[[return]]\ncorner = \"front-2/left\"\nwidth = 24",
};
const SET_BACK_TAKEN: Explanation = Explanation {
    title: "The set-back of corner posts is not known",
    cause: "Siding ends at the bottom of a corner post's pocket, not at the corner: 2 in or so off an outside corner, 1 in off an inside one. How far depends on the post, and the job does not say. A usual figure was taken (common practice, no source); every piece at a corner is cut to it. At a corner that is not square it is reckoned as for a square post bent to the angle: its faces and pockets keep their width, and the edge where its faces meet moves (2 11/16 in outside and 5/16 in inside at 135 degrees with a pocket of 1 1/8 in). Boards end at the edge of a corner board.",
    remedy: "Measure the post that is ordered: from the corner, along the wall, to where a panel's end would touch. The end gap comes on top by itself. 0 where siding runs to the drawn corner.",
    example: "[product]\noutside_post_set_back = 2\noutside_post_face = 3\ninside_post_set_back = 1\n# angled_outside_post_set_back = 2.6875, angled_inside_post_set_back = 0.3125\n# boards: corner_board = 3.5, inside_corner_board = 1",
};
const POST_ANGLE: Explanation = Explanation {
    title: "A corner post for another angle than 90 degrees",
    cause: "Two walls that one elevation shows side by side meet in a corner, and the job gives one of them a true width: it stands at an angle, as in a bay. They share one post, and a usual post, made for a square corner, does not fit. The angle follows from the drawn and the true width. Where no line marks an inside corner, a bay is taken to stand out of its wall.",
    remedy: "Order a post made for the angle, a hinged one, or bend trim for it, and check the angle on the plan. Mark inside corners with a line on A-WALL-CNRI.",
    example: "[[angled]]\nwall = \"front-2\"    # drawn 2'-10\" wide: 45 degrees\nwidth = 48",
};
const WALL_BEHIND_POSTS: Explanation = Explanation {
    title: "A wall that its corner posts cover",
    cause: "A wall between two corners is no wider than what stands in them: set-backs, corner boards or covers take all of it, and no siding goes there.",
    remedy: "Nothing, if a post at each corner closes the wall. Else use narrower posts or bent trim, and say their set-backs in the job.",
    example: "[[return]]\ncorner = \"front-2/left\"\nwidth = 2",
};
const CORNER_HEIGHTS_DISAGREE: Explanation = Explanation {
    title: "Two elevations show one corner at different heights",
    cause: "The top or the bottom of a corner differs by more than an inch between the two elevations that show it. At the top of an outside corner, where a soffit goes level round, that is a warning; elsewhere, as where foundations step, a note.",
    remedy: "Compare floor reference lines, soffits and foundations of the two elevations, and ask which is right. The post is taken as long as the longer of them.",
    example: "the front's wall 8'-0\" high, the side's 8'-8\", at one corner",
};
const RETURN_CORNER_UNKNOWN: Explanation = Explanation {
    title: "A return starts at no open corner",
    cause: "A [[return]] of the job names a corner that no wall has, one of several, one whose walls are both known, or ends where it begins. Open corners are listed.",
    remedy: "Correct the corner in the job file; `layout.json` lists them under `corners`.",
    example: "[[return]]\ncorner = \"front-9/left\"\nwidth = 24",
};
const ANGLED_UNKNOWN: Explanation = Explanation {
    title: "A wall at an angle that there is not",
    cause: "An [[angled]] wall of the job names a wall, or an opening on it, that the drawing does not have.",
    remedy: "Correct the name in the job file. `lapwright check` lists the walls.",
    example: "[[angled]]\nwall = \"front-7\"\nwidth = 68",
};
const ANGLED_NARROW: Explanation = Explanation {
    title: "A wall at an angle narrower than it is drawn",
    cause: "An elevation shows a wall at an angle shorter than it is, never longer. The true width that the job gives is less than the drawn one.",
    remedy: "Take the width from the plan, along the wall.",
    example: "[[angled]]\nwall = \"front-2\"    # drawn 48 wide\nwidth = 40",
};
const ANGLED_OUTSIDE: Explanation = Explanation {
    title: "An opening placed outside its wall at an angle",
    cause: "The job gives the true place of an opening on a wall at an angle, and with its width it would reach past the wall's end.",
    remedy: "Correct the place in the job file: it is the opening's left side from the wall's left end.",
    example: "[[angled]]\nwall = \"front-2\"\nwidth = 68\nopenings = { front-W1 = 60 }",
};
const ANGLED_ZONE: Explanation = Explanation {
    title: "A zone on a wall at an angle that cannot be widened",
    cause: "A zone lies on a wall that the job gives its true width. A zone that goes on past the wall, or has siding of its own, cannot be stretched with it.",
    remedy: "Draw the wall at its true width as a view of its own, or take it out of the zone.",
    example: "[[zone]] with a product over front-2, which is [[angled]]",
};
