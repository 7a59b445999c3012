//! The date of a workbook.

use rust_xlsxwriter::ExcelDateTime;

/// A date written `2026-11-25`, else the first day of 2000: no clock is asked.
pub(super) fn date(text: &str) -> Result<ExcelDateTime, rust_xlsxwriter::XlsxError> {
    let parts: Vec<&str> = text.trim().split('-').collect();
    let read = match parts.as_slice() {
        [y, m, d] if y.len() == 4 => match (y.parse(), m.parse(), d.parse()) {
            (Ok(y), Ok(m), Ok(d)) => ExcelDateTime::from_ymd(y, m, d).ok(),
            _ => None,
        },
        _ => None,
    };
    read.map_or_else(|| ExcelDateTime::from_ymd(2000, 1, 1), Ok)
}
