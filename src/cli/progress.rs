//! The search for seams watched on the terminal.

use std::io::IsTerminal;

use indicatif::{ProgressBar, ProgressStyle};

use super::loading::Loaded;
use crate::finding::{Findings, Refusal};
use crate::layout::set::LaidSets;
use crate::model::progress::Progress;
use crate::pipeline::{self, Earlier};
use crate::wording::command;

/// A progress bar that shows itself beyond half a second.
fn bar() -> ProgressBar {
    let bar = ProgressBar::hidden();
    bar.set_style(
        ProgressStyle::with_template("seams {bar:30} {percent}%  {msg}")
            .unwrap_or_else(|_| ProgressStyle::default_bar()),
    );
    bar
}

/// Lays the house and its zones out, with a progress bar where someone watches.
pub(super) fn lay(
    loaded: &Loaded,
    findings: &mut Findings,
    quiet: bool,
) -> Result<LaidSets, Refusal> {
    lay_keeping(loaded, None, findings, quiet)
}

/// The same, holding what did not change of an earlier layout.
pub(super) fn lay_keeping(
    loaded: &Loaded,
    old: Option<&Earlier>,
    findings: &mut Findings,
    quiet: bool,
) -> Result<LaidSets, Refusal> {
    watched(quiet, |watch| {
        let (bytes, name) = (&loaded.bytes, &loaded.name);
        pipeline::layout_keeping(bytes, name, (&loaded.job, old), findings, watch)
    })
}

/// Does what searches for seams, with a progress bar where someone watches.
// The clock is for the bar alone: no result depends on it.
#[expect(clippy::disallowed_methods)]
pub(super) fn watched<T>(quiet: bool, searching: impl FnOnce(pipeline::Watch) -> T) -> T {
    let started = std::time::Instant::now();
    let bar = bar();
    let mut shown = false;
    let mut watch = |p: Progress| {
        if !quiet
            && !shown
            && started.elapsed().as_millis() > 500
            && std::io::stderr().is_terminal()
        {
            bar.set_draw_target(indicatif::ProgressDrawTarget::stderr());
            shown = true;
        }
        bar.set_length(p.of);
        bar.set_position(p.done);
        bar.set_message(match p.bound {
            0 => command::panels_so_far(p.panels),
            bound => command::panels_and_bound(p.panels, bound),
        });
    };
    let result = searching(&mut watch);
    bar.finish_and_clear();
    result
}
