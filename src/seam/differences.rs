//! The exact check of a wall as a system of differences: how far a part's first seam stands from that of
//! a part near it must lie in one of a few intervals. Which one is chosen part by part; what a choice
//! leaves of the others is worked out at once. Where every choice is made the least places that are left
//! are a layout; where none is left there is none, panels of whatever lengths.

use std::collections::VecDeque;

use super::part::Digest;
use super::rules::Rules;
use super::stagger::{first_seam, standing};
use super::wall::{Stand, groups};

/// What is known of some parts.
pub(super) enum Verdict {
    /// A layout that keeps every rule.
    Laid(Vec<Stand>),
    /// There is none.
    None,
    /// Neither was found within the work allowed.
    Unknown,
}

/// An interval, both ends in it.
type Span = (i64, i64);

/// A part: what of its ways is left, by the places of its first seam.
#[derive(Clone)]
struct Place {
    low: i64,
    high: i64,
    options: Vec<(usize, Span)>,
}

/// Two parts near one another, the first less the second.
struct Pair {
    parts: [usize; 2],
}

struct Wall<'a> {
    digest: &'a Digest,
    rules: &'a Rules,
    /// Parts by their number here.
    parts: Vec<usize>,
    pairs: Vec<Pair>,
    /// Pairs of each part.
    of: Vec<Vec<usize>>,
    work: usize,
}

/// What is left of all places, and the interval chosen for each pair.
#[derive(Clone)]
struct State {
    places: Vec<Place>,
    chosen: Vec<Option<Span>>,
}

/// What a choice is made for.
enum Open {
    Way(usize),
    Pair(usize, Vec<Span>),
}

/// Lays the seamed `parts` under `rules`, which may be less strict than the digest's.
pub(super) fn solve(digest: &Digest, rules: &Rules, parts: &[usize], work: usize) -> Verdict {
    let (mut laid, mut unknown) = (Vec::new(), false);
    for group in groups(digest, rules, parts) {
        match of_group(digest, rules, group, work) {
            Verdict::Laid(stands) => laid.extend(stands),
            Verdict::None => return Verdict::None,
            Verdict::Unknown => unknown = true,
        }
    }
    if unknown { Verdict::Unknown } else { Verdict::Laid(laid) }
}

fn of_group(digest: &Digest, rules: &Rules, parts: Vec<usize>, work: usize) -> Verdict {
    let mut places = Vec::new();
    for p in &parts {
        let part = &digest.parts[*p];
        let zero = first_seam(part, 0, rules);
        let ways = part.ways[..part.lawful].iter().enumerate();
        let options: Vec<(usize, Span)> = ways
            .flat_map(|(i, way)| standing(part, *way, rules).into_iter().map(move |s| (i, s)))
            .map(|(i, s)| (i, (s.0 + zero, s.1 + zero)))
            .collect();
        let Some(hull) = hull(&options) else { return Verdict::None };
        places.push(Place { low: hull.0, high: hull.1, options });
    }
    let mut pairs = Vec::new();
    let mut of = vec![Vec::new(); parts.len()];
    for i in 0..parts.len() {
        for j in i + 1..parts.len() {
            let (p, q) = (&digest.parts[parts[i]], &digest.parts[parts[j]]);
            if p.near.contains(&parts[j]) && (p.level - q.level).abs() <= rules.clear {
                of[i].push(pairs.len());
                of[j].push(pairs.len());
                pairs.push(Pair { parts: [i, j] });
            }
        }
    }
    let state = State { places, chosen: vec![None; pairs.len()] };
    let mut wall = Wall { digest, rules, parts, pairs, of, work };
    let all = (0..state.places.len()).collect();
    wall.search(state, all)
}

fn hull(options: &[(usize, Span)]) -> Option<Span> {
    let low = options.iter().map(|o| o.1.0).min()?;
    Some((low, options.iter().map(|o| o.1.1).max()?))
}

impl Wall<'_> {
    /// Depth first, the narrowest choice first.
    fn search(&mut self, first: State, all: VecDeque<usize>) -> Verdict {
        let mut open: Vec<(State, VecDeque<usize>)> = vec![(first, all)];
        while let Some((mut state, changed)) = open.pop() {
            match self.settle(&mut state, changed) {
                None => return Verdict::Unknown,
                Some(false) => continue,
                Some(true) => {}
            }
            match self.narrowest(&state) {
                None => return Verdict::Laid(self.laid(&state)),
                Some(Open::Way(i)) => {
                    let options = state.places[i].options.clone();
                    for (way, span) in options.into_iter().rev() {
                        let mut next = state.clone();
                        next.places[i].options = vec![(way, span)];
                        open.push((next, VecDeque::from([i])));
                    }
                }
                Some(Open::Pair(k, mut spans)) => {
                    // The widest is tried first.
                    spans.sort_by_key(|s| s.1 - s.0);
                    for span in spans {
                        let mut next = state.clone();
                        next.chosen[k] = Some(span);
                        open.push((next, self.pairs[k].parts.into()));
                    }
                }
            }
        }
        Verdict::None
    }

    /// Works out what the choices leave of all places; whether anything does, `None` where that takes
    /// more work than allowed.
    fn settle(&mut self, state: &mut State, mut changed: VecDeque<usize>) -> Option<bool> {
        let mut waits = vec![false; state.places.len()];
        changed.iter().for_each(|i| waits[*i] = true);
        while let Some(i) = changed.pop_front() {
            waits[i] = false;
            if !self.of_ways(&mut state.places[i]) {
                return Some(false);
            }
            for n in 0..self.of[i].len() {
                self.work = self.work.checked_sub(1)?;
                let k = self.of[i][n];
                if state.chosen[k].is_none() {
                    match self.spans(state, k)?.as_deref() {
                        Some([]) => return Some(false),
                        Some([one]) => state.chosen[k] = Some(*one),
                        _ => continue,
                    }
                }
                let Some((low, high)) = state.chosen[k] else { continue };
                let [a, b] = self.pairs[k].parts;
                let (p, q) = (&state.places[a], &state.places[b]);
                let p_left = (p.low.max(q.low + low), p.high.min(q.high + high));
                let q_left = (q.low.max(p.low - high), q.high.min(p.high - low));
                for (place, left) in [(a, p_left), (b, q_left)] {
                    let p = &mut state.places[place];
                    if left.0 > left.1 {
                        return Some(false);
                    }
                    if left != (p.low, p.high) {
                        (p.low, p.high) = left;
                        if !waits[place] {
                            waits[place] = true;
                            changed.push_back(place);
                        }
                    }
                }
            }
        }
        Some(true)
    }

    /// Leaves out ways that lie beyond what is left of a place; whether any is in it.
    fn of_ways(&self, place: &mut Place) -> bool {
        let (low, high) = (place.low, place.high);
        place.options.retain(|(_, s)| s.0 <= high && s.1 >= low);
        let Some(hull) = hull(&place.options) else { return false };
        (place.low, place.high) = (low.max(hull.0), high.min(hull.1));
        place.low <= place.high
    }

    /// The intervals that a pair's difference may lie in; none while a way of its parts is open.
    fn spans(&mut self, state: &State, k: usize) -> Option<Option<Vec<Span>>> {
        let [i, j] = self.pairs[k].parts;
        let way = |i: usize| match state.places[i].options[..] {
            [(way, _)] => Some(self.digest.parts[self.parts[i]].ways[way]),
            _ => None,
        };
        let (Some(own), Some(other)) = (way(i), way(j)) else { return Some(None) };
        let (p, q) = (&state.places[i], &state.places[j]);
        let (low, high) = (p.low - q.high, p.high - q.low);
        let (by, to) = (own.pitch(self.rules), other.pitch(self.rules));
        let mut off: Vec<i64> = (0..own.k - 1)
            .flat_map(|m| (0..other.k - 1).map(move |n| n * to - m * by))
            .filter(|c| c + self.rules.stagger > low && c - self.rules.stagger < high)
            .collect();
        self.work = self.work.checked_sub(off.len())?;
        if self.rules.stagger == 0 {
            off.clear();
        }
        off.sort_unstable();
        off.dedup();
        let (mut out, mut at) = (Vec::new(), low);
        for center in off {
            let to = center - self.rules.stagger;
            if to >= at {
                out.push((at, to));
            }
            at = at.max(center + self.rules.stagger);
        }
        if at <= high {
            out.push((at, high));
        }
        Some(Some(out))
    }

    /// The choice that leaves the fewest.
    fn narrowest(&mut self, state: &State) -> Option<Open> {
        let ways = state.places.iter().enumerate().filter(|(_, p)| p.options.len() > 1);
        let way = ways.min_by_key(|(_, p)| p.options.len()).map(|(i, p)| (p.options.len(), i));
        let mut best: Option<(usize, Vec<Span>)> = None;
        for k in 0..self.pairs.len() {
            if state.chosen[k].is_some() {
                continue;
            }
            let Some(Some(spans)) = self.spans(state, k) else { continue };
            if best.as_ref().is_none_or(|(_, b)| spans.len() < b.len()) {
                best = Some((k, spans));
            }
            if best.as_ref().is_some_and(|(_, b)| b.len() <= 2) {
                break;
            }
        }
        match (way, best) {
            (Some((n, i)), Some((k, spans))) => {
                Some(if spans.len() <= n { Open::Pair(k, spans) } else { Open::Way(i) })
            }
            (Some((_, i)), None) => Some(Open::Way(i)),
            (None, Some((k, spans))) => Some(Open::Pair(k, spans)),
            (None, None) => None,
        }
    }

    fn laid(&self, state: &State) -> Vec<Stand> {
        let stands = self.parts.iter().zip(&state.places);
        stands
            .filter_map(|(part, place)| {
                let zero = first_seam(&self.digest.parts[*part], 0, self.rules);
                let (way, _) = place.options.first()?;
                Some(Stand { part: *part, way: *way, a: place.low - zero })
            })
            .collect()
    }
}
