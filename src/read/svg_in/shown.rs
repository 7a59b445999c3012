//! What of the source shows: whether an element is hidden, and what it is clipped to, so that what is
//! not drawn can be told.

use std::collections::BTreeMap;
use std::sync::Arc;

use usvg::roxmltree::Node;

use crate::geom::polygon::bounds;
use crate::geom::vocabulary::{BezPath, CurveShape, Point, Rect};
use crate::model::unused::Unused;

/// Longest shape of a clip that is looked at, letters.
const MOST: usize = 4096;

/// Elements of one layer that are not handed to the resolver.
pub(super) struct Left {
    /// Their layer.
    pub(super) layer: Arc<str>,
    /// Line of the first.
    pub(super) line: usize,
    /// Its id.
    pub(super) id: Option<Box<str>>,
    /// Why they are left out.
    pub(super) why: Unused,
    /// How many.
    pub(super) count: usize,
}

/// Where in the source an element stands, as far as it decides what shows.
#[derive(Clone, Copy, Default)]
pub(super) struct Around {
    /// In definitions, which show where they are used.
    pub(super) defined: bool,
    /// In a hidden group.
    pub(super) hidden: bool,
}

impl Around {
    /// What is round the children of an element written under a name.
    pub(super) fn within(self, node: &Node, name: &str) -> Self {
        Around {
            defined: self.defined || matches!(name, "defs" | "symbol"),
            hidden: self.hidden || is_hidden(node),
        }
    }

    /// Why an element that draws something does not show, if the resolver gives nothing of it.
    pub(super) fn unseen(self, node: &Node, used: Option<&str>) -> Option<Unused> {
        let name = node.tag_name().name();
        if self.defined || matches!(name, "g" | "text") {
            return None;
        }
        Some(if self.hidden {
            Unused::HiddenLayer
        } else if is_hidden(node) {
            Unused::Invisible
        } else if let Some(block) = used {
            Unused::BlockMissing { block: block.to_owned() }
        } else {
            Unused::NotPainted
        })
    }
}

/// A property of an element, as an attribute or in its style.
fn property<'a>(node: &Node<'a, '_>, name: &str) -> Option<&'a str> {
    let style = node.attribute("style").and_then(|style| {
        let pairs = style.split(';').filter_map(|p| p.split_once(':'));
        pairs.map(|(n, v)| (n.trim(), v.trim())).find(|(n, _)| *n == name).map(|(_, v)| v)
    });
    style.or_else(|| node.attribute(name).map(str::trim))
}

fn is_hidden(node: &Node) -> bool {
    property(node, "display") == Some("none")
        || matches!(property(node, "visibility"), Some("hidden" | "collapse"))
}

/// The box an element is clipped to, in the coordinates its own shape has; of plain clips only.
pub(super) fn clip<'a>(
    node: &Node<'a, 'a>,
    ids: &BTreeMap<&'a str, Node<'a, 'a>>,
) -> Option<Box<Rect>> {
    let url = property(node, "clip-path")?.strip_prefix("url(")?;
    let id = url.trim_end_matches(')').trim_matches(['"', '\'', ' ']).strip_prefix('#')?;
    let clip = ids.get(id)?;
    let placed = clip.attribute("transform").is_some()
        || clip.attribute("clipPathUnits").is_some_and(|u| u == "objectBoundingBox");
    if clip.tag_name().name() != "clipPath" || placed {
        return None;
    }
    let mut shapes = clip.children().filter(Node::is_element);
    let (shape, more) = (shapes.next()?, shapes.next());
    if more.is_some() || shape.attribute("transform").is_some() {
        return None;
    }
    let number = |name: &str| shape.attribute(name).map_or(Some(0.0), |v| v.trim().parse().ok());
    let found = match shape.tag_name().name() {
        "rect" => {
            let (x, y): (f64, f64) = (number("x")?, number("y")?);
            Rect::new(x, y, x + number("width")?, y + number("height")?)
        }
        "path" => {
            let d = shape.attribute("d").filter(|d| d.len() <= MOST)?;
            BezPath::from_svg(d).ok()?.bounding_box()
        }
        "polygon" => {
            let text = shape.attribute("points").filter(|d| d.len() <= MOST)?;
            let numbers: Option<Vec<f64>> = text
                .split([',', ' ', '\n', '\t'])
                .filter(|t| !t.is_empty())
                .map(|t| t.parse().ok())
                .collect();
            let points: Vec<Point> =
                numbers?.chunks_exact(2).map(|p| Point::new(p[0], p[1])).collect();
            bounds(&points)?
        }
        _ => return None,
    };
    found.is_finite().then(|| Box::new(found))
}

/// Elements in a group that draw something.
pub(super) fn drawn_in(node: &Node) -> usize {
    const DRAWN: [&str; 8] =
        ["path", "line", "polyline", "polygon", "rect", "circle", "ellipse", "use"];
    node.descendants().filter(|n| DRAWN.contains(&n.tag_name().name())).count()
}
