//! Trim closes round every opening, and along every side.

use super::Rule;
use crate::model::house::{EdgeKind, OpeningKind};
use crate::model::layout::{Edge, Layout, RuleCheck, Wall};
use crate::model::receiver::Receiver;
use crate::model::trim::{TrimKind, TrimPiece};

pub(super) fn check(layout: &Layout) -> [RuleCheck; 3] {
    [frames(layout), sides(layout), stock(layout)]
}

/// Length of an opening's sides of one kind that border the field.
fn bordering(w: &Wall, opening: &str, kind: EdgeKind) -> f64 {
    let mine = |e: &&Edge| e.kind == kind && e.opening.as_deref() == Some(opening);
    w.edges.iter().filter(mine).map(length).sum()
}

fn length(e: &Edge) -> f64 {
    (e.from[0] - e.to[0]).hypot(e.from[1] - e.to[1])
}

/// Net length of pieces: what laps over a neighbour is not counted twice.
fn net(pieces: &[&TrimPiece], lap: f64) -> f64 {
    pieces.iter().map(|t| t.length).sum::<f64>() - pieces.len().saturating_sub(1) as f64 * lap
}

fn frames(layout: &Layout) -> RuleCheck {
    let mut rule = Rule::default();
    let face = layout.job.trim.channel_face;
    for (_, w) in layout.walls() {
        for o in &w.openings {
            let of = |kind: TrimKind| -> Vec<&TrimPiece> {
                layout
                    .trims
                    .iter()
                    .filter(|t| t.kind == kind && t.opening.as_deref() == Some(&o.id))
                    .collect()
            };
            let wants = [
                (TrimKind::HeadChannel, bordering(w, &o.id, EdgeKind::Head), 2.0 * face),
                (TrimKind::SillChannel, bordering(w, &o.id, EdgeKind::Sill), 2.0 * face),
            ];
            for (kind, side, extra) in wants {
                let pieces = of(kind);
                let want = if side > 0.0 { side + extra } else { 0.0 };
                rule.case((net(&pieces, face) - want).abs() < 0.05, || {
                    format!(
                        "{}: {} is {:.3} long, {want:.3} is needed",
                        o.id,
                        kind.words(),
                        net(&pieces, face)
                    )
                });
            }
            let jambs = bordering(w, &o.id, EdgeKind::Jamb);
            let have: f64 = of(TrimKind::JambChannel).iter().map(|t| t.length).sum();
            rule.case(have >= jambs - 0.05, || {
                format!("{}: jamb channels of {have:.3} for jambs of {jambs:.3}", o.id)
            });
            if o.kind == OpeningKind::Window && jambs > 0.0 {
                let tabbed = of(TrimKind::HeadChannel).iter().any(|t| {
                    t.ends.iter().any(|e| matches!(e, crate::model::trim::TrimEnd::Tab(_)))
                });
                rule.case(tabbed || bordering(w, &o.id, EdgeKind::Head) == 0.0, || {
                    format!("{}: the head channel has no water tab", o.id)
                });
            }
        }
    }
    rule.done("channels close round every opening")
}

fn sides(layout: &Layout) -> RuleCheck {
    let mut rule = Rule::default();
    let r = &layout.job.trim;
    for (_, w) in layout.walls() {
        let of = |kind: TrimKind| -> f64 {
            let mine: Vec<&TrimPiece> = layout
                .trims
                .iter()
                .filter(|t| t.wall == w.id && t.kind == kind && t.opening.is_none())
                .collect();
            mine.iter().map(|t| (t.from[0] - t.to[0]).hypot(t.from[1] - t.to[1])).sum()
        };
        let sum = |f: &dyn Fn(&&Edge) -> bool| -> (f64, usize) {
            let all: Vec<&Edge> = w
                .edges
                .iter()
                .filter(f)
                .filter(|e| e.opening.is_none() && length(e) >= 1.0)
                .collect();
            (all.iter().map(|e| length(e)).sum(), all.len())
        };
        let (bases, n) = sum(&|e| e.receiver == Receiver::Starter);
        let have = of(TrimKind::Starter);
        // Gaps at ends and between lengths.
        let gaps = r.starter_gap * (2.0 * n as f64 + (bases / r.starter).ceil());
        rule.case(have <= bases + 0.05 && have >= bases - gaps - 2.0 * n as f64, || {
            format!("{}: starter of {have:.2} along {bases:.2}", w.id)
        });
        for (kind, edge) in
            [(TrimKind::RakeChannel, EdgeKind::Rake), (TrimKind::RoofChannel, EdgeKind::LowerRoof)]
        {
            let (want, _) = sum(&|e| e.kind == edge && e.receiver != Receiver::Starter);
            let have = of(kind);
            rule.case(have >= want - 0.1, || {
                format!("{}: {} of {have:.2} along {want:.2}", w.id, kind.words())
            });
        }
        let (tops, _) = sum(&|e| matches!(e.kind, EdgeKind::Eave | EdgeKind::BareBottom));
        rule.case(of(TrimKind::FinishTrim) >= tops - 0.1, || {
            format!(
                "{}: finish trim of {:.2} along tops of {tops:.2}",
                w.id,
                of(TrimKind::FinishTrim)
            )
        });
    }
    let corner = |kind: EdgeKind| -> f64 {
        layout.walls().flat_map(|(_, w)| &w.edges).filter(|e| e.kind == kind).map(length).sum()
    };
    for (edge, kind) in [
        (EdgeKind::OutsideCorner, TrimKind::OutsidePost),
        (EdgeKind::InsideCorner, TrimKind::InsidePost),
    ] {
        let posts: f64 = layout.trims.iter().filter(|t| t.kind == kind).map(|t| t.length).sum();
        let shown = corner(edge);
        // Every corner is shown once or twice; a post is a little longer or shorter than its corner.
        rule.case(posts <= 1.1 * shown + 1.0 && posts >= 0.45 * shown - 1.0, || {
            format!("{} of {posts:.2} for corners of {shown:.2}", kind.words())
        });
    }
    rule.done("every side has its trim")
}

fn stock(layout: &Layout) -> RuleCheck {
    use std::collections::BTreeMap;
    let mut rule = Rule::default();
    let mut on: BTreeMap<&str, (f64, usize, f64)> = BTreeMap::new();
    let r = &layout.job.trim;
    for t in &layout.trims {
        use crate::model::trim::TrimStock;
        let stock = match t.kind.stock() {
            TrimStock::Starter => r.starter,
            TrimStock::OutsidePost => r.outside_post,
            TrimStock::InsidePost => r.inside_post,
            TrimStock::JChannel => r.j_channel,
            TrimStock::FinishTrim => r.finish_trim,
            TrimStock::DripCap => r.drip_cap,
        };
        rule.case(t.length > 0.0 && t.length <= stock + super::SAME, || {
            format!("{} is {:.3} long, the stock {stock}", t.mark, t.length)
        });
        let entry = on.entry(&t.stock).or_insert((0.0, 0, stock));
        entry.0 += t.length;
        entry.1 += 1;
    }
    let kerf = layout.job.seams.kerf;
    for (name, (sum, n, stock)) in on {
        rule.case(sum + (n - 1) as f64 * kerf <= stock + 0.01 && !name.is_empty(), || {
            format!("{name}: pieces of {sum:.3} from {stock}")
        });
    }
    let mut marks: Vec<&str> = layout.trims.iter().map(|t| t.mark.as_str()).collect();
    marks.sort_unstable();
    rule.case(marks.windows(2).all(|w| w[0] != w[1]), || "a trim mark stands twice".to_owned());
    rule.done("trim fits its stock")
}
