//! Whether the system gives threads, for a library that takes them for granted.

use std::io;

/// Tries for as many threads as are wanted at once.
///
/// # Errors
/// What the system says when it gives fewer.
#[cfg(not(target_family = "wasm"))]
pub(crate) fn wanted(count: usize) -> io::Result<()> {
    use std::sync::Mutex;
    use std::thread::{Builder, scope};

    // Held until all are there: one that ends makes room for the next.
    let gate = Mutex::new(());
    scope(|all| {
        let held = gate.lock();
        let tried = (0..count)
            .try_for_each(|_| Builder::new().spawn_scoped(all, || drop(gate.lock())).map(|_| ()));
        drop(held);
        tried
    })
}

/// The library starts none where there are none.
#[cfg(target_family = "wasm")]
pub(crate) fn wanted(_count: usize) -> io::Result<()> {
    Ok(())
}
