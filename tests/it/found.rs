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
