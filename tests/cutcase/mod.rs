//! Pieces made again from a cutter's figures alone, as `layout.json` has them, and held against what
//! is shown of them on the wall. Shares no code with the program.

#![allow(dead_code, reason = "each test binary uses its part")]

use serde_json::Value;

type P = (f64, f64);

/// How far the border of a piece as cut may lie off the border as shown: 1/16 in, the trade's
/// rounding (`DrawingFact::RoundHalfUp`).
const OFF: f64 = 1.0 / 16.0;

/// Places nearer than this are one, inches: a place that is the sum of two figures is off by the last
/// digit of each, and `layout.json` has six behind the point.
const WRITTEN: f64 = 1e-5;

fn num(v: &Value) -> f64 {
    v.as_f64().unwrap()
}

fn list(v: &Value) -> &[Value] {
    v.as_array().map_or(&[], Vec::as_slice)
}

fn points(v: &Value) -> Vec<P> {
    list(v).iter().map(|q| (num(&q[0]), num(&q[1]))).collect()
}

/// Every piece with its course.
pub(crate) fn pieces(layout: &Value) -> Vec<(&Value, &Value)> {
    let walls = list(&layout["elevations"]).iter().flat_map(|e| list(&e["walls"]));
    let courses = walls.flat_map(|w| list(&w["courses"]));
    courses
        .flat_map(|c| list(&c["runs"]).iter().flat_map(|r| list(&r["pieces"])).map(move |p| (c, p)))
        .collect()
}

/// Every piece whose figures make another shape than the one shown.
pub(crate) fn wrong(layout: &Value) -> Vec<String> {
    let mut out = Vec::new();
    for (course, piece) in pieces(layout) {
        // Parted by an opening: marked in place, the sheet says so.
        if piece.get("more").is_none() {
            out.extend(wrong_piece(course, piece).map(|w| format!("{}: {w}", piece["mark"])));
        }
    }
    out
}

fn wrong_piece(course: &Value, piece: &Value) -> Option<String> {
    let (x0, bottom) = (num(&piece["x0"]), num(&course["bottom"]));
    let own = |v: &Value| -> Vec<P> {
        points(v).into_iter().map(|(x, y)| (x - x0, y - bottom)).collect()
    };
    let shown = own(&piece["outline"]);
    let cut = ring(course, piece);
    let mut shown_holes: Vec<Vec<P>> =
        list(piece.get("holes").unwrap_or(&Value::Null)).iter().map(own).collect();
    let mut holes: Vec<Vec<P>> = list(&piece["notches"])
        .iter()
        .filter(|n| n["side"] == "hole")
        .map(|n| match n.get("contour") {
            Some(c) => points(&c["points"]),
            None => {
                let (l, f) = (num(&n["left"]), num(&n["foot"]));
                let (r, t) = (l + num(&n["width"]), f + num(&n["depth"]));
                vec![(l, f), (r, f), (r, t), (l, t)]
            }
        })
        .collect();
    let by_left = |a: &Vec<P>, b: &Vec<P>| left(a).total_cmp(&left(b));
    shown_holes.sort_by(by_left);
    holes.sort_by(by_left);
    if holes.len() != shown_holes.len() {
        return Some(format!("{} holes told, {} shown", holes.len(), shown_holes.len()));
    }
    std::iter::once((&cut, &shown)).chain(holes.iter().zip(&shown_holes)).find_map(|(a, b)| {
        let off = a.iter().map(|p| away(*p, b)).chain(b.iter().map(|p| away(*p, a)));
        let off = off.fold(0.0, f64::max);
        let (area, wanted) = (area(a), area(b));
        let room = OFF * around(b) / 2.0;
        (off > OFF || (area - wanted).abs() > room)
            .then(|| format!("{off:.3} in off, {area:.2} sq in for {wanted:.2}; cut {a:?}"))
    })
}

fn left(ring: &[P]) -> f64 {
    ring.iter().map(|p| p.0).fold(f64::INFINITY, f64::min)
}

/// Round the piece as a cutter goes: foot, right end, head, left end; notches and slots on the way.
fn ring(course: &Value, piece: &Value) -> Vec<P> {
    let face = num(&course["top"]) - num(&course["bottom"]);
    let (low, high) = match piece.get("rip") {
        Some(r) => (num(&r["from"]), num(&r["to"])),
        None => (0.0, face),
    };
    let notches: Vec<&Value> = list(&piece["notches"]).iter().collect();
    let of = |side: &str| -> Vec<&Value> {
        notches.iter().copied().filter(|n| n["side"] == side).collect()
    };
    let mut out = Vec::new();
    for n in of("bottom") {
        let (l, d) = (num(&n["left"]), num(&n["depth"]));
        let r = l + num(&n["width"]);
        out.push((l, low));
        match n.get("contour") {
            Some(c) => out.extend(points(&c["points"])),
            None => out.extend([(l, low + d), (r, low + d)]),
        }
        out.push((r, low));
    }
    out.extend(end(piece, "right", (low, high), &of("right")));
    for n in of("top").into_iter().rev() {
        let (l, d) = (num(&n["left"]), num(&n["depth"]));
        let r = l + num(&n["width"]);
        out.push((r, high));
        match n.get("contour") {
            Some(c) => out.extend(points(&c["points"]).into_iter().rev()),
            None => out.extend([(r, high - d), (l, high - d)]),
        }
        out.push((l, high));
    }
    out.extend(end(piece, "left", (low, high), &of("left")).into_iter().rev());
    without_spikes(out)
}

/// One end, bottom up: square, at its angle from its long point, or by its contour.
fn end(piece: &Value, name: &str, (low, high): P, slots: &[&Value]) -> Vec<P> {
    let end = &piece["ends"][usize::from(name == "right")];
    let (x, short_point) = (num(&end["long_point"]), num(&end["short_point"]));
    let inward = if name == "left" { 1.0 } else { -1.0 };
    let contour = end.get("contour").map(|c| points(&c["points"]));
    let set = (short_point - x) * inward;
    match (end["cut"].as_str().unwrap(), contour) {
        ("angled", Some(c)) if c.len() == 2 => {
            let rise = set * num(&end["angle"]).to_radians().tan();
            let long_at_foot = (c[1].0 - c[0].0) * inward > 0.0;
            // From the long point; a peak's ends meet under the head.
            if long_at_foot {
                vec![(x, low), (x + inward * set, (low + rise).min(high))]
            } else {
                vec![(x + inward * set, (high - rise).max(low)), (x, high)]
            }
        }
        (_, Some(c)) => c,
        (word, None) => {
            assert!(word == "factory" || word == "square", "{word} without a contour");
            assert_eq!((set, num(&end["angle"])), (0.0, 90.0));
            let mut out = vec![(x, low)];
            for n in slots {
                let (foot, d) = (num(&n["foot"]), num(&n["depth"]));
                let deep = if name == "left" {
                    num(&n["left"]) + num(&n["width"])
                } else {
                    num(&n["left"])
                };
                match n.get("contour") {
                    Some(c) => out.extend(points(&c["points"])),
                    None => out.extend([(x, foot), (deep, foot), (deep, foot + d), (x, foot + d)]),
                }
            }
            out.push((x, high));
            out
        }
    }
}

/// Without corners to which the border goes out and straight back.
fn without_spikes(mut ring: Vec<P>) -> Vec<P> {
    loop {
        let n = ring.len();
        let found = (0..n).find(|i| {
            let (a, b, c) = (ring[(i + n - 1) % n], ring[*i], ring[(i + 1) % n]);
            let (u, v) = ((b.0 - a.0, b.1 - a.1), (c.0 - b.0, c.1 - b.1));
            let (lu, lv) = (u.0.hypot(u.1), v.0.hypot(v.1));
            let cross = (u.0 * v.1 - u.1 * v.0).abs();
            lv < WRITTEN || lu < WRITTEN || (cross < 0.01 * lu * lv && u.0 * v.0 + u.1 * v.1 < 0.0)
        });
        match found {
            Some(i) if n > 3 => ring.remove(i),
            _ => return ring,
        };
    }
}

fn sides(ring: &[P]) -> impl Iterator<Item = (P, P)> + '_ {
    (0..ring.len()).map(|i| (ring[i], ring[(i + 1) % ring.len()]))
}

fn away(p: P, ring: &[P]) -> f64 {
    let of = |(a, b): (P, P)| {
        let (vx, vy) = (b.0 - a.0, b.1 - a.1);
        let l = vx * vx + vy * vy;
        let t =
            if l > 0.0 { (((p.0 - a.0) * vx + (p.1 - a.1) * vy) / l).clamp(0.0, 1.0) } else { 0.0 };
        (p.0 - a.0 - t * vx).hypot(p.1 - a.1 - t * vy)
    };
    sides(ring).map(of).fold(f64::INFINITY, f64::min)
}

fn area(ring: &[P]) -> f64 {
    (sides(ring).map(|(a, b)| a.0 * b.1 - b.0 * a.1).sum::<f64>() / 2.0).abs()
}

fn around(ring: &[P]) -> f64 {
    sides(ring).map(|(a, b)| (a.0 - b.0).hypot(a.1 - b.1)).sum()
}
