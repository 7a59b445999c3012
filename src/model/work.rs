//! The order of work on a wall, as facts: what goes on, in which order, with marks and heights.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use super::access::{AccessSide, InstallMethod, RestrictedAccess};
use super::hold::HeldPieces;
use super::ids::{ElevationName, OpeningId, PieceMark, RunId, TrimMark, WallId};
use super::saw::{OffcutPlan, SawList};
use super::trim::{SillTrim, TrimKind};

/// The order of work of a house.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct WorkOrder {
    /// What holds on every wall.
    pub everywhere: Vec<WorkRule>,
    /// Wall by wall, in the order they are sided.
    pub walls: Vec<WallWork>,
    /// Offcuts that wait at the ends of walls.
    #[serde(default)]
    pub offcuts: OffcutPlan,
}

/// A rule that holds on every wall; lengths are inches.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "rule", rename_all = "kebab-case")]
pub enum WorkRule {
    /// Barrier and flashing come first, lapped so that water runs over each joint.
    BarrierAndFlashing,
    /// Corner posts hang from a nail at the top of their top slots.
    HangPosts {
        /// Room between a post's top and the soffit.
        top_gap: f64,
        /// Room under a nail's head.
        under_head: f64,
    },
    /// Room between lengths of starter and to posts.
    SpaceStarters {
        /// That room.
        gap: f64,
    },
    /// In which order the channels of an opening go on.
    FrameOpenings,
    /// Panels go on from the bottom up, free in every receiver.
    PanelsFromBottom {
        /// Room left at each end.
        gap: f64,
    },
    /// Laps face away from the viewer.
    LapsFaceAway {
        /// Whether foam is bonded to the panels.
        foam: bool,
    },
    /// How the cut edges of panels are held.
    HoldCutEdges {
        /// Spacing of snap-lock lugs.
        lug_spacing: f64,
        /// Spacing of nail slots.
        slot_spacing: f64,
    },
    /// How the cut edges of panels that take no lugs are held.
    NailCutEdges {
        /// Spacing of nails through them, and of nail slots.
        spacing: f64,
    },
    /// Boards: corner boards, boards round openings and the starter piece come before the siding.
    BoardTrimFirst,
    /// Boards go on from the bottom up, nailed to every stud.
    BoardsFromBottom {
        /// Room left at trim.
        gap: f64,
    },
}

/// How one wall is built, from the barrier to the last piece.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct WallWork {
    /// Elevation.
    pub elevation: ElevationName,
    /// Wall.
    pub wall: WallId,
    /// Where along the elevation the wall is mostly seen from, inches: laps show their edge away from
    /// there.
    pub seen_from: f64,
    /// What stands there.
    pub viewpoint: Viewpoint,
    /// Each run with a seam: its pieces in the order they go on, each lapping over its neighbor that
    /// is on already.
    pub runs: Vec<RunOrder>,
    /// Numbers of courses, from 1, on whose top edge level is checked.
    pub level_checks: Vec<i32>,
    /// Places where panels cannot be slid in sideways.
    pub restricted: Vec<RestrictedAccess>,
    /// The whole of it, in order.
    pub steps: Vec<WorkStep>,
    /// What is cut for it.
    #[serde(default)]
    pub saw: SawList,
}

/// From where a wall is mostly seen.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "place", rename_all = "kebab-case")]
pub enum Viewpoint {
    /// A door.
    Door {
        /// Which.
        opening: OpeningId,
    },
    /// The elevation's left end.
    #[default]
    LeftEnd,
    /// Its middle.
    Middle,
    /// Its right end.
    RightEnd,
}

/// One step of a wall's work.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "step", rename_all = "kebab-case")]
pub enum WorkStep {
    /// The water-resistive barrier, and what is flashed.
    Barrier {
        /// Places to flash.
        flashing: Vec<FlashedPlace>,
    },
    /// Corner posts, or corner boards.
    Corners {
        /// Whether boards stand for posts.
        boards: bool,
        /// Those counted on this wall.
        marks: Vec<TrimMark>,
        /// Those of the same corners that other elevations count.
        counted_elsewhere: Vec<SharedTrim>,
    },
    /// Starter on level wall bottoms, and what holds a first course that is cut.
    Start {
        /// Starter pieces; none where every first course is cut.
        marks: Vec<TrimMark>,
        /// Butt lines they are set to, over the floor reference line, inches.
        heights: Vec<f64>,
        /// Line for the starter's top edge, over the butt line, inches; none under boards.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        snapped: Option<f64>,
        /// Where the bottom is on no course line: what holds the cut edge.
        cut: Option<CutStart>,
    },
    /// Channels round openings.
    Frames {
        /// Opening by opening.
        openings: Vec<FrameTrim>,
    },
    /// Channels at wall ends, in corners, over roofs and along rakes.
    Channels {
        /// Their marks.
        marks: Vec<TrimMark>,
    },
    /// Trim that siding runs up to.
    BeforeSiding {
        /// Kind by kind.
        trim: Vec<TrimOfKind>,
    },
    /// How panels get into a place with restricted access.
    RestrictedAccess {
        /// Its number in [`WallWork::restricted`], from 0.
        place: usize,
    },
    /// The siding itself.
    Siding {
        /// Whether it comes as boards.
        boards: bool,
        /// First course, from 1.
        from_course: i32,
        /// Last course.
        to_course: i32,
    },
    /// At which end seamed runs begin, so that laps face away from the viewpoint.
    LapDirection {
        /// Courses by where they begin.
        begins: Vec<CoursesBegin>,
    },
    /// Level and height are checked at [`WallWork::level_checks`].
    CheckLevel,
    /// Undersill trim before the course that meets the sill.
    TrimUnderSills {
        /// Piece by piece.
        trim: Vec<SillTrim>,
    },
    /// Undersill trim before the top course.
    TrimAtTop {
        /// Its marks.
        marks: Vec<TrimMark>,
    },
    /// Panels of a gable are cut from one pattern.
    GablePattern,
    /// Pieces that keep no hem, or no lock, and how they are held.
    HoldPieces {
        /// By how they are held.
        pieces: Vec<HeldPieces>,
    },
    /// Trim that closes the top.
    AfterSiding {
        /// Kind by kind.
        trim: Vec<TrimOfKind>,
    },
}

/// What is flashed before siding.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "place", rename_all = "kebab-case")]
pub enum FlashedPlace {
    /// Round openings.
    Openings {
        /// Which.
        openings: Vec<OpeningId>,
    },
    /// Round corners.
    Corners,
    /// Along a roof that slopes along the wall.
    SlopedRoof,
    /// Where such a roof ends and the wall goes on.
    KickOut,
    /// Over a level roof or deck that meets the wall.
    LevelRoof,
    /// Over the ledge that siding stands on.
    Ledge,
}

/// A piece of trim that another elevation counts.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct SharedTrim {
    /// Its mark.
    pub mark: TrimMark,
    /// The elevation it is marked on.
    pub elevation: ElevationName,
}

/// What holds the edge of a first course that is cut.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct CutStart {
    /// Undersill trim by its marks.
    pub held_in: Vec<TrimMark>,
}

/// The trim of an opening.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct FrameTrim {
    /// The opening.
    pub opening: OpeningId,
    /// Marks of its trim.
    pub marks: Vec<TrimMark>,
}

/// Trim of one kind.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct TrimOfKind {
    /// The kind.
    pub kind: TrimKind,
    /// Marks.
    pub marks: Vec<TrimMark>,
}

/// Courses whose seamed runs begin at one end.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct CoursesBegin {
    /// The end.
    pub begins: Begins,
    /// Numbers of the courses, from 1.
    pub courses: Vec<i32>,
}

/// In which order the pieces of a run go on.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct RunOrder {
    /// Number of the course, from 1.
    pub course: i32,
    /// Name of the run.
    pub run: RunId,
    /// Where it begins.
    pub begins: Begins,
    /// Marks in order.
    pub order: Vec<PieceMark>,
}

/// Where a course begins: at the end farthest from where it is seen.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum Begins {
    /// At its left end, going right.
    #[default]
    Left,
    /// At its right end, going left.
    Right,
    /// At both ends, the last piece between.
    Both,
}
