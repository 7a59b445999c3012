//! The folder a set is written to.

use crate::layout::laid::LaidHouse;

/// Most letters of a zone's name in its folder's.
const LETTERS: usize = 30;

/// The folder of a set inside the house's own: none for the house.
pub fn of_set(laid: &LaidHouse) -> Option<String> {
    let zone = laid.zone.as_ref()?;
    let number = laid.job.zone.iter().position(|z| z.name == *zone)? + 1;
    let plain = zone.to_lowercase();
    let words: Vec<&str> =
        plain.split(|c: char| !c.is_ascii_alphanumeric()).filter(|w| !w.is_empty()).collect();
    let slug: String = words.join("-").chars().take(LETTERS).collect();
    Some(format!("zone-{number}-{slug}").trim_end_matches('-').to_owned())
}
