//! On all cores; `rayon` is named here alone.

use std::error::Error;
use std::sync::OnceLock;

use rayon::ThreadPoolBuilder;
use rayon::iter::{IntoParallelRefIterator, ParallelIterator};

use super::serial;

/// Whether there are threads to share work among. Where the system gives none (a limit of processes is
/// met), the library would stop the program at its first use: it is asked once, and left alone then.
fn shared() -> bool {
    static POOL: OnceLock<bool> = OnceLock::new();
    *POOL.get_or_init(|| match ThreadPoolBuilder::new().build_global() {
        Ok(()) => true,
        // Without a source it was set up before, by whoever uses this library.
        Err(e) => e.source().is_none(),
    })
}

/// What `f` makes of each item, in their order.
pub(crate) fn each<T: Sync, R: Send>(items: &[T], f: impl Fn(&T) -> R + Sync + Send) -> Vec<R> {
    if shared() { items.par_iter().map(f).collect() } else { serial::each(items, f) }
}

/// What two tasks give.
pub(crate) fn both<A: Send, B: Send>(
    a: impl FnOnce() -> A + Send,
    b: impl FnOnce() -> B + Send,
) -> (A, B) {
    if shared() { rayon::join(a, b) } else { serial::both(a, b) }
}
