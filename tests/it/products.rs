//! Every kind of siding on the samples: all rules kept, counted again, told in its own words.

use lapwright::cli::job_file;
use lapwright::job::Job;
use lapwright::model::layout::Layout;
use lapwright::model::seam::Effort;

use crate::support::{broken, dxf, inches, lay, rect, root};

fn read(name: &str) -> Job {
    let path = root().join("sample-drawings").join(name);
    let mut job = job_file::parse(&std::fs::read_to_string(path).unwrap(), name).unwrap();
    job.seams.effort = Effort::Brief;
    job
}

fn laid(stem: &str, job: &Job) -> Layout {
    let path = root().join("sample-drawings").join(format!("{stem}.dxf"));
    lay(&std::fs::read(path).unwrap(), job)
}

/// Every rule kept, every quantity counted again.
fn sound(name: &str, layout: &Layout) {
    assert_eq!(broken(layout), Vec::<String>::new(), "{name}");
    crate::recount::check(&crate::recount::written(layout), name);
}

#[test]
fn plain_vinyl_on_the_samples() {
    let job = read("vinyl.toml");
    for stem in ["curlew-cottage", "one-gable", "one-window"] {
        let layout = laid(stem, &job);
        sound(stem, &layout);
        // SD-70 (VSI-H): half of a factory notch of 2 in.
        assert!(layout.pieces().all(|(_, c, ..)| c.top - c.bottom == 12.0));
        for (_, _, r, _) in layout.pieces() {
            for pair in r.pieces.windows(2) {
                assert!((pair[0].x1 - pair[1].x0 - 1.0).abs() < 1e-9);
            }
        }
        let takeoff = lapwright::takeoff::quantities(&layout);
        let report = lapwright::write::report::text(&layout, &takeoff);
        let words: Vec<&str> = report.split_whitespace().collect();
        let words = words.join(" ");
        assert!(words.contains("vinyl lap siding, triple 4\""), "{report}");
        assert!(!words.contains("foam to foam"), "{report}");
        let nails = takeoff.lines.iter().find(|l| l.id == "panel-nails").unwrap();
        // SD-38 (HAB): 1 1/2 to 2 in.
        assert!(nails.item.ends_with("1 1/2\""), "{}", nails.item);
    }
}

#[test]
fn plain_vinyl_takes_fewer_seams_of_less_lap() {
    // WY-01, lap 1 in: 25 ft take three panels of 12 ft 6 in; WY-03: 28 ft three, 40 ft four.
    let mut job = inches();
    job.product = job_file::parse("[product]\nkind = \"vinyl\"\n", "job").unwrap().product;
    for (feet, pieces) in [(25.0, 3), (28.0, 3), (40.0, 4)] {
        let wall = rect(0.0, 0.0, feet * 12.0, 8.0);
        let layout = lay(dxf(&[("A-WALL-OTLN", &wall)]).as_bytes(), &job);
        assert_eq!(layout.pieces().count(), pieces, "{feet}");
        sound("WY", &layout);
    }
}

#[test]
fn a_long_panel_asks_for_its_gap() {
    // SD-52 (VSI-H): from 20 ft on the maker states a larger gap.
    let warned = |text: &str| {
        let mut job = job_file::parse(text, "job").unwrap();
        job.seams.effort = Effort::Crew;
        job.drawing.unit = Some(lapwright::units::Unit::Inch);
        let wall = rect(0.0, 0.0, 400.0, 8.0);
        let layout = lay(dxf(&[("A-WALL-OTLN", &wall)]).as_bytes(), &job);
        assert_eq!(broken(&layout), Vec::<String>::new());
        layout
            .notes
            .iter()
            .any(|n| n.code == "long-panel-gap" && n.help.contains("`product.end_gap`"))
    };
    assert!(warned("[product]\nlength = 240\n"));
    assert!(!warned("[product]\nlength = 239\n"));
    assert!(!warned("[product]\nlength = 240\nend_gap = 0.375\n"));
}

#[test]
fn what_contradicts_itself_is_refused_by_its_key() {
    for (text, key, place) in [
        ("[product]\nexposure = 8\nfaces = 2\nface_height = 5\n", "product.face_height", ":4:"),
        ("[product]\nkind = \"vinyl\"\nfoam_set_back = 0.5\n", "product.foam_set_back", ":3:"),
        ("[product]\nkind = \"tin\"\n", "tin", ":2:"),
    ] {
        let e = job_file::parse(text, "job.toml").unwrap_err().to_string();
        assert!(e.contains(key) && e.contains(place), "{e}");
    }
}
