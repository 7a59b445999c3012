//! What is written beside the sheets.

use super::file::OutputFile;
use super::given::Given;
use super::overlay;
#[cfg(feature = "xlsx")]
use super::workbook;
use crate::cores;
use crate::finding::files::WriterFault;
use crate::layout::set::LaidSet;
use crate::write::{csv, csv_bar, json, report, review};

type Peer = fn(&Given) -> Result<OutputFile, WriterFault>;

/// The writers, in the order of their files.
const PEERS: &[Peer] = &[
    |g| Ok(("layout.json".to_owned(), json::layout(g.layout))),
    #[cfg(feature = "xlsx")]
    workbook::file,
    |g| Ok(("takeoff.json".to_owned(), json::takeoff(&g.layout.verify, g.takeoff))),
    |g| {
        Ok((
            "takeoff.csv".to_owned(),
            csv_bar::under_bar(g.layout, csv::takeoff(g.layout, g.takeoff)),
        ))
    },
    |g| {
        Ok(("takeoff-by-wall.csv".to_owned(), csv_bar::under_bar(g.layout, csv::by_wall(g.layout))))
    },
    |g| Ok(("cut-list.csv".to_owned(), csv_bar::under_bar(g.layout, csv::cut_list(g.layout)))),
    |g| Ok(("story-pole.csv".to_owned(), csv_bar::under_bar(g.layout, csv::story_pole(g.layout)))),
    |g| Ok(("report.txt".to_owned(), report::text(g.layout, g.takeoff).into_bytes())),
    |g| {
        let page = review::page(g.layout, g.takeoff, g.backdrops);
        Ok(("review.html".to_owned(), page.into_bytes()))
    },
    |g| Ok(overlay::in_source(g.layout, g.backdrops, g.source)),
];

/// Every table, the report and the overlay.
pub(super) fn files(set: &LaidSet, source: &[u8]) -> Result<Vec<OutputFile>, WriterFault> {
    let LaidSet { layout, takeoff, backdrops } = set;
    let given = Given { layout, backdrops, takeoff, source };
    let files: Result<Vec<OutputFile>, WriterFault> =
        cores::each(PEERS, |peer| peer(&given)).into_iter().collect();
    files.map(|mut all| {
        all.extend(overlay::on_pages(layout, backdrops, source));
        all
    })
}
