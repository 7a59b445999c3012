//! What the program writes and says is plain language: no text of a debugger, no infinite numbers. Over
//! the outputs of every sample, the words of every finding, and faulty jobs.

use lapwright::finding::{Finding, FindingCode, Findings};
use lapwright::job::file;
use lapwright::pipeline;
use lapwright::units::LengthStyle;
use lapwright::wording::findings::words;

use crate::raising_inputs::{Input, input};
use crate::support::{job, samples};

/// Marks of a debugger's text.
const DEBUG: [&str; 14] = [
    "Some(", "Ok(", "Err(", ": None", "None)", "None,", "None }", "\"{", "{ ", "\\\\", "\\n", "()",
    "::", "&'",
];

/// What in a text is no plain language.
fn odd(text: &str) -> Option<String> {
    // A length inside a quoted text of a job has its inch mark escaped.
    let text = text.replace("'-0\\\"", "'-0").replace("'-6\\\"", "'-6");
    let mark = DEBUG.iter().find(|m| text.contains(**m)).map(|m| (*m).to_owned());
    let escaped = || text.contains("\\\"").then(|| "an escaped quotation mark".to_owned());
    let number = || {
        let mut tokens = text.split(|c: char| !c.is_alphanumeric());
        tokens.find(|t| ["inf", "nan", "infinity"].contains(&t.to_lowercase().as_str()))
    };
    let found = mark.or_else(escaped).or_else(|| number().map(str::to_owned));
    found.map(|what| format!("`{what}` in: {text}"))
}

#[track_caller]
fn is_plain(text: &str) {
    assert_eq!(odd(text), None);
}

fn are_plain(findings: &[Finding]) {
    for f in findings {
        for style in [LengthStyle::Feet, LengthStyle::Mm] {
            let words = words(f, style);
            assert!(!words.message.is_empty() && !words.help.is_empty(), "{}", f.code());
            is_plain(&words.message);
            is_plain(&words.help);
        }
    }
}

#[test]
fn the_scan_finds_what_it_looks_for() {
    for text in [
        "width is Some(3)",
        "`x` is inf; it must lie between 0 and 1",
        "NaN sq ft",
        "Kind { a: 1 }",
        "layer \\\"A\\\"",
        "nearest: None, 3",
        "crate::job::Kind",
    ] {
        assert!(odd(text).is_some(), "{text}");
    }
    for text in ["None: the drawing answered all", "12'-6 1/2\" wide", "information, an inner wall"]
    {
        assert_eq!(odd(text), None);
    }
}

#[test]
fn words_of_every_finding_are_plain() {
    for code in FindingCode::all() {
        let Some(Input::Drawing { bytes, job }) = input(code) else { continue };
        let mut findings = Findings::default();
        let job = match file::read(&job, "job.toml", &mut findings) {
            Ok(job) => job,
            Err(refusal) => {
                are_plain(&[*refusal.0]);
                continue;
            }
        };
        let result = pipeline::layout(&bytes, "d.dxf", &job, &mut findings, &mut |_| {});
        are_plain(findings.all());
        match result {
            Ok(sets) => are_plain(&sets.house.layout.findings),
            Err(refusal) => are_plain(&[*refusal.0]),
        }
    }
}

#[test]
fn words_of_faulty_jobs_are_plain() {
    for text in [
        "[weather]\nhighest_f = inf\nlowest_f = nan\n",
        "[fasteners]\nlengths = [2, inf]\n",
        "[[elevation]]\nname = \"A\"\nregion = [0, 0, -1, inf]\n",
        "[product]\nface_height = 3\nfaces = 2\nexposure = 8\n",
        "[product]\nsecond_cost = 2\n",
        "[product]\nkind = \"wood\"\nlap = 1\n",
        "[seams]\nstagger = 400\n",
        "[sheet]\npaper = \"ARCH Q\"\nscale = \"1:51\"\n",
        "[[zone]]\nname = \"\"\n[[zone.region]]\nleft = 9\nright = 1\n",
        "[[band]]\nbottom = 9\ntop = 1\n",
        "[drawing]\nknown = \"x\"\naccept = [\"y\"]\n",
        "[layers]\nwall = [\"\"]\n",
        "[product]\nlenght = 9\nfaces = \"two\"\n",
        "[product\n",
        "[trim]\nfrieze = 8\ntop = \"two-piece\"\n",
        "[product]\nfoam_set_back = 4\n",
    ] {
        let refusal = file::parse(text, "job.toml").unwrap_err();
        are_plain(&[*refusal.0]);
    }
}

/// Texts of an output: of pictures what stands between tags, of JSON its strings.
fn texts(name: &str, bytes: &[u8]) -> Vec<String> {
    let whole = crate::review::without_code(&String::from_utf8_lossy(bytes));
    if name.ends_with(".svg") || name.ends_with(".html") {
        let between = whole.split('>').filter_map(|t| t.split('<').next());
        return between.map(|t| t.replace("&quot;", "\"").replace("&#39;", "'")).collect();
    }
    if name.ends_with(".json") {
        let mut out = Vec::new();
        strings(&serde_json::from_slice(bytes).unwrap(), &mut out);
        return out;
    }
    if name.ends_with(".csv") || name.ends_with(".txt") {
        return whole.lines().map(str::to_owned).collect();
    }
    Vec::new()
}

fn strings(value: &serde_json::Value, out: &mut Vec<String>) {
    match value {
        serde_json::Value::String(text) => out.push(text.clone()),
        serde_json::Value::Array(list) => list.iter().for_each(|v| strings(v, out)),
        serde_json::Value::Object(map) => map.values().for_each(|v| strings(v, out)),
        _ => {}
    }
}

#[test]
fn outputs_of_every_sample_are_plain() {
    for (stem, path) in samples() {
        let mut job = job(&path);
        job.seams.effort = lapwright::model::seam::Effort::Crew;
        let source = std::fs::read(&path).unwrap();
        let mut findings = Findings::default();
        let sets = pipeline::layout(&source, &stem, &job, &mut findings, &mut |_| {}).unwrap();
        are_plain(findings.all());
        let mut scanned = 0;
        for set in sets.iter() {
            for (name, bytes) in lapwright::outputs::set::files(set, &source, false).unwrap() {
                for text in texts(&name, &bytes) {
                    scanned += 1;
                    assert_eq!(odd(&text), None, "{stem}: {name}");
                }
            }
        }
        assert!(scanned > 300, "{stem}: only {scanned} texts");
    }
}
