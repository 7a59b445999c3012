//! How a group of findings is declared: each variant with its code, severity, who must act, and its
//! facts, so that none can be left out.

/// Declares a group: the enum of findings with their facts, and the enum of their codes.
///
/// `Name "code", Error, Office { .. }` is a finding of one severity;
/// `Name "code", Error or Warning if flag, Office { flag: bool, .. }` has the second where its own
/// `flag` holds.
macro_rules! group {
    (
        $(#[$doc:meta])*
        $group:ident, $codes:ident {
            $(
                $(#[$about:meta])*
                $name:ident $code:literal, $severity:ident $(or $other:ident if $flag:ident)?, $audience:ident
                { $( $(#[$field_about:meta])* $field:ident : $type:ty ),* $(,)? }
            )*
        }
    ) => {
        $(#[$doc])*
        #[derive(
            Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize, schemars::JsonSchema,
        )]
        #[serde(tag = "code")]
        pub enum $group {
            $(
                $(#[$about])*
                #[serde(rename = $code)]
                $name { $( $(#[$field_about])* $field: $type ),* }
            ),*
        }

        #[doc = concat!("The codes of [`", stringify!($group), "`].")]
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        pub enum $codes {
            $( $(#[$about])* $name ),*
        }

        impl $group {
            /// Its code.
            pub fn code(&self) -> $codes {
                match self {
                    $( $group::$name { .. } => $codes::$name ),*
                }
            }

            /// How much it matters.
            pub fn severity(&self) -> $crate::finding::severity::Severity {
                use $crate::finding::severity::Severity;
                match self {
                    $(
                        $group::$name { $( $flag, )? .. } => {
                            $( if *$flag { return Severity::$other; } )?
                            Severity::$severity
                        }
                    )*
                }
            }
        }

        impl $codes {
            /// Every code of the group.
            pub const ALL: &'static [Self] = &[ $( Self::$name ),* ];

            /// The code as it is written.
            pub fn word(self) -> &'static str {
                match self {
                    $( Self::$name => $code ),*
                }
            }

            /// How much its findings may matter, the usual first.
            pub fn severities(self) -> &'static [$crate::finding::severity::Severity] {
                use $crate::finding::severity::Severity;
                match self {
                    $( Self::$name => &[Severity::$severity $(, Severity::$other)?] ),*
                }
            }

            /// Who must act.
            pub fn audience(self) -> $crate::finding::severity::Audience {
                use $crate::finding::severity::Audience;
                match self {
                    $( Self::$name => Audience::$audience ),*
                }
            }
        }
    };
}

pub(super) use group;
