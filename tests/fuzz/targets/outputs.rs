//! Text to layout to every output; what must hold is in `whole`.
#![no_main]

mod drawn;
mod shared;
mod whole;

use libfuzzer_sys::{Corpus, fuzz_target};

fuzz_target!(|bytes: &[u8]| -> Corpus {
    if whole::through(bytes) { Corpus::Keep } else { Corpus::Reject }
});
