//! Better looks at no more panels: parts with ill looks are slid, or taken up with what shares their panels and
//! laid again. A little worse is kept at first, less and less so; the best on the way is what is taken.

use std::collections::BTreeSet;

use super::budget::counted;
use super::conflicts::Pins;
use super::insert::Inserter;
use super::looks::{Ill, Looks, Viewer};
use super::part::Digest;
use super::placed::Placed;
use super::pool::Pool;
use super::random::Random;
use super::rules::UNIT;
use super::search::is_house;
use super::slide::{slide, wish};
use crate::model::seam::Effort;

/// Chance in comparisons while laying again: 0.05 panels.
const NOISE: i64 = UNIT / 20;
/// Worsening of looks kept at the start: three seams in line.
const HOT: i64 = 30;
/// Of so many rounds one lays parts again; the others slide.
const LAID_AGAIN: usize = 2;
/// Most parts taken up in a round.
const MOST_TAKEN: usize = 12;

fn rounds(digest: &Digest) -> u64 {
    let parts = counted(digest);
    match digest.rules.effort {
        Effort::Crew => 0,
        Effort::Brief => 20 * parts,
        Effort::Usual if !is_house(digest) => 30 * parts,
        Effort::Usual => 100 * parts,
        Effort::Long => 1200 * parts,
    }
}

/// Polishes a layout in place.
pub(super) fn polish(digest: &Digest, looks: &Looks, pool: &mut Pool, pins: Pins) {
    let random = Random::new(digest.rules.seed ^ 0x100f);
    let mut inserter = Inserter::new(digest, random, NOISE);
    inserter.pinned = pins;
    inserter.looks = Some(looks);
    let viewer = &mut Viewer::new(looks);
    let mut best = Best::of(pool, Ill::default());
    let mut now = best.sum;
    let rounds = rounds(digest);
    let again_after = (digest.parts.len() as u64 / 2).max(1);
    let mut ill: Vec<usize> = Vec::new();
    // Those of them with a seam in a notch or on a jamb line: every other round is one of theirs.
    let mut worst: Vec<usize> = Vec::new();
    for round in 0..rounds {
        if round % again_after == 0 {
            ill.clear();
            worst.clear();
            for p in 0..digest.parts.len() {
                let of = viewer.of(digest, &pool.placed, p);
                ill.extend((of > Ill::default()).then_some(p));
                worst.extend(of.hits.is_bad().then_some(p));
            }
            if ill.is_empty() {
                break;
            }
        }
        let among = if worst.is_empty() || round % 2 == 1 { &ill } else { &worst };
        let one = among[inserter.random.below(among.len())];
        let heat = HOT * (rounds - round) as i64 / rounds as i64;
        let worse = inserter.random.below(heat.max(1) as usize) as i64;
        let changed = if inserter.random.below(LAID_AGAIN) == 0 {
            let mut taken = with_mates(digest, pool, one, &mut inserter.random);
            // What is pinned stands before the others look for a place.
            taken.sort_by_key(|p| inserter.pinned[*p].is_none());
            again(digest, viewer, pool, &mut inserter, (&taken, worse))
        } else {
            let by = wish(digest, pool, one, &mut inserter.random);
            slide(digest, viewer, pool, (one, by), (&inserter.pinned, worse))
        };
        if let Some((before, after)) = changed {
            now = now + after - before;
            if (pool.bought(), now) < (best.panels, best.sum) {
                best = Best::of(pool, now);
            }
        }
    }
    *pool = Pool::of(digest, &best.placed, &best.kinds);
}

/// The best layout so far.
struct Best {
    placed: Vec<Option<Placed>>,
    kinds: Vec<usize>,
    panels: usize,
    /// What is ill about it, less what was about the first.
    sum: Ill,
}

impl Best {
    fn of(pool: &Pool, sum: Ill) -> Self {
        Best { placed: pool.placed.clone(), kinds: pool.kinds(), panels: pool.bought(), sum }
    }
}

/// A part, what shares its panels, and a neighbor.
fn with_mates(digest: &Digest, pool: &Pool, part: usize, random: &mut Random) -> Vec<usize> {
    let mut out = BTreeSet::from([part]);
    let near = &digest.parts[part].near;
    if !near.is_empty() && random.below(2) == 0 {
        out.insert(near[random.below(near.len())]);
    }
    let seeds: Vec<usize> = out.iter().copied().collect();
    for p in seeds {
        let panels = match pool.placed[p] {
            Some(Placed::One { panel }) => [panel, panel],
            Some(Placed::Seamed { first, last, .. }) => [first, last],
            None => continue,
        };
        for panel in panels {
            out.extend(pool.panels[panel].parts());
        }
    }
    // A panel with room more, so that there is some play.
    let open = pool.any.under(i64::MAX).and_then(|s| pool.any.all_on(s).next());
    if random.below(3) == 0 {
        out.extend(open.into_iter().flat_map(|p| pool.panels[p].parts()));
    }
    let mut out: Vec<usize> = out.into_iter().collect();
    // The part itself stays among those taken.
    out.sort_by_key(|p| *p != part);
    out.truncate(MOST_TAKEN);
    for i in (1..out.len()).rev() {
        out.swap(i, random.below(i + 1));
    }
    // Runs of one piece last: they fit in what is left.
    out.sort_by_key(|p| digest.parts[*p].ways.is_empty());
    out
}

/// Takes parts up and lays them again; puts them back if that took more panels, or looks more than `worse` worse.
/// What was ill before and after, if they stay.
fn again(
    digest: &Digest,
    viewer: &mut Viewer,
    pool: &mut Pool,
    inserter: &mut Inserter,
    (taken, worse): (&[usize], i64),
) -> Option<(Ill, Ill)> {
    let panels = pool.bought();
    let mut before = Ill::default();
    let mut stood = Vec::new();
    // Each part is looked at beside what stands then, both ways, so that the sums compare.
    for p in taken {
        before = before + viewer.of(digest, &pool.placed, *p);
        stood.extend(pool.take(digest, *p).map(|how| (*p, how)));
    }
    let most = before.weight() + worse;
    let mut after = Ill::default();
    let mut laid = true;
    for p in taken {
        let Some(how) = inserter.best(pool, *p) else {
            laid = false;
            break;
        };
        pool.place(digest, *p, how);
        after = after + viewer.of(digest, &pool.placed, *p);
        // Laying the others can only add to both.
        laid = pool.bought() <= panels && after.weight() <= most;
        if !laid {
            break;
        }
    }
    if laid {
        return Some((before, after));
    }
    for p in taken {
        pool.take(digest, *p);
    }
    stood.into_iter().for_each(|(p, how)| pool.place(digest, p, how));
    None
}
