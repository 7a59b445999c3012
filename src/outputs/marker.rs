//! The list of files that a run leaves beside its results: what lies in the folder and is on the list,
//! unchanged, is the program's own, and nothing else is. Written as `sha256sum` writes its lists, so that
//! whoever likes can check a folder by it.

use std::collections::BTreeMap;

use super::file::OutputFile;
use super::paths::is_inside;
use crate::clean::terminal;
use crate::fingerprint::sha256;
use crate::wording::command::ABOUT_MARKER;

/// Name of the list.
pub const MARKER: &str = "lapwright-files.sha256";
/// Its first line.
const FORMAT: &str = "# lapwright-files/1";
/// Begins the line with the drawing.
const DRAWING: &str = "# drawing: ";

/// Begins the line with the fingerprint of what the results were made of.
const MADE_OF: &str = "# made of: ";

/// What runs have written into a folder.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Marker {
    /// The drawing that is laid out there, as its folder tells it from others.
    pub drawing: Option<String>,
    /// Fingerprint of all that the results follow from: program, drawing, job, prices, options.
    pub made_of: Option<String>,
    /// SHA-256 of each file, by its path in the folder, with slashes.
    pub files: BTreeMap<String, String>,
}

impl Marker {
    /// The list of these files.
    pub fn of<'a>(files: impl IntoIterator<Item = &'a OutputFile>) -> Self {
        let hashed = files.into_iter().map(|(name, bytes)| (name.clone(), sha256(bytes)));
        Marker { files: hashed.collect(), ..Marker::default() }
    }

    /// The same with the drawing that they are of.
    pub fn of_drawing(self, drawing: &str) -> Self {
        // One line, so that it reads back as written.
        Marker { drawing: Some(terminal(drawing)), ..self }
    }

    /// The same with the fingerprint of what they were made of.
    pub fn made_of(self, fingerprint: Option<&str>) -> Self {
        Marker { made_of: fingerprint.map(terminal), ..self }
    }

    /// As it stands in the folder.
    pub fn text(&self) -> String {
        let mut out = format!("{FORMAT}\n# {ABOUT_MARKER}\n");
        if let Some(drawing) = &self.drawing {
            out.push_str(&format!("{DRAWING}{drawing}\n"));
        }
        if let Some(made_of) = &self.made_of {
            out.push_str(&format!("{MADE_OF}{made_of}\n"));
        }
        for (name, hash) in &self.files {
            out.push_str(&format!("{hash}  {name}\n"));
        }
        out
    }

    /// Reads a list; none where the text is anything else, or names what lies outside its folder.
    pub fn read(text: &[u8]) -> Option<Self> {
        let mut lines = std::str::from_utf8(text).ok()?.lines();
        if lines.next() != Some(FORMAT) {
            return None;
        }
        let mut out = Marker::default();
        for line in lines {
            if let Some(comment) = line.strip_prefix('#') {
                let line = format!("#{comment}");
                let said = |what: &str| line.strip_prefix(what).map(str::to_owned);
                out.drawing = said(DRAWING).or(out.drawing);
                out.made_of = said(MADE_OF).or(out.made_of);
                continue;
            }
            let (hash, name) = line.split_once("  ")?;
            let hex = hash.len() == 64 && hash.bytes().all(|b| b.is_ascii_hexdigit());
            if !hex || !is_inside(name) {
                return None;
            }
            out.files.insert(name.to_owned(), hash.to_lowercase());
        }
        Some(out)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn files() -> Vec<OutputFile> {
        let file = |name: &str, text: &str| (name.to_owned(), text.into());
        vec![file("report.txt", "abc"), file("sheets/01-cover.svg", "")]
    }

    #[test]
    fn a_list_is_read_back_as_written() {
        for drawing in [None, Some("house.dxf"), Some("a b/house  1.dxf"), Some("x\ny")] {
            let list = Marker::of(&files());
            let marker = drawing.map_or(list.clone(), |d| list.of_drawing(d));
            assert_eq!(Marker::read(marker.text().as_bytes()), Some(marker.clone()));
            let marker = marker.made_of(Some("0123abcd"));
            assert_eq!(Marker::read(marker.text().as_bytes()), Some(marker));
        }
        // FIPS 180-4 gives the digest of `abc`; that of nothing is as well known.
        let text = Marker::of(&files()).text();
        for line in [
            "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad  report.txt\n",
            "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855  sheets/01-cover.svg\n",
        ] {
            assert!(text.contains(line), "{text}");
        }
    }

    #[test]
    fn what_is_no_list_or_leads_outside_is_not_taken() {
        let hash = "0".repeat(64);
        let whole = |line: &str| format!("{FORMAT}\n{line}\n");
        assert!(Marker::read(whole(&format!("{hash}  a.txt")).as_bytes()).is_some());
        for bad in [
            format!("{hash}  a.txt\n"),
            whole(&format!("{hash}  ../a.txt")),
            whole(&format!("{hash}  /etc/passwd")),
            whole(&format!("{hash}  C:a.txt")),
            whole(&format!("{hash} a.txt")),
            whole("00  a.txt"),
            whole("mine"),
            String::new(),
        ] {
            assert_eq!(Marker::read(bad.as_bytes()), None, "{bad}");
        }
        assert_eq!(Marker::read(b"\xff\xfe"), None);
    }
}
