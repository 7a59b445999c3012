//! How wide the trim at a side shows over the panels' ends, and the least that shall show between.

use crate::job::Job;
use crate::model::corner::CornerKind;
use crate::model::house::EdgeKind;

/// Faces of trim, inches.
#[derive(Clone, Copy, Debug)]
pub(super) struct Faces {
    channel: f64,
    outside: f64,
    inside: f64,
    /// Least width of siding that shall show.
    least: f64,
}

impl Faces {
    pub(super) fn of_job(job: &Job) -> Self {
        let past = |kind: CornerKind| (job.corner_face(kind) - job.set_backs().most(kind)).max(0.0);
        let pockets = job.siding().receivers.has_pockets();
        Faces {
            channel: if pockets { job.trim.channel_face } else { 0.0 },
            outside: if pockets { past(CornerKind::Outside) } else { 0.0 },
            inside: if pockets { past(CornerKind::Inside) } else { 0.0 },
            least: job.courses.least_width,
        }
    }

    /// The face of what stands at a side, from where panels' ends would touch it.
    pub(super) fn of(&self, kind: EdgeKind) -> f64 {
        match kind {
            EdgeKind::OutsideCorner => self.outside,
            EdgeKind::InsideCorner => self.inside,
            _ => self.channel,
        }
    }

    /// Sides nearer than this leave less than the least to show.
    pub(super) fn least(&self, a: EdgeKind, b: EdgeKind) -> f64 {
        self.of(a) + self.of(b) + self.least
    }

    /// No two sides farther apart are too near.
    pub(super) fn most(&self) -> f64 {
        2.0 * self.channel.max(self.outside).max(self.inside) + self.least
    }
}
