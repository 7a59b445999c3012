//! Every quantity counted again from `layout.json` alone. No code is shared with `takeoff`: figures
//! are worked out from pieces, trims and openings as the file has them, by the published rules.

use std::collections::{BTreeMap, BTreeSet};

use serde_json::Value;

use crate::support::{job, laid_by_a_crew, lay, root, samples};
use crate::{recount_estimate, recount_flashing};

/// What a line must say: needed, to order.
type Count = (f64, f64);

fn list<'a>(v: &'a Value, key: &str) -> &'a [Value] {
    v[key].as_array().map_or(&[], Vec::as_slice)
}

fn num(v: &Value) -> f64 {
    v.as_f64().unwrap()
}

fn walls(v: &Value) -> impl Iterator<Item = &Value> {
    list(v, "elevations").iter().flat_map(|e| list(e, "walls"))
}

fn pieces(wall: &Value) -> impl Iterator<Item = (&Value, &Value)> {
    let courses = list(wall, "courses").iter();
    courses
        .flat_map(|c| list(c, "runs").iter().flat_map(|r| list(r, "pieces")).map(move |p| (c, p)))
}

/// Smallest whole number not less than `v`, found by counting up.
fn up(v: f64) -> f64 {
    let mut n = 0.0;
    while n < v - 1e-6 {
        n += 1.0;
    }
    n
}

/// Nails on a strip: one at its start, then as many as leave no gap over the spacing, its end
/// included.
fn nails(length: f64, spacing: f64) -> f64 {
    let mut n = 1.0;
    let mut at = 0.0;
    while at < length - 1e-6 {
        at += spacing;
        n += 1.0;
    }
    n
}

fn stock_key(kind: &str) -> &'static str {
    match kind {
        "starter" => "starter",
        "outside-post" => "outside_post",
        "inside-post" => "inside_post",
        "bent-channel" => "flexible_channel",
        "finish-trim" => "finish_trim",
        "drip-cap" => "drip_cap",
        "sill-flashing" | "jamb-flashing" | "head-flashing" => "flashing",
        "surround" | "corner-cover" | "frieze" | "band" | "top-base" | "top-face" | "top-panel"
        | "crown" => "decorative",
        "filler" => "filler",
        "jamb-channel" | "head-channel" | "sill-channel" | "wall-channel" | "corner-channel"
        | "rake-channel" | "roof-channel" => "j_channel",
        other => panic!("trim {other}"),
    }
}

fn line_id(stock: &str) -> &'static str {
    match stock {
        "starter" => "starter-strip",
        "outside_post" => "outside-corner-post",
        "inside_post" => "inside-corner-post",
        "flexible_channel" => "flexible-j-channel",
        "finish_trim" => "finish-trim",
        "drip_cap" => "drip-cap",
        "filler" => "filler-board",
        _ => "j-channel",
    }
}

/// Whether an opening stands right of another, as high, with nothing or one board between: one frame.
fn mulled(wall: &Value, a: &Value, b: &Value) -> bool {
    let near = |u: f64, v: f64| (u - v).abs() < 0.06;
    let at = |o: &Value, side: &str| num(&o[side]);
    let sort = |o: &Value| ["window", "vent"].contains(&o["kind"].as_str().unwrap());
    let alike = near(at(a, "sill"), at(b, "sill")) && near(at(a, "head"), at(b, "head"));
    let square = [a, b].iter().all(|o| list(o, "outline").len() == 4);
    let board = |f: &Value| {
        let p = |i: usize| num(&f["place"][i]);
        let high = p(1) <= at(a, "sill") + 0.06 && p(3) >= at(a, "head") - 0.06;
        !f["opening"].is_null() && high && near(p(0), at(a, "right")) && near(p(2), at(b, "left"))
    };
    let close = near(at(a, "right"), at(b, "left")) || list(wall, "fillers").iter().any(board);
    square && alike && sort(a) == sort(b) && at(b, "left") > at(a, "left") && close
}

/// `TrimFact::SillFlashing`, `TrimFact::JambFlashing`: 9 in past each jamb under the sill and
/// over the head, jambs to 8 1/2 in over the head and to 1/2 in from the foot of the 9 in sill
/// flashing. Along a half circle of `n` chords over jambs it is as long as they are.
fn flashing(wall: &Value, o: &Value) -> f64 {
    let all = list(wall, "openings");
    if all.iter().any(|before| mulled(wall, before, o)) {
        return 0.0;
    }
    let mut last = o;
    while let Some(next) = all.iter().find(|n| mulled(wall, last, n)) {
        last = next;
    }
    let (w, h) = (num(&last["right"]) - num(&o["left"]), num(&o["head"]) - num(&o["sill"]));
    if let Some(n) = list(o, "outline").len().checked_sub(3).filter(|n| *n > 8) {
        let (r, half) = (w / 2.0, std::f64::consts::FRAC_PI_2 / n as f64);
        let head = n as f64 * 2.0 * r * half.sin();
        return (w + 18.0) + 2.0 * (h - r + 17.0) + (head + 18.0);
    }
    match o["kind"].as_str().unwrap() {
        "window" | "vent" => 2.0 * (w + 18.0) + 2.0 * (h + 17.0),
        _ => (w + 18.0) + 2.0 * (h + 8.5),
    }
}

/// Square inches of an outline of rings, holes wound the other way.
fn of_rings(part: &Value) -> f64 {
    let twice = |ring: &Value| -> f64 {
        let points: Vec<(f64, f64)> = ring.as_array().unwrap().iter().map(at).collect();
        let next = points.iter().cycle().skip(1);
        points.iter().zip(next).map(|(a, b)| a.0 * b.1 - b.0 * a.1).sum()
    };
    list(part, "outline").iter().map(twice).sum::<f64>().abs() / 2.0
}

fn at(v: &Value) -> (f64, f64) {
    (num(&v[0]), num(&v[1]))
}

/// Slopes of lower roofs along a wall: feet of slope, each turned round the corners it ends at, and feet where no other slope goes on down.
fn roofs(wall: &Value, lap: f64) -> (f64, f64) {
    let slopes: Vec<((f64, f64), (f64, f64))> = list(wall, "edges")
        .iter()
        .filter(|e| e["kind"] == "lower-roof")
        .map(|e| recount_flashing::to_corners(wall, e).into())
        .filter(|(a, b): &((f64, f64), (f64, f64))| (a.1 - b.1).abs() > 0.0625)
        .map(|(a, b)| if a.1 < b.1 { (a, b) } else { (b, a) })
        .collect();
    let turned = list(wall, "edges").iter().filter(|e| e["kind"] == "lower-roof");
    let turned = turned.filter(|e| (num(&e["from"][1]) - num(&e["to"][1])).abs() > 0.0625);
    let turned: f64 = turned.map(|e| recount_flashing::turns(wall, e)).sum();
    let feet: f64 = slopes.iter().map(|(a, b)| (a.0 - b.0).hypot(a.1 - b.1) / 12.0).sum();
    let feet = feet + turned * lap / 12.0;
    let near = |p: (f64, f64), q: (f64, f64)| (p.0 - q.0).hypot(p.1 - q.1) < 0.0625;
    // The roof ends there, and there is wall an inch farther out.
    let last = |low: &(f64, f64)| !slopes.iter().any(|(_, top)| near(*top, *low));
    let outline: Vec<(f64, f64)> = list(wall, "outline").iter().map(at).collect();
    let lowest = slopes.iter().filter(|(low, top)| {
        let out = if low.0 > top.0 { 1.0 } else { -1.0 };
        last(low) && crossed(&outline, (low.0 + out, low.1 + 0.5))
    });
    (feet, lowest.count() as f64)
}

/// Whether a ray to the right of a place crosses a ring an odd number of times.
fn crossed(ring: &[(f64, f64)], p: (f64, f64)) -> bool {
    let sides = ring.iter().zip(ring.iter().cycle().skip(1));
    let cuts = sides.filter(|(a, b)| {
        (a.1 > p.1) != (b.1 > p.1) && p.0 < a.0 + (p.1 - a.1) / (b.1 - a.1) * (b.0 - a.0)
    });
    cuts.count() % 2 == 1
}

#[allow(clippy::too_many_lines)] // One walk, told in order.
fn recount(v: &Value) -> BTreeMap<String, Count> {
    let mut out = BTreeMap::new();
    let product = &v["job"]["product"];
    let rules = &v["job"]["takeoff"];
    let stocks = list(v, "stocks");
    let length = num(&stocks[0]["length"]);
    let kind = product["kind"].as_str().unwrap();
    let boards = ["wood", "fiber-cement"].contains(&kind);
    let (mut laid, mut in_cartons) = (0.0, 0.0);
    let endings = ["", "-second", "-3", "-4", "-5", "-6", "-7", "-8"];
    for (stock, suffix) in stocks.iter().zip(endings) {
        let (length, carton) = (num(&stock["length"]), num(&stock["carton"]));
        let mine: BTreeSet<&str> = list(v, "panels")
            .iter()
            .filter(|p| (num(&p["stock"]) - length).abs() < 0.01)
            .map(|p| p["id"].as_str().unwrap())
            .collect();
        // Of several lengths one of which nothing is cut is no line.
        if stocks.len() > 1 && mine.is_empty() {
            continue;
        }
        let panels = mine.len() as f64;
        // The upper half of a panel ripped for another course is taken already.
        let used: f64 = walls(v)
            .flat_map(pieces)
            .filter(|(_, p)| p["half"] != "upper")
            .filter(|(_, p)| mine.contains(p["panel"].as_str().unwrap()))
            .map(|(_, p)| num(&p["length"]))
            .sum();
        out.insert(format!("panels{suffix}"), (used / length, panels));
        let wanted = up(panels * num(&rules["spare"]) / 100.0);
        // Whole cartons of what is laid may leave as many.
        let spare = if up(panels / carton) * carton - panels >= wanted { 0.0 } else { wanted };
        if wanted > 0.0 {
            out.insert(format!("spare-panels{suffix}"), (wanted, spare));
        }
        let cartons = up((panels + spare) / carton);
        // Boards are sold by the piece unless the job says otherwise.
        if !(boards && carton == 1.0) {
            out.insert(format!("cartons{suffix}"), ((panels + spare) / carton, cartons));
        }
        let face = length * num(&product["exposure"]) / 144.0;
        laid += panels * face / 100.0;
        in_cartons += cartons * carton * face / 100.0;
    }
    // TrimFact::FiberCementJoints: a piece of flashing behind each joint of fiber-cement.
    let joints: usize = walls(v)
        .flat_map(|w| list(w, "courses"))
        .flat_map(|c| list(c, "runs"))
        .map(|r| list(r, "pieces").len().saturating_sub(1))
        .sum();
    if kind == "fiber-cement" && joints > 0 {
        out.insert("joint-backing".into(), (joints as f64, joints as f64));
    }
    let face = length * num(&product["exposure"]) / 144.0;
    let net: f64 = walls(v).map(|w| num(&w["net_area"])).sum();
    out.insert("squares".into(), (net / 100.0, in_cartons));
    let bare: f64 = walls(v).flat_map(|w| list(w, "bare")).map(of_rings).sum();
    if bare > 0.0 {
        out.insert("bare-wall".into(), (bare / 14_400.0, 0.0));
    }
    out.insert("squares-laid".into(), (laid, 0.0));
    let by_area = up(net * (1.0 + num(&rules["area_waste"]) / 100.0) / face);
    out.insert("by-net-area".into(), (by_area, 0.0));

    let mut trims: BTreeMap<&str, (f64, BTreeSet<&str>)> = BTreeMap::new();
    let (mut trim_nails, mut corners) = (0.0, Vec::new());
    let mut flashed: BTreeSet<&str> = BTreeSet::new();
    let mut capped = 0.0;
    let caps = &mut capped;
    for t in list(v, "trims") {
        let stock = stock_key(t["kind"].as_str().unwrap());
        if stock == "outside_post" && list(t, "ends").iter().any(|e| e == "capped") {
            *caps += 1.0;
        }
        if stock == "flashing" {
            flashed.insert(t["stock"].as_str().unwrap());
            continue;
        }
        let entry = trims.entry(stock).or_default();
        entry.0 += num(&t["length"]);
        entry.1.insert(t["stock"].as_str().unwrap());
        let post = stock.ends_with("post");
        let flanges = if post { 2.0 } else { 1.0 };
        trim_nails += flanges * nails(num(&t["length"]), num(&rules["trim_nail_spacing"]));
        if post {
            corners.push(num(&t["length"]));
        }
    }
    for (stock, (length, bought)) in &trims {
        // Boards of every sort come in one length.
        let sold = if *stock == "filler" { "decorative" } else { *stock };
        let each = num(&v["job"]["trim"][sold]);
        let bought = bought.len() as f64;
        out.insert(line_id(stock).into(), (length / each, bought));
        let spare = up(bought * num(&rules["trim_spare"]) / 100.0);
        if spare > 0.0 {
            out.insert(format!("spare-{}", line_id(stock)), (spare, spare));
        }
    }

    if capped > 0.0 {
        out.insert("post-cap".into(), (capped, capped));
    }
    let roll = num(&rules["flashing_roll"]);
    let mut rolls = |id: &str, inches: f64| {
        if inches > 0.0 {
            out.insert(id.into(), (inches / roll, up(inches / roll)));
        }
    };
    rolls(
        "opening-flashing",
        walls(v).flat_map(|w| list(w, "openings").iter().map(move |o| flashing(w, o))).sum(),
    );
    let lap = num(&rules["flashing_lap"]);
    let corners: Vec<f64> =
        corners.iter().flat_map(|l| recount_flashing::strips(*l, roll, lap)).collect();
    rolls("corner-flashing", corners.iter().sum());
    if let Some(line) = out.get_mut("corner-flashing") {
        // Strips are cut whole: no more rolls than where each goes into the first that holds it.
        let (least, most) = recount_flashing::rolls(&corners, roll);
        line.1 = recount_flashing::ordered(v, "corner-flashing").clamp(least, most);
    }
    out.extend(recount_flashing::lines(v));
    out.extend(recount_estimate::lines(v));
    if let Some(line) = out.get_mut("opening-flashing") {
        // Strips are cut whole: as many rolls as the layout cuts them from.
        assert!(flashed.len() as f64 >= line.1);
        line.1 = flashed.len() as f64;
    }
    let (feet, outs) =
        walls(v).map(|w| roofs(w, lap)).fold((0.0, 0.0), |a, b| (a.0 + b.0, a.1 + b.1));
    if feet > 0.0 {
        let metric = v["job"]["sheet"]["lengths"] == "mm";
        let steps = if metric { feet * 0.3048 } else { feet };
        out.insert("step-flashing".into(), (steps, up(steps)));
    }
    if outs > 0.0 {
        out.insert("kick-out".into(), (outs, outs));
    }

    let size = num(&rules["nail_box"]);
    // A board has a nail at every stud.
    let own = if boards { &v["job"]["boards"]["stud_spacing"] } else { &rules["nail_spacing"] };
    let spacing = num(own);
    let count: f64 =
        walls(v).flat_map(pieces).map(|(_, p)| nails(num(&p["length"]), spacing)).sum();
    // By the pound where the job gives the nails' weight.
    let bought = |key: &str| {
        let per_pound = num(&v["job"]["estimate"][key]);
        if per_pound > 0.0 { per_pound } else { size }
    };
    let count = count / bought("siding_nails_per_pound");
    out.insert("panel-nails".into(), (count, up(count)));
    let zones = list(v, "elevations").iter().flat_map(|e| list(e, "zones"));
    for z in zones.filter(|z| z["laid_out"] == false) {
        let name = z["zone"].as_str().unwrap().to_lowercase().replace(' ', "-");
        let line = out.entry(format!("zone-{name}")).or_insert((0.0, 0.0));
        line.0 += num(&z["net_area"]) / 100.0;
    }
    if trim_nails > 0.0 {
        let count = trim_nails / bought("trim_nails_per_pound");
        out.insert("trim-nails".into(), (count, up(count)));
    }
    let blocks =
        walls(v).flat_map(|w| list(w, "obstacles")).filter(|o| o["mounting_block"] == true).count()
            as f64;
    if blocks > 0.0 {
        out.insert("mounting-blocks".into(), (blocks, blocks));
    }
    if let Some(labor) = recount_estimate::labor(v, &out) {
        out.insert("labor".into(), labor);
    }
    out
}

pub(crate) fn check(v: &Value, name: &str) {
    let mut expected = recount(v);
    for line in list(v, "takeoff") {
        let id = line["id"].as_str().unwrap();
        let (net, order) = expected.remove(id).unwrap_or_else(|| panic!("{name}: line {id}"));
        assert!((num(&line["net"]) - net).abs() < 1e-4, "{name}, {id}: {} {net}", line["net"]);
        assert!(
            (num(&line["order"]) - order).abs() < 1e-6,
            "{name}, {id}: {} {order}",
            line["order"]
        );
        let shares = list(line, "shares");
        let sum: f64 = shares.iter().map(|s| num(&s["net"])).sum();
        assert!(shares.is_empty() || (sum - net).abs() < 1e-4, "{name}, {id}: shares {sum}");
        if order > 0.0 {
            // What is bought and not used; squares are weighed by net area, others by length.
            let bought_used = match id {
                "cartons" => recount(v)["panels"].0 / num(&v["stocks"][0]["carton"]),
                "cartons-second" => recount(v)["panels-second"].0 / num(&v["stocks"][1]["carton"]),
                "cartons-3" => recount(v)["panels-3"].0 / num(&v["stocks"][2]["carton"]),
                "panels" => recount(v)["panels"].0,
                _ => net,
            };
            let waste = 100.0 * (1.0 - bought_used / order);
            assert!((num(&line["waste"]) - waste).abs() < 1e-3, "{name}, {id}: {}", line["waste"]);
        }
    }
    assert!(expected.is_empty(), "{name}: not in the takeoff: {expected:?}");
}

pub(crate) fn written(layout: &lapwright::layout::Layout) -> Value {
    serde_json::from_slice(&lapwright::write::json::layout(layout)).unwrap()
}

#[test]
fn every_quantity_of_every_sample_is_counted_again() {
    let mut lines = BTreeSet::new();
    for (stem, _) in samples() {
        let v = written(&laid_by_a_crew(&stem));
        check(&v, &stem);
        lines.extend(recount(&v).into_keys());
    }
    // Together the samples have every line that the job need not ask for: 24, spare panels, and spare ones
    // of seven kinds of trim.
    assert_eq!(lines.len(), 32, "{lines:?}");
}

#[test]
fn quantities_under_another_job_are_counted_again() {
    let path = root().join("sample-drawings/curlew-cottage.dxf");
    let mut job = job(&path);
    job.product.exposure = 10.0;
    job.product.length = 200.0;
    job.product.carton = 15;
    job.takeoff.spare = 5.0;
    job.takeoff.nail_spacing = 12.0;
    job.takeoff.trim_nail_spacing = 8.0;
    job.takeoff.nail_box = 250;
    job.takeoff.area_waste = 15.0;
    job.takeoff.flashing_roll = 300.0;
    job.trim.j_channel = 144.0;
    job.trim.outside_post = 240.0;
    job.sheet.lengths = lapwright::units::LengthStyle::Mm;
    job.seams.effort = lapwright::model::seam::Effort::Crew;
    let v = written(&lay(&std::fs::read(&path).unwrap(), &job));
    check(&v, "another job");
    assert!(recount(&v).contains_key("spare-panels"));
}

#[test]
fn zones_are_counted_again() {
    // A wall of 25 x 8 ft under a gable 8 ft high: 200 and 100 sq ft (Example::WallAndGable).
    let wall = [(0.0, 0.0), (300.0, 0.0), (300.0, 96.0), (150.0, 192.0), (0.0, 96.0)];
    let layout =
        lay(crate::support::dxf(&[("A-WALL-OTLN", &wall)]).as_bytes(), &crate::support::inches());
    let v = written(&layout);
    let w = walls(&v).next().unwrap();
    assert!((num(&w["gable_area"]) - 100.0).abs() < 1e-3, "{}", w["gable_area"]);
    let line = |id: &str| list(&v, "takeoff").iter().find(|l| l["id"] == id).unwrap();
    let zone = |id: &str, zone: &str| -> (f64, f64) {
        let mine = list(line(id), "shares").iter().filter(|s| s["wall_part"] == zone);
        mine.fold((0.0, 0.0), |(n, p), s| (n + num(&s["net"]), p + num(&s["pieces"])))
    };
    assert!((zone("squares", "wall").0 - 2.0).abs() < 1e-5);
    assert!((zone("squares", "gable").0 - 1.0).abs() < 1e-5);
    // Pieces over the eaves' height are the gable's, and so are their nails.
    for (name, above) in [("wall", false), ("gable", true)] {
        let mine: Vec<f64> = pieces(w)
            .filter(|(c, _)| (num(&c["bottom"]) >= 96.0 - 0.01) == above)
            .map(|(_, p)| num(&p["length"]))
            .collect();
        assert!(mine.len() > 5);
        let (net, count) = zone("panels", name);
        assert_eq!(count, mine.len() as f64, "{name}");
        assert!((net - mine.iter().sum::<f64>() / 150.0).abs() < 1e-4, "{name}");
        let of_nails: f64 = mine.iter().map(|l| nails(*l, 16.0)).sum();
        assert!((zone("panel-nails", name).0 - of_nails / 1000.0).abs() < 1e-5, "{name}");
    }
    // Starter and posts stand below; the rakes' channels above.
    assert_eq!(zone("starter-strip", "gable").1, 0.0);
    assert_eq!(zone("outside-corner-post", "gable").1, 0.0);
    assert!(zone("j-channel", "gable").1 >= 2.0);
}
