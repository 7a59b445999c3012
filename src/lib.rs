//! Lap siding laid out on a house's elevation drawings.
//!
//! [`pipeline`] knows the order of the stages: [`read`] a drawing, [`normalize`] its lines to
//! inches, [`extract`] the house; [`receive`], [`course`], [`seam`] (boards: [`joint`]) and [`trim`]
//! lay it out;
//! [`work`], [`verify`] and [`takeoff`] read the result; [`annotate`] draws it and [`write`] turns it into
//! bytes. Plain data is in [`model`] and [`job`].
//!
//! ```
//! use lapwright::{diag::Notes, job::Job, pipeline, units::Unit};
//!
//! // A wall of 25 ft by 8 ft as the oldest DXF writes it.
//! let mut dxf = String::from("0\nSECTION\n2\nENTITIES\n0\nPOLYLINE\n8\nA-WALL-OTLN\n66\n1\n70\n1\n");
//! for (x, y) in [(0, 0), (300, 0), (300, 96), (0, 96)] {
//!     dxf += &format!("0\nVERTEX\n8\nA-WALL-OTLN\n10\n{x}\n20\n{y}\n");
//! }
//! dxf += "0\nSEQEND\n0\nENDSEC\n0\nEOF\n";
//! let mut job = Job::default();
//! job.drawing.unit = Some(Unit::Inch);
//! let layout = pipeline::layout(dxf.as_bytes(), "wall.dxf", &job, &mut Notes::default(), &mut |_| {})?;
//! assert_eq!(layout.elevations[0].walls[0].courses.len(), 12);
//! assert!(layout.verify.rules.iter().all(|r| r.violations.is_empty()));
//! # Ok::<(), lapwright::diag::Refusal>(())
//! ```

pub mod annotate;
pub mod cli;
mod cores;
pub mod course;
pub mod diag;
pub mod extract;
pub mod geom;
pub mod job;
pub mod joint;
pub mod layout;
pub mod model;
pub mod normalize;
pub mod packing;
pub mod pipeline;
pub mod pitch;
pub mod read;
pub mod receive;
pub mod seam;
pub mod sources;
pub mod takeoff;
pub mod trim;
pub mod typeface;
pub mod units;
pub mod verify;
pub mod wording;
pub mod work;
pub mod write;
