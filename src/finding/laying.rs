//! What is laid out: findings of `course`, `takeoff` and the pipeline.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::group::group;
use crate::model::conflict::{BrokenSeamRule, SeamRemedy};
use crate::model::fastening::PieceMovement;
use crate::model::filler::PlacedFiller;
use crate::model::ids::{CornerId, ObstacleId, OpeningId, PieceMark, WallId};
use crate::model::item::SidingPiece;
use crate::model::receiver::BareBy;

/// A notch that leaves little of its piece.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct ThinNotch {
    /// The piece.
    pub piece: PieceMark,
    /// What is left, inches.
    pub left: f64,
    /// Where it is left.
    pub place: NotchPlace,
    /// The board that would close the place, up or down to the course line.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub board: Option<ClosingBoard>,
}

/// A board that would close a strip over or under an opening.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct ClosingBoard {
    /// The opening.
    pub opening: OpeningId,
    /// Its height, from the opening to the course line, inches.
    pub high: f64,
    /// Its length, as the opening's side there, inches.
    pub long: f64,
}

/// A mounting block that is moved.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct MovedBlock {
    /// The block.
    pub block: ObstacleId,
    /// How far up, inches; negative down.
    pub by: f64,
}

/// Where a notch leaves little.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum NotchPlace {
    /// Between it and the left end.
    LeftEnd,
    /// Between it and the right end.
    RightEnd,
    /// Under it.
    Under,
    /// Over it.
    Over,
}

group! {
    /// What someone should look at before siding is cut, hung or ordered.
    LayingFinding, LayingCode {
        /// A thin strip of a panel is left.
        StripThin "strip-thin", Warning, Office {
            /// The wall.
            wall: WallId,
            /// The course, from 1 at the datum.
            course: i32,
            /// Height of the strip, inches.
            height: f64,
            /// Height of the board that takes its place, clearances and all, inches.
            board: f64,
            /// Its left end, inches from the elevation's left.
            left: f64,
            /// Its right end.
            right: f64,
        }
        /// A part of a wall gets no siding.
        WallBare "wall-bare", Warning, Architect {
            /// The wall.
            wall: WallId,
            /// Why it gets none.
            by: BareBy,
            /// Its area, square feet.
            area: f64,
            /// How much of that lies over finished grade, square feet.
            above_grade: f64,
        }
        /// A corner post runs down past stone on one of its walls.
        PostPastStone "post-past-stone", Warning, Architect {
            /// The corner.
            corner: CornerId,
            /// The wall with the stone.
            wall: WallId,
            /// How far, inches.
            by: f64,
        }
        /// Places too narrow for siding get filler boards.
        FillerBoard "filler-board", Warning, Office {
            /// The wall.
            wall: WallId,
            /// The boards.
            fillers: Vec<PlacedFiller>,
            /// The least width of siding that shall show, inches.
            least: f64,
            /// Whether the siding comes in panels or boards.
            piece: SidingPiece,
        }
        /// Siding is cut at its foot along many short slants, as by something drawn in front of the wall.
        RaggedFoot "ragged-foot", Warning, Architect {
            /// The wall.
            wall: WallId,
            /// Slanted edges.
            edges: usize,
            /// Width and height of what they cut out, inches.
            size: [f64; 2],
        }
        /// Openings stand edge to edge.
        OpeningsJoined "openings-joined", Warning, Architect {
            /// The wall.
            wall: WallId,
            /// Each two of them, left and right or lower and upper.
            pairs: Vec<[OpeningId; 2]>,
        }
        /// Mounting blocks are moved a little.
        BlockMoved "block-moved", Info, Crew {
            /// The wall.
            wall: WallId,
            /// The blocks.
            blocks: Vec<MovedBlock>,
        }
        /// A peak is too low for a piece.
        PeakLeft "peak-left", Info, Crew {
            /// The wall.
            wall: WallId,
            /// Its height over the last course line, inches.
            height: f64,
        }
        /// Pieces are shorter than studs are apart.
        PanelShort "panel-short", Warning, Crew {
            /// The wall.
            wall: WallId,
            /// The pieces.
            pieces: Vec<PieceMark>,
            /// Spacing of studs, inches.
            stud_spacing: f64,
            /// Whether they are panels or boards.
            piece: SidingPiece,
        }
        /// Notches leave little of their pieces.
        NotchThin "notch-thin", Warning, Crew {
            /// The wall.
            wall: WallId,
            /// The pieces.
            notches: Vec<ThinNotch>,
            /// The least that should be left, inches.
            least: f64,
            /// Whether they are panels or boards.
            piece: SidingPiece,
        }
        /// A piece grows more than it has room for.
        MovementGap "movement-gap", Warning, Crew {
            /// The longest piece of its kind, and its room.
            row: PieceMovement,
            /// Temperature when it is put up, F.
            installed: f64,
            /// Highest temperature, F.
            highest: f64,
        }
        /// Courses cannot keep every rule of seams.
        SeamRulesConflict "seam-rules-conflict", Warning, Office {
            /// The courses, from 1 at the datum.
            courses: Vec<i32>,
            /// The rule.
            rule: BrokenSeamRule,
            /// Settings that would do.
            remedies: Vec<SeamRemedy>,
        }
        /// Seams stand on jamb lines.
        SeamOnJamb "seam-on-jamb", Warning, Crew {
            /// The wall.
            wall: WallId,
            /// Courses with such a seam, from 1 at the datum.
            courses: Vec<i32>,
            /// The distance within which a seam is on the line, inches.
            within: f64,
            /// Whether the siding comes in panels or boards.
            piece: SidingPiece,
        }
        /// The layout breaks rules of the independent check.
        CheckFailed "check-failed", Error, Office {
            /// How many places break a rule.
            places: usize,
        }
        /// Panels are so long that their manufacturer states a larger gap.
        LongPanelGap "long-panel-gap", Warning, Office {
            /// Length of the panels, inches.
            length: f64,
            /// The gap taken, inches.
            gap: f64,
        }
        /// All siding should come from one production lot.
        OneLot "one-lot", Info, Office {
            /// The color, where the job names one.
            #[serde(skip_serializing_if = "Option::is_none")]
            color: Option<String>,
            /// Whether it comes in panels or boards.
            piece: SidingPiece,
        }
        /// The careful-crew method takes more than is bought.
        CrewTakesMore "crew-takes-more", Warning, Office {
            /// What it takes.
            crew: usize,
            /// What is bought, spare included.
            bought: usize,
            /// Where lengths are mixed, both are counted by their length as panels of this one.
            #[serde(skip_serializing_if = "Option::is_none")]
            length: Option<f64>,
            /// Whether it comes in panels or boards.
            piece: SidingPiece,
        }
        /// A zone covers no wall.
        ZoneEmpty "zone-empty", Warning, Office {
            /// The zone.
            zone: String,
            /// Its place in the job, from 0.
            number: usize,
        }
    }
}
