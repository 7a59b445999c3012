//! What several tests need: samples, layouts, small drawings.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::Mutex;

use lapwright::finding::{Finding, Findings};
use lapwright::job::file as job_file;
use lapwright::job::{InsideCorner, Job};
use lapwright::layout::Layout;
use lapwright::layout::rule::Rule;
use lapwright::layout::set::{LaidSet, LaidSets};
use lapwright::layout::verified::RuleCheck;
use lapwright::model::sheet::Sheet;
use lapwright::pipeline;
use lapwright::units::LengthStyle;
use lapwright::wording::checks;
use lapwright::wording::findings::words;

/// The project's folder.
pub(crate) fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

/// Every sample drawing, by stem.
pub(crate) fn samples() -> Vec<(String, PathBuf)> {
    let mut out: Vec<(String, PathBuf)> = std::fs::read_dir(root().join("sample-drawings"))
        .unwrap()
        .map(|e| e.unwrap().path())
        .filter(|p| p.extension().is_some_and(|x| x == "dxf"))
        .map(|p| (p.file_stem().unwrap().to_string_lossy().into_owned(), p))
        .collect();
    out.sort();
    assert!(out.len() >= 7, "sample drawings are missing");
    out
}

/// The job file beside a sample.
pub(crate) fn job(drawing: &Path) -> Job {
    let path = drawing.with_extension("toml");
    job_file::parse(&std::fs::read_to_string(&path).unwrap(), "job").unwrap()
}

/// A laid-out sample: laid once for all tests.
pub(crate) fn laid(stem: &str) -> Layout {
    laid_set(stem).layout
}

/// The same with its takeoff and the source's lines behind it.
pub(crate) fn laid_set(stem: &str) -> LaidSet {
    static DONE: Mutex<BTreeMap<String, LaidSet>> = Mutex::new(BTreeMap::new());
    if let Some(done) = DONE.lock().unwrap().get(stem) {
        return done.clone();
    }
    let path = root().join("sample-drawings").join(format!("{stem}.dxf"));
    let set = lay_set(&std::fs::read(&path).unwrap(), &job(&path));
    DONE.lock().unwrap().insert(stem.to_owned(), set.clone());
    set
}

/// A laid-out sample by the careful-crew method alone: quick, where it does not matter how few
/// panels there are.
pub(crate) fn laid_by_a_crew(stem: &str) -> Layout {
    let path = root().join("sample-drawings").join(format!("{stem}.dxf"));
    let mut job = job(&path);
    job.seams.effort = lapwright::model::seam::Effort::Crew;
    lay(&std::fs::read(&path).unwrap(), &job)
}

/// A laid-out drawing.
pub(crate) fn lay(bytes: &[u8], job: &Job) -> Layout {
    lay_set(bytes, job).layout
}

/// A laid-out drawing with its takeoff and the source's lines behind it.
pub(crate) fn lay_set(bytes: &[u8], job: &Job) -> LaidSet {
    lay_sets(bytes, job).house
}

/// Every set of a drawing.
pub(crate) fn lay_sets(bytes: &[u8], job: &Job) -> LaidSets {
    pipeline::layout(bytes, "test.dxf", job, &mut Findings::default(), &mut |_| {}).unwrap()
}

/// The sheets of a set.
pub(crate) fn sheets(set: &LaidSet) -> Vec<Sheet> {
    lapwright::annotate::sheets(&set.layout, &set.backdrops)
}

/// A minimal DXF of closed polylines, one a layer and ring, in inches by the job's word.
pub(crate) fn dxf(rings: &[(&str, &[(f64, f64)])]) -> String {
    let mut out = String::from("0\nSECTION\n2\nENTITIES\n");
    for (layer, points) in rings {
        out.push_str(&format!("0\nPOLYLINE\n8\n{layer}\n66\n1\n70\n1\n"));
        for (x, y) in *points {
            out.push_str(&format!("0\nVERTEX\n8\n{layer}\n10\n{x}\n20\n{y}\n"));
        }
        out.push_str("0\nSEQEND\n");
    }
    out.push_str("0\nENDSEC\n0\nEOF\n");
    out
}

/// A job in inches that searches briefly, siding running to the drawn corners.
pub(crate) fn inches() -> Job {
    let text = "[drawing]\nunit = \"inch\"\n[seams]\neffort = \"brief\"\n";
    bare_corners(job_file::parse(text, "job").unwrap())
}

/// The job with siding that runs to the drawn corners, unless it says otherwise: for walls whose figures
/// are reckoned from one drawn edge to the other, where corner posts are beside the point.
pub(crate) fn bare_corners(mut job: Job) -> Job {
    let one_post = job.trim.inside_corner == InsideCorner::Post;
    let zones = job.zone.iter_mut().filter_map(|z| z.product.as_mut());
    for p in zones.chain([&mut job.product]) {
        if p.system().receivers.has_pockets() {
            p.outside_post_set_back = p.outside_post_set_back.or(Some(0.0));
            p.inside_post_set_back = p.inside_post_set_back.or(Some(0.0)).filter(|_| one_post);
        } else {
            p.corner_board = p.corner_board.or(Some(0.0));
            p.inside_corner_board = p.inside_corner_board.or(Some(0.0));
        }
    }
    job
}

/// A rectangle's corners.
pub(crate) fn rect(x0: f64, y0: f64, x1: f64, y1: f64) -> [(f64, f64); 4] {
    [(x0, y0), (x1, y0), (x1, y1), (x0, y1)]
}

/// Every rule that is broken, with its first case in words.
pub(crate) fn broken(layout: &Layout) -> Vec<String> {
    let v = lapwright::verify::check(layout);
    let style = layout.job.sheet.lengths;
    let words = |r: &RuleCheck| {
        let first = r.violations.first()?;
        Some(format!("{}: {}", checks::rule(r.rule).en, checks::violation(first, style)))
    };
    v.rules.iter().filter_map(words).collect()
}

/// Every rule that is broken.
pub(crate) fn broken_rules(layout: &Layout) -> Vec<Rule> {
    let v = lapwright::verify::check(layout);
    v.rules.iter().filter(|r| !r.passes()).map(|r| r.rule).collect()
}

/// What a finding says, in feet and inches.
pub(crate) fn said(finding: &Finding) -> String {
    words(finding, LengthStyle::Feet).message
}

/// What it says to do.
pub(crate) fn advised(finding: &Finding) -> String {
    words(finding, LengthStyle::Feet).help
}
