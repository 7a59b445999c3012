//! The job: everything a user may set, validated once. Each stage is handed only its own part.
//!
//! Lengths are inches; in a job file a length is a number of inches or a text such as `12'-6"`,
//! `3810mm`. Every default names its source: an id of the project's list of trade facts with the
//! publication's short name, or "common practice, no source".

pub mod layers;
pub mod paper;

use std::collections::BTreeMap;

use schemars::JsonSchema;
use serde::{Deserialize, Deserializer, Serialize};

use self::layers::{AGREED_LAYERS, wildcard};
use crate::diag::{Note, Refusal};
use crate::model::linework::Role;
use crate::model::seam::Effort;
use crate::model::trim::TrimStock;
use crate::units::{LengthStyle, Unit, parse_length};

/// A job.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct Job {
    /// What the title block says.
    pub title: Title,
    /// How the drawing is read.
    pub drawing: Reading,
    /// Layer names of each role, with `*` and `?`; a role named here replaces its default names.
    #[schemars(transform = named_by::<Role>)]
    pub layers: BTreeMap<Role, Vec<String>>,
    /// Views, where frames and titles in the drawing do not settle them.
    pub elevation: Vec<View>,
    /// The day's weather.
    pub weather: Weather,
    /// The siding.
    pub product: Product,
    /// Where courses start and what they keep clear of.
    pub courses: CourseRules,
    /// Where seams may be.
    pub seams: SeamSettings,
    /// Trim.
    pub trim: TrimRules,
    /// Fasteners and counts.
    pub takeoff: TakeoffRules,
    /// Paper.
    pub sheet: SheetRules,
}

/// Fields of the title block, by ISO 7200 (from memory).
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct Title {
    /// Name of the project.
    pub project: String,
    /// Client, the legal owner.
    pub client: String,
    /// Site address.
    pub address: String,
    /// Identification number.
    pub number: String,
    /// Date of issue, as it shall be printed.
    pub date: String,
    /// Creator.
    pub drawn_by: String,
    /// Approver.
    pub approved_by: String,
    /// Revision.
    pub revision: String,
}

/// How the drawing is read.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct Reading {
    /// Unit of the drawing, over what its header says.
    pub unit: Option<Unit>,
    /// A known distance that sets the scale: `x1,y1 x2,y2 = 16'-0"`, points in drawing units.
    pub known: Option<String>,
    /// Read layers that are off or frozen too.
    pub hidden_layers: bool,
    /// Ends nearer than this are joined and listed. Default 1/16 in: common practice, no source.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub weld: f64,
    /// Width of casing outside the drawn edge of openings that the channel goes round. Default 0:
    /// the drawn edge is taken as the channel's (FACTS OT-25).
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub casing: f64,
    /// Codes of findings that stop the program but shall only be reported: `opening-outside`,
    /// `dimension-disagrees`.
    pub accept: Vec<String>,
}

/// One view of the drawing.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct View {
    /// Name of the elevation.
    pub name: String,
    /// `[left, bottom, right, top]` in drawing units.
    pub region: Option<[f64; 4]>,
    /// Layers it is drawn on; all where empty.
    pub layers: Vec<String>,
}

/// The day's weather.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct Weather {
    /// Installed below 40 F (4.4 C): end gaps 3/8 in rather than 1/4 in (FACTS SD-50, SD-51, VSI-H).
    pub below_40f: bool,
}

/// The siding.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct Product {
    /// Height of a course. Default 8 in, a double 4 (FACTS SD-81).
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub exposure: f64,
    /// Boards a panel shows. Default 2 (FACTS SD-81).
    pub faces: u32,
    /// Stock length. Default 12 ft 6 in, 24 panels of D4 to two squares (FACTS TK-03).
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub length: f64,
    /// How far the foam stops short of the vinyl at each factory end. Default 5/8 in (FACTS PR-01,
    /// common practice, no source).
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub foam_set_back: f64,
    /// Lap at a seam; left out, twice the foam's set-back, so that foam meets foam (FACTS PR-02,
    /// SD-72).
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub lap: Option<f64>,
    /// End gap; left out, 1/4 in, or 3/8 in below 40 F (FACTS SD-50, SD-51, VSI-H).
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub end_gap: Option<f64>,
    /// Panels in a carton. Default 24, two squares of D4 at 12 ft 6 in (FACTS TK-02, TK-03).
    pub carton: u32,
    /// Colour, as it shall be ordered.
    pub colour: String,
}

/// Where courses start and what they keep clear of.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct CourseRules {
    /// Butt line of course 0 above the level line; left out, the lowest start on the house.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub datum: Option<f64>,
    /// Clearance to finished grade. Default 6 in (FACTS SD-113, VSI-IRC: edition not shown).
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub clear_of_grade: f64,
    /// Clearance to roofs and decks below. Default 1/2 in (FACTS SD-114, VSI-IRC).
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub clear_of_roof: f64,
    /// Thinnest strip that may be left of a panel before it is reported. Default 2 in: common
    /// practice, no source (FACTS OT-06).
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub least_strip: f64,
    /// Clearance on each side of a notch and over a cut edge under a sill. Default 1/4 in
    /// (FACTS SD-112, common practice).
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub notch_clearance: f64,
}

/// Where seams may be.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct SeamSettings {
    /// Shortest piece of a run with a seam. Default 24 in: common practice, no source (FACTS SD-79).
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub shortest: f64,
    /// Least sideways distance of seams in near courses. Default 24 in: common practice, no source
    /// (FACTS SD-74, UN-01).
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub stagger: f64,
    /// Clear courses between two seams in one upright line. Default 3, the stricter reading of
    /// "three courses apart" (FACTS SD-73, VSI-H-old).
    pub clear_courses: u32,
    /// Wished distance of a seam from a jamb line. Default 6 in: common practice, no source
    /// (FACTS SD-78).
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub jamb: f64,
    /// Width of a cut. Default 1/8 in: common practice, no source.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub kerf: f64,
    /// How far the first panel goes past an obstacle without a mounting block. Default 1 in
    /// (FACTS PR-11, common practice, no source).
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub past_obstacle: f64,
    /// Whether a run that one panel covers may get a seam.
    pub seam_short_runs: bool,
    /// How hard the search tries.
    pub effort: Effort,
    /// Seed of the search.
    pub seed: u64,
}

/// Trim.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct TrimRules {
    /// Stock of starter strip. Default 10 ft (FACTS TK-13, YARD).
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub starter: f64,
    /// Stock of outside corner posts. Default 10 ft (FACTS SD-99, JLC-V).
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub outside_post: f64,
    /// Stock of inside corner posts. Default 10 ft (FACTS SD-99, JLC-V).
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub inside_post: f64,
    /// Stock of J-channel. Default 12 ft 6 in (FACTS TK-15, YARD).
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub j_channel: f64,
    /// Stock of finish trim. Default 12 ft (FACTS TK-16, YARD).
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub finish_trim: f64,
    /// Stock of drip cap. Default 10 ft: common practice, no source.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub drip_cap: f64,
    /// Face of the J-channel. Default 3/4 in (FACTS SD-104, common practice).
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub channel_face: f64,
    /// Length of a water tab. Default 3/4 in (FACTS SD-105, common practice).
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub tab: f64,
    /// Pocket of posts and channels. Default 1 1/8 in (FACTS PR-05, common practice, no source).
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub pocket: f64,
    /// Gap between the top of a corner post and the soffit. Default 1/4 in (FACTS SD-54, VSI-A).
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub post_top_gap: f64,
    /// How far a corner post runs below the starter. Default 3/4 in (FACTS SD-97, VSI-A).
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub post_below: f64,
    /// Lap of a spliced corner post. Default 3/4 in (FACTS SD-98, VSI-A, JLC-V).
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub post_lap: f64,
    /// Gap between starter strips, and to a corner post. Default 1/4 in (FACTS SD-55, JLC-V).
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub starter_gap: f64,
    /// How far a drip cap reaches past each jamb. Default 1 in: common practice, no source.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub drip_cap_past: f64,
    /// Colour of each stock, as it shall be ordered; left out, the panels' colour.
    #[schemars(transform = named_by::<TrimStock>)]
    pub colours: BTreeMap<TrimStock, String>,
}

/// Fasteners and counts.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct TakeoffRules {
    /// What the rule of thumb adds to net area, percent. Default 10 (FACTS TK-04, YARD and others).
    pub area_waste: f64,
    /// Greatest spacing of nails in panels. Default 16 in (FACTS SD-20, IRC18 R703.11.1.3).
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub nail_spacing: f64,
    /// Spacing of nails in trim. Default 10 in, within 8 to 12 (FACTS UN-08, SD-23, VSI-A).
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub trim_nail_spacing: f64,
    /// Nails in a box. Default 1000: common practice, no source.
    pub nail_box: u32,
    /// Layers between the panel's nail hem and nailable sheathing, foam and air included. Default
    /// 3/4 in hem stand-off (FACTS SD-37, derived).
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub stand_off: f64,
    /// Spare panels for damage, percent of those laid. Default 0.
    pub spare: f64,
    /// Openings over this area, square feet, are large: one rule of thumb subtracts only those.
    /// Default 20, of 20 or 50 in use (FACTS TK-10; thresholds common practice, no source).
    pub large_opening: f64,
    /// Length of a roll of flashing. Default 50 ft: common practice, no source.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub flashing_roll: f64,
}

/// Paper.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct SheetRules {
    /// Paper: `ARCH A` to `ARCH D`, `ANSI A` to `ANSI D`, `A4` to `A1`. Default ARCH B.
    pub paper: String,
    /// Scale as written on the sheet (`1/4" = 1'-0"`, `1:50`); left out, picked to fit.
    pub scale: Option<String>,
    /// `feet`: architectural scales, lengths in feet and inches. `mm`: metric scales, lengths in
    /// millimetres, areas in square metres.
    pub lengths: LengthStyle,
}

/// Says in the schema of a map what its keys may be.
fn named_by<T: JsonSchema>(schema: &mut schemars::Schema) {
    let mut names = schemars::SchemaGenerator::default().into_root_schema_for::<T>();
    names.remove("$schema");
    schema.insert("propertyNames".to_owned(), names.to_value());
}

/// A length in a job file: inches, or a text with its unit.
#[derive(Deserialize, JsonSchema)]
#[serde(untagged)]
#[allow(dead_code, reason = "the schema names both forms; the fields are read by serde")]
enum Length {
    /// Inches.
    Number(f64),
    /// `12'-6 1/2"`, `3810mm`.
    Text(String),
}

fn length<'de, D: Deserializer<'de>>(d: D) -> Result<f64, D::Error> {
    let value = match Length::deserialize(d)? {
        Length::Number(n) => Some(n),
        Length::Text(t) => parse_length(&t, Unit::Inch),
    };
    value.filter(|v| v.is_finite()).ok_or_else(|| {
        serde::de::Error::custom(
            "not a length: write inches (150), or a text such as \"12'-6\\\"\" or \"3810mm\"",
        )
    })
}

fn maybe_length<'de, D: Deserializer<'de>>(d: D) -> Result<Option<f64>, D::Error> {
    length(d).map(Some)
}

impl Default for Reading {
    fn default() -> Self {
        Reading {
            unit: None,
            known: None,
            hidden_layers: false,
            weld: 1.0 / 16.0,
            casing: 0.0,
            accept: Vec::new(),
        }
    }
}

impl Default for Product {
    fn default() -> Self {
        Product {
            exposure: 8.0,
            faces: 2,
            length: 150.0,
            foam_set_back: 0.625,
            lap: None,
            end_gap: None,
            carton: 24,
            colour: String::new(),
        }
    }
}

impl Default for CourseRules {
    fn default() -> Self {
        CourseRules {
            datum: None,
            clear_of_grade: 6.0,
            clear_of_roof: 0.5,
            least_strip: 2.0,
            notch_clearance: 0.25,
        }
    }
}

impl Default for SeamSettings {
    fn default() -> Self {
        SeamSettings {
            shortest: 24.0,
            stagger: 24.0,
            clear_courses: 3,
            jamb: 6.0,
            kerf: 0.125,
            past_obstacle: 1.0,
            seam_short_runs: false,
            effort: Effort::Usual,
            seed: 1,
        }
    }
}

impl Default for TrimRules {
    fn default() -> Self {
        TrimRules {
            starter: 120.0,
            outside_post: 120.0,
            inside_post: 120.0,
            j_channel: 150.0,
            finish_trim: 144.0,
            drip_cap: 120.0,
            channel_face: 0.75,
            tab: 0.75,
            pocket: 1.125,
            post_top_gap: 0.25,
            post_below: 0.75,
            post_lap: 0.75,
            starter_gap: 0.25,
            drip_cap_past: 1.0,
            colours: BTreeMap::new(),
        }
    }
}

impl Default for TakeoffRules {
    fn default() -> Self {
        TakeoffRules {
            area_waste: 10.0,
            nail_spacing: 16.0,
            trim_nail_spacing: 10.0,
            nail_box: 1000,
            stand_off: 0.75,
            spare: 0.0,
            large_opening: 20.0,
            flashing_roll: 600.0,
        }
    }
}

impl Default for SheetRules {
    fn default() -> Self {
        SheetRules { paper: "ARCH B".to_owned(), scale: None, lengths: LengthStyle::Feet }
    }
}

impl TrimRules {
    /// Length of a stock.
    pub fn stock(&self, stock: TrimStock) -> f64 {
        match stock {
            TrimStock::Starter => self.starter,
            TrimStock::OutsidePost => self.outside_post,
            TrimStock::InsidePost => self.inside_post,
            TrimStock::JChannel => self.j_channel,
            TrimStock::FinishTrim => self.finish_trim,
            TrimStock::DripCap => self.drip_cap,
        }
    }
}

/// Gap at a panel's end, association figure (FACTS SD-50, VSI-H).
pub const END_GAP: f64 = 0.25;
/// Same below 40 F (FACTS SD-51, VSI-H).
pub const COLD_END_GAP: f64 = 0.375;

impl Job {
    /// Gap at each end of a run in force.
    pub fn end_gap(&self) -> f64 {
        let by_weather = if self.weather.below_40f { COLD_END_GAP } else { END_GAP };
        self.product.end_gap.unwrap_or(by_weather)
    }

    /// Lap at a seam in force: foam meets foam (FACTS PR-02, SD-72).
    pub fn lap(&self) -> f64 {
        self.product.lap.unwrap_or(2.0 * self.product.foam_set_back)
    }

    /// Layer patterns of a role: the job's, else the agreed names.
    pub fn patterns(&self, role: Role) -> Vec<String> {
        let agreed =
            || AGREED_LAYERS.iter().filter(|(r, _)| *r == role).map(|(_, p)| (*p).to_owned());
        self.layers.get(&role).cloned().unwrap_or_else(|| agreed().collect())
    }

    /// Whether the job names this layer letter by letter, as a role's or a view's.
    pub fn names_layer(&self, layer: &str) -> bool {
        let views = self.elevation.iter().flat_map(|v| &v.layers);
        self.layers.values().flatten().chain(views).any(|p| p.eq_ignore_ascii_case(layer))
    }

    /// The role of a layer name, case folded and bound-reference prefixes (`name$0$`) taken off.
    /// The job's own patterns go before the agreed ones.
    pub fn role_of(&self, layer: &str) -> Option<Role> {
        let whole = layer.to_lowercase();
        let name = whole.rsplit('$').next().unwrap_or(&whole);
        let of_job =
            self.layers.iter().flat_map(|(r, ps)| ps.iter().map(move |p| (*r, p.as_str())));
        let agreed = AGREED_LAYERS.iter().copied().filter(|(r, _)| !self.layers.contains_key(r));
        // A name copied with its prefix is meant as it stands.
        let fits = |p: &str| wildcard(p, name) || wildcard(p, &whole);
        of_job.chain(agreed).find(|(_, p)| fits(&p.to_lowercase())).map(|(r, _)| r)
    }

    /// Refuses values no layout can be made with, naming the key.
    pub fn validate(&self) -> Result<(), Refusal> {
        paper::check(&self.sheet.paper, self.sheet.scale.as_deref())?;
        let p = &self.product;
        let gap = self.end_gap();
        let t = &self.takeoff;
        let checks: [(&str, f64, f64, f64); 33] = [
            ("product.exposure", p.exposure, 2.0, 48.0),
            ("product.length", p.length, 36.0, 600.0),
            ("product.foam_set_back", p.foam_set_back, 0.0, 4.0),
            ("product.lap", self.lap(), 0.0, 6.0),
            ("product.end_gap", gap, 0.0, 2.0),
            ("product.carton", f64::from(p.carton), 1.0, 1000.0),
            ("drawing.weld", self.drawing.weld, 0.0, 2.0),
            ("drawing.casing", self.drawing.casing, 0.0, 24.0),
            ("courses.datum", self.courses.datum.unwrap_or(0.0), -10_000.0, 10_000.0),
            ("courses.clear_of_grade", self.courses.clear_of_grade, 0.0, 48.0),
            ("courses.clear_of_roof", self.courses.clear_of_roof, 0.0, 24.0),
            ("courses.least_strip", self.courses.least_strip, 0.0, p.exposure),
            ("courses.notch_clearance", self.courses.notch_clearance, 0.0, 2.0),
            ("seams.shortest", self.seams.shortest, 0.0, p.length / 2.0),
            ("seams.stagger", self.seams.stagger, 0.0, p.length),
            ("seams.clear_courses", f64::from(self.seams.clear_courses), 0.0, 12.0),
            ("seams.jamb", self.seams.jamb, 0.0, 48.0),
            ("seams.kerf", self.seams.kerf, 0.0, 1.0),
            ("seams.past_obstacle", self.seams.past_obstacle, 0.0, 12.0),
            ("trim.starter", self.trim.starter, 24.0, 600.0),
            ("trim.outside_post", self.trim.outside_post, 24.0, 600.0),
            ("trim.inside_post", self.trim.inside_post, 24.0, 600.0),
            ("trim.j_channel", self.trim.j_channel, 24.0, 600.0),
            ("trim.finish_trim", self.trim.finish_trim, 24.0, 600.0),
            ("trim.drip_cap", self.trim.drip_cap, 24.0, 600.0),
            ("takeoff.nail_spacing", t.nail_spacing, 1.0, 48.0),
            ("takeoff.trim_nail_spacing", t.trim_nail_spacing, 1.0, 48.0),
            ("takeoff.nail_box", f64::from(t.nail_box), 1.0, 1e6),
            ("takeoff.stand_off", t.stand_off, 0.0, 12.0),
            ("takeoff.area_waste", t.area_waste, 0.0, 100.0),
            ("takeoff.spare", t.spare, 0.0, 100.0),
            ("takeoff.large_opening", t.large_opening, 0.0, 1e6),
            ("takeoff.flashing_roll", t.flashing_roll, 12.0, 12_000.0),
        ];
        match checks.iter().find(|(_, v, least, most)| !(*v >= *least && *v <= *most)) {
            None => Ok(()),
            Some((key, v, least, most)) => Err(Note::error(
                "job-value",
                format!("`{key}` is {v}; it must lie between {least} and {most}"),
                "Correct the value in the job file; lengths are inches unless they carry a unit.",
            )
            .into()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn gaps_and_lap_follow_the_published_figures() {
        let mut job = Job::default();
        assert_eq!(job.end_gap(), 0.25); // SD-50, VSI-H
        assert_eq!(job.lap(), 1.25); // PR-02 as twice PR-01
        job.weather.below_40f = true;
        assert_eq!(job.end_gap(), 0.375); // SD-51, VSI-H
    }

    #[test]
    fn layer_names_fold_case_and_drop_bound_prefixes() {
        let mut job = Job::default();
        assert_eq!(job.role_of("a-wall-otln"), Some(Role::Wall));
        assert_eq!(job.role_of("site$0$A-GLAZ-SILL"), Some(Role::Window));
        assert_eq!(job.role_of("FRONT"), None);
        job.layers.insert(Role::Wall, vec!["fr?nt*".into()]);
        assert_eq!(job.role_of("FRONT-2"), Some(Role::Wall));
        job.layers.insert(Role::Door, vec!["site$0$TOR".into()]);
        assert_eq!(job.role_of("site$0$TOR"), Some(Role::Door));
        assert_eq!(job.role_of("A-WALL-OTLN"), None);
    }

    #[test]
    fn a_value_out_of_range_is_refused_by_its_key() {
        let mut job = Job::default();
        job.product.exposure = f64::NAN;
        assert!(job.validate().unwrap_err().to_string().contains("product.exposure"));
        assert!(Job::default().validate().is_ok());
    }
}
