//! The files that many houses have in common.

use super::file::OutputFile;
#[cfg(feature = "xlsx")]
use super::file::write_failed;
use crate::finding::Refusal;
use crate::layout::houses::{HouseTold, Purchase};
use crate::units::LengthStyle;
use crate::write::houses;

/// The table of houses and the one purchase, as CSV and as a workbook.
///
/// # Errors
/// `write-failed` when the workbook cannot be made; `threads-missing`.
pub fn files(
    told: &[HouseTold],
    purchase: &Purchase,
    style: LengthStyle,
) -> Result<Vec<OutputFile>, Refusal> {
    let csv = |name: &str, bytes: Vec<u8>| (name.to_owned(), bytes);
    let out = vec![
        csv("houses.csv", houses::houses(told)),
        csv("purchase.csv", houses::purchase(purchase, style)),
        csv("purchase-by-house.csv", houses::by_house(purchase, style)),
    ];
    #[cfg(feature = "xlsx")]
    let out = {
        super::workbook::can_be_made()?;
        let book = crate::write::xlsx::houses::workbook(told, purchase, style);
        let book = ("houses.xlsx".to_owned(), book.map_err(write_failed)?);
        out.into_iter().chain([book]).collect()
    };
    Ok(out)
}
