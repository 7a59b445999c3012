//! From what is read back to the coordinates of the `viewBox`.

/// From pixels of the tree to user units with y up.
pub(super) struct ToUser {
    pub(super) scale: (f64, f64),
    pub(super) origin: (f64, f64),
    pub(super) height: f64,
}

pub(super) fn to_user(xml: &usvg::roxmltree::Document, tree: &usvg::Tree) -> ToUser {
    let (w, h) = (f64::from(tree.size().width()), f64::from(tree.size().height()));
    match view_box(xml) {
        Some([x, y, vw, vh]) => {
            // One scale for both ways, as `preserveAspectRatio` does unless told otherwise.
            let k = (vw / w).max(vh / h);
            let (spare_x, spare_y) = (w * k - vw, h * k - vh);
            ToUser {
                scale: (k, k),
                origin: (x - spare_x / 2.0, y - spare_y / 2.0),
                height: vh + 2.0 * y,
            }
        }
        None => ToUser { scale: (1.0, 1.0), origin: (0.0, 0.0), height: h },
    }
}

/// The numbers of a `viewBox`.
pub(super) fn view_box(xml: &usvg::roxmltree::Document) -> Option<[f64; 4]> {
    let text = xml.root_element().attribute("viewBox")?;
    let numbers: Vec<f64> = text
        .split(|c: char| c == ',' || c.is_whitespace())
        .filter(|t| !t.is_empty())
        .map_while(|t| t.parse().ok())
        .filter(|n: &f64| n.is_finite())
        .collect();
    let [x, y, w, h] = numbers[..] else { return None };
    (w > 0.0 && h > 0.0).then_some([x, y, w, h])
}
