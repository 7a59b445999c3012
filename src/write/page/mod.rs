//! The page that holds the whole program: from one file, without network. Words come from `wording`, what it
//! does from the scripts beside this file, the program itself packed as text.

use super::review;
use super::review::html::escaped;
use crate::language::Language;
use crate::wording::{cautions, page as words};

const BODY: &str = include_str!("page.html");
const STYLE: &str = include_str!("page.css");
const WORKER: &str = include_str!("worker.js");
/// What the page does, in the order in which one part needs the other.
const PARTS: [&str; 10] = [
    include_str!("first.js"),
    include_str!("store.js"),
    include_str!("program.js"),
    include_str!("board.js"),
    include_str!("tools.js"),
    include_str!("settings.js"),
    include_str!("panels.js"),
    include_str!("results.js"),
    include_str!("work.js"),
    include_str!("last.js"),
];

/// The page: `binding` is the script that binds the library, `program` the library packed by gzip as base64,
/// `digest` the SHA-256 of a script as base64, by which alone scripts are let run.
pub fn page(binding: &str, program: &str, digest: impl Fn(&str) -> String) -> String {
    let script = PARTS.concat();
    let policy = policy(&[&script, review::SCRIPT], digest);
    let words: String = serde_json::to_string(&words::all()).unwrap_or_default();
    format!(
        "<!DOCTYPE html>\n<html lang=\"en\" data-look=\"\"><head><meta charset=\"utf-8\">\
         <meta http-equiv=\"Content-Security-Policy\" content=\"{policy}\">\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\
         <title>{}</title><link rel=\"icon\" href=\"data:,\"><style>{STYLE}</style></head>\n<body>{}\
         <script type=\"application/json\" id=\"words\">{}</script>\
         <script type=\"text/plain\" id=\"worker\">{WORKER}</script>\
         <script type=\"text/plain\" id=\"binding\">{}</script>\
         <script type=\"text/plain\" id=\"program\">{program}</script>\
         <script>{script}</script></body></html>\n",
        words::TITLE,
        body(),
        words.replace('<', "\\u003c"),
        binding.replace("</", "<\\/"),
    )
}

/// Nothing is fetched and nothing is sent, whatever stands in the page.
fn policy(scripts: &[&str], digest: impl Fn(&str) -> String) -> String {
    let allowed: String = scripts.iter().map(|s| format!(" 'sha256-{}'", digest(s))).collect();
    format!(
        "default-src 'none'; connect-src 'none'; style-src 'unsafe-inline'; img-src data: blob:; \
         script-src{allowed} 'wasm-unsafe-eval'; worker-src blob:; frame-src blob:; \
         base-uri 'none'; form-action 'none'"
    )
}

/// The page's elements with their words.
fn body() -> String {
    let mut out = BODY.to_owned();
    for (key, text) in words::all() {
        out = out.replace(&format!("{{{{{key}}}}}"), &escaped(text));
    }
    let mut all = String::from("<ul>");
    for said in cautions::of_all() {
        all.push_str(&format!("<li>{}</li>", escaped(said.en)));
    }
    out.replace(
        "{{{cautions}}}",
        &format!("{all}</ul><p>{}</p>", escaped(&cautions::notice(Language::English))),
    )
}
