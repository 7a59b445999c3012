//! The ways in which rules of fields, areas and courses are broken.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::geom::vocabulary::Xy;
use crate::model::house::EdgeKind;
use crate::model::receiver::Receiver;

/// What is wrong with a field, its sides, a wall's areas or a zone.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "case", rename_all = "kebab-case")]
#[non_exhaustive]
pub enum FieldBreach {
    /// A course is not covered as far as the field reaches.
    Uncovered,
    /// Siding is laid outside the field or in its clearances.
    Beyond,
    /// Siding is laid twice other than at a lap.
    LaidTwice,
    /// Part of the field lies outside its wall.
    OutsideWall,
    /// Part of the field lies in openings.
    InOpenings,
    /// Net area and field differ by more than steps, roofs and boards take.
    AreaMissing,
    /// A wall bears no piece.
    NoSiding {
        /// Of its net area, what lies too near to grade or under it, square feet.
        grade: f64,
    },
    /// More than a quarter of a wall is bare.
    TooBare {
        /// Of its net area, what lies too near to grade or under it, square feet.
        grade: f64,
        /// What clearances take, those over roofs too, square feet.
        clearance: f64,
    },
    /// Pieces and named bare areas do not make up the wall.
    Unaccounted,
    /// Wall outside the field is not told as bare.
    BareUntold,
    /// Wall is told as bare that is sided, or no wall.
    BareSided,
    /// Wall is told as too near to grade that is not.
    BareMisnamed,
    /// More is told as over roofs than their clearance takes.
    BareOverRoofs,
    /// Wall behind roofs is not told by its area.
    BareBehindRoofs,
    /// The area of bare wall is not that of its outline.
    BareArea,
    /// Siding is laid between two sides too near for it.
    TooNarrow,
    /// A filler board stands where siding has room.
    FillerNeedless,
    /// A filler board stands in an opening.
    FillerInOpening,
    /// A filler has no board of its size.
    FillerBoard,
    /// What filler boards cover is not told by its area.
    FillerArea,
    /// A mounting block is moved farther than it may be.
    BlockMoved,
    /// A mounting block cuts a course that moving it would keep whole.
    BlockBites,
    /// Gross area is more than the outline holds.
    GrossArea,
    /// Net area is not gross area less openings and bare wall.
    NetArea,
    /// Net area and bare wall are not the outline less what hides it and less openings.
    NetOfOutline,
    /// A side of the field has no name.
    SideUnnamed {
        /// From.
        from: Xy,
        /// To.
        to: Xy,
    },
    /// A named side is no side of the field.
    SideElsewhere {
        /// What it is named.
        side: EdgeKind,
        /// From.
        from: Xy,
        /// To.
        to: Xy,
    },
    /// A side does not run as one of its name does.
    SideDirection {
        /// What it is named.
        side: EdgeKind,
    },
    /// A side does not border the opening it is said to border, or none.
    SideBorder {
        /// What it is named.
        side: EdgeKind,
    },
    /// A side has other trim than it needs.
    SideReceiver {
        /// What it is named.
        side: EdgeKind,
        /// What it has.
        receiver: Receiver,
        /// What it needs.
        needed: Receiver,
    },
    /// A sloped side is given another pitch than its own.
    SidePitch {
        /// What it is named.
        side: EdgeKind,
    },
    /// A zone's gross area is not what its outline holds.
    ZoneGross,
    /// A zone's net area is less than nothing or more than its gross area.
    ZoneNet,
    /// Siding is laid on a zone of other cladding.
    ZoneLaid,
}

/// What is wrong with a course's height.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "case", rename_all = "kebab-case")]
#[non_exhaustive]
pub enum CourseBreach {
    /// A course is higher or lower than the product allows.
    Exposure {
        /// The course of the story pole; none for the exposure of the whole house.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        course: Option<i32>,
    },
    /// Courses of a wall do not go up one by one.
    Order,
    /// A butt line is off its level.
    ButtLine,
    /// A course's top is off the next butt line.
    TopLine,
    /// Siding stands nearer to grade than allowed.
    NearGrade,
    /// A start could be a course lower.
    StartTooHigh,
}
