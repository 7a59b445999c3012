//! Lengths of a house that are worth taping before anything is ordered.

use crate::geom::vocabulary::Xy;

/// What is taped.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum MeasureKind {
    /// Width of a wall at its foot.
    FootWidth,
    /// Width of a wall at its top, under the soffit or the foot of a rake.
    TopWidth,
    /// How far the left side leans to the right from foot to top.
    LeftLean,
    /// How far the right side leans to the right.
    RightLean,
    /// Level of the wall's start at its left corner, over the floor line.
    LeftFoot,
    /// The same at its right corner.
    RightFoot,
    /// From there up to the soffit, at the left corner.
    LeftHeight,
    /// The same at the right corner.
    RightHeight,
    /// Distance of a peak from the left corner at the foot, level.
    PeakPlace,
    /// Level of a peak over the floor line.
    PeakLevel,
    /// Distance of an opening from the left side of its wall, level at its sill.
    Place,
    /// Width of an opening.
    Width,
    /// Height of an opening.
    Height,
    /// Level of a sill or of the foot of a door over the floor line.
    Sill,
}

impl MeasureKind {
    /// All of them.
    pub const ALL: [MeasureKind; 14] = [
        MeasureKind::FootWidth,
        MeasureKind::TopWidth,
        MeasureKind::LeftLean,
        MeasureKind::RightLean,
        MeasureKind::LeftFoot,
        MeasureKind::RightFoot,
        MeasureKind::LeftHeight,
        MeasureKind::RightHeight,
        MeasureKind::PeakPlace,
        MeasureKind::PeakLevel,
        MeasureKind::Place,
        MeasureKind::Width,
        MeasureKind::Height,
        MeasureKind::Sill,
    ];

    /// As names of measures end.
    pub fn word(self) -> &'static str {
        match self {
            MeasureKind::FootWidth => "foot-width",
            MeasureKind::TopWidth => "top-width",
            MeasureKind::LeftLean => "left-lean",
            MeasureKind::RightLean => "right-lean",
            MeasureKind::LeftFoot => "left-foot",
            MeasureKind::RightFoot => "right-foot",
            MeasureKind::LeftHeight => "left-height",
            MeasureKind::RightHeight => "right-height",
            MeasureKind::PeakPlace => "peak-place",
            MeasureKind::PeakLevel => "peak-level",
            MeasureKind::Place => "place",
            MeasureKind::Width => "width",
            MeasureKind::Height => "height",
            MeasureKind::Sill => "sill",
        }
    }

    /// The name of the measure of a wall or an opening: `front-1/foot-width`.
    pub fn of(self, thing: &str) -> String {
        format!("{thing}/{}", self.word())
    }
}

/// A length to tape.
#[derive(Clone, Debug, PartialEq)]
pub struct Measure {
    /// Its name, the same in every file: `front-W1/width`.
    pub name: String,
    /// The elevation.
    pub elevation: String,
    /// The wall.
    pub wall: String,
    /// The opening, or the wall itself.
    pub thing: String,
    /// What is taped.
    pub kind: MeasureKind,
    /// As drawn, inches.
    pub drawn: f64,
    /// Where it is taped from and to, elevation inches.
    pub ends: [Xy; 2],
    /// What an error here spoils.
    pub spoils: Spoils,
}

/// What an error of half an inch spoils: pieces of siding that were cut to the wrong length, height or notch.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Spoils {
    /// Pieces.
    pub pieces: usize,
    /// Their length, inches.
    pub length: f64,
}
