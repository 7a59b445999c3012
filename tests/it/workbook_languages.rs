//! The sheets of the workbook that a crew cuts and sets out by follow the language of sheets; their figures and
//! sums do not.

use std::io::Cursor;

use calamine::{Data, Range, Reader, Xlsx};
use lapwright::language::SheetLanguage;
use lapwright::layout::Layout;
use lapwright::model::takeoff::Takeoff;
use lapwright::takeoff::quantities;
use lapwright::write::xlsx;

use crate::spanish::{given, only_english, words};
use crate::support::laid_by_a_crew;

/// Panels, trim and story pole in each language of the sheets.
const SHEETS: [(SheetLanguage, [&str; 3]); 3] = [
    (SheetLanguage::En, ["Panels", "Trim", "Story pole"]),
    (SheetLanguage::Es, ["Paneles", "Molduras", "Vara de alturas"]),
    (SheetLanguage::Both, ["Panels", "Trim", "Story pole"]),
];

/// Values and formulas of the crew's sheets.
fn read(layout: &Layout, takeoff: &Takeoff, names: [&str; 3]) -> [(Range<Data>, Range<String>); 3] {
    let bytes = xlsx::workbook(layout, takeoff).unwrap();
    let mut book: Xlsx<_> = Xlsx::new(Cursor::new(bytes)).unwrap();
    names.map(|n| (book.worksheet_range(n).unwrap(), book.worksheet_formula(n).unwrap()))
}

/// Cells of numbers, row by row; rows over the tables, where a sentence may stand in two languages, have none.
fn numbers(values: &Range<Data>) -> Vec<Vec<(usize, f64)>> {
    let row = |r: &[Data]| -> Vec<(usize, f64)> {
        r.iter().enumerate().filter_map(|(i, d)| d.as_f64_of_number().map(|v| (i, v))).collect()
    };
    values.rows().map(row).filter(|r: &Vec<_>| !r.is_empty()).collect()
}

trait OfNumber {
    fn as_f64_of_number(&self) -> Option<f64>;
}

impl OfNumber for Data {
    fn as_f64_of_number(&self) -> Option<f64> {
        match self {
            Data::Float(v) => Some(*v),
            Data::Int(v) => Some(*v as f64),
            _ => None,
        }
    }
}

#[test]
fn crew_sheets_of_the_workbook_follow_the_language_of_sheets() {
    let foreign = only_english();
    for stem in ["curlew-cottage", "metric"] {
        let mut layout = laid_by_a_crew(stem);
        let takeoff = quantities(&layout);
        let given = given(&layout);
        let english = read(&layout, &takeoff, SHEETS[0].1);
        let in_english: u16 = xlsx::pages(&layout, &takeoff).iter().sum();
        for (say, names) in SHEETS {
            layout.job.sheet.language = say;
            let all = read(&layout, &takeoff, names);
            for ((values, formulas), (en, of_en)) in all.iter().zip(&english) {
                assert_eq!(numbers(values), numbers(en), "{stem} {say:?}");
                assert_eq!(formulas.cells().count(), of_en.cells().count(), "{stem} {say:?}");
                let texts = values.cells().filter_map(|(_, _, d)| match d {
                    Data::String(s) => Some(s.as_str()),
                    _ => None,
                });
                let mut told = 0;
                for text in texts {
                    let english: Vec<String> =
                        words(text).filter(|w| foreign.contains(w) && !given.contains(w)).collect();
                    told += english.len();
                    let none = say != SheetLanguage::Es || english.is_empty();
                    assert!(none, "{stem}: {english:?} in `{text}`");
                }
                assert_eq!(told > 0, say != SheetLanguage::Es, "{stem} {say:?}");
            }
            // No more paper than in English; two languages at once may take a page more of each.
            let pages: u16 = xlsx::pages(&layout, &takeoff).iter().sum();
            let more = if say == SheetLanguage::Both { 3 } else { 0 };
            assert!(pages <= in_english + more, "{stem} {say:?}: {pages}, {in_english}");
        }
    }
}
