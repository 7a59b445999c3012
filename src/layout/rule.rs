//! Every rule of the independent check, by name.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

macro_rules! rules {
    ($($(#[$doc:meta])* $name:ident,)*) => {
        /// A rule of the independent check.
        #[derive(
            Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
        )]
        #[serde(rename_all = "kebab-case")]
        #[non_exhaustive]
        pub enum Rule {
            $($(#[$doc])* $name,)*
        }

        impl Rule {
            /// Every rule, in the order of the check.
            pub const ALL: &'static [Rule] = &[$(Rule::$name,)*];
        }
    };
}

rules! {
    /// Pieces cover the whole field.
    FieldCovered,
    /// Pieces stay in the field and out of its clearances.
    PiecesInField,
    /// Pieces overlap only at laps.
    PiecesOverlap,
    /// The field is the wall less openings, steps and roofs.
    FieldExtent,
    /// A course is at one level on every wall.
    CourseLevels,
    /// Net area is gross area less openings and less wall without siding.
    WallAreas,
    /// Pieces and named bare areas make up each wall, and no wall is bare by more than a quarter.
    WallCovered,
    /// Wall that gets no siding is told by its reason, and no part of net area.
    BareWall,
    /// No siding goes where too little of it would show; filler boards do.
    NarrowPlaces,
    /// No strip is lower than the datum in force is said to leave.
    LeastStrips,
    /// No crumbs: peaks, lengths of trim and bites of blocks too small to cut.
    Crumbs,
    /// Starts keep clear of grade in whole courses.
    GradeClearance,
    /// Named sides go right round the field.
    SidesAllRound,
    /// Each side is named for what it borders and has its trim.
    SideNames,
    /// Each run ends in the trim drawn there.
    RunEnds,
    /// Pieces and laps fill each run less its gaps.
    RunFilled,
    /// A seam joins two factory ends.
    SeamFactoryEnds,
    /// A factory end of a board is one as the board left the mill.
    BoardFactoryEnds,
    /// Seams stand at the middle of their laps.
    SeamPlaces,
    /// Seams of near courses keep the stagger.
    SeamStagger,
    /// Joints of boards in near courses stand on different studs.
    JointStagger,
    /// No piece of a seamed run is shorter than the shortest.
    ShortestPiece,
    /// Seams keep off mounting blocks and stand past bare fixtures.
    SeamsAtFixtures,
    /// Seams at openings, in stairs and in ladders are told as they are.
    SeamCounts,
    /// Joints of boards stand on studs.
    JointsOnStuds,
    /// What is cut from a panel fits it, with a saw cut between.
    PanelContents,
    /// Every piece has one mark and one panel.
    PieceMarks,
    /// Counts agree with pieces.
    PieceCounts,
    /// Both halves of a ripped panel fit it.
    PanelHalves,
    /// No more offcuts wait at the end of a wall than may, and they are told as they are.
    OffcutsWaiting,
    /// Every piece stands once in the saw list of its wall.
    SawLists,
    /// Ends, angles and rips agree with what shows on the wall.
    PieceShapes,
    /// Notches stand where openings bite into a course.
    NotchPlaces,
    /// No nail hem stands where an opening, soffit or band is.
    HemsClear,
    /// Cut edges are held: lugs in undersill trim and nowhere else, else it is told how.
    CutEdgesHeld,
    /// What is held of an earlier layout is where that has it.
    KeptPieces,
    /// What is cut from what lies on the site is there, and what is built is told as it is.
    StockAtHand,
    /// Cuts as listed make each piece out of its strip.
    PieceCuts,
    /// Channels close round every opening.
    OpeningChannels,
    /// Water runs over each channel into the next.
    OpeningDrainage,
    /// Undersill trim goes along every sill and nowhere else.
    UndersillPlaces,
    /// Every side has its trim.
    SideTrim,
    /// Siding ends at covers, friezes and surrounds, which have their boards.
    FaceBoards,
    /// Bands have their board and their cap.
    BandBoards,
    /// No siding bridges a movement joint.
    MovementJoints,
    /// Flashing round openings has the published sizes.
    OpeningFlashing,
    /// Rake channels are cut to the pitch.
    RakeChannelCuts,
    /// Every corner has its post, as high as the corner.
    CornerPosts,
    /// Siding and trim end the set-back of what stands in a corner off it.
    CornerSetBacks,
    /// Every corner side is part of one corner.
    CornerSides,
    /// Courses meet at every paired corner.
    CornerCourses,
    /// Trim is as long as its place.
    TrimLengths,
    /// Trim fits its stock.
    TrimStock,
    /// The panel bound follows from the runs.
    PanelBound,
    /// Zones of other cladding are measured and bear no panel.
    CladdingZones,
}
