//! The seam search on houses given as runs: `cargo bench --bench seams -- FOLDER [--out DIR]
//! [--effort NAME] [--only NAME] [--policy whole|seamed] [--stock 150|200] [--rules NAME]
//! [--random HOUSES] [--stagger INCHES] [--clear COURSES] [--made RUNS] [--seed N] [--beside LENGTHS]
//! [--waiting OFFCUTS|any]`.
//!
//! Every house of the folder (`lap-runs/1`) is laid with both rule sets and both stock lengths,
//! unless options name some; `--made RUNS` adds a made house of that many runs. `--out` writes the
//! answers as a validator outside reads them. The table's violations and jamb hits are counted by
//! a check that shares no code with the search.

#![allow(
    clippy::print_stdout,
    clippy::print_stderr,
    clippy::unwrap_used,
    clippy::disallowed_methods,
    clippy::disallowed_types,
    reason = "a bench prints, reads the clock and may stop at the first thing that is wrong"
)]

#[path = "../seamcase/mod.rs"]
mod seamcase;

use std::path::{Path, PathBuf};
use std::time::Instant;

use lapwright::model::seam::{Effort, SeamPlan, SeamProblem, StockWeight};
use lapwright::seam;
use seamcase::cases::{self, Case, RULE_SETS, STOCKS};
use seamcase::{check, made};

/// What the command asks for.
#[derive(Default)]
struct Asked {
    folder: Option<PathBuf>,
    out: Option<PathBuf>,
    effort: Effort,
    only: Option<String>,
    seamed: bool,
    stock: Option<f64>,
    rules: Option<String>,
    made: Option<usize>,
    random: Option<u64>,
    stagger: Option<f64>,
    clear: Option<u32>,
    beside: Vec<f64>,
    seed: u64,
    waiting: Option<usize>,
}

fn asked() -> Result<Asked, String> {
    let mut asked = Asked { seed: 1, ..Default::default() };
    // Cargo adds `--bench` itself.
    let mut words = std::env::args().skip(1).filter(|w| w != "--bench");
    while let Some(word) = words.next() {
        if !word.starts_with("--") {
            asked.folder = Some(word.into());
            continue;
        }
        let value = words.next().ok_or(format!("{word} needs a value"))?;
        let wrong = || format!("{word} {value}: no such value");
        match word.as_str() {
            "--out" => asked.out = Some(value.into()),
            "--effort" => {
                asked.effort = serde_json::from_value(value.clone().into()).map_err(|_| wrong())?;
            }
            "--only" => asked.only = Some(value),
            "--policy" => {
                asked.seamed =
                    ["whole", "seamed"].iter().position(|p| *p == value).ok_or_else(wrong)? == 1
            }
            "--stock" => asked.stock = Some(value.parse().map_err(|_| wrong())?),
            "--rules" => asked.rules = Some(value),
            "--random" => asked.random = Some(value.parse().map_err(|_| wrong())?),
            "--stagger" => asked.stagger = Some(value.parse().map_err(|_| wrong())?),
            "--clear" => asked.clear = Some(value.parse().map_err(|_| wrong())?),
            "--beside" => {
                let lengths = value.split(',').map(|l| l.trim().parse().map_err(|_| wrong()));
                asked.beside = lengths.collect::<Result<_, _>>()?;
            }
            "--waiting" => {
                asked.waiting = match value.as_str() {
                    "any" => None,
                    n => Some(n.parse().map_err(|_| wrong())?),
                }
            }
            "--made" => asked.made = Some(value.parse().map_err(|_| wrong())?),
            "--seed" => asked.seed = value.parse().map_err(|_| wrong())?,
            _ => return Err(format!("{word}: no such option")),
        }
    }
    Ok(asked)
}

/// Time of this thread on a processor, so that other work on the machine does not count; by the
/// clock where the system does not tell.
struct Clock {
    started: Instant,
    spent: Option<f64>,
}

impl Clock {
    fn start() -> Self {
        Clock { started: Instant::now(), spent: Clock::spent() }
    }

    /// Milliseconds that this thread has run.
    fn spent() -> Option<f64> {
        let text = std::fs::read_to_string("/proc/thread-self/schedstat").ok()?;
        Some(text.split(' ').next()?.parse::<f64>().ok()? / 1e6)
    }

    fn ms(&self) -> f64 {
        let passed = self.started.elapsed().as_secs_f64() * 1000.0;
        match (self.spent, Clock::spent()) {
            // The system counts in ticks of some milliseconds.
            (Some(before), Some(now)) if passed > 30.0 => now - before,
            _ => passed,
        }
    }
}

/// One line of the table.
struct Row {
    bound: usize,
    panels: usize,
    certain: f64,
    first: f64,
    total: f64,
    broken: usize,
    hits: usize,
    unavoidable: usize,
}

fn main() {
    if let Err(e) = run() {
        eprintln!("{e}");
        std::process::exit(2);
    }
}

fn run() -> Result<(), String> {
    let asked = asked()?;
    if let Some(houses) = asked.random {
        return random(&asked, houses);
    }
    if !asked.beside.is_empty() && asked.out.is_some() {
        return Err("--out writes answers of one stock length: leave --beside out".to_owned());
    }
    let mut houses = match &asked.folder {
        Some(folder) => cases::read(folder)?,
        None => Vec::new(),
    };
    houses.extend(asked.made.map(|runs| made::house(runs, 7)));
    houses.retain(|h| asked.only.as_ref().is_none_or(|o| h.name.contains(o.as_str())));
    if houses.is_empty() {
        return Err("name a folder of houses, or --made RUNS".to_owned());
    }
    if let Some(out) = &asked.out {
        std::fs::create_dir_all(out).map_err(|e| e.to_string())?;
    }
    println!(
        "{:<11}{:>6} {:<8}{:<7}{:>6}{:>7}{:>7}{:>6} {:>8}{:>8}{:>9}{:>5}  jamb hits",
        "house",
        "stock",
        "rules",
        "policy",
        "bound",
        "panels",
        "over%",
        "crew",
        "bound ms",
        "1st ms",
        "total ms",
        "bad"
    );
    let mut rows = Vec::new();
    for house in &houses {
        for stock in STOCKS.into_iter().filter(|s| asked.stock.is_none_or(|a| a == *s)) {
            for (name, lap, stagger) in RULE_SETS {
                if asked.rules.as_ref().is_none_or(|a| a == name) {
                    rows.push(one(&asked, house, stock, (name, lap, stagger))?);
                }
            }
        }
    }
    summary(&rows);
    Ok(())
}

/// Lays random houses, each with one stock length and one rule set in turn, briefly; one line for
/// each that breaks a rule, and the sums. With `--out` those without fixed seams are written.
fn random(asked: &Asked, houses: u64) -> Result<(), String> {
    if let Some(out) = &asked.out {
        std::fs::create_dir_all(out).map_err(|e| e.to_string())?;
    }
    let (mut kept, mut told, mut untold) = (0, 0, 0);
    let (mut panels, mut bound, mut proven) = (0, 0, 0);
    for seed in 0..houses {
        let house = made::random(seed);
        let set = RULE_SETS[seed as usize / 2 % 2];
        let stock = STOCKS[seed as usize / 4 % 2];
        let rules = cases::rules(stock, set.1, set.2, Effort::Brief);
        let waiting = cases::waiting(asked.waiting, house.elevations.len());
        let problem = SeamProblem { rules, elevations: house.elevations.clone(), waiting };
        let plan = seam::plan(&problem, &mut |_| {});
        let found = check::check(&problem, &plan);
        let named = |b: &&String| {
            plan.conflicts.iter().any(|c| b.starts_with(&format!("{}: ", c.elevation)))
        };
        let conflicts = found.broken.iter().filter(named).count();
        kept += usize::from(found.broken.is_empty());
        told += usize::from(conflicts > 0);
        untold += found.broken.len() - conflicts;
        if let Some(b) = found.broken.first() {
            println!("{} {stock} {}: {} broken, {b}", house.name, set.0, found.broken.len());
        }
        panels += plan.panels;
        bound += plan.certificate.bound;
        proven += usize::from(plan.certificate.proven);
        if let Some(out) = asked.out.as_ref().filter(|_| seed % 2 == 0) {
            written(out, &house, &problem, &plan, set.0)?;
        }
    }
    println!(
        "{houses} houses: {kept} keep every rule, {told} in conflicts that are named, {untold} rules \
         broken beside; {panels} panels, bound {bound}, {proven} proven"
    );
    Ok(())
}

#[allow(clippy::too_many_lines)] // One walk, told in order.
fn one(asked: &Asked, house: &Case, stock: f64, set: (&str, f64, f64)) -> Result<Row, String> {
    let mut rules = cases::rules(stock, set.1, set.2, asked.effort);
    rules.seam_short_runs = asked.seamed;
    rules.seed = asked.seed;
    rules.stagger = asked.stagger.unwrap_or(rules.stagger);
    rules.clear_courses = asked.clear.unwrap_or(rules.clear_courses);
    let beside = asked.beside.iter().copied().filter(|l| *l != stock);
    let lengths: Vec<f64> = std::iter::once(stock).chain(beside).collect();
    let whole = |inches: f64| ((inches * 16.0).round() as i64).max(1);
    let divides = |d: &i64| lengths.iter().all(|l| whole(*l) % d == 0);
    let common = (1..=whole(stock)).rev().find(divides).unwrap_or(1);
    let weighed = |l: &f64| StockWeight::single(*l, whole(*l) / common);
    rules.stocks = lengths.iter().map(weighed).collect();
    let waiting = cases::waiting(asked.waiting, house.elevations.len());
    let problem = SeamProblem { rules, elevations: house.elevations.clone(), waiting };
    let clock = Clock::start();
    let ms = || clock.ms();
    let (mut certain, mut first) = (None, None);
    let plan = seam::plan(&problem, &mut |p| {
        certain.get_or_insert_with(ms);
        if p.panels > 0 {
            first.get_or_insert_with(ms);
        }
    });
    let total = ms();
    let found = check::check(&problem, &plan);
    for b in found.broken.iter().take(3) {
        eprintln!("  {}: {b}", house.name);
    }
    for c in &plan.conflicts {
        eprintln!(
            "  {}: {} courses {:?}: {:?} {:?}",
            house.name, c.elevation, c.courses, c.rule, c.remedies
        );
    }
    if let Some(out) = &asked.out {
        written(out, house, &problem, &plan, set.0)?;
    }
    // Of several lengths the weight is what is kept least: what one of each weighs is told by the line's end.
    let mixed = plan.certificate.mixed.as_ref();
    let count = |weight: i64| usize::try_from(weight).unwrap_or(0);
    let row = Row {
        bound: mixed.map_or(plan.certificate.bound, |m| count(m.bound)),
        panels: mixed.map_or(plan.panels, |m| count(m.weight)),
        certain: certain.unwrap_or(total),
        first: first.unwrap_or(total),
        total,
        broken: found.broken.len(),
        hits: found.hits,
        unavoidable: found.unavoidable,
    };
    println!(
        "{:<11}{stock:>6} {:<8}{:<7}{:>6}{:>7}{:>7.2}{:>6} {:>8.1}{:>8.1}{:>9.1}{:>5}  {} / {}{}  wait {} shared {}",
        house.name,
        set.0,
        if asked.seamed { "seamed" } else { "whole" },
        row.bound,
        row.panels,
        over(&row),
        plan.crew_panels,
        row.certain,
        row.first,
        row.total,
        row.broken,
        row.hits,
        row.unavoidable,
        plan.other_policy_panels.map_or(String::new(), |o| format!("  other policy {o}")),
        found.waiting.iter().max().unwrap_or(&0),
        found.shared,
    );
    for s in mixed.iter().flat_map(|m| &m.stocks) {
        let alone = s.alone.map_or("-".to_owned(), |n| n.to_string());
        println!("    {} of {} in, each {}; alone {alone}", s.panels, s.length, s.weight);
    }
    Ok(row)
}

/// Writes `HOUSE-STOCK-RULES.json`; a made house itself too.
fn written(
    out: &Path,
    house: &Case,
    problem: &SeamProblem,
    plan: &SeamPlan,
    set: &str,
) -> Result<(), String> {
    let save = |name: String, v: &serde_json::Value| {
        std::fs::write(out.join(name), v.to_string()).map_err(|e| e.to_string())
    };
    let answer = cases::solution(&house.name, problem, plan);
    save(format!("{}-{}-{set}.json", house.name, problem.rules.stock()), &answer)?;
    if house.name.starts_with("made") || house.name.starts_with("random") {
        save(format!("{}.runs.json", house.name), &cases::written(house))?;
    }
    Ok(())
}

fn over(r: &Row) -> f64 {
    100.0 * (r.panels as f64 - r.bound as f64) / (r.bound as f64).max(1.0)
}

fn summary(rows: &[Row]) {
    let n = rows.len() as f64;
    let mean = |f: &dyn Fn(&Row) -> f64| rows.iter().map(f).sum::<f64>() / n;
    let most = |f: &dyn Fn(&Row) -> f64| rows.iter().map(f).fold(0.0, f64::max);
    let extra = |r: &Row| r.panels as f64 - r.bound as f64;
    let proven = rows.iter().filter(|r| r.panels <= r.bound).count();
    println!("{} cases, {} proven ({:.0} %)", rows.len(), proven, 100.0 * proven as f64 / n);
    println!(
        "over bound: mean {:.3} %, most {:.2} %, most {} panels",
        mean(&over),
        most(&over),
        most(&extra)
    );
    let line = |name: &str, f: &dyn Fn(&Row) -> f64| {
        println!("{name}: mean {:.1} ms, most {:.1} ms", mean(f), most(f));
    };
    line("bound", &|r| r.certain);
    line("first layout", &|r| r.first);
    line("total", &|r| r.total);
    println!(
        "rules broken: {}; jamb hits {} of {} unavoidable",
        rows.iter().map(|r| r.broken).sum::<usize>(),
        rows.iter().map(|r| r.hits).sum::<usize>(),
        rows.iter().map(|r| r.unavoidable).sum::<usize>()
    );
}
