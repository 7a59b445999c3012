//! Rules that cannot be kept are marked one by one: on the elevation, in the overlay, in the report.

use lapwright::annotate;
use lapwright::layout::Layout;
use lapwright::layout::backdrop::Backdrops;
use lapwright::layout::set::LaidSet;
use lapwright::model::drawing::Shape;
use lapwright::takeoff::quantities;
use lapwright::write::report;

use crate::sheets::{is_drawn, legible, of, texts};
use crate::support::{dxf, inches, lay_set, rect};

/// A wall of panels 150 in long, its cover 299: seams of one run stand a panel less a lap apart, so
/// three courses want three places on a ring of that length, which must be 60 in apart each; 180 is
/// more than the ring.
fn house() -> LaidSet {
    let mut job = inches();
    job.product.length = 150.0;
    job.seams.stagger = 60.0;
    job.seams.clear_courses = 2;
    lay_set(dxf(&[("A-WALL-OTLN", &rect(0.0, 0.0, 299.5, 72.0))]).as_bytes(), &job)
}

/// Pairs of seams of near courses that stand too near, counted from the layout.
fn pairs(l: &Layout) -> Vec<(f64, f64)> {
    let seams: Vec<(i32, f64)> = l
        .walls()
        .flat_map(|(_, w)| &w.courses)
        .flat_map(|c| c.runs.iter().flat_map(|r| &r.seams).map(|s| (c.index, *s)))
        .collect();
    let mut out = Vec::new();
    for a in &seams {
        for b in seams.iter().filter(|b| b.0 > a.0 && b.0 - a.0 <= 2) {
            if (a.1 - b.1).abs() < 60.0 - 1e-6 {
                out.push((a.1.min(b.1), a.1.max(b.1)));
            }
        }
    }
    out.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
    out
}

#[test]
fn every_broken_seam_rule_is_marked_once() {
    let set = house();
    let layout = &set.layout;
    let breaks: Vec<_> = layout.bound.conflicts.iter().flat_map(|c| &c.breaks).collect();
    let wanted = pairs(layout);
    assert!(!wanted.is_empty());
    let mut told: Vec<(f64, f64)> = breaks
        .iter()
        .map(|b| (b.seams[0].x.min(b.seams[1].x), b.seams[0].x.max(b.seams[1].x)))
        .collect();
    told.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
    assert_eq!(told, wanted);

    let sheets = crate::support::sheets(&set);
    let here: Vec<_> =
        of(&sheets, &layout.elevations[0]).into_iter().filter(|s| is_drawn(s)).collect();
    let overlay = annotate::overlay(layout, &Backdrops::default());
    let report = report::text(layout, &quantities(layout));
    for (i, b) in breaks.iter().enumerate() {
        assert_eq!(b.mark, format!("X{}", i + 1));
        let on = here.iter().flat_map(|s| texts(s)).filter(|t| t.content == b.mark).count();
        assert_eq!(on, 1, "{} on the elevation", b.mark);
        let over = overlay
            .items
            .iter()
            .filter(|i| matches!(&i.shape, Shape::Text(t) if t.content == b.mark));
        assert_eq!(over.count(), 1, "{} in the overlay", b.mark);
        assert!(report.contains(&format!("{}, fails on ", b.mark)), "{report}");
    }
    for s in here {
        legible("broken", s);
        let faults = s.drawing.layers.iter().position(|l| l.name == "faults").unwrap();
        let lines = s.drawing.items.iter().filter(|i| i.layer == faults).count();
        // A diamond round both seams of each.
        assert_eq!(lines, 2 * breaks.len());
    }
}

#[test]
fn a_house_whose_rules_are_kept_has_no_such_mark() {
    let set = crate::support::laid_set("one-window");
    assert!(set.layout.bound.conflicts.is_empty());
    let sheets = crate::support::sheets(&set);
    assert!(!sheets.iter().flat_map(texts).any(|t| t.content.starts_with("X1")));
}
