//! Things of one sort paired off by place, then by size: what stays, what is changed, what is gone or new.

use std::collections::BTreeSet;

use super::shape::{Box4, apart, common, same_box, same_size};

/// What two boxes must have in common to be one thing that was resized.
const ONE: f64 = 0.2;

/// Pairs of things, each by its number in the one list and in the other, with what has no pair.
pub(super) struct Pairs {
    pub(super) both: Vec<(usize, usize)>,
    pub(super) gone: Vec<usize>,
    pub(super) added: Vec<usize>,
}

/// Pairs things off: those in the same place and as large, then those that overlap most, then those as large
/// that stand nearest. `alike` says of what sort things are: one goes with another sort only where they overlap.
pub(super) fn pairs(old: &[Box4], new: &[Box4], alike: &dyn Fn(usize, usize) -> bool) -> Pairs {
    let mut guesses: Vec<(u8, f64, usize, usize)> = Vec::new();
    for (i, a) in old.iter().enumerate() {
        for (j, b) in new.iter().enumerate() {
            let like = alike(i, j);
            let shared = common(*a, *b);
            if same_box(*a, *b) {
                guesses.push((u8::from(!like), 0.0, i, j));
            } else if shared >= ONE {
                guesses.push((if like { 2 } else { 4 }, -shared, i, j));
            } else if like && same_size(*a, *b) {
                guesses.push((3, apart(*a, *b), i, j));
            }
        }
    }
    guesses
        .sort_by(|a, b| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)).then((a.2, a.3).cmp(&(b.2, b.3))));
    let (mut from, mut to) = (BTreeSet::new(), BTreeSet::new());
    let mut both: Vec<(usize, usize)> = Vec::new();
    for (.., i, j) in guesses {
        if !from.contains(&i) && !to.contains(&j) {
            from.insert(i);
            to.insert(j);
            both.push((i, j));
        }
    }
    both.sort_by_key(|(_, j)| *j);
    Pairs {
        both,
        gone: (0..old.len()).filter(|i| !from.contains(i)).collect(),
        added: (0..new.len()).filter(|j| !to.contains(j)).collect(),
    }
}
