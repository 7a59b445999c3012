//! Walls, openings and fixtures: findings of `extract`.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::group::group;
use super::lines::LayerCount;
use super::seen::Seen;
use crate::geom::vocabulary::Xy;
use crate::model::ids::{ElevationName, WallId};
use crate::model::linework::Role;
use crate::model::unused::UnusedCount;
use crate::units::Unit;

/// Walls of one elevation.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct WallsOf {
    /// The elevation.
    pub elevation: ElevationName,
    /// How many.
    pub walls: usize,
}

/// What there is too much of on a wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum OnWall {
    /// Openings.
    Openings,
    /// Fixtures.
    Fixtures,
}

/// What a wall's outline stops short of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum ShortOf {
    /// A roof line over its top or along its rake.
    Roof,
    /// The next wall.
    Wall,
}

/// Why what is drawn as siding may be no wall.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case", tag = "reason")]
pub enum WallDoubt {
    /// Little of it shows, square feet: the rest lies behind roofs or bare areas.
    LittleShows {
        /// What shows.
        area: f64,
    },
    /// It stands over siding with other course lines, as a roof does.
    OtherCourses {
        /// Distance of its own lines, inches.
        own: f64,
        /// Of those under it.
        below: f64,
    },
    /// A part of it juts out past its end, as the end of a lower roof does.
    JutsOut {
        /// How far, inches.
        by: f64,
        /// How high the part is, inches.
        height: f64,
    },
}

group! {
    /// What is wrong with a wall or with what is on it, and what was assumed of it.
    HouseFinding, HouseCode {
        /// There is nothing to side.
        NoWalls "no-walls", Error, Architect {
            /// Names of layers that walls are looked for on.
            wall_layers: Vec<String>,
            /// The first layers there are.
            layers: Vec<LayerCount>,
            /// What is seen instead, the telling things first.
            seen: Vec<Seen>,
        }
        /// An outline does not close.
        WallOpen "wall-open", Error, Architect {
            /// Whether it is of a bare area rather than of a wall.
            bare: bool,
            /// The gap, inches.
            gap: f64,
            /// The gap in drawing units.
            drawn_gap: f64,
            /// The drawing's unit; none where a known distance sets its scale.
            #[serde(skip_serializing_if = "Option::is_none")]
            unit: Option<Unit>,
            /// From here, drawing units.
            from: Xy,
            /// To here.
            to: Xy,
        }
        /// An outline crosses itself.
        WallCrosses "wall-crosses", Error, Architect {
            /// Middle of one of the sides that cross, drawing units.
            first: Xy,
            /// Middle of the other.
            second: Xy,
        }
        /// Two walls overlap.
        WallsOverlap "walls-overlap", Error, Architect {
            /// By how much, square feet.
            area: f64,
            /// Their names, where walls are named.
            #[serde(default, skip_serializing_if = "Vec::is_empty")]
            walls: Vec<WallId>,
        }
        /// A wall's outline has more corners than any has.
        WallTooFine "wall-too-fine", Error, Architect {
            /// Corners.
            corners: usize,
            /// The most laid out.
            most: usize,
        }
        /// A wall is larger than any house has.
        WallTooBig "wall-too-big", Error, Office {
            /// Width, inches.
            width: f64,
            /// Height, inches.
            height: f64,
            /// Greatest width laid out, inches.
            most_width: f64,
            /// Greatest height, inches.
            most_height: f64,
        }
        /// A wall has more openings or fixtures than any has.
        WallTooFull "wall-too-full", Error, Architect {
            /// Of what.
            of_what: OnWall,
            /// How many.
            count: usize,
            /// The most laid out.
            most: usize,
        }
        /// An outline of something on a wall has more corners than any has.
        OutlineTooFine "outline-too-fine", Error, Architect {
            /// Corners.
            corners: usize,
            /// The most laid out.
            most: usize,
        }
        /// There are more roofs, bands or bare areas in an elevation than any has.
        OutlinesTooMany "outlines-too-many", Error, Architect {
            /// How many on layers of that sort.
            count: usize,
            /// The most laid out.
            most: usize,
        }
        /// Lines of grade in a view have more points than any has.
        GradeTooFine "grade-too-fine", Error, Architect {
            /// Points.
            points: usize,
            /// The most laid out.
            most: usize,
        }
        /// Walls were taken from siding hatches.
        WallsFromHatch "walls-from-hatch", Info, Architect {
            /// Walls by elevation.
            walls: Vec<WallsOf>,
            /// Distances of the hatches' lines, inches.
            line_spacings: Vec<f64>,
        }
        /// Patches of siding were taken for one plane though a line, a board or a roof parts them.
        PlaneAssumed "plane-assumed", Warning, Architect {
            /// Upright lines and boards from foot to head inside a plane.
            uprights: usize,
            /// Roofs and decks across a plane.
            roofs: usize,
            /// Openings that only a hole or a notch in the siding shows.
            holes: usize,
            /// Walls of less than ten square feet.
            slight: usize,
        }
        /// What is too small to side was left out of patches of siding, or filled.
        SidingDetail "siding-detail", Info, Office {
            /// Notches and gaps filled.
            filled: usize,
            /// Strips left out.
            strips: usize,
            /// Area of the strips, square feet.
            area: f64,
        }
        /// Walls were taken from the faces of loose lines.
        WallsFromLines "walls-from-lines", Warning, Architect {
            /// Walls by elevation.
            walls: Vec<WallsOf>,
        }
        /// A wall from loose lines was taken to start at the level line.
        WallFoot "wall-foot", Info, Architect {
            /// Layer of the level line.
            layer: String,
        }
        /// Faces of loose lines are neither wall nor opening.
        FacesLeft "faces-left", Info, Architect {
            /// How many.
            faces: usize,
        }
        /// A side leans that should be level or vertical.
        SideLeans "side-leans", Info, Architect {
            /// By how much, inches.
            lean: f64,
            /// Over what length, inches.
            length: f64,
        }
        /// Things drawn on a layer with a role are not used.
        DrawnUnused "drawn-unused", Warning or Info if meant, Architect {
            /// The layer.
            layer: String,
            /// Its role.
            role: Role,
            /// Things drawn on it.
            drawn: usize,
            /// Of them used.
            used: usize,
            /// The rest by reasons.
            left: Vec<UnusedCount>,
            /// Whether the drawing or the job says of all of them that they are left out.
            meant: bool,
        }
        /// A layer without a role whose name speaks of openings has things on walls: they are not cut.
        LayerSpeaks "layer-speaks", Warning, Office {
            /// The layer.
            layer: String,
            /// What its name speaks of.
            role: Role,
            /// Things of it on walls where no opening is.
            things: usize,
        }
        /// An opening lies outside every wall.
        OpeningOutside "opening-outside", Error or Warning if accepted, Architect {
            /// Whether the job accepts it.
            accepted: bool,
        }
        /// Openings lie in a drawn roof or stone, or outside the drawn siding of their view.
        OpeningsOffSiding "openings-off-siding", Warning, Architect {
            /// How many.
            openings: usize,
        }
        /// What stands on a layer of openings, over drawn siding, is larger than openings are.
        OpeningTooLarge "opening-too-large", Error or Warning if accepted, Architect {
            /// Its height, inches.
            height: f64,
            /// How much of its wall it covers, percent.
            percent: f64,
            /// Whether the job accepts it, so that it is cut.
            accepted: bool,
        }
        /// Walls of a view that are drawn siding cover little of what is drawn of its facade.
        FacadeShare "facade-share", Warning, Architect {
            /// How much of it they cover, percent.
            percent: f64,
        }
        /// What is drawn as siding may be no wall, or not all of it.
        WallDoubted "wall-doubted", Warning, Architect {
            /// The wall.
            wall: WallId,
            /// Why.
            why: WallDoubt,
        }
        /// An opening reaches out of its wall.
        OpeningStraddles "opening-straddles", Warning, Architect {
            /// How far, inches.
            past: f64,
        }
        /// A tag or the name of a block states another size than its openings are drawn with.
        OpeningSize "opening-size-disagrees", Warning, Architect {
            /// What states it.
            says: String,
            /// Width and height that it states, inches.
            stated: [f64; 2],
            /// Width and height drawn, inches.
            drawn: [f64; 2],
            /// How many are drawn so.
            openings: usize,
        }
        /// A fixture lies on no wall.
        FixtureOutside "fixture-outside", Info, Architect {}
        /// An outline ends a little short of what it should reach, so that a strip gets no siding.
        SidingStopsShort "siding-stops-short", Warning, Architect {
            /// The wall.
            wall: WallId,
            /// What it stops short of.
            short_of: ShortOf,
            /// Width of the strip, inches.
            width: f64,
            /// Its length, inches.
            length: f64,
        }
        /// A joint of the building runs through an opening.
        JointInOpening "joint-in-opening", Warning, Architect {}
    }
}
