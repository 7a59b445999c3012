//! The stock lengths in force, and those no layout can be made with.

use super::fault::Fault;
use super::root::Job;
use super::stock::Stock;
use super::stock_given::{APART, COSTS_APART, STOCK_BOUNDS, contradictions};
use crate::finding::job_value::ValueFault;
use crate::model::seam::{MOST_STOCKS, StockWeight};

impl Job {
    /// The stock lengths in force, one at least.
    pub fn panel_stocks(&self) -> Vec<Stock> {
        if !self.stocks.is_empty() {
            return self.stocks.clone();
        }
        vec![Stock { length: self.product.length, carton: self.product.carton, cost: None }]
    }

    /// Length of the first stock.
    pub fn first_length(&self) -> f64 {
        self.stocks.first().map_or(self.product.length, |s| s.length)
    }

    /// Length of the longest stock.
    pub fn longest_length(&self) -> f64 {
        self.panel_stocks().iter().map(|s| s.length).fold(0.0, f64::max)
    }

    /// The stock lengths with what panels of each weigh in what is kept least: sixteenths of their
    /// lengths, or thousandths of their costs, without a common divisor.
    pub fn stock_weights(&self) -> Vec<StockWeight> {
        let stocks = self.panel_stocks();
        let by_cost = stocks.iter().all(|s| s.cost.is_some());
        let weight = |s: &Stock| {
            let exact = s.cost.filter(|_| by_cost).map_or(16.0 * s.length, |cost| 1000.0 * cost);
            (exact.round() as i64).max(1)
        };
        let divisor = stocks.iter().map(weight).fold(0, common_divisor).max(1);
        stocks
            .iter()
            .map(|s| StockWeight {
                length: s.length,
                weight: weight(s) / divisor,
                carton: s.carton.max(1),
                spare: self.takeoff.spare,
            })
            .collect()
    }
}

/// Of two numbers not under 0; 0 is divided by all.
fn common_divisor(a: i64, b: i64) -> i64 {
    if b == 0 { a } else { common_divisor(b, a % b) }
}

/// Stocks that no layout can be made with.
pub(super) fn faults(job: &Job) -> Vec<Fault> {
    let stocks = &job.stocks;
    let mut out = contradictions(&job.product, stocks);
    for (i, s) in stocks.iter().enumerate() {
        let values = [Some(s.length), Some(f64::from(s.carton)), s.cost];
        let each = STOCK_BOUNDS.iter().zip(values);
        out.extend(each.filter_map(|(b, v)| b.out(&format!("stock.{i}."), v?)));
        let near = |o: &&Stock| (o.length - s.length).abs() < APART;
        if let Some(other) = stocks[..i].iter().find(near) {
            let key = format!("stock.{i}.length");
            let (second, first) = (s.length, other.length);
            let fault = ValueFault::LengthsAlike { key: key.clone(), second, first };
            out.push(Fault::new([key, "stock".to_owned()], fault));
        }
    }
    let given = stocks.len();
    if given > MOST_STOCKS {
        let fault = ValueFault::StocksMany { given, most: MOST_STOCKS };
        out.push(Fault::new([format!("stock.{MOST_STOCKS}.length"), "stock".to_owned()], fault));
    }
    if job.siding().joints.is_on_studs() && given > 1 {
        let siding = job.product.kind.key().to_owned();
        let fault = ValueFault::StocksOfOneLength { given, siding };
        out.push(Fault::new(["stock.1.length", "stock", "product.kind"], fault));
    }
    out.extend(costs(stocks));
    out
}

/// Costs that cannot be weighed against one another.
fn costs(stocks: &[Stock]) -> Option<Fault> {
    let priced: Vec<(usize, f64)> =
        stocks.iter().enumerate().filter_map(|(i, s)| Some((i, s.cost?))).collect();
    let cost_of = |i: usize| format!("stock.{i}.cost");
    let (first, reference) = *priced.first()?;
    if let Some(missing) = stocks.iter().position(|s| s.cost.is_none()) {
        let (key, other) = (cost_of(first), cost_of(missing));
        return Some(Fault::new(
            [key.clone(), "stock".to_owned()],
            ValueFault::CostsPartly { key, other },
        ));
    }
    let apart = |v: f64| v > COSTS_APART * reference || v * COSTS_APART < reference;
    let (i, value) = priced.into_iter().find(|(_, v)| apart(*v))?;
    let (key, other) = (cost_of(i), cost_of(first));
    let keys = [key.clone(), "stock".to_owned()];
    let times = COSTS_APART;
    Some(Fault::new(keys, ValueFault::CostsApart { key, value, other, reference, times }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::finding::FindingKind;
    use crate::finding::job::JobFinding;
    use crate::job::file::parse;
    use crate::job::stock::stock_of;

    /// Faults of values: line, column, and what is wrong.
    fn refused(text: &str) -> Vec<(usize, usize, ValueFault)> {
        let kind = parse(text, "j").unwrap_err().0.kind;
        let FindingKind::Job(JobFinding::JobValue { faults, .. }) = kind else {
            unreachable!("{kind:?}")
        };
        let placed = faults.into_iter().map(|f| (f.place.unwrap(), f.fault));
        placed.map(|(p, fault)| (p.line, p.column, fault)).collect()
    }

    fn first(text: &str) -> (usize, usize, ValueFault) {
        refused(text).remove(0)
    }

    fn out_of_range(key: &str, value: f64, [least, most]: [f64; 2]) -> ValueFault {
        ValueFault::OutOfRange { key: key.to_owned(), value, least, most }
    }

    #[test]
    fn the_second_length_is_read_as_a_stock() {
        let old = parse("[product]\nsecond_length = 200\nsecond_cost = 1.3\n", "j").unwrap();
        let new = parse(
            "[[stock]]\nlength = \"12'-6\\\"\"\ncost = 1\n[[stock]]\nlength = 200\ncost = 1.3\n",
            "j",
        )
        .unwrap();
        assert_eq!(old, new);
        let weights: Vec<i64> = new.stock_weights().iter().map(|s| s.weight).collect();
        assert_eq!(weights, [10, 13]);
        let old =
            parse("[product]\nlength = 120\ncarton = 20\nsecond_length = 200\n", "j").unwrap();
        assert_eq!(old.stocks[1], Stock { length: 200.0, carton: 20, cost: None });
        assert_eq!((old.product.length, old.product.carton), (120.0, 20));
    }

    #[test]
    fn weights_have_no_common_divisor() {
        let job = parse(
            "[[stock]]\nlength = 144\n[[stock]]\nlength = 192\n[[stock]]\nlength = 240\n",
            "j",
        )
        .unwrap();
        // 12, 16 and 20 ft.
        assert_eq!(job.stock_weights().iter().map(|s| s.weight).collect::<Vec<_>>(), [3, 4, 5]);
        assert_eq!(job.first_length(), 144.0);
        assert_eq!(stock_of(&job.stocks, 191.9), 1);
        let usual = StockWeight { length: 150.0, weight: 1, carton: 24, spare: 3.0 };
        assert_eq!(Job::default().stock_weights(), [usual]);
    }

    #[test]
    fn both_ways_at_once_are_refused() {
        for (key, value) in [("length", 200), ("second_length", 200), ("second_carton", 9)] {
            let found = first(&format!("[product]\n{key} = {value}\n[[stock]]\nlength = 150\n"));
            let key = format!("product.{key}");
            let fault = ValueFault::OneTooMany { key, other: "stock".to_owned() };
            assert_eq!((found.0, found.2), (2, fault));
        }
        let zone = "[[zone]]\nname = \"g\"\nlayers = [\"X\"]\n[zone.product]\nlength = 200\n[[zone.stock]]\nlength = 150\n";
        assert!(matches!(first(zone), (5, 10, ValueFault::OneTooMany { .. })), "{:?}", first(zone));
        // What says the same is no contradiction; a carton goes for all that say none of their own.
        let text = "[product]\nlength = 150\ncarton = 9\n[[stock]]\nlength = 150\ncarton = 8\n[[stock]]\nlength = 200\n";
        let job = parse(text, "j").unwrap();
        assert_eq!(job.stocks.iter().map(|s| s.carton).collect::<Vec<_>>(), [8, 9]);
    }

    #[test]
    fn stocks_out_of_bounds_are_refused_by_their_place() {
        let found = first("[[stock]]\nlength = 150\n[[stock]]\nlength = 20\n");
        assert_eq!(found, (4, 10, out_of_range("stock.1.length", 20.0, [36.0, 600.0])));
        let found = first("[[stock]]\nlength = 150\n[[stock]]\nlength = 150.5\n");
        let key = "stock.1.length".to_owned();
        assert_eq!(found, (4, 10, ValueFault::LengthsAlike { key, second: 150.5, first: 150.0 }));
        let found = first("[[stock]]\nlength = 150\ncost = 2\n[[stock]]\nlength = 200\n");
        let (key, other) = ("stock.0.cost".to_owned(), "stock.1.cost".to_owned());
        assert_eq!(found, (3, 8, ValueFault::CostsPartly { key, other }));
        let found =
            first("[[stock]]\nlength = 150\ncost = 9\n[[stock]]\nlength = 200\ncost = 900\n");
        assert!(matches!(found, (6, 8, ValueFault::CostsApart { .. })), "{found:?}");
        let nine: String = (0..9).map(|i| format!("[[stock]]\nlength = {}\n", 100 + i)).collect();
        assert_eq!(first(&nine).2, ValueFault::StocksMany { given: 9, most: 8 });
        let found =
            first("[product]\nkind = \"wood\"\n[[stock]]\nlength = 144\n[[stock]]\nlength = 192\n");
        assert!(matches!(found.2, ValueFault::StocksOfOneLength { given: 2, .. }), "{found:?}");
        // A stock without a length is a fault of form.
        assert!(parse("[[stock]]\ncarton = 9\n", "j").is_err());
        let found = first("[product]\nsecond_carton = 9\n");
        let (key, other) = ("product.second_carton".to_owned(), "product.second_length".to_owned());
        assert_eq!(found, (2, 17, ValueFault::NeedsOther { key, other }));
        let found = first("[product]\nsecond_length = 20\n");
        assert_eq!(found, (2, 17, out_of_range("product.second_length", 20.0, [36.0, 600.0])));
        // The shortest piece is 24 in by default: more than half a panel of 40.
        let found = first("[[stock]]\nlength = 150\n[[stock]]\nlength = 40\n");
        let (key, other) = ("seams.shortest".to_owned(), "stock.1.length".to_owned());
        assert_eq!(found, (4, 10, ValueFault::TooLargeFor { key, value: 24.0, most: 20.0, other }));
    }

    #[test]
    fn a_zone_has_stocks_of_its_own() {
        let zone = "[[zone]]\nname = \"g\"\nlayers = [\"X\"]\n[zone.product]\nkind = \"vinyl\"\n";
        let job = parse(&format!("{zone}[[zone.stock]]\nlength = 144\n"), "j").unwrap();
        assert_eq!(job.for_zone(0, None).unwrap().first_length(), 144.0);
        assert_eq!(job.first_length(), 150.0);
        let found = first(&format!("{zone}[[zone.stock]]\nlength = 14\n"));
        assert_eq!(found, (7, 10, out_of_range("stock.0.length", 14.0, [36.0, 600.0])));
        let clad = "[[zone]]\nname = \"g\"\nlayers = [\"X\"]\ncladding = \"shingle\"\n";
        let found = first(&format!("{clad}[[zone.stock]]\nlength = 144\n"));
        let (key, other) = ("zone.0.stock".to_owned(), "zone.0.product".to_owned());
        assert_eq!(found.2, ValueFault::NeedsOther { key, other });
    }

    #[test]
    fn the_echo_of_a_job_reads_as_the_job() {
        let text = "[[stock]]\nlength = 144\ncarton = 20\n[[stock]]\nlength = 192\n";
        for text in [text, "[product]\nsecond_length = 200\n", ""] {
            let job = parse(text, "j").unwrap();
            let echo = serde_json::to_string(&job).unwrap();
            assert_eq!(serde_json::from_str::<Job>(&echo).unwrap(), job, "{echo}");
        }
    }
}
