//! Small walls laid out by the careful crew's method, every rule kept, and their trim.

use lapwright::job::Job;
use lapwright::job::file as job_file;
use lapwright::layout::Layout;
use lapwright::model::trim::{TrimKind, TrimPiece};

use crate::support::{bare_corners, broken, dxf, lay};

/// A job in inches with more settings. Siding runs to the drawn corners unless they say otherwise.
pub(crate) fn job(more: &str) -> Job {
    let text = format!("[drawing]\nunit = \"inch\"\n[seams]\neffort = \"crew\"\n{more}");
    bare_corners(job_file::parse(&text, "job").unwrap())
}

/// Rings on their layers, laid out.
pub(crate) fn laid(rings: &[(&str, &[(f64, f64)])], more: &str) -> Layout {
    let l = lay(dxf(rings).as_bytes(), &job(more));
    assert_eq!(broken(&l), Vec::<String>::new());
    l
}

/// Trim of a kind.
pub(crate) fn of(l: &Layout, kind: TrimKind) -> Vec<&TrimPiece> {
    l.trims.iter().filter(|t| t.kind == kind).collect()
}

/// Its lengths, inches.
pub(crate) fn lengths(l: &Layout, kind: TrimKind) -> Vec<f64> {
    of(l, kind).iter().map(|t| t.length).collect()
}
