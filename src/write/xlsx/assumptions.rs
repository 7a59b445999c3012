//! What was taken as given, and what is still open.

use super::grid::{Grid, Look};
use crate::finding::{Audience, Finding, Severity};
use crate::job::Job;
use crate::layout::Layout;
use crate::model::takeoff::Takeoff;
use crate::sources::in_words;
use crate::wording::findings::{FindingWords, words};
use crate::wording::takeoff::advice::advice;
use crate::wording::{cautions, pole, siding, source};
use crate::write::settings::settings;

pub(super) fn sheet(layout: &Layout, takeoff: &Takeoff) -> Grid {
    let mut g = Grid::new("Assumptions", &[14.0, 64.0, 26.0, 70.0]);
    g.texts(&["Assumptions and findings"], Look::Title);
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
    for f in &layout.findings {
        let FindingWords { message, help } = words(f, layout.job.sheet.lengths);
        put(sort(f), &format!("{}: {message}", f.code()), &place(f), &help);
    }
    for [what, by, source] in assumed(layout) {
        put("assumed", &what, &by, &source);
    }
    for a in &takeoff.advice {
        put("to order", &advice(a, &layout.job), "", "");
    }
    for line in cautions::all(layout.job.product.kind) {
        put("caution", line, "", "");
    }
    g.filter(head, 4);
    g
}

/// Who must act on a finding, or that there is nothing to do.
fn sort(f: &Finding) -> &'static str {
    match (f.severity(), f.audience()) {
        (Severity::Info, _) => "noted",
        (_, Audience::Architect) => "for the architect",
        (_, Audience::Office) => "for the office",
        (_, Audience::Crew) => "for the crew",
    }
}

fn place(n: &Finding) -> String {
    let mut out: Vec<String> = n.elevation.iter().map(|e| e.to_string()).collect();
    out.extend(n.at.map(|p| format!("at ({:.3}, {:.3}) of the drawing", p.x, p.y)));
    out.extend(n.origin.as_ref().map(|o| format!("{} on {}, line {}", o.entity, o.layer, o.line)));
    out.join(", ")
}

/// How the ends of two panels or boards meet.
fn meeting(job: &Job) -> [String; 3] {
    let style = job.sheet.lengths;
    let source = if job.product.lap.is_some() {
        "set by the job"
    } else {
        siding::lap_source(job.product.kind)
    };
    let what = siding::meeting(job, style);
    [what, String::new(), in_words(source)]
}

/// What was settled by rule, then every setting in force with the source of its default, or that the
/// job set it.
fn assumed(layout: &Layout) -> Vec<[String; 3]> {
    let job = &layout.job;
    let style = job.sheet.lengths;
    let row = |what: String, source: &str| [what, String::new(), in_words(source)];
    let mut out = vec![
        row(
            format!("drawing unit: {}", source::unit(&layout.drawing)),
            &format!("by {}", source::unit_basis(layout.drawing.unit_basis)),
        ),
        row(
            pole::datum_height(layout.datum, style),
            &pole::reason(&layout.datum_reason, &layout.story_pole.divisions, style),
        ),
        meeting(job),
        row(
            format!("gap at panel ends in force: {}", style.short(job.end_gap())),
            siding::end_gap_source(job.product.kind),
        ),
        row(
            siding::edges_as_drawn(job).trim_end_matches('.').to_owned(),
            "FACTS OT-25: ask which edge was drawn",
        ),
    ];
    out.extend(settings(job).into_iter().map(|s| {
        let by = if s.set { "set by the job" } else { "default" };
        [format!("{}: {}", s.key, s.value), by.to_owned(), s.words]
    }));
    out
}
