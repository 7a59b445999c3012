//! The quick start as one page.

use super::canvas::{Canvas, wrapped};
use super::style::{HEADING, Ink, TEXT, TITLE};
use crate::geom::vocabulary::{Point, Rect};
use crate::model::sheet::Sheet;
use crate::wording::quick_start as words;

/// Page, inches: ANSI A upright (`DrawingFact::ArchitecturalPaper`).
const WIDTH: f64 = 8.5;
const HEIGHT: f64 = 11.0;
const LEFT: f64 = 0.9;
const LINE: f64 = TEXT * 1.8;

/// The page.
pub fn quick_start() -> Sheet {
    let mut c = Canvas::new(Rect::new(0.0, 0.0, WIDTH, HEIGHT));
    c.rect(Ink::Border, Rect::new(0.5, 0.5, WIDTH - 0.5, HEIGHT - 0.5));
    c.left(words::TITLE, TITLE, true, Point::new(LEFT, HEIGHT - 1.0));
    let room = WIDTH - 2.0 * LEFT;
    let mut y = HEIGHT - 1.5;
    for (step, command, result) in words::STEPS {
        c.left(step, HEADING, true, Point::new(LEFT, y));
        y -= 0.27;
        for line in wrapped(command, TEXT, room - 0.5) {
            c.left(&line, TEXT, true, Point::new(LEFT + 0.25, y));
            y -= LINE;
        }
        y -= 0.03;
        for line in wrapped(result, TEXT, room - 0.25) {
            c.left(&line, TEXT, false, Point::new(LEFT + 0.25, y));
            y -= LINE;
        }
        y -= 0.2;
    }
    let lines = wrapped(words::CAUTION, TEXT, room);
    for (i, line) in lines.iter().rev().enumerate() {
        c.left(line, TEXT, true, Point::new(LEFT, 0.75 + i as f64 * LINE));
    }
    c.finish_marks();
    Sheet {
        full_size: false,
        name: "quick-start".to_owned(),
        title: words::TITLE.to_owned(),
        description: words::DESCRIPTION.to_owned(),
        width: WIDTH,
        height: HEIGHT,
        drawing: c.drawing,
    }
}
