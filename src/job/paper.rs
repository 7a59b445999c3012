//! Papers and drawing scales: what a job may name.

use super::fault::Fault;
use super::sheet::SheetRules;
use crate::finding::job_value::ValueFault;
use crate::language::SheetLanguage;
use crate::units::{LengthStyle, MM_PER_INCH, Unit, parse_length};

/// A sheet size, landscape, inches.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Paper {
    /// As it is usually written.
    pub name: &'static str,
    /// Width, inches.
    pub width: f64,
    /// Height, inches.
    pub height: f64,
}

const fn inches(name: &'static str, width: f64, height: f64) -> Paper {
    Paper { name, width, height }
}

const fn mm(name: &'static str, width: f64, height: f64) -> Paper {
    Paper { name, width: width / MM_PER_INCH, height: height / MM_PER_INCH }
}

/// Every paper.
// DrawingFact::AnsiPaper, DrawingFact::IsoPaper.
pub const PAPERS: [Paper; 12] = [
    inches("ARCH A", 12.0, 9.0),
    inches("ARCH B", 18.0, 12.0),
    inches("ARCH C", 24.0, 18.0),
    inches("ARCH D", 36.0, 24.0),
    inches("ANSI A", 11.0, 8.5),
    inches("ANSI B", 17.0, 11.0),
    inches("ANSI C", 22.0, 17.0),
    inches("ANSI D", 34.0, 22.0),
    mm("A4", 297.0, 210.0),
    mm("A3", 420.0, 297.0),
    mm("A2", 594.0, 420.0),
    mm("A1", 841.0, 594.0),
];

/// Narrowest paper that sheets in two languages stand on, inches, between ARCH A and A3: of our own choosing,
/// no source. On less, lists have one column and title blocks cut off what they say.
const LEAST_FOR_TWO_LANGUAGES: f64 = 14.0;

/// The paper a name means, case and spaces aside.
pub fn paper(name: &str) -> Option<Paper> {
    let key = |s: &str| -> String {
        s.chars().filter(|c| !c.is_whitespace() && !"-_".contains(*c)).collect::<String>()
    };
    PAPERS.iter().find(|p| key(p.name).eq_ignore_ascii_case(&key(name))).copied()
}

/// A drawing scale.
#[derive(Clone, Debug, PartialEq)]
pub struct Scale {
    /// As a sheet writes it.
    pub words: String,
    /// House inches in one paper inch.
    pub factor: f64,
}

/// Architectural scales, largest first.
// DrawingFact::ArchitecturalScales.
pub const FEET: [(&str, f64); 11] = [
    ("3\" = 1'-0\"", 4.0),
    ("1 1/2\" = 1'-0\"", 8.0),
    ("1\" = 1'-0\"", 12.0),
    ("3/4\" = 1'-0\"", 16.0),
    ("1/2\" = 1'-0\"", 24.0),
    ("3/8\" = 1'-0\"", 32.0),
    ("1/4\" = 1'-0\"", 48.0),
    ("3/16\" = 1'-0\"", 64.0),
    ("1/8\" = 1'-0\"", 96.0),
    ("3/32\" = 1'-0\"", 128.0),
    ("1/16\" = 1'-0\"", 192.0),
];

/// Metric scales, largest first (the rest of ISO 5455's series, from memory).
// DrawingFact::MetricScales.
pub const METRIC: [f64; 9] = [2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0];

/// Further ratios in use on building drawings: common practice, no source. Never picked.
const ALSO: [f64; 6] = [15.0, 25.0, 30.0, 40.0, 60.0, 75.0];

/// Scales a sheet may be picked from, largest first.
pub fn scales(style: LengthStyle) -> Vec<Scale> {
    match style {
        LengthStyle::Feet => {
            FEET.iter().map(|(w, f)| Scale { words: (*w).to_owned(), factor: *f }).collect()
        }
        LengthStyle::Mm => {
            METRIC.iter().map(|f| Scale { words: format!("1:{f}"), factor: *f }).collect()
        }
    }
}

/// Reads `1/4" = 1'-0"` or `1:50`; `None` if it is no scale, or none that a rule carries.
pub fn scale(text: &str) -> Option<Scale> {
    let positive = |v: f64| (v.is_finite() && v > 0.0).then_some(v);
    if let Some((a, b)) = text.split_once(':') {
        let ratio = positive(b.trim().parse::<f64>().ok()? / a.trim().parse::<f64>().ok()?)?;
        let known = METRIC.iter().chain(&ALSO).chain(FEET.iter().map(|(_, f)| f));
        let factor = known.copied().find(|f| (f - ratio).abs() < 1e-9)?;
        return Some(Scale { words: format!("1:{factor}"), factor });
    }
    let (a, b) = text.split_once('=')?;
    let ratio = positive(parse_length(b, Unit::Inch)? / parse_length(a, Unit::Inch)?)?;
    let (words, factor) = FEET.iter().find(|(_, f)| (f - ratio).abs() < 1e-9)?;
    Some(Scale { words: (*words).to_owned(), factor: *factor })
}

/// A paper or a scale there is none of, with what there is.
pub(super) fn faults(sheet: &SheetRules) -> Vec<Fault> {
    let (paper_name, scale_text) = (sheet.paper.as_str(), sheet.scale.as_deref());
    let fault = |key: &str, text: &str, choices: Vec<String>| {
        let (key, text) = (key.to_owned(), text.to_owned());
        Fault::new([key.clone()], ValueFault::NotOneOf { key, text, choices })
    };
    let mut out = Vec::new();
    if paper(paper_name).is_none() {
        let names = PAPERS.iter().map(|p| p.name.to_owned()).collect();
        out.push(fault("sheet.paper", paper_name, names));
    }
    if let Some(text) = scale_text.filter(|t| scale(t).is_none()) {
        let feet = FEET.iter().map(|(words, _)| (*words).to_owned());
        let metric = METRIC.iter().map(|factor| format!("1:{factor}"));
        out.push(fault("sheet.scale", text, feet.chain(metric).collect()));
    }
    out.extend(two_languages(sheet));
    out
}

/// Two languages on paper too small for them.
fn two_languages(sheet: &SheetRules) -> Option<Fault> {
    let is_small = |p: &Paper| p.width < LEAST_FOR_TWO_LANGUAGES;
    let small = paper(&sheet.paper).filter(is_small)?;
    (sheet.language == SheetLanguage::Both).then(|| {
        let larger = PAPERS.iter().filter(|p| !is_small(p));
        let papers = larger.map(|p| p.name.to_owned()).collect();
        let paper = small.name.to_owned();
        let keys = ["sheet.language", "sheet.paper"];
        Fault::new(keys, ValueFault::LanguagesOnSmallPaper { paper, papers })
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn papers_are_the_published_sizes() {
        // DrawingFact::AnsiPaper, DrawingFact::ArchitecturalPaper, DrawingFact::IsoPaper: ANSI D 22 x
        // 34, ARCH C 18 x 24, A3 297 x 420 mm.
        let of = |n: &str| paper(n).map(|p| (p.width, p.height));
        assert_eq!(of("ansi d"), Some((34.0, 22.0)));
        assert_eq!(of("ARCH-C"), Some((24.0, 18.0)));
        let a3 = paper("a3").unwrap();
        assert!((a3.width * 25.4 - 420.0).abs() < 1e-9 && (a3.height * 25.4 - 297.0).abs() < 1e-9);
        assert_eq!(of("A0"), None);
        assert_eq!(of(""), None);
    }

    #[test]
    fn only_scales_of_a_rule_are_read() {
        // DrawingFact::ArchitecturalScales: 1/4 in to the foot is 48, 3/32 is 128.
        assert_eq!(scale("1/4\" = 1'-0\"").unwrap().factor, 48.0);
        assert_eq!(scale("3/32\"=1'").unwrap().factor, 128.0);
        assert_eq!(scale("1:48").unwrap().factor, 48.0);
        assert_eq!(scale("1:50").unwrap().factor, 50.0);
        for t in ["", "x", "1/5\" = 1'-0\"", "1:51", "0:0", "1:nan", "1:-50", "1/4\"", "=", ":"] {
            assert!(scale(t).is_none(), "{t}");
        }
        let of = |paper: &str, scale: Option<&str>| {
            let (paper, scale) = (paper.to_owned(), scale.map(str::to_owned));
            faults(&SheetRules { paper, scale, ..SheetRules::default() })
        };
        assert!(of("ARCH B", None).is_empty());
        assert_eq!(of("ARCH Q", None)[0].keys, ["sheet.paper"]);
        assert_eq!(of("A3", Some("1:51"))[0].keys, ["sheet.scale"]);
    }
}
