//! The job file: TOML to a [`Job`], with faults by line, column and nearest key.

use super::extended;
use super::root::Job;
use super::texts::Alone;
use crate::finding::{Findings, Refusal};

/// Reads a job file.
///
/// # Errors
/// `job-unreadable` with line and column; for an unknown key the nearest known one is named, and
/// every further unknown key is listed. `job-value` for a value no layout can be made with. A file that
/// extends another is refused: no other file is at hand.
pub fn parse(text: &str, name: &str) -> Result<Job, Refusal> {
    read(text, name, &mut Findings::default())
}

/// The same, with a finding for each key or word that is spelled as before.
///
/// # Errors
/// As [`parse`].
pub fn read(text: &str, name: &str, findings: &mut Findings) -> Result<Job, Refusal> {
    Ok(extended::read(text, name, &mut Alone, findings)?.job)
}

/// A text as a TOML file spells it, quoted and escaped.
pub fn quoted(text: &str) -> String {
    toml::Value::String(text.to_owned()).to_string()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::finding::FindingKind;
    use crate::finding::job::{JobFileFault, JobFinding, JobSource, UnknownKey};
    use crate::finding::job_value::ValueFault;

    fn refused(text: &str) -> JobFinding {
        match parse(text, "job.toml").unwrap_err().0.kind {
            FindingKind::Job(found) => found,
            other => unreachable!("{other:?}"),
        }
    }

    /// Unknown keys: line, column, key, and the key that may be meant.
    fn unknown(text: &str) -> Vec<(usize, usize, String, Option<String>)> {
        match refused(text) {
            JobFinding::JobUnreadable { fault: JobFileFault::UnknownKeys { keys, .. }, .. } => {
                let one = |k: UnknownKey| (k.place.line, k.place.column, k.key, k.nearest);
                keys.into_iter().map(one).collect()
            }
            other => unreachable!("{other:?}"),
        }
    }

    /// A fault of form: line, column and key.
    fn form(text: &str) -> (usize, usize, Option<String>) {
        match refused(text) {
            JobFinding::JobUnreadable { fault: JobFileFault::Form { place, key, .. }, .. } => {
                let place = place.unwrap();
                (place.line, place.column, key)
            }
            other => unreachable!("{other:?}"),
        }
    }

    /// Faults of values: line, column, and what is wrong.
    fn values(text: &str) -> Vec<(usize, usize, ValueFault)> {
        match refused(text) {
            JobFinding::JobValue { source, faults, .. } => {
                assert_eq!(source, JobSource::File { file: "job.toml".to_owned() });
                let placed = faults.into_iter().map(|f| (f.place.unwrap(), f.fault));
                placed.map(|(p, fault)| (p.line, p.column, fault)).collect()
            }
            other => unreachable!("{other:?}"),
        }
    }

    fn nearest_to(text: &str) -> Option<String> {
        unknown(text).remove(0).3
    }

    #[test]
    fn an_unknown_key_is_placed_and_the_nearest_named() {
        let found = unknown("[product]\nexposure = 8\nlenght = 150\n");
        let nearest = Some("product.length".to_owned());
        assert_eq!(found, [(3, 1, "product.lenght".to_owned(), nearest)]);
    }

    #[test]
    fn a_key_in_the_wrong_table_is_sent_to_its_own() {
        let meant = nearest_to("[product]\nstagger = 24\n");
        assert_eq!(meant.as_deref(), Some("seams.stagger"));
        let meant = nearest_to("carton = 20\n");
        assert_eq!(meant.as_deref(), Some("product.carton"));
    }

    #[test]
    fn every_unknown_key_is_given_in_the_order_of_the_file() {
        let found =
            unknown("[sheets]\npaper = \"A3\"\n[[elevation]]\nname = \"F\"\n  regoin = []\n");
        let some = |text: &str| Some(text.to_owned());
        let expected = [
            (1, 2, "sheets".to_owned(), some("sheet")),
            (5, 3, "elevation.regoin".to_owned(), some("elevation.region")),
        ];
        assert_eq!(found, expected);
        // What is like nothing is not guessed at.
        assert_eq!(nearest_to("zzzzzzzz = 1\n"), None);
    }

    #[test]
    fn keys_that_are_roles_and_stocks_are_known() {
        let job = parse(
            "[layers]\nmounting-block = [\"X\"]\n[trim.colors]\nj-channel = \"white\"\n",
            "j",
        );
        assert!(job.is_ok(), "{job:?}");
        let meant = nearest_to("[layers]\nwindows = [\"X\"]\n");
        assert_eq!(meant.as_deref(), Some("layers.window"));
    }

    #[test]
    fn faults_of_form_and_value_are_placed() {
        assert_eq!(form("[product\n").0, 1);
        let key = |text: &str| Some(text.to_owned());
        let text = "[product]\nexposure = 8\nfaces = \"two\"\n";
        assert_eq!(form(text), (3, 9, key("product.faces")));
        let text = "[[band]]\nbottom = 1\ntop = 9\n[[band]]\nbottom = \"low\"\n";
        assert_eq!(form(text), (5, 10, key("band.bottom")));
        let (line, column, _) = form("[product]\ncarton = 1\ncarton = 2\n");
        assert_eq!((line, column), (3, 1));
    }

    #[test]
    fn lengths_come_as_numbers_or_texts() {
        let job = parse("[product]\nlength = \"16'-8\\\"\"\nexposure = 7\n", "j").unwrap();
        assert_eq!((job.product.length, job.product.exposure), (200.0, 7.0));
        assert_eq!(form("[product]\nlength = \"long\"\n").2.as_deref(), Some("product.length"));
    }

    #[test]
    fn values_out_of_range_are_refused() {
        let range = |key: &str, value, least, most| ValueFault::OutOfRange {
            key: key.to_owned(),
            value,
            least,
            most,
        };
        let found = values("[seams]\nstagger = -1\n");
        assert_eq!(found, [(2, 11, range("seams.stagger", -1.0, 0.0, 600.0))]);
        // A length is finite or none.
        assert_eq!(
            form("[product]\nexposure = inf\n"),
            (2, 12, Some("product.exposure".to_owned()))
        );
        let key = "weather.highest_f".to_owned();
        let found = values("[weather]\nhighest_f = inf\n");
        assert_eq!(found[0], (2, 13, ValueFault::NotFinite { key }));
        // Every one is given, in the order of the file.
        let found = values("[trim]\ntab = \"9 in\"\n[product]\ncarton = 0\n");
        assert_eq!(found[0], (2, 7, range("trim.tab", 9.0, 0.0, 6.0)));
        assert_eq!(found[1], (4, 10, range("product.carton", 0.0, 1.0, 1000.0)));
    }

    #[test]
    fn values_that_hang_on_one_another_are_placed_where_the_file_sets_one() {
        let first = |text: &str| values(text).remove(0);
        let (line, column, _) = first("[drawing]\nweld = 0.1\nknown = \"0,0 1 = 8 ft\"\n");
        assert_eq!((line, column), (3, 9));
        // The shortest piece is 24 in by default: more than half a panel of 40 in.
        let found = first("[product]\nlength = 40\n");
        let fault = ValueFault::TooLargeFor {
            key: "seams.shortest".to_owned(),
            value: 24.0,
            most: 20.0,
            other: "product.length".to_owned(),
        };
        assert_eq!(found, (2, 10, fault));
        let text =
            "[[elevation]]\nname = \"A\"\n[[elevation]]\nname = \"B\"\nregion = [0, 0, -1, 5]\n";
        let (key, view) = ("elevation.1.region".to_owned(), "B".to_owned());
        assert_eq!(first(text), (5, 10, ValueFault::RegionEmpty { key, view }));
        let (.., fault) = first("[drawing]\naccept = [\"opening-outsid\"]\n");
        assert!(matches!(fault, ValueFault::NotOneOf { choices, .. } if choices.len() == 3));
        let (line, column, _) = first("[layers]\nwall = [\"\"]\n");
        assert_eq!((line, column), (2, 8));
    }
}
