//! Settings with where they come from.

/// For the value of a setting that has none.
pub const LEFT_OUT: &str = "left out";

/// Over the table.
pub const HEAD: &str = "Settings, and where each comes from:";
/// Where no file says a setting.
pub const DEFAULT: &str = "default";
/// In the place of a value that has no short form.
pub const SAID: &str = "as written there";

/// A list of tables.
pub fn entries(count: usize) -> String {
    match count {
        1 => "1 entry".to_owned(),
        n => format!("{n} entries"),
    }
}
