//! Time of each part of the main job on the sample house: `cargo bench --bench speed`.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::disallowed_types,
    clippy::disallowed_methods,
    reason = "a test or bench may stop at the first thing that is not as it should be"
)]

use lapwright::finding::Findings;
use lapwright::job::Job;
use lapwright::job::file as job_file;
use lapwright::layout::set::LaidSet;
use lapwright::read::{self, Limits};
use lapwright::{annotate, extract, normalize, pipeline, verify, write};

fn main() {
    divan::main();
}

fn source() -> (Vec<u8>, Job) {
    let dir = concat!(env!("CARGO_MANIFEST_DIR"), "/sample-drawings/curlew-cottage");
    let text = std::fs::read_to_string(format!("{dir}.toml")).unwrap();
    (std::fs::read(format!("{dir}.dxf")).unwrap(), job_file::parse(&text, "job").unwrap())
}

fn laid() -> (LaidSet, Vec<u8>) {
    let (bytes, job) = source();
    let sets = pipeline::layout(&bytes, "d", &job, &mut Findings::default(), &mut |_| {}).unwrap();
    (sets.house, bytes)
}

#[divan::bench]
fn read_dxf(b: divan::Bencher) {
    let (bytes, _) = source();
    b.bench(|| read::drawing(&bytes, "d", &Limits::default(), &mut Findings::default()).unwrap());
}

#[divan::bench]
fn normalize_and_extract(b: divan::Bencher) {
    let (bytes, job) = source();
    let drawing = read::drawing(&bytes, "d", &Limits::default(), &mut Findings::default()).unwrap();
    b.bench(|| {
        let mut notes = Findings::default();
        let lines = normalize::linework(&drawing, &job, &mut notes).unwrap();
        extract::house(&lines, &job, &mut notes).unwrap()
    });
}

#[divan::bench]
fn read_and_lay(b: divan::Bencher) {
    let (bytes, job) = source();
    b.bench(|| pipeline::layout(&bytes, "d", &job, &mut Findings::default(), &mut |_| {}).unwrap());
}

#[divan::bench]
fn read_and_lay_as_a_crew(b: divan::Bencher) {
    let (bytes, mut job) = source();
    job.seams.effort = lapwright::model::seam::Effort::Crew;
    b.bench(|| pipeline::layout(&bytes, "d", &job, &mut Findings::default(), &mut |_| {}).unwrap());
}

#[divan::bench]
fn check_every_rule(b: divan::Bencher) {
    let (set, _) = laid();
    b.bench(|| verify::check(&set.layout));
}

#[divan::bench]
fn draw_sheets(b: divan::Bencher) {
    let (set, _) = laid();
    b.bench(|| annotate::sheets(&set.layout, &set.backdrops));
}

#[divan::bench]
fn write_svg(b: divan::Bencher) {
    let (set, _) = laid();
    let sheets = annotate::sheets(&set.layout, &set.backdrops);
    b.bench(|| sheets.iter().map(write::svg::document).collect::<Vec<_>>());
}

#[divan::bench]
fn write_without_pictures(b: divan::Bencher) {
    let (set, bytes) = laid();
    b.bench(|| lapwright::outputs::set::files(&set, &bytes, false).unwrap());
}

#[divan::bench(sample_count = 10)]
fn write_everything(b: divan::Bencher) {
    let (set, bytes) = laid();
    b.bench(|| lapwright::outputs::set::files(&set, &bytes, true).unwrap());
}
