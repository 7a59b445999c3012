//! The whole job, and what of it is in force where it says nothing.

use std::collections::BTreeMap;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::around::{AngledWall, ReturnWall};
use super::boards::Boards;
use super::built::Built;
use super::by_hand::{GivenOpening, GivenWall};
use super::courses::CourseRules;
use super::drawing::{Reading, View};
use super::estimate::Estimate;
use super::fasteners::FastenerRules;
use super::layers::{AGREED_LAYERS, is_identification, wildcard};
use super::length::{Length, lengths};
use super::map_schema::named_by;
use super::model::Model;
use super::parts::{Band, MovementJoint};
use super::product::Product;
use super::revision::Revision;
use super::seams::SeamSettings;
use super::sheet::SheetRules;
use super::siding::kind::Siding;
use super::siding::system::{
    ClearanceRule, NailHold, ReceiverRule, SidingSystem, SoldBy, TrimGapRule, UsualSize,
};
use super::stock::Stock;
use super::stock_given::settle_product;
use super::takeoff::TakeoffRules;
use super::title::Title;
use super::trim::TrimRules;
use super::weather::Weather;
use super::work::WorkRules;
use super::zones::Zone;
use crate::model::layer_name::own_name;
use crate::model::linework::Role;
use crate::model::trim::TrimStock;

/// A job.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(remote = "Self", default, deny_unknown_fields)]
pub struct Job {
    /// The job file that this one goes on from, from its own folder: the office's. What this file says comes first;
    /// tables are joined key by key, a list takes the place of a list. Stands before the first table.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub extends: Option<String>,
    /// What the title block says.
    pub title: Title,
    /// Revisions of the drawing, for the table of revisions on every sheet.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub revision: Vec<Revision>,
    /// Which house of a model is built.
    #[serde(skip_serializing_if = "Model::is_plain")]
    pub model: Model,
    /// Lengths taped on site, by their names in `lapwright measure`: `"front-1/foot-width" = "24'-0 1/2\""`. Walls
    /// and their openings are moved to them; `--measured` reads them from the table.
    #[serde(skip_serializing_if = "BTreeMap::is_empty", deserialize_with = "lengths")]
    #[schemars(with = "BTreeMap<String, Length>")]
    pub taped: BTreeMap<String, f64>,
    /// How the drawing is read.
    pub drawing: Reading,
    /// Layer names of each role, with `*` and `?`; a role named here replaces its default names.
    #[schemars(transform = named_by::<Role>)]
    pub layers: BTreeMap<Role, Vec<String>>,
    /// Views, where frames and titles in the drawing do not settle them.
    pub elevation: Vec<View>,
    /// Walls round a corner that no elevation shows (common practice).
    // LayoutFact::HiddenWalls.
    #[serde(rename = "return")]
    pub returns: Vec<ReturnWall>,
    /// Walls that stand at an angle to their elevation and are drawn too short.
    // LayoutFact::AngledWallsShort.
    pub angled: Vec<AngledWall>,
    /// Walls, openings and fixtures that are left out, by the names that findings and sheets use; siding
    /// goes over a place where an opening or a fixture is left out. Stands before the first table.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub skip: Vec<String>,
    /// Walls of one elevation that are one plane, by the names that findings and sheets use. What parts
    /// them is an opening or a board where one is drawn, else it is left bare, and told. The whole wall
    /// has the first name. Stands before the first table.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub join: Vec<Vec<String>>,
    /// Walls given outright.
    #[serde(rename = "wall", skip_serializing_if = "Vec::is_empty")]
    pub walls: Vec<GivenWall>,
    /// Openings given outright.
    #[serde(rename = "opening", skip_serializing_if = "Vec::is_empty")]
    pub openings: Vec<GivenOpening>,
    /// Bands that part the siding, where none is drawn.
    #[serde(rename = "band")]
    pub bands: Vec<Band>,
    /// Movement joints of the building, which siding must not bridge, where none is drawn.
    #[serde(rename = "movement_joint", alias = "joint")]
    pub movement_joints: Vec<MovementJoint>,
    /// Siding that hangs already.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub built: Vec<Built>,
    /// Parts of walls with another cladding.
    pub zone: Vec<Zone>,
    /// The day's weather.
    pub weather: Weather,
    /// The siding.
    pub product: Product,
    /// The lengths its panels are stocked in; left out, `product.length` alone.
    #[serde(rename = "stock", skip_serializing_if = "Vec::is_empty")]
    pub stocks: Vec<Stock>,
    /// Joints of boards.
    pub boards: Boards,
    /// Where courses start and what they keep clear of.
    pub courses: CourseRules,
    /// Where seams may be.
    pub seams: SeamSettings,
    /// Trim.
    pub trim: TrimRules,
    /// How the work goes on.
    pub work: WorkRules,
    /// Nails.
    pub fasteners: FastenerRules,
    /// Fasteners and counts.
    pub takeoff: TakeoffRules,
    /// Further lines of an estimate.
    pub estimate: Estimate,
    /// Paper.
    pub sheet: SheetRules,
}

impl Serialize for Job {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        Job::serialize(self, serializer)
    }
}

impl<'de> Deserialize<'de> for Job {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let mut job = Job::deserialize(deserializer)?;
        settle(&mut job);
        Ok(job)
    }
}

impl Job {
    /// What the siding asks of each stage.
    pub fn siding(&self) -> &'static SidingSystem {
        self.product.system()
    }

    /// Gap at each end of a run in force.
    pub fn end_gap(&self) -> f64 {
        let usual = self.siding().end_gap;
        let by_weather = if self.weather.cold() { usual.cold } else { usual.usual };
        self.product.end_gap.unwrap_or(by_weather)
    }

    /// What is kept clear below siding in force.
    pub fn clearances(&self) -> ClearanceRule {
        let usual = self.siding().clear;
        ClearanceRule {
            roof: self.courses.clear_of_roof.unwrap_or(usual.roof),
            ledge: self.courses.clear_of_ledge.unwrap_or(usual.ledge),
        }
    }

    /// Room that trim is left in force.
    pub fn trim_gaps(&self) -> TrimGapRule {
        let usual = self.siding().trim_gaps;
        TrimGapRule {
            post_top: self.trim.post_top_gap.unwrap_or(usual.post_top),
            post_below: self.trim.post_below.unwrap_or(usual.post_below),
            starter: self.trim.starter_gap.unwrap_or(usual.starter),
        }
    }

    /// Sheathing that nails go through before they hold in force: none where it holds them itself.
    pub fn sheathing(&self) -> f64 {
        match self.siding().fastening.holds {
            NailHold::Studs => self.fasteners.sheathing,
            NailHold::SheathingAndFraming => 0.0,
        }
    }

    /// Least strip that holds: of one no higher than the lock nothing is left to hold.
    pub fn least_strip(&self) -> f64 {
        self.courses.least_strip.max(self.product.lock)
    }

    /// Whether siding is bought by the piece rather than in cartons.
    pub fn sold_singly(&self) -> bool {
        let singly = self.siding().sold_by == SoldBy::Piece;
        singly && self.panel_stocks().iter().all(|s| s.carton == 1)
    }

    /// Greatest spacing of nails in force.
    pub fn nail_spacing(&self) -> f64 {
        match self.siding().fastening.through.is_slotted() {
            true => self.takeoff.nail_spacing,
            false => self.boards.stud_spacing,
        }
    }

    /// Least shank of nails in force.
    pub fn nail_shank(&self) -> f64 {
        self.fasteners.shank.unwrap_or(self.siding().fastening.shank)
    }

    /// Distance of the studs in force: joints on studs have a setting of their own.
    pub fn stud_spacing(&self) -> f64 {
        match self.siding().joints.is_on_studs() {
            true => self.boards.stud_spacing,
            false => self.courses.stud_spacing,
        }
    }

    /// Pocket of posts and channels in force.
    pub fn pocket(&self) -> f64 {
        let usual = match self.siding().receivers {
            ReceiverRule::Pockets { depth, .. } => depth,
            ReceiverRule::TrimBoards => 0.0,
        };
        self.trim.pocket.unwrap_or(usual)
    }

    /// Layers between a panel's nail hem and nailable sheathing in force.
    pub fn stand_off(&self) -> f64 {
        self.takeoff.stand_off.unwrap_or(self.siding().fastening.stand_off)
    }

    /// How far over a face's lower edge a cut still fills a channel by itself, in force.
    pub fn channel_alone(&self) -> f64 {
        let usual = match self.siding().receivers {
            ReceiverRule::Pockets { channel_alone, .. } => channel_alone,
            ReceiverRule::TrimBoards => 0.0,
        };
        self.trim.channel_alone.unwrap_or(usual)
    }

    /// Thickness of the starter piece under a first board in force.
    pub fn starter_thickness(&self) -> f64 {
        let usual = match self.siding().usual {
            UsualSize::Board(size) => size.starter,
            UsualSize::Panel(_) => 0.0,
        };
        self.boards.starter.unwrap_or(usual)
    }

    /// How deep nails go into what holds them in force.
    pub fn penetration(&self) -> f64 {
        self.fasteners.penetration.unwrap_or(self.siding().fastening.penetration)
    }

    /// Growth of the siding in force, length per length and F; 0 where gaps need not cover it.
    pub fn expansion(&self) -> f64 {
        let usual = self.siding().movement.map_or(0.0, |m| m.expansion);
        self.weather.expansion.unwrap_or(usual)
    }

    /// Layer patterns of a role: the job's, else the agreed names.
    pub fn patterns(&self, role: Role) -> Vec<String> {
        let agreed =
            || AGREED_LAYERS.iter().filter(|(r, _)| *r == role).map(|(_, p)| (*p).to_owned());
        self.layers.get(&role).cloned().unwrap_or_else(|| agreed().collect())
    }

    /// Views that the job gives, rather than says something of.
    pub fn views(&self) -> impl Iterator<Item = &View> {
        self.elevation.iter().filter(|v| !v.is_remark())
    }

    /// Whether the job names this layer letter by letter, as a role's or a view's.
    pub fn names_layer(&self, layer: &str) -> bool {
        let zones = self.zone.iter().flat_map(|z| &z.layers);
        let views = self.elevation.iter().flat_map(|v| &v.layers).chain(zones);
        self.layers.values().flatten().chain(views).any(|p| p.eq_ignore_ascii_case(layer))
    }

    /// The role of a layer name, case folded and prefixes of references (bound `name$0$`, not bound `name|`) taken off.
    /// The job's own patterns go before the agreed ones.
    pub fn role_of(&self, layer: &str) -> Option<Role> {
        if self.zone_of(layer).is_some() {
            // No lap siding of the house's own goes there.
            return Some(Role::Bare);
        }
        let whole = layer.to_lowercase();
        let name = own_name(&whole);
        let of_job =
            self.layers.iter().flat_map(|(r, ps)| ps.iter().map(move |p| (*r, p.as_str())));
        let agreed = AGREED_LAYERS.iter().copied().filter(|(r, _)| !self.layers.contains_key(r));
        // Tags of windows are no windows.
        let agreed = agreed.filter(|(r, _)| !(r.is_thing() && is_identification(name)));
        // A name copied with its prefix is meant as it stands.
        let fits = |p: &str| wildcard(p, name) || wildcard(p, &whole);
        of_job.chain(agreed).find(|(_, p)| fits(&p.to_lowercase())).map(|(r, _)| r)
    }

    /// The zone whose outlines are on a layer, by its place in the job: the first that names it.
    pub fn zone_of(&self, layer: &str) -> Option<usize> {
        self.zone.iter().position(|z| z.is_on(layer))
    }

    /// The job of a zone that is laid out: its own siding, on the house's datum.
    pub fn for_zone(&self, zone: usize, datum: Option<f64>) -> Option<Job> {
        let zone = self.zone.get(zone)?;
        let (product, stocks) = (zone.product.clone()?, zone.stocks.clone());
        let mut out = Job { product, stocks, ..self.clone() };
        out.courses.datum = datum.or(self.courses.datum);
        Some(out)
    }

    /// Every kind of siding that is laid out.
    pub fn kinds(&self) -> impl Iterator<Item = Siding> {
        let own = self.zone.iter().filter_map(|z| z.product.as_ref());
        std::iter::once(&self.product).chain(own).map(|p| p.kind)
    }

    /// Length of a stock.
    pub fn stock(&self, stock: TrimStock) -> f64 {
        let t = &self.trim;
        match stock {
            TrimStock::Starter => t.starter,
            TrimStock::OutsidePost => t.outside_post,
            TrimStock::InsidePost => t.inside_post,
            TrimStock::JChannel => t.j_channel,
            TrimStock::FlexibleChannel => t.flexible_channel,
            TrimStock::FinishTrim => t.finish_trim,
            TrimStock::DripCap => t.drip_cap,
            TrimStock::Surround
            | TrimStock::CornerCover
            | TrimStock::Board
            | TrimStock::Filler
            | TrimStock::TopBase
            | TrimStock::TopFace
            | TrimStock::TopPanel
            | TrimStock::Crown => t.decorative,
            TrimStock::Flashing => self.takeoff.flashing_roll,
        }
    }
}

/// Turns what `[product]` says of stock lengths into stocks, and has it say the first length where
/// `[[stock]]` does: the job's own and every zone's.
fn settle(job: &mut Job) {
    settle_product(&mut job.product, &mut job.stocks);
    for zone in &mut job.zone {
        if let Some(product) = &mut zone.product {
            settle_product(product, &mut zone.stocks);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn gaps_and_lap_follow_the_published_figures() {
        let mut job = Job::default();
        assert_eq!(job.end_gap(), 0.25); // SidingFact::EndGap
        assert_eq!(job.lap(), 1.25); // SidingFact::FoamLap as twice SidingFact::FoamSetBack
        job.weather.below_40f = true;
        assert_eq!(job.end_gap(), 0.375); // SidingFact::ColdEndGap
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
}
