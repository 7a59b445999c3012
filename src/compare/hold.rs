//! Which walls of an earlier layout stand in a new one, and what things are called: by place. What was there
//! keeps its name; what is new gets the next number; the name of what is gone is not used again.

use std::collections::{BTreeMap, BTreeSet};

use super::align::paired;
use super::pairing::pairs as things;
use super::shape::{Box4, Shift, box_of};
use super::walls::pairs;
use crate::layout::Layout;
use crate::layout::wall::LaidWall;

/// A wall that stands in both layouts: its elevation and its number there, in the old and in the new one, and how
/// far places of the old elevation go over, right and up.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SameWall {
    /// In the old layout.
    pub old: (usize, usize),
    /// In the new one.
    pub new: (usize, usize),
    /// Right and up.
    pub by: [f64; 2],
}

/// The walls that stand in both layouts; `None` where the house is drawn the other hand: then none of its pieces
/// is.
pub fn same_walls(old: &Layout, new: &Layout) -> Option<Vec<SameWall>> {
    let faces = paired(old, new);
    if faces.mirrored {
        return None;
    }
    let mut out = Vec::new();
    for f in &faces.faces {
        let both = (&old.elevations[f.old], &new.elevations[f.new]);
        out.extend(pairs(both, (f.old, f.new), f.shift).into_iter().map(|p| SameWall {
            old: p.old,
            new: p.new,
            by: [f.shift.right + p.by[0], f.shift.up + p.by[1]],
        }));
    }
    Some(out)
}

/// Names of walls, openings and fixtures of the new layout, each with the name it shall have.
pub fn names(old: &Layout, new: &Layout, same: &[SameWall]) -> BTreeMap<String, String> {
    let mut out: BTreeMap<String, String> = BTreeMap::new();
    for s in same {
        let was = &old.elevations[s.old.0].walls[s.old.1];
        let is = &new.elevations[s.new.0].walls[s.new.1];
        out.insert(is.id.to_string(), was.id.to_string());
        let shift = Shift { mirror: false, right: s.by[0], up: s.by[1] };
        let of = |w: &LaidWall| -> Vec<(String, Box4)> {
            let holes = w.openings.iter();
            holes.map(|o| (o.id.to_string(), [o.left, o.sill, o.right, o.head])).collect()
        };
        pair(&of(was), &of(is), shift, &mut out);
        let of = |w: &LaidWall| -> Vec<(String, Box4)> {
            w.obstacles.iter().map(|o| (o.id.to_string(), box_of(&o.outline))).collect()
        };
        pair(&of(was), &of(is), shift, &mut out);
    }
    let mut used: BTreeSet<String> = all_names(old).into_iter().collect();
    for name in all_names(new) {
        out.entry(name).or_insert_with_key(|name| {
            let free = free_name(name, &used);
            used.insert(free.clone());
            free
        });
    }
    out
}

fn pair(
    was: &[(String, Box4)],
    is: &[(String, Box4)],
    shift: Shift,
    out: &mut BTreeMap<String, String>,
) {
    let old: Vec<Box4> = was.iter().map(|t| shift.bounds(t.1)).collect();
    let new: Vec<Box4> = is.iter().map(|t| t.1).collect();
    for (i, j) in things(&old, &new, &|_, _| true).both {
        out.insert(is[j].0.clone(), was[i].0.clone());
    }
}

fn all_names(layout: &Layout) -> Vec<String> {
    let walls = layout.walls().map(|(_, w)| w);
    let of = |w: &LaidWall| -> Vec<String> {
        let openings = w.openings.iter().map(|o| o.id.to_string());
        let fixtures = w.obstacles.iter().map(|o| o.id.to_string());
        std::iter::once(w.id.to_string()).chain(openings).chain(fixtures).collect()
    };
    walls.flat_map(of).collect()
}

/// The name itself where it is free, else the next number after the highest in use.
fn free_name(name: &str, used: &BTreeSet<String>) -> String {
    if !used.contains(name) {
        return name.to_owned();
    }
    let head = name.trim_end_matches(|c: char| c.is_ascii_digit());
    let number = |n: &String| n.strip_prefix(head)?.parse::<u64>().ok();
    let last = used.iter().filter_map(number).max().unwrap_or(0);
    format!("{head}{}", last.saturating_add(1))
}
