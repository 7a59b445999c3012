//! Which elevations are of the variant that the job builds.

use crate::extract::facing::{self, Facing};
use crate::finding::views::ViewFinding;
use crate::finding::{Finding, Findings};
use crate::job::Job;
use crate::model::ids::ElevationName;

/// Whether each elevation is built, by its name: all where the job names no variant. What is left out is told,
/// and a variant that no title has.
pub(super) fn built(names: &[&str], job: &Job, findings: &mut Findings) -> Vec<bool> {
    let all = vec![true; names.len()];
    let Some(variant) = job.model.asked() else { return all };
    let is_own = |n: &&&str| job.model.marks(n).contains(&variant);
    let own: Vec<Vec<Facing>> = names.iter().filter(is_own).map(|n| facing::named(n)).collect();
    if own.is_empty() {
        let mut variants: Vec<String> = names.iter().flat_map(|n| job.model.marks(n)).collect();
        variants.sort();
        variants.dedup();
        findings.push(Finding::new(ViewFinding::VariantUnknown { variant, variants }));
        return all;
    }
    // Of a side that the variant has an elevation of its own for, the one for all variants is not built.
    let stays = |n: &&str| match job.model.marks(n) {
        marks if marks.contains(&variant) => true,
        marks if !marks.is_empty() => false,
        _ => {
            let side = facing::named(n);
            side.is_empty() || !own.contains(&side)
        }
    };
    let out: Vec<bool> = names.iter().map(stays).collect();
    let of = |kept: bool| -> Vec<ElevationName> {
        let of = names.iter().zip(&out).filter(|(_, k)| **k == kept);
        of.map(|(n, _)| (*n).into()).collect()
    };
    let (built, left_out) = (of(true), of(false));
    findings.push(Finding::new(ViewFinding::VariantTaken { variant, built, left_out }));
    out
}
