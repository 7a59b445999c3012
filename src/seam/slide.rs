//! A move that never takes a panel more: the seams of a part go sideways, and with them those of the parts that
//! share its panels, as far as these must give way. What one end piece gains the other loses, so that each panel
//! on the way still holds what is cut from it.

use super::looks::{Ill, Viewer};
use super::part::Digest;
use super::placed::Placed;
use super::pool::Pool;
use super::random::Random;
use super::stagger::AllowedSpans;

/// Most parts that one slide moves.
const LONGEST: usize = 16;

/// A short slide goes this far at most, inches.
const SHORT: i64 = 8;

/// How far a part might go, in steps to the right: anywhere, to where its hits at openings change, or a little.
pub(super) fn wish(digest: &Digest, pool: &Pool, part: usize, random: &mut Random) -> i64 {
    let Some(Placed::Seamed { way, a, .. }) = pool.placed[part] else { return 0 };
    let p = &digest.parts[part];
    match random.below(4) {
        0 => {
            let Some(way) = p.ways.get(way) else { return 0 };
            way.least + random.below((way.most - way.least + 1) as usize) as i64 - a
        }
        1 => {
            let turns = &p.hits[way];
            turns[random.below(turns.len())].0 - random.below(2) as i64 - a
        }
        _ => {
            let by = 1 + random.below(digest.rules.steps.of(SHORT) as usize) as i64;
            if random.below(2) == 0 { by } else { -by }
        }
    }
}

/// How the parts stand that move once `part` goes `by` to the right; `None` where a panel has neither the room
/// nor a piece that could give way.
fn moved(digest: &Digest, pool: &Pool, part: usize, by: i64) -> Option<Vec<(usize, Placed)>> {
    let mut out: Vec<(usize, Placed, i64)> = Vec::new();
    let (mut part, mut by) = (part, by);
    loop {
        let Placed::Seamed { way, a, first, last } = pool.placed[part]? else { return None };
        let (to, w) = (a + by, &digest.parts[part].ways[way]);
        if to < w.least || to > w.most || out.len() == LONGEST {
            return None;
        }
        out.push((part, Placed::Seamed { way, a: to, first, last }, by));
        // The first piece grows to the right, the last one to the left.
        let panel = &pool.panels[if by > 0 { first } else { last }];
        let other = if by > 0 { panel.right_hand } else { panel.left_hand };
        let lacks = by.abs() - panel.free;
        if lacks > 0 && other != Some(part) {
            let other = other?;
            let Some((_, _, gone)) = out.iter().find(|m| m.0 == other) else {
                (part, by) = (other, lacks * by.signum());
                continue;
            };
            if gone.abs() < lacks {
                return None;
            }
        }
        return Some(out.into_iter().map(|(part, how, _)| (part, how)).collect());
    }
}

/// Slides a part `by` to the right where every rule is kept and looks are no more than `worse` worse. What was
/// ill before and after.
pub(super) fn slide(
    digest: &Digest,
    viewer: &mut Viewer,
    pool: &mut Pool,
    (part, by): (usize, i64),
    (pinned, worse): (&[Option<(usize, i64)>], i64),
) -> Option<(Ill, Ill)> {
    let moved = moved(digest, pool, part, by).filter(|_| by != 0)?;
    if moved.iter().any(|(p, _)| pinned[*p].is_some()) {
        return None;
    }
    let (mut before, mut after) = (Ill::default(), Ill::default());
    let mut stood = Vec::new();
    // Each part is looked at beside what stands then, both ways, so that the sums compare.
    for (p, _) in &moved {
        before = before + viewer.of(digest, &pool.placed, *p);
        stood.extend(pool.take(digest, *p).map(|how| (*p, how)));
    }
    let mut allowed = AllowedSpans::default();
    let mut kept = true;
    for (p, how) in &moved {
        pool.place(digest, *p, *how);
        kept = allowed.lawful(digest, &pool.placed, *p);
        if !kept {
            break;
        }
        after = after + viewer.of(digest, &pool.placed, *p);
    }
    if kept && after.weight() <= before.weight() + worse {
        return Some((before, after));
    }
    stood.iter().for_each(|(p, _)| {
        pool.take(digest, *p);
    });
    stood.into_iter().for_each(|(p, how)| pool.place(digest, p, how));
    None
}
