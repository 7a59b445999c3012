//! Files as one archive, by `zip`: no time and no rights of a machine in it, so that equal files make equal
//! bytes.

use std::io::{Cursor, Write};

use zip::write::{SimpleFileOptions, ZipWriter};
use zip::{CompressionMethod, DateTime};

/// An archive of files by their paths. Files that do not fit into one are left out of it.
pub fn archive(files: &[(String, Vec<u8>)]) -> Vec<u8> {
    let how = SimpleFileOptions::default()
        .compression_method(CompressionMethod::Deflated)
        .last_modified_time(DateTime::default());
    let mut out = ZipWriter::new(Cursor::new(Vec::new()));
    for (path, bytes) in files {
        if out.start_file(path.as_str(), how).is_ok() {
            let _ = out.write_all(bytes);
        }
    }
    out.finish().map(Cursor::into_inner).unwrap_or_default()
}
