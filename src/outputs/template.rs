//! What an architect needs to draw for the program.

use super::file::{OutputFile, write_failed};
#[cfg(feature = "pdf")]
use super::pdf;
use crate::annotate;
use crate::finding::Refusal;
use crate::finding::files::WriterFault;
use crate::job::commented;
use crate::job::layers::AGREED_LAYERS;
use crate::job::office;
use crate::model::sheet::Sheet;
use crate::write::{svg, template};

type Peer = fn(&Sheet, &str) -> Result<OutputFile, WriterFault>;

/// The writers of a page, in the order of their files.
const PEERS: &[Peer] = &[
    |page, svg| Ok((format!("{}.svg", page.name), svg.as_bytes().to_vec())),
    #[cfg(feature = "pdf")]
    pdf::page,
];

/// An empty drawing with the agreed layers, the convention and a quick start as pages, the office's file with what it answers once, a job
/// that extends it, and a job file with every setting explained.
///
/// # Errors
/// `write-failed` when the page cannot be turned into a PDF.
pub fn files() -> Result<Vec<OutputFile>, Refusal> {
    let mut out = vec![("template.dxf".to_owned(), template::dxf(&AGREED_LAYERS))];
    for page in [annotate::convention(), annotate::quick_start()] {
        let text = svg::document(&page);
        for peer in PEERS {
            out.push(peer(&page, &text).map_err(write_failed)?);
        }
    }
    out.push((office::OFFICE.to_owned(), office::office().into_bytes()));
    out.push((office::HOUSE.to_owned(), office::house().into_bytes()));
    out.push(("job.toml".to_owned(), commented::text().into_bytes()));
    Ok(out)
}
