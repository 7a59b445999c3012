//! The DXF reader: any bytes give a drawing within the limits, the same twice, or a refusal.
#![no_main]

mod shared;

use libfuzzer_sys::fuzz_target;

fuzz_target!(|bytes: &[u8]| {
    shared::read_twice(bytes, "fuzz.dxf");
});
