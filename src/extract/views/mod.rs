//! Which part of the drawing is which elevation: regions of the job, frames with titles, or walls
//! that stand together with the nearest title below.

mod titles;

use self::titles::{Shows, Title, titles};
use super::stroke_box;
use super::ways::Outline;
use crate::diag::{Note, Notes};
use crate::geom::vocabulary::{Point, Rect};
use crate::job::Job;
use crate::job::layers::wildcard;
use crate::model::house::WallWay;
use crate::model::linework::{Linework, Role, Stroke};

/// Walls nearer to each other than this, sideways, belong to one view: 8 ft. Views are drawn
/// farther apart (common practice, no source).
const APART: f64 = 96.0;

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
    left_alone: Option<&'static str>,
}

impl View {
    /// Strokes whose middle lies in the view.
    pub(crate) fn strokes<'a>(
        &self,
        lines: &'a Linework,
    ) -> impl Iterator<Item = &'a Stroke> + use<'a> {
        let View { region, layers, .. } = self.clone();
        lines.strokes.iter().filter(move |s| {
            region.contains(stroke_box(s).center())
                && s.role != Some(Role::Frame)
                && (layers.is_empty() || on_layers(lines, s.layer, &layers))
        })
    }

    /// Whether an outline is one of its walls.
    pub(crate) fn holds(&self, lines: &Linework, o: &Outline) -> bool {
        self.region.contains(o.frame().center())
            && (self.layers.is_empty() || on_layers(lines, o.layer, &self.layers))
    }
}

fn on_layers(lines: &Linework, layer: usize, patterns: &[String]) -> bool {
    let Some(l) = lines.layers.get(layer) else { return false };
    let name = l.layer.name.to_lowercase();
    patterns.iter().any(|p| wildcard(&p.to_lowercase(), &name))
}

/// Views of a drawing.
pub(crate) struct Views {
    /// Elevations, left to right.
    pub(crate) elevations: Vec<View>,
    /// Plans, sections and details in the same drawing.
    pub(crate) left_alone: Vec<View>,
}

/// The views of a drawing.
pub(crate) fn views(lines: &Linework, outlines: &[Outline], job: &Job, notes: &mut Notes) -> Views {
    let titles = titles(lines);
    let mut found = of_job(lines, job);
    if found.is_empty() {
        found = of_frames(lines, &titles);
    }
    if found.is_empty() {
        found = of_clusters(outlines, &titles, notes);
        // Walls on a layer that the job names letter by letter are wanted, whatever the title.
        let named =
            |o: &Outline| lines.layers.get(o.layer).is_some_and(|l| job.names_layer(&l.layer.name));
        for v in &mut found {
            if outlines.iter().any(|o| v.holds(lines, o) && named(o)) {
                v.left_alone = None;
            }
        }
    }
    keep_sections_with_siding(lines, outlines, &mut found, notes);
    found.sort_by(|a, b| {
        a.region.x0.total_cmp(&b.region.x0).then(b.region.y0.total_cmp(&a.region.y0))
    });
    let (left_alone, mut elevations): (Vec<View>, Vec<View>) =
        found.into_iter().partition(|v| v.left_alone.is_some());
    let many = elevations.len() > 1;
    for (i, v) in elevations.iter_mut().enumerate().filter(|(_, v)| v.name.is_empty()) {
        v.name = if many { format!("elevation {}", i + 1) } else { "elevation".to_owned() };
    }
    distinct(&mut elevations);
    for v in left_alone.iter().filter(|v| outlines.iter().any(|o| v.holds(lines, o))) {
        let kind = v.left_alone.unwrap_or_default();
        let message = format!("{}: by its title a {kind}; it is left alone", v.name);
        let help =
            "If it is an elevation, name it as [[elevation]] with its region in the job file.";
        let at = Point::new(v.region.x0, v.region.y0);
        let at = super::ways::source(lines, at);
        notes.push(Note::info("view-left-alone", message, help).at(at));
    }
    Views { elevations, left_alone }
}

/// A section that shows hatched siding shows the wall behind the cut: it is kept, and told. Level
/// lines in a plan are floor boards.
fn keep_sections_with_siding(
    lines: &Linework,
    outlines: &[Outline],
    views: &mut [View],
    notes: &mut Notes,
) {
    let hatched = |v: &View| outlines.iter().any(|o| o.way == WallWay::Hatch && v.holds(lines, o));
    for v in views.iter_mut().filter(|v| v.left_alone == Some("section") && hatched(v)) {
        v.left_alone = None;
        let message = format!("{}: by its title a section, but siding is hatched in it", v.name);
        let help = "It is laid out. If it only repeats what an elevation shows, name the elevations as [[elevation]] in the job file.";
        let at = super::ways::source(lines, Point::new(v.region.x0, v.region.y0));
        notes.push(Note::warning("view-section", message, help).at(at));
    }
}

/// Every name once: the house is named by them.
fn distinct(views: &mut [View]) {
    for i in 1..views.len() {
        let mut n = 1;
        let wished = views[i].name.clone();
        while views[..i].iter().any(|v| v.name == views[i].name) {
            n += 1;
            views[i].name = format!("{wished} {n}");
        }
    }
}

fn of_job(lines: &Linework, job: &Job) -> Vec<View> {
    let k = lines.scale.inches;
    let everywhere = Rect::new(-1e12, -1e12, 1e12, 1e12);
    job.elevation
        .iter()
        .map(|v| View {
            name: v.name.clone(),
            region: v.region.map_or(everywhere, |[a, b, c, d]| {
                Rect::from_points(Point::new(a * k, b * k), Point::new(c * k, d * k))
            }),
            layers: v.layers.clone(),
            of_job: true,
            left_alone: None,
        })
        .collect()
}

/// A view by its title; one without is numbered later.
fn titled(title: Option<&Title>, region: Rect) -> View {
    let left_alone = title.and_then(|t| match t.shows {
        Shows::Elevation => None,
        Shows::Other(kind) => Some(kind),
    });
    let name = title.map_or_else(String::new, |t| t.name.clone());
    View { name, region, layers: Vec::new(), of_job: false, left_alone }
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
fn of_clusters(outlines: &[Outline], titles: &[Title], notes: &mut Notes) -> Vec<View> {
    let mut clusters: Vec<Rect> = outlines.iter().map(Outline::frame).collect();
    let near = |a: &Rect, b: &Rect| {
        b.x0 < a.x1 + APART && a.x0 < b.x1 + APART && b.y0 < a.y1 + APART && a.y0 < b.y1 + APART
    };
    // Joined until none comes near another: a box grows with each it takes in.
    let mut i = 0;
    while i < clusters.len() {
        match (i + 1..clusters.len()).find(|j| near(&clusters[i], &clusters[*j])) {
            Some(j) => {
                clusters[i] = clusters[i].union(clusters[j]);
                clusters.swap_remove(j);
                i = 0;
            }
            None => i += 1,
        }
    }
    clusters.sort_by(|a, b| a.x0.total_cmp(&b.x0).then(a.y0.total_cmp(&b.y0)));
    let many = clusters.len() > 1;
    let mut untitled = 0;
    let views: Vec<View> = clusters
        .iter()
        .map(|c| {
            // What stands round the walls, half way to the next view, belongs to the view.
            let region = c.inflate(APART / 2.0, APART);
            let title = titles::under(titles, *c, APART);
            untitled += usize::from(title.is_none());
            titled(title, region)
        })
        .collect();
    if untitled > 0 && many {
        let message = format!(
            "{untitled} of {} views have neither a frame nor a title; they are numbered left to right",
            views.len()
        );
        let help = "Draw a frame on A-ELEV-FRAM and a title on A-ELEV-IDEN, or name the views as [[elevation]] in the job file.";
        notes.push(Note::info("view-untitled", message, help));
    }
    views
}

/// Openings outside every view are named: they may be in a view that was not framed.
pub(crate) fn stray_openings(lines: &Linework, views: &Views, job: &Job, notes: &mut Notes) {
    let k = lines.scale.inches;
    let outside = |s: &&Stroke| {
        matches!(s.role, Some(Role::Window | Role::Door | Role::Wall))
            && !views
                .elevations
                .iter()
                .chain(&views.left_alone)
                .any(|v| v.region.contains(stroke_box(s).center()))
    };
    let strays: Vec<&Stroke> = lines.strokes.iter().filter(outside).collect();
    if let Some(first) = strays.first().filter(|_| job.elevation.is_empty()) {
        let c = stroke_box(first).center();
        let message = format!(
            "{} lines of walls or openings lie outside every view; they are left out",
            strays.len()
        );
        let help =
            "Draw a frame round that view on A-ELEV-FRAM, or name its region in the job file.";
        let at = Point::new(c.x / k, c.y / k);
        notes.push(Note::warning("outside-views", message, help).about(&first.origin).at(at));
    }
}
