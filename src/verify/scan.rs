//! Intervals along a level line: the arithmetic of the area check.

/// Sorted, disjoint intervals.
pub(super) type Spans = Vec<(f64, f64)>;

/// Intervals in any order, joined where they touch.
pub(super) fn joined(mut spans: Spans) -> Spans {
    spans.retain(|s| s.1 > s.0);
    spans.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut out: Spans = Vec::new();
    for s in spans {
        match out.last_mut() {
            Some(last) if s.0 <= last.1 => last.1 = last.1.max(s.1),
            _ => out.push(s),
        }
    }
    out
}

/// What is in `a` and not in `b`; both joined.
pub(super) fn without(a: &Spans, b: &Spans) -> Spans {
    let mut out = Vec::new();
    for &(low, high) in a {
        let mut at = low;
        for &(l, h) in b.iter().filter(|s| s.1 > low && s.0 < high) {
            if l > at {
                out.push((at, l));
            }
            at = at.max(h);
        }
        if at < high {
            out.push((at, high));
        }
    }
    out
}

/// Sum of lengths.
pub(super) fn length(spans: &Spans) -> f64 {
    spans.iter().map(|s| s.1 - s.0).sum()
}

/// The widest of them.
pub(super) fn widest(spans: &Spans) -> Option<(f64, f64)> {
    spans.iter().copied().max_by(|a, b| (a.1 - a.0).total_cmp(&(b.1 - b.0)))
}

/// What is in two of these sets or more.
pub(super) fn twice(each: &[Spans]) -> Spans {
    let mut ends: Vec<(f64, i32)> =
        each.iter().flatten().flat_map(|s| [(s.0, 1), (s.1, -1)]).collect();
    ends.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
    let mut depth = 0;
    let mut out = Spans::new();
    for pair in ends.windows(2) {
        depth += pair[0].1;
        if depth >= 2 && pair[1].0 > pair[0].0 {
            out.push((pair[0].0, pair[1].0));
        }
    }
    joined(out)
}

#[cfg(test)]
mod tests {
    use super::{joined, twice, widest, without};

    #[test]
    fn taking_away_and_joining() {
        let a = joined(vec![(5.0, 9.0), (0.0, 4.0), (4.0, 5.0)]);
        assert_eq!(a, [(0.0, 9.0)]);
        assert_eq!(without(&a, &vec![(1.0, 2.0), (8.0, 12.0)]), [(0.0, 1.0), (2.0, 8.0)]);
    }

    #[test]
    fn what_lies_twice_and_the_widest() {
        let each = [vec![(0.0, 4.0)], vec![(2.5, 6.0), (8.0, 9.0)], vec![(5.0, 8.5)]];
        assert_eq!(twice(&each), [(2.5, 4.0), (5.0, 6.0), (8.0, 8.5)]);
        assert_eq!(widest(&twice(&each)), Some((2.5, 4.0)));
        assert_eq!(widest(&Vec::new()), None);
    }
}
