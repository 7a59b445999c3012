//! How far pieces grow and shrink, and whether their gaps cover it (`SidingFact::LengthChangeTable`).

use crate::finding::Finding;
use crate::finding::laying::LayingFinding;
use crate::layout::laid::LaidHouse;
use crate::model::fastening::{Movement, MovementRoom, MovingPiece, PieceMovement};
use crate::model::trim::{TrimEnd, TrimKind, TrimPiece, TrimStock};

/// Change of a length over so many degrees.
fn change(length: f64, expansion: f64, degrees: f64) -> f64 {
    length * expansion * degrees
}

/// What panels, posts and channels do at the job's temperatures.
pub fn movement(layout: &LaidHouse) -> Movement {
    let w = &layout.job.weather;
    let mut out = Movement {
        installed: w.installed(),
        lowest: w.lowest_f,
        highest: w.highest_f,
        expansion: layout.job.expansion(),
        rows: Vec::new(),
    };
    if layout.job.siding().movement.is_none() {
        return out;
    }
    if let Some(length) = longest(layout.pieces().map(|(.., p)| p.length)) {
        // Held at its middle, a panel grows half to each end (Example::RiseOfGaps).
        let at = (MovementRoom::EndGaps, Some(layout.job.end_gap()));
        out.rows.push(row(&out, MovingPiece::Panel, length, 0.5, at));
    }
    for stock in [TrimStock::OutsidePost, TrimStock::InsidePost] {
        let row = post(layout, &out, stock);
        out.rows.extend(row);
    }
    let channels =
        layout.trims.iter().filter(|t| t.kind.stock() == TrimStock::JChannel && !frame(t));
    if let Some(length) = longest(channels.map(|t| t.length)) {
        let at = (MovementRoom::LapOverNext, Some(layout.job.trim.channel_face));
        out.rows.push(row(&out, MovingPiece::JChannel, length, 1.0, at));
    }
    out
}

fn longest(lengths: impl Iterator<Item = f64>) -> Option<f64> {
    lengths.reduce(f64::max)
}

/// The longest post of a stock: a spliced one has room in its lap, another is free below.
fn post(layout: &LaidHouse, m: &Movement, stock: TrimStock) -> Option<PieceMovement> {
    let (whole, spliced) = match stock {
        TrimStock::OutsidePost => (MovingPiece::OutsidePost, MovingPiece::SplicedOutsidePost),
        _ => (MovingPiece::InsidePost, MovingPiece::SplicedInsidePost),
    };
    let mine = || layout.trims.iter().filter(|t| t.kind.stock() == stock);
    let in_lap = mine().filter_map(|t| Some((t.length, splice_room(t)?)));
    if let Some((length, room)) = in_lap.max_by(|a, b| a.0.total_cmp(&b.0)) {
        return Some(row(m, spliced, length, 1.0, (MovementRoom::SpliceBelow, Some(room))));
    }
    let length = longest(mine().map(|t| t.length))?;
    Some(row(m, whole, length, 1.0, (MovementRoom::FreeBelow, None)))
}

/// What the flange is cut back more than the face laps is left to move (`TrimFact::PostSplice`).
fn splice_room(t: &TrimPiece) -> Option<f64> {
    t.ends.iter().find_map(|e| match e {
        TrimEnd::Splice { lap, cut } => Some((cut - lap).max(0.0)),
        _ => None,
    })
}

fn frame(t: &TrimPiece) -> bool {
    matches!(t.kind, TrimKind::HeadChannel | TrimKind::JambChannel | TrimKind::SillChannel)
}

/// `share` of the growth goes to the place where the room is; none said is room without end.
fn row(
    m: &Movement,
    piece: MovingPiece,
    length: f64,
    share: f64,
    (room_at, room): (MovementRoom, Option<f64>),
) -> PieceMovement {
    let longer = change(length, m.expansion, (m.highest - m.installed).max(0.0));
    let shorter = change(length, m.expansion, (m.installed - m.lowest).max(0.0));
    let needed = share * longer;
    let covered = room.is_none_or(|room| needed <= room + 1e-9);
    let gap = room.filter(|_| room_at == MovementRoom::EndGaps);
    PieceMovement {
        piece,
        length,
        longer,
        shorter,
        room_at,
        room,
        needed,
        covered,
        rise_covered: gap.map(|gap| rise_covered(gap, length, m.expansion)),
    }
}

/// A finding for each kind of piece whose room does not cover its growth.
pub fn findings(m: &Movement) -> Vec<Finding> {
    let uncovered = m.rows.iter().filter(|r| !r.covered);
    uncovered
        .map(|row| {
            let (row, installed, highest) = (row.clone(), m.installed, m.highest);
            Finding::new(LayingFinding::MovementGap { row, installed, highest })
        })
        .collect()
}

/// The temperature rise that uses up a gap at each end of a panel held at its middle.
fn rise_covered(gap: f64, length: f64, expansion: f64) -> f64 {
    gap / (length / 2.0 * expansion)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn length_change_of_the_published_table() {
        // SidingFact::LengthChangeTable: exact products for a swing of 100 F: 3.0, 3.5, 4.0 and 4.5e-5 per F.
        for (length, row) in [
            (144.0, [0.432, 0.504, 0.576, 0.648]),
            (145.0, [0.435, 0.507, 0.580, 0.653]),
            (150.0, [0.450, 0.525, 0.600, 0.675]), // SidingFact::FullSwing, SidingFact::TypicalSwing
            (200.0, [0.600, 0.700, 0.800, 0.900]),
            (240.0, [0.720, 0.840, 0.960, 1.080]),
            (300.0, [0.900, 1.050, 1.200, 1.350]),
        ] {
            for (printed, e) in row.into_iter().zip([3.0e-5, 3.5e-5, 4.0e-5, 4.5e-5]) {
                let found = change(length, e, 100.0);
                assert!((found - printed).abs() <= 0.0005 + 1e-9, "{length}: {found} {printed}");
            }
        }
    }

    #[test]
    fn rise_that_uses_up_the_gaps() {
        // Example::RiseOfGaps: 12 ft 6 in panel, 1/4 and 3/8 in at each end.
        for (gap, e, f) in [
            (0.25, 4.5e-5, 74.1),
            (0.25, 3.5e-5, 95.2),
            (0.25, 3.0e-5, 111.1),
            (0.375, 4.5e-5, 111.1),
            (0.375, 3.5e-5, 142.9),
            (0.375, 3.0e-5, 166.7),
        ] {
            let found = rise_covered(gap, 150.0, e);
            assert!((found - f).abs() < 0.06, "{found} {f}");
        }
    }

    #[test]
    fn a_full_swing_at_the_ceiling_is_not_covered() {
        // SidingFact::GapsAgainstSwing: 1/2 in of gaps against 0.675; 74 F are covered
        // (Example::RiseOfGaps), 75 are not.
        let m = |rise: f64| Movement {
            installed: 40.0,
            lowest: 0.0,
            highest: 40.0 + rise,
            expansion: 4.5e-5,
            rows: Vec::new(),
        };
        let gaps = (MovementRoom::EndGaps, Some(0.25));
        let panel = |m: &Movement| row(m, MovingPiece::Panel, 150.0, 0.5, gaps).covered;
        let covered = |rise: f64| panel(&m(rise));
        assert!(!covered(100.0) && covered(74.0) && !covered(75.0));
        // The lower figure covers it no better at 100 F: 0.525 over 0.50 (SidingFact::TypicalSwing).
        let low = Movement { expansion: 3.5e-5, ..m(100.0) };
        assert!(!panel(&low));
    }
}
