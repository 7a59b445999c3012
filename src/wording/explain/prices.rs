//! Codes of the price list and of lines of the takeoff.

use super::entry::Explanation;
use crate::finding::prices::PriceCode;

pub(super) fn explanation(code: PriceCode) -> &'static Explanation {
    match code {
        PriceCode::PricesUnreadable => &PRICES_UNREADABLE,
        PriceCode::TakeoffLine => &TAKEOFF_LINE,
    }
}

const PRICES_UNREADABLE: Explanation = Explanation {
    title: "The price list cannot be used",
    cause: "The list is no CSV in UTF-8 with the columns that are expected, or a cell holds no price, a second currency, an item twice, or a price by another unit than the takeoff counts in. Line and column are given.",
    remedy: "Correct the cell. The first line names the columns: item, unit, price, order multiple, currency. Prices are plain decimals.",
    example: "item,unit,price,order multiple,currency\nj-channel,piece,$9.85,10,USD",
};
const TAKEOFF_LINE: Explanation = Explanation {
    title: "The takeoff has no such line",
    cause: "What --explain names is neither the short name nor the words of a line of this house's takeoff.",
    remedy: "Take one of the lines that are listed.",
    example: "lapwright takeoff house.dxf --explain j-chanel",
};
