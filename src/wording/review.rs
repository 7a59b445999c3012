//! Words of the page for a browser.

use crate::units::counted;

/// What the page is, behind the drawing's name.
pub const TITLE: &str = "siding layout";
/// Switches, each with the class of what it shows.
pub const SWITCHES: [(&str, &str); 5] = [
    ("lengths", "Lengths"),
    ("edges", "Edges of pieces"),
    ("openings", "Openings"),
    ("trims", "Trim"),
    ("source", "Drawing behind"),
];
/// Heading of the switches.
pub const SHOW: &str = "Show";
/// Looks of the page, each with its key.
pub const LOOKS: [(&str, &str); 4] =
    [("", "As the device"), ("light", "Light"), ("dark", "Dark"), ("sun", "In the sun")];
/// What they are.
pub const LOOK: &str = "Look";
/// Label of the field for a mark.
pub const FIND: &str = "Find a mark";
/// What the button beside it says.
pub const GO: &str = "Go";
/// Said when there is none; of stock lengths called so.
pub fn no_mark(stock: &str) -> String {
    format!("No piece and no {stock} of that mark")
}
/// Label of the list of courses.
pub const COURSE: &str = "Course";
/// All of them.
pub const ALL_COURSES: &str = "all";
/// Buttons over a drawing: nearer, farther, the whole of it.
pub const NEARER: &str = "Nearer";
/// Farther.
pub const FARTHER: &str = "Farther";
/// The whole elevation.
pub const WHOLE: &str = "Whole";
/// Heading of the house folded up.
pub const FOLDED: &str = "The house folded up";
/// What it shows.
pub const FOLDED_SAID: &str = "Walls stood round the corners that were found. Courses that meet run on round the corner. A wall drawn in dashes is joined by no corner: it stands in the plane of its elevation. Drag to turn; arrow keys turn and tilt.";
/// What it is, for whoever cannot see it.
pub const FOLDED_LABEL: &str =
    "The walls of the house stood round its corners, with their courses and openings";
/// Its buttons.
pub const TURN_LEFT: &str = "Turn left";
/// The other way.
pub const TURN_RIGHT: &str = "Turn right";
/// How the drawing is moved.
pub const HOW_TO_MOVE: &str = "Tap a piece for its cut. Drag, pinch or turn the wheel to come nearer; arrow keys, plus and minus do it too.";
/// Headings of lists.
pub fn stock_gives(stock: &str) -> String {
    format!("What each {stock} gives")
}
/// Findings.
pub const FINDINGS: &str = "Found";
/// Takeoff.
pub const TAKEOFF: &str = "Order, and why";
/// Columns of it.
pub const TAKEOFF_HEADS: [&str; 4] = ["Item", "Order", "Unit", "Why"];
/// Columns of a saw list.
pub const SAW_HEADS: [&str; 4] = ["Piece", "From", "Cut", "Hung"];
/// Order of work of a wall.
pub const STEPS: &str = "Order of work";
/// Cautions.
pub const CAUTIONS: &str = "Cautions";
/// Of a panel: what is left.
pub fn left_over(length: &str) -> String {
    format!("left over {length}")
}
/// Keeps the ticks in a file.
pub const SAVE_TICKS: &str = "Save ticks to a file";
/// Where ticks are kept.
pub const TICKS_KEPT: &str = "Ticks are kept in this browser on this device, and nowhere else. Save them to a file to hand them on.";
/// Ticks could not be kept.
pub const TICKS_NOT_KEPT: &str =
    "This browser keeps no ticks here. Save them to a file before you close the page.";
/// Closes what is told of a piece.
pub const CLOSE: &str = "Close";
/// Shows a piece.
pub const SHOW_IT: &str = "Show";
/// What else the stock length of a piece gives.
pub fn also_gives(stock: &str) -> String {
    format!("Its {stock} also gives")
}
/// Nothing else.
pub fn gives_nothing_else(stock: &str) -> String {
    format!("Its {stock} gives nothing else.")
}

/// What a picture of an elevation shows, for who cannot see it.
pub fn picture(elevation: &str, pieces: usize) -> String {
    format!("{elevation}: {}, each listed under it with its length", counted(pieces, "piece"))
}

/// A piece by its mark and its length.
pub fn piece(mark: &str, length: &str) -> String {
    format!("{mark}, {length}")
}

/// Stock lengths called so, walls and area in one line.
pub fn sum((count, stock): (usize, &str), walls: usize, net: f64) -> String {
    format!("{}, {}, {net:.1} sq ft of siding", counted(count, stock), counted(walls, "wall"))
}
