//! A wall's work in sentences (FACTS OT-09, VSI-A): barrier and flashing, posts, starter, channels,
//! panels from the bottom up, finish trim where cut edges come.

use std::collections::BTreeMap;

use crate::model::house::EdgeKind;
use crate::model::layout::{Layout, Wall};
use crate::model::receiver::Receiver;
use crate::model::trim::{TrimKind, TrimPiece};
use crate::model::work::{Begins, WallWork};
use crate::units::LengthStyle;

/// Snap-lock lugs along a cut edge, inches (FACTS SD-106, VSI-HW).
const LUGS: f64 = 6.0;
/// Nail slots along a cut edge, inches (FACTS PR-09, common practice, no source).
const SLOTS: f64 = 16.0;
/// Room under a nail's head, inches (FACTS SD-25, VSI-H).
const UNDER_HEAD: f64 = 1.0 / 32.0;

pub(super) fn steps(layout: &Layout, w: &Wall, work: &WallWork) -> Vec<String> {
    let style = layout.job.sheet.lengths;
    let rules = &layout.job.trim;
    let marks = |kinds: &[TrimKind]| marks(layout, w, kinds);
    let mut out = vec![
        "Barrier and flashing first, lapped so that water runs over each joint: sill, jambs, head at every opening, a strip round every corner, step flashing and a kick-out where a roof meets the wall. Keep to the barrier maker's and the window maker's instructions.".to_owned(),
    ];
    let posts = marks(&[TrimKind::OutsidePost, TrimKind::InsidePost]);
    if !posts.is_empty() {
        out.push(format!(
            "Corner posts {posts}: hang each from a nail at the top of its top slots, {} under the soffit; the other nails stand in the middle of their slots.",
            style.short(rules.post_top_gap)
        ));
    }
    if let Some(starter) = starter(layout, w) {
        out.push(starter);
    }
    let frames = frames(layout, w);
    if !frames.is_empty() {
        out.push(format!(
            "Channels round openings, sill, jambs, head, then the drip cap: {frames}. Bend the head's tabs down over the jambs, the jambs' over the sill."
        ));
    }
    let others = marks(&[TrimKind::WallChannel, TrimKind::RoofChannel, TrimKind::RakeChannel]);
    if !others.is_empty() {
        out.push(format!("Channels at wall ends, over roofs and along rakes: {others}."));
    }
    for t in &work.tight {
        let mut words = t.words.clone();
        if let Some(first) = words.get(..1).map(str::to_uppercase) {
            words.replace_range(..1, &first);
        }
        out.push(format!("Tight place, before its panels: {words}."));
    }
    out.extend(panels(layout, w, work));
    if !work.level_checks.is_empty() {
        let list: Vec<String> = work.level_checks.iter().map(i32::to_string).collect();
        out.push(format!(
            "Check level, and height against the next wall and the story pole, when course {} is on.",
            joined(&list)
        ));
    }
    out.extend(cut_edges(layout, w));
    out
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
fn marks(layout: &Layout, w: &Wall, kinds: &[TrimKind]) -> String {
    let mine = |t: &&TrimPiece| t.wall == w.id && t.opening.is_none() && kinds.contains(&t.kind);
    let list: Vec<String> = layout.trims.iter().filter(mine).map(|t| t.mark.clone()).collect();
    joined(&list)
}

fn starter(layout: &Layout, w: &Wall) -> Option<String> {
    let style = layout.job.sheet.lengths;
    let list = marks(layout, w, &[TrimKind::Starter]);
    let mut heights: Vec<f64> =
        w.edges.iter().filter(|e| e.receiver == Receiver::Starter).map(|e| e.from[1]).collect();
    heights.sort_by(f64::total_cmp);
    heights.dedup_by(|a, b| (*a - *b).abs() < 0.01);
    if list.is_empty() || heights.is_empty() {
        let cut = w.edges.iter().any(|e| e.kind == EdgeKind::Base || e.kind == EdgeKind::BareTop);
        return cut.then(|| {
            "No course line meets this wall's bottom: the first course is cut there and held by finish trim, not by a starter.".to_owned()
        });
    }
    let at: Vec<String> = heights.iter().map(|h| style.length(*h)).collect();
    Some(format!(
        "Starter {list}: strike the level line and set it so that butt lines stand at {}; {} between lengths and to posts.",
        joined(&at),
        style.short(layout.job.trim.starter_gap)
    ))
}

/// Openings with the marks of their frames.
fn frames(layout: &Layout, w: &Wall) -> String {
    let mut by: BTreeMap<&str, Vec<&str>> = BTreeMap::new();
    for t in layout.trims.iter().filter(|t| t.wall == w.id && t.kind != TrimKind::FinishTrim) {
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
fn panels(layout: &Layout, w: &Wall, work: &WallWork) -> Vec<String> {
    let (Some(first), Some(last)) = (w.courses.first(), w.courses.last()) else {
        return Vec::new();
    };
    let style = layout.job.sheet.lengths;
    let mut out = vec![format!(
        "Panels, course {} to {}, from the bottom up: lock each fully, neither pull it up nor press it down, nail at the middle of the slots from the panel's middle outward and leave {} under the head; {} free in every receiver.",
        first.index + 1,
        last.index + 1,
        under_head(style),
        style.short(layout.job.end_gap())
    )];
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
        "Seen from {}: each next panel laps over the last, so that no lap's edge looks there. Begin runs of {}. Where foam is set off to one side, ask the maker which hand panels run.",
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
fn cut_edges(layout: &Layout, w: &Wall) -> Vec<String> {
    let style = layout.job.sheet.lengths;
    let mut out = Vec::new();
    let finish = |of_opening: bool| -> Vec<String> {
        let mine = |t: &&TrimPiece| {
            t.wall == w.id && t.kind == TrimKind::FinishTrim && t.opening.is_some() == of_opening
        };
        layout
            .trims
            .iter()
            .filter(mine)
            .map(|t| match &t.opening {
                Some(o) => format!("{} under {o}", t.mark),
                None => t.mark.clone(),
            })
            .collect()
    };
    let under = finish(true);
    if !under.is_empty() {
        out.push(format!(
            "Before the course that meets a sill: finish trim inside the sill channel, {}; punch snap-lock lugs every {} along the cut edge.",
            joined(&under),
            style.short(LUGS)
        ));
    }
    let tops = finish(false);
    if !tops.is_empty() {
        out.push(format!(
            "Before the top course: finish trim {}; where the top course is ripped its hem is gone, so punch lugs, or nail slots every {} under a face board.",
            joined(&tops),
            style.short(SLOTS)
        ));
    }
    if w.edges.iter().any(|e| e.kind == EdgeKind::Rake) {
        out.push(
            "Gable: cut one pattern to the rake and copy it; only the last piece at the peak may take a small nail in its face.".to_owned(),
        );
    }
    out
}
