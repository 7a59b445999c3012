//! Layers of a drawing, and guesses at their roles.

use std::process::ExitCode;

use super::args::Reading;
use super::run::{load, print, refused};
use crate::diag::Notes;
use crate::pipeline;
use crate::write::{json, report};

/// Lists the layers with what each is taken for.
pub(super) fn layers(a: &Reading) -> ExitCode {
    let notes = Notes::default();
    let result = load(a).and_then(|l| pipeline::layers(&l.bytes, &l.name, &l.job));
    match result {
        Ok(list) => {
            let mut text =
                format!("{:<32} {:>7}  {:<7} {}\n", "layer", "items", "state", "taken for");
            for l in &list {
                let role = l
                    .role
                    .and_then(|r| serde_json_word(&r))
                    .unwrap_or_else(|| "(no role)".to_owned());
                let state = if l.layer.shown { "shown" } else { "hidden" };
                text.push_str(&format!(
                    "{:<32} {:>7}  {state:<7} {role}\n",
                    report::plain(&l.layer.name),
                    l.items
                ));
            }
            print(text.as_bytes())
        }
        Err(r) => refused(&r, &notes),
    }
}

/// Guesses as a fragment of a job file; what they rest on stands behind each as a comment.
pub(super) fn suggest(a: &Reading) -> ExitCode {
    let result = load(a).and_then(|l| pipeline::suggestions(&l.bytes, &l.name, &l.job));
    let list = match result {
        Ok(list) => list,
        Err(r) => return refused(&r, &Notes::default()),
    };
    let mut roles: std::collections::BTreeMap<_, Vec<_>> = std::collections::BTreeMap::new();
    for g in &list {
        roles.entry(g.role).or_default().push(g);
    }
    let mut text = "# Guesses, to be checked and edited: a role named here replaces its agreed layer names.\n[layers]\n".to_owned();
    if list.is_empty() {
        text.push_str("# No layer without a role looks like one that matters.\n");
    }
    for (role, layers) in roles {
        let Some(word) = serde_json_word(&role) else { continue };
        text.push_str(&format!("{word} = [\n"));
        for g in layers {
            let name = toml::Value::String(report::plain(&g.layer));
            text.push_str(&format!("  {name}, # {}\n", g.why));
        }
        text.push_str("]\n");
    }
    print(text.as_bytes())
}

/// A role's word as the job file spells it.
fn serde_json_word(role: &crate::model::linework::Role) -> Option<String> {
    json::word(role)
}
