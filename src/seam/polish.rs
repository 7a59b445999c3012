//! Better looks at no more panels: parts with ill looks and what shares their panels are laid again,
//! and kept if panels are no more and looks no worse.

use std::collections::BTreeSet;

use super::conflicts::Pins;
use super::insert::Inserter;
use super::looks::{Ill, Looks};
use super::part::Digest;
use super::placed::Placed;
use super::pool::Pool;
use super::random::Random;
use super::rules::UNIT;
use crate::model::seam::Effort;

/// Chance in comparisons while laying again: 0.05 panels.
const NOISE: i64 = UNIT / 20;
/// Most parts taken up in a round.
const MOST_TAKEN: usize = 12;

fn rounds(digest: &Digest) -> u64 {
    let parts = super::improve::counted(digest);
    match digest.rules.effort {
        Effort::Crew => 0,
        Effort::Brief => 10 * parts,
        Effort::Usual => 20 * parts,
        Effort::Long => 600 * parts,
    }
}

/// Polishes a layout in place.
pub(super) fn polish(digest: &Digest, looks: &Looks, pool: &mut Pool, pins: Pins) {
    let random = Random::new(digest.rules.seed ^ 0x100f);
    let mut inserter = Inserter::new(digest, random, NOISE);
    inserter.pinned = pins;
    inserter.looks = Some(looks);
    let mut ill: Vec<usize> = Vec::new();
    // Those of them with a seam in a notch or on a jamb line: every other round is one of theirs.
    let mut worst: Vec<usize> = Vec::new();
    for round in 0..rounds(digest) {
        let parts = digest.parts.len() as u64;
        if round % (4 * parts.max(1)) == 0 {
            let of = |p: &usize| looks.of(digest, &pool.placed, *p);
            ill = (0..digest.parts.len()).filter(|p| of(p) > Ill::default()).collect();
            if ill.is_empty() {
                return;
            }
            let bad = |p: &usize| of(p).hits.is_bad();
            worst = ill.iter().copied().filter(bad).collect();
        }
        let among = if worst.is_empty() || round % 2 == 1 { &ill } else { &worst };
        let one = among[inserter.random.below(among.len())];
        let mut taken = with_mates(digest, pool, one, &mut inserter.random);
        // What is pinned stands before the others look for a place.
        taken.sort_by_key(|p| inserter.pinned[*p].is_none());
        again(digest, looks, pool, &mut inserter, &taken);
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

/// Takes parts up and lays them again; puts them back if that was no better.
fn again(
    digest: &Digest,
    looks: &Looks,
    pool: &mut Pool,
    inserter: &mut Inserter,
    taken: &[usize],
) {
    let panels = pool.bought();
    let mut before = Ill::default();
    let mut stood = Vec::new();
    // Each part is looked at beside what stands then, both ways, so that the sums compare.
    for p in taken {
        before = before + looks.of(digest, &pool.placed, *p);
        stood.extend(pool.take(digest, *p).map(|how| (*p, how)));
    }
    let mut after = Ill::default();
    let mut laid = true;
    for p in taken {
        let Some(how) = inserter.best(pool, *p) else {
            laid = false;
            break;
        };
        pool.place(digest, *p, how);
        after = after + looks.of(digest, &pool.placed, *p);
        // Laying the others can only add to both.
        laid = pool.bought() <= panels && after <= before;
        if !laid {
            break;
        }
    }
    if laid {
        return;
    }
    for p in taken {
        pool.take(digest, *p);
    }
    stood.into_iter().for_each(|(p, how)| pool.place(digest, p, how));
}
