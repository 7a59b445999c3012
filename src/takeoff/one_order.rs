//! One order for a house with zones of other siding: what two sets share is summed before it is rounded up
//! to whole boxes, rolls, cartons and spare lengths.

use super::lines::whole;
use super::trims::pocketed;
use crate::job::Job;
use crate::layout::laid::LaidHouse;
use crate::model::basis::Basis;
use crate::model::item::{CountUnit, Item};
use crate::model::quantity::TakeoffLine;
use crate::model::takeoff::{OrderLine, SetShare, Takeoff};
use crate::model::trim::TrimStock;

/// A set with what it takes.
pub type Set<'a> = (&'a LaidHouse, &'a Takeoff);

/// A set with the name of its house; empty where one house alone is bought for.
pub type NamedSet<'a> = (&'a str, Set<'a>);

/// What to buy for all sets, in the order of their takeoffs; empty for a house of one set.
pub fn one_order(sets: &[Set]) -> Vec<OrderLine> {
    if sets.len() < 2 {
        return Vec::new();
    }
    let of_house: Vec<NamedSet> = sets.iter().map(|s| ("", *s)).collect();
    purchase(&of_house)
}

/// What to buy for any number of sets at once, of one house or of many: what is cut for a set is cut of its own
/// stock, offcuts are kept set by set.
pub fn purchase(sets: &[NamedSet]) -> Vec<OrderLine> {
    let mut groups: Vec<Group> = Vec::new();
    for (name, set) in sets {
        for line in set.1.lines.iter().filter(|l| set.1.buys(l)) {
            let same = |g: &&mut Group| {
                let first = g.taken.first();
                first.is_some_and(|(other, first)| is_same((*other, first), (*set, line)))
            };
            let at = match groups.iter_mut().find(same) {
                Some(group) => group,
                None => {
                    groups.push(Group::default());
                    let Some(last) = groups.last_mut() else { continue };
                    last
                }
            };
            at.taken.push((*set, line));
            at.shares.push(share(name, *set, line));
        }
    }
    // Lines of a kind stand together, in the order in which the sets have them.
    groups.sort_by_key(|g| g.taken.first().map(|(_, l)| l.group));
    let all: Vec<OrderLine> = groups.into_iter().filter_map(line).collect();
    all.into_iter().filter(|l| l.order > 0.0).collect()
}

/// Lines of one thing to buy, with what each set takes of it.
#[derive(Default)]
struct Group<'a> {
    taken: Vec<(Set<'a>, &'a TakeoffLine)>,
    shares: Vec<SetShare>,
}

fn share(name: &str, (laid, _): Set, line: &TakeoffLine) -> SetShare {
    SetShare {
        house: (!name.is_empty()).then(|| name.to_owned()),
        zone: laid.zone.clone(),
        net: line.net,
        order: line.order,
    }
}

/// Whether two lines are of one thing to buy.
fn is_same((a, one): (Set, &TakeoffLine), (b, other): (Set, &TakeoffLine)) -> bool {
    let alike = one.item == other.item
        && one.unit == other.unit
        && one.color == other.color
        && one.stock == other.stock;
    let item = one.item.spared().unwrap_or_else(|| one.item.clone());
    alike && fits(&item, &a.0.job, &b.0.job)
}

/// Whether one job's own sort of a thing serves the other: siding must be the same in all, a starter for
/// the same kind, posts and channels with the same pocket (`TrimFact::StarterLocksFirstCourse`).
fn fits(item: &Item, one: &Job, other: &Job) -> bool {
    let (a, b) = (&one.product, &other.product);
    match item {
        Item::Panels { .. } | Item::Cartons { .. } | Item::Squares => {
            a == b && one.stocks == other.stocks
        }
        Item::Trim { stock: TrimStock::Starter, .. } => {
            (a.kind, a.thickness) == (b.kind, b.thickness)
        }
        Item::Trim { stock, .. } if pocketed(*stock) => one.pocket() == other.pocket(),
        Item::SidingNails { .. } => {
            let material = |j: &Job| j.siding().fastening.material;
            material(one) == material(other)
        }
        _ => true,
    }
}

/// The lines of one thing as one.
fn line(Group { taken: group, shares }: Group) -> Option<OrderLine> {
    let (_, first) = group.first()?;
    let net: f64 = group.iter().map(|(_, l)| l.net).sum();
    let each: f64 = group.iter().map(|(_, l)| l.order).sum();
    let order = match (&first.item, &first.basis) {
        _ if group.len() == 1 => each,
        (Item::Cartons { .. }, Basis::Cartons { in_carton, .. }) => cartons(&group, *in_carton),
        // By the percentage of all together.
        (_, Basis::Spare { percent, .. }) => {
            let of: f64 = group.iter().map(|(_, l)| of_count(l)).sum();
            whole(of * percent / 100.0)
        }
        // Strips are cut from rolls by a plan of each set: what is left of a roll may be too short for the next.
        (
            Item::OpeningFlashing { .. } | Item::CornerFlashing { .. } | Item::RunFlashing { .. },
            _,
        ) => each,
        _ if is_filled(first.unit) => whole(net),
        _ => each,
    };
    Some(OrderLine {
        id: first.id.clone(),
        item: first.item.clone(),
        unit: first.unit,
        color: first.color.clone(),
        stock: first.stock,
        net,
        order,
        sets: shares,
    })
}

/// Whether what is left over in one set's last unit serves another set.
fn is_filled(unit: CountUnit) -> bool {
    use CountUnit::{Box, Cartridge, Pound, Roll};
    matches!(unit, Box | Cartridge | Pound | Roll)
}

fn of_count(line: &TakeoffLine) -> f64 {
    match line.basis {
        Basis::Spare { of_count, .. } => of_count as f64,
        _ => 0.0,
    }
}

/// Whole cartons of the same siding for several sets, spare panels by the percentage of all.
fn cartons(group: &[(Set, &TakeoffLine)], in_carton: f64) -> f64 {
    let panels: f64 = group
        .iter()
        .filter_map(|((_, takeoff), l)| {
            let Basis::Cartons { piece, .. } = l.basis else { return None };
            let panels = Item::Panels { piece, stock: l.item.mixed_stock() };
            takeoff.line(&panels.id()).map(|p| p.order)
        })
        .sum();
    let percent = group.first().map_or(0.0, |((house, _), _)| house.job.takeoff.spare);
    whole((panels + whole(panels * percent / 100.0)) / in_carton.max(1.0))
}
