//! Names of views: each once, and by the walls that the job gives in them.

use std::collections::{BTreeMap, BTreeSet};

use crate::geom::vocabulary::Rect;

/// Names that walls of the job give.
pub(super) struct Named {
    /// Of views that have none, by their places.
    pub(super) names: Vec<(usize, String)>,
    /// Of views of their own, with the boxes of their walls.
    pub(super) own: Vec<(String, Rect)>,
}

/// Names for views that have none, and views of their own, each with the box of its walls: of given walls
/// whose elevation no view is called and that lie in none. One that lies in a view of another name is
/// neither, and told as a name that no elevation has.
pub(super) fn by_given(views: &[(&str, Rect)], given: &[(&str, Rect)]) -> Named {
    let same = |a: &str, b: &str| a.trim().eq_ignore_ascii_case(b.trim());
    let mut names: Vec<(usize, String)> = Vec::new();
    let mut own: Vec<(String, Rect)> = Vec::new();
    for (name, frame) in given.iter().filter(|g| !views.iter().any(|v| same(v.0, g.0))) {
        match views.iter().position(|v| v.1.contains(frame.center())) {
            Some(i) if views[i].0.is_empty() => {
                if names.iter().all(|(view, _)| *view != i) {
                    names.push((i, (*name).to_owned()));
                }
            }
            Some(_) => {}
            None => match own.iter_mut().find(|o| same(&o.0, name)) {
                Some(o) => o.1 = o.1.union(*frame),
                None => own.push(((*name).to_owned(), *frame)),
            },
        }
    }
    Named { names, own }
}

/// Every name once: the house is named by them.
pub(super) fn distinct<'a>(names: impl Iterator<Item = &'a mut String>) {
    let mut taken = BTreeSet::new();
    // The last number given to a name, so that a thousand of one name are not all tried again.
    let mut last: BTreeMap<String, usize> = BTreeMap::new();
    for name in names {
        let wished = name.clone();
        while !taken.insert(name.clone()) {
            let n = last.entry(wished.clone()).or_insert(1);
            *n += 1;
            *name = format!("{wished} {n}");
        }
    }
}
