//! The one typeface of every sheet, vendored with its license under `src/typeface/`, so that text
//! is the same on every machine. `ttf-parser` is named here alone.

use std::sync::OnceLock;

/// Family name, as SVG text names it.
pub const FAMILY: &str = "Lapwright Sans";
/// Regular weight.
pub const REGULAR: &[u8] = include_bytes!("typeface/sans-Regular.ttf");
/// Bold weight.
pub const BOLD: &[u8] = include_bytes!("typeface/sans-Bold.ttf");

/// Height of capitals as a share of the font size, from the font's own table.
pub const CAPITALS: f64 = 0.714;
/// How far letters reach below the baseline, as a share of the font size.
pub const DESCENT: f64 = 0.293;

/// What stands for a letter that the typeface lacks: a box with a question mark.
pub const REPLACEMENT: char = '\u{fffd}';

/// The parsed typeface, read once.
fn face(bold: bool) -> Option<&'static ttf_parser::Face<'static>> {
    static FACES: OnceLock<[Option<ttf_parser::Face<'static>>; 2]> = OnceLock::new();
    let faces = FACES.get_or_init(|| [REGULAR, BOLD].map(|b| ttf_parser::Face::parse(b, 0).ok()));
    faces[usize::from(bold)].as_ref()
}

/// How a letter comes onto a sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Drawn {
    /// As itself.
    Itself,
    /// As a plain space: a space of a width the typeface lacks.
    Space,
    /// Not at all: it only says how its neighbors are shaped.
    Nothing,
    /// As [`REPLACEMENT`].
    Replaced,
}

fn drawn_as(c: char) -> Drawn {
    // Both faces have the same letters.
    if c.is_ascii() || face(false).is_none_or(|f| f.glyph_index(c).is_some()) {
        Drawn::Itself
    } else if c.is_whitespace() {
        Drawn::Space
    } else if shapes_only(c) {
        Drawn::Nothing
    } else {
        Drawn::Replaced
    }
}

/// Signs without a look of their own, so that nothing is lost without them: joiners, selectors of
/// variants, tags (`Default_Ignorable_Code_Point` of the Unicode Character Database, those assigned).
fn shapes_only(c: char) -> bool {
    matches!(c,
        '\u{ad}' | '\u{34f}' | '\u{61c}' | '\u{17b4}'..='\u{17b5}' | '\u{180b}'..='\u{180f}'
        | '\u{200b}'..='\u{200f}' | '\u{2060}'..='\u{2064}' | '\u{206a}'..='\u{206f}'
        | '\u{fe00}'..='\u{fe0f}' | '\u{feff}' | '\u{1bca0}'..='\u{1bca3}'
        | '\u{1d173}'..='\u{1d17a}' | '\u{e0001}' | '\u{e0020}'..='\u{e007f}'
        | '\u{e0100}'..='\u{e01ef}')
}

/// The text with what the typeface lacks replaced, never left out: see [`REPLACEMENT`].
pub fn printable(text: &str) -> String {
    let each = |c: char| match drawn_as(c) {
        Drawn::Itself => Some(c),
        Drawn::Space => Some(' '),
        Drawn::Nothing => None,
        Drawn::Replaced => Some(REPLACEMENT),
    };
    text.chars().filter_map(each).collect()
}

/// The letters of a text that are replaced on sheets.
pub fn lacking(text: &str) -> impl Iterator<Item = char> {
    text.chars().filter(|c| !c.is_control() && drawn_as(*c) == Drawn::Replaced)
}

/// Whether a letter stands where it is written: neither replaced nor read from right to left, which
/// would turn the figures beside it round.
pub fn stands_in_order(c: char) -> bool {
    let from_right = matches!(c,
        '\u{590}'..='\u{8ff}' | '\u{fb1d}'..='\u{fdff}' | '\u{fe70}'..='\u{feff}'
        | '\u{10800}'..='\u{10fff}' | '\u{1e800}'..='\u{1efff}');
    drawn_as(c) == Drawn::Itself && !from_right
}

/// Width of a line whose capitals are `height` high, in the unit of `height`, as it is drawn: with
/// replacements for what the typeface lacks.
pub fn width(text: &str, height: f64, bold: bool) -> f64 {
    let Some(face) = face(bold) else {
        return 0.6 * height * text.chars().count() as f64 / CAPITALS;
    };
    let plain = plain(bold);
    let each = |c: char| plain.get(c as usize).copied().unwrap_or_else(|| advance(face, c));
    text.chars().map(each).sum::<f64>() * height / CAPITALS
}

/// The combining horn of Vietnamese.
const HORN: char = '\u{31b}';

/// How far a character moves on, as a share of the font size.
fn advance(face: &ttf_parser::Face, c: char) -> f64 {
    if c == HORN {
        // The one mark that widens its letter, by about as much on each of the two that take it.
        let wider = |with, without| advance(face, with) - advance(face, without);
        return wider('ư', 'u').max(wider('ơ', 'o')).max(0.0);
    }
    let shown = match drawn_as(c) {
        Drawn::Itself => c,
        Drawn::Space => ' ',
        Drawn::Nothing => return 0.0,
        Drawn::Replaced => REPLACEMENT,
    };
    let em = f64::from(face.units_per_em());
    face.glyph_index(shown)
        .and_then(|g| face.glyph_hor_advance(g))
        .map_or(0.5, |a| f64::from(a) / em)
}

/// The same of every plain character, looked up once: marks are tried in many places.
fn plain(bold: bool) -> &'static [f64] {
    static PLAIN: OnceLock<[Vec<f64>; 2]> = OnceLock::new();
    let of = |bold| {
        let all = |f| (0u8..128).map(|c| advance(f, char::from(c))).collect();
        face(bold).map(all).unwrap_or_default()
    };
    &PLAIN.get_or_init(|| [false, true].map(of))[usize::from(bold)]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bold_is_wider_and_width_grows_with_height() {
        let t = "F1-12-2";
        assert!(width(t, 1.0, true) > width(t, 1.0, false));
        assert!((width(t, 2.0, false) - 2.0 * width(t, 1.0, false)).abs() < 1e-9);
    }

    /// Every letter of an alphabet, with its capitals.
    fn with_capitals(letters: &str) -> Vec<char> {
        letters.chars().flat_map(|c| std::iter::once(c).chain(c.to_uppercase())).collect()
    }

    #[test]
    fn both_faces_have_every_letter_of_the_named_alphabets() {
        // Alphabets as schools teach them; of Vietnamese each vowel with each of five tones.
        let vietnamese = "aàáảãạăằắẳẵặâầấẩẫậbcdđeèéẻẽẹêềếểễệghiìíỉĩịklmnoòóỏõọôồốổỗộơờớởỡợpqrstuùúủũụưừứửữựvxyỳýỷỹỵ";
        let tones = [
            '\u{300}', '\u{301}', '\u{309}', '\u{303}', '\u{323}', '\u{302}', '\u{306}', '\u{31b}',
        ];
        let mut all = with_capitals(vietnamese);
        all.extend(tones);
        for alphabet in [
            "αβγδεζηθικλμνξοπρσςτυφχψωάέήίόύώϊϋΐΰ",
            "ἀἁἂἃἄἅἆἇὰᾳῆῥῳ",
            "абвгдеёжзийклмнопрстуфхцчшщъыьэюя",
            "іїєґўђћљњџјѕѓќѐѝ",
            "әғқңөұүһәҗҙҡҫ",
            "àâæçéèêëîïôœùûüÿäößåøñãõáíóúýþðčďěňřšťůžąćęłńśźżőűğışăâîșțāēģīķļņūėįųċġħ",
            "աբգդեզէըթժիլխծկհձղճմյնշոչպջռսվտրցւփքօֆև",
            "აბგდევზთიკლმნოპჟრსტუფქღყშჩცძწჭხჯჰ",
            "אבגדהוזחטיכךלמםנןסעפףצץקרשת",
            "ابتثجحخدذرزسشصضطظعغفقكلمنهويةءأإؤئآپچژگکی٠١٢٣٤٥٦٧٨٩",
        ] {
            all.extend(with_capitals(alphabet));
        }
        all.extend(
            "←↑→↓↔↕↖↗↘↙⇐⇒⇔≤≥≠≈±×÷−∅⌀°′″½¼¾⅛⅜⅝⅞№℄²³€£¥₫₴₽₺«»„“”‘’–—…•■□▲△▼●○◆☐☑☒✓✗①②Ⅳ∆√∞⟂∥∠".chars(),
        );
        for bold in [false, true] {
            let face = face(bold).unwrap();
            let drawn = |c: &char| {
                // A letter with an outline: a combining mark moves nothing on and has one all the same.
                face.glyph_index(*c).and_then(|g| face.glyph_bounding_box(g)).is_some()
            };
            let without: String = all.iter().filter(|c| !drawn(c)).collect();
            assert!(without.is_empty(), "bold {bold}: {without}");
        }
        assert_eq!(lacking(&all.iter().collect::<String>()).count(), 0);
    }

    #[test]
    fn both_faces_have_the_same_letters() {
        let of = |bold: bool| -> Vec<char> {
            let face = face(bold).unwrap();
            ('\u{20}'..='\u{2ffff}').filter(|c| face.glyph_index(*c).is_some()).collect()
        };
        assert_eq!(of(false), of(true));
        assert!(of(false).len() > 4000);
        // A private letter means nothing without its own typeface.
        assert!(!of(false).iter().any(|c| matches!(c, '\u{e000}'..='\u{f8ff}')));
    }

    #[test]
    fn what_the_typeface_lacks_is_replaced_and_as_wide_as_its_replacement() {
        for (text, shown, lacks) in [
            ("正面 N", "\u{fffd}\u{fffd} N", 2),
            ("🏠", "\u{fffd}", 1),
            ("\u{e000}\u{f8ff}", "\u{fffd}\u{fffd}", 2),
            ("a\u{3000}b", "a b", 0),
            ("x\u{fe0f}\u{feff}", "x", 0),
            ("Πρόσοψη ≤ 5", "Πρόσοψη ≤ 5", 0),
        ] {
            assert_eq!(printable(text), shown);
            assert_eq!(lacking(text).count(), lacks, "{text}");
            for bold in [false, true] {
                assert!((width(text, 1.0, bold) - width(shown, 1.0, bold)).abs() < 1e-12);
            }
        }
        let mark = face(false).unwrap().glyph_index(REPLACEMENT).unwrap();
        assert!(face(false).unwrap().glyph_bounding_box(mark).unwrap().width() > 400);
    }

    #[test]
    fn heights_are_those_of_the_faces_own_tables() {
        for bold in [false, true] {
            let face = face(bold).unwrap();
            let em = f64::from(face.units_per_em());
            let capitals = f64::from(face.capital_height().unwrap()) / em;
            assert!((capitals - CAPITALS).abs() < 1e-9);
            assert!((f64::from(-face.descender()) / em - DESCENT).abs() < 1e-9);
        }
    }
}
