//! The siding: what is left out of a job follows its kind, so it is read in two steps, as
//! [`Written`], then filled in.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::siding::kind::Siding;
use super::siding::system::{BoardSize, JointRule, PanelSize, SeamLap, SidingSystem, UsualSize};
use super::stock::GivenStocks;
use super::written::Written;

/// The siding.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(from = "Written")]
#[schemars(deny_unknown_fields)]
pub struct Product {
    /// What it is.
    pub kind: Siding,
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
    /// Color, as it shall be ordered.
    pub color: String,
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
    /// Set-back of an outside corner post, where the job gives it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub outside_post_set_back: Option<f64>,
    /// Face of an outside corner post, where the job gives it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub outside_post_face: Option<f64>,
    /// Set-back of an inside corner post, where the job gives it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub inside_post_set_back: Option<f64>,
    /// Face of an inside corner post, where the job gives it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub inside_post_face: Option<f64>,
    /// Set-back of outside posts for corners that are not square, where the job gives it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub angled_outside_post_set_back: Option<f64>,
    /// Set-back of inside posts for corners that are not square, where the job gives it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub angled_inside_post_set_back: Option<f64>,
    /// Width of a corner board, where the job gives it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub corner_board: Option<f64>,
    /// Width of the strip in an inside corner, where the job gives it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub inside_corner_board: Option<f64>,
}

impl Default for Product {
    fn default() -> Self {
        Written::default().into()
    }
}

impl Product {
    /// A product of a kind with all that goes with it.
    pub fn of(kind: Siding) -> Self {
        Written { kind, ..Default::default() }.into()
    }

    /// What its siding system asks of each stage.
    pub fn system(&self) -> &'static SidingSystem {
        self.kind.system()
    }

    /// Least and greatest height of a course: the exposure itself, but for boards.
    pub fn limits(&self) -> (f64, f64) {
        if !self.system().courses.is_evened() {
            return (self.exposure, self.exposure);
        }
        let room = self.width.unwrap_or(self.exposure) - self.head_lap.unwrap_or(0.0);
        let most = self.exposure_most.unwrap_or(room);
        (self.exposure_least.unwrap_or(self.exposure), most)
    }

    /// What a panel has over the face of a course so high: its nail hem, or a board's head lap.
    pub fn over_face(&self, course: f64) -> f64 {
        match self.width {
            Some(width) if self.system().courses.is_evened() => (width - course).max(0.0),
            _ => self.hem,
        }
    }

    /// Lap at a seam in force: foam meets foam, or half the factory notch; none at a joint.
    pub fn lap(&self) -> f64 {
        let usual = match self.system().joints {
            JointRule::Lapped(SeamLap::FoamMeetsFoam) => 2.0 * self.foam_set_back,
            JointRule::Lapped(SeamLap::HalfFactoryNotch(lap) | SeamLap::Customary(lap)) => lap,
            JointRule::ButtOnStuds { .. } => 0.0,
        };
        self.lap.unwrap_or(usual)
    }

    /// Height of one of the boards a panel shows.
    pub fn face(&self) -> f64 {
        self.exposure / f64::from(self.faces.max(1))
    }

    /// Whether foam is bonded to its back.
    pub fn has_foam(&self) -> bool {
        self.system().joints == JointRule::Lapped(SeamLap::FoamMeetsFoam)
    }

    /// Whether a seam laps by exactly what the foam of both panels leaves free.
    pub fn foam_meets_foam(&self) -> bool {
        self.has_foam() && (self.lap() - 2.0 * self.foam_set_back).abs() < 1e-9
    }
}

fn given(w: &Written) -> GivenStocks {
    GivenStocks {
        length: w.length,
        second_length: w.second_length,
        second_cost: w.second_cost,
        second_carton: w.second_carton,
    }
}

/// A board: what is left out from its width and head lap.
fn board(w: Written, usual: &BoardSize) -> Product {
    let width = w.width.unwrap_or(usual.width);
    let head_lap = w.head_lap.unwrap_or(usual.head_lap);
    let most = w.exposure_most.unwrap_or(width - head_lap);
    let aim = width - usual.covered.unwrap_or(head_lap);
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
        color: w.color,
        width: Some(width),
        head_lap: Some(head_lap),
        exposure_least: Some(w.exposure_least.unwrap_or(exposure - 1.0)),
        exposure_most: Some(most),
        thickness: Some(w.thickness.unwrap_or(usual.thickness)),
        outside_post_set_back: w.outside_post_set_back,
        outside_post_face: w.outside_post_face,
        inside_post_set_back: w.inside_post_set_back,
        inside_post_face: w.inside_post_face,
        angled_outside_post_set_back: w.angled_outside_post_set_back,
        angled_inside_post_set_back: w.angled_inside_post_set_back,
        corner_board: w.corner_board,
        inside_corner_board: w.inside_corner_board,
    }
}

fn panel(w: Written, usual: &PanelSize) -> Product {
    let (exposure, faces) = profile(&w, usual);
    Product {
        kind: w.kind,
        exposure,
        faces,
        face_height: w.face_height,
        length: w.length.unwrap_or(usual.length),
        given: given(&w),
        foam_set_back: w.foam_set_back.unwrap_or(usual.foam_set_back),
        lap: w.lap,
        end_gap: w.end_gap,
        hem: w.hem.unwrap_or(usual.hem),
        lock: w.lock.unwrap_or(usual.lock),
        carton: w.carton.unwrap_or(usual.carton),
        color: w.color,
        width: w.width,
        head_lap: w.head_lap,
        exposure_least: w.exposure_least,
        exposure_most: w.exposure_most,
        thickness: w.thickness,
        outside_post_set_back: w.outside_post_set_back,
        outside_post_face: w.outside_post_face,
        inside_post_set_back: w.inside_post_set_back,
        inside_post_face: w.inside_post_face,
        angled_outside_post_set_back: w.angled_outside_post_set_back,
        angled_inside_post_set_back: w.angled_inside_post_set_back,
        corner_board: w.corner_board,
        inside_corner_board: w.inside_corner_board,
    }
}

impl From<Written> for Product {
    fn from(w: Written) -> Self {
        match w.kind.system().usual {
            UsualSize::Board(usual) => board(w, &usual),
            UsualSize::Panel(usual) => panel(w, &usual),
        }
    }
}

/// Exposure and faces: what is given, and the rest from it.
fn profile(w: &Written, usual: &PanelSize) -> (f64, u32) {
    let face = w.face_height.unwrap_or(usual.face_height);
    match (w.exposure, w.faces) {
        (Some(e), Some(n)) => (e, n),
        (Some(e), None) => {
            let whole = |h: f64| (e / h).round().clamp(1.0, 12.0) as u32;
            (e, w.face_height.filter(|h| *h > 0.0).map_or(usual.faces, whole))
        }
        (None, n) => {
            let n = n.unwrap_or(usual.faces);
            (f64::from(n) * face, n)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(text: &str) -> Product {
        toml::from_str(text).unwrap()
    }

    #[test]
    fn exposure_is_faces_times_face_height() {
        // SidingFact::ProfileNames: D4, D4.5, D5, T3, T4, S7.
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
        assert_eq!(read("").lap(), 1.25); // SidingFact::FoamLap as twice SidingFact::FoamSetBack
        assert_eq!(read("kind = \"vinyl\"").lap(), 1.0); // SidingFact::PlainLap
        assert!(read("").foam_meets_foam() && !read("lap = 1").foam_meets_foam());
        assert!(!read("kind = \"vinyl\"").foam_meets_foam());
    }
}
