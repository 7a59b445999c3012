//! Marks of pieces where walls are held.

use std::collections::{BTreeMap, BTreeSet};

use super::asked::{Asked, Keep};
use crate::layout::wall::LaidWall;

/// What marks begin with: held walls keep theirs, others get numbers that none has.
pub(super) fn held_marks(keep: &Keep, asked: &Asked, mut marks: Vec<String>) -> Vec<String> {
    let begins = |w: &LaidWall| -> Option<String> {
        let first = w.courses.iter().flat_map(|c| &c.runs).flat_map(|r| &r.pieces).next()?;
        let mut parts = first.mark.rsplitn(3, '-');
        parts.nth(2).map(str::to_owned)
    };
    let old: BTreeMap<usize, String> = asked
        .fields
        .iter()
        .enumerate()
        .filter_map(|(i, f)| {
            let s = keep.same.iter().find(|s| s.new == (f.elevation, f.wall))?;
            Some((i, begins(keep.wall(s)?)?))
        })
        .collect();
    let mut used: BTreeSet<String> = keep.old.walls().filter_map(|(_, w)| begins(w)).collect();
    for (i, mark) in marks.iter_mut().enumerate() {
        if let Some(own) = old.get(&i) {
            mark.clone_from(own);
            continue;
        }
        let head = mark.trim_end_matches(|c: char| c.is_ascii_digit()).to_owned();
        let mut n = 1;
        while used.contains(mark.as_str()) {
            *mark = format!("{head}{n}");
            n += 1;
        }
        used.insert(mark.clone());
    }
    marks
}
