//! How each figure of the takeoff came about.

use super::items::{pieces, trim_stock};
use super::{estimate, flashing};
use crate::job::{Job, TakeoffRules};
use crate::language::Language;
use crate::layout::bound::Bound;
use crate::model::basis::{Basis, SpareCover, StockNails};
use crate::model::filler::RippedWidth;
use crate::model::item::{CountUnit, Item, SidingPiece};
use crate::model::quantity::TakeoffLine;
use crate::model::receiver::BareBy;
use crate::sources::takeoff::TakeoffFact;
use crate::sources::trim::TrimFact;
use crate::units::{LengthStyle, counted};
use crate::wording::lists::joined;
use crate::wording::nails::fine_thickness;
use crate::wording::names;
use crate::wording::proof::least;
use crate::wording::siding;
use crate::wording::sources::in_brackets;
use crate::wording::takeoff::items::piece;

/// A line's basis, without a full stop.
pub fn basis(line: &TakeoffLine, job: &Job, bound: &Bound) -> String {
    let style = job.sheet.lengths;
    let boards = !job.siding().receivers.has_pockets();
    let area = |square_feet: f64| format!("{:.1} {}", style.area(square_feet), style.area_unit());
    match &line.basis {
        Basis::SidingCut { .. } => siding_cut(&line.basis, job, bound),
        Basis::Spare { .. } => spare(line, job),
        Basis::Cartons { .. } => cartons(&line.basis),
        Basis::NetArea { piece: of, net, coverage } => {
            let rates: Vec<String> = coverage
                .iter()
                .map(|each| format!("{:.3} {}", style.area(*each), style.area_unit()))
                .collect();
            format!(
                "net wall area {}; ordered as whole {} at {} a {}",
                area(*net),
                if job.sold_singly() {
                    format!("{}s", piece(*of).en)
                } else {
                    "cartons".to_owned()
                },
                rates.join(" or "),
                piece(*of).en
            )
        }
        Basis::FacesCut { piece: of, cut, area: faces, net } => format!(
            "not ordered by itself: {} cut up, {}, for a net wall area of {}",
            pieces(Language::English, *cut, *of),
            area(*faces),
            area(*net)
        ),
        Basis::TrimCut { .. } => trim_cut(&line.basis, style),
        Basis::OpeningStrips { .. } | Basis::CornerStrips { .. } => {
            flashing::strips(&line.basis, style, boards)
        }
        Basis::SidingNails { .. } | Basis::TrimNails { .. } => {
            nails(&line.basis, style, boards, line.unit)
        }
        Basis::BarrierArea { .. }
        | Basis::BarrierSeams { .. }
        | Basis::Beads { .. }
        | Basis::StockAlong { .. }
        | Basis::Wraps { .. }
        | Basis::SoffitCuts { .. }
        | Basis::GivenByJob
        | Basis::Hours { .. } => estimate::basis(line, job),
        Basis::ZoneArea => zone_area(&line.item),
        Basis::BareWall { .. } => bare_wall(&line.basis, style),
        Basis::RuleOfThumb { piece: of, over, spare } => rule_of_thumb(*of, *over, *spare),
        Basis::LevelRun | Basis::RunStrips { .. } | Basis::DoorPans { .. } => {
            flashing::level(line, style)
        }
        Basis::RoofSlopes { pieces, exposure, turned, turn } => {
            flashing::slopes((*pieces, *exposure), (*turned, *turn), style)
        }
        Basis::PostCaps | Basis::RoofSlopeEnds | Basis::BoardJoints | Basis::DrawnBlocks => {
            counted_one_by_one(&line.basis)
        }
    }
}

fn cartons(basis: &Basis) -> String {
    let Basis::Cartons { piece: of, panels, spare, in_carton, over } = basis else {
        return String::new();
    };
    let spare = if *spare > 0.0 { format!(", {spare} of them spare") } else { String::new() };
    let panels = pieces(Language::English, *panels as usize, *of);
    format!("{panels}{spare}, {in_carton} to a carton, rounded up; {over} over")
}

fn spare(line: &TakeoffLine, job: &Job) -> String {
    let Basis::Spare { percent, of_count, covered } = &line.basis else {
        return String::new();
    };
    let of = match &line.item {
        Item::SparePanels { piece: of, .. } => pieces(Language::English, *of_count, *of),
        _ => format!("{} of the cutting plan", counted(*of_count, "length")),
    };
    let covered = match covered {
        None => String::new(),
        Some(SpareCover::Cartons { over }) => {
            format!("; none added, whole cartons leave {over} over")
        }
        Some(SpareCover::Multiple { of, over }) => {
            format!("; none added, multiples of {of} leave {over} over")
        }
    };
    let setting = match &line.item {
        Item::SparePanels { .. } => job.takeoff.spare == TakeoffRules::default().spare,
        _ => job.takeoff.trim_spare == TakeoffRules::default().trim_spare,
    };
    let by = if setting { "common practice, no source" } else { "by the job" };
    format!("{percent} % of {of}, for damage and miscuts ({by}), rounded up{covered}")
}

fn siding_cut(basis: &Basis, job: &Job, bound: &Bound) -> String {
    let Basis::SidingCut { piece: of, pieces: cut, bought, length, shown } = basis else {
        return String::new();
    };
    let (style, product) = (job.sheet.lengths, &job.product);
    format!(
        "{}, {} {}{}: {} cut from {} of {}; {}. Of the faces bought {shown:.1} % show; the rest is {}",
        siding::name(product.kind).en,
        siding::profile(Language::English, product),
        style.short(product.face()),
        if *of == SidingPiece::Board { " exposed" } else { "" },
        counted(*cut, "piece"),
        pieces(Language::English, *bought, *of),
        style.length(*length),
        least(Language::English, bound, job),
        match of {
            SidingPiece::Board => "offcut, rips and notches",
            SidingPiece::Panel => "offcut, rips, notches and laps",
        },
    )
}

fn trim_cut(basis: &Basis, style: LengthStyle) -> String {
    let Basis::TrimCut { pieces, used, bought, length, pocket, least, bent_laps, widths } = basis
    else {
        return String::new();
    };
    let pocket = pocket.map_or(String::new(), |p| format!(" with a pocket of {}", style.short(p)));
    let fewer = if bought <= least { String::new() } else { format!(" than {least}") };
    let bent = bent_laps.map_or(String::new(), |laps| {
        format!(
            " of developed length, {} along curves and {} in laps",
            style.length(used - laps),
            style.short(laps)
        )
    });
    format!(
        "{}, {}{}{}, cut from {bought} of {}{pocket}; no cutting plan takes fewer{fewer}",
        counted(*pieces, "length"),
        style.length(*used),
        if bent.is_empty() { " overall" } else { &bent },
        ripped(widths, style),
        style.length(*length),
    )
}

/// Lengths by the width they are ripped to.
fn ripped(widths: &[RippedWidth], style: LengthStyle) -> String {
    let one =
        |w: &RippedWidth| format!("{} of {} wide", style.length(w.length), style.short(w.width));
    let each: Vec<String> = widths.iter().map(one).collect();
    if each.is_empty() { String::new() } else { format!(" ({})", joined(&each)) }
}

fn nails(basis: &Basis, style: LengthStyle, boards: bool, unit: CountUnit) -> String {
    let unit = if unit == CountUnit::Pound { "pound" } else { "box" };
    match basis {
        Basis::SidingNails {
            piece,
            nails,
            in_box,
            pieces,
            spacing,
            through,
            penetration,
            studs,
            shank,
            head,
        } => {
            let (spacing, pieces) = (style.short(*spacing), counted(*pieces, "piece"));
            let (through, penetration) = (style.short(*through), style.short(*penetration));
            let rule = match piece {
                SidingPiece::Board => {
                    let (layers, holds) = if *studs {
                        ("board, sheathing and layers that hold no nail", "studs")
                    } else {
                        ("board and layers that hold no nail", "nailable material")
                    };
                    format!(
                        "one to each stud, {spacing} apart, and one more in each of {pieces}; length by {through} of {layers} and {penetration} into {holds}"
                    )
                }
                SidingPiece::Panel => format!(
                    "at most {spacing} apart and one more in each of {pieces}; length by {through} of stand-off and layers that hold no nail and {penetration} into nailable material; shank {} or more, head {} or more",
                    fine_thickness(*shank, style),
                    style.short(*head)
                ),
            };
            format!("{nails} nails {rule}; {in_box} to a {unit}")
        }
        Basis::TrimNails { nails, in_box, by_stock } => {
            let one = |s: &StockNails| {
                format!(
                    "{} {} at {}",
                    trim_stock(s.stock, boards).en,
                    s.nails,
                    style.short(s.spacing)
                )
            };
            let each: Vec<String> = by_stock.iter().map(one).collect();
            format!(
                "{nails} nails, one more than spaces a piece, {}: {}; {in_box} to a {unit}",
                if boards { "corner boards on both walls" } else { "posts on both flanges" },
                each.join(", ")
            )
        }
        _ => String::new(),
    }
}

fn zone_area(item: &Item) -> String {
    let zone = match item {
        Item::OtherCladding { zone, .. } => zone.as_str(),
        _ => "the zone",
    };
    format!(
        "not ordered: the net area of {zone}, measured; its pieces, trim and waste are not counted here"
    )
}

fn bare_wall(basis: &Basis, style: LengthStyle) -> String {
    let Basis::BareWall { near_grade, above_grade, over_roofs, behind_roofs, fillers, stops_short } =
        basis
    else {
        return String::new();
    };
    let parts = [
        (near_grade, BareBy::NearGrade),
        (over_roofs, BareBy::OverRoof),
        (behind_roofs, BareBy::BehindRoof),
        (fillers, BareBy::Filler),
        (stops_short, BareBy::StopsShort),
    ];
    let parts = parts.into_iter().filter(|(area, _)| **area > 0.0);
    let each: Vec<String> = parts
        .map(|(area, by)| {
            let words =
                format!("{:.1} {} {}", style.area(*area), style.area_unit(), names::bare(by));
            match by {
                BareBy::NearGrade if near_grade - above_grade > 0.05 => {
                    format!("{words} or under it ({:.1} over it)", style.area(*above_grade))
                }
                _ => words,
            }
        })
        .collect();
    format!("not ordered and not in the net area: {}", joined(&each))
}

fn rule_of_thumb(of: SidingPiece, over: i64, spare: f64) -> String {
    let count =
        pieces(Language::English, usize::try_from(over.unsigned_abs()).unwrap_or(usize::MAX), of);
    let verdict = match over {
        0 => "the same as this layout".to_owned(),
        n if n < 0 => format!("{count} SHORT of what this layout takes"),
        _ => format!("{count} more than this layout takes"),
    };
    let aside =
        if spare > 0.0 { format!("; {spare} spare on top of either") } else { String::new() };
    let source = in_brackets(&[TakeoffFact::GeneralWaste.record()]);
    format!("not ordered; {verdict}{aside}{source}")
}

fn counted_one_by_one(basis: &Basis) -> String {
    match basis {
        Basis::PostCaps => {
            "one at the bottom of each corner post that stops over an overhang".to_owned()
        }
        Basis::RoofSlopeEnds => {
            "one at the low end of each lower roof that slopes along a wall".to_owned()
        }
        Basis::BoardJoints => format!(
            "one behind each joint of two boards, lapped over the board below{}",
            in_brackets(&[TrimFact::FiberCementJoints.record()])
        ),
        Basis::DrawnBlocks => {
            "fixtures drawn with a mounting block; the kind of each fits its fixture".to_owned()
        }
        _ => String::new(),
    }
}
