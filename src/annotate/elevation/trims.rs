//! Trim, each kind by its line type, and its marks.

use std::collections::BTreeMap;

use super::view::View;
use crate::annotate::canvas::{Canvas, Look, Mark};
use crate::annotate::elevation_index::AtElevation;
use crate::annotate::style::Ink;
use crate::geom::vocabulary::{Point, Vec2};
use crate::job::Job;
use crate::language::{Said, SheetLanguage};
use crate::layout::wall::LaidElevation;
use crate::model::corner::{CornerKind, Hand};
use crate::model::trim::{TrimKind, TrimPiece};
use crate::wording::{legend, trim};

fn ink(kind: TrimKind) -> Ink {
    match kind {
        TrimKind::OutsidePost | TrimKind::InsidePost => Ink::Post,
        TrimKind::Starter => Ink::Starter,
        TrimKind::FinishTrim => Ink::Finish,
        TrimKind::DripCap => Ink::DripCap,
        TrimKind::Surround
        | TrimKind::CornerCover
        | TrimKind::Frieze
        | TrimKind::Band
        | TrimKind::Filler
        | TrimKind::TopBase
        | TrimKind::TopFace
        | TrimKind::TopPanel
        | TrimKind::Crown => Ink::Board,
        _ => Ink::Channel,
    }
}

/// Drawn a hair off the edge it follows, so that both lines are seen.
fn off(kind: TrimKind) -> Vec2 {
    match kind {
        TrimKind::Starter | TrimKind::SillChannel => Vec2::new(0.0, -0.02),
        TrimKind::FinishTrim => Vec2::new(0.0, -0.035),
        TrimKind::DripCap => Vec2::new(0.0, 0.05),
        TrimKind::HeadChannel => Vec2::new(0.0, 0.02),
        _ => Vec2::ZERO,
    }
}

pub(super) fn lines(c: &mut Canvas, on: &AtElevation, v: &View) {
    // Its face over the panels' ends.
    for p in &on.posts {
        for [foot, top] in [p.corner_at, p.face] {
            c.firm(Ink::Post, v.at(foot, p.heights.0), v.at(top, p.heights.1));
        }
    }
    for t in &on.trims {
        let off = off(t.kind);
        let line: Vec<Point> = t.line().iter().map(|p| v.xy(p) + off).collect();
        if let [a, b] = line[..] {
            c.firm(ink(t.kind), a, b);
        } else {
            c.chain(ink(t.kind), &line);
        }
    }
}

/// Where the mark of a piece would best stand, seen from its line.
fn beside(t: &TrimPiece, e: &LaidElevation, v: &View) -> Vec2 {
    let middle = t.place(0.5);
    let opening = t
        .opening
        .as_ref()
        .and_then(|id| e.walls.iter().flat_map(|w| &w.openings).find(|o| o.id == *id));
    match (t.kind, opening) {
        // Into the opening, where the wall's own marks do not stand.
        (TrimKind::JambChannel, Some(o)) => {
            Vec2::new(if middle[0] < (o.left + o.right) / 2.0 { 0.2 } else { -0.2 }, 0.0)
        }
        (TrimKind::BentChannel, Some(o)) => {
            Vec2::new(0.0, if middle[1] < (o.sill + o.head) / 2.0 { 0.13 } else { -0.13 })
        }
        (TrimKind::HeadChannel, Some(_)) => Vec2::new(0.0, -0.13),
        (TrimKind::SillChannel, Some(_)) => Vec2::new(0.0, 0.13),
        (TrimKind::DripCap, _) => Vec2::new(0.0, 0.16),
        (TrimKind::FinishTrim, Some(_)) => Vec2::new(0.0, -0.2),
        (TrimKind::Starter, _) => Vec2::new(0.0, -0.16),
        (TrimKind::OutsidePost | TrimKind::InsidePost, _) => {
            // Into the wall: course numbers stand outside.
            Vec2::new(if middle[0] > v.house.center().x { -0.24 } else { 0.24 }, 0.0)
        }
        (TrimKind::RakeChannel, _) => Vec2::new(0.0, 0.22),
        // Away from the wall: below its foot, over its top.
        (TrimKind::WallChannel | TrimKind::FinishTrim, _) => {
            let wall = e.walls.iter().find(|w| w.id == t.wall);
            let heights = wall.iter().flat_map(|w| &w.outline).map(|p| p[1]);
            let (low, high) = heights.fold((f64::MAX, f64::MIN), |(a, b), y| (a.min(y), b.max(y)));
            Vec2::new(0.0, if middle[1] < (low + high) / 2.0 { -0.18 } else { 0.18 })
        }
        _ => Vec2::new(0.0, -0.18),
    }
}

/// Marks of trim, framed. Returns how many found no room, and how many stand over what is built.
pub(super) fn marks(
    c: &mut Canvas,
    on: &AtElevation,
    e: &LaidElevation,
    v: &View,
) -> (usize, usize) {
    let (mut none, mut crowded) = (0, 0);
    for t in &on.trims {
        match mark(c, t, e, v) {
            Placed::Clear => {}
            Placed::OverWork => crowded += 1,
            Placed::Nowhere => none += 1,
        }
    }
    (none, crowded)
}

/// Where a mark of trim stands.
enum Placed {
    /// Off all that is built, or on another sheet.
    Clear,
    /// Over what is built.
    OverWork,
    /// There was no room.
    Nowhere,
}

fn mark(c: &mut Canvas, t: &TrimPiece, e: &LaidElevation, v: &View) -> Placed {
    let middle = t.place(0.5);
    if !v.holds(middle[0], middle[1]) {
        return Placed::Clear;
    }
    let beside = beside(t, e, v);
    let at = |along: f64, reach: f64| {
        let target = v.xy(&t.place(along)) + off(t.kind);
        Mark { text: &t.mark, target, wish: target + beside, reach, look: Look::Framed }
    };
    // Half way along, else nearer an end, close by; else wherever there is room.
    let close = [0.3, 0.9].into_iter().flat_map(|r| [0.5, 0.35, 0.65, 0.2, 0.8].map(|k| (k, r)));
    if close.clone().any(|(k, r)| c.mark_off_work(at(k, r)).is_some())
        || c.mark_off_work(at(0.5, 2.5)).is_some()
    {
        return Placed::Clear;
    }
    if close.into_iter().any(|(k, r)| c.mark_clear(at(k, r)).is_some())
        || c.mark(at(0.5, 6.0)).is_some()
    {
        return Placed::OverWork;
    }
    Placed::Nowhere
}

/// What the key says of bent channel and of boards that stand on this elevation, by their marks, and of
/// where siding ends at corners.
pub(super) fn key(job: &Job, on: &AtElevation) -> Vec<String> {
    let say = job.sheet.language;
    let bent = on.trims.iter().any(|t| t.kind == TrimKind::BentChannel);
    let mut out: Vec<String> =
        bent.then(|| say.sentence(legend::BENT_CHANNEL)).into_iter().collect();
    out.extend(boards(say, on));
    let ripped = || on.trims.iter().copied().filter(|t| t.width.is_some());
    out.extend(
        say.blocks(|lang| trim::sizes(lang, ripped(), job.sheet.lengths).into_iter().collect()),
    );
    let style = job.sheet.lengths;
    let backs = set_backs(job, on);
    if !backs.is_empty() {
        out.push(say.block(|lang| legend::set_backs(lang, &backs, &style.short(job.end_gap()))));
    }
    let leaning = leaning(on);
    if !leaning.is_empty() {
        out.push(say.block(|lang| legend::leaning(lang, &leaning, style)));
    }
    out
}

/// Least that a corner leans which is told, inches: a mark of a tape.
const LEANS: f64 = 1.0 / 16.0;

/// Corners that lean, by wall and hand, each with how far its top stands to the right of its foot; with the wall where
/// several are shown.
fn leaning(on: &AtElevation) -> Vec<(Option<String>, Hand, f64)> {
    let mut ends: BTreeMap<(&str, Hand), [[f64; 2]; 2]> = BTreeMap::new();
    for p in &on.posts {
        let hand = if p.face[0] > p.corner_at[0] { Hand::Left } else { Hand::Right };
        let (foot, top) = ([p.heights.0, p.corner_at[0]], [p.heights.1, p.corner_at[1]]);
        let of = ends.entry((p.wall.as_str(), hand)).or_insert([foot, top]);
        *of = [
            if foot[0] < of[0][0] { foot } else { of[0] },
            if top[0] > of[1][0] { top } else { of[1] },
        ];
    }
    let several = on.posts.windows(2).any(|p| p[0].wall != p[1].wall);
    let lean = |((wall, hand), [foot, top]): ((&str, Hand), [[f64; 2]; 2])| {
        (several.then(|| wall.to_owned()), hand, top[1] - foot[1])
    };
    ends.into_iter().map(lean).filter(|l| l.2.abs() > LEANS).collect()
}

/// The set-backs of the corners that stand here: of square ones the greatest, then of each angle.
fn set_backs(job: &Job, on: &AtElevation) -> Vec<(CornerKind, Option<f64>, String)> {
    let mut out: Vec<(CornerKind, Option<f64>, f64)> = Vec::new();
    for kind in [CornerKind::Outside, CornerKind::Inside] {
        let of_kind = || on.posts.iter().filter(|p| p.corner == kind);
        if of_kind().any(|p| p.angle.is_none()) {
            out.push((kind, None, job.set_backs().most(kind)));
        }
        let mut angled: Vec<(f64, f64)> =
            of_kind().filter_map(|p| Some((p.angle?, p.set_back))).collect();
        angled.sort_by(|a, b| a.0.total_cmp(&b.0).then(b.1.total_cmp(&a.1)));
        angled.dedup_by_key(|a| a.0);
        out.extend(angled.into_iter().map(|(angle, back)| (kind, Some(angle), back)));
    }
    let shown = out.into_iter().filter(|(.., back)| *back > 0.0);
    shown.map(|(kind, angle, back)| (kind, angle, job.sheet.lengths.short(back))).collect()
}

fn boards(say: SheetLanguage, on: &AtElevation) -> Option<String> {
    let here = |kind: TrimKind| on.trims.iter().find(|t| t.kind == kind && ink(kind) == Ink::Board);
    let letters = |k: TrimKind| -> Option<(String, Said)> {
        let letters = here(k)?.mark.chars().take_while(|c| c.is_alphabetic()).collect();
        Some((letters, trim::kind(k)))
    };
    let all: Vec<(String, Said)> = TrimKind::ALL.into_iter().filter_map(letters).collect();
    let words = |lang| -> Vec<String> {
        all.iter().map(|(letters, kind)| format!("{letters} {}", kind.of(lang))).collect()
    };
    (!all.is_empty()).then(|| say.block(|lang| legend::boards(lang, &words(lang))))
}
