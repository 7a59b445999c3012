//! Other people's drawings, in the folder that `LAPWRIGHT_CORPUS` names: counts by type and layer,
//! and areas of hatched walls, against ezdxf and shapely.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

use lapwright::finding::Findings;
use lapwright::model::drawing::{Drawing, Space};
use lapwright::pipeline;
use lapwright::read;

use crate::venv::python;

type Counts = BTreeMap<String, u64>;

/// What ezdxf says of a file.
#[derive(serde::Deserialize)]
struct Theirs {
    refused: Option<String>,
    #[serde(default)]
    counts: Counts,
    #[serde(default)]
    level_hatches: Vec<f64>,
}

fn drawings() -> Vec<PathBuf> {
    let dir = std::env::var_os("LAPWRIGHT_CORPUS").expect("LAPWRIGHT_CORPUS names the folder");
    let dir = Path::new(env!("CARGO_MANIFEST_DIR")).join(dir);
    let mut out = Vec::new();
    for part in ["real", "stress"] {
        out.extend(std::fs::read_dir(dir.join(part)).unwrap().map(|e| e.unwrap().path()));
    }
    out.retain(|p| p.extension().is_some_and(|x| x == "dxf"));
    out.sort();
    assert!(out.len() > 40);
    out
}

fn theirs(of: &[PathBuf]) -> BTreeMap<String, Theirs> {
    let paths: Vec<&Path> = of.iter().map(PathBuf::as_path).collect();
    serde_json::from_str(&python("tests/reference/corpus.py", &paths)).unwrap()
}

/// Entities of model space by type and layer, before blocks are inserted.
fn counted(d: &Drawing) -> Counts {
    let mut seen: BTreeSet<(usize, &str, String)> = BTreeSet::new();
    let layer = |i: usize| d.layers[i].name.to_uppercase();
    for i in d.items.iter().filter(|i| i.space == Space::Model && i.group.is_none()) {
        // Lines of one MTEXT have one origin.
        seen.insert((i.origin.line, i.origin.entity.word(), layer(i.layer)));
    }
    for g in d.groups.iter().filter(|g| g.parent.is_none() && g.space == Space::Model) {
        // Insertions of one array likewise.
        seen.insert((g.origin.line, "INSERT", layer(g.layer)));
    }
    let mut out = Counts::new();
    for (_, kind, on) in seen {
        *out.entry(format!("{kind} {on}")).or_default() += 1;
    }
    out
}

#[test]
fn entities_of_every_drawing_are_counted_as_ezdxf_counts_them() {
    let files = drawings();
    let theirs = theirs(&files);
    let mut strange = String::new();
    let mut equal = 0;
    for file in &files {
        let name = file.file_name().unwrap().to_string_lossy().into_owned();
        let other = &theirs[&name];
        let bytes = std::fs::read(file).unwrap();
        let mut notes = Findings::default();
        let mine = read::drawing(&bytes, &name, &Default::default(), &mut notes);
        match (mine, &other.refused) {
            (Ok(d), None) => {
                let mine = counted(&d);
                let kinds: BTreeSet<&String> = mine.keys().chain(other.counts.keys()).collect();
                for k in kinds {
                    let (a, b) = (mine.get(k), other.counts.get(k));
                    if a != b {
                        strange.push_str(&format!("{name}: {k}: {a:?} read, ezdxf {b:?}\n"));
                    } else {
                        equal += a.copied().unwrap_or_default();
                    }
                }
            }
            (Err(_), Some(_)) => {}
            (Ok(_), Some(why)) => strange.push_str(&format!("{name}: read; ezdxf: {why}\n")),
            (Err(r), None) => strange.push_str(&format!("{name}: refused: {r}\n")),
        }
    }
    assert!(equal > 20_000, "only {equal} entities were compared");
    assert_eq!(strange, "");
}

#[test]
fn areas_of_an_apartment_houses_siding_hatches_agree_with_shapely() {
    let files: Vec<PathBuf> =
        drawings().into_iter().filter(|p| p.to_string_lossy().contains("P1_")).collect();
    let other = theirs(&files).into_values().next().unwrap();
    let bytes = std::fs::read(&files[0]).unwrap();
    let job = lapwright::job::file::parse("[drawing]\nunit = 'inch'", "job").unwrap();
    let sets = pipeline::layout(&bytes, "p1", &job, &mut Findings::default(), &mut |_| {}).unwrap();
    let layout = &sets.house.layout;
    // Hatches at one level and pitch, parted by a board or an opening alone, are one wall: the sum is theirs.
    let mine: f64 = layout.walls().map(|(_, w)| w.net_area + w.bare_area()).sum();
    assert_eq!(other.level_hatches.len(), 8);
    let all = other.level_hatches.iter().sum::<f64>() / 144.0;
    assert!((mine - all).abs() <= 0.005 * all, "{mine} sq ft, by shapely {all}");
}
