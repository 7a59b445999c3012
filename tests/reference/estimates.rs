//! Workbook and schemas against openpyxl and jsonschema: see README.md beside this file.

use std::path::{Path, PathBuf};

use lapwright::finding::Findings;
use lapwright::job::file as job_file;
use lapwright::pipeline;
use lapwright::takeoff::price;
use lapwright::wording::takeoff::items;
use lapwright::write::json;

use crate::venv::{python, root};

const PRICES: &str = "item,unit,price,order multiple,currency\ncartons,carton,412,1,USD\nj-channel,piece,9.8525,10,USD\n";

fn job_text(stem: &str) -> String {
    std::fs::read_to_string(root().join(format!("sample-drawings/{stem}.toml"))).unwrap()
}

/// The priced outputs of a sample, without pictures, in a folder of their own.
fn laid(stem: &str, into: &Path) -> PathBuf {
    let bytes = std::fs::read(root().join(format!("sample-drawings/{stem}.dxf"))).unwrap();
    let mut job = job_file::parse(&job_text(stem), "job").unwrap();
    // How few panels there are does not matter here.
    job.seams.effort = lapwright::model::seam::Effort::Crew;
    let sets =
        pipeline::layout(&bytes, "d.dxf", &job, &mut Findings::default(), &mut |_| {}).unwrap();
    let list = price::parse(PRICES.as_bytes(), "p").unwrap();
    let mut set = sets.house;
    let style = set.layout.job.sheet.lengths;
    let words = |l: &lapwright::model::quantity::TakeoffLine| {
        items::item_and_unit(lapwright::language::Language::English, l, style)
    };
    set.takeoff = price::applied(set.takeoff, &list, "p", &words).unwrap();
    let out = into.join(stem);
    std::fs::create_dir(&out).unwrap();
    for (name, bytes) in lapwright::outputs::set::files(&set, &bytes, false).unwrap() {
        if !name.contains('/') {
            std::fs::write(out.join(name), bytes).unwrap();
        }
    }
    out
}

fn put(dir: &Path, name: &str, bytes: &[u8]) -> PathBuf {
    let path = dir.join(name);
    std::fs::write(&path, bytes).unwrap();
    path
}

#[test]
fn what_is_written_follows_the_schemas_and_they_forbid_the_rest() {
    let dir = tempfile::tempdir().unwrap();
    let schemas = [
        put(dir.path(), "layout.schema", &json::layout_schema()),
        put(dir.path(), "takeoff.schema", &json::takeoff_schema()),
        put(dir.path(), "job.schema", &json::job_schema()),
    ];
    let mut jobs = Vec::new();
    for e in std::fs::read_dir(root().join("sample-drawings")).unwrap() {
        let path = e.unwrap().path();
        if path.extension().is_some_and(|x| x == "toml") {
            let value: toml::Value =
                toml::from_str(&std::fs::read_to_string(&path).unwrap()).unwrap();
            let name = path.with_extension("json");
            let bytes = serde_json::to_vec(&value).unwrap();
            jobs.push(put(dir.path(), name.file_name().unwrap().to_str().unwrap(), &bytes));
        }
    }
    for stem in ["curlew-cottage", "metric", "one-gable"] {
        let out = laid(stem, dir.path());
        let (layout, takeoff) = (out.join("layout.json"), out.join("takeoff.json"));
        let mut args: Vec<&Path> = schemas.iter().map(PathBuf::as_path).collect();
        args.extend([layout.as_path(), takeoff.as_path()]);
        args.extend(jobs.iter().map(PathBuf::as_path));
        let said = python("tests/reference/schemas.py", &args);
        assert!(said.starts_with("ok 45"), "{stem}: {said}");
    }
}

#[test]
fn the_workbook_read_with_openpyxl_is_the_layout() {
    let dir = tempfile::tempdir().unwrap();
    for stem in ["curlew-cottage", "metric", "one-window"] {
        let out = laid(stem, dir.path());
        let (book, layout) = (out.join("takeoff.xlsx"), out.join("layout.json"));
        let said = python("tests/reference/workbook.py", &[&book, &layout]);
        assert!(said.starts_with("ok"), "{stem}: {said}");
        // Where LibreOffice is installed, it works every formula out from nothing.
        let again = dir.path().join(format!("again-{stem}"));
        let bare = dir.path().join("takeoff.xlsx");
        python("tests/reference/workbook.py", &[Path::new("--bare"), &book, &bare]);
        let office = std::process::Command::new("soffice")
            .arg(format!("-env:UserInstallation=file://{}/office", dir.path().display()))
            .args(["--headless", "--convert-to", "xlsx", "--outdir"])
            .arg(&again)
            .arg(&bare)
            .output();
        let Ok(office) = office else { continue };
        assert!(office.status.success(), "{office:?}");
        let said =
            python("tests/reference/workbook.py", &[&book, &layout, &again.join("takeoff.xlsx")]);
        assert!(said.starts_with("ok"), "{stem}: {said}");
    }
}
