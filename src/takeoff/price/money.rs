//! Whole units and whole hundredths.

/// Whole units in multiples that hold an order.
pub(super) fn in_multiples(order: f64, multiple: u32) -> u64 {
    let multiple = u64::from(multiple.max(1));
    let units = (order - 1e-9).ceil().max(0.0) as u64;
    units.div_ceil(multiple) * multiple
}

/// Hundredths, half and over up, of a price in ten-thousandths.
pub(super) fn money(quantity: u64, price: i64) -> i64 {
    let exact = i128::from(quantity) * i128::from(price);
    i64::try_from((exact + 50).div_euclid(100)).unwrap_or(i64::MAX)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn money_is_rounded_half_up() {
        assert_eq!(money(3, 15_050), 452); // 4.515
        assert_eq!(money(1, 49), 0);
        assert_eq!(money(1, 50), 1);
    }
}
