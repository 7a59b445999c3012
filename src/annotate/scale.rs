//! Which scale a view is drawn at, and how many sheets it takes.

use crate::job::SheetRules;
use crate::job::paper::{Scale, scale, scales};
use crate::units::LengthStyle;

/// The largest scale at which `size` house inches fit `room` paper inches.
pub(super) fn fit(size: (f64, f64), room: (f64, f64), style: LengthStyle) -> Scale {
    let fits = |s: &Scale| size.0 / s.factor <= room.0 && size.1 / s.factor <= room.1;
    scales(style).into_iter().find(fits).unwrap_or_else(|| {
        let factor = (size.0 / room.0).max(size.1 / room.1).ceil().max(1.0);
        Scale { words: format!("1:{factor}"), factor }
    })
}

/// Sheets across and up that `size` takes at a scale.
pub(super) fn parts(size: (f64, f64), room: (f64, f64), s: &Scale) -> (usize, usize) {
    let n = |a: f64, b: f64| ((a / s.factor / b - 1e-9).ceil().max(1.0)) as usize;
    (n(size.0, room.0), n(size.1, room.1))
}

/// Sheets of one elevation beyond which a scale named in the job is not kept.
pub(super) const MOST: usize = 60;
/// Sheets of one elevation a picked scale may take so that marks can be read, where they can be read
/// elsewhere too.
pub(super) const FEW: usize = 12;

/// The job's own scale if it names one; else the largest at which an elevation fits one sheet,
/// unless its courses would then stand nearer than `pitch` paper inches: a larger scale on at most `few`
/// sheets can be read.
pub(super) fn elevation(
    size: (f64, f64),
    room: (f64, f64),
    course: f64,
    (pitch, few): (f64, usize),
    rules: &SheetRules,
) -> Scale {
    let count = |s: &Scale| {
        let (a, b) = parts(size, room, s);
        a.saturating_mul(b)
    };
    if let Some(s) = rules.scale.as_deref().and_then(scale).filter(|s| count(s) <= MOST) {
        return s;
    }
    let whole = fit(size, room, rules.lengths);
    if course / whole.factor >= pitch {
        return whole;
    }
    let legible = scales(rules.lengths).into_iter().rev().find(|s| course / s.factor >= pitch);
    legible.filter(|s| count(s) <= few).unwrap_or(whole)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_house_of_48_feet_goes_on_arch_b_at_a_quarter_inch() {
        let s = fit((576.0 + 96.0, 228.0 + 96.0), (16.8, 9.0), LengthStyle::Feet);
        assert_eq!(s.factor, 48.0);
    }

    #[test]
    fn a_long_house_is_parted_rather_than_drawn_too_small_to_read() {
        let rules = SheetRules::default();
        let (size, room) = ((1800.0, 240.0), (13.0, 7.0));
        let s = elevation(size, room, 8.0, (0.12, FEW), &rules);
        // 3/16 in to the foot keeps 8 in courses an eighth of an inch apart
        // (DrawingFact::ArchitecturalScales).
        assert_eq!((s.factor, parts(size, room, &s)), (64.0, (3, 1)));
        let fixed = SheetRules { scale: Some("1/2\" = 1'-0\"".to_owned()), ..rules };
        let s = elevation(size, room, 8.0, (0.12, FEW), &fixed);
        assert_eq!((s.factor, parts(size, room, &s)), (24.0, (6, 2)));
    }
}
