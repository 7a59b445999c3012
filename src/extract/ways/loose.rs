//! Walls from loose lines: on wall layers where they outweigh closed outlines, and in views that the
//! job names.

use std::collections::{BTreeMap, BTreeSet};

use super::faces_of::{Sorted, sorted};
use super::foot;
use crate::extract::outline::{Outline, source, stroke_box};
use crate::finding::house::HouseFinding;
use crate::finding::lines::LineFinding;
use crate::finding::{Finding, FindingKind, Findings};
use crate::geom::boolean::intersection;
use crate::geom::polygon::{Polygon, bounds, sides};
use crate::geom::segment::Segment;
use crate::geom::vocabulary::Point;
use crate::job::Job;
use crate::model::house::WallWay;
use crate::model::linework::{Linework, Role, Stroke};
use crate::origin::{EntityKind, Origin, round_place};

/// Most segments that are arranged at once.
const MOST: usize = 400_000;

/// An outline that somebody meant to close: its ends are nearer than a twentieth of its way.
fn nearly_closed(s: &Stroke) -> bool {
    let (Some(a), Some(b)) = (s.points.first(), s.points.last()) else { return false };
    !s.closed && s.points.len() > 3 && a.distance(*b) < way(s) / 20.0
}

fn way(s: &Stroke) -> f64 {
    s.points.windows(2).map(|w| w[0].distance(w[1])).sum()
}

/// Wall layers whose lines are loose: open ones outweigh closed outlines, and none is an outline
/// that only lacks its last inches. `seen` says of which strokes something lies in a view.
pub(super) fn layers(lines: &Linework, seen: impl Fn(&Stroke) -> bool) -> BTreeSet<usize> {
    let walls = || lines.strokes.iter().filter(|s| s.role == Some(Role::Wall) && seen(s));
    let meant: BTreeSet<usize> = walls().filter(|s| nearly_closed(s)).map(|s| s.layer).collect();
    let mut weight: BTreeMap<usize, (f64, f64)> = BTreeMap::new();
    for s in walls().filter(|s| !meant.contains(&s.layer)) {
        let length = way(s);
        let w = weight.entry(s.layer).or_default();
        *(if s.closed { &mut w.0 } else { &mut w.1 }) += length;
    }
    weight.into_iter().filter(|(_, (closed, open))| open > closed).map(|(l, _)| l).collect()
}

fn segments(strokes: &[&Stroke]) -> Vec<Segment> {
    let all = strokes.iter().flat_map(|s| {
        let open = s.points.windows(2).map(|w| (w[0], w[1])).collect::<Vec<_>>();
        if s.closed { sides(&s.points).collect() } else { open }
    });
    all.filter(|(a, b)| a != b).take(MOST).collect()
}

/// Walls on wall layers: of the faces of loose lines, where there are any. Lines that show no face
/// are reported as open outlines.
pub(super) fn outlines(
    lines: &Linework,
    (soup, seen): (&BTreeSet<usize>, &impl Fn(&Stroke) -> bool),
    job: &Job,
    findings: &mut Findings,
) -> Vec<Outline> {
    let mut out = Vec::new();
    for layer in soup {
        let strokes: Vec<&Stroke> = lines
            .strokes
            .iter()
            .filter(|s| s.role == Some(Role::Wall) && s.layer == *layer && seen(s))
            .collect();
        let found = clustered(lines, &strokes, job, findings);
        if found.is_empty() {
            let open: Vec<&Stroke> = strokes.into_iter().filter(|s| !s.closed).collect();
            report_open(lines, &open, findings);
        }
        out.extend(found);
    }
    // Beside closed outlines an open one means a wall that would be missing.
    let strays: Vec<&Stroke> = lines
        .strokes
        .iter()
        .filter(|s| !s.closed && !soup.contains(&s.layer) && s.role == Some(Role::Wall))
        .chain(lines.strokes.iter().filter(|s| !s.closed && s.role == Some(Role::Bare)))
        .filter(|s| seen(s))
        .collect();
    report_open(lines, &strays, findings);
    out
}

/// Walls of the lines that a view of the job shows, whatever their layer.
pub(crate) fn of_view<'a>(
    lines: &Linework,
    strokes: impl Iterator<Item = &'a Stroke>,
    job: &Job,
    findings: &mut Findings,
) -> Vec<Outline> {
    let kept: Vec<&Stroke> =
        strokes.filter(|s| matches!(s.role, None | Some(Role::Wall | Role::Texture))).collect();
    clustered(lines, &kept, job, findings)
}

/// Walls of lines that stand together, elevation by elevation: courses of one are no measure for
/// another.
fn clustered(
    lines: &Linework,
    strokes: &[&Stroke],
    job: &Job,
    findings: &mut Findings,
) -> Vec<Outline> {
    let own: Vec<usize> =
        strokes.iter().map(|s| s.layer).collect::<BTreeSet<_>>().into_iter().collect();
    let mut out = Vec::new();
    for group in groups(strokes) {
        let Some(first) = group.first() else { continue };
        let mut origin: Origin = first.origin.clone();
        origin.entity = EntityKind::Line;
        let found = sorted(&segments(&group), job.drawing.weld, &origin);
        report(lines, &found, first, job.drawing.weld, findings);
        for wall in found.walls {
            let mut outline = Outline {
                ring: wall.ring,
                way: WallWay::Arrangement,
                layer: first.layer,
                origin: origin.clone(),
                exposure: wall.exposure,
                openings: wall.openings,
                ..Outline::default()
            };
            cut_foot(lines, &mut outline, &own, findings);
            out.push(outline);
        }
    }
    out
}

fn cut_foot(lines: &Linework, outline: &mut Outline, own: &[usize], findings: &mut Findings) {
    let Some((ring, y, layer)) = foot::cut(lines, &outline.ring, own) else { return };
    outline.ring = ring;
    let whole = [outline.polygon()];
    for o in &mut outline.openings {
        let kept = intersection(&[Polygon::simple(o.outline.clone()).wound()], &whole);
        if let Some(part) = kept.into_iter().max_by(|a, b| a.area().total_cmp(&b.area())) {
            o.outline = part.outer;
        }
        o.kind = super::recess::by_size(bounds(&o.outline).unwrap_or_default(), y);
    }
    let name = lines.layers.get(layer).map_or("", |l| l.layer.name.as_str());
    let at = outline.ring.first().copied().unwrap_or(Point::ZERO);
    let kind = HouseFinding::WallFoot { layer: name.to_owned() };
    findings.push(Finding::new(kind).at(source(lines, at)));
}

fn report(lines: &Linework, found: &Sorted, first: &Stroke, weld: f64, findings: &mut Findings) {
    if found.walls.is_empty() {
        return;
    }
    let at = first.points.first().map_or(Point::ZERO, |p| source(lines, *p));
    let mut push = |kind: FindingKind| {
        findings.push(Finding::new(kind).about(&first.origin).at(at));
    };
    if found.welded > 0 {
        push(LineFinding::EndsJoined { ends: found.welded, weld, loose: true }.into());
    }
    if found.left > 0 {
        push(HouseFinding::FacesLeft { faces: found.left }.into());
    }
}

/// Strokes whose boxes come within 4 ft of one another, left to right: lines of one elevation.
fn groups<'a>(strokes: &[&'a Stroke]) -> Vec<Vec<&'a Stroke>> {
    const NEAR: f64 = 48.0;
    // Views stand side by side or over one another: cut at bare strips sideways, then upward.
    let across = cut(strokes.to_vec(), NEAR, |s| {
        let b = stroke_box(s);
        (b.x0, b.x1)
    });
    across
        .into_iter()
        .flat_map(|g| {
            cut(g, NEAR, |s| {
                let b = stroke_box(s);
                (b.y0, b.y1)
            })
        })
        .collect()
}

fn cut(
    mut strokes: Vec<&Stroke>,
    near: f64,
    span: impl Fn(&Stroke) -> (f64, f64),
) -> Vec<Vec<&Stroke>> {
    strokes.sort_by(|a, b| span(a).0.total_cmp(&span(b).0));
    let mut out: Vec<Vec<&Stroke>> = Vec::new();
    let mut end = f64::NEG_INFINITY;
    for s in strokes {
        let (from, to) = span(s);
        match out.last_mut() {
            Some(group) if from <= end + near => group.push(s),
            _ => out.push(vec![s]),
        }
        end = end.max(to);
    }
    out
}

/// An open outline on a wall or bare layer stops the program: its area is a guess.
pub(super) fn report_open(lines: &Linework, open: &[&Stroke], findings: &mut Findings) {
    for s in open {
        let (Some(a), Some(b)) = (s.points.first(), s.points.last()) else { continue };
        // The gap is to the nearest other loose end, its own other end included.
        let others = open
            .iter()
            .filter(|o| !std::ptr::eq(**o, *s))
            .flat_map(|o| [o.points.first(), o.points.last()])
            .flatten();
        let mut nearest = *b;
        for q in others {
            if q.distance(*a) < nearest.distance(*a) {
                nearest = *q;
            }
        }
        let gap = nearest.distance(*a);
        let k = lines.scale.inches;
        let (p, q) = (source(lines, *a), source(lines, nearest));
        let [from, to] = [p, q].map(|p| round_place(p, k)).map(|p| [p.x, p.y]);
        let kind = HouseFinding::WallOpen {
            bare: s.role != Some(Role::Wall),
            gap,
            drawn_gap: round_place(Point::new(gap / k, 0.0), k).x,
            unit: lines.scale.unit,
            from,
            to,
        };
        findings.push(Finding::new(kind).about(&s.origin).at(p));
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn line(a: (f64, f64), b: (f64, f64)) -> Stroke {
        Stroke {
            points: vec![a.into(), b.into()],
            closed: false,
            role: Some(Role::Wall),
            layer: 0,
            group: None,
            part_of: None,
            ink: Default::default(),
            entities: 1,
            origin: Origin::default(),
        }
    }

    #[test]
    fn a_gap_wider_than_the_weld_stays_open_and_is_measured() {
        let mut lines = Linework::default();
        lines.scale.inches = 1.0;
        lines.strokes = vec![
            line((0., 0.), (10., 0.)),
            line((10., 0.), (10., 8.)),
            line((10., 8.), (0., 8.)),
            line((0., 8.), (0., 0.5)),
        ];
        let mut findings = Findings::default();
        let found = outlines(
            &lines,
            (&layers(&lines, |_: &Stroke| true), &|_: &Stroke| true),
            &Job::default(),
            &mut findings,
        );
        assert!(found.is_empty());
        let gaps = findings.all().iter().filter_map(|f| match &f.kind {
            FindingKind::House(HouseFinding::WallOpen { gap, .. }) => Some(*gap),
            _ => None,
        });
        assert!(gaps.into_iter().any(|gap| gap == 0.5));
    }

    #[test]
    fn corners_that_overshoot_still_close() {
        let mut lines = Linework::default();
        lines.scale.inches = 1.0;
        lines.strokes = vec![
            line((-3., 0.), (203., 0.)),
            line((200., -3.), (200., 103.)),
            line((203., 100.), (-3., 100.)),
            line((0., 103.), (0., -3.)),
        ];
        let mut findings = Findings::default();
        let found = outlines(
            &lines,
            (&layers(&lines, |_: &Stroke| true), &|_: &Stroke| true),
            &Job::default(),
            &mut findings,
        );
        assert_eq!(found.len(), 1);
        assert_eq!(found[0].polygon().area(), 20_000.0);
        assert_eq!(findings.count(crate::finding::Severity::Error), 0);
    }
}
