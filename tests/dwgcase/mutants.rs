//! A DWG changed at random: bytes of the file, and bytes of its parts with their checks mended.

use std::ops::Range;

use lapwright::finding::Findings;
use lapwright::read::{self, Limits};
use opendwg::container::{self, SectionName};

/// Numbers at random from a seed (G. Steele and others, SplitMix64).
fn next(state: &mut u64) -> u64 {
    *state = state.wrapping_add(0x9E37_79B9_7F4A_7C15);
    let mut z = *state;
    z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
    z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
    z ^ (z >> 31)
}

/// A file of that seed: some bytes changed, or a part taken out or doubled.
fn mutant(whole: &[u8], seed: u64) -> Vec<u8> {
    let mut state = seed;
    let mut out = whole.to_vec();
    let at = |state: &mut u64, len: usize| (next(state) % len.max(1) as u64) as usize;
    match seed % 4 {
        0 => {
            let from = at(&mut state, out.len());
            out.truncate(from);
        }
        1 => {
            let (from, len) = (at(&mut state, out.len()), at(&mut state, 64));
            let to = (from + len).min(out.len());
            let part = out[from..to].to_vec();
            out.splice(to..to, part);
        }
        _ => {
            for _ in 0..=at(&mut state, 8) {
                let i = at(&mut state, out.len());
                out[i] = next(&mut state) as u8;
            }
        }
    }
    // The six letters of its version stay: else it is no DWG.
    out.splice(..out.len().min(6), whole[..6].iter().copied());
    out
}

/// A file of that seed whose sections are unpacked, changed in some bytes of one, and packed again with their
/// checks mended, so that what reads objects sees the change; none where the sections cannot be packed.
fn of_sections(whole: &[u8], seed: u64) -> Option<Vec<u8>> {
    let mut raw = container::read(whole).unwrap();
    let mut state = seed;
    let at = |state: &mut u64, len: usize| (next(state) % len.max(1) as u64) as usize;
    let which = at(&mut state, raw.sections.len());
    // Most of what a drawing says is in its objects.
    let objects = raw.sections.keys().position(|n| *n == SectionName::Objects);
    let which = if seed.is_multiple_of(2) { objects.unwrap_or(which) } else { which };
    let section = raw.sections.values_mut().nth(which)?;
    if section.is_empty() {
        return None;
    }
    for _ in 0..=at(&mut state, 8) {
        let i = at(&mut state, section.len());
        section[i] = next(&mut state) as u8;
    }
    container::write_r2018(&raw).ok()
}

/// Reads files of those seeds with changes in their unpacked sections; how many gave a drawing, how many were
/// refused, how many could not be packed.
pub(crate) fn run_sections(whole: &[u8], seeds: Range<u64>) -> (usize, usize, usize) {
    let mut ends = (0, 0, 0);
    for seed in seeds {
        let Some(bytes) = of_sections(whole, seed) else {
            ends.2 += 1;
            continue;
        };
        if is_read(&bytes) {
            ends.0 += 1;
        } else {
            ends.1 += 1;
        }
    }
    ends
}

/// Whether a file gives a drawing; a refusal has its code.
fn is_read(bytes: &[u8]) -> bool {
    let mut findings = Findings::default();
    match read::drawing(bytes, "mutant", &Limits::default(), &mut findings) {
        Ok(_) => true,
        Err(refusal) => {
            assert!(!refusal.0.code().word().is_empty());
            false
        }
    }
}

/// Reads mutants of those seeds; how many gave a drawing, and how many were refused.
pub(crate) fn run(whole: &[u8], seeds: Range<u64>) -> (usize, usize) {
    let all = seeds.end - seeds.start;
    let read = seeds.filter(|seed| is_read(&mutant(whole, *seed))).count();
    (read, all as usize - read)
}
