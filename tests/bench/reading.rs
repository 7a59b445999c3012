//! Reading large drawings: `cargo bench --bench reading`. Whole processes, wall time and peak
//! memory: this program's `check`, the `dxf` crate and ezdxf on one file of 1,000,000 lines; loose
//! segments to faces; and, with `LAPWRIGHT_CORPUS`, the check of a 4 MB sheet.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::print_stdout,
    clippy::disallowed_types,
    clippy::disallowed_methods,
    reason = "a bench prints what it measures, and may stop at what is not as it should be"
)]

#[allow(dead_code, reason = "the bench needs a part of it")]
#[path = "../reference/venv.rs"]
mod venv;
#[path = "../watched/mod.rs"]
mod watched;

use std::fmt::Write as _;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use lapwright::geom::arrangement;
use lapwright::geom::vocabulary::Point;

/// The word by which this program asks itself to read with the `dxf` crate and end.
const BY_CRATE: &str = "--by-the-dxf-crate";
const EZDXF: &str = "import sys, ezdxf; print(len(ezdxf.readfile(sys.argv[1]).modelspace()))";

fn main() {
    let args: Vec<String> = std::env::args().collect();
    if let [_, word, file, ..] = &args[..]
        && word == BY_CRATE
    {
        let drawing = dxf::Drawing::load_file(file).unwrap();
        println!("{}", drawing.entities().count());
        return;
    }
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR"));
    lines(folder);
    faces();
    sheet();
}

/// One file of a million lines, read by three.
fn lines(folder: &Path) {
    let file = folder.join("million-lines.dxf");
    std::fs::write(&file, million()).unwrap();
    let bytes = std::fs::metadata(&file).unwrap().len();
    println!("1,000,000 LINE entities, {:.0} MB, each a process of its own", bytes as f64 / 1e6);
    let ours = row("lapwright check", program().arg("check").arg(&file));
    let me = std::env::current_exe().unwrap();
    let by_crate = row("dxf crate 0.6.2", Command::new(me).arg(BY_CRATE).arg(&file));
    let python = venv::interpreter(venv::environment());
    let ezdxf = row("ezdxf 1.4.5", Command::new(python).args(["-c", EZDXF]).arg(&file));
    println!(
        "  the crate took {:.1} times as long as lapwright, ezdxf {:.1} times",
        by_crate.as_secs_f64() / ours.as_secs_f64(),
        ezdxf.as_secs_f64() / ours.as_secs_f64()
    );
    std::fs::remove_file(&file).unwrap();
}

fn program() -> Command {
    Command::new(env!("CARGO_BIN_EXE_lapwright"))
}

/// Scattered short lines on forty layers, as an R2000 drawing.
fn million() -> String {
    let mut out = String::with_capacity(170 << 20);
    out.push_str("0\nSECTION\n2\nHEADER\n9\n$ACADVER\n1\nAC1015\n9\n$INSUNITS\n70\n1\n0\nENDSEC\n");
    for section in ["TABLES", "BLOCKS"] {
        let _ = write!(out, "0\nSECTION\n2\n{section}\n0\nENDSEC\n");
    }
    out.push_str("0\nSECTION\n2\nENTITIES\n");
    let mut chance = Chance(1);
    for i in 0..1_000_000u32 {
        let (x, y) = (chance.next() * 5000.0, chance.next() * 3000.0);
        let _ = write!(
            out,
            "  0\nLINE\n  5\n{:X}\n100\nAcDbEntity\n  8\nA-DETL-{}\n100\nAcDbLine\n 10\n{x:.10}\n 20\n{y:.10}\n 30\n0.0\n 11\n{:.10}\n 21\n{:.10}\n 31\n0.0\n",
            0x100 + i,
            i % 40,
            x + 3.0,
            y + 2.0
        );
    }
    out.push_str("0\nENDSEC\n0\nEOF\n");
    out
}

/// 20,000 loose segments, a lattice with cells of its own, to faces.
fn faces() {
    let mut segments = Vec::new();
    for i in 0..100 {
        for j in 0..100 {
            let at =
                |dx: i32, dy: i32| Point::new(f64::from(12 * (i + dx)), f64::from(8 * (j + dy)));
            segments.push((at(0, 0), at(1, 0)));
            segments.push((at(0, 0), at(0, 1)));
        }
    }
    assert_eq!(segments.len(), 20_000);
    let mut times: Vec<Duration> = (0..7)
        .map(|_| {
            let started = Instant::now();
            let faces = arrangement::arrangement(&segments, 1.0 / 16.0, 1.0).faces;
            let took = started.elapsed();
            // A lattice open at two sides: 99 by 99 whole cells.
            assert_eq!(faces.len(), 99 * 99);
            took
        })
        .collect();
    times.sort();
    println!("20,000 loose segments to 9,801 faces: median {:.3} s of 7", times[3].as_secs_f64());
}

/// The check of a real sheet of 4 MB, where the folder of drawings is at hand.
fn sheet() {
    let Some(folder) = std::env::var_os("LAPWRIGHT_CORPUS") else {
        println!("LAPWRIGHT_CORPUS names no folder: the 4 MB sheet is left out");
        return;
    };
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join(folder).join("real");
    let mut files: Vec<PathBuf> =
        std::fs::read_dir(folder).unwrap().map(|e| e.unwrap().path()).collect();
    files.sort_by_key(|p| std::fs::metadata(p).unwrap().len());
    let largest = files.last().unwrap();
    println!("largest sheet, {:.1} MB", std::fs::metadata(largest).unwrap().len() as f64 / 1e6);
    row("lapwright check", program().arg("check").arg(largest));
}

/// Runs a process three times; prints and returns the best time, with the least processor time and the
/// peak of its memory.
fn row(name: &str, command: &mut Command) -> Duration {
    let (mut best, mut cpu, mut peak, mut code) = (f64::INFINITY, f64::INFINITY, 0.0_f64, None);
    for _ in 0..3 {
        let r = watched::watched(command.stdout(Stdio::null()).stderr(Stdio::null()), None);
        (best, cpu, peak) = (best.min(r.seconds), cpu.min(r.cpu), peak.max(r.megabytes));
        code = r.exit.and_then(|e| e.code());
    }
    // A sheet that is refused has been read all the same.
    let refused = if code == Some(0) { "" } else { ", refused" };
    println!("  {name:<16} {best:>8.2} s {cpu:>8.2} s of processor {peak:>6.0} MB{refused}");
    Duration::from_secs_f64(best)
}

/// Numbers that look random, the same each time (a linear congruential generator).
struct Chance(u64);

impl Chance {
    fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6364136223846793005).wrapping_add(1442695040888963407);
        (self.0 >> 11) as f64 / (1u64 << 53) as f64
    }
}
