//! Style sheets: what of them is handed on, and what it costs to compare them with elements.

use std::borrow::Cow;

/// Styles without what they refer to and without filters: what fills an outline, clips it or stands at
/// its corners moves no line, and the resolver would draw it as often as it is asked.
pub(super) fn tamed(css: &str) -> Cow<'_, str> {
    let mut out = Cow::Borrowed(css);
    if css.contains("url(") {
        out = Cow::Owned(without_urls(css));
    }
    if out.contains("filter") {
        out = Cow::Owned(without_filters(&out));
    }
    out
}

/// How ends, corners and dashes of strokes are drawn, and how densely: it moves no line, and the resolver would
/// outline every stroke by it.
const PENS: [&str; 7] = [
    "fill-opacity",
    "stroke-linecap",
    "stroke-linejoin",
    "stroke-miterlimit",
    "stroke-dasharray",
    "stroke-dashoffset",
    "stroke-opacity",
];

/// The declarations of an element without those of [`PENS`].
pub(super) fn without_pens(declarations: Cow<'_, str>) -> Cow<'_, str> {
    if !PENS.iter().any(|p| declarations.contains(p)) {
        return declarations;
    }
    let is_pen = |d: &str| d.split_once(':').is_some_and(|(name, _)| PENS.contains(&name.trim()));
    let mut out = String::with_capacity(declarations.len());
    for declaration in declarations.split_inclusive(';').filter(|d| !is_pen(d)) {
        out.push_str(declaration);
    }
    Cow::Owned(out)
}

/// Properties that say the same as an attribute of their name.
const SAME_AS_ATTRIBUTES: [&str; 5] = ["fill", "stroke", "stroke-width", "display", "visibility"];

/// Declarations as attributes, where they are of the plainest sort, as a converter writes them on each of some
/// ten thousand paths: the resolver reads attributes in a fraction of the time. None of any other sort.
pub(super) fn as_attributes(declarations: &str) -> Option<Vec<(&str, &str)>> {
    let mut out: Vec<(&str, &str)> = Vec::new();
    for declaration in declarations.split(';').map(str::trim).filter(|d| !d.is_empty()) {
        let (name, value) = declaration.split_once(':')?;
        let (name, value) = (name.trim_end(), value.trim_start());
        let plain = |b: u8| b.is_ascii_alphanumeric() || b"#.%,-() ".contains(&b);
        let known = SAME_AS_ATTRIBUTES.contains(&name) && !out.iter().any(|p| p.0 == name);
        if !known || value.is_empty() || !value.bytes().all(plain) {
            return None;
        }
        out.push((name, value));
    }
    Some(out)
}

/// A reference is a color in its place: an outline with an unknown filling would be hidden.
fn without_urls(css: &str) -> String {
    let mut out = String::with_capacity(css.len());
    let mut rest = css;
    while let Some(at) = rest.find("url(") {
        out.push_str(&rest[..at]);
        out.push_str("black");
        rest = rest[at..].find(')').map_or("", |end| &rest[at + end + 1..]);
    }
    out.push_str(rest);
    out
}

/// Properties of that name get another: an element with a filter that is not there is hidden.
fn without_filters(css: &str) -> String {
    const NAME: &str = "filter";
    let mut out = String::with_capacity(css.len() + 16);
    let mut rest = css;
    while let Some(at) = rest.find(NAME) {
        let (before, after) = (&rest[..at], &rest[at + NAME.len()..]);
        let part = |c: char| c.is_alphanumeric() || c == '-' || c == '_';
        let whole = !out.ends_with(part) || !before.is_empty();
        out.push_str(before);
        if whole && !before.ends_with(part) && after.trim_start().starts_with(':') {
            out.push_str("no-");
        }
        out.push_str(NAME);
        rest = after;
    }
    out.push_str(rest);
    out
}

/// A sheet in parts of whole rules: the resolver goes back to the beginning of what it is given for every
/// rule it reads.
pub(super) fn parts(css: &str) -> Vec<&str> {
    const LETTERS: usize = 1 << 14;
    let mut out = Vec::new();
    let (mut from, mut inside) = (0, 0usize);
    for (at, b) in css.bytes().enumerate() {
        match b {
            b'{' => inside += 1,
            b'}' => {
                inside = inside.saturating_sub(1);
                if inside == 0 && at - from >= LETTERS {
                    out.push(&css[from..=at]);
                    from = at + 1;
                }
            }
            _ => {}
        }
    }
    out.push(&css[from..]);
    out
}

/// A sheet without its comments.
pub(super) fn without_comments(css: &str) -> String {
    let mut out = String::with_capacity(css.len());
    let mut rest = css;
    while let Some(at) = rest.find("/*") {
        out.push_str(&rest[..at]);
        out.push(' ');
        rest = rest[at..].find("*/").map_or("", |end| &rest[at + end + 2..]);
    }
    out.push_str(rest);
    out
}

/// Comparisons that an element within `levels` others takes with all rules of a sheet, at most: a rule
/// for what lies anywhere in something is tried with every element round it, those within it again. What
/// its declarations take, if it matches, is counted too.
pub(super) fn comparisons(css: &str, levels: usize) -> usize {
    let mut all = 0usize;
    for rule in css.split('}') {
        let Some((selectors, declarations)) = rule.split_once('{') else { continue };
        let of = selectors.split(',').map(|s| comparisons_of(s, levels));
        let of = of.fold(0usize, usize::saturating_add);
        all = all.saturating_add(of).saturating_add(declarations.matches(':').count());
    }
    all
}

fn comparisons_of(selector: &str, levels: usize) -> usize {
    let mut parts = 0;
    let (mut within, mut joined) = (0u32, true);
    for word in selector.replace(['>', '+', '~'], " > ").split_whitespace() {
        if word == ">" {
            joined = true;
            continue;
        }
        within += u32::from(!joined);
        joined = false;
        parts += 1 + word.matches(['.', '#', '[', ':']).count();
    }
    levels.max(1).saturating_pow(within).saturating_mul(parts)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn plain_declarations_are_attributes_and_others_are_none() {
        let of = |css| super::as_attributes(css);
        let pairs = vec![("fill", "none"), ("stroke", "rgb(0%, 0%, 0%)"), ("stroke-width", "0.12")];
        assert_eq!(of("fill: none ;stroke:rgb(0%, 0%, 0%);stroke-width:0.12;"), Some(pairs));
        assert_eq!(of(" ; "), Some(Vec::new()));
        for css in [
            "fill:red !important",
            "fill:red;fill:blue",
            "font-size:4px",
            "fill",
            "fill:",
            "fill:/* no */none",
            "fill:\"red\"",
            "fill:r\\65 d",
        ] {
            assert_eq!(of(css), None, "{css}");
        }
    }

    #[test]
    fn references_become_a_color_and_filters_are_unknown() {
        assert_eq!(tamed("fill:url(#a);stroke:red"), "fill:black;stroke:red");
        assert_eq!(tamed("marker-mid: url('#m') ; x: url("), "marker-mid: black ; x: black");
        assert_eq!(tamed("filter:blur(2px);a:b"), "no-filter:blur(2px);a:b");
        assert_eq!(tamed(".filter{fill:none;filter :none}"), ".filter{fill:none;no-filter :none}");
        assert_eq!(tamed("fill:none"), "fill:none");
    }

    #[test]
    fn a_style_keeps_what_shows_and_how_wide_a_stroke_is() {
        let style =
            "fill:none;stroke-width:0.12;stroke-linecap:round; stroke-dasharray : 3,1 ;stroke:red";
        let of = |style: &'static str| without_pens(Cow::Borrowed(style));
        assert_eq!(of(style), "fill:none;stroke-width:0.12;stroke:red");
        assert_eq!(
            (of("stroke-linejoin:bevel"), of("stroke:red")),
            ("".into(), "stroke:red".into())
        );
    }

    #[test]
    fn parts_are_whole_rules_and_nothing_is_lost() {
        let sheet = "@media print { a{b:c} d{e:f} } g{h:i}\n".repeat(2_000);
        let parts = parts(&sheet);
        assert!(parts.len() > 4 && parts.concat() == sheet);
        for p in &parts {
            assert_eq!(p.matches('{').count(), p.matches('}').count());
        }
    }

    #[test]
    fn a_rule_for_what_lies_in_something_is_tried_at_every_level() {
        assert_eq!(comparisons("a{fill:red}", 10), 1 + 1);
        assert_eq!(comparisons("a,b.c{}", 10), 1 + 2);
        assert_eq!(comparisons("a b{}", 10), 20);
        assert_eq!(comparisons("a > b{}", 10), 2);
        assert_eq!(comparisons("a b c d{}", 10), 4000);
        assert_eq!(comparisons(&format!("{}x{{}}", "a ".repeat(40)), 400), usize::MAX);
    }
}
