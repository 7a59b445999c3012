//! Findings of one kind under one number.

use crate::finding::{Finding, FindingCode, Severity};
use crate::geom::vocabulary::Point;

/// Findings of one code and severity.
pub(super) struct Group<'a> {
    /// From 1, errors first.
    pub(super) number: usize,
    /// The findings, in the order they were made.
    pub(super) findings: Vec<&'a Finding>,
    /// Where they are, source coordinates.
    pub(super) places: Vec<Point>,
}

impl<'a> Group<'a> {
    /// The first of them.
    pub(super) fn first(&self) -> Option<&'a Finding> {
        self.findings.first().copied()
    }

    /// How much they matter.
    pub(super) fn severity(&self) -> Severity {
        self.first().map_or(Severity::Info, Finding::severity)
    }
}

/// Findings by code, the gravest first; `place` says where one is that has no place of its own.
pub(super) fn grouped<'a>(
    findings: &'a [Finding],
    place: impl Fn(&Finding) -> Option<Point>,
) -> Vec<Group<'a>> {
    let mut order: Vec<&Finding> = findings.iter().collect();
    order.sort_by_key(|n| std::cmp::Reverse(n.severity()));
    let mut out: Vec<Group> = Vec::new();
    for finding in order {
        let key: (FindingCode, Severity) = (finding.code(), finding.severity());
        let of = |g: &Group| g.first().is_some_and(|f| (f.code(), f.severity()) == key);
        let at = match out.iter().position(of) {
            Some(at) => at,
            None => {
                out.push(Group { number: out.len() + 1, findings: Vec::new(), places: Vec::new() });
                out.len() - 1
            }
        };
        let places = place(finding).into_iter().chain(finding.also.iter().copied());
        out[at].places.extend(places.filter(|p| p.is_finite()));
        out[at].findings.push(finding);
    }
    out
}
