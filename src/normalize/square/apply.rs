//! Squares a net and writes it back into the lines.

use super::classes::{Axis, Class, classes};
use super::lines_of::values;
use super::net::{Becomes, Carrier, Net};
use super::noise::HAIR;
use super::sites::Sites;
use crate::geom::vocabulary::{BezPath, Point};
use crate::model::linework::Linework;
use crate::origin::Origin;
use crate::real::Real;

/// A vertex on a slope is drawn by chance where the slope bends less than this there, degrees.
const STRAIGHT: f64 = 0.5;

/// What was done.
#[derive(Clone, Debug, Default)]
pub(super) struct Done {
    /// Sides that leaned.
    pub(super) sides: usize,
    /// Steps that were closed.
    pub(super) steps: usize,
    /// The greatest distance a corner was moved, inches.
    pub(super) most: f64,
    /// Where that was.
    pub(super) at: Option<(Origin, Point)>,
}

/// Squares every part that has noise.
pub(super) fn squared(lines: &mut Linework, sites: &Sites) -> Done {
    let net = Net::of(lines, sites);
    if net.at.is_empty() {
        return Done::default();
    }
    let all = classes(&net);
    let mut to = net.at.clone();
    let values = values(&net, &all);
    for (class, value) in all.iter().zip(values) {
        let rough = net.rough[class.site].is_some();
        let value = if rough { value } else { agreed(&net, class) };
        let Some(v) = value else { continue };
        for i in &class.members {
            match class.axis {
                Axis::X => to[*i].x = v,
                Axis::Y => to[*i].y = v,
            }
        }
    }
    lines.roughness = net.rough.iter().flatten().copied().fold(0.0, f64::max);
    let mut done = counted(lines, &net, &to);
    write(lines, &net, &to, &mut done);
    done
}

/// In a part that is drawn clean: what most corners on a leaning side's line say, the rounder of two
/// that are said as often.
fn agreed(net: &Net, class: &Class) -> Option<f64> {
    if !class.leans {
        return None;
    }
    // Walls and roofs say where it is; a door that stands on it goes with it.
    let says = |i: &usize| super::noise::shows(net.chains[net.chain_of[*i]].role);
    let members = class.members.iter().filter(|i| says(i));
    let mut values: Vec<f64> = members.map(|i| class.axis.of(net.at[*i])).collect();
    values.sort_by(f64::total_cmp);
    let round = |v: f64| {
        let on = |step: f64| ((v / step).round() * step - v).abs() <= 1e-6;
        [0.0625, 0.125, 0.25, 0.5, 1.0].into_iter().filter(|s| on(*s)).count()
    };
    let said = values.chunk_by(|a, b| b - a <= HAIR);
    said.max_by(|a, b| {
        let (u, v) = (a[a.len() / 2], b[b.len() / 2]);
        // Of two that are as good the lower: a foot rather than what lies over it.
        a.len().cmp(&b.len()).then(round(u).cmp(&round(v))).then(v.total_cmp(&u))
    })
    .map(|c| c[c.len() / 2])
}

fn counted(lines: &Linework, net: &Net, to: &[Point]) -> Done {
    let mut done = Done::default();
    for s in &net.sides {
        let (a, b) = (to[s.a], to[s.b]);
        let level = s.becomes == Becomes::Level && a.y == b.y;
        let plumb = s.becomes == Becomes::Plumb && a.x == b.x;
        if a == b && s.lie.length > HAIR {
            done.steps += 1;
        } else if (level || plumb) && s.lie.lean > HAIR {
            done.sides += 1;
        }
    }
    for (i, (p, q)) in net.at.iter().zip(to).enumerate() {
        let by = p.distance(*q);
        if by > done.most {
            done.most = by;
            let origin = match net.chains[net.chain_of[i]].of {
                Carrier::Stroke(s) => lines.strokes[s].origin.clone(),
                Carrier::Loop(h, _) => lines.hatches[h].origin.clone(),
            };
            done.at = Some((origin, *p));
        }
    }
    done
}

fn write(lines: &mut Linework, net: &Net, to: &[Point], done: &mut Done) {
    for chain in &net.chains {
        let mut ring = to[chain.at.clone()].to_vec();
        if net.rough[chain.site].is_some() {
            let before = ring.len();
            let curved = net.curved[chain.at.clone()].iter().any(|c| *c);
            if !curved {
                straighten(&mut ring, chain.closed, net.step(chain.site));
            }
            done.steps += before - ring.len();
        }
        match chain.of {
            Carrier::Stroke(s) => lines.strokes[s].points = ring,
            Carrier::Loop(h, l) => {
                let mut path = BezPath::new();
                for (i, p) in ring.iter().enumerate() {
                    if i == 0 { path.move_to(*p) } else { path.line_to(*p) }
                }
                path.close_path();
                lines.hatches[h].hatch.loops[l] = path;
            }
        }
    }
}

/// Takes out vertices that a slope bends at by chance.
fn straighten(ring: &mut Vec<Point>, closed: bool, step: f64) {
    let mut i = usize::from(!closed);
    while ring.len() > 3 && i + usize::from(!closed) < ring.len() {
        let n = ring.len();
        let (a, b, c) = (ring[(i + n - 1) % n], ring[i], ring[(i + 1) % n]);
        let (u, v, w) = (b - a, c - b, c - a);
        let bend = u.cross(v).angle_over(u.dot(v)).to_degrees().abs();
        let off = w.cross(u).abs() / w.hypot().max(step);
        if off > 1e-9 && off <= step && bend <= STRAIGHT && u.dot(v) > 0.0 {
            ring.remove(i);
        } else {
            i += 1;
        }
    }
}
