//! A drawing's lines, layers, unit and dimensions: findings of `normalize`.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::group::group;
use crate::model::linework::LayerUse;
use crate::model::no_siding::NoSiding;
use crate::model::source::UnitBasis;
use crate::units::Unit;

/// By what the scale of a page is taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum PaperScaleBy {
    /// A distance that the job gives.
    Known,
    /// Dimensions beside the lines that they measure.
    Dimensions,
}

/// A scale that a sheet states.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct WrittenScale {
    /// As written.
    pub text: String,
    /// At how many percent of it the page is printed, by the scale that is taken.
    pub percent: f64,
}

/// A layer with how much is on it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct LayerCount {
    /// The layer.
    pub layer: String,
    /// Items on it.
    pub items: usize,
    /// Whether it is shown.
    pub shown: bool,
}

impl From<&LayerUse> for LayerCount {
    fn from(l: &LayerUse) -> Self {
        LayerCount { layer: l.layer.name.clone(), items: l.items, shown: l.layer.shown }
    }
}

/// How high walls stand in a unit.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct HeightInUnit {
    /// The unit.
    pub unit: Unit,
    /// The height, inches.
    pub height: f64,
}

group! {
    /// What was assumed, mended or left out where lines were brought to inches.
    LineFinding, LineCode {
        /// The drawing's header names no unit, or one that sizes speak against.
        UnitAssumed "unit-assumed", Warning, Architect {
            /// The unit taken.
            unit: Unit,
            /// By what.
            basis: UnitBasis,
            /// The header's unit, with how high walls would stand in it.
            #[serde(skip_serializing_if = "Option::is_none")]
            header: Option<HeightInUnit>,
            /// How high walls stand in the unit taken, where any are drawn.
            #[serde(skip_serializing_if = "Option::is_none")]
            taken: Option<HeightInUnit>,
        }
        /// The header alone decides between two units in which walls are as high as houses are.
        UnitUnsure "unit-unsure", Warning, Office {
            /// The header's unit, which is taken, with how high walls stand in it.
            taken: HeightInUnit,
            /// Another one that fits.
            other: HeightInUnit,
        }
        /// The unit in force.
        UnitTaken "unit-taken", Info, Office {
            /// The unit.
            unit: Unit,
            /// By what.
            basis: UnitBasis,
            /// Whether door heights or written dimensions agree.
            proved: bool,
        }
        /// The unit gives walls that no house has.
        UnitImplausible "unit-implausible", Error or Warning if stated, Office {
            /// By what it was taken.
            basis: UnitBasis,
            /// The unit, with how high walls stand in it.
            tallest: HeightInUnit,
            /// The unit that it is more likely in.
            #[serde(skip_serializing_if = "Option::is_none")]
            likely: Option<HeightInUnit>,
            /// Whether the job states it, so that it is taken all the same.
            stated: bool,
        }
        /// A known distance cannot be read.
        KnownUnreadable "known-unreadable", Error, Office {
            /// As written.
            text: String,
        }
        /// How large a page of paper shows the house is not known.
        ScaleUnknown "scale-unknown", Error, Office {
            /// Scales that the sheet states, as written.
            written: Vec<String>,
        }
        /// The scale a page of paper is taken in, and what else on it speaks of one.
        ScaleOfPaper "scale-of-paper", Warning or Info if agrees, Office {
            /// Inches of the house in a point of the page.
            inches: f64,
            /// By what.
            by: PaperScaleBy,
            /// Scales that the sheet states.
            written: Vec<WrittenScale>,
            /// How many dimensions beside their lines agree on one scale.
            dimensions: usize,
            /// Inches in a point by these.
            #[serde(skip_serializing_if = "Option::is_none")]
            by_dimensions: Option<f64>,
            /// Whether all of them are within three percent of one another.
            agrees: bool,
        }
        /// A page shows views in several scales.
        ScalesOnPage "scales-on-page", Warning, Office {
            /// Scales that the sheet states, as written.
            written: Vec<String>,
            /// Inches in a point by dimensions that agree, for each group of them.
            by_dimensions: Vec<f64>,
        }
        /// A dimension's text disagrees with what it measures.
        DimensionDisagrees "dimension-disagrees", Error or Warning if accepted, Architect {
            /// The length its text states, inches.
            stated: f64,
            /// The length it measures, inches.
            measured: f64,
            /// The drawing's unit.
            unit: Unit,
            /// Whether the job accepts it.
            accepted: bool,
        }
        /// More dimensions disagree than are told one by one.
        DimensionsMore "dimensions-more", Info, Architect {
            /// How many more.
            count: usize,
        }
        /// Points stand on a layer of outlines.
        PointLeftOut "point-left-out", Warning, Architect {
            /// The layer.
            layer: String,
            /// How many.
            points: usize,
        }
        /// Layers with something on them have no role.
        LayerUnmapped "layer-unmapped", Info, Office {
            /// The layers.
            layers: Vec<LayerCount>,
        }
        /// A layer is off or frozen.
        LayerHidden "layer-hidden", Info, Office {
            /// The layer.
            layer: String,
            /// Items on it.
            items: usize,
            /// Whether it is read all the same, since the job names it.
            read: bool,
        }
        /// Lines have no length.
        LineZero "line-zero", Info, Architect {
            /// How many.
            lines: usize,
        }
        /// Lines stand twice at one place.
        LineTwice "line-twice", Info, Architect {
            /// How many were left out.
            lines: usize,
        }
        /// Drawing noise was taken out.
        LinesSquared "lines-squared", Warning or Info if slight, Architect {
            /// Sides that were all but level or plumb and were squared.
            sides: usize,
            /// Steps that were closed.
            steps: usize,
            /// The greatest distance a corner was moved for it, inches.
            most: f64,
            /// The tilt that was undone first, degrees counter-clockwise; none where there was none.
            #[serde(skip_serializing_if = "Option::is_none")]
            tilt: Option<f64>,
            /// Whether nothing was moved by more than 1/16 in, and the tilt is no more than noise.
            slight: bool,
        }
        /// Loops with gaps were closed.
        GapsClosed "gaps-closed", Info, Architect {
            /// Their layer.
            layer: String,
            /// How many loops.
            loops: usize,
            /// The widest gap, inches.
            widest: f64,
        }
        /// Ends that nearly meet were joined.
        EndsJoined "ends-joined", Info, Office {
            /// How many.
            ends: usize,
            /// The greatest distance joined, inches.
            weld: f64,
            /// Whether they met the middle of other lines, rather than ends.
            loose: bool,
        }
        /// Level lines at one pitch were taken for siding.
        SidingFromLines "siding-from-lines", Warning, Office {
            /// Their layer.
            layer: String,
            /// From one to the next, inches.
            spacing: f64,
            /// Areas that they cover.
            patches: usize,
            /// All of them together, square feet.
            area: f64,
        }
        /// No line is drawn where level lines taken for siding end.
        CoursesUnended "courses-unended", Warning, Architect {
            /// Their layer.
            layer: String,
            /// Over what length, inches.
            length: f64,
        }
        /// Level lines at one pitch were not taken for siding.
        LinesNoSiding "lines-no-siding", Warning or Info if beside_hatches, Office {
            /// Whether siding is drawn as hatches, many times their area.
            beside_hatches: bool,
            /// Their layer.
            layer: String,
            /// Why.
            why: NoSiding,
            /// From one to the next, inches.
            spacing: f64,
            /// Areas that they cover.
            patches: usize,
            /// All of them together, square feet.
            area: f64,
        }
    }
}
