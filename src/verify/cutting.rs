//! Panels: contents fit, every piece on one panel, marks once; ends, rips and notches agree with
//! what shows on the wall; counts agree with pieces.

use std::collections::{BTreeMap, BTreeSet};

use super::{Rule, same};
use crate::model::layout::{EndCut, Layout, NotchSide, Piece, RuleCheck};

pub(super) fn check(layout: &Layout) -> [RuleCheck; 5] {
    [contents(layout), marks(layout), shapes(layout), notches(layout), counts(layout)]
}

fn contents(layout: &Layout) -> RuleCheck {
    let mut rule = Rule::default();
    let kerf = layout.job.seams.kerf;
    let pieces: BTreeMap<&str, &Piece> =
        layout.pieces().map(|(.., p)| (p.mark.as_str(), p)).collect();
    for panel in &layout.panels {
        rule.case(same(panel.stock, layout.job.product.length), || {
            format!("panel {} is {:.3} long", panel.id, panel.stock)
        });
        let mut cuts: Vec<&Piece> =
            panel.pieces.iter().filter_map(|m| pieces.get(m.as_str()).copied()).collect();
        rule.case(cuts.len() == panel.pieces.len() && !cuts.is_empty(), || {
            format!("panel {} names a piece that is on no wall", panel.id)
        });
        cuts.sort_by(|a, b| a.start.total_cmp(&b.start));
        for p in &cuts {
            rule.case(p.panel == panel.id, || {
                format!("panel {} holds {}, which says {}", panel.id, p.mark, p.panel)
            });
            rule.case(
                p.start >= -super::SAME && p.end <= panel.stock + super::SAME && p.end > p.start,
                || {
                    format!(
                        "piece {} runs from {:.3} to {:.3} on panel {}",
                        p.mark, p.start, p.end, panel.id
                    )
                },
            );
        }
        for pair in cuts.windows(2) {
            rule.case(pair[1].start - pair[0].end >= kerf - super::SAME, || {
                format!(
                    "panel {}: no saw cut between {} and {}",
                    panel.id, pair[0].mark, pair[1].mark
                )
            });
        }
        let mut at = 0.0;
        let mut free: f64 = 0.0;
        for p in &cuts {
            free = free.max(p.start - at - if p.start > super::SAME { kerf } else { 0.0 });
            at = p.end + kerf;
        }
        free = free.max(panel.stock - at).max(0.0);
        rule.case(same(panel.offcut, free), || {
            format!("panel {}: offcut {:.3}, left over {free:.3}", panel.id, panel.offcut)
        });
    }
    rule.done("what is cut from a panel fits it, with a saw cut between")
}

fn marks(layout: &Layout) -> RuleCheck {
    let mut rule = Rule::default();
    let mut seen = BTreeSet::new();
    let listed: BTreeSet<&str> =
        layout.panels.iter().flat_map(|p| &p.pieces).map(String::as_str).collect();
    for (.., p) in layout.pieces() {
        rule.case(seen.insert(&p.mark), || format!("mark {} stands twice", p.mark));
        rule.case(listed.contains(p.mark.as_str()), || {
            format!("piece {} is cut from no panel", p.mark)
        });
    }
    let on_panels: usize = layout.panels.iter().map(|p| p.pieces.len()).sum();
    rule.case(on_panels == listed.len(), || "a piece is cut from two panels".to_owned());
    rule.done("every piece has one mark and one panel")
}

/// Angles, lengths and rips against the outline.
fn shapes(layout: &Layout) -> RuleCheck {
    let mut rule = Rule::default();
    for (_, c, r, p) in layout.pieces() {
        let ys: Vec<f64> = p.outline.iter().map(|q| q[1]).collect();
        let xs: Vec<f64> = p.outline.iter().map(|q| q[0]).collect();
        let range = |v: &[f64]| {
            v.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), x| (a.min(*x), b.max(*x)))
        };
        let ((low, high), (left, right)) = (range(&ys), range(&xs));
        rule.case(
            left >= p.x0 - 0.02
                && right <= p.x1 + 0.02
                && (!p.more.is_empty() || (left <= p.x0 + 0.02 && right >= p.x1 - 0.02)),
            || {
                format!(
                    "piece {} shows {left:.3} to {right:.3}, said to be {:.3} to {:.3}",
                    p.mark, p.x0, p.x1
                )
            },
        );
        rule.case(low >= c.bottom - 0.02 && high <= c.top + 0.02, || {
            format!("piece {} leaves its course", p.mark)
        });
        if let Some(rip) = &p.rip {
            let agrees =
                (low - c.bottom - rip.from).abs() < 0.02 && (high - c.bottom - rip.to).abs() < 0.02;
            rule.case(agrees && rip.to > rip.from, || {
                format!(
                    "piece {} is ripped {:.3} to {:.3}, shows {:.3} to {:.3}",
                    p.mark,
                    rip.from,
                    rip.to,
                    low - c.bottom,
                    high - c.bottom
                )
            });
        }
        for (end, angle, set) in
            [(p.left_end, p.left_angle, p.left_set), (p.right_end, p.right_angle, p.right_set)]
        {
            let square = end != EndCut::Angled && same(angle, 90.0) && set == 0.0;
            let angled = end == EndCut::Angled && angle > 0.0 && angle < 90.0 && set > 0.0;
            rule.case(square || angled, || {
                format!("piece {}: end {end:?} at {angle:.2} degrees, {set:.3} set", p.mark)
            });
        }
        for (slope, angle, first) in [
            (r.left_slope, p.left_angle, p.x0 <= r.x0 + r.gap + 0.02),
            (r.right_slope, p.right_angle, p.x1 >= r.x1 - r.gap - 0.02),
        ] {
            if first && slope != 0.0 && angle < 90.0 {
                // A slope of s sideways for one up is a cut whose tangent with the long edge is 1/s.
                let expected = (1.0 / slope.abs()).atan().to_degrees();
                rule.case((expected - angle).abs() < 0.5, || {
                    format!(
                        "piece {}: cut at {angle:.2} degrees, the wall slopes at {expected:.2}",
                        p.mark
                    )
                });
            }
        }
    }
    rule.done("ends, angles and rips agree with what shows on the wall")
}

fn inside(ring: &[[f64; 2]], x: f64, y: f64) -> bool {
    let mut odd = false;
    for i in 0..ring.len() {
        let (a, b) = (ring[i], ring[(i + 1) % ring.len()]);
        if (a[1] > y) != (b[1] > y) && x < a[0] + (y - a[1]) * (b[0] - a[0]) / (b[1] - a[1]) {
            odd = !odd;
        }
    }
    odd
}

/// A notch is empty, and its sides are the outline's.
fn notches(layout: &Layout) -> RuleCheck {
    let mut rule = Rule::default();
    for (w, c, _, p) in layout.pieces() {
        for n in &p.notches {
            let x0 = p.x0 + n.left;
            let (x1, mid) = (x0 + n.width, x0 + n.width / 2.0);
            let edge = if n.side == NotchSide::Top { c.top } else { c.bottom };
            let into = if n.side == NotchSide::Top { -1.0 } else { 1.0 };
            let y = edge + into * n.depth / 2.0;
            let empty = !inside(&p.outline, mid, y) || p.holes.iter().any(|h| inside(h, mid, y));
            rule.case(empty, || {
                format!(
                    "piece {}: the notch round {} is not cut out of its outline",
                    p.mark, n.around
                )
            });
            let known = w.openings.iter().any(|o| o.id == n.around)
                || w.obstacles.iter().any(|o| o.id == n.around);
            rule.case(known && x0 >= p.x0 - 0.02 && x1 <= p.x1 + 0.02 && n.depth > 0.0, || {
                format!("piece {}: the notch round {} leaves the piece", p.mark, n.around)
            });
        }
        // An opening that bites into the course must have its notch, if this piece runs past it.
        for o in &w.openings {
            let bites = o.sill > c.bottom + 0.02 && o.sill < c.top - 0.02 && o.head >= c.top
                || o.head > c.bottom + 0.02 && o.head < c.top - 0.02 && o.sill <= c.bottom;
            let past = o.left > p.x0 + 1.0 && o.right < p.x1 - 1.0;
            let whole = p.outline.iter().any(|q| (q[1] - c.top).abs() < 0.02)
                && p.outline.iter().any(|q| (q[1] - c.bottom).abs() < 0.02);
            if bites && past && whole {
                rule.case(p.notches.iter().any(|n| n.around == o.id), || {
                    format!("piece {}: no notch for {}", p.mark, o.id)
                });
            }
        }
    }
    rule.done("notches stand where openings bite into a course")
}

fn counts(layout: &Layout) -> RuleCheck {
    let mut rule = Rule::default();
    rule.case(layout.bound.best == layout.panels.len(), || {
        format!("{} panels counted, {} cut", layout.bound.best, layout.panels.len())
    });
    rule.case(layout.bound.panels <= layout.bound.best, || {
        format!("bound {} over {} panels", layout.bound.panels, layout.bound.best)
    });
    rule.case(layout.bound.proven == (layout.bound.panels == layout.bound.best), || {
        "proven is said wrongly".to_owned()
    });
    let line = layout.takeoff.iter().find(|l| l.item == "panels");
    rule.case(line.is_some_and(|l| l.order == layout.panels.len() as f64), || {
        "the takeoff's panels are not those cut".to_owned()
    });
    rule.done("counts agree with pieces")
}
