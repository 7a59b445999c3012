//! What breaks the rules of counts and of the panel bound.

use crate::layout::breach::count::{CountBreach, Counted, SeamCount};
use crate::model::seam::Dual;
use crate::units::LengthStyle;
use crate::wording::figure;

pub(super) fn count(breach: &CountBreach, style: LengthStyle) -> String {
    match breach {
        CountBreach::Panels => "panels counted, beside those cut".to_owned(),
        CountBreach::BoundOver => "bound over the panels of the layout".to_owned(),
        CountBreach::Proven { said } => format!("given, wrongly, as {}", counted(said)),
        CountBreach::Seams { what } => format!("{} told, beside those laid", seams(*what)),
        CountBreach::SeamsLeast { what } => format!("{} told as the least", seams(*what)),
        CountBreach::SeamOnJambUntold => "a seam on a jamb line is not told".to_owned(),
        CountBreach::WallOrder => "walls in the order of work, beside those there are".to_owned(),
        CountBreach::NotAtHand => "offcuts used that are not on the site".to_owned(),
        CountBreach::BuiltTold => "a figure of what hangs or is to be ordered".to_owned(),
        CountBreach::BuiltBound => "panels that the rest takes at least".to_owned(),
        CountBreach::KeptWall => "pieces of a wall that is held".to_owned(),
        CountBreach::KeptPanels => "panels that held pieces are cut from".to_owned(),
        CountBreach::OffcutsWaiting => "offcuts wait at the end of the wall".to_owned(),
        CountBreach::OffcutsTold => "offcuts told, beside those that wait".to_owned(),
        CountBreach::OffcutGoesFar => "walls on that its offcut is used".to_owned(),
        CountBreach::SawListPiece => "places in the saw list of its wall".to_owned(),
        CountBreach::SawListLength => "length in the saw list, beside the piece's own".to_owned(),
        CountBreach::Ordered => "ordered, beside what is laid and cut".to_owned(),
        CountBreach::Measured => "measured, beside what the walls have".to_owned(),
        CountBreach::Function { function, stock } => format!(
            "{} proves nothing of a panel of {}",
            dual(*function),
            figure::length(*stock, style)
        ),
        CountBreach::Prices => "the certificate's prices are not in order".to_owned(),
        CountBreach::DearPanel => {
            "worth of what one panel can give, over that of a panel".to_owned()
        }
        CountBreach::Sum { said, found } => format!(
            "the certificate says {} of {}, the runs give {} of {}",
            said[0], said[1], found[0], found[1]
        ),
        CountBreach::PanelWorth => "worth of a board in the certificate".to_owned(),
        CountBreach::Bound => "bound beside the one that follows from the runs".to_owned(),
        CountBreach::WeightBound => "least weight beside the one from the runs".to_owned(),
        CountBreach::WeightBought => "weight of the whole cartons bought".to_owned(),
        CountBreach::Certificate { said, found } => {
            format!("the certificate says {}, the layout has {}", counted(said), counted(found))
        }
        CountBreach::StocksMissing => {
            "mixed stock lengths are missing in the job or in the certificate".to_owned()
        }
        CountBreach::Stocks => "the stock lengths are not those of the job".to_owned(),
        CountBreach::Weights { weights } => {
            format!("weights {} of the stock lengths do not follow from the job", list(weights))
        }
        CountBreach::Weight { said, cut } => format!(
            "panels of each length: {} in the certificate, {} cut; weight",
            list(said),
            list(cut)
        ),
    }
}

fn seams(what: SeamCount) -> &'static str {
    match what {
        SeamCount::Seams => "seams",
        SeamCount::InNotches => "seams in notches",
        SeamCount::OnJambs => "seams on jamb lines",
        SeamCount::NearJambs => "seams near jamb lines",
        SeamCount::Stairs => "stairs of seams",
        SeamCount::Ladders => "ladders of seams",
    }
}

fn list(numbers: &[i64]) -> String {
    numbers.iter().map(i64::to_string).collect::<Vec<_>>().join(" and ")
}

fn counted(c: &Counted) -> String {
    let proven = if c.proven { "proven" } else { "not proven" };
    format!(
        "a bound of {} for {}, {proven}",
        c.bound,
        crate::units::counted(c.panels.unsigned_abs() as usize, "panel")
    )
}

/// A dual-feasible function by its kind and parameter.
fn dual(function: Dual) -> String {
    match function {
        Dual::Length => "the length function".to_owned(),
        Dual::Rounded(k) => format!("the rounding function of {k} steps"),
        Dual::Clipped(e) => format!("the clipping function at {e} steps"),
        Dual::Counted(e) => format!("the counting function at {e} steps"),
    }
}
