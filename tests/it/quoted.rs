//! CSV as a spreadsheet imports it: every text in quotes, every number bare.

use lapwright::job::file as job_file;
use lapwright::layout::set::LaidSet;
use lapwright::model::takeoff::ShareBy;
use lapwright::write::csv as tables;

use crate::support::{lay_set, root};

/// A field as it stands: whether it is in quotes, and what it says.
type Field = (bool, String);

/// Rows of RFC 4180, by hand, so that quotes are seen.
fn rows(table: &[u8]) -> Vec<Vec<Field>> {
    let text = String::from_utf8(table.to_vec()).unwrap();
    let mut rows = vec![vec![(false, String::new())]];
    let (mut letters, mut inside) = (text.chars().peekable(), false);
    while let Some(c) = letters.next() {
        let field = rows.last_mut().unwrap().last_mut().unwrap();
        match c {
            '"' if inside && letters.peek() == Some(&'"') => {
                letters.next();
                field.1.push('"');
            }
            '"' => {
                inside = !inside;
                field.0 = true;
            }
            ',' if !inside => rows.last_mut().unwrap().push((false, String::new())),
            '\n' if !inside => rows.push(vec![(false, String::new())]),
            '\r' if !inside => {}
            c => field.1.push(c),
        }
    }
    assert_eq!(rows.pop(), Some(vec![(false, String::new())]), "the last line has no end");
    rows
}

/// A sample whose names could be taken for numbers, dates and formulas.
fn laid() -> LaidSet {
    let path = root().join("sample-drawings/one-gable.dxf");
    let text = std::fs::read_to_string(path.with_extension("toml")).unwrap();
    let mut job = job_file::parse(&text, "job").unwrap();
    job.seams.effort = lapwright::model::seam::Effort::Crew;
    job.product.color = "007".to_owned();
    lay_set(&std::fs::read(path).unwrap(), &job)
}

#[test]
fn every_text_is_quoted_and_every_number_is_bare() {
    let LaidSet { layout, takeoff, .. } = laid();
    let shares = lapwright::takeoff::shares(&takeoff, ShareBy::Wall);
    let all = [
        ("takeoff", tables::takeoff(&layout, &takeoff)),
        ("by wall", tables::by_wall(&layout)),
        ("cut list", tables::cut_list(&layout)),
        ("story pole", tables::story_pole(&layout)),
        ("shares", tables::shares(&shares, layout.job.sheet.lengths)),
    ];
    for (name, table) in &all {
        let rows = rows(table);
        assert!(rows.len() > 5 && rows[0].iter().all(|f| f.0), "{name}: {:?}", rows[0]);
        for row in &rows {
            assert_eq!(row.len(), rows[0].len(), "{name}: {row:?}");
            for (quoted, said) in row {
                assert!(*quoted || said.parse::<f64>().is_ok_and(f64::is_finite), "{name}: {said}");
            }
        }
        // A reader that knows nothing of quotes as a sign of text reads the same.
        let mut reader = csv::ReaderBuilder::new().has_headers(false).from_reader(table.as_slice());
        let read: Vec<Vec<String>> =
            reader.records().map(|r| r.unwrap().iter().map(str::to_owned).collect()).collect();
        let plain = |row: &Vec<Field>| row.iter().map(|f| f.1.clone()).collect::<Vec<_>>();
        assert_eq!(read, rows.iter().map(plain).collect::<Vec<_>>(), "{name}");
    }
    let column = |table: &[u8], head: &str| -> Vec<Field> {
        let rows = rows(table);
        let at = rows[0].iter().position(|f| f.1 == head).unwrap_or_else(|| panic!("{head}"));
        rows[1..].iter().map(|r| r[at].clone()).collect()
    };
    // What a spreadsheet would take for a number or a date if it stood bare.
    let color = column(&all[0].1, "color");
    assert!(color.iter().any(|f| *f == (true, "007".to_owned())), "{color:?}");
    assert!(column(&all[2].1, "mark").iter().all(|f| f.0 && !f.1.is_empty()));
    for head in ["net", "order", "waste %"] {
        assert!(column(&all[0].1, head).iter().all(|f| !f.0), "{head}");
    }
    let net: Vec<f64> = column(&all[0].1, "net").iter().map(|f| f.1.parse().unwrap()).collect();
    for (line, read) in takeoff.lines.iter().zip(net) {
        assert!((line.net - read).abs() < 1e-4, "{}: {} read as {read}", line.id, line.net);
    }
}
