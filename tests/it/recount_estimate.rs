//! Further lines of an estimate counted again from `layout.json` alone.

use std::collections::BTreeMap;

use serde_json::Value;

use crate::recount_flashing::{ordered, rolls, strips};

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

fn up(v: f64) -> f64 {
    (v - 1e-6).ceil().max(0.0)
}

fn between(a: &Value, b: &Value) -> f64 {
    (num(&a[0]) - num(&b[0])).hypot(num(&a[1]) - num(&b[1]))
}

/// Level and sloped sides over a wall, by its outline: those under which a place just inside lies lower.
fn tops(w: &Value) -> (Vec<f64>, Vec<f64>) {
    let ring = list(w, "outline");
    let (mut eaves, mut rakes) = (Vec::new(), Vec::new());
    for i in 0..ring.len() {
        let (a, b) = (&ring[i], &ring[(i + 1) % ring.len()]);
        if (num(&a[0]) - num(&b[0])).abs() <= 0.0625 {
            continue;
        }
        let (x, y) = ((num(&a[0]) + num(&b[0])) / 2.0, (num(&a[1]) + num(&b[1])) / 2.0);
        if inside(ring, x, y - 0.1) && !inside(ring, x, y + 0.1) {
            let level = (num(&a[1]) - num(&b[1])).abs() <= 0.0625;
            if level { eaves.push(between(a, b)) } else { rakes.push(between(a, b)) }
        }
    }
    (eaves, rakes)
}

fn inside(ring: &[Value], x: f64, y: f64) -> bool {
    let mut hits = false;
    for i in 0..ring.len() {
        let (a, b) = (&ring[i], &ring[(i + 1) % ring.len()]);
        let (x0, y0, x1, y1) = (num(&a[0]), num(&a[1]), num(&b[0]), num(&b[1]));
        if (y0 > y) != (y1 > y) && x < x0 + (y - y0) / (y1 - y0) * (x1 - x0) {
            hits = !hits;
        }
    }
    hits
}

/// Lengths cut from stock: what is needed, and the order held to what it can be.
fn cut(v: &Value, id: &str, lengths: &[f64], stock: f64) -> Option<(String, Count)> {
    let kerf = num(&v["job"]["seams"]["kerf"]);
    let sum: f64 = lengths.iter().sum();
    let with_kerf: Vec<f64> = lengths.iter().map(|l| l + kerf).collect();
    let (least, most) = rolls(&with_kerf, stock + kerf);
    (sum > 0.0).then(|| (id.to_owned(), (sum / stock, ordered(v, id).clamp(least, most))))
}

/// Round all openings of a wall, less their sills and twice what two that touch share.
fn flanged(w: &Value) -> f64 {
    let all = list(w, "openings");
    let round = |o: &Value| -> f64 {
        let ring = list(o, "outline");
        let sides = ring.iter().zip(ring.iter().cycle().skip(1));
        // A filler board in its frame is none of the opening.
        let x = |p: &Value| num(&p[0]).max(num(&o["left"])).min(num(&o["right"]));
        let up = sides.filter(|(a, b)| num(&b[0]) - num(&a[0]) < 1e-3);
        up.map(|(a, b)| (x(a) - x(b)).hypot(num(&a[1]) - num(&b[1]))).sum()
    };
    let shared = |a: &Value, b: &Value| -> f64 {
        let touch = (num(&a["right"]) - num(&b["left"])).abs() < 1e-3;
        let high = num(&a["head"]).min(num(&b["head"])) - num(&a["sill"]).max(num(&b["sill"]));
        if touch { high.max(0.0) } else { 0.0 }
    };
    let twice: f64 = all.iter().flat_map(|a| all.iter().map(move |b| 2.0 * shared(a, b))).sum();
    all.iter().map(round).sum::<f64>() - twice
}

#[allow(clippy::too_many_lines)] // One line after the other.
pub(crate) fn lines(v: &Value) -> BTreeMap<String, Count> {
    let mut out = BTreeMap::new();
    let e = &v["job"]["estimate"];
    let n = |key: &str| num(&e[key]);
    let area: f64 = walls(v).map(|w| num(&w["gross_area"]) * 144.0).sum();
    if e["barrier"] == true && area > 0.0 {
        let (wide, long) =
            (n("barrier_width") - n("barrier_lap"), n("barrier_length") - n("barrier_end_lap"));
        let net = area / wide / long;
        out.insert("weather-barrier".into(), (net, up(net)));
        let tape = (area / wide + area / long) / n("tape_roll");
        out.insert("barrier-tape".into(), (tape, up(tape)));
    }
    if e["sealant"] == true {
        let kind = v["job"]["product"]["kind"].as_str().unwrap();
        let butted = ["outside-corner", "inside-corner", "abutment", "rake", "jamb"];
        let bead: f64 = if ["wood", "fiber-cement"].contains(&kind) {
            let sides = walls(v).flat_map(|w| list(w, "edges"));
            let butted = sides.filter(|s| butted.contains(&s["kind"].as_str().unwrap()));
            butted.map(|s| between(&s["from"], &s["to"])).sum()
        } else {
            walls(v).map(flanged).sum()
        };
        // 231 cubic inches to a gallon, 128 ounces to it.
        let each = n("sealant_cartridge") * 231.0 / 128.0 / n("sealant_bead") / n("sealant_bead");
        if bead > 0.0 {
            out.insert("sealant".into(), (bead / each, up(bead / each)));
        }
    }
    if e["furring"] == true {
        let stock = n("furring_stock");
        let cuts: Vec<f64> = furred(v).into_iter().flat_map(|l| strips(l, stock, 0.0)).collect();
        out.extend(cut(v, "furring", &cuts, stock));
    }
    let (mut eaves, mut rakes) = (Vec::new(), Vec::new());
    for w in walls(v) {
        let (level, sloped) = tops(w);
        eaves.extend(level);
        rakes.extend(sloped);
    }
    let depths = [(&eaves, n("soffit_depth")), (&rakes, n("rake_soffit_depth"))];
    let across = depths.iter().flat_map(|(lengths, depth)| {
        let cuts = lengths.iter().map(|l| up(l / n("soffit_cover"))).sum::<f64>();
        std::iter::repeat_n(*depth, if *depth > 0.0 { cuts as usize } else { 0 })
    });
    let across: Vec<f64> = across.collect();
    out.extend(cut(v, "soffit", &across, n("soffit_stock")));
    let with: Vec<f64> = depths.iter().filter(|d| d.1 > 0.0).flat_map(|d| d.0.clone()).collect();
    let parted = |lengths: &[f64], stock: f64| -> Vec<f64> {
        lengths.iter().flat_map(|l| strips(*l, stock, 0.0)).collect()
    };
    let stock = n("soffit_stock");
    out.extend(cut(v, "soffit-channel", &parted(&with, stock), stock));
    let all: Vec<f64> = eaves.iter().chain(&rakes).copied().collect();
    if n("fascia") > 0.0 {
        let stock = n("fascia_stock");
        out.extend(cut(v, "fascia", &parted(&all, stock), stock));
    }
    let trims = |kind: &str| -> f64 {
        list(v, "trims").iter().filter(|t| t["kind"] == kind).map(|t| num(&t["length"])).sum()
    };
    let mut coil = 0.0;
    for (key, length) in [
        ("wrap_fascia", all.iter().sum()),
        ("wrap_frieze", trims("frieze")),
        ("wrap_band", trims("band")),
        ("wrap_surround", trims("surround")),
    ] {
        if n(key) > 0.0 {
            let side_by_side = (n("coil_width") / n(key) + 1e-9).floor().max(1.0);
            coil += length / side_by_side;
        }
    }
    if coil > 0.0 {
        let net = coil / n("coil_length");
        out.insert("coil".into(), (net, up(net)));
    }
    for id in ["shutters", "vents", "blocks"] {
        if n(id) > 0.0 && v["zone"].is_null() {
            out.insert(id.into(), (n(id), n(id)));
        }
    }
    out
}

/// Lengths of level cut edges of the pieces that the layout says to shim.
fn furred(v: &Value) -> Vec<f64> {
    let mut out = Vec::new();
    for c in walls(v).flat_map(|w| list(w, "courses")) {
        let pieces = list(c, "runs").iter().flat_map(|r| list(r, "pieces"));
        for p in pieces.filter(|p| p["edge_work"]["furring"] == true) {
            let ring = list(p, "outline");
            for i in 0..ring.len() {
                let (a, b) = (&ring[i], &ring[(i + 1) % ring.len()]);
                // Counter-clockwise: what runs left lies over the piece.
                let left = num(&a[0]) - num(&b[0]);
                let level = (num(&a[1]) - num(&b[1])).abs() < 0.03;
                if left > 0.03 && level && num(&a[1]) < num(&c["top"]) - 0.03 {
                    out.push(left);
                }
            }
        }
    }
    out
}

/// Hours of labor for the lines of the takeoff.
pub(crate) fn labor(v: &Value, lines: &BTreeMap<String, Count>) -> Option<Count> {
    let hours = v["job"]["estimate"]["hours"].as_object()?;
    let of = |(line, each): (&String, &Value)| {
        let (net, order) = lines.get(line)?;
        Some(if *order > 0.0 { order * num(each) } else { net * num(each) })
    };
    let net: f64 = hours.iter().filter_map(of).sum();
    (net > 0.0).then(|| (net, up(net)))
}
