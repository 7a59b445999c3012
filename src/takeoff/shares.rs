//! The same quantities by the part of the house that takes them.

use std::collections::BTreeMap;
use std::collections::btree_map::Entry;

use crate::model::quantity::{Share, WallPart};
use crate::model::takeoff::{PartShare, ShareBy, Takeoff};

/// What each part takes of each line, part by part as the house has them, lines in ordering order.
/// Parts of stock lengths, boxes and cartons: what is bought is rounded up for the house alone.
/// A line that no part takes (cartons, spare panels) stands under the house only.
pub fn shares(takeoff: &Takeoff, by: ShareBy) -> Vec<PartShare> {
    type Part<'a> = (&'a str, &'a str, Option<WallPart>);
    let mut parts: Vec<Part> = Vec::new();
    let mut places: BTreeMap<Part, usize> = BTreeMap::new();
    for s in takeoff.lines.iter().flat_map(|l| &l.shares) {
        let part = part(s, by);
        if let Entry::Vacant(at) = places.entry(part) {
            at.insert(parts.len());
            parts.push(part);
        }
    }
    if by == ShareBy::Gable {
        parts.sort();
        places = parts.iter().enumerate().map(|(i, p)| (*p, i)).collect();
    }
    let mut out: Vec<Vec<PartShare>> = parts.iter().map(|_| Vec::new()).collect();
    for l in &takeoff.lines {
        let mut sums: BTreeMap<usize, (usize, f64)> = BTreeMap::new();
        for s in &l.shares {
            let Some(at) = places.get(&part(s, by)) else { continue };
            let sum = sums.entry(*at).or_insert((0, 0.0));
            *sum = (sum.0 + s.pieces, sum.1 + s.net);
        }
        for (at, (pieces, net)) in sums {
            out[at].push(PartShare {
                elevation: parts[at].0.to_owned(),
                wall: parts[at].1.to_owned(),
                wall_part: parts[at].2,
                id: l.id.clone(),
                item: l.item.clone(),
                unit: l.unit,
                pieces,
                net,
            });
        }
    }
    out.concat()
}

/// The part a share belongs to. A wall without a rake is wall all over.
fn part(s: &Share, by: ShareBy) -> (&str, &str, Option<WallPart>) {
    match by {
        ShareBy::House => ("", "", None),
        ShareBy::Elevation => (&s.elevation, "", None),
        ShareBy::Wall => (&s.elevation, &s.wall, None),
        ShareBy::Gable => ("", "", Some(s.wall_part.unwrap_or(WallPart::Wall))),
    }
}
