//! What a revision of a drawing changes: two layouts of one house compared by place and shape, whatever
//! their things are called and wherever on the sheet their views stand; then what that does to each wall
//! and to the order.

mod align;
mod changed;
mod corners;
mod faces;
mod fixtures;
mod grade;
mod hold;
mod letter;
mod openings;
mod orders;
mod pairing;
mod shape;
mod sides;
mod walls;
mod walls_laid;

use std::collections::BTreeSet;

use align::{Paired, paired};
use changed::Told;
pub use hold::{SameWall, names, same_walls};
use letter::next_letter;

use crate::job::differences::differences;
use crate::layout::Layout;
use crate::layout::set::{LaidSet, LaidSets};
use crate::model::change::{Change, Comparison, FORMAT, How, Remark, Subject};
use crate::model::ids::FeatureId;

/// Compares two layouts of a house, set by set. The revision has the letter given, else that of the new
/// job's title block where it is another than the old one's, else the next.
pub fn compare(old: &LaidSets, new: &LaidSets, letter: Option<&str>) -> Comparison {
    let (was, is) = (&old.house.layout, &new.house.layout);
    let mut told = Told::default();
    let mut out = Comparison {
        format: FORMAT.to_owned(),
        revision: letter.map_or_else(|| next_letter(&was.job.title, &is.job.title), str::to_owned),
        date: is.job.title.date.clone(),
        old: was.drawing.clone(),
        new: is.drawing.clone(),
        remarks: Vec::new(),
        changes: Vec::new(),
        settings: differences(&was.job, &is.job),
        datum: [was.datum, is.datum],
        panels: [old, new].map(|s| s.iter().map(|s| s.layout.panels.len()).sum()),
        walls: Vec::new(),
        walls_alike: 0,
        orders: Vec::new(),
        orders_alike: 0,
        cost: None,
        check_failed: [old, new].map(|s| s.failed_places() > 0),
    };
    if was.drawing.sha256 == is.drawing.sha256 {
        out.remarks.push(Remark::SameFile);
    }
    for (was, is) in set_pairs(old, new) {
        let zone = was.or(is).and_then(|s| s.layout.zone.clone());
        match (was, is) {
            (Some(was), Some(is)) => set(was, is, zone, &mut told, &mut out),
            (was, _) => {
                let name = zone.clone().unwrap_or_default();
                told.push(whole_zone(name, was.is_some()));
                walls_laid::alone(was.or(is), was.is_some(), zone, &mut out);
            }
        }
    }
    out.changes = told.numbered();
    orders::orders(old, new, &mut out);
    out
}

/// Sets of the same siding: the house's, and zones by their names.
fn set_pairs<'a>(
    old: &'a LaidSets,
    new: &'a LaidSets,
) -> Vec<(Option<&'a LaidSet>, Option<&'a LaidSet>)> {
    let mut out = vec![(Some(&old.house), Some(&new.house))];
    let of =
        |sets: &'a [LaidSet], name: &Option<String>| sets.iter().find(|s| s.layout.zone == *name);
    out.extend(old.zones.iter().map(|z| (Some(z), of(&new.zones, &z.layout.zone))));
    let added = new.zones.iter().filter(|z| of(&old.zones, &z.layout.zone).is_none());
    out.extend(added.map(|z| (None, Some(z))));
    out
}

fn whole_zone(name: String, gone: bool) -> Change {
    let how = if gone {
        How::Removed { size: None, openings: 0 }
    } else {
        How::Added { size: None, openings: 0 }
    };
    let id = Some(FeatureId::from(name.clone()));
    let (old_name, new_name) = if gone { (id, None) } else { (None, id) };
    Change { zone: Some(name), old_name, new_name, ..changed::blank(Subject::Zone, how) }
}

/// Compares two layouts of one siding.
fn set(was: &LaidSet, is: &LaidSet, zone: Option<String>, told: &mut Told, out: &mut Comparison) {
    let (old, new) = (&was.layout, &is.layout);
    let pairs = paired(old, new);
    if zone.is_none() {
        remarks(&pairs, new, out);
    }
    told.zone.clone_from(&zone);
    faces::faces(old, new, &pairs, told);
    let walls = faces::pairs_of_walls(old, new, &pairs);
    corners::corners(old, new, (&pairs, &walls), told);
    walls_laid::effects((was, is), (&pairs, &walls), zone, out);
}

/// What is no change of the house: drawn the other hand, or elsewhere on the sheet.
fn remarks(pairs: &Paired, new: &Layout, out: &mut Comparison) {
    if pairs.mirrored {
        out.remarks.push(Remark::Mirrored);
    }
    let moved: BTreeSet<usize> =
        pairs.faces.iter().filter(|p| p.elsewhere).map(|p| p.new).collect();
    if !moved.is_empty() {
        let name = |i: usize| new.elevations.get(i).map(|e| e.name.clone());
        let elevations = moved.into_iter().filter_map(name).collect();
        out.remarks.push(Remark::Moved { elevations });
    }
}
