//! Of the values of a job.

use super::lines::known_form;
use super::parts::{listed, number};
use crate::finding::job::JobSource;
use crate::finding::job_value::ValueFault;
use crate::units::counted;

/// A key as its source writes it: dotted, that of a zone's product under the zone; an option of the
/// command by its name.
struct Keys<'a> {
    zone: Option<usize>,
    source: &'a JobSource,
}

impl Keys<'_> {
    fn word(&self, key: &str) -> String {
        match (self.zone, self.source, key.strip_prefix("sheet.")) {
            (_, JobSource::CommandLine, Some(option @ ("paper" | "scale"))) => {
                format!("`--{option}`")
            }
            (Some(zone), ..) if is_of_product(key) => format!("`zone.{zone}.{key}`"),
            _ => format!("`{key}`"),
        }
    }
}

fn is_of_product(key: &str) -> bool {
    key == "stock" || key.starts_with("product.") || key.starts_with("stock.")
}

/// What is wrong with a value.
pub(super) fn message(fault: &ValueFault, zone: Option<usize>, source: &JobSource) -> String {
    use ValueFault as F;
    let keys = Keys { zone, source };
    let word = |key: &str| keys.word(key);
    match fault {
        F::OutOfRange { key, value, least, most } => {
            out_of_range(&word(key), *value, *least, *most)
        }
        F::NotFinite { key } => format!("{} is infinite or no number", word(key)),
        F::TooSmall { key, value, least } => {
            format!("{} is {}; {} is the least", word(key), number(*value), number(*least))
        }
        F::TooLargeFor { key, value, most, other } => {
            too_large_for(&word(key), *value, *most, &word(other))
        }
        F::NotOver { key, value, other, limit } => {
            not_over(&word(key), *value, &word(other), *limit)
        }
        F::ListOutOfRange { key, value, over, most } => {
            list_out_of_range(&word(key), *value, *over, *most)
        }
        F::OneTooMany { key, other } => one_too_many(&word(key), &word(other)),
        F::OfOtherSiding { key, siding } => {
            format!("{} says nothing about {siding} siding", word(key))
        }
        F::NeedsOther { key, other } => {
            format!("{} says nothing without {}", word(key), word(other))
        }
        F::ChoiceAgainst { key, other, instead } => choice(&word(key), &word(other), instead),
        F::LanguagesOnSmallPaper { paper, papers } => small_paper(&keys, paper, papers),
        F::FacesDisagree { faces, face_height, makes, exposure } => {
            faces_disagree(&keys, *faces, [*face_height, *makes, *exposure])
        }
        F::StocksMany { given, most } => stocks_many(&word("stock"), *given, *most),
        F::StocksOfOneLength { given, siding } => one_length(&word("stock"), *given, siding),
        F::CostsPartly { key, other } => costs_partly(&word(key), &word(other)),
        F::CostsApart { key, value, other, reference, times } => {
            costs_apart((&word(key), *value), (&word(other), *reference), *times)
        }
        F::LengthsAlike { key, second, first } => lengths_alike(&word(key), *second, *first),
        F::ExposureOverWidth { key, value, leaves } => {
            exposure_over_width(&word(key), *value, *leaves)
        }
        F::FoamLap { lap, most } => foam_lap(&word("product.foam_set_back"), *lap, *most),
        F::NotOneOf { key, text, choices } => not_one_of(&word(key), text, choices),
        F::VariantForm { key, text } => variant_form(&word(key), text),
        F::NameEmpty { key } => format!("{} is empty: it must name something", word(key)),
        F::NameTwice { key, name } => format!("{} is `{name}`, the name of two", word(key)),
        F::NamedTwice { key, name } => named_twice(&word(key), name),
        F::JoinsNothing { key, names } => joins_nothing(&word(key), *names),
        F::OutlineEmpty { key, points } => outline_empty(&word(key), *points),
        F::RegionEmpty { key, view } => region_empty(&word(key), view),
        F::KnownUnreadable { text } => {
            format!("{} is `{text}`. {}", word("drawing.known"), known_form())
        }
        F::ZoneNowhere { .. } | F::ZoneUnclad { .. } | F::ZoneRegionWhole { .. } => {
            of_zone(fault, &keys)
        }
    }
}

/// Of zones that say too little.
fn of_zone(fault: &ValueFault, keys: &Keys) -> String {
    match fault {
        ValueFault::ZoneNowhere { key } => zone_nowhere(&keys.word(key)),
        ValueFault::ZoneUnclad { key } => zone_unclad(&keys.word(key)),
        ValueFault::ZoneRegionWhole { key } => {
            format!("{} names no side: give one at least", keys.word(key))
        }
        _ => String::new(),
    }
}

fn joins_nothing(key: &str, names: usize) -> String {
    format!("{key} names {}: two at least are joined", counted(names, "wall"))
}

fn region_empty(key: &str, view: &str) -> String {
    format!("{key}, of `{view}`, is no [left, bottom, right, top]")
}

fn named_twice(key: &str, name: &str) -> String {
    format!("{key} is `{name}`, which `skip` or `join` names already")
}

fn outline_empty(key: &str, points: usize) -> String {
    format!(
        "{key} has {}, which go round nothing: give two opposite corners of a rectangle, or three corners and more in order",
        counted(points, "point")
    )
}

fn stocks_many(key: &str, given: usize, most: usize) -> String {
    format!("{key} gives {given} lengths; {most} is the most that are mixed")
}

fn one_length(key: &str, given: usize, siding: &str) -> String {
    format!("{key} gives {given} lengths; {siding} siding is laid of one")
}

fn costs_partly(key: &str, other: &str) -> String {
    format!("{key} is given and {other} left out: give every stock's cost or none")
}

fn not_one_of(key: &str, text: &str, choices: &[String]) -> String {
    format!("{key} is `{text}`; it may be {}", listed(choices))
}

fn one_too_many(key: &str, other: &str) -> String {
    format!("{key} contradicts {other}: leave one out")
}

fn variant_form(key: &str, text: &str) -> String {
    format!(
        "{key} is \"{text}\": it takes one letter, or a number of one or two digits, as titles of elevations have it"
    )
}

fn out_of_range(key: &str, value: f64, least: f64, most: f64) -> String {
    let [value, least, most] = [value, least, most].map(number);
    format!("{key} is {value}; it must lie between {least} and {most}")
}

fn too_large_for(key: &str, value: f64, most: f64, other: &str) -> String {
    let [value, most] = [value, most].map(number);
    format!("{key} is {value}; with {other} it must not be over {most}")
}

fn not_over(key: &str, value: f64, other: &str, limit: f64) -> String {
    let [value, limit] = [value, limit].map(number);
    format!("{key} is {value}; it must be over {other}, which is {limit}")
}

fn list_out_of_range(key: &str, value: Option<f64>, over: f64, most: f64) -> String {
    let [over, most] = [over, most].map(number);
    let holds = value.map_or_else(|| "an infinite number or none".to_owned(), number);
    format!("{key} holds {holds}; each must be over {over} and {most} at most")
}

fn choice(key: &str, other: &str, instead: &[String]) -> String {
    let instead: Vec<String> = instead.iter().map(|i| format!("`{i}`")).collect();
    let instead = instead.join(" or ");
    format!("{key} does not go with {other} as it is set; take {instead} there")
}

fn small_paper(keys: &Keys, paper: &str, papers: &[String]) -> String {
    format!(
        "{} is `both`, and {} `{paper}` has no room for two languages; take `en` or `es`, or larger paper: {}",
        keys.word("sheet.language"),
        keys.word("sheet.paper"),
        listed(papers)
    )
}

fn faces_disagree(keys: &Keys, faces: u32, [face_height, makes, exposure]: [f64; 3]) -> String {
    let [face_height, makes, exposure] = [face_height, makes, exposure].map(number);
    format!(
        "{} is {face_height} and {} {faces}: a course of {makes}, but {} is {exposure}",
        keys.word("product.face_height"),
        keys.word("product.faces"),
        keys.word("product.exposure")
    )
}

fn lengths_alike(key: &str, second: f64, first: f64) -> String {
    let [second, first] = [second, first].map(number);
    format!("{key} is {second} and another length {first}: two lengths differ by an inch at least")
}

fn costs_apart((key, value): (&str, f64), (other, reference): (&str, f64), times: f64) -> String {
    let [value, reference, times] = [value, reference, times].map(number);
    format!(
        "{key} is {value} and {other} {reference}: costs in the same terms differ by {times} times at most"
    )
}

fn exposure_over_width(key: &str, value: f64, leaves: f64) -> String {
    let [value, leaves] = [value, leaves].map(number);
    format!("{key} is {value}; the head lap leaves {leaves} of the board's width")
}

fn foam_lap(key: &str, lap: f64, most: f64) -> String {
    let [lap, most] = [lap, most].map(number);
    format!("twice {key} is a lap of {lap}; {most} is the most")
}

fn zone_nowhere(key: &str) -> String {
    format!("{key} names no layer that its outlines are drawn on, and there is no `region`")
}

fn zone_unclad(key: &str) -> String {
    format!("{key} is left out: say what covers the zone, or give it a `product`")
}
