//! The house rules of the source: floors, no circles, foreign crates in one room, small files and
//! functions. They hold for code; what is for tests alone is left out.

mod source;

use std::collections::{BTreeMap, BTreeSet};

use self::source::{Function, Modules, SourceFile, all, named_paths, plain, without_tests};
use crate::support::root;

/// Rooms by floor; imports go only downward, and rooms of one floor never import one another, but for
/// the lowest.
const FLOORS: [(&str, u8); 41] = [
    ("main", 11),
    ("cli", 10),
    ("browser", 10),
    ("lib", 9),
    ("pipeline", 8),
    ("outputs", 7),
    ("annotate", 6),
    ("write", 6),
    ("wording", 5),
    ("read", 4),
    ("normalize", 4),
    ("extract", 4),
    ("receive", 4),
    ("course", 4),
    ("seam", 4),
    ("joint", 4),
    ("trim", 4),
    ("verify", 4),
    ("takeoff", 4),
    ("compare", 4),
    ("work", 4),
    ("layout", 3),
    ("job", 3),
    ("finding", 2),
    ("model", 2),
    ("geom", 1),
    ("units", 1),
    ("language", 1),
    ("origin", 1),
    ("packing", 1),
    ("knapsack", 1),
    ("master", 1),
    ("sources", 1),
    ("typeface", 1),
    ("pitch", 1),
    ("cores", 1),
    ("real", 1),
    ("clean", 1),
    ("fingerprint", 1),
    ("csv_rows", 1),
    ("", 0),
];

/// The floor of the stages: called by the pipeline alone.
const STAGES: u8 = 4;

/// Foreign crates with the one room that may name each. serde and schemars derive on plain data.
const CRATES: [(&str, &[&str]); 37] = [
    ("mimalloc", &["main"]),
    ("libm", &["real"]),
    ("toml_edit", &["job"]),
    ("zip", &["write"]),
    ("base64", &["cli"]),
    ("flate2", &["cli"]),
    ("wasm_bindgen_cli_support", &["cli"]),
    ("wasm_bindgen", &["browser"]),
    ("js_sys", &["browser"]),
    ("clap", &["cli"]),
    ("clap_complete", &["cli"]),
    ("clap_mangen", &["cli"]),
    ("toml", &["job"]),
    ("miette", &["cli"]),
    ("indicatif", &["cli"]),
    ("tempfile", &["cli"]),
    ("rustix", &["cli"]),
    ("rayon", &["cores"]),
    ("sha2", &["fingerprint"]),
    ("encoding_rs", &["read"]),
    ("chardetng", &["read"]),
    ("opendwg", &["read"]),
    ("hayro_interpret", &["read"]),
    ("spade", &["geom"]),
    ("memchr", &["read", "write"]),
    ("geo", &["geom"]),
    ("kurbo", &["geom"]),
    ("csv", &["write"]),
    ("rust_xlsxwriter", &["write"]),
    ("svg", &["write"]),
    ("usvg", &["read", "write"]),
    ("png", &["write"]),
    ("resvg", &["write"]),
    ("krilla", &["write"]),
    ("krilla_svg", &["write"]),
    ("serde_json", &["job", "read", "write"]),
    ("ttf_parser", &["typeface"]),
];

/// Most lines of a file, tests aside.
const MOST_LINES: usize = 350;
/// Most lines of a function. Clippy counts as well, without comments and blank lines.
const MOST_OF_FUNCTION: usize = 60;

/// Files longer than that; this list only ever shrinks.
const LONG_FILES: &[&str] = &[];
/// Functions longer than that, as `path name`; this list only ever shrinks.
const LONG_FUNCTIONS: &[&str] = &[];
/// Files still in a circle of imports, or importing the file of their folder; this list only ever
/// shrinks.
const IN_CIRCLES: &[&str] = &[];

fn sources() -> Vec<SourceFile> {
    let files = all(&root().join("src"));
    assert!(files.len() > 300, "only {} files were found", files.len());
    files
}

fn floor(room: &str) -> u8 {
    FLOORS.iter().find(|f| f.0 == room).unwrap_or_else(|| panic!("room `{room}` has no floor")).1
}

/// The files each file imports from, by their numbers.
fn imports(files: &[SourceFile]) -> Vec<BTreeSet<usize>> {
    let modules = Modules::of(files);
    let of = |(i, f): (usize, &SourceFile)| -> BTreeSet<usize> {
        let paths = f.paths(&modules);
        paths.iter().filter_map(|p| modules.file(p)).filter(|to| *to != i).collect()
    };
    files.iter().enumerate().map(of).collect()
}

#[test]
fn imports_go_only_downward() {
    let files = sources();
    let (mut seen, mut wrong) = (0, Vec::new());
    for (from, targets) in files.iter().zip(imports(&files)) {
        for to in targets.into_iter().map(|t| &files[t]).filter(|t| t.room != from.room) {
            seen += 1;
            let allowed = match (from.room.as_str(), to.room.as_str()) {
                ("lib", _) => true,
                // The layout holds the job in force.
                ("layout", "job") => true,
                // A finding names things of the model; the model knows of no finding.
                ("finding", "model") => true,
                (a, b) if floor(b) == STAGES => floor(a) > STAGES && a == "pipeline",
                (a, b) if floor(a) == 1 && floor(b) == 1 => true,
                (a, b) => floor(b) < floor(a),
            };
            if !allowed {
                wrong.push(format!("{} imports {}", from.path, to.path));
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
    assert!(seen > 500, "the search for imports found only {seen}");
}

/// Files that import one another in a circle: those that reach themselves.
fn circles(imports: &[BTreeSet<usize>]) -> Vec<usize> {
    let reaches_itself = |start: usize| {
        let mut seen = BTreeSet::new();
        let mut open: Vec<usize> = imports[start].iter().copied().collect();
        while let Some(next) = open.pop() {
            if seen.insert(next) {
                open.extend(&imports[next]);
            }
        }
        seen.contains(&start)
    };
    (0..imports.len()).filter(|i| reaches_itself(*i)).collect()
}

#[test]
fn no_file_imports_in_a_circle() {
    let files = sources();
    let found: Vec<&str> =
        circles(&imports(&files)).into_iter().map(|i| files[i].path.as_str()).collect();
    let new: Vec<&&str> = found.iter().filter(|p| !IN_CIRCLES.contains(p)).collect();
    assert!(new.is_empty(), "files import one another in a circle: {new:#?}");
    let modules = over(&files);
    let all: Vec<&str> = found.into_iter().chain(modules.iter().map(|m| m.0)).collect();
    assert_shrunk(IN_CIRCLES, &all);
}

/// Files that import the file of a folder they stand in, with that one.
fn over(files: &[SourceFile]) -> Vec<(&str, &str)> {
    let mut out = Vec::new();
    for (from, targets) in files.iter().zip(imports(files)) {
        let over = targets.into_iter().map(|t| &files[t]).filter(|t| t.is_over(from));
        out.extend(over.map(|to| (from.path.as_str(), to.path.as_str())));
    }
    out
}

#[test]
fn no_step_imports_the_file_of_its_folder() {
    let files = sources();
    let new: Vec<_> = over(&files).into_iter().filter(|f| !IN_CIRCLES.contains(&f.0)).collect();
    assert!(new.is_empty(), "shared things lie in a leaf beneath: {new:#?}");
}

/// A list of what is still to be mended names nothing that is mended.
fn assert_shrunk(list: &[&str], found: &[&str]) {
    let done: Vec<&&str> = list.iter().filter(|l| !found.contains(l)).collect();
    assert!(done.is_empty(), "take off the list of exceptions, it is mended: {done:?}");
}

#[test]
fn each_foreign_crate_is_named_in_one_room() {
    let mut used: BTreeMap<&str, BTreeSet<&str>> = BTreeMap::new();
    let files = sources();
    for file in &files {
        for path in named_paths(&file.code) {
            let Some((name, rooms)) =
                CRATES.iter().find(|c| path.first().is_some_and(|p| p == c.0))
            else {
                continue;
            };
            // A module of that name beside the crate is no crate.
            let own = files.iter().any(|f| f.module.last().is_some_and(|m| m == name));
            let uses = path.get(1).is_some_and(|p| p.starts_with(char::is_uppercase));
            if own && !uses && !rooms.contains(&file.room.as_str()) {
                continue;
            }
            assert!(rooms.contains(&file.room.as_str()), "{} names {name}", file.path);
            used.entry(name).or_default().insert(&file.room);
        }
    }
    let unused: Vec<&str> = CRATES.iter().map(|c| c.0).filter(|c| !used.contains_key(c)).collect();
    assert!(unused.is_empty(), "no room names {unused:?}");
}

#[test]
fn files_and_functions_stay_small_and_without_globs() {
    let (mut long_files, mut long_functions) = (Vec::new(), Vec::new());
    for file in sources() {
        assert!(!file.code.contains("::*"), "{} imports a glob", file.path);
        if file.lines > MOST_LINES {
            long_files.push((file.path.clone(), file.lines));
        }
        let long = file.functions().into_iter().filter(|f| f.lines > MOST_OF_FUNCTION);
        long_functions.extend(long.map(|f| (format!("{} {}", file.path, f.name), f.lines)));
    }
    for (found, known) in [(&long_files, LONG_FILES), (&long_functions, LONG_FUNCTIONS)] {
        let new: Vec<_> = found.iter().filter(|f| !known.contains(&f.0.as_str())).collect();
        assert!(new.is_empty(), "too long, with their lines: {new:#?}");
        assert_shrunk(known, &found.iter().map(|f| f.0.as_str()).collect::<Vec<_>>());
    }
}

#[test]
fn code_is_told_from_comments_texts_and_tests() {
    let text = r##"
use crate::a::{b::C, d as e}; // use crate::no::No;
/* use crate::no::No; /* nested */ */
#[cfg(test)]
fn early() { crate::no::no(); }
const S: &str = "crate::no::no \" {"; const R: &str = r#"crate::no::no "{"#; const Q: char = '"';
fn late<'a>(x: &'a str) -> impl Iterator<Item = char> + use<'a> {
    let brace = '{';
    super::up::f(self::own::G, x.chars())
}
#[cfg(test)]
mod tests { use crate::no::No; }
pub(in crate::no) fn last() {}
"##;
    let code = without_tests(&plain(text));
    let paths: Vec<String> = named_paths(&code).iter().map(|p| p.join("::")).collect();
    assert_eq!(paths, ["crate::a::b::C", "crate::a::d", "super::up::f", "self::own::G"]);
    let file = SourceFile::new("room/file.rs".to_owned(), text);
    let lines = |name: &str, lines| Function { name: name.to_owned(), lines };
    assert_eq!(file.functions(), [lines("late", 4), lines("last", 1)]);
}

#[test]
fn a_circle_is_found_whatever_way_it_goes() {
    let file = |path: &str, text: &str| SourceFile::new(path.to_owned(), text);
    let files = [
        file("room/mod.rs", "mod a; mod b; mod c; pub struct Shared; fn f() { a::run() }"),
        file("room/a.rs", "#[cfg(test)] use super::no::No; use super::Shared; pub fn run() {}"),
        file("room/b.rs", "use super::c::C; pub struct B;"),
        file("room/c.rs", "mod inner { use super::super::b::B; } pub struct C;"),
        file("room/d.rs", "use crate::room::a; use super::b::B;"),
    ];
    let found: Vec<&str> =
        circles(&imports(&files)).into_iter().map(|i| files[i].path.as_str()).collect();
    assert_eq!(found, ["room/mod.rs", "room/a.rs", "room/b.rs", "room/c.rs"]);
    assert!(files[0].is_over(&files[1]) && !files[1].is_over(&files[0]));
}

/// Kinds of siding are known to their descriptions, to their names and to their cautions; all others ask
/// the description.
#[test]
fn only_descriptions_and_their_words_know_kinds_of_siding() {
    let word = |code: &str, name: &str| {
        code.match_indices(name).any(|(i, _)| {
            let before = code[..i].chars().last();
            !before.is_some_and(|c| c.is_alphanumeric() || c == '_')
        })
    };
    let kinds = ["is_board", "Kind::", "Siding::", "PanelSiding", "BoardSiding"];
    let mut known = 0;
    for file in sources() {
        let path = &file.path;
        let at_home = path.starts_with("job/siding/") || path == "wording/siding.rs";
        for name in kinds.into_iter().filter(|name| word(&file.code, name)) {
            assert!(at_home, "{path} names `{name}`: ask `job.siding()` instead");
            known += 1;
        }
    }
    assert!(known > 3, "the search for kinds of siding found only {known}");
}

/// Tests reckon by the system's own sines and roots, on purpose; its clock they leave alone, but for the two that
/// watch a process.
#[test]
fn tests_do_not_time() {
    let mut folders =
        ["it", "reference", "corpus", "page", "jobcase", "architect", "noise", "hostile"]
            .map(|f| root().join("tests").join(f))
            .to_vec();
    let mut read = 0;
    while let Some(folder) = folders.pop() {
        for e in std::fs::read_dir(folder).unwrap().map(|e| e.unwrap().path()) {
            if e.is_dir() {
                folders.push(e);
            } else if e.extension().is_some_and(|x| x == "rs") {
                let text = std::fs::read_to_string(&e).unwrap();
                let clock =
                    ["Instant", "SystemTime"].iter().any(|c| text.contains(&format!("{c}::now")));
                assert!(!clock || e.ends_with("it/writing.rs"), "{} reads a clock", e.display());
                read += 1;
            }
        }
    }
    assert!(read > 100, "{read}");
}

#[test]
fn no_test_file_is_forgotten() {
    let main = std::fs::read_to_string(root().join("tests/it/main.rs")).unwrap();
    for e in std::fs::read_dir(root().join("tests/it")).unwrap() {
        let name = e.unwrap().file_name().to_string_lossy().into_owned();
        if let Some(stem) = name.strip_suffix(".rs").filter(|s| *s != "main") {
            assert!(main.contains(&format!("mod {stem};")), "{name} is not in main.rs");
        }
    }
}
