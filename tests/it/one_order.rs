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
