//! Counting rules as printed, for checking a takeoff by hand. Each is the rule and nothing else:
//! lengths in the unit its source uses.

/// Courses of a height: rounded up (`TakeoffFact::CoursesRoundedUp`). Both in inches.
pub fn courses(height: f64, exposure: f64) -> u32 {
    (height / exposure.max(0.1) - 1e-9).ceil().clamp(0.0, 1e6) as u32
}

/// Height of material that whole courses take, inches (`TakeoffFact::CoursesRoundedUp`).
pub fn material_height(height: f64, exposure: f64) -> f64 {
    f64::from(courses(height, exposure)) * exposure
}

/// Area of a gable or dormer cheek: base x height / 2 (`TakeoffFact::GableTriangle`).
pub fn triangle(base: f64, height: f64) -> f64 {
    base * height / 2.0
}

/// A gable with one third for waste (`TakeoffFact::GableWaste`).
pub fn gable_with_waste(area: f64) -> f64 {
    area * 4.0 / 3.0
}

/// Starter pieces: perimeter less door widths, by the stock length
/// (`TakeoffFact::StarterByPerimeter`).
pub fn starter(perimeter: f64, doors: f64, stock: f64) -> f64 {
    ((perimeter - doors).max(0.0) / stock - 1e-9).ceil().max(0.0)
}

/// Corner posts: one a corner and story (`TakeoffFact::PostsByStory`).
pub fn posts(corners: f64, stories: f64) -> f64 {
    corners * stories
}

/// J-channel pieces of one opening: 2 when smaller than 6 x 5 ft, else 3
/// (`TakeoffFact::ChannelsByOpening`). Inches.
pub fn opening_channels(width: f64, height: f64) -> f64 {
    let (long, short) = (width.max(height), width.min(height));
    if long < 72.0 && short < 60.0 { 2.0 } else { 3.0 }
}

/// J-channel pieces of one gable end (`TakeoffFact::ChannelsByOpening`).
pub const GABLE_CHANNELS: f64 = 4.0;

/// Utility trim pieces: tops under overhangs and sills, by the stock length
/// (`TakeoffFact::UndersillByLength`).
pub fn utility(tops_and_sills: f64, stock: f64) -> f64 {
    (tops_and_sills / stock - 1e-9).ceil().max(0.0)
}

/// Running feet of boards a square foot of wall takes, by the exposed face in inches
/// (`TakeoffFact::WoodCoverage`, `Example::BoardCoverage`).
pub fn running_feet(exposure: f64) -> f64 {
    12.0 / exposure.max(0.1)
}

/// Board feet a square foot of wall takes, by nominal width and exposed face in inches
/// (`TakeoffFact::WoodCoverage`, `Example::BoardCoverage`).
pub fn board_feet(nominal: f64, exposure: f64) -> f64 {
    nominal / exposure.max(0.1)
}

/// Pounds of nails for an area in square feet (`TakeoffFact::NailPounds`).
pub fn nail_pounds(area: f64) -> f64 {
    0.01 * area
}

/// Nails a square: at `spacing` along every course, and one more a piece
/// (`TakeoffFact::NailsBySquare`). Inches.
pub fn nails_a_square(exposure: f64, length: f64, spacing: f64) -> f64 {
    let run = 100.0 * 144.0 / exposure.max(0.1);
    run / spacing.max(0.1) + run / length.max(0.1)
}
