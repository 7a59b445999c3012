//! A house with its courses: one datum, walls moved to be laid, where siding goes on them.

use crate::course::blocks::moved;
use crate::course::datum::{Found, search};
use crate::course::even;
use crate::course::hang::hung;
use crate::course::pole_lines::lines;
use crate::course::runs::courses;
use crate::course::settle::settled;
use crate::course::story_pole::story_pole;
use crate::job::Job;
use crate::layout::from_drawn;
use crate::model::course::{PlannedCourse, StoryPole};
use crate::model::house::House;
use crate::model::pole::PoleTable;
use crate::model::receiver::Field;
use crate::receive;

/// A house with its courses: walls moved to be laid, where siding goes on them, and its runs.
pub(super) struct Posed {
    pub(super) found: Found,
    pub(super) pole: StoryPole,
    /// Levels a hair off a course line are on it; none where nothing moved.
    settled: Option<House>,
    /// The first course hangs below the drawn bottom; none where nothing moved.
    hung: Option<House>,
    /// Blocks are moved a little and places too narrow for siding filled; none where there is neither.
    filled: Option<House>,
    pub(super) fields: Vec<Field>,
    pub(super) planned: Vec<Vec<PlannedCourse>>,
}

/// Settles courses and runs.
pub(super) fn posed(house: &House, job: &Job) -> Posed {
    // The exposure of panels is fixed and the datum free; boards are evened between levels.
    let evened = job.siding().courses.is_evened();
    let found = if evened { Found::default() } else { search(house, job) };
    let pole = if evened { even::pole(house, job) } else { story_pole(house, &found, job) };
    let settled = settled(house, &pole);
    let as_drawn = settled.as_ref().unwrap_or(house);
    let hung = hung(as_drawn, &pole, &job.courses);
    let on = hung.as_ref().unwrap_or(as_drawn);
    let shifted = moved(on, &pole, job);
    let on = shifted.as_ref().unwrap_or(on);
    let filled = receive::filled(on, &pole, job).or_else(|| shifted.clone());
    let on = filled.as_ref().unwrap_or(on);
    let fields = fields(on, &pole, job);
    let wall = |f: &Field| courses(f, from_drawn::wall_of(on, f), &pole, job);
    let planned = fields.iter().map(wall).collect();
    Posed { found, pole, settled, hung, filled, fields, planned }
}

impl Posed {
    /// Walls as they are drawn.
    pub(super) fn as_drawn<'a>(&'a self, house: &'a House) -> &'a House {
        self.settled.as_ref().unwrap_or(house)
    }

    /// Walls as they are laid.
    pub(super) fn as_hung<'a>(&'a self, house: &'a House) -> &'a House {
        let moved = self.filled.as_ref().or(self.hung.as_ref());
        moved.unwrap_or_else(|| self.as_drawn(house))
    }

    /// The story pole as a table, of the walls as they are laid.
    pub(super) fn table(&self, house: &House) -> PoleTable {
        PoleTable {
            lines: lines(house, &self.fields, &self.planned, &self.pole),
            choices: self.found.choices.clone(),
            tried: self.found.tried,
            evened: self.pole.lines.clone(),
            divisions: self.pole.divisions.clone(),
        }
    }
}

/// Where panels go on each wall.
fn fields(house: &House, pole: &StoryPole, job: &Job) -> Vec<Field> {
    let pockets = job.siding().receivers.has_pockets();
    let set_backs = job.set_backs();
    let walls = house.elevations.iter().enumerate();
    walls
        .flat_map(|(e, on)| (0..on.walls.len()).map(move |w| (e, w)))
        .map(|(e, w)| {
            let rules = (&job.courses, &job.trim, job.clearances(), set_backs);
            receive::field(house, e, w, pole, rules)
        })
        .map(|f| if pockets { f } else { receive::boards::for_boards(f) })
        .collect()
}
