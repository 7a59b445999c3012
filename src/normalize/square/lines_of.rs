//! Classes that lie within noise of one another are one line, and each line gets its place: heights
//! over the whole house, since eaves and heads go round it, the rest view by view.

use std::collections::BTreeMap;

use super::classes::{Axis, Class};
use super::net::Net;
use super::noise::{HAIR, STEP};
use super::rounded::{Steps, steps};
use crate::model::linework::Role;

/// How often views are set to one another's heights.
const ROUNDS: usize = 4;

/// A class as one line among others.
#[derive(Clone, Copy, Debug)]
struct One {
    class: usize,
    site: usize,
    value: f64,
    weight: f64,
}

/// The value each class of a rough part gets; none where it keeps what it has.
pub(super) fn values(net: &Net, classes: &[Class]) -> Vec<Option<f64>> {
    let mut out = vec![None; classes.len()];
    let rough = |c: &Class| net.rough[c.site].is_some();
    for (site, noise) in net.rough.iter().enumerate() {
        let Some(noise) = *noise else { continue };
        let of = |c: &&Class| c.axis == Axis::X && c.site == site;
        let (governed, free) = split(net, classes, |c| of(&c));
        let placed = placed(&governed, &free, net.step(site), noise);
        placed.into_iter().for_each(|(c, v)| out[c] = Some(v));
    }
    let levels = levels(net, classes);
    let level = |site: usize| levels.get(&site).copied();
    let mut groups: BTreeMap<(bool, usize), Vec<usize>> = BTreeMap::new();
    let any = (0..net.rough.len()).any(|s| net.rough[s].is_some() && level(s).is_some());
    for site in (0..net.rough.len()).filter(|s| net.rough[*s].is_some()) {
        // Without any level line heights are compared as drawn; beside views with one, not at all.
        let key = if level(site).is_some() || !any { (true, 0) } else { (false, site) };
        groups.entry(key).or_default().push(site);
    }
    for sites in groups.values() {
        let of = |c: &Class| c.axis == Axis::Y && rough(c) && sites.contains(&c.site);
        heights(net, classes, of, &level, &mut out);
    }
    out
}

/// Governed and free classes as lines.
fn split(net: &Net, classes: &[Class], of: impl Fn(&Class) -> bool) -> (Vec<One>, Vec<One>) {
    let all = classes.iter().enumerate().filter(|(_, c)| of(c));
    let one = |(class, c): (usize, &Class)| {
        let mut values: Vec<f64> = c.members.iter().map(|i| c.axis.of(net.at[*i])).collect();
        values.sort_by(f64::total_cmp);
        // What moved as one, a block, tells once.
        values.dedup_by(|b, a| *b - *a <= 1e-6);
        let weight = values.len() as f64;
        One { class, site: c.site, value: values.iter().sum::<f64>() / weight, weight }
    };
    let (governed, free): (Vec<_>, Vec<_>) = all.partition(|(_, c)| c.governed);
    (governed.into_iter().map(one).collect(), free.into_iter().map(one).collect())
}

/// Lines, sorted, that lie within `step` of the first of them.
fn clusters(mut lines: Vec<One>, step: f64) -> Vec<Vec<One>> {
    lines.sort_by(|a, b| a.value.total_cmp(&b.value).then(a.class.cmp(&b.class)));
    let mut out: Vec<Vec<One>> = Vec::new();
    for l in lines {
        match out.last_mut() {
            Some(c) if l.value - c[0].value <= step => c.push(l),
            _ => out.push(vec![l]),
        }
    }
    out
}

fn middle(c: &[One]) -> (f64, f64) {
    let weight: f64 = c.iter().map(|l| l.weight).sum();
    (c.iter().map(|l| l.value * l.weight).sum::<f64>() / weight, weight)
}

/// Each line's place: that of its cluster, rounded where most stand on round figures.
fn placed(governed: &[One], free: &[One], step: f64, noise: f64) -> Vec<(usize, f64)> {
    let found = clusters(governed.to_vec(), step);
    let middles: Vec<(f64, f64)> = found.iter().map(|c| middle(c)).collect();
    let round = steps(&middles, noise);
    let to = |v: f64| round.as_ref().map_or(v, |s: &Steps| s.round(v));
    let mut out: Vec<(usize, f64)> = Vec::new();
    for (c, (v, _)) in found.iter().zip(&middles) {
        out.extend(c.iter().map(|l| (l.class, to(*v))));
    }
    // A corner that no side ties stands on a line beside it, or where its own figure rounds to.
    for l in free {
        let i = middles.partition_point(|(v, _)| *v < l.value);
        let beside = [i.checked_sub(1), Some(i)].into_iter().flatten();
        let nearest = beside
            .filter_map(|i| middles.get(i))
            .min_by(|a, b| (a.0 - l.value).abs().total_cmp(&(b.0 - l.value).abs()));
        let on = nearest.filter(|(v, _)| (v - l.value).abs() <= step / 2.0);
        out.push((l.class, to(on.map_or(l.value, |(v, _)| *v))));
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
    net: &Net,
    classes: &[Class],
    of: impl Fn(&Class) -> bool,
    level: &dyn Fn(usize) -> Option<f64>,
    out: &mut [Option<f64>],
) {
    let (mut governed, mut free) = split(net, classes, of);
    let noise = governed.iter().filter_map(|l| net.rough[l.site]).fold(0.0, f64::max);
    let step = (3.0 * noise).clamp(HAIR, STEP + HAIR);
    let mut shift: BTreeMap<usize, f64> = BTreeMap::new();
    for l in governed.iter_mut().chain(&mut free) {
        let by = *shift.entry(l.site).or_insert_with(|| level(l.site).unwrap_or(0.0));
        l.value -= by;
    }
    // A view whose level line is off is off as a whole: it is set to what the others say.
    for _ in 0..ROUNDS {
        let mut off: BTreeMap<usize, (f64, f64)> = BTreeMap::new();
        for c in clusters(governed.clone(), step).iter().filter(|c| c.len() > 1) {
            let (v, _) = middle(c);
            for l in c {
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
