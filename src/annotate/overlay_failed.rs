//! What the overlay shows of a layout that breaks rules of the check, elevation inches.

use super::elevation_index::AtElevation;
use crate::geom::vocabulary::{Rect, Xy};
use crate::language::Language;
use crate::real::Real;
use crate::wording::checks;

/// Radius of a circle round a place.
const CIRCLE: f64 = 6.0;
/// Height of the words in the bar.
const HIGH: f64 = 9.0;

/// A place that breaks a rule.
pub(super) struct FailedPlace {
    pub(super) circle: Vec<Xy>,
    /// Its number, and what it concerns.
    pub(super) words: String,
    /// Where they would best stand.
    pub(super) wish: Xy,
}

/// The places of an elevation.
pub(super) fn places(on: &AtElevation) -> Vec<FailedPlace> {
    let place = |(number, v): &(usize, &crate::layout::violation::Violation)| {
        let [x, y] = v.at.as_ref()?.point;
        let round = |i: i32| {
            let (up, along) = (f64::from(i) * std::f64::consts::TAU / 24.0).sine_cosine();
            [x + CIRCLE * along, y + CIRCLE * up]
        };
        Some(FailedPlace {
            circle: (0..24).map(round).collect(),
            words: checks::named(Language::English, *number, v),
            wish: [x, y + CIRCLE + 5.0],
        })
    };
    on.failed.iter().filter_map(place).collect()
}

/// The bar over an elevation.
pub(super) struct Bar {
    /// Two frames, one round the other: heavy without color too.
    pub(super) frames: [Vec<Xy>; 2],
    pub(super) words: String,
    /// Where the words begin, half way up.
    pub(super) at: Xy,
    /// Their height.
    pub(super) height: f64,
}

/// The bar over the walls of a house; none where every rule is kept.
pub(super) fn bar(places: usize, house: Rect) -> Option<Bar> {
    if places == 0 {
        return None;
    }
    let (low, high) = (house.y1 + 30.0, house.y1 + 48.0);
    let words = checks::bar(Language::English, places);
    // The stroked letters of a drawing are wider than the sheets' own.
    let width = crate::typeface::width(&words, HIGH, true) * 1.25 + 24.0;
    let frames = [0.0, 1.5].map(|by| {
        let (x0, x1) = (house.x0 - by, house.x0 + width + by);
        vec![[x0, low - by], [x1, low - by], [x1, high + by], [x0, high + by]]
    });
    Some(Bar { frames, words, at: [house.x0 + 12.0, (low + high) / 2.0], height: HIGH })
}
