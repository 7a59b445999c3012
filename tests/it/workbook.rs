//! `takeoff.xlsx` read back by an independent library: its figures are those of `layout.json`, its
//! sums are the sums of their cells, and no text of a drawing is run.

use lapwright::language::Language;
use std::io::Cursor;

use calamine::{Data, Range, Reader, Xlsx};
use lapwright::layout::Layout;
use lapwright::model::takeoff::{ShareBy, Takeoff};
use lapwright::takeoff::{price, quantities};
use lapwright::wording::takeoff::items;
use lapwright::write;

use crate::support::laid_by_a_crew as laid;

struct Book(Xlsx<Cursor<Vec<u8>>>);

/// One sheet's values and formulas, by row and column from 0.
struct Sheet {
    values: Range<Data>,
    formulas: Range<String>,
}

impl Book {
    fn of(layout: &Layout, takeoff: &Takeoff) -> Book {
        let bytes = write::xlsx::workbook(layout, takeoff).unwrap();
        Book(Xlsx::new(Cursor::new(bytes)).unwrap())
    }

    fn sheet(&mut self, name: &str) -> Sheet {
        Sheet {
            values: self.0.worksheet_range(name).unwrap(),
            formulas: self.0.worksheet_formula(name).unwrap(),
        }
    }
}

impl Sheet {
    fn rows(&self) -> u32 {
        self.values.end().unwrap().0 + 1
    }

    fn text(&self, row: u32, col: u32) -> String {
        self.values.get_value((row, col)).map_or(String::new(), ToString::to_string)
    }

    fn number(&self, row: u32, col: u32) -> f64 {
        match self.values.get_value((row, col)) {
            Some(Data::Float(v)) => *v,
            Some(Data::Int(v)) => *v as f64,
            None | Some(Data::Empty) => 0.0,
            other => panic!("row {row}, column {col}: {other:?}"),
        }
    }

    fn formula(&self, row: u32, col: u32) -> String {
        self.formulas.get_value((row, col)).cloned().unwrap_or_default()
    }

    /// The row whose first cell reads so.
    fn row(&self, first: &str) -> u32 {
        let found = (0..self.rows()).find(|r| self.text(*r, 0) == first);
        found.unwrap_or_else(|| panic!("no row {first}"))
    }

    /// Column of a heading in a row.
    fn column(&self, row: u32, heading: &str) -> u32 {
        let last = self.values.end().unwrap().1;
        let found = (0..=last).find(|c| self.text(row, *c) == heading);
        found.unwrap_or_else(|| panic!("no column {heading}"))
    }
}

fn near(a: f64, b: f64) {
    assert!((a - b).abs() < 1e-6 * b.abs().max(1.0), "{a} is not {b}");
}

const PRICES: &str = "item,unit,price,order multiple,currency\ncartons,carton,412,1,USD\nj-channel,piece,9.8525,10,USD\n";

fn priced(layout: &Layout) -> Takeoff {
    let list = price::parse(PRICES.as_bytes(), "p").unwrap();
    let style = layout.job.sheet.lengths;
    price::applied(quantities(layout), &list, "p", &|l| {
        items::item_and_unit(Language::English, l, style)
    })
    .unwrap()
}

#[test]
#[allow(clippy::too_many_lines)] // One walk, told in order.
fn figures_are_those_of_the_layout() {
    let layout = laid("curlew-cottage");
    let takeoff = priced(&layout);
    let json: serde_json::Value = serde_json::from_slice(&write::json::layout(&layout)).unwrap();
    let mut book = Book::of(&layout, &takeoff);
    let names = [
        "Summary",
        "Order",
        "Panels",
        "Trim",
        "Walls and openings",
        "Walls and gables",
        "Story pole",
        "Assumptions",
    ];
    assert_eq!(book.0.sheet_names(), names);

    let order = book.sheet("Order");
    let head = order.row("Item");
    let col = |h: &str| order.column(head, h);
    let lines = json["takeoff"].as_array().unwrap();
    assert_eq!(lines.len(), layout.takeoff.len());
    for (line, laid) in lines.iter().zip(&layout.takeoff) {
        assert_eq!(line["id"], laid.id.as_str());
        let row = order.row(&items::item(Language::English, &laid.item, layout.job.sheet.lengths));
        near(order.number(row, col("Needed")), line["net"].as_f64().unwrap());
        // Tens of channel leave the spare one.
        let tens = laid.id == "spare-j-channel";
        let wanted = if tens { 0.0 } else { line["order"].as_f64().unwrap() };
        near(order.number(row, col("To order")), wanted);
    }

    let panels = book.sheet("Panels");
    let head = panels.row("Panel");
    let col = |h: &str| panels.column(head, h);
    let total = panels.row("Total");
    let pieces: Vec<&serde_json::Value> = json["elevations"]
        .as_array()
        .unwrap()
        .iter()
        .flat_map(|e| e["walls"].as_array().unwrap())
        .flat_map(|w| w["courses"].as_array().unwrap())
        .flat_map(|c| c["runs"].as_array().unwrap())
        .flat_map(|r| r["pieces"].as_array().unwrap())
        .collect();
    let mut marks: Vec<String> = (head + 1..total).map(|r| panels.text(r, col("Piece"))).collect();
    let mut known: Vec<&str> = pieces.iter().map(|p| p["mark"].as_str().unwrap()).collect();
    marks.sort();
    known.sort_unstable();
    assert_eq!(marks, known);
    near(panels.number(total, col("Panels")), json["panels"].as_array().unwrap().len() as f64);
    // A sixteenth down, but for what the grid of the drawing leaves off a mark (TakeoffFact::RoundedForSafety).
    let told = |v: &serde_json::Value| ((v.as_f64().unwrap() + 1.0 / 512.0) * 16.0).floor() / 16.0;
    let length: f64 = pieces.iter().map(|p| told(&p["length"])).sum();
    near(panels.number(total, col("Length (in)")), length);

    let trim = book.sheet("Trim");
    let head = trim.row("Cut from");
    let total = trim.row("Total");
    let length: f64 = json["trims"].as_array().unwrap().iter().map(|t| told(&t["length"])).sum();
    near(trim.number(total, trim.column(head, "Length (in)")), length);

    let walls = book.sheet("Walls and openings");
    let head = walls.row("Elevation");
    let house = walls.row("House");
    for (heading, key) in [("Gross (sq ft)", "gross_area"), ("Net (sq ft)", "net_area")] {
        let col = walls.column(head, heading);
        let mut sum = 0.0;
        for w in json["elevations"]
            .as_array()
            .unwrap()
            .iter()
            .flat_map(|e| e["walls"].as_array().unwrap())
        {
            let row =
                (head..house).find(|r| walls.text(*r, 1) == w["id"].as_str().unwrap()).unwrap();
            near(walls.number(row, col), w[key].as_f64().unwrap());
            sum += w[key].as_f64().unwrap();
        }
        near(walls.number(house, col), sum);
    }
}

#[test]
fn the_cottage_prints_on_twelve_pages() {
    let layout = laid("curlew-cottage");
    let pages = write::xlsx::pages(&layout, &quantities(&layout));
    assert!(pages.iter().sum::<u16>() <= 12, "{pages:?}");
}

#[test]
fn sums_are_the_sums_of_their_cells() {
    let layout = laid("curlew-cottage");
    let takeoff = priced(&layout);
    let mut book = Book::of(&layout, &takeoff);
    let mut seen = 0;
    for name in book.0.sheet_names() {
        let sheet = book.sheet(&name);
        for (row, col, formula) in sheet.formulas.used_cells() {
            let start = sheet.formulas.start().unwrap();
            let (row, col) = (row as u32 + start.0, col as u32 + start.1);
            // SUBTOTAL(109,F4:F99): the sum of that column between those rows.
            let Some(range) = formula.strip_prefix("SUBTOTAL(109,") else { continue };
            let rows: Vec<u32> =
                range.split(|c: char| !c.is_ascii_digit()).filter_map(|n| n.parse().ok()).collect();
            let [first, last] = rows[..] else { panic!("{formula}") };
            let sum: f64 = (first - 1..last).map(|r| sheet.number(r, col)).sum();
            near(sheet.number(row, col), sum);
            seen += 1;
        }
    }
    assert!(seen > 20, "{seen}");
}

#[test]
fn costs_are_formulas_over_the_users_prices() {
    let layout = laid("curlew-cottage");
    let takeoff = priced(&layout);
    let sheet = Book::of(&layout, &takeoff).sheet("Order");
    let head = sheet.row("Item");
    let col = |h: &str| sheet.column(head, h);
    let (mut total, mut blank) = (0.0, 0);
    for row in head + 1..sheet.row("Total of the priced lines") {
        let cost = sheet.formula(row, col("Extended, USD"));
        let price = sheet.number(row, col("Price, USD"));
        if cost.is_empty() {
            assert_eq!(price, 0.0);
            continue;
        }
        assert_eq!(cost, format!("ROUND(J{0}*H{0},2)", row + 1));
        let multiple = sheet.number(row, col("Sold in multiples of"));
        let units = (sheet.number(row, col("To order")) / multiple).ceil() * multiple;
        near(sheet.number(row, col("Units to buy")), units);
        // Half a hundredth up, as the formula does.
        let extended = (units * price * 100.0 + 0.5 + 1e-9).floor() / 100.0;
        near(sheet.number(row, col("Extended, USD")), extended);
        total += extended;
        blank += usize::from(price == 0.0);
    }
    let row = sheet.row("Total of the priced lines");
    assert!(total > 400.0 && blank > 5, "{total}, {blank}");
    near(sheet.number(row, col("Extended, USD")), total);
    let unpriced = sheet.text(sheet.row("Without a price"), 1);
    assert_eq!(unpriced.split(", ").count(), blank, "{unpriced}");
}

#[test]
fn text_that_looks_like_a_formula_stays_text() {
    let mut layout = laid("one-window");
    layout.job.product.color = "@red".into();
    layout.job.title.project = "=1+1".into();
    layout.job.title.drawn_by = "+x".into();
    layout.elevations[0].name = "=HYPERLINK(\"x\")".into();
    for wall in &mut layout.elevations[0].walls {
        wall.id = "-2+3".into();
        for o in &mut wall.openings {
            o.id = "@SUM(A1)".into();
        }
    }
    for t in &mut layout.trims {
        t.elevation = "=HYPERLINK(\"x\")".into();
        t.wall = "-2+3".into();
    }
    let takeoff = quantities(&layout);
    layout.takeoff = takeoff.lines.clone();
    let mut book = Book::of(&layout, &takeoff);
    let hostile = ["=HYPERLINK(\"x\")", "-2+3", "@SUM(A1)", "@red"];
    let mut seen = [0; 4];
    for name in book.0.sheet_names() {
        let sheet = book.sheet(&name);
        for (row, col, value) in sheet.values.used_cells() {
            let start = sheet.values.start().unwrap();
            let place = (row as u32 + start.0, col as u32 + start.1);
            let text = value.to_string();
            if let Some(i) = hostile.iter().position(|h| text == *h) {
                assert!(matches!(value, Data::String(_)), "{name} {place:?}: {value:?}");
                assert_eq!(sheet.formula(place.0, place.1), "", "{name} {place:?}");
                seen[i] += 1;
            }
        }
        for (_, _, formula) in sheet.formulas.used_cells() {
            assert!(!formula.contains("HYPERLINK") && !formula.contains("A1)"), "{formula}");
        }
    }
    assert!(seen.iter().all(|n| *n > 0), "{seen:?}");

    let tables = [
        write::csv::takeoff(&layout, &takeoff),
        write::csv::by_wall(&layout),
        write::csv::cut_list(&layout),
        write::csv::shares(
            &lapwright::takeoff::shares(&takeoff, ShareBy::Wall),
            layout.job.sheet.lengths,
        ),
    ];
    let mut guarded = 0;
    for table in tables {
        for row in csv::Reader::from_reader(&table[..]).records() {
            for cell in row.unwrap().iter().filter(|c| c.parse::<f64>().is_err()) {
                assert!(!cell.starts_with(['=', '+', '-', '@', '\t', '\r']), "{cell}");
                guarded += usize::from(cell.starts_with('\''));
            }
        }
    }
    assert!(guarded > 10, "{guarded}");
}
