//! The takeoff on the terminal, and the user's price list.

use crate::language::Language;
use std::path::Path;
use std::process::ExitCode;

use super::args::{By, Format, Takeoff as Arguments};
use super::files;
use super::loading::load;
use super::outcome::{Outcome, tell_failed};
use super::progress::lay;
use super::terminal::{print, refused, refused_usage, tell_line, tell_unused};
use crate::clean::terminal;
use crate::finding::prices::PriceFinding;
use crate::finding::{Findings, Refusal, Severity};
use crate::job::nearest::nearest;
use crate::layout::set::LaidSets;
use crate::model::quantity::TakeoffLine;
use crate::model::takeoff::{ShareBy, Takeoff};
use crate::pipeline::quantities as takeoff;
use crate::pipeline::quantities::price::{self, PriceList};
use crate::units::LengthStyle;
use crate::wording::command;
use crate::wording::takeoff::{explain, items};
use crate::write::{self, json, tables};

/// A price list and what errors call it.
pub(super) struct Prices {
    pub(super) list: PriceList,
    pub(super) name: String,
    /// As it stands in its file.
    pub(super) bytes: Vec<u8>,
}

/// Reads a price list, where one is given.
pub(super) fn prices(path: Option<&Path>) -> Result<Option<Prices>, Refusal> {
    let Some(path) = path else { return Ok(None) };
    let name = path.display().to_string();
    let bytes = files::read(path)?;
    let list = price::parse(&bytes, &name)?;
    Ok(Some(Prices { list, name, bytes }))
}

/// Puts costs to the quantities of every set, where there are prices.
pub(super) fn priced(mut sets: LaidSets, prices: Option<&Prices>) -> Result<LaidSets, Refusal> {
    if let Some(p) = prices {
        for set in sets.iter_mut() {
            let style = set.layout.job.sheet.lengths;
            let words = |l: &TakeoffLine| items::item_and_unit(Language::English, l, style);
            let priced =
                price::applied(std::mem::take(&mut set.takeoff), &p.list, &p.name, &words)?;
            set.takeoff = price::taxed(priced, set.layout.job.estimate.tax);
        }
    }
    Ok(sets)
}

/// Prints the quantities, or how one line of them came about.
pub(super) fn run(a: &Arguments) -> ExitCode {
    let mut findings = Findings::default();
    let mut style = LengthStyle::default();
    let mut find = || {
        let given = prices(a.prices.as_deref())?;
        let loaded = load(&a.reading, &mut findings)?;
        let prices = match given {
            None => prices(loaded.price_list().as_deref())?,
            given => given,
        };
        style = loaded.job.sheet.lengths;
        priced(lay(&loaded, &mut findings, a.quiet)?, prices.as_ref())
    };
    let sets = match find() {
        Ok(found) => found,
        Err(r) => return refused(&r, &findings, style),
    };
    let printed = match said(a, &sets, &findings) {
        Ok(text) => print(&text),
        Err(r) => return refused_usage(&r),
    };
    tell_failed(&sets);
    Outcome::of(&sets, &findings, false).after(printed)
}

/// What is printed.
fn said(a: &Arguments, sets: &LaidSets, findings: &Findings) -> Result<Vec<u8>, Refusal> {
    let (layout, takeoff) = (&sets.house.layout, &sets.house.takeoff);
    let style = layout.job.sheet.lengths;
    if !sets.zones.is_empty()
        && (a.format != Format::Table || a.by != By::House || a.explain.is_some())
    {
        let names: Vec<&str> = sets.iter().filter_map(|s| s.layout.zone.as_deref()).collect();
        tell_line(&terminal(&command::without_zones(&names)));
    }
    if !a.quiet {
        tell_warnings(findings, style);
    }
    if let Some(item) = &a.explain {
        return match explain::named(takeoff, item, style) {
            Some(line) => {
                let text = explain::explained(layout, takeoff, line);
                Ok(tables::explained(&layout.verify, &text).into_bytes())
            }
            None => Err(no_line(item, takeoff)),
        };
    }
    let by = match a.by {
        By::House => None,
        By::Elevation => Some(ShareBy::Elevation),
        By::Wall => Some(ShareBy::Wall),
        By::Gable => Some(ShareBy::Gable),
    };
    if let Some(by) = by {
        let rows = takeoff::shares(takeoff, by);
        return Ok(match a.format {
            Format::Table => tables::shares_table(&layout.verify, &rows, style).into_bytes(),
            Format::Json => json::shares(&layout.verify, &rows),
            Format::Csv => write::csv_bar::under_bar(layout, write::csv::shares(&rows, style)),
        });
    }
    Ok(match a.format {
        Format::Table => tables_of(sets).into_bytes(),
        Format::Json => json::takeoff_lines(&layout.verify, takeoff),
        Format::Csv => write::csv_bar::under_bar(layout, write::csv::takeoff(layout, takeoff)),
    })
}

/// Tells what was drawn and not used, and how many warnings there are.
fn tell_warnings(findings: &Findings, style: LengthStyle) {
    tell_unused(findings.all(), style);
    let warnings = findings.count(Severity::Warning);
    if warnings > 0 {
        tell_line(&command::warnings_elsewhere(warnings));
    }
}

/// The house's table, then one of each zone with lap siding of its own.
fn tables_of(sets: &LaidSets) -> String {
    let mut out = String::new();
    for set in sets.iter() {
        if let Some(zone) = &set.layout.zone {
            out.push_str(&format!("\n{}\n", command::zone_head(&terminal(zone))));
        }
        out.push_str(&tables::priced_table(&set.layout, &set.takeoff));
    }
    let house = &sets.house;
    let order = tables::one_order(&house.takeoff, &house.layout.job);
    if !order.is_empty() {
        out.push_str(&format!("\n{}\n{order}", command::ONE_ORDER));
    }
    out
}

fn no_line(item: &str, takeoff: &Takeoff) -> Refusal {
    let lines: Vec<String> = takeoff.lines.iter().map(|l| l.id.to_string()).collect();
    let nearest = nearest(&item.to_lowercase(), &lines).cloned();
    let asked = item.to_owned();
    Refusal::new(PriceFinding::TakeoffLine { asked, nearest, lines })
}
