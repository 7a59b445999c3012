//! The DWG reader: any bytes behind a version give a drawing within the limits, the same twice, or a
//! refusal; and so do bytes put into the unpacked objects of a house, whose checks are then mended.
#![no_main]

mod shared;

use libfuzzer_sys::fuzz_target;
use opendwg::container::{self, SectionName};

/// A house as a DWG.
const HOUSE: &[u8] = include_bytes!("../../samples/house.dwg");

/// The house with three bytes of the input for each change: where in its objects, of two, and what.
fn changed(bytes: &[u8]) -> Option<Vec<u8>> {
    let mut raw = container::read(HOUSE).ok()?;
    let objects = raw.sections.get_mut(&SectionName::Objects)?;
    let len = objects.len();
    for change in bytes.chunks_exact(3) {
        let at = usize::from(u16::from_be_bytes([change[0], change[1]])) % len;
        objects[at] = change[2];
    }
    container::write_r2018(&raw).ok()
}

fuzz_target!(|bytes: &[u8]| {
    let mut file = b"AC10".to_vec();
    file.extend(bytes.strip_prefix(b"AC10").unwrap_or(bytes));
    shared::read_twice(&file, "fuzz.dwg");
    if let Some(file) = changed(bytes) {
        shared::read_twice(&file, "fuzz.dwg");
    }
});
