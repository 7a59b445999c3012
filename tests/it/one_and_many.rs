//! Sheets speak of one thing as one, and of several as several.

use lapwright::language::{Language, SheetLanguage, said};
use lapwright::model::item::CountUnit;
use lapwright::units::LengthStyle;
use lapwright::wording::{nouns, sheets, siding};

use crate::spanish::{drawn, in_language};
use crate::support::samples;

#[test]
fn numbers_agree_with_what_they_count() {
    let hem = (said("nail hem", "aleta de clavar"), true);
    let cutting = |lang, n| {
        let held = (n as u32, nouns::LUG);
        sheets::cutting(lang, n, n as u32, held, hem, LengthStyle::Feet)
    };
    let (en, es) = (Language::English, Language::Spanish);
    assert!(cutting(en, 1).starts_with("1 shaped cut, seen"), "{}", cutting(en, 1));
    assert!(cutting(en, 1).contains("1 nail slot and 1 lug overall."), "{}", cutting(en, 1));
    assert!(cutting(es, 1).starts_with("1 corte con forma, visto"), "{}", cutting(es, 1));
    let one = "En total 1 ranura para clavo y 1 lengüeta.";
    assert!(cutting(es, 1).contains(one), "{}", cutting(es, 1));
    assert!(cutting(es, 2).starts_with("2 cortes con forma, vistos"), "{}", cutting(es, 2));
    assert!(siding::trim_nails(es, 1).contains("con 1 clavo de moldura"));
    assert!(sheets::failed_left_off(es, 1).contains("1 lugar de la revisión fallida no tiene "));
    assert!(sheets::failed_left_off(es, 3).contains("3 lugares de la revisión fallida no tienen "));
    assert!(
        sheets::failed_left_off(en, 1)
            .contains("1 place of the failed check found no room for its")
    );
    // And on the sheets of all samples: after a 1 that stands by itself comes no word of many.
    let unlike = ["más", "menos", "pies"];
    for (stem, _) in samples() {
        let (_, sheets) = in_language(&stem, SheetLanguage::Es);
        for text in drawn(&sheets) {
            let tokens: Vec<&str> = text.split_whitespace().collect();
            for pair in tokens.windows(2).filter(|p| p[0] == "1") {
                let word = pair[1].trim_end_matches(|c: char| !c.is_alphabetic());
                let many = word.ends_with('s') && !unlike.contains(&word);
                assert!(!many, "{stem}: `{} {word}` in `{text}`", pair[0]);
            }
        }
    }
}

/// What is to be ordered: one piece, two pieces. The cover of the wall with one window has both.
#[test]
fn units_on_the_cover_agree_with_their_counts() {
    for (language, one, many) in [
        (SheetLanguage::En, ["box", "piece"], ["boxes", "pieces"]),
        (SheetLanguage::Es, ["caja", "pieza"], ["cajas", "piezas"]),
    ] {
        let (layout, sheets) = in_language("one-window", language);
        let texts = drawn(&sheets[..1]);
        let count = |words: [&str; 2]| texts.iter().filter(|t| words.contains(&t.as_str())).count();
        let of = |is: fn(f64) -> bool| {
            let here = layout
                .takeoff
                .iter()
                .filter(|l| matches!(l.unit, CountUnit::Box | CountUnit::Piece));
            here.filter(|l| is(if l.order > 0.0 { l.order } else { l.net })).count()
        };
        let (single, several) = (of(|n| n == 1.0), of(|n| n != 1.0));
        assert!(single > 0 && several > 0, "{single} {several}");
        assert_eq!((count(one), count(many)), (single, several), "{texts:?}");
    }
}
