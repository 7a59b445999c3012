//! Things of several heights in the columns of sheets, so that little room is left at their feet.

/// Into which column of a sheet each of these heights goes, as many of the first as the sheet holds: a sheet has the
/// things from one number to another, a column those that fill it.
pub(super) fn packed(heights: &[f64], columns: usize, room: f64) -> Vec<usize> {
    let mut best = Vec::new();
    let area = columns as f64 * room;
    let mut sum = 0.0;
    for (n, height) in heights.iter().enumerate() {
        sum += height;
        if sum > area + SLACK {
            break;
        }
        let some = heights.get(..=n).unwrap_or_default();
        best = in_order(some, columns, room)
            .or_else(|| tallest_first(some, columns, room))
            .unwrap_or(best);
    }
    // One that is higher than a column stands alone.
    if best.is_empty() { vec![0] } else { best }
}

/// One after the other, column by column; `None` where they need more.
fn in_order(heights: &[f64], columns: usize, room: f64) -> Option<Vec<usize>> {
    let (mut column, mut used) = (0, 0.0);
    let mut out = Vec::with_capacity(heights.len());
    for h in heights {
        if used > 0.0 && used + h > room + SLACK {
            (column, used) = (column + 1, 0.0);
        }
        used += h;
        out.push(column);
    }
    (column < columns).then_some(out)
}

/// The tallest first, each where least is left over; `None` where one finds no room.
fn tallest_first(heights: &[f64], columns: usize, room: f64) -> Option<Vec<usize>> {
    let mut order: Vec<(usize, f64)> = heights.iter().copied().enumerate().collect();
    order.sort_by(|a, b| b.1.total_cmp(&a.1));
    let mut free = vec![room + SLACK; columns];
    let mut out = vec![0; heights.len()];
    let mut rounds = ROUNDS;
    fill(&order, &mut free, &mut out, &mut rounds).then(|| from_the_left(&out, columns))
}

/// The columns anew, from the left by the first thing in each.
fn from_the_left(columns: &[usize], count: usize) -> Vec<usize> {
    let mut seen: Vec<usize> = Vec::with_capacity(count);
    for column in columns {
        if !seen.contains(column) {
            seen.push(*column);
        }
    }
    columns.iter().filter_map(|c| seen.iter().position(|s| s == c)).collect()
}

/// Places the first of these, then the rest, column by column until all have room; at most so many tries.
fn fill(order: &[(usize, f64)], free: &mut [f64], out: &mut [usize], rounds: &mut usize) -> bool {
    let Some(((i, h), rest)) = order.split_first() else { return true };
    let holds = free.iter().copied().enumerate().filter(|(_, left)| left >= h);
    let mut columns: Vec<(usize, f64)> = holds.collect();
    columns.sort_by(|a, b| a.1.total_cmp(&b.1));
    // Columns with as much left are one choice.
    columns.dedup_by(|a, b| (a.1 - b.1).abs() < SLACK);
    for (column, left) in columns {
        if *rounds == 0 {
            return false;
        }
        *rounds -= 1;
        if let (Some(at), Some(place)) = (free.get_mut(column), out.get_mut(*i)) {
            *at = left - h;
            *place = column;
        }
        if fill(rest, free, out, rounds) {
            return true;
        }
        if let Some(at) = free.get_mut(column) {
            *at = left;
        }
    }
    false
}

/// Tries of one filling.
const ROUNDS: usize = 4_000;

/// What sums of heights may be off by, paper inches.
const SLACK: f64 = 1e-9;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn columns_are_filled_and_none_over_its_room() {
        // By hand: 3 + 2 and 4 + 1 fill two columns of 5, and the last 1 finds no room; in their order they would take
        // three.
        assert_eq!(packed(&[3.0, 4.0, 2.0, 1.0, 1.0], 2, 5.0), [0, 1, 0, 1]);
        // What fits in order stays in order.
        assert_eq!(packed(&[2.0, 2.0, 2.0, 2.0], 2, 5.0), [0, 0, 1, 1]);
        assert_eq!(packed(&[9.0], 2, 5.0), [0]);
    }
}
