//! Names of layers of other drawings that a drawing shows.

/// A layer's own name, without the drawing it comes from: `house$0$A-WALL` of a reference that was bound,
/// `house|A-WALL` of one that was not (DXF reference).
pub fn own_name(layer: &str) -> &str {
    layer.rsplit(['$', '|']).next().unwrap_or(layer)
}

#[cfg(test)]
mod tests {
    use super::own_name;

    #[test]
    fn what_stands_before_the_name_is_the_drawing_it_comes_from() {
        for name in ["A-WALL", "house|A-WALL", "house$0$A-WALL", "site|house$12$A-WALL"] {
            assert_eq!(own_name(name), "A-WALL");
        }
    }
}
