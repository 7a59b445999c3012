//! What each finding is about. Findings about one subject are told together, so that a drawing with many small
//! things to tell is read in a few steps. The table has no rest: a new code does not compile without its subject.

use super::by_hand::HandCode;
use super::corners::CornerCode;
use super::drawing::DrawingCode;
use super::house::HouseCode;
use super::job::JobCode;
use super::laying::LayingCode;
use super::letters::LetterCode;
use super::lines::LineCode;
use super::prices::PriceCode;
use super::register::FindingCode;
use super::taped::TapedCode;
use super::views::ViewCode;

/// What a finding is about, in the order in which a reader settles them: each rests on those before.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Subject {
    /// Files and folders.
    Files,
    /// The job file and what it says by hand.
    Job,
    /// What of the drawing was read, and what was left out.
    Read,
    /// How lines are drawn, and what was mended.
    Linework,
    /// The drawing's unit and scale, dimensions, lengths taped on site.
    Scale,
    /// Which part of the drawing is which elevation.
    Elevations,
    /// Walls, and what of them is sided.
    Walls,
    /// Openings and fixtures.
    Openings,
    /// Corners, posts, walls at an angle.
    Corners,
    /// Pieces and strips that are small, short or weak.
    SmallPieces,
    /// Seams, and room to move.
    Seams,
    /// Rules that the layout breaks.
    Rules,
    /// What is ordered, and prices.
    Order,
}

impl Subject {
    /// All of them, in order.
    pub const ALL: [Subject; 13] = [
        Subject::Files,
        Subject::Job,
        Subject::Read,
        Subject::Linework,
        Subject::Scale,
        Subject::Elevations,
        Subject::Walls,
        Subject::Openings,
        Subject::Corners,
        Subject::SmallPieces,
        Subject::Seams,
        Subject::Rules,
        Subject::Order,
    ];
}

impl FindingCode {
    /// What it is about.
    pub fn subject(self) -> Subject {
        match self {
            FindingCode::Drawing(code) => drawing(code),
            FindingCode::Lines(code) => lines(code),
            FindingCode::Views(code) => views(code),
            FindingCode::House(code) => house(code),
            FindingCode::Corners(code) => corners(code),
            FindingCode::Hand(code) => by_hand(code),
            FindingCode::Laying(code) => laying(code),
            FindingCode::Job(code) => job(code),
            FindingCode::Prices(PriceCode::PricesUnreadable | PriceCode::TakeoffLine) => {
                Subject::Order
            }
            FindingCode::Taped(code) => taped(code),
            FindingCode::Letters(LetterCode::LettersNotDrawn) => Subject::Files,
            FindingCode::Files(_) => Subject::Files,
        }
    }
}

fn drawing(code: DrawingCode) -> Subject {
    use DrawingCode as C;
    match code {
        C::FileTooBig
        | C::NotDxf
        | C::DwgUnreadable
        | C::DwgTextsLost
        | C::PdfUnreadable
        | C::PdfPages
        | C::PdfPagesRead
        | C::PdfLettersMute
        | C::FileTruncated
        | C::LineBad
        | C::LayersTooMany
        | C::ItemsTooMany
        | C::PointsTooMany
        | C::VerticesTooMany
        | C::HatchLoops
        | C::LayersAllOff
        | C::NumbersAbsurd
        | C::BlockNesting
        | C::BlockMissing
        | C::BlockExternal
        | C::EntityBroken
        | C::NumberUnreadable
        | C::NameTooLong
        | C::TextTooLong
        | C::EntitySkipped
        | C::SvgUnreadable
        | C::SvgTooBig => Subject::Read,
    }
}

fn lines(code: LineCode) -> Subject {
    use LineCode as C;
    match code {
        C::UnitAssumed
        | C::UnitUnsure
        | C::UnitTaken
        | C::UnitImplausible
        | C::KnownUnreadable
        | C::ScaleUnknown
        | C::ScaleOfPaper
        | C::ScalesOnPage
        | C::DimensionDisagrees
        | C::DimensionsMore => Subject::Scale,
        C::LayerUnmapped | C::LayerHidden | C::PointLeftOut | C::LinesNoSiding => Subject::Read,
        C::LineZero | C::LineTwice | C::LinesSquared | C::GapsClosed | C::EndsJoined => {
            Subject::Linework
        }
        C::SidingFromLines | C::CoursesUnended => Subject::Walls,
    }
}

fn views(code: ViewCode) -> Subject {
    use ViewCode as C;
    match code {
        C::ViewScaled | C::ViewScaleUnknown => Subject::Scale,
        C::ViewLeftAlone
        | C::ViewSection
        | C::ViewTurned
        | C::ViewDoubted
        | C::ViewSetUpright
        | C::ViewSkipped
        | C::VariantTaken
        | C::VariantUnknown
        | C::ModelMirrored
        | C::ViewUntitled
        | C::OutsideViews
        | C::LevelAssumed
        | C::WallsTooMany
        | C::PartUnknown => Subject::Elevations,
    }
}

fn house(code: HouseCode) -> Subject {
    use HouseCode as C;
    match code {
        C::WallTooFine
        | C::OutlineTooFine
        | C::OutlinesTooMany
        | C::GradeTooFine
        | C::SidingDetail
        | C::SideLeans => Subject::Linework,
        C::DrawnUnused => Subject::Read,
        C::NoWalls
        | C::WallOpen
        | C::WallCrosses
        | C::WallsOverlap
        | C::WallTooBig
        | C::WallTooFull
        | C::WallsFromHatch
        | C::PlaneAssumed
        | C::WallsFromLines
        | C::WallFoot
        | C::FacesLeft
        | C::FacadeShare
        | C::WallDoubted
        | C::SidingStopsShort => Subject::Walls,
        C::LayerSpeaks
        | C::OpeningOutside
        | C::OpeningsOffSiding
        | C::OpeningTooLarge
        | C::OpeningStraddles
        | C::OpeningSize
        | C::FixtureOutside
        | C::JointInOpening => Subject::Openings,
    }
}

fn corners(code: CornerCode) -> Subject {
    use CornerCode as C;
    match code {
        C::ReturnNotDrawn
        | C::SetBackTaken
        | C::PostAngle
        | C::WallBehindPosts
        | C::CornerHeightsDisagree
        | C::ReturnCornerUnknown
        | C::AngledUnknown
        | C::AngledNarrow
        | C::AngledOutside
        | C::AngledZone => Subject::Corners,
    }
}

fn by_hand(code: HandCode) -> Subject {
    use HandCode as C;
    match code {
        C::WallUnknown
        | C::LeftOutByJob
        | C::WallsJoined
        | C::WallsApart
        | C::WallGivesWay
        | C::GivenOutside
        | C::GivenStays
        | C::SidingLayerEmpty => Subject::Job,
    }
}

fn laying(code: LayingCode) -> Subject {
    use LayingCode as C;
    match code {
        C::WallBare | C::RaggedFoot => Subject::Walls,
        C::OpeningsJoined | C::BlockMoved => Subject::Openings,
        C::PostPastStone => Subject::Corners,
        C::StripThin | C::FillerBoard | C::PeakLeft | C::PanelShort | C::NotchThin => {
            Subject::SmallPieces
        }
        C::MovementGap | C::SeamRulesConflict | C::SeamOnJamb | C::LongPanelGap => Subject::Seams,
        C::CheckFailed => Subject::Rules,
        C::OneLot | C::CrewTakesMore => Subject::Order,
        C::ZoneEmpty => Subject::Job,
    }
}

fn job(code: JobCode) -> Subject {
    use JobCode as C;
    match code {
        C::JobUnreadable | C::NoDrawing | C::NotGiven | C::OldSpelling | C::JobValue => {
            Subject::Job
        }
    }
}

fn taped(code: TapedCode) -> Subject {
    use TapedCode as C;
    match code {
        C::Unreadable
        | C::Unknown
        | C::LeftOut
        | C::Taken
        | C::Leans
        | C::LevelStart
        | C::Top
        | C::Slopes
        | C::Contradicts => Subject::Scale,
    }
}
