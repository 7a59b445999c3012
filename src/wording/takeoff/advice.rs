//! What whoever orders should know.

use super::items::{piece, pieces};
use crate::job::Job;
use crate::language::Language;
use crate::model::advice::{Advice, Excluded};
use crate::model::item::SidingPiece;
use crate::sources::takeoff::TakeoffFact;
use crate::sources::trim::TrimFact;
use crate::wording::lists::joined;
use crate::wording::siding;
use crate::wording::sources::{in_brackets, titles};

/// One thing to know, in a sentence or two.
pub fn advice(advice: &Advice, job: &Job) -> String {
    let style = job.sheet.lengths;
    match advice {
        Advice::OneLot { piece: of, color } => one_lot(*of, color),
        Advice::WholeCartons { piece: of, over } => format!(
            "Whole cartons leave {} uncut: spare ones; usually only full cartons are taken back{}.",
            pieces(Language::English, *over as usize, *of),
            in_brackets(&[TakeoffFact::FullCartonsBack.record()])
        ),
        Advice::BoardTrim { starter } => format!(
            "Corner boards, casings and friezes must stand out past the boards' butts; the starter piece is {} thick, as the head lap it stands in for. Prime cut ends; caulk and paint as the manufacturer says.",
            style.short(*starter)
        ),
        Advice::MatchingTrim { pocket } => format!(
            "Starter strip, posts and channels must be the make that goes with this {} and its thickness, with a pocket of {}{}{}.",
            siding::name(job.product.kind).en,
            style.short(*pocket),
            if job.product.has_foam() {
                "; parts made for siding without foam do not fit"
            } else {
                "; parts made for another kind do not fit"
            },
            in_brackets(&[TrimFact::StarterLocksFirstCourse.record()])
        ),
        Advice::PostAngle { corners, angle } => format!(
            "Posts of {corners} corners are for {angle:.0} degrees: usual posts are made for 90. Order them for that angle, or have trim bent; they are a line of their own."
        ),
        Advice::HiddenWalls => "Only what the elevations show is counted. Ask for walls they hide: behind porches, in recesses, chimney sides, dormer cheeks.".to_owned(),
        Advice::Excluded { things } => {
            let each: Vec<&str> = things.iter().map(|t| excluded(*t)).collect();
            format!("Not in this takeoff: {}.", joined(&each))
        }
    }
}

fn excluded(thing: Excluded) -> &'static str {
    match thing {
        Excluded::SoffitAndFascia => "soffit and fascia",
        Excluded::Barrier => "weather barrier and tape",
        Excluded::Sealant => "sealant",
        Excluded::Furring => "furring behind cut edges",
        Excluded::BlocksNotDrawn => "blocks for fixtures that are not drawn",
        Excluded::Coil => "coil stock for wrapped trim",
        Excluded::ShuttersAndVents => "shutters and vents",
        Excluded::RoofFlashing => {
            "flashing of the roofs themselves (valleys, edges, chimneys, skylights)"
        }
        Excluded::UprightJoints => "flashing behind upright joints between claddings",
        Excluded::GarageDoorPans => "pans under garage doors",
        Excluded::FixtureFlashing => "flashing around pipes and fixtures",
        Excluded::CopingsAndGutters => "copings and built-in gutters",
    }
}

/// All of one production lot.
pub fn one_lot(of: SidingPiece, color: &str) -> String {
    let color = if color.is_empty() { String::new() } else { format!(" in {color}") };
    let lot = TakeoffFact::OneLot.record();
    format!(
        "Order all {}s{color} from one production lot for the whole house, spare included: lots differ in color ({}, {}).",
        piece(of).en,
        titles(&[lot]),
        lot.section
    )
}
