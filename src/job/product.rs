//! The siding, and the day it goes up.
//!
//! What is left out of a job follows the kind of siding, so a product is read in two steps: as
//! [`Written`], then filled in.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::Job;
use super::length::{Length, maybe_length};
use super::ranges::Fault;
use super::stock::GivenStocks;
use crate::geom::tol::CUT;

/// Gap at a panel's end, association figure (FACTS SD-50, VSI-H).
pub const END_GAP: f64 = 0.25;
/// Same below 40 F (FACTS SD-51, VSI-H).
pub const COLD_END_GAP: f64 = 0.375;
/// Gap of a board to trim, to be caulked (FACTS SD-132, JLC-F, for fibre-cement).
pub const BOARD_END_GAP: f64 = 0.125;
/// From this length on the maker states a larger gap (FACTS SD-52, VSI-H).
pub const LONG_PANEL: f64 = 240.0;
/// Lap of plain vinyl: half of a factory notch of 2 in (FACTS SD-70, VSI-H).
const PLAIN_LAP: f64 = 1.0;
/// How far foam stops short of the vinyl at each factory end (FACTS PR-01, common practice).
const FOAM_SET_BACK: f64 = 0.625;
/// Face of a double 4 (FACTS SD-81).
const FACE: f64 = 4.0;

/// Siding's temperature on the day, F, where the job says nothing: common practice, no source.
const MILD: f64 = 60.0;
/// The same on a cold day: under the 40 F at which the gap changes (FACTS SD-51, VSI-H).
const COLD: f64 = 35.0;

/// The day's weather, and the place's.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct Weather {
    /// Installed below 40 F (4.4 C): end gaps 3/8 in rather than 1/4 in (FACTS SD-50, SD-51, VSI-H).
    pub below_40f: bool,
    /// Temperature of the siding when it goes up, F; left out, 60 F, or 35 F on a day below 40 F:
    /// common practice, no source.
    pub installed_f: Option<f64>,
    /// Lowest temperature the siding gets to, F. Default 20: a swing of 100 F to the highest, as
    /// published figures take it (FACTS SD-57); the place's own, no source.
    pub lowest_f: f64,
    /// Highest temperature the siding gets to, F: a sunny wall is hotter than the air. Default 120:
    /// see the lowest.
    pub highest_f: f64,
    /// Growth of the siding, length per length and F. Default 4.5e-5, the ceiling for rigid PVC (FACTS
    /// SD-04, CGSB); 3.0e-5 to 3.6e-5 are typical (SD-05).
    pub expansion: f64,
}

impl Default for Weather {
    fn default() -> Self {
        Weather {
            below_40f: false,
            installed_f: None,
            lowest_f: 20.0,
            highest_f: 120.0,
            expansion: 4.5e-5,
        }
    }
}

impl Weather {
    /// Temperature on the day in force, F.
    pub fn installed(&self) -> f64 {
        self.installed_f.unwrap_or(if self.below_40f { COLD } else { MILD })
    }

    /// Whether the cold day's gap is in force.
    pub fn cold(&self) -> bool {
        self.below_40f || self.installed_f.is_some_and(|f| f < 40.0)
    }
}

/// What the siding is made of.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum Kind {
    /// Vinyl with foam bonded to its back: foam meets foam at a seam (FACTS SD-72).
    #[default]
    FoamBacked,
    /// Vinyl without foam.
    Vinyl,
    /// Boards of wood, bevelled or of even thickness, lapped at their heads.
    Wood,
    /// Boards of fibre-cement, lapped at their heads.
    FibreCement,
}

impl Kind {
    /// The trade's words for it.
    pub fn words(self) -> &'static str {
        match self {
            Kind::FoamBacked => "foam-backed vinyl lap siding",
            Kind::Vinyl => "vinyl lap siding",
            Kind::Wood => "wood lap siding",
            Kind::FibreCement => "fibre-cement lap siding",
        }
    }

    /// Whether it comes as boards: lapped at their heads, butted on studs, their exposure free
    /// within limits (FACTS OT-04).
    pub fn is_board(self) -> bool {
        matches!(self, Kind::Wood | Kind::FibreCement)
    }

    /// What one stock length is called.
    pub fn piece(self) -> &'static str {
        if self.is_board() { "board" } else { "panel" }
    }

    /// What two of them meet at.
    pub fn seam(self) -> &'static str {
        if self.is_board() { "joint" } else { "seam" }
    }
}

/// The siding.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(from = "Written")]
#[schemars(deny_unknown_fields)]
pub struct Product {
    /// What it is made of.
    pub kind: Kind,
    /// Height of a course.
    pub exposure: f64,
    /// Boards a panel shows.
    pub faces: u32,
    /// Height of one of them, where the job gives it.
    pub face_height: Option<f64>,
    /// Stock length; of the first stock where the job lists them.
    pub length: f64,
    /// What its keys say of stock lengths, until the job has settled it.
    #[serde(skip)]
    pub given: GivenStocks,
    /// How far the foam stops short of the vinyl at each factory end; 0 without foam.
    pub foam_set_back: f64,
    /// Lap at a seam, where the job gives it.
    pub lap: Option<f64>,
    /// End gap, where the job gives it.
    pub end_gap: Option<f64>,
    /// Height of the nail hem over the exposed face.
    pub hem: f64,
    /// Height of the lock behind the butt edge.
    pub lock: f64,
    /// Panels in a carton.
    pub carton: u32,
    /// Colour, as it shall be ordered.
    pub colour: String,
    /// Width of a board.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub width: Option<f64>,
    /// Least lap of a board's head under the next.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub head_lap: Option<f64>,
    /// Least exposure of a board.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub exposure_least: Option<f64>,
    /// Greatest exposure of a board.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub exposure_most: Option<f64>,
    /// Thickness of a board at its butt.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub thickness: Option<f64>,
}

/// The siding, as a job file gives it.
#[derive(Clone, Debug, Default, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
#[schemars(rename = "ProductWritten")]
struct Written {
    /// What it is made of: `foam-backed` vinyl, the default, plain `vinyl`, or boards of `wood` or
    /// `fibre-cement`.
    kind: Kind,
    /// Height of a course; left out, `faces` times `face_height`. Default 8 in, a double 4
    /// (FACTS SD-81). Boards: what is aimed at, evened between sills, heads and tops; 2 in less than
    /// a wood board's width (SD-137, NAV14044), for fibre-cement its width less the head lap.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Length")]
    exposure: Option<f64>,
    /// Boards a panel shows: 1 single, 2 double, 3 triple. Left out, as many as `face_height` goes
    /// into `exposure`. Default 2 (FACTS SD-81).
    faces: Option<u32>,
    /// Height of one of the boards a panel shows; left out, `exposure` by `faces`, 4 in where that
    /// is left out too (FACTS SD-81).
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    face_height: Option<f64>,
    /// Stock length. Default 12 ft 6 in, 24 panels of D4 to two squares (FACTS TK-03); wood 16 ft,
    /// fibre-cement 12 ft: common practice, no source.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Length")]
    length: Option<f64>,
    /// A second stock length of the same panel: short for two `[[stock]]`, this and `length`.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    second_length: Option<f64>,
    /// What a panel of `second_length` costs, one of `length` costing 1.
    second_cost: Option<f64>,
    /// Panels of `second_length` in a carton. Left out, as many as `carton`.
    second_carton: Option<u32>,
    /// How far the foam stops short of the vinyl at each factory end, foam-backed siding only.
    /// Default 5/8 in (FACTS PR-01, common practice, no source).
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Length")]
    foam_set_back: Option<f64>,
    /// Lap at a seam; left out, twice the foam's set-back, so that foam meets foam (FACTS PR-02,
    /// SD-72), and 1 in for plain vinyl, half the factory notch (FACTS SD-70, VSI-H).
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    lap: Option<f64>,
    /// End gap; left out, 1/4 in, or 3/8 in below 40 F (FACTS SD-50, SD-51, VSI-H). Panels of 20 ft
    /// and more want the gap their maker states (SD-52). Boards: 1/8 in to caulk (SD-132, JLC-F;
    /// wood common practice, no source).
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    end_gap: Option<f64>,
    /// Height of the nail hem over the exposed face: a notch from the top is cut through it too.
    /// Default 1 1/4 in: common practice, no source.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Length")]
    hem: Option<f64>,
    /// Height of the lock behind the butt edge: a strip that keeps no more of a panel cannot be
    /// held. Default 3/4 in: common practice, no source.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Length")]
    lock: Option<f64>,
    /// Panels in a carton. Default 24, two squares of D4 at 12 ft 6 in (FACTS TK-02, TK-03); boards
    /// are sold singly: 1.
    carton: Option<u32>,
    /// Colour, as it shall be ordered.
    colour: String,
    /// Width of a board, `wood` and `fibre-cement` only. Left out, 8 in for wood (FACTS SD-137),
    /// 8 1/4 in for fibre-cement: from memory.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    width: Option<f64>,
    /// Least lap of a board's head under the next, `wood` and `fibre-cement` only. Left out, 1 in
    /// for wood (FACTS SD-134, NAV14044), 1 1/4 in for fibre-cement (SD-130, JLC-F).
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    head_lap: Option<f64>,
    /// Least exposure a board may get when courses are evened, `wood` and `fibre-cement` only. Left
    /// out, 1 in less than `exposure`: common practice, no source.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    exposure_least: Option<f64>,
    /// Greatest exposure, `wood` and `fibre-cement` only. Left out, all that the head lap leaves of
    /// the width.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    exposure_most: Option<f64>,
    /// Thickness of a board at its butt, for the nails, `wood` and `fibre-cement` only. Left out,
    /// 1/2 in for wood (FACTS WX-15, CRA), 5/16 in for fibre-cement: from memory.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    thickness: Option<f64>,
}

/// What a kind of board has unless the job says otherwise.
struct Usual {
    width: f64,
    head_lap: f64,
    length: f64,
    thickness: f64,
}

/// Sources: see the settings.
fn usual(kind: Kind) -> Option<Usual> {
    match kind {
        Kind::FoamBacked | Kind::Vinyl => None,
        Kind::Wood => Some(Usual { width: 8.0, head_lap: 1.0, length: 192.0, thickness: 0.5 }),
        Kind::FibreCement => {
            Some(Usual { width: 8.25, head_lap: 1.25, length: 144.0, thickness: 0.3125 })
        }
    }
}

fn given(w: &Written) -> GivenStocks {
    GivenStocks {
        length: w.length,
        carton: w.carton,
        second_length: w.second_length,
        second_cost: w.second_cost,
        second_carton: w.second_carton,
    }
}

/// A board: what is left out from its width and head lap.
fn board(w: Written, usual: &Usual) -> Product {
    let width = w.width.unwrap_or(usual.width);
    let head_lap = w.head_lap.unwrap_or(usual.head_lap);
    let most = w.exposure_most.unwrap_or(width - head_lap);
    let aim = if w.kind == Kind::Wood { width - 2.0 } else { width - head_lap };
    let exposure = w.exposure.unwrap_or(aim.min(most));
    Product {
        kind: w.kind,
        exposure,
        faces: w.faces.unwrap_or(1),
        face_height: w.face_height,
        length: w.length.unwrap_or(usual.length),
        given: given(&w),
        foam_set_back: w.foam_set_back.unwrap_or(0.0),
        lap: w.lap,
        end_gap: w.end_gap,
        hem: w.hem.unwrap_or(0.0),
        lock: w.lock.unwrap_or(0.0),
        carton: w.carton.unwrap_or(1),
        colour: w.colour,
        width: Some(width),
        head_lap: Some(head_lap),
        exposure_least: Some(w.exposure_least.unwrap_or(exposure - 1.0)),
        exposure_most: Some(most),
        thickness: Some(w.thickness.unwrap_or(usual.thickness)),
    }
}

impl From<Written> for Product {
    fn from(w: Written) -> Self {
        if let Some(usual) = usual(w.kind) {
            return board(w, &usual);
        }
        let foam = if w.kind == Kind::FoamBacked { FOAM_SET_BACK } else { 0.0 };
        let (exposure, faces) = profile(&w);
        Product {
            kind: w.kind,
            exposure,
            faces,
            face_height: w.face_height,
            length: w.length.unwrap_or(150.0),
            given: given(&w),
            foam_set_back: w.foam_set_back.unwrap_or(foam),
            lap: w.lap,
            end_gap: w.end_gap,
            hem: w.hem.unwrap_or(1.25),
            lock: w.lock.unwrap_or(0.75),
            carton: w.carton.unwrap_or(24),
            colour: w.colour,
            width: w.width,
            head_lap: w.head_lap,
            exposure_least: w.exposure_least,
            exposure_most: w.exposure_most,
            thickness: w.thickness,
        }
    }
}

/// Exposure and faces: what is given, and the rest from it.
fn profile(w: &Written) -> (f64, u32) {
    let face = w.face_height.unwrap_or(FACE);
    match (w.exposure, w.faces) {
        (Some(e), Some(n)) => (e, n),
        (Some(e), None) => {
            let whole = |h: f64| (e / h).round().clamp(1.0, 12.0) as u32;
            (e, w.face_height.filter(|h| *h > 0.0).map_or(2, whole))
        }
        (None, n) => {
            let n = n.unwrap_or(2);
            (f64::from(n) * face, n)
        }
    }
}

impl Default for Product {
    fn default() -> Self {
        Written::default().into()
    }
}

impl Product {
    /// A product of a kind with all that goes with it.
    pub fn of(kind: Kind) -> Self {
        Written { kind, ..Default::default() }.into()
    }

    /// Least and greatest height of a course: the exposure itself, but for boards.
    pub fn limits(&self) -> (f64, f64) {
        if !self.kind.is_board() {
            return (self.exposure, self.exposure);
        }
        let room = self.width.unwrap_or(self.exposure) - self.head_lap.unwrap_or(0.0);
        let most = self.exposure_most.unwrap_or(room);
        (self.exposure_least.unwrap_or(self.exposure), most)
    }

    /// What a panel has over the face of a course so high: its nail hem, or a board's head lap.
    pub fn over_face(&self, course: f64) -> f64 {
        match self.width {
            Some(width) if self.kind.is_board() => (width - course).max(0.0),
            _ => self.hem,
        }
    }

    /// What that is called.
    pub fn over_face_words(&self) -> &'static str {
        if self.kind.is_board() { "head lap" } else { "nail hem" }
    }

    /// Lap at a seam in force: foam meets foam, or half the factory notch; none at a joint.
    pub fn lap(&self) -> f64 {
        let usual = match self.kind {
            Kind::FoamBacked => 2.0 * self.foam_set_back,
            Kind::Vinyl => PLAIN_LAP,
            Kind::Wood | Kind::FibreCement => 0.0,
        };
        self.lap.unwrap_or(usual)
    }

    /// Height of one of the boards a panel shows.
    pub fn face(&self) -> f64 {
        self.exposure / f64::from(self.faces.max(1))
    }

    /// Whether a seam laps by exactly what the foam of both panels leaves free.
    pub fn foam_meets_foam(&self) -> bool {
        self.kind == Kind::FoamBacked && (self.lap() - 2.0 * self.foam_set_back).abs() < 1e-9
    }

    /// Single, double, triple: how many boards a panel shows, in the trade's words.
    pub fn profile(&self) -> String {
        if let Some(width) = self.width.filter(|_| self.kind.is_board()) {
            return format!("boards {} wide,", crate::units::inches_fraction(width));
        }
        match self.faces {
            1 => "single".to_owned(),
            2 => "double".to_owned(),
            3 => "triple".to_owned(),
            n => format!("{n} faces of"),
        }
    }
}

/// What of a product contradicts itself, or is of another kind.
pub(super) fn faults(job: &Job) -> Vec<Fault> {
    let p = &job.product;
    let mut out = Vec::new();
    let mut fault = |keys: &[&str], message: String| {
        out.push(Fault { keys: keys.iter().map(|k| (*k).to_owned()).collect(), message });
    };
    if let Some(height) = p.face_height {
        let stands = f64::from(p.faces) * height;
        if (stands - p.exposure).abs() > CUT {
            fault(
                &["product.face_height", "product.exposure", "product.faces"],
                format!(
                    "`product.face_height` is {height} and `product.faces` {}: a course of {stands}, but `product.exposure` is {}",
                    p.faces, p.exposure
                ),
            );
        }
    }
    out.extend(if p.kind.is_board() { of_boards(p) } else { of_panels(p) });
    let mut fault = |keys: &[&str], message: String| {
        out.push(Fault { keys: keys.iter().map(|k| (*k).to_owned()).collect(), message });
    };
    if p.kind != Kind::FoamBacked && p.foam_set_back != 0.0 {
        fault(
            &["product.foam_set_back", "product.kind"],
            format!(
                "`product.foam_set_back` is of foam-backed siding; {} has no foam",
                p.kind.words()
            ),
        );
    }
    out
}

/// What only boards have, given for panels.
fn of_panels(p: &Product) -> Vec<Fault> {
    let given = [
        ("product.width", p.width),
        ("product.head_lap", p.head_lap),
        ("product.exposure_least", p.exposure_least),
        ("product.exposure_most", p.exposure_most),
        ("product.thickness", p.thickness),
    ];
    let given = given.into_iter().filter(|(_, v)| v.is_some());
    given.map(|(key, _)| says_nothing(p, key)).collect()
}

fn says_nothing(p: &Product, key: &str) -> Fault {
    Fault {
        keys: vec![key.to_owned(), "product.kind".to_owned()],
        message: format!("`{key}` says nothing about {}", p.kind.words()),
    }
}

/// What only panels have, given for boards; exposures that the width cannot give.
fn of_boards(p: &Product) -> Vec<Fault> {
    let given = [
        ("product.faces", p.faces != 1),
        ("product.face_height", p.face_height.is_some()),
        ("product.lap", p.lap.is_some()),
        ("product.hem", p.hem != 0.0),
        ("product.lock", p.lock != 0.0),
    ];
    let given = given.into_iter().filter(|(_, v)| *v);
    let mut out: Vec<Fault> = given.map(|(key, _)| says_nothing(p, key)).collect();
    let (least, most) = p.limits();
    let room = p.width.unwrap_or(0.0) - p.head_lap.unwrap_or(0.0);
    let mut fault = |key: &str, holds: bool, what: &str| {
        if !holds {
            let keys = [key, "product.exposure", "product.width", "product.kind"];
            let message = format!("`{key}` {what}");
            out.push(Fault { keys: keys.map(str::to_owned).to_vec(), message });
        }
    };
    let near = 1e-9;
    fault(
        "product.exposure_most",
        most <= room + near,
        &format!("is {most}; the head lap leaves {room} of the board's width"),
    );
    fault(
        "product.exposure",
        p.exposure >= least - near && p.exposure <= most + near,
        &format!("is {}; it must lie between {least} and {most}, its limits", p.exposure),
    );
    fault("product.exposure_least", least >= 1.0, &format!("is {least}; 1 is the least"));
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(text: &str) -> Product {
        toml::from_str(text).unwrap()
    }

    #[test]
    fn exposure_is_faces_times_face_height() {
        // FACTS section 2, "Names to accept": D4, D4.5, D5, T3, T4, S7.
        for (text, exposure, faces) in [
            ("", 8.0, 2),
            ("face_height = 4.5", 9.0, 2),
            ("face_height = 5\nfaces = 2", 10.0, 2),
            ("faces = 3\nface_height = 3", 9.0, 3),
            ("exposure = 12\nface_height = 4", 12.0, 3),
            ("faces = 1\nface_height = 7", 7.0, 1),
            ("exposure = 14", 14.0, 2),
        ] {
            let p = read(text);
            assert_eq!((p.exposure, p.faces), (exposure, faces), "{text}");
            assert_eq!(p.face() * f64::from(p.faces), exposure);
        }
    }

    #[test]
    fn laps_by_kind() {
        assert_eq!(read("").lap(), 1.25); // PR-02 as twice PR-01
        assert_eq!(read("kind = \"vinyl\"").lap(), 1.0); // SD-70, VSI-H
        assert!(read("").foam_meets_foam() && !read("lap = 1").foam_meets_foam());
        assert!(!read("kind = \"vinyl\"").foam_meets_foam());
    }
}
