//! Words that name an elevation, in the languages drawings often come in: what titles of views and pages
//! of a set are known by.

/// Words for an elevation (general dictionaries; those of the last lines from memory). Parts of words count,
/// since German and Japanese join them. Without accents.
const ELEVATION: [&str; 24] = [
    "elevation",
    "elevacion",
    "elevacao",
    "elevazione",
    "facade",
    "facciata",
    "fachada",
    "alzado",
    "alcado",
    "ansicht",
    "fassade",
    "prospetto",
    "gevel",
    "aanzicht",
    "fasad",
    "elewacja",
    "julkisivu",
    "homlokzat",
    "fatada",
    "opstalt",
    "立面",
    "입면",
    "фасад",
    "фасади",
];
/// Whether a text that is [`plain`] has a word for an elevation in it.
pub fn says_elevation(plain: &str) -> bool {
    ELEVATION.iter().any(|w| plain.contains(w))
}

/// Lower case, without accents.
pub fn plain(text: &str) -> String {
    let fold = |c: char| match c {
        'á' | 'à' | 'â' | 'ä' | 'ã' | 'å' | 'ą' => 'a',
        'ç' | 'ć' | 'č' => 'c',
        'é' | 'è' | 'ê' | 'ë' | 'ę' | 'ě' => 'e',
        'í' | 'ì' | 'î' | 'ï' => 'i',
        'ł' => 'l',
        'ñ' | 'ń' | 'ň' => 'n',
        'ó' | 'ò' | 'ô' | 'ö' | 'õ' | 'ø' | 'ő' => 'o',
        'ř' => 'r',
        'ś' | 'š' => 's',
        'ú' | 'ù' | 'û' | 'ü' | 'ů' => 'u',
        'ý' => 'y',
        'ź' | 'ż' | 'ž' => 'z',
        _ => c,
    };
    text.to_lowercase().chars().map(fold).collect()
}
