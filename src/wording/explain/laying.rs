//! Codes of what is laid out.

use super::entry::Explanation;
use crate::finding::laying::LayingCode;

pub(super) fn explanation(code: LayingCode) -> &'static Explanation {
    match code {
        LayingCode::StripThin => &STRIP_THIN,
        LayingCode::WallBare => &WALL_BARE,
        LayingCode::PostPastStone => &POST_PAST_STONE,
        LayingCode::FillerBoard => &FILLER_BOARD,
        LayingCode::RaggedFoot => &RAGGED_FOOT,
        LayingCode::OpeningsJoined => &OPENINGS_JOINED,
        LayingCode::BlockMoved => &BLOCK_MOVED,
        LayingCode::PeakLeft => &PEAK_LEFT,
        LayingCode::PanelShort => &PANEL_SHORT,
        LayingCode::NotchThin => &NOTCH_THIN,
        LayingCode::MovementGap => &MOVEMENT_GAP,
        LayingCode::SeamRulesConflict => &SEAM_RULES_CONFLICT,
        LayingCode::SeamOnJamb => &SEAM_ON_JAMB,
        LayingCode::CheckFailed => &CHECK_FAILED,
        LayingCode::LongPanelGap => &LONG_PANEL_GAP,
        LayingCode::OneLot => &ONE_LOT,
        LayingCode::CrewTakesMore => &CREW_TAKES_MORE,
        LayingCode::ZoneEmpty => &ZONE_EMPTY,
    }
}

const STRIP_THIN: Explanation = Explanation {
    title: "A thin strip of a panel is left",
    cause: "A course is ripped to a strip lower than `courses.least_strip`, 2 in unless the job sets it: at a soffit, over a head, under a sill. Such a strip is hard to cut and to hold.",
    remedy: "Leave the strip out: a filler or frieze board of the height that is told takes its place (`trim.frieze` at soffits), or a band or a deeper trim; the courses under it stay whole. Or move the datum (`courses.datum`).",
    example: "[courses]\ndatum = 0    # and a wall 97 in high, courses of 8",
};
const WALL_BARE: Explanation = Explanation {
    title: "A part of a wall gets no siding",
    cause: "Courses start at a height that keeps clear of finished grade, in steps where grade falls, or a lower roof is drawn over the wall. What is left of the wall is counted as wall without siding, and bought by nobody.",
    remedy: "Ask what covers it, or draw it: a base of stone or concrete on A-WALL-BASE, a roof as the line where it meets the wall.",
    example: "grade that falls 3 ft along a wall, courses of 8 in",
};
const POST_PAST_STONE: Explanation = Explanation {
    title: "A corner post runs down past stone",
    cause: "On one wall of a corner siding stands on stone, on the other it goes on down. The post stands in the corner as far down as the lower of the two.",
    remedy: "Ask whether the stone turns the corner, and draw it on both elevations, or whether it stops against the post.",
    example: "a stone base 30 in high on the front alone",
};
const RAGGED_FOOT: Explanation = Explanation {
    title: "Siding is cut along many short slants at its foot",
    cause: "The outline of a wall has several short slanted edges of different slopes close together that face down, as where a chair, a plant or a person is drawn in front of the wall and the siding's hatch is cut around it. Siding is laid, and every piece cut, to that outline.",
    remedy: "If siding continues behind what is drawn there, give the wall outright in the job (`[[wall]]` with its outline), or have the hatch drawn whole. If it is a curved roof or rough stone against the wall, leave it.",
    example: "a lawn chair drawn in front of the wall of a porch",
};
const SEAM_ON_JAMB: Explanation = Explanation {
    title: "A seam stands on a jamb line",
    cause: "Over or under an opening a seam is within 1 1/2 in of the line of a jamb, and no other place was found for it with as few panels. There water runs down the jamb's channel, and the eye is led to the seam.",
    remedy: "Accept it, or lay one more panel in that course so that its seam moves. Another stock length (`product.length`) or a search of more rounds (`seams.effort = \"long\"`) may find a place.",
    example: "a wall that two panels just cover, with a window whose jamb is at its middle",
};
const BLOCK_MOVED: Explanation = Explanation {
    title: "A mounting block is moved a little",
    cause: "Where it is drawn the block, with the clearance around it, would cut no more than `courses.block_shift` out of the course over or under it, 1/2 in unless the job sets it. It is laid out up or down by that much, so that the course stays whole.",
    remedy: "Set the block at the height that is told; its box stays where it is. `courses.block_shift = 0` leaves blocks where they are drawn.",
    example: "a block whose top is on a course line",
};
const PEAK_LEFT: Explanation = Explanation {
    title: "A peak is left to its channels",
    cause: "Over the last course line the peak of a gable is lower than `courses.least_strip`. A piece that small cannot be cut and nailed; the channels along the rakes meet over it.",
    remedy: "Close what shows in the peak with a piece of coil or trim. Moving the datum (`courses.datum`) makes the peak higher.",
    example: "a gable whose peak is 1 in over a course line",
};
const FILLER_BOARD: Explanation = Explanation {
    title: "A place too narrow for siding gets a filler board",
    cause: "Two openings, an opening and a corner, or a head and a soffit stand so near that less than `courses.least_width` of siding, 2 in unless the job sets it, would show between the trim on both sides. No piece is laid there. A filler board is drawn, listed and bought, and the place is no part of the net area.",
    remedy: "Rip a flat trim board to the width that is told, or wrap it in coil, and flash it as the trim beside it. Beside an opening the channels go around both. Where the architect can widen the room, siding fits.",
    example: "two windows 1 in apart",
};
const OPENINGS_JOINED: Explanation = Explanation {
    title: "Openings stand edge to edge",
    cause: "Two openings share a side on the drawing, with no wall between them. They are taken as units joined by a mullion: the channels go around both, and nothing is counted along the joint.",
    remedy: "Ask the architect or the window supplier whether the units come joined, and how the joint is covered, flashed and sealed. If they are framed apart, draw the space: a narrow one gets a filler board, a wider one siding.",
    example: "two windows whose outlines share a jamb",
};
const PANEL_SHORT: Explanation = Explanation {
    title: "Pieces shorter than studs are apart",
    cause: "Pieces between openings, corners and posts are shorter than the spacing of studs, so that they meet one stud at most and cannot be nailed to two. The last piece under a peak is left out of this.",
    remedy: "Put blocking or nailable sheathing behind them, or cover the place with a wider trim. `courses.stud_spacing`, for boards `boards.stud_spacing`, sets the spacing.",
    example: "a window 10 in from the corner of its wall, studs 16 in apart",
};
const NOTCH_THIN: Explanation = Explanation {
    title: "A notch leaves little of its piece",
    cause: "A notch under a sill or over a head leaves less than `courses.least_strip` of the panel under or over it, or between it and an end. The piece may break before it hangs.",
    remedy: "Close the place with a filler or trim board, or cut the panel in two there and handle the pieces with care until they are fastened. Another height of the datum (`courses.datum`), with a first course that hangs below the drawn bottom (`courses.hang_below`), may avoid the notch: the report tells the best that were tried, each with the strips it leaves.",
    example: "a sill 1 in over the butt line of its course",
};
const MOVEMENT_GAP: Explanation = Explanation {
    title: "A piece grows more than it has room for",
    cause: "Between the temperature when siding goes up and the highest it gets to, the longest piece of its kind grows by more than its gap or lap takes up. Panels may buckle.",
    remedy: "Work on a warmer day, or leave a larger gap as the manufacturer says. `weather` and `weather.expansion` set temperatures and growth of the place and the product.",
    example: "[weather]\ninstalled_f = 0\nhighest_f = 180",
};
const SEAM_RULES_CONFLICT: Explanation = Explanation {
    title: "Courses cannot keep every rule of seams",
    cause: "In the courses that are named, no layout was found, or none exists, in which all seams keep their distance from those of near courses. The nearest was laid out; the seams in question bear a mark on the sheet.",
    remedy: "Relax a rule as is proposed, or accept the marked seams.",
    example: "[seams]\nstagger = 72    # in a run of one panel and a half",
};
const CHECK_FAILED: Explanation = Explanation {
    title: "The layout breaks rules of the check",
    cause: "Every layout is checked by code that shares nothing with what laid it out. A place breaks a rule: a wall is not covered, a piece does not fit, trim is missing. The layout is written all the same, every sheet, table and report marked; the exit code is 4.",
    remedy: "Do not cut, order or build by it. Read what the cover says of each place: a wall that is bare by more than a quarter is mended in the drawing, a setting that leaves no room in the job. What neither mends is a fault of the program.",
    example: "a wall 8 ft high with grade drawn 4 ft over its foot",
};
const LONG_PANEL_GAP: Explanation = Explanation {
    title: "Long panels need a larger gap",
    cause: "Panels of 20 ft and longer move more than the usual gap at their ends takes; their manufacturers state a larger one. The usual gap was taken, since the job gives none.",
    remedy: "Set `product.end_gap` from the manufacturer's instructions.",
    example: "[product]\nlength = 240",
};
const ONE_LOT: Explanation = Explanation {
    title: "Order from one production lot",
    cause: "Every layout says so: production lots differ a little in color (ASTM D4756, note 2), which shows on one wall.",
    remedy: "Order all siding with spare pieces from one lot.",
    example: "[product]\ncolor = \"sand\"",
};
const CREW_TAKES_MORE: Explanation = Explanation {
    title: "A crew that does not cut by the list runs short",
    cause: "The layout saves panels by its cutting list. A careful crew that does not follow it, and starts each run with the last offcut where the rules allow, takes more panels than are bought, spare ones and what whole cartons leave included.",
    remedy: "Have the panels cut by the cutting list, or order more: `takeoff.spare` is percent of the panels laid.",
    example: "[takeoff]\nspare = 0",
};
const ZONE_EMPTY: Explanation = Explanation {
    title: "A zone covers no wall",
    cause: "The job names a zone with another cladding, and neither a closed outline on its layers nor its regions cover any wall, or what they cover is too little to side.",
    remedy: "Draw the zone on a layer that `zone.layers` names, or give it a `region`. Check the spelling of the layer.",
    example: "[[zone]]\nname = \"gable\"\nlayers = [\"A-WALL-SHNG\"]    # nothing is drawn on it\ncladding = \"shingle\"",
};
