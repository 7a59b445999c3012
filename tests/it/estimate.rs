//! `takeoff` and its options as an estimator runs them: prices, explanations, parts of the house.

use lapwright::language::Language;
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicUsize, Ordering};

use assert_cmd::Command;
use serde_json::Value;

use lapwright::wording::takeoff::{basis, explain, items};

use crate::support::root;

/// A wall with a window; prices and explanations need no more.
const HOUSE: &str = "one-window";
/// Four elevations with gables.
const COTTAGE: &str = "curlew-cottage";
const METRIC: &str = "metric";

/// The sample's job, searched briefly: how few panels there are does not matter here.
fn quick_job(stem: &str) -> PathBuf {
    let text =
        std::fs::read_to_string(root().join(format!("sample-drawings/{stem}.toml"))).unwrap();
    let text = text.replace("effort = \"usual\"", "effort = \"crew\"");
    let more = if text.contains("\"crew\"") { "" } else { "\n[seams]\neffort = \"crew\"\n" };
    // Tests may run at once: each has a file of its own.
    static COUNT: AtomicUsize = AtomicUsize::new(0);
    let n = COUNT.fetch_add(1, Ordering::Relaxed);
    let path = Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("estimate-{stem}-{n}.toml"));
    std::fs::write(&path, text + more).unwrap();
    path
}

fn run_on(house: &str, command: &str, more: &[&str]) -> std::process::Output {
    let mut c = Command::cargo_bin("lapwright").unwrap();
    c.current_dir(root()).arg(command).arg(format!("sample-drawings/{house}.dxf"));
    c.arg("--job").arg(quick_job(house)).args(more).output().unwrap()
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
    // A spare length of starter is bought too; tens leave the spare channel, the carton the spare panel.
    assert!(starter <= 33 && channel <= 9 && 24 * cartons > order(&lines, "panels"));
    let total = 41_200 * cartons + hundredths + 605 * (starter + 1);
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
    assert_eq!(whole["format"], "lapwright-takeoff/2");
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
fn a_price_list_never_changes_a_layout() {
    // Two lengths at costs of the job's own, and lists that make the one or the other dear: the same panels,
    // to the last byte of the layout, its drawings and its cut list.
    let dir = tempfile::tempdir().unwrap();
    let file = |name: &str, text: &str| {
        let path = dir.path().join(name);
        std::fs::write(&path, text).unwrap();
        path.to_str().unwrap().to_owned()
    };
    let job = std::fs::read_to_string(quick_job(HOUSE)).unwrap();
    let one = |l: &&str| !l.starts_with("length ") && !l.starts_with("carton ");
    let job: String = job.lines().filter(one).flat_map(|l| [l, "\n"]).collect();
    let stock = |length: &str, carton: u32, cost: f64| {
        format!("[[stock]]\nlength = {length}\ncarton = {carton}\ncost = {cost}\n")
    };
    let lengths = stock("150", 12, 1.0) + &stock("200", 9, 1.3);
    let job = file("job.toml", &format!("{job}\n{lengths}"));
    let lists = [("9.00", "900.00"), ("900.00", "9.00")].map(|(first, second)| {
        let rows = format!(
            "item,unit,price,currency\ncartons,carton,{first},USD\ncartons-second,carton,{second},USD\n"
        );
        file(&format!("p{first}.csv"), &rows)
    });
    let laid = |n: usize, more: &[&str]| {
        let out = dir.path().join(format!("out{n}"));
        let mut c = Command::cargo_bin("lapwright").unwrap();
        c.current_dir(root()).args(["layout", &format!("sample-drawings/{HOUSE}.dxf")]);
        c.args(["--job", &job, "--no-pictures", "--quiet", "--out", out.to_str().unwrap()]);
        text(&c.args(more).output().unwrap());
        ["layout.json", "overlay.dxf", "cut-list.csv"].map(|f| std::fs::read(out.join(f)).unwrap())
    };
    let without = laid(0, &[]);
    for (n, list) in lists.iter().enumerate() {
        assert!(laid(n + 1, &["--prices", list]) == without, "{list}");
    }
    // The job's own costs do change it: the list was worth changing it for.
    let dear = |first: f64, second: f64| {
        let costs = stock("150", 12, first) + &stock("200", 9, second);
        let text = std::fs::read_to_string(&job).unwrap().replace(&lengths, &costs);
        let job = lapwright::job::file::parse(&text, "job").unwrap();
        let house = std::fs::read(root().join(format!("sample-drawings/{HOUSE}.dxf"))).unwrap();
        let layout = crate::support::lay(&house, &job);
        layout.panels.iter().map(|p| p.stock).fold(0.0, f64::max)
    };
    assert_eq!((dear(1.0, 9.0), dear(9.0, 1.0)), (150.0, 200.0));
}

#[test]
fn explanations_name_figures_rules_and_pieces() {
    let layout = crate::support::laid_by_a_crew(COTTAGE);
    let takeoff = lapwright::takeoff::quantities(&layout);
    let style = layout.job.sheet.lengths;
    for line in &takeoff.lines {
        assert_eq!(explain::named(&takeoff, &line.id, style), Some(line));
        let said = explain::explained(&layout, &takeoff, line);
        let said = lapwright::write::tables::explained(&layout.verify, &said);
        assert!(said.lines().all(|l| l.chars().count() <= 80), "{said}");
        let words = said.split_whitespace().collect::<Vec<_>>().join(" ");
        let basis = basis::basis(line, &layout.job, &layout.bound);
        assert!(words.starts_with(&items::item(Language::English, &line.item, style)), "{said}");
        assert!(words.contains(&basis), "{said}");
        // Every piece it counts is named, and every wall that takes some.
        let named = |w: &str| words.split([' ', ',', ':']).any(|x| x == w);
        assert!(line.counts.iter().all(|m| named(m)), "{}: {said}", line.id);
        assert!(line.shares.iter().all(|s| named(&s.wall)), "{}: {said}", line.id);
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
    for by in ["elevation", "wall", "gable"] {
        let rows = json(&["--by", by]);
        let mut sums: BTreeMap<&str, f64> = BTreeMap::new();
        for r in rows.as_array().unwrap() {
            *sums.entry(r["id"].as_str().unwrap()).or_default() += r["net"].as_f64().unwrap();
            assert_eq!(r.get("wall").is_some(), by == "wall");
            assert_eq!(r.get("wall_part").is_some(), by == "gable");
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
    let table = takeoff(&["--by", "gable"]);
    assert!(table.contains("\nwall\n") && table.contains("\ngable\n"), "{table}");
}

#[test]
fn spare_panels_are_said_separately() {
    let dir = tempfile::tempdir().unwrap();
    let path = dir.path().join("job.toml");
    std::fs::write(&path, "[takeoff]\nspare = 10\n[seams]\neffort = \"crew\"\n").unwrap();
    let o = Command::cargo_bin("lapwright")
        .unwrap()
        .current_dir(root())
        .args(["takeoff", "sample-drawings/one-wall.dxf", "--format", "json", "--job"])
        .arg(&path)
        .output()
        .unwrap();
    let lines: Value = serde_json::from_slice(&o.stdout).unwrap();
    let (panels, spare) = (order(&lines, "panels"), order(&lines, "spare-panels"));
    // A carton of 24 leaves as many as ten percent: none are added.
    assert!(24 - panels % 24 >= panels.div_ceil(10) && spare == 0, "{panels} {spare}");
    let line = lines.as_array().unwrap().iter().find(|l| l["id"] == "spare-panels").unwrap();
    assert_eq!(
        (&line["basis"]["from"], &line["basis"]["percent"]),
        (&"spare".into(), &10.0.into())
    );
    assert_eq!(order(&lines, "cartons"), (panels + spare).div_ceil(24));
}

#[test]
fn lengths_go_out_by_the_job_in_every_table() {
    let csv = |house| text(&run_on(house, "takeoff", &["--format", "csv"]));
    let cell = |csv: &str, id: &str, column: &str| {
        let mut rows = csv::Reader::from_reader(csv.as_bytes());
        let head = rows.headers().unwrap().clone();
        let col = |n: &str| head.iter().position(|h| h == n).unwrap_or_else(|| panic!("{n}"));
        let row = rows.records().map(Result::unwrap).find(|r| &r[col("id")] == id).unwrap();
        row[col(column)].to_owned()
    };
    let (feet, mm) = (csv(HOUSE), csv(METRIC));
    // 12 ft 6 in is 3810 mm; a 10 ft post 3048 mm.
    assert_eq!(cell(&feet, "panels", "stock (in)"), "150");
    assert_eq!(cell(&feet, "panels", "stock"), "12'-6\"");
    assert_eq!(cell(&mm, "panels", "stock (mm)"), "3810");
    assert_eq!(cell(&mm, "outside-corner-post", "stock"), "3048 mm");
    // Nails alone go by the inch in both.
    let feet_marks = |t: &str| t.lines().filter(|l| l.contains("'-")).count();
    assert!(feet_marks(&feet) > 3 && feet_marks(&mm) == 0, "{mm}");
    for id in ["panels", "j-channel", "opening-flashing"] {
        let said = text(&run_on(METRIC, "takeoff", &["--explain", id]));
        assert!(said.contains(" mm") && !said.contains("'-"), "{said}");
    }
    let check = text(&run_on(METRIC, "check", &[]));
    assert!(check.contains(" mm wide") && !check.contains("'-"), "{check}");
}

#[test]
fn lengths_come_in_by_any_usual_spelling() {
    let dir = tempfile::tempdir().unwrap();
    let with = |length: &str| {
        let path = dir.path().join("job.toml");
        std::fs::write(
            &path,
            format!("[product]\nlength = {length}\n[seams]\neffort = \"crew\"\n"),
        )
        .unwrap();
        let o = Command::cargo_bin("lapwright")
            .unwrap()
            .current_dir(root())
            .args(["takeoff", "sample-drawings/one-wall.dxf", "--format", "json", "--job"])
            .arg(&path)
            .output()
            .unwrap();
        text(&o)
    };
    let known = with("150");
    for t in ["\"12'-6\\\"\"", "\"12-6\"", "\"12.5 ft\"", "\"150.0\"", "\"3810mm\"", "\"3.81 m\""] {
        assert!(with(t) == known, "{t}");
    }
    assert!(with("\"12'-6 1/2\\\"\"") != known);
}

proptest::proptest! {
    #![proptest_config(proptest::prelude::ProptestConfig::with_cases(400))]

    /// Whatever stands in a price list, it is read or refused with a place that is in it.
    #[test]
    fn any_price_list_is_read_or_refused_by_place(
        head in proptest::bool::ANY,
        body in proptest::collection::vec(
            proptest::sample::select(vec![
                "item", "cartons", "carton", "9.85", "1", "-1", "USD", ",", ",", ",", ";", "\"",
                "\"\"", "\n", "\r\n", " ", "\u{e9}", "=1+1",
            ]),
            0..40,
        ),
    ) {
        let start = if head { "item,unit,price,currency\n" } else { "" };
        let text = format!("{start}{}", body.concat());
        match lapwright::takeoff::price::parse(text.as_bytes(), "p") {
            Ok(list) => assert!(list.prices.iter().all(|p| p.price >= 0 && !p.item.is_empty())),
            Err(e) => {
                let message = crate::support::said(&e.0);
                let mut place = message.trim_start_matches("p:").split(':');
                let mut number = || place.next().unwrap().parse::<usize>().unwrap();
                let (line, column) = (number(), number());
                // One past the end is the place of what is missing.
                let longest = text.lines().map(|l| l.chars().count()).max().unwrap_or(0);
                let fits = (1..=text.split('\n').count()).contains(&line);
                assert!(fits && (1..=longest + 1).contains(&column), "{message}: {text:?}");
            }
        }
    }
}

#[test]
fn prices_by_words_by_short_name_and_by_an_old_unit_are_taken() {
    use lapwright::finding::FindingKind;
    use lapwright::finding::prices::{PriceFault, PriceFinding};
    use lapwright::model::item::CountUnit;
    use lapwright::takeoff::price;

    let layout = crate::support::laid_by_a_crew(HOUSE);
    let style = layout.job.sheet.lengths;
    let priced = |rows: &str| {
        let list =
            price::parse(format!("item,unit,price,currency\n{rows}").as_bytes(), "p").unwrap();
        let takeoff = lapwright::takeoff::quantities(&layout);
        price::applied(takeoff, &list, "p", &|l| items::item_and_unit(Language::English, l, style))
    };
    let taken = |rows: &str| -> Vec<String> {
        let cost = priced(rows).unwrap().cost.unwrap();
        assert!(cost.unused.is_empty(), "{:?}", cost.unused);
        cost.lines.iter().map(|p| p.item.to_string()).collect()
    };
    for name in ["finish-trim", "Finish trim", "undersill (finish) trim", "FINISH-TRIM"] {
        assert_eq!(
            taken(&format!("{name},piece,3,USD\n")),
            ["finish-trim", "spare-finish-trim"],
            "{name}"
        );
    }
    for unit in ["square", "100 sq ft"] {
        assert_eq!(taken(&format!("squares,{unit},90,USD\n")), ["squares"], "{unit}");
    }
    let refused = priced("squares,sq ft,1,USD\n").unwrap_err();
    let fault = PriceFault::OtherUnit {
        item: "squares".to_owned(),
        unit: "sq ft".to_owned(),
        counted_by: CountUnit::Square,
    };
    let found = &refused.0.kind;
    assert!(
        matches!(found, FindingKind::Prices(PriceFinding::PricesUnreadable { fault: f, .. }) if *f == fault),
        "{found:?}"
    );
}

#[test]
fn a_takeoff_reads_back_as_it_was_written() {
    let dir = tempfile::tempdir().unwrap();
    let list = prices(dir.path(), ROWS);
    let list = lapwright::takeoff::price::parse(&std::fs::read(list).unwrap(), "p").unwrap();
    for house in [HOUSE, COTTAGE, METRIC] {
        let layout = crate::support::laid_by_a_crew(house);
        let style = layout.job.sheet.lengths;
        let takeoff = lapwright::takeoff::quantities(&layout);
        let priced = lapwright::takeoff::price::applied(takeoff, &list, "p", &|l| {
            items::item_and_unit(Language::English, l, style)
        });
        let priced = priced.unwrap();
        let text = serde_json::to_string(&priced).unwrap();
        let again: lapwright::model::takeoff::Takeoff = serde_json::from_str(&text).unwrap();
        assert!(again == priced, "{house}");
    }
}
