//! What a datum does to a house, in words an installer would use.

use super::datum::{Judge, Tally};
use super::levels::feet;

/// One sentence for each thing that was weighed.
pub(super) fn told(judge: &Judge, datum: f64, t: &Tally) -> String {
    let style = judge.job.sheet.lengths;
    let exposure = judge.job.product.exposure;
    let long = |feet: f64| style.length((feet * 12.0 / 6.0).ceil() * 6.0);
    let mut out = Vec::new();
    if t.cut_start > 0 {
        // Over stone nothing hangs: there the first course stays cut.
        let whole = if t.cut_by > 0.0 {
            format!(
                "; to keep it whole it would hang up to {} below the drawn bottom (`courses.hang_below`)",
                style.short(t.cut_by)
            )
        } else {
            String::new()
        };
        out.push(format!(
            "the first course is cut along {} of wall bottom, least height {}, held in finish trim by punched lugs instead of a starter{whole}",
            long(feet(t.cut_start)),
            style.short(t.first)
        ));
    } else {
        out.push("the first course is whole on every wall bottom".to_owned());
    }
    if t.hung.0 > 0 {
        out.push(format!(
            "it hangs up to {} below the drawn bottom along {}",
            style.short(t.hung.1),
            long(feet(t.hung.0))
        ));
    }
    for (what, y, over_it) in [("heads", judge.main.0, true), ("sills", judge.main.1, false)] {
        let Some(y) = y else { continue };
        let over = judge.over(datum, y);
        let at = style.length(y);
        out.push(if over == 0.0 {
            format!("main {what} at {at} on a course line")
        } else {
            let (kept, side) = if over_it { (exposure - over, "over") } else { (over, "under") };
            format!("main {what} at {at} cut a course, {} of it {side} them", style.short(kept))
        });
    }
    let thin: Vec<String> = [
        (t.over_head, "over heads"),
        (t.under_sill, "under sills"),
        (t.at_top, "at tops"),
        (t.at_start, "at starts"),
    ]
    .into_iter()
    .filter(|(width, _)| *width > 0)
    .map(|(width, place)| format!("{} {place}", long(feet(width))))
    .collect();
    let least = style.short(judge.job.least_strip());
    out.push(if thin.is_empty() {
        format!("no strip under {least}")
    } else {
        format!("strips under {least}: {}", thin.join(", "))
    });
    out.push(if t.top < exposure {
        format!("least top course {}", style.short(t.top))
    } else {
        "top courses whole".to_owned()
    });
    if t.steps > 0 {
        out.push(format!("steps at grade: {}, each a whole course", t.steps));
    }
    out.push(format!("about {} panels ripped or notched", t.cut_panels.round()));
    out.join("; ")
}
