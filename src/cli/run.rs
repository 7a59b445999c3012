//! Commands to calls.

use std::process::ExitCode;

use clap::error::{ContextKind, ContextValue, ErrorKind};
use clap::{CommandFactory, Parser};

use super::args::{Arguments, Command, SchemaOf};
use super::terminal::print;
use super::{check, compare, explain, layers, layout, manual};
use super::{measure, page, start, takeoff, template};
use crate::job::nearest::nearest;
use crate::write::json;

/// Runs the program: parses, runs, reports.
pub fn main() -> ExitCode {
    let arguments = match Arguments::try_parse() {
        Ok(arguments) => arguments,
        Err(error) => meant(error).exit(),
    };
    match arguments.command {
        Command::Layout(a) => layout::run(&a),
        Command::Check(a) => check::run(&a),
        Command::Start { drawing } => start::run(&drawing),
        Command::Page { out, replace } => page::run(&out, replace),
        Command::Measure(a) => measure::run(&a),
        Command::Layers(a) if a.suggest => layers::suggest(&a.reading),
        Command::Layers(a) => layers::list(&a.reading),
        Command::Takeoff(a) => takeoff::run(&a),
        Command::Compare(a) => compare::run(&a),
        Command::Template { dir, replace } => template::run(&dir, replace),
        Command::Schema { of } => print(&match of {
            SchemaOf::Job => json::job_schema(),
            SchemaOf::Layout => json::layout_schema(),
            SchemaOf::Takeoff => json::takeoff_schema(),
            SchemaOf::Ticks => json::ticks_schema(),
            SchemaOf::Compare => json::compare_schema(),
        }),
        Command::Completions { shell } => {
            let mut out = Vec::new();
            clap_complete::generate(shell, &mut Arguments::command(), "lapwright", &mut out);
            print(&out)
        }
        Command::Explain { code } => explain::run(code.as_deref()),
        Command::Man => print(&manual::manual()),
    }
}

/// An error about an option that does not exist, with the one that may be meant where the parser of
/// arguments proposes none: it misses two letters that changed places in a short word.
fn meant(mut error: clap::Error) -> clap::Error {
    let proposed = error.get(ContextKind::SuggestedArg).is_some();
    if error.kind() != ErrorKind::UnknownArgument || proposed {
        return error;
    }
    let Some(ContextValue::String(given)) = error.get(ContextKind::InvalidArg) else {
        return error;
    };
    let Some(given) = given.strip_prefix("--") else { return error };
    let given = given.split('=').next().unwrap_or(given).to_lowercase();
    let command = Arguments::command();
    // The command that was given, as far as it can be told: the options of all others do not count.
    let named = std::env::args().skip(1).find_map(|a| command.find_subcommand(a));
    let options = |c: &clap::Command| -> Vec<String> {
        c.get_arguments().filter_map(|a| a.get_long().map(str::to_owned)).collect()
    };
    let known = named.map_or_else(|| options(&command), options);
    if let Some(option) = nearest(&given, &known) {
        error.remove(ContextKind::Suggested);
        let proposal = ContextValue::String(format!("--{option}"));
        error.insert(ContextKind::SuggestedArg, proposal);
    }
    error
}
