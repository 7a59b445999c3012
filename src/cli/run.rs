//! Commands to calls, findings to the terminal, results to exit codes.

use std::io::{IsTerminal, Write};
use std::path::Path;
use std::process::ExitCode;

use clap::{CommandFactory, Parser};
use indicatif::{ProgressBar, ProgressStyle};

use super::args::{Arguments, Check, Command, Layout, Overlay, Reading, SchemaOf};
use super::files::{self, Output};
use super::{layers, manual, takeoff};
use crate::diag::{Note, Notes, Refusal, Severity};
use crate::job::drawing::KNOWN_HELP;
use crate::job::{Job, file};
use crate::layout::Layout as Laid;
use crate::pipeline;
use crate::seam::Progress;
use crate::units::{LengthStyle, counted};
use crate::wording::proof;
use crate::write::{json, report};

/// Runs the program: parses, runs, reports.
pub fn main() -> ExitCode {
    match Arguments::parse().command {
        Command::Layout(a) => layout(&a),
        Command::Check(a) => check(&a),
        Command::Layers(a) if a.suggest => layers::suggest(&a.reading),
        Command::Layers(a) => layers::list(&a.reading),
        Command::Takeoff(a) => takeoff::run(&a),
        Command::Template { dir } => new_template(&dir),
        Command::Schema { of } => print(&match of {
            SchemaOf::Job => json::job_schema(),
            SchemaOf::Layout => json::layout_schema(),
            SchemaOf::Takeoff => json::takeoff_schema(),
        }),
        Command::Completions { shell } => {
            let mut out = Vec::new();
            clap_complete::generate(shell, &mut Arguments::command(), "lapwright", &mut out);
            print(&out)
        }
        Command::Man => print(&manual::manual()),
    }
}

/// Bytes to standard output; a reader that went away is no fault.
pub(super) fn print(bytes: &[u8]) -> ExitCode {
    let mut out = std::io::stdout().lock();
    match out.write_all(bytes).and_then(|()| out.flush()) {
        Err(e) if e.kind() != std::io::ErrorKind::BrokenPipe => {
            let message = format!("standard output cannot be written: {e}");
            let help = "Check free space where the output goes; what is there is not whole.";
            refused(&Note::error("out-failed", message, help).into(), &Notes::default())
        }
        _ => ExitCode::SUCCESS,
    }
}

pub(super) fn tell(text: &str) {
    let mut err = std::io::stderr().lock();
    let _ = err.write_all(text.as_bytes());
}

/// A drawing with its job, read.
pub(super) struct Loaded {
    pub(super) bytes: Vec<u8>,
    pub(super) name: String,
    pub(super) job: Job,
}

pub(super) fn load(a: &Reading) -> Result<Loaded, Refusal> {
    let mut job = match &a.job {
        Some(path) => {
            let bytes = files::read(path)?;
            file::parse(&String::from_utf8_lossy(&bytes), &path.display().to_string())?
        }
        None => Job::default(),
    };
    if let Some(known) = &a.known {
        job.drawing.known = Some(known.clone());
        // A fault of the command line is not told as one of the job file.
        if job.drawing.known_scale().is_none() {
            let message = format!("the known distance `{known}` cannot be read");
            return Err(Note::error("known-unreadable", message, KNOWN_HELP).into());
        }
    }
    let bytes = files::read(&a.drawing)?;
    let name = a
        .drawing
        .file_name()
        .map_or_else(|| "drawing".to_owned(), |n| n.to_string_lossy().into_owned());
    Ok(Loaded { bytes, name, job })
}

/// Errors on the terminal, in colour where it shows and `NO_COLOR` is not set; exit 1.
pub(super) fn refused(refusal: &Refusal, notes: &Notes) -> ExitCode {
    told(refusal, notes);
    ExitCode::from(1)
}

/// The same for an argument that does not fit this drawing; exit 2.
pub(super) fn refused_usage(refusal: &Refusal) -> ExitCode {
    told(refusal, &Notes::default());
    ExitCode::from(2)
}

fn told(refusal: &Refusal, notes: &Notes) {
    let others: Vec<_> = notes
        .all()
        .iter()
        .filter(|n| n.severity == Severity::Error && **n != *refusal.0)
        .cloned()
        .collect();
    let mut text = String::new();
    let handler = miette::GraphicalReportHandler::new_themed(theme());
    let diagnostic = Shown(refusal.0.as_ref());
    if handler.render_report(&mut text, &diagnostic).is_err() {
        text = refusal.to_string();
    }
    tell(&text);
    tell("\n");
    if !others.is_empty() {
        tell(&report::notes(&others));
    }
}

fn theme() -> miette::GraphicalTheme {
    if coloured(std::io::stderr().is_terminal(), std::env::var_os("NO_COLOR").as_deref()) {
        miette::GraphicalTheme::unicode()
    } else {
        miette::GraphicalTheme::unicode_nocolor()
    }
}

/// Colour is for terminals; by the informal standard an empty `NO_COLOR` asks for nothing.
fn coloured(terminal: bool, no_color: Option<&std::ffi::OsStr>) -> bool {
    terminal && no_color.is_none_or(std::ffi::OsStr::is_empty)
}

/// A finding as the terminal shows it.
#[derive(Debug)]
struct Shown<'a>(&'a crate::diag::Note);

impl std::fmt::Display for Shown<'_> {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{}", report::plain(&self.0.message))?;
        if let Some(p) = self.0.at {
            write!(f, " (at {:.3}, {:.3} in the drawing)", p.x, p.y)?;
        }
        if let Some(o) = &self.0.origin {
            let handle = o
                .handle
                .as_deref()
                .map_or(String::new(), |h| format!(", handle {}", report::plain(h)));
            write!(f, " ({} at line {}{handle})", o.entity, o.line)?;
        }
        Ok(())
    }
}

impl std::error::Error for Shown<'_> {}

impl miette::Diagnostic for Shown<'_> {
    fn code<'a>(&'a self) -> Option<Box<dyn std::fmt::Display + 'a>> {
        Some(Box::new(self.0.code))
    }

    fn help<'a>(&'a self) -> Option<Box<dyn std::fmt::Display + 'a>> {
        Some(Box::new(&self.0.help))
    }
}

/// A progress bar that shows itself beyond half a second.
fn bar() -> ProgressBar {
    let bar = ProgressBar::hidden();
    bar.set_style(
        ProgressStyle::with_template("seams {bar:30} {percent}%  {msg}")
            .unwrap_or_else(|_| ProgressStyle::default_bar()),
    );
    bar
}

#[expect(clippy::disallowed_methods, reason = "the bar is for people; no result depends on it")]
pub(super) fn lay(loaded: &Loaded, notes: &mut Notes, quiet: bool) -> Result<Vec<Laid>, Refusal> {
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
            0 => format!("{} panels", p.panels),
            bound => format!("{} panels, bound {bound}", p.panels),
        });
    };
    let result = pipeline::layouts(&loaded.bytes, &loaded.name, &loaded.job, notes, &mut watch);
    bar.finish_and_clear();
    result
}

/// What a run reads, and so must not write.
fn sources(a: &Reading) -> Vec<&Path> {
    let drawing = Some(a.drawing.as_path()).filter(|d| *d != Path::new("-"));
    drawing.into_iter().chain(a.job.as_deref()).collect()
}

fn layout(a: &Layout) -> ExitCode {
    let mut notes = Notes::default();
    // Prices are read first: a fault in them shall not wait for the search.
    let read = || Ok((load(&a.reading)?, takeoff::prices(a.prices.as_deref())?));
    let (mut loaded, prices) = match read() {
        Ok(l) => l,
        Err(r) => return refused(&r, &notes),
    };
    let sheet = &mut loaded.job.sheet;
    sheet.paper = a.paper.clone().unwrap_or(std::mem::take(&mut sheet.paper));
    sheet.scale = a.scale.clone().or(sheet.scale.take());
    // The job was in order as the file gives it: what is not now is an option's fault.
    if let Err(Refusal(mut why)) = loaded.job.validate() {
        why.message = why.message.replace("`sheet.", "`--");
        why.help = "Give the option one of these.".to_owned();
        return refused_usage(&Refusal(why));
    }
    let sets = match lay(&loaded, &mut notes, a.quiet) {
        Ok(l) => l,
        Err(r) => return refused(&r, &notes),
    };
    let mut outputs = Vec::new();
    let mut of_house = 0;
    // Sets whose sheets are too many for pictures.
    let mut large = Vec::new();
    for set in &sets {
        let made = takeoff::quantities(set, prices.as_ref())
            .and_then(|t| pipeline::outputs_with(set, &t, &loaded.bytes, !a.no_pictures));
        let mut made = match made {
            Ok(o) => o,
            Err(r) => return refused(&r, &notes),
        };
        let sheets = made.iter().filter(|(n, _)| n.ends_with(".svg")).count();
        large.extend((!a.no_pictures && !pipeline::pictured(sheets)).then_some(sheets));
        if a.overlay == Overlay::Separate {
            made.push(("overlay-alone.dxf".to_owned(), pipeline::overlay_alone(set)));
        }
        match pipeline::set_folder(set) {
            Some(inner) => {
                outputs.extend(made.into_iter().map(|(n, b)| (format!("{inner}/{n}"), b)))
            }
            None => {
                of_house = made.len();
                outputs.extend(made);
            }
        }
    }
    let folder = a.out.clone().unwrap_or_else(|| files::default_folder(&a.reading.drawing));
    let mut sources = sources(&a.reading);
    sources.extend(a.prices.as_deref());
    if let Err(r) = files::write_folder(&folder, &outputs, &sources) {
        return refused(&r, &notes);
    }
    if !a.quiet {
        for sheets in large {
            tell(&format!(
                "{sheets} sheets are too many for PNG pictures; sheets.pdf holds every one.\n"
            ));
        }
        for set in &sets {
            let inner = pipeline::set_folder(set);
            let to = inner.map_or(folder.clone(), |f| folder.join(f));
            tell(&summary(set, &to, &outputs[..of_house]));
        }
    }
    let rules = sets.iter().flat_map(|s| &s.verify.rules);
    let broken = rules.filter(|r| !r.violations.is_empty()).count() > 0;
    let warned =
        broken || sets.iter().flat_map(|s| &s.notes).any(|n| n.severity == Severity::Warning);
    let warned = warned || notes.count(Severity::Warning) > 0;
    if a.strict && warned { ExitCode::from(3) } else { ExitCode::SUCCESS }
}

/// What a user sees when it is done.
fn summary(layout: &crate::layout::Layout, folder: &Path, outputs: &[Output]) -> String {
    let walls = layout.walls().count();
    let net: f64 = layout.walls().map(|(_, w)| w.net_area).sum();
    let zone =
        layout.zone.as_ref().map_or(String::new(), |z| format!(", zone {}", report::plain(z)));
    let mut out = format!(
        "{}{zone}: {}, {}, {net:.1} sq ft net\n{}\n{}\n",
        report::plain(&layout.drawing.name),
        counted(layout.elevations.len(), "elevation"),
        counted(walls, "wall"),
        proof::panels(&layout.bound, &layout.job),
        proof::beside(&layout.bound, &layout.job)
    );
    let warnings: Vec<_> =
        layout.notes.iter().filter(|n| n.severity >= Severity::Warning).cloned().collect();
    out.push_str(&report::notes(&warnings));
    let broken: usize = layout.verify.rules.iter().map(|r| r.violations.len()).sum();
    out.push_str(&if broken == 0 {
        format!("Checked: all {} rules kept.\n", layout.verify.rules.len())
    } else {
        format!("Checked: {broken} cases BREAK a rule; see report.txt.\n")
    });
    let top: Vec<&str> =
        outputs.iter().map(|o| o.0.as_str()).filter(|n| !n.contains('/')).collect();
    out.push_str(&format!("Wrote {}: {}\n", folder.display(), top.join(", ")));
    out
}

fn check(a: &Check) -> ExitCode {
    let mut notes = Notes::default();
    let loaded = match load(&a.reading) {
        Ok(l) => l,
        Err(r) => return refused(&r, &notes),
    };
    let style = loaded.job.sheet.lengths;
    let checked = pipeline::checked(loaded.bytes, &loaded.name, &loaded.job, &mut notes);
    let mut text = checked.house.as_ref().map(|h| walls(h, style)).unwrap_or_default();
    text.push_str(&report::notes(notes.all()));
    if let Some(folder) = &a.out {
        let files = [
            ("problems.svg".to_owned(), pipeline::problems(&checked.drawing, &notes)),
            ("check.txt".to_owned(), text.clone().into_bytes()),
        ];
        if let Err(r) = files::write_beside(folder, &files, &sources(&a.reading)) {
            return refused(&r, &Notes::default());
        }
    }
    // What stops it is told on standard error: not twice where both are one terminal.
    let one_screen = std::io::stdout().is_terminal() && std::io::stderr().is_terminal();
    let printed = match &checked.house {
        Err(stop) if one_screen => {
            let others: Vec<Note> =
                notes.all().iter().filter(|n| **n != *stop.0).cloned().collect();
            print(report::notes(&others).as_bytes())
        }
        _ => print(text.as_bytes()),
    };
    // The process ends here: giving millions of items back one by one would only take time.
    std::mem::forget((checked.drawing, checked.lines));
    match checked.house {
        Err(r) => refused(&r, &Notes::default()),
        Ok(_) if printed != ExitCode::SUCCESS => printed,
        Ok(_) if a.strict && notes.count(Severity::Warning) > 0 => ExitCode::from(3),
        Ok(_) => ExitCode::SUCCESS,
    }
}

/// The walls found, by elevation.
fn walls(house: &crate::model::house::House, style: LengthStyle) -> String {
    let mut text = String::new();
    for e in &house.elevations {
        text.push_str(&format!("{}\n", report::plain(&e.name)));
        for w in &e.walls {
            let b = crate::geom::polygon::bounds(&w.outline).unwrap_or_default();
            text.push_str(&format!(
                "  {:<12} {} wide, {} high, {}, {}\n",
                w.id,
                style.length(b.width()),
                style.length(b.height()),
                counted(w.openings.len(), "opening"),
                counted(w.obstacles.len(), "fixture")
            ));
        }
    }
    text
}

/// The template's files, none of them put in the place of another.
fn new_template(folder: &Path) -> ExitCode {
    let notes = Notes::default();
    let written = pipeline::template().and_then(|list| {
        files::none_there(folder, &list)?;
        files::write_beside(folder, &list, &[])?;
        Ok(list)
    });
    match written {
        Ok(list) => {
            let names: Vec<&str> = list.iter().map(|f| f.0.as_str()).collect();
            tell(&format!("Wrote {}: {}\n", folder.display(), names.join(", ")));
            ExitCode::SUCCESS
        }
        Err(r) => refused(&r, &notes),
    }
}

#[cfg(test)]
mod tests {
    use super::coloured;

    #[test]
    fn no_color_is_heeded_unless_empty() {
        assert!(coloured(true, None) && coloured(true, Some("".as_ref())));
        assert!(!coloured(true, Some("1".as_ref())) && !coloured(true, Some("0".as_ref())));
        assert!(!coloured(false, None));
    }
}
