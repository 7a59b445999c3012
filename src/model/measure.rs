//! Lengths of a house that are worth taping before anything is ordered.

use crate::geom::vocabulary::Xy;

/// The longest wall that is taped, inches: 1,000 ft. Of our own choosing, no source.
const LONGEST: f64 = 12_000.0;
/// The least width or height of a wall or an opening, inches. Of our own choosing, no source.
const LEAST: f64 = 1.0;
/// The most that a side of a wall leans, inches. Of our own choosing, no source.
const MOST_LEAN: f64 = 24.0;

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
    /// Level of the bottom edge of a band over the floor line.
    BandBottom,
    /// Level of its top edge.
    BandTop,
}

impl MeasureKind {
    /// All of them.
    pub const ALL: [MeasureKind; 16] = [
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
        MeasureKind::BandBottom,
        MeasureKind::BandTop,
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
            MeasureKind::BandBottom => "bottom",
            MeasureKind::BandTop => "top",
        }
    }

    /// What a name is of: the word that it ends with; none where that is no measure's.
    pub fn of_name(name: &str) -> Option<Self> {
        let (_, word) = name.rsplit_once('/')?;
        Self::ALL.into_iter().find(|k| k.word() == word)
    }

    /// The least and the most it may be, inches. Levels may lie under the floor line, sides may lean either way.
    pub fn range(self) -> [f64; 2] {
        match self {
            MeasureKind::LeftLean | MeasureKind::RightLean => [-MOST_LEAN, MOST_LEAN],
            MeasureKind::LeftFoot
            | MeasureKind::RightFoot
            | MeasureKind::PeakLevel
            | MeasureKind::Sill
            | MeasureKind::BandBottom
            | MeasureKind::BandTop => [-LONGEST, LONGEST],
            MeasureKind::Place | MeasureKind::PeakPlace => [0.0, LONGEST],
            MeasureKind::FootWidth
            | MeasureKind::TopWidth
            | MeasureKind::LeftHeight
            | MeasureKind::RightHeight
            | MeasureKind::Width
            | MeasureKind::Height => [LEAST, LONGEST],
        }
    }

    /// Whether it may be that many inches.
    pub fn may_be(self, inches: f64) -> bool {
        let [least, most] = self.range();
        (least..=most).contains(&inches)
    }

    /// The name of the measure of a wall, an opening or a band: `front-1/foot-width`.
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
    /// The opening, the band, or the wall itself.
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
