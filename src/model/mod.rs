//! Plain data: one noun a file, no logic beyond invariants.

pub mod advice;
pub mod basis;
pub mod conflict;
pub mod corner;
pub mod counting;
pub mod course;
pub mod drawing;
pub mod fastening;
pub mod guess;
pub mod half;
pub mod house;
pub mod ids;
pub mod item;
pub mod joint;
pub mod linework;
pub mod notch;
pub mod pole;
pub mod progress;
pub mod quantity;
pub mod receiver;
pub mod seam;
pub mod sheet;
pub mod source;
pub mod takeoff;
pub mod trim;
pub mod work;
