//! What is checked: see README.md beside this file.

use std::path::{Path, PathBuf};

use lapwright::finding::Findings;
use lapwright::pipeline;

use crate::venv::python;

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

fn samples() -> Vec<PathBuf> {
    let mut out: Vec<PathBuf> = std::fs::read_dir(root().join("sample-drawings"))
        .unwrap()
        .map(|e| e.unwrap().path())
        .filter(|p| p.extension().is_some_and(|x| x == "dxf"))
        .collect();
    out.sort();
    assert!(out.len() >= 7);
    out
}

/// Every output of a drawing in a folder of its own.
fn laid(drawing: &Path, job: &Path, into: &Path) -> PathBuf {
    let bytes = std::fs::read(drawing).unwrap();
    let job = lapwright::job::file::parse(&std::fs::read_to_string(job).unwrap(), "job").unwrap();
    let sets =
        pipeline::layout(&bytes, "d.dxf", &job, &mut Findings::default(), &mut |_| {}).unwrap();
    let out = into.join(drawing.file_stem().unwrap());
    for (name, bytes) in lapwright::outputs::set::files(&sets.house, &bytes, true).unwrap() {
        let path = out.join(name);
        std::fs::create_dir_all(path.parent().unwrap()).unwrap();
        std::fs::write(path, bytes).unwrap();
    }
    out
}

#[test]
fn the_samples_are_what_their_script_draws() {
    let dir = tempfile::tempdir().unwrap();
    python("tests/samples/draw.py", &[dir.path()]);
    for s in samples() {
        let again = std::fs::read(dir.path().join(s.file_name().unwrap())).unwrap();
        assert!(again == std::fs::read(&s).unwrap(), "{} differs", s.display());
    }
    let known = std::fs::read(dir.path().join("expected.json")).unwrap();
    assert!(known == std::fs::read(root().join("tests/samples/expected.json")).unwrap());
}

#[test]
fn overlays_pass_the_audit_in_every_version() {
    // The house saved by ezdxf as R12, R2000, R2010 and R2018, laid out, its overlay audited.
    let dir = tempfile::tempdir().unwrap();
    let house = root().join("sample-drawings/curlew-cottage.dxf");
    python("tests/reference/versions.py", &[&house, dir.path()]);
    let mut seen = 0;
    for version in ["R12", "R2000", "R2010", "R2018"] {
        let drawing = dir.path().join(format!("{version}.dxf"));
        let job = root().join("sample-drawings/curlew-cottage.toml");
        let text = std::fs::read_to_string(job).unwrap() + "\n[drawing]\nunit = \"inch\"\n";
        let job = dir.path().join("job.toml");
        std::fs::write(&job, text).unwrap();
        let out = laid(&drawing, &job, dir.path());
        let said = python("tests/reference/audit.py", &[&drawing, &out.join("overlay.dxf")]);
        assert!(said.starts_with("ok"), "{version}: {said}");
        seen += 1;
    }
    for s in samples() {
        let out = laid(&s, &s.with_extension("toml"), dir.path());
        let said = python("tests/reference/audit.py", &[&s, &out.join("overlay.dxf")]);
        assert!(said.starts_with("ok"), "{}: {said}", s.display());
        seen += 1;
    }
    assert_eq!(seen, 11);
}

#[test]
fn overlays_of_drawings_without_handles_are_taken_by_a_strict_reader() {
    let dir = tempfile::tempdir().unwrap();
    let said = python("tests/reference/without_handles.py", &[dir.path()]);
    let job = dir.path().join("job.toml");
    std::fs::write(&job, "[drawing]\nunit = \"inch\"\n[seams]\neffort = \"crew\"\n").unwrap();
    let mut seen = 0;
    for entry in std::fs::read_dir(dir.path()).unwrap() {
        let drawing = entry.unwrap().path();
        if drawing.extension().is_none_or(|x| x != "dxf") {
            continue;
        }
        let out = laid(&drawing, &job, dir.path());
        let audit = python("tests/reference/audit.py", &[&drawing, &out.join("overlay.dxf")]);
        assert!(audit.starts_with("ok"), "{}: {audit}", drawing.display());
        seen += 1;
    }
    assert_eq!(said.trim().parse(), Ok(seen));
    assert!(seen >= 14);
}

#[test]
fn names_of_every_script_are_read_from_the_pdf_as_they_are_written() {
    let dir = tempfile::tempdir().unwrap();
    let text = std::fs::read_to_string(root().join("sample-drawings/one-wall.toml")).unwrap();
    let title = [
        ("project", "Đường Nguyễn Huệ"),
        ("client", "Πρόσοψη ≤ 3 → Ωμέγα"),
        ("address", "улица Їжакова, ґанок"),
        ("number", "\u{6a39}\u{5c4b} \u{e000}\u{1f3e0}"),
        ("drawn_by", "Příliš žluťoučký ½"),
    ];
    let lines: String = title.iter().map(|(k, v)| format!("{k} = \"{v}\"\n")).collect();
    let kept: Vec<&str> = text.split("[title]").collect();
    assert_eq!(kept.len(), 1, "the sample has a title of its own by now");
    let job = dir.path().join("job.toml");
    std::fs::write(&job, format!("{text}\n[title]\n{lines}")).unwrap();
    let out = laid(&root().join("sample-drawings/one-wall.dxf"), &job, dir.path());
    let wanted = dir.path().join("wanted.txt");
    // What no letter of the typeface shows stands as U+FFFD, four times.
    let names: Vec<String> = title
        .iter()
        .map(|(_, v)| v.replace(['\u{6a39}', '\u{5c4b}', '\u{e000}', '\u{1f3e0}'], "\u{fffd}"))
        .collect();
    std::fs::write(&wanted, names.join("\n")).unwrap();
    let said = python("tests/reference/pdf_names.py", &[&out.join("sheets.pdf"), &wanted]);
    assert!(said.starts_with("ok"), "{said}");
}

#[test]
fn areas_and_coverage_agree_with_shapely_and_text_with_pypdf() {
    let dir = tempfile::tempdir().unwrap();
    for s in samples() {
        let out = laid(&s, &s.with_extension("toml"), dir.path());
        let said = python("tests/reference/areas.py", &[&out.join("layout.json")]);
        assert!(said.starts_with("ok"), "{}: {said}", s.display());
        let said = python(
            "tests/reference/pdf_text.py",
            &[&out.join("sheets.pdf"), &out.join("layout.json")],
        );
        assert!(said.starts_with("ok"), "{}: {said}", s.display());
    }
}

#[test]
fn entities_are_counted_as_ezdxf_counts_them() {
    use lapwright::model::drawing::Space;
    use std::collections::BTreeMap;
    for s in samples() {
        let bytes = std::fs::read(&s).unwrap();
        let d =
            lapwright::read::drawing(&bytes, "d", &Default::default(), &mut Findings::default())
                .unwrap();
        let mut mine: BTreeMap<String, u64> = BTreeMap::new();
        for i in d.items.iter().filter(|i| i.space == Space::Model && i.group.is_none()) {
            *mine.entry(format!("{} {}", i.origin.entity, d.layers[i.layer].name)).or_default() +=
                1;
        }
        for g in d.groups.iter().filter(|g| g.parent.is_none()) {
            *mine.entry(format!("INSERT {}", d.layers[g.layer].name)).or_default() += 1;
        }
        let said = python("tests/reference/census.py", &[&s]);
        let theirs: BTreeMap<String, u64> = serde_json::from_str(&said).unwrap();
        assert_eq!(mine, theirs, "{}", s.display());
    }
}

#[test]
fn the_template_passes_the_audit() {
    let dir = tempfile::tempdir().unwrap();
    for (name, bytes) in lapwright::outputs::template::files().unwrap() {
        std::fs::write(dir.path().join(name), bytes).unwrap();
    }
    let said = python("tests/reference/audit_each.py", &[&dir.path().join("template.dxf")]);
    let found: serde_json::Value = serde_json::from_str(&said).unwrap();
    let found = &found["template.dxf"];
    assert_eq!(found["errors"], serde_json::json!([]));
    assert_eq!(found["fixes"], serde_json::json!([]));
    assert_eq!(found["entities"], 0);
}
