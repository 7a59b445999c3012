//! Faces of loose lines sorted into walls, openings and the rest.

use std::collections::{BTreeMap, BTreeSet};

use super::drawn_courses::drawn_courses;
use super::gable::with_gable;
use super::recess::{between, by_size};
use crate::geom::arrangement::{arrangement, inside, islands, stacked};
use crate::geom::boolean::union_all;
use crate::geom::polygon::Polygon;
use crate::geom::segment::Segment;
use crate::geom::tol::LEVEL;
use crate::geom::vocabulary::Ring;
use crate::model::house::DrawnOpening;
use crate::origin::Origin;

/// Faces smaller than this, square inches, are drawing detail (common practice, no source).
const DETAIL: f64 = 4.0;
/// Where no courses are drawn, smaller faces than this, square inches, are no walls: 20 sq ft
/// (common practice, no source).
const WALL: f64 = 2880.0;
/// Nor are narrower or lower ones, inches: boards and bands are up to 12 in (common practice, no
/// source).
const NARROW: f64 = 16.0;
/// Smallest opening among faces, square inches: two square feet (common practice, no source).
const OPENING: f64 = 288.0;
/// A siding face is no higher than this many pitches of the drawn courses: courses that meet a head
/// or a sill are drawn a little wider (common practice, no source).
const STRETCH: f64 = 1.3;

/// A wall that faces show.
#[derive(Clone, Debug, Default)]
pub(crate) struct FaceWall {
    pub(crate) ring: Ring,
    pub(crate) openings: Vec<DrawnOpening>,
    pub(crate) exposure: Option<f64>,
}

/// What faces show, and how many of them are neither wall nor opening.
#[derive(Clone, Debug, Default)]
pub(crate) struct Sorted {
    pub(crate) walls: Vec<FaceWall>,
    pub(crate) left: usize,
    pub(crate) welded: usize,
}

/// Walls among the faces of some loose lines.
pub(crate) fn sorted(segments: &[Segment], weld: f64, origin: &Origin) -> Sorted {
    let found = arrangement(segments, weld, DETAIL);
    let mut out = match drawn_courses(segments) {
        Some(courses) => by_courses(&found.faces, courses.pitch, segments, origin),
        None => by_size_alone(&found.faces, origin),
    };
    out.welded = found.welded;
    out
}

/// Siding is what lies between drawn courses: low, wide faces that stand on one another. What they
/// enclose is an opening.
fn by_courses(faces: &[Polygon], pitch: f64, segments: &[Segment], origin: &Origin) -> Sorted {
    let strip = |f: &Polygon| {
        let b = f.bounds();
        b.height() <= STRETCH * pitch && b.width() >= b.height() / 2.0 && level_edged(f)
    };
    let strips: Vec<bool> = faces.iter().map(strip).collect();
    let clusters = clusters(faces, &strips);
    let largest = clusters.iter().map(|c| area(faces, c)).fold(0.0, f64::max);
    let mut used = 0;
    let mut walls = Vec::new();
    for cluster in clusters.iter().filter(|c| area(faces, c) >= largest / 8.0) {
        used += cluster.len();
        let parts: Vec<Polygon> = cluster.iter().map(|i| faces[*i].clone()).collect();
        for whole in union_all(&parts).into_iter().filter(|p| p.area() >= WALL) {
            let own: BTreeSet<usize> = cluster.iter().copied().collect();
            let others: Vec<&Polygon> =
                (0..faces.len()).filter(|i| !own.contains(i)).map(|i| &faces[i]).collect();
            let mut wall = enclosed(&whole, &others, origin);
            used += wall.openings.len();
            wall.exposure = Some(pitch);
            wall.ring = with_gable(wall.ring, segments);
            walls.push(wall);
        }
    }
    Sorted { walls, left: faces.len().saturating_sub(used), welded: 0 }
}

fn area(faces: &[Polygon], cluster: &[usize]) -> f64 {
    cluster.iter().map(|i| faces[*i].area()).sum()
}

/// Whether the face's box is its level top and bottom.
fn level_edged(f: &Polygon) -> bool {
    let b = f.bounds();
    let on = |y: f64| {
        crate::geom::polygon::sides(&f.outer)
            .filter(|(p, q)| p.y == q.y && p.y == y)
            .map(|(p, q)| (p.x - q.x).abs())
            .sum::<f64>()
    };
    on(b.y0) > 0.5 * b.width() && on(b.y1) > 0.5 * b.width()
}

/// Siding faces that stand on one another, each cluster one wall.
fn clusters(faces: &[Polygon], strips: &[bool]) -> Vec<Vec<usize>> {
    let mut root: Vec<usize> = (0..faces.len()).collect();
    fn find(root: &mut [usize], mut i: usize) -> usize {
        while root[i] != i {
            root[i] = root[root[i]];
            i = root[i];
        }
        i
    }
    for (i, j, _) in stacked(faces) {
        if strips[i] && strips[j] {
            let (a, b) = (find(&mut root, i), find(&mut root, j));
            root[a.max(b)] = a.min(b);
        }
    }
    let mut out: BTreeMap<usize, Vec<usize>> = BTreeMap::new();
    for i in (0..faces.len()).filter(|i| strips[*i]) {
        out.entry(find(&mut root, i)).or_default().push(i);
    }
    out.into_values().collect()
}

/// A wall with the faces that its holes and notches hold as openings.
fn enclosed(whole: &Polygon, others: &[&Polygon], origin: &Origin) -> FaceWall {
    let foot = whole.bounds().y0;
    let mut rings: Vec<Ring> = whole.holes.clone();
    let mut solid = vec![whole.clone()];
    solid.extend(rings.iter().map(|r| Polygon::simple(r.clone()).wound()));
    let frame = whole.bounds();
    for f in others.iter().filter(|f| f.area() >= OPENING) {
        let b = f.bounds();
        let Some(p) = inside(f) else { continue };
        let in_hole = whole.holes.iter().any(|r| crate::geom::polygon::ring_contains(r, p));
        if !in_hole && b.y1 < frame.y1 && b.y0 >= frame.y0 - LEVEL && between(f, &solid) {
            rings.push(f.outer.clone());
            solid.push(Polygon::simple(f.outer.clone()));
        }
    }
    let outer = union_all(&solid)
        .into_iter()
        .max_by(|a, b| a.area().total_cmp(&b.area()))
        .map_or_else(|| whole.outer.clone(), |p| p.outer);
    FaceWall { ring: outer, openings: named(&rings, foot, origin), exposure: None }
}

fn named(rings: &[Ring], foot: f64, origin: &Origin) -> Vec<DrawnOpening> {
    let wide = |r: &&Ring| crate::geom::polygon::signed_area(r).abs() >= OPENING;
    rings
        .iter()
        .filter(wide)
        .map(|r| {
            let outline = Polygon::simple(r.clone()).wound().outer;
            let b = crate::geom::polygon::bounds(&outline).unwrap_or_default();
            DrawnOpening {
                id: Default::default(),
                kind: by_size(b, foot),
                outline,
                unfilled: None,
                cut: Vec::new(),
                block: None,
                origin: origin.clone(),
            }
        })
        .collect()
}

/// Where no courses are drawn, each large face is a wall, and what stands inside it an opening.
fn by_size_alone(faces: &[Polygon], origin: &Origin) -> Sorted {
    let islands = islands(faces);
    let large = |i: &usize| {
        let b = faces[*i].bounds();
        faces[*i].area() >= WALL
            && b.width() >= NARROW
            && b.height() >= NARROW
            && !islands.contains(i)
    };
    let walls: BTreeSet<usize> = (0..faces.len()).filter(large).collect();
    let mut used = walls.len();
    let mut out = Vec::new();
    for i in &walls {
        let whole = &faces[*i];
        let small: Vec<&Polygon> = (0..faces.len())
            .filter(|j| !walls.contains(j) && faces[*j].bounds().width() >= NARROW)
            .map(|j| &faces[j])
            .collect();
        let wall = enclosed(whole, &small, origin);
        used += wall.openings.len();
        out.push(wall);
    }
    Sorted { walls: out, left: faces.len().saturating_sub(used), welded: 0 }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geom::polygon::{bounds, sides};
    use crate::geom::vocabulary::Rect;
    use crate::model::house::OpeningKind;

    fn seg(x0: f64, y0: f64, x1: f64, y1: f64) -> Segment {
        ((x0, y0).into(), (x1, y1).into())
    }

    #[test]
    fn a_front_with_drawn_courses_gives_its_wall_and_openings() {
        // 240 x 96, courses of 8 in that stop at a door 36 x 80 and at a window 40 x 40.
        let mut lines = vec![
            seg(0.0, 0.0, 0.0, 96.0),
            seg(240.0, 0.0, 240.0, 96.0),
            seg(100.0, 0.0, 100.0, 80.0),
            seg(136.0, 0.0, 136.0, 80.0),
            seg(180.0, 40.0, 180.0, 80.0),
            seg(220.0, 40.0, 220.0, 80.0),
            // Boards of a frieze above, upright: no lap siding.
            seg(0.0, 96.0, 0.0, 116.0),
            seg(240.0, 96.0, 240.0, 116.0),
            seg(0.0, 116.0, 240.0, 116.0),
        ];
        for k in 0..40 {
            lines.push(seg(6.0 * f64::from(k), 96.0, 6.0 * f64::from(k), 116.0));
        }
        for k in 0..=12 {
            let y = 8.0 * f64::from(k);
            let stops: &[(f64, f64)] = match y {
                y if y > 0.0 && y <= 40.0 => &[(0.0, 100.0), (136.0, 240.0)],
                y if y > 40.0 && y < 80.0 => &[(0.0, 100.0), (136.0, 180.0), (220.0, 240.0)],
                _ => &[(0.0, 240.0)],
            };
            lines.extend(stops.iter().map(|(a, b)| seg(*a, y, *b, y)));
        }
        let found = sorted(&lines, 1.0 / 16.0, &Origin::default());
        assert_eq!(found.walls.len(), 1);
        let wall = &found.walls[0];
        assert_eq!(bounds(&wall.ring), Some(Rect::new(0.0, 0.0, 240.0, 96.0)));
        assert_eq!(wall.exposure, Some(8.0));
        let openings: Vec<_> =
            wall.openings.iter().map(|o| (o.kind, bounds(&o.outline).unwrap())).collect();
        assert!(openings.contains(&(OpeningKind::Door, Rect::new(100.0, 0.0, 136.0, 80.0))));
        assert!(openings.contains(&(OpeningKind::Window, Rect::new(180.0, 40.0, 220.0, 80.0))));
        assert_eq!(openings.len(), 2, "{openings:?}");
    }

    #[test]
    fn without_courses_each_large_face_is_a_wall() {
        let ring = |x0, y0, x1, y1| sides(&Polygon::rect(x0, y0, x1, y1).outer).collect::<Vec<_>>();
        let mut lines = ring(0.0, 0.0, 200.0, 100.0);
        lines.push(seg(120.0, 0.0, 120.0, 100.0));
        lines.extend(ring(30.0, 40.0, 60.0, 80.0));
        let found = sorted(&lines, 1.0 / 16.0, &Origin::default());
        let widths: Vec<f64> =
            found.walls.iter().map(|w| bounds(&w.ring).unwrap().width()).collect();
        assert_eq!(widths, [120.0, 80.0]);
        assert_eq!(found.walls[0].openings.len(), 1);
        assert_eq!(found.walls[1].openings.len(), 0);
    }
}
