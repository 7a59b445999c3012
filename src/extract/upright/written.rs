//! How the text of a view reads.

use std::collections::BTreeMap;

use crate::clean::{Destination, clean};
use crate::extract::views::View;
use crate::model::linework::{Label, Linework, Role};
use crate::model::turn::Turn;

/// A title counts as much as this many other texts.
const TITLE: usize = 3;
/// Share of the text that must read alike, in fifths.
const FIFTHS: usize = 3;

/// How most of a view's text reads.
#[derive(Clone, Copy, Debug)]
pub(super) struct Reads {
    /// The turn that sets it upright.
    pub(super) turn: Turn,
    /// Whether the title is among it.
    pub(super) title: bool,
    /// Whether other text is.
    pub(super) more: bool,
}

/// How most of a view's text reads; none where there is none, or it is at odds.
pub(super) fn reads(lines: &Linework, view: &View) -> Option<Reads> {
    // Turn, then count, titles, others.
    let mut found: BTreeMap<Turn, (usize, usize, usize)> = BTreeMap::new();
    for l in view.labels(lines).filter(|l| tells(lines, l)) {
        let Some(turn) = Turn::of_text(l.text.angle, l.text.mirrored) else { continue };
        let title = l.role == Some(Role::Title)
            || clean(&l.text.content, Destination::Name).eq_ignore_ascii_case(&view.name);
        let count = found.entry(turn).or_default();
        count.0 += if title { TITLE } else { 1 };
        *(if title { &mut count.1 } else { &mut count.2 }) += 1;
    }
    // A title that stands outside the view's part of the drawing tells as well.
    if let (Some(turn), true) = (view.title, found.values().all(|c| c.1 == 0)) {
        let count = found.entry(turn).or_default();
        (count.0, count.1) = (count.0 + TITLE, 1);
    }
    let total: usize = found.values().map(|c| c.0).sum();
    let (turn, count) = found.into_iter().max_by_key(|(_, c)| c.0)?;
    let most = 5 * count.0 >= FIFTHS * total;
    most.then_some(Reads { turn, title: count.1 > 0, more: count.2 > 0 })
}

/// Text of dimensions runs along them, and text in a window or door is turned with it.
fn tells(lines: &Linework, l: &Label) -> bool {
    if matches!(l.role, Some(Role::Dimension | Role::Texture)) || l.text.content.trim().is_empty() {
        return false;
    }
    let mut group = l.group;
    while let Some(g) = group.and_then(|g| lines.groups.get(g)) {
        let role = lines.layers.get(g.layer).and_then(|l| l.role);
        if role.is_some_and(|r| {
            matches!(r, Role::Window | Role::Door | Role::MountingBlock | Role::Obstacle)
        }) {
            return false;
        }
        group = g.parent;
    }
    true
}
