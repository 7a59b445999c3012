//! The drawing convention as one page: what to draw, on which layer, with a small example.

use super::canvas::{Canvas, wrapped};
use super::style::{HEADING, Ink, TEXT};
use crate::geom::vocabulary::{Point, Rect};
use crate::job::layers::AGREED_LAYERS;
use crate::model::linework::Role;
use crate::model::sheet::Sheet;

/// Page, inches: ANSI B on its side (`DrawingFact::ArchitecturalPaper`).
const WIDTH: f64 = 17.0;
const HEIGHT: f64 = 11.0;
const LINE: f64 = TEXT * 1.7;
const LEFT: f64 = 0.8;
/// Where the table of layers begins.
const TABLE: f64 = 8.9;

/// What is drawn for each role. The number is that of the callout in the example, 0 for none.
const DRAWN: [(Role, u8, &str); 17] = [
    (
        Role::Wall,
        1,
        "Each plane area to side as one closed outline: corner to corner, foundation or sill line to soffit or rake. A part that stands forward is an outline of its own.",
    ),
    (
        Role::Bare,
        2,
        "Closed outline of stone, brick or other cladding on a wall; it takes no lap siding.",
    ),
    (Role::Band, 0, "Closed outline of a band board, frieze or water table across a wall."),
    (Role::Joint, 0, "Upright line where siding must not bridge a joint of the building."),
    (
        Role::Window,
        3,
        "Each window as an inserted block or a closed loop, at the edge that the channel follows.",
    ),
    (Role::Door, 4, "Each door likewise, down to its sill; overhead doors too."),
    (
        Role::Roof,
        5,
        "Closed outline of a lower roof, deck or slab where it meets a wall and hides part of it.",
    ),
    (Role::MountingBlock, 6, "Fixtures with a mounting block: lights, vents, hose bibs."),
    (Role::Obstacle, 7, "Fixtures without one: meters, panels, ledgers."),
    (
        Role::Level,
        8,
        "One level line across each elevation, at the same floor in all: courses meet at the corners by it.",
    ),
    (Role::Grade, 9, "Finished grade as an open line along the foot of the walls."),
    (Role::InsideCorner, 0, "Upright line on a wall's edge that is an inside corner."),
    (
        Role::CornerTag,
        10,
        "A short text near the foot of a corner, the same in both elevations that show it.",
    ),
    (Role::Frame, 11, "A closed rectangle round each elevation, where several share the file."),
    (Role::Title, 12, "The elevation's name, as one text inside its frame or below it."),
    (
        Role::Texture,
        0,
        "Drawn siding, as hatches: a texture. Walls are read from it where no outline is drawn.",
    ),
    (Role::Dimension, 0, "Dimensions: read as evidence of the scale, never laid out from."),
];

const RULES: [&str; 10] = [
    "Draw full size in model space, and let the header say the unit (inch, foot, mm, cm or m).",
    "Close every outline: end points meet exactly. Gaps to 1/16 in are joined and listed; larger ones stop the reading with their place.",
    "Draw each elevation square on, as one looks at it from outside, all the same way up.",
    "Put nothing of a section, plan or detail inside an elevation's frame.",
    "Draw walls to the face that the siding lies on; say casing widths that lie outside the drawn openings.",
    "Leave off or frozen what shall not be read; hidden layers are left alone and named.",
    "Arcs, ellipses and splines are read as curves; a dimension whose text was typed over stops the reading.",
    "R12 to R2018, ASCII or binary DXF, or an SVG whose groups bear these names.",
    "Other cladding (shingles, board and batten, another siding): closed outlines on a layer of its own, or regions given in job.toml; name it there as a zone.",
    "Other layer names do as well: name them in job.toml under [layers]; `lapwright layers DRAWING --suggest` makes a beginning.",
];

/// The convention as a page.
pub fn convention() -> Sheet {
    let mut canvas = Canvas::new(Rect::new(0.0, 0.0, WIDTH, HEIGHT));
    canvas.rect(Ink::Border, Rect::new(0.4, 0.4, WIDTH - 0.4, HEIGHT - 0.4));
    let title = "How to draw elevations for a siding layout";
    canvas.left(title, HEADING * 1.3, true, Point::new(LEFT, HEIGHT - 0.8));
    example(&mut canvas);
    rules(&mut canvas);
    table(&mut canvas);
    canvas.finish_marks();
    Sheet {
        name: "convention".to_owned(),
        title: title.to_owned(),
        description: "What to draw on which layer, with an example elevation.".to_owned(),
        width: WIDTH,
        height: HEIGHT,
        drawing: canvas.drawing,
    }
}

/// The layer names of a role as they are written in a drawing.
fn names(role: Role) -> String {
    let all: Vec<&str> =
        AGREED_LAYERS.iter().filter(|(r, p)| *r == role && !p.contains('*')).map(|a| a.1).collect();
    all.join(", ")
}

fn table(canvas: &mut Canvas) {
    canvas.left("Layers", HEADING, true, Point::new(TABLE, HEIGHT - 0.85));
    let mut y = HEIGHT - 1.2;
    for (role, number, words) in DRAWN {
        if number > 0 {
            canvas.right(&number.to_string(), TEXT, true, Point::new(TABLE + 0.22, y));
        }
        canvas.left(&names(role), TEXT, true, Point::new(TABLE + 0.35, y));
        let indent = TABLE + 2.35;
        for line in wrapped(words, TEXT, WIDTH - 0.6 - indent) {
            canvas.left(&line, TEXT, false, Point::new(indent, y));
            y -= LINE;
        }
        y -= LINE * 0.55;
    }
    let rest = "Also left alone: A-ANNO-*, A-DETL*, other A-ROOF*, A-ELEV, A-ELEV-OTLN, DEFPOINTS and Z-*.";
    canvas.left(rest, TEXT, false, Point::new(TABLE, y - LINE * 0.5));
}

fn rules(canvas: &mut Canvas) {
    let mut y = 4.1;
    canvas.left("Rules", HEADING, true, Point::new(LEFT, y));
    y -= 0.3;
    for (i, rule) in RULES.iter().enumerate() {
        canvas.left(&format!("{}.", i + 1), TEXT, false, Point::new(LEFT, y));
        for line in wrapped(rule, TEXT, TABLE - LEFT - 0.9) {
            canvas.left(&line, TEXT, false, Point::new(LEFT + 0.25, y));
            y -= LINE;
        }
        y -= LINE * 0.4;
    }
}

/// A made-up front: paper inches.
fn example(canvas: &mut Canvas) {
    let p = |x: f64, y: f64| Point::new(1.9 + x, 5.2 + y);
    let ring = |r: [(f64, f64); 4]| r.map(|(x, y)| p(x, y));
    let rect = |x0: f64, y0: f64, x1: f64, y1: f64| ring([(x0, y0), (x1, y0), (x1, y1), (x0, y1)]);
    canvas.ring(Ink::Rule, &rect(-0.6, -0.75, 5.6, 4.6));
    canvas.ring(
        Ink::Wall,
        &[(0.0, 0.0), (5.0, 0.0), (5.0, 2.6), (2.5, 4.1), (0.0, 2.6)].map(|(x, y)| p(x, y)),
    );
    canvas.ring(Ink::Wall, &rect(3.9, 0.0, 5.0, 0.5));
    canvas.ring(Ink::Opening, &rect(0.5, 1.0, 1.5, 2.2));
    canvas.ring(Ink::Opening, &rect(2.2, 0.0, 3.0, 1.9));
    canvas.ring(
        Ink::Channel,
        &[(1.9, 2.1), (3.3, 2.1), (3.1, 2.45), (2.1, 2.45)].map(|(x, y)| p(x, y)),
    );
    canvas.ring(Ink::Opening, &rect(3.25, 1.5, 3.4, 1.7));
    canvas.ring(Ink::Opening, &rect(4.2, 0.9, 4.5, 1.4));
    canvas.line(Ink::Level, p(-0.4, 0.25), p(5.4, 0.25));
    canvas.chain(Ink::Grade, &[(-0.4, -0.15), (2.0, -0.15), (5.4, -0.25)].map(|(x, y)| p(x, y)));
    canvas.centred("A", TEXT, false, p(0.12, 0.12));
    canvas.centred("B", TEXT, false, p(4.88, 0.12));
    canvas.centred("FRONT", HEADING, true, p(2.5, -0.5));
    for (number, at, foot) in [
        ("1", (0.55, 3.35), (0.75, 3.05)),
        ("2", (5.25, 0.75), (4.8, 0.4)),
        ("3", (1.75, 1.9), (1.5, 1.75)),
        ("4", (1.9, 0.6), (2.2, 0.75)),
        ("5", (3.75, 2.6), (3.2, 2.3)),
        ("6", (3.65, 1.9), (3.4, 1.65)),
        ("7", (4.75, 1.6), (4.5, 1.35)),
        ("8", (-0.4, 0.55), (-0.2, 0.25)),
        ("9", (-0.4, -0.45), (-0.2, -0.15)),
        ("10", (0.45, 0.45), (0.2, 0.2)),
        ("11", (5.3, 4.3), (5.6, 4.1)),
        ("12", (3.5, -0.5), (2.95, -0.5)),
    ] {
        canvas.line(Ink::Dimension, p(at.0, at.1), p(foot.0, foot.1));
        canvas.on_ground(number, TEXT * 1.2, p(at.0, at.1));
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::drawing::Shape;

    #[test]
    fn every_role_but_the_ignored_is_explained_by_a_layer_name() {
        for (role, pattern) in AGREED_LAYERS {
            assert!(role == Role::Ignore || DRAWN.iter().any(|d| d.0 == role), "{pattern}");
        }
        assert!(DRAWN.iter().all(|d| !names(d.0).is_empty()));
    }

    #[test]
    fn all_text_lies_on_the_page() {
        let s = convention();
        for i in &s.drawing.items {
            let Shape::Text(t) = &i.shape else { continue };
            let w = crate::typeface::width(&t.content, t.height, t.bold);
            assert!(t.at.x > 0.4 && t.at.x + w < WIDTH - 0.4 + w / 2.0, "{}", t.content);
            assert!((0.5..HEIGHT - 0.4).contains(&t.at.y), "{} at {}", t.content, t.at.y);
        }
    }
}
