//! Columns of the comma-separated lists whose names are longer than two words.

/// What is bought.
pub const UNITS_TO_BUY: &str = "units to buy";
/// Height over the butt line of a course.
pub const OVER_BUTT: &str = "over butt line";
/// Set-back of angled ends.
pub const POINTS: [&str; 2] = ["left long to short point", "right long to short point"];
/// Angles of ends.
pub const FROM_SQUARE: [&str; 2] = ["left from square", "right from square"];
/// Which half of a ripped panel.
pub const HALF: &str = "half of the panel";
/// In which turn the wall of a piece is sided, and which batch of its saw list it is cut in.
pub const SAW: [&str; 2] = ["turn of the wall", "batch of its saw list"];
/// Part of a wall.
pub const WALL_OR_GABLE: &str = "wall or gable";
/// Lengths of a piece along its butt edge and its top edge.
pub const EDGES: [&str; 2] = ["butt edge", "top edge"];
/// How a piece is held that keeps no hem, or no lock.
pub const HELD: &str = "held without hem or lock";
/// Whether shims hold the panel's angle.
pub const SHIM: &str = "shim";
/// The supplier's number of a line.
pub const ITEM_NUMBER: &str = "item number";
