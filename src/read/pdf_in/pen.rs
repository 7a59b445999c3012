//! Names of pens: what stands in for layers where a print has none.

use hayro_interpret::{DrawMode, DrawProps, Paint};

use crate::model::drawing::Pen;
use crate::units::MM_PER_INCH;

/// Points to the inch, as the format has it.
const POINTS: f64 = 72.0;

/// What something is drawn with.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Ink {
    /// Width of a stroke, points; none for a fill.
    pub(super) width: Option<f64>,
    /// Red, green, blue.
    pub(super) color: [u8; 3],
}

impl Ink {
    /// Of a stroke or a fill. The width is as it is drawn: a print made smaller has thinner pens.
    pub(super) fn of(props: &DrawProps, mode: &DrawMode) -> Self {
        let scale = props.transform.determinant().abs().sqrt();
        let width = match mode {
            DrawMode::Stroke(stroke) | DrawMode::FillAndStroke(_, stroke) => {
                Some(f64::from(stroke.line_width) * scale)
            }
            DrawMode::Fill(_) | DrawMode::Invisible => None,
        };
        let color = match &props.paint {
            Paint::Color(color) => {
                let [r, g, b, _] = color.to_rgba().to_rgba8();
                [r, g, b]
            }
            Paint::Pattern(_) => [128; 3],
        };
        Ink { width, color }
    }

    /// Its name: `stroke 0.24 pt gray 77 %`, `fill black`, `stroke 0.5 pt #c80000`.
    pub(super) fn name(self) -> String {
        let color = match self.color {
            [0, 0, 0] => "black".to_owned(),
            [255, 255, 255] => "white".to_owned(),
            [r, g, b] if r == g && g == b => {
                format!("gray {:.0} %", f64::from(r) / 2.55)
            }
            [r, g, b] => format!("#{r:02x}{g:02x}{b:02x}"),
        };
        match self.width {
            Some(width) => format!("stroke {} pt {color}", (width * 100.0).round() / 100.0),
            None => format!("fill {color}"),
        }
    }

    /// What tells it from other pens on a layer of the file: color from 1, width in hundredths of a point.
    pub(super) fn of_item(self) -> crate::model::drawing::Ink {
        let [r, g, b] = self.color;
        let color = u32::from_be_bytes([0, r, g, b]) + 1;
        let weight = self.width.map_or(0, |w| (w * 100.0).round().clamp(0.0, 1e6) as i32 + 1);
        crate::model::drawing::Ink { color, weight }
    }

    /// The pen as a drawing has it.
    pub(super) fn pen(self) -> Pen {
        let width = self.width.map_or(Pen::default().width, |w| w / POINTS * MM_PER_INCH);
        let fill = self.width.is_none().then_some(self.color);
        Pen { width, color: self.color, fill, ..Pen::default() }
    }
}
