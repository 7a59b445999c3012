//! What is drawn: views of planes with boards, openings and roofs, in drafting units, each view from
//! its own lower left corner. What is true of them is true by construction.

use super::shape::{Area, P, Rect};

/// What an opening is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Kind {
    Window,
    Door,
    Overhead,
}

/// A window or door.
#[derive(Clone, Debug)]
pub(crate) struct Opening {
    pub(crate) kind: Kind,
    /// The frame.
    pub(crate) unit: Rect,
    /// The frame with its casing.
    pub(crate) outer: Rect,
    /// Sashes side by side.
    pub(crate) sashes: usize,
}

/// What a board is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum BoardKind {
    Corner,
    Band,
    Frieze,
    WaterTable,
}

/// A board.
#[derive(Clone, Debug)]
pub(crate) struct Board {
    pub(crate) kind: BoardKind,
    pub(crate) area: Area,
}

/// What stands over a plane.
#[derive(Clone, Debug)]
pub(crate) enum Top {
    /// A level soffit, a fascia and the roof over it: its outline.
    Eave { fascia: Rect, roof: Vec<P> },
    /// Two rakes to a peak: the peak's height, how far rakes reach out at left and right, their depth.
    Gable { peak: f64, out: [f64; 2], depth: f64 },
}

/// A lower roof across a wall.
#[derive(Clone, Debug)]
pub(crate) struct Porch {
    pub(crate) fascia: Rect,
    pub(crate) roof: Vec<P>,
}

/// A plane of the house in one view.
#[derive(Clone, Debug)]
pub(crate) struct Plane {
    pub(crate) x0: f64,
    pub(crate) x1: f64,
    pub(crate) foot: f64,
    /// Height of the soffit, where rakes begin.
    pub(crate) soffit: f64,
    pub(crate) top: Top,
    /// From foot to soffit or rakes.
    pub(crate) outline: Vec<P>,
    /// Height of a course line.
    pub(crate) phase: f64,
    /// Height of the stone, none at the foot.
    pub(crate) stone: f64,
    pub(crate) boards: Vec<Board>,
    pub(crate) openings: Vec<Opening>,
    pub(crate) porch: Option<Porch>,
    /// What is sided.
    pub(crate) siding: Area,
    /// What is stone.
    pub(crate) masonry: Area,
}

/// An elevation.
#[derive(Clone, Debug)]
pub(crate) struct View {
    pub(crate) title: String,
    pub(crate) planes: Vec<Plane>,
    /// Floors, by height.
    pub(crate) floors: Vec<f64>,
    /// Grade, left to right.
    pub(crate) grade: Vec<P>,
    /// Windows in roofs.
    pub(crate) skylights: Vec<Rect>,
    /// Windows in stone.
    pub(crate) cellar: Vec<Rect>,
    /// Of which view this is a part drawn again.
    pub(crate) part_of: Option<usize>,
    /// Room it takes, annotations aside.
    pub(crate) room: Rect,
}

impl Plane {
    /// Openings that siding meets.
    pub(crate) fn sided_openings(&self) -> Vec<&Opening> {
        let near = |o: &&Opening| {
            let grown = Area::rect(o.outer.grown(0.25));
            grown.within(&self.siding).size() > 1e-3
        };
        self.openings.iter().filter(near).collect()
    }
}
