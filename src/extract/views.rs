//! Which part of the drawing is which elevation: regions of the job, frames with titles, or walls
//! that stand together with the nearest title below.

use super::stroke_box;
use crate::diag::{Note, Notes};
use crate::geom::vocabulary::{Point, Rect};
use crate::job::{Job, wildcard};
use crate::model::linework::{Label, Linework, Role, Stroke};

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

    /// The box round its walls.
    pub(crate) fn walls(&self, lines: &Linework) -> Option<Rect> {
        let walls = self.strokes(lines).filter(|s| s.role == Some(Role::Wall) && s.closed);
        walls.map(stroke_box).reduce(|a, b| a.union(b))
    }
}

fn on_layers(lines: &Linework, layer: usize, patterns: &[String]) -> bool {
    let Some(l) = lines.layers.get(layer) else { return false };
    let name = l.layer.name.to_lowercase();
    patterns.iter().any(|p| wildcard(&p.to_lowercase(), &name))
}

/// The views of a drawing, left to right.
pub(crate) fn views(lines: &Linework, job: &Job, notes: &mut Notes) -> Vec<View> {
    let mut found = of_job(lines, job);
    if found.is_empty() {
        found = of_frames(lines);
    }
    if found.is_empty() {
        found = of_clusters(lines, notes);
    }
    found.sort_by(|a, b| {
        a.region.x0.total_cmp(&b.region.x0).then(b.region.y0.total_cmp(&a.region.y0))
    });
    distinct(&mut found);
    found
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
        .enumerate()
        .map(|(i, v)| View {
            name: if v.name.is_empty() { format!("elevation {}", i + 1) } else { v.name.clone() },
            region: v.region.map_or(everywhere, |[a, b, c, d]| {
                Rect::from_points(Point::new(a * k, b * k), Point::new(c * k, d * k))
            }),
            layers: v.layers.clone(),
        })
        .collect()
}

fn titles(lines: &Linework) -> impl Iterator<Item = &Label> {
    lines.labels.iter().filter(|l| l.role == Some(Role::Title))
}

/// A title as a name: one line, no control characters, not too long.
fn clean(text: &str) -> String {
    let plain: String = text.chars().filter(|c| !c.is_control()).take(60).collect();
    plain.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn of_frames(lines: &Linework) -> Vec<View> {
    let frames = lines.strokes.iter().filter(|s| s.role == Some(Role::Frame) && s.closed);
    frames
        .enumerate()
        .map(|(i, s)| {
            let region = stroke_box(s);
            // The largest text on the title layer names it; notes beside it are smaller.
            let title = titles(lines)
                .filter(|t| region.contains(t.text.at))
                .max_by(|a, b| a.text.height.total_cmp(&b.text.height));
            let name = title.map(|t| clean(&t.text.content)).filter(|n| !n.is_empty());
            View {
                name: name.unwrap_or_else(|| format!("elevation {}", i + 1)),
                region,
                layers: Vec::new(),
            }
        })
        .collect()
}

/// Walls that stand together are one view.
fn of_clusters(lines: &Linework, notes: &mut Notes) -> Vec<View> {
    let walls = lines.strokes.iter().filter(|s| s.role == Some(Role::Wall) && s.closed);
    let mut boxes: Vec<Rect> = walls.map(stroke_box).collect();
    boxes.sort_by(|a, b| a.x0.total_cmp(&b.x0));
    let mut clusters: Vec<Rect> = Vec::new();
    for b in boxes {
        let near = clusters.iter_mut().find(|c| {
            b.x0 < c.x1 + APART && c.x0 < b.x1 + APART && b.y0 < c.y1 + APART && c.y0 < b.y1 + APART
        });
        match near {
            Some(c) => *c = c.union(b),
            None => clusters.push(b),
        }
    }
    let many = clusters.len() > 1;
    let mut untitled = 0;
    let views: Vec<View> = clusters
        .iter()
        .enumerate()
        .map(|(i, c)| {
            // What stands round the walls, half way to the next view, belongs to the view.
            let region = c.inflate(APART / 2.0, APART);
            let title = titles(lines)
                .filter(|t| t.text.at.x >= c.x0 - APART && t.text.at.x <= c.x1 + APART)
                .filter(|t| t.text.at.y < c.y0 + c.height())
                .min_by(|a, b| {
                    let far = |l: &Label| l.text.at.distance(Point::new(c.center().x, c.y0));
                    far(a).total_cmp(&far(b))
                });
            let name = title.map(|t| clean(&t.text.content)).filter(|n| !n.is_empty());
            untitled += usize::from(name.is_none());
            let fallback =
                if many { format!("elevation {}", i + 1) } else { "elevation".to_owned() };
            View { name: name.unwrap_or(fallback), region, layers: Vec::new() }
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
pub(crate) fn stray_openings(lines: &Linework, views: &[View], job: &Job, notes: &mut Notes) {
    let k = lines.scale.inches;
    let outside = |s: &&Stroke| {
        matches!(s.role, Some(Role::Window | Role::Door | Role::Wall))
            && !views.iter().any(|v| v.region.contains(stroke_box(s).center()))
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
