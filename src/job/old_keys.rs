//! Keys and words of a job file as they were spelled before: they are still read, and told.

use toml::de::{DeTable, DeValue};

/// A key that has a new name: both dotted, tables of a list by their name alone.
const KEYS: [(&str, &str); 6] = [
    ("joint", "movement_joint"),
    ("boards.joint_gap", "boards.butt_gap"),
    ("trim.joint_gap", "trim.movement_gap"),
    ("trim.colours", "trim.colors"),
    ("product.colour", "product.color"),
    ("zone.product.colour", "zone.product.color"),
];

/// A word that has a new spelling: the key whose value it is, then both.
const WORDS: [(&str, &str, &str); 3] = [
    ("product.kind", "fibre-cement", "fiber-cement"),
    ("zone.product.kind", "fibre-cement", "fiber-cement"),
    ("trim.frame", "mitre", "miter"),
];

/// What of a file is spelled as before.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct OldSpelling {
    /// First byte of the key, or of the word.
    pub(super) byte: usize,
    /// Dotted path of the key.
    pub(super) key: String,
    /// Key or word as the file has it.
    pub(super) old: &'static str,
    /// Key or word as it is spelled now.
    pub(super) new: &'static str,
    /// Whether the table has the new key too.
    pub(super) both: bool,
}

/// The last word of a dotted path.
fn last(path: &'static str) -> &'static str {
    path.rsplit('.').next().unwrap_or(path)
}

/// A dotted path with each key in it as it is spelled now.
pub(super) fn current(path: &str) -> String {
    let below = |old: &str| path.strip_prefix(old).filter(|r| r.is_empty() || r.starts_with('.'));
    let found = KEYS.iter().find_map(|(old, new)| Some(format!("{new}{}", below(old)?)));
    found.unwrap_or_else(|| path.to_owned())
}

/// How one word of a path was spelled before.
pub(super) fn older(word: &str) -> Option<&'static str> {
    KEYS.iter().find(|(_, new)| last(new) == word).map(|(old, _)| last(old))
}

/// Everything that a file spells as before, in the order of the file.
pub(super) fn found(table: &DeTable) -> Vec<OldSpelling> {
    let mut out = Vec::new();
    walk(table, "", &mut out);
    out.sort();
    out
}

fn walk(table: &DeTable, above: &str, out: &mut Vec<OldSpelling>) {
    for (key, value) in table {
        let path = match above {
            "" => key.get_ref().to_string(),
            _ => format!("{above}.{}", key.get_ref()),
        };
        if let Some((old, new)) = KEYS.iter().find(|(old, _)| *old == path) {
            out.push(OldSpelling {
                byte: key.span().start,
                key: path.clone(),
                old: last(old),
                new: last(new),
                both: table.contains_key(last(new)),
            });
        }
        match value.get_ref() {
            DeValue::String(text) => {
                let spelled = WORDS.iter().find(|w| w.0 == path && w.1 == text.as_ref());
                out.extend(spelled.map(|(_, old, new)| OldSpelling {
                    byte: value.span().start,
                    key: path,
                    old,
                    new,
                    both: false,
                }));
            }
            DeValue::Table(t) => walk(t, &path, out),
            DeValue::Array(list) => {
                list.iter()
                    .filter_map(|v| v.get_ref().as_table())
                    .for_each(|t| walk(t, &path, out));
            }
            _ => {}
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn paths_are_told_as_they_are_now() {
        assert_eq!(current("joint.at"), "movement_joint.at");
        assert_eq!(current("trim.colours.j-channel"), "trim.colors.j-channel");
        assert_eq!(current("joints"), "joints");
        assert_eq!((older("color"), older("length")), (Some("colour"), None));
    }
}
