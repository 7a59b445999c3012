//! How a figure of the takeoff came about, with its numbers. Lengths inches, areas square feet.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::filler::RippedWidth;
use super::flashed_run::FlashedLength;
use super::item::SidingPiece;
use super::labor::LaborPart;
use super::trim::TrimStock;

/// How a line's figures came about.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "from", rename_all = "kebab-case")]
pub enum Basis {
    /// Panels or boards that every piece is cut from.
    SidingCut {
        /// Panels or boards.
        piece: SidingPiece,
        /// Pieces cut.
        pieces: usize,
        /// Panels or boards they are cut from.
        bought: usize,
        /// Length of one.
        length: f64,
        /// Of the faces bought, what shows on the walls, percent.
        shown: f64,
    },
    /// Spare ones, for damage and miscuts, by the job's percentage, rounded up.
    Spare {
        /// The percentage.
        percent: f64,
        /// Of so many.
        of_count: usize,
        /// What leaves as many, so that none are added.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        covered: Option<SpareCover>,
    },
    /// Whole cartons.
    Cartons {
        /// Panels or boards.
        piece: SidingPiece,
        /// Panels to hold, spare included.
        panels: f64,
        /// Of these, spare ones that are added.
        #[serde(default)]
        spare: f64,
        /// Panels in a carton.
        in_carton: f64,
        /// Panels in the cartons that nobody asked for.
        over: f64,
    },
    /// Net wall area, bought as whole cartons.
    NetArea {
        /// Panels or boards.
        piece: SidingPiece,
        /// Net wall area.
        net: f64,
        /// What one panel of each stock length covers.
        coverage: Vec<f64>,
    },
    /// The faces of all that is cut up, not bought by itself.
    FacesCut {
        /// Panels or boards.
        piece: SidingPiece,
        /// How many are cut up.
        cut: usize,
        /// Their area.
        area: f64,
        /// Net wall area.
        net: f64,
    },
    /// Trim cut from stock lengths.
    TrimCut {
        /// Pieces cut.
        pieces: usize,
        /// Their length.
        used: f64,
        /// Stock lengths they are cut from.
        bought: usize,
        /// Length of one.
        length: f64,
        /// Pocket it must have, where it takes ends of panels.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        pocket: Option<f64>,
        /// Stock lengths that no cutting plan undercuts.
        least: usize,
        /// Of what is bent, how much of the length is laps.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        bent_laps: Option<f64>,
        /// Of what is ripped, by width.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        widths: Vec<RippedWidth>,
    },
    /// A cap at the bottom of each corner post that stops over an overhang.
    PostCaps,
    /// Strips round openings, from rolls.
    OpeningStrips {
        /// Their length.
        length: f64,
        /// Length of a roll.
        roll: f64,
        /// How far sills and heads reach past each jamb.
        past_jamb: f64,
        /// How far jambs run over the head.
        over_head: f64,
    },
    /// Strips behind corner posts, from rolls.
    CornerStrips {
        /// Their length.
        length: f64,
        /// Length of a roll.
        roll: f64,
        /// How far a strip reaches to each side.
        each_side: f64,
        /// Strips cut.
        strips: usize,
        /// Rolls that no cutting plan undercuts.
        least: usize,
    },
    /// Where a lower roof slopes along a wall.
    RoofSlopes {
        /// Pieces: one a course of roofing, one more a slope, and one at each corner it ends at.
        pieces: usize,
        /// Height of a course of roofing along the slope.
        exposure: f64,
        /// Corners that slopes end at.
        turned: usize,
        /// How far flashing is turned round each, inches.
        turn: f64,
    },
    /// A level run of flashing, laps left out.
    LevelRun,
    /// Strips along level runs, from rolls.
    RunStrips {
        /// The runs by what they lie over.
        runs: Vec<FlashedLength>,
        /// Strips they are cut to.
        strips: usize,
        /// How far strips of one run lap.
        lap: f64,
        /// Length of all strips.
        length: f64,
        /// Length of a roll.
        roll: f64,
        /// Rolls that no cutting plan undercuts.
        least: usize,
    },
    /// A pan under each door.
    DoorPans {
        /// How far it is turned up at each jamb.
        turned_up: f64,
        /// Length of all pans, turned up ends in.
        length: f64,
    },
    /// The low end of each lower roof that slopes along a wall.
    RoofSlopeEnds,
    /// One behind each joint of two boards.
    BoardJoints,
    /// Nails for siding, from boxes.
    SidingNails {
        /// What they hold.
        piece: SidingPiece,
        /// Nails.
        nails: f64,
        /// Nails in a box, or in a pound where they are bought by weight.
        in_box: f64,
        /// Pieces they hold.
        pieces: usize,
        /// Greatest spacing.
        spacing: f64,
        /// What a nail goes through before it holds.
        through: f64,
        /// How far it goes into what holds it.
        penetration: f64,
        /// Whether studs alone hold it, and sheathing is gone through.
        studs: bool,
        /// Least shank.
        shank: f64,
        /// Least head.
        head: f64,
    },
    /// Nails for trim, from boxes.
    TrimNails {
        /// Nails.
        nails: f64,
        /// Nails in a box, or in a pound where they are bought by weight.
        in_box: f64,
        /// Nails by stock.
        by_stock: Vec<StockNails>,
    },
    /// Fixtures drawn with a mounting block.
    DrawnBlocks,
    /// Weather barrier by the area of the walls, openings in, with laps.
    BarrierArea {
        /// Area of the walls.
        area: f64,
        /// Of wall that is none of that area: behind lower roofs, and where siding stops short, square feet.
        #[serde(default)]
        left_out: [f64; 2],
        /// Width and length of a roll.
        roll: [f64; 2],
        /// Laps of level and of upright seams.
        laps: [f64; 2],
    },
    /// Seams of a weather barrier.
    BarrierSeams {
        /// Their length.
        length: f64,
        /// Length of a roll of tape.
        roll: f64,
    },
    /// Beads of sealant.
    Beads {
        /// Their length.
        length: f64,
        /// Width and depth of a bead.
        bead: f64,
        /// Fluid ounces in a cartridge.
        cartridge: f64,
        /// Whether boards are sealed along their trim, else openings behind their flanges.
        boards: bool,
    },
    /// Cut from stock along drawn lengths.
    StockAlong {
        /// Pieces.
        pieces: usize,
        /// Their length.
        length: f64,
        /// Stock.
        stock: f64,
        /// Stock lengths that no cutting plan undercuts.
        least: usize,
    },
    /// Coil stock for wrapped trim.
    Wraps {
        /// Each sort of trim that is wrapped.
        wraps: Vec<WrapLength>,
        /// Width and length of a roll.
        roll: [f64; 2],
    },
    /// Soffit panels cut across the depth of a soffit.
    SoffitCuts {
        /// Drawn length and depth under eaves.
        eaves: [f64; 2],
        /// Drawn length and depth along rakes.
        rakes: [f64; 2],
        /// Width that a panel covers.
        cover: f64,
        /// Cuts.
        cuts: usize,
        /// Stock.
        stock: f64,
        /// Stock lengths that no cutting plan undercuts.
        least: usize,
    },
    /// Counted by the job.
    GivenByJob,
    /// Hours of the office for each unit of a line.
    Hours {
        /// Line by line.
        parts: Vec<LaborPart>,
    },
    /// Net area of a zone of other cladding; nothing of it is counted.
    ZoneArea,
    /// Wall that gets no siding, by why.
    BareWall {
        /// Too near to finished grade.
        near_grade: f64,
        /// Of that, over grade.
        above_grade: f64,
        /// In the clearance over lower roofs and decks.
        over_roofs: f64,
        /// Behind lower roofs.
        behind_roofs: f64,
        /// Under filler boards.
        fillers: f64,
        /// In strips that an outline stops short by.
        stops_short: f64,
    },
    /// A rule of thumb, not bought.
    RuleOfThumb {
        /// Panels or boards.
        piece: SidingPiece,
        /// Panels more (positive) or fewer (negative) than the layout takes.
        over: i64,
        /// Spare ones that come on top of either.
        spare: f64,
    },
}

/// What leaves enough spare ones by itself.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "covered_by", rename_all = "kebab-case")]
pub enum SpareCover {
    /// Whole cartons.
    Cartons {
        /// Panels or boards in them over what is laid.
        over: f64,
    },
    /// What is sold in multiples.
    Multiple {
        /// Sold by so many.
        of: u32,
        /// Pieces over what is cut up.
        over: f64,
    },
}

/// Nails for one stock of trim.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct StockNails {
    /// The stock.
    pub stock: TrimStock,
    /// Nails, posts on both flanges.
    pub nails: f64,
    /// Greatest spacing, inches.
    pub spacing: f64,
}

/// Trim that coil stock wraps.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct WrapLength {
    /// What.
    pub trim: WrappedTrim,
    /// Its length, inches.
    pub length: f64,
    /// Width of the strip, inches.
    pub girth: f64,
    /// Strips that go side by side out of a roll's width.
    pub strips: usize,
}

/// Trim that coil stock may wrap.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum WrappedTrim {
    /// Fascia, by the drawn lengths of eaves and rakes.
    Fascia,
    /// Frieze boards.
    Frieze,
    /// Band boards.
    Band,
    /// Flat surrounds of openings.
    Surround,
}
