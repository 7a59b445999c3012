//! Text to layout to every output: nothing panics, every number is finite, the layout's JSON and the
//! overlay can be read again, and the overlay keeps all of the source.

use lapwright::finding::Findings;
use lapwright::job::Job;
use lapwright::layout::set::LaidSet;
use lapwright::model::drawing::Drawing;
use lapwright::pipeline;
use lapwright::read::{self, Limits};
use lapwright::units::LengthStyle;

use super::{drawn, shared};

/// Findings that say a limit was met: such a drawing is slow under the program's own limits.
const LIMITS: [&str; 5] =
    ["items-too-many", "points-too-many", "vertices-too-many", "hatch-loops", "svg-too-big"];

/// Takes bytes through the whole program; false where they are not worth keeping.
pub(crate) fn through(bytes: &[u8]) -> bool {
    // A text that may be a drawing is one; other bytes are shapes.
    let text = matches!(bytes.first(), Some(b'0' | b' ' | b'<' | b'\n' | b'\r'));
    if text {
        run(&drawn::quick(), bytes)
    } else {
        let (job, dxf) = drawn::drawn(bytes);
        run(&job, dxf.as_bytes())
    }
}

/// Takes shapes with a job through the whole program.
pub(crate) fn with_job(job: &Job, bytes: &[u8]) -> bool {
    let (_, dxf) = drawn::drawn(bytes);
    let mut job = job.clone();
    job.seams.effort = lapwright::model::seam::Effort::Crew;
    run(&job, dxf.as_bytes())
}

fn run(job: &Job, source: &[u8]) -> bool {
    if job.validate().is_err() {
        return false;
    }
    let mut notes = Findings::default();
    let Ok(drawing) = read::drawing(source, "f.dxf", &shared::limits(), &mut notes) else {
        return true;
    };
    if notes.all().iter().any(|n| LIMITS.contains(&n.code().word())) {
        return false;
    }
    let _ = lapwright::outputs::problems::problems(
        &drawing,
        &Default::default(),
        &notes,
        LengthStyle::Feet,
    );
    let mut notes = Findings::default();
    let Ok(sets) = pipeline::layout(source, "f.dxf", job, &mut notes, &mut |_| {}) else {
        return true;
    };
    for set in sets.iter() {
        written(set, &drawing, source);
    }
    true
}

/// Writes one set and reads back what can be read.
fn written(set: &LaidSet, drawing: &Drawing, source: &[u8]) {
    // Pictures take a thousand times longer than the rest: now and then only.
    let pictures = source.len().is_multiple_of(509);
    let outputs = lapwright::outputs::set::files(set, source, pictures).expect("outputs");
    let find = |name: &str| &outputs.iter().find(|o| o.0 == name).expect(name).1;
    // A figure that is not finite would be written as null, and not be read.
    let back = read::layout_json::layout(find("layout.json")).expect("the layout is read");
    assert!(back == set.layout, "the layout is not read back as it was written");
    let overlay = find("overlay.dxf");
    let read = read::drawing(overlay, "o.dxf", &Limits::default(), &mut Findings::default());
    let read = read.expect("the overlay is read");
    // What took no splice is said to be apart.
    if source.first() != Some(&b'<') && lapwright::write::overlay::takes(source).is_ok() {
        assert!(read.items.len() >= drawing.items.len(), "the overlay lost some of the source");
    }
}
