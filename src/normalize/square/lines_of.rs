//! Classes that lie within noise of one another are one line, and each line gets its place: heights
//! over the whole house, since eaves and heads go round it, the rest view by view.

use std::collections::BTreeMap;

use super::classes::{Axis, Class};
use super::net::{Net, step_of};
use super::rounded::{Unsure, steps};
use crate::model::linework::Role;

/// How often views are set to one another's heights.
const ROUNDS: usize = 4;
/// Views that are not set to one another yet may differ by this many times the noise of one line.
const FIRST: f64 = 1.5;
/// More lines than this within noise of one another are parted anywhere.
const LONG_CHAIN: usize = 500;

/// A class as one line among others.
#[derive(Clone, Copy, Debug)]
struct One {
    class: usize,
    site: usize,
    value: f64,
    weight: f64,
    /// Of a part that is drawn clean: it stays where it is, and others are set to it.
    fixed: bool,
    /// Drawn by itself rather than in a block, whose lines are off all alike.
    alone: bool,
}

/// A line that is drawn clean counts as much as this many that are not.
const CLEAN: f64 = 100.0;
/// Standard deviation of vertices that are off by no more than a length, as its share: between that of
/// a bell curve and that of an even spread.
const DEVIATION: f64 = 0.735;
/// No line's place is surer than this, inches: half a step of the grid.
const SUREST: f64 = 1.0 / 2048.0;

/// The value each class of a rough part gets; none where it keeps what it has.
pub(super) fn values(net: &Net, classes: &[Class]) -> Vec<Option<f64>> {
    let mut out = vec![None; classes.len()];
    let ones: Vec<One> = classes.iter().enumerate().map(|c| one(net, c)).collect();
    for (site, noise) in net.rough.iter().enumerate() {
        let Some(noise) = *noise else { continue };
        let of = |c: &Class| c.axis == Axis::X && c.site == site;
        let (governed, free) = split(classes, &ones, of);
        let placed = placed(&governed, &free, net.step(site), noise);
        placed.into_iter().for_each(|(c, v)| out[c] = Some(v));
    }
    let levels = levels(net, classes);
    let mut groups: BTreeMap<(bool, usize), Vec<usize>> = BTreeMap::new();
    for site in 0..net.rough.len() {
        // Without any level line heights are compared as drawn; beside views with one, not at all.
        let together = levels.is_empty() || levels.contains_key(&site);
        let key = if together { (true, 0) } else { (false, site) };
        groups.entry(key).or_default().push(site);
    }
    for sites in groups.values() {
        let noise = sites.iter().filter_map(|s| net.rough[*s]).fold(0.0, f64::max);
        if noise > 0.0 {
            let of = |c: &Class| c.axis == Axis::Y && sites.contains(&c.site);
            let lines = split(classes, &ones, of);
            heights(lines, classes, &levels, noise, &mut out);
        }
    }
    out
}

/// A class as a line.
fn one(net: &Net, (class, c): (usize, &Class)) -> One {
    let mut values: Vec<f64> = c.members.iter().map(|i| c.axis.of(net.at[*i])).collect();
    values.sort_by(f64::total_cmp);
    // What moved as one, a block, tells once.
    values.dedup_by(|b, a| *b - *a <= 1e-6);
    let (count, fixed) = (values.len() as f64, net.rough[c.site].is_none());
    One {
        class,
        site: c.site,
        value: values.iter().sum::<f64>() / count,
        weight: if fixed { CLEAN } else { count },
        fixed,
        alone: c.members.iter().any(|i| !net.chains[net.chain_of[*i]].in_block),
    }
}

/// Governed and free lines among the classes.
fn split(classes: &[Class], ones: &[One], of: impl Fn(&Class) -> bool) -> (Vec<One>, Vec<One>) {
    let own: Vec<One> = ones.iter().filter(|l| of(&classes[l.class])).copied().collect();
    // Grade may lie a hair over a wall's foot and is no line of it.
    own.into_iter().partition(|l| classes[l.class].governed && !classes[l.class].of_grade)
}

/// Lines, sorted, that lie within `step` of one another, parted where the gaps between them are widest.
fn clusters(mut lines: Vec<One>, step: f64) -> Vec<Vec<One>> {
    lines.sort_by(|a, b| a.value.total_cmp(&b.value).then(a.class.cmp(&b.class)));
    let mut out: Vec<Vec<One>> = Vec::new();
    for chain in lines.chunk_by(|a, b| b.value - a.value <= step) {
        let mut left = vec![chain];
        while let Some(c) = left.pop() {
            let wide = c[c.len() - 1].value - c[0].value > step;
            if !wide {
                out.push(c.to_vec());
                continue;
            }
            let gap = |i: &usize| c[*i].value - c[i - 1].value;
            // Of a long chain the middle: no drawing has it.
            let at = if c.len() > LONG_CHAIN {
                c.len() / 2
            } else {
                (1..c.len()).max_by(|i, j| gap(i).total_cmp(&gap(j))).unwrap_or(1)
            };
            left.extend([&c[at..], &c[..at]]);
        }
    }
    out
}

/// Where a cluster lies, with its weight.
fn middle(c: &[One]) -> (f64, f64) {
    let fixed = c.iter().any(|l| l.fixed);
    let own = || c.iter().filter(|l| l.fixed == fixed);
    let weight: f64 = own().map(|l| l.weight).sum();
    (own().map(|l| l.value * l.weight).sum::<f64>() / weight, weight)
}

/// Each line's place: that of its cluster, rounded where most stand on round figures.
fn placed(governed: &[One], free: &[One], step: f64, noise: f64) -> Vec<(usize, f64)> {
    let unsure = |(value, weight): (f64, f64)| {
        let by = (DEVIATION * noise / weight.sqrt()).max(SUREST);
        Unsure { value, by }
    };
    let found = clusters(governed.to_vec(), step);
    let middles: Vec<Unsure> = found.iter().map(|c| unsure(middle(c))).collect();
    let alone = |c: &[One]| c.iter().any(|l| l.alone);
    let tell = found.iter().zip(&middles).filter(|(c, _)| alone(c)).map(|(_, m)| *m);
    let round = steps(&tell.collect::<Vec<_>>());
    let to = |l: Unsure| round.map_or(l.value, |s| s.round(l));
    let mut out: Vec<(usize, f64)> = Vec::new();
    for (c, m) in found.iter().zip(&middles) {
        let fixed = c.iter().any(|l| l.fixed);
        let v = if fixed { m.value } else { to(*m) };
        out.extend(c.iter().filter(|l| !l.fixed).map(|l| (l.class, v)));
    }
    // A corner that no side ties stands on a line beside it, or where its own figure rounds to.
    for l in free.iter().filter(|l| !l.fixed) {
        let i = middles.partition_point(|m| m.value < l.value);
        let beside = [i.checked_sub(1), Some(i)].into_iter().flatten();
        let nearest = beside
            .filter_map(|i| middles.get(i))
            .min_by(|a, b| (a.value - l.value).abs().total_cmp(&(b.value - l.value).abs()));
        let on = nearest.filter(|m| (m.value - l.value).abs() <= step / 2.0);
        out.push((l.class, to(on.copied().unwrap_or_else(|| unsure((l.value, l.weight))))));
    }
    out
}

/// The height of each part's level line: of the longest.
fn levels(net: &Net, classes: &[Class]) -> BTreeMap<usize, f64> {
    let mut out: BTreeMap<usize, (f64, f64)> = BTreeMap::new();
    for c in classes.iter().filter(|c| c.axis == Axis::Y && c.governed) {
        let drawn: Vec<usize> = c
            .members
            .iter()
            .copied()
            .filter(|i| net.chains[net.chain_of[*i]].role == Some(Role::Level))
            .collect();
        let Some(first) = drawn.first() else { continue };
        let chain = net.chains[net.chain_of[*first]].at.clone();
        let xs = chain.map(|i| net.at[i].x);
        let (low, high) = xs.fold((f64::MAX, f64::MIN), |(l, h), x| (l.min(x), h.max(x)));
        let mean = drawn.iter().map(|i| net.at[*i].y).sum::<f64>() / drawn.len() as f64;
        let longest = out.entry(c.site).or_insert((f64::MIN, mean));
        if high - low > longest.0 {
            *longest = (high - low, mean);
        }
    }
    out.into_iter().map(|(site, (_, y))| (site, y)).collect()
}

/// Heights of views that are compared with one another, over their level lines.
fn heights(
    (mut governed, mut free): (Vec<One>, Vec<One>),
    classes: &[Class],
    levels: &BTreeMap<usize, f64>,
    noise: f64,
    out: &mut [Option<f64>],
) {
    let step = step_of(noise);
    let mut shift: BTreeMap<usize, f64> = BTreeMap::new();
    for l in governed.iter_mut().chain(&mut free) {
        let level = levels.get(&l.site).copied().unwrap_or(0.0);
        l.value -= *shift.entry(l.site).or_insert(level);
    }
    // A view whose level line is off is off as a whole: it is set to what the others say.
    for round in 0..ROUNDS {
        let reach = if round == 0 { FIRST * step } else { step };
        let mut off: BTreeMap<usize, (f64, f64)> = BTreeMap::new();
        for c in clusters(governed.clone(), reach).iter().filter(|c| c.len() > 1) {
            let (v, _) = middle(c);
            for l in c.iter().filter(|l| !l.fixed) {
                let sum = off.entry(l.site).or_default();
                *sum = (sum.0 + (v - l.value) * l.weight, sum.1 + l.weight);
            }
        }
        for l in governed.iter_mut().chain(&mut free) {
            if let Some((by, weight)) = off.get(&l.site) {
                l.value += by / weight;
            }
        }
        for (site, (by, weight)) in off {
            shift.entry(site).and_modify(|s| *s -= by / weight);
        }
    }
    for (class, v) in placed(&governed, &free, step, noise) {
        out[class] = Some(v + shift.get(&classes[class].site).copied().unwrap_or(0.0));
    }
}
