//! Panels with their seams, and the outlines of what they cover.

use super::view::View;
use crate::annotate::canvas::Canvas;
use crate::annotate::style::Ink;
use crate::geom::vocabulary::{Point, Vec2};
use crate::layout::course::LaidRun;
use crate::layout::wall::LaidWall;

pub(super) fn panels(c: &mut Canvas, w: &LaidWall, v: &View) {
    for run in w.courses.iter().flat_map(|k| &k.runs) {
        for p in &run.pieces {
            for ring in std::iter::once(&p.outline).chain(&p.holes).chain(&p.more) {
                c.work_ring(Ink::Course, &v.points(ring));
            }
        }
    }
}

pub(super) fn outlines(c: &mut Canvas, w: &LaidWall, v: &View) {
    for ring in &w.field {
        c.firm_ring(Ink::Wall, &v.points(ring));
    }
}

/// Seams; where panels lap, each with a sign of its lap: laps show their edge away from where the
/// wall is seen from (`SidingFact::LapsFaceAway`).
pub(super) fn seams(c: &mut Canvas, w: &LaidWall, v: &View, seen_from: Option<f64>) {
    for run in w.courses.iter().flat_map(|k| &k.runs) {
        for s in &run.seams {
            if let Some((low, high)) = run.seam_height(*s) {
                c.firm(Ink::Seam, v.at(*s, low), v.at(*s, high));
                if let Some(seen_from) = seen_from {
                    lap(c, v, run, *s, (low, high), seen_from);
                }
            }
        }
    }
}

/// A filled half arrow at the foot of a seam: it stands on the panel that laps over and points to
/// the one beneath.
fn lap(c: &mut Canvas, v: &View, run: &LaidRun, s: f64, height: (f64, f64), seen_from: f64) {
    if !v.holds(s, (height.0 + height.1) / 2.0) || run.pieces.len() < 2 {
        return;
    }
    // The panel nearer to the viewpoint laps over, so that its end looks away.
    let away = if s < seen_from { -1.0 } else { 1.0 };
    let foot: Point = v.at(s, height.0);
    let room = ((height.1 - height.0) / v.factor * 0.6).min(0.06);
    let signs = [foot, foot + Vec2::new(0.0, room), foot + Vec2::new(away * 0.07, 0.0)];
    c.ring(Ink::Solid, &signs);
}
