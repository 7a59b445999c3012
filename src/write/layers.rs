//! Layers of a drawing as a table, and guesses at their roles as a fragment of a job file.

use std::collections::BTreeMap;

use super::json::word;
use crate::clean::terminal;
use crate::job::file::quoted;
use crate::model::account::LayerAccount;
use crate::model::guess::LayerGuess;
use crate::model::linework::{LayerUse, Role};
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

/// Guesses as a fragment of a job file; what they rest on stands behind each as a comment.
pub fn fragment(guesses: &[LayerGuess]) -> String {
    let mut roles: BTreeMap<Role, Vec<&LayerGuess>> = BTreeMap::new();
    for g in guesses {
        roles.entry(g.role).or_default().push(g);
    }
    let mut text = format!("# {}\n[layers]\n", words::GUESSES);
    if guesses.is_empty() {
        text.push_str(&format!("# {}\n", words::NO_GUESS));
    }
    for (role, layers) in roles {
        let Some(word) = word(&role) else { continue };
        text.push_str(&format!("{word} = [\n"));
        for g in layers {
            text.push_str(&format!(
                "  {}, # {}\n",
                quoted(&terminal(&g.layer)),
                guess_reason(&g.reason)
            ));
        }
        text.push_str("]\n");
    }
    text
}
