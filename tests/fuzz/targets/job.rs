//! The job file: any text gives a job that is its own echo and in range, or a refusal with a place.
#![no_main]

use lapwright::job::file::parse;
use lapwright::units::LengthStyle;
use lapwright::wording::findings::words;
use libfuzzer_sys::fuzz_target;

fuzz_target!(|bytes: &[u8]| {
    let text = String::from_utf8_lossy(bytes);
    match parse(&text, "j.toml") {
        Ok(job) => {
            assert!(job.validate().is_ok(), "a job out of range was taken");
            let echo = serde_json::to_string(&job).expect("a job is plain data");
            let back: lapwright::job::Job = serde_json::from_str(&echo).expect("its own echo");
            assert!(back == job, "the echo differs: {echo}");
        }
        Err(e) => {
            let words = words(&e.0, LengthStyle::Feet);
            assert!(words.message.starts_with("j.toml"), "no place: {words:?}");
            assert!(!words.help.is_empty(), "no help: {words:?}");
        }
    }
});
