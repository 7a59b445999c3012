//! Text to layout to every output: nothing panics, every number is finite, the layout's JSON and the
//! overlay can be read again, and the overlay keeps all of the source.
#![no_main]

mod drawn;
mod shared;

use lapwright::diag::Notes;
use lapwright::job::Job;
use lapwright::model::drawing::Drawing;
use lapwright::model::layout::Layout;
use lapwright::pipeline;
use lapwright::read::{self, Limits};
use libfuzzer_sys::{Corpus, fuzz_target};

/// Findings that say a limit was met: such a drawing is slow under the program's own limits.
const LIMITS: [&str; 5] =
    ["items-too-many", "points-too-many", "vertices-too-many", "hatch-loops", "svg-too-big"];

fuzz_target!(|bytes: &[u8]| -> Corpus {
    // A text that may be a drawing is one; other bytes are shapes.
    let text = matches!(bytes.first(), Some(b'0' | b' ' | b'<' | b'\n' | b'\r'));
    if text {
        run(&drawn::quick(), bytes)
    } else {
        let (job, dxf) = drawn::drawn(bytes);
        run(&job, dxf.as_bytes())
    }
});

fn run(job: &Job, source: &[u8]) -> Corpus {
    if job.validate().is_err() {
        return Corpus::Reject;
    }
    let mut notes = Notes::default();
    let Ok(drawing) = read::drawing(source, "f.dxf", &shared::limits(), &mut notes) else {
        return Corpus::Keep;
    };
    if notes.all().iter().any(|n| LIMITS.contains(&n.code)) {
        return Corpus::Reject;
    }
    let _ = pipeline::problems(&drawing, &notes);
    let mut notes = Notes::default();
    let Ok(sets) = pipeline::layouts(source, "f.dxf", job, &mut notes, &mut |_| {}) else {
        return Corpus::Keep;
    };
    for set in &sets {
        written(set, &drawing, source);
    }
    Corpus::Keep
}

/// Writes one set and reads back what can be read.
fn written(layout: &Layout, drawing: &Drawing, source: &[u8]) {
    // Pictures take a thousand times longer than the rest: now and then only.
    let pictures = source.len() % 509 == 0;
    let outputs = pipeline::outputs(layout, source, pictures).expect("outputs");
    let find = |name: &str| &outputs.iter().find(|o| o.0 == name).expect(name).1;
    let json: serde_json::Value = serde_json::from_slice(find("layout.json")).expect("JSON");
    finite(&json["elevations"]);
    finite(&json["panels"]);
    finite(&json["trims"]);
    let overlay = find("overlay.dxf");
    let read = read::drawing(overlay, "o.dxf", &Limits::default(), &mut Notes::default());
    let read = read.expect("the overlay is read");
    if source.first() != Some(&b'<') {
        assert!(read.items.len() >= drawing.items.len(), "the overlay lost some of the source");
    }
}

/// JSON has no word for a number that is not finite: it would stand as null.
fn finite(value: &serde_json::Value) {
    match value {
        serde_json::Value::Array(list) => list.iter().for_each(|v| {
            assert!(!v.is_null(), "a null in a list: {list:?}");
            finite(v);
        }),
        serde_json::Value::Object(map) => map.values().for_each(finite),
        _ => {}
    }
}
