//! One order for a house with zones of other siding.

use lapwright::job::file as job_file;
use lapwright::layout::set::LaidSets;
use lapwright::model::takeoff::OrderLine;
use lapwright::write::{report, tables};

use crate::support::{broken, dxf, lay_sets, rect};

/// A wall of 140 x 96 in, its upper half a zone with this product. Six courses of 8 in each, a panel of 12
/// ft 6 in a course.
fn sets(own: &str) -> LaidSets {
    let text = format!(
        "[drawing]\nunit = \"inch\"\n[seams]\neffort = \"crew\"\n[courses]\ndatum = 0\n[product]\ncolor = \"sand\"\n[[zone]]\nname = \"upper\"\n[zone.product]\n{own}\n[[zone.region]]\nbottom = 48\n"
    );
    let job = job_file::parse(&text, "job").unwrap();
    let sets = lay_sets(dxf(&[("A-WALL-OTLN", &rect(0.0, 0.0, 140.0, 96.0))]).as_bytes(), &job);
    for s in sets.iter() {
        assert_eq!(broken(&s.layout), Vec::<String>::new());
        assert_eq!(s.layout.panels.len(), 6);
    }
    sets
}

fn lines<'a>(sets: &'a LaidSets, id: &str) -> Vec<&'a OrderLine> {
    sets.house.takeoff.one_order.iter().filter(|l| l.id == *id).collect()
}

/// What each set orders of a line by itself.
fn each(sets: &LaidSets, id: &str) -> Vec<f64> {
    sets.iter().filter_map(|s| s.takeoff.line(id)).map(|l| l.order).collect()
}

#[test]
fn what_two_sidings_share_is_summed_before_it_is_rounded_up() {
    // Foam-backed below, plain vinyl above: panels, their nails, posts and channels of each by itself.
    let s = sets("kind = \"vinyl\"\ncolor = \"sand\"");
    assert_eq!(lines(&s, "cartons").iter().map(|l| l.order).collect::<Vec<_>>(), [1.0, 1.0]);
    assert_eq!(lines(&s, "panel-nails").len(), 2, "2 1/2 in through foam, 1 1/2 in without");
    // Each says what siding it is of.
    let said = tables::one_order(&s.house.takeoff, &s.house.layout.job);
    for row in ["cartons, foam-backed vinyl lap siding, sand", "cartons, vinyl lap siding, sand"] {
        assert!(said.contains(row), "{said}");
    }
    // Pockets of 1 1/8 and 3/4 in take no other siding.
    let posts = lines(&s, "outside-corner-post");
    assert_eq!((posts.len(), posts[0].sets.len()), (2, 1));
    assert_eq!(
        (posts[0].sets[0].zone.clone(), posts[1].sets[0].zone.clone()),
        (None, Some("upper".into()))
    );
    // Nails for trim are of one kind: some dozens for each, one box for both and not one each.
    assert_eq!(each(&s, "trim-nails"), [1.0, 1.0]);
    let [nails] = lines(&s, "trim-nails")[..] else { panic!() };
    let net: f64 = s.iter().map(|s| s.takeoff.line("trim-nails").unwrap().net).sum();
    assert!(net < 1.0 && nails.order == 1.0 && (nails.net - net).abs() < 1e-9, "{net} {nails:?}");
    assert_eq!(nails.sets.iter().map(|s| s.order).collect::<Vec<_>>(), [1.0, 1.0]);
}

#[test]
fn of_the_same_siding_cartons_starter_and_spare_ones_are_shared() {
    // The same panel above and below: twelve and 3 % are thirteen, in one carton of 24; apart it would be a
    // carton each. Two lengths of starter for each row of 140 in, four in all; one spare, not two.
    let s = sets("color = \"sand\"");
    assert_eq!(each(&s, "cartons"), [1.0, 1.0]);
    let [cartons] = lines(&s, "cartons")[..] else { panic!("{:?}", lines(&s, "cartons")) };
    assert_eq!((cartons.order, cartons.sets.len()), (1.0, 2));
    let starter = each(&s, "starter-strip");
    let [line] = lines(&s, "starter-strip")[..] else { panic!() };
    assert_eq!(line.order, starter.iter().sum::<f64>());
    assert_eq!(each(&s, "spare-starter-strip").iter().sum::<f64>(), starter.len() as f64);
    assert_eq!(lines(&s, "spare-starter-strip")[0].order, 1.0);
    // Of another color only what takes no color is shared.
    let s = sets("color = \"slate\"");
    assert_eq!((lines(&s, "cartons").len(), lines(&s, "starter-strip").len()), (2, 1));
    assert_eq!(lines(&s, "outside-corner-post").len(), 2);
}

/// A wall of 25 x 16 ft, its upper half a zone of the same siding, a window of 36 x 48 in in each half.
fn halves(more: &str) -> LaidSets {
    let text = format!(
        "[drawing]\nunit = \"inch\"\n[seams]\neffort = \"crew\"\n[courses]\ndatum = 0\n[product]\ncolor = \"sand\"\n{more}\n[[zone]]\nname = \"upper\"\n[zone.product]\ncolor = \"sand\"\n[[zone.region]]\nbottom = 96\n"
    );
    let job = job_file::parse(&text, "job").unwrap();
    let rings: [(&str, &[(f64, f64)]); 3] = [
        ("A-WALL-OTLN", &rect(0.0, 0.0, 300.0, 192.0)),
        ("A-GLAZ", &rect(100.0, 36.0, 136.0, 84.0)),
        ("A-GLAZ", &rect(100.0, 132.0, 136.0, 180.0)),
    ];
    let sets = lay_sets(dxf(&rings).as_bytes(), &job);
    sets.iter().for_each(|s| assert_eq!(broken(&s.layout), Vec::<String>::new()));
    assert_eq!(sets.iter().count(), 2);
    sets
}

#[test]
fn an_order_for_two_zones_reckoned_by_hand() {
    let s = halves(
        "[takeoff]\nflashing_roll = 144\n[estimate]\nsealant = true\nbarrier = true\ntrim_nails_per_pound = 400",
    );
    let one = |id: &str| {
        let [line] = lines(&s, id)[..] else { panic!("{id}: {:?}", lines(&s, id)) };
        assert_eq!(line.sets.len(), 2, "{id}");
        (line.net, line.order)
    };
    let near = |a: f64, b: f64| (a - b).abs() < 1e-3;
    // Panels of both with 3 % over, in cartons of 24: rounded up once for the spare ones, once for the cartons.
    let panels: f64 = s.iter().map(|s| s.layout.panels.len() as f64).sum();
    assert_eq!(one("cartons").1, ((panels + (panels * 0.03).ceil()) / 24.0).ceil());
    // A bead behind head and jambs, 36 + 2 x 48 = 132 in, twice; a cartridge of 10.1 oz fills 291.6 in of 1/4 x 1/4:
    // 264 / 291.6 = 0.905. Each by itself would buy one.
    let (net, order) = one("sealant");
    assert!(near(net, 264.0 / (10.1 * 231.0 / 128.0 * 16.0)) && order == 1.0, "{net}");
    assert_eq!(each(&s, "sealant"), [1.0, 1.0]);
    // 300 x 192 = 57,600 sq in of wall, a roll covers 106 x 1,194: 0.455.
    let (net, order) = one("weather-barrier");
    assert!(near(net, 57_600.0 / (106.0 * 1194.0)) && order == 1.0, "{net}");
    // Round a window 54 + 54 + 65 + 65 in: from a roll of 12 ft a level strip and a jamb, two rolls each.
    let (net, order) = one("opening-flashing");
    assert!(near(net, 2.0 * 238.0 / 144.0) && order == 4.0, "{net} {order}");
    // Behind four posts of some 8 ft each: of 12 ft none has two, so four rolls, though all together are 2.7.
    let (net, order) = one("corner-flashing");
    assert!(net > 2.5 && net < 2.8 && order == 4.0, "{net} {order}");
    // Caps of 38 in, a length in each plan, and 3 % of two: one to spare.
    assert_eq!((one("drip-cap").1, one("spare-drip-cap").1), (2.0, 1.0));
    // Nails for trim by the pound, both together in whole pounds.
    let (net, order) = one("trim-nails");
    assert!(order == net.ceil() && order < each(&s, "trim-nails").iter().sum(), "{net} {order}");
}

#[test]
fn every_line_that_a_set_buys_is_in_the_one_order_once() {
    for own in ["kind = \"vinyl\"", "color = \"sand\""] {
        let s = sets(own);
        for (n, set) in s.iter().enumerate() {
            for l in set.takeoff.lines.iter().filter(|l| set.takeoff.buys(l)) {
                let mine = |o: &&OrderLine| {
                    o.id == l.id
                        && o.sets.iter().any(|x| x.zone == set.layout.zone && x.order == l.order)
                };
                let found = s.house.takeoff.one_order.iter().filter(mine).count();
                assert_eq!(found, 1, "set {n}, {}", l.id);
            }
        }
        // It stands in the report of the house, and no zone has one of its own.
        let text = report::text(&s.house.layout, &s.house.takeoff);
        assert!(text.contains("ONE ORDER FOR THE HOUSE AND ITS ZONES"), "{text}");
        assert!(s.zones.iter().all(|z| z.takeoff.one_order.is_empty()));
        let table = tables::one_order(&s.house.takeoff, &s.house.layout.job);
        assert!(table.lines().all(|l| l.chars().count() <= 80), "{table}");
        assert_eq!(table.lines().count(), 1 + s.house.takeoff.one_order.len());
    }
    // A house of one siding has its own table alone.
    let job = job_file::parse("[drawing]\nunit = \"inch\"\n", "job").unwrap();
    let one = lay_sets(dxf(&[("A-WALL-OTLN", &rect(0.0, 0.0, 140.0, 96.0))]).as_bytes(), &job);
    assert!(one.house.takeoff.one_order.is_empty());
}
