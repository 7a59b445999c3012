//! Offcuts of boards that wait, kept to what may: of the boards that several walls share the fullest stay, what
//! is left is packed wall by wall.

use std::collections::{BTreeMap, BTreeSet};

use crate::model::seam::{Cut, SeamPlan, SeamProblem};
use crate::packing;

/// Most orders of walls that are tried.
const TRIED: usize = 16;

/// A piece: its length, and the turn of its wall.
#[derive(Clone, Copy)]
struct Piece {
    length: f64,
    turn: usize,
}

/// Packs a plan so that no more offcuts wait than may, in the order of walls in which that takes fewest boards.
pub(super) fn keep(plan: &mut SeamPlan, problem: &SeamProblem) {
    let runs = || problem.elevations.iter().flat_map(|e| &e.courses).flat_map(|c| &c.runs);
    let walls: BTreeMap<&str, usize> = runs().map(|r| (r.id.as_str(), r.wall)).collect();
    let all: BTreeSet<usize> = walls.values().copied().collect();
    let whole = |order: &[usize]| {
        let named = order.iter().copied().filter(|w| all.contains(w));
        let rest = all.iter().copied().filter(|w| !order.contains(w));
        named.chain(rest).collect::<Vec<usize>>()
    };
    let mut orders: Vec<Vec<usize>> =
        problem.waiting.orders.iter().take(TRIED).map(|o| whole(o)).collect();
    if orders.is_empty() {
        orders.push(whole(&[]));
    }
    let free = problem.waiting.is_free() || all.len() < 2;
    if free {
        plan.order = orders.swap_remove(0);
        return;
    }
    let mut best: Option<(Vec<Vec<usize>>, Vec<usize>)> = None;
    for order in orders {
        let turns: BTreeMap<usize, usize> =
            order.iter().enumerate().map(|(turn, wall)| (*wall, turn)).collect();
        let turn = |id: &str| walls.get(id).and_then(|w| turns.get(w)).copied().unwrap_or(0);
        let of_run = |r: &crate::model::seam::RunPlan| {
            let turn = turn(&r.id);
            r.pieces.iter().map(|c| Piece { length: c.end - c.start, turn }).collect::<Vec<_>>()
        };
        let pieces: Vec<Piece> = plan.runs.iter().flat_map(of_run).collect();
        let boards = packed(plan, &pieces, problem);
        if best.as_ref().is_none_or(|b| boards.len() < b.0.len()) {
            best = Some((boards, order));
        }
    }
    let Some((boards, order)) = best else { return };
    plan.order = order;
    plan.panels = boards.len();
    let mut cuts: Vec<&mut Cut> = plan.runs.iter_mut().flat_map(|r| &mut r.pieces).collect();
    for (panel, on) in boards.iter().enumerate() {
        let mut at = 0.0;
        for i in on {
            let length = cuts[*i].end - cuts[*i].start;
            *cuts[*i] = Cut { panel, start: at, end: at + length };
            at += length + problem.rules.kerf;
        }
    }
}

/// Boards as lists of pieces, each in turn: what is left of a board is then one length.
fn packed(plan: &SeamPlan, pieces: &[Piece], problem: &SeamProblem) -> Vec<Vec<usize>> {
    let (rules, waiting) = (&problem.rules, &problem.waiting);
    let mut on: BTreeMap<usize, Vec<usize>> = BTreeMap::new();
    for (i, cut) in plan.runs.iter().flat_map(|r| &r.pieces).enumerate() {
        on.entry(cut.panel).or_default().push(i);
    }
    let last = pieces.iter().map(|p| p.turn).max().unwrap_or(0);
    let span = |of: &[usize]| {
        let turns = of.iter().map(|i| pieces[*i].turn);
        turns.fold((usize::MAX, 0), |(a, b), t| (a.min(t), b.max(t)))
    };
    let filled = |of: &[usize]| of.iter().map(|i| pieces[*i].length).sum::<f64>();
    let mut shared: Vec<Vec<usize>> =
        on.into_values().filter(|of| span(of).0 < span(of).1).collect();
    shared.sort_by(|a, b| filled(b).total_cmp(&filled(a)).then_with(|| a.cmp(b)));
    let mut counts = vec![0; last + 1];
    let mut kept: Vec<Vec<usize>> = Vec::new();
    for mut of in shared {
        let (first, last) = span(&of);
        let near = last - first <= waiting.reach.walls();
        let room = waiting.most.is_none_or(|most| counts[first..last].iter().all(|n| *n < most));
        if near && room {
            counts[first..last].iter_mut().for_each(|n| *n += 1);
            of.sort_by_key(|i| (pieces[*i].turn, *i));
            kept.push(of);
        }
    }
    let stays: BTreeSet<usize> = kept.iter().flatten().copied().collect();
    let by_wall = |turn: usize, without: &BTreeSet<usize>| {
        let mine = (0..pieces.len()).filter(|i| pieces[*i].turn == turn && !without.contains(i));
        let mine: Vec<usize> = mine.collect();
        let lengths: Vec<f64> = mine.iter().map(|i| pieces[*i].length).collect();
        let boards = packing::least(&lengths, rules.stock(), rules.kerf).into_iter();
        boards.map(|b| b.into_iter().map(|i| mine[i]).collect()).collect::<Vec<Vec<usize>>>()
    };
    let alone: Vec<Vec<usize>> = (0..=last).flat_map(|t| by_wall(t, &BTreeSet::new())).collect();
    kept.extend((0..=last).flat_map(|t| by_wall(t, &stays)));
    if kept.len() < alone.len() { kept } else { alone }
}
