//! How a text reads as the title of a view, by its words.

use crate::extract::facing::{named, of_word, words};
use crate::finding::views::OtherView;
use crate::model::elevation_words::{plain, says_elevation};

/// What a title says its view is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Shows {
    /// An elevation, or it does not say.
    Elevation,
    /// What is not sided.
    Other(OtherView),
}

/// How much a text says, the most telling first: of texts that could name a view an earlier one does.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Telling {
    /// What the view shows, and from which side or which one: a title whatever its size.
    Side,
    /// What the view shows.
    Sort,
    /// A side alone.
    SideAlone,
    /// Several views: the name of a sheet.
    Sheet,
}

/// A text as a title.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Reads {
    pub(super) shows: Shows,
    pub(super) telling: Telling,
}

/// Words for a view, which with a side name an elevation (from memory).
const VIEW: [&str; 13] = [
    "view", "elev", "elevs", "vista", "vue", "widok", "pohled", "vy", "side", "seite", "zijde",
    "lado", "cote",
];
/// Words for what is no elevation, in the languages drawings often come in (general dictionaries; those of
/// the last lines from memory). Without accents.
const OTHERS: [(OtherView, &str); 29] = [
    (OtherView::Plan, "floor plan"),
    (OtherView::Plan, "plan"),
    (OtherView::Plan, "grundriss"),
    (OtherView::Plan, "lageplan"),
    (OtherView::Plan, "planta"),
    (OtherView::Plan, "pianta"),
    (OtherView::Plan, "plattegrond"),
    (OtherView::Plan, "planritning"),
    (OtherView::Plan, "rzut"),
    (OtherView::Plan, "平面"),
    (OtherView::Plan, "伏図"),
    (OtherView::Section, "section"),
    (OtherView::Section, "schnitt"),
    (OtherView::Section, "coupe"),
    (OtherView::Section, "seccion"),
    (OtherView::Section, "secao"),
    (OtherView::Section, "corte"),
    (OtherView::Section, "sezione"),
    (OtherView::Section, "doorsnede"),
    (OtherView::Section, "sektion"),
    (OtherView::Section, "przekroj"),
    (OtherView::Section, "断面"),
    (OtherView::Section, "剖面"),
    (OtherView::Section, "矩計"),
    (OtherView::Detail, "detail"),
    (OtherView::Detail, "detalle"),
    (OtherView::Detail, "detalhe"),
    (OtherView::Detail, "dettaglio"),
    (OtherView::Detail, "詳細"),
];
/// Words for rooms and what is built into them, of which elevations are drawn too; whole words
/// (from memory).
const INTERIOR: [&str; 14] = [
    "interior",
    "interiors",
    "interieur",
    "innen",
    "innenansicht",
    "interno",
    "kitchen",
    "bath",
    "bathroom",
    "cabinet",
    "cabinets",
    "casework",
    "millwork",
    "vanity",
];
/// Words that send a reader elsewhere: of notes, not of titles (from memory).
const NOTES: [&str; 12] = [
    "see", "refer", "ref", "per", "note", "notes", "same", "match", "siehe", "voir", "vedi", "zie",
];
/// Words that may stand beside a side in a title of nothing else (from memory).
const BESIDE: [&str; 10] =
    ["side", "of", "the", "house", "facing", "seite", "zijde", "lado", "lateral", "cote"];
/// Between two sides they make two views of them (from memory).
const AND: [&str; 9] = ["and", "und", "et", "y", "e", "en", "i", "og", "och"];

/// A title has no more words than this; a note has (common practice, no source).
const MOST_WORDS: usize = 7;

/// How a text reads as a title, if it does.
pub(super) fn reads(name: &str) -> Option<Reads> {
    let low = plain(name);
    if low.split_whitespace().count() > MOST_WORDS {
        return None;
    }
    let whole = |list: &[&str]| words(&low).any(|w| list.contains(&w));
    let strong = says_elevation(&low);
    let sides = named(name);
    let beside = |w: &str| of_word(w).is_some() || BESIDE.contains(&w);
    if !strong && sides.len() == 1 && words(&low).all(beside) {
        return Some(Reads { shows: Shows::Elevation, telling: Telling::SideAlone });
    }
    if strong || (!sides.is_empty() && other(&low).is_none() && whole(&VIEW)) {
        if whole(&INTERIOR) {
            let shows = Shows::Other(OtherView::Interior);
            return Some(Reads { shows, telling: Telling::Side });
        }
        if sides.is_empty() && is_height(&low) {
            return None;
        }
        let one = sides.len() == 1 || words(&low).any(is_mark);
        let telling = if several(&low, sides.len()) {
            Telling::Sheet
        } else if (one || sides.len() == 2) && !whole(&NOTES) {
            Telling::Side
        } else {
            Telling::Sort
        };
        return Some(Reads { shows: Shows::Elevation, telling });
    }
    let shows = Shows::Other(other(&low)?);
    Some(Reads { shows, telling: Telling::Sort })
}

/// Which other view a plain text names.
fn other(low: &str) -> Option<OtherView> {
    let word = |w: &str| {
        let latin = w.chars().all(char::is_alphabetic) && w.is_ascii();
        // Short Latin words only whole: "plan" is no part of "planter".
        if latin && w.len() < 6 { words(low).any(|t| t == w) } else { low.contains(w) }
    };
    OTHERS.iter().find(|(_, w)| word(w)).map(|(view, _)| *view)
}

/// Whether a word is what views are counted by: `A`, `2`.
fn is_mark(word: &str) -> bool {
    let letters = word.len() == 1 && word.chars().all(|c| c.is_ascii_alphabetic());
    letters || (word.len() <= 2 && word.chars().all(|c| c.is_ascii_digit()))
}

/// Whether a plain text names several views: more than one side with a word or mark between them, or the
/// plural of a view without a side or with one that another line goes on from (`ELEVATIONS - SOUTH &`).
fn several(low: &str, sides: usize) -> bool {
    let parted = low.contains(['&', '+', '/', ',']) || words(low).any(|w| AND.contains(&w));
    let plural = words(low).any(|w| {
        matches!(w, "elevations" | "elevs" | "facades" | "fachadas" | "alzados" | "ansichten")
    });
    match sides {
        0 => plural,
        1 => plural && parted,
        more => parted || plural || more > 3,
    }
}

/// Whether a plain text gives a height, as `ELEVATION 100'-0"` or `ELEV. 98.50` does.
fn is_height(low: &str) -> bool {
    low.split_whitespace().any(|w| {
        let digits = w.chars().filter(char::is_ascii_digit).count();
        let marked = w.contains(['\'', '"', '.', '\u{2032}', '\u{2033}']);
        digits > 2 || (digits > 0 && marked && !w.ends_with('.'))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn titles_tell_elevations_from_plans_in_several_languages() {
        for name in [
            "FRONT ELEVATION",
            "Südansicht",
            "南立面図",
            "Fachada norte",
            "Façade est",
            "ÉLÉVATION AVANT",
            "Alçado lateral direito",
            "VISTA FRONTAL",
            "Prospetto nord",
            "Linkerzijgevel",
            "Elewacja północna",
            "LEFT SIDE ELEV.",
            "ELEVATION A",
            "Partial North Elevation - Low Wing",
            "NORTHWEST ELEVATION",
            "SOUTH ELEVATION SCALE 1/4\" = 1'-0\"",
        ] {
            let reads = reads(name).map(|r| r.shows);
            assert_eq!(reads, Some(Shows::Elevation), "{name}");
        }
        for (name, kind) in [
            ("FIRST FLOOR PLAN", OtherView::Plan),
            ("SECTION A-A", OtherView::Section),
            ("Grundriss EG", OtherView::Plan),
            ("1階平面図", OtherView::Plan),
            ("WALL DETAIL", OtherView::Detail),
            ("DÉTAIL 3", OtherView::Detail),
            ("KITCHEN ELEVATION - NORTH", OtherView::Interior),
            ("INTERIOR ELEVATIONS", OtherView::Interior),
        ] {
            assert_eq!(reads(name).map(|r| r.shows), Some(Shows::Other(kind)), "{name}");
        }
        for name in [
            "PLANTER BOX",
            "see the elevation for all the heights of the sills",
            "ELEVATION 100'-0\"",
            "ELEVATION: 812.50",
            "TOP OF WALL",
            "FRONT DOOR",
        ] {
            assert_eq!(reads(name), None, "{name}");
        }
    }

    #[test]
    fn the_name_of_a_sheet_and_a_side_alone_tell_less_than_a_title() {
        for (name, telling) in [
            ("NORTH ELEVATION", Telling::Side),
            ("ELEVATION 2", Telling::Side),
            ("ELEVATION", Telling::Sort),
            ("SEE NORTH ELEVATION", Telling::Sort),
            ("NORTH", Telling::SideAlone),
            ("LEFT SIDE", Telling::SideAlone),
            ("ELEVATIONS - SOUTH & EAST", Telling::Sheet),
            ("EXTERIOR ELEVATIONS", Telling::Sheet),
        ] {
            assert_eq!(reads(name).map(|r| r.telling), Some(telling), "{name}");
        }
    }
}
