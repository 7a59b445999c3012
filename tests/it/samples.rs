//! The samples against what their own drawing script knows by construction (areas by shapely).

use serde_json::Value;

use crate::support::{broken, job, laid, lay_set, root, samples};

fn expected() -> Value {
    let text = std::fs::read_to_string(root().join("tests/samples/expected.json")).unwrap();
    serde_json::from_str(&text).unwrap()
}

#[test]
#[allow(clippy::too_many_lines)] // One walk, told in order.
fn walls_and_openings_are_what_was_drawn() {
    let expected = expected();
    for (stem, _) in samples() {
        let layout = laid(&stem);
        let views = expected[&stem].as_array().unwrap();
        assert_eq!(layout.elevations.len(), views.len(), "{stem}");
        for view in views {
            let name = view["name"].as_str().unwrap();
            let e = layout
                .elevations
                .iter()
                .find(|e| e.name == name)
                .unwrap_or_else(|| panic!("{stem}: no {name}"));
            let walls = view["walls"].as_array().unwrap();
            assert_eq!(e.walls.len(), walls.len(), "{stem} {name}");
            for (w, x) in e.walls.iter().zip(walls) {
                // A round head is cut in chords: within 0.01 %.
                let near = |a: f64, b: &Value| (a - b.as_f64().unwrap()).abs() < 1e-4 * a;
                assert!(
                    near(w.gross_area, &x["gross_area"]),
                    "{stem} {}: gross {} {}",
                    w.id,
                    w.gross_area,
                    x["gross_area"]
                );
                assert!(
                    // Drawn: wall less openings; what of it gets no siding is told apart.
                    near(w.net_area + w.bare_area(), &x["net_area"]),
                    "{stem} {}: net {} {}",
                    w.id,
                    w.net_area,
                    x["net_area"]
                );
            }
            let mut found: Vec<_> = e.walls.iter().flat_map(|w| &w.openings).collect();
            found.sort_by(|a, b| a.left.total_cmp(&b.left).then(a.sill.total_cmp(&b.sill)));
            let openings = view["openings"].as_array().unwrap();
            assert_eq!(found.len(), openings.len(), "{stem} {name}");
            for (o, x) in found.iter().zip(openings) {
                let kind = serde_json::to_value(o.kind).unwrap();
                assert_eq!(kind, x["kind"], "{stem} {}", o.id);
                for (v, key) in
                    [(o.left, "left"), (o.right, "right"), (o.sill, "sill"), (o.head, "head")]
                {
                    assert!(
                        (v - x[key].as_f64().unwrap()).abs() < 0.002,
                        "{stem} {} {key}: {v}",
                        o.id
                    );
                }
            }
            let blocks =
                e.walls.iter().flat_map(|w| &w.obstacles).filter(|o| o.mounting_block).count();
            assert_eq!(blocks as u64, view["mounting_blocks"].as_u64().unwrap(), "{stem} {name}");
            let pitches: Vec<f64> = e
                .walls
                .iter()
                .flat_map(|w| &w.edges)
                .filter_map(|s| s.pitch.filter(|_| s.opening.is_none()))
                .collect();
            for p in view["pitches"].as_array().unwrap() {
                assert!(
                    pitches.iter().any(|q| (q - p.as_f64().unwrap()).abs() < 0.01),
                    "{stem}: {pitches:?}"
                );
            }
        }
    }
}

#[test]
fn every_rule_is_kept_on_every_sample() {
    for (stem, _) in samples() {
        let layout = laid(&stem);
        assert_eq!(broken(&layout), Vec::<String>::new(), "{stem}");
        if stem == "curlew-cottage" {
            assert!(layout.verify.rules.iter().all(|r| r.checked > 0), "a rule looked at nothing");
        }
    }
}

#[test]
fn corner_posts_of_the_house_are_counted_once() {
    // By design: five outside corners 116 in high (the wing's and the main block's), one inside
    // corner parted by the porch roof. Each hangs 1/4 in short and runs 3/4 in below
    // (TrimFact::PostTopGap, TrimFact::PostPastStarter).
    let layout = laid("curlew-cottage");
    let posts = |kind: lapwright::model::trim::TrimKind| -> Vec<f64> {
        layout.trims.iter().filter(|t| t.kind == kind).map(|t| t.length).collect()
    };
    let outside = posts(lapwright::model::trim::TrimKind::OutsidePost);
    assert_eq!(outside.len(), 5, "{outside:?}");
    assert!(outside.iter().filter(|l| **l == 116.5).count() >= 4, "{outside:?}");
    assert_eq!(posts(lapwright::model::trim::TrimKind::InsidePost).len(), 2);
}

#[test]
fn the_sloping_grade_steps_the_start_in_a_whole_course() {
    // Right side by design: grade rises from -34 to -10 over 480; base -8, clearance 6, so the start
    // may stand at -8 where grade is at most -14: x up to 400.
    let layout = laid("curlew-cottage");
    let right = layout.elevations.iter().find(|e| e.name.starts_with("RIGHT")).unwrap();
    let bases: Vec<_> = right.walls[0]
        .edges
        .iter()
        .filter(|e| e.kind == lapwright::model::house::EdgeKind::Base)
        .collect();
    assert_eq!(bases.len(), 2);
    let low = bases.iter().find(|e| e.from[1] == -8.0).unwrap();
    let high = bases.iter().find(|e| e.from[1] == 0.0).unwrap();
    // Within an eighth: the step is taken at a whole sixteenth, on the safe side.
    assert!(
        (low.to[0] - 400.0).abs() <= 0.13 && (high.from[0] - 400.0).abs() <= 0.13,
        "{} {}",
        low.to[0],
        high.from[0]
    );
}

#[test]
fn same_bytes_on_two_runs() {
    for (stem, path) in samples() {
        let bytes = std::fs::read(&path).unwrap();
        let make = || {
            let set = lay_set(&bytes, &job(&path));
            lapwright::outputs::set::files(&set, &bytes, stem != "curlew-cottage").unwrap()
        };
        assert!(make() == make(), "{stem}");
    }
}
