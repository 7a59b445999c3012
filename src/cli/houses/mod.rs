//! Many houses in one call: each read, laid out and written by itself on all cores, then one table and one
//! purchase of all. A house that is done says so in its own folder, so that a run that was stopped goes on
//! where it was, and several machines may share the work.

mod before;
mod gather;
mod one;
mod pool;
mod work_list;

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use self::one::Done;
pub(super) use self::work_list::{NotListed, WorkList, work_list};
use super::args::Layout;
use super::house::House;
use super::terminal::{print, refused_usage, tell_line, tell_recovered};
use crate::clean::terminal;
use crate::finding::Refusal;
use crate::finding::files::FileFinding;
use crate::layout::houses::HouseTold;
use crate::wording::houses as words;

/// Where table and purchase go by default.
const COMMON: &str = "houses-layout";

/// Lays all houses out; the exit code is the worst of theirs.
pub(super) fn run(a: &Layout, houses: &[House]) -> ExitCode {
    let alone = [("--compare-waiting", a.compare_waiting), ("--measured", a.measured.is_some())];
    if let Some((option, _)) = alone.into_iter().find(|o| o.1) {
        let option = option.to_owned();
        return refused_usage(&Refusal::new(FileFinding::OneHouseAlone { option }));
    }
    if a.list {
        return print(lines(houses).as_bytes());
    }
    let common = a.out.clone().unwrap_or_else(|| PathBuf::from(COMMON));
    tell_recovered(&common);
    let of = houses.len();
    let done = pool::each(
        houses,
        a.at_once,
        |h| one::laid(h, a),
        |done, d: Done| {
            let kept = d.tell();
            if !a.quiet {
                tell_line(&words::progress(done, of, &kept.told, &terminal(&kept.told.name)));
            }
            kept
        },
    );
    let worst = done.iter().map(|d| d.end).max().unwrap_or_default();
    let mut code = worst.code();
    if !a.houses_alone && !gather::gathered(a, &common, houses, &done) {
        code = one::End::Refused.code();
    }
    if !a.quiet {
        let told: Vec<HouseTold> = done.into_iter().map(|d| d.told).collect();
        tell_line(&words::all(&told));
    }
    ExitCode::from(code)
}

/// The work as lines: name, drawing, job and folder, parted by tabs.
fn lines(houses: &[House]) -> String {
    let path = |p: &Path| terminal(&p.display().to_string());
    let line = |h: &House| {
        let job = h.reading.job.as_deref().map(path).unwrap_or_default();
        let name = terminal(&h.name);
        format!("{name}\t{}\t{job}\t{}\n", path(&h.reading.drawing), path(&h.place.folder))
    };
    houses.iter().map(line).collect()
}
