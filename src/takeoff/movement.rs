//! How far pieces grow and shrink, and whether their gaps cover it (FACTS 1c).

use crate::finding::Finding;
use crate::finding::laying::{LayingFinding, PieceGrowth};
use crate::layout::Layout;
use crate::model::fastening::{Movement, Moves};
use crate::model::trim::{TrimEnd, TrimKind, TrimPiece, TrimStock};
use crate::units::LengthStyle;

/// Change of a length over so many degrees.
pub(super) fn change(length: f64, expansion: f64, degrees: f64) -> f64 {
    length * expansion * degrees
}

/// What panels, posts and channels do at the job's temperatures.
pub fn movement(layout: &Layout) -> Movement {
    let w = &layout.job.weather;
    let mut out = Movement {
        installed: w.installed(),
        lowest: w.lowest_f,
        highest: w.highest_f,
        expansion: layout.job.expansion(),
        rows: Vec::new(),
        words: Vec::new(),
    };
    if layout.job.siding().movement.is_none() {
        return out;
    }
    let longest = |it: &mut dyn Iterator<Item = f64>| {
        it.fold(None, |m: Option<f64>, l| Some(m.map_or(l, |m| m.max(l))))
    };
    if let Some(l) = longest(&mut layout.pieces().map(|(.., p)| p.length)) {
        // Held at its middle, a panel grows half to each end (WY-10).
        let room = layout.job.end_gap();
        let row = moves(&out, "panel", l, room, 0.5, "gap at each end, held at its middle");
        out.rows.push(row);
    }
    // What the flange is cut back more than the face laps is left to move (FACTS SD-98, VSI-A).
    let room = |t: &TrimPiece| {
        t.ends.iter().find_map(|e| match e {
            TrimEnd::Splice { lap, cut } => Some((cut - lap).max(0.0)),
            _ => None,
        })
    };
    for (stock, what) in [
        (TrimStock::OutsidePost, "outside corner post"),
        (TrimStock::InsidePost, "inside corner post"),
    ] {
        let of = || layout.trims.iter().filter(|t| t.kind.stock() == stock);
        let spliced = of().filter_map(|t| Some((t.length, room(t)?)));
        if let Some((l, room)) = spliced.max_by(|a, b| a.0.total_cmp(&b.0)) {
            let how = "hung from its top, room left in the lap below";
            out.rows.push(moves(&out, &format!("{what}, spliced"), l, room, 1.0, how));
        } else if let Some(l) = longest(&mut of().map(|t| t.length)) {
            // It hangs from its top and is free below.
            let row = moves(&out, what, l, f64::INFINITY, 1.0, "hung from its top, free below");
            out.rows.push(Moves { room: row.needed, ..row });
        }
    }
    let channels =
        layout.trims.iter().filter(|t| t.kind.stock() == TrimStock::JChannel && !frame(t));
    if let Some(l) = longest(&mut channels.map(|t| t.length)) {
        let lap = layout.job.trim.channel_face;
        out.rows.push(moves(&out, "J-channel", l, lap, 1.0, "lap of one length over the next"));
    }
    out.words = words(layout, &out);
    out
}

fn words(layout: &Layout, m: &Movement) -> Vec<String> {
    let style = layout.job.sheet.lengths;
    let mut out = vec![format!(
        "Siding put up at {}, coldest {}, hottest {}; growth {:.6} of its length for each F, by setting: the maker's own figure goes before it.",
        degrees(m.installed),
        degrees(m.lowest),
        degrees(m.highest),
        m.expansion
    )];
    out.extend(m.rows.iter().map(|r| {
        format!(
            "{} of {}: {} longer when hottest, {} shorter when coldest; {}: {}.",
            r.what,
            style.length(r.length),
            fine(style, r.longer),
            fine(style, r.shorter),
            r.how,
            match (r.covered, r.room > r.needed) {
                (true, true) =>
                    format!("{} of {} are used", fine(style, r.needed), fine(style, r.room)),
                (true, false) => "room enough".to_owned(),
                (false, _) =>
                    format!("NOT COVERED, {} of {}", fine(style, r.needed), fine(style, r.room)),
            }
        )
    }));
    out
}

/// A temperature in both scales.
fn degrees(f: f64) -> String {
    format!("{f} F ({:.0} C)", (f - 32.0) / 1.8)
}

fn frame(t: &TrimPiece) -> bool {
    matches!(t.kind, TrimKind::HeadChannel | TrimKind::JambChannel | TrimKind::SillChannel)
}

/// `share` of the growth goes to the place where the room is.
fn moves(m: &Movement, what: &str, length: f64, room: f64, share: f64, how: &str) -> Moves {
    let longer = change(length, m.expansion, (m.highest - m.installed).max(0.0));
    let shorter = change(length, m.expansion, (m.installed - m.lowest).max(0.0));
    let needed = share * longer;
    Moves {
        what: what.to_owned(),
        length,
        longer,
        shorter,
        room,
        needed,
        covered: needed <= room + 1e-9,
        how: how.to_owned(),
    }
}

/// A finding for each kind of piece whose room does not cover its growth.
pub fn findings(layout: &Layout) -> Vec<Finding> {
    let m = &layout.movement;
    let uncovered = m.rows.iter().filter(|r| !r.covered);
    uncovered
        .map(|r| {
            let covered = || rise_covered(r.room, r.length, m.expansion);
            Finding::new(LayingFinding::MovementGap {
                growth: PieceGrowth {
                    piece: r.what.clone(),
                    length: r.length,
                    longer: r.longer,
                    needed: r.needed,
                    room: r.room,
                    room_at: r.how.clone(),
                },
                installed: m.installed,
                highest: m.highest,
                rise_covered: (r.what == "panel").then(covered),
            })
        })
        .collect()
}

/// A small length to the hundredth.
pub(super) fn fine(style: LengthStyle, inches: f64) -> String {
    match style {
        LengthStyle::Feet => format!("{inches:.2} in"),
        LengthStyle::Mm => style.short(inches),
    }
}

/// The temperature rise that uses up a gap at each end of a panel held at its middle.
pub(super) fn rise_covered(gap: f64, length: f64, expansion: f64) -> f64 {
    gap / (length / 2.0 * expansion)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn length_change_of_the_published_table() {
        // FACTS 1c, exact products for a swing of 100 F: 3.0, 3.5, 4.0 and 4.5e-5 per F.
        for (length, row) in [
            (144.0, [0.432, 0.504, 0.576, 0.648]),
            (145.0, [0.435, 0.507, 0.580, 0.653]),
            (150.0, [0.450, 0.525, 0.600, 0.675]), // SD-57, SD-58
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
        // FACTS WY-10: 12 ft 6 in panel, 1/4 and 3/8 in at each end.
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
        // FACTS SD-59: 1/2 in of gaps against 0.675; 74 F are covered (WY-10), 75 are not.
        let m = |rise: f64| Movement {
            installed: 40.0,
            lowest: 0.0,
            highest: 40.0 + rise,
            expansion: 4.5e-5,
            rows: Vec::new(),
            words: Vec::new(),
        };
        let covered = |rise: f64| moves(&m(rise), "panel", 150.0, 0.25, 0.5, "").covered;
        assert!(!covered(100.0) && covered(74.0) && !covered(75.0));
        // The lower figure covers it no better at 100 F: 0.525 over 0.50 (SD-58).
        let low = Movement { expansion: 3.5e-5, ..m(100.0) };
        assert!(!moves(&low, "panel", 150.0, 0.25, 0.5, "").covered);
    }
}
