//! The program's source as the house rules see it: code without comments, strings and tests, the paths
//! it names, resolved to files, and the lines of its functions.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

/// One source file.
pub(crate) struct SourceFile {
    /// Its path under `src`, with forward slashes.
    pub(crate) path: String,
    /// First folder, or the file's own name at the top.
    pub(crate) room: String,
    /// Its module's path from the crate's root.
    pub(crate) module: Vec<String>,
    /// Its code: comments, texts and whatever is for tests alone left out, lines kept.
    pub(crate) code: String,
    /// Lines of the file, comments and blank ones too, but for what is for tests alone.
    pub(crate) lines: usize,
}

/// A function and the lines from its name to its last brace.
#[derive(Debug, PartialEq, Eq)]
pub(crate) struct Function {
    pub(crate) name: String,
    pub(crate) lines: usize,
}

/// Every source file, by path.
pub(crate) fn all(src: &Path) -> Vec<SourceFile> {
    let mut paths = Vec::new();
    walk(src, &mut paths);
    paths.sort();
    let read = |p: PathBuf| {
        let path = p.strip_prefix(src).unwrap().to_string_lossy().replace('\\', "/");
        SourceFile::new(path, &std::fs::read_to_string(&p).unwrap())
    };
    paths.into_iter().map(read).collect()
}

fn walk(dir: &Path, out: &mut Vec<PathBuf>) {
    for entry in std::fs::read_dir(dir).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            walk(&path, out);
        } else if path.extension().is_some_and(|x| x == "rs") {
            out.push(path);
        }
    }
}

impl SourceFile {
    pub(crate) fn new(path: String, text: &str) -> Self {
        let stem = path.trim_end_matches(".rs");
        let mut module: Vec<String> = stem.split('/').map(str::to_owned).collect();
        let room = module[0].clone();
        if module.last().is_some_and(|m| m == "mod") || path == "lib.rs" {
            module.pop();
        }
        let code = without_tests(&plain(text));
        let lines = code.lines().count();
        SourceFile { path, room, module, code, lines }
    }

    /// Whether this is the file of a folder: what stands beneath it must not import it.
    pub(crate) fn is_over(&self, other: &SourceFile) -> bool {
        self.module.len() < other.module.len()
            && other.module.starts_with(&self.module)
            && !self.module.is_empty()
    }

    /// Paths it names, from the crate's root, of the crate's own modules.
    pub(crate) fn paths(&self, modules: &Modules) -> Vec<Vec<String>> {
        let mut out = Vec::new();
        for (module, code) in inner_modules(&self.module, &self.code) {
            for path in named_paths(&code) {
                out.extend(absolute(&module, &path, modules));
            }
        }
        out
    }

    /// Its functions, tests aside, those inside others too.
    pub(crate) fn functions(&self) -> Vec<Function> {
        let mut out = Vec::new();
        for (at, _) in words(&self.code).filter(|w| w.1 == "fn") {
            let rest = &self.code[at + 2..];
            let name: String = rest.trim_start().chars().take_while(|c| is_word(*c)).collect();
            // A function pointer has no name, a declaration no body.
            let Some(open) = body_start(rest).filter(|_| !name.is_empty()) else { continue };
            if rest.as_bytes()[open] == b'{' {
                let body = &rest[..open + closing(&rest[open..])];
                out.push(Function { name, lines: body.matches('\n').count() + 1 });
            }
        }
        out
    }
}

/// Modules of the crate and which file holds each.
pub(crate) struct Modules(BTreeMap<Vec<String>, usize>);

impl Modules {
    pub(crate) fn of(files: &[SourceFile]) -> Self {
        let library = files.iter().enumerate().filter(|(_, f)| f.path != "main.rs");
        Modules(library.map(|(i, f)| (f.module.clone(), i)).collect())
    }

    /// The file in which the item of a path stands: that of its longest beginning that is a module.
    pub(crate) fn file(&self, path: &[String]) -> Option<usize> {
        (1..=path.len()).rev().find_map(|n| self.0.get(&path[..n])).copied()
    }
}

fn is_word(c: char) -> bool {
    c.is_alphanumeric() || c == '_'
}

/// Words of some code with their places.
fn words(code: &str) -> impl Iterator<Item = (usize, &str)> {
    let mut from = 0;
    std::iter::from_fn(move || {
        let start = from + code[from..].find(is_word)?;
        let end = code[start..].find(|c| !is_word(c)).map_or(code.len(), |n| start + n);
        from = end;
        Some((start, &code[start..end]))
    })
}

/// Where an item's block begins, or the semicolon that ends an item without one.
fn body_start(item: &str) -> Option<usize> {
    let mut depth = 0_i32;
    item.char_indices().find_map(|(i, c)| {
        depth += i32::from("([".contains(c)) - i32::from(")]".contains(c));
        (depth == 0 && "{;".contains(c)).then_some(i)
    })
}

/// Length of a block that begins with a brace, the closing one included.
fn closing(code: &str) -> usize {
    let mut depth = 0_i32;
    for (i, c) in code.char_indices() {
        depth += i32::from(c == '{') - i32::from(c == '}');
        if depth == 0 && c == '}' {
            return i + 1;
        }
    }
    code.len()
}

/// Code without what comments and texts say: their letters become blanks, line ends stay.
pub(crate) fn plain(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut rest = text;
    while let Some(c) = rest.chars().next() {
        let before = out.chars().next_back().is_some_and(is_word);
        let (keep, skip) = match c {
            '/' if rest.starts_with("//") => (0, rest.find('\n').unwrap_or(rest.len())),
            '/' if rest.starts_with("/*") => (0, block_comment(rest)),
            '"' => (0, text_length(rest)),
            'r' | 'b' if !before && raw_or_bytes(rest).is_some() => {
                (0, raw_or_bytes(rest).unwrap())
            }
            '\'' => (0, letter(rest).unwrap_or(1)),
            _ => (c.len_utf8(), c.len_utf8()),
        };
        out.push_str(&rest[..keep]);
        if keep == 0 {
            out.extend(rest[..skip].chars().map(|c| if c == '\n' { '\n' } else { ' ' }));
        }
        rest = &rest[skip..];
    }
    out
}

fn block_comment(text: &str) -> usize {
    let (mut depth, mut i) = (0, 0);
    while i < text.len() {
        if text[i..].starts_with("/*") {
            depth += 1;
            i += 2;
        } else if text[i..].starts_with("*/") {
            depth -= 1;
            i += 2;
            if depth == 0 {
                return i;
            }
        } else {
            i += text[i..].chars().next().map_or(1, char::len_utf8);
        }
    }
    text.len()
}

/// Length of a text in quotes, escapes heeded.
fn text_length(text: &str) -> usize {
    let mut escaped = false;
    for (i, c) in text.char_indices().skip(1) {
        match c {
            _ if escaped => escaped = false,
            '\\' => escaped = true,
            '"' => return i + 1,
            _ => {}
        }
    }
    text.len()
}

/// Length of `r"..."`, `r#"..."#`, `b"..."`, `br"..."`, `b'.'`.
fn raw_or_bytes(text: &str) -> Option<usize> {
    let after = text.strip_prefix('b').unwrap_or(text);
    let skipped = text.len() - after.len();
    if let Some(hashes) = after.strip_prefix('r') {
        let n = hashes.len() - hashes.trim_start_matches('#').len();
        let body = hashes[n..].strip_prefix('"')?;
        let end = format!("\"{}", "#".repeat(n));
        let length = body.find(&end)? + end.len();
        return Some(skipped + 1 + n + 1 + length);
    }
    match after.chars().next()? {
        '"' if skipped > 0 => Some(skipped + text_length(after)),
        '\'' if skipped > 0 => Some(skipped + letter(after)?),
        _ => None,
    }
}

/// Length of a letter in quotes; none for a lifetime.
fn letter(text: &str) -> Option<usize> {
    let mut chars = text.char_indices().skip(1);
    let (_, first) = chars.next()?;
    if first == '\\' {
        chars.next()?;
        return chars.find(|(_, c)| *c == '\'').map(|(i, _)| i + 1);
    }
    chars.next().filter(|(_, c)| *c == '\'').map(|(i, _)| i + 1)
}

/// Code without what is compiled for tests alone: modules, functions, blocks of methods.
pub(crate) fn without_tests(code: &str) -> String {
    const MARK: &str = "#[cfg(test)]";
    let mut out = String::with_capacity(code.len());
    let mut rest = code;
    while let Some(at) = rest.find(MARK) {
        out.push_str(rest[..at].trim_end_matches([' ', '\t']));
        let item = &rest[at + MARK.len()..];
        let end = body_start(item).unwrap_or(item.len().saturating_sub(1));
        let length = if item[end..].starts_with('{') { closing(&item[end..]) } else { 1 };
        rest = item[end + length..].trim_start_matches([' ', '\n']);
    }
    out + rest
}

/// The code of a file's own module and of each that stands inside it.
fn inner_modules(module: &[String], code: &str) -> Vec<(Vec<String>, String)> {
    let mut own = String::with_capacity(code.len());
    let mut out = Vec::new();
    let mut from = 0;
    for (at, _) in words(code).filter(|w| w.1 == "mod") {
        let rest = &code[at + 3..];
        let name: String = rest.trim_start().chars().take_while(|c| is_word(*c)).collect();
        let open = rest.find(['{', ';']);
        let Some(open) = open.filter(|o| at >= from && rest.as_bytes()[*o] == b'{') else {
            continue;
        };
        let start = at + 3 + open;
        let end = start + closing(&code[start..]);
        own.push_str(&code[from..at]);
        let inner: Vec<String> = module.iter().cloned().chain([name]).collect();
        out.extend(inner_modules(&inner, &code[start + 1..end - 1]));
        from = end;
    }
    own.push_str(&code[from..]);
    out.push((module.to_vec(), own));
    out
}

/// Every path of two words and more, or named by `use`: as written, cut into its words.
pub(crate) fn named_paths(code: &str) -> Vec<Vec<String>> {
    let mut out = Vec::new();
    let mut body = String::with_capacity(code.len());
    let mut from = 0;
    for (at, _) in words(code).filter(|w| w.1 == "use") {
        // `use<'a>` of a returned type imports nothing.
        let imports = code[at + 3..].starts_with(char::is_whitespace);
        let Some(end) = code[at..].find(';').filter(|_| imports && at >= from) else { continue };
        tree(&[], code[at + 3..at + end].trim(), &mut out);
        body.push_str(&code[from..at]);
        from = at + end;
    }
    body.push_str(&code[from..]);
    // How far something is seen imports nothing either.
    let body = body.replace("pub(in ", "pub( ").replace("pub( crate::", "pub(");
    let mut path: Vec<String> = Vec::new();
    let mut last = 0;
    for (at, word) in words(&body) {
        if path.is_empty() || &body[last..at] != "::" {
            out.extend(Some(std::mem::take(&mut path)).filter(|p| p.len() > 1));
        }
        path.push(word.to_owned());
        last = at + word.len();
    }
    out.extend(Some(path).filter(|p| p.len() > 1));
    out
}

/// What one `use` names: its tree of braces as single paths.
fn tree(above: &[String], text: &str, out: &mut Vec<Vec<String>>) {
    let Some((before, inside)) = text.split_once('{') else {
        let name = text.split(" as ").next().unwrap_or(text);
        let own = name.split("::").map(|w| w.trim().to_owned()).filter(|w| !w.is_empty());
        out.extend(
            Some(above.iter().cloned().chain(own).collect()).filter(|p: &Vec<_>| !p.is_empty()),
        );
        return;
    };
    let head = before.split("::").map(|w| w.trim().to_owned()).filter(|w| !w.is_empty());
    let head: Vec<String> = above.iter().cloned().chain(head).collect();
    let inside = inside.trim_end().trim_end_matches('}');
    let (mut depth, mut from) = (0, 0);
    for (i, c) in inside.char_indices() {
        depth += i32::from(c == '{') - i32::from(c == '}');
        if c == ',' && depth == 0 {
            tree(&head, inside[from..i].trim(), out);
            from = i + 1;
        }
    }
    tree(&head, inside[from..].trim(), out);
}

/// A path as written from the crate's root; none for one of another crate or of a type.
fn absolute(module: &[String], path: &[String], modules: &Modules) -> Option<Vec<String>> {
    let first = path.first()?.as_str();
    let mut base = module.to_vec();
    let mut rest = path;
    match first {
        "crate" => {
            base.clear();
            rest = &path[1..];
        }
        "super" | "self" => {
            while let Some(word) = rest.first().filter(|w| *w == "super" || *w == "self") {
                if word == "super" {
                    base.pop();
                }
                rest = &rest[1..];
            }
        }
        name => {
            let child: Vec<String> = module.iter().cloned().chain([name.to_owned()]).collect();
            modules.0.get(&child)?;
        }
    }
    base.extend(rest.iter().filter(|w| *w != "self").cloned());
    Some(base)
}
