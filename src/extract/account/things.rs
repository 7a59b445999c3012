//! What is drawn on layers with a role, thing by thing: a block, a closed loop, lines that belong
//! together. Every entity of such a layer is part of one thing, or an aside.

use std::collections::{BTreeMap, BTreeSet};

use crate::geom::polygon::bounds;
use crate::geom::vocabulary::{Point, Rect};
use crate::model::linework::{Linework, Role, Stroke};
use crate::model::unused::Unused;
use crate::origin::Origin;

/// Ends nearer than one to two of these, inches, belong together (common practice, no source).
const NEAR: f64 = 4.0;

/// What a thing is drawn as.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum DrawnAs {
    /// An insertion, an index into [`Linework::groups`].
    Block(usize),
    /// A closed outline.
    Loop,
    /// Open lines whose ends come near one another.
    Lines,
    /// A filled or patterned area that is no outline, an index into [`Linework::hatches`].
    Texture(usize),
    /// A text that names something, an index into [`Linework::labels`].
    Tag(usize),
    /// Left out before walls were looked for.
    Left(Unused),
}

/// One thing.
#[derive(Clone, Debug)]
pub(super) struct Thing {
    pub(super) role: Role,
    pub(super) layer: usize,
    pub(super) kind: DrawnAs,
    /// Indices of its strokes, or of its left strokes.
    pub(super) strokes: Vec<usize>,
    pub(super) entities: usize,
    /// Box round it, inches of the whole drawing; none where nothing tells its place.
    pub(super) frame: Option<Rect>,
    pub(super) origin: Origin,
}

/// Every thing of a drawing.
pub(super) struct Things {
    pub(super) all: Vec<Thing>,
    /// The thing of each stroke.
    pub(super) of_stroke: Vec<Option<usize>>,
    /// Things of no strokes by the middles of their boxes, left to right.
    others: Vec<(f64, usize)>,
}

impl Things {
    pub(super) fn of(lines: &Linework) -> Self {
        let of_stroke = vec![None; lines.strokes.len()];
        let mut out = Things { all: Vec::new(), of_stroke, others: Vec::new() };
        let shown = out.of_strokes(lines);
        let before = out.all.len();
        out.of_hatches(lines);
        out.of_tags(lines);
        out.of_left(lines, &shown);
        out.of_foreign_blocks(lines);
        let rest = out.all.iter().enumerate().skip(before);
        out.others = rest.filter_map(|(i, t)| Some((t.frame?.center().x, i))).collect();
        out.others.sort_by(|a, b| a.0.total_cmp(&b.0));
        out
    }

    /// Things of no strokes whose middle lies in a region.
    pub(super) fn others_in(&self, region: Rect) -> impl Iterator<Item = usize> + '_ {
        let from = self.others.partition_point(|(x, _)| *x < region.x0);
        let to = self.others.partition_point(|(x, _)| *x <= region.x1);
        let across = self.others.get(from..to).unwrap_or_default().iter().map(|(_, i)| *i);
        across.filter(move |i| self.all[*i].frame.is_some_and(|f| region.contains(f.center())))
    }

    /// Shown strokes; gives the things that are blocks.
    fn of_strokes(&mut self, lines: &Linework) -> BTreeMap<(usize, Role), usize> {
        let mut blocks: BTreeMap<(usize, Role), Vec<usize>> = BTreeMap::new();
        let mut open: BTreeMap<(Role, usize), Vec<usize>> = BTreeMap::new();
        let mut found: Vec<(DrawnAs, Vec<usize>)> = Vec::new();
        for (i, s) in lines.strokes.iter().enumerate() {
            let Some(role) = s.role.filter(|r| r.shapes_layout()) else { continue };
            match s.part_of {
                Some(root) => blocks.entry((root, role)).or_default().push(i),
                None if s.closed && s.points.len() >= 3 => found.push((DrawnAs::Loop, vec![i])),
                // Loose lines of walls are all tied together; each is part of one or is not.
                None if role.is_outline() && role != Role::Wall => {
                    open.entry((role, s.layer)).or_default().push(i)
                }
                None => found.push((DrawnAs::Lines, vec![i])),
            }
        }
        let strokes: Vec<&Stroke> = lines.strokes.iter().collect();
        for set in open.into_values() {
            found.extend(together(&strokes, &set).into_iter().map(|m| (DrawnAs::Lines, m)));
        }
        let mut of_block = BTreeMap::new();
        for ((root, role), members) in blocks {
            of_block.insert((root, role), self.all.len() + found.len());
            found.push((DrawnAs::Block(root), members));
        }
        for (kind, members) in found {
            let all: Vec<&Stroke> = members.iter().map(|i| &lines.strokes[*i]).collect();
            let Some(thing) = thing(kind, &members, &all) else { continue };
            members.iter().for_each(|i| self.of_stroke[*i] = Some(self.all.len()));
            self.all.push(thing);
        }
        of_block
    }

    /// Hatches that are no outlines of their own.
    fn of_hatches(&mut self, lines: &Linework) {
        for (i, h) in lines.hatches.iter().enumerate() {
            // Drawn courses are told as the lines that they are.
            if h.outlined || h.course_lines > 0 {
                continue;
            }
            use crate::geom::vocabulary::CurveShape;
            let Some(role) = h.role.filter(|r| r.shapes_layout()) else { continue };
            let loops = h.hatch.loops.iter().map(CurveShape::bounding_box);
            self.all.push(Thing {
                role,
                layer: h.layer,
                kind: DrawnAs::Texture(i),
                strokes: Vec::new(),
                entities: 1,
                frame: loops.reduce(|a, b| a.union(b)),
                origin: h.origin.clone(),
            });
        }
    }

    /// Texts that tie corners together.
    fn of_tags(&mut self, lines: &Linework) {
        let tags = lines.labels.iter().enumerate();
        for (i, l) in tags.filter(|(_, l)| l.role == Some(Role::CornerTag)) {
            self.all.push(Thing {
                role: Role::CornerTag,
                layer: l.layer,
                kind: DrawnAs::Tag(i),
                strokes: Vec::new(),
                // A text is counted among what is said.
                entities: 0,
                frame: Some(Rect::from_points(l.text.at, l.text.at)),
                origin: l.origin.clone(),
            });
        }
    }

    /// What was left out before; a part of a block that is shown otherwise counts with it.
    fn of_left(&mut self, lines: &Linework, shown: &BTreeMap<(usize, Role), usize>) {
        let mut blocks: BTreeMap<(usize, Role), Vec<usize>> = BTreeMap::new();
        let mut sets: BTreeMap<(Role, usize, &Unused), Vec<usize>> = BTreeMap::new();
        let mut found: Vec<Vec<usize>> = Vec::new();
        let thing_block = |root: &usize| group_role(lines, *root).is_some_and(Role::is_thing);
        for (i, l) in lines.left.iter().enumerate() {
            let Some(role) = l.stroke.role else { continue };
            // A block on a layer without a role may hold several things, places unknown.
            let root = l.stroke.part_of.filter(thing_block).map(|root| (root, role));
            let open = !l.stroke.closed && role.is_outline() && l.stroke.points.len() > 1;
            match root {
                _ if l.why == Unused::OnSheet => found.push(vec![i]),
                Some(root) => match shown.get(&root).and_then(|t| self.all.get_mut(*t)) {
                    Some(thing) => thing.entities += l.stroke.entities,
                    None => blocks.entry(root).or_default().push(i),
                },
                None if open => sets.entry((role, l.stroke.layer, &l.why)).or_default().push(i),
                None => found.push(vec![i]),
            }
        }
        found.extend(blocks.into_values());
        let strokes: Vec<&Stroke> = lines.left.iter().map(|l| &l.stroke).collect();
        for set in sets.into_values() {
            found.extend(together(&strokes, &set));
        }
        for members in found {
            let Some(why) = members.first().map(|i| lines.left[*i].why.clone()) else { continue };
            let all: Vec<&Stroke> = members.iter().map(|i| strokes[*i]).collect();
            self.all.extend(thing(DrawnAs::Left(why), &members, &all));
        }
    }

    /// Blocks on layers of openings and fixtures that hold lines, but none of them on a layer with a
    /// role.
    fn of_foreign_blocks(&mut self, lines: &Linework) {
        let mut known: BTreeSet<usize> = BTreeSet::new();
        let mut foreign: BTreeMap<usize, Rect> = BTreeMap::new();
        let chain = |from: Option<usize>| {
            std::iter::successors(from, |g| lines.groups.get(*g).and_then(|g| g.parent))
        };
        let left = lines.left.iter().map(|l| &l.stroke);
        for s in lines.strokes.iter().chain(left) {
            if s.role.is_some() {
                known.extend(chain(s.group));
            } else if let (Some(b), Some(g)) = (bounds(&s.points), s.group) {
                let thing = |g: &usize| group_role(lines, *g).is_some_and(Role::is_thing);
                if let Some(outermost) = chain(Some(g)).filter(thing).last() {
                    foreign.entry(outermost).and_modify(|r| *r = r.union(b)).or_insert(b);
                }
            }
        }
        for (g, b) in foreign.into_iter().filter(|(g, _)| !known.contains(g)) {
            let (Some(group), Some(role)) = (lines.groups.get(g), group_role(lines, g)) else {
                continue;
            };
            self.all.push(Thing {
                role,
                layer: group.layer,
                kind: DrawnAs::Left(Unused::BlockOnOtherLayers { block: group.block.to_string() }),
                strokes: Vec::new(),
                // Its lines are entities of other layers.
                entities: 0,
                frame: Some(b),
                origin: group.origin.clone(),
            });
        }
    }
}

fn group_role(lines: &Linework, group: usize) -> Option<Role> {
    lines.groups.get(group).and_then(|g| lines.layers.get(g.layer)).and_then(|l| l.role)
}

/// A thing of some strokes.
fn thing(kind: DrawnAs, members: &[usize], strokes: &[&Stroke]) -> Option<Thing> {
    let first = strokes.first()?;
    let boxes = strokes.iter().filter_map(|s| bounds(&s.points));
    Some(Thing {
        role: first.role?,
        layer: first.layer,
        kind,
        strokes: members.to_vec(),
        entities: strokes.iter().map(|s| s.entities).sum(),
        frame: boxes.reduce(|a, b| a.union(b)),
        origin: first.origin.clone(),
    })
}

/// Open strokes sorted into those whose ends come near one another.
pub(super) fn together(strokes: &[&Stroke], set: &[usize]) -> Vec<Vec<usize>> {
    let cell = |p: Point| ((p.x / NEAR).floor() as i64, (p.y / NEAR).floor() as i64);
    let mut cells: BTreeMap<(i64, i64), usize> = BTreeMap::new();
    let mut root: Vec<usize> = (0..set.len()).collect();
    fn find(root: &mut [usize], mut i: usize) -> usize {
        while root[i] != i {
            root[i] = root[root[i]];
            i = root[i];
        }
        i
    }
    for (n, i) in set.iter().enumerate() {
        let points = &strokes[*i].points;
        for p in points.first().into_iter().chain(points.last()) {
            let (x, y) = cell(*p);
            for (dx, dy) in (-1..=1).flat_map(|dx| (-1..=1).map(move |dy| (dx, dy))) {
                if let Some(other) = cells.get(&(x.saturating_add(dx), y.saturating_add(dy))) {
                    let (a, b) = (find(&mut root, n), find(&mut root, *other));
                    root[a.max(b)] = a.min(b);
                }
            }
            cells.entry((x, y)).or_insert(n);
        }
    }
    let mut out: BTreeMap<usize, Vec<usize>> = BTreeMap::new();
    for (n, stroke) in set.iter().enumerate() {
        out.entry(find(&mut root, n)).or_default().push(*stroke);
    }
    out.into_values().collect()
}

/// Lines of an open thing that go round, and how far apart their ends are at most: `None` where they
/// do not.
pub(super) fn open_loop(strokes: &[&Stroke]) -> Option<(usize, f64)> {
    const MOST: usize = 64;
    const WIDEST: f64 = 12.0;
    let sides: usize = strokes.iter().map(|s| s.points.len().saturating_sub(1)).sum();
    if sides < 3 || strokes.len() > MOST {
        return None;
    }
    let ends: Vec<(usize, Point)> = strokes
        .iter()
        .enumerate()
        .flat_map(|(i, s)| {
            s.points.first().into_iter().chain(s.points.last()).map(move |p| (i, *p))
        })
        .collect();
    let nearest = |(n, (i, p)): (usize, &(usize, Point))| {
        let own = strokes[*i].points.len() > 3;
        let others = ends.iter().enumerate().filter(|(m, (j, _))| *m != n && (j != i || own));
        others.map(|(_, (_, q))| q.distance(*p)).fold(f64::INFINITY, f64::min)
    };
    let gap = ends.iter().enumerate().map(nearest).fold(0.0, f64::max);
    (gap <= WIDEST).then_some((strokes.iter().map(|s| s.entities).sum(), gap))
}
