//! The siding, and the day it goes up.
//!
//! What is left out of a job follows the kind of siding, so a product is read in two steps: as
//! [`Written`], then filled in.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::Job;
use super::length::{Length, maybe_length};
use super::ranges::Fault;

/// Gap at a panel's end, association figure (FACTS SD-50, VSI-H).
pub const END_GAP: f64 = 0.25;
/// Same below 40 F (FACTS SD-51, VSI-H).
pub const COLD_END_GAP: f64 = 0.375;
/// From this length on the maker states a larger gap (FACTS SD-52, VSI-H).
pub const LONG_PANEL: f64 = 240.0;
/// Lap of plain vinyl: half of a factory notch of 2 in (FACTS SD-70, VSI-H).
const PLAIN_LAP: f64 = 1.0;
/// How far foam stops short of the vinyl at each factory end (FACTS PR-01, common practice).
const FOAM_SET_BACK: f64 = 0.625;
/// Face of a double 4 (FACTS SD-81).
const FACE: f64 = 4.0;

/// The day's weather.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct Weather {
    /// Installed below 40 F (4.4 C): end gaps 3/8 in rather than 1/4 in (FACTS SD-50, SD-51, VSI-H).
    pub below_40f: bool,
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
}

impl Kind {
    /// The trade's words for it.
    pub fn words(self) -> &'static str {
        match self {
            Kind::FoamBacked => "foam-backed vinyl lap siding",
            Kind::Vinyl => "vinyl lap siding",
        }
    }
}

/// The siding.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(from = "Written")]
pub struct Product {
    /// What it is made of.
    pub kind: Kind,
    /// Height of a course.
    pub exposure: f64,
    /// Boards a panel shows.
    pub faces: u32,
    /// Height of one of them, where the job gives it.
    pub face_height: Option<f64>,
    /// Stock length.
    pub length: f64,
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
}

/// The siding, as a job file gives it.
#[derive(Clone, Debug, Default, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
#[schemars(rename = "ProductWritten")]
struct Written {
    /// What it is made of: `foam-backed` vinyl, the default, or plain `vinyl`.
    kind: Kind,
    /// Height of a course; left out, `faces` times `face_height`. Default 8 in, a double 4
    /// (FACTS SD-81).
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
    /// Stock length. Default 12 ft 6 in, 24 panels of D4 to two squares (FACTS TK-03).
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Length")]
    length: Option<f64>,
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
    /// and more want the gap their maker states (SD-52).
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
    /// Panels in a carton. Default 24, two squares of D4 at 12 ft 6 in (FACTS TK-02, TK-03).
    carton: Option<u32>,
    /// Colour, as it shall be ordered.
    colour: String,
}

impl From<Written> for Product {
    fn from(w: Written) -> Self {
        let foam = if w.kind == Kind::FoamBacked { FOAM_SET_BACK } else { 0.0 };
        let (exposure, faces) = profile(&w);
        Product {
            kind: w.kind,
            exposure,
            faces,
            face_height: w.face_height,
            length: w.length.unwrap_or(150.0),
            foam_set_back: w.foam_set_back.unwrap_or(foam),
            lap: w.lap,
            end_gap: w.end_gap,
            hem: w.hem.unwrap_or(1.25),
            lock: w.lock.unwrap_or(0.75),
            carton: w.carton.unwrap_or(24),
            colour: w.colour,
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
    /// Lap at a seam in force: foam meets foam, or half the factory notch.
    pub fn lap(&self) -> f64 {
        let usual = match self.kind {
            Kind::FoamBacked => 2.0 * self.foam_set_back,
            Kind::Vinyl => PLAIN_LAP,
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
        if (stands - p.exposure).abs() > 1.0 / 64.0 {
            fault(
                &["product.face_height", "product.exposure", "product.faces"],
                format!(
                    "`product.face_height` is {height} and `product.faces` {}: a course of {stands}, but `product.exposure` is {}",
                    p.faces, p.exposure
                ),
            );
        }
    }
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
