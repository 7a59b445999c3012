//! The first job of a drawing: what it is read as, so that an estimator can go on from there.

use super::drawing::View;
use super::root::Job;
use crate::finding::Finding;
use crate::finding::views::OtherView;
use crate::model::linework::LayerUse;
use crate::model::source::UnitBasis;
use crate::model::trial::{JobGuess, Reached};
use crate::units::Unit;

/// A view as the drawing shows it.
#[derive(Clone, Debug, PartialEq)]
pub struct ShownView {
    /// Its name.
    pub name: String,
    /// Left, bottom, right and top, drawing units.
    pub region: [f64; 4],
    /// What it shows, if that is no elevation.
    pub other: Option<OtherView>,
}

/// What a first job says.
#[derive(Clone, Debug, Default)]
pub struct FirstJob {
    /// The drawing's name.
    pub drawing: String,
    /// What reading without a job comes to.
    pub plain: Reached,
    /// What layers mean beyond their agreed names, and what reading with the job comes to.
    pub guess: JobGuess,
    /// The unit, where one is known, and what it was taken by.
    pub unit: Option<(Unit, UnitBasis)>,
    /// Views.
    pub views: Vec<ShownView>,
    /// Whether regions of views lead to the same walls, so that the job may give them.
    pub regions: bool,
    /// Layers with the roles they have.
    pub layers: Vec<LayerUse>,
    /// What is found with the job.
    pub findings: Vec<Finding>,
}

impl FirstJob {
    /// The job that it is.
    pub fn job(&self) -> Job {
        let mut job = Job::default().with_guess(&self.guess);
        job.drawing.unit = self.guess.unit.or(self.unit.map(|u| u.0));
        if self.regions {
            job.elevation = self.elevations().map(as_given).collect();
        }
        job
    }

    /// Views that are laid out.
    pub fn elevations(&self) -> impl Iterator<Item = &ShownView> {
        self.views.iter().filter(|v| v.other.is_none())
    }
}

fn as_given(v: &ShownView) -> View {
    View { name: v.name.clone(), region: Some(v.region), ..View::default() }
}

impl Job {
    /// The job with a guess.
    pub fn with_guess(&self, guess: &JobGuess) -> Job {
        let mut out = self.clone();
        out.drawing.unit = guess.unit.or(out.drawing.unit);
        out.drawing.hidden_layers |= guess.hidden_layers;
        for g in &guess.layers {
            let list = out.layers.entry(g.role).or_default();
            if !list.contains(&g.layer) {
                list.push(g.layer.clone());
            }
        }
        out
    }
}
