//! What was taken as given, and what is still open.

use super::grid::{Grid, Look};
use crate::finding::{Finding, gathered};
use crate::job::Job;
use crate::language::Language;
use crate::layout::Layout;
use crate::model::takeoff::Takeoff;
use crate::wording::findings::{FindingWords, subject, words};
use crate::wording::tables;
use crate::wording::takeoff::advice::advice;
use crate::wording::{cautions, pole, siding, source};
use crate::write::settings::settings;

/// Who settled a setting that the job leaves alone.
const DEFAULT: &str = "default";

pub(super) fn sheet(layout: &Layout, takeoff: &Takeoff) -> Grid {
    let mut g = Grid::new(layout, "Assumptions", &[14.0, 80.0, 28.0, 90.0]);
    g.texts(&[tables::ASSUMPTIONS], Look::Title);
    g.next();
    let head = g.row;
    g.head(&["Kind", "What", "Where", tables::SOURCE_OR_ACTION], &[]);
    let put = |g: &mut Grid, kind: &str, what: &str, at: &str, then: &str| {
        g.text(0, kind, Look::Text);
        g.text(1, what, Look::Wrapped);
        g.text(2, at, Look::Wrapped);
        g.text(3, then, Look::Wrapped);
        g.next();
    };
    for group in gathered(&layout.findings) {
        let about = subject(group.subject).en;
        for f in group.kinds.iter().flat_map(|k| k.all()) {
            let FindingWords { message, help } = words(f, layout.job.sheet.lengths);
            let what = format!("{about}, {}: {message}", f.code());
            put(&mut g, tables::sort(f), &what, &place(f), &help);
        }
    }
    let (told, defaults): (Vec<[String; 3]>, Vec<_>) =
        assumed(layout).into_iter().partition(|[_, by, _]| by != DEFAULT);
    for [what, by, source] in told {
        put(&mut g, "assumed", &what, &by, &source);
    }
    for a in &takeoff.advice {
        put(&mut g, "to order", &advice(a, &layout.job), "", "");
    }
    for line in cautions::all(layout.job.product.kind) {
        put(&mut g, "caution", line.en, "", "");
    }
    // Defaults, which nobody changed, are for whoever reads the file.
    put(&mut g, "assumed", tables::DEFAULTS_FOLLOW, "", "");
    g.print_to_here();
    for [what, by, source] in defaults {
        put(&mut g, "assumed", &what, &by, &source);
    }
    g.filter(head, 4);
    g
}

fn place(n: &Finding) -> String {
    let mut out: Vec<String> = n.elevation.iter().map(|e| e.to_string()).collect();
    out.extend(n.at.map(|p| tables::place(p.x, p.y)));
    out.extend(n.origin.as_ref().map(|o| format!("{}on {}{}", o.before(), o.layer, o.in_file())));
    out.join(", ")
}

/// How the ends of two panels or boards meet.
fn meeting(job: &Job) -> [String; 3] {
    let style = job.sheet.lengths;
    let source = if job.product.lap.is_some() {
        tables::SET_BY_JOB.to_owned()
    } else {
        siding::lap_source(job.product.kind)
    };
    let what = siding::meeting(job, style);
    [what, String::new(), source]
}

/// What was settled by rule, then every setting in force with the source of its default, or that the
/// job set it.
fn assumed(layout: &Layout) -> Vec<[String; 3]> {
    let job = &layout.job;
    let style = job.sheet.lengths;
    let row = |what: String, source: &str| [what, String::new(), source.to_owned()];
    let mut out = vec![
        row(
            format!("drawing unit: {}", source::unit(Language::English, &layout.drawing)),
            &format!("by {}", source::unit_basis(layout.drawing.unit_basis).en),
        ),
        row(
            pole::datum_height(Language::English, layout.datum, style),
            &pole::reason(
                Language::English,
                &layout.datum_reason,
                &layout.story_pole.divisions,
                style,
            ),
        ),
        meeting(job),
        row(
            tables::end_gap(siding::piece(job.product.kind).en, &style.short(job.end_gap())),
            &siding::end_gap_source(job.product.kind),
        ),
        row(
            siding::edges_as_drawn(Language::English, job).trim_end_matches('.').to_owned(),
            &siding::drawn_edge_source(),
        ),
    ];
    out.extend(settings(job).into_iter().map(|s| {
        let by = if s.set { tables::SET_BY_JOB } else { DEFAULT };
        [format!("{}: {}", s.key, s.value), by.to_owned(), s.words]
    }));
    out
}
