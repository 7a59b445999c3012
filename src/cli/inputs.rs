//! What results follow from, as one fingerprint: the same means that a run would write the same again.

use std::fs::File;
use std::io::{Read, Seek, SeekFrom};
use std::sync::OnceLock;

use super::args::{Layout, Overlay};
use super::loading::Loaded;
use crate::fingerprint::sha256;

/// The fingerprint of a house's inputs: this program, the drawing, every file of the job, the price list and the
/// options that change what is written.
pub(super) fn fingerprint(loaded: &Loaded, prices: Option<&[u8]>, a: &Layout) -> String {
    let mut said = vec![program().to_owned(), loaded.name.clone(), sha256(&loaded.bytes)];
    said.extend(loaded.files.iter().map(|f| sha256(f.text.as_bytes())));
    said.push(prices.map_or_else(String::new, sha256));
    // Paper, scale, a known distance and pages are in the job by now, over what its file says.
    let sheet = &loaded.job.sheet;
    let drawing = &loaded.job.drawing;
    said.push(format!("{:?} {:?}", sheet.paper, sheet.scale));
    said.push(format!("{:?} {:?} {:?}", drawing.known, drawing.pages, loaded.job.taped));
    said.push(format!("{} {}", a.no_pictures, a.overlay == Overlay::Separate));
    sha256(said.join("\n").as_bytes())
}

/// This program: its version, its size and a sample of its bytes, since reading all of them would take longer
/// than a small house.
fn program() -> &'static str {
    static PROGRAM: OnceLock<String> = OnceLock::new();
    PROGRAM.get_or_init(|| {
        let version = env!("CARGO_PKG_VERSION");
        let sampled = sampled().unwrap_or_default();
        format!("{version} {sampled}")
    })
}

/// Blocks of the program that are looked at, and the bytes of each.
const BLOCKS: u64 = 256;
const BLOCK: u64 = 4096;

fn sampled() -> std::io::Result<String> {
    let mut file = File::open(std::env::current_exe()?)?;
    let size = file.metadata()?.len();
    let mut bytes = size.to_le_bytes().to_vec();
    let step = (size / BLOCKS).max(BLOCK);
    let mut at = 0;
    while at < size {
        file.seek(SeekFrom::Start(at))?;
        file.by_ref().take(BLOCK).read_to_end(&mut bytes)?;
        at += step;
    }
    Ok(sha256(&bytes))
}
