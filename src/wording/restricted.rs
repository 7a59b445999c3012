//! Restricted access: how panels get in.

use super::lists::courses_in;
use crate::language::{Language, Said, said};
use crate::model::corner::Hand;
use crate::model::work::{AccessSide, InstallMethod, RestrictedAccess};
use crate::units::LengthStyle;

/// The mark on a drawing.
pub const MARK: Said = said("restricted", "restringido");

/// What the mark means.
pub const LEGEND: Said = said(
    "restricted: restricted access, how to install: see the order of work (common practice)",
    "restringido: acceso restringido, cómo instalar: vea el orden de trabajo (práctica común)",
);

/// Where it is and how it is done.
pub fn sentence(lang: Language, place: &RestrictedAccess, style: LengthStyle) -> String {
    let [left, right] = &place.between;
    let wide = style.short(place.x[1] - place.x[0]);
    let list = if place.to_course > place.from_course {
        say!(lang, "courses {} to {}", "hileras {} a {}", place.from_course, place.to_course)
    } else {
        courses_in(lang, &[place.from_course])
    };
    say!(
        lang,
        "{list}, {wide} between {} and {}: {}",
        "{list}, {wide} entre {} y {}: {}",
        side(lang, left),
        side(lang, right),
        how(lang, place)
    )
}

fn how(lang: Language, place: &RestrictedAccess) -> String {
    match place.install {
        InstallMethod::SlideDown { before_course } => say!(
            lang,
            "fix both receivers and slide the panels down from the top, before course {before_course} closes it",
            "fije los dos canales y deslice los paneles desde arriba, antes de que lo cierre la hilera {before_course}"
        ),
        InstallMethod::SlideUp { before_course } => say!(
            lang,
            "fix both receivers and slide the panels up from below, the topmost first, before course {before_course} goes on under them",
            "fije los dos canales y deslice los paneles desde abajo, primero el de más arriba, antes de poner debajo la hilera {before_course}"
        ),
        InstallMethod::HoldOneReceiver { held } => {
            let held = &place.between[usize::from(held == Hand::Right)];
            say!(
                lang,
                "fix one receiver, hold the one at {} with one nail, put the panels in and nail it home as courses go up",
                "fije un canal, sostenga con un clavo el que toca {}, meta los paneles y clávelo bien conforme suben las hileras",
                side(lang, held)
            )
        }
    }
}

/// What stands beside it.
pub fn side(lang: Language, side: &AccessSide) -> String {
    match side {
        AccessSide::Opening { opening } => opening.to_string(),
        AccessSide::OutsideCorner => {
            said("the outside corner", "la esquina exterior").of(lang).to_owned()
        }
        AccessSide::InsideCorner => {
            said("the inside corner", "la esquina interior").of(lang).to_owned()
        }
        AccessSide::WallEnd => {
            said("the end of the wall", "el extremo de la pared").of(lang).to_owned()
        }
        AccessSide::Fixture { obstacle: Some(id) } => {
            say!(lang, "fixture {id}", "el accesorio {id}")
        }
        AccessSide::Fixture { obstacle: None } => {
            said("a fixture", "un accesorio").of(lang).to_owned()
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_held_receiver_is_named() {
        let place = RestrictedAccess {
            from_course: 5,
            to_course: 5,
            x: [10.0, 20.0],
            y: [32.0, 40.0],
            between: [
                AccessSide::Fixture { obstacle: Some("front-B1".into()) },
                AccessSide::Opening { opening: "front-W1".into() },
            ],
            install: InstallMethod::HoldOneReceiver { held: Hand::Right },
        };
        let words = sentence(Language::English, &place, LengthStyle::Feet);
        assert!(words.starts_with("course 5, 10\" between fixture front-B1 and front-W1: fix one"));
        assert!(words.contains("hold the one at front-W1 with one nail"), "{words}");
        let down = InstallMethod::SlideDown { before_course: 10 };
        let words = sentence(
            Language::English,
            &RestrictedAccess { to_course: 9, install: down, ..place },
            LengthStyle::Mm,
        );
        assert!(words.starts_with("courses 5 to 9, 254 mm between "), "{words}");
        assert!(words.ends_with("down from the top, before course 10 closes it"), "{words}");
    }
}
