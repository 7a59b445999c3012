//! What became of the things of one elevation, by the walls as they came out.

use std::collections::BTreeSet;

use super::boxes::{Sorted, corners, within_one};
use super::fate::Fate;
use super::things::{DrawnAs, Thing, Things, open_loop};
use crate::clean::{Destination, clean};
use crate::extract::edges::CORNER_REACH;
use crate::extract::frame::ViewFrame;
use crate::extract::openings::{is_sized, is_tag, kept_outermost};
use crate::extract::zones;
use crate::geom::polygon::{Polygon, bounds};
use crate::geom::tol::{BESIDE, SAME, plumb};
use crate::geom::vocabulary::{Point, Rect, Vec2};
use crate::model::house::DrawnElevation;
use crate::model::linework::{Role, Stroke};
use crate::model::unused::Unused;

/// Lines that lie within an opening, or no farther out than this, inches, are its casing, sill and
/// muntins (common practice, no source).
const CASING: f64 = 6.0;
/// Lines of a wall layer this far out of a wall, inches, belong to it: sills, steps, overlaps at
/// corners (common practice, no source).
const BY_WALL: f64 = 12.0;
/// An outline is a wall's if its box is the wall's but for this, inches: noise is squared.
const ALIKE: f64 = 1.0;
/// Roof lines that cross a wall over a shorter way than this, inches, only touch it.
const CROSSING: f64 = 6.0;

/// One elevation and its things.
pub(super) struct InView<'a> {
    local: &'a ViewFrame<'a>,
    made: &'a DrawnElevation,
    things: &'a Things,
    /// Indices of the things in it.
    here: Vec<usize>,
    /// Boxes of openings and of fixtures cut into its walls.
    openings: Vec<Rect>,
    fixtures: Vec<Rect>,
    /// Boxes of its walls, of its roofs and of its bands, elevation inches.
    walls: Vec<Rect>,
    roofs: Vec<(Rect, Polygon)>,
    bands: Vec<(Rect, Polygon)>,
    bare: Vec<Polygon>,
    /// Zones that are sets of their own: what stands in them is cut there.
    laid_zones: Vec<Polygon>,
    /// Walls that the job leaves out.
    skipped: &'a [Polygon],
}

impl<'a> InView<'a> {
    pub(super) fn of(
        local: &'a ViewFrame<'a>,
        made: &'a DrawnElevation,
        things: &'a Things,
        (skipped, taken): (&'a [Polygon], &[Rect]),
    ) -> Self {
        let members = local.view.members();
        let mut here: BTreeSet<usize> = members.filter_map(|i| things.of_stroke[i]).collect();
        here.extend(things.others_in(local.view.region));
        let boxes = |role: Role| -> Vec<(Rect, Polygon)> {
            local
                .strokes(role)
                .filter(|s| s.closed && s.points.len() >= 3)
                .map(|s| Polygon::simple(local.ring(s)).wound())
                .map(|p| (p.bounds(), p))
                .collect()
        };
        let laid = (0..local.job.zone.len()).filter(|z| local.job.zone[*z].product.is_some());
        let walls = made.walls.iter().filter_map(|w| bounds(&w.outline));
        InView {
            local,
            made,
            things,
            here: here.into_iter().collect(),
            openings: made
                .walls
                .iter()
                .flat_map(|w| w.openings.iter().filter_map(|o| bounds(&o.outline)))
                .collect(),
            fixtures: made
                .walls
                .iter()
                .flat_map(|w| w.obstacles.iter().filter_map(|o| bounds(&o.outline)))
                .collect(),
            walls: walls.chain(taken.iter().copied()).collect(),
            skipped,
            roofs: boxes(Role::Roof),
            bands: boxes(Role::Band),
            bare: zones::bare(local),
            laid_zones: laid.flat_map(|z| zones::loops(local, Some(z))).collect(),
        }
    }

    /// Things with what became of them.
    pub(super) fn fates(&self) -> Vec<(usize, Fate)> {
        let mut out = Vec::new();
        for roles in [[Role::Window, Role::Door], [Role::MountingBlock, Role::Obstacle]] {
            self.cut(&roles, &mut out);
        }
        for i in &self.here {
            let thing = &self.things.all[*i];
            if !thing.role.is_thing() {
                let fate = match &thing.kind {
                    DrawnAs::Left(why) => Some(Fate::Left(why.clone())),
                    DrawnAs::Texture(h) => Some(self.texture(*h, thing)),
                    DrawnAs::Tag(l) => Some(self.tag(*l)),
                    _ => self.drawn(thing),
                };
                out.extend(fate.map(|f| (*i, f)));
            }
        }
        out
    }

    /// Box of a thing in elevation inches.
    fn frame(&self, thing: &Thing) -> Option<Rect> {
        thing.frame.map(|f| f - self.local.origin.to_vec2())
    }

    fn strokes(&self, thing: &Thing) -> Vec<&Stroke> {
        let all = thing.strokes.iter();
        all.filter_map(|i| self.local.lines.strokes.get(*i)).collect()
    }

    /// Openings, or fixtures: each that stands in no other is cut, or left out for a reason.
    fn cut(&self, roles: &[Role], out: &mut Vec<(usize, Fate)>) {
        let mine: Vec<(usize, &Thing, Rect)> = self
            .here
            .iter()
            .map(|i| (*i, &self.things.all[*i]))
            .filter(|(_, t)| roles.contains(&t.role))
            .filter_map(|(i, t)| Some((i, t, self.frame(t)?)))
            .collect();
        let solid = |k: &DrawnAs| matches!(k, DrawnAs::Block(_) | DrawnAs::Loop);
        let shapes: Vec<&(usize, &Thing, Rect)> =
            mine.iter().filter(|(_, t, _)| solid(&t.kind)).collect();
        let boxes: Vec<Rect> = shapes.iter().map(|(_, _, b)| *b).collect();
        let keep = kept_outermost(&boxes);
        for ((i, thing, b), keep) in shapes.iter().zip(keep) {
            let fate = if keep { self.shape(thing, *b) } else { Fate::Detail };
            out.push((*i, fate));
        }
        let about = Sorted::of(boxes.iter().chain(self.holes(roles)).copied().collect());
        let by = |b: Rect| about.any_holds(b, CASING);
        for (i, thing, b) in mine.iter().filter(|(_, t, _)| !solid(&t.kind)) {
            let fate =
                match &thing.kind {
                    // A part of a window that is hidden is a part; a window in another file is none.
                    DrawnAs::Left(
                        Unused::HiddenLayer | Unused::HiddenInsert | Unused::Invisible,
                    ) if by(*b) => Fate::Detail,
                    DrawnAs::Left(Unused::PointOnly) if by(*b) => Fate::Detail,
                    DrawnAs::Left(why) => Fate::Left(why.clone()),
                    DrawnAs::Texture(_) => Fate::Detail,
                    _ if by(*b) => Fate::Detail,
                    _ => open_lines(&self.strokes(thing)),
                };
            out.push((*i, fate));
        }
    }

    fn holes(&self, roles: &[Role]) -> &[Rect] {
        let opening = roles.iter().any(|r| matches!(r, Role::Window | Role::Door));
        if opening { &self.openings } else { &self.fixtures }
    }

    /// A block or a loop of an opening or a fixture.
    fn shape(&self, thing: &Thing, b: Rect) -> Fate {
        let cut = |o: &Rect| {
            o.inflate(SAME, SAME).contains(b.center()) || o.intersect(b).area() > 0.3 * b.area()
        };
        if self.holes(&[thing.role]).iter().any(cut) {
            return Fate::Used;
        }
        let opening = matches!(thing.role, Role::Window | Role::Door);
        if opening && is_tag(self.local, &corners(b)) {
            return Fate::Detail;
        }
        if opening && !is_sized(self.local, &corners(b)) {
            return Fate::Left(Unused::TooSmall);
        }
        self.on_no_wall(b.center())
    }

    /// Why something is cut into no wall where it stands.
    fn on_no_wall(&self, p: Point) -> Fate {
        let within =
            |all: &[(Rect, Polygon)]| all.iter().any(|(b, s)| b.contains(p) && s.contains(p));
        if self.laid_zones.iter().any(|z| z.contains(p)) {
            return Fate::Used;
        }
        let why = if self.skipped.iter().any(|s| s.contains(p)) {
            Unused::OnSkippedWall
        } else if self.bare.iter().any(|s| s.contains(p)) {
            Unused::OnOtherCladding
        } else if within(&self.roofs) || within(&self.bands) {
            Unused::Covered
        } else {
            Unused::OffWalls
        };
        Fate::Left(why)
    }

    /// Walls, other areas, and lines that mark something.
    fn drawn(&self, thing: &Thing) -> Option<Fate> {
        let b = self.frame(thing)?;
        let strokes = self.strokes(thing);
        let round = thing.kind == DrawnAs::Loop;
        Some(match thing.role {
            Role::Wall => self.wall(b, round, &strokes),
            Role::Bare | Role::Roof | Role::Band if round => Fate::Used,
            Role::Band if within_one(&self.bands, b, ALIKE) => Fate::Detail,
            Role::Roof if within_one(&self.roofs, b, CASING) => Fate::Detail,
            Role::Roof if !self.crosses_wall(&strokes) => Fate::Used,
            Role::Joint => marks(self.is_joint(&strokes)),
            Role::Level => marks(self.made.level_drawn),
            Role::InsideCorner => marks(self.is_corner(&strokes)),
            Role::Grade => Fate::Used,
            // Lines round a tag say no more than it does.
            Role::CornerTag => Fate::Detail,
            _ => open_lines(&strokes),
        })
    }

    fn wall(&self, b: Rect, round: bool, strokes: &[&Stroke]) -> Fate {
        let alike = |w: &Rect| {
            let off = [w.x0 - b.x0, w.x1 - b.x1, w.y0 - b.y0, w.y1 - b.y1];
            off.iter().all(|d| d.abs() <= ALIKE)
        };
        // Of loose lines those that lie beside the wall are its courses, trim and steps.
        let beside = |w: &Rect| !round && w.inflate(BY_WALL, BY_WALL).contains(b.center());
        if self.walls.iter().any(alike) || self.walls.iter().any(beside) {
            return Fate::Used;
        }
        if !round {
            return open_lines(strokes);
        }
        match self.on_no_wall(b.center()) {
            Fate::Left(Unused::OffWalls) => Fate::Left(Unused::Covered),
            other => other,
        }
    }

    /// Whether lines run over the inside of a wall's siding.
    fn crosses_wall(&self, strokes: &[&Stroke]) -> bool {
        let faces: Vec<&Polygon> = self.made.walls.iter().flat_map(|w| &w.faces).collect();
        let inside = |p: Point| {
            let around = [(1.0, 0.0), (-1.0, 0.0), (0.0, 1.0), (0.0, -1.0)];
            faces.iter().any(|f| around.iter().all(|d| f.contains(p + Vec2::from(*d))))
        };
        let mut length = 0.0;
        for s in strokes {
            for w in self.local.ring(s).windows(2) {
                let steps = (w[0].distance(w[1]) / 3.0).ceil().clamp(1.0, 1000.0) as usize;
                let step = w[0].distance(w[1]) / steps as f64;
                let at = |k: usize| w[0].lerp(w[1], (k as f64 + 0.5) / steps as f64);
                length += step * (0..steps).filter(|k| inside(at(*k))).count() as f64;
            }
        }
        length > CROSSING
    }

    fn is_joint(&self, strokes: &[&Stroke]) -> bool {
        let reach = self.local.job.trim.movement_gap + BESIDE;
        let joints: Vec<f64> = self.made.walls.iter().flat_map(|w| w.joints.clone()).collect();
        let places = strokes.iter().flat_map(|s| self.local.ring(s));
        places.into_iter().any(|p| joints.iter().any(|x| (p.x - x).abs() <= reach))
    }

    /// Whether an upright line stands at the side of a wall.
    fn is_corner(&self, strokes: &[&Stroke]) -> bool {
        let sides: Vec<_> = self
            .made
            .walls
            .iter()
            .flat_map(|w| &w.edges)
            .filter(|e| plumb(e.to.x - e.from.x))
            .collect();
        let reach = CORNER_REACH + BESIDE;
        let rings: Vec<Vec<Point>> = strokes.iter().map(|s| self.local.ring(s)).collect();
        let mut lines = rings.iter().flat_map(|r| r.windows(2)).filter(|w| plumb(w[0].x - w[1].x));
        lines.any(|w| {
            sides.iter().any(|e| {
                let (low, high) = (e.from.y.min(e.to.y), e.from.y.max(e.to.y));
                (w[0].x - e.from.x).abs() <= reach
                    && high.min(w[0].y.max(w[1].y)) > low.max(w[0].y.min(w[1].y))
            })
        })
    }

    /// A hatch that is no outline of its own.
    fn texture(&self, hatch: usize, thing: &Thing) -> Fate {
        let Some(b) = self.frame(thing) else { return Fate::Left(Unused::Unreadable) };
        match thing.role {
            Role::Wall if self.walls.iter().any(|w| w.contains(b.center())) => Fate::Detail,
            Role::Wall => {
                let solid = self.local.lines.hatches.get(hatch).is_some_and(|h| h.hatch.solid);
                Fate::Left(if solid { Unused::TooSmall } else { Unused::HatchPattern })
            }
            Role::Grade if self.made.grade.is_empty() => Fate::Left(Unused::HatchPattern),
            _ => Fate::Detail,
        }
    }

    /// A text that ties corners together.
    fn tag(&self, label: usize) -> Fate {
        let Some(l) = self.local.lines.labels.get(label) else { return Fate::Detail };
        let says = clean(&l.text.content, Destination::Tag);
        let mut edges = self.made.walls.iter().flat_map(|w| &w.edges);
        marks(edges.any(|e| e.tag.as_ref() == Some(&says)))
    }
}

fn marks(something: bool) -> Fate {
    if something { Fate::Used } else { Fate::Left(Unused::MarksNothing) }
}

fn open_lines(strokes: &[&Stroke]) -> Fate {
    let round = open_loop(strokes).is_some();
    Fate::Left(if round { Unused::OpenLoop } else { Unused::LooseLines })
}
