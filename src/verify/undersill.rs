//! Undersill trim along every sill and nowhere else: along each straight part of an opening's outline
//! that siding stands under, within 45 degrees of level, and along no other; none along a curve, which
//! bent channel goes round (`TrimFact::UndersillLugs`, `TrimFact::UndersillInChannel`).

use super::along::{bare, reach};
use super::contour::{LEAST, Part};
use super::named;
use super::opening_frame::Frame;
use super::rule::Cases;
use super::shaped_trim::lies_on;
use super::tolerance::NEAR;
use crate::geom::tol::SAME;
use crate::layout::breach::trim::OpeningBreach;
use crate::layout::laid::LaidHouse;
use crate::layout::violation::Figure::Inches;
use crate::model::house::EdgeKind;
use crate::model::trim::{TrimEnd, TrimKind, TrimPiece};

/// Looks at one opening of panels in pockets.
pub(super) fn check(rule: &mut Cases, layout: &LaidHouse, f: &Frame) {
    let undersill = f.of_kind(TrimKind::FinishTrim);
    let parts = f.parts();
    let is_sill = |p: &&Part| !p.is_curved && p.kind() == EdgeKind::Sill && !p.met.is_empty();
    let mut want = 0.0;
    for p in parts.iter().filter(is_sill) {
        let (a, b) = p.ends();
        let level = (a[1] - b[1]).abs() <= SAME;
        // On a course line the hem is cut off, and the thin top of a face is left.
        let spare = level && fills_channel(layout, a[1]);
        for s in &p.met {
            let (from, to) = (p.place(s.0), p.place(s.1));
            let whole = reach(from, to);
            let open = bare(from, to, &undersill);
            // The channel alone holds what is no wider than a finger.
            let short = whole < LEAST;
            rule.case(spare || short || open < NEAR, || {
                let v = f.broken(OpeningBreach::UndersillMissing, (from, to));
                v.measured(Inches(open)).exactly(Inches(0.0))
            });
            rule.case(!spare || open > whole - NEAR, || {
                f.broken(OpeningBreach::UndersillNeedless, (from, to))
            });
            want += if spare || short && open > whole - NEAR { 0.0 } else { whole };
        }
    }
    for t in &undersill {
        rule.case(parts.iter().filter(is_sill).any(|p| lies_on(t, p, 0.0)), || {
            let v = f.broken(OpeningBreach::UndersillElsewhere, (t.place(0.5), t.place(0.5)));
            v.with(named::trim(&t.mark))
        });
    }
    // No part of it twice, nor past a sill's ends.
    let face = layout.job.trim.channel_face;
    let laps = |t: &&&TrimPiece| t.ends.iter().any(|e| matches!(e, TrimEnd::Lap(_)));
    let lapped = undersill.iter().filter(laps).count() as f64 * face;
    let have = undersill.iter().map(|t| t.length).sum::<f64>() - lapped;
    rule.case((have - want).abs() < NEAR * (1 + undersill.len()) as f64, || {
        let v = f.broken(OpeningBreach::Length { trim: TrimKind::FinishTrim }, f.whole());
        v.measured(Inches(have)).exactly(Inches(want))
    });
}

/// Whether a panel cut under a sill at `y` stands out so far that it fills the channel
/// (`TrimFact::UndersillInChannel`).
fn fills_channel(layout: &LaidHouse, y: f64) -> bool {
    let p = &layout.job.product;
    let cut = y - layout.job.courses.notch_clearance;
    // The course is the sill's own; the cut may fall at its very foot, where nothing is kept.
    let over_butt = (y - layout.datum).rem_euclid(p.exposure) - (y - cut);
    let over_face = over_butt.rem_euclid(p.exposure / f64::from(p.faces));
    over_butt > SAME && over_face > SAME && over_face <= layout.job.channel_alone() + SAME
}
