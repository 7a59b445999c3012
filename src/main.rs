//! The `lapwright` command.

fn main() {}
