//! Notches: each where its opening or fixture bites into the course, as large as its clearances
//! ask, and none left out.

use super::scan::{length, without};
use super::sweep::{Height, Shapes};
use super::{Rule, same};
use crate::geom::tol::SAME;
use crate::model::layout::{Course, EndCut, Layout, Notch, NotchSide, Piece, RuleCheck, Wall, Xy};

/// Area cut away that counts as none, square inches.
const NOISE: f64 = 0.1;

pub(super) fn check(layout: &Layout) -> [RuleCheck; 1] {
    let mut rule = Rule::default();
    for (w, c, _, p) in layout.pieces() {
        for n in &p.notches {
            place(&mut rule, layout, w, c, p, n);
        }
        let ids = w.openings.iter().map(|o| &o.id).chain(w.obstacles.iter().map(|o| &o.id));
        for id in ids {
            let Some((b, aside, over)) = around(layout, w, id) else { continue };
            let bites = b[1] < c.top - SAME && b[3] > c.bottom + SAME && b[0] < p.x1 && b[2] > p.x0;
            if bites {
                let room = [b[0] - aside, b[1] - over, b[2] + aside, b[3] + over];
                let untold = untold(c, p, room);
                rule.case(untold < NOISE, || {
                    format!("piece {}: {untold:.2} sq in cut out for {id} and not told", p.mark)
                });
            }
        }
    }
    [rule.done("notches stand where openings bite into a course")]
}

/// Bounding box of an opening or a fixture with the room panels keep to its sides, and over or
/// under it.
fn around(layout: &Layout, w: &Wall, id: &str) -> Option<([f64; 4], f64, f64)> {
    let (gap, v) = (layout.job.end_gap(), layout.job.courses.notch_clearance);
    let opening = w.openings.iter().find(|o| o.id == id).map(|o| (&o.outline, gap, v));
    let fixture = w.obstacles.iter().find(|o| o.id == id).map(|o| {
        let room = if o.mounting_block { v } else { 0.0 };
        (&o.outline, room, room)
    });
    let (outline, aside, over) = opening.or(fixture)?;
    let none = [f64::INFINITY, f64::INFINITY, f64::NEG_INFINITY, f64::NEG_INFINITY];
    let b = outline
        .iter()
        .fold(none, |b, p| [b[0].min(p[0]), b[1].min(p[1]), b[2].max(p[0]), b[3].max(p[1])]);
    Some((b, aside, over))
}

fn place(rule: &mut Rule, layout: &Layout, w: &Wall, c: &Course, p: &Piece, n: &Notch) {
    let Some(([left, low, right, high], aside, over)) = around(layout, w, &n.around) else {
        rule.case(false, || {
            format!("piece {}: a notch round {}, which is not on {}", p.mark, n.around, w.id)
        });
        return;
    };
    let (x0, x1) = ((left - aside).max(p.x0), (right + aside).min(p.x1));
    let depth = match n.side {
        NotchSide::Top => c.top - (low - over).max(c.bottom),
        NotchSide::Bottom => (high + over).min(c.top) - c.bottom,
    };
    let agrees = same(p.x0 + n.left, x0) && same(n.width, x1 - x0) && same(n.depth, depth);
    rule.case(agrees && n.width > 0.0 && n.depth > 0.0, || {
        format!(
            "piece {}: the notch round {} is {:.3} wide at {:.3} and {:.3} deep, {:.3} wide at \
             {:.3} and {depth:.3} deep is needed",
            p.mark,
            n.around,
            n.width,
            n.left,
            n.depth,
            x1 - x0,
            x0 - p.x0
        )
    });
}

/// Where a notch is on the wall.
fn cut(c: &Course, p: &Piece, n: &Notch) -> Vec<Xy> {
    let (x0, x1) = (p.x0 + n.left, p.x0 + n.left + n.width);
    let (y0, y1) = match n.side {
        NotchSide::Top => (c.top - n.depth, c.top),
        NotchSide::Bottom => (c.bottom, c.bottom + n.depth),
    };
    vec![[x0, y0], [x1, y0], [x1, y1], [x0, y1]]
}

/// Area in `room` of the panel between a piece's ends and rips that neither shows nor is told as a
/// notch, a hole or what an angled end takes.
fn untold(c: &Course, p: &Piece, room: [f64; 4]) -> f64 {
    let rip = p.rip.as_ref().map_or((c.bottom, c.top), |r| (c.bottom + r.from, c.bottom + r.to));
    let (low, high) = (rip.0.max(room[1]), rip.1.min(room[3]));
    if high <= low {
        return 0.0;
    }
    let mut shapes = Shapes::default();
    let shown = shapes.add(std::iter::once(&p.outline).chain(&p.more));
    p.notches.iter().for_each(|n| {
        shapes.add([&cut(c, p, n)]);
    });
    let mut sum = 0.0;
    for slab in shapes.slabs(low, high) {
        let shows = slab.union(Height::Middle, |i| i == shown);
        let known = slab.union(Height::Middle, |_| true);
        let first = shows.first().map_or(p.x1, |s| s.0);
        let last = shows.last().map_or(p.x0, |s| s.1);
        let from = if p.left_end == EndCut::Angled { first } else { p.x0 };
        let to = if p.right_end == EndCut::Angled { last } else { p.x1 };
        let span = (from.max(room[0]), to.min(room[2]));
        if span.1 > span.0 {
            sum += slab.rise() * length(&without(&vec![span], &known));
        }
    }
    sum
}
