//! The SVG reader: any text gives a drawing within the limits, the same twice, or a refusal.
#![no_main]

mod shared;

use libfuzzer_sys::{Corpus, fuzz_target};

fuzz_target!(|bytes: &[u8]| -> Corpus {
    // Without this most executions would be in the DXF reader.
    if !bytes.windows(4).take(2000).any(|w| w == b"<svg") {
        return Corpus::Reject;
    }
    shared::read_twice(bytes, "fuzz.svg");
    Corpus::Keep
});
