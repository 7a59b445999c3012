//! Names of pens: what stands in for layers where a print has none.

use hayro_interpret::{DrawMode, DrawProps, Paint};

use crate::model::drawing::{Dash, Pen};
use crate::read::pens;
use crate::units::MM_PER_INCH;

/// Points to the inch, as the format has it.
const POINTS: f64 = 72.0;

/// What the name of a pen ends with that draws in dashes.
pub(super) const DASHED: &str = " dashed";

/// What something is drawn with.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Ink {
    /// Width of a stroke, points; none for a fill.
    pub(super) width: Option<f64>,
    /// Red, green, blue.
    pub(super) color: [u8; 3],
    /// In dashes: what is hidden, or a line that stands for something not built.
    pub(super) dashed: bool,
}

impl Ink {
    /// Of a stroke or a fill. The width is as it is drawn: a print made smaller has thinner pens.
    pub(super) fn of(props: &DrawProps, mode: &DrawMode) -> Self {
        let scale = props.transform.determinant().abs().sqrt();
        let (width, dashed) = match mode {
            DrawMode::Stroke(stroke) | DrawMode::FillAndStroke(_, stroke) => {
                let dashed = stroke.dash_array.iter().any(|d| *d > 0.0);
                (Some(f64::from(stroke.line_width) * scale), dashed)
            }
            DrawMode::Fill(_) | DrawMode::Invisible => (None, false),
        };
        let color = match &props.paint {
            Paint::Color(color) => {
                let [r, g, b, _] = color.to_rgba().to_rgba8();
                [r, g, b]
            }
            Paint::Pattern(_) => [128; 3],
        };
        Ink { width, color, dashed }
    }

    /// Its name: `stroke 0.24 pt gray 77 %`, `fill black`, `stroke 0.5 pt #c80000`.
    pub(super) fn name(self) -> String {
        let name = pens::name(self.width.map(|w| (w, " pt")), self.color);
        if self.dashed { name + DASHED } else { name }
    }

    /// What tells it from other pens on a layer of the file: color from 1, width in hundredths of a point.
    pub(super) fn of_item(self) -> crate::model::drawing::Ink {
        let [r, g, b] = self.color;
        let color = u32::from_be_bytes([0, r, g, b]) + 1;
        let weight = self.width.map_or(0, |w| (w * 100.0).round().clamp(0.0, 1e6) as i32 + 1);
        let ink = crate::model::drawing::Ink { color, weight };
        if self.dashed { in_dashes(ink) } else { ink }
    }

    /// The pen as a drawing has it.
    pub(super) fn pen(self) -> Pen {
        let width = self.width.map_or(Pen::default().width, |w| w / POINTS * MM_PER_INCH);
        let fill = self.width.is_none().then_some(self.color);
        let dash = if self.dashed { Dash::Dashed } else { Dash::Solid };
        Pen { width, color: self.color, fill, dash }
    }
}

/// The same ink in dashes.
pub(super) fn in_dashes(ink: crate::model::drawing::Ink) -> crate::model::drawing::Ink {
    crate::model::drawing::Ink { weight: -ink.weight, ..ink }
}
