//! The story pole as a table: every butt line, start, head, sill and top with what it belongs to.

use std::collections::BTreeMap;

use super::levels::level_side;
use crate::geom::tol::{GRID, SAME, snap};
use crate::model::course::{PlannedCourse, StoryPole};
use crate::model::house::{DrawnWall, EdgeKind, House, OpeningKind};
use crate::model::ids::{ElevationName, FeatureId};
use crate::model::pole::{LineKind, PoleLine};
use crate::model::receiver::Field;

/// Bottom up; at one height the butt line first. `courses[i]` are the courses of `fields[i]`.
pub fn lines(
    house: &House,
    fields: &[Field],
    courses: &[Vec<PlannedCourse>],
    pole: &StoryPole,
) -> Vec<PoleLine> {
    let mut at: BTreeMap<(i64, LineKind), (Vec<ElevationName>, Vec<FeatureId>)> = BTreeMap::new();
    let mut add = |y: f64, kind: LineKind, elevation: &str, name: Option<&str>| {
        let entry = at.entry(((y / GRID).round() as i64, kind)).or_default();
        if !entry.0.iter().any(|e| e == elevation) {
            entry.0.push(elevation.into());
        }
        if let Some(name) = name.filter(|n| !entry.1.iter().any(|o| o == n)) {
            entry.1.push(name.into());
        }
    };
    for (field, list) in fields.iter().zip(courses) {
        let Some(e) = house.elevations.get(field.elevation) else { continue };
        for c in list {
            add(c.bottom, LineKind::Butt, &e.name, None);
            add(c.top, LineKind::Butt, &e.name, None);
        }
        // GridWidth at grade are starts too: the field has them, the drawn wall has not.
        let Some(w) = e.walls.get(field.wall) else { continue };
        for s in field.edges.iter().filter(|s| s.kind == EdgeKind::Base) {
            add(s.from.y, LineKind::Start, &e.name, Some(&w.id));
        }
    }
    for e in &house.elevations {
        for w in &e.walls {
            for (kind, y, name) in of_wall(w) {
                add(y, kind, &e.name, Some(name));
            }
        }
    }
    at.into_iter()
        .map(|((y, kind), (elevations, names))| {
            let height = snap(y as f64 * GRID);
            let index = pole.course_at(height);
            let over = height - pole.butt(index);
            let over = if over.abs() <= SAME { 0.0 } else { over };
            PoleLine { height, kind, course: index + 1, over, elevations, names }
        })
        .collect()
}

fn of_wall(w: &DrawnWall) -> Vec<(LineKind, f64, &str)> {
    let mut out = Vec::new();
    let mut peak: Option<f64> = None;
    for e in &w.edges {
        let kind = match e.kind {
            EdgeKind::BareTop => LineKind::StoneTop,
            EdgeKind::LowerRoof => LineKind::RoofFoot,
            EdgeKind::Eave => LineKind::Eave,
            EdgeKind::BareBottom => LineKind::Band,
            EdgeKind::Rake => {
                let top = e.from.y.max(e.to.y);
                peak = Some(peak.map_or(top, |p: f64| p.max(top)));
                continue;
            }
            _ => continue,
        };
        if (e.from.y - e.to.y).abs() <= crate::geom::tol::LEVEL {
            out.push((kind, e.from.y, w.id.as_str()));
        } else if kind == LineKind::Eave {
            // Out of level as taped: both its ends are marked.
            out.extend([e.from.y, e.to.y].map(|y| (kind, y, w.id.as_str())));
        }
    }
    out.extend(peak.map(|y| (LineKind::Peak, y, w.id.as_str())));
    for o in &w.openings {
        let (_, _, sill, head) = o.sides();
        out.push((LineKind::Head, head, o.id.as_str()));
        let door = matches!(o.kind, OpeningKind::Door | OpeningKind::OverheadDoor);
        if !door && level_side(o, sill).is_some() {
            out.push((LineKind::Sill, sill, o.id.as_str()));
        }
    }
    out
}
