//! Changes as they are found, numbered when all are.

use super::shape::Box4;
use crate::geom::vocabulary::Xy;
use crate::model::change::{Change, How, Subject};
use crate::model::house::OpeningKind;
use crate::model::ids::{ElevationName, FeatureId, WallId};

/// Changes of one siding after another.
#[derive(Default)]
pub(super) struct Told {
    /// The zone in hand; none for the house's own siding.
    pub(super) zone: Option<String>,
    all: Vec<Change>,
}

/// Where a change is: its elevation and its wall, by their names.
#[derive(Clone)]
pub(super) struct On {
    pub(super) elevation: ElevationName,
    pub(super) wall: Option<WallId>,
}

/// Names of a thing in the old and in the new layout.
pub(super) type Names<'a> = (Option<&'a str>, Option<&'a str>);

impl Told {
    pub(super) fn push(&mut self, change: Change) {
        self.all.push(change);
    }

    /// A change of a thing at its places.
    pub(super) fn tell(
        &mut self,
        on: &On,
        subject: Subject,
        (old, new): Names,
        how: How,
        places: Vec<Box4>,
    ) {
        let name = |n: Option<&str>| n.map(FeatureId::from);
        let gone = Vec::new();
        let (old_name, new_name) = (name(old), name(new));
        let (elevation, wall) = (Some(on.elevation.clone()), on.wall.clone());
        let zone = self.zone.clone();
        self.all.push(Change {
            zone,
            elevation,
            wall,
            old_name,
            new_name,
            places,
            gone,
            ..blank(subject, how)
        });
    }

    /// The outline of what the last change took away.
    pub(super) fn gone(&mut self, outline: Vec<Xy>) {
        if let Some(last) = self.all.last_mut() {
            last.gone = outline;
        }
    }

    /// The kind of opening that the last change is of.
    pub(super) fn opening(&mut self, kind: OpeningKind) {
        if let Some(last) = self.all.last_mut() {
            last.opening = Some(kind);
        }
    }

    /// All of them, numbered from 1.
    pub(super) fn numbered(mut self) -> Vec<Change> {
        self.all.iter_mut().enumerate().for_each(|(i, c)| c.number = i + 1);
        self.all
    }
}

/// A change with nothing told of where it is.
pub(super) fn blank(subject: Subject, how: How) -> Change {
    Change {
        number: 0,
        zone: None,
        elevation: None,
        wall: None,
        opening: None,
        subject,
        old_name: None,
        new_name: None,
        how,
        places: Vec::new(),
        gone: Vec::new(),
    }
}
