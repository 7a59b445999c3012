//! The job: everything a user may set, validated once. Each stage is handed only its own part.
//!
//! Lengths are inches; in a job file a length is a number of inches or a text such as `12'-6"`,
//! `3810mm`. Every default names its source: an id of the project's list of trade facts with the
//! publication's short name, or "common practice, no source".

mod around;
mod boards;
mod bounds;
pub mod built;
pub mod by_hand;
pub mod check;
pub mod commented;
mod courses;
pub mod differences;
pub mod drawing;
#[cfg(feature = "browser")]
pub mod edit;
mod estimate;
pub mod extended;
mod fasteners;
pub mod fault;
pub mod file;
pub mod first;
mod hand_faults;
pub mod idle;
pub mod layers;
mod length;
mod map_schema;
pub mod model;
pub mod nearest;
pub mod office;
mod old_keys;
pub mod paper;
mod parts;
mod product;
mod product_faults;
pub mod ranges;
pub mod revision;
mod root;
pub mod schema;
mod seams;
pub mod set_backs;
mod sheet;
pub mod siding;
pub mod steps;
pub mod stock;
mod stock_given;
mod stock_rules;
mod takeoff;
mod text;
pub mod texts;
pub mod title;
mod trim;
mod trim_style;
mod waiting;
mod wall_faults;
mod weather;
mod weights;
mod work;
mod written;
mod zone_faults;
mod zones;

pub use self::around::{AngledWall, ReturnWall, WIDEST};
pub use self::boards::Boards;
pub use self::by_hand::{GivenOpening, GivenWall};
pub use self::courses::CourseRules;
pub use self::drawing::{Reading, View};
pub use self::estimate::Estimate;
pub use self::fasteners::FastenerRules;
pub use self::parts::{Band, MovementJoint};
pub use self::product::Product;
pub use self::root::Job;
pub use self::seams::SeamSettings;
pub use self::sheet::SheetRules;
pub use self::siding::kind::Siding;
pub use self::stock::Stock;
pub use self::takeoff::TakeoffRules;
pub use self::title::Title;
pub use self::trim::TrimRules;
pub use self::trim_style::{FrameCut, InsideCorner, TopFinish};
pub use self::waiting::WaitingLimit;
pub use self::weather::Weather;
pub use self::weights::DatumWeights;
pub use self::work::{SeenFrom, WorkRules};
pub use self::zones::{Zone, ZoneRegion};
