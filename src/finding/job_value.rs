//! What is wrong with a value of a job, with its numbers. Keys are dotted as in the job file, tables of a
//! list by number from 0.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A value no layout can be made with.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "fault", rename_all = "kebab-case")]
pub enum ValueFault {
    /// A number out of its range.
    OutOfRange {
        /// The key.
        key: String,
        /// The value.
        value: f64,
        /// Least.
        least: f64,
        /// Greatest.
        most: f64,
    },
    /// A number that is infinite or none.
    NotFinite {
        /// The key.
        key: String,
    },
    /// A number under its least value.
    TooSmall {
        /// The key.
        key: String,
        /// The value.
        value: f64,
        /// Least.
        least: f64,
    },
    /// A number too large for what another key says.
    TooLargeFor {
        /// The key.
        key: String,
        /// The value.
        value: f64,
        /// Greatest.
        most: f64,
        /// The other key.
        other: String,
    },
    /// A number that must be more than another.
    NotOver {
        /// The key.
        key: String,
        /// The value.
        value: f64,
        /// The other key.
        other: String,
        /// Its value.
        limit: f64,
    },
    /// Two keys of which one is too many.
    OneTooMany {
        /// The key.
        key: String,
        /// The other key.
        other: String,
    },
    /// A list with a number out of range.
    ListOutOfRange {
        /// The key.
        key: String,
        /// The number; none where it is infinite or no number.
        #[serde(skip_serializing_if = "Option::is_none")]
        value: Option<f64>,
        /// Each must be over this.
        over: f64,
        /// Greatest.
        most: f64,
    },
    /// A key that says nothing about the siding picked.
    OfOtherSiding {
        /// The key.
        key: String,
        /// The siding, as the job names it.
        siding: String,
    },
    /// A key that says nothing without another.
    NeedsOther {
        /// The key.
        key: String,
        /// The other key.
        other: String,
    },
    /// A choice that does not go with another.
    ChoiceAgainst {
        /// The key.
        key: String,
        /// The other key.
        other: String,
        /// Values of `other` that go with it.
        instead: Vec<String>,
    },
    /// Two languages on paper too small for both.
    LanguagesOnSmallPaper {
        /// The paper.
        paper: String,
        /// Papers large enough.
        papers: Vec<String>,
    },
    /// Faces, their height and the exposure do not go together.
    FacesDisagree {
        /// Boards a panel shows.
        faces: u32,
        /// Height of one, inches.
        face_height: f64,
        /// Height of the course they make, inches.
        makes: f64,
        /// The exposure, inches.
        exposure: f64,
    },
    /// Two stock lengths are as good as one.
    LengthsAlike {
        /// The key of the second.
        key: String,
        /// The second, inches.
        second: f64,
        /// The first, inches.
        first: f64,
    },
    /// More stock lengths than are mixed.
    StocksMany {
        /// Lengths given.
        given: usize,
        /// Most that are mixed.
        most: usize,
    },
    /// Several stock lengths of a siding that is laid of one.
    StocksOfOneLength {
        /// Lengths given.
        given: usize,
        /// The siding, as the job names it.
        siding: String,
    },
    /// Some stocks have a cost, others none.
    CostsPartly {
        /// The key of a cost that is given.
        key: String,
        /// The key of one that is left out.
        other: String,
    },
    /// Costs of two stocks that are hardly in the same terms.
    CostsApart {
        /// The key.
        key: String,
        /// The cost.
        value: f64,
        /// The key of the cost it is held against.
        other: String,
        /// That cost.
        reference: f64,
        /// Most times that one is over the other.
        times: f64,
    },
    /// The exposure is more than the board's width leaves.
    ExposureOverWidth {
        /// The key.
        key: String,
        /// The value, inches.
        value: f64,
        /// What the head lap leaves of the width, inches.
        leaves: f64,
    },
    /// The foam set-back makes a lap that is too wide.
    FoamLap {
        /// The lap, inches.
        lap: f64,
        /// Greatest, inches.
        most: f64,
    },
    /// A text names none of what may be named.
    NotOneOf {
        /// The key.
        key: String,
        /// The text.
        text: String,
        /// What may be named.
        choices: Vec<String>,
    },
    /// A variant is no letter and no number as titles have it.
    VariantForm {
        /// The key.
        key: String,
        /// The text.
        text: String,
    },
    /// A name is empty.
    NameEmpty {
        /// The key.
        key: String,
    },
    /// A name is given to two.
    NameTwice {
        /// The key.
        key: String,
        /// The name.
        name: String,
    },
    /// A wall, an opening or a fixture is named by two entries.
    NamedTwice {
        /// The key.
        key: String,
        /// The name.
        name: String,
    },
    /// A list of walls to join has fewer than two.
    JoinsNothing {
        /// The key.
        key: String,
        /// How many it names.
        names: usize,
    },
    /// An outline goes round nothing.
    OutlineEmpty {
        /// The key.
        key: String,
        /// How many points it has.
        points: usize,
    },
    /// A known distance cannot be read.
    KnownUnreadable {
        /// The text.
        text: String,
    },
    /// A region of a view is no rectangle.
    RegionEmpty {
        /// The key.
        key: String,
        /// The view.
        view: String,
    },
    /// A zone has neither layer nor region.
    ZoneNowhere {
        /// The key.
        key: String,
    },
    /// A zone has neither cladding nor product.
    ZoneUnclad {
        /// The key.
        key: String,
    },
    /// A region of a zone names no side.
    ZoneRegionWhole {
        /// The key.
        key: String,
    },
}
