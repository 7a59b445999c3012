//! Many houses in one call: each as it would be laid out alone, one table, one purchase; what is finished is not
//! laid out twice; one that fails stops none.

use std::collections::BTreeMap;
use std::path::Path;
use std::process::{Command, Output};
use std::time::SystemTime;

use lapwright::outputs::marker::MARKER;
use lapwright::read::layout_json;

use crate::smallcase::{JOB, Side, drawing, house};

fn run(at: &Path, args: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_lapwright")).args(args).current_dir(at).output().unwrap()
}

fn err(out: &Output) -> String {
    String::from_utf8_lossy(&out.stderr).into_owned()
}

/// Random houses `h01.dxf` and so on in the folder `plans`, with a job for all.
fn plans(at: &Path, count: u64) {
    std::fs::create_dir_all(at.join("plans")).unwrap();
    std::fs::write(at.join("all.toml"), JOB).unwrap();
    for seed in 1..=count {
        let path = at.join(format!("plans/h{seed:02}.dxf"));
        std::fs::write(path, drawing(&house(seed))).unwrap();
    }
}

const ALL: [&str; 7] = ["layout", "plans", "--job", "all.toml", "--out", "out", "--no-pictures"];

/// Rows of a CSV by their first cell, each cell by the head of its column.
fn table(at: &Path) -> Vec<BTreeMap<String, String>> {
    let mut reader = csv::ReaderBuilder::new().from_path(at).unwrap();
    let head = reader.headers().unwrap().clone();
    let row = |r: csv::StringRecord| {
        head.iter().map(str::to_owned).zip(r.iter().map(str::to_owned)).collect()
    };
    reader.records().map(|r| row(r.unwrap())).collect()
}

fn number(row: &BTreeMap<String, String>, key: &str) -> f64 {
    row[key].parse().unwrap_or_else(|_| panic!("{key} of {row:?}"))
}

/// When a house's list of files was written.
fn written(at: &Path, name: &str) -> SystemTime {
    std::fs::metadata(at.join("out").join(name).join(MARKER)).unwrap().modified().unwrap()
}

#[test]
fn houses_are_laid_out_as_each_alone_and_bought_as_one() {
    let dir = tempfile::tempdir().unwrap();
    let at = dir.path();
    plans(at, 12);
    let out = run(at, &ALL);
    assert_eq!(out.status.code(), Some(0), "{}", err(&out));
    assert!(err(&out).contains("12 of 12: "), "{}", err(&out));
    let houses = table(&at.join("out/houses.csv"));
    assert_eq!(houses.len(), 12);
    // What each house's own layout holds, counted anew.
    let mut panels = 0;
    let mut area = 0.0;
    for row in &houses {
        let text = std::fs::read(at.join("out").join(&row["house"]).join("layout.json")).unwrap();
        let layout = layout_json::layout(&text).unwrap();
        assert_eq!(number(row, "panels"), layout.panels.len() as f64, "{row:?}");
        assert_eq!(row["state"], "laid out");
        panels += layout.panels.len();
        area += layout.walls().map(|(_, w)| w.gross_area).sum::<f64>();
    }
    let told: f64 = houses.iter().map(|r| number(r, "wall area (sq ft)")).sum();
    assert!((told - area).abs() < 0.01, "{told} {area}");
    // The purchase has as many panels as all houses together; spare panels and cartons are rounded up once.
    let bought = table(&at.join("out/purchase.csv"));
    let line = |item: &str| bought.iter().find(|r| r["item"].starts_with(item)).unwrap();
    let of_panels = line("panels");
    assert_eq!(number(of_panels, "ordered at once"), panels as f64, "{of_panels:?}");
    assert_eq!(number(of_panels, "ordered house by house"), panels as f64);
    assert_eq!(number(of_panels, "houses"), 12.0);
    let cartons = line("cartons");
    let (apart, once) =
        (number(cartons, "ordered house by house"), number(cartons, "ordered at once"));
    assert!(once < apart && once * 24.0 >= panels as f64, "{cartons:?}");
    // Posts are cut house by house: nothing is gained, nothing lost.
    let posts = line("outside corner post");
    assert_eq!(number(posts, "ordered house by house"), number(posts, "ordered at once"));
    let by_house = table(&at.join("out/purchase-by-house.csv"));
    let each = by_house.iter().filter(|r| r["item"].starts_with("panels"));
    assert_eq!(each.map(|r| number(r, "ordered by itself")).sum::<f64>(), panels as f64);
    // One of them by itself writes the same files.
    let alone = [
        "layout",
        "plans/h03.dxf",
        "--job",
        "all.toml",
        "--out",
        "alone",
        "--no-pictures",
        "--quiet",
    ];
    assert_eq!(run(at, &alone).status.code(), Some(0));
    let list = |folder: &str| std::fs::read(at.join(folder).join(MARKER)).unwrap();
    assert_eq!(list("alone"), list("out/h03"));
}

/// A comma in a name is part of it, and a house whose gables have another color is one house of two sets.
#[test]
fn houses_are_counted_by_their_whole_names() {
    let dir = tempfile::tempdir().unwrap();
    let at = dir.path();
    std::fs::create_dir_all(at.join("plans")).unwrap();
    let zone = "[[zone]]\nname = \"Gables, all\"\n[[zone.region]]\nbottom = 60\n[zone.product]\ncolor = \"sand\"\n";
    std::fs::write(at.join("all.toml"), format!("{JOB}{zone}")).unwrap();
    for (seed, name) in [(1, "Lot 4, Elm"), (2, "Lot 4, Oak")] {
        std::fs::write(at.join(format!("plans/{name}.dxf")), drawing(&house(seed))).unwrap();
    }
    let out = run(at, &ALL);
    assert_eq!(out.status.code(), Some(0), "{}", err(&out));
    let bought = table(&at.join("out/purchase.csv"));
    let nails = bought.iter().find(|r| r["item"].contains("nails")).unwrap();
    assert_eq!(number(nails, "houses"), 2.0, "{nails:?}");
    let by_house = table(&at.join("out/purchase-by-house.csv"));
    let mut takers: Vec<&str> = by_house
        .iter()
        .filter(|r| r["item"] == nails["item"])
        .map(|r| r["house"].as_str())
        .collect();
    takers.sort_unstable();
    let each = ["Lot 4, Elm", "Lot 4, Elm, Gables, all", "Lot 4, Oak", "Lot 4, Oak, Gables, all"];
    assert_eq!(takers, each);
}

#[test]
fn the_workbook_of_houses_sums_what_the_tables_say() {
    use calamine::{Data, Reader, Xlsx, open_workbook};
    let dir = tempfile::tempdir().unwrap();
    let at = dir.path();
    plans(at, 2);
    std::fs::write(
        at.join("prices.csv"),
        "item,unit,price,order multiple,currency\ncartons,carton,400.00,1,USD\n",
    )
    .unwrap();
    let args: Vec<&str> = ALL.into_iter().chain(["--prices", "prices.csv"]).collect();
    assert_eq!(run(at, &args).status.code(), Some(0));
    let mut book: Xlsx<_> = open_workbook(at.join("out/houses.xlsx")).unwrap();
    let houses = book.worksheet_range("Houses").unwrap();
    let cell = |row: u32, col: u32| match houses.get_value((row, col)) {
        Some(Data::Float(v)) => *v,
        Some(Data::Int(v)) => *v as f64,
        other => panic!("{other:?}"),
    };
    assert_eq!(cell(3, 7), cell(1, 7) + cell(2, 7), "panels of both");
    let bought = table(&at.join("out/purchase.csv"));
    let cartons = bought.iter().find(|r| r["item"].starts_with("cartons")).unwrap();
    assert_eq!(number(cartons, "cost"), 400.0 * number(cartons, "ordered at once"), "{cartons:?}");
}

#[test]
fn what_is_finished_is_not_laid_out_again_and_what_changed_is() {
    let dir = tempfile::tempdir().unwrap();
    let at = dir.path();
    plans(at, 4);
    assert_eq!(run(at, &ALL).status.code(), Some(0));
    let before: Vec<_> = (1..=4).map(|i| written(at, &format!("h0{i}"))).collect();
    let panels = table(&at.join("out/houses.csv"));
    // One drawing changes, of one house a file is lost, one has a note of its owner's in its folder.
    std::fs::write(at.join("plans/h02.dxf"), drawing(&house(99))).unwrap();
    std::fs::remove_file(at.join("out/h03/report.txt")).unwrap();
    std::fs::write(at.join("out/h04/note.txt"), "call the owner").unwrap();
    let out = run(at, &ALL);
    assert_eq!(out.status.code(), Some(0), "{}", err(&out));
    let rows = table(&at.join("out/houses.csv"));
    let states: Vec<&str> = rows.iter().map(|r| r["state"].as_str()).collect();
    assert_eq!(states, ["laid out before", "laid out", "laid out", "laid out before"]);
    assert_eq!((written(at, "h01"), written(at, "h04")), (before[0], before[3]));
    assert!(at.join("out/h03/report.txt").exists() && at.join("out/h04/note.txt").exists());
    // What was laid before counts as it did.
    for i in [0, 2, 3] {
        assert_eq!(rows[i]["panels"], panels[i]["panels"]);
    }
    // Other options, other results: all are laid out anew.
    let separate: Vec<&str> = ALL.into_iter().chain(["--overlay", "separate"]).collect();
    std::fs::remove_file(at.join("out/h04/note.txt")).unwrap();
    assert_eq!(run(at, &separate).status.code(), Some(0));
    assert!(table(&at.join("out/houses.csv")).iter().all(|r| r["state"] == "laid out"));
    // What somebody edited is not written over, and stops no other house.
    std::fs::write(at.join("out/h01/report.txt"), "mine").unwrap();
    let out = run(at, &separate);
    assert_eq!(out.status.code(), Some(1));
    assert!(err(&out).contains("House h01:") && err(&out).contains("report.txt"), "{}", err(&out));
    assert_eq!(std::fs::read(at.join("out/h01/report.txt")).unwrap(), b"mine");
    let rows = table(&at.join("out/houses.csv"));
    assert_eq!(
        (rows[0]["state"].as_str(), rows[0]["code"].as_str()),
        ("not laid out", "out-refused")
    );
    assert!(rows[1..].iter().all(|r| r["state"] == "laid out before"));
}

#[test]
fn a_killed_call_goes_on_where_it_was() {
    let dir = tempfile::tempdir().unwrap();
    let at = dir.path();
    plans(at, 8);
    let mut child = Command::new(env!("CARGO_BIN_EXE_lapwright"))
        .args(ALL)
        .args(["--at-once", "1"])
        .current_dir(at)
        .stderr(std::process::Stdio::null())
        .spawn()
        .unwrap();
    let finished = || {
        let done = |i: &u64| at.join(format!("out/h{i:02}")).join(MARKER).exists();
        (1..=8).filter(done).collect::<Vec<u64>>()
    };
    while finished().len() < 3 && child.try_wait().unwrap().is_none() {
        std::thread::sleep(std::time::Duration::from_millis(20));
    }
    child.kill().unwrap();
    child.wait().unwrap();
    let done = finished();
    assert!(done.len() >= 3);
    let times: Vec<_> = done.iter().map(|i| written(at, &format!("h{i:02}"))).collect();
    let out = run(at, &ALL);
    assert_eq!(out.status.code(), Some(0), "{}", err(&out));
    let again: Vec<_> = done.iter().map(|i| written(at, &format!("h{i:02}"))).collect();
    assert_eq!(times, again, "finished houses were written again");
    let rows = table(&at.join("out/houses.csv"));
    let before = rows.iter().filter(|r| r["state"] == "laid out before").count();
    assert_eq!((rows.len(), before), (8, done.len()));
    // Nothing is left at the side.
    let left = std::fs::read_dir(at.join("out")).unwrap();
    let left: Vec<_> = left.map(|e| e.unwrap().file_name().into_string().unwrap()).collect();
    assert!(left.iter().all(|n| !n.starts_with('.')), "{left:?}");
}

#[test]
fn one_failure_stops_none_and_the_exit_code_is_the_worst() {
    let dir = tempfile::tempdir().unwrap();
    let at = dir.path();
    plans(at, 2);
    std::fs::write(at.join("plans/broken.dxf"), "no drawing").unwrap();
    std::fs::write(at.join("plans/odd.dxf"), drawing(&house(5))).unwrap();
    std::fs::write(at.join("plans/odd.toml"), "[product]\nlenght = 150\n").unwrap();
    let out = run(at, &ALL);
    assert_eq!(out.status.code(), Some(1), "{}", err(&out));
    let rows = table(&at.join("out/houses.csv"));
    let state = |name: &str| {
        let row = rows.iter().find(|r| r["house"] == name).unwrap();
        (row["state"].clone(), row["code"].clone())
    };
    assert_eq!(state("broken").0, "not laid out");
    assert_eq!(state("odd"), ("not laid out".to_owned(), "job-unreadable".to_owned()));
    assert_eq!((state("h01").0.as_str(), state("h02").0.as_str()), ("laid out", "laid out"));
    assert!(
        err(&out).contains("House odd:") && err(&out).contains("odd.toml:2:1"),
        "{}",
        err(&out)
    );
    assert!(!at.join("out/broken").exists());
}

#[test]
fn houses_of_one_name_are_refused_with_both_named_and_the_list_is_plain() {
    let dir = tempfile::tempdir().unwrap();
    let at = dir.path();
    plans(at, 2);
    std::fs::create_dir(at.join("south")).unwrap();
    std::fs::copy(at.join("plans/h01.dxf"), at.join("south/H01.dxf")).unwrap();
    let out = run(at, &["layout", "plans", "south/H01.dxf", "--out", "out"]);
    assert_eq!(out.status.code(), Some(2));
    let said = err(&out).replace(['\n', '│'], " ");
    assert!(said.contains("h01.dxf") && said.contains("H01.dxf"), "{said}");
    assert!(!at.join("out").exists());
    // A list is a path a line, from its own folder; what --list prints has a line a house.
    std::fs::write(at.join("plans/some.txt"), "# first street\nh02.dxf\r\n\n").unwrap();
    let out = run(at, &["layout", "plans/some.txt", "--out", "out", "--list"]);
    let text = String::from_utf8_lossy(&out.stdout).replace('\\', "/");
    assert_eq!(text, "h02\tplans/h02.dxf\t\tout/h02\n");
    let alone = [
        "layout",
        "plans/some.txt",
        "--job",
        "all.toml",
        "--out",
        "out",
        "--no-pictures",
        "--houses-alone",
    ];
    assert_eq!(run(at, &alone).status.code(), Some(0));
    assert!(at.join("out/h02/layout.json").exists() && !at.join("out/houses.csv").exists());
}

/// What `--list` prints of these arguments: the names of houses.
fn names(at: &Path, args: &[&str]) -> Vec<String> {
    let args: Vec<&str> = [&["layout"], args, &["--out", "out", "--list"]].concat();
    let out = run(at, &args);
    assert_eq!(out.status.code(), Some(0), "{}", err(&out));
    let text = String::from_utf8_lossy(&out.stdout).into_owned();
    text.lines().map(|l| l.split('\t').next().unwrap().to_owned()).collect()
}

#[test]
fn a_house_is_one_however_often_and_however_it_is_named() {
    let dir = tempfile::tempdir().unwrap();
    let at = dir.path();
    plans(at, 2);
    std::fs::write(at.join("twice.txt"), "plans/h01.dxf\n./plans/h01.dxf\n").unwrap();
    std::fs::create_dir(at.join("other")).unwrap();
    for args in [
        &["plans", "./plans"][..],
        &["plans", "plans/h01.dxf", "./plans/h02.dxf"],
        &["plans", "other/../plans/h02.dxf"],
    ] {
        assert_eq!(names(at, args), ["h01", "h02"], "{args:?}");
    }
    assert_eq!(names(at, &["twice.txt"]), ["h01"]);
    // Two houses of one folder are still refused where the folder is written in two ways.
    std::fs::copy(at.join("plans/h01.dxf"), at.join("other/h01.dxf")).unwrap();
    let out = run(at, &["layout", "plans/h01.dxf", "other/h01.dxf", "--out", "./out", "--list"]);
    assert_eq!(out.status.code(), Some(2), "{}", err(&out));
}

#[test]
fn a_job_that_a_list_names_is_a_house_though_another_goes_on_from_it() {
    let dir = tempfile::tempdir().unwrap();
    let at = dir.path();
    plans(at, 1);
    let base = format!("{JOB}[model]\ndrawing = \"plans/h01.dxf\"\n");
    std::fs::write(at.join("lot-1.toml"), base).unwrap();
    std::fs::write(at.join("lot-2.toml"), "extends = \"lot-1.toml\"\n[model]\nmirrored = true\n")
        .unwrap();
    std::fs::write(at.join("lots.txt"), "lot-1.toml\nlot-2.toml\n").unwrap();
    assert_eq!(names(at, &["lots.txt"]), ["lot-1", "lot-2"]);
    assert_eq!(names(at, &["lot-1.toml", "lot-2.toml"]), ["lot-1", "lot-2"]);
}

#[test]
fn prices_of_a_call_are_its_sources() {
    let dir = tempfile::tempdir().unwrap();
    let at = dir.path();
    plans(at, 2);
    // A price list that is called as the purchase is, in the folder where that goes.
    std::fs::create_dir(at.join("out")).unwrap();
    let list = |price: u32| {
        format!("item,unit,price,order multiple,currency\ncartons,carton,{price},1,USD\n")
    };
    let put = |file: &str, price: u32| std::fs::write(at.join(file), list(price)).unwrap();
    put("out/purchase.csv", 400);
    let with = |file: &'static str| -> Vec<&str> {
        ALL.into_iter().chain(["--prices", file, "--replace"]).collect()
    };
    let out = run(at, &with("out/purchase.csv"));
    assert_eq!(out.status.code(), Some(1), "{}", err(&out));
    assert!(err(&out).contains("purchase.csv"), "{}", err(&out));
    assert_eq!(std::fs::read_to_string(at.join("out/purchase.csv")).unwrap(), list(400));
    // The same where the job names it.
    let by_job = format!("{JOB}[estimate]\nprice_list = \"out/purchase.csv\"\n");
    std::fs::write(at.join("all.toml"), by_job).unwrap();
    let args: Vec<&str> = ALL.into_iter().chain(["--replace"]).collect();
    assert_eq!(run(at, &args).status.code(), Some(1));
    assert_eq!(std::fs::read_to_string(at.join("out/purchase.csv")).unwrap(), list(400));
    // Other prices, other results: every house is priced anew, of the call's list and of the job's.
    std::fs::remove_file(at.join("out/purchase.csv")).unwrap();
    let by_job = format!("{JOB}[estimate]\nprice_list = \"ours.csv\"\n");
    std::fs::write(at.join("all.toml"), by_job).unwrap();
    let states = |args: &[&str]| -> Vec<String> {
        let out = run(at, args);
        assert_eq!(out.status.code(), Some(0), "{}", err(&out));
        table(&at.join("out/houses.csv")).iter().map(|r| r["state"].clone()).collect()
    };
    for (file, args) in [("ours.csv", ALL.to_vec()), ("given.csv", with("given.csv"))] {
        put(file, 400);
        put("ours.csv", 400);
        states(&args);
        assert_eq!(states(&args), ["laid out before"; 2]);
        put(file, 500);
        assert_eq!(states(&args), ["laid out"; 2], "{file}");
    }
}

/// Elevations of a plan with two fronts, A and B.
fn with_variants() -> Vec<Side> {
    let (a, b) = (house(7), house(8));
    let mut all = a.clone();
    all[0].title = "FRONT ELEVATION A".to_owned();
    all.push(Side { title: "FRONT ELEVATION B".to_owned(), ..b[0].clone() });
    all
}

#[test]
fn lots_are_built_from_one_plan_by_their_jobs() {
    let dir = tempfile::tempdir().unwrap();
    let at = dir.path();
    std::fs::create_dir(at.join("lots")).unwrap();
    std::fs::write(at.join("plan.dxf"), drawing(&with_variants())).unwrap();
    std::fs::write(at.join("lots/plan.toml"), format!("{JOB}[model]\ndrawing = \"../plan.dxf\"\n"))
        .unwrap();
    let lot = |name: &str, keys: &str| {
        let text = format!("extends = \"plan.toml\"\r\n[model]\r\n{keys}\r\n");
        std::fs::write(at.join("lots").join(name), text).unwrap();
    };
    lot("lot-1.toml", "variant = \"A\"");
    lot("lot-2.toml", "variant = \"b\"\r\nmirrored = true");
    let out = run(at, &["layout", "lots", "--out", "out", "--no-pictures"]);
    assert_eq!(out.status.code(), Some(0), "{}", err(&out));
    let names: Vec<String> =
        table(&at.join("out/houses.csv")).iter().map(|r| r["house"].clone()).collect();
    assert_eq!(names, ["lot-1", "lot-2"], "the plan that lots go on from is no house by itself");
    let layout = |lot: &str| {
        let text = std::fs::read(at.join("out").join(lot).join("layout.json")).unwrap();
        layout_json::layout(&text).unwrap()
    };
    let titles =
        |lot: &str| layout(lot).elevations.iter().map(|e| e.name.to_string()).collect::<Vec<_>>();
    assert_eq!(
        titles("lot-1"),
        ["FRONT ELEVATION A", "RIGHT ELEVATION", "REAR ELEVATION", "LEFT ELEVATION"]
    );
    assert_eq!(
        titles("lot-2"),
        ["FRONT ELEVATION B", "RIGHT ELEVATION", "REAR ELEVATION", "LEFT ELEVATION"]
    );
    // The door of the front stands 30 in from its left corner in the plan: from its right one when mirrored.
    let door = |lot: &str| {
        let layout = layout(lot);
        let wall = &layout.elevations[0].walls[0];
        let width = wall.outline.iter().map(|p| p[0]).fold(0.0, f64::max);
        let door = wall.openings.iter().find(|o| o.id.contains("-D")).unwrap();
        (door.left, width - door.right)
    };
    assert_eq!(door("lot-1").0, 30.0);
    assert_eq!(door("lot-2").1, 30.0);
    // One lot by itself, by its job alone.
    let out = run(at, &["layout", "lots/lot-2.toml", "--no-pictures", "--quiet"]);
    assert_eq!(out.status.code(), Some(0), "{}", err(&out));
    assert!(at.join("lots/lot-2-layout/report.txt").exists());
}
