//! What values a job may hold: one table for the check, for errors and for the schema.

use super::fault::Fault;
use super::{InsideCorner, Job, TopFinish, idle, product_faults, stock, zones};
use crate::finding::job_value::ValueFault;
use crate::geom::vocabulary::Point;
use crate::model::linework::Role;

/// Longest nail, inches: of our own choosing, no source.
const LONGEST_NAIL: f64 = 24.0;
/// Widest lap, inches, as the range of `product.lap`.
const WIDEST_LAP: f64 = 6.0;

/// Findings that `drawing.accept` may name.
pub const ACCEPTABLE: [&str; 2] = ["opening-outside", "dimension-disagrees"];

/// A number's range.
#[derive(Clone, Copy, Debug)]
pub struct Range {
    /// Dotted key.
    pub key: &'static str,
    /// The value in force.
    value: fn(&Job) -> f64,
    /// Least.
    pub least: f64,
    /// Greatest.
    pub most: f64,
}

/// Bounds of a key in each table of a list.
#[derive(Clone, Copy, Debug)]
pub struct Bounds {
    /// The key.
    pub key: &'static str,
    /// Least.
    pub least: f64,
    /// Greatest.
    pub most: f64,
}

impl Bounds {
    /// A value of the key under `table` that is out of them.
    pub(super) fn out(&self, table: &str, value: f64) -> Option<Fault> {
        Fault::out_of_range(&format!("{table}{}", self.key), value, self.least, self.most)
    }
}

const fn range(key: &'static str, least: f64, most: f64, value: fn(&Job) -> f64) -> Range {
    Range { key, value, least, most }
}

/// Every range. Bounds keep arithmetic sound; what is usual stands beside each default. They are
/// of our own choosing: no source.
pub const RANGES: &[Range] = &[
    range("drawing.weld", 0.0, 2.0, |j| j.drawing.weld),
    range("drawing.casing", 0.0, 24.0, |j| j.drawing.casing),
    range("weather.installed_f", -80.0, 200.0, |j| j.weather.installed()),
    range("weather.lowest_f", -80.0, 200.0, |j| j.weather.lowest_f),
    range("weather.highest_f", -80.0, 250.0, |j| j.weather.highest_f),
    range("weather.expansion", 0.0, 0.001, Job::expansion),
    range("product.exposure", 2.0, 48.0, |j| j.product.exposure),
    range("product.faces", 1.0, 12.0, |j| f64::from(j.product.faces)),
    range("product.length", 36.0, 600.0, |j| j.product.length),
    range("product.second_length", 36.0, 600.0, |j| j.product.given.second_length.unwrap_or(150.0)),
    range("product.second_cost", 0.05, 20.0, |j| j.product.given.second_cost.unwrap_or(1.0)),
    range("product.second_carton", 1.0, 1000.0, |j| {
        f64::from(j.product.given.second_carton.unwrap_or(1))
    }),
    range("product.foam_set_back", 0.0, 4.0, |j| j.product.foam_set_back),
    range("product.lap", 0.0, 6.0, |j| j.product.lap.unwrap_or(0.0)),
    range("product.end_gap", 0.0, 2.0, Job::end_gap),
    range("product.face_height", 0.5, 48.0, |j| j.product.face()),
    range("product.hem", 0.0, 4.0, |j| j.product.hem),
    range("product.lock", 0.0, 4.0, |j| j.product.lock),
    range("product.width", 2.0, 48.0, |j| j.product.width.unwrap_or(8.0)),
    range("product.head_lap", 0.0, 12.0, |j| j.product.head_lap.unwrap_or(1.0)),
    range("product.thickness", 0.0, 4.0, |j| j.product.thickness.unwrap_or(0.5)),
    range("boards.butt_gap", 0.0, 1.0, |j| j.boards.butt_gap.unwrap_or(0.0)),
    range("boards.stud_spacing", 6.0, 48.0, |j| j.boards.stud_spacing),
    range("boards.first_stud", 0.0, 48.0, |j| j.boards.first_stud),
    range("boards.studs_apart", 1.0, 6.0, |j| f64::from(j.boards.studs_apart)),
    range("boards.starter", 0.0, 4.0, Job::starter_thickness),
    range("product.carton", 1.0, 1000.0, |j| f64::from(j.product.carton)),
    range("courses.datum", -10_000.0, 10_000.0, |j| j.courses.datum.unwrap_or(0.0)),
    range("courses.hang_below", 0.0, 48.0, |j| j.courses.hang_below),
    range("courses.clear_of_grade", 0.0, 48.0, |j| j.courses.clear_of_grade),
    range("courses.clear_of_roof", 0.0, 24.0, |j| j.courses.clear_of_roof),
    range("courses.least_strip", 0.0, 48.0, |j| j.courses.least_strip),
    range("courses.notch_clearance", 0.0, 2.0, |j| j.courses.notch_clearance),
    range("courses.stud_spacing", 1.0, 96.0, |j| j.courses.stud_spacing),
    range("courses.slot_spacing", 1.0, 96.0, |j| j.courses.slot_spacing),
    range("courses.lug_spacing", 1.0, 96.0, |j| j.courses.lug_spacing),
    range("courses.weights.strip_over_head", 0.0, 1e6, |j| j.courses.weights.strip_over_head),
    range("courses.weights.strip_under_sill", 0.0, 1e6, |j| j.courses.weights.strip_under_sill),
    range("courses.weights.strip_at_top", 0.0, 1e6, |j| j.courses.weights.strip_at_top),
    range("courses.weights.strip_at_start", 0.0, 1e6, |j| j.courses.weights.strip_at_start),
    range("courses.weights.main_head", 0.0, 1e6, |j| j.courses.weights.main_head),
    range("courses.weights.main_sill", 0.0, 1e6, |j| j.courses.weights.main_sill),
    range("courses.weights.other_line", 0.0, 1e6, |j| j.courses.weights.other_line),
    range("courses.weights.short_top", 0.0, 1e6, |j| j.courses.weights.short_top),
    range("courses.weights.cut_start", 0.0, 1e6, |j| j.courses.weights.cut_start),
    range("courses.weights.step", 0.0, 1e6, |j| j.courses.weights.step),
    range("courses.weights.left_bare", 0.0, 1e6, |j| j.courses.weights.left_bare),
    range("courses.weights.cut_panel", 0.0, 1e6, |j| j.courses.weights.cut_panel),
    range("seams.shortest", 0.0, 300.0, |j| j.seams.shortest),
    range("seams.stagger", 0.0, 600.0, |j| j.seams.stagger),
    range("seams.clear_courses", 0.0, 12.0, |j| f64::from(j.seams.clear_courses)),
    range("seams.jamb", 0.0, 48.0, |j| j.seams.jamb),
    range("seams.kerf", 0.0, 1.0, |j| j.seams.kerf),
    range("seams.past_obstacle", 0.0, 12.0, |j| j.seams.past_obstacle),
    range("trim.starter", 24.0, 600.0, |j| j.trim.starter),
    range("trim.outside_post", 24.0, 600.0, |j| j.trim.outside_post),
    range("trim.inside_post", 24.0, 600.0, |j| j.trim.inside_post),
    range("trim.j_channel", 24.0, 600.0, |j| j.trim.j_channel),
    range("trim.finish_trim", 24.0, 600.0, |j| j.trim.finish_trim),
    range("trim.drip_cap", 24.0, 600.0, |j| j.trim.drip_cap),
    range("trim.channel_face", 0.0, 6.0, |j| j.trim.channel_face),
    range("trim.tab", 0.0, 6.0, |j| j.trim.tab),
    range("trim.pocket", 0.0, 6.0, Job::pocket),
    range("trim.channel_alone", 0.0, 12.0, Job::channel_alone),
    range("trim.post_top_gap", 0.0, 6.0, |j| j.trim.post_top_gap),
    range("trim.post_below", 0.0, 12.0, |j| j.trim.post_below),
    range("trim.post_lap", 0.0, 12.0, |j| j.trim.post_lap),
    range("trim.post_cut_back", 0.0, 12.0, |j| j.trim.post_cut_back),
    range("trim.frieze", 0.0, 48.0, |j| j.trim.frieze),
    range("trim.rake_frieze", 0.0, 48.0, |j| j.trim.rake_frieze),
    range("trim.surround", 0.0, 24.0, |j| j.trim.surround),
    range("trim.corner_cover", 0.0, 24.0, |j| j.trim.corner_cover),
    range("trim.decorative", 24.0, 600.0, |j| j.trim.decorative),
    range("trim.movement_gap", 0.25, 6.0, |j| j.trim.movement_gap),
    range("trim.starter_gap", 0.0, 6.0, |j| j.trim.starter_gap),
    range("trim.drip_cap_past", 0.0, 12.0, |j| j.trim.drip_cap_past),
    range("work.level_check", 1.0, 100.0, |j| f64::from(j.work.level_check)),
    range("fasteners.foam_board", 0.0, 12.0, |j| j.fasteners.foam_board),
    range("fasteners.other_layers", 0.0, 12.0, |j| j.fasteners.other_layers),
    range("fasteners.penetration", 0.0, 6.0, |j| j.fasteners.penetration.unwrap_or(1.25)),
    range("fasteners.shortest", 0.0, 12.0, |j| j.fasteners.shortest.unwrap_or(0.0)),
    range("fasteners.shank", 0.0, 1.0, Job::nail_shank),
    range("fasteners.head", 0.0, 2.0, |j| j.fasteners.head),
    range("fasteners.post_spacing", 1.0, 48.0, |j| j.fasteners.post_spacing.unwrap_or(12.0)),
    range("fasteners.channel_spacing", 1.0, 48.0, |j| j.fasteners.channel_spacing.unwrap_or(12.0)),
    range("fasteners.strip_spacing", 1.0, 48.0, |j| j.fasteners.strip_spacing.unwrap_or(12.0)),
    range("takeoff.area_waste", 0.0, 100.0, |j| j.takeoff.area_waste),
    range("takeoff.nail_spacing", 1.0, 48.0, |j| j.takeoff.nail_spacing),
    range("takeoff.trim_nail_spacing", 1.0, 48.0, |j| j.takeoff.trim_nail_spacing),
    range("takeoff.nail_box", 1.0, 1e6, |j| f64::from(j.takeoff.nail_box)),
    range("takeoff.stand_off", 0.0, 12.0, Job::stand_off),
    range("takeoff.spare", 0.0, 100.0, |j| j.takeoff.spare),
    range("takeoff.large_opening", 0.0, 1e6, |j| j.takeoff.large_opening),
    range("takeoff.flashing_roll", 12.0, 12_000.0, |j| j.takeoff.flashing_roll),
];

/// Every value no layout can be made with.
pub fn faults(job: &Job) -> Vec<Fault> {
    let mut out: Vec<Fault> = RANGES
        .iter()
        .filter_map(|r| Fault::out_of_range(r.key, (r.value)(job), r.least, r.most))
        .collect();
    out.extend(stock::faults(job));
    if out.is_empty() {
        out.extend(relations(job));
    }
    out.extend(product_faults::faults(job));
    out.extend(idle::faults(job));
    out.extend(zones::faults(job));
    out.extend(names(job));
    if let Some(text) = job.drawing.known.as_ref().filter(|_| job.drawing.known_scale().is_none()) {
        out.push(Fault::new(["drawing.known"], ValueFault::KnownUnreadable { text: text.clone() }));
    }
    out.extend(regions(job));
    out.extend(super::around::faults(job));
    out.extend(super::parts::faults(job));
    out.extend(super::paper::faults(&job.sheet.paper, job.sheet.scale.as_deref()));
    out
}

/// Values that hang on one another.
fn relations(job: &Job) -> Vec<Fault> {
    let p = &job.product;
    let limits = [
        ("courses.least_strip", job.courses.least_strip, p.exposure, "product.exposure"),
        ("trim.post_lap", job.trim.post_lap, job.trim.outside_post / 2.0, "trim.outside_post"),
        ("trim.post_lap", job.trim.post_lap, job.trim.post_cut_back, "trim.post_cut_back"),
    ];
    let over = |(key, value, most, by): &(&str, f64, f64, &str)| {
        (value > most).then(|| {
            let (key, other) = ((*key).to_owned(), (*by).to_owned());
            let keys = [key.clone(), other.clone()];
            Fault::new(keys, ValueFault::TooLargeFor { key, value: *value, most: *most, other })
        })
    };
    let mut out: Vec<Fault> = limits.iter().filter_map(over).collect();
    out.extend(beside_stock(job));
    out.extend(weather(job));
    out.extend(choices(job));
    let lengths = &job.fasteners.lengths;
    if let Some(odd) = lengths.iter().find(|l| !(**l > 0.0 && **l <= LONGEST_NAIL)) {
        let (key, value) = ("fasteners.lengths".to_owned(), Some(*odd).filter(|v| v.is_finite()));
        let keys = [key.clone()];
        let fault = ValueFault::ListOutOfRange { key, value, over: 0.0, most: LONGEST_NAIL };
        out.push(Fault::new(keys, fault));
    }
    // Foam cannot meet foam when the lap in force is out of a lap's range.
    if p.lap.is_none() && job.lap() > WIDEST_LAP {
        let fault = ValueFault::FoamLap { lap: job.lap(), most: WIDEST_LAP };
        out.push(Fault::new(["product.foam_set_back"], fault));
    }
    out
}

/// Temperatures that contradict one another.
fn weather(job: &Job) -> Vec<Fault> {
    let w = &job.weather;
    let mut out = Vec::new();
    if w.lowest_f > w.highest_f {
        let [key, other] = ["weather.lowest_f", "weather.highest_f"].map(str::to_owned);
        let keys = [key.clone(), other.clone()];
        let fault = ValueFault::TooLargeFor { key, value: w.lowest_f, most: w.highest_f, other };
        out.push(Fault::new(keys, fault));
    }
    if w.below_40f && w.installed_f.is_some_and(|f| f >= 40.0) {
        let [key, other] = ["weather.below_40f", "weather.installed_f"].map(str::to_owned);
        out.push(Fault::new([key.clone(), other.clone()], ValueFault::OneTooMany { key, other }));
    }
    out
}

/// Choices that do not go together.
fn choices(job: &Job) -> Vec<Fault> {
    let against = |key: &str, other: &str, instead: &[&str]| {
        let (key, other) = (key.to_owned(), other.to_owned());
        let instead = instead.iter().map(|i| (*i).to_owned()).collect();
        Fault::new([key.clone(), other.clone()], ValueFault::ChoiceAgainst { key, other, instead })
    };
    let mut out = Vec::new();
    if job.trim.frieze > 0.0 && matches!(job.trim.top, TopFinish::TwoPiece | TopFinish::TopPanel) {
        out.push(against("trim.frieze", "trim.top", &["finish-trim", "crown"]));
    }
    if !job.siding().receivers.has_pockets() && job.trim.inside_corner != InsideCorner::Post {
        // What has no pockets does not stand in J-channels.
        let mut fault = against("product.kind", "trim.inside_corner", &["post"]);
        fault.keys.reverse();
        out.push(fault);
    }
    out
}

/// Seam settings that the shortest stock leaves no room for.
fn beside_stock(job: &Job) -> Vec<Fault> {
    let lengths = job.stocks.iter().map(|s| s.length).enumerate();
    let shortest = lengths.min_by(|a, b| a.1.total_cmp(&b.1));
    let (other, length) = match shortest {
        None => ("product.length".to_owned(), job.product.length),
        Some((i, length)) => (format!("stock.{i}.length"), length),
    };
    let limits = [
        ("seams.shortest", job.seams.shortest, length / 2.0),
        ("seams.stagger", job.seams.stagger, length),
    ];
    let fault = |(key, value, most): (&str, f64, f64)| {
        let simple = ["product.second_length", "product.length"];
        let keys = [key, other.as_str()].into_iter().chain(simple);
        let (key, other) = (key.to_owned(), other.clone());
        let fault = ValueFault::TooLargeFor { key, value, most, other };
        (value > most).then(|| Fault::new(keys, fault))
    };
    limits.into_iter().filter_map(fault).collect()
}

/// Names that say nothing, or name nothing.
fn names(job: &Job) -> Vec<Fault> {
    let mut out = Vec::new();
    for code in &job.drawing.accept {
        if !ACCEPTABLE.contains(&code.as_str()) {
            let (key, text) = ("drawing.accept".to_owned(), code.clone());
            let choices = ACCEPTABLE.map(str::to_owned).to_vec();
            out.push(Fault::new([key.clone()], ValueFault::NotOneOf { key, text, choices }));
        }
    }
    for (role, patterns) in &job.layers {
        if patterns.iter().any(|p| p.trim().is_empty()) {
            let key = format!("layers.{}", word(*role));
            out.push(Fault::new([key.clone()], ValueFault::NameEmpty { key }));
        }
    }
    out
}

/// A role as the job file spells it: its name in kebab case.
fn word(role: Role) -> String {
    let mut out = String::new();
    for c in format!("{role:?}").chars() {
        if c.is_ascii_uppercase() && !out.is_empty() {
            out.push('-');
        }
        out.push(c.to_ascii_lowercase());
    }
    out
}

/// Regions of views.
fn regions(job: &Job) -> Vec<Fault> {
    let mut out = Vec::new();
    for (i, view) in job.elevation.iter().enumerate() {
        let Some([left, bottom, right, top]) = view.region else { continue };
        let (a, b) = (Point::new(left, bottom), Point::new(right, top));
        if !(a.is_finite() && b.is_finite() && left < right && bottom < top) {
            let (key, view) = (format!("elevation.{i}.region"), view.name.clone());
            out.push(Fault::new([key.clone()], ValueFault::RegionEmpty { key, view }));
        }
    }
    out
}
