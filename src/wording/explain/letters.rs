//! Codes of letters.

use super::entry::Explanation;
use crate::finding::letters::LetterCode;

pub(super) fn explanation(code: LetterCode) -> &'static Explanation {
    match code {
        LetterCode::LettersNotDrawn => &LETTERS_NOT_DRAWN,
    }
}

const LETTERS_NOT_DRAWN: Explanation = Explanation {
    title: "Letters cannot be drawn on the sheets",
    cause: "A name in the drawing or the job has letters that the typeface of the sheets lacks. It has Latin with Vietnamese, Greek, Cyrillic, Armenian, Georgian, Hebrew, Arabic, arrows and signs of mathematics; it has no Chinese, Japanese or Korean, no pictures and no private letters. On the sheets and in the PDF each such letter is a box with a question mark, never nothing. It is a note where only names of layers have them.",
    remedy: "Give the name in another script: titles and client in [title], names of views in [[elevation]] of the job file. Tables, the workbook and the report hold the name as it is written.",
    example: "[title]\nproject = \"\u{6a39}\u{5c4b}\"",
};
