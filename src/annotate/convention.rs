//! The drawing convention as one page: what to draw, on which layer, with a small example.

use super::canvas::{Canvas, wrapped};
use super::style::{HEADING, Ink, TEXT, TITLE};
use crate::geom::vocabulary::{Point, Rect};
use crate::job::layers::AGREED_LAYERS;
use crate::model::linework::Role;
use crate::model::sheet::Sheet;
use crate::wording::convention as words;

/// Page, inches: ANSI B on its side (`DrawingFact::ArchitecturalPaper`).
const WIDTH: f64 = 17.0;
const HEIGHT: f64 = 11.0;
const LINE: f64 = TEXT * 1.7;
const LEFT: f64 = 0.8;
/// Where the table of layers begins.
const TABLE: f64 = 8.9;

/// Roles in the order they are told. The number is that of the callout in the example, 0 for none.
const ROLES: [(Role, u8); 17] = [
    (Role::Wall, 1),
    (Role::Bare, 2),
    (Role::Band, 0),
    (Role::Joint, 0),
    (Role::Window, 3),
    (Role::Door, 4),
    (Role::Roof, 5),
    (Role::MountingBlock, 6),
    (Role::Obstacle, 7),
    (Role::Level, 8),
    (Role::Grade, 9),
    (Role::InsideCorner, 0),
    (Role::CornerTag, 10),
    (Role::Frame, 11),
    (Role::Title, 12),
    (Role::Texture, 0),
    (Role::Dimension, 0),
];

/// The convention as a page.
pub fn convention() -> Sheet {
    let mut canvas = Canvas::new(Rect::new(0.0, 0.0, WIDTH, HEIGHT));
    canvas.rect(Ink::Border, Rect::new(0.4, 0.4, WIDTH - 0.4, HEIGHT - 0.4));
    canvas.left(words::TITLE, TITLE, true, Point::new(LEFT, HEIGHT - 0.8));
    example(&mut canvas);
    rules(&mut canvas);
    table(&mut canvas);
    canvas.finish_marks();
    Sheet {
        full_size: false,
        name: "convention".to_owned(),
        title: words::TITLE.to_owned(),
        description: words::DESCRIPTION.to_owned(),
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
    for (role, number) in ROLES {
        if number > 0 {
            canvas.right(&number.to_string(), TEXT, true, Point::new(TABLE + 0.22, y));
        }
        canvas.left(&names(role), TEXT, true, Point::new(TABLE + 0.35, y));
        let indent = TABLE + 2.35;
        for line in wrapped(words::role(role).unwrap_or_default(), TEXT, WIDTH - 0.6 - indent) {
            canvas.left(&line, TEXT, false, Point::new(indent, y));
            y -= LINE;
        }
        y -= LINE * 0.55;
    }
    canvas.left(words::LEFT_ALONE, TEXT, false, Point::new(TABLE, y - LINE * 0.5));
}

fn rules(canvas: &mut Canvas) {
    let mut y = 4.1;
    canvas.left("Rules", HEADING, true, Point::new(LEFT, y));
    y -= 0.3;
    for (i, rule) in words::RULES.iter().enumerate() {
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
    canvas.centered("A", TEXT, false, p(0.12, 0.12));
    canvas.centered("B", TEXT, false, p(4.88, 0.12));
    canvas.centered("FRONT", HEADING, true, p(2.5, -0.5));
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
        canvas.on_ground(number, TEXT, p(at.0, at.1));
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::drawing::Shape;

    #[test]
    fn every_role_but_the_ignored_is_explained_by_a_layer_name() {
        for (role, pattern) in AGREED_LAYERS {
            assert!(role == Role::Ignore || ROLES.iter().any(|d| d.0 == role), "{pattern}");
            assert_eq!(words::role(role).is_none(), role == Role::Ignore, "{pattern}");
        }
        assert!(ROLES.iter().all(|d| !names(d.0).is_empty()));
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
