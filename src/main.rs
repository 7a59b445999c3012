//! The `lapwright` command.

use std::process::ExitCode;

/// The library that the static program is linked with gives memory slowly where several threads ask for it: with
/// its own the sample house took nearly twice as long.
#[cfg(target_env = "musl")]
#[global_allocator]
static MEMORY: mimalloc::MiMalloc = mimalloc::MiMalloc;

fn main() -> ExitCode {
    lapwright::cli::run::main()
}
