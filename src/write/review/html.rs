//! Text on its way into the page.

use crate::clean::{Destination, clean};

/// Text of a drawing or a job between tags or in quotes, as HTML can take it.
pub(in crate::write) fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in clean(text, Destination::Svg).chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            c => out.push(c),
        }
    }
    out
}

/// A number with two decimals at most.
pub(super) fn n(v: f64) -> f64 {
    let r = (v * 100.0).round() / 100.0;
    if r == 0.0 { 0.0 } else { r }
}

#[cfg(test)]
mod tests {
    use super::escaped;

    #[test]
    fn nothing_of_a_text_ends_what_it_stands_in() {
        let hostile = "<script>'\"&</script>\u{202e}\u{0}";
        let out = escaped(hostile);
        assert!(!out.contains(['<', '>', '"', '\'', '\u{202e}', '\u{0}']), "{out}");
        assert_eq!(escaped("a & b"), "a &amp; b");
    }
}
