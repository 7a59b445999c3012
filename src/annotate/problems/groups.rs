//! Findings about one subject under one number, its kinds by letters.

use crate::finding::{Finding, Gathered, Kind, Severity, gathered};
use crate::geom::vocabulary::Point;

/// What is told under one number.
pub(super) struct Group<'a> {
    /// From 1, errors first.
    pub(super) number: usize,
    /// What is told.
    pub(super) told: Gathered<'a>,
}

/// Findings of one code and severity.
pub(super) struct Marked<'a> {
    /// What stands at its circles: `3`, or `3b` where its number has several kinds.
    pub(super) mark: String,
    /// The findings.
    pub(super) kind: &'a Kind<'a>,
    /// Where they are, source coordinates.
    pub(super) places: Vec<Point>,
}

impl Marked<'_> {
    /// How much they matter.
    pub(super) fn severity(&self) -> Severity {
        self.kind.severity()
    }
}

/// Findings by what they are about, the gravest first.
pub(super) fn grouped(findings: &[Finding]) -> Vec<Group<'_>> {
    let numbered = gathered(findings).into_iter().enumerate();
    numbered.map(|(i, told)| Group { number: i + 1, told }).collect()
}

impl Group<'_> {
    /// Its kinds; `place` says where a finding is that has no place of its own.
    pub(super) fn kinds(&self, place: impl Fn(&Finding) -> Option<Point>) -> Vec<Marked<'_>> {
        let alone = self.told.kinds.len() == 1;
        let marked = self.told.kinds.iter().enumerate().map(|(i, kind)| {
            let letter = if alone { String::new() } else { letters(i) };
            let of = |f: &&Finding| place(f).into_iter().chain(f.also.iter().copied()).collect();
            let places: Vec<Point> =
                kind.all().iter().flat_map(|f| -> Vec<Point> { of(f) }).collect();
            let places = places.into_iter().filter(|p| p.is_finite()).collect();
            Marked { mark: format!("{}{letter}", self.number), kind, places }
        });
        marked.collect()
    }
}

/// `a` to `z`, then `aa`, `ab` and on.
fn letters(index: usize) -> String {
    let letter = char::from(b'a' + (index % 26) as u8);
    match index / 26 {
        0 => letter.to_string(),
        before => letters(before - 1) + &letter.to_string(),
    }
}
