//! Inputs that ask for more than any house does, in a small size: each ends with its named finding or a
//! layout. `cargo bench --bench limits` gives the large ones to the program, with time and memory.

use lapwright::finding::Findings;
use lapwright::job::file as job_file;
use lapwright::pipeline;
use lapwright::read::{self, Limits};

use crate::hostile::{Case, Ends, cases};

/// Limits as much smaller as the inputs are.
fn small() -> Limits {
    Limits {
        items: 20_000,
        insertions: 5_000,
        vertices: 20_000,
        points: 100_000,
        loops: 500,
        layers: 5_000,
        spline_steps: 2_000_000,
        elements: 5_000,
        ..Limits::default()
    }
}

/// The codes of everything found, that of the refusal last; whether a layout came of it.
fn run(case: &Case) -> (Vec<&'static str>, bool) {
    let input = (case.make)(case.quick);
    let codes = |notes: &Findings| notes.all().iter().map(|n| n.code().word()).collect::<Vec<_>>();
    let (drawing, text) = match case.kind {
        "toml" => {
            let wall = crate::support::rect(0.0, 0.0, 240.0, 96.0);
            let wall = crate::support::dxf(&[("A-WALL-OTLN", &wall)]).into_bytes();
            (wall, String::from_utf8(input).unwrap())
        }
        _ => (input, case.job.to_owned()),
    };
    let job = match job_file::parse(&text, "job.toml") {
        Ok(job) => job,
        Err(r) => return (vec![r.0.code().word()], false),
    };
    // What meets a limit does so with smaller ones; it would take long to lay out with the large.
    let mut notes = Findings::default();
    if let Err(r) = read::drawing(&drawing, "d", &small(), &mut notes) {
        return ([codes(&notes), vec![r.0.code().word()]].concat(), false);
    }
    let met = ["items-too-many", "points-too-many", "vertices-too-many", "block-nesting"];
    if notes.all().iter().any(|n| met.contains(&n.code().word())) {
        return (codes(&notes), false);
    }
    let mut notes = Findings::default();
    match pipeline::layout(&drawing, "d", &job, &mut notes, &mut |_| {}) {
        // Rules broken are told by the layout itself: here only that there is one.
        Ok(_) => (codes(&notes), true),
        Err(r) => ([codes(&notes), vec![r.0.code().word()]].concat(), false),
    }
}

#[test]
fn each_ends_with_its_finding_or_a_layout() {
    let mut wrong = Vec::new();
    // Where no threads are to be had is tried in `raised`.
    for case in cases().into_iter().filter(|c| !c.one_thread) {
        let (found, laid) = run(&case);
        // A wall is refused at ten thousand corners, or a thousand feet: the small ones are laid out.
        let small_wall = matches!(
            &case.ends,
            Ends::Refused(c) if c[0].starts_with("wall-too-") || c[0] == "walls-too-many"
        );
        let right = match &case.ends {
            Ends::Laid => laid,
            Ends::Told(codes) => found.iter().any(|f| codes.contains(f)),
            Ends::Refused(_) if small_wall && laid => true,
            Ends::Refused(codes) => !laid && found.iter().any(|f| codes.contains(f)),
        };
        if !right {
            wrong.push(format!("{}: laid out: {laid}; found: {found:?}", case.name));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn walls_beyond_any_house_are_refused_by_what_is_too_much() {
    let refused = |make: fn(usize) -> Vec<u8>, n: usize| {
        let job = crate::support::inches();
        let r = pipeline::reading(&make(n), "d", &job, &mut Findings::default()).unwrap_err();
        (r.0.code().word(), crate::support::said(&r.0))
    };
    let of = |name: &str| cases().into_iter().find(|c| c.name == name).unwrap().make;
    let (code, message) = refused(of("wall of 100,000 vertices, round"), 10_001);
    assert!(code == "wall-too-fine" && message.contains("10001 corners"), "{message}");
    let (code, message) = refused(of("wall ten miles long"), 12_024);
    assert!(code == "wall-too-big" && message.contains("1002'-0\" wide"), "{message}");
}
