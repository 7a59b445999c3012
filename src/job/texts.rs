//! The files that a job is made of, and who reads them.

use crate::finding::job::ExtendsFault;

/// A file of a job.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct JobText {
    /// What errors call it.
    pub name: String,
    /// What it says.
    pub text: String,
}

/// Who reads the files that a job extends.
pub trait Texts {
    /// The file that `from` extends, as it is written there.
    ///
    /// # Errors
    /// Why it cannot be read.
    fn extended(&mut self, from: &str, extends: &str) -> Result<JobText, ExtendsFault>;
}

/// Nobody: one text is all there is, as on the page.
#[derive(Clone, Copy, Debug)]
pub struct Alone;

impl Texts for Alone {
    fn extended(&mut self, _: &str, _: &str) -> Result<JobText, ExtendsFault> {
        Err(ExtendsFault::NoFiles)
    }
}
