//! A wall's work in sentences (FACTS OT-09, VSI-A): barrier and flashing, posts, starter, channels,
//! panels from the bottom up, finish trim where cut edges come.

use std::collections::BTreeMap;

use crate::geom::tol::{SAME, level, same};
use crate::layout::Layout;
use crate::layout::by_wall::ByWall;
use crate::layout::wall::{LaidEdge, LaidElevation, LaidWall};
use crate::model::fastening::UNDER_HEAD;
use crate::model::house::EdgeKind;
use crate::model::receiver::Receiver;
use crate::model::trim::{TrimKind, TrimPiece};
use crate::model::work::{Begins, WallWork};
use crate::units::LengthStyle;

/// What holds on every wall.
pub(super) fn everywhere(layout: &Layout) -> Vec<String> {
    let (style, trim) = (layout.job.sheet.lengths, &layout.job.trim);
    let gap = style.short(layout.job.end_gap());
    if layout.job.product.kind.is_board() {
        return of_boards(&gap);
    }
    vec![
        "Barrier and flashing before anything else, every joint lapped so that water runs over it: sill, then jambs, then head; keep to the makers' instructions. Look behind for wiring, gas and water before you nail.".to_owned(),
        format!(
            "Corner posts hang from a nail at the top of their top slots, {} under the soffit; every other nail stands in the middle of its slot, {} free under its head.",
            style.short(trim.post_top_gap),
            under_head(style)
        ),
        format!("Starters: {} between lengths and to posts.", style.short(trim.starter_gap)),
        "Frames: sill, jambs, head, then the drip cap. The head's tabs go down over the jambs, the jambs' over the sill.".to_owned(),
        format!(
            "Panels from the bottom up: lock each fully, neither pull it up nor press it down; {gap} free in every receiver. No caulk at receivers or laps."
        ),
        "Each next panel of a course laps over the last, so that no edge of a lap looks at the viewer. Where foam is set off to one side, ask the maker which hand panels run.".to_owned(),
        format!(
            "Cut edges go into finish trim and are held by snap-lock lugs every {}; where a ripped top course goes under a face board, nail slots every {} stand for its hem.",
            style.short(layout.job.courses.lug_spacing),
            style.short(layout.job.courses.slot_spacing)
        ),
    ]
}

/// The same of boards.
fn of_boards(gap: &str) -> Vec<String> {
    [
        "Barrier and flashing before anything else, every joint lapped so that water runs over it: sill, then jambs, then head; keep to the makers' instructions. Look behind for wiring, gas and water before you nail.".to_owned(),
        "Corner boards and the boards round openings before the siding; the starter piece under the first board stands in for the head of one below.".to_owned(),
        format!(
            "Boards from the bottom up, each nailed to every stud it crosses; joints on studs, backed as the maker says; {gap} free at trim, to be caulked or left open as the maker says."
        ),
    ]
    .to_vec()
}

/// Trim and corners by the wall they are at.
pub(super) struct Index<'a> {
    at: ByWall<'a>,
    /// Trim by the other elevation that shows it.
    shared: BTreeMap<&'a str, Vec<&'a TrimPiece>>,
}

impl<'a> Index<'a> {
    pub(super) fn of(layout: &'a Layout) -> Self {
        let mut shared: BTreeMap<&'a str, Vec<&'a TrimPiece>> = BTreeMap::new();
        for t in &layout.trims {
            if let Some(e) = &t.shared_with {
                shared.entry(e).or_default().push(t);
            }
        }
        Index { at: ByWall::of(layout), shared }
    }

    /// Trim on a wall.
    fn on(&self, w: &LaidWall) -> impl Iterator<Item = &'a TrimPiece> + '_ {
        self.at.trims(&w.id).iter().copied()
    }
}

/// Whether a post of another wall stands at a corner of this one.
fn round_corner(index: &Index, t: &TrimPiece, w: &LaidWall) -> bool {
    let off = |x: f64| (x - t.from[0]).abs();
    let theirs = || index.at.sides(&t.wall).iter().filter(|(_, k)| k.elevation == t.elevation);
    let nearest = theirs().map(|(_, k)| off(k.x)).fold(f64::INFINITY, f64::min);
    let at = theirs().filter(|(_, k)| off(k.x) <= nearest + SAME);
    at.into_iter().any(|(c, _)| c.sides.iter().any(|k| k.wall == w.id))
}

/// A wall's own work, in order.
pub(super) fn steps(
    layout: &Layout,
    index: &Index,
    (e, w): (&LaidElevation, &LaidWall),
    work: &WallWork,
) -> Vec<String> {
    let boards = layout.job.product.kind.is_board();
    let marks = |kinds: &[TrimKind]| marks(index, w, kinds);
    let mut out = vec![barrier(w)];
    let posts = marks(&[TrimKind::OutsidePost, TrimKind::InsidePost]);
    let corner = |s: &&LaidEdge| matches!(s.kind, EdgeKind::OutsideCorner | EdgeKind::InsideCorner);
    let shared: Vec<String> = index
        .shared
        .get(e.name.as_str())
        .into_iter()
        .flatten()
        .filter(|t| round_corner(index, t, w))
        .map(|t| format!("{} ({})", t.mark, t.elevation))
        .collect();
    if w.edges.iter().any(|s| corner(&s)) {
        let next = format!("marked on the next elevations: {}", shared.join(", "));
        let list = match (posts.is_empty(), shared.is_empty()) {
            (false, true) => posts,
            (false, false) => format!("{posts}; {next}"),
            (true, false) => next,
            (true, true) => "those of the next elevations".to_owned(),
        };
        let what = if boards { "Corner boards" } else { "Corner posts" };
        out.push(format!("{what}: {list}."));
    }
    if let Some(starter) = starter(layout, index, w) {
        out.push(starter);
    }
    let frames = frames(index, w);
    if !frames.is_empty() {
        out.push(format!("Frames: {frames}."));
    }
    let others = marks(&[
        TrimKind::WallChannel,
        TrimKind::CornerChannel,
        TrimKind::RoofChannel,
        TrimKind::RakeChannel,
    ]);
    if !others.is_empty() {
        out.push(format!(
            "Channels at wall ends, in corners, over roofs and along rakes: {others}."
        ));
    }
    let first = named(index, w, &BEFORE);
    if !first.is_empty() {
        out.push(format!("Before the siding: {first}."));
    }
    for t in &work.tight {
        let mut words = t.words.clone();
        if let Some(first) = words.get(..1).map(str::to_uppercase) {
            words.replace_range(..1, &first);
        }
        out.push(format!("Tight place, before its panels: {words}."));
    }
    out.extend(panels(w, work, layout.job.product.kind.piece()));
    if !work.level_checks.is_empty() {
        let list: Vec<String> = work.level_checks.iter().map(i32::to_string).collect();
        out.push(format!(
            "Check level, and height against the next wall and the story pole, on top of {} {}.",
            if list.len() == 1 { "course" } else { "courses" },
            joined(&list)
        ));
    }
    if !boards {
        out.extend(cut_edges(index, w));
    }
    let last = named(index, w, &AFTER);
    if !last.is_empty() {
        out.push(format!("Last: {last}."));
    }
    out
}

/// Trim that siding runs up to.
const BEFORE: [TrimKind; 4] =
    [TrimKind::CornerCover, TrimKind::Band, TrimKind::Frieze, TrimKind::TopBase];
/// Trim that closes the top.
const AFTER: [TrimKind; 3] = [TrimKind::TopPanel, TrimKind::TopFace, TrimKind::Crown];

/// Trim of these kinds on a wall: kind by kind with its marks.
fn named(index: &Index, w: &LaidWall, kinds: &[TrimKind]) -> String {
    let each = kinds.iter().filter_map(|k| {
        let list = marks(index, w, &[*k]);
        (!list.is_empty()).then(|| format!("{} {list}", k.words()))
    });
    each.collect::<Vec<_>>().join("; ")
}

/// Room under a nail's head in words: finer than a sixteenth.
fn under_head(style: LengthStyle) -> String {
    match style {
        LengthStyle::Feet => "1/32\"".to_owned(),
        LengthStyle::Mm => style.short(UNDER_HEAD),
    }
}

/// Names in a row: `a`, `a and b`, `a, b and c`.
fn joined(list: &[String]) -> String {
    match list.split_last() {
        Some((last, firsts)) if !firsts.is_empty() => format!("{} and {last}", firsts.join(", ")),
        Some((last, _)) => last.clone(),
        None => String::new(),
    }
}

/// Marks of trim of these kinds on a wall, openings' left out; posts that another elevation counts
/// stand there.
fn marks(index: &Index, w: &LaidWall, kinds: &[TrimKind]) -> String {
    let mine = |t: &&TrimPiece| t.opening.is_none() && kinds.contains(&t.kind);
    let list: Vec<String> = index.on(w).filter(mine).map(|t| t.mark.to_string()).collect();
    joined(&list)
}

fn starter(layout: &Layout, index: &Index, w: &LaidWall) -> Option<String> {
    let style = layout.job.sheet.lengths;
    let list = marks(index, w, &[TrimKind::Starter]);
    let mut heights: Vec<f64> =
        w.edges.iter().filter(|e| e.receiver == Receiver::Starter).map(|e| e.from[1]).collect();
    heights.sort_by(f64::total_cmp);
    heights.dedup_by(|a, b| same(*a, *b));
    let bottom = |e: &&LaidEdge| matches!(e.kind, EdgeKind::Base | EdgeKind::BareTop);
    let cut = w.edges.iter().filter(bottom).any(|e| e.receiver != Receiver::Starter);
    let feet: Vec<String> =
        index.on(w).filter(|t| at_foot(t, w)).map(|t| t.mark.to_string()).collect();
    let cut = if cut {
        let held = if feet.is_empty() { String::new() } else { format!(" {}", joined(&feet)) };
        format!(
            "where the bottom is on no course line, the first course is cut and its edge held in finish trim{held} by punched lugs, not by a starter"
        )
    } else {
        String::new()
    };
    if list.is_empty() || heights.is_empty() {
        return (!cut.is_empty()).then(|| format!("Start: {cut}."));
    }
    let at: Vec<String> = heights.iter().map(|h| style.length(*h)).collect();
    let cut = if cut.is_empty() { String::new() } else { format!("; {cut}") };
    Some(format!("Starter {list}: level, butt lines at {}{cut}.", joined(&at)))
}

/// Whether finish trim holds the cut bottom of a first course (FACTS SD-91).
fn at_foot(t: &TrimPiece, w: &LaidWall) -> bool {
    let start = |e: &&LaidEdge| matches!(e.kind, EdgeKind::Base | EdgeKind::BareTop);
    let along = |e: &LaidEdge| {
        let (low, high) = (e.from[0].min(e.to[0]), e.from[0].max(e.to[0]));
        let middle = (t.from[0] + t.to[0]) / 2.0;
        same(e.from[1], t.from[1]) && low <= middle && middle <= high
    };
    t.kind == TrimKind::FinishTrim && t.opening.is_none() && w.edges.iter().filter(start).any(along)
}

/// What is flashed on this wall before siding.
fn barrier(w: &LaidWall) -> String {
    let has = |kind: EdgeKind| w.edges.iter().any(|e| e.kind == kind);
    let mut parts = Vec::new();
    if !w.openings.is_empty() {
        let names: Vec<String> = w.openings.iter().map(|o| o.id.to_string()).collect();
        parts.push(format!("round {}", joined(&names)));
    }
    if has(EdgeKind::OutsideCorner) || has(EdgeKind::InsideCorner) {
        parts.push("round the corners".to_owned());
    }
    let roofs = || w.edges.iter().filter(|e| e.kind == EdgeKind::LowerRoof);
    let level_roof = |e: &LaidEdge| level(e.to[1] - e.from[1]);
    if roofs().any(|e| !level_roof(e)) {
        parts.push("step flashing and a kick-out where the roof meets the wall".to_owned());
    }
    if roofs().any(level_roof) {
        parts.push("over the level roof or deck that meets the wall".to_owned());
    }
    if has(EdgeKind::BareTop) {
        parts.push("over the ledge the siding stands on".to_owned());
    }
    if parts.is_empty() {
        "Barrier.".to_owned()
    } else {
        format!("Barrier; flashing {}.", parts.join(", "))
    }
}

/// Openings with the marks of their frames.
fn frames(index: &Index, w: &LaidWall) -> String {
    let mut by: BTreeMap<&str, Vec<&str>> = BTreeMap::new();
    for t in index.on(w).filter(|t| t.kind != TrimKind::FinishTrim && !t.kind.behind()) {
        if let Some(o) = &t.opening {
            by.entry(o).or_default().push(&t.mark);
        }
    }
    let each = w.openings.iter().filter_map(|o| {
        let list = by.get(o.id.as_str())?;
        Some(format!("{} ({})", o.id, list.join(", ")))
    });
    each.collect::<Vec<_>>().join("; ")
}

/// Where courses begin and which way laps face.
fn panels(w: &LaidWall, work: &WallWork, piece: &str) -> Vec<String> {
    let (Some(first), Some(last)) = (w.courses.first(), w.courses.last()) else {
        return Vec::new();
    };
    let mut out =
        vec![format!("Siding: {piece}s of courses {} to {}.", first.index + 1, last.index + 1)];
    if work.runs.is_empty() {
        return out;
    }
    let mut by: BTreeMap<Begins, Vec<i32>> = BTreeMap::new();
    for r in &work.runs {
        let list = by.entry(r.begins).or_default();
        if list.last() != Some(&r.course) {
            list.push(r.course);
        }
    }
    let each: Vec<String> = by
        .into_iter()
        .map(|(begins, courses)| {
            let from = match begins {
                Begins::Left => "at the left, going right",
                Begins::Right => "at the right, going left",
                Begins::Both => "at both ends, the piece before the viewer last and over both",
            };
            format!("{} {from}", courses_words(&courses))
        })
        .collect();
    out.push(format!(
        "Laps face away from {}: begin seamed runs of {}.",
        work.seen_from_what,
        each.join("; ")
    ));
    out
}

/// `course 3`, `courses 1 to 4, 7`.
fn courses_words(list: &[i32]) -> String {
    let mut parts: Vec<String> = Vec::new();
    let mut at = 0;
    while at < list.len() {
        let mut end = at;
        while end + 1 < list.len() && list[end + 1] == list[end] + 1 {
            end += 1;
        }
        parts.push(match end - at {
            0 => list[at].to_string(),
            1 => format!("{}, {}", list[at], list[end]),
            _ => format!("{} to {}", list[at], list[end]),
        });
        at = end + 1;
    }
    format!("{} {}", if list.len() == 1 { "course" } else { "courses" }, parts.join(", "))
}

/// Finish trim where a cut edge comes: under sills and at tops.
fn cut_edges(index: &Index, w: &LaidWall) -> Vec<String> {
    let mut out = Vec::new();
    let finish = |of_opening: bool| -> Vec<String> {
        let mine = |t: &&TrimPiece| {
            t.kind == TrimKind::FinishTrim && t.opening.is_some() == of_opening && !at_foot(t, w)
        };
        index
            .on(w)
            .filter(mine)
            .map(|t| match &t.opening {
                Some(o) => format!("{} under {o}", t.mark),
                None => t.mark.to_string(),
            })
            .collect()
    };
    let under = finish(true);
    if !under.is_empty() {
        out.push(format!(
            "Before the course that meets the sill: finish trim inside the channel, {}.",
            joined(&under)
        ));
    }
    let tops = finish(false);
    if !tops.is_empty() {
        out.push(format!("Before the top course: finish trim {}.", joined(&tops)));
    }
    if w.edges.iter().any(|e| e.kind == EdgeKind::Rake) {
        out.push(
            "Gable: cut one pattern to the rake and copy it; only the last piece at the peak may take a small nail in its face.".to_owned(),
        );
    }
    out
}
