//! CSV by RFC 4180. A cell whose text begins with `=`, `+`, `-`, `@`, a tab or a return gets an
//! apostrophe before it, so that no spreadsheet runs it as a formula.

use crate::model::layout::{EndCut, Layout};

/// A cell that stays text.
pub fn safe(text: &str) -> String {
    if text.starts_with(['=', '+', '-', '@', '\t', '\r', '\n']) {
        format!("'{text}")
    } else {
        text.to_owned()
    }
}

fn table(header: &[&str], rows: impl Iterator<Item = Vec<String>>) -> Vec<u8> {
    let mut writer =
        csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).from_writer(Vec::new());
    // Writing to memory cannot fail; a row of another length would, and there is none.
    let _ = writer.write_record(header);
    for row in rows {
        let _ = writer.write_record(&row);
    }
    writer.into_inner().unwrap_or_default()
}

fn number(v: f64) -> String {
    let rounded = (v * 1e4).round() / 1e4;
    format!("{rounded}")
}

/// `takeoff.csv`.
pub fn takeoff(layout: &Layout) -> Vec<u8> {
    let rows = layout.takeoff.iter().map(|l| {
        vec![
            safe(&l.item),
            safe(&l.unit),
            number(l.net),
            number(l.order),
            number(l.waste),
            safe(&l.how),
        ]
    });
    table(&["item", "unit", "net", "order", "waste %", "how"], rows)
}

/// `cut-list.csv`: every piece of panel in cutting order, then every piece of trim.
pub fn cut_list(layout: &Layout) -> Vec<u8> {
    let header = [
        "stock",
        "mark",
        "from (in)",
        "to (in)",
        "length (in)",
        "length",
        "left end",
        "left angle",
        "right end",
        "right angle",
        "rip from",
        "rip to",
        "notches",
        "elevation",
        "wall",
        "course",
    ];
    let end = |e: EndCut| match e {
        EndCut::Factory => "factory",
        EndCut::Square => "square",
        EndCut::Angled => "angled",
    };
    let mut pieces: std::collections::BTreeMap<&str, Vec<String>> =
        std::collections::BTreeMap::new();
    for (e, w) in layout.walls() {
        for c in &w.courses {
            for p in c.runs.iter().flat_map(|r| &r.pieces) {
                let notches: Vec<String> = p
                    .notches
                    .iter()
                    .map(|n| {
                        let side = if n.side == crate::model::layout::NotchSide::Top {
                            "top"
                        } else {
                            "bottom"
                        };
                        format!(
                            "{side} {} wide {} deep {} from left ({})",
                            number(n.width),
                            number(n.depth),
                            number(n.left),
                            n.around
                        )
                    })
                    .collect();
                let rip = |f: fn(&crate::model::layout::Rip) -> f64| {
                    p.rip.as_ref().map_or(String::new(), |r| number(f(r)))
                };
                pieces.insert(
                    &p.mark,
                    vec![
                        p.panel.clone(),
                        safe(&p.mark),
                        number(p.start),
                        number(p.end),
                        number(p.length),
                        // Lengths to cut are rounded down (FACTS TK-24).
                        crate::units::feet_inches((p.length * 16.0 + 1e-6).floor() / 16.0),
                        end(p.left_end).into(),
                        number(p.left_angle),
                        end(p.right_end).into(),
                        number(p.right_angle),
                        rip(|r| r.from),
                        rip(|r| r.to),
                        safe(&notches.join("; ")),
                        safe(&e.name),
                        safe(&w.id),
                        (c.index + 1).to_string(),
                    ],
                );
            }
        }
    }
    let panels = layout
        .panels
        .iter()
        .flat_map(|p| &p.pieces)
        .filter_map(|m| pieces.get(m.as_str()).cloned());
    let mut trims: Vec<_> = layout.trims.iter().collect();
    trims.sort_by(|a, b| stock_key(&a.stock).cmp(&stock_key(&b.stock)));
    let trims = trims.into_iter().map(|t| {
        let blank = String::new;
        vec![
            safe(&t.stock),
            safe(&t.mark),
            blank(),
            blank(),
            number(t.length),
            crate::units::feet_inches((t.length * 16.0 + 1e-6).floor() / 16.0),
            trim_end(&t.ends[0]),
            blank(),
            trim_end(&t.ends[1]),
            blank(),
            blank(),
            blank(),
            safe(t.kind.words()),
            safe(&t.elevation),
            safe(&t.wall),
            blank(),
        ]
    });
    table(&header, panels.chain(trims))
}

/// `J-channel 12` sorts after `J-channel 9`.
fn stock_key(stock: &str) -> (&str, u32) {
    let (name, n) = stock.rsplit_once(' ').unwrap_or((stock, ""));
    (name, n.parse().unwrap_or(0))
}

fn trim_end(end: &crate::model::trim::TrimEnd) -> String {
    use crate::model::trim::TrimEnd;
    match end {
        TrimEnd::Square => "square".into(),
        TrimEnd::Mitre(a) => format!("mitre {}", number(*a)),
        TrimEnd::Tab(l) => format!("water tab {}", number(*l)),
        TrimEnd::Lap(l) => format!("lap {}", number(*l)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_cell_runs_as_a_formula() {
        for t in ["=1+1", "+1", "-1", "@x", "\tx"] {
            assert!(safe(t).starts_with('\''));
        }
        assert_eq!(safe("front-1"), "front-1");
    }
}
