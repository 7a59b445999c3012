//! The `lapwright` command.

use std::process::ExitCode;

fn main() -> ExitCode {
    lapwright::cli::run::main()
}
