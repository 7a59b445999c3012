//! Plane geometry: points and polygons, one set of tolerances, boolean operations, level strips.

pub mod arrangement;
pub mod boolean;
pub mod curve;
pub mod flatten;
pub mod gaps;
pub mod near;
pub mod offset;
pub mod polygon;
pub mod segment;
pub mod sliver;
pub mod strip;
pub mod tol;
pub mod vocabulary;
mod weld;
