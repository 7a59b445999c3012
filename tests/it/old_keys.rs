//! Job files as they were spelled before: read, told with the place, refused where both spellings stand.

use lapwright::finding::job::{FilePlace, JobFileFault, JobFinding};
use lapwright::finding::job_value::ValueFault;
use lapwright::finding::{FindingKind, Findings};
use lapwright::job::Job;
use lapwright::job::file;

const OLD: &str = r#"[[joint]]
elevation = "FRONT"
at = 9
[product]
kind = "fibre-cement"
colour = "sand"
[boards]
joint_gap = 0.25
[trim]
frame = "mitre"
joint_gap = 0.75
[trim.colours]
board = "white"
[[zone]]
name = "Gable"
layers = ["X"]
[zone.product]
colour = "slate"
"#;

const NEW: &str = r#"[[movement_joint]]
elevation = "FRONT"
at = 9
[product]
kind = "fiber-cement"
color = "sand"
[boards]
butt_gap = 0.25
[trim]
frame = "miter"
movement_gap = 0.75
[trim.colors]
board = "white"
[[zone]]
name = "Gable"
layers = ["X"]
[zone.product]
color = "slate"
"#;

/// A job, and what of it is spelled as before: line, column, and both words.
fn read(text: &str) -> (Job, Vec<(usize, usize, String, String)>) {
    let mut findings = Findings::default();
    let job = file::read(text, "job.toml", &mut findings).unwrap();
    let old = |kind: &FindingKind| match kind {
        FindingKind::Job(JobFinding::OldSpelling { place, old, new, .. }) => {
            (place.line, place.column, old.clone(), new.clone())
        }
        other => unreachable!("{other:?}"),
    };
    (job, findings.all().iter().map(|f| old(&f.kind)).collect())
}

fn refused(text: &str) -> JobFinding {
    match file::parse(text, "job.toml").unwrap_err().0.kind {
        FindingKind::Job(found) => found,
        other => unreachable!("{other:?}"),
    }
}

#[test]
fn what_was_spelled_otherwise_is_read_and_told_with_its_place() {
    let (job, old) = read(OLD);
    let (as_now, none) = read(NEW);
    assert_eq!(job, as_now);
    assert_eq!(none, []);
    assert_eq!((job.product.color.as_str(), job.boards.butt_gap), ("sand", Some(0.25)));
    assert_eq!((job.movement_joints.len(), job.trim.movement_gap), (1, 0.75));
    let expected = [
        (1, 3, "joint", "movement_joint"),
        (5, 8, "fibre-cement", "fiber-cement"),
        (6, 1, "colour", "color"),
        (8, 1, "joint_gap", "butt_gap"),
        (10, 9, "mitre", "miter"),
        (11, 1, "joint_gap", "movement_gap"),
        (12, 7, "colours", "colors"),
        (18, 1, "colour", "color"),
    ];
    let expected = expected.map(|(l, c, old, new)| (l, c, old.to_owned(), new.to_owned()));
    assert_eq!(old, expected);
}

#[test]
fn faults_of_what_is_spelled_as_before_have_their_places() {
    let found = refused("[boards]\njoint_gap = 9\n[product]\nkind = \"wood\"\n");
    let JobFinding::JobValue { faults, .. } = found else { unreachable!("{found:?}") };
    assert_eq!(faults[0].place, Some(FilePlace { line: 2, column: 13 }));
    let ValueFault::OutOfRange { key, value, .. } = &faults[0].fault else {
        unreachable!("{faults:?}")
    };
    assert_eq!((key.as_str(), *value), ("boards.butt_gap", 9.0));
}

#[test]
fn both_spellings_of_a_key_are_refused() {
    for (text, line, new, before) in [
        ("[product]\ncolor = \"sand\"\ncolour = \"sand\"\n", 3, "product.color", "colour"),
        ("[boards]\njoint_gap = 1\nbutt_gap = 1\n", 2, "boards.butt_gap", "joint_gap"),
        (
            "[[movement_joint]]\nelevation = \"F\"\nat = 9\n[[joint]]\nelevation = \"F\"\nat = 9\n",
            4,
            "movement_joint",
            "joint",
        ),
    ] {
        let found = refused(text);
        let JobFinding::JobUnreadable {
            fault: JobFileFault::GivenTwice { place, key, old }, ..
        } = found
        else {
            unreachable!("{found:?}")
        };
        assert_eq!((place.line, key.as_str(), old.as_str()), (line, new, before), "{text}");
    }
}

#[test]
fn the_schema_has_the_new_names_alone() {
    let keys = lapwright::job::schema::keys();
    for new in ["movement_joint.at", "boards.butt_gap", "trim.colors.board", "product.color"] {
        assert!(keys.iter().any(|k| k == new), "{new}");
    }
    let british = ["colour", "fibre", "mitre", "grey", "storey", "metre", "licence"];
    let old = |k: &&String| british.iter().any(|b| k.contains(b)) || *k == "joint";
    assert_eq!(keys.iter().find(old), None);
}
