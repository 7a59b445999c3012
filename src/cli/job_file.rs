//! The job file: TOML to a [`Job`], with faults by line, column and nearest key.

use crate::diag::{Note, Refusal};
use crate::job::Job;

/// Reads a job file.
///
/// # Errors
/// `job-unreadable` with line and column; for an unknown key the nearest known one is named.
pub fn parse(text: &str, name: &str) -> Result<Job, Refusal> {
    let job: Job = toml::from_str(text).map_err(|e| fault(&e, text, name))?;
    job.validate()?;
    Ok(job)
}

fn fault(error: &toml::de::Error, text: &str, name: &str) -> Refusal {
    let place = error.span().map_or(String::new(), |s| {
        let before = text.get(..s.start).unwrap_or(text);
        let line = before.matches('\n').count() + 1;
        let column = before.rsplit('\n').next().map_or(0, |l| l.chars().count()) + 1;
        format!(":{line}:{column}")
    });
    let message = error.message().trim();
    let help = match nearest(message) {
        Some(key) => format!("Did you mean `{key}`? `lapwright schema job` lists every key."),
        None => "`lapwright schema job` lists every key and the form of its value.".to_owned(),
    };
    Note::error("job-unreadable", format!("{name}{place}: {message}"), &help).into()
}

/// Of an "unknown field `x`, expected one of `a`, `b`", the expected key nearest to `x`.
fn nearest(message: &str) -> Option<String> {
    if !message.starts_with("unknown field") && !message.starts_with("unknown variant") {
        return None;
    }
    let mut quoted = message.split('`').skip(1).step_by(2);
    let wrong = quoted.next()?;
    let best = quoted.min_by_key(|k| distance(wrong, k))?;
    (distance(wrong, best) <= 1 + wrong.chars().count() / 2).then(|| best.to_owned())
}

/// Edit distance by single characters (Levenshtein).
fn distance(a: &str, b: &str) -> usize {
    let b: Vec<char> = b.chars().collect();
    let mut row: Vec<usize> = (0..=b.len()).collect();
    for (i, c) in a.chars().enumerate() {
        let mut before = row[0];
        row[0] = i + 1;
        for (j, d) in b.iter().enumerate() {
            let here = before + usize::from(c != *d);
            before = row[j + 1];
            row[j + 1] = here.min(before + 1).min(row[j] + 1);
        }
    }
    row[b.len()]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_unknown_key_is_placed_and_the_nearest_named() {
        let e = parse("[product]\nexposure = 8\nlenght = 150\n", "job.toml").unwrap_err();
        assert!(e.0.message.contains("job.toml:3:1"), "{}", e.0.message);
        assert!(e.0.help.contains("`length`"), "{}", e.0.help);
    }

    #[test]
    fn lengths_come_as_numbers_or_texts() {
        let job = parse("[product]\nlength = \"16'-8\\\"\"\nexposure = 7\n", "j").unwrap();
        assert_eq!((job.product.length, job.product.exposure), (200.0, 7.0));
        assert!(
            parse("[product]\nlength = \"long\"\n", "j")
                .unwrap_err()
                .0
                .message
                .contains("not a length")
        );
    }

    #[test]
    fn values_out_of_range_are_refused() {
        assert!(parse("[seams]\nstagger = -1\n", "j").is_err());
    }
}
