//! Views of part of another view: what they show is counted there.

/// Words for a part of a view, in the languages drawings often come in (general dictionaries).
const PARTIAL: [&str; 6] = ["partial", "partiel", "parcial", "parziale", "teilansicht", "gedeelte"];

/// Which of some titles name a part of a view that another of them shows whole.
pub(super) fn of_others(titles: &[&str]) -> Vec<bool> {
    let is_part = |name: &str| PARTIAL.iter().any(|w| name.to_lowercase().contains(w));
    let whole: Vec<Vec<String>> = titles.iter().filter(|t| !is_part(t)).map(|t| words(t)).collect();
    let shown = |name: &str| {
        let mine = words(name);
        // A side of the house that both name.
        whole.iter().any(|w| w.iter().any(|t| SIDES.contains(&t.as_str()) && mine.contains(t)))
    };
    titles.iter().map(|t| is_part(t) && shown(t)).collect()
}

/// Sides of a house as titles name them.
const SIDES: [&str; 26] = [
    "north", "south", "east", "west", "front", "rear", "back", "left", "right", "street", "garden",
    "nord", "süd", "sued", "ost", "norte", "sur", "sul", "este", "leste", "oeste", "sud", "est",
    "ouest", "ovest", "vorne",
];

fn words(name: &str) -> Vec<String> {
    let low = name.to_lowercase();
    low.split(|c: char| !c.is_alphanumeric()).filter(|w| !w.is_empty()).map(str::to_owned).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_part_is_left_alone_where_the_whole_is_drawn_too() {
        let found = of_others(&["North Elevation", "Partial North Elevation - Bay"]);
        assert_eq!(found, [false, true]);
        assert_eq!(of_others(&["South Elevation", "Partial North Elevation"]), [false, false]);
        assert_eq!(of_others(&["PARTIAL NORTH", "Partial north 2"]), [false, false]);
    }
}
