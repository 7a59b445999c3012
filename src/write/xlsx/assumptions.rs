//! What was taken as given, and what is still open.

use super::grid::{Grid, Look};
use crate::diag::{Note, Severity};
use crate::job::Job;
use crate::model::layout::Layout;
use crate::model::takeoff::Takeoff;
use crate::write::report::cautions;

pub(super) fn sheet(layout: &Layout, takeoff: &Takeoff) -> Grid {
    let mut g = Grid::new("Assumptions", &[14.0, 64.0, 26.0, 70.0]);
    g.texts(&["Assumptions and open questions"], Look::Title);
    g.next();
    let head = g.row;
    g.head(&["Kind", "What", "Where", "Source, or what to do"], &[]);
    let mut put = |kind: &str, what: &str, at: &str, then: &str| {
        g.text(0, kind, Look::Text);
        g.text(1, what, Look::Wrapped);
        g.text(2, at, Look::Wrapped);
        g.text(3, then, Look::Wrapped);
        g.next();
    };
    for n in &layout.notes {
        let kind = match n.severity {
            Severity::Info => "noted",
            _ => "open question",
        };
        put(kind, &format!("{}: {}", n.code, n.message), &place(n), &n.help);
    }
    for (what, source) in settings(layout) {
        put("assumed", &what, "", &source);
    }
    for line in &takeoff.advice {
        put("to order", line, "", "");
    }
    for line in cautions().lines().skip(1).fold(Vec::new(), joined) {
        put("caution", &line, "", "");
    }
    g.filter(head, 4);
    g
}

/// Wrapped lines of the report back to sentences: a line that is indented more goes on.
fn joined(mut out: Vec<String>, line: &str) -> Vec<String> {
    match out.last_mut() {
        Some(last) if line.starts_with("    ") => {
            last.push(' ');
            last.push_str(line.trim());
        }
        _ => out.push(line.trim().to_owned()),
    }
    out
}

fn place(n: &Note) -> String {
    let mut out: Vec<String> = n.elevation.iter().cloned().collect();
    out.extend(n.at.map(|p| format!("at ({:.3}, {:.3}) of the drawing", p.x, p.y)));
    out.extend(n.origin.as_ref().map(|o| format!("{} on {}, line {}", o.entity, o.layer, o.line)));
    out.join(", ")
}

/// Settings in force with the source of each default, or that the job set it.
fn settings(layout: &Layout) -> Vec<(String, String)> {
    let (job, usual) = (&layout.job, Job::default());
    let style = job.sheet.lengths;
    let row = |words: String, same: bool, source: &str| {
        (words, if same { source.to_owned() } else { "set by the job".to_owned() })
    };
    let p = &job.product;
    let t = &job.takeoff;
    vec![
        (
            format!("drawing unit: {}", layout.drawing.unit),
            format!("by {}", layout.drawing.unit_source),
        ),
        (
            format!("butt line of course 1 at {} from the level line", style.length(layout.datum)),
            layout.datum_why.clone(),
        ),
        row(
            format!("exposure {}", style.short(p.exposure)),
            p.exposure == usual.product.exposure,
            "double 4: FACTS SD-81",
        ),
        row(
            format!("panels of {}, {} to a carton", style.length(p.length), p.carton),
            (p.length, p.carton) == (usual.product.length, usual.product.carton),
            "24 of 12 ft 6 in to two squares: FACTS TK-02, TK-03",
        ),
        row(
            format!("lap at seams {}", style.short(job.lap())),
            job.lap() == usual.lap(),
            "foam meets foam: FACTS PR-02, common practice",
        ),
        row(
            format!("gap at panel ends {}", style.short(job.end_gap())),
            job.end_gap() == usual.end_gap(),
            "association manual: FACTS SD-50",
        ),
        row(
            format!("shortest piece of a run with a seam {}", style.short(job.seams.shortest)),
            job.seams.shortest == usual.seams.shortest,
            "common practice, no source: FACTS SD-79",
        ),
        row(
            format!("saw cut {}", style.short(job.seams.kerf)),
            job.seams.kerf == usual.seams.kerf,
            "common practice, no source",
        ),
        row(
            format!(
                "nails in panels at most {} apart, in trim {}",
                style.short(t.nail_spacing),
                style.short(t.trim_nail_spacing)
            ),
            (t.nail_spacing, t.trim_nail_spacing)
                == (usual.takeoff.nail_spacing, usual.takeoff.trim_nail_spacing),
            "IRC 2018 R703.11.1.3: FACTS SD-20; association manual: FACTS UN-08",
        ),
        row(
            format!("{} nails to a box", t.nail_box),
            t.nail_box == usual.takeoff.nail_box,
            "common practice, no source",
        ),
        row(
            format!("spare panels {} %", t.spare),
            t.spare == usual.takeoff.spare,
            "none unless the job asks",
        ),
        (
            "channels follow the drawn edge of openings; corner posts, the drawn corner".to_owned(),
            "FACTS OT-25: ask which edge was drawn".to_owned(),
        ),
    ]
}
