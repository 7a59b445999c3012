//! Faulty input: each ends in its named finding, exit code 1, nothing written.

use std::process::Output;

use assert_cmd::Command;

use crate::support::{dxf, rect};

/// Runs `layout` on a drawing; gives the output and whether anything was written.
fn run(drawing: &[u8], job: &str) -> (Output, bool) {
    let dir = tempfile::tempdir().unwrap();
    let (d, j, out) = (dir.path().join("d.dxf"), dir.path().join("j.toml"), dir.path().join("out"));
    std::fs::write(&d, drawing).unwrap();
    std::fs::write(&j, job).unwrap();
    let result = Command::cargo_bin("lapwright")
        .unwrap()
        .args([
            "layout".as_ref(),
            d.as_os_str(),
            "--job".as_ref(),
            j.as_os_str(),
            "--out".as_ref(),
            out.as_os_str(),
            "--no-pictures".as_ref(),
        ])
        .output()
        .unwrap();
    assert_eq!(std::fs::read(&d).unwrap(), drawing, "the source was touched");
    let left = std::fs::read_dir(dir.path()).unwrap().count();
    (result, left > 2)
}

const INCH: &str = "[drawing]\nunit = \"inch\"\n[seams]\neffort = \"brief\"\n";

#[track_caller]
fn refused(drawing: &[u8], job: &str, code: &str, words: &[&str]) {
    let (out, wrote) = run(drawing, job);
    let err = String::from_utf8_lossy(&out.stderr)
        .split_whitespace()
        .collect::<Vec<_>>()
        .join(" ")
        .replace("│ ", "");
    assert_eq!(out.status.code(), Some(1), "{err}");
    assert!(!wrote, "something was written");
    assert!(err.contains(code), "{code} not in: {err}");
    for w in words {
        assert!(err.contains(w), "`{w}` not in: {err}");
    }
    assert!(err.contains("help:"), "no word on what to do: {err}");
}

#[test]
fn not_a_dxf() {
    refused(b"%PDF-1.7 ...", INCH, "pdf-unreadable", &["PDF"]);
    refused(b"", INCH, "not-dxf", &["empty"]);
    refused(b"AC1032\0\0", INCH, "dwg-unreadable", &["DWG"]);
    refused(b"<html/>", INCH, "not-dxf", &["XML"]);
    refused(b"<svg", INCH, "svg-unreadable", &["SVG"]);
}

#[test]
fn truncated_before_entities() {
    refused(
        b"0\nSECTION\n2\nHEADER\n9\n$ACADVER\n1\nAC1015\n",
        INCH,
        "file-truncated",
        &["is truncated before"],
    );
}

#[test]
fn an_open_outline_by_gap_and_place() {
    let open = "0\nSECTION\n2\nENTITIES\n0\nPOLYLINE\n8\nA-WALL-OTLN\n66\n1\n70\n0\n0\nVERTEX\n8\nA-WALL-OTLN\n10\n0\n20\n0\n0\nVERTEX\n8\nA-WALL-OTLN\n10\n240\n20\n0\n0\nVERTEX\n8\nA-WALL-OTLN\n10\n240\n20\n96\n0\nVERTEX\n8\nA-WALL-OTLN\n10\n3.5\n20\n0\n0\nSEQEND\n0\nENDSEC\n0\nEOF\n";
    refused(
        open.as_bytes(),
        INCH,
        "wall-open",
        &["open by 3 1/2", "A-WALL-OTLN", "(0.000, 0.000)", "(3.500, 0.000)"],
    );
}

#[test]
fn overlapping_walls_by_area_and_place() {
    let d = dxf(&[
        ("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 96.0)),
        ("A-WALL-OTLN", &rect(120.0, 0.0, 360.0, 96.0)),
    ]);
    refused(d.as_bytes(), INCH, "walls-overlap", &["80.0 sq ft"]);
}

#[test]
fn an_outline_that_crosses_itself() {
    let d = dxf(&[("A-WALL-OTLN", &[(0.0, 0.0), (240.0, 0.0), (0.0, 96.0), (240.0, 96.0)])]);
    refused(d.as_bytes(), INCH, "wall-crosses", &[]);
}

#[test]
fn an_opening_outside_every_wall_unless_accepted() {
    let d = dxf(&[
        ("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 96.0)),
        ("A-GLAZ", &rect(10.0, 110.0, 46.0, 158.0)),
    ]);
    refused(d.as_bytes(), INCH, "opening-outside", &["A-GLAZ"]);
    let (out, wrote) =
        run(d.as_bytes(), &INCH.replace("unit", "accept = [\"opening-outside\"]\nunit"));
    assert!(out.status.success() && wrote, "{}", String::from_utf8_lossy(&out.stderr));
}

#[test]
fn points_that_stand_for_fixtures_are_told_and_points_of_notes_are_not() {
    let mut d = dxf(&[("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 96.0))]);
    let end = d.find("0\nENDSEC").unwrap();
    let point = |layer: &str, x: f64| format!("0\nPOINT\n8\n{layer}\n10\n{x}\n20\n40\n");
    d.insert_str(
        end,
        &[point("A-ELEV-MBLK", 60.0), point("A-ELEV-MBLK", 90.0), point("A-ANNO-NOTE", 9.0)]
            .concat(),
    );
    let (out, wrote) = run(d.as_bytes(), INCH);
    let told = String::from_utf8_lossy(&out.stderr);
    let told = told.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(out.status.success() && wrote, "{told}");
    for words in ["point-left-out", "(60.000, 40.000)", "2 points on layer A-ELEV-MBLK"] {
        assert!(told.contains(words), "`{words}` not in: {told}");
    }
    assert_eq!(told.matches("point-left-out").count(), 1, "{told}");
}

#[test]
fn walls_that_are_a_storys_height_in_no_unit_are_refused() {
    // 100 m high at the least, in millimeters.
    let d = dxf(&[("A-WALL-OTLN", &rect(0.0, 0.0, 300_000.0, 100_000.0))]);
    let job = INCH.replace("unit = \"inch\"\n", "");
    refused(d.as_bytes(), &job, "unit-implausible", &["100000 mm", "regions"]);
}

#[test]
fn a_dimension_whose_text_was_typed_over() {
    let mut d = dxf(&[("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 96.0))]);
    let dim = "0\nDIMENSION\n8\nA-ANNO-DIMS\n70\n0\n1\n24'-0\"\n10\n0\n20\n-20\n13\n0\n23\n0\n14\n240\n24\n0\n50\n0\n0\nENDSEC";
    d = d.replacen("0\nENDSEC", dim, 1);
    refused(d.as_bytes(), INCH, "dimension-disagrees", &["24'-0\"", "20'-0\""]);
    let (out, _) =
        run(d.as_bytes(), &INCH.replace("unit", "accept = [\"dimension-disagrees\"]\nunit"));
    assert!(out.status.success());
    // In a drawing in millimeters, lengths are told in millimeters.
    let mut d = dxf(&[("A-WALL-OTLN", &rect(0.0, 0.0, 6000.0, 2400.0))]);
    let dim = dim.replace("24'-0\"", "7200").replace("240", "6000");
    d = d.replacen("0\nENDSEC", &dim, 1);
    let job = INCH.replace("inch", "mm");
    refused(d.as_bytes(), &job, "dimension-disagrees", &["says 7200 mm but measures 6000 mm"]);
}

#[test]
fn nothing_on_wall_layers_names_what_is_there() {
    let d = dxf(&[("FACADE", &rect(0.0, 0.0, 240.0, 96.0))]);
    refused(d.as_bytes(), INCH, "no-walls", &["FACADE (1)", "A-WALL-OTLN"]);
}

#[test]
fn a_job_file_with_a_misspelt_key() {
    let d = dxf(&[("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 96.0))]);
    refused(
        d.as_bytes(),
        "[product]\nexposur = 8\n",
        "job-unreadable",
        &["exposur", "`exposure`", ":2:1"],
    );
}

#[test]
fn a_folder_with_other_files_is_left_alone() {
    let dir = tempfile::tempdir().unwrap();
    let d = dir.path().join("d.dxf");
    std::fs::write(&d, dxf(&[("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 96.0))])).unwrap();
    for out in [dir.path().to_path_buf(), d.clone()] {
        let result = Command::cargo_bin("lapwright")
            .unwrap()
            .arg("layout")
            .arg(&d)
            .arg("--no-pictures")
            .arg("--out")
            .arg(&out)
            .output()
            .unwrap();
        assert_eq!(result.status.code(), Some(1), "{}", String::from_utf8_lossy(&result.stderr));
    }
    assert_eq!(std::fs::read_dir(dir.path()).unwrap().count(), 1);
}

#[test]
fn ten_thousand_mutations_of_a_drawing_never_panic() {
    // Deterministic: bytes of a small sample changed, cut and doubled by a fixed generator.
    let source = dxf(&[
        ("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 96.0)),
        ("A-GLAZ", &rect(60.0, 36.0, 96.0, 84.0)),
    ])
    .into_bytes();
    let job = crate::support::inches();
    let mut state = 0x2545_f491_4f6c_dd1du64;
    let mut next = |n: usize| {
        state ^= state << 13;
        state ^= state >> 7;
        state ^= state << 17;
        (state % n as u64) as usize
    };
    let mut laid = 0;
    for _ in 0..10_000 {
        let mut bytes = source.clone();
        for _ in 0..1 + next(4) {
            let at = next(bytes.len());
            match next(5) {
                0 => bytes[at] = next(256) as u8,
                1 => bytes[at] = b"0123456789.-eE"[next(14)],
                2 => {
                    bytes.truncate(at.max(1));
                }
                3 => {
                    let end = (at + next(40)).min(bytes.len());
                    bytes.drain(at..end);
                }
                _ => {
                    let end = (at + next(40)).min(bytes.len());
                    let part = bytes[at..end].to_vec();
                    bytes.splice(at..at, part);
                }
            }
            if bytes.is_empty() {
                break;
            }
        }
        let mut notes = lapwright::finding::Findings::default();
        laid +=
            usize::from(lapwright::pipeline::reading(&bytes, "m.dxf", &job, &mut notes).is_ok());
    }
    assert!(
        laid > 100,
        "only {laid} mutants still read: the mutations are too coarse to mean much"
    );
}
