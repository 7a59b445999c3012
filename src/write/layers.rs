//! Layers of a drawing as a table, and guesses at their roles as a fragment of a job file.

use std::collections::BTreeMap;

use super::json::word;
use crate::clean::terminal;
use crate::job::file::quoted;
use crate::model::account::LayerAccount;
use crate::model::guess::LayerGuess;
use crate::model::linework::{LayerUse, Role};
use crate::model::trial::{JobGuess, Suggested};
use crate::wording::layers::{self as words, guess_reason};

/// The layers with what each is taken for, a line each; of those with a role how many things are
/// drawn on them, and how many of these are used and are not.
pub fn table(layers: &[LayerUse], accounts: &[LayerAccount]) -> String {
    let mut text = format!(
        "{:<32} {:>7}  {:<7} {:<14} {:>6} {:>6} {:>6}\n",
        "layer", "items", "state", "taken for", "drawn", "used", "not"
    );
    for l in layers {
        let account = accounts.iter().find(|a| a.layer == l.layer.name);
        let [drawn, used, not] = match account {
            Some(a) => [a.drawn, a.used, a.unused()].map(|n| n.to_string()),
            None => ["-"; 3].map(str::to_owned),
        };
        let role = l.role.and_then(|r| word(&r)).unwrap_or_else(|| "(no role)".to_owned());
        let state = if l.layer.shown { "shown" } else { "hidden" };
        text.push_str(&format!(
            "{:<32} {:>7}  {state:<7} {role:<14} {drawn:>6} {used:>6} {not:>6}\n",
            terminal(&l.layer.name),
            l.items
        ));
    }
    text
}

/// Jobs that lead farther than none, as a job file: the best first, the others commented out.
pub fn fragment(found: &Suggested) -> String {
    let mut text = format!("# {}\n# {}\n", words::GUESSES, words::without(&found.plain));
    for (i, job) in found.jobs.iter().enumerate() {
        text.push_str(&format!("# {}\n", words::reached(i + 1, &job.reached)));
        let settings = settings(job);
        match i {
            0 => text.push_str(&settings),
            _ => settings.lines().for_each(|l| text.push_str(&format!("# {l}\n"))),
        }
    }
    if found.jobs.is_empty() {
        text.push_str(&format!("# {}\n", words::NO_GUESS));
    }
    text
}

/// What a guess sets: `[drawing]` and `[layers]`; what each layer's role rests on stands behind it as a
/// comment.
pub(super) fn settings(job: &JobGuess) -> String {
    let mut text = String::new();
    if job.unit.is_some() || job.hidden_layers {
        text.push_str("[drawing]\n");
    }
    if let Some(unit) = job.unit {
        text.push_str(&format!("unit = \"{}\"\n", unit.word()));
    }
    if job.hidden_layers {
        text.push_str("hidden_layers = true\n");
    }
    text + &layers_table(&job.layers)
}

/// `[layers]` with each layer's reason behind it; nothing for none.
pub(super) fn layers_table(guesses: &[LayerGuess]) -> String {
    let mut roles: BTreeMap<Role, Vec<&LayerGuess>> = BTreeMap::new();
    for g in guesses {
        roles.entry(g.role).or_default().push(g);
    }
    let mut text = String::new();
    for (role, layers) in roles {
        let Some(word) = word(&role) else { continue };
        text.push_str(&format!("{word} = [\n"));
        for g in layers {
            let (name, reason) = (quoted(&terminal(&g.layer)), guess_reason(&g.reason));
            text.push_str(&format!("  {name}, # {}\n", terminal(&reason)));
        }
        text.push_str("]\n");
    }
    if text.is_empty() { text } else { format!("[layers]\n{text}") }
}
