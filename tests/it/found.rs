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
