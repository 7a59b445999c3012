//! What is bought or counted, and the unit it is counted in.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::flashed_run::FlashedRun;
use super::ids::ItemId;
use super::post_angle::PostAngle;
use super::trim::TrimStock;

/// What one stock length of siding is.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum SidingPiece {
    /// A panel, lapped at seams.
    #[default]
    Panel,
    /// A board, butted on studs.
    Board,
}

/// One of several stock lengths that a job mixes.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct MixedStock {
    /// Its place among them, from 0.
    pub place: usize,
    /// Its length, inches.
    pub length: f64,
}

/// What a line of the takeoff is of.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "kind", rename_all = "kebab-case")]
pub enum Item {
    /// Panels or boards that pieces are cut from.
    Panels {
        /// Panels or boards.
        piece: SidingPiece,
        /// Their length, where lengths are mixed.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        stock: Option<MixedStock>,
    },
    /// Spare panels or boards.
    SparePanels {
        /// Panels or boards.
        piece: SidingPiece,
        /// Their length, where lengths are mixed.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        stock: Option<MixedStock>,
    },
    /// Cartons that hold them all.
    Cartons {
        /// Length of what they hold, where lengths are mixed.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        stock: Option<MixedStock>,
    },
    /// Squares of net wall area.
    Squares,
    /// Squares of the faces that are cut up.
    SquaresLaid,
    /// Trim by stock length.
    Trim {
        /// What it is bought as.
        stock: TrimStock,
        /// Whether boards stand for posts.
        boards: bool,
        /// The angle that posts are made for, where it is not square.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        angle: Option<PostAngle>,
    },
    /// Spare lengths of trim.
    SpareTrim {
        /// What it is bought as.
        stock: TrimStock,
        /// Whether boards stand for posts.
        boards: bool,
        /// The angle that posts are made for, where it is not square.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        angle: Option<PostAngle>,
    },
    /// Caps of posts that stop over an overhang.
    PostCaps,
    /// Flashing round openings.
    OpeningFlashing {
        /// Width of the sheet, inches.
        width: f64,
    },
    /// Flashing at corners.
    CornerFlashing {
        /// Width of the sheet, inches.
        width: f64,
    },
    /// Step flashing along lower roofs.
    StepFlashing,
    /// Kick-out flashing at the low ends of lower roofs.
    KickOutFlashing,
    /// Flashing along level runs over one sort of place: its length, bought as [`Item::RunFlashing`].
    FlashedLength {
        /// What it lies over.
        over: FlashedRun,
    },
    /// Flashing along all level runs.
    RunFlashing {
        /// Width of the sheet, inches.
        width: f64,
    },
    /// Pans under doors.
    DoorPans,
    /// Flashing behind joints of boards.
    JointBacking {
        /// Width of a piece, inches.
        width: f64,
    },
    /// Nails for siding.
    SidingNails {
        /// What they hold.
        piece: SidingPiece,
        /// Length of a nail, inches.
        length: f64,
    },
    /// Nails for trim.
    TrimNails,
    /// Blocks that fixtures stand on.
    MountingBlocks,
    /// Weather barrier in rolls.
    Barrier,
    /// Tape for its seams.
    BarrierTape,
    /// Sealant in cartridges.
    Sealant,
    /// Furring strips behind cut edges.
    Furring,
    /// Coil stock in rolls.
    Coil,
    /// Soffit panels.
    Soffit,
    /// Channel that takes soffit panels at the wall.
    SoffitChannel,
    /// Fascia.
    Fascia,
    /// Things whose count the job gives.
    Given {
        /// Which.
        things: GivenThings,
    },
    /// Labor by the office's own hours.
    Labor,
    /// Cladding that is measured by area and not laid out.
    OtherCladding {
        /// The zone's name in the job.
        zone: String,
        /// The cladding, as the job calls it.
        cladding: String,
    },
    /// Wall that gets no siding.
    BareWall,
    /// What net area and a percentage would buy.
    ByNetArea {
        /// The percentage.
        waste: f64,
    },
}

/// Things whose count the job gives.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum GivenThings {
    /// Pairs of shutters.
    Shutters,
    /// Vents.
    Vents,
    /// Blocks for fixtures that are not drawn.
    Blocks,
}

impl Item {
    /// The short name of its line, the same in every takeoff: `j-channel`.
    pub fn id(&self) -> ItemId {
        let mixed = |name: &str, stock: &Option<MixedStock>| match stock.map_or(0, |s| s.place) {
            0 => name.to_owned(),
            1 => format!("{name}-second"),
            n => format!("{name}-{}", n + 1),
        };
        let id = match self {
            Item::Panels { stock, .. } => mixed("panels", stock),
            Item::SparePanels { stock, .. } => mixed("spare-panels", stock),
            Item::Cartons { stock } => mixed("cartons", stock),
            Item::OtherCladding { zone, .. } => {
                format!("zone-{}", zone.to_lowercase().replace(' ', "-"))
            }
            Item::Squares => "squares".into(),
            Item::SquaresLaid => "squares-laid".into(),
            Item::Trim { stock, angle, .. } => return stock.line_id_at(*angle),
            Item::SpareTrim { stock, angle, .. } => format!("spare-{}", stock.line_id_at(*angle)),
            Item::PostCaps => "post-cap".into(),
            Item::OpeningFlashing { .. } => return TrimStock::Flashing.line_id(),
            Item::CornerFlashing { .. } => "corner-flashing".into(),
            Item::StepFlashing => "step-flashing".into(),
            Item::KickOutFlashing => "kick-out".into(),
            Item::FlashedLength { over } => match over {
                FlashedRun::Roof => "roof-flashing",
                FlashedRun::Deck => "deck-flashing",
                FlashedRun::Ledge => "ledge-flashing",
                FlashedRun::Cladding => "cladding-flashing",
                FlashedRun::Band => "band-flashing",
            }
            .into(),
            Item::RunFlashing { .. } => "continuous-flashing".into(),
            Item::DoorPans => "door-pans".into(),
            Item::JointBacking { .. } => "joint-backing".into(),
            Item::SidingNails { .. } => "panel-nails".into(),
            Item::TrimNails => "trim-nails".into(),
            Item::MountingBlocks => "mounting-blocks".into(),
            Item::BareWall => "bare-wall".into(),
            Item::ByNetArea { .. } => "by-net-area".into(),
            Item::Barrier => "weather-barrier".into(),
            Item::BarrierTape => "barrier-tape".into(),
            Item::Sealant => "sealant".into(),
            Item::Furring => "furring".into(),
            Item::Coil => "coil".into(),
            Item::Soffit => "soffit".into(),
            Item::SoffitChannel => "soffit-channel".into(),
            Item::Fascia => "fascia".into(),
            Item::Given { things } => match things {
                GivenThings::Shutters => "shutters",
                GivenThings::Vents => "vents",
                GivenThings::Blocks => "blocks",
            }
            .into(),
            Item::Labor => "labor".into(),
        };
        id.into()
    }

    /// What spare pieces are more of.
    pub fn spared(&self) -> Option<Item> {
        match self {
            Item::SparePanels { piece, stock } => {
                Some(Item::Panels { piece: *piece, stock: *stock })
            }
            Item::SpareTrim { stock, boards, angle } => {
                Some(Item::Trim { stock: *stock, boards: *boards, angle: *angle })
            }
            _ => None,
        }
    }

    /// The stock length it is of, where lengths are mixed.
    pub fn mixed_stock(&self) -> Option<MixedStock> {
        match self {
            Item::Panels { stock, .. }
            | Item::SparePanels { stock, .. }
            | Item::Cartons { stock } => *stock,
            _ => None,
        }
    }
}

/// The short name that somebody may have meant: any case, blanks for hyphens, and a spelling that
/// names had once.
pub fn id_as_written(name: &str) -> ItemId {
    name.trim().to_lowercase().replace(' ', "-").replace("moulding", "molding").into()
}

/// What a figure of the takeoff counts.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum CountUnit {
    /// Single pieces, whole stock lengths of trim among them.
    Piece,
    /// Panels.
    Panel,
    /// Boards.
    Board,
    /// Cartons of panels.
    Carton,
    /// Squares: 100 sq ft.
    Square,
    /// Square feet.
    SquareFoot,
    /// Feet.
    Foot,
    /// Meters.
    Meter,
    /// Feet along a roof's slope.
    FootOfSlope,
    /// Meters along a roof's slope.
    MeterOfSlope,
    /// Rolls of flashing.
    Roll,
    /// Boxes of nails.
    Box,
    /// Cartridges.
    Cartridge,
    /// Pairs.
    Pair,
    /// Hours.
    Hour,
    /// Nails.
    Nail,
    /// Pounds.
    Pound,
    /// Courses.
    Course,
}

impl CountUnit {
    /// The unit that counts pieces of siding.
    pub fn of_siding(piece: SidingPiece) -> Self {
        match piece {
            SidingPiece::Panel => CountUnit::Panel,
            SidingPiece::Board => CountUnit::Board,
        }
    }
}
