//! What the fuzz targets found, each as small as it gets.

use lapwright::job::Job;

#[test]
fn the_echo_of_a_job_reads_as_that_job() {
    // Lengths left out stand as null in `layout.json`.
    let job = Job::default();
    let echo = serde_json::to_string(&job).unwrap();
    let back: Job = serde_json::from_str(&echo).unwrap();
    assert_eq!(back, job);
}

#[test]
fn a_binary_file_cut_off_inside_a_pair_ends_there() {
    // A text without its end, then a number without its bytes: reading on found pairs in the rest.
    for rest in [&b"\0\0SECTION"[..], b"\x0a\0\0\0SECTION\0"] {
        let mut bytes = lapwright::read::dxf::tags::BINARY_MAGIC.to_vec();
        bytes.extend(b"\0\0EOF\0");
        bytes.extend(rest);
        // Cut so that the last pair lacks bytes whichever way it is read.
        bytes.truncate(bytes.len() - usize::from(rest[0] == 0x0a) * 6);
        let mut tags = lapwright::read::dxf::tags::Tags::new(&bytes);
        assert_eq!(tags.by_ref().count(), 1);
        assert!(tags.cut_off && tags.next().is_none() && tags.next().is_none());
    }
}

#[test]
fn an_overlay_that_is_no_copy_of_its_source_is_told() {
    use lapwright::finding::Findings;
    let wall = crate::support::rect(0.0, 0.0, 240.0, 96.0);
    let whole = crate::support::dxf(&[("A-WALL-OTLN", &wall)]);
    let told = |source: &str| {
        let mut notes = Findings::default();
        let job = crate::support::inches();
        lapwright::pipeline::layout(source.as_bytes(), "d.dxf", &job, &mut notes, &mut |_| {})
            .unwrap();
        notes.all().iter().filter(|n| n.code().word() == "overlay-apart").count()
    };
    assert_eq!(told(&whole), 0);
    // The section of entities has no end.
    assert_eq!(told(&whole.replace("0\nENDSEC\n", "")), 1);
}

#[test]
fn an_outline_without_area_is_no_wall() {
    // Two points, a third between them; and a frame round it, so that it is somebody's.
    let source = crate::support::dxf(&[
        ("A-WALL-OTLN", &[(100.0, 50.0), (340.0, 50.0), (370.0, 50.0)]),
        ("A-ELEV-FRAM", &crate::support::rect(40.0, -60.0, 400.0, 214.0)),
    ]);
    let refused = lapwright::pipeline::layout(
        source.as_bytes(),
        "d.dxf",
        &crate::support::inches(),
        &mut lapwright::finding::Findings::default(),
        &mut |_| {},
    );
    assert!(refused.is_err(), "{:?}", refused.map(|s| s.house.layout.elevations.len()));
}

#[test]
fn boards_without_clear_courses_are_checked() {
    // A range from the next course up to this one: none, not a panic.
    let text =
        "[drawing]\nunit = \"inch\"\n[product]\nkind = \"wood\"\n[seams]\nclear_courses = 0\n";
    let job = lapwright::job::file::parse(text, "job").unwrap();
    let wall = crate::support::rect(0.0, 0.0, 480.0, 40.0);
    let layout =
        crate::support::lay(crate::support::dxf(&[("A-WALL-OTLN", &wall)]).as_bytes(), &job);
    assert_eq!(crate::support::broken(&layout), Vec::<String>::new());
}
