//! Work shared out over the machine's cores, results in the order of what was given; one after the
//! other where the feature `parallel` is left out.

#[cfg(feature = "parallel")]
mod parallel;
mod serial;
#[cfg(feature = "xlsx")]
pub(crate) mod threads;

#[cfg(feature = "parallel")]
pub(crate) use self::parallel::{beside, both, each};
#[cfg(not(feature = "parallel"))]
pub(crate) use self::serial::{beside, both, each};
