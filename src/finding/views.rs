//! Which part of the drawing is which elevation: findings of `extract`.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::group::group;
use crate::model::ids::ElevationName;
use crate::model::turn::Turn;

/// What a view shows that is no elevation.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum OtherView {
    /// A plan.
    Plan,
    /// A section.
    Section,
    /// A detail.
    Detail,
    /// A part of a view that is drawn whole too.
    Partial,
    /// An elevation of a room.
    Interior,
}

/// A list of the job that names elevations.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum JobList {
    /// `[[band]]`.
    Band,
    /// `[[movement_joint]]`.
    Joint,
    /// `[[zone.region]]`.
    ZoneRegion,
    /// `[[elevation]]` with a turn, or to be skipped.
    Elevation,
}

/// What tells how a view is drawn.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum Tells {
    /// How its title reads.
    Title,
    /// How its other text reads.
    Text,
    /// Which way its gables point.
    Gables,
    /// At which side of their walls doors stand.
    Doors,
    /// At which side of the walls grade lies.
    Grade,
    /// At which side of the walls the level line lies.
    LevelLine,
    /// At which side of the walls roofs lie.
    Roofs,
    /// Heads of windows that are at one height, and sills that are not.
    Heads,
    /// At which side of the walls the title stands.
    TitlePlace,
}

/// What tells the scale of one view.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum ViewScaleBy {
    /// A distance that the job gives in it.
    Known,
    /// Dimensions in it beside the lines that they measure.
    Dimensions,
    /// The scale written in it, beside the one written in a view whose scale is known.
    Written,
}

group! {
    /// What was taken for an elevation, and what was not.
    ViewFinding, ViewCode {
        /// A view is no elevation by its title.
        ViewLeftAlone "view-left-alone", Info, Office {
            /// The title.
            title: String,
            /// What it shows.
            shows: OtherView,
        }
        /// A section shows siding.
        ViewSection "view-section", Warning, Office {
            /// The title.
            title: String,
        }
        /// A view is drawn turned, mirrored or upside down.
        ViewTurned "view-turned", Error or Warning if accepted, Architect {
            /// The view.
            view: String,
            /// The turn that would set it upright.
            turn: Turn,
            /// What tells so.
            tells: Vec<Tells>,
            /// Whether the job says how the view is to be taken.
            accepted: bool,
        }
        /// Heads and sills of a view's windows, and nothing else, say that it is drawn upside down.
        ViewDoubted "view-doubted", Warning, Architect {
            /// The view.
            view: String,
        }
        /// A view was turned as the job says.
        ViewSetUpright "view-set-upright", Info, Office {
            /// The view.
            view: String,
            /// The turn.
            turn: Turn,
        }
        /// A view is drawn at another scale than the one taken for the drawing, and is laid out at its own.
        ViewScaled "view-scaled", Warning, Office {
            /// The view.
            view: String,
            /// Inches of the house in a unit of the drawing there.
            inches: f64,
            /// Whether units are points of paper.
            paper: bool,
            /// What tells so.
            by: ViewScaleBy,
        }
        /// A page has several scales, and of a view it is not known which is its own.
        ViewScaleUnknown "view-scale-unknown", Error, Office {
            /// The view.
            view: String,
        }
        /// A view is left out as the job says.
        ViewSkipped "view-skipped", Info, Office {
            /// The view.
            view: String,
        }
        /// The job builds one variant of the elevations.
        VariantTaken "model-variant", Info, Office {
            /// The variant.
            variant: String,
            /// Elevations that are built.
            built: Vec<ElevationName>,
            /// Elevations of other variants.
            left_out: Vec<ElevationName>,
        }
        /// The job names a variant that no elevation is titled with.
        VariantUnknown "variant-unknown", Error, Office {
            /// The variant.
            variant: String,
            /// Those that titles have.
            variants: Vec<String>,
        }
        /// The house is built the other way round from the drawing, as the job says.
        ModelMirrored "model-mirrored", Info, Office {}
        /// Views have neither frame nor title.
        ViewUntitled "view-untitled", Info, Architect {
            /// How many.
            untitled: usize,
            /// Of how many.
            views: usize,
        }
        /// Walls or openings lie outside every view.
        OutsideViews "outside-views", Warning, Architect {
            /// Lines left out.
            lines: usize,
        }
        /// Elevations have no level line.
        LevelAssumed "level-assumed", Warning or Info if shared_base, Architect {
            /// The elevations.
            elevations: Vec<ElevationName>,
            /// Whether all stand on one line in the drawing, so that heights can be compared.
            shared_base: bool,
        }
        /// An elevation has more walls than any house.
        WallsTooMany "walls-too-many", Error, Office {
            /// Walls.
            walls: usize,
            /// The most laid out.
            most: usize,
        }
        /// The job names an elevation that there is not.
        PartUnknown "part-unknown", Error, Office {
            /// Where.
            list: JobList,
            /// The name.
            named: String,
            /// The elevations there are.
            elevations: Vec<ElevationName>,
        }
    }
}
