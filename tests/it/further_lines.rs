//! Further lines of an estimate, each off until the job asks for it, reckoned by hand from small drawings.

use lapwright::job::Job;
use lapwright::job::file as job_file;
use lapwright::language::Language;
use lapwright::layout::Layout;
use lapwright::model::item::CountUnit;
use lapwright::model::quantity::TakeoffLine;
use lapwright::model::trim::TrimKind;
use lapwright::takeoff::price;
use lapwright::wording::takeoff::basis::basis;
use lapwright::wording::takeoff::items;

use crate::support::{dxf, lay, rect, said};

fn job(more: &str) -> Job {
    let text = format!("[drawing]\nunit = \"inch\"\n[seams]\neffort = \"crew\"\n{more}");
    job_file::parse(&text, "job").unwrap()
}

/// A wall of 25 x 8 ft under a gable 8 ft high, 300 sq ft (Example::WallAndGable), with a window of
/// 36 x 36 in from 37 in up, a door of 36 x 80 in and a fixture without a block.
fn house() -> String {
    let wall = [(0.0, 0.0), (300.0, 0.0), (300.0, 96.0), (150.0, 192.0), (0.0, 96.0)];
    dxf(&[
        ("A-WALL-OTLN", &wall),
        ("A-GLAZ", &rect(40.0, 37.0, 76.0, 73.0)),
        ("A-DOOR", &rect(200.0, 0.0, 236.0, 80.0)),
    ])
}

fn laid(more: &str) -> Layout {
    let layout = lay(house().as_bytes(), &job(more));
    crate::recount::check(&crate::recount::written(&layout), more);
    layout
}

fn line<'a>(layout: &'a Layout, id: &str) -> &'a TakeoffLine {
    let found = layout.takeoff.iter().find(|l| l.id == *id);
    found.unwrap_or_else(|| panic!("no line {id}"))
}

const ALL: [&str; 12] = [
    "weather-barrier",
    "barrier-tape",
    "sealant",
    "furring",
    "coil",
    "soffit",
    "soffit-channel",
    "fascia",
    "shutters",
    "vents",
    "blocks",
    "labor",
];

#[test]
fn nothing_is_counted_that_the_job_does_not_ask_for() {
    let layout = laid("");
    assert!(layout.takeoff.iter().all(|l| !ALL.contains(&l.id.as_str())));
    assert!(layout.takeoff.iter().all(|l| l.item_number.is_empty()));
    // What is left out is said, and no more once it is counted.
    let told = |more: &str| {
        let layout = laid(more);
        let takeoff = lapwright::takeoff::quantities(&layout);
        let report = lapwright::write::report::text(&layout, &takeoff);
        report.split_whitespace().collect::<Vec<_>>().join(" ")
    };
    let out = told("");
    assert!(
        out.contains("Not in this takeoff: soffit and fascia, weather barrier and tape"),
        "{out}"
    );
    let more = told("[estimate]\nbarrier = true\nsealant = true\nblocks = 2\n");
    assert!(more.contains("Not in this takeoff: soffit and fascia, "), "{more}");
    assert!(!more.contains("fascia, weather barrier and tape"), "{more}");
}

#[test]
fn a_weather_barrier_goes_by_area_and_laps() {
    // TakeoffFact::BarrierLaps (IRC R703.2): 2 in and 6 in. 300 sq ft are 43,200 sq in; a roll of 9 x 100 ft
    // covers 106 x 1,194 in: 0.3413 of one. Seams: 43,200 / 106 and / 1,194 in, 443.7 in of tape.
    let layout = laid("[estimate]\nbarrier = true\n");
    let barrier = line(&layout, "weather-barrier");
    assert!((barrier.net - 43_200.0 / (106.0 * 1194.0)).abs() < 1e-4 && barrier.order == 1.0);
    let tape = line(&layout, "barrier-tape");
    assert!((tape.length.unwrap() - 443.73).abs() < 0.05 && tape.order == 1.0, "{tape:?}");
}

#[test]
fn a_weather_barrier_says_which_wall_it_leaves_out() {
    // A wall of 30 x 20 ft, a porch roof of 30 x 2 ft drawn across it: barrier for 600 - 60 = 540 sq ft, 77,760
    // sq in, and a word about the 60 sq ft behind the roof.
    let roof = rect(0.0, 100.0, 360.0, 124.0);
    let rings: [(&str, &[(f64, f64)]); 2] =
        [("A-WALL-OTLN", &rect(0.0, 0.0, 360.0, 240.0)), ("A-ROOF-OTLN", &roof)];
    let layout = lay(dxf(&rings).as_bytes(), &job("[estimate]\nbarrier = true\n"));
    crate::recount::check(&crate::recount::written(&layout), "porch");
    let barrier = line(&layout, "weather-barrier");
    assert!((barrier.net - 77_760.0 / (106.0 * 1194.0)).abs() < 1e-4, "{barrier:?}");
    let told = basis(barrier, &layout.job, &layout.bound);
    assert!(told.contains("540.0 sq ft of walls, openings in"), "{told}");
    assert!(told.contains(", none of 60.0 sq ft behind lower roofs: add it"), "{told}");
    let layout = laid("[estimate]\nbarrier = true\n");
    let told = basis(line(&layout, "weather-barrier"), &layout.job, &layout.bound);
    assert!(!told.contains("lower roofs: add"), "{told}");
}

#[test]
fn sealant_goes_by_the_bead() {
    // Panels: behind the flanges of the window, 3 sides of 36 in, and of the door, 36 and twice 80 in:
    // 304 in of 1/4 x 1/4 in. 10.1 oz are 18.227 cu in and fill 291.6 in.
    let layout = laid("[estimate]\nsealant = true\n");
    let sealant = line(&layout, "sealant");
    assert!((sealant.length.unwrap() - 304.0).abs() < 0.01, "{sealant:?}");
    assert!((sealant.net - 304.0 / 291.64).abs() < 1e-3 && sealant.order == 2.0);
    // Boards: jambs, 72 and 160 in; beside corner boards of 3 1/2 in, where the rake stands 3.5 x 96 / 150
    // = 2.24 in over the eave, twice 98.24 in; rakes between them, 146.5 in level each, 173.93 in along.
    let layout = laid("[estimate]\nsealant = true\n[product]\nkind = \"fiber-cement\"\n");
    let sealant = line(&layout, "sealant");
    let by_hand = 72.0 + 160.0 + 2.0 * 98.24 + 2.0 * 146.5 / 150.0 * 150f64.hypot(96.0);
    assert!((sealant.length.unwrap() - by_hand).abs() < 0.1, "{sealant:?}");
}

#[test]
fn a_window_beside_a_filler_board_is_sealed_behind_all_its_flanges() {
    // Between outside corners 52 in apart stands a window of 44 x 54 in: 4 in on each side, less set-back and
    // gap, is filled by boards, and no channel stands at its jambs. Its flanges are there: 44 and twice
    // 54 in, as of the window alone.
    let wall = rect(0.0, 0.0, 52.0, 108.0);
    let window = rect(4.0, 30.0, 48.0, 84.0);
    let bytes = dxf(&[("A-WALL-OTLN", &wall), ("A-GLAZ", &window)]);
    let layout = lay(bytes.as_bytes(), &job("[estimate]\nsealant = true\n"));
    crate::recount::check(&crate::recount::written(&layout), "filled");
    assert_eq!(layout.trims.iter().filter(|t| t.kind == TrimKind::Filler).count(), 2);
    let sealant = line(&layout, "sealant");
    assert!((sealant.length.unwrap() - 152.0).abs() < 0.01, "{sealant:?}");
    // Two windows that touch are joined there: 72 in of heads, and a jamb of 36 in on each side.
    let pair =
        [rect(40.0, 37.0, 76.0, 73.0), rect(76.0, 37.0, 112.0, 73.0), rect(0.0, 0.0, 300.0, 96.0)];
    let bytes = dxf(&[("A-WALL-OTLN", &pair[2]), ("A-GLAZ", &pair[0]), ("A-GLAZ", &pair[1])]);
    let layout = lay(bytes.as_bytes(), &job("[estimate]\nsealant = true\n"));
    crate::recount::check(&crate::recount::written(&layout), "joined");
    let sealant = line(&layout, "sealant");
    assert!((sealant.length.unwrap() - 144.0).abs() < 0.01, "{sealant:?}");
}

#[test]
fn furring_goes_behind_cut_edges_that_stand_off() {
    // The sill at 37 in is cut in the course from 32 to 40 at 4 3/4 in: 3/4 in over the second face's
    // foot, where a double 4 stands off: 36 in of opening and 1/4 in on each side.
    let layout =
        laid("[product]\nkind = \"vinyl\"\n[courses]\ndatum = 0\n[estimate]\nfurring = true\n");
    let furring = line(&layout, "furring");
    assert!((furring.length.unwrap() - 36.5).abs() < 0.02, "{furring:?}");
    assert_eq!(furring.order, 1.0);
    // Cut at the top of a face, at 40 in, nothing stands off.
    let flush = house().replace("\n37\n", "\n36\n");
    let vinyl =
        job("[product]\nkind = \"vinyl\"\n[courses]\ndatum = 0\n[estimate]\nfurring = true\n");
    let layout = lay(flush.as_bytes(), &vinyl);
    assert!(layout.takeoff.iter().all(|l| l.id != "furring"));
}

#[test]
fn soffit_and_fascia_go_by_drawn_lengths_and_given_depths() {
    // The gable has no level eave; its rakes are hypot(150, 96) = 178.09 in each. At 12 in to a panel 15
    // cuts a rake, 30 of 16 in: eight go into a panel of 12 ft (8 x 16 and 7 saw cuts are 128 7/8), so four.
    let layout = laid(
        "[estimate]\nsoffit_depth = 24\nrake_soffit_depth = 16\nfascia = 6\nwrap_fascia = 8\n",
    );
    let soffit = line(&layout, "soffit");
    assert_eq!((soffit.length.unwrap(), soffit.order), (480.0, 4.0));
    // 178.09 in from stock of 144: 144 and 34.09 twice, the two short ones out of one: three.
    let rakes = 2.0 * 150f64.hypot(96.0);
    for id in ["soffit-channel", "fascia"] {
        let along = line(&layout, id);
        assert!((along.length.unwrap() - rakes).abs() < 0.01 && along.order == 3.0, "{along:?}");
    }
    // Strips of 8 in go three to a coil of 24 in: 118.73 in of 600.
    let coil = line(&layout, "coil");
    assert!((coil.length.unwrap() - rakes / 3.0).abs() < 0.01 && coil.order == 1.0, "{coil:?}");
    // A wall with a level top: 20 ft of eave are 20 cuts of 24 in. Six would fill a panel of 12 ft but for
    // the saw cuts, so five to a panel: four.
    let wall = dxf(&[("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 96.0))]);
    let layout = lay(wall.as_bytes(), &job("[estimate]\nsoffit_depth = 24\n"));
    crate::recount::check(&crate::recount::written(&layout), "eave");
    assert_eq!(
        (line(&layout, "soffit").length.unwrap(), line(&layout, "soffit").order),
        (480.0, 4.0)
    );
}

#[test]
fn what_the_job_counts_is_counted() {
    let layout = laid("[estimate]\nshutters = 3\nvents = 2\nblocks = 4\n");
    for (id, count, unit) in [
        ("shutters", 3.0, CountUnit::Pair),
        ("vents", 2.0, CountUnit::Piece),
        ("blocks", 4.0, CountUnit::Piece),
    ] {
        let l = line(&layout, id);
        assert_eq!((l.net, l.order, l.unit), (count, count, unit));
    }
}

#[test]
fn nails_go_by_the_pound_where_their_weight_is_given() {
    let boxes = laid("");
    let nails = line(&boxes, "panel-nails").net * 1000.0;
    let pounds = laid("[estimate]\nsiding_nails_per_pound = 150\n");
    let l = line(&pounds, "panel-nails");
    assert_eq!((l.unit, l.order), (CountUnit::Pound, (nails / 150.0 - 1e-9).ceil()));
    assert_eq!(line(&pounds, "trim-nails").unit, CountUnit::Box);
}

#[test]
fn labor_goes_by_the_offices_own_hours() {
    // Squares laid at 2 1/2 hours each and two vents at 45 minutes.
    let layout =
        laid("[estimate]\nvents = 2\n[estimate.hours]\nsquares-laid = 2.5\nvents = 0.75\n");
    let squares = line(&layout, "squares-laid").net;
    let labor = line(&layout, "labor");
    assert!((labor.net - (2.5 * squares + 1.5)).abs() < 1e-6, "{labor:?}");
    assert_eq!((labor.order, labor.unit), (labor.net.ceil(), CountUnit::Hour));
    for (text, key) in [
        ("[estimate.hours]\ncartoons = 1\n", "estimate.hours"),
        ("[estimate.item_numbers]\nskylight = \"7\"\n", "estimate.item_numbers"),
        ("[estimate.hours]\ncartons = -1\n", "estimate.hours"),
    ] {
        let e = said(&job_file::parse(text, "job.toml").unwrap_err().0);
        assert!(e.contains(key), "{text}: {e}");
    }
}

#[test]
fn colors_and_numbers_go_to_their_lines() {
    let layout = laid(
        "[product]\ncolor = \"sand\"\n[estimate.colors]\nj-channel = \"white\"\n[estimate.item_numbers]\ncartons = \"D4-150\"\n",
    );
    assert_eq!(line(&layout, "j-channel").color, "white");
    assert_eq!(line(&layout, "cartons").color, "sand");
    assert_eq!(line(&layout, "cartons").item_number, "D4-150");
    let takeoff = lapwright::takeoff::quantities(&layout);
    let csv = lapwright::write::csv::takeoff(&layout, &takeoff);
    let mut rows = csv::Reader::from_reader(csv.as_slice());
    let head = rows.headers().unwrap().clone();
    let at = |name: &str| head.iter().position(|h| h == name).unwrap();
    let row = rows.records().map(Result::unwrap).find(|r| &r[at("id")] == "cartons").unwrap();
    assert_eq!(&row[at("item number")], "D4-150");
}

#[test]
fn tax_is_on_priced_materials_and_on_no_labor() {
    let layout = laid("[estimate]\nvents = 2\ntax = 8.25\n[estimate.hours]\nvents = 0.5\n");
    let rows = "item,unit,price,currency\nvents,piece,19.99,USD\nlabor,hour,60,USD\n";
    let list = price::parse(rows.as_bytes(), "p").unwrap();
    let style = layout.job.sheet.lengths;
    let takeoff = lapwright::takeoff::quantities(&layout);
    let priced =
        price::applied(takeoff, &list, "p", &|l| items::item_and_unit(Language::English, l, style))
            .unwrap();
    let cost = price::taxed(priced.clone(), layout.job.estimate.tax).cost.unwrap();
    // 2 x 19.99 and an hour at 60.00; 8.25 % of 39.98 is 3.298.
    assert_eq!((cost.total, cost.tax), (9998, Some(330)));
    let said = lapwright::write::report::text(&layout, &price::taxed(priced.clone(), 8.25));
    assert!(said.contains("total with tax") && said.contains("103.28"), "{said}");
    assert_eq!(price::taxed(priced, 0.0).cost.unwrap().tax, None);
}
