//! Settings at the ends of their ranges: what is in range is laid right, what no builder means is refused
//! with the range.

use lapwright::job::file as job_file;

use crate::support::{broken, lay, root};

fn job(text: &str) -> String {
    format!("[seams]\neffort = \"crew\"\n{text}")
}

#[test]
fn settings_at_the_ends_of_their_ranges_keep_every_rule() {
    let drawing = std::fs::read(root().join("sample-drawings/curlew-cottage.dxf")).unwrap();
    for text in [
        "shortest = 0\n",
        "[courses]\nclear_of_roof = 12\n",
        "[courses]\nclear_of_roof = 24\n",
        "[courses]\ndatum = 1200\n",
        "[courses]\nnotch_clearance = 1\n[product]\nend_gap = 1\n",
        "[trim]\npost_below = 3\npost_top_gap = 3\n",
        "[trim]\nsurround = 12\n",
        "[trim]\nchannel_face = 6\n",
        "[trim]\nrake_frieze = 12\nfrieze = 12\ncorner_cover = 12\n",
    ] {
        let layout = lay(&drawing, &job_file::parse(&job(text), "job").unwrap());
        assert_eq!(broken(&layout), Vec::<String>::new(), "{text}");
        assert!(layout.pieces().count() > 300, "{text}");
    }
}

#[test]
fn what_no_builder_means_is_refused_with_its_range() {
    for (text, key, most) in [
        ("[trim]\npost_below = 6\n", "trim.post_below", "3"),
        ("[trim]\nsurround = 24\n", "trim.surround", "12"),
        ("[courses]\ndatum = 9000\n", "courses.datum", "1200"),
        ("[product]\nend_gap = 2\n", "product.end_gap", "1"),
    ] {
        let refusal = job_file::parse(&job(text), "job").unwrap_err();
        let words =
            lapwright::wording::findings::words(&refusal.0, lapwright::units::LengthStyle::Feet);
        let said = format!("{} {}", words.message, words.help);
        assert!(said.contains(key) && said.contains(most), "{text}: {said}");
    }
    // Nothing, or a board that is one.
    assert!(job_file::parse("[trim]\nsurround = 0.01\n", "job").is_err());
    assert!(job_file::parse("[trim]\nsurround = 0.5\n", "job").is_ok());
    // No wall round a corner, or one that siding shows on.
    let wall = |width: &str| {
        let text = format!("[[return]]\ncorner = \"wall-1/left\"\nwidth = {width}\n");
        job_file::parse(&text, "job").is_ok()
    };
    assert!(wall("0") && wall("4") && !wall("0.5"));
}
