//! Stock lengths in words.

use crate::job::Stock;
use crate::job::stock::panel_letter;
use crate::language::{Language, said};
use crate::units::LengthStyle;

/// What the letters of panels' names say, where there are several lengths: `P: panels of 12'-6"; S: of
/// 16'-8".`
pub fn panel_letters(lang: Language, stocks: &[Stock], style: LengthStyle) -> Option<String> {
    if stocks.len() < 2 {
        return None;
    }
    let of = |(i, s): (usize, &Stock)| {
        let panels = if i == 0 { said("panels ", "paneles ") } else { said("", "") };
        let (letter, length) = (panel_letter(i), style.length(s.length));
        say!(lang, "{}: {}of {}", "{}: {}de {}", letter, panels.of(lang), length)
    };
    let each: Vec<String> = stocks.iter().enumerate().map(of).collect();
    Some(format!("{}.", each.join("; ")))
}

/// Each length with the panels in a carton: `12'-6", 24 to a carton, and of 16'-8", 18 to a carton`.
pub fn lengths_and_cartons(stocks: &[Stock], style: LengthStyle) -> String {
    let of = |s: &Stock| format!("{}, {} to a carton", style.length(s.length), s.carton);
    stocks.iter().map(of).collect::<Vec<_>>().join(", and of ")
}
