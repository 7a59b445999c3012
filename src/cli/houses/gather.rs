//! What many houses have in common: the table of them and the one purchase.

use crate::language::Language;
use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

use super::one::Done;
use crate::clean::terminal;
use crate::cli::args::Layout;
use crate::cli::files;
use crate::cli::house::House;
use crate::cli::loading;
use crate::cli::takeoff::{Prices, prices};
use crate::cli::terminal::{refused, tell_line};
use crate::finding::{Findings, Refusal};
use crate::layout::houses::{HouseTold, Purchase, SetTakes};
use crate::model::quantity::TakeoffLine;
use crate::outputs::houses as outputs;
use crate::pipeline::houses::purchase;
use crate::units::LengthStyle;
use crate::wording::takeoff::items;
use crate::wording::{command, houses as words};

/// Writes the table and the purchase of all houses that have a layout; tells where they are, or why they are
/// not, and gives whether they are.
pub(super) fn gathered(a: &Layout, folder: &Path, houses: &[House], done: &[Done]) -> bool {
    let style = done.first().map_or(LengthStyle::default(), |d| d.style);
    let written = made(a, done, style).and_then(|list| {
        let sources = sources(a, houses);
        files::write_beside(folder, &list, &sources, a.replace)?;
        Ok(list)
    });
    match written {
        Ok(list) => {
            if !a.quiet {
                let names: Vec<&str> = list.iter().map(|f| f.0.as_str()).collect();
                tell_line(&command::wrote(&terminal(&folder.display().to_string()), &names));
            }
            true
        }
        Err(r) => {
            refused(&r, &Findings::default(), style);
            false
        }
    }
}

/// What the call reads, and so must not write: drawings, jobs with the files they go on from, price lists, what was
/// taped. A house that was refused has its files as the others have theirs.
fn sources(a: &Layout, houses: &[House]) -> Vec<PathBuf> {
    let jobs: BTreeSet<&PathBuf> = houses.iter().filter_map(|h| h.reading.job.as_ref()).collect();
    let read = jobs.iter().filter_map(|j| loading::job(j, &mut Findings::default()).ok());
    let of_jobs = read.flat_map(|r| {
        let files: Vec<PathBuf> = r.files.iter().map(|f| PathBuf::from(&f.name)).collect();
        let list = loading::price_list(&r.job, &r.files, &r.from);
        files.into_iter().chain(list)
    });
    let drawings = houses.iter().map(|h| h.reading.drawing.clone());
    let given = a.prices.iter().chain(&a.measured).chain(jobs.iter().copied()).cloned();
    drawings.chain(given).chain(of_jobs).collect()
}

fn made(
    a: &Layout,
    done: &[Done],
    style: LengthStyle,
) -> Result<Vec<crate::outputs::file::OutputFile>, Refusal> {
    let takes: Vec<&SetTakes> =
        done.iter().filter_map(|d| d.told.figures.as_ref()).flat_map(|f| &f.takes).collect();
    let prices = shared_prices(a, done)?;
    let bought = of_all(&takes, prices.as_ref(), style);
    let told: Vec<HouseTold> = done.iter().map(|d| d.told.clone()).collect();
    outputs::files(&told, &bought?, style)
}

fn of_all(
    takes: &[&SetTakes],
    prices: Option<&Prices>,
    style: LengthStyle,
) -> Result<Purchase, Refusal> {
    let words = |l: &TakeoffLine| items::item_and_unit(Language::English, l, style);
    purchase(takes, prices.map(|p| (&p.list, p.name.as_str(), &words as _)))
}

/// The price list of the call, else the one that the jobs of all houses have.
fn shared_prices(a: &Layout, done: &[Done]) -> Result<Option<Prices>, Refusal> {
    if a.prices.is_some() {
        return prices(a.prices.as_deref());
    }
    let laid = || done.iter().filter(|d| d.told.figures.is_some());
    let mut lists: Vec<Option<PathBuf>> = laid()
        .map(|d| d.price_list.as_ref().map(|p| p.canonicalize().unwrap_or(p.clone())))
        .collect();
    lists.sort();
    lists.dedup();
    match lists.as_slice() {
        [Some(_)] => prices(laid().find_map(|d| d.price_list.as_deref())),
        [] | [None] => Ok(None),
        _ => {
            tell_line(words::NO_PRICES);
            Ok(None)
        }
    }
}
