//! The same quantities by the part of the house that takes them.

use crate::model::layout::{Share, Zone};
use crate::model::takeoff::{By, PartShare, Takeoff};

/// What each part takes of each line, part by part as the house has them, lines in ordering order.
/// Parts of stock lengths, boxes and cartons: what is bought is rounded up for the house alone.
/// A line that no part takes (cartons, spare panels) stands under the house only.
pub fn shares(takeoff: &Takeoff, by: By) -> Vec<PartShare> {
    let mut parts: Vec<(&str, &str, Option<Zone>)> = Vec::new();
    for s in takeoff.lines.iter().flat_map(|l| &l.shares) {
        let part = part(s, by);
        if !parts.contains(&part) {
            parts.push(part);
        }
    }
    if by == By::Zone {
        parts.sort();
    }
    let of_part = |of: (&str, &str, Option<Zone>)| -> Vec<PartShare> {
        let line = |l: &crate::model::layout::TakeoffLine| {
            let mut mine = l.shares.iter().filter(|s| part(s, by) == of).peekable();
            mine.peek()?;
            let (pieces, net) = mine.fold((0, 0.0), |(p, n), s| (p + s.pieces, n + s.net));
            Some(PartShare {
                elevation: of.0.to_owned(),
                wall: of.1.to_owned(),
                zone: of.2,
                item: l.id.clone(),
                words: l.item.clone(),
                unit: l.unit.clone(),
                pieces,
                net,
            })
        };
        takeoff.lines.iter().filter_map(line).collect()
    };
    parts.into_iter().flat_map(of_part).collect()
}

/// The part a share belongs to. A wall without a rake is wall all over.
fn part(s: &Share, by: By) -> (&str, &str, Option<Zone>) {
    match by {
        By::House => ("", "", None),
        By::Elevation => (&s.elevation, "", None),
        By::Wall => (&s.elevation, &s.wall, None),
        By::Zone => ("", "", Some(s.zone.unwrap_or(Zone::Wall))),
    }
}
