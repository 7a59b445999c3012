//! Grade drawn as a jagged line: the start steps over it in whole courses, no piece is asked for where none
//! can be nailed, and the check does not ring for it.

use lapwright::job::Job;
use lapwright::layout::Layout;
use lapwright::layout::breach::Breach;
use lapwright::layout::breach::wall::{CourseBreach, FieldBreach};
use lapwright::model::seam::Effort;

use crate::random_sheets::Dice;
use crate::support::{broken, dxf, inches, lay, rect};

/// Courses of 8 in from 0, panels 6 in clear of grade.
fn job() -> Job {
    let mut job = inches();
    job.seams.effort = Effort::Crew;
    job.courses.datum = Some(0.0);
    (job.product.exposure, job.courses.clear_of_grade) = (8.0, 6.0);
    job.courses.stud_spacing = 16.0;
    job
}

/// A drawing with grade as an open line.
fn drawing(rings: &[(&str, &[(f64, f64)])], grade: &[(f64, f64)]) -> String {
    let mut lines = String::from("0\nPOLYLINE\n8\nC-TOPO-PROF\n66\n1\n70\n0\n");
    for (x, y) in grade {
        lines += &format!("0\nVERTEX\n8\nC-TOPO-PROF\n10\n{x}\n20\n{y}\n");
    }
    lines += "0\nSEQEND\n0\nENDSEC\n0\nEOF\n";
    dxf(rings).replace("0\nENDSEC\n0\nEOF\n", &lines)
}

fn wall(grade: &[(f64, f64)]) -> Layout {
    let wall = rect(0.0, 0.0, 480.0, 200.0);
    lay(drawing(&[("A-WALL-OTLN", &wall)], grade).as_bytes(), &job())
}

/// Ends of the runs of a course.
fn runs(l: &Layout, course: i32) -> Vec<(f64, f64)> {
    let courses = l.elevations[0].walls[0].courses.iter().filter(|c| c.index == course);
    courses.flat_map(|c| &c.runs).map(|r| (r.x0, r.x1)).collect()
}

/// Teeth with plumb sides from 20 in under the wall to its foot.
fn teeth(from_to: &[(f64, f64)]) -> Vec<(f64, f64)> {
    let tooth = |(a, b): &(f64, f64)| [(*a, -20.0), (*a, 0.0), (*b, 0.0), (*b, -20.0)];
    let ends = ([(-48.0, -20.0)], [(528.0, -20.0)]);
    ends.0.into_iter().chain(from_to.iter().flat_map(tooth)).chain(ends.1).collect()
}

#[test]
fn a_pocket_that_holds_no_piece_is_stepped_over() {
    // A tooth to the foot of the wall takes the first course, whose butt line would touch it; the next
    // course starts 8 in over it. Between the first two 1/16 in is left, between the next 10 in, which no two
    // studs stand behind; between the last 20 in, which they do.
    let l = wall(&teeth(&[(100.0, 110.0), (110.0625, 120.0), (130.0, 140.0), (160.0, 170.0)]));
    assert_eq!(broken(&l), Vec::<String>::new());
    assert_eq!(runs(&l, 0), [(0.0, 100.0), (140.0, 160.0), (170.0, 480.0)]);
    assert_eq!(runs(&l, 1), [(0.0, 480.0)]);
    // Beside a corner too: 12 in are left to the right.
    let l = wall(&teeth(&[(400.0, 468.0)]));
    assert_eq!(broken(&l), Vec::<String>::new());
    assert_eq!(runs(&l, 0), [(0.0, 400.0)]);
}

#[test]
fn a_start_beside_stone_is_no_lower_where_no_piece_goes_under_it() {
    // Stone 8 high up to 182. Grade jumps at 197 from -20 to 11.75: the courses at 0, 8 and 16 end there, the
    // one at 24 is the first that is 6 in clear. Beside the stone the first has 15 in, which no two studs stand
    // behind: the start there is at 8 too, though grade lies 28 in under it.
    let grade = [(-48.0, -20.0), (197.0, -20.0), (197.0, 11.75), (528.0, 11.75)];
    let (outline, stone) = (rect(0.0, 0.0, 480.0, 200.0), rect(0.0, 0.0, 182.0, 8.0));
    let rings: [(&str, &[(f64, f64)]); 2] = [("A-WALL-OTLN", &outline), ("A-WALL-BASE", &stone)];
    let l = lay(drawing(&rings, &grade).as_bytes(), &job());
    assert_eq!(broken(&l), Vec::<String>::new());
    assert_eq!(runs(&l, 0), []);
    for course in [1, 2] {
        assert_eq!(runs(&l, course), [(0.0, 197.0)]);
    }
    assert_eq!(runs(&l, 3), [(0.0, 480.0)]);
}

#[test]
fn a_spike_of_grade_counts_to_its_tip() {
    // 1/4 in wide with plumb sides, 4 in over the foot of the wall: it takes the courses that start at 0
    // and 8, since the one at 16 is the first that is 6 in clear of it.
    let mut spike = vec![(-48.0, -20.0), (200.0, -20.0), (200.0, 4.0), (200.25, 4.0)];
    spike.extend([(200.25, -20.0), (528.0, -20.0)]);
    for grade in [spike.clone(), spike.iter().rev().copied().collect()] {
        let l = wall(&grade);
        assert_eq!(broken(&l), Vec::<String>::new());
        for course in [0, 1] {
            assert_eq!(runs(&l, course), [(0.0, 200.0), (200.25, 480.0)]);
        }
        assert_eq!(runs(&l, 2), [(0.0, 480.0)]);
    }
    // A line up and back at one place is no ground.
    spike[3].0 = 200.0;
    spike[4].0 = 200.0;
    let l = wall(&spike);
    assert_eq!(broken(&l), Vec::<String>::new());
    assert_eq!(runs(&l, 0), [(0.0, 480.0)]);
}

#[test]
fn a_retaining_wall_is_as_plumb_drawn_from_the_right_as_from_the_left() {
    // Low to the left of x 240, to the foot of the wall right of it.
    let grade = [(-48.0, -20.0), (240.0, -20.0), (240.0, 0.0), (528.0, 0.0)];
    for grade in [grade.to_vec(), grade.iter().rev().copied().collect()] {
        let l = wall(&grade);
        assert_eq!(broken(&l), Vec::<String>::new());
        assert_eq!(runs(&l, 0), [(0.0, 240.0)]);
    }
}

#[test]
fn random_jagged_grade_breaks_no_rule() {
    for seed in 1..=40u64 {
        let mut d = Dice(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) | 1);
        let mut roll = |n: f64| d.roll(1 << 20) as f64 / f64::from(1 << 20) * n;
        let (step, high, plumb) = (1.0 + roll(40.0), 2.0 + roll(30.0), roll(1.0) < 0.5);
        let (mut x, mut grade) = (-48.0, Vec::new());
        while x < 528.0 {
            let y = -26.0 + roll(high);
            grade.push((x, if plumb { -26.0 } else { y }));
            grade.push((x, y));
            x += 0.2 + roll(step);
        }
        let outline = rect(0.0, 0.0, 480.0, 200.0);
        let door = rect(200.0, 0.0, 236.0, 80.0);
        let rings: [(&str, &[(f64, f64)]); 2] = [("A-WALL-OTLN", &outline), ("A-DOOR", &door)];
        let l = lay(drawing(&rings, &grade).as_bytes(), &job());
        let v = lapwright::verify::check(&l);
        for r in v.rules.iter().flat_map(|r| &r.violations) {
            let about_grade = matches!(
                r.breach,
                Breach::Course(CourseBreach::StartTooHigh | CourseBreach::NearGrade)
                    | Breach::Field(FieldBreach::Uncovered | FieldBreach::Unaccounted)
                    | Breach::Field(FieldBreach::AreaMissing)
            );
            assert!(!about_grade, "seed {seed}: {r:?}");
        }
    }
}
