//! Findings about cuts: strips too thin to hold, panels too short to fasten, notches that leave too
//! little. Each with its place in the source and what to do.

use crate::diag::{Note, Notes};
use crate::geom::tol::{CUT, SAME};
use crate::geom::vocabulary::{Affine, Point};
use crate::layout::course::LaidCourse;
use crate::layout::laid::LaidHouse;
use crate::layout::piece::{EndCut, Piece};
use crate::layout::wall::{LaidElevation, LaidWall};
use crate::model::notch::{Notch, NotchSide};

/// Most marks named in one finding.
const NAMED: usize = 6;

/// Adds the findings of a layout, wall by wall.
pub fn tell(layout: &LaidHouse, notes: &mut Notes) {
    for e in &layout.elevations {
        for w in &e.walls {
            thin_strips(layout, e, w, notes);
            short_panels(layout, e, w, notes);
            thin_notches(layout, e, w, notes);
        }
    }
    notes.round_places(layout.drawing.inches_per_unit);
}

fn place(e: &LaidElevation, x: f64, y: f64) -> Point {
    Affine::new(e.to_source) * Point::new(x, y)
}

fn pieces(w: &LaidWall) -> impl Iterator<Item = (&LaidCourse, &Piece)> {
    w.courses
        .iter()
        .flat_map(|c| c.runs.iter().flat_map(move |r| r.pieces.iter().map(move |p| (c, p))))
}

/// Runs ripped to less than the least strip.
fn thin_strips(layout: &LaidHouse, e: &LaidElevation, w: &LaidWall, notes: &mut Notes) {
    let (least, style) = (layout.job.least_strip(), layout.job.sheet.lengths);
    for (c, r) in w.courses.iter().flat_map(|c| c.runs.iter().map(move |r| (c, r))) {
        let strip = r.pieces.iter().filter_map(|p| p.rip.as_ref());
        let strip = strip.filter(|r| r.to - r.from < least);
        let Some(rip) = strip.min_by(|a, b| (a.to - a.from).total_cmp(&(b.to - b.from))) else {
            continue;
        };
        let message = format!(
            "{}, course {}: a strip only {} high is left between {} and {} on {}",
            e.name,
            c.index + 1,
            style.short(rip.to - rip.from),
            style.length(r.x0),
            style.length(r.x1),
            w.id
        );
        let help =
            "Move the datum (`courses.datum`), or cover the strip with a band or a deeper trim.";
        let at = place(e, (r.x0 + r.x1) / 2.0, c.bottom + (rip.from + rip.to) / 2.0);
        notes.push(Note::warning("strip-thin", message, help).on(&e.name).at(at));
    }
}

/// Pieces shorter than the studs are apart: they meet one at most, wherever it stands. The last piece
/// of a peak is left out: it may take one small fastener in its face (FACTS SD-110, HAB).
fn short_panels(layout: &LaidHouse, e: &LaidElevation, w: &LaidWall, notes: &mut Notes) {
    let (studs, style) = (layout.job.stud_spacing(), layout.job.sheet.lengths);
    let peak = |p: &Piece| p.ends.iter().all(|e| e.cut == EndCut::Angled) && narrows_upward(p);
    let short: Vec<(&LaidCourse, &Piece)> =
        pieces(w).filter(|(_, p)| p.length < studs - CUT && !peak(p)).collect();
    let Some((c, p)) = short.first() else { return };
    let message = format!(
        "{}, {}: {} shorter than the {} between studs and cannot be nailed to two: {}",
        e.name,
        w.id,
        if short.len() == 1 {
            "a piece is".to_owned()
        } else {
            format!("{} pieces are", short.len())
        },
        style.short(studs),
        named(&short)
    );
    let key = if layout.job.siding().joints.is_on_studs() { "boards" } else { "courses" };
    let help = format!(
        "Put blocking or nailable sheathing behind them, or cover the place with a wider trim; `{key}.stud_spacing` sets the spacing."
    );
    let at = place(e, (p.x0 + p.x1) / 2.0, (c.bottom + c.top) / 2.0);
    notes.push(Note::warning("panel-short", message, &help).on(&e.name).at(at));
}

/// Whether both ends lean in: a piece under a peak, not one between two slopes of one hand or over a
/// valley.
fn narrows_upward(p: &Piece) -> bool {
    let over = |y: f64| {
        let level = p.outline.iter().filter(move |q| (q[1] - y).abs() < SAME).map(|q| q[0]);
        level.fold((f64::MAX, f64::MIN), |(a, b), x| (a.min(x), b.max(x)))
    };
    let heights = p.outline.iter().map(|q| q[1]);
    let (low, high) = heights.fold((f64::MAX, f64::MIN), |(a, b), y| (a.min(y), b.max(y)));
    let ((l0, r0), (l1, r1)) = (over(low), over(high));
    l1 > l0 + SAME && r1 < r0 - SAME
}

fn named(of: &[(&LaidCourse, &Piece)]) -> String {
    let names: Vec<&str> = of.iter().take(NAMED).map(|(_, p)| p.mark.as_str()).collect();
    let more = of.len().saturating_sub(NAMED);
    let rest = if more > 0 { format!(" and {more} more") } else { String::new() };
    format!("{}{rest}", names.join(", "))
}

/// Notches that leave less than the least strip over or under them, or between them and an end.
fn thin_notches(layout: &LaidHouse, e: &LaidElevation, w: &LaidWall, notes: &mut Notes) {
    let (least, style) = (layout.job.least_strip(), layout.job.sheet.lengths);
    let of = |(c, p): (&LaidCourse, &Piece)| -> Vec<(String, Point)> {
        let thin = p.notches.iter().filter_map(|n| {
            let (left, what) = leaves(n, c, p).filter(|(left, _)| *left < least)?;
            let at = place(e, p.x0 + n.left + n.width / 2.0, (c.bottom + c.top) / 2.0);
            Some((format!("{} ({} {what})", p.mark, style.short(left)), at))
        });
        thin.collect()
    };
    let found: Vec<(String, Point)> = pieces(w).flat_map(of).collect();
    let Some((_, at)) = found.first() else { return };
    let names: Vec<&str> = found.iter().take(NAMED).map(|(m, _)| m.as_str()).collect();
    let more = found.len().saturating_sub(NAMED);
    let rest = if more > 0 { format!(" and {more} more") } else { String::new() };
    let message = format!(
        "{}: notches on {} leave less than {} of their {}s: {}{rest}",
        e.name,
        w.id,
        style.short(least),
        layout.job.product.kind.piece(),
        names.join(", ")
    );
    let help = "Move the datum (`courses.datum`) or cut the panel in two there; handle the pieces with \
                care until they are fastened. `courses.least_strip` sets the limit.";
    notes.push(Note::warning("notch-thin", message, help).on(&e.name).at(*at));
}

/// The least a notch leaves, and where.
fn leaves(n: &Notch, c: &LaidCourse, p: &Piece) -> Option<(f64, &'static str)> {
    let height = p.rip.as_ref().map_or(c.top - c.bottom, |r| r.to - r.from);
    let beside = [(n.left, "at the left end"), (p.length - n.left - n.width, "at the right end")];
    let across = match n.side {
        NotchSide::Top => (height - n.depth, "under it"),
        NotchSide::Bottom => (height - n.depth, "over it"),
        // Fixtures are small: what stands over and under them holds.
        NotchSide::Left | NotchSide::Right | NotchSide::Hole => return None,
    };
    std::iter::once(across)
        .chain(beside)
        .filter(|(left, _)| *left > CUT)
        .min_by(|a, b| a.0.total_cmp(&b.0))
}
