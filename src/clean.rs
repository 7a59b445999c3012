//! Text of a drawing or a job on its way out. Such text is hostile: it may hold terminal codes, turn the
//! reading direction, run as a formula, or end a file's syntax. Each destination has its own dangers.

/// Where a text goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Destination {
    /// A drawing of our own: what cannot be drawn is left out.
    Sheet,
    /// Text of an SVG: what XML 1.0 forbids is replaced; the writer escapes the rest.
    Svg,
    /// A string of a DXF: one line, no codes of the format.
    Dxf {
        /// Whether the file is UTF-8; else what is not ASCII is escaped.
        utf8: bool,
    },
    /// A cell of CSV: never a formula, on one line.
    Csv,
    /// A cell of a workbook, which is told to be text: no longer than one cell holds.
    Workbook,
    /// A terminal or a plain text file: no terminal codes, on one line.
    Terminal,
    /// A name of something in the drawing: one line, not too long.
    Name,
    /// A tag beside something in the drawing: short.
    Tag,
    /// A file or folder name, or an id: lower-case words of ASCII letters and digits joined by
    /// dashes; empty where there is none.
    FileName {
        /// Most words.
        words: usize,
        /// Most letters.
        letters: usize,
    },
}

/// Most letters of a name.
const NAME: usize = 60;
/// Most letters of a tag.
const TAG: usize = 12;
/// Longest text of one workbook cell, less room for the mark that it was cut.
const CELL: usize = 32_000;
/// Stands where a character was taken out.
const REPLACED: char = '\u{fffd}';

/// The text as its destination can take it.
pub fn clean(text: &str, to: Destination) -> String {
    match to {
        Destination::Sheet => text.chars().filter(|c| !is_odd(*c)).collect(),
        Destination::Svg => text.chars().filter(|c| !turns_direction(*c)).map(legal_xml).collect(),
        Destination::Dxf { utf8 } => dxf(text, utf8),
        Destination::Csv => csv(text),
        Destination::Workbook => cell(replaced(text)),
        Destination::Terminal => replaced(text),
        Destination::Name => {
            let line: String = text.chars().filter(|c| !c.is_control()).take(NAME).collect();
            line.split_whitespace().collect::<Vec<_>>().join(" ")
        }
        Destination::Tag => text.chars().filter(|c| !c.is_control()).take(TAG).collect(),
        Destination::FileName { words, letters } => file_name(text, words, letters),
    }
}

/// For a terminal or a plain text file.
pub fn terminal(text: &str) -> String {
    clean(text, Destination::Terminal)
}

/// Characters that override or isolate the direction of reading.
fn turns_direction(c: char) -> bool {
    matches!(c, '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
}

fn is_odd(c: char) -> bool {
    c.is_control() || turns_direction(c)
}

fn replaced(text: &str) -> String {
    text.chars().map(|c| if is_odd(c) { REPLACED } else { c }).collect()
}

fn legal_xml(c: char) -> char {
    match c {
        '\t' | '\n' | '\r' => ' ',
        '\u{fffe}' | '\u{ffff}' => REPLACED,
        c if c.is_control() => REPLACED,
        c => c,
    }
}

/// A pair of percent signs would be read as a code.
fn dxf(text: &str, utf8: bool) -> String {
    let mut out = String::new();
    for c in text.chars().filter(|c| !is_odd(*c)) {
        if c == '%' && out.ends_with('%') {
            out.push(' ');
        }
        if c.is_ascii() || utf8 {
            out.push(c);
        } else {
            let mut units = [0u16; 2];
            let units = c.encode_utf16(&mut units);
            units.iter().for_each(|u| out.push_str(&format!("\\U+{u:04X}")));
        }
    }
    out
}

/// An apostrophe keeps a spreadsheet from running a cell as a formula.
fn csv(text: &str) -> String {
    let runs = text.starts_with(['=', '+', '-', '@', '\t', '\r']);
    let text = replaced(text);
    if runs { format!("'{text}") } else { text }
}

fn cell(text: String) -> String {
    if text.encode_utf16().count() <= CELL {
        return text;
    }
    text.chars().take(CELL / 2).chain(['…']).collect()
}

fn file_name(text: &str, words: usize, letters: usize) -> String {
    let lower = text.to_lowercase();
    let each = lower.split(|c: char| !c.is_ascii_alphanumeric()).filter(|w| !w.is_empty());
    let joined = each.take(words).collect::<Vec<_>>().join("-");
    joined.chars().take(letters).collect::<String>().trim_end_matches('-').to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Every control character, those that turn the direction, and what formats give a meaning.
    fn hostile() -> String {
        let controls = ('\u{0}'..='\u{ffff}').filter(|c| is_odd(*c));
        controls.chain("=%%%<&>\"'\\U+0041é漢🏠\u{fffe}\u{ffff}".chars()).collect()
    }

    #[test]
    fn no_destination_lets_control_or_direction_characters_through() {
        for to in [
            Destination::Sheet,
            Destination::Svg,
            Destination::Dxf { utf8: true },
            Destination::Dxf { utf8: false },
            Destination::Csv,
            Destination::Workbook,
            Destination::Terminal,
            Destination::FileName { words: 9, letters: 90 },
        ] {
            let out = clean(&hostile(), to);
            assert!(!out.contains(is_odd), "{to:?}: {out:?}");
            let out = clean("\u{1b}[31mred\u{202e}x\u{2066}y\u{9b}z", to);
            assert!(!out.contains(is_odd) && out.contains("red"), "{to:?}: {out:?}");
        }
        for to in [Destination::Name, Destination::Tag] {
            assert!(!clean(&hostile(), to).contains(char::is_control), "{to:?}");
        }
    }

    #[test]
    fn svg_text_holds_only_what_xml_allows() {
        // XML 1.0, production 2: #x9, #xA, #xD, #x20 to #xD7FF, #xE000 to #xFFFD, #x10000 and on.
        let allowed = |c: char| matches!(c, '\t' | '\n' | '\r' | ' '..='\u{d7ff}' | '\u{e000}'..='\u{fffd}' | '\u{10000}'..);
        assert!(clean(&hostile(), Destination::Svg).chars().all(allowed));
        assert_eq!(clean("a\tb\u{202e}c", Destination::Svg), "a bc");
    }

    #[test]
    fn no_percent_pair_reaches_a_dxf() {
        for text in ["%%", "%%%", "a%%%%b", "%\u{0}%"] {
            assert!(!clean(text, Destination::Dxf { utf8: true }).contains("%%"), "{text:?}");
        }
        assert_eq!(clean("é🏠", Destination::Dxf { utf8: false }), "\\U+00E9\\U+D83C\\U+DFE0");
        assert_eq!(clean("50 % é", Destination::Dxf { utf8: true }), "50 % é");
    }

    #[test]
    fn no_csv_cell_runs_as_a_formula() {
        // The characters that the Open Worldwide Application Security Project lists for CSV injection.
        for first in ['=', '+', '-', '@', '\t', '\r', '\n'] {
            let out = clean(&format!("{first}1+1"), Destination::Csv);
            assert!(out.starts_with(['\'', REPLACED]), "{out:?}");
        }
        assert_eq!(clean("front-W1", Destination::Csv), "front-W1");
    }

    #[test]
    fn a_workbook_cell_holds_what_the_format_allows() {
        // 32,767 characters by ECMA-376, counted as UTF-16.
        let long = clean(&"🏠".repeat(40_000), Destination::Workbook);
        assert!(long.encode_utf16().count() <= 32_767 && long.ends_with('…'));
        assert_eq!(clean("=1", Destination::Workbook), "=1");
    }

    #[test]
    fn file_names_are_plain_and_short() {
        let name = |text: &str| clean(text, Destination::FileName { words: 5, letters: 12 });
        assert_eq!(name("../../etc/passwd"), "etc-passwd");
        assert_eq!(name("FRONT  Elevation (south)"), "front-elevat");
        assert_eq!(name("eleven long-"), "eleven-long");
        assert_eq!((name("正面"), name("CON\u{0}")), (String::new(), "con".to_owned()));
        assert_eq!(name("a b c d e f"), "a-b-c-d-e");
    }

    #[test]
    fn names_and_tags_are_one_short_line() {
        assert_eq!(clean("  FRONT\n ELEVATION \u{1b}", Destination::Name), "FRONT ELEVATION");
        assert_eq!(clean(&"a".repeat(99), Destination::Name).len(), NAME);
        assert_eq!(clean(&"é".repeat(99), Destination::Tag).chars().count(), TAG);
    }
}
