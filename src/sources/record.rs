//! What is known of a fact: its value, who says so, and how sure it is.

use super::published::Published;

/// How sure a fact is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sureness {
    /// Read in the source itself.
    Read,
    /// From memory of the source named, or of the trade: check it in the text.
    Memory,
    /// Common practice of the trade; no source found.
    Practice,
    /// Sources differ: a setting.
    Disputed,
    /// Arithmetic, geometry or definition.
    Exact,
}

/// A fact's record.
#[derive(Clone, Copy, Debug)]
pub struct Record {
    /// What holds, with its value.
    pub value: &'static str,
    /// Who published it; empty for common practice and arithmetic.
    pub sources: &'static [Published],
    /// Where in the first of them; empty where it has no sections.
    pub section: &'static str,
    /// How sure it is.
    pub sureness: Sureness,
}

/// Declares facts of one subject, each with its record.
macro_rules! facts {
    ($(#[$doc:meta])* $subject:ident {
        $($name:ident: $value:literal, [$($source:ident),*], $section:literal, $sureness:ident;)*
    }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum $subject {
            $(#[doc = $value] $name,)*
        }

        impl $subject {
            /// Every fact of the subject.
            pub const ALL: &'static [$subject] = &[$($subject::$name),*];

            /// Its record.
            pub fn record(self) -> $crate::sources::record::Record {
                match self {
                    $($subject::$name => $crate::sources::record::Record {
                        value: $value,
                        sources: &[$($crate::sources::published::Published::$source),*],
                        section: $section,
                        sureness: $crate::sources::record::Sureness::$sureness,
                    },)*
                }
            }
        }
    };
}

pub(super) use facts;
