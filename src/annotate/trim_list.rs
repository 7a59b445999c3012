//! Trim by stock length.

use std::collections::BTreeMap;

use super::canvas::{Canvas, fitted};
use super::cut_list::heading;
use super::page::{Page, room};
use super::style::{Ink, TEXT};
use crate::geom::vocabulary::Point;
use crate::model::layout::Layout;
use crate::model::trim::{TrimEnd, TrimPiece, TrimStock};
use crate::units::feet_inches;

const ROW: f64 = 0.17;

pub(super) fn sheets(layout: &Layout) -> Vec<Page> {
    let mut rows: Vec<(bool, String)> = Vec::new();
    for stock in TrimStock::ALL {
        let mut by_length: BTreeMap<u32, Vec<&TrimPiece>> = BTreeMap::new();
        for t in layout.trims.iter().filter(|t| t.kind.stock() == stock) {
            let n = t.stock.rsplit(' ').next().and_then(|n| n.parse().ok()).unwrap_or(0);
            by_length.entry(n).or_default().push(t);
        }
        if by_length.is_empty() {
            continue;
        }
        rows.push((true, format!("{}: {} to buy", stock.words(), by_length.len())));
        for (n, list) in by_length {
            let cuts: Vec<String> = list.iter().map(|t| cut(t)).collect();
            rows.push((false, format!("{n}:  {}", cuts.join(";  "))));
        }
    }
    let area = room(layout);
    let per_column = ((area.height() - 0.5) / ROW).floor() as usize;
    let n = ((area.width() / 8.0).floor() as usize).max(1);
    let width = area.width() / n as f64;
    rows.chunks((per_column * n).max(1))
        .enumerate()
        .map(|(i, chunk)| {
            let mut c = Canvas::new(area);
            heading(
                &mut c,
                area,
                "Trim list",
                "each stock length with what is cut from it: mark, length, ends other than square",
            );
            for (j, (head, text)) in chunk.iter().enumerate() {
                let x = area.x0 + (j / per_column) as f64 * width;
                let y = area.y1 - 0.5 - (j % per_column) as f64 * ROW;
                c.left(&fitted(text, TEXT, *head, width - 0.2), TEXT, *head, Point::new(x, y));
                if *head {
                    c.line(
                        Ink::Rule,
                        Point::new(x, y - 0.09),
                        Point::new(x + width - 0.2, y - 0.09),
                    );
                }
            }
            Page {
                name: format!("trim-list-{}", i + 1),
                title: "Trim list".to_owned(),
                description: "Trim by stock length with the pieces cut from each".to_owned(),
                scale: "no scale".to_owned(),
                canvas: c,
            }
        })
        .collect()
}

fn cut(t: &TrimPiece) -> String {
    let mut out = format!("{} {}", t.mark, feet_inches((t.length * 16.0 + 1e-6).floor() / 16.0));
    for end in &t.ends {
        match end {
            TrimEnd::Square => {}
            TrimEnd::Mitre(a) => out.push_str(&format!(" mitre {a:.1}°")),
            TrimEnd::Tab(_) => out.push_str(" tab"),
            TrimEnd::Lap(_) => out.push_str(" lap"),
        }
    }
    out
}
