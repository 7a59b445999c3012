//! Letters put together to words as they stand on a page.

use hayro_interpret::font::GlyphRun;
use hayro_interpret::hayro_cmap::BfString;

use crate::geom::vocabulary::{Affine, Point, Vec2};
use crate::model::drawing::{Across, Text, Up};

/// Letters are drawn in a square of this many units.
const EM: f64 = 1000.0;
/// Height of capitals as a share of that square (common practice: 0.7 to 0.72 in sans faces).
const CAPITALS: f64 = 0.7;
/// Letters farther apart than this share of the square, from start to start, stand in two words.
const WORD: f64 = 1.25;
/// And farther than this in two texts: marks of two grid lines stand as near.
const TEXT: f64 = 1.8;

/// A letter where it stands.
struct Letter {
    at: Point,
    /// Along the line, as long as the square is wide.
    along: Vec2,
    says: String,
}

/// Letters as they come, the last text still open.
#[derive(Default)]
pub(super) struct Words {
    open: Vec<Letter>,
    done: Vec<Text>,
    /// Letters that say nothing: their font does not tell which they are.
    pub(super) mute: usize,
}

impl Words {
    /// Letters of a run that is drawn on the page by a transform.
    pub(super) fn add(&mut self, run: &GlyphRun, transform: Affine) {
        for glyph in run.glyphs() {
            let placed = transform * glyph.transform();
            let says = match glyph.as_unicode() {
                Some(BfString::Char(c)) => c.to_string(),
                Some(BfString::String(s)) => s,
                None => {
                    self.mute += 1;
                    continue;
                }
            };
            let at = placed * Point::ZERO;
            let along = placed * Point::new(EM, 0.0) - at;
            // A length that is no number is in no range.
            if !at.is_finite() || !(1e-6..=1e6).contains(&along.hypot()) {
                continue;
            }
            self.letter(Letter { at, along, says });
        }
    }

    fn letter(&mut self, letter: Letter) {
        if let Some(last) = self.open.last() {
            let em = last.along.hypot();
            let step = letter.at - last.at;
            let unit = last.along / em;
            let (forward, aside) = (step.dot(unit) / em, step.cross(unit).abs() / em);
            let like = (letter.along - last.along).hypot() < 0.02 * em;
            if !(like && aside < 0.2 && (-0.2..TEXT).contains(&forward)) {
                self.close();
            } else if forward > WORD && last.says != " " && letter.says != " " {
                let space = Letter { says: " ".to_owned(), at: last.at, along: last.along };
                self.open.push(space);
            }
        }
        self.open.push(letter);
    }

    fn close(&mut self) {
        let letters = std::mem::take(&mut self.open);
        let Some(first) = letters.iter().find(|l| !l.says.trim().is_empty()) else { return };
        let content: String = letters.iter().map(|l| l.says.as_str()).collect();
        self.done.push(Text {
            at: first.at,
            height: first.along.hypot() * CAPITALS,
            angle: first.along.atan2().to_degrees(),
            mirrored: false,
            content: content.trim().to_owned(),
            across: Across::Left,
            up: Up::Baseline,
            bold: false,
        });
    }

    /// Every text.
    pub(super) fn texts(&mut self) -> Vec<Text> {
        self.close();
        std::mem::take(&mut self.done)
    }
}
