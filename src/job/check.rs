//! What of a job no layout can be made with.

use super::fault::Fault;
use super::model::faults as model_faults;
use super::ranges::{ACCEPTABLE, RANGES};
use super::root::Job;
use super::trim_style::{InsideCorner, TopFinish};
use super::{hand_faults, idle, paper, product_faults, stock_rules, wall_faults, zone_faults};
use crate::finding::Refusal;
use crate::finding::job::{JobFinding, JobSource};
use crate::finding::job_value::ValueFault;
use crate::geom::vocabulary::Point;
use crate::model::line_names::{is_line, line_names};
use crate::model::linework::Role;
use crate::model::measure::MeasureKind;

/// Longest nail, inches: of our own choosing, no source.
const LONGEST_NAIL: f64 = 24.0;
/// Most hours of labor for one unit of a line: of our own choosing, no source.
const MOST_HOURS: f64 = 1000.0;
/// Narrowest board, inches: of our own choosing, no source.
const LEAST_BOARD: f64 = 0.5;
/// Widest lap, inches, as the range of `product.lap`.
const WIDEST_LAP: f64 = 6.0;

impl Job {
    /// Refuses values no layout can be made with, naming the key.
    ///
    /// # Errors
    /// `job-value` with the first of [`faults`].
    pub fn validate(&self) -> Result<(), Refusal> {
        match faults(self).into_iter().next() {
            None => Ok(()),
            Some(f) => Err(Refusal::new(JobFinding::JobValue {
                source: JobSource::Program,
                faults: vec![f.placed(None)],
                more: 0,
            })),
        }
    }
}

/// Every value no layout can be made with.
pub fn faults(job: &Job) -> Vec<Fault> {
    let mut out: Vec<Fault> = RANGES
        .iter()
        .filter_map(|r| Fault::out_of_range(r.key, (r.value)(job), r.least, r.most))
        .collect();
    out.extend(stock_rules::faults(job));
    if out.is_empty() {
        out.extend(relations(job));
    }
    out.extend(product_faults::faults(job));
    out.extend(idle::faults(job));
    out.extend(zone_faults::faults(job));
    out.extend(zone_products(job));
    out.extend(names(job));
    if let Some(text) = job.drawing.known.as_ref().filter(|_| job.drawing.known_scale().is_none()) {
        out.push(Fault::new(["drawing.known"], ValueFault::KnownUnreadable { text: text.clone() }));
    }
    out.extend(model_faults(&job.model));
    out.extend(regions(job));
    out.extend(wall_faults::faults(job));
    out.extend(hand_faults::faults(job));
    out.extend(paper::faults(&job.sheet));
    out
}

/// The siding of zones, held to the same ranges.
fn zone_products(job: &Job) -> Vec<Fault> {
    let mut out = Vec::new();
    for i in 0..job.zone.len() {
        let alone = job.for_zone(i, None).map(|j| Job { zone: Vec::new(), ..j });
        // Settings that say nothing about this siding may be the house's own.
        let of_house = |f: &Fault| matches!(&f.fault, ValueFault::OfOtherSiding { key, .. } if !Fault::is_of_product(key));
        let of_product = |f: &Fault| !of_house(f) && f.keys.iter().any(|k| Fault::is_of_product(k));
        let faults = alone.iter().flat_map(faults).filter(of_product);
        out.extend(faults.map(|f| f.in_zone(i)));
    }
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
    out.extend(boards_that_are_none(job));
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
    out.extend(taped_beyond(job));
    let hours = &job.estimate.hours;
    if let Some(odd) = hours.values().find(|h| !(**h > 0.0 && **h <= MOST_HOURS)) {
        let (key, value) = ("estimate.hours".to_owned(), Some(*odd).filter(|v| v.is_finite()));
        let keys = [key.clone()];
        let fault = ValueFault::ListOutOfRange { key, value, over: 0.0, most: MOST_HOURS };
        out.push(Fault::new(keys, fault));
    }
    // Foam cannot meet foam when the lap in force is out of a lap's range.
    if p.lap.is_none() && job.lap() > WIDEST_LAP {
        let fault = ValueFault::FoamLap { lap: job.lap(), most: WIDEST_LAP };
        out.push(Fault::new(["product.foam_set_back"], fault));
    }
    out
}

/// Taped lengths that their measures cannot have.
fn taped_beyond(job: &Job) -> Option<Fault> {
    let beyond = |(name, v): (&String, &f64)| {
        let [least, most] = MeasureKind::of_name(name)?.range();
        Fault::out_of_range(&format!("taped.{name}"), *v, least, most)
    };
    job.taped.iter().find_map(beyond)
}

/// Boards on the wall's face narrower than any board: none is 0.
fn boards_that_are_none(job: &Job) -> Vec<Fault> {
    let t = &job.trim;
    let widths = [
        ("trim.frieze", t.frieze),
        ("trim.rake_frieze", t.rake_frieze),
        ("trim.surround", t.surround),
        ("trim.corner_cover", t.corner_cover),
        ("drawing.casing", job.drawing.casing),
    ];
    let none = widths.into_iter().filter(|(_, w)| *w > 0.0 && *w < LEAST_BOARD);
    none.map(|(key, value)| {
        let key = key.to_owned();
        Fault::new([key.clone()], ValueFault::TooSmall { key, value, least: LEAST_BOARD })
    })
    .collect()
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
    let e = &job.estimate;
    let named = e.hours.keys().map(|line| ("hours", line));
    let named = named.chain(e.colors.keys().map(|line| ("colors", line)));
    let named = named.chain(e.item_numbers.keys().map(|line| ("item_numbers", line)));
    for (table, line) in named.filter(|(_, line)| !is_line(line)) {
        let (key, text) = (format!("estimate.{table}"), line.clone());
        let fault = ValueFault::NotOneOf { key: key.clone(), text, choices: line_names() };
        out.push(Fault::new([format!("{key}.{line}"), key], fault));
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::finding::FindingKind;

    #[test]
    fn a_value_out_of_range_is_refused_by_its_key() {
        let mut job = Job::default();
        job.product.exposure = f64::NAN;
        let found = job.validate().unwrap_err().0.kind;
        let FindingKind::Job(JobFinding::JobValue { faults, .. }) = found else {
            unreachable!("{found:?}")
        };
        let key = "product.exposure".to_owned();
        assert_eq!(faults[0].fault, ValueFault::NotFinite { key });
        assert!(Job::default().validate().is_ok());
    }
}
