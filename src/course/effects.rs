//! What a datum does to a house: the first course, main heads and sills, thin strips, top courses.

use super::judge::{Judge, Tally};
use super::levels::{GridWidth, feet};
use crate::model::pole::{DatumEffects, FirstCourse, HungStart, MainLine, StripPlace, ThinStrips};

/// What was weighed of one datum.
pub(super) fn effects(judge: &Judge, datum: f64, t: &Tally) -> DatumEffects {
    let exposure = judge.job.product.exposure;
    DatumEffects {
        first_course: first_course(t),
        hung: (t.hung.0 > 0).then(|| HungStart { along: inches(t.hung.0), most: t.hung.1 }),
        main_heads: judge.main.0.map(|height| {
            let over = judge.over(datum, height);
            MainLine { height, kept: (over != 0.0).then_some(exposure - over) }
        }),
        main_sills: judge.main.1.map(|height| {
            let kept = judge.under(datum, height).min(exposure);
            MainLine { height, kept: Some(kept) }
        }),
        least_strip: judge.job.least_strip(),
        thin_strips: thin_strips(t),
        skirted: Vec::new(),
        least_top: (t.top < exposure).then_some(t.top),
        grade_steps: t.steps,
        cut_panels: t.cut_panels,
    }
}

fn inches(width: GridWidth) -> f64 {
    feet(width) * 12.0
}

fn first_course(t: &Tally) -> FirstCourse {
    if t.cut_start == 0 {
        return FirstCourse::Whole;
    }
    // Over stone nothing hangs: there the first course stays cut.
    FirstCourse::Cut { along: inches(t.cut_start), least: t.first, whole_if_hung: t.cut_by }
}

fn thin_strips(t: &Tally) -> Vec<ThinStrips> {
    let each = [
        (t.over_head, StripPlace::OverHeads),
        (t.under_sill, StripPlace::UnderSills),
        (t.at_top, StripPlace::AtTops),
        (t.at_start, StripPlace::AtStarts),
    ];
    let thin = each.into_iter().filter(|(width, _)| *width > 0);
    thin.map(|(width, place)| ThinStrips { place, along: inches(width), least: None }).collect()
}
