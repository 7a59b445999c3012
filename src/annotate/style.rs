//! Pens and sizes of letters. Widths are of the ISO 128 series (`DrawingFact::LineWidths`, from memory): what is
//! built stands in wide lines, half as wide again and more than what is said of it, which takes the narrowest.
//! Line types tell things apart in black-and-white print, color only besides; every color is dark enough to
//! stand out in gray (`DrawingFact::Contrast`).

use crate::model::drawing::{Dash, Pen};

/// What is drawn, each kind on a layer of its own.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Ink {
    /// The architect's own lines.
    Source,
    /// The architect's own text.
    SourceText,
    /// Outlines of walls.
    Wall,
    /// Outlines of openings.
    Opening,
    /// Edges of panels along courses.
    Course,
    /// Lines between the faces a panel shows.
    Face,
    /// Seams.
    Seam,
    /// Corner posts.
    Post,
    /// Starter strip.
    Starter,
    /// J-channel of every kind.
    Channel,
    /// Drip cap.
    DripCap,
    /// Finish trim.
    Finish,
    /// Boards on the wall's face.
    Board,
    /// Finished grade.
    Grade,
    /// Level line.
    Level,
    /// Dimension and leader lines.
    Dimension,
    /// Text.
    Text,
    /// White ground behind text.
    Ground,
    /// Border and rules of tables.
    Border,
    /// Fine rules.
    Rule,
    /// What is left over of a panel.
    Offcut,
    /// Leaders of marks.
    Leader,
    /// Frames round marks of trim.
    Frame,
    /// Filled signs: dots of leaders, signs of laps.
    Solid,
    /// Where the next sheet goes on.
    Match,
    /// Round an error in what was read.
    Fault,
    /// Round a warning.
    Doubt,
    /// Round a remark.
    Remark,
    /// The bar over a sheet of a layout that breaks rules.
    Alarm,
    /// Its heavy frame, which shows in black-and-white print.
    AlarmFrame,
    /// Text in it.
    AlarmText,
    /// Trim cut across, in details.
    Profile,
    /// Flashing cut across, in details.
    Flashing,
    /// Weather barrier cut across, in details.
    Barrier,
    /// Round what a revision changes, and its triangle.
    Cloud,
    /// What a revision takes away.
    Gone,
}

impl Ink {
    /// Layer name on a sheet.
    pub(super) fn layer(self) -> &'static str {
        match self {
            Ink::Source => "source",
            Ink::SourceText => "source-text",
            Ink::Wall => "walls",
            Ink::Opening => "openings",
            Ink::Course => "courses",
            Ink::Face => "faces",
            Ink::Seam => "seams",
            Ink::Post => "posts",
            Ink::Starter => "starter",
            Ink::Channel => "channels",
            Ink::DripCap => "drip-cap",
            Ink::Finish => "finish-trim",
            Ink::Board => "boards",
            Ink::Grade => "grade",
            Ink::Level => "level",
            Ink::Dimension => "dimensions",
            Ink::Text => "text",
            Ink::Ground => "ground",
            Ink::Border => "border",
            Ink::Rule => "rules",
            Ink::Offcut => "offcuts",
            Ink::Leader => "leaders",
            Ink::Frame => "frames",
            Ink::Solid => "signs",
            Ink::Match => "match-lines",
            Ink::Fault => "faults",
            Ink::Doubt => "doubts",
            Ink::Remark => "remarks",
            Ink::Alarm => "alarm",
            Ink::AlarmFrame => "alarm-frame",
            Ink::AlarmText => "alarm-text",
            Ink::Profile => "profiles",
            Ink::Flashing => "flashing",
            Ink::Barrier => "barrier",
            Ink::Cloud => "revisions",
            Ink::Gone => "gone",
        }
    }

    /// Its pen.
    pub(super) fn pen(self) -> Pen {
        let line = |width: f64, color: [u8; 3], dash: Dash| Pen { width, color, dash, fill: None };
        let black = [0, 0, 0];
        match self {
            Ink::Source => line(NARROW, [140, 140, 140], Dash::Solid),
            Ink::SourceText => line(NARROW, [110, 110, 110], Dash::Solid),
            Ink::Wall => line(0.5, black, Dash::Solid),
            Ink::Opening => line(0.35, black, Dash::Solid),
            Ink::Course => line(0.25, [70, 70, 70], Dash::Solid),
            Ink::Face => line(NARROW, [140, 140, 140], Dash::Solid),
            Ink::Seam => line(0.5, [160, 30, 30], Dash::Solid),
            Ink::Post => line(0.7, [30, 60, 120], Dash::Solid),
            Ink::Starter => line(0.5, [30, 60, 120], Dash::DashDot),
            Ink::Channel => line(0.35, [30, 60, 120], Dash::Dashed),
            Ink::DripCap => line(0.35, [30, 60, 120], Dash::DashDotDot),
            Ink::Finish => line(0.35, [30, 60, 120], Dash::Dotted),
            Ink::Board => line(0.35, [30, 60, 120], Dash::Solid),
            Ink::Grade => line(0.7, black, Dash::Solid),
            Ink::Level => line(NARROW, black, Dash::DashDot),
            Ink::Dimension => line(NARROW, black, Dash::Solid),
            Ink::Text => line(NARROW, black, Dash::Solid),
            Ink::Ground => Pen {
                width: 0.0,
                color: [255, 255, 255],
                dash: Dash::Solid,
                fill: Some([255, 255, 255]),
            },
            Ink::Border => line(0.5, black, Dash::Solid),
            Ink::Rule => line(NARROW, [110, 110, 110], Dash::Solid),
            Ink::Fault => line(0.7, [160, 30, 30], Dash::Solid),
            Ink::Doubt => line(0.5, [160, 30, 30], Dash::Dashed),
            Ink::Remark => line(0.35, [30, 60, 120], Dash::Dotted),
            Ink::Alarm => {
                Pen { width: 0.0, color: [160, 0, 0], dash: Dash::Solid, fill: Some([160, 0, 0]) }
            }
            Ink::AlarmFrame => line(1.4, black, Dash::Solid),
            Ink::AlarmText => line(NARROW, [255, 255, 255], Dash::Solid),
            Ink::Profile => line(0.5, [30, 60, 120], Dash::Solid),
            Ink::Flashing => line(0.35, [160, 30, 30], Dash::DashDotDot),
            Ink::Barrier => line(0.25, black, Dash::Dashed),
            Ink::Cloud => line(0.5, [160, 30, 30], Dash::Solid),
            Ink::Gone => line(0.35, [160, 30, 30], Dash::Dashed),
            Ink::Offcut => Pen {
                width: NARROW,
                color: [110, 110, 110],
                dash: Dash::Solid,
                fill: Some([225, 225, 225]),
            },
            Ink::Leader => line(NARROW, black, Dash::Solid),
            Ink::Frame => line(NARROW, black, Dash::Solid),
            Ink::Solid => Pen { width: 0.0, color: black, dash: Dash::Solid, fill: Some(black) },
            Ink::Match => line(0.7, black, Dash::DashDotDot),
        }
    }
}

/// Width of the lines of all that is said and not built: dimensions, leaders, frames, rules, mm.
const NARROW: f64 = 0.13;

// Heights of capitals on paper, inches: three, each for a purpose (`DrawingFact::TextSizes`).

/// What is read at work: marks, lengths, lists, notes (`DrawingFact::TextHeight`).
pub(super) const TEXT: f64 = 3.0 / 32.0;
/// Heads of lists, names of views.
pub(super) const HEADING: f64 = 1.0 / 8.0;
/// The name of a sheet, found while leafing through the set.
pub(super) const TITLE: f64 = 3.0 / 16.0;
