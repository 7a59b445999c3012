//! The sheets of a house as printed to PDF, with one known distance and nothing else in the job: net siding
//! and openings by elevation, against what was measured in the same files by other means.

use lapwright::finding::Findings;
use lapwright::layout::Layout;
use lapwright::layout::wall::LaidWall;
use lapwright::model::house::OpeningKind;
use lapwright::pipeline;

use crate::corpus;

/// From the left side of one window to that of the next but one in the long wall of the East, points:
/// 16 ft in the drawing of the same house as DWG.
pub(crate) const KNOWN: &str = "[drawing]\nknown = \"240.63,221.28 347.341,221.28 = 16'-0\\\"\"\n\
                     [seams]\neffort = \"crew\"\n";

/// Siding that is measured by drawn courses ends at the line drawn next. By how much an area may
/// be over the upper figures, which take one whole face along tops and foots: half a percent.
const OVER: f64 = 1.005;

fn laid(part: &str) -> (Layout, Findings) {
    let path = corpus().join("house").join(part);
    let bytes = std::fs::read(path).unwrap();
    let job = lapwright::job::file::parse(KNOWN, "job").unwrap();
    let mut findings = Findings::default();
    let sets = pipeline::layout(&bytes, part, &job, &mut findings, &mut |_| {}).unwrap();
    let broken: Vec<_> = sets.house.layout.verify.violations().collect();
    assert!(broken.is_empty(), "{part}: {broken:?}");
    (sets.house.layout, findings)
}

/// Net siding of the elevation whose title has a word in it, square feet.
fn net(layout: &Layout, word: &str) -> f64 {
    let mine: Vec<_> = layout.elevations.iter().filter(|e| e.name.contains(word)).collect();
    assert_eq!(mine.len(), 1, "{word}: {:?}", mine.iter().map(|e| &e.name).collect::<Vec<_>>());
    mine[0].walls.iter().map(|w| w.net_area).sum()
}

/// The lower figures are the sums of what lies between drawn course lines, measured by pypdf and shapely;
/// the upper ones those and one face along tops and foots.
#[test]
fn net_siding_of_a_printed_house_is_that_between_its_drawn_courses_and_one_face_more() {
    let (sheet, _) = laid("H3_south_east.pdf");
    for (word, least, most) in [("South", 213.0, 228.0), ("East", 371.0, 400.0)] {
        let area = net(&sheet, word);
        assert!((least..=OVER * most).contains(&area), "{word}: {area}");
    }
    let (sheet, findings) = laid("H4_north_west.pdf");
    let west = net(&sheet, "West");
    assert!((710.0..=OVER * 750.0).contains(&west), "West: {west}");
    // The North alone has 175 sq ft between its lines. What shows part of it again, with 74 more, is told
    // and counts once, as in the DWG of the house.
    let north = net(&sheet, "North");
    assert!((175.0..=210.0).contains(&north), "North: {north}");
    let left_alone = findings.all().iter().filter(|f| f.code().word() == "view-left-alone");
    assert_eq!(left_alone.count(), 1);
    // The narrow wall past the right end, which is drawn on the levels of the wall behind.
    let walls = sheet.elevations.iter().filter(|e| e.name.contains("North"));
    let high = |w: &LaidWall| {
        let ys = w.outline.iter().map(|p| p[1]);
        let top = ys.clone().fold(f64::NEG_INFINITY, f64::max);
        top - ys.fold(f64::INFINITY, f64::min)
    };
    let narrow = walls
        .flat_map(|e| &e.walls)
        .filter(|w| (12.0..16.0).contains(&w.net_area) && high(w) > 96.0);
    assert_eq!(narrow.count(), 1);
}

/// Openings stand on bands and across them; none is drawn on a layer of openings.
#[test]
fn openings_of_a_printed_wall_are_found_between_its_bands() {
    let (sheet, _) = laid("H4_north_west.pdf");
    let west = sheet.elevations.iter().find(|e| e.name.contains("West")).unwrap();
    let mut found: Vec<Vec<(f64, f64)>> = Vec::new();
    for w in &west.walls {
        let sizes = |o: &lapwright::layout::wall::LaidOpening| (o.right - o.left, o.head - o.sill);
        found.push(w.openings.iter().map(sizes).collect());
    }
    // Widths with casings as other lines of the page have them, within an inch: the strip of four 144, the
    // pair 73, single ones 39 and 42 in the main wall, 43 in the low part.
    let mut main: Vec<f64> = found[0].iter().map(|s| s.0).collect();
    main.sort_by(f64::total_cmp);
    let expected = [39.4, 42.5, 42.5, 72.7, 144.1];
    assert_eq!(main.len(), expected.len(), "{main:?}");
    assert!(main.iter().zip(expected).all(|(a, b)| (a - b).abs() < 1.0), "{main:?}");
    assert_eq!(found[1].len(), 1);
    assert!((found[1][0].0 - 42.5).abs() < 1.0 && (found[1][0].1 - 42.5).abs() < 1.0);
    // Nobody drives in at the West or the North: rows of windows over windows, and no door for a car.
    let all = sheet.elevations.iter().flat_map(|e| &e.walls).flat_map(|w| &w.openings);
    assert!(all.map(|o| o.kind).all(|k| k != OpeningKind::OverheadDoor));
    // The one that stands across the upper band is whole: 39 in high and more.
    assert!(found[0].iter().any(|s| (s.0 - 42.5).abs() < 1.0 && s.1 > 36.0));
}
