//! Lengths between the marks of a tape are laid as they are given: what is laid is measured against the
//! job's own figures, in millimeters.

use std::collections::BTreeMap;

use lapwright::job::file as job_file;
use lapwright::layout::Layout;
use lapwright::layout::piece::Piece;

use crate::support::{broken, dxf, lay, rect};

/// A tenth of a millimeter, the finest step of a slide gauge.
const TENTH: f64 = 0.1 / 25.4;
const MM: f64 = 1.0 / 25.4;

/// A metric wall of 9,150 by 2,750 mm with a window and a fixture on a mounting block, in a drawing of
/// millimeters.
fn wall(job: &str) -> Layout {
    let job = job_file::parse(&format!("[drawing]\nunit = \"mm\"\n{job}"), "job").unwrap();
    let (outline, window) = (rect(0.0, 0.0, 9150.0, 2750.0), rect(3310.0, 905.0, 4520.0, 2105.0));
    let block = rect(6003.0, 1207.0, 6205.0, 1409.0);
    let rings =
        [("A-WALL-OTLN", &outline[..]), ("A-GLAZ", &window[..]), ("A-ELEV-MBLK", &block[..])];
    lay(dxf(&rings).as_bytes(), &job)
}

fn runs(layout: &Layout) -> impl Iterator<Item = &lapwright::layout::course::LaidRun> {
    layout.walls().flat_map(|(_, w)| &w.courses).flat_map(|c| &c.runs)
}

/// What a builder would measure on the wall and on the bench: laps, gaps, panels, saw cuts.
fn measured(layout: &Layout, lap: f64, gap: f64, kerf: f64, stocks: &[f64]) {
    assert_eq!(broken(layout), Vec::<String>::new());
    let mut seams = 0;
    for r in runs(layout) {
        for pair in r.pieces.windows(2) {
            let laid = pair[0].x1 - pair[1].x0;
            assert!(laid > lap - 1e-6 && laid < lap + TENTH, "a lap of {} mm", laid / MM);
            seams += 1;
        }
        let (first, last) = (r.pieces.first().unwrap(), r.pieces.last().unwrap());
        for found in [first.x0 - r.x0, r.x1 - last.x1] {
            assert!((found - gap).abs() < 1e-6, "a gap of {} mm", found / MM);
        }
    }
    assert!(seams > 10, "no seams to measure");
    let mut on: BTreeMap<&str, Vec<&Piece>> = BTreeMap::new();
    layout.pieces().for_each(|(.., p)| on.entry(p.panel.as_str()).or_default().push(p));
    for panel in &layout.panels {
        let stock = stocks.iter().copied().find(|s| (s - panel.stock).abs() < 1e-9);
        let stock = stock.unwrap_or_else(|| panic!("a panel of {} mm", panel.stock / MM));
        let pieces = on.get_mut(panel.id.as_str()).unwrap();
        pieces.sort_by(|a, b| a.start.total_cmp(&b.start));
        assert!(pieces[0].start >= 0.0 && pieces[pieces.len() - 1].end <= stock + 1e-9);
        for pair in pieces.windows(2) {
            let cut = pair[1].start - pair[0].end;
            assert!(cut >= kerf - 1e-6, "a saw cut of {} mm", cut / MM);
        }
    }
}

#[test]
fn a_stock_length_in_millimeters_is_neither_shortened_nor_lengthened() {
    measured(&wall("[product]\nlength = \"3660mm\"\n"), 1.25, 0.25, 0.125, &[3660.0 * MM]);
    measured(&wall("[product]\nlength = \"4m\"\n"), 1.25, 0.25, 0.125, &[4000.0 * MM]);
}

#[test]
fn laps_gaps_and_saw_cuts_in_millimeters_and_odd_decimals_stand_as_given() {
    let cases = [
        ("end_gap = \"6mm\"", "", 1.0, 6.0 * MM, 0.125),
        ("end_gap = 0.2", "", 1.0, 0.2, 0.125),
        ("lap = \"25mm\"", "", 25.0 * MM, 0.25, 0.125),
        ("lap = \"32mm\"", "kerf = \"2mm\"", 32.0 * MM, 0.25, 2.0 * MM),
        ("", "kerf = \"3mm\"\nshortest = \"600mm\"\nstagger = \"600mm\"", 1.0, 0.25, 3.0 * MM),
        ("lap = 1.03\nend_gap = \"1/3\"", "kerf = 0.1", 1.03, 1.0 / 3.0, 0.1),
    ];
    for (product, seams, lap, gap, kerf) in cases {
        let job = format!("[product]\nkind = \"vinyl\"\n{product}\n[seams]\n{seams}\n");
        measured(&wall(&job), lap, gap, kerf, &[150.0]);
        let job = format!(
            "[product]\nkind = \"vinyl\"\nlength = \"3660mm\"\n{product}\n[seams]\n{seams}\n"
        );
        measured(&wall(&job), lap, gap, kerf, &[3660.0 * MM]);
    }
}

#[test]
fn several_stock_lengths_in_millimeters_stand_as_given() {
    let job = "[seams]\neffort = \"brief\"\n[[stock]]\nlength = \"3660mm\"\n[[stock]]\nlength = \"5m\"\n[[stock]]\nlength = 150\n";
    measured(&wall(job), 1.25, 0.25, 0.125, &[3660.0 * MM, 5000.0 * MM, 150.0]);
}

#[test]
fn boards_in_millimeters_keep_every_rule() {
    for kind in ["fiber-cement", "wood"] {
        let job = format!(
            "[product]\nkind = \"{kind}\"\nlength = \"3660mm\"\nend_gap = \"3mm\"\n[boards]\nbutt_gap = \"3mm\"\nstud_spacing = \"400mm\"\nfirst_stud = \"400mm\"\n[seams]\nkerf = \"3mm\"\n"
        );
        assert_eq!(broken(&wall(&job)), Vec::<String>::new(), "{kind}");
    }
}
