//! What each wall and gable takes of each line, row by row, and the sums of both.

use super::grid::{Grid, Look};
use crate::language::Language;
use crate::layout::Layout;
use crate::model::quantity::{Share, TakeoffLine, WallPart};
use crate::model::takeoff::Takeoff;
use crate::wording::tables;
use crate::wording::takeoff::items;

pub(super) fn sheet(layout: &Layout, takeoff: &Takeoff) -> Grid {
    let style = layout.job.sheet.lengths;
    let mut g = Grid::new(layout, tables::GABLES, &[34.0, 12.0, 22.0, 14.0, 12.0, 12.0, 14.0]);
    g.texts(&[tables::GABLES], Look::Title);
    g.texts(&[tables::GABLES_NOTE], Look::Text);
    let head = g.row;
    g.head(&["Item", "Unit", "Elevation", "Wall", tables::WALL_OR_GABLE, "Pieces", "Net"], &[5, 6]);
    let first = g.row + 1;
    let lines: Vec<&TakeoffLine> = takeoff.lines.iter().filter(|l| !l.shares.is_empty()).collect();
    for l in &lines {
        for s in &l.shares {
            let (item, part) =
                (items::item(Language::English, &l.item, style), items::wall_part(part(s)));
            g.texts_at(&[&item, items::unit(l.unit).en, &s.elevation, &s.wall, part]);
            g.number(5, s.pieces as f64, Look::Count);
            g.number(6, s.net, Look::Three);
            g.next();
        }
    }
    g.filter(head, 7);
    let last = g.row.max(first);
    g.print_to_here();
    g.next();
    g.texts(&[tables::BY_WALL_AND_GABLE], Look::Heading);
    g.heads(&["Item", "Unit", "", "", "Walls", "Gables", "House"], &[4, 5, 6]);
    for l in &lines {
        let excel = g.row + 1;
        g.texts_at(&[&items::item(Language::English, &l.item, style), items::unit(l.unit).en]);
        for (col, mine) in [(4, WallPart::Wall), (5, WallPart::Gable)] {
            let net: f64 = l.shares.iter().filter(|s| part(s) == mine).map(|s| s.net).sum();
            let formula = format!(
                "=SUMPRODUCT(--($A${first}:$A${last}=$A{excel}),--($E${first}:$E${last}=\"{}\"),$G${first}:$G${last})",
                items::wall_part(mine)
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
fn part(s: &Share) -> WallPart {
    s.wall_part.unwrap_or(WallPart::Wall)
}
