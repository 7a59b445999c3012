//! Guesses at what layers mean, from their names in several languages and from what is drawn on
//! them: a beginning for the user's own map. Each is tried by reading before it is told.

use std::collections::{BTreeMap, BTreeSet};

use crate::geom::polygon::{bounds, signed_area};
use crate::geom::vocabulary::{CurveShape, Point, Rect};
use crate::model::drawing::{Drawing, Shape, Space};
use crate::model::guess::{GuessReason, LayerGuess};
use crate::model::layer_name::own_name;
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

/// Parts of names of layers that hold words about things (general dictionaries).
const ASIDES: [&str; 6] = ["iden", "tag", "text", "anno", "note", "symb"];

fn by_name(name: &str) -> Option<(Role, &'static str)> {
    // Names bound from references and their prefixes say nothing.
    let name = own_name(name).to_lowercase();
    // What names a window is none.
    if ASIDES.iter().any(|w| name.contains(w)) {
        return None;
    }
    let first = |(role, words): &(Role, &[&'static str])| {
        words.iter().find(|w| name.contains(**w)).map(|w| (*role, *w))
    };
    WORDS.iter().find_map(first)
}

/// The opening that the name of a layer speaks of.
pub(super) fn opening_by_name(name: &str) -> Option<Role> {
    by_name(name).map(|(role, _)| role).filter(|r| r.is_thing())
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
    let borders = borders(drawing, &loops);
    let largest = |i: &usize| {
        loops
            .get(i)
            .filter(|_| !borders.contains(i))
            .map_or(0.0, |l| l.iter().map(|o| o.1).fold(0.0, f64::max))
    };
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

/// Layers whose largest outline is a border: a rectangle round as good as all that is drawn on others,
/// texts among it.
fn borders(drawing: &Drawing, loops: &BTreeMap<usize, Vec<(Rect, f64)>>) -> BTreeSet<usize> {
    let model = || drawing.items.iter().filter(|i| i.space == Space::Model);
    let is_border = |layer: usize, outline: &Rect| {
        let others =
            || model().filter(|i| i.layer != layer).filter_map(|i| Some((i, place(&i.shape)?)));
        let texts = || others().filter(|(i, _)| matches!(i.shape, Shape::Text(_)));
        let inside = |p: Point| outline.contains(p);
        let all = others().count();
        let within = others().filter(|(_, p)| inside(*p)).count();
        let said = texts().count();
        all > 0
            && said > 0
            && 20 * within >= 19 * all
            && texts().filter(|(_, p)| inside(*p)).count() == said
    };
    let largest = loops.iter().filter_map(|(layer, all)| {
        let widest = all.iter().max_by(|a, b| a.1.total_cmp(&b.1))?;
        Some((*layer, widest.0)).filter(|_| widest.1 > 0.98 * widest.0.area())
    });
    largest.filter(|(layer, outline)| is_border(*layer, outline)).map(|(layer, _)| layer).collect()
}

/// About where a shape is.
fn place(shape: &Shape) -> Option<Point> {
    match shape {
        Shape::Polyline(p) => {
            bounds(&p.vertices.iter().map(|v| v.at).collect::<Vec<_>>()).map(|b| b.center())
        }
        Shape::Curve(path) => Some(path.bounding_box().center()),
        Shape::Hatch(h) => Some(h.bounds().center()),
        Shape::Text(t) => Some(t.at),
        Shape::Dimension(d) => Some(d.line),
        Shape::Point(p) => Some(*p),
    }
}

/// Layers that show siding by what is drawn: hatches with level lines, or level lines at many heights. The
/// fullest first.
pub fn siding_layers(drawing: &Drawing, layers: &[LayerUse]) -> Vec<LayerGuess> {
    let free = |i: usize| {
        layers.get(i).is_some_and(|l| matches!(l.role, None | Some(Role::Texture | Role::Ignore)))
    };
    let mut hatches: BTreeMap<usize, usize> = BTreeMap::new();
    let mut heights: BTreeMap<usize, BTreeSet<i64>> = BTreeMap::new();
    for item in drawing.items.iter().filter(|i| i.space == Space::Model && free(i.layer)) {
        match &item.shape {
            Shape::Hatch(h) if h.level_spacing().is_some() => {
                *hatches.entry(item.layer).or_default() += 1;
            }
            Shape::Polyline(p) if p.vertices.len() == 2 => {
                let run = p.vertices[1].at - p.vertices[0].at;
                if run.y.abs() < 0.001 * run.x.abs() {
                    let height = (p.vertices[0].at.y / run.x.abs() * 1000.0).round() as i64;
                    heights.entry(item.layer).or_default().insert(height);
                }
            }
            _ => {}
        }
    }
    let guess = |i: usize, reason| LayerGuess {
        layer: layers[i].layer.name.clone(),
        role: Role::Wall,
        reason,
    };
    let mut hatched: Vec<(usize, usize)> = hatches.into_iter().collect();
    hatched.sort_by_key(|h| std::cmp::Reverse(h.1));
    let mut lined: Vec<(usize, usize)> =
        heights.into_iter().map(|(i, h)| (i, h.len())).filter(|l| l.1 >= LEAST_HEIGHTS).collect();
    lined.sort_by_key(|l| std::cmp::Reverse(l.1));
    let hatched = hatched.into_iter().take(TRIED);
    let lined = lined.into_iter().take(TRIED);
    hatched
        .map(|(i, hatches)| guess(i, GuessReason::SidingHatches { hatches }))
        .chain(lined.map(|(i, heights)| guess(i, GuessReason::LevelLines { heights })))
        .collect()
}

/// Layers that are tried of each sort.
const TRIED: usize = 3;
/// Fewest heights that level lines of siding stand at: of our own choosing, no source.
const LEAST_HEIGHTS: usize = 6;

/// Layers with the largest closed outlines, the largest first; never a border.
pub fn outline_layers(drawing: &Drawing, layers: &[LayerUse]) -> Vec<LayerGuess> {
    let loops = outlines(drawing);
    let borders = borders(drawing, &loops);
    // A name that says window is no wall's.
    let says_other = |l: &LayerUse| by_name(&l.layer.name).is_some_and(|(r, _)| r != Role::Wall);
    let is_free = |l: &LayerUse| l.role.is_none() && !says_other(l);
    let free = |i: &usize| layers.get(*i).is_some_and(is_free) && !borders.contains(i);
    let mut all: Vec<(usize, f64)> = loops
        .iter()
        .filter(|(i, _)| free(i))
        .map(|(i, l)| (*i, l.iter().map(|o| o.1).fold(0.0, f64::max)))
        .collect();
    all.sort_by(|a, b| b.1.total_cmp(&a.1));
    let guess = |(i, _): (usize, f64)| LayerGuess {
        layer: layers[i].layer.name.clone(),
        role: Role::Wall,
        reason: GuessReason::LargestOutline,
    };
    all.into_iter().take(TRIED).map(guess).collect()
}

/// Guesses with the layers that have their roles by agreed names: a role that a job names is that of no
/// other layer. Walls are those of the guess alone.
pub fn beside_agreed(guesses: Vec<LayerGuess>, layers: &[LayerUse]) -> Vec<LayerGuess> {
    let roles: BTreeSet<Role> =
        guesses.iter().map(|g| g.role).filter(|r| *r != Role::Wall).collect();
    let agreed = layers.iter().filter(|l| l.items > 0).filter_map(|l| {
        let role = l.role.filter(|r| roles.contains(r))?;
        let layer = l.layer.name.clone();
        let taken = guesses.iter().any(|g| g.layer == layer);
        (!taken).then_some(LayerGuess { layer, role, reason: GuessReason::Agreed })
    });
    let mut out: Vec<LayerGuess> = agreed.collect();
    out.extend(guesses);
    out
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
