//! The manual page.

use clap::CommandFactory;

use super::args::Arguments;

/// The manual page: the program's, then the options of each command.
pub(super) fn manual() -> Vec<u8> {
    let mut out = Vec::new();
    let mut command = Arguments::command();
    // Fills in usage and the options every command has.
    command.build();
    // Writing to memory cannot fail.
    let mut top = Vec::new();
    let _ = clap_mangen::Man::new(command.clone()).render(&mut top);
    // There is one page for all commands.
    let top = String::from_utf8_lossy(&top);
    for line in top.lines() {
        let command = line.strip_prefix("lapwright\\-").and_then(|l| l.strip_suffix("(1)"));
        out.extend(format!("{}\n", command.unwrap_or(line)).into_bytes());
    }
    for sub in command.get_subcommands().filter(|c| c.get_name() != "help") {
        let name = sub.get_name().to_uppercase();
        let mut part = Vec::new();
        let page = clap_mangen::Man::new(sub.clone());
        let _ = page.render_synopsis_section(&mut part);
        let _ = page.render_description_section(&mut part);
        let _ = page.render_options_section(&mut part);
        let _ = page.render_extra_section(&mut part);
        let text = String::from_utf8_lossy(&part).into_owned();
        let text = text
            .replace(".SH SYNOPSIS", &format!(".SH {name}"))
            .replace(".SH DESCRIPTION\n", ".PP\n")
            .replace(".SH OPTIONS\n", ".PP\n")
            .replace(".SH EXTRA\n", ".PP\n");
        out.extend(text.into_bytes());
    }
    out
}
