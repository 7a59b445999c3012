//! Names of things in a layout, each a type of its own, so that a wall's name is never taken for a
//! piece's. Written as plain text; each reads as a `str`.

use std::borrow::Borrow;
use std::fmt;
use std::ops::Deref;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

macro_rules! id {
    ($(#[$doc:meta])* $name:ident) => {
        $(#[$doc])*
        #[derive(
            Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize,
            JsonSchema,
        )]
        #[serde(transparent)]
        pub struct $name(String);

        impl $name {
            /// As text.
            pub fn as_str(&self) -> &str {
                &self.0
            }
        }

        impl Deref for $name {
            type Target = str;

            fn deref(&self) -> &str {
                &self.0
            }
        }

        impl Borrow<str> for $name {
            fn borrow(&self) -> &str {
                &self.0
            }
        }

        impl AsRef<str> for $name {
            fn as_ref(&self) -> &str {
                &self.0
            }
        }

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.pad(&self.0)
            }
        }

        impl From<String> for $name {
            fn from(text: String) -> Self {
                $name(text)
            }
        }

        impl From<&str> for $name {
            fn from(text: &str) -> Self {
                $name(text.to_owned())
            }
        }

        impl PartialEq<str> for $name {
            fn eq(&self, other: &str) -> bool {
                self.0 == other
            }
        }

        impl PartialEq<$name> for str {
            fn eq(&self, other: &$name) -> bool {
                *self == other.0
            }
        }

        impl PartialEq<$name> for &str {
            fn eq(&self, other: &$name) -> bool {
                **self == other.0
            }
        }

        impl PartialEq<String> for $name {
            fn eq(&self, other: &String) -> bool {
                self.0 == *other
            }
        }

        impl PartialEq<$name> for String {
            fn eq(&self, other: &$name) -> bool {
                *self == other.0
            }
        }

        impl From<$name> for String {
            fn from(name: $name) -> Self {
                name.0
            }
        }

        impl PartialEq<&str> for $name {
            fn eq(&self, other: &&str) -> bool {
                self.0 == *other
            }
        }
    };
}

id! {
    /// An elevation, as titled.
    ElevationName
}
id! {
    /// A wall: `front-1`.
    WallId
}
id! {
    /// An opening: `front-W1`.
    OpeningId
}
id! {
    /// A fixture on a wall.
    ObstacleId
}
id! {
    /// A wall, an opening or a fixture, where any of them may be named.
    FeatureId
}
id! {
    /// A part of the walls with another cladding: `front-Z1`.
    ZoneId
}
id! {
    /// A corner: `C1`.
    CornerId
}
id! {
    /// An uninterrupted part of a course.
    RunId
}
id! {
    /// A piece of siding: `F1-3-2`.
    PieceMark
}
id! {
    /// A stock panel or board: `P12`.
    PanelId
}
id! {
    /// A piece of trim.
    TrimMark
}
id! {
    /// A stock length of trim or flashing: `j-channel-12`.
    TrimStockId
}
id! {
    /// The short name of a line of the takeoff, the same in every takeoff: `j-channel`.
    ItemId
}

impl TrimStockId {
    /// Its number among those of its stock; 0 for a name without one.
    pub fn number(&self) -> u32 {
        self.rsplit_once('-').and_then(|(_, n)| n.parse().ok()).unwrap_or(0)
    }
}
id! {
    /// What a line of the takeoff counts one by one: a mark of a piece or of trim, a name of a panel or of
    /// a fixture.
    CountedName
}
