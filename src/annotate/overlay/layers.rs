//! The layers of the overlay.

use crate::model::drawing::Dash;

/// Name, width, color and line type of each.
pub(super) const LAYERS: [(&str, f64, [u8; 3], Dash); 9] = [
    ("Z-ELEV-OTLN", 0.5, [0, 0, 0], Dash::Solid),
    ("Z-ELEV-CRSE", 0.18, [110, 110, 110], Dash::Solid),
    ("Z-ELEV-SEAM", 0.5, [200, 0, 0], Dash::Solid),
    ("Z-ELEV-TRIM", 0.35, [0, 70, 160], Dash::Dashed),
    ("Z-ELEV-CUTS", 0.35, [150, 90, 0], Dash::Solid),
    ("Z-ELEV-IDEN", 0.18, [0, 0, 0], Dash::Solid),
    ("Z-ELEV-DIMS", 0.18, [0, 110, 0], Dash::Solid),
    ("Z-ELEV-NOTE", 0.18, [0, 0, 0], Dash::Solid),
    ("Z-ELEV-FACE", 0.13, [175, 175, 175], Dash::Solid),
];

/// The layer of what breaks a rule of the check: in the drawing only where something does.
pub(super) const FAILED: (&str, f64, [u8; 3], Dash) =
    ("Z-ELEV-FAIL", 0.7, [200, 0, 0], Dash::Solid);

/// Indices of layers above.
pub(super) const OUTLINE: usize = 0;
pub(super) const COURSE: usize = 1;
pub(super) const SEAM: usize = 2;
pub(super) const TRIM: usize = 3;
pub(super) const CUTS: usize = 4;
pub(super) const IDEN: usize = 5;
pub(super) const DIMS: usize = 6;
pub(super) const NOTE: usize = 7;
pub(super) const FACE: usize = 8;
pub(super) const FAIL: usize = 9;
