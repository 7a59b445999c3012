//! What is drawn, before it has layers and bytes: lines, hatches, texts and blocks by element and view.

use std::collections::BTreeSet;

use super::habit::Habit;
use super::shape::{Area, Family, P};

/// What a line is of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Element {
    Wall,
    Siding,
    Trim,
    Window,
    WindowTag,
    Door,
    DoorTag,
    Roof,
    RoofPattern,
    Stone,
    StonePattern,
    Grade,
    GradePattern,
    Grid,
    GridTag,
    Level,
    Mark,
    Note,
    Dimension,
    Border,
    Title,
    PlanWall,
    PlanPattern,
    PlanDoor,
}

/// A shape, in drafting units.
#[derive(Clone, Debug)]
pub(crate) enum Shape {
    Line(P, P),
    /// Dashed.
    Dashed(P, P),
    Poly {
        points: Vec<P>,
        closed: bool,
    },
    Circle(P, f64),
    /// Center, radius, from and to in degrees.
    Arc(P, f64, f64, f64),
    Text {
        at: P,
        high: f64,
        words: String,
    },
    Notes {
        at: P,
        high: f64,
        words: String,
    },
    Hatch {
        rings: Vec<Vec<P>>,
        families: Vec<Family>,
    },
    /// A filled triangle.
    Fill([P; 3]),
    Insert {
        block: String,
        at: P,
        mirrored: bool,
    },
    /// Between two points, the line through a third; its picture is a block.
    Dimension {
        from: P,
        to: P,
        line: P,
        upright: bool,
        block: String,
    },
}

/// A shape with what it is of.
#[derive(Clone, Debug)]
pub(crate) struct Entity {
    pub(crate) element: Element,
    pub(crate) view: usize,
    pub(crate) shape: Shape,
}

/// A block.
#[derive(Clone, Debug)]
pub(crate) struct Block {
    pub(crate) name: String,
    pub(crate) entities: Vec<Entity>,
}

/// The sheet while it is drawn.
#[derive(Debug, Default)]
pub(crate) struct Ink {
    pub(crate) entities: Vec<Entity>,
    pub(crate) blocks: Vec<Block>,
    /// Habits that were in fact drawn.
    pub(crate) shown: BTreeSet<Habit>,
    /// Where the view's own zero stands.
    pub(crate) origin: P,
    pub(crate) view: usize,
}

impl Ink {
    pub(crate) fn show(&mut self, habit: Habit) {
        self.shown.insert(habit);
    }

    fn placed(&self, p: P) -> P {
        [p[0] + self.origin[0], p[1] + self.origin[1]]
    }

    /// A shape of the view, at the view's place.
    pub(crate) fn shape(&self, shape: Shape) -> Shape {
        let at = |p: P| self.placed(p);
        match shape {
            Shape::Line(a, b) => Shape::Line(at(a), at(b)),
            Shape::Dashed(a, b) => Shape::Dashed(at(a), at(b)),
            Shape::Poly { points, closed } => {
                Shape::Poly { points: points.into_iter().map(at).collect(), closed }
            }
            Shape::Circle(c, r) => Shape::Circle(at(c), r),
            Shape::Arc(c, r, a, z) => Shape::Arc(at(c), r, a, z),
            Shape::Text { at: p, high, words } => Shape::Text { at: at(p), high, words },
            Shape::Notes { at: p, high, words } => Shape::Notes { at: at(p), high, words },
            Shape::Hatch { rings, families } => {
                let rings = rings.into_iter().map(|r| r.into_iter().map(at).collect()).collect();
                let moved = |f: Family| Family { base: at(f.base), ..f };
                Shape::Hatch { rings, families: families.into_iter().map(moved).collect() }
            }
            Shape::Fill(p) => Shape::Fill(p.map(at)),
            Shape::Insert { block, at: p, mirrored } => {
                Shape::Insert { block, at: at(p), mirrored }
            }
            Shape::Dimension { from, to, line, upright, block } => {
                Shape::Dimension { from: at(from), to: at(to), line: at(line), upright, block }
            }
        }
    }

    pub(crate) fn put(&mut self, element: Element, shape: Shape) {
        let shape = self.shape(shape);
        self.entities.push(Entity { element, view: self.view, shape });
    }

    pub(crate) fn line(&mut self, element: Element, a: P, b: P) {
        self.put(element, Shape::Line(a, b));
    }

    /// Lines from point to point.
    pub(crate) fn path(&mut self, element: Element, points: &[P]) {
        for w in points.windows(2) {
            self.line(element, w[0], w[1]);
        }
    }

    /// A closed line: as one polyline, or as loose lines.
    pub(crate) fn ring(&mut self, element: Element, points: &[P], closed: bool) {
        if closed {
            self.put(element, Shape::Poly { points: points.to_vec(), closed: true });
        } else {
            self.path(element, points);
            self.line(element, points[points.len() - 1], points[0]);
        }
    }

    pub(crate) fn text(&mut self, element: Element, at: P, high: f64, words: &str) {
        self.put(element, Shape::Text { at, high, words: words.to_owned() });
    }

    /// A pattern over an area: a hatch, or its strokes as loose lines.
    pub(crate) fn pattern(
        &mut self,
        element: Element,
        area: &Area,
        families: &[Family],
        exploded: bool,
    ) {
        if area.is_empty() {
            return;
        }
        if exploded {
            for (a, b) in families.iter().flat_map(|f| f.strokes(area)) {
                self.line(element, a, b);
            }
        } else {
            self.put(element, Shape::Hatch { rings: area.rings(), families: families.to_vec() });
        }
    }
}
