//! A DWG changed at random: bytes of the file, and bytes of its parts with their checks mended.

use std::ops::Range;

use lapwright::finding::Findings;
use lapwright::read::{self, Limits};

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

/// Reads mutants of those seeds; how many gave a drawing, and how many were refused.
pub(crate) fn run(whole: &[u8], seeds: Range<u64>) -> (usize, usize) {
    let (mut drawings, mut refused) = (0, 0);
    for seed in seeds {
        let bytes = mutant(whole, seed);
        let mut findings = Findings::default();
        match read::drawing(&bytes, "mutant", &Limits::default(), &mut findings) {
            Ok(_) => drawings += 1,
            Err(refusal) => {
                assert!(!refusal.0.code().word().is_empty());
                refused += 1;
            }
        }
    }
    (drawings, refused)
}
