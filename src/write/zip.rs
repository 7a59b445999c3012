//! Files as one archive, by `zip`: no time and no rights of a machine in it, so that equal files make equal
//! bytes.

use std::io::{Cursor, Write};

use zip::write::{SimpleFileOptions, ZipWriter};
use zip::{CompressionMethod, DateTime};

/// An archive of files by their paths; none where they do not fit into one.
pub fn archive(files: &[(String, Vec<u8>)]) -> Option<Vec<u8>> {
    let how = SimpleFileOptions::default()
        .compression_method(CompressionMethod::Deflated)
        .last_modified_time(DateTime::default());
    let mut out = ZipWriter::new(Cursor::new(Vec::new()));
    for (path, bytes) in files {
        out.start_file(path.as_str(), how).ok()?;
        out.write_all(bytes).ok()?;
    }
    Some(out.finish().ok()?.into_inner())
}
