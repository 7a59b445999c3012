//! How further lines of an estimate are counted.

use crate::job::Job;
use crate::model::basis::{Basis, WrapLength, WrappedTrim};
use crate::model::item::Item;
use crate::model::labor::LaborPart;
use crate::model::quantity::TakeoffLine;
use crate::sources::takeoff::TakeoffFact;
use crate::sources::trim::TrimFact;
use crate::units::{LengthStyle, counted};
use crate::wording::lists::commas;
use crate::wording::sources::in_brackets;

/// Wall that no barrier is counted for.
fn left_out_of_barrier(areas: [f64; 2], style: LengthStyle) -> String {
    let each: Vec<String> = areas
        .into_iter()
        .zip(["behind lower roofs", "where the siding stops short"])
        .filter(|(area, _)| *area > 0.0)
        .map(|(area, place)| format!("{:.1} {} {place}", style.area(area), style.area_unit()))
        .collect();
    if each.is_empty() {
        return String::new();
    }
    format!(", none of {}: add it where that wall is outdoors", commas(&each))
}

/// A line's basis, without a full stop.
pub(super) fn basis(line: &TakeoffLine, job: &Job) -> String {
    let style = job.sheet.lengths;
    match &line.basis {
        Basis::BarrierArea { area, left_out, roll, laps } => format!(
            "{:.1} {} of walls, openings in, and what of them gets no siding near grade, over roofs or under filler boards{}; rolls of {} x {}, lapped {} at level seams and {} at upright ones{}; corners and what is left over an opening are in the rounding",
            style.area(*area),
            style.area_unit(),
            left_out_of_barrier(*left_out, style),
            style.length(roll[0]),
            style.length(roll[1]),
            style.short(laps[0]),
            style.short(laps[1]),
            in_brackets(&[TakeoffFact::BarrierLaps.record()])
        ),
        Basis::BarrierSeams { length, roll } => format!(
            "{} of seams, a level one for each width of barrier and an upright one for each length; rolls of {}",
            style.length(*length),
            style.length(*roll)
        ),
        Basis::Beads { length, bead, cartridge, boards } => format!(
            "{} of bead, {} wide and deep, {}; {cartridge} fl oz to a cartridge, 1.805 cu in each (common practice; the manufacturers say where and with what)",
            style.length(*length),
            style.short(*bead),
            if *boards {
                "where boards butt against trim"
            } else {
                "behind the flanges of openings at head and jambs, none at sills"
            }
        ),
        Basis::StockAlong { pieces, length, stock, least } => format!(
            "{} overall in {}, {}; cut from stock of {}, no plan takes fewer than {least}",
            style.length(*length),
            counted(*pieces, "piece"),
            along(&line.item),
            style.length(*stock)
        ),
        Basis::Wraps { .. } | Basis::SoffitCuts { .. } => along_eaves(&line.basis, style),
        Basis::GivenByJob => "counted by the job, not by the drawing".to_owned(),
        Basis::Hours { parts } => {
            let each = |p: &LaborPart| format!("{} {:.2} x {}", p.line, p.units, p.hours);
            format!(
                "the office's own hours for each unit: {}",
                commas(&parts.iter().map(each).collect::<Vec<_>>())
            )
        }
        _ => String::new(),
    }
}

/// Coil stock and soffit.
fn along_eaves(basis: &Basis, style: LengthStyle) -> String {
    match basis {
        Basis::Wraps { wraps, roll } => {
            let each = |w: &WrapLength| {
                format!(
                    "{} {} in strips of {}, {} to the width",
                    wrapped(w.trim),
                    style.length(w.length),
                    style.short(w.girth),
                    w.strips
                )
            };
            format!(
                "{}; rolls of {} x {}",
                commas(&wraps.iter().map(each).collect::<Vec<_>>()),
                style.short(roll[0]),
                style.length(roll[1])
            )
        }
        Basis::SoffitCuts { eaves, rakes, cover, cuts, stock, least } => {
            let sort = |name: &str, [length, depth]: [f64; 2]| {
                let words = format!("{name} {}, {} deep", style.length(length), style.short(depth));
                (length > 0.0).then_some(words)
            };
            let sorts: Vec<String> =
                [sort("eaves", *eaves), sort("rakes", *rakes)].into_iter().flatten().collect();
            format!(
                "as drawn on walls: {}; {} across, one to each {}, from panels of {}, no plan takes fewer than {least}; what runs past the corners of walls is not counted",
                sorts.join("; "),
                counted(*cuts, "cut"),
                style.short(*cover),
                style.length(*stock)
            )
        }
        _ => String::new(),
    }
}

fn along(item: &Item) -> String {
    match item {
        Item::Furring => format!(
            "behind cut edges that stand off the wall{}",
            in_brackets(&[TrimFact::FurredUndersill.record()])
        ),
        Item::Fascia => "along eaves and rakes as drawn on walls".to_owned(),
        _ => "at the wall along eaves and rakes that have a soffit".to_owned(),
    }
}

fn wrapped(trim: WrappedTrim) -> &'static str {
    match trim {
        WrappedTrim::Fascia => "fascia",
        WrappedTrim::Frieze => "frieze",
        WrappedTrim::Band => "bands",
        WrappedTrim::Surround => "surrounds",
    }
}
