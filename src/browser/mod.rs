//! The program in a page: what a page asks for a drawing, answered in memory as JSON and bytes. The calls are
//! plain functions, tested everywhere; `entry` hands them to the page.

pub mod calls;
#[cfg(target_arch = "wasm32")]
pub mod entry;
pub mod seen;
