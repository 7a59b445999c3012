//! Where a cut under a sill falls on the panel decides what holds the cut edge
//! (`TrimFact::UndersillInChannel`).

use crate::geom::tol::SAME;
use crate::job::Job;
use crate::model::course::StoryPole;

/// Whether a sill at `y` wants finish trim inside its channel: not where the cut falls so little over a
/// face's lower edge that the panel fills the channel by itself. On a course line the panel under it
/// loses its hem, and is cut at the thin top of its last face.
pub(super) fn wants_finish_trim(y: f64, pole: &StoryPole, job: &Job) -> bool {
    let butt = pole.butt(pole.course_at(y));
    let over_butt = y - job.courses.notch_clearance - butt;
    let face = job.product.face();
    let over_face = over_butt - ((over_butt + SAME) / face).floor() * face;
    // On a face line what is left is the thin top of the face below.
    // Cut at the very foot of its course, or under it, nothing is kept of it that could.
    let fills = over_butt > SAME && over_face > SAME && over_face <= job.channel_alone() + SAME;
    !fills
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::siding::kind::{PanelSiding, Siding};

    #[test]
    fn a_cut_near_a_faces_lower_edge_stands_in_the_channel_alone() {
        let pole = StoryPole { datum: 0.0, exposure: 8.0, ..Default::default() };
        let mut job = Job::default();
        let wants = |y: f64, job: &Job| wants_finish_trim(y, &pole, job);
        assert!(wants(16.0, &job) && wants(16.125, &job)); // a course line, and a hair over it
        // Double 4: cuts at 4.75 and 4.25 in, 3/4 and 1/4 over the second face; at 6.75 it is thin.
        assert!(!wants(21.0, &job) && !wants(20.5, &job) && wants(23.0, &job));
        assert!(wants(20.0, &job) && wants(20.25, &job)); // the top of the first face
        // TrimFact::UndersillLugs: plain vinyl has finish trim under every sill.
        job.product.kind = Siding::Panel(PanelSiding::Vinyl);
        assert!(wants(21.0, &job) && wants(16.0, &job));
    }
}
