//! Restricted access: how panels get in.

use super::lists::courses;
use crate::model::corner::Hand;
use crate::model::work::{AccessSide, InstallMethod, RestrictedAccess};
use crate::units::LengthStyle;

/// The mark on a drawing.
pub const MARK: &str = "restricted";

/// What the mark means.
pub const LEGEND: &str =
    "restricted: restricted access, how to install: see the order of work (common practice)";

/// Where it is and how it is done.
pub fn sentence(place: &RestrictedAccess, style: LengthStyle) -> String {
    let [left, right] = &place.between;
    let wide = style.short(place.x[1] - place.x[0]);
    let list = if place.to_course > place.from_course {
        format!("courses {} to {}", place.from_course, place.to_course)
    } else {
        courses(&[place.from_course])
    };
    format!("{list}, {wide} between {} and {}: {}", side(left), side(right), how(place))
}

fn how(place: &RestrictedAccess) -> String {
    match place.install {
        InstallMethod::SlideDown { before_course } => format!(
            "fix both receivers and slide the panels down from the top, before course {before_course} closes it"
        ),
        InstallMethod::SlideUp { before_course } => format!(
            "fix both receivers and slide the panels up from below, the topmost first, before course {before_course} goes on under them"
        ),
        InstallMethod::HoldOneReceiver { held } => {
            let held = &place.between[usize::from(held == Hand::Right)];
            format!(
                "fix one receiver, hold the one at {} with one nail, put the panels in and nail it home as courses go up",
                side(held)
            )
        }
    }
}

/// What stands beside it.
pub fn side(side: &AccessSide) -> String {
    match side {
        AccessSide::Opening { opening } => opening.to_string(),
        AccessSide::OutsideCorner => "the outside corner".to_owned(),
        AccessSide::InsideCorner => "the inside corner".to_owned(),
        AccessSide::WallEnd => "the end of the wall".to_owned(),
        AccessSide::Fixture { obstacle: Some(id) } => format!("fixture {id}"),
        AccessSide::Fixture { obstacle: None } => "a fixture".to_owned(),
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
        let words = sentence(&place, LengthStyle::Feet);
        assert!(words.starts_with("course 5, 10\" between fixture front-B1 and front-W1: fix one"));
        assert!(words.contains("hold the one at front-W1 with one nail"), "{words}");
        let down = InstallMethod::SlideDown { before_course: 10 };
        let words =
            sentence(&RestrictedAccess { to_course: 9, install: down, ..place }, LengthStyle::Mm);
        assert!(words.starts_with("courses 5 to 9, 254 mm between "), "{words}");
        assert!(words.ends_with("down from the top, before course 10 closes it"), "{words}");
    }
}
