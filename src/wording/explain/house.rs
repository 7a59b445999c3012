//! Codes of walls, openings and fixtures.

use super::entry::Explanation;
use crate::finding::house::HouseCode;

pub(super) fn explanation(code: HouseCode) -> &'static Explanation {
    match code {
        HouseCode::NoWalls => &NO_WALLS,
        HouseCode::WallOpen => &WALL_OPEN,
        HouseCode::WallCrosses => &WALL_CROSSES,
        HouseCode::WallsOverlap => &WALLS_OVERLAP,
        HouseCode::WallTooFine => &WALL_TOO_FINE,
        HouseCode::WallTooBig => &WALL_TOO_BIG,
        HouseCode::WallTooFull => &WALL_TOO_FULL,
        HouseCode::OutlineTooFine => &OUTLINE_TOO_FINE,
        HouseCode::OutlinesTooMany => &OUTLINES_TOO_MANY,
        HouseCode::GradeTooFine => &GRADE_TOO_FINE,
        HouseCode::WallsFromHatch => &WALLS_FROM_HATCH,
        HouseCode::PlaneAssumed => &PLANE_ASSUMED,
        HouseCode::SidingDetail => &SIDING_DETAIL,
        HouseCode::WallsFromLines => &WALLS_FROM_LINES,
        HouseCode::WallFoot => &WALL_FOOT,
        HouseCode::FacesLeft => &FACES_LEFT,
        HouseCode::SideLeans => &SIDE_LEANS,
        HouseCode::DrawnUnused => &DRAWN_UNUSED,
        HouseCode::LayerSpeaks => &LAYER_SPEAKS,
        HouseCode::OpeningsOffSiding => &OPENINGS_OFF_SIDING,
        HouseCode::OpeningTooLarge => &OPENING_TOO_LARGE,
        HouseCode::FacadeShare => &FACADE_SHARE,
        HouseCode::WallDoubted => &WALL_DOUBTED,
        HouseCode::OpeningOutside => &OPENING_OUTSIDE,
        HouseCode::OpeningStraddles => &OPENING_STRADDLES,
        HouseCode::OpeningSize => &OPENING_SIZE,
        HouseCode::FixtureOutside => &FIXTURE_OUTSIDE,
        HouseCode::SidingStopsShort => &SIDING_STOPS_SHORT,
        HouseCode::JointInOpening => &JOINT_IN_OPENING,
    }
}

const NO_WALLS: Explanation = Explanation {
    title: "Nothing to side",
    cause: "No view holds a closed outline on a wall layer, a siding hatch with level lines, or loose lines that make walls. What is seen instead is told: hatches by the way and distance of their lines, pictures, layers that are off, a region or layer of the job that holds nothing, titles of plans. The layers that have something on them are listed.",
    remedy: "Draw each wall as a closed outline on A-WALL-OTLN inside its view, or name the layer that holds the walls as `wall` under [layers] in the job file. `lapwright layers DRAWING --suggest` makes a beginning. What is seen has its own advice in the finding.",
    example: "an outline on layer FACADE, which no job names",
};
const WALL_OPEN: Explanation = Explanation {
    title: "An outline does not close",
    cause: "The lines of a wall, or of an area without siding, do not join to a loop: the gap is wider than the weld distance. Its area would be a guess, so nothing is laid out. The gap is measured to the nearest other loose end.",
    remedy: "Close the outline in the drawing at the place that is given; `lapwright check --out DIR` circles it in problems.svg.",
    example: "an outline that ends 3 1/2\" short of where it began",
};
const WALL_CROSSES: Explanation = Explanation {
    title: "An outline crosses itself",
    cause: "Two sides of one wall outline cut each other, as in a figure of eight. It has no inside to lay siding on.",
    remedy: "Redraw the outline so that it goes once round the wall.",
    example: "corners in the order 0,0 240,0 0,96 240,96",
};
const WALLS_OVERLAP: Explanation = Explanation {
    title: "Two walls overlap",
    cause: "Two wall outlines in one view cover the same area, by more than 24 square inches. It would be laid and ordered twice.",
    remedy: "Draw each wall once: end the one behind where the one in front hides it.",
    example: "an outline from 0 to 240 and one from 120 to 360 at one height",
};
const WALL_TOO_FINE: Explanation = Explanation {
    title: "A wall's outline has more corners than any has",
    cause: "One outline has more than 10,000 corners: a traced picture, or a curve cut into crumbs.",
    remedy: "Draw the wall's outline anew, with lines from corner to corner and arcs for curves.",
    example: "a round gable of 20,000 line segments",
};
const WALL_TOO_BIG: Explanation = Explanation {
    title: "A wall is larger than any house has",
    cause: "An outline is wider than 1,000 ft or higher than 200 ft in the unit in force.",
    remedy: "Check the unit or the known distance: the drawing may be at another scale than the job says.",
    example: "[drawing]\nunit = \"foot\"\n# and a wall drawn 1200 wide, in inches",
};
const WALL_TOO_FULL: Explanation = Explanation {
    title: "A wall has more openings or fixtures than any has",
    cause: "More than 1,000 openings, or fixtures, lie in one outline. Something else is drawn on their layer, or a whole building in one outline.",
    remedy: "Draw the wall as several outlines, or take off the layer what is neither opening nor fixture.",
    example: "vents drawn as 3,000 small loops on A-GLAZ",
};
const OUTLINE_TOO_FINE: Explanation = Explanation {
    title: "An outline with more corners than any has",
    cause: "A roof, deck, band, bare area, opening or fixture has more than 2,000 corners, arcs cut into chords. Each corner is asked for at every course, so such a drawing is refused.",
    remedy: "Simplify the outline in the drawing program, or redraw it with arcs.",
    example: "a traced or scanned window of 240,000 vertices",
};
const OUTLINES_TOO_MANY: Explanation = Explanation {
    title: "More outlines of one sort than any elevation has",
    cause: "One elevation has more than 5,000 roofs and decks, or more than 500 bands or bare areas: a pattern of shingles or stones, as a rule, that stands on a layer of outlines.",
    remedy: "Move the pattern to another layer, or draw one outline round it.",
    example: "20,000 shingles, each a closed outline on A-ROOF-OTLN",
};
const GRADE_TOO_FINE: Explanation = Explanation {
    title: "Lines of grade with more points than any has",
    cause: "The lines on the grade layer of one elevation have more than 2,000 points together, as where a survey's section was pasted. Each is asked for at every course, panel and corner, so such a drawing is refused.",
    remedy: "Simplify the line in the drawing program: a point where its slope changes is enough.",
    example: "a grade line of 240,000 vertices, 1/1000 in apart",
};
const WALLS_FROM_HATCH: Explanation = Explanation {
    title: "Walls were taken from siding hatches",
    cause: "No closed outline is drawn round these walls, but a hatch with level lines shows where siding is: its edge is taken as the wall's. The distance of its lines is a texture and not laid out from.",
    remedy: "Check each wall on the sheet. A closed outline on A-WALL-OTLN takes precedence over the hatch.",
    example: "a HATCH of level lines 8 in apart on A-WALL-PATT, with holes at the windows",
};
const OPENINGS_OFF_SIDING: Explanation = Explanation {
    title: "Openings outside the siding",
    cause: "Some windows or doors stand in a drawn roof or in stone, as skylights do, or, where the walls of an elevation were taken from drawn siding, where none is drawn. They are left out.",
    remedy: "If one of them stands in siding, draw its wall as a closed outline on A-WALL-OTLN. Else nothing is to be done.",
    example: "three skylights over an eave",
};
const OPENING_TOO_LARGE: Explanation = Explanation {
    title: "An opening larger than openings are",
    cause: "Something on a layer of windows or doors lies over drawn siding in which it has no hole, and is over 12 ft high or covers more than half of its wall, as a door more than 85 percent. A border, a schedule or the frame of a detail is drawn so. To cut it out would leave most of the wall without siding, so nothing is laid out.",
    remedy: "Move it to another layer if it is no opening. If it is one, put \"opening-too-large\" into `accept` under [drawing], which makes the finding a warning, or give it as [[opening]].",
    example: "a rectangle of 14 x 8 ft on A-GLAZ over a wall of 20 x 9 ft",
};
const FACADE_SHARE: Explanation = Explanation {
    title: "Siding covers little of an elevation",
    cause: "The walls of an elevation were taken from drawn siding, and they cover less than a quarter of the box round what is drawn there. Some walls may be drawn another way, so that they were not seen, or the view is a plan or a detail.",
    remedy: "Compare the walls on the sheet with the drawing. Where some are missing, name the layer of their siding as `siding_layer` under [[elevation]], or give them as [[wall]]. A view that is no elevation is left out by `skip = true` under its [[elevation]].",
    example: "a patch of 20 sq ft on a facade of 600",
};
const WALL_DOUBTED: Explanation = Explanation {
    title: "What is drawn as siding may be no wall",
    cause: "A wall was taken from drawn siding, and something speaks against it: its course lines stand at another distance than those of the siding under it, as a roof's do; or a part of it juts out past its end, as the end of a porch roof does; or less than ten square feet of it show. It is laid out all the same.",
    remedy: "Look at the wall on the sheet. What is no wall is left out by its name in `skip`. Where a roof is hatched as siding is, draw the roof's outline on A-ROOF-OTLN, or the wall's on A-WALL-OTLN.",
    example: "lines 5 7/8 in apart over a wall whose courses are 4 1/2 in",
};
const PLANE_ASSUMED: Explanation = Explanation {
    title: "Parts of siding were taken for one wall",
    cause: "An elevation does not show depth. Parts of drawn siding with one foot and one head were taken for one plane wall, though a line or a board runs up between them, or a roof or a deck runs across. A hole in the siding with no window or door drawn in it was taken for an opening.",
    remedy: "If a corner of the house stands at such a line or board, draw each wall as a closed outline on A-WALL-OTLN, or put a corner tag there on A-WALL-IDEN. If a part over a roof stands farther back, draw it as its own wall.",
    example: "siding at both sides of a plumb board, hatched to one level",
};
const SIDING_DETAIL: Explanation = Explanation {
    title: "Details of drawn siding were evened out",
    cause: "Notches and gaps under 4 in both ways and hairlines were filled. Strips of drawn siding under 2 in wide take no panel between two channels and were left out.",
    remedy: "Nothing to do where the drawing is that rough. If a strip is sided, draw its wall as a closed outline on A-WALL-OTLN.",
    example: "a strip 1 1/2 in wide between two window casings",
};
const WALLS_FROM_LINES: Explanation = Explanation {
    title: "Walls were taken from loose lines",
    cause: "No closed outline and no hatch is drawn for these walls. Their wall layer holds loose lines, and the faces between these were sorted into walls, openings and the rest by their shape.",
    remedy: "Check each wall and opening on the sheet against the drawing. A closed outline on A-WALL-OTLN takes precedence.",
    example: "an elevation exploded to single lines on one layer",
};
const WALL_FOOT: Explanation = Explanation {
    title: "A wall is taken to start at the level line",
    cause: "A level line on another layer runs from side to side of a wall made from loose lines, no more than 18 in over its lowest line. What lies below is taken for the foundation, and siding starts at that line.",
    remedy: "If the siding starts lower, draw the wall as a closed outline on A-WALL-OTLN.",
    example: "lines of a front that go down to the footing, and a floor line on A-FLOR-LEVL",
};
const FACES_LEFT: Explanation = Explanation {
    title: "Faces of loose lines that are neither wall nor opening",
    cause: "Between the loose lines of an elevation there are faces that by size and place are neither a wall nor an opening: trim, steps, roofs. They are left out.",
    remedy: "If one of them is a wall, draw it as a closed outline on A-WALL-OTLN.",
    example: "a strip of 4 in between two lines of a frieze",
};
const SIDE_LEANS: Explanation = Explanation {
    title: "A side leans a little",
    cause: "A side of a wall is out of level or vertical by a hair, 1/16 in at most over its length: drawn without the orthogonal lock. It is laid out as drawn; a side that leans more is a rake.",
    remedy: "Draw it level or vertical, unless the wall is really built so.",
    example: "a bottom edge 240 in long that rises 1/16 in",
};
const DRAWN_UNUSED: Explanation = Explanation {
    title: "Drawn and not used",
    cause: "Something is drawn on a layer with a role and did not become a wall, an opening, a fixture or another part of the layout. Things are counted: a block, a closed loop, lines that belong together are one each; panes, casings and glass within an opening are parts of it. The sum is told by layer with the reasons: a hidden layer, a block that stands in another file, a type that is not read, lines that do not close, a place off every wall. It is a note where the drawing or the job itself leaves the things out: a plan, a region of the job, stone round a window.",
    remedy: "Look at the places given: `lapwright check DRAWING --out DIR` circles them. Draw what belongs to the house as a block or a closed outline on a shown layer, bind references, and move the rest to a layer without a role.",
    example: "A-GLAZ: 14 drawn, 12 cut, 2 not (hidden layer, open loop of 4 lines 0.5 in apart)",
};
const LAYER_SPEAKS: Explanation = Explanation {
    title: "A layer's name speaks of openings",
    cause: "A layer that neither the agreed names nor the job give a role has a word for windows or doors in its name, and closed outlines, blocks or lines that belong together stand on it, on a wall, where no opening is cut. They are left out: siding is laid over them.",
    remedy: "Name the layer under [layers] in the job file: as `window` or `door` with the other layers of openings, or as `ignore` if it shows no openings. `lapwright layers DRAWING --suggest` writes the lines.",
    example: "[layers]\nwindow = [\"A-GLAZ\", \"Windows\"]",
};
const OPENING_OUTSIDE: Explanation = Explanation {
    title: "An opening outside every wall",
    cause: "A window or door lies in a view, but in no wall outline. Either its wall is missing or one of them is misplaced, so nothing is laid out.",
    remedy: "Move it into its wall, or close the wall's outline round it. To leave such openings out, as in a wall without siding, put \"opening-outside\" into `accept` under [drawing]: the finding is then a warning.",
    example: "a window on A-GLAZ above the top of its wall",
};
const OPENING_STRADDLES: Explanation = Explanation {
    title: "An opening reaches out of its wall",
    cause: "An opening lies partly outside its wall's outline, at a side or at the top, by more than an inch. The part outside is left out.",
    remedy: "Move the opening or the outline to where it is. A dormer window may need its wall drawn on.",
    example: "a window whose head is 6 in over the top of its wall",
};
const OPENING_SIZE: Explanation = Explanation {
    title: "A stated size and the drawn opening disagree",
    cause: "A tag in an opening, or the name or an attribute of its block, states a size: width by height as 36x80 or 900x2100, or in feet and inches as 3068. The opening is drawn smaller than that, larger than any casing makes it, or by another measure than the others of its view. The drawn size is cut. Four figures are taken for sizes only where most of them fit: else they number the openings.",
    remedy: "Ask the architect which is right, and correct the tag or the outline.",
    example: "a window 30 in wide with the tag 3040, among others of 36 in",
};
const FIXTURE_OUTSIDE: Explanation = Explanation {
    title: "A fixture on no wall",
    cause: "A fixture or mounting block lies in a view, but on no wall that is sided. It is left out.",
    remedy: "Move it onto its wall, or off the fixture layer.",
    example: "a light on A-ELEV-MBLK on the chimney",
};
const JOINT_IN_OPENING: Explanation = Explanation {
    title: "A joint of the building runs through an opening",
    cause: "A movement joint that the drawing or the job gives crosses a window or a door. The opening is taken as two, one on each side.",
    remedy: "Move the joint, or the opening, to where it is.",
    example: "a joint at 120 in, and a window from 100 to 140",
};
const SIDING_STOPS_SHORT: Explanation = Explanation {
    title: "Siding stops short",
    cause: "A wall's outline ends from 1 to 24 inches under a roof line that runs along its top or rake, or up to 12 inches short of the next wall, and nothing is drawn in the strip. As drawn the strip gets no siding: it is marked on the sheet and counted as wall without siding, in no gross or net area.",
    remedy: "If it is sided, draw the outline to where siding ends. If a frieze, a soffit box or a pier covers it, draw that, as a band or as a bare area; or leave it so.",
    example: "an outline 8'-0\" high under a roof line at 8'-6\"",
};
