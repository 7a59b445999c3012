//! Cutting lengths from stock.

/// First-fit decreasing.
pub fn least(lengths: &[f64], stock: f64, kerf: f64) -> Vec<Vec<usize>> {
    let mut order: Vec<usize> = (0..lengths.len()).collect();
    order.sort_by(|a, b| lengths[*b].total_cmp(&lengths[*a]).then(a.cmp(b)));
    let mut bins: Vec<(f64, Vec<usize>)> = Vec::new();
    for i in order {
        let l = lengths[i] + kerf;
        match bins.iter_mut().find(|(free, _)| *free + 1e-6 >= l) {
            Some((free, b)) => {
                *free -= l;
                b.push(i);
            }
            None => bins.push((stock + kerf - l, vec![i])),
        }
    }
    bins.into_iter().map(|b| b.1).collect()
}
