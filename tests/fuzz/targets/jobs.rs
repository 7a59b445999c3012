//! Settings from the whole schema of the job file, over shapes, through the layout to every output: eight
//! bytes are the seed of the settings, the rest a job of its own, passed over, and shapes as in `drawn`.
#![no_main]

mod drawn;
#[path = "../../jobcase/mod.rs"]
mod jobcase;
mod shared;
mod whole;

use libfuzzer_sys::{Corpus, fuzz_target};

fuzz_target!(|bytes: &[u8]| -> Corpus {
    let Some((seed, shapes)) = bytes.split_first_chunk::<8>() else { return Corpus::Reject };
    let job = jobcase::settings_of(u64::from_le_bytes(*seed));
    if whole::with_job(&job, shapes) { Corpus::Keep } else { Corpus::Reject }
});
