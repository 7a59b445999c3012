//! Patterns of curved cuts, round an arched head or along a curved edge: what the pieces there are cut to,
//! clearances included, from butt line to butt line.

use super::tiles::{Pattern, pages};
use crate::annotate::page::Page;
use crate::annotate::style::Ink;
use crate::geom::polygon::bounds;
use crate::geom::vocabulary::{Point, Rect};
use crate::language::{Phrase, SheetLanguage};
use crate::layout::Layout;
use crate::layout::course::LaidCourse;
use crate::layout::piece::Piece;
use crate::layout::wall::LaidWall;
use crate::model::notch::Contour;
use crate::wording::cuts::is_round;
use crate::wording::{lists, patterns};

/// Curves nearer than this belong to one pattern, inches.
const NEAR: f64 = 3.0;

/// A curved cut, in elevation inches.
struct Curve<'a> {
    line: Vec<Point>,
    mark: &'a str,
}

/// Curves that belong together.
struct Group<'a> {
    curves: Vec<Curve<'a>>,
    bounds: Rect,
}

/// The pages of every curved cut of the house.
pub(super) fn sheets(layout: &Layout) -> Vec<Page> {
    let mut out = Vec::new();
    for (e, w) in layout.walls() {
        for group in groups(w) {
            let number = out.len();
            let names = names(w, &group.bounds);
            let names = Phrase::new(|lang| match names.as_slice() {
                [] => w.id.to_string(),
                _ => lists::joined_in(lang, &names),
            });
            let stem = format!("curve-pattern-{}", number + 1);
            out.push((pattern(layout.job.sheet.language, w, &group, &names, stem), e));
        }
    }
    out.iter().flat_map(|(p, _)| pages(layout, p)).collect()
}

/// The curves of a wall, those near one another together.
fn groups(w: &LaidWall) -> Vec<Group<'_>> {
    let mut out: Vec<Group> = Vec::new();
    for k in &w.courses {
        for p in k.runs.iter().flat_map(|r| &r.pieces) {
            for curve in curves(p, k) {
                let Some(r) = bounds(&curve.line) else { continue };
                let mut group = Group { curves: vec![curve], bounds: r };
                // Whatever it touches becomes one with it.
                while let Some(i) = out.iter().position(|g| near(&g.bounds, &group.bounds)) {
                    let other = out.swap_remove(i);
                    group.bounds = group.bounds.union(other.bounds);
                    group.curves.extend(other.curves);
                }
                out.push(group);
            }
        }
    }
    out.sort_by(|a, b| {
        a.bounds.x0.total_cmp(&b.bounds.x0).then(a.bounds.y0.total_cmp(&b.bounds.y0))
    });
    out
}

fn near(a: &Rect, b: &Rect) -> bool {
    let a = a.inflate(NEAR, NEAR);
    a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1
}

fn curves<'a>(p: &'a Piece, k: &LaidCourse) -> Vec<Curve<'a>> {
    let line = |c: &Contour| -> Vec<Point> {
        c.points.iter().map(|q| Point::new(p.x0 + q[0], k.bottom + q[1])).collect()
    };
    let ends = p.ends.iter().filter_map(|e| e.contour.as_ref());
    let notches = p.notches.iter().filter(|n| !is_round(n)).filter_map(|n| n.contour.as_ref());
    ends.chain(notches)
        .filter(|c| c.spacing.is_some())
        .map(|c| Curve { line: line(c), mark: &p.mark })
        .collect()
}

/// Openings and fixtures that a pattern goes round.
fn names<'a>(w: &'a LaidWall, r: &Rect) -> Vec<&'a str> {
    let shapes = w
        .openings
        .iter()
        .map(|o| (o.id.as_str(), &o.outline))
        .chain(w.obstacles.iter().map(|o| (o.id.as_str(), &o.outline)));
    let hit = |outline: &[[f64; 2]]| {
        let points: Vec<Point> = outline.iter().map(|q| Point::new(q[0], q[1])).collect();
        bounds(&points).is_some_and(|b| near(&b, r))
    };
    shapes.filter(|(_, o)| hit(o)).map(|(id, _)| id).collect()
}

fn pattern(
    say: SheetLanguage,
    w: &LaidWall,
    group: &Group,
    names: &Phrase,
    stem: String,
) -> Pattern {
    let r = group.bounds.inflate(0.5, 0.25);
    let mut strokes: Vec<(Ink, Vec<Point>)> =
        group.curves.iter().map(|c| (Ink::Wall, c.line.clone())).collect();
    let mut texts: Vec<(Point, String)> = Vec::new();
    for k in &w.courses {
        for y in [k.bottom, k.top].into_iter().filter(|y| *y > r.y0 && *y < r.y1) {
            strokes.push((Ink::Course, vec![Point::new(r.x0, y), Point::new(r.x1, y)]));
        }
    }
    for c in &group.curves {
        let middle = c.line[c.line.len() / 2];
        let inward = if middle.x < r.center().x { 0.6 } else { -0.6 };
        texts.push((Point::new(middle.x + inward, middle.y - 0.3), c.mark.to_owned()));
    }
    Pattern {
        stem,
        title: Phrase::new(|lang| patterns::curve_title(lang, names.of(lang))),
        description: say.line(|lang| patterns::curve_description(lang, names.of(lang))),
        lines: vec![say.sentence(patterns::FULL_SIZE_NOTE), say.sentence(patterns::CURVE_USE)],
        bounds: r,
        strokes,
        texts,
    }
}
