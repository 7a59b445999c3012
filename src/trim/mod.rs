//! Trim, piece by piece, with lengths and ends: from fields and courses to what is cut at the saw.
//!
//! Runs after `course`, since what goes under a sill or at a wall's top depends on where the
//! course cut falls.

mod by_wall;
pub mod channels;
mod contour;
mod cut_edge;
mod decor;
mod fillers;
mod flashing;
pub mod frames;
pub mod posts;
mod shaped;
mod shaped_flashing;
pub mod starter;
pub mod stock;

use crate::job::Job;
use crate::model::course::StoryPole;
use crate::model::house::House;
use crate::model::receiver::Field;
use crate::model::trim::TrimPiece;

/// Every trim piece of the house, marked, and cut from stock.
pub fn trims(house: &House, fields: &[Field], pole: &StoryPole, job: &Job) -> Vec<TrimPiece> {
    let mut pieces = Vec::new();
    for (i, field) in fields.iter().enumerate() {
        let Some(place) = stock::Place::of(house, field) else { continue };
        let first =
            fields[..i].iter().all(|f| (f.elevation, f.wall) != (field.elevation, field.wall));
        pieces.extend(starter::pieces(&place, field, job));
        pieces.extend(channels::pieces(&place, field, job));
        pieces.extend(frames::pieces(&place, field, pole, job));
        pieces.extend(decor::pieces(&place, field, (first, house.zone.is_none()), job));
        if first {
            pieces.extend(fillers::pieces(&place, job));
            pieces.extend(flashing::pieces(&place, job));
        }
    }
    pieces.extend(posts::pieces(house, fields, job));
    stock::mark_and_cut(&mut pieces, job);
    pieces
}
