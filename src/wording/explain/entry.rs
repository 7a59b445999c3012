//! What is said of a code at length.

/// What a code means.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Explanation {
    /// In a few words.
    pub title: &'static str,
    /// Why it is raised, and what the program does then.
    pub cause: &'static str,
    /// What to do.
    pub remedy: &'static str,
    /// A piece of a drawing, a job or a command line that raises it.
    pub example: &'static str,
}
