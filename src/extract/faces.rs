//! Walls of a view: outlines, what is bare or hidden in them, and faults of outlines.

use super::crossing::{crossed, crossing};
use super::edges::{Beside, edges};
use super::frame::ViewFrame;
use super::give::{give_obstacles, give_openings};
use super::hidden::{hidden, touches, within};
use super::limits::NOISE;
use super::numbers::{Numbered, numbers};
use super::openings::{cased, obstacles, openings};
use super::outline::Outline;
use super::ways::hatch;
use super::ways::recess::FoundOpening;
use super::{by_hand, given, limits, parts, too_large, zones};
use crate::finding::house::HouseFinding;
use crate::finding::{Finding, Findings};
use crate::geom::boolean::{difference, intersection, union_all};
use crate::geom::polygon::{Polygon, total_area};
use crate::geom::sliver::without_slivers;
use crate::geom::vocabulary::{Point, Rect};
use crate::model::house::{DrawnOpening, DrawnWall, DrawnZone, HiddenBy, OpeningKind, WallWay};
use crate::model::ids::WallId;
use crate::model::linework::Role;

/// What a view shows of the house.
#[derive(Default)]
pub(crate) struct Shown {
    /// Its walls.
    pub(crate) walls: Vec<DrawnWall>,
    /// What zones cover of them.
    pub(crate) zones: Vec<DrawnZone>,
    /// Names of all walls, those that the job leaves out or joins among them.
    pub(crate) named: Vec<WallId>,
    /// Walls that the job leaves out.
    pub(crate) skipped: Vec<Polygon>,
    /// Boxes of drawn walls that the job leaves out, joins or gives otherwise.
    pub(crate) taken: Vec<Rect>,
}

/// Names walls by their view, in their order from its left.
fn numbered(local: &ViewFrame, places: &[Numbered], found: &mut [DrawnWall]) -> Vec<WallId> {
    for (number, w) in numbers(places).into_iter().zip(found.iter_mut()) {
        w.id = format!("{}-{number}", local.slug).into();
    }
    found.iter().map(|w| w.id.clone()).collect()
}

/// The walls of a view with everything on them.
pub(crate) fn walls(local: &ViewFrame, outlines: Vec<Outline>, findings: &mut Findings) -> Shown {
    let given = given::openings(local, &outlines);
    let drawn = given::before(openings(local), &given);
    let (outlines, every) = settled(local, outlines, drawn, findings);
    let mut every = given::before(every, &given);
    // A flat surround stands round the opening; the channel goes round the surround.
    surrounded(&mut every, local.job.trim.surround);
    let mut bare: Vec<Polygon> = zones::bare(local);
    bare.extend(outlines.iter().flat_map(|o| o.trimmings.bare.iter().cloned()));
    let roofs: Vec<Polygon> = loops(local, Role::Roof);
    let zones = zones::areas(local, &outlines, &every, &roofs);
    let frame = outlines.iter().map(Outline::frame).reduce(|a, b| a.union(b)).unwrap_or_default();
    let bands = parts::bands(local, frame, loops(local, Role::Band));
    let mut bands = with_boards(parts::seated(bands, &outlines), &outlines);
    let channels = channels(&outlines);
    let (lines, gap) = (parts::joints(local), local.job.trim.movement_gap);
    let taken = given::replaced(&outlines, local.origin.to_vec2());
    let mut out = Shown { taken, ..Shown::default() };
    let outlines = match by_hand::names_walls(local.job) {
        false => outlines.into_iter().map(|o| (o, WallId::default())).collect(),
        true => {
            let names = names(local, &outlines, (&roofs, &bands), (&lines, &every));
            out.named = names.iter().filter(|n| !n.is_empty()).cloned().collect();
            let walls = outlines.into_iter().zip(names).collect();
            let changed = by_hand::changed(local, walls, &mut every, findings);
            bare.extend(changed.bare);
            bands.extend(changed.boards);
            out.skipped = changed.skipped;
            out.taken.extend(changed.taken);
            changed.walls
        }
    };
    let off = [(HiddenBy::NotSided, &bare), (HiddenBy::Roof, &roofs), (HiddenBy::Band, &bands)];
    let on_walls = OnWalls { off: &off, lines: &lines, openings: &every };
    let made = |(o, id): (Outline, WallId), findings: &mut Findings| {
        let place = Numbered::of(&o, local.origin.to_vec2());
        bare_wall(local, o, &on_walls, findings).map(|w| (place, DrawnWall { id, ..w }))
    };
    let (places, mut found): (Vec<_>, Vec<_>) =
        outlines.into_iter().filter_map(|o| made(o, findings)).unzip();
    if local.part.is_none() && !by_hand::names_walls(local.job) {
        out.named = numbered(local, &places, &mut found);
    }
    report_overlaps(local, &found, findings);
    give_openings(local, &mut found, every, findings);
    give_obstacles(local, &mut found, obstacles(local), findings);
    let full: Vec<_> = found.iter().filter_map(|w| limits::too_many_holes(local, w)).collect();
    if !full.is_empty() {
        full.into_iter().for_each(|n| findings.push(n));
        return Shown::default();
    }
    let hiding = Hiding { bare: &bare, roofs: &roofs, bands: &bands, channels: &channels, gap };
    for wall in &mut found {
        give_edges(local, wall, &hiding, findings);
    }
    Shown { walls: found, zones, ..out }
}

/// Names of walls as the whole house has them; none where an outline is no wall.
fn names(
    local: &ViewFrame,
    outlines: &[Outline],
    (roofs, bands): (&Vec<Polygon>, &Vec<Polygon>),
    (lines, openings): (&[(f64, f64, f64)], &[DrawnOpening]),
) -> Vec<WallId> {
    let house = ViewFrame { part: None, ..*local };
    let bare = zones::bare(&house);
    let off = [(HiddenBy::NotSided, &bare), (HiddenBy::Roof, roofs), (HiddenBy::Band, bands)];
    let on_walls = OnWalls { off: &off, lines, openings };
    let is_wall =
        |o: &Outline| bare_wall(&house, o.clone(), &on_walls, &mut Findings::default()).is_some();
    let walls: Vec<bool> = outlines.iter().map(is_wall).collect();
    let named = outlines.iter().zip(&walls).filter(|(_, is)| **is);
    let places: Vec<Numbered> =
        named.map(|(o, _)| Numbered::of(o, local.origin.to_vec2())).collect();
    let mut all = numbers(&places).into_iter();
    let mut name = |is: &bool| match is.then(|| all.next()).flatten() {
        Some(number) => format!("{}-{number}", local.slug).into(),
        None => WallId::default(),
    };
    walls.iter().map(&mut name).collect()
}

/// Openings out to their flat surrounds.
fn surrounded(openings: &mut [DrawnOpening], surround: f64) {
    if surround > 0.0 {
        let door = |k| matches!(k, OpeningKind::Door | OpeningKind::OverheadDoor);
        openings.iter_mut().for_each(|o| o.outline = cased(&o.outline, surround, door(o.kind)));
    }
}

/// Upright sides of planes of drawn siding that are no corners.
fn channels(outlines: &[Outline]) -> Vec<(Point, Point)> {
    outlines.iter().flat_map(|o| o.trimmings.channels.iter().copied()).collect()
}

/// Bands, and the boards read from the gaps of drawn siding.
fn with_boards(mut bands: Vec<Polygon>, outlines: &[Outline]) -> Vec<Polygon> {
    bands.extend(outlines.iter().flat_map(|o| o.trimmings.boards.iter().cloned()));
    bands
}

/// What lies on the walls of a view before they are known.
struct OnWalls<'a> {
    /// What is not sided: stone, roofs, bands.
    off: &'a [(HiddenBy, &'a Vec<Polygon>)],
    /// Movement joints.
    lines: &'a [(f64, f64, f64)],
    openings: &'a [DrawnOpening],
}

/// A wall with its faces and nothing else on it; none where nothing of it is sided, or where it cannot be used.
fn bare_wall(
    local: &ViewFrame,
    o: Outline,
    on: &OnWalls,
    findings: &mut Findings,
) -> Option<DrawnWall> {
    if let Some(note) = limits::too_much(local, &o) {
        findings.push(note);
        return None;
    }
    if let Some((p, q)) = crossing(&o.ring) {
        crossed(local, &o.origin, p, q, findings);
        return None;
    }
    let gap = local.job.trim.movement_gap;
    let whole = o.polygon();
    let joints = parts::on(&whole, on.lines, gap);
    parts::through_openings(local, &whole, &joints, on.openings, findings);
    let hidden = hidden(local, &whole, on.off, &joints);
    let near: Vec<Polygon> = hidden.iter().map(|h| h.shape.clone()).collect();
    let faces = difference(std::slice::from_ref(&whole), &union_all(&near));
    let faces = without_slivers(faces);
    let hidden = within(&whole, hidden);
    (!faces.is_empty()).then(|| DrawnWall {
        id: Default::default(),
        outline: whole.outer,
        faces,
        hidden,
        openings: Vec::new(),
        obstacles: Vec::new(),
        bands: Vec::new(),
        joints,
        fillers: Vec::new(),
        short: Vec::new(),
        edges: Vec::new(),
        drawn_exposure: o.exposure,
        way: o.way,
        origin: o.origin,
    })
}

/// What may hide parts of a wall.
struct Hiding<'a> {
    bare: &'a [Polygon],
    roofs: &'a [Polygon],
    bands: &'a [Polygon],
    /// Upright sides that are no corners.
    channels: &'a [(Point, Point)],
    /// Width of the strip at a joint of the building.
    gap: f64,
}

/// Says of each side of a wall what it is, and which bands stand on it.
fn give_edges(local: &ViewFrame, wall: &mut DrawnWall, hiding: &Hiding, findings: &mut Findings) {
    // What only touches a wall's outline belongs to the wall beside it.
    let whole = [Polygon::simple(wall.outline.clone())];
    let hides = |shapes: &[Polygon]| -> Vec<Polygon> {
        // A jog of its own size, as the end of a gutter, is small and no noise.
        let least = |s: &Polygon| NOISE.min(0.5 * s.area());
        let over = |s: &&Polygon| {
            touches(s, &whole[0])
                && total_area(&intersection(std::slice::from_ref(*s), &whole)) > least(s)
        };
        shapes.iter().filter(over).cloned().collect()
    };
    let strips: Vec<Polygon> =
        wall.joints.iter().map(|x| parts::strip(&whole[0], *x, hiding.gap)).collect();
    let mut bare = hides(hiding.bare);
    bare.extend(hiding.bands.iter().filter(|b| touches(b, &whole[0])).cloned());
    bare.extend(strips.iter().cloned());
    bare.extend(zones::border(local, &whole[0].clone().wound()));
    let (roofs, given) = (hides(hiding.roofs), wall.way == WallWay::Job);
    let beside = Beside { bare: &bare, roofs: &roofs, channels: hiding.channels, given };
    wall.edges = edges(local, &wall.outline, &wall.faces, &beside, findings);
    wall.bands = parts::boards(wall, hiding.bands, &strips);
}

/// Outlines in the elevation's own inches, left to right, with every opening of the view: those
/// drawn, and those that hatches and loose lines show where none is drawn.
fn settled(
    local: &ViewFrame,
    outlines: Vec<Outline>,
    drawn: Vec<DrawnOpening>,
    findings: &mut Findings,
) -> (Vec<Outline>, Vec<DrawnOpening>) {
    let known: Vec<FoundOpening> = given::known(&drawn);
    let place = |ring: &[Point]| ring.iter().map(|p| local.place(*p)).collect::<Vec<_>>();
    let mut outlines: Vec<Outline> = outlines
        .into_iter()
        .map(|mut o| {
            o.ring = place(&o.ring);
            o.openings.iter_mut().for_each(|w| w.outline = place(&w.outline));
            o.trimmings = o.trimmings.moved(|p| local.place(p));
            if o.way == WallWay::Hatch && o.patches.is_empty() {
                hatch::settle(&mut o, &known);
            }
            o
        })
        .collect();
    outlines.sort_by(|a, b| {
        let (a, b) = (a.frame(), b.frame());
        a.x0.total_cmp(&b.x0).then(a.y0.total_cmp(&b.y0))
    });
    let found: Vec<DrawnOpening> = outlines.iter().flat_map(|o| o.openings.clone()).collect();
    // One that stands in the hole of a hatch is that hole: opening and casing.
    let told = |d: &FoundOpening| found.iter().any(|f| d.within(&f.outline));
    let alone = drawn.into_iter().zip(&known).filter(|(_, d)| !told(d)).map(|(o, _)| o).collect();
    let alone = too_large::without(local, &outlines, alone, findings);
    let every: Vec<DrawnOpening> = alone.into_iter().chain(found.iter().cloned()).collect();
    (outlines, every)
}

fn loops(local: &ViewFrame, role: Role) -> Vec<Polygon> {
    local
        .strokes(role)
        .filter(|s| s.closed && s.points.len() >= 3)
        .map(|s| Polygon::simple(local.ring(s)).wound())
        .collect()
}

fn report_overlaps(local: &ViewFrame, walls: &[DrawnWall], findings: &mut Findings) {
    let mut told = 0;
    for (i, a) in walls.iter().enumerate() {
        if told >= limits::MOST_TOLD {
            return;
        }
        for b in &walls[i + 1..] {
            if !a.faces.iter().any(|x| b.faces.iter().any(|y| touches(x, y))) {
                continue;
            }
            let both = intersection(&a.faces, &b.faces);
            let area = total_area(&both);
            let Some(first) = both.first().filter(|_| area > NOISE) else { continue };
            told += 1;
            let at = local.source(first.bounds().center());
            let ids = [&a.id, &b.id].into_iter().filter(|i| !i.is_empty());
            let walls = ids.cloned().collect();
            let finding = Finding::new(HouseFinding::WallsOverlap { area: area / 144.0, walls });
            findings.push(finding.about(&b.origin).at(at).on(&local.view.name));
        }
    }
}
