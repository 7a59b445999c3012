//! The story pole: how the datum was chosen, and what a datum does.

use super::lists::commas;
use crate::model::pole::{
    DatumChoice, DatumEffects, DatumReason, DatumTerm, DatumWeight, EvenedCourses, FirstCourse,
    LineKind, MainLine, PoleTable, StripPlace, ThinStrips, WeighedIn,
};
use crate::real::Total;
use crate::units::{LengthStyle, counted};

/// What stands at a height of the pole.
pub fn line(kind: LineKind) -> &'static str {
    match kind {
        LineKind::Butt => "butt line",
        LineKind::Start => "start",
        LineKind::StoneTop => "top of base",
        LineKind::RoofFoot => "lower roof",
        LineKind::Sill => "sill",
        LineKind::Head => "head",
        LineKind::Band => "band",
        LineKind::Eave => "eave",
        LineKind::Peak => "peak",
    }
}

/// How the datum was chosen, and how boards were evened.
pub fn reason(reason: &DatumReason, divisions: &[EvenedCourses], style: LengthStyle) -> String {
    let why = chosen_by(reason, style);
    let evened: Vec<String> = divisions
        .iter()
        .map(|d| {
            format!("{} of {} to {}", d.courses, style.short(d.exposure), style.length(d.up_to))
        })
        .collect();
    if evened.is_empty() { why } else { format!("{why}; boards evened: {}", commas(&evened)) }
}

/// Where the datum is, and why.
pub fn datum(
    height: f64,
    why: &DatumReason,
    divisions: &[EvenedCourses],
    style: LengthStyle,
) -> String {
    format!("Datum: {}; {}.", datum_height(height, style), reason(why, divisions, style))
}

/// Where the datum is.
pub fn datum_height(height: f64, style: LengthStyle) -> String {
    let side = if height < 0.0 { "below" } else { "above" };
    format!(
        "butt line of course 1 at {} {side} the floor reference line",
        style.length(height.abs())
    )
}

fn chosen_by(reason: &DatumReason, style: LengthStyle) -> String {
    match reason {
        DatumReason::FloorReference => "the floor reference line".to_owned(),
        DatumReason::FixedByJob => "fixed by the job".to_owned(),
        DatumReason::OfTheHouse => "that of the house".to_owned(),
        DatumReason::LowestStart => {
            "the lowest start on the house that keeps clear of grade".to_owned()
        }
        DatumReason::Searched { below: 0.0, tried } => format!(
            "the lowest start on the house that keeps clear of grade, and the best of {tried} heights tried"
        ),
        DatumReason::Searched { below, tried } => format!(
            "{} {} the lowest start on the house, the best of {tried} heights tried",
            style.short(below.abs()),
            if *below > 0.0 { "below" } else { "above" },
        ),
    }
}

/// What the section of datums is called.
pub fn heading(pole: &PoleTable) -> String {
    format!("Datum, {} heights tried (penalty points, lower is better)", pole.tried)
}

/// How the datum was searched for.
pub fn search(pole: &PoleTable) -> String {
    format!(
        "{} heights of the first course were tried. Penalty points, lower is better; weights are in the job, common practice.",
        pole.tried
    )
}

/// How the stick is used.
pub const STRIKE: &str = "Strike one level line all the way around the house and mark this stick once for all walls. The siding manufacturer's instructions and the local code take precedence.";

/// One choice of a datum, its height written as the sheet writes heights; `laid` pieces of the layout are
/// ripped or notched.
pub fn choice(c: &DatumChoice, height: &str, laid: usize, style: LengthStyle) -> String {
    let what = if c.chosen { "In force" } else { "Or" };
    format!(
        "{what}: {height}, {:.1} points: {}. {}",
        total(c),
        effects(&c.effects, c.chosen.then_some(laid), style),
        points(c, style)
    )
}

/// Points of a datum as told: its terms rounded to a tenth each, as they stand beside it, so that a reader's sum agrees.
pub fn total(c: &DatumChoice) -> f64 {
    // The sum of nothing has a sign.
    c.terms.iter().map(|t| tenth(t.points)).total()
}

fn tenth(points: f64) -> f64 {
    format!("{points:.1}").parse().unwrap_or(points)
}

/// How the points of a datum add up.
pub fn points(c: &DatumChoice, style: LengthStyle) -> String {
    let terms: Vec<String> = c.terms.iter().map(|t| term(t, style)).collect();
    if terms.is_empty() {
        return "Nothing counts against it.".to_owned();
    }
    format!("Points: {}.", terms.join("; "))
}

/// One amount times its weight.
fn term(t: &DatumTerm, style: LengthStyle) -> String {
    let weight = t.points / t.amount;
    let amount = match t.unit {
        WeighedIn::Feet => along(t.amount, style),
        WeighedIn::SquareFeet => areas(t.amount, style),
        WeighedIn::Steps => counted(t.amount as usize, "step"),
        WeighedIn::Panels => format!("about {:.1} panels", t.amount),
    };
    let of = match t.unit {
        WeighedIn::Feet => " a foot",
        WeighedIn::SquareFeet => " a sq ft",
        WeighedIn::Steps | WeighedIn::Panels => "",
    };
    let weight = (weight * 1000.0).round() / 1000.0;
    format!("{} {amount} x {weight}{of} = {:.1}", weighed(t.weight), t.points)
}

/// Feet to a tenth, after meters where the job is in these: a weight counts by the foot.
fn along(feet: f64, style: LengthStyle) -> String {
    match style {
        LengthStyle::Feet => format!("{feet:.1} ft"),
        LengthStyle::Mm => {
            format!("{:.2} m ({feet:.1} ft)", style.number(feet * 12.0) / 1000.0)
        }
    }
}

/// Square feet to a tenth, likewise.
fn areas(square_feet: f64, style: LengthStyle) -> String {
    match style {
        LengthStyle::Feet => format!("{square_feet:.1} sq ft"),
        LengthStyle::Mm => {
            format!("{:.2} {} ({square_feet:.1} sq ft)", style.area(square_feet), style.area_unit())
        }
    }
}

/// What a weight of the search counts.
fn weighed(weight: DatumWeight) -> &'static str {
    match weight {
        DatumWeight::StripOverHead => "thin strips over heads",
        DatumWeight::StripUnderSill => "thin strips under sills",
        DatumWeight::StripAtTop => "thin strips at tops",
        DatumWeight::StripAtStart => "thin strips at starts",
        DatumWeight::MainHead => "main heads off the course lines",
        DatumWeight::OtherLine => "other heads off the course lines",
        DatumWeight::ShortTop => "short top courses, by what they lack,",
        DatumWeight::CutStart => "first course cut",
        DatumWeight::Step => "steps at grade",
        DatumWeight::LeftBare => "wall that steps leave bare above the clearance",
        DatumWeight::CutPanel => "panels to rip or notch, reckoned by the lines before seams,",
    }
}

/// What a datum does, in words an installer would use; of the one laid, how many pieces are ripped or
/// notched.
pub fn effects(e: &DatumEffects, laid: Option<usize>, style: LengthStyle) -> String {
    let mut out = vec![first_course(&e.first_course, style)];
    if let Some(hung) = &e.hung {
        out.push(format!(
            "it hangs up to {} below the drawn bottom along {}",
            style.short(hung.most),
            about(hung.along, style)
        ));
    }
    out.extend(e.main_heads.as_ref().map(|l| main_line("heads", "over", l, style)));
    out.extend(e.main_sills.as_ref().map(|l| main_line("sills", "under", l, style)));
    let least = style.short(e.least_strip);
    let strips = |t: &ThinStrips| {
        let least = t.least.map(|l| format!(" (least {})", style.short(l)));
        let along = about(t.along, style);
        format!("{along} {}{}", strip_place(t.place), least.unwrap_or_default())
    };
    let thin: Vec<String> = e.thin_strips.iter().map(strips).collect();
    let skirted: Vec<String> = e.skirted.iter().map(strips).collect();
    if !skirted.is_empty() {
        out.push(format!("skirt boards in place of strips under {least}: {}", commas(&skirted)));
    }
    out.push(if thin.is_empty() {
        format!("no strip under {least}")
    } else {
        format!("strips under {least}: {}", commas(&thin))
    });
    out.push(match e.least_top {
        Some(top) => format!("least top course {}", style.short(top)),
        None => "top courses whole".to_owned(),
    });
    if e.grade_steps > 0 {
        out.push(format!("steps at grade: {}, each a whole course", e.grade_steps));
    }
    out.push(match laid {
        Some(n) => format!("{} ripped or notched in the cut list", counted(n, "piece")),
        None => format!("about {} panels to rip or notch", e.cut_panels.round()),
    });
    out.join("; ")
}

/// A length to the next half foot.
fn about(inches: f64, style: LengthStyle) -> String {
    style.length((inches / 6.0).ceil() * 6.0)
}

fn first_course(first: &FirstCourse, style: LengthStyle) -> String {
    match first {
        FirstCourse::Whole => "the first course is whole on every wall bottom".to_owned(),
        FirstCourse::Cut { along, least, whole_if_hung } => {
            let whole = if *whole_if_hung > 0.0 {
                format!(
                    "; to keep it whole it would hang up to {} below the drawn bottom (`courses.hang_below`)",
                    style.short(*whole_if_hung)
                )
            } else {
                String::new()
            };
            format!(
                "the first course is cut along {} of wall bottom, least height {}, held in undersill (finish) trim instead of a starter{whole}",
                about(*along, style),
                style.short(*least)
            )
        }
    }
}

fn main_line(what: &str, side: &str, line: &MainLine, style: LengthStyle) -> String {
    let at = style.length(line.height);
    match line.kept {
        None => format!("main {what} at {at} on a course line"),
        Some(kept) => {
            format!("main {what} at {at} cut a course, {} of it {side} them", style.short(kept))
        }
    }
}

fn strip_place(place: StripPlace) -> &'static str {
    match place {
        StripPlace::OverHeads => "over heads",
        StripPlace::UnderSills => "under sills",
        StripPlace::AtTops => "at tops",
        StripPlace::AtStarts => "at starts",
        StripPlace::AtFixtures => "at fixtures",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_datum_is_told_by_how_it_was_chosen() {
        let said = |r: DatumReason| reason(&r, &[], LengthStyle::Feet);
        assert_eq!(said(DatumReason::OfTheHouse), "that of the house");
        assert!(said(DatumReason::Searched { below: 0.0, tried: 7 }).contains("best of 7 heights"));
        let below = said(DatumReason::Searched { below: 4.0, tried: 7 });
        assert!(below.starts_with("4\" below the lowest start"), "{below}");
        let above = said(DatumReason::Searched { below: -4.0, tried: 7 });
        assert!(above.starts_with("4\" above the lowest start"), "{above}");
        let evened = [EvenedCourses { courses: 6, exposure: 10.5, up_to: 63.0 }];
        let boards = reason(&DatumReason::FixedByJob, &evened, LengthStyle::Feet);
        assert_eq!(boards, "fixed by the job; boards evened: 6 of 10 1/2\" to 5'-3\"");
    }

    #[test]
    fn lengths_along_walls_go_up_to_half_a_foot() {
        assert_eq!(about(240.0, LengthStyle::Feet), "20'-0\"");
        assert_eq!(about(240.1, LengthStyle::Feet), "20'-6\"");
    }
}
