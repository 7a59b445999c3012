//! Flashing counted again from `layout.json` alone: level runs, their strips and rolls, door pans.

use std::collections::BTreeMap;

use serde_json::Value;

fn list<'a>(v: &'a Value, key: &str) -> &'a [Value] {
    v[key].as_array().map_or(&[], Vec::as_slice)
}

fn num(v: &Value) -> f64 {
    v.as_f64().unwrap()
}

/// What a line must say: needed, to order.
type Count = (f64, f64);

/// From left to right, with its height and the number of its ends at corners.
type Span = (f64, f64, f64, f64);

/// Both ends of a side. One that ends where a corner's side of the field does goes on, at its own slope,
/// to the plumb side of the drawn outline behind it: flashing lies behind posts and corner boards.
pub(crate) fn to_corners(w: &Value, e: &Value) -> [(f64, f64); 2] {
    ends(w, e).map(|(place, _)| place)
}

/// At how many of its ends a corner stands.
pub(crate) fn turns(w: &Value, e: &Value) -> f64 {
    ends(w, e).iter().map(|(_, corner)| f64::from(u8::from(*corner))).sum()
}

/// The same, each with whether a corner stands there.
fn ends(w: &Value, e: &Value) -> [((f64, f64), bool); 2] {
    let at = |v: &Value| (num(&v[0]), num(&v[1]));
    let near = |p: (f64, f64), q: (f64, f64)| (p.0 - q.0).abs() + (p.1 - q.1).abs() < 0.06;
    let ring: Vec<(f64, f64)> = list(w, "outline").iter().map(at).collect();
    let (a, b) = (at(&e["from"]), at(&e["to"]));
    [(a, b), (b, a)].map(|(end, far)| {
        let corner = list(w, "edges").iter().any(|c| {
            ["outside-corner", "inside-corner"].contains(&c["kind"].as_str().unwrap())
                && (near(at(&c["from"]), end) || near(at(&c["to"]), end))
        });
        if !corner || (end.0 - far.0).abs() < 0.06 {
            return (end, false);
        }
        let out = (end.0 - far.0).signum();
        let plumb = ring.iter().zip(ring.iter().cycle().skip(1)).filter(|(p, q)| {
            (p.0 - q.0).abs() < 0.06 && p.1.min(q.1) < end.1 + 6.0 && p.1.max(q.1) > end.1 - 6.0
        });
        let past = plumb.map(|(p, _)| ((p.0 - end.0) * out).max(-0.06)).filter(|d| *d > -0.06);
        let past = past.fold(f64::INFINITY, f64::min);
        if past > 12.0 {
            return (end, false);
        }
        let slope = (end.1 - far.1) / (end.0 - far.0);
        ((end.0 + past * out, end.1 + past * out * slope), true)
    })
}

/// The skirt board whose top a level side lies on: what it stands on, and its foot.
fn skirt<'a>(w: &'a Value, e: &Value) -> Option<(&'a str, f64)> {
    let (x, y) = ((num(&e["from"][0]) + num(&e["to"][0])) / 2.0, num(&e["from"][1]));
    let on = |f: &&Value| {
        let side = |i: usize| num(&f["place"][i]);
        f["between"][1]["to"] == "course"
            && (side(3) - y).abs() <= 0.0625
            && side(0) < x
            && side(2) > x
    };
    let board = list(w, "fillers").iter().find(on)?;
    Some((board["between"][0]["to"].as_str().unwrap(), num(&board["place"][1])))
}

fn spans(w: &Value, kind: &str) -> Vec<Span> {
    let of_kind = |e: &&Value| match skirt(w, e) {
        Some(("lower-roof", _)) => kind == "lower-roof",
        _ => e["kind"] == kind,
    };
    let mine = list(w, "edges").iter().filter(|e| e["opening"].is_null()).filter(of_kind);
    let span = |e: &Value| {
        let [(a, first), (b, last)] = ends(w, e);
        let turns = f64::from(u8::from(first) + u8::from(last));
        let y = skirt(w, e).map_or(a.1, |(_, foot)| foot);
        ((a.1 - b.1).abs() <= 0.0625).then(|| (a.0.min(b.0), a.0.max(b.0), y, turns))
    };
    mine.filter_map(span).collect()
}

fn inside(rings: &[&Value], x: f64, y: f64) -> bool {
    let mut hits = 0;
    for ring in rings {
        let n = ring.as_array().unwrap().len();
        for i in 0..n {
            let (a, b) = (&ring[i], &ring[(i + 1) % n]);
            let (x0, y0, x1, y1) = (num(&a[0]), num(&a[1]), num(&b[0]), num(&b[1]));
            if (y0 > y) != (y1 > y) && x < x0 + (y - y0) / (y1 - y0) * (x1 - x0) {
                hits += 1;
            }
        }
    }
    hits % 2 == 1
}

fn rings(v: &Value) -> Vec<&Value> {
    list(v, "outline").iter().collect()
}

fn hidden(w: &Value, by: &str, x: f64, y: f64) -> bool {
    list(w, "hidden").iter().any(|h| h["by"] == by && inside(&rings(h), x, y))
}

/// Room that siding keeps over roofs and over ledges: what the job says, else by its kind.
fn room(v: &Value) -> (f64, f64) {
    let kind = v["job"]["product"]["kind"].as_str().unwrap();
    let boards = ["wood", "fiber-cement"].contains(&kind);
    let (roof, ledge) = if boards { (2.0, 0.25) } else { (0.5, 0.0) };
    let rules = &v["job"]["courses"];
    let given = |key: &str| rules[key].as_f64();
    (given("clear_of_roof").unwrap_or(roof), given("clear_of_ledge").unwrap_or(ledge))
}

/// Level runs of a wall: the short name of their line, their length, inches, and the corners they are
/// turned round.
fn runs(v: &Value, e: &Value, w: &Value) -> Vec<(&'static str, f64, f64)> {
    let (roof, ledge) = room(v);
    let mut out = Vec::new();
    let doors: Vec<&Value> = list(w, "openings")
        .iter()
        .filter(|o| o["kind"] == "door" || o["kind"] == "overhead-door")
        .collect();
    let mut roofs = spans(w, "lower-roof");
    for d in &doors {
        let (left, right, sill) = (num(&d["left"]), num(&d["right"]), num(&d["sill"]));
        // A door between two parts of one line, its foot on the roof.
        let stands = |y: f64| sill <= y + 0.0625 && sill >= y - roof - 1.0;
        let before = roofs.iter().find(|r| (r.1 - left).abs() < 1.0 && stands(r.2)).copied();
        let after = roofs.iter().any(|r| (r.0 - right).abs() < 1.0 && stands(r.2));
        if let Some(r) = before.filter(|_| after) {
            roofs.push((r.1, right, r.2, 0.0));
        }
    }
    roofs.sort_by(|a, b| a.2.total_cmp(&b.2).then(a.0.total_cmp(&b.0)));
    let mut whole: Vec<Span> = Vec::new();
    for r in roofs {
        match whole.last_mut() {
            Some(l) if (l.2 - r.2).abs() <= 0.0625 && r.0 - l.1 < 1.0 => {
                (l.1, l.3) = (l.1.max(r.1), l.3 + r.3);
            }
            _ => whole.push(r),
        }
    }
    for (a, b, y, turns) in whole {
        let deck = doors.iter().any(|d| {
            let step = num(&d["sill"]) - y;
            num(&d["left"]) < b && num(&d["right"]) > a && step >= -roof - 1.0 && step <= 9.0
        });
        out.push((if deck { "deck-flashing" } else { "roof-flashing" }, b - a, turns));
    }
    let band = |x: f64, y: f64| list(w, "bands").iter().any(|ring| inside(&[ring], x, y));
    for (a, b, y, turns) in spans(w, "bare-top") {
        let (x, under) = ((a + b) / 2.0, y - ledge - 0.5);
        let zone = list(e, "zones").iter().any(|z| inside(&rings(z), x, under));
        let id = match () {
            () if band(x, under) => "band-flashing",
            () if zone || hidden(w, "other-zone", x, under) => "cladding-flashing",
            () => "ledge-flashing",
        };
        out.push((id, b - a, turns));
    }
    for (a, b, y, turns) in spans(w, "bare-bottom") {
        let (x, over) = ((a + b) / 2.0, y + 0.5);
        let zone = list(e, "zones").iter().find(|z| inside(&rings(z), x, over));
        let other = match zone {
            Some(z) => z["laid_out"] == false,
            None => hidden(w, "not-sided", x, over),
        };
        if other && !band(x, over) {
            out.push(("cladding-flashing", b - a, turns));
        }
    }
    out.retain(|r| r.1 >= 1.0);
    out
}

/// Strips that a length is cut to by the roll, each lapped over the one before.
pub(crate) fn strips(length: f64, roll: f64, lap: f64) -> Vec<f64> {
    let (mut out, mut left) = (Vec::new(), length);
    while left > roll + 1e-6 {
        out.push(roll);
        left -= roll - lap;
    }
    out.push(left);
    out
}

/// Fewest rolls that can be, and rolls that first fit, longest first, takes.
pub(crate) fn rolls(strips: &[f64], roll: f64) -> (f64, f64) {
    let mut sorted = strips.to_vec();
    sorted.sort_by(|a, b| b.total_cmp(a));
    let mut left: Vec<f64> = Vec::new();
    for s in &sorted {
        match left.iter_mut().find(|l| **l >= s - 1e-3) {
            Some(l) => *l -= s,
            None => left.push(roll - s),
        }
    }
    ((strips.iter().sum::<f64>() / roll - 1e-6).ceil(), left.len() as f64)
}

/// Lines of level flashing and pans; the order of rolls is what the takeoff says, held to its bounds.
pub(crate) fn lines(v: &Value) -> BTreeMap<String, Count> {
    let mut out = BTreeMap::new();
    let rules = &v["job"]["takeoff"];
    let (roll, lap) = (num(&rules["flashing_roll"]), num(&rules["flashing_lap"]));
    let each = if v["job"]["sheet"]["lengths"] == "mm" { 1000.0 / 25.4 } else { 12.0 };
    let (mut cut, mut pans) = (Vec::new(), 0.0);
    for e in list(v, "elevations") {
        for w in list(e, "walls") {
            for (id, length, turns) in runs(v, e, w) {
                let line: &mut Count = out.entry(id.to_owned()).or_insert((0.0, 0.0));
                line.0 += length / each;
                cut.extend(strips(length + turns * lap, roll, lap));
            }
            pans += list(w, "openings").iter().filter(|o| o["kind"] == "door").count() as f64;
        }
    }
    if pans > 0.0 {
        out.insert("door-pans".into(), (pans, pans));
    }
    if !cut.is_empty() {
        let (least, most) = rolls(&cut, roll);
        let order = ordered(v, "continuous-flashing").clamp(least, most);
        out.insert("continuous-flashing".into(), (cut.iter().sum::<f64>() / roll, order));
    }
    out
}

/// What the takeoff orders of a line.
pub(crate) fn ordered(v: &Value, id: &str) -> f64 {
    let line = list(v, "takeoff").iter().find(|l| l["id"] == id);
    line.map_or(0.0, |l| num(&l["order"]))
}
