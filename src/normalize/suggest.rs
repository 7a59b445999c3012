//! Guesses at what layers mean, from their names in several languages and from what is drawn on
//! them: a beginning for the user's own map, never used by the program itself.

use std::collections::BTreeMap;

use crate::geom::polygon::{bounds, signed_area};
use crate::geom::vocabulary::Rect;
use crate::model::drawing::{Drawing, Shape, Space};
use crate::model::guess::{GuessReason, LayerGuess};
use crate::model::linework::{LayerUse, Role};

/// Parts of layer names that speak for a role, the telling ones first (general dictionaries:
/// English, German, French, Spanish, Italian, Dutch, Swedish, Japanese, Chinese).
const WORDS: [(Role, &[&str]); 9] = [
    (Role::Dimension, &["dim", "bemass", "cota", "cote", "quote", "maat", "寸法", "标注"]),
    (Role::Title, &["title", "titel", "titre", "titulo", "titolo", "図面名", "タイトル"]),
    (
        Role::Window,
        &[
            "glaz", "wind", "fenst", "fenet", "fenêt", "ventan", "finest", "raam", "fönster",
            "fonster", "窓", "建具", "窗",
        ],
    ),
    (
        Role::Door,
        &["door", "tuer", "tür", "porte", "puerta", "porta", "deur", "dörr", "扉", "ドア", "门"],
    ),
    (
        Role::Texture,
        &["patt", "hatch", "schraff", "hachur", "tratteg", "arcering", "ハッチ", "填充"],
    ),
    (
        Role::Grade,
        &["grade", "topo", "ground", "gelaend", "gelände", "terrain", "terreno", "地盤", "地面"],
    ),
    (Role::Level, &["levl", "level", "niveau", "kote", "nivel", "livello", "レベル", "标高"]),
    (Role::Roof, &["roof", "dach", "toit", "techo", "cubierta", "tetto", "dak", "屋根", "屋顶"]),
    (
        Role::Wall,
        &[
            "sid", "clad", "wall", "wand", "mur", "pared", "muro", "gevel", "vägg", "外壁", "壁",
            "墙",
        ],
    ),
];

fn by_name(name: &str) -> Option<(Role, &'static str)> {
    // Names bound from references and their prefixes say nothing.
    let name = name.rsplit('$').next().unwrap_or(name).to_lowercase();
    let first = |(role, words): &(Role, &[&'static str])| {
        words.iter().find(|w| name.contains(**w)).map(|w| (*role, *w))
    };
    WORDS.iter().find_map(first)
}

/// Closed outlines of each layer: boxes and areas, drawing units.
fn outlines(drawing: &Drawing) -> BTreeMap<usize, Vec<(Rect, f64)>> {
    let mut out: BTreeMap<usize, Vec<(Rect, f64)>> = BTreeMap::new();
    for item in drawing.items.iter().filter(|i| i.space == Space::Model) {
        if let Shape::Polyline(p) = &item.shape
            && p.closed
            && p.vertices.len() > 2
        {
            let ring: Vec<_> = p.vertices.iter().map(|v| v.at).collect();
            if let Some(b) = bounds(&ring) {
                out.entry(item.layer).or_default().push((b, signed_area(&ring).abs()));
            }
        }
    }
    out
}

/// Guesses for layers that play no role yet and have something on them.
pub fn guesses(drawing: &Drawing, layers: &[LayerUse]) -> Vec<LayerGuess> {
    let free: Vec<usize> =
        (0..layers.len()).filter(|i| layers[*i].role.is_none() && layers[*i].items > 0).collect();
    let mut out: BTreeMap<usize, LayerGuess> = BTreeMap::new();
    let guess = |i: usize, role: Role, reason: GuessReason| {
        (i, LayerGuess { layer: layers[i].layer.name.clone(), role, reason })
    };
    for i in &free {
        if let Some((role, word)) = by_name(&layers[*i].layer.name) {
            out.extend([guess(*i, role, GuessReason::NameHolds { word: word.to_owned() })]);
        }
    }
    let known = layers.iter().any(|l| l.role == Some(Role::Wall))
        || out.values().any(|g| g.role == Role::Wall);
    let loops = outlines(drawing);
    let largest =
        |i: &usize| loops.get(i).map_or(0.0, |l| l.iter().map(|o| o.1).fold(0.0, f64::max));
    // Where no name says wall, the layer with the largest closed outline may be it, and what lies
    // inside its outlines may be windows.
    let unnamed: Vec<usize> = free.iter().copied().filter(|i| !out.contains_key(i)).collect();
    let wall = unnamed.iter().max_by(|a, b| largest(a).total_cmp(&largest(b))).copied();
    if let Some(wall) = wall.filter(|w| !known && largest(w) > 0.0) {
        out.extend([guess(wall, Role::Wall, GuessReason::LargestOutline)]);
        for i in unnamed.iter().filter(|i| **i != wall) {
            let inside = loops.get(i).into_iter().flatten().filter(|(b, _)| {
                loops[&wall].iter().any(|(w, _)| w.contains(b.center()) && w.area() > b.area())
            });
            let n = inside.count();
            if n > 0 {
                out.extend([guess(*i, Role::Window, GuessReason::InsideWalls { outlines: n })]);
            }
        }
    }
    out.into_values().collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_in_several_languages_speak_for_roles() {
        for (name, role) in [
            ("A-WALL", Role::Wall),
            ("外壁", Role::Wall),
            ("建具", Role::Window),
            ("Fenster", Role::Window),
            ("xref$0$A-DOOR", Role::Door),
            ("COTAS", Role::Dimension),
            ("Dach", Role::Roof),
            ("A-WALL-PATT", Role::Texture),
        ] {
            assert_eq!(by_name(name).map(|g| g.0), Some(role), "{name}");
        }
        assert_eq!(by_name("3"), None);
    }
}
