//! Houses shared out over threads, a few at work at one time, so that memory does not grow with their number.

use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::Mutex;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::thread;

/// Most houses at work at one time where the user says nothing: the work within a house is shared out too, and
/// each takes memory of its own. Of our own choosing, no source.
const AT_ONCE: usize = 8;

/// Stack of a thread, bytes: as much as the main one has on Linux.
const STACK: usize = 8 << 20;

/// What `work` and then `tell` make of each item, in their order, at most `at_once` at one time. `tell` gets each
/// as it is done, one after the other, with how many are, and gives what is kept of it.
pub(super) fn each<T: Sync, R: Send, S: Send>(
    items: &[T],
    at_once: Option<usize>,
    work: impl Fn(&T) -> R + Sync,
    tell: impl Fn(usize, R) -> S + Sync,
) -> Vec<S> {
    let cores = thread::available_parallelism().map_or(1, usize::from);
    let threads = at_once.unwrap_or(cores.min(AT_ONCE)).clamp(1, items.len().max(1));
    let next = AtomicUsize::new(0);
    let made: Mutex<Vec<(usize, S)>> = Mutex::default();
    let worker = || {
        while let Some((i, item)) = {
            let i = next.fetch_add(1, Ordering::Relaxed);
            items.get(i).map(|item| (i, item))
        } {
            let result = work(item);
            // A thread that failed with the lock held has left the list whole.
            let mut made = made.lock().unwrap_or_else(|e| e.into_inner());
            let kept = tell(made.len() + 1, result);
            made.push((i, kept));
        }
    };
    thread::scope(|all| {
        for _ in 1..threads {
            // Where the system gives no thread, the others do its part.
            let _ = thread::Builder::new().stack_size(STACK).spawn_scoped(all, worker);
        }
        worker();
    });
    let mut made = made.into_inner().unwrap_or_else(|e| e.into_inner());
    made.sort_by_key(|(i, _)| *i);
    made.into_iter().map(|(_, r)| r).collect()
}

/// What work gives, or nothing where the program itself failed at it: that stops no other house.
pub(super) fn unless_it_fails<R>(work: impl FnOnce() -> R) -> Option<R> {
    catch_unwind(AssertUnwindSafe(work)).ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn results_keep_their_order_and_no_more_than_asked_are_at_work() {
        let (now, most) = (AtomicUsize::new(0), AtomicUsize::new(0));
        let items: Vec<usize> = (0..200).collect();
        let told = AtomicUsize::new(0);
        let out = each(
            &items,
            Some(3),
            |i| {
                most.fetch_max(now.fetch_add(1, Ordering::SeqCst) + 1, Ordering::SeqCst);
                thread::yield_now();
                now.fetch_sub(1, Ordering::SeqCst);
                i * 2
            },
            |done, made| {
                assert_eq!(told.fetch_add(1, Ordering::SeqCst) + 1, done);
                made
            },
        );
        assert_eq!(out, items.iter().map(|i| i * 2).collect::<Vec<_>>());
        assert!(most.load(Ordering::SeqCst) <= 3);
        assert_eq!(told.load(Ordering::SeqCst), 200);
    }
}
