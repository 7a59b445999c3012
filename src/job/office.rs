//! What an office answers once, as a file that all its jobs extend, and a job to begin with.

use toml::Value;

use super::commented::{comment, parent, value};
use super::root::Job;
use super::schema;

/// Name of the office's file.
pub const OFFICE: &str = "office.toml";
/// Name of the job to begin with.
pub const HOUSE: &str = "house.toml";

const OFFICE_HEAD: &str = "\
# The office's own answers, given once. A job says `extends = \"office.toml\"` before its first table and goes on
# from here: what the job says comes before what stands here, key by key. Every setting below stands with
# its default, commented out: take the # before a key away and write your own. `lapwright check` then tells which
# setting comes from which file. job.toml beside this file explains every setting there is.
";

const HOUSE_HEAD: &str = "\
# One house. What this file does not say, the office's file says; the path is from this file's own folder.
# Copy it for each house, under the name of its drawing: house.dxf has house.toml.
extends = \"office.toml\"
";

/// A question and the settings that answer it; all of one table.
type Question = (&'static str, &'static [&'static str]);

/// What every office answers once, table by table.
const ASKED_OF_OFFICE: &[Question] = &[
    (
        "1. Which siding do you hang? Measure one panel: length, exposure, how many boards it shows, what a lap covers.",
        &["product.kind", "product.length", "product.exposure", "product.faces", "product.lap"],
    ),
    ("2. How many panels come in a carton?", &["product.carton"]),
    (
        "3. What are your posts like? Measure from the corner of the wall to the bottom of the post's pocket, and how wide its face shows.",
        &[
            "product.outside_post_set_back",
            "product.outside_post_face",
            "product.inside_post_set_back",
            "product.inside_post_face",
        ],
    ),
    (
        "4. What gap do you leave at each end of a course, by the maker's instructions? Left out, it follows the weather.",
        &["product.end_gap"],
    ),
    (
        "5. How far apart do seams stand, and which piece is too short to hang?",
        &["seams.stagger", "seams.shortest"],
    ),
    (
        "6. What room do posts and starter strips get?",
        &["trim.post_top_gap", "trim.post_below", "trim.starter_gap"],
    ),
    ("7. How deep is the pocket of your J-channels?", &["trim.pocket"]),
    (
        "8. How much do you buy over the count, percent of panels and of trim?",
        &["takeoff.spare", "takeoff.trim_spare"],
    ),
    (
        "9. Where is your price list, and what is the sales tax?",
        &["estimate.price_list", "estimate.tax"],
    ),
    (
        "10. Which paper do you print on, and how are lengths written?",
        &["sheet.paper", "sheet.lengths"],
    ),
];

/// What each house answers.
const ASKED_OF_HOUSE: &[Question] = &[
    (
        "The title block.",
        &["title.project", "title.client", "title.address", "title.number", "title.date"],
    ),
    (
        "A house of a model: its drawing, its variant, whether it is built the other way round.",
        &["model.drawing", "model.variant", "model.mirrored"],
    ),
    ("The drawing's unit, or a length in it that is known.", &["drawing.unit", "drawing.known"]),
    (
        "The butt line of the first course over the floor line; left out, it is searched for.",
        &["courses.datum"],
    ),
];

/// The office's file: its questions, each with the settings that answer it.
pub fn office() -> String {
    OFFICE_HEAD.to_owned() + &asked(ASKED_OF_OFFICE)
}

/// A job to begin with, which extends the office's file.
pub fn house() -> String {
    HOUSE_HEAD.to_owned() + &asked(ASKED_OF_HOUSE)
}

/// The keys that are asked for, the office's first.
pub fn asked_keys() -> impl Iterator<Item = &'static str> {
    ASKED_OF_OFFICE.iter().chain(ASKED_OF_HOUSE).flat_map(|q| q.1).copied()
}

fn asked(questions: &[Question]) -> String {
    let words = schema::descriptions();
    let defaults = Value::try_from(Job::default()).unwrap_or(Value::Boolean(false));
    let mut out = String::new();
    let mut open = None;
    for (question, keys) in questions {
        let table = keys.first().and_then(|k| parent(k));
        out.push('\n');
        if open != table {
            out.push_str(&format!("[{}]\n", table.unwrap_or_default()));
            open = table;
        }
        out.push_str(&comment(question));
        for path in *keys {
            out.push_str(&comment(words.get(*path).map_or("", String::as_str)));
            let key = path.rsplit('.').next().unwrap_or(path);
            out.push_str(&format!("#{key} = {}\n", value(path, &defaults)));
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::finding::Findings;
    use crate::finding::job::ExtendsFault;
    use crate::job::extended::read;
    use crate::job::texts::{JobText, Texts};

    struct Beside(String);

    impl Texts for Beside {
        fn extended(&mut self, from: &str, extends: &str) -> Result<JobText, ExtendsFault> {
            assert_eq!((from, extends), (HOUSE, OFFICE));
            Ok(JobText { name: OFFICE.to_owned(), text: self.0.clone() })
        }
    }

    #[test]
    fn both_files_say_the_defaults_until_they_are_answered() {
        let mut texts = Beside(office());
        let made = read(&house(), HOUSE, &mut texts, &mut Findings::default()).unwrap();
        assert_eq!(made.job, Job::default());
        assert!(made.from.is_empty());
    }

    #[test]
    fn every_setting_that_is_asked_for_is_one_and_takes_what_stands_there() {
        let keys = schema::keys();
        for key in asked_keys() {
            assert!(keys.iter().any(|k| k == key), "{key}");
        }
        // A comment line has a blank after its mark, a setting has none.
        let on = |text: String| -> String {
            let line = |l: &str| match l.strip_prefix('#') {
                Some(key) if !key.starts_with(' ') => format!("{key}\n"),
                _ => format!("{l}\n"),
            };
            text.lines().map(line).collect()
        };
        let mut texts = Beside(on(office()));
        let made = read(&on(house()), HOUSE, &mut texts, &mut Findings::default()).unwrap();
        assert_eq!(made.files.len(), 2);
        let of = |file: usize| made.from.values().filter(|f| **f == file).count();
        assert_eq!(of(0), ASKED_OF_HOUSE.iter().map(|q| q.1.len()).sum::<usize>());
        assert_eq!(of(1), ASKED_OF_OFFICE.iter().map(|q| q.1.len()).sum::<usize>());
    }
}
