//! The library built for a browser, and put into its page with all that it needs.

use std::ffi::OsString;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::Command;

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use flate2::Compression;
use flate2::write::GzEncoder;
use wasm_bindgen_cli_support::{Bindgen, EncodeInto};

use super::terminal::tell_line;
use crate::finding::Refusal;
use crate::finding::files::{FileFinding, PageFault};
use crate::wording::command;
use crate::write::page;

/// What a browser runs.
const TARGET: &str = "wasm32-unknown-unknown";
/// What the page does: everything but the command, on one core.
const FEATURES: &str = "browser,dwg,pdf-in,pdf,png,xlsx";
/// Most stack the program may take, bytes: as much as a thread of the command has.
const STACK: &str = "link-arg=-zstack-size=8388608";

fn failed(fault: PageFault) -> Refusal {
    Refusal::new(FileFinding::PageNotMade { fault })
}

/// The page.
///
/// # Errors
/// `page-not-made`, with why.
pub(super) fn page() -> Result<String, Refusal> {
    let source = source().ok_or_else(|| failed(PageFault::NoSource))?;
    let into = source.join("target").join("page");
    tell_line(command::BUILDING_PAGE);
    build(&source, &into)?;
    let library = into.join(TARGET).join("release").join("lapwright.wasm");
    let (script, program) =
        bound(&library).map_err(|tool_says| failed(PageFault::NotBound { tool_says }))?;
    let packed =
        packed(&program).map_err(|e| failed(PageFault::NotBound { tool_says: e.to_string() }))?;
    Ok(page::page(&script, &STANDARD.encode(packed), |s| {
        STANDARD.encode(crate::fingerprint::digest(s.as_bytes()))
    }))
}

/// The folder of the source: cargo's own word for it, else the first above the working folder.
fn source() -> Option<PathBuf> {
    let is_it = |p: &Path| {
        let text = std::fs::read_to_string(p.join("Cargo.toml")).unwrap_or_default();
        text.lines().any(|l| l == "name = \"lapwright\"")
    };
    let told = std::env::var_os("CARGO_MANIFEST_DIR").map(PathBuf::from);
    let here = std::env::current_dir().ok();
    let above = here.iter().flat_map(|p| p.ancestors()).map(Path::to_owned);
    told.into_iter().chain(above).find(|p| is_it(p))
}

fn build(source: &Path, into: &Path) -> Result<(), Refusal> {
    let cargo = std::env::var_os("CARGO").unwrap_or_else(|| OsString::from("cargo"));
    let ended = Command::new(cargo)
        .args(["rustc", "--locked", "--release", "--lib", "--crate-type", "cdylib"])
        .args(["--no-default-features", "--features", FEATURES, "--target", TARGET])
        .arg("--manifest-path")
        .arg(source.join("Cargo.toml"))
        .args(["--", "-C", STACK])
        .env("CARGO_TARGET_DIR", into)
        // A page that panics is started anew; what would unwind makes it a third larger.
        .env("CARGO_PROFILE_RELEASE_PANIC", "abort")
        .env("CARGO_PROFILE_RELEASE_STRIP", "symbols")
        .status();
    match ended {
        Err(e) => Err(failed(PageFault::NoCargo { system_says: e.to_string() })),
        Ok(s) if s.success() => Ok(()),
        Ok(_) => Err(failed(PageFault::NotBuilt { target: TARGET.to_owned() })),
    }
}

/// The script that binds the library to a page, and the library as it is bound.
fn bound(library: &Path) -> Result<(String, Vec<u8>), String> {
    let mut tool = Bindgen::new();
    let words = |e: &dyn std::fmt::Display| e.to_string();
    tool.input_path(library).typescript(false).encode_into(EncodeInto::Always);
    tool.no_modules(true).map_err(|e| words(&e))?;
    let mut made = tool.generate_output().map_err(|e| words(&e))?;
    let program = made.wasm_mut().emit_wasm();
    Ok((made.js().to_owned(), program))
}

fn packed(program: &[u8]) -> std::io::Result<Vec<u8>> {
    let mut out = GzEncoder::new(Vec::new(), Compression::best());
    out.write_all(program)?;
    out.finish()
}
