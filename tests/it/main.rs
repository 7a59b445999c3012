//! Integration tests, one binary.

mod bad_input;
mod commands;
mod facts;
mod faults;
mod house;
mod layouts;
mod overlay;
mod polygons;
mod reading;
mod samples;
mod seams;
mod sheets;
mod support;
