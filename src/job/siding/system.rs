//! What stages, sheets and tables ask of a siding system. A kind fills this in once, in its own file.

/// A siding system: how it joins, ends, moves and is held.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SidingSystem {
    /// How two lengths meet end to end.
    pub joints: JointRule,
    /// How courses stand on one another.
    pub courses: CourseRule,
    /// What takes the ends of a run, the heads of openings and the tops of walls.
    pub receivers: ReceiverRule,
    /// How far from a drawn corner its ends would touch what stands there.
    pub corners: CornerRule,
    /// Gap at each end of a run.
    pub end_gap: EndGapRule,
    /// What is kept clear below it.
    pub clear: ClearanceRule,
    /// Room that its trim is left.
    pub trim_gaps: TrimGapRule,
    /// What holds an edge that is cut along its length.
    pub cut_edge: CutEdgeRule,
    /// Which parts of one that is ripped along its length can both be used.
    pub rip_halves: RipHalves,
    /// Nails.
    pub fastening: FasteningRule,
    /// Growth with heat; none where gaps need not cover it.
    pub movement: Option<MovementRule>,
    /// How it is sold.
    pub sold_by: SoldBy,
    /// Sizes where the job gives none.
    pub usual: UsualSize,
    /// What cutting and living with it can do.
    pub cautions: &'static [Caution],
}

/// How two lengths meet end to end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum JointRule {
    /// Factory ends lap: the next panel over the last, anywhere that seams may stand.
    Lapped(SeamLap),
    /// Ends butt on the middle of a stud.
    ButtOnStuds {
        /// Gap between them, inches.
        gap: f64,
        /// Whether flashing goes behind each joint.
        backing: bool,
    },
}

impl JointRule {
    /// Whether ends lap over one another.
    pub fn is_lapped(self) -> bool {
        matches!(self, JointRule::Lapped(_))
    }

    /// Whether joints stand on studs.
    pub fn is_on_studs(self) -> bool {
        matches!(self, JointRule::ButtOnStuds { .. })
    }

    /// Whether flashing goes behind each joint.
    pub fn is_backed(self) -> bool {
        matches!(self, JointRule::ButtOnStuds { backing: true, .. })
    }
}

/// How far factory ends lap.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SeamLap {
    /// By what the foam of both panels leaves free, so that foam meets foam.
    FoamMeetsFoam,
    /// By half of the notch that the factory cuts, inches.
    HalfFactoryNotch(f64),
    /// By a customary length, inches: from memory.
    Customary(f64),
}

/// How courses stand on one another.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CourseRule {
    /// Each locks into the one below: the exposure is fixed, and the datum is searched for.
    Locked,
    /// Each laps over the head of the one below: the exposure is evened within limits.
    HeadLapped,
}

impl CourseRule {
    /// Whether exposures are evened between levels.
    pub fn is_evened(self) -> bool {
        self == CourseRule::HeadLapped
    }
}

/// What takes the ends of a run, the heads of openings and the tops of walls.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ReceiverRule {
    /// Posts and channels with a pocket.
    Pockets {
        /// Depth of the pocket, inches.
        depth: f64,
        /// How far over a face's lower edge a cut still fills a channel by itself, inches.
        channel_alone: f64,
    },
    /// Trim boards that it butts against; the gap is caulked.
    TrimBoards,
}

impl ReceiverRule {
    /// Whether ends go into pockets.
    pub fn has_pockets(self) -> bool {
        matches!(self, ReceiverRule::Pockets { .. })
    }
}

/// How far from a drawn corner, along the wall, ends would touch what stands in it, inches: the bottom
/// of a post's pocket, the edge of a corner board.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CornerRule {
    /// At an outside corner.
    pub outside: f64,
    /// At an inside corner.
    pub inside: f64,
}

/// Gap at each end of a run, inches.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EndGapRule {
    /// On a usual day.
    pub usual: f64,
    /// On a day below 40 F.
    pub cold: f64,
    /// From this stock length on the manufacturer states a larger one.
    pub ask_from: Option<f64>,
}

/// What is kept clear below siding, inches.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ClearanceRule {
    /// To roofs and decks.
    pub roof: f64,
    /// To the flashing on a ledge of stone or on a band.
    pub ledge: f64,
}

/// Room that trim is left, inches.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TrimGapRule {
    /// Between the top of what stands in a corner and the soffit.
    pub post_top: f64,
    /// How far what stands in a corner runs below the starter.
    pub post_below: f64,
    /// Between lengths of starter, and to what stands in corners.
    pub starter: f64,
}

/// What holds an edge that is cut along its length.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CutEdgeRule {
    /// Snap-lock lugs in undersill trim; nail slots under a face board.
    Lugs,
    /// Nails of its color through the edge, in undersill trim; nail slots under a face board.
    TrimNails,
    /// Nails through the face, as any other.
    FaceNails,
}

/// Which parts of one that is ripped along its length can both be used.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RipHalves {
    /// The lower with its lock and the upper with its hem, a cut between them.
    LockAndHem,
    /// Any two that the width holds, a cut between them.
    WithinWidth,
}

/// Nails.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FasteningRule {
    /// Where they go through.
    pub through: NailedThrough,
    /// What they are made of.
    pub material: NailMaterial,
    /// What holds them.
    pub holds: NailHold,
    /// Penetration into what holds them, inches.
    pub penetration: f64,
    /// Shortest nail, inches.
    pub shortest: f64,
    /// Least shank, inches.
    pub shank: f64,
    /// Lengths to an inch that nails are stocked in.
    pub lengths_per_inch: f64,
    /// How far the nail hem stands off, inches.
    pub stand_off: f64,
}

/// Where nails go through.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NailedThrough {
    /// Slots of a hem, with room under the head: the siding hangs and moves.
    Slots,
    /// The material itself, tight, one to each stud.
    Studs,
}

impl NailedThrough {
    /// Whether the siding hangs in slots.
    pub fn is_slotted(self) -> bool {
        self == NailedThrough::Slots
    }
}

/// What holds nails.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NailHold {
    /// Nailable sheathing and framing together.
    SheathingAndFraming,
    /// Studs alone: sheathing is gone through.
    Studs,
}

/// What nails are made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NailMaterial {
    /// Anything that does not corrode.
    CorrosionResistant,
    /// Galvanized or stainless steel: other metals corrode in contact.
    GalvanizedSteel,
}

/// Growth with heat.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MovementRule {
    /// Length per length and F.
    pub expansion: f64,
}

/// How it is sold.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SoldBy {
    /// In cartons.
    Carton,
    /// By the piece, or by the running foot.
    Piece,
}

/// Sizes where the job gives none.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum UsualSize {
    /// Of panels that lock.
    Panel(PanelSize),
    /// Of boards that lap.
    Board(BoardSize),
}

/// Usual sizes of panels, inches.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PanelSize {
    /// Stock length.
    pub length: f64,
    /// Boards that a panel shows.
    pub faces: u32,
    /// Height of one of them.
    pub face_height: f64,
    /// How far foam stops short of each factory end.
    pub foam_set_back: f64,
    /// Height of the nail hem.
    pub hem: f64,
    /// Height of the lock.
    pub lock: f64,
    /// Panels in a carton.
    pub carton: u32,
}

/// Usual sizes of boards, inches.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BoardSize {
    /// Stock length.
    pub length: f64,
    /// Width.
    pub width: f64,
    /// Least lap of a head under the next board.
    pub head_lap: f64,
    /// How much less than the width is aimed to be exposed; none: the head lap.
    pub covered: Option<f64>,
    /// Thickness at the butt.
    pub thickness: f64,
    /// Thickness of the starter piece.
    pub starter: f64,
}

/// What cutting and living with siding can do: `wording::siding` has the sentence of each.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Caution {
    /// Cutting vinyl: eyes, brittle when cold.
    CuttingVinyl,
    /// Vinyl softens in heat.
    HeatSoftens,
    /// Cutting wood: eyes, dust, treated offcuts.
    CuttingWood,
    /// Old painted walls hold lead.
    LeadPaint,
    /// Silica dust of fiber-cement.
    SilicaDust,
    /// Sharp edges of sheet metal.
    SharpEdges,
    /// How sheet steel is cut.
    CuttingSteel,
    /// What steel must not touch.
    Corrosion,
    /// Sheet metal on a roof or ladder: slippery, conducts.
    MetalConducts,
}
