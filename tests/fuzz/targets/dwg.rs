//! The DWG reader: any bytes behind a version give a drawing within the limits, the same twice, or a
//! refusal.
#![no_main]

mod shared;

use libfuzzer_sys::fuzz_target;

fuzz_target!(|bytes: &[u8]| {
    let mut file = b"AC10".to_vec();
    file.extend(bytes.strip_prefix(b"AC10").unwrap_or(bytes));
    shared::read_twice(&file, "fuzz.dwg");
});
