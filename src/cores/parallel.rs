//! On all cores; `rayon` is named here alone.

use rayon::iter::{IntoParallelRefIterator, ParallelIterator};

/// What `f` makes of each item, in their order.
pub(crate) fn each<T: Sync, R: Send>(items: &[T], f: impl Fn(&T) -> R + Sync + Send) -> Vec<R> {
    items.par_iter().map(f).collect()
}

/// What two tasks give.
pub(crate) fn both<A: Send, B: Send>(
    a: impl FnOnce() -> A + Send,
    b: impl FnOnce() -> B + Send,
) -> (A, B) {
    rayon::join(a, b)
}
