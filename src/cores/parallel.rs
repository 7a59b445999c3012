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

/// What `aside` gives on another core, where there is one, while `here` is done on this thread; what is done
/// here need not be able to go to another. Nothing of `aside` only if it did not end.
pub(crate) fn beside<A: Send, B>(
    aside: impl FnOnce() -> A + Send,
    here: impl FnOnce() -> B,
) -> (Option<A>, B) {
    if !shared() || rayon::current_num_threads() < 2 {
        return serial::beside(aside, here);
    }
    let mut given = None;
    let done = rayon::in_place_scope(|scope| {
        scope.spawn(|_| given = Some(aside()));
        here()
    });
    (given, done)
}
