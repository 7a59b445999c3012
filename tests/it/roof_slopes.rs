//! Lower roofs along walls: where water is turned out, and what their slopes are cut by. Reckoned by hand.

use lapwright::layout::set::LaidSet;

use crate::support::{broken, dxf, inches, lay_set, rect, sheets};

/// A wall so wide and 10 ft high, and a lean-to roof falling from 80 in at its left end to 20 in at 120 in:
/// 6 in 12.
fn lean_to(wide: f64) -> LaidSet {
    let roof = [(0.0, 20.0), (120.0, 20.0), (0.0, 80.0)];
    let wall = rect(0.0, 0.0, wide, 120.0);
    let drawing = dxf(&[("A-WALL-OTLN", &wall), ("A-ROOF-OTLN", &roof)]);
    let set = lay_set(drawing.as_bytes(), &inches());
    assert_eq!(broken(&set.layout), Vec::<String>::new(), "{wide}");
    set
}

fn ordered(set: &LaidSet, id: &str) -> Option<f64> {
    let mut lines = set.takeoff.lines.iter().filter(|l| l.item.id() == id);
    lines.next().map(|l| l.order)
}

#[test]
fn a_kick_out_stands_where_the_roof_ends_and_the_wall_goes_on() {
    // The whole slope: hypot(120, 60) = 134.2 in, 11.2 ft; its foot stands 10 ft from the wall's end.
    let set = lean_to(240.0);
    assert_eq!(ordered(&set, "step-flashing"), Some(12.0));
    assert_eq!(ordered(&set, "kick-out"), Some(1.0));
    // The roof runs on past the corner: hypot(110, 55) = 123.0 in, 10.2 ft, and water falls clear of the wall.
    let set = lean_to(110.0);
    assert_eq!(ordered(&set, "step-flashing"), Some(11.0));
    assert_eq!(ordered(&set, "kick-out"), None);
}

#[test]
fn a_house_without_a_gable_has_no_gable_pattern() {
    let titles: Vec<String> = sheets(&lean_to(240.0)).into_iter().map(|s| s.title).collect();
    assert!(titles.contains(&"Lower roof pattern, 6 in 12".to_owned()), "{titles:?}");
    assert!(titles.iter().all(|t| !t.contains("Gable")), "{titles:?}");
}
