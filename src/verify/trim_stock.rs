//! Trim pieces as they are cut: lengths, marks, stock.

use std::collections::{BTreeMap, BTreeSet};

use super::along::reach;
use super::claims::Claims;
use super::named;
use super::rule::{Cases, found};
use super::tolerance::SAME;
use crate::job::FrameCut;
use crate::layout::breach::count::CountBreach;
use crate::layout::breach::trim::TrimBreach;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::Figure::{Inches, Quantity};
use crate::layout::violation::Subject;
use crate::model::trim::{TrimEnd, TrimKind, TrimPiece, TrimStock};
use crate::real::Real;

pub(super) fn check(layout: &Claims) -> [RuleCheck; 2] {
    [lengths(layout), stock(layout)]
}

fn stock_of(layout: &Claims, kind: TrimKind) -> f64 {
    let r = &layout.job.trim;
    match kind.stock() {
        TrimStock::Starter => r.starter,
        TrimStock::OutsidePost => r.outside_post,
        TrimStock::InsidePost => r.inside_post,
        TrimStock::JChannel => r.j_channel,
        TrimStock::FlexibleChannel => r.flexible_channel,
        TrimStock::FinishTrim => r.finish_trim,
        TrimStock::DripCap => r.drip_cap,
        TrimStock::Flashing => layout.job.takeoff.flashing_roll,
        _ => r.decorative,
    }
}

/// A piece is as long as its place, a bent one as the line it is bent along; trim of a parted side is as
/// long as its frame needs, which the rule of frames checks.
fn lengths(layout: &Claims) -> RuleCheck {
    let mut rule = Cases::new(Rule::TrimLengths);
    for t in &layout.trims {
        // A jamb that stands between sill and head has its tab beyond its place.
        let square = layout.job.trim.frame == FrameCut::Square && t.kind == TrimKind::JambChannel;
        let tab =
            if square && matches!(t.ends[0], TrimEnd::Tab(_)) { layout.job.trim.tab } else { 0.0 };
        // A board along a rake is measured to the long points of its slanting cuts.
        let slant = |e: &TrimEnd| match e {
            TrimEnd::Miter(a) if t.kind == TrimKind::Frieze => {
                layout.job.trim.rake_frieze / 2.0 * a.to_radians().tangent()
            }
            _ => 0.0,
        };
        let line = t.line();
        let along: f64 = line.windows(2).map(|w| reach(w[0], w[1])).sum();
        let ends = reach(line[0], t.from) + reach(line[line.len() - 1], t.to);
        let drawn = along + tab + slant(&t.ends[0]) + slant(&t.ends[1]);
        let parted = t.opening.is_some() && t.path.is_empty() && t.length < drawn;
        // A bent piece is put on the grid point by point.
        let noise = 0.02 + 0.002 * t.path.len() as f64;
        rule.case(ends < 0.02 && (parted || (t.length - drawn).abs() < noise), || {
            let v = found(named::trim(&t.mark), TrimBreach::Length).at(named::at_trim(t));
            v.measured(Inches(t.length)).exactly(Inches(drawn))
        });
    }
    rule.done()
}

/// What is cut from one stock length.
struct Filled<'a> {
    sum: f64,
    pieces: usize,
    length: f64,
    stock: TrimStock,
    first: &'a TrimPiece,
}

fn stock(layout: &Claims) -> RuleCheck {
    let mut rule = Cases::new(Rule::TrimStock);
    let on = cut_from(&mut rule, layout);
    let kerf = layout.job.seams.kerf;
    for (name, f) in &on {
        let taken = f.sum + (f.pieces - 1) as f64 * kerf;
        rule.case(taken <= f.length + 0.01 && !name.is_empty(), || {
            let subject = Subject::TrimStock { stock: (*name).into() };
            let v = found(subject, TrimBreach::StockFull).at(named::at_trim(f.first));
            v.measured(Inches(taken)).at_most(Inches(f.length))
        });
    }
    // Every stock, and posts for each angle by themselves.
    let mut lots: BTreeSet<_> = TrimStock::ALL.into_iter().map(|stock| (stock, None)).collect();
    lots.extend(on.values().map(|f| (f.stock, f.first.angle)));
    for (stock, angle) in lots {
        let of = |f: &&Filled| (f.stock, f.first.angle) == (stock, angle);
        let lengths = on.values().filter(of).count() as f64;
        // A line's short name stays whatever the siding is called; flashing goes by where it lies.
        let id = stock.line_id_at(angle);
        let line = layout.takeoff.iter().find(|l| l.id == id);
        let ordered = line.map_or(0.0, |l| l.order);
        rule.case(ordered == lengths, || {
            let v = found(named::takeoff_line(&id), CountBreach::Ordered);
            v.measured(Quantity(ordered)).exactly(Quantity(lengths))
        });
        // Spare ones by the job's percentage, a part of one as a whole one; rolls have none.
        let percent =
            if stock == TrimStock::Flashing { 0.0 } else { layout.job.takeoff.trim_spare };
        let spare = ((lengths * percent - 1e-6) / 100.0).ceil().max(0.0);
        let id = format!("spare-{id}");
        let ordered = layout.takeoff.iter().find(|l| l.id == *id).map_or(0.0, |l| l.order);
        rule.case(ordered == spare, || {
            let v = found(named::takeoff_line(&id), CountBreach::Ordered);
            v.measured(Quantity(ordered)).exactly(Quantity(spare))
        });
    }
    marks(&mut rule, layout);
    rule.done()
}

/// Stock lengths by name, with what is cut from each.
fn cut_from<'a>(rule: &mut Cases, layout: &'a Claims<'a>) -> BTreeMap<&'a str, Filled<'a>> {
    let mut on: BTreeMap<&str, Filled> = BTreeMap::new();
    for t in &layout.trims {
        let length = stock_of(layout, t.kind);
        rule.case(t.length > 0.0 && t.length <= length + SAME, || {
            let v = found(named::trim(&t.mark), TrimBreach::OverStock).at(named::at_trim(t));
            v.measured(Inches(t.length)).at_most(Inches(length))
        });
        let stock = t.kind.stock();
        let fresh = Filled { sum: 0.0, pieces: 0, length, stock, first: t };
        let filled = on.entry(&t.stock).or_insert(fresh);
        filled.sum += t.length;
        filled.pieces += 1;
        let (of, angle) = (filled.stock, filled.first.angle);
        rule.case(of == stock && angle == t.angle, || {
            let from = Subject::TrimStock { stock: t.stock.as_str().into() };
            let v = found(named::trim(&t.mark), TrimBreach::OtherStock).with(from);
            v.at(named::at_trim(t))
        });
    }
    on
}

/// No mark stands twice.
fn marks(rule: &mut Cases, layout: &Claims) {
    let mut seen: BTreeSet<&str> = BTreeSet::new();
    rule.checked += 1;
    for t in &layout.trims {
        if !seen.insert(&t.mark) {
            let v = found(named::trim(&t.mark), TrimBreach::MarkTwice);
            rule.breaks(v.at(named::at_trim(t)));
        }
    }
}
