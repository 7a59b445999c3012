//! Which insertion a line of an opening or a fixture is part of: the outermost block that is one
//! thing. A block that holds a whole elevation, or several openings apart from one another, is a
//! means of drawing them, and no opening itself.

use std::collections::{BTreeMap, BTreeSet};

use crate::geom::near::clusters;
use crate::geom::polygon::bounds;
use crate::geom::vocabulary::Rect;
use crate::model::drawing::Group;
use crate::model::linework::{LeftStroke, Linework, Role, Stroke};

/// Parts of a block farther apart than this, inches, are things of their own: the widest casing
/// (common practice, no source).
const APART: f64 = 12.0;
/// Blocks in blocks that are gone down.
const DEEPEST: usize = 64;

/// Gives every stroke of an opening or a fixture the insertion it is part of.
pub(super) fn assign(lines: &mut Linework) {
    let views = views(lines);
    let roles: Vec<Option<Role>> =
        lines.groups.iter().map(|g| lines.layers.get(g.layer).and_then(|l| l.role)).collect();
    let find = Finder { groups: &lines.groups, roles, views };
    let left = lines.left.iter_mut().map(|LeftStroke { stroke, .. }| stroke);
    for s in lines.strokes.iter_mut().chain(left) {
        if s.role.is_some_and(Role::is_thing) {
            s.part_of = s.group.and_then(|g| find.root(g));
        }
    }
    for _ in 0..DEEPEST {
        let apart = apart(&lines.strokes);
        if apart.is_empty() {
            return;
        }
        let left = lines.left.iter_mut().map(|LeftStroke { stroke, .. }| stroke);
        for s in lines.strokes.iter_mut().chain(left) {
            if let (Some(root), Some(group)) = (s.part_of, s.group)
                && apart.contains(&root)
            {
                s.part_of = find.beneath(root, group);
            }
        }
    }
}

/// Insertions that hold walls, heights or frames, at any depth: views drawn as blocks.
fn views(lines: &Linework) -> BTreeSet<usize> {
    let of_view =
        |s: &&Stroke| matches!(s.role, Some(Role::Wall | Role::Level | Role::Grade | Role::Frame));
    let mut out = BTreeSet::new();
    for s in lines.strokes.iter().filter(of_view) {
        let mut at = s.group;
        while let Some(g) = at {
            if !out.insert(g) {
                break;
            }
            at = lines.groups.get(g).and_then(|g| g.parent);
        }
    }
    out
}

/// Insertions whose parts of one role stand apart.
fn apart(strokes: &[Stroke]) -> BTreeSet<usize> {
    let mut boxes: BTreeMap<(usize, Role), Vec<Rect>> = BTreeMap::new();
    for s in strokes {
        if let (Some(root), Some(role), Some(b)) = (s.part_of, s.role, bounds(&s.points)) {
            boxes.entry((root, role)).or_default().push(b);
        }
    }
    let several = |b: Vec<Rect>| clusters(b, APART).len() > 1;
    boxes.into_iter().filter_map(|((root, _), b)| several(b).then_some(root)).collect()
}

/// Insertions with the roles of their layers.
struct Finder<'a> {
    groups: &'a [Group],
    roles: Vec<Option<Role>>,
    views: BTreeSet<usize>,
}

impl Finder<'_> {
    fn parent(&self, group: usize) -> Option<usize> {
        self.groups.get(group).and_then(|g| g.parent)
    }

    /// The outermost insertion on a layer of openings or fixtures round this one, or itself; below
    /// every view.
    fn root(&self, group: usize) -> Option<usize> {
        let mut at = group;
        while let Some(parent) = self.parent(at) {
            if !self.roles.get(parent).copied().flatten().is_some_and(Role::is_thing) {
                break;
            }
            at = parent;
        }
        let mut root = Some(at);
        while let Some(r) = root.filter(|r| self.views.contains(r)) {
            root = self.beneath(r, group);
        }
        root
    }

    /// The insertion just inside `outer` on the way to `group`.
    fn beneath(&self, outer: usize, group: usize) -> Option<usize> {
        let (mut below, mut at) = (None, Some(group));
        while let Some(g) = at.filter(|g| *g != outer) {
            below = Some(g);
            at = self.parent(g);
        }
        below
    }
}
