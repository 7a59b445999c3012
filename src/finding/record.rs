//! A finding with its place, the list of a run's findings, and a refusal.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::register::{FindingCode, FindingKind};
use super::severity::{Audience, Severity};
use crate::geom::vocabulary::{Point, Xy};
use crate::model::ids::ElevationName;
use crate::origin::{Origin, round_place};

/// One finding.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(from = "Written", into = "Written")]
pub struct Finding {
    /// What was found.
    pub kind: FindingKind,
    /// The elevation it is in.
    pub elevation: Option<ElevationName>,
    /// Place in the **source's** coordinates and units.
    pub at: Option<Point>,
    /// Further places of the same, source coordinates; some are enough where there are many.
    pub also: Vec<Point>,
    /// The entity it is about.
    pub origin: Option<Origin>,
}

/// A finding as `layout.json` has it: severity and audience follow from the code.
#[derive(Serialize, Deserialize, JsonSchema)]
#[schemars(rename = "Finding")]
struct Written {
    /// How much it matters.
    severity: Severity,
    /// Who must act.
    audience: Audience,
    #[serde(flatten)]
    kind: FindingKind,
    /// The elevation it is in.
    #[serde(skip_serializing_if = "Option::is_none")]
    elevation: Option<ElevationName>,
    /// Place in the source's coordinates and units.
    #[serde(skip_serializing_if = "Option::is_none")]
    at: Option<Xy>,
    /// Further places of the same; some are enough where there are many.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    also: Vec<Xy>,
    /// The entity it is about.
    #[serde(skip_serializing_if = "Option::is_none")]
    origin: Option<Origin>,
}

impl From<Finding> for Written {
    fn from(f: Finding) -> Self {
        let pair = |p: Point| [p.x, p.y];
        Written {
            severity: f.severity(),
            audience: f.audience(),
            kind: f.kind,
            elevation: f.elevation,
            at: f.at.map(pair),
            also: f.also.into_iter().map(pair).collect(),
            origin: f.origin,
        }
    }
}

impl From<Written> for Finding {
    fn from(w: Written) -> Self {
        let point = |p: Xy| Point::new(p[0], p[1]);
        Finding {
            kind: w.kind,
            elevation: w.elevation,
            at: w.at.map(point),
            also: w.also.into_iter().map(point).collect(),
            origin: w.origin,
        }
    }
}

impl Finding {
    /// A finding without a place.
    pub fn new(kind: impl Into<FindingKind>) -> Self {
        Finding { kind: kind.into(), elevation: None, at: None, also: Vec::new(), origin: None }
    }

    /// Its code.
    pub fn code(&self) -> FindingCode {
        self.kind.code()
    }

    /// How much it matters.
    pub fn severity(&self) -> Severity {
        self.kind.severity()
    }

    /// Who must act.
    pub fn audience(&self) -> Audience {
        self.code().audience()
    }

    /// At this place, in source coordinates.
    pub fn at(mut self, p: Point) -> Self {
        self.at = Some(p);
        self
    }

    /// At these places too.
    pub fn also_at(mut self, points: Vec<Point>) -> Self {
        self.also = points;
        self
    }

    /// About this entity.
    pub fn about(mut self, origin: &Origin) -> Self {
        self.origin = Some(origin.clone());
        self
    }

    /// In this elevation.
    pub fn on(mut self, elevation: &str) -> Self {
        self.elevation = Some(ElevationName::from(elevation));
        self
    }

    /// See [`Findings::round_places`].
    pub fn round_places(&mut self, inches_per_unit: f64) {
        for p in self.at.iter_mut().chain(&mut self.also) {
            *p = round_place(*p, inches_per_unit);
        }
    }
}

/// The findings of a run, in the order they were made: only ever added to.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Findings(Vec<Finding>);

impl Findings {
    /// Adds one finding.
    pub fn push(&mut self, finding: Finding) {
        self.0.push(finding);
    }

    /// All of them.
    pub fn all(&self) -> &[Finding] {
        &self.0
    }

    /// How many are at least this severe.
    pub fn count(&self, least: Severity) -> usize {
        self.0.iter().filter(|f| f.severity() >= least).count()
    }

    /// Gives places to no more figures than the grid holds, where a drawing unit has so many inches:
    /// what was drawn at 4000 mm does not come out at 3999.998.
    pub fn round_places(&mut self, inches_per_unit: f64) {
        for finding in &mut self.0 {
            finding.round_places(inches_per_unit);
        }
    }

    /// An error if any finding is one; the first is named, the rest stand in the list.
    pub fn refuse_on_error(&self) -> Result<(), Refusal> {
        match self.0.iter().find(|f| f.severity() == Severity::Error) {
            Some(first) => Err(Refusal::from(first.clone())),
            None => Ok(()),
        }
    }
}

/// The drawing or job cannot be used; the finding says why. Its words are in `wording::findings`.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[error("{}", .0.code())]
pub struct Refusal(pub Box<Finding>);

impl Refusal {
    /// A refusal without a place.
    pub fn new(kind: impl Into<FindingKind>) -> Self {
        Finding::new(kind).into()
    }
}

impl From<Finding> for Refusal {
    fn from(finding: Finding) -> Self {
        Refusal(Box::new(finding))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::finding::lines::LineFinding;
    use crate::geom::tol::snap;

    #[test]
    fn places_are_given_as_they_were_drawn_in_whichever_unit() {
        // Drawn at 4000 mm and 123.4 mm, at 6.25 in, at 2.5 m: brought to the grid and back.
        for (unit, drawn) in [(1.0 / 25.4, 4000.0), (1.0 / 25.4, 123.4), (1.0, 6.25), (39.37, 2.5)]
        {
            let mut findings = Findings::default();
            let at = Point::new(snap(drawn * unit) / unit, 0.0);
            let kind = LineFinding::LineTwice { lines: 2 };
            findings.push(Finding::new(kind).at(at).also_at(vec![at]));
            findings.round_places(unit);
            let finding = &findings.all()[0];
            assert_eq!((finding.at.unwrap().x, finding.also[0].x), (drawn, drawn));
        }
    }
}
