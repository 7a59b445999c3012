//! Sentences stand in `src/wording` alone: what draws and what writes places them.

use std::path::Path;

use crate::support::root;

/// Rooms that only place and format.
const ROOMS: [&str; 4] = ["annotate", "write", "outputs", "cli"];

/// String literals of a source, comments and unit tests left out.
fn literals(source: &str) -> Vec<String> {
    let code = source.split("#[cfg(test)]\nmod tests").next().unwrap_or_default();
    let (mut out, mut rest) = (Vec::new(), code);
    while let Some(at) = rest.find(['"', '\'', '/']) {
        let (head, tail) = (rest.as_bytes()[at], &rest[at + 1..]);
        rest = match head {
            b'/' if tail.starts_with('/') => tail.find('\n').map_or("", |end| &tail[end..]),
            b'\'' => {
                // A character, not a lifetime.
                let end = tail.char_indices().skip(1).take(10).find(|(i, c)| {
                    *c == '\'' && (*i == 1 || tail.starts_with('\\') || !tail.is_ascii())
                });
                end.map_or(tail, |(i, _)| &tail[i + 1..])
            }
            b'"' => {
                let mut escaped = false;
                let end = tail.char_indices().find(|(_, c)| {
                    let ends = *c == '"' && !escaped;
                    escaped = *c == '\\' && !escaped;
                    ends
                });
                let end = end.map_or(tail.len(), |(i, _)| i);
                out.push(tail[..end].replace("\\n", " "));
                tail.get(end + 1..).unwrap_or_default()
            }
            _ => tail,
        };
    }
    out
}

/// Three or more words of letters in a row.
fn is_sentence(text: &str) -> bool {
    let marks = [',', ';', '.', ':', '(', ')', '`', '\'', '?', '!'];
    let word = |w: &&str| {
        let w = w.trim_matches(marks);
        !w.is_empty() && w.chars().all(char::is_alphabetic)
    };
    let words: Vec<&str> = text.split([' ', '\n']).collect();
    words.windows(3).any(|w| w.iter().all(word))
}

fn sources(folder: &Path, out: &mut Vec<std::path::PathBuf>) {
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            sources(&path, out);
        } else if path.extension().is_some_and(|e| e == "rs") {
            out.push(path);
        }
    }
}

#[test]
fn sentences_stand_in_wording_alone() {
    let src = root().join("src");
    let mut files = Vec::new();
    ROOMS.iter().for_each(|r| sources(&src.join(r), &mut files));
    assert!(files.len() > 40);
    let mut found = Vec::new();
    for path in files {
        let name = path.strip_prefix(&src).unwrap().to_string_lossy().replace('\\', "/");
        let text = std::fs::read_to_string(&path).unwrap();
        let bad = literals(&text).into_iter().filter(|l| is_sentence(l));
        found.extend(bad.map(|l| format!("{name}: {l}")));
    }
    assert_eq!(found, Vec::<String>::new());
}

#[test]
fn a_sentence_is_told_from_names_and_codes() {
    let source = "/// It is a comment.\nfn f<'a>(c: char) { let q = '\"'; g(\"one two three\"); \
                  h(\"J-channel 12\", \"{} of {}\", \"a \\\" b c d\"); } // not one of these";
    let all = literals(source);
    assert_eq!(all, ["one two three", "J-channel 12", "{} of {}", "a \\\" b c d"]);
    let sentences: Vec<bool> = all.iter().map(|l| is_sentence(l)).collect();
    assert_eq!(sentences, [true, false, false, true]);
    assert!(is_sentence("rip: keep, at most, this") && !is_sentence("left / right"));
}
