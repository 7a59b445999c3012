//! What is cut for a wall: panels opened, offcuts that waited, equal cuts at one setting of the stop.

use std::collections::BTreeMap;

use super::offcuts::OnWalls;
use crate::layout::laid::LaidHouse;
use crate::layout::piece::{EndCut, Piece};
use crate::layout::wall::LaidWall;
use crate::model::saw::{LaidAside, SawBatch, SawList, SawPiece, TakenOffcut};

/// Steps of an inch that a stop is set to.
const STOP: f64 = 16.0;
/// Steps of a degree that a saw is set to.
const ANGLE: f64 = 8.0;

/// What tells one setting of the saw from another: length the longest first, angles.
type Setting = (std::cmp::Reverse<i64>, bool, [Option<i64>; 2]);

/// The saw list of a wall.
pub(super) fn list(laid: &LaidHouse, on: &OnWalls, wall: &LaidWall) -> SawList {
    let mut batches: BTreeMap<Setting, SawBatch> = BTreeMap::new();
    for piece in wall.courses.iter().flat_map(|c| &c.runs).flat_map(|r| &r.pieces) {
        let batch = batches.entry(setting(piece)).or_insert_with(|| SawBatch {
            length: piece.length,
            whole: is_whole(piece),
            angles: angles(piece),
            pieces: Vec::new(),
        });
        batch.pieces.push(SawPiece { mark: piece.mark.clone(), panel: piece.panel.clone() });
    }
    let mut out = SawList { batches: batches.into_values().collect(), ..SawList::default() };
    let Some(here) = on.place(&wall.id) else { return out };
    for panel in &laid.panels {
        let walls = on.walls_of(&panel.id);
        let (Some(first), Some(last)) = (walls.first(), walls.last()) else { continue };
        if *first == here {
            out.opened.push(panel.id.clone());
        } else if walls.contains(&here) {
            let opened_at = on.wall(*first);
            out.taken.push(TakenOffcut { panel: panel.id.clone(), opened_at });
        }
        if *first <= here && here < *last {
            let next = walls.iter().find(|w| **w > here);
            let wanted_at = next.map(|w| on.wall(*w)).unwrap_or_default();
            out.laid_aside.push(LaidAside { panel: panel.id.clone(), wanted_at });
        }
    }
    out
}

/// Whether a piece is a panel as it came.
fn is_whole(piece: &Piece) -> bool {
    piece.ends.iter().all(|e| e.cut == EndCut::Factory)
}

fn angles(piece: &Piece) -> [Option<f64>; 2] {
    [&piece.ends[0], &piece.ends[1]].map(|e| (e.cut != EndCut::Shaped).then_some(e.angle))
}

fn setting(piece: &Piece) -> Setting {
    let length = (piece.length * STOP).round() as i64;
    let angles = angles(piece).map(|a| a.map(|a| (a * ANGLE).round() as i64));
    (std::cmp::Reverse(length), is_whole(piece), angles)
}
