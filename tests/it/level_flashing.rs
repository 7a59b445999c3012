//! Flashing along level runs and under doors, reckoned by hand from small drawings
//! (`TrimFact::FlashingPlaces`: IRC R703.4 names the places).

use lapwright::job::Job;
use lapwright::job::file as job_file;
use lapwright::layout::Layout;
use lapwright::model::basis::Basis;
use lapwright::model::trim::TrimKind;

use crate::support::{broken, dxf, lay, lay_sets, rect};

fn job(more: &str) -> Job {
    let text = format!("[drawing]\nunit = \"inch\"\n[seams]\neffort = \"crew\"\n{more}");
    job_file::parse(&text, "job").unwrap()
}

/// Net and order of a line; nothing where there is none.
fn line(layout: &Layout, id: &str) -> Option<(f64, f64)> {
    let line = layout.takeoff.iter().find(|l| l.id == id)?;
    Some(((line.net * 1e4).round() / 1e4, line.order))
}

fn sound(layout: &Layout) {
    assert_eq!(broken(layout), Vec::<String>::new());
    crate::recount::check(&crate::recount::written(layout), "level flashing");
}

#[test]
fn a_porch_roof_across_a_front_has_flashing_all_along() {
    // 36 ft of wall, a roof before it from side to side; a door of 36 in under it.
    let drawn = dxf(&[
        ("A-WALL-OTLN", &rect(0.0, 0.0, 432.0, 220.0)),
        ("A-ROOF-OTLN", &rect(-12.0, 96.0, 444.0, 126.0)),
        ("A-DOOR", &rect(198.0, 0.0, 234.0, 80.0)),
    ]);
    let layout = lay(drawn.as_bytes(), &job(""));
    sound(&layout);
    assert_eq!(line(&layout, "roof-flashing"), Some((36.0, 0.0)));
    // 432 in, and turned round both corners by 4 in: 440 of a roll of 600 in.
    assert_eq!(line(&layout, "continuous-flashing"), Some((0.7333, 1.0)));
    // One pan, 36 in and 6 in up each jamb.
    assert_eq!(line(&layout, "door-pans"), Some((1.0, 1.0)));
    let pans = layout.takeoff.iter().find(|l| l.id == "door-pans").unwrap();
    assert_eq!(pans.basis, Basis::DoorPans { turned_up: 6.0, length: 48.0 });
    assert_eq!((line(&layout, "deck-flashing"), line(&layout, "step-flashing")), (None, None));
}

#[test]
fn runs_share_rolls_and_long_ones_lap() {
    // 120 ft of roof: 1,440 in, 4 in round each corner and two laps of 4 in are strips of 600, 600 and 256.
    // A ledge of 336 in on the next wall, 344 with its corners, goes into the third roll with the last of
    // them: 256 and 344 are 600.
    let drawn = dxf(&[
        ("A-WALL-OTLN", &rect(0.0, 0.0, 1440.0, 220.0)),
        ("A-ROOF-OTLN", &rect(-12.0, 96.0, 1452.0, 126.0)),
        ("A-WALL-OTLN", &rect(1500.0, 0.0, 1836.0, 120.0)),
        ("A-WALL-BASE", &rect(1500.0, 0.0, 1836.0, 24.0)),
    ]);
    let layout = lay(drawn.as_bytes(), &job(""));
    sound(&layout);
    assert_eq!(line(&layout, "roof-flashing"), Some((120.0, 0.0)));
    assert_eq!(line(&layout, "ledge-flashing"), Some((28.0, 0.0)));
    assert_eq!(line(&layout, "continuous-flashing"), Some((3.0, 3.0)));
    // One inch more of ledge takes a fourth roll.
    let drawn = drawn.replace("1836", "1837");
    let layout = lay(drawn.as_bytes(), &job(""));
    assert_eq!(line(&layout, "continuous-flashing").unwrap().1, 4.0);
    // With laps of 6 in 1,464 in and 349: 1,813 in.
    let layout = lay(drawn.as_bytes(), &job("[takeoff]\nflashing_lap = 6\n"));
    sound(&layout);
    assert_eq!(line(&layout, "continuous-flashing"), Some((3.0217, 4.0)));
}

#[test]
fn a_door_that_stands_on_a_level_roof_makes_it_a_deck() {
    // 20 ft of deck 30 in high; the flashing of its ledger runs on under the door.
    let deck = |foot: f64| {
        dxf(&[
            ("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 140.0)),
            ("A-ROOF-OTLN", &rect(-12.0, -6.0, 252.0, 30.0)),
            ("A-DOOR", &rect(100.0, foot, 136.0, foot + 80.0)),
        ])
    };
    // A door that stands high and a deck at the foot look like a view turned over: the job says it is not.
    let upright = job("[[elevation]]\nname = \"elevation\"\nturn = 0\n");
    for foot in [30.0, 37.0] {
        let layout = lay(deck(foot).as_bytes(), &upright);
        sound(&layout);
        assert_eq!(line(&layout, "deck-flashing"), Some((20.0, 0.0)), "{foot}");
        assert_eq!(line(&layout, "roof-flashing"), None, "{foot}");
    }
    // A window stands on no deck, and a door 2 ft over a roof neither.
    for drawn in [deck(30.0).replace("A-DOOR", "A-GLAZ"), deck(54.0)] {
        assert_eq!(line(&lay(drawn.as_bytes(), &upright), "deck-flashing"), None);
    }
}

#[test]
fn bands_and_changes_of_cladding_are_told_apart() {
    // 25 ft: a band from 96 to 104 in.
    let wall = rect(0.0, 0.0, 300.0, 200.0);
    let banded = dxf(&[("A-WALL-OTLN", &wall), ("A-WALL-BAND", &rect(0.0, 96.0, 300.0, 104.0))]);
    let layout = lay(banded.as_bytes(), &job(""));
    assert_eq!(broken(&layout), Vec::<String>::new());
    assert_eq!(line(&layout, "band-flashing"), Some((25.0, 0.0)));
    assert_eq!(line(&layout, "ledge-flashing"), None);
    // Shingles from 96 in up: their foot over the siding.
    let zoned = dxf(&[("A-WALL-OTLN", &wall), ("A-WALL-SHNG", &rect(0.0, 96.0, 300.0, 200.0))]);
    let zone = "[[zone]]\nname = \"Upper\"\nlayers = [\"A-WALL-SHNG\"]\n";
    let layout = lay(zoned.as_bytes(), &job(&format!("{zone}cladding = \"shingle\"\n")));
    sound(&layout);
    assert_eq!(line(&layout, "cladding-flashing"), Some((25.0, 0.0)));
    // Laid out as a set of its own, the upper set counts it, and the house's does not.
    let sets =
        lay_sets(zoned.as_bytes(), &job(&format!("{zone}[zone.product]\nkind = \"vinyl\"\n")));
    assert_eq!(line(&sets.house.layout, "cladding-flashing"), None);
    assert_eq!(line(&sets.zones[0].layout, "cladding-flashing"), Some((25.0, 0.0)));
    sound(&sets.zones[0].layout);
}

#[test]
fn step_flashing_is_told_by_the_piece() {
    // A roof that rises 5 in 12 along a wall over 12 ft: 13 ft of slope, 156 in, and 4 in round the corner it
    // starts at. At 5 in to a course of roofing 32 pieces (31.2), one more, and one bent round the corner.
    let drawn = dxf(&[
        ("A-WALL-OTLN", &rect(0.0, 0.0, 300.0, 200.0)),
        ("A-ROOF-OTLN", &[(0.0, -10.0), (144.0, -10.0), (144.0, 120.0), (0.0, 60.0)]),
    ]);
    let layout = lay(drawn.as_bytes(), &job("[courses]\nclear_of_roof = 0\n"));
    let line = layout.takeoff.iter().find(|l| l.id == "step-flashing").unwrap();
    assert!((line.net * 12.0 - 160.0).abs() < 1e-2, "{}", line.net);
    let basis = Basis::RoofSlopes { pieces: 34, exposure: 5.0, turned: 1, turn: 4.0 };
    assert_eq!(line.basis, basis);
}

#[test]
fn a_window_whose_surround_alone_reaches_the_wall_over_it_has_its_flashing_once() {
    // The window is 24 in wide, from 32 to 66, its surround 12 in wide: the head board ends 2 in over the foot
    // of the wall above. Jambs would be flashed up to 66 and 8 1/2 in, which is under that foot at 76.
    let drawn = dxf(&[
        ("A-WALL-OTLN", &rect(0.0, 0.0, 120.0, 76.0)),
        ("A-WALL-OTLN", &rect(0.0, 76.0, 120.0, 160.0)),
        ("A-GLAZ", &rect(48.0, 32.0, 72.0, 66.0)),
    ]);
    let layout = lay(drawn.as_bytes(), &job("[trim]\nsurround = 12\n"));
    assert_eq!(broken(&layout), Vec::<String>::new());
    let of = |kind| layout.trims.iter().filter(move |t| t.kind == kind);
    let highest = of(TrimKind::JambFlashing).map(|t| t.from[1].max(t.to[1])).fold(0.0, f64::max);
    assert!(highest <= 76.0, "{highest}");
    assert_eq!(of(TrimKind::JambFlashing).count(), 2);
}
