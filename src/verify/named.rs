//! What violations name: things by their ids, and places on elevations.

use crate::geom::vocabulary::Xy;
use crate::layout::course::{LaidCourse, LaidRun};
use crate::layout::laid::LaidHouse;
use crate::layout::piece::Piece;
use crate::layout::violation::{Place, Subject};
use crate::layout::wall::{LaidElevation, LaidWall};
use crate::model::trim::TrimPiece;

/// A wall.
pub(super) fn wall(id: &str) -> Subject {
    Subject::Wall { wall: id.into() }
}

/// A course of a wall.
pub(super) fn course(wall: &str, course: i32) -> Subject {
    Subject::Course { wall: wall.into(), course }
}

/// An opening of a wall.
pub(super) fn opening(wall: &str, id: &str) -> Subject {
    Subject::Opening { wall: wall.into(), opening: id.into() }
}

/// A fixture on a wall.
pub(super) fn obstacle(wall: &str, id: &str) -> Subject {
    Subject::Obstacle { wall: wall.into(), obstacle: id.into() }
}

/// A zone.
pub(super) fn zone(id: &str) -> Subject {
    Subject::Zone { zone: id.into() }
}

/// A corner.
pub(super) fn corner(id: &str) -> Subject {
    Subject::Corner { corner: id.into() }
}

/// A run.
pub(super) fn run(id: &str) -> Subject {
    Subject::Run { run: id.into() }
}

/// A piece.
pub(super) fn piece(mark: &str) -> Subject {
    Subject::Piece { piece: mark.into() }
}

/// A panel.
pub(super) fn panel(id: &str) -> Subject {
    Subject::Panel { panel: id.into() }
}

/// A piece of trim.
pub(super) fn trim(mark: &str) -> Subject {
    Subject::Trim { trim: mark.into() }
}

/// A line of the takeoff.
pub(super) fn takeoff_line(id: &str) -> Subject {
    Subject::TakeoffLine { line: id.to_owned() }
}

/// A place, if it is one: of nothing there is none.
pub(super) fn place(elevation: &str, point: Xy) -> Option<Place> {
    let stands = point.iter().all(|v| v.is_finite());
    stands.then(|| Place { elevation: elevation.into(), point })
}

/// The place half way.
pub(super) fn midway(a: Xy, b: Xy) -> Xy {
    [(a[0] + b[0]) / 2.0, (a[1] + b[1]) / 2.0]
}

/// Left, bottom, right, top.
pub(super) fn bounds<'a>(points: impl IntoIterator<Item = &'a Xy>) -> [f64; 4] {
    let none = [f64::INFINITY, f64::INFINITY, f64::NEG_INFINITY, f64::NEG_INFINITY];
    points
        .into_iter()
        .fold(none, |b, p| [b[0].min(p[0]), b[1].min(p[1]), b[2].max(p[0]), b[3].max(p[1])])
}

/// The middle of what holds these points; not finite where there are none.
pub(super) fn middle<'a>(points: impl IntoIterator<Item = &'a Xy>) -> Xy {
    let b = bounds(points);
    [(b[0] + b[2]) / 2.0, (b[1] + b[3]) / 2.0]
}

/// From where to where, if anywhere.
pub(super) fn span(low: f64, high: f64) -> Option<[f64; 2]> {
    (low.is_finite() && high.is_finite()).then_some([low, high])
}

/// The middle of a wall.
pub(super) fn at_wall(e: &LaidElevation, w: &LaidWall) -> Option<Place> {
    place(&e.name, middle(&w.outline))
}

/// The middle of a piece of trim.
pub(super) fn at_trim(t: &TrimPiece) -> Option<Place> {
    place(&t.elevation, t.place(0.5))
}

/// A run with where it is.
#[derive(Clone, Copy)]
pub(super) struct RunOn<'a> {
    pub(super) elevation: &'a LaidElevation,
    pub(super) wall: &'a LaidWall,
    pub(super) course: &'a LaidCourse,
    pub(super) run: &'a LaidRun,
}

impl<'a> RunOn<'a> {
    /// The run by its name.
    pub(super) fn subject(&self) -> Subject {
        run(&self.run.id)
    }

    /// Half way up its course.
    pub(super) fn at(&self, x: f64) -> Option<Place> {
        place(&self.elevation.name, [x, (self.course.bottom + self.course.top) / 2.0])
    }

    /// Its middle.
    pub(super) fn middle(&self) -> Option<Place> {
        self.at((self.run.x0 + self.run.x1) / 2.0)
    }

    /// One of its pieces.
    pub(super) fn piece(self, piece: &'a Piece) -> PieceOn<'a> {
        PieceOn { run: self, piece }
    }
}

/// A piece with where it is.
#[derive(Clone, Copy)]
pub(super) struct PieceOn<'a> {
    pub(super) run: RunOn<'a>,
    pub(super) piece: &'a Piece,
}

impl PieceOn<'_> {
    /// The piece by its mark.
    pub(super) fn subject(&self) -> Subject {
        piece(&self.piece.mark)
    }

    /// The middle of what shows of it.
    pub(super) fn middle(&self) -> Option<Place> {
        let p = self.piece;
        let shown = place(&self.run.elevation.name, middle(&p.outline));
        shown.or_else(|| self.run.at((p.x0 + p.x1) / 2.0))
    }

    /// One of its ends, half way up the course.
    pub(super) fn end(&self, hand: usize) -> Option<Place> {
        self.run.at(if hand == 0 { self.piece.x0 } else { self.piece.x1 })
    }
}

/// Every run.
pub(super) fn runs(layout: &LaidHouse) -> impl Iterator<Item = RunOn<'_>> {
    layout.walls().flat_map(|(elevation, wall)| runs_of(elevation, wall))
}

/// The runs of a wall.
pub(super) fn runs_of<'a>(
    elevation: &'a LaidElevation,
    wall: &'a LaidWall,
) -> impl Iterator<Item = RunOn<'a>> {
    wall.courses.iter().flat_map(move |course| {
        course.runs.iter().map(move |run| RunOn { elevation, wall, course, run })
    })
}

/// Every piece.
pub(super) fn pieces(layout: &LaidHouse) -> impl Iterator<Item = PieceOn<'_>> {
    runs(layout).flat_map(|on| on.run.pieces.iter().map(move |p| on.piece(p)))
}
