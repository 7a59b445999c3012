//! The user's price list, and lines of the takeoff: findings of `takeoff` and of the command.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::group::group;
use crate::model::item::CountUnit;

/// A column of a price list.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum PriceColumn {
    /// What is sold.
    Item,
    /// By what it is sold.
    Unit,
    /// What one unit costs.
    Price,
    /// In what multiples it is sold.
    OrderMultiple,
    /// The currency.
    Currency,
}

/// What is wrong in a price list.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "fault", rename_all = "kebab-case")]
pub enum PriceFault {
    /// Not UTF-8 text.
    NotUtf8,
    /// Nothing in it.
    Empty,
    /// A quotation mark is not closed.
    QuoteOpen,
    /// A column is not known.
    ColumnUnknown {
        /// Its name.
        column: String,
    },
    /// A column is there twice.
    ColumnTwice {
        /// Its name.
        column: String,
    },
    /// A column is missing.
    ColumnMissing {
        /// Which.
        column: PriceColumn,
    },
    /// A row has more or fewer cells than the first.
    CellCount {
        /// Its cells.
        cells: usize,
        /// Cells of the first row.
        columns: usize,
    },
    /// A cell is empty that must not be.
    CellEmpty {
        /// Its column.
        column: PriceColumn,
    },
    /// A cell holds no price.
    NotAPrice {
        /// What it holds.
        text: String,
    },
    /// A cell holds no order multiple.
    NotAMultiple {
        /// What it holds.
        text: String,
    },
    /// An item by the same unit appears twice.
    ItemTwice {
        /// The item.
        item: String,
        /// The unit.
        unit: String,
    },
    /// Prices are in two currencies.
    TwoCurrencies {
        /// This one.
        currency: String,
        /// After that one.
        before: String,
    },
    /// A price is by another unit than the takeoff counts.
    OtherUnit {
        /// The item.
        item: String,
        /// The unit of the price.
        unit: String,
        /// The unit of the takeoff.
        counted_by: CountUnit,
    },
}

group! {
    /// What is wrong with a price list, or not in the takeoff.
    PriceFinding, PriceCode {
        /// The price list cannot be used.
        PricesUnreadable "prices-unreadable", Error, Office {
            /// The file.
            file: String,
            /// Line, from 1.
            line: usize,
            /// Column, from 1.
            column: usize,
            /// What is wrong.
            #[serde(flatten)]
            fault: PriceFault,
        }
        /// The takeoff has no such line.
        TakeoffLine "takeoff-line", Error, Office {
            /// The line asked for.
            asked: String,
            /// The one that may be meant.
            #[serde(skip_serializing_if = "Option::is_none")]
            nearest: Option<String>,
            /// The lines there are.
            lines: Vec<String>,
        }
    }
}
