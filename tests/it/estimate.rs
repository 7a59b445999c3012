//! `takeoff` and its options as an estimator runs them: prices, explanations, parts of the house.

use std::collections::BTreeMap;
use std::path::Path;

use assert_cmd::Command;
use serde_json::Value;

use crate::support::root;

/// A wall with a window; prices and explanations need no more.
const HOUSE: [&str; 3] =
    ["sample-drawings/one-window.dxf", "--job", "sample-drawings/one-window.toml"];
/// Four elevations with gables.
const COTTAGE: [&str; 3] =
    ["sample-drawings/curlew-cottage.dxf", "--job", "sample-drawings/curlew-cottage.toml"];

fn run_on(house: [&str; 3], command: &str, more: &[&str]) -> std::process::Output {
    let mut c = Command::cargo_bin("lapwright").unwrap();
    c.current_dir(root()).arg(command).args(house).args(more).output().unwrap()
}

fn run(command: &str, more: &[&str]) -> std::process::Output {
    run_on(HOUSE, command, more)
}

fn text(o: &std::process::Output) -> String {
    assert!(o.status.success(), "{}", String::from_utf8_lossy(&o.stderr));
    String::from_utf8(o.stdout.clone()).unwrap()
}

fn json(more: &[&str]) -> Value {
    let args: Vec<&str> = more.iter().copied().chain(["--format", "json"]).collect();
    serde_json::from_str(&text(&run("takeoff", &args))).unwrap()
}

fn order(lines: &Value, id: &str) -> u64 {
    let line = lines.as_array().unwrap().iter().find(|l| l["id"] == id).unwrap();
    line["order"].as_f64().unwrap() as u64
}

/// A price list in a file.
fn prices(dir: &Path, rows: &str) -> String {
    let path = dir.join("prices.csv");
    std::fs::write(&path, format!("item,unit,price,order multiple,currency\n{rows}")).unwrap();
    path.to_str().unwrap().to_owned()
}

const ROWS: &str = "cartons,carton,412.00,1,CAD\nJ-channel,piece,9.8525,10,CAD\nstarter-strip,piece,6.05,,CAD\nskylight,piece,99,1,CAD\n";

#[test]
fn prices_give_costs_and_nothing_is_made_up() {
    let dir = tempfile::tempdir().unwrap();
    let list = prices(dir.path(), ROWS);
    let lines = json(&["--prices", &list]);
    let cost =
        |id: &str| &lines.as_array().unwrap().iter().find(|l| l["id"] == id).unwrap()["cost"];
    // By hand from what is ordered: cartons at 412.00, channel in tens at 9.8525.
    let (cartons, channel, starter) =
        (order(&lines, "cartons"), order(&lines, "j-channel"), order(&lines, "starter-strip"));
    assert!(cartons >= 1 && channel >= 1 && starter >= 1);
    assert_eq!(cost("cartons")["extended"], 412.0 * cartons as f64);
    let tens = channel.div_ceil(10) * 10;
    assert_eq!(cost("j-channel")["quantity"], tens);
    // In hundredths, half up: 98.525 a ten is 98.53.
    let hundredths = (tens * 98_525 + 50) / 100;
    assert_eq!(cost("j-channel")["extended"], hundredths as f64 / 100.0);
    assert_eq!(cost("j-channel")["currency"], "CAD");
    // To buy, without a price: null. Not bought: no cost at all.
    assert!(cost("trim-nails").is_null() && lines[0].get("cost").is_none(), "{lines}");
    let nails = lines.as_array().unwrap().iter().find(|l| l["id"] == "trim-nails").unwrap();
    assert!(nails.as_object().unwrap().contains_key("cost"));

    let table = text(&run("takeoff", &["--prices", &list]));
    assert!(table.lines().all(|l| l.chars().count() <= 80), "{table}");
    let total = 41_200 * cartons + hundredths + 605 * starter;
    assert!(table.contains(&format!("{}.{:02}", total / 100, total % 100)), "{total}: {table}");
    assert!(table.contains("Without a price:") && table.contains("trim-nails"), "{table}");
    assert!(table.contains("Prices not used: skylight (line 5)"), "{table}");

    let csv = text(&run("takeoff", &["--prices", &list, "--format", "csv"]));
    let mut rows = csv::Reader::from_reader(csv.as_bytes());
    let head = rows.headers().unwrap().clone();
    let col = |n: &str| head.iter().position(|h| h == n).unwrap();
    let rows: Vec<csv::StringRecord> = rows.records().map(Result::unwrap).collect();
    let row = |id: &str| rows.iter().find(|r| &r[col("id")] == id).unwrap();
    assert_eq!(row("cartons")[col("extended")], format!("{}.00", 412 * cartons));
    assert_eq!(&row("j-channel")[col("price")], "9.8525");
    assert_eq!(&row("trim-nails")[col("price")], "no price");
    assert_eq!(&row("squares-laid")[col("price")], "");
}

#[test]
fn a_faulty_price_list_is_refused_with_its_place_before_anything_is_written() {
    let dir = tempfile::tempdir().unwrap();
    let out = dir.path().join("out");
    for (rows, place) in [
        ("cartons,carton,$4,1,USD\n", "prices.csv:2:16: `$4` is no price"),
        ("cartons,piece,4,1,USD\n", "prices.csv:2:9: `cartons` is priced by the piece"),
    ] {
        let list = prices(dir.path(), rows);
        let more = ["--prices", &list, "--out", out.to_str().unwrap(), "--no-pictures"];
        let o = run("layout", &more);
        // The terminal wraps words, so blanks and frame are taken out.
        let said: String = String::from_utf8_lossy(&o.stderr)
            .chars()
            .filter(|c| !c.is_whitespace() && *c != '│')
            .collect();
        assert_eq!(o.status.code(), Some(1), "{said}");
        assert!(said.contains(&place.replace(' ', "")), "{said}");
        assert!(!out.exists());
    }
    let o = run("takeoff", &["--prices", "no-such-file.csv"]);
    assert_eq!(o.status.code(), Some(1));
}

#[test]
fn layout_with_prices_puts_costs_into_every_table() {
    let dir = tempfile::tempdir().unwrap();
    let list = prices(dir.path(), ROWS);
    let out = dir.path().join("out");
    text(&run(
        "layout",
        &["--prices", &list, "--out", out.to_str().unwrap(), "--no-pictures", "--quiet"],
    ));
    let file = |name: &str| std::fs::read(out.join(name)).unwrap();
    let whole: Value = serde_json::from_slice(&file("takeoff.json")).unwrap();
    assert_eq!(whole["format"], "lapwright-takeoff/1");
    assert_eq!(whole["cost"]["currency"], "CAD");
    let sum: f64 = whole["cost"]["lines"]
        .as_array()
        .unwrap()
        .iter()
        .map(|l| l["extended"].as_f64().unwrap())
        .sum();
    assert!((whole["cost"]["total"].as_f64().unwrap() - sum).abs() < 1e-6 && sum > 400.0);
    assert!(String::from_utf8(file("takeoff.csv")).unwrap().contains("no price"));
    let report = String::from_utf8(file("report.txt")).unwrap();
    assert!(report.contains("COST AT THE PRICES GIVEN (CAD)"));
    // The layout itself has no prices in it.
    assert!(!String::from_utf8(file("layout.json")).unwrap().contains("extended"));
}

#[test]
fn explanations_name_figures_rules_and_pieces() {
    let lines = json(&[]);
    for line in lines.as_array().unwrap() {
        let id = line["id"].as_str().unwrap();
        let said = text(&run("takeoff", &["--explain", id]));
        assert!(said.lines().all(|l| l.chars().count() <= 80), "{said}");
        let words = said.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(words.starts_with(line["item"].as_str().unwrap()), "{said}");
        let how = line["how"].as_str().unwrap();
        assert!(words.contains(how), "{id}: {said}");
        // Every piece it counts is named.
        for mark in line["counts"].as_array().into_iter().flatten() {
            let mark = mark.as_str().unwrap();
            assert!(
                words.split([' ', ',', ':']).any(|w| w == mark),
                "{id}: {mark} is not in {said}"
            );
        }
    }
    // By its words, in any case.
    let said = text(&run("takeoff", &["--explain", "j-CHANNEL"]));
    assert!(said.contains("published rule: 2 piece"), "{said}");
}

#[test]
fn a_line_that_is_not_there_is_wrong_usage_with_the_nearest_named() {
    let o = run("takeoff", &["--explain", "cartoons"]);
    let said = String::from_utf8_lossy(&o.stderr).into_owned();
    assert_eq!(o.status.code(), Some(2), "{said}");
    assert!(said.contains("Did you mean cartons?") && o.stdout.is_empty(), "{said}");
}

#[test]
fn parts_of_the_house_sum_to_the_house() {
    let takeoff = |more: &[&str]| text(&run_on(COTTAGE, "takeoff", more));
    let json = |more: &[&str]| -> Value {
        let args: Vec<&str> = more.iter().copied().chain(["--format", "json"]).collect();
        serde_json::from_str(&takeoff(&args)).unwrap()
    };
    let lines = json(&[]);
    for by in ["elevation", "wall", "zone"] {
        let rows = json(&["--by", by]);
        let mut sums: BTreeMap<&str, f64> = BTreeMap::new();
        for r in rows.as_array().unwrap() {
            *sums.entry(r["item"].as_str().unwrap()).or_default() += r["net"].as_f64().unwrap();
            assert_eq!(r.get("wall").is_some(), by == "wall");
            assert_eq!(r.get("zone").is_some(), by == "zone");
        }
        assert!(sums.len() >= 8, "{by}: {sums:?}");
        for (id, sum) in sums {
            let line = lines.as_array().unwrap().iter().find(|l| l["id"] == id).unwrap();
            assert!((line["net"].as_f64().unwrap() - sum).abs() < 1e-5, "{by}, {id}: {sum}");
        }
        let table = takeoff(&["--by", by]);
        assert!(table.lines().all(|l| l.chars().count() <= 80), "{table}");
        let csv = takeoff(&["--by", by, "--format", "csv"]);
        assert_eq!(csv.lines().count(), rows.as_array().unwrap().len() + 1);
    }
    let table = takeoff(&["--by", "zone"]);
    assert!(table.contains("\nwall\n") && table.contains("\ngable\n"), "{table}");
}

#[test]
fn spare_panels_are_said_separately() {
    let dir = tempfile::tempdir().unwrap();
    let path = dir.path().join("job.toml");
    std::fs::write(&path, "[takeoff]\nspare = 10\n").unwrap();
    let o = Command::cargo_bin("lapwright")
        .unwrap()
        .current_dir(root())
        .args(["takeoff", "sample-drawings/one-wall.dxf", "--format", "json", "--job"])
        .arg(&path)
        .output()
        .unwrap();
    let lines: Value = serde_json::from_slice(&o.stdout).unwrap();
    let (panels, spare) = (order(&lines, "panels"), order(&lines, "spare-panels"));
    assert_eq!(spare, panels.div_ceil(10));
    let line = lines.as_array().unwrap().iter().find(|l| l["id"] == "spare-panels").unwrap();
    assert!(line["how"].as_str().unwrap().contains("for damage"), "{line}");
    assert_eq!(order(&lines, "cartons"), (panels + spare).div_ceil(24));
}
