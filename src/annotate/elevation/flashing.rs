//! Flashing and clearances, each told once, at its place: where a lower roof or deck meets a wall,
//! and over grade (`TrimFact::GradeClearance`, `TrimFact::RoofClearance`, `TrimFact::StepFlashing`,
//! `TrimFact::KickOut`, `TrimFact::FlashingPlaces`).

use super::view::View;
use crate::annotate::canvas::{Canvas, Look, Mark};
use crate::geom::vocabulary::{Vec2, Xy};
use crate::layout::Layout;
use crate::layout::wall::LaidElevation;
use crate::model::house::EdgeKind;
use crate::real::Real;
use crate::wording::legend;

fn reach(a: Xy, b: Xy) -> f64 {
    (a[0] - b[0]).hypotenuse(a[1] - b[1])
}

/// The note of each side over a roof, of each foot of a slope, and of the start over grade.
pub(super) fn notes(c: &mut Canvas, layout: &Layout, e: &LaidElevation, v: &View) {
    let say = layout.job.sheet.language;
    for s in e.roof_sides(layout) {
        let (from, to) = (s.from, s.to);
        let middle = [(from[0] + to[0]) / 2.0, (from[1] + to[1]) / 2.0];
        put(
            c,
            v,
            &v.say.word(if s.sloped { legend::STEP_AT } else { legend::FLASHING_AT }),
            middle,
        );
        if let Some(foot) = s.kick_out {
            put(c, v, &v.say.word(legend::KICK_OUT_AT), foot);
        }
    }
    if let Some(at) = over_grade(e) {
        let words = say.line(|lang| {
            legend::above_grade(lang, layout.job.courses.clear_of_grade, layout.job.sheet.lengths)
        });
        put(c, v, &words, at);
    }
}

/// The middle of the longest start that stands over grade.
fn over_grade(e: &LaidElevation) -> Option<Xy> {
    if e.grade.len() < 2 {
        return None;
    }
    let starts = e.walls.iter().flat_map(|w| &w.edges).filter(|s| s.kind == EdgeKind::Base);
    let longest = starts.max_by(|a, b| reach(a.from, a.to).total_cmp(&reach(b.from, b.to)))?;
    let along = |k: usize| longest.from[k] + (longest.to[k] - longest.from[k]) * 0.3;
    Some([along(0), along(1)])
}

fn put(c: &mut Canvas, v: &View, text: &str, at: Xy) {
    if !v.holds(at[0], at[1]) {
        return;
    }
    let target = v.xy(&at);
    let wish = target + Vec2::new(0.25, -0.3);
    c.mark(Mark { text, target, wish, reach: 2.5, look: Look::Plain });
}

/// What the key says of them.
pub(super) fn key(layout: &Layout, e: &LaidElevation) -> Vec<String> {
    let say = layout.job.sheet.language;
    let mut out = Vec::new();
    let roofs = e.roof_sides(layout);
    if !roofs.is_empty() {
        out.push(say.block(|lang| legend::clear_of_roof(lang, &layout.job)));
    }
    if roofs.iter().any(|s| s.sloped) {
        out.push(say.sentence(legend::STEP_FLASHING));
    }
    if roofs.iter().any(|s| s.kick_out.is_some()) {
        out.push(say.sentence(legend::KICK_OUT));
    }
    out
}
