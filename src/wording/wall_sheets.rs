//! Words of a wall's own sheet.

/// Head of what is cut for the wall.
pub const SAW_LIST: &str = "Saw list";
/// What the two boxes of a row are for.
pub const CUT_AND_HUNG: &str = "boxes: cut, hung";
/// What the box of a row is for.
pub const DONE: &str = "box: done";
/// Panels to open.
pub const OPEN: &str = "Open:";
/// Offcuts of other walls' panels.
pub const OFFCUTS_FROM: &str = "Offcuts that wait:";
/// Offcuts for later walls.
pub const LAY_ASIDE: &str = "Lay aside:";
/// Head of the table of rakes.
pub const RAKES: &str = "Rakes, by course";
/// Its columns.
pub const RAKE_HEADS: [&str; 6] = ["piece", "bottom", "top", "left", "right", "from"];
/// What its figures are.
pub const RAKES_ARE: &str = "Bottom (butt) edge, top edge, and the angle of each end with the long edge. The pattern of the slope is at the end of the set.";
/// A raked piece where its figures stand one after the other: its mark, and its bottom edge.
pub fn raked(mark: &str, bottom: &str) -> String {
    format!("{mark} {bottom}")
}

/// What follows: its top edge, both ends, its panel.
pub fn raked_ends(top: &str, [left, right]: [&str; 2], panel: &str) -> String {
    format!("{top}, {left}/{right}, {panel}").replace(' ', "\u{a0}").replace(",\u{a0}", ", ")
}

/// An edge without length.
pub const A_POINT: &str = "point";
/// An end cut square.
pub const SQUARE: &str = "90°";
/// Head of the notes.
pub const ON_THIS_SHEET: &str = "On this sheet";
/// The heading of a view of trim alone.
pub fn trim_view(title: &str) -> String {
    format!("{title}: marks of trim")
}

/// The name of a wall's sheet.
pub fn title(prefix: &str, elevation: &str) -> String {
    format!("Wall {prefix}, {elevation}")
}

/// The same where a wall takes several sheets.
pub fn part(title: &str, part: usize, count: usize) -> String {
    if count == 1 { title.to_owned() } else { format!("{title}, part {part} of {count}") }
}

/// What a wall's sheet holds.
pub fn description(title: &str, pieces: usize, scale: &str) -> String {
    let pieces = crate::units::counted(pieces, "piece");
    format!("{title}: {pieces} with marks and lengths at {scale}, saw list, trim, order of work")
}

/// How marks on the sheet read.
pub fn marks_read(prefix: &str) -> String {
    format!(
        "Marks read {prefix}-course-piece, on the drawing and in these lists without {prefix}; with each its length, and in the lists what it is cut from. Lines and signs: see the overview."
    )
}

/// A batch: how many, how long.
pub fn batch(count: usize, length: &str) -> String {
    format!("{count} at {length}")
}

/// Panels with a wall.
pub fn panels_of(panels: &str, wall: &str) -> String {
    format!("{panels} (wall {wall})")
}

/// A piece with its panel.
pub fn from_panel(mark: &str, panel: &str) -> String {
    // A hard space: both stay on one line.
    format!("{mark}\u{a0}{panel}")
}

/// A trim with the number of the stock length it is cut from.
pub fn from_stock(mark: &str, number: u32) -> String {
    format!("{mark}\u{a0}({number})")
}

/// Which stock lengths a wall's trim is cut from: those to open, those that wait, those to lay aside.
pub fn sticks(opened: &str, taken: &[String], aside: &[String]) -> String {
    let mut out = Vec::new();
    if !opened.is_empty() {
        out.push(format!("open {opened}"));
    }
    if !taken.is_empty() {
        out.push(format!("offcuts of {}", super::lists::commas(taken)));
    }
    if !aside.is_empty() {
        out.push(format!("lay aside {}", super::lists::commas(aside)));
    }
    out.join("; ")
}

/// The pieces of a batch, with the cut that a cutting sheet shows.
pub fn marks(whole: bool, cut: Option<(usize, bool)>, marks: &str) -> String {
    match cut {
        Some((n, false)) => format!("cut\u{a0}{n}: {marks}"),
        Some((n, true)) => format!("cut\u{a0}{n}, mirrored: {marks}"),
        None if whole => format!("whole: {marks}"),
        None => marks.to_owned(),
    }
}

/// An angle with the long edge.
pub fn degrees(angle: f64) -> String {
    format!("{:.1}°", angle.abs())
}

/// A trim's length with its ends, where they are not square.
pub fn trim_cut(length: &str, ends: &[String; 2], bent: bool) -> String {
    let length = if bent { super::trim::along_the_curve(length) } else { length.to_owned() };
    match ends {
        [a, b] if a.is_empty() && b.is_empty() => length,
        [a, b] if a == b => format!("{length} both {a}"),
        [a, b] if b.is_empty() => format!("{length} {a}"),
        [a, b] if a.is_empty() => format!("{length} {b}"),
        [a, b] => format!("{length} {a}, {b}"),
    }
}
