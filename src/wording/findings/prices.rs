//! Of the price list and of lines of the takeoff.

use super::finding_words::FindingWords;
use super::parts::listed;
use crate::finding::prices::{PriceColumn, PriceFault, PriceFinding};
use crate::wording::takeoff::items;

const COLUMNS: &str = "The first line names the columns: item,unit,price,order multiple,currency.";

pub(super) fn words(found: &PriceFinding) -> FindingWords {
    match found {
        PriceFinding::PricesUnreadable { file, line, column, fault } => {
            FindingWords::new(format!("{file}:{line}:{column}: {}", message(fault)), help(fault))
        }
        PriceFinding::TakeoffLine { asked, nearest, lines } => {
            let meant = nearest.as_ref().map_or(String::new(), |n| format!("Did you mean {n}? "));
            FindingWords::new(
                format!("the takeoff has no line `{asked}`"),
                format!("{meant}Lines: {}.", listed(lines)),
            )
        }
    }
}

fn column(column: PriceColumn) -> &'static str {
    match column {
        PriceColumn::Item => "item",
        PriceColumn::Unit => "unit",
        PriceColumn::Price => "price",
        PriceColumn::OrderMultiple => "order multiple",
        PriceColumn::Currency => "currency",
    }
}

fn message(fault: &PriceFault) -> String {
    use PriceFault as F;
    match fault {
        F::NotUtf8 => "not UTF-8 text".to_owned(),
        F::Empty => "the file is empty".to_owned(),
        F::QuoteOpen => "a quotation mark stays open".to_owned(),
        F::ColumnUnknown { column } => format!("column `{column}` is not known"),
        F::ColumnTwice { column } => format!("column `{column}` is there twice"),
        F::ColumnMissing { column: c } => format!("no column `{}`", column(*c)),
        F::CellCount { cells, columns } => {
            format!("{cells} cells where the first line has {columns}")
        }
        F::CellEmpty { column: c } => format!("the {} is empty", column(*c)),
        F::NotAPrice { text } => format!("`{text}` is no price"),
        F::NotAMultiple { text } => format!("`{text}` is no order multiple"),
        F::ItemTwice { item, unit } => format!("`{item}` by the {unit} appears twice"),
        F::TwoCurrencies { currency, before } => format!("currency `{currency}` after `{before}`"),
        F::OtherUnit { item, unit, counted_by } => {
            let counted = items::unit(*counted_by).en;
            format!("`{item}` is priced by the {unit}, the takeoff counts it by the {counted}")
        }
    }
}

fn help(fault: &PriceFault) -> String {
    use PriceFault as F;
    let help = match fault {
        F::NotUtf8 => "Save the price list as CSV in UTF-8.",
        F::QuoteOpen => "Close the quotation mark; a mark inside a cell is written twice.",
        F::Empty | F::ColumnUnknown { .. } | F::ColumnTwice { .. } | F::ColumnMissing { .. } => {
            COLUMNS
        }
        F::CellCount { .. } => {
            "Put a cell that holds a comma in quotation marks; leave no cell out."
        }
        F::CellEmpty { .. } => "Fill the cell in.",
        F::NotAPrice { .. } => {
            "Write a price as 9.85: no currency sign, no thousands mark, at most four decimals."
        }
        F::NotAMultiple { .. } => "Write a whole number from 1.",
        F::ItemTwice { .. } => "Keep one of the two rows.",
        F::TwoCurrencies { .. } => "Give every price in one currency.",
        F::OtherUnit { counted_by, .. } => {
            return format!("Give the price of one {}.", items::unit(*counted_by).en);
        }
    };
    help.to_owned()
}
