//! One after the other, for machines without threads.

/// What `f` makes of each item, in their order.
pub(crate) fn each<T, R>(items: &[T], f: impl Fn(&T) -> R) -> Vec<R> {
    items.iter().map(f).collect()
}

/// What two tasks give.
pub(crate) fn both<A, B>(a: impl FnOnce() -> A, b: impl FnOnce() -> B) -> (A, B) {
    (a(), b())
}

/// What a task gives that another core might do, and what is done here.
pub(crate) fn beside<A, B>(aside: impl FnOnce() -> A, here: impl FnOnce() -> B) -> (Option<A>, B) {
    let done = here();
    (Some(aside()), done)
}
