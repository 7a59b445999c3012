//! Words for the side of a house that an elevation shows, in the languages drawings often come in (general
//! dictionaries, from memory).

use crate::model::elevation_words::plain;

/// The side of a house that an elevation shows. Left and right are those of a person who faces the front.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Facing {
    Front,
    Right,
    Rear,
    Left,
    South,
    East,
    North,
    West,
}

/// The two ways to name the four sides, in wrap order seen from outside: each one's right edge is the next
/// one's left.
pub(super) const WRAPS: [[Facing; 4]; 2] = [
    [Facing::Front, Facing::Right, Facing::Rear, Facing::Left],
    [Facing::South, Facing::East, Facing::North, Facing::West],
];

/// Words without accents, whole or before one of [`JOINED`]; those in letters without case count as parts.
const WORDS: [(Facing, &[&str]); 8] = [
    (
        Facing::Front,
        &[
            "front",
            "frontal",
            "frontale",
            "frente",
            "principal",
            "principale",
            "delantera",
            "avant",
            "anterior",
            "anteriore",
            "vorder",
            "vorne",
            "voor",
            "vooraanzicht",
            "voorgevel",
            "voorzijde",
            "frontowa",
            "przednia",
            "framsida",
            "forside",
            "predni",
            "главный",
            "正面",
        ],
    ),
    (
        Facing::Right,
        &[
            "right",
            "derecha",
            "derecho",
            "droite",
            "rechts",
            "rechte",
            "rechter",
            "destra",
            "destro",
            "direita",
            "direito",
            "prawa",
            "prawy",
            "hoger",
            "hojre",
            "hoyre",
            "правый",
        ],
    ),
    (
        Facing::Rear,
        &[
            "rear",
            "back",
            "trasera",
            "trasero",
            "traseira",
            "posterior",
            "posteriore",
            "arriere",
            "ruck",
            "ruckseite",
            "hinten",
            "hinter",
            "achter",
            "achtergevel",
            "achterzijde",
            "retro",
            "fundos",
            "tylna",
            "baksida",
            "bagside",
            "zadni",
            "задний",
            "背面",
        ],
    ),
    (
        Facing::Left,
        &[
            "left",
            "izquierda",
            "izquierdo",
            "gauche",
            "links",
            "linke",
            "linker",
            "sinistra",
            "sinistro",
            "esquerda",
            "esquerdo",
            "lewa",
            "lewy",
            "vanster",
            "venstre",
            "левый",
        ],
    ),
    (
        Facing::South,
        &[
            "south",
            "southern",
            "sur",
            "sud",
            "suden",
            "zuid",
            "zuiden",
            "sul",
            "syd",
            "soder",
            "sodra",
            "poludniowa",
            "etelaan",
            "jizni",
            "южный",
            "南",
        ],
    ),
    (
        Facing::East,
        &[
            "east",
            "eastern",
            "este",
            "est",
            "ost",
            "osten",
            "oost",
            "oosten",
            "leste",
            "oster",
            "ostra",
            "wschodnia",
            "itaan",
            "vychodni",
            "восточный",
            "東",
            "东",
        ],
    ),
    (
        Facing::North,
        &[
            "north",
            "northern",
            "norte",
            "nord",
            "norden",
            "noord",
            "noorden",
            "norr",
            "norra",
            "polnocna",
            "pohjoiseen",
            "severni",
            "северный",
            "北",
        ],
    ),
    (
        Facing::West,
        &[
            "west",
            "western",
            "westen",
            "oeste",
            "ouest",
            "ovest",
            "vest",
            "vaster",
            "vastra",
            "zachodnia",
            "lanteen",
            "zapadni",
            "западный",
            "西",
        ],
    ),
];

/// What a word for a side is joined to in one word: German, Dutch and Swedish.
const JOINED: [&str; 9] =
    ["ansicht", "seite", "fassade", "gevel", "zijgevel", "aanzicht", "zijde", "fasad", "fasaden"];

/// Words of a text that is [`plain`].
pub(super) fn words(plain: &str) -> impl Iterator<Item = &str> {
    plain.split(|c: char| !c.is_alphanumeric()).filter(|w| !w.is_empty())
}

fn is_wide(word: &str) -> bool {
    word.chars().all(|c| c >= '\u{2e80}')
}

/// The side that a plain word names.
pub(super) fn of_word(word: &str) -> Option<Facing> {
    let stem = JOINED.iter().filter_map(|j| word.strip_suffix(j)).min_by_key(|s| s.len());
    let is = |w: &&str| {
        word == *w || stem == Some(*w) || is_wide(w) && is_wide(word) && word.contains(*w)
    };
    WORDS.iter().find(|(_, words)| words.iter().any(&is)).map(|(f, _)| *f)
}

/// The sides that a text names, each once, in wrap order.
pub(super) fn named(text: &str) -> Vec<Facing> {
    let plain = plain(text);
    let mut all = words(&plain).peekable();
    let mut out = Vec::new();
    while let Some(word) = all.next() {
        // French "sur rue" is on the street; Spanish "alzado sur" the south.
        if word != "sur" || all.peek().is_none() {
            out.extend(of_word(word));
        }
    }
    out.sort_unstable();
    out.dedup();
    out
}

/// A name with left for right and east for west, and the other way round; words keep their capitals.
pub(super) fn mirrored(name: &str) -> String {
    let mut out = String::new();
    let mut word = String::new();
    for c in name.chars().chain([' ']) {
        if c.is_alphanumeric() {
            word.push(c);
            continue;
        }
        out.push_str(&other_hand(&word).unwrap_or_else(|| word.clone()));
        word.clear();
        out.push(c);
    }
    out.pop();
    out
}

/// The word for the other hand, in the same language.
fn other_hand(word: &str) -> Option<String> {
    let folded = plain(word);
    let side = of_word(&folded)?;
    let other = match side {
        Facing::Left => Facing::Right,
        Facing::Right => Facing::Left,
        Facing::East => Facing::West,
        Facing::West => Facing::East,
        Facing::Front | Facing::Rear | Facing::South | Facing::North => return None,
    };
    let pair = OTHER_HANDS.iter().find_map(|(a, b)| {
        let rest = |w: &str| folded.strip_prefix(w).filter(|r| r.is_empty() || JOINED.contains(r));
        rest(a).map(|r| format!("{b}{r}")).or_else(|| rest(b).map(|r| format!("{a}{r}")))
    });
    // A word of another language is told in English, so that the side is never wrong.
    let other = pair.unwrap_or_else(|| format!("{other:?}").to_lowercase());
    let mut letters = word.chars();
    let first = letters.next().is_some_and(char::is_uppercase);
    Some(match (first, letters.any(char::is_uppercase)) {
        (true, true) => other.to_uppercase(),
        (true, false) => other[..1].to_uppercase() + &other[1..],
        (false, _) => other,
    })
}

/// Pairs of words for the two hands, and for east and west.
const OTHER_HANDS: [(&str, &str); 24] = [
    ("right", "left"),
    ("derecha", "izquierda"),
    ("derecho", "izquierdo"),
    ("droite", "gauche"),
    ("rechter", "linker"),
    ("rechte", "linke"),
    ("rechts", "links"),
    ("destra", "sinistra"),
    ("destro", "sinistro"),
    ("direita", "esquerda"),
    ("direito", "esquerdo"),
    ("prawa", "lewa"),
    ("prawy", "lewy"),
    ("hoger", "vanster"),
    ("hojre", "venstre"),
    ("east", "west"),
    ("eastern", "western"),
    ("osten", "westen"),
    ("oster", "vaster"),
    ("ostra", "vastra"),
    ("est", "ouest"),
    ("este", "oeste"),
    ("wschodnia", "zachodnia"),
    ("vychodni", "zapadni"),
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sides_are_named_in_several_languages() {
        for (text, side) in [
            ("FRONT ELEVATION", Facing::Front),
            ("Vorderansicht", Facing::Front),
            ("Élévation avant", Facing::Front),
            ("FACHADA PRINCIPAL", Facing::Front),
            ("Vista frontal", Facing::Front),
            ("Rückansicht", Facing::Rear),
            ("Achtergevel", Facing::Rear),
            ("Linkerzijgevel", Facing::Left),
            ("Alçado lateral direito", Facing::Right),
            ("Südansicht", Facing::South),
            ("FASAD MOT ÖSTER", Facing::East),
            ("Elewacja północna", Facing::North),
            ("Prospetto ovest", Facing::West),
            ("南立面図", Facing::South),
        ] {
            assert_eq!(named(text), [side], "{text}");
        }
        assert_eq!(named("Frontage road"), []);
        assert_eq!(named("Alzado sur"), [Facing::South]);
        assert_eq!(named("Façade sur rue"), []);
        assert_eq!(named("ELEVATIONS - SOUTH & EAST"), [Facing::South, Facing::East]);
    }

    #[test]
    fn the_other_hand_has_the_other_name_and_the_rest_stays() {
        for (drawn, built) in [
            ("LEFT ELEVATION B", "RIGHT ELEVATION B"),
            ("Right Side", "Left Side"),
            ("FRONT (EAST)", "FRONT (WEST)"),
            ("Alzado lateral derecho", "Alzado lateral izquierdo"),
            ("Linkerzijgevel", "Rechterzijgevel"),
            ("REAR ELEVATION", "REAR ELEVATION"),
            ("Ost", "West"),
        ] {
            assert_eq!(mirrored(drawn), built);
            assert_eq!(named(&mirrored(drawn)).len(), named(drawn).len());
        }
    }
}
