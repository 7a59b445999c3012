//! The program where the system gives it no thread but its own.

use std::path::Path;
use std::process::Command;

/// A user whom no process belongs to, as a rule.
#[cfg(target_os = "linux")]
const NOBODY: u32 = 65_534;

/// A command of the program under a limit of one process; none where no such limit can be set. Root is
/// not held to it: the program is then run as nobody, from `folder`, which it can write.
#[cfg(target_os = "linux")]
pub(crate) fn command(folder: &Path) -> Option<Command> {
    use std::os::unix::fs::{MetadataExt, PermissionsExt};
    use std::os::unix::process::CommandExt;

    let root = std::fs::metadata("/proc/self").ok()?.uid() == 0;
    let program = if root {
        let program = folder.join("lapwright");
        std::fs::copy(env!("CARGO_BIN_EXE_lapwright"), &program).unwrap();
        std::fs::set_permissions(folder, std::fs::Permissions::from_mode(0o777)).unwrap();
        program
    } else {
        env!("CARGO_BIN_EXE_lapwright").into()
    };
    // The shell sets the limit and becomes the program: no other process is started.
    let mut command = Command::new("bash");
    command.args(["-c", "ulimit -u 1 && exec \"$0\" \"$@\""]).arg(program).current_dir(folder);
    if root {
        command.uid(NOBODY).gid(NOBODY);
    }
    Some(command)
}

#[cfg(not(target_os = "linux"))]
pub(crate) fn command(_folder: &Path) -> Option<Command> {
    None
}
