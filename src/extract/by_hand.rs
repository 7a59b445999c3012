//! Walls that the job names: left out, or taken as one. Names are those that walls have without it.

use super::frame::ViewFrame;
use super::given::is_given;
use super::join;
use super::limits::NOISE;
use super::outline::Outline;
use crate::finding::by_hand::{Apart, HandFinding, NameList};
use crate::finding::{Finding, Findings};
use crate::geom::boolean::intersection;
use crate::geom::polygon::{Polygon, bounds, total_area};
use crate::geom::vocabulary::Rect;
use crate::job::Job;
use crate::model::house::{DrawnOpening, House, WallWay};
use crate::model::ids::{ElevationName, WallId};

/// The walls of a view as the job has them, elevation inches.
#[derive(Default)]
pub(super) struct Named {
    /// Outlines that are laid out, with their names.
    pub(super) walls: Vec<(Outline, WallId)>,
    /// Boards that part what the job joins.
    pub(super) boards: Vec<Polygon>,
    /// What is left bare between.
    pub(super) bare: Vec<Polygon>,
    /// Walls left out.
    pub(super) skipped: Vec<Polygon>,
    /// Boxes of drawn walls that are laid out as parts of others, or left out.
    pub(super) taken: Vec<Rect>,
}

/// Whether the job changes anything by names.
pub(super) fn names_walls(job: &Job) -> bool {
    !(job.skip.is_empty() && job.join.is_empty())
}

/// Leaves out and joins what the job names; openings that stand between joined walls grow to the casing
/// that the gap is.
pub(super) fn changed(
    local: &ViewFrame,
    walls: Vec<(Outline, WallId)>,
    openings: &mut Vec<DrawnOpening>,
    findings: &mut Findings,
) -> Named {
    let mut out = Named::default();
    let skips = |id: &WallId| local.job.skip.iter().any(|s| *id == **s);
    // A given wall stays under the name of the drawn one that gives way to it.
    let leaves_out = |(o, id): &(Outline, WallId)| skips(id) && o.given.is_none();
    let (skipped, mut kept): (Vec<_>, Vec<_>) = walls.into_iter().partition(leaves_out);
    out.skipped = skipped.iter().map(|(o, _)| o.polygon()).collect();
    out.taken = skipped.iter().map(|(o, _)| o.frame()).collect();
    openings.retain(|o| {
        let middle = bounds(&o.outline).unwrap_or_default().center();
        let on = |p: &Polygon| p.contains(middle);
        !out.skipped.iter().any(on) || kept.iter().any(|(o, _)| on(&o.polygon()))
    });
    for list in &local.job.join {
        let place = |n: &String| kept.iter().position(|(_, id)| **id == **n);
        let places: Vec<usize> = list.iter().filter_map(place).collect();
        // Names of other elevations, and names of none, are told of the whole house.
        if places.len() < list.len() || places.len() < 2 {
            continue;
        }
        let parts: Vec<Outline> = places.iter().map(|i| kept[*i].0.clone()).collect();
        let others = kept.iter().enumerate().filter(|(i, _)| !places.contains(i)).map(|(_, w)| w);
        match whole(&parts, others) {
            Err(apart) => findings.push(told_apart(local, list, apart)),
            Ok((outline, gaps)) => {
                let filled = join::fill(local, gaps, openings);
                findings.push(told(local, list, &filled, &outline));
                out.taken.extend(parts.iter().map(Outline::frame));
                out.boards.extend(filled.bands);
                out.bare.extend(filled.upright.into_iter().chain(filled.bare));
                let id = WallId::from(list[0].as_str());
                kept = without(kept, &places);
                kept.push((outline, id));
            }
        }
    }
    kept.sort_by(|(a, _), (b, _)| {
        let (a, b) = (a.frame(), b.frame());
        a.x0.total_cmp(&b.x0).then(a.y0.total_cmp(&b.y0))
    });
    out.walls = kept;
    out
}

/// Several walls with what parts them as one outline, and what parts them.
fn whole<'a>(
    parts: &[Outline],
    mut others: impl Iterator<Item = &'a (Outline, WallId)>,
) -> Result<(Outline, Vec<Polygon>), Apart> {
    let shapes: Vec<Polygon> = parts.iter().map(Outline::polygon).collect();
    let (whole, gaps) = join::joined(&shapes).ok_or(Apart::Facing)?;
    let over = |o: &Outline| {
        total_area(&intersection(&[o.polygon()], std::slice::from_ref(&whole))) > NOISE
    };
    if let Some((_, wall)) = others.find(|(o, _)| over(o)) {
        return Err(Apart::Between { wall: wall.clone() });
    }
    let mut outline = parts[0].clone();
    outline.ring = whole.outer;
    outline.openings = parts.iter().flat_map(|p| p.openings.clone()).collect();
    Ok((outline, gaps))
}

fn without(walls: Vec<(Outline, WallId)>, places: &[usize]) -> Vec<(Outline, WallId)> {
    let kept = walls.into_iter().enumerate().filter(|(i, _)| !places.contains(i));
    kept.map(|(_, w)| w).collect()
}

fn ids(list: &[String]) -> Vec<WallId> {
    list.iter().map(|n| WallId::from(n.as_str())).collect()
}

fn told_apart(local: &ViewFrame, list: &[String], apart: Apart) -> Finding {
    Finding::new(HandFinding::WallsApart { walls: ids(list), apart }).on(&local.view.name)
}

fn told(local: &ViewFrame, list: &[String], filled: &join::Filled, outline: &Outline) -> Finding {
    let bare = total_area(&filled.bare) / 144.0;
    let kind = HandFinding::WallsJoined {
        walls: ids(list),
        openings: filled.openings,
        boards: filled.bands.len() + filled.upright.len(),
        bare,
        filled: filled.bare.is_empty(),
    };
    let at = filled.bare.first().map_or(outline.frame(), Polygon::bounds).center();
    Finding::new(kind).at(local.source(at)).on(&local.view.name)
}

/// Takes out the openings and fixtures that the job names; tells what is left out, and names of the job
/// that nothing has. `walls` are all walls by elevation, those left out and joined among them.
pub(super) fn settle(
    house: &mut House,
    walls: &[(ElevationName, WallId)],
    job: &Job,
    findings: &mut Findings,
) {
    let (mut left_out, mut stay) = (Vec::new(), Vec::new());
    for name in &job.skip {
        let mut known = walls.iter().any(|(_, id)| *id == **name);
        let mut given = false;
        for wall in house.elevations.iter_mut().flat_map(|e| &mut e.walls) {
            let before = wall.openings.len() + wall.obstacles.len();
            given |= wall.id == **name && wall.way == WallWay::Job;
            given |= wall.openings.iter().any(|o| o.id == **name && is_given(o));
            wall.openings.retain(|o| o.id != **name || is_given(o));
            wall.obstacles.retain(|o| o.id != **name);
            known |= wall.openings.len() + wall.obstacles.len() < before;
        }
        match (given, known) {
            (true, _) => stay.push(name.clone()),
            (false, true) => left_out.push(name.clone()),
            (false, false) => findings.push(unknown(NameList::Skip, name, walls)),
        }
    }
    if !left_out.is_empty() {
        findings.push(Finding::new(HandFinding::LeftOutByJob { names: left_out }));
    }
    if !stay.is_empty() {
        findings.push(Finding::new(HandFinding::GivenStays { names: stay }));
    }
    for list in &job.join {
        let on = |n: &String| walls.iter().find(|(_, id)| *id == **n).map(|(e, _)| e);
        for name in list.iter().filter(|n| on(n).is_none()) {
            findings.push(unknown(NameList::Join, name, walls));
        }
        let mut elevations: Vec<ElevationName> = list.iter().filter_map(on).cloned().collect();
        elevations.sort();
        elevations.dedup();
        if elevations.len() > 1 {
            let apart = Apart::Elevations { elevations };
            findings.push(Finding::new(HandFinding::WallsApart { walls: ids(list), apart }));
        }
    }
}

fn unknown(list: NameList, name: &str, walls: &[(ElevationName, WallId)]) -> Finding {
    let walls = walls.iter().map(|(_, id)| id.clone()).collect();
    Finding::new(HandFinding::WallUnknown { list, named: name.to_owned(), walls })
}
