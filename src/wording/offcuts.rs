//! Offcuts that wait and saw lists, in sentences.

use super::lists::{commas, ranges};
use crate::language::Language;
use crate::model::item::SidingPiece;
use crate::model::saw::{OffcutPlan, SawBatch, SawList, WaitingPrice};
use crate::model::waiting::OffcutReach;
use crate::units::{LengthStyle, counted};
use crate::wording::takeoff::items::{piece, pieces};

/// In which order walls are sided, and how many offcuts wait; none for a house of one wall.
pub fn waiting(plan: &OffcutPlan, of: SidingPiece) -> Option<String> {
    if plan.at_ends.len() < 2 {
        return None;
    }
    let may = match (plan.reach, plan.most) {
        (OffcutReach::Wall, _) => {
            format!("Offcuts are used on the wall where their {} is opened", piece(of).en)
        }
        (reach, most) => {
            let where_to = match reach {
                OffcutReach::NextWall => " for the next wall",
                _ => "",
            };
            match most {
                None => format!("Any number of offcuts may wait{where_to} at the end of a wall"),
                Some(n) => format!(
                    "At most {} may wait{where_to} at the end of a wall",
                    counted(n, "offcut")
                ),
            }
        }
    };
    let ends: Vec<String> =
        plan.at_ends.iter().map(|w| format!("{} ({})", w.wall, w.waiting)).collect();
    Some(format!(
        "{may}; the most that do: {}. Walls in order, each with the offcuts that wait at its end: {}. Cut for one wall into several pieces: {}; for several walls: {}.",
        plan.most_waiting(),
        commas(&ends),
        pieces(Language::English, plan.within_walls, of),
        plan.between_walls
    ))
}

/// The saw list of a wall, a sentence each.
pub fn saw(list: &SawList, of: SidingPiece, style: LengthStyle) -> Vec<String> {
    let mut out = Vec::new();
    if !list.opened.is_empty() {
        out.push(format!(
            "Open {}: {}.",
            pieces(Language::English, list.opened.len(), of),
            ranges(&list.opened)
        ));
    }
    if !list.taken.is_empty() {
        let panels: Vec<&str> = list.taken.iter().map(|t| t.panel.as_str()).collect();
        out.push(format!("Offcuts laid aside before: of {}.", ranges(&panels)));
    }
    out.extend(list.batches.iter().map(|b| batch(b, of, style)));
    if !list.laid_aside.is_empty() {
        let aside = list.laid_aside.iter().map(|a| format!("{} for {}", a.panel, a.wanted_at));
        out.push(format!("Lay aside, marked: offcuts of {}.", commas(&aside.collect::<Vec<_>>())));
    }
    out
}

/// Equal cuts: `7 at 3'-11 1/2", from P5, P8 to P10`.
pub fn batch(batch: &SawBatch, of: SidingPiece, style: LengthStyle) -> String {
    let panels: Vec<&str> = batch.pieces.iter().map(|p| p.panel.as_str()).collect();
    let (n, from) = (batch.pieces.len(), ranges(&panels));
    if batch.whole {
        return format!("{} whole: {from}.", pieces(Language::English, n, of));
    }
    let side = |angle: Option<f64>| match angle {
        Some(90.0) => "square".to_owned(),
        Some(a) => format!("{} degrees", (a * 100.0).round() / 100.0),
        None => "to its contour".to_owned(),
    };
    let [left, right] = batch.angles;
    let ends = match (left, right) {
        (Some(90.0), Some(90.0)) => String::new(),
        _ => format!(", left end {}, right end {}", side(left), side(right)),
    };
    format!("{n} at {}{ends}, from {from}.", style.cut(batch.length))
}

/// What fewer waiting offcuts cost, as a table of 80 columns.
pub fn prices(lines: &[WaitingPrice]) -> String {
    let head = ["offcuts that may wait", "panels", "shared by walls", "most waiting"];
    let row = |cells: [String; 4]| {
        format!("  {:<24} {:>8} {:>18} {:>14}\n", cells[0], cells[1], cells[2], cells[3])
    };
    let mut out = row(head.map(str::to_owned));
    for l in lines {
        let may = l.waiting.map_or("any".to_owned(), |n| n.to_string());
        let may = if l.in_force { format!("{may} (in force)") } else { may };
        out.push_str(&row([may, l.panels.to_string(), l.shared.to_string(), l.most.to_string()]));
    }
    out.push_str("  Set `seams.waiting` in the job file to the number that suits the site.\n");
    out
}
