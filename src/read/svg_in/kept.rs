//! What of an SVG is handed to the resolver: what draws outlines and words, and what places them.
//! Fillings, clips, masks, filters, markers and pictures move no line; the resolver would draw them as
//! often as they are asked for, each within the others.

use usvg::roxmltree::Node;

const SVG: &str = "http://www.w3.org/2000/svg";

/// What becomes of an element.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Kept {
    /// It stays what it is, under this name.
    As(&'static str),
    /// What it holds may be used from elsewhere, and is not drawn here.
    Unseen,
    /// It draws something that is not read.
    Skipped(&'static str),
    /// It is left out.
    Nothing,
}

/// Elements that stay what they are; a link is a group, and words along a path are words.
const SAME: [(&str, &str); 17] = [
    ("svg", "svg"),
    ("g", "g"),
    ("a", "g"),
    ("use", "use"),
    ("symbol", "symbol"),
    ("defs", "defs"),
    ("switch", "switch"),
    ("path", "path"),
    ("line", "line"),
    ("polyline", "polyline"),
    ("polygon", "polygon"),
    ("rect", "rect"),
    ("circle", "circle"),
    ("ellipse", "ellipse"),
    ("text", "text"),
    ("tspan", "tspan"),
    ("textPath", "tspan"),
];

/// Attributes that place, show or measure; others are kept only where a style sheet asks for attributes.
const ATTRIBUTES: [&str; 46] = [
    "alignment-baseline",
    "baseline-shift",
    "class",
    "cx",
    "cy",
    "d",
    "direction",
    "display",
    "dominant-baseline",
    "dx",
    "dy",
    "fill",
    "font-size",
    "height",
    "id",
    "lengthAdjust",
    "letter-spacing",
    "overflow",
    "points",
    "preserveAspectRatio",
    "r",
    "requiredExtensions",
    "requiredFeatures",
    "rotate",
    "rx",
    "ry",
    "space",
    "stroke",
    "stroke-width",
    "style",
    "systemLanguage",
    "text-anchor",
    "textLength",
    "transform",
    "transform-origin",
    "type",
    "viewBox",
    "visibility",
    "width",
    "word-spacing",
    "writing-mode",
    "x",
    "x1",
    "x2",
    "y",
    "y1",
];

pub(super) fn kept(node: &Node) -> Kept {
    let tag = node.tag_name();
    if !matches!(tag.namespace(), None | Some(SVG)) {
        return Kept::Nothing;
    }
    let name = tag.name();
    match name {
        "clipPath" | "mask" | "pattern" | "marker" => Kept::Unseen,
        "image" => Kept::Skipped("image"),
        "foreignObject" => Kept::Skipped("foreignObject"),
        _ => SAME.iter().find(|(n, _)| *n == name).map_or(Kept::Nothing, |(_, as_)| Kept::As(as_)),
    }
}

/// Whether an attribute is handed on.
pub(super) fn keeps(name: &str) -> bool {
    ATTRIBUTES.binary_search(&name).is_ok() || name == "y2"
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn attributes_are_in_the_order_they_are_looked_up_in() {
        assert!(ATTRIBUTES.windows(2).all(|w| w[0] < w[1]));
        assert!(keeps("transform") && keeps("y2") && !keeps("marker-mid") && !keeps("filter"));
    }
}
