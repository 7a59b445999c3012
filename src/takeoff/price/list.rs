//! Reading a price list, with faults by line and column.

use std::collections::BTreeSet;

use crate::csv_rows::{self, Cell, CsvFault, CsvRows};
use crate::finding::Refusal;
use crate::finding::prices::{PriceColumn, PriceFault, PriceFinding};

/// A price list.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PriceList {
    /// As the user wrote it, the same on every row.
    pub currency: String,
    /// Rows.
    pub prices: Vec<Price>,
}

/// One row of a price list.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Price {
    /// Line of the file, from 1.
    pub line: usize,
    /// Item, as written.
    pub item: String,
    /// Unit, as written.
    pub unit: String,
    /// Column of the unit, from 1.
    pub unit_column: usize,
    /// Ten-thousandths of the currency.
    pub price: i64,
    /// Sold in multiples of this many.
    pub multiple: u32,
}

pub(super) fn refused(name: &str, line: usize, column: usize, fault: PriceFault) -> Refusal {
    Refusal::new(PriceFinding::PricesUnreadable { file: name.to_owned(), line, column, fault })
}

/// Reads a price list; `name` is what errors call it.
///
/// # Errors
/// `prices-unreadable` with line and column: not UTF-8, a column missing or unknown, an empty
/// item, a price that is no number, two currencies, an item twice.
pub fn parse(bytes: &[u8], name: &str) -> Result<PriceList, Refusal> {
    let CsvRows { rows, semicolons } = csv_rows::read(bytes).map_err(|m| {
        let fault = match m.fault {
            CsvFault::NotUtf8 => PriceFault::NotUtf8,
            CsvFault::QuoteOpen => PriceFault::QuoteOpen,
        };
        refused(name, m.line, m.column, fault)
    })?;
    let mut rows = rows.into_iter();
    let header = rows.next().ok_or_else(|| refused(name, 1, 1, PriceFault::Empty))?;
    let columns = Columns::of(&header, semicolons, name)?;
    let mut list = PriceList::default();
    let mut seen = BTreeSet::new();
    for row in rows {
        let (price, currency) = columns.price(&row, name)?;
        if !seen.insert((price.item.to_lowercase(), price.unit.to_lowercase())) {
            let (item, unit) = (price.item, price.unit);
            return Err(refused(name, price.line, 1, PriceFault::ItemTwice { item, unit }));
        }
        if list.currency.is_empty() {
            list.currency.clone_from(&currency.text);
        } else if list.currency != currency.text {
            let (line, column) = (currency.line, currency.column);
            let (currency, before) = (currency.text, list.currency);
            let fault = PriceFault::TwoCurrencies { currency, before };
            return Err(refused(name, line, column, fault));
        }
        list.prices.push(price);
    }
    Ok(list)
}

/// Which column holds what.
struct Columns {
    item: usize,
    unit: usize,
    price: usize,
    multiple: Option<usize>,
    currency: usize,
    count: usize,
    /// Whether a price may have a decimal comma.
    comma: bool,
}

impl Columns {
    fn of(header: &[Cell], comma: bool, name: &str) -> Result<Columns, Refusal> {
        const KNOWN: [&str; 5] = ["item", "unit", "price", "order multiple", "currency"];
        let names: Vec<String> = header.iter().map(|c| c.text.to_lowercase()).collect();
        for (i, c) in header.iter().enumerate() {
            let twice = names[..i].contains(&names[i]);
            if twice || !KNOWN.contains(&names[i].as_str()) {
                let column = c.text.clone();
                let fault = if twice {
                    PriceFault::ColumnTwice { column }
                } else {
                    PriceFault::ColumnUnknown { column }
                };
                return Err(refused(name, c.line, c.column, fault));
            }
        }
        let find = |what: &str| names.iter().position(|n| n == what);
        let must = |what: &str, column: PriceColumn| {
            let line = header.first().map_or(1, |c| c.line);
            find(what).ok_or_else(|| refused(name, line, 1, PriceFault::ColumnMissing { column }))
        };
        Ok(Columns {
            item: must("item", PriceColumn::Item)?,
            unit: must("unit", PriceColumn::Unit)?,
            price: must("price", PriceColumn::Price)?,
            multiple: find("order multiple"),
            currency: must("currency", PriceColumn::Currency)?,
            count: header.len(),
            comma,
        })
    }

    fn price(&self, row: &[Cell], name: &str) -> Result<(Price, Cell), Refusal> {
        let first = row.first().cloned().unwrap_or_default();
        if row.len() != self.count {
            let fault = PriceFault::CellCount { cells: row.len(), columns: self.count };
            return Err(refused(name, first.line, first.column, fault));
        }
        let at = |i: usize| row.get(i).cloned().unwrap_or_default();
        let fail = |c: &Cell, fault: PriceFault| refused(name, c.line, c.column, fault);
        for (i, column) in [
            (self.item, PriceColumn::Item),
            (self.unit, PriceColumn::Unit),
            (self.currency, PriceColumn::Currency),
        ] {
            if at(i).text.is_empty() {
                return Err(fail(&at(i), PriceFault::CellEmpty { column }));
            }
        }
        let cell = at(self.price);
        let plain = if self.comma { cell.text.replace(',', ".") } else { cell.text.clone() };
        let price = decimal(&plain)
            .ok_or_else(|| fail(&cell, PriceFault::NotAPrice { text: cell.text.clone() }))?;
        let multiple = match self.multiple.map(at).filter(|c| !c.text.is_empty()) {
            None => 1,
            Some(c) => c
                .text
                .parse()
                .ok()
                .filter(|m| (1..=100_000).contains(m))
                .ok_or_else(|| fail(&c, PriceFault::NotAMultiple { text: c.text.clone() }))?,
        };
        let unit = at(self.unit);
        let price = Price {
            line: first.line,
            item: at(self.item).text,
            unit_column: unit.column,
            unit: unit.text,
            price,
            multiple,
        };
        Ok((price, at(self.currency)))
    }
}

/// A plain decimal in ten-thousandths.
fn decimal(text: &str) -> Option<i64> {
    let (whole, part) = text.split_once('.').unwrap_or((text, ""));
    let digits = |t: &str| t.chars().all(|c| c.is_ascii_digit());
    let sized = !whole.is_empty() && whole.len() <= 9 && part.len() <= 4;
    if !sized || !digits(whole) || !digits(part) || (part.is_empty() && text.ends_with('.')) {
        return None;
    }
    let part: i64 = if part.is_empty() { 0 } else { format!("{part:0<4}").parse().ok()? };
    Some(whole.parse::<i64>().ok()? * 10_000 + part)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::finding::FindingKind;

    /// What is wrong, with its line and column.
    fn found(text: &[u8]) -> (usize, usize, PriceFault) {
        match parse(text, "p.csv").unwrap_err().0.kind {
            FindingKind::Prices(PriceFinding::PricesUnreadable { file, line, column, fault }) => {
                assert_eq!(file, "p.csv");
                (line, column, fault)
            }
            other => unreachable!("{other:?}"),
        }
    }

    fn not_a_price(text: &str) -> PriceFault {
        PriceFault::NotAPrice { text: text.to_owned() }
    }

    #[test]
    fn rows_are_read_in_any_column_order() {
        let text = "\u{feff}price,Item,Unit,currency\r\n9.85,J-channel,piece,EUR\r\n\r\n412,\"cartons\",carton,EUR\r\n";
        let list = parse(text.as_bytes(), "p.csv").unwrap();
        assert_eq!(list.currency, "EUR");
        let rows: Vec<(&str, i64, u32, usize)> =
            list.prices.iter().map(|p| (p.item.as_str(), p.price, p.multiple, p.line)).collect();
        assert_eq!(rows, [("J-channel", 98_500, 1, 2), ("cartons", 4_120_000, 1, 4)]);
    }

    #[test]
    fn semicolons_part_cells_where_the_comma_is_decimal() {
        let text = "item;unit;price;currency\ncartons;carton;412,5;EUR\nj-channel;piece;9.85;EUR\n";
        let list = parse(text.as_bytes(), "p.csv").unwrap();
        let rows: Vec<i64> = list.prices.iter().map(|p| p.price).collect();
        assert_eq!(rows, [4_125_000, 98_500]);
        let found = found(b"item;unit;price;currency\ncartons;carton;1.412,50;EUR\n");
        assert_eq!(found, (2, 16, not_a_price("1.412,50")));
    }

    #[test]
    fn faults_name_line_and_column() {
        let head = "item,unit,price,order multiple,currency\n";
        let text = str::to_owned;
        for (rest, line, column, fault) in [
            ("a,piece,9.8.5,1,USD\n", 2, 9, not_a_price("9.8.5")),
            ("a,piece,-1,1,USD\n", 2, 9, not_a_price("-1")),
            ("a,piece,$4,1,USD\n", 2, 9, not_a_price("$4")),
            ("a,piece,1e3,1,USD\n", 2, 9, not_a_price("1e3")),
            ("a,piece,4,0,USD\n", 2, 11, PriceFault::NotAMultiple { text: text("0") }),
            (
                "a,piece,4,1,USD\nb,piece,4,1,EUR\n",
                3,
                13,
                PriceFault::TwoCurrencies { currency: text("EUR"), before: text("USD") },
            ),
            ("a,piece,4,1\n", 2, 1, PriceFault::CellCount { cells: 4, columns: 5 }),
            (",piece,4,1,USD\n", 2, 1, PriceFault::CellEmpty { column: PriceColumn::Item }),
            (
                "a,piece,4,1,USD\nA,Piece,5,1,USD\n",
                3,
                1,
                PriceFault::ItemTwice { item: text("A"), unit: text("Piece") },
            ),
            ("\"a,piece\n", 2, 1, PriceFault::QuoteOpen),
        ] {
            assert_eq!(found(format!("{head}{rest}").as_bytes()), (line, column, fault));
        }
        let unknown = PriceFault::ColumnUnknown { column: text("cost") };
        assert_eq!(found(b"item,unit,cost\n"), (1, 11, unknown));
        let missing = PriceFault::ColumnMissing { column: PriceColumn::Price };
        assert_eq!(found(b"item,unit,currency\n"), (1, 1, missing));
        assert_eq!(found(b""), (1, 1, PriceFault::Empty));
        assert_eq!(found(b"item\n\xff\n"), (2, 1, PriceFault::NotUtf8));
    }
}
