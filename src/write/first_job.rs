//! The first job of a drawing as a job file.

use super::json::word;
use super::layers::layers_table;
use crate::clean::terminal;
use crate::finding::corners::CornerFinding;
use crate::finding::{Finding, FindingKind, Severity};
use crate::job::file::quoted;
use crate::job::first::{FirstJob, ShownView};
use crate::model::linework::Role;
use crate::units::LengthStyle;
use crate::wording::findings::words;
use crate::wording::first_job as said;
use crate::wording::layers;

/// Most findings of one code that a setting is written for.
const MOST_OF_CODE: usize = 8;
/// Most layers that are listed.
const MOST_LAYERS: usize = 40;
/// Width of comment lines.
const WIDTH: usize = 96;

/// The file; `file` is its name.
pub fn text(job: &FirstJob, file: &str) -> String {
    let mut out = String::new();
    for line in said::head(&job.drawing, file) {
        comment(&mut out, &line);
    }
    out.push('\n');
    comment(&mut out, &said::with_job(&layers::said(&job.guess.reached)));
    comment(&mut out, &layers::without(&job.plain));
    out.push('\n');
    comment(&mut out, said::BY_NAME);
    out.push_str("#skip = [\"south-3\"]\n#join = [[\"south-1\", \"south-2\"]]\n\n");
    comment(&mut out, said::TITLE);
    out.push_str("[title]\n#project = \"\"\n#address = \"\"\n\n");
    drawing(&mut out, job);
    roles(&mut out, job);
    views(&mut out, job);
    comment(&mut out, said::OUTRIGHT);
    out.push_str("#[[wall]]\n#outline = [[0, 0], [240, 96]]\n#[[opening]]\n#outline = [[40, 36], [76, 84]]\n\n");
    questions(&mut out, job);
    out
}

/// A text as comment lines; texts of the drawing come made safe for one line.
fn comment(out: &mut String, text: &str) {
    let mut line = String::new();
    for word in terminal(text).split_whitespace() {
        if !line.is_empty() && line.chars().count() + word.chars().count() + 3 > WIDTH {
            out.push_str(&format!("# {line}\n"));
            line.clear();
        }
        if !line.is_empty() {
            line.push(' ');
        }
        line.push_str(word);
    }
    if !line.is_empty() {
        out.push_str(&format!("# {line}\n"));
    }
}

fn drawing(out: &mut String, job: &FirstJob) {
    out.push_str("[drawing]\n");
    match job.job().drawing.unit {
        Some(unit) => {
            let why = job.unit.map_or("", |u| said::unit_by(u.1));
            out.push_str(&format!("unit = \"{}\" # {why}\n", unit.word()));
        }
        None => {
            comment(out, said::NO_UNIT);
            out.push_str("#unit = \"inch\"\n#known = \"0,0 4877,0 = 16'-0\\\"\"\n");
        }
    }
    if job.guess.hidden_layers {
        out.push_str("hidden_layers = true\n");
    }
    out.push('\n');
}

fn roles(out: &mut String, job: &FirstJob) {
    let table = layers_table(&job.guess.layers);
    let own = |name: &str| job.guess.layers.iter().any(|g| g.layer == name);
    let drawn: Vec<_> = job.layers.iter().filter(|l| l.items > 0 && !own(&l.layer.name)).collect();
    let agreed = drawn.iter().filter(|l| l.role.is_some_and(|r| r != Role::Ignore));
    let agreed: Vec<String> = agreed
        .filter_map(|l| Some(format!("{} ({})", l.layer.name, word(&l.role?)?)))
        .take(MOST_LAYERS)
        .collect();
    if !agreed.is_empty() {
        comment(out, &format!("{} {}", said::AGREED, agreed.join(", ")));
    }
    let free = drawn.iter().filter(|l| l.role.is_none());
    let free: Vec<String> =
        free.map(|l| format!("{} ({})", l.layer.name, l.items)).take(MOST_LAYERS).collect();
    if !free.is_empty() {
        comment(out, &format!("{} {}", said::NO_ROLE, free.join(", ")));
    }
    out.push_str(if table.is_empty() { "[layers]\n" } else { &table });
    out.push_str("#wall = [\"A-WALL-OTLN\"]\n#window = [\"A-GLAZ\"]\n\n");
}

fn views(out: &mut String, job: &FirstJob) {
    let all: Vec<&ShownView> = job.elevations().collect();
    comment(
        out,
        match (all.is_empty(), job.regions) {
            (true, _) => said::NO_VIEWS,
            (false, true) => said::VIEWS,
            (false, false) => said::VIEWS_OFF,
        },
    );
    let off = if job.regions { "" } else { "#" };
    for v in &all {
        let [x0, y0, x1, y1] = v.region.map(|f| format!("{f:?}"));
        let name = quoted(&terminal(&v.name));
        out.push_str(&format!("{off}[[elevation]]\n{off}name = {name}\n"));
        out.push_str(&format!("{off}region = [{x0}, {y0}, {x1}, {y1}]\n"));
    }
    if all.is_empty() {
        out.push_str("#[[elevation]]\n#name = \"SOUTH\"\n#region = [0, 0, 480, 240]\n#siding_layer = \"A-WALL-PATT\"\n");
    }
    for v in &job.views {
        if let Some(shows) = v.other {
            comment(out, &said::left_alone(&v.name, shows));
        }
    }
    out.push('\n');
}

/// What is found and not yet answered, by codes, with the settings that answer it.
fn questions(out: &mut String, job: &FirstJob) {
    let asks = |f: &&Finding| f.severity() != Severity::Info;
    let mut left: Vec<&Finding> = job.findings.iter().filter(asks).collect();
    left.sort_by_key(|f| std::cmp::Reverse(f.severity()));
    comment(out, if left.is_empty() { said::NO_QUESTIONS } else { said::QUESTIONS });
    while let Some(first) = left.first() {
        let code = first.code();
        let (mine, others): (Vec<&Finding>, Vec<&Finding>) =
            left.iter().partition(|f| f.code() == code);
        let found = words(mine[0], LengthStyle::Feet);
        out.push_str("#\n");
        comment(out, &format!("{code}: {}. {}", found.message, found.help));
        if mine.len() > 1 {
            comment(out, &said::more_like_it(mine.len() - 1));
        }
        mine.iter().take(MOST_OF_CODE).for_each(|f| out.push_str(&answer(f)));
        left = others;
    }
}

/// The setting that answers a finding, turned off.
fn answer(f: &Finding) -> String {
    match &f.kind {
        FindingKind::Corners(CornerFinding::ReturnNotDrawn { corner, .. }) => {
            format!("#[[return]]\n#corner = {}\n#width = \"0'-0\\\"\"\n", quoted(corner))
        }
        _ => String::new(),
    }
}
