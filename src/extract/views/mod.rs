//! Which part of the drawing is which elevation: regions of the job, frames with titles, or walls
//! that stand together with the nearest title below.

mod across;
mod far_titles;
mod names;
mod on_layers;
mod partial;
mod reads;
mod run_on;
mod titles;
mod together;
mod variants;
use std::collections::BTreeSet;

use self::across::Across;
use self::names::Named;
pub(crate) use self::on_layers::on_layers;
use self::reads::Shows;
use self::run_on::Reach;
use self::titles::{Title, titles};
use self::together::APART;
use super::outline::{Outline, stroke_box};
use super::turns;
use crate::finding::views::{OtherView, ViewFinding};
use crate::finding::{Finding, Findings};
use crate::geom::vocabulary::{Point, Rect};
use crate::job::Job;
use crate::model::house::WallWay;
use crate::model::linework::{Label, Linework, Measured, Role, Stroke};
use crate::model::turn::Turn;

/// One elevation's part of the drawing.
#[derive(Clone, Debug)]
pub(crate) struct View {
    pub(crate) name: String,
    /// Inches of the whole drawing.
    pub(crate) region: Rect,
    /// Layer patterns it is limited to; all where empty.
    pub(crate) layers: Vec<String>,
    /// Named by the job, rather than found.
    pub(crate) of_job: bool,
    /// What its title says it shows, if that is not sided.
    left_alone: Option<OtherView>,
    /// The turn that sets its title upright.
    pub(crate) title: Option<Turn>,
    /// Indices of its strokes.
    members: Vec<usize>,
    /// Its parts of lines that run on across other views, with their indices.
    parts: Vec<(usize, Stroke)>,
    /// Indices of the labels in its region.
    labels: Vec<usize>,
    /// Indices of the dimensions whose text is in its region.
    dimensions: Vec<usize>,
}

impl View {
    /// Strokes whose middle lies in the view, and its parts of lines that run on.
    pub(crate) fn strokes<'a, 'v: 'a>(
        &'v self,
        lines: &'a Linework,
    ) -> impl Iterator<Item = &'a Stroke> + use<'a> {
        let whole = self.members.iter().filter_map(|i| lines.strokes.get(*i));
        whole.chain(self.parts.iter().map(|p| &p.1))
    }

    /// Indices of its strokes, and of those it has a part of.
    pub(crate) fn members(&self) -> impl Iterator<Item = usize> + '_ {
        self.members.iter().copied().chain(self.parts.iter().map(|p| p.0))
    }

    /// Corner tags in the view.
    pub(crate) fn tags<'a, 'v: 'a>(
        &'v self,
        lines: &'a Linework,
    ) -> impl Iterator<Item = &'a Label> + use<'a> {
        self.labels(lines).filter(|l| l.role == Some(Role::CornerTag))
    }

    /// Texts in the view.
    pub(crate) fn labels<'a, 'v: 'a>(
        &'v self,
        lines: &'a Linework,
    ) -> impl Iterator<Item = &'a Label> + use<'a> {
        self.labels.iter().filter_map(|i| lines.labels.get(*i))
    }

    /// Dimensions in the view.
    pub(crate) fn dimensions<'a, 'v: 'a>(
        &'v self,
        lines: &'a Linework,
    ) -> impl Iterator<Item = &'a Measured> + use<'a> {
        self.dimensions.iter().filter_map(|i| lines.measured.get(*i))
    }

    fn takes(&self, lines: &Linework, s: &Stroke) -> bool {
        s.role != Some(Role::Frame)
            && (self.layers.is_empty() || on_layers(lines, s.layer, &self.layers))
    }

    /// What its title says it shows, if that is not sided.
    pub(crate) fn left_alone(&self) -> Option<OtherView> {
        self.left_alone
    }

    /// Whether something that the job gives is its: by name where it names a view, else by place.
    pub(crate) fn shows(&self, named: Option<&str>, frame: Rect) -> bool {
        named.map_or_else(|| self.region.contains(frame.center()), |n| self.is_named(n))
    }

    /// Whether it is called so, capitals or not.
    pub(crate) fn is_named(&self, name: &str) -> bool {
        self.name.trim().eq_ignore_ascii_case(name.trim())
    }

    /// Whether an outline is one of its walls.
    pub(crate) fn holds(&self, lines: &Linework, o: &Outline) -> bool {
        if let Some(by) = &o.given {
            return self.shows(by.elevation.as_deref(), o.frame());
        }
        self.region.contains(o.frame().center())
            && (self.layers.is_empty() || on_layers(lines, o.layer, &self.layers))
    }
}

/// Gives each view its strokes and texts.
fn fill(lines: &Linework, views: &mut [View]) {
    let strokes =
        Across::of(lines.strokes.iter().enumerate().map(|(i, s)| (stroke_box(s).center(), i)));
    let labels = Across::of(lines.labels.iter().enumerate().map(|(i, l)| (l.text.at, i)));
    let dimensions = Across::of(lines.measured.iter().enumerate().map(|(i, d)| (d.middle, i)));
    for v in views {
        let mut members = strokes.within(v.region);
        members.retain(|i| v.takes(lines, &lines.strokes[*i]));
        v.members = members;
        v.labels = labels.within(v.region);
        v.dimensions = dimensions.within(v.region);
    }
}

/// Gives each view its part of the grade and level lines that run across several.
fn share(lines: &Linework, outlines: &[Outline], views: &mut [View]) {
    let reach = |v: &View| {
        let frames = outlines.iter().filter(|o| v.holds(lines, o)).map(Outline::frame);
        Reach { region: v.region, walls: frames.reduce(|a, b| a.union(b)).unwrap_or(v.region) }
    };
    let reaches: Vec<Reach> = views.iter().map(reach).collect();
    let takes = |view: usize, s: &Stroke| views[view].takes(lines, s);
    for part in run_on::parts(lines, &reaches, APART, takes) {
        let v = &mut views[part.view];
        v.members.retain(|i| *i != part.of);
        v.parts.push((part.of, part.stroke));
    }
}

/// Views of a drawing.
pub(crate) struct Views {
    /// Elevations, left to right.
    pub(crate) elevations: Vec<View>,
    /// Plans, sections and details in the same drawing.
    pub(crate) left_alone: Vec<View>,
    /// Titles of such, with what they say they show.
    pub(crate) others: Vec<(OtherView, String)>,
}

/// The views of a drawing.
pub(crate) fn views(
    lines: &Linework,
    outlines: &[Outline],
    job: &Job,
    findings: &mut Findings,
) -> Views {
    let titles = titles(lines);
    let mut found = of_job(lines, job);
    if found.is_empty() {
        found = of_frames(lines, &titles);
    }
    if found.is_empty() {
        found = of_clusters(lines, outlines, &titles, findings);
        // Walls on a layer that the job names letter by letter are wanted, whatever the title.
        let named =
            |o: &Outline| lines.layers.get(o.layer).is_some_and(|l| job.names_layer(&l.layer.name));
        for v in &mut found {
            if outlines.iter().any(|o| v.holds(lines, o) && named(o)) {
                v.left_alone = None;
            }
        }
    }
    of_given(outlines, &mut found, job);
    keep_sections_with_siding(lines, outlines, &mut found, findings);
    let parts = partial::of_others(&names_of(&found));
    for (v, part) in found.iter_mut().zip(parts) {
        v.left_alone = v.left_alone.or((part && !v.of_job).then_some(OtherView::Partial));
    }
    found.sort_by(|a, b| {
        a.region.x0.total_cmp(&b.region.x0).then(b.region.y0.total_cmp(&a.region.y0))
    });
    let (mut left_alone, mut elevations): (Vec<View>, Vec<View>) =
        found.into_iter().partition(|v| v.left_alone.is_some());
    let many = elevations.len() > 1;
    for (i, v) in elevations.iter_mut().enumerate().filter(|(_, v)| v.name.is_empty()) {
        v.name = if many { format!("elevation {}", i + 1) } else { "elevation".to_owned() };
    }
    names::distinct(elevations.iter_mut().map(|v| &mut v.name));
    left_alone.extend(without_skipped(&mut elevations, job, findings));
    let of_variant = variants::built(&names_of(&elevations), job, findings);
    let others_of_model = split(&mut elevations, &of_variant);
    fill(lines, &mut elevations);
    share(lines, outlines, &mut elevations);
    for v in left_alone.iter().filter(|v| outlines.iter().any(|o| v.holds(lines, o))) {
        let Some(shows) = v.left_alone else { continue };
        let at = Point::new(v.region.x0, v.region.y0);
        let at = super::outline::source(lines, at);
        let kind = ViewFinding::ViewLeftAlone { title: v.name.clone(), shows };
        findings.push(Finding::new(kind).at(at));
    }
    left_alone.extend(others_of_model);
    Views { elevations, left_alone, others: titles::others(&titles) }
}

fn names_of(views: &[View]) -> Vec<&str> {
    views.iter().map(|v| v.name.as_str()).collect()
}

/// Takes out those that are not kept.
fn split(views: &mut Vec<View>, kept: &[bool]) -> Vec<View> {
    let all = std::mem::take(views).into_iter().zip(kept);
    let (stay, go): (Vec<_>, Vec<_>) = all.partition(|(_, kept)| **kept);
    *views = stay.into_iter().map(|(v, _)| v).collect();
    go.into_iter().map(|(v, _)| v).collect()
}

/// Takes out the views that the job leaves out, and says so.
fn without_skipped(elevations: &mut Vec<View>, job: &Job, findings: &mut Findings) -> Vec<View> {
    let names = names_of(elevations);
    turns::report_unknown(&names, job, |v| v.skip, findings);
    let kept: Vec<bool> = names.iter().map(|n| !turns::skips(job, n)).collect();
    let skipped = split(elevations, &kept);
    for v in &skipped {
        findings.push(Finding::new(ViewFinding::ViewSkipped { view: v.name.clone() }));
    }
    skipped
}

/// A section that shows hatched siding shows the wall behind the cut: it is kept, and told. Level
/// lines in a plan are floor boards.
fn keep_sections_with_siding(
    lines: &Linework,
    outlines: &[Outline],
    views: &mut [View],
    findings: &mut Findings,
) {
    let hatched = |v: &View| outlines.iter().any(|o| o.way == WallWay::Hatch && v.holds(lines, o));
    for v in views.iter_mut().filter(|v| v.left_alone == Some(OtherView::Section) && hatched(v)) {
        v.left_alone = None;
        let at = super::outline::source(lines, Point::new(v.region.x0, v.region.y0));
        let kind = ViewFinding::ViewSection { title: v.name.clone() };
        findings.push(Finding::new(kind).at(at));
    }
}

fn of_job(lines: &Linework, job: &Job) -> Vec<View> {
    let k = lines.scale.inches;
    let everywhere = Rect::new(-1e12, -1e12, 1e12, 1e12);
    let drawn = |v: &crate::job::drawing::View| {
        v.region.map_or(everywhere, |[a, b, c, d]| {
            Rect::from_points(Point::new(a * k, b * k), Point::new(c * k, d * k))
        })
    };
    let view = |v: &crate::job::drawing::View| View {
        name: v.name.clone(),
        layers: v.layers.clone(),
        of_job: true,
        ..titled(None, turns::region_of(lines, v, drawn(v)))
    };
    job.views().map(view).collect()
}

/// Names views by the walls that the job gives in them; makes views of those whose elevation there is not.
fn of_given(outlines: &[Outline], views: &mut Vec<View>, job: &Job) {
    let of_job = outlines.iter().filter_map(|o| Some((o.frame(), o.given.as_ref()?)));
    let given: Vec<(&str, Rect)> =
        of_job.filter_map(|(frame, by)| Some((by.elevation.as_deref()?, frame))).collect();
    let known: Vec<(&str, Rect)> = views.iter().map(|v| (v.name.as_str(), v.region)).collect();
    let Named { names, own } = names::by_given(&known, &given);
    names.into_iter().for_each(|(view, name)| views[view].name = name);
    for (name, walls) in own {
        let made = titled(None, walls.inflate(APART / 2.0, APART));
        views.push(View { name, of_job: job.views().next().is_some(), ..made });
    }
}

/// A view by its title; one without is numbered later.
fn titled(title: Option<&Title>, region: Rect) -> View {
    let left_alone = title.and_then(|t| match t.shows {
        Shows::Elevation => None,
        Shows::Other(view) => Some(view),
    });
    let name = title.map_or_else(String::new, |t| t.name.clone());
    let title = title.map(|t| t.turn);
    let (members, labels, dimensions) = (Vec::new(), Vec::new(), Vec::new());
    let (layers, parts, of_job) = (Vec::new(), Vec::new(), false);
    View { name, region, layers, of_job, left_alone, title, members, parts, labels, dimensions }
}

fn of_frames(lines: &Linework, titles: &[Title]) -> Vec<View> {
    let frames = lines.strokes.iter().filter(|s| s.role == Some(Role::Frame) && s.closed);
    frames
        .map(|s| {
            let region = stroke_box(s);
            titled(titles::in_frame(titles, region), region)
        })
        .collect()
}

/// Walls that stand together are one view.
fn of_clusters(
    lines: &Linework,
    outlines: &[Outline],
    titles: &[Title],
    findings: &mut Findings,
) -> Vec<View> {
    let found = together::of_walls(lines, outlines, titles);
    let untitled = found.iter().filter(|v| v.0.is_none()).count();
    if untitled > 0 && found.len() > 1 {
        let kind = ViewFinding::ViewUntitled { untitled, views: found.len() };
        findings.push(Finding::new(kind));
    }
    found.into_iter().map(|(title, region)| titled(title, region)).collect()
}

/// Openings outside every view are named: they may be in a view that was not framed.
pub(crate) fn stray_openings(lines: &Linework, views: &Views, job: &Job, findings: &mut Findings) {
    let of_walls = |s: &Stroke| matches!(s.role, Some(Role::Window | Role::Door | Role::Wall));
    let all = lines.strokes.iter().enumerate().filter(|(_, s)| of_walls(s));
    let places = Across::of(all.map(|(i, s)| (stroke_box(s).center(), i)));
    let mut inside = BTreeSet::new();
    for v in views.elevations.iter().chain(&views.left_alone) {
        inside.extend(places.within(v.region));
    }
    let all = lines.strokes.iter().enumerate();
    let strays: Vec<&Stroke> =
        all.filter(|(i, s)| of_walls(s) && !inside.contains(i)).map(|(_, s)| s).collect();
    if let Some(first) = strays.first().filter(|_| job.views().next().is_none()) {
        let at = lines.source(stroke_box(first).center());
        let kind = ViewFinding::OutsideViews { lines: strays.len() };
        findings.push(Finding::new(kind).about(&first.origin).at(at));
    }
}
