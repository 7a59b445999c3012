//! What each wall and gable takes of each line, row by row, and the sums of both zones.

use super::grid::{Grid, Look};
use crate::model::quantity::{Share, TakeoffLine, Zone};
use crate::model::takeoff::Takeoff;
use crate::wording::tables;

pub(super) fn sheet(takeoff: &Takeoff) -> Grid {
    let mut g = Grid::new(tables::GABLES, &[34.0, 12.0, 22.0, 14.0, 12.0, 12.0, 14.0]);
    g.texts(&[tables::GABLES], Look::Title);
    g.texts(&[tables::GABLES_NOTE], Look::Text);
    let head = g.row;
    g.head(&["Item", "Unit", "Elevation", "Wall", "Zone", "Pieces", "Net"], &[5, 6]);
    let first = g.row + 1;
    let lines: Vec<&TakeoffLine> = takeoff.lines.iter().filter(|l| !l.shares.is_empty()).collect();
    for l in &lines {
        for s in &l.shares {
            g.texts_at(&[&l.item, &l.unit, &s.elevation, &s.wall, zone(s).word()]);
            g.number(5, s.pieces as f64, Look::Count);
            g.number(6, s.net, Look::Three);
            g.next();
        }
    }
    g.filter(head, 7);
    let last = g.row.max(first);
    g.next();
    g.texts(&["By zone"], Look::Heading);
    g.heads(&["Item", "Unit", "", "", "Walls", "Gables", "House"], &[4, 5, 6]);
    for l in &lines {
        let excel = g.row + 1;
        g.texts_at(&[&l.item, &l.unit]);
        for (col, part) in [(4, Zone::Wall), (5, Zone::Gable)] {
            let net: f64 = l.shares.iter().filter(|s| zone(s) == part).map(|s| s.net).sum();
            let formula = format!(
                "=SUMPRODUCT(--($A${first}:$A${last}=$A{excel}),--($E${first}:$E${last}=\"{}\"),$G${first}:$G${last})",
                part.word()
            );
            g.sum(col, &formula, net + 0.0, Look::Three);
        }
        let net: f64 = l.shares.iter().map(|s| s.net).sum();
        g.sum(6, &format!("=E{excel}+F{excel}"), net, Look::Three);
        g.next();
    }
    g
}

/// A wall without a rake is wall all over.
fn zone(s: &Share) -> Zone {
    s.zone.unwrap_or(Zone::Wall)
}
