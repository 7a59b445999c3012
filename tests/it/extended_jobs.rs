//! A job that goes on from the office's file: what each says, faults told of the file they are in, and `check` tells
//! which setting comes from where.

use std::path::Path;
use std::process::{Command, Output};

use crate::smallcase::{drawing, house};

fn run(at: &Path, args: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_lapwright")).args(args).current_dir(at).output().unwrap()
}

fn out(o: &Output) -> String {
    String::from_utf8_lossy(&o.stdout).into_owned()
}

/// What is said on standard error, lines of the terminal joined.
fn err(o: &Output) -> String {
    let text = String::from_utf8_lossy(&o.stderr).replace(['\n', '│', '×'], " ");
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// A folder with a house, its job in `jobs` and what that extends beside it.
fn office(files: &[(&str, &str)]) -> tempfile::TempDir {
    let dir = tempfile::tempdir().unwrap();
    std::fs::create_dir(dir.path().join("jobs")).unwrap();
    std::fs::write(dir.path().join("h.dxf"), drawing(&house(4))).unwrap();
    for (name, text) in files {
        std::fs::write(dir.path().join(name), text).unwrap();
    }
    dir
}

const CHECK: [&str; 4] = ["check", "h.dxf", "--job", "jobs/h.toml"];

#[test]
fn a_job_goes_on_from_the_office_and_check_tells_what_comes_from_where() {
    let dir = office(&[
        ("office.toml", "[product]\nexposure = 7\nend_gap = 0.375\n[seams]\neffort = \"crew\"\n"),
        // As Windows writes it, with a mark before the text.
        (
            "jobs/h.toml",
            "\u{feff}extends = \"../office.toml\"\r\n[drawing]\r\nunit = \"inch\"\r\n[product]\r\nexposure = 8\r\n",
        ),
    ]);
    let o = run(dir.path(), &CHECK);
    assert_eq!(o.status.code(), Some(0), "{}", err(&o));
    let said = out(&o).replace('\\', "/");
    let row = |key: &str| {
        let line = said.lines().find(|l| l.trim_start().starts_with(key));
        line.unwrap_or_else(|| panic!("{key}: {said}"))
            .split_whitespace()
            .collect::<Vec<_>>()
            .join(" ")
    };
    assert_eq!(row("product.exposure "), "product.exposure 8\" jobs/h.toml");
    assert_eq!(row("product.end_gap"), "product.end_gap 3/8\" jobs/../office.toml");
    assert_eq!(row("seams.effort"), "seams.effort crew jobs/../office.toml");
    assert!(!said.contains("product.length "), "defaults are told where they are asked for");
    let all = run(dir.path(), &CHECK.into_iter().chain(["--settings"]).collect::<Vec<_>>());
    let all = out(&all);
    let length = all.lines().find(|l| l.trim_start().starts_with("product.length ")).unwrap();
    assert!(length.contains("12'-6\"") && length.ends_with("default"), "{length}");
    // One file alone: nothing of it is told unasked.
    let o = run(dir.path(), &["check", "h.dxf", "--job", "office.toml"]);
    assert!(!out(&o).contains("where each comes from"));
}

#[test]
fn lists_take_the_place_of_lists_and_tables_are_joined_by_keys_old_names_too() {
    use lapwright::finding::Findings;
    use lapwright::finding::job::ExtendsFault;
    use lapwright::job::extended::read;
    use lapwright::job::texts::{JobText, Texts};
    struct Office;
    impl Texts for Office {
        fn extended(&mut self, _: &str, _: &str) -> Result<JobText, ExtendsFault> {
            let text = "[layers]\nwall = [\"W\"]\nwindow = [\"G\"]\n[fasteners]\nlengths = [1.5, 2]\n[[joint]]\nelevation = \"F\"\nat = 9\n[trim.colours]\nj-channel = \"white\"\n";
            Ok(JobText { name: "office.toml".to_owned(), text: text.to_owned() })
        }
    }
    let job = "extends = \"office.toml\"\n[layers]\nwall = [\"X\"]\n[fasteners]\nlengths = [3]\n[[movement_joint]]\nelevation = \"F\"\nat = 20\n[trim.colors]\nstarter = \"gray\"\n";
    let mut findings = Findings::default();
    let made = read(job, "job.toml", &mut Office, &mut findings).unwrap();
    assert_eq!(made.job.fasteners.lengths, [3.0]);
    assert_eq!(made.job.movement_joints.iter().map(|j| j.at).collect::<Vec<_>>(), [20.0]);
    assert_eq!(made.job.layers.values().cloned().collect::<Vec<_>>(), [["X"], ["G"]]);
    assert_eq!(made.job.trim.colors.len(), 2);
    // Old names are told of the file that has them.
    let told: Vec<String> = findings.all().iter().map(crate::support::said).collect();
    assert!(told.iter().any(|t| t.starts_with("office.toml:") && t.contains("joint")), "{told:?}");
}

#[test]
fn a_fault_is_told_of_the_file_and_line_that_it_is_in() {
    let job = "extends = \"../office.toml\"\n[drawing]\nunit = \"inch\"\n";
    for (text, place, words) in [
        // An unknown key, with the one that may be meant.
        ("[product]\r\n\r\nlenght = 150\r\n", "office.toml:3:1", "`length` in [product]"),
        // A value of the wrong form; one out of range; one that is no TOML.
        ("[product]\nexposure = 8\nfaces = \"two\"\n", "office.toml:3:9", "`faces`"),
        ("[seams]\nstagger = -1\n", "office.toml:2:11", "stagger"),
        ("[product\n", "office.toml:1:", ""),
    ] {
        let dir = office(&[("office.toml", text), ("jobs/h.toml", job)]);
        let o = run(dir.path(), &CHECK);
        assert_eq!(o.status.code(), Some(1));
        assert!(err(&o).contains(place) && err(&o).contains(words), "{place}: {}", err(&o));
    }
    // A value of the job that does not go with one of the office's is told of the job.
    let dir = office(&[
        ("office.toml", "[seams]\nshortest = 24\n"),
        ("jobs/h.toml", "extends = \"../office.toml\"\n[product]\nlength = 40\n"),
    ]);
    let said = err(&run(dir.path(), &CHECK));
    assert!(said.contains("office.toml:2:12") || said.contains("h.toml:3:10"), "{said}");
}

#[test]
fn circles_and_files_that_are_not_there_are_told() {
    let dir = office(&[
        ("jobs/h.toml", "# first\nextends = \"a.toml\"\n"),
        ("jobs/a.toml", "extends = \"./b.toml\"\n"),
        ("jobs/b.toml", "extends = \"../jobs/a.toml\"\n"),
    ]);
    let said = err(&run(dir.path(), &CHECK));
    assert!(
        said.contains("b.toml:1:11: it extends itself") && said.contains("job-unreadable"),
        "{said}"
    );
    let dir = office(&[("jobs/h.toml", "# first\nextends = \"none.toml\"\n")]);
    let said = err(&run(dir.path(), &CHECK));
    assert!(said.contains("h.toml:2:11") && said.contains("none.toml"), "{said}");
}

#[test]
fn the_template_gives_an_office_what_it_answers_once() {
    let dir = office(&[]);
    assert!(run(dir.path(), &["template", "given"]).status.success());
    let given = dir.path().join("given");
    // The office answers three questions in the file that is given, the house says its unit.
    let answer = |file: &str, from: &str, to: &str| {
        let text = std::fs::read_to_string(given.join(file)).unwrap();
        assert!(text.contains(from), "{from}: {text}");
        std::fs::write(given.join(file), text.replace(from, to)).unwrap();
    };
    answer("office.toml", "#exposure = 8.0", "exposure = 7.0");
    answer("office.toml", "#outside_post_set_back = 2.0", "outside_post_set_back = 1.5");
    answer("office.toml", "#price_list = \"prices.csv\"", "price_list = \"prices.csv\"");
    answer("house.toml", "#unit = \"inch\"", "unit = \"inch\"");
    std::fs::write(
        given.join("prices.csv"),
        "item,unit,price,order multiple,currency\ncartons,carton,400,1,USD\n",
    )
    .unwrap();
    let o = run(dir.path(), &["check", "h.dxf", "--job", "given/house.toml"]);
    let said = out(&o).replace('\\', "/");
    assert!(said.contains("product.outside_post_set_back") && said.contains("1 1/2\""), "{said}");
    // The price list of the office is found from the office's own folder.
    let o = run(dir.path(), &["takeoff", "h.dxf", "--job", "given/house.toml", "--quiet"]);
    assert!(out(&o).contains("400.00"), "{}{}", out(&o), err(&o));
    // A first job of a drawing beside the office's file goes on from it.
    std::fs::copy(dir.path().join("h.dxf"), given.join("new.dxf")).unwrap();
    assert!(run(dir.path(), &["start", "given/new.dxf"]).status.success());
    let text = std::fs::read_to_string(given.join("new.toml")).unwrap();
    assert!(text.starts_with("extends = \"office.toml\"\n"), "{text}");
    assert_eq!(
        run(dir.path(), &["check", "given/new.dxf", "--job", "given/new.toml"]).status.code(),
        Some(0)
    );
}
