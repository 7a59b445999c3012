//! Lap siding laid out on a house's elevation drawings.
//!
//! [`pipeline`] knows the order of the stages: [`read`] a drawing, [`normalize`] its lines to
//! inches, [`extract`] the house; [`receive`], [`course`], [`seam`] (boards: [`joint`]) and [`trim`]
//! lay it out; [`work`], [`verify`] and [`takeoff`] read the result; [`annotate`] draws it, [`wording`]
//! says it and [`write`] turns it into bytes; [`outputs`] names the files. Plain data is in [`model`],
//! [`job`] and [`layout`]; what was found on the way is in [`finding`].
//!
//! From the bytes of a drawing to an elevation as SVG:
//!
//! ```
//! use lapwright::{annotate, finding::Findings, job::file, pipeline, write::svg};
//!
//! // A wall of 25 ft by 8 ft as the oldest DXF writes it.
//! let mut dxf = String::from("0\nSECTION\n2\nENTITIES\n0\nPOLYLINE\n8\nA-WALL-OTLN\n66\n1\n70\n1\n");
//! for (x, y) in [(0, 0), (300, 0), (300, 96), (0, 96)] {
//!     dxf += &format!("0\nVERTEX\n8\nA-WALL-OTLN\n10\n{x}\n20\n{y}\n");
//! }
//! dxf += "0\nSEQEND\n0\nENDSEC\n0\nEOF\n";
//! let job = file::parse("[drawing]\nunit = \"inch\"\n[product]\nexposure = 8\n", "job.toml")?;
//! let mut findings = Findings::default();
//! let house = pipeline::layout(dxf.as_bytes(), "wall.dxf", &job, &mut findings, &mut |_| {})?.house;
//! assert_eq!(house.layout.elevations[0].walls[0].courses.len(), 96 / 8);
//!
//! let sheets = annotate::sheets(&house.layout, &house.backdrops);
//! let picture: String = svg::document(&sheets[1]);
//! assert!(picture.starts_with("<svg") || picture.starts_with("<?xml"));
//! # Ok::<(), lapwright::finding::Refusal>(())
//! ```
//!
//! Features, all on by default: `cli` (the command), `dwg` and `pdf-in` (drawings of that kind read), `pdf`, `png`, `xlsx` (outputs of that kind) and
//! `parallel` (work on all cores). None of them changes what is laid out.

pub mod annotate;
#[cfg(feature = "browser")]
pub mod browser;
pub mod clean;
#[cfg(feature = "cli")]
pub mod cli;
pub mod compare;
mod cores;
pub mod course;
mod csv_rows;
pub mod extract;
pub mod finding;
pub mod fingerprint;
pub mod geom;
pub mod job;
pub mod joint;
mod knapsack;
pub mod language;
pub mod layout;
mod master;
pub mod model;
pub mod normalize;
pub mod origin;
pub mod outputs;
pub mod packing;
pub mod pipeline;
pub mod pitch;
pub mod read;
pub mod real;
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
