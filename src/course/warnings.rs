//! Findings about cuts: strips too thin to hold, panels too short to fasten, notches that leave too
//! little. Each with its place in the source and what to do.

use crate::finding::corners::CornerFinding;
use crate::finding::laying::{ClosingBoard, LayingFinding, NotchPlace, ThinNotch};
use crate::finding::{Finding, Findings};
use crate::geom::tol::{CUT, SAME};
use crate::geom::vocabulary::{Affine, Point, Xy};
use crate::layout::course::LaidCourse;
use crate::layout::laid::LaidHouse;
use crate::layout::piece::{EndCut, Piece};
use crate::layout::wall::{LaidElevation, LaidFiller, LaidWall};
use crate::model::filler::PlacedFiller;
use crate::model::ids::TrimMark;
use crate::model::notch::{Notch, NotchSide};
use crate::model::trim::TrimKind;

/// Adds the findings of a layout, wall by wall.
pub fn tell(layout: &LaidHouse, findings: &mut Findings) {
    for e in &layout.elevations {
        for w in &e.walls {
            behind_posts(layout, e, w, findings);
            fillers(layout, e, w, findings);
            thin_strips(layout, e, w, findings);
            short_panels(layout, e, w, findings);
            thin_notches(layout, e, w, findings);
        }
    }
    findings.round_places(layout.drawing.inches_per_unit);
}

fn place(e: &LaidElevation, x: f64, y: f64) -> Point {
    Affine::new(e.to_source) * Point::new(x, y)
}

fn pieces(w: &LaidWall) -> impl Iterator<Item = (&LaidCourse, &Piece)> {
    w.courses
        .iter()
        .flat_map(|c| c.runs.iter().flat_map(move |r| r.pieces.iter().map(move |p| (c, p))))
}

/// A wall without room for siding between what stands in its corners.
fn behind_posts(layout: &LaidHouse, e: &LaidElevation, w: &LaidWall, findings: &mut Findings) {
    let set_backs = layout.job.set_backs();
    let corners = layout.corners.iter().flat_map(|c| c.sides.iter().map(move |s| (c, s)));
    let taken =
        corners.filter(|(_, s)| s.wall == w.id).map(|(c, s)| set_backs.at(c, &s.wall)).sum::<f64>();
    let xs = || w.outline.iter().map(|p| p[0]);
    let (left, right) = (xs().fold(f64::MAX, f64::min), xs().fold(f64::MIN, f64::max));
    if pieces(w).next().is_none() && right > left && taken >= right - left - SAME {
        let foot = w.outline.iter().map(|p| p[1]).fold(f64::MAX, f64::min);
        let kind = CornerFinding::WallBehindPosts { wall: w.id.clone(), width: right - left };
        let at = place(e, (left + right) / 2.0, foot);
        findings.push(Finding::new(kind).on(&e.name).at(at));
    }
}

/// Places too narrow for siding, with the boards that cover them.
fn fillers(layout: &LaidHouse, e: &LaidElevation, w: &LaidWall, findings: &mut Findings) {
    let boards = |f: &LaidFiller| -> Vec<TrimMark> {
        let [x0, y0, x1, y1] = f.place;
        let within = |p: Xy| p[0] > x0 && p[0] < x1 && p[1] > y0 && p[1] < y1;
        let mine = layout.trims.iter().filter(|t| t.kind == TrimKind::Filler && t.wall == w.id);
        mine.filter(|t| within(t.place(0.5))).map(|t| t.mark.clone()).collect()
    };
    let placed = |f: &LaidFiller| PlacedFiller {
        boards: boards(f),
        width: f.width,
        length: f.length,
        between: f.between.clone(),
    };
    let middle = |f: &LaidFiller| {
        let [x0, y0, x1, y1] = f.place;
        place(e, (x0 + x1) / 2.0, (y0 + y1) / 2.0)
    };
    let Some(first) = w.fillers.first() else { return };
    let kind = LayingFinding::FillerBoard {
        wall: w.id.clone(),
        fillers: w.fillers.iter().map(placed).collect(),
        least: layout.job.courses.least_width,
        piece: layout.job.product.kind.piece(),
    };
    let others = w.fillers.iter().skip(1).map(middle).collect();
    findings.push(Finding::new(kind).on(&e.name).at(middle(first)).also_at(others));
}

/// Runs ripped to less than the least strip.
fn thin_strips(layout: &LaidHouse, e: &LaidElevation, w: &LaidWall, findings: &mut Findings) {
    let least = layout.job.least_strip();
    for (c, r) in w.courses.iter().flat_map(|c| c.runs.iter().map(move |r| (c, r))) {
        let strip = r.pieces.iter().filter_map(|p| p.rip.as_ref());
        let strip = strip.filter(|r| r.to - r.from < least);
        let Some(rip) = strip.min_by(|a, b| (a.to - a.from).total_cmp(&(b.to - b.from))) else {
            continue;
        };
        let at = place(e, (r.x0 + r.x1) / 2.0, c.bottom + (rip.from + rip.to) / 2.0);
        // A cut edge keeps its clearance from what it is cut for.
        let full = c.top - c.bottom;
        let cut = [rip.from > CUT, rip.to < full - CUT].into_iter().filter(|cut| *cut).count();
        let kind = LayingFinding::StripThin {
            wall: w.id.clone(),
            course: c.index + 1,
            height: rip.to - rip.from,
            board: rip.to - rip.from + cut as f64 * layout.job.courses.notch_clearance,
            left: r.x0,
            right: r.x1,
        };
        findings.push(Finding::new(kind).on(&e.name).at(at));
    }
}

/// Pieces shorter than the studs are apart: they meet one at most, wherever it stands. The last piece
/// of a peak is left out: it may take one small fastener in its face (`TrimFact::RakeGap`).
fn short_panels(layout: &LaidHouse, e: &LaidElevation, w: &LaidWall, findings: &mut Findings) {
    let studs = layout.job.stud_spacing();
    let peak = |p: &Piece| p.ends.iter().all(|e| e.cut == EndCut::Angled) && narrows_upward(p);
    let short: Vec<(&LaidCourse, &Piece)> =
        pieces(w).filter(|(_, p)| p.length < studs - CUT && !peak(p)).collect();
    let Some((c, p)) = short.first() else { return };
    let kind = LayingFinding::PanelShort {
        wall: w.id.clone(),
        pieces: short.iter().map(|(_, p)| p.mark.clone()).collect(),
        stud_spacing: studs,
        piece: layout.job.product.kind.piece(),
    };
    let at = place(e, (p.x0 + p.x1) / 2.0, (c.bottom + c.top) / 2.0);
    findings.push(Finding::new(kind).on(&e.name).at(at));
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

/// Notches that leave less than the least strip over or under them, or between them and an end.
fn thin_notches(layout: &LaidHouse, e: &LaidElevation, w: &LaidWall, findings: &mut Findings) {
    let least = layout.job.least_strip();
    let thin = |(c, p): (&LaidCourse, &Piece)| -> Vec<(ThinNotch, Point)> {
        let thin = p.notches.iter().filter_map(|n| {
            let (left, side) = leaves(n, c, p).filter(|(left, _)| *left < least)?;
            let at = place(e, p.x0 + n.left + n.width / 2.0, (c.bottom + c.top) / 2.0);
            let board = closing(layout, w, n, (left, side));
            Some((ThinNotch { piece: p.mark.clone(), left, place: side, board }, at))
        });
        thin.collect()
    };
    let found: Vec<(ThinNotch, Point)> = pieces(w).flat_map(thin).collect();
    let Some((_, at)) = found.first() else { return };
    let at = *at;
    let kind = LayingFinding::NotchThin {
        wall: w.id.clone(),
        notches: found.into_iter().map(|(notch, _)| notch).collect(),
        least,
        piece: layout.job.product.kind.piece(),
    };
    findings.push(Finding::new(kind).on(&e.name).at(at));
}

/// Shortest board worth its cut, inches: common practice, no source.
const SHORTEST_BOARD: f64 = 2.0;

/// The board that closes what a notch leaves over or under an opening: from there to the course line.
fn closing(
    layout: &LaidHouse,
    w: &LaidWall,
    n: &Notch,
    (left, side): (f64, NotchPlace),
) -> Option<ClosingBoard> {
    if !matches!(side, NotchPlace::Over | NotchPlace::Under) {
        return None;
    }
    let opening = w.openings.iter().find(|o| n.around.iter().any(|a| **a == *o.id.as_str()))?;
    let clear = layout.job.courses.notch_clearance;
    let level = if side == NotchPlace::Over { opening.head } else { opening.sill };
    let ends = opening.outline.iter().filter(|p| (p[1] - level).abs() <= SAME).map(|p| p[0]);
    let (from, to) = ends.fold((f64::MAX, f64::MIN), |(a, b), x| (a.min(x), b.max(x)));
    let long = to - from;
    // Over a head that ends in a point no board goes.
    (long >= SHORTEST_BOARD).then(|| ClosingBoard {
        opening: opening.id.clone(),
        high: left + clear,
        long,
    })
}

/// The least a notch leaves, and where.
fn leaves(n: &Notch, c: &LaidCourse, p: &Piece) -> Option<(f64, NotchPlace)> {
    let height = p.rip.as_ref().map_or(c.top - c.bottom, |r| r.to - r.from);
    let beside =
        [(n.left, NotchPlace::LeftEnd), (p.length - n.left - n.width, NotchPlace::RightEnd)];
    let across = match n.side {
        NotchSide::Top => (height - n.depth, NotchPlace::Under),
        NotchSide::Bottom => (height - n.depth, NotchPlace::Over),
        // Fixtures are small: what stands over and under them holds.
        NotchSide::Left | NotchSide::Right | NotchSide::Hole => return None,
    };
    std::iter::once(across)
        .chain(beside)
        .filter(|(left, _)| *left > CUT)
        .min_by(|a, b| a.0.total_cmp(&b.0))
}
