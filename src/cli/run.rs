//! Commands to calls.

use std::process::ExitCode;

use clap::{CommandFactory, Parser};

use super::args::{Arguments, Command, SchemaOf};
use super::terminal::print;
use super::{check, explain, layers, layout, manual, takeoff, template};
use crate::write::json;

/// Runs the program: parses, runs, reports.
pub fn main() -> ExitCode {
    match Arguments::parse().command {
        Command::Layout(a) => layout::run(&a),
        Command::Check(a) => check::run(&a),
        Command::Layers(a) if a.suggest => layers::suggest(&a.reading),
        Command::Layers(a) => layers::list(&a.reading),
        Command::Takeoff(a) => takeoff::run(&a),
        Command::Template { dir, replace } => template::run(&dir, replace),
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
        Command::Explain { code } => explain::run(code.as_deref()),
        Command::Man => print(&manual::manual()),
    }
}
