//! Findings gathered to be told: each kind of error by itself and first, then what is about one subject together.

use super::record::Finding;
use super::severity::Severity;
use super::subject::Subject;

/// Findings of one code and severity, in the order they were made; never none.
#[derive(Debug)]
pub struct Kind<'a>(Vec<&'a Finding>);

impl<'a> Kind<'a> {
    /// The findings.
    pub fn all(&self) -> &[&'a Finding] {
        &self.0
    }

    /// The first of them.
    pub fn first(&self) -> &'a Finding {
        self.0[0]
    }

    /// How much they matter.
    pub fn severity(&self) -> Severity {
        self.first().severity()
    }

    fn holds(&self, finding: &Finding) -> bool {
        let first = self.first();
        (first.code(), first.severity()) == (finding.code(), finding.severity())
    }
}

/// What is told under one head: kinds about one subject, the gravest first; never none.
#[derive(Debug)]
pub struct Gathered<'a> {
    /// What they are about.
    pub subject: Subject,
    /// The kinds: of errors one alone.
    pub kinds: Vec<Kind<'a>>,
}

impl Gathered<'_> {
    /// The worst of them.
    pub fn severity(&self) -> Severity {
        self.kinds[0].severity()
    }

    /// How many findings of this severity.
    pub fn count(&self, severity: Severity) -> usize {
        let of = self.kinds.iter().filter(|k| k.severity() == severity);
        of.map(|k| k.all().len()).sum()
    }
}

/// Findings gathered by what they are about: errors first, each kind by itself, in the order they were made, then
/// subjects with a warning, then the others, each in the order of [`Subject`]. None is lost, and none stands
/// twice.
pub fn gathered<'a>(findings: impl IntoIterator<Item = &'a Finding>) -> Vec<Gathered<'a>> {
    let mut kinds: Vec<Kind> = Vec::new();
    for finding in findings {
        match kinds.iter_mut().find(|k| k.holds(finding)) {
            Some(kind) => kind.0.push(finding),
            None => kinds.push(Kind(vec![finding])),
        }
    }
    kinds.sort_by_key(|k| std::cmp::Reverse(k.severity()));
    let mut out: Vec<Gathered> = Vec::new();
    for kind in kinds {
        let subject = kind.first().code().subject();
        let alone = kind.severity() == Severity::Error;
        let same = |g: &&mut Gathered| g.subject == subject && g.severity() != Severity::Error;
        match out.iter_mut().find(same).filter(|_| !alone) {
            Some(group) => group.kinds.push(kind),
            None => out.push(Gathered { subject, kinds: vec![kind] }),
        }
    }
    out.sort_by_key(|g| {
        let severity = g.severity();
        let place = if severity == Severity::Error { Subject::ALL[0] } else { g.subject };
        (std::cmp::Reverse(severity), place)
    });
    out
}
