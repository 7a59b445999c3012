//! Reads `lap-runs/1` houses into the seam problem, and writes answers for a validator outside.

use std::path::Path;

use lapwright::model::seam::{
    Effort, SeamCourse, SeamElevation, SeamPlan, SeamProblem, SeamRules, SeamRun, StockWeight,
};
use lapwright::model::waiting::{OffcutReach, Waiting};
use serde_json::{Value, json};

/// A house and its name.
pub(crate) struct Case {
    pub name: String,
    pub elevations: Vec<SeamElevation>,
}

/// A rule set's name with lap and stagger, inches.
pub(crate) const RULE_SETS: [(&str, f64, f64); 2] =
    [("plain24", 1.0, 24.0), ("foam36", 1.25, 36.0)];

/// Stock lengths: 12 ft 6 in and 16 ft 8 in.
pub(crate) const STOCKS: [f64; 2] = [150.0, 200.0];

/// The rules of a set: gap 1/4, kerf 1/8, shortest 24, two clear courses, jambs 6 in off.
pub(crate) fn rules(stock: f64, lap: f64, stagger: f64, effort: Effort) -> SeamRules {
    SeamRules {
        steps: 16,
        stocks: vec![StockWeight::single(stock, 1)],
        lap,
        gap: 0.25,
        kerf: 0.125,
        shortest: 24.0,
        stagger,
        clear_courses: 2,
        jamb: 6.0,
        seam_short_runs: false,
        effort,
        seed: 1,
    }
}

/// Every house in a folder (or the one house of a file), by name of file.
pub(crate) fn read(path: &Path) -> Result<Vec<Case>, String> {
    let mut files = vec![path.to_owned()];
    if path.is_dir() {
        let list = std::fs::read_dir(path).map_err(|e| format!("{}: {e}", path.display()))?;
        files = list.filter_map(|e| Some(e.ok()?.path())).collect();
        files.retain(|f| f.extension().is_some_and(|x| x == "json"));
        files.sort();
    }
    files.iter().map(|f| one(f).map_err(|e| format!("{}: {e}", f.display()))).collect()
}

fn one(file: &Path) -> Result<Case, String> {
    let text = std::fs::read_to_string(file).map_err(|e| e.to_string())?;
    house(&text)
}

/// A house from its text.
pub(crate) fn house(text: &str) -> Result<Case, String> {
    let v: Value = serde_json::from_str(text).map_err(|e| e.to_string())?;
    if v["format"] != "lap-runs/1" || v["units"] != "in" {
        return Err("not lap-runs/1 in inches".to_owned());
    }
    let mut elevations: Vec<SeamElevation> =
        list(&v["elevations"])?.iter().map(elevation).collect::<Result<_, _>>()?;
    number_walls(&mut elevations);
    Ok(Case { name: text_of(&v["name"])?, elevations })
}

/// Takes each elevation as one wall.
pub(crate) fn number_walls(elevations: &mut [SeamElevation]) {
    for (wall, e) in elevations.iter_mut().enumerate() {
        e.courses.iter_mut().flat_map(|c| &mut c.runs).for_each(|r| r.wall = wall);
    }
}

/// So many offcuts may wait, walls being sided round the house either way from any of them.
pub(crate) fn waiting(most: Option<usize>, walls: usize) -> Waiting {
    let round = |from: usize| (0..walls).map(move |k| (from + k) % walls).collect::<Vec<_>>();
    let back = |mut order: Vec<usize>| {
        order.reverse();
        order
    };
    let orders = (0..walls).flat_map(|from| [round(from), back(round(from))]).collect();
    Waiting { most, reach: OffcutReach::House, orders }
}

fn elevation(v: &Value) -> Result<SeamElevation, String> {
    Ok(SeamElevation {
        name: text_of(&v["name"])?.into(),
        entrances: numbers(&v["entry_x"])?,
        courses: list(&v["courses"])?.iter().map(course).collect::<Result<_, _>>()?,
    })
}

fn course(v: &Value) -> Result<SeamCourse, String> {
    let index = v["index"].as_i64().ok_or("a course without index")?;
    Ok(SeamCourse {
        index: i32::try_from(index).map_err(|e| e.to_string())?,
        avoid: numbers(&v["avoid"])?,
        ripped: v["ripped"].as_bool().unwrap_or(false),
        runs: list(&v["runs"])?.iter().map(run).collect::<Result<_, _>>()?,
    })
}

fn run(v: &Value) -> Result<SeamRun, String> {
    Ok(SeamRun {
        id: text_of(&v["id"])?.into(),
        wall: 0,
        x0: number(&v["x0"])?,
        x1: number(&v["x1"])?,
        fixed: vec![],
        barred: vec![],
        notched: notches(&v["notches"])?,
    })
}

/// Openings over or under a run: from, to, and on which side.
fn notches(v: &Value) -> Result<Vec<(f64, f64)>, String> {
    let Some(list) = v.as_array() else { return Ok(Vec::new()) };
    list.iter().map(|n| Ok((number(&n[0])?, number(&n[1])?))).collect()
}

fn list(v: &Value) -> Result<&Vec<Value>, String> {
    v.as_array().ok_or_else(|| format!("a list is missing where {v} stands"))
}

fn number(v: &Value) -> Result<f64, String> {
    v.as_f64().ok_or_else(|| format!("a number is missing where {v} stands"))
}

fn numbers(v: &Value) -> Result<Vec<f64>, String> {
    list(v)?.iter().map(number).collect()
}

fn text_of(v: &Value) -> Result<String, String> {
    v.as_str().map(str::to_owned).ok_or_else(|| format!("a text is missing where {v} stands"))
}

/// The house as `lap-runs/1`, with what the seam problem knows of it.
pub(crate) fn written(case: &Case) -> Value {
    let elevations: Vec<Value> = case
        .elevations
        .iter()
        .map(|e| {
            let courses: Vec<Value> = e
                .courses
                .iter()
                .map(|c| {
                    let runs: Vec<Value> = c
                        .runs
                        .iter()
                        .map(|r| json!({"id": r.id, "x0": r.x0, "x1": r.x1}))
                        .collect();
                    json!({"index": c.index, "avoid": c.avoid, "runs": runs, "ripped": c.ripped})
                })
                .collect();
            json!({"name": e.name, "entry_x": e.entrances, "courses": courses})
        })
        .collect();
    json!({"format": "lap-runs/1", "units": "in", "name": case.name, "elevations": elevations})
}

/// The answer as the validator reads it.
pub(crate) fn solution(name: &str, problem: &SeamProblem, plan: &SeamPlan) -> Value {
    let r = &problem.rules;
    let runs: Vec<Value> = plan
        .runs
        .iter()
        .filter(|p| !p.pieces.is_empty())
        .map(|p| {
            let pieces: Vec<Value> = p
                .pieces
                .iter()
                .map(|c| json!({"panel": c.panel, "start": c.start, "end": c.end}))
                .collect();
            json!({"id": p.id, "pieces": pieces})
        })
        .collect();
    json!({
        "instance": name,
        "rules": {"L": r.stock(), "o": r.lap, "g": r.gap, "kerf": r.kerf, "m": r.shortest,
            "s": r.stagger, "q": r.clear_courses, "d": r.jamb},
        "panels": plan.panels,
        "runs": runs,
    })
}
