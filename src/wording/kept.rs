//! What is held of an earlier layout, in words.

use std::collections::BTreeSet;

use crate::layout::at_hand::BuiltSoFar;
use crate::layout::kept::Kept;
use crate::units::counted;

/// Heading of the section.
pub const TITLE: &str = "HELD OF THE EARLIER LAYOUT";
/// Where no wall is.
pub const NONE: &str = "No wall is as it was on these course lines: everything is laid anew.";

/// The sentences: which walls, what is laid anew, what it costs in panels.
pub fn told(kept: &Kept, panels: usize) -> Vec<String> {
    let names = |all: &[crate::model::ids::WallId]| {
        all.iter().map(|w| w.as_str()).collect::<Vec<_>>().join(", ")
    };
    let mut out = vec![format!("Of the layout of {}.", kept.from.name)];
    if let Some(built) = &kept.built {
        out.extend(so_far(built, kept.from_offcuts));
        return out;
    }
    if kept.walls.is_empty() {
        out.push(NONE.to_owned());
    } else {
        out.push(format!(
            "Held with seams, panels and marks: {}; {} of {}.",
            names(&kept.walls),
            counted(kept.pieces.len(), "piece"),
            counted(kept.panels, "panel")
        ));
    }
    let offcuts: BTreeSet<&str> = {
        let of_site = kept.pieces.iter().filter(|k| k.at_hand.is_some());
        of_site.map(|k| k.panel.as_str()).collect()
    };
    if !offcuts.is_empty() {
        let offcuts = counted(offcuts.len(), "offcut");
        out.push(format!("Of these, {offcuts} of the site: the takeoff counts each as a panel."));
    }
    if !kept.anew.is_empty() {
        out.push(format!(
            "Laid anew: {}; {}, and {} from what the held panels have left.",
            names(&kept.anew),
            counted(panels.saturating_sub(kept.panels), "more panel"),
            counted(kept.from_offcuts, "piece")
        ));
    }
    out.push(costs(kept, panels));
    out
}

/// What holding costs against laying all anew.
fn costs(kept: &Kept, panels: usize) -> String {
    let all = counted(panels, "panel");
    match panels.checked_sub(kept.all_anew) {
        Some(0) => format!("{all} in all: as many as if all were laid anew on these course lines."),
        Some(more) => format!(
            "{all} in all; all laid anew on these course lines, {}: holding costs {}.",
            kept.all_anew,
            counted(more, "panel")
        ),
        None => format!(
            "{all} in all; a search of the whole house on these course lines found {}.",
            kept.all_anew
        ),
    }
}

/// What is built so far, and what the rest takes: `42 more panels, 31 on site, order 11`.
fn so_far(built: &BuiltSoFar, from_offcuts: usize) -> Vec<String> {
    let mut out = vec![format!(
        "What hangs is kept as it hangs: {} of {}.",
        counted(built.hung, "piece"),
        counted(built.hung_panels, "panel")
    )];
    let more = counted(built.more, "more panel");
    out.push(match built.stock {
        Some(_) => format!("{more}, {} on site, order {}.", built.on_site, built.order),
        None => format!("{more}. Give what lies on the site with --stock to see what to order."),
    });
    if built.stock.is_some() {
        out.push(format!(
            "{} cut from {} on site. No layout of the rest takes fewer than {}.",
            counted(from_offcuts, "piece"),
            counted(built.offcuts_used, "offcut"),
            counted(built.at_least, "more panel")
        ));
    }
    out.push(
        "Spare panels come on top. The takeoff below counts the whole house, what hangs too, and an offcut as a panel."
            .to_owned(),
    );
    out
}
