//! Habits of those who draw elevations, and which of them one drawing has.

use std::collections::BTreeSet;

use super::dice::Dice;

macro_rules! habits {
    ($( $(#[$doc:meta])* $name:ident $word:literal ),* $(,)?) => {
        /// A habit of drawing.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        pub(crate) enum Habit { $( $(#[$doc])* $name ),* }

        impl Habit {
            /// All of them.
            pub(crate) const ALL: &'static [Habit] = &[ $( Habit::$name ),* ];

            /// In a word.
            pub(crate) fn word(self) -> &'static str {
                match self { $( Habit::$name => $word ),* }
            }
        }
    };
}

habits! {
    /// Openings have casings round them.
    Casings "casings",
    /// Boards at the corners.
    CornerBoards "corner boards",
    /// Band boards between stories.
    Bands "bands",
    /// A board under soffits and along rakes.
    Friezes "friezes",
    /// Siding is loose lines.
    Exploded "exploded hatch",
    /// Hatch boundaries run round openings in one loop.
    Notched "notched or slit hatch",
    /// One area is hatched in several pieces.
    Pieces "hatch in pieces",
    /// Windows are blocks with frame, sash and panes.
    Blocks "window blocks",
    /// Blocks inserted at 0,0 with what is drawn in its place inside.
    Absolute "blocks at 0,0",
    /// Windows are loose lines.
    LooseWindows "loose windows",
    /// Tags over the glass.
    Tags "tags",
    /// Grid lines with bubbles.
    Grid "grid lines",
    /// Section marks, leaders with notes, floor levels across.
    Marks "marks and leaders",
    /// Dimensions.
    Dimensions "dimensions",
    /// Roofs with shingles.
    Shingles "roof hatch",
    /// Stone or brick at the foot.
    Stone "stone at foot",
    /// Earth under the grade line.
    Grade "grade texture",
    /// A border with a title block.
    Border "sheet border",
    /// A floor plan beside the elevations.
    Plan "floor plan",
    /// Metric.
    Metric "metric",
    /// The header names another unit.
    WrongHeader "wrong header",
    /// A layer for each element.
    ByElement "layers by element",
    /// A layer for each pen.
    ByPen "layers by pen",
    /// A layer for each view.
    ByView "layers by view",
    /// All on one layer.
    OneLayer "one layer",
    /// Titles in model space.
    Titles "titles",
    /// Several views on the sheet.
    Views "several views",
    /// Door swings: dashed in elevations, arcs in plans.
    Swings "door swings",
    /// Skylights in a roof.
    Skylights "skylights",
    /// A part of a view drawn again.
    Partial "partial view",
    /// A lower roof across a wall.
    Porch "porch roof",
    /// Two planes in one view, courses at other heights.
    Planes "two planes",
    /// Gables.
    Gables "gables",
    /// Several stories.
    Stories "stories",
    /// A window across a band or over the stone's edge.
    Straddling "straddling openings",
    /// Exact duplicates, lines of no length, ends a hair apart.
    Dirt "dirt",
}

impl Habit {
    /// How often, of 1; those of layers and units are dealt apart.
    fn share(self) -> f64 {
        match self {
            Habit::Casings | Habit::Titles => 0.72,
            Habit::Views | Habit::Shingles => 0.6,
            Habit::Stories | Habit::Gables | Habit::Bands => 0.52,
            Habit::Planes | Habit::Tags | Habit::CornerBoards | Habit::Grade => 0.46,
            Habit::Grid | Habit::Marks | Habit::Dimensions | Habit::Stone | Habit::Border => 0.4,
            Habit::Porch | Habit::Skylights => 0.55,
            Habit::Partial => 0.5,
            Habit::Straddling | Habit::Swings => 0.5,
            Habit::Notched | Habit::Pieces => 0.45,
            Habit::Absolute => 0.45,
            Habit::Exploded | Habit::LooseWindows => 0.36,
            _ => 0.34,
        }
    }
}

/// How lines are shared out among layers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Layering {
    Element,
    Pen,
    View,
    One,
}

/// The unit a drawing is written in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Unit {
    pub(crate) word: &'static str,
    /// Inches in one.
    pub(crate) inches: f64,
    /// Its number in the header.
    pub(crate) code: u8,
}

const INCH: Unit = Unit { word: "inch", inches: 1.0, code: 1 };
const FOOT: Unit = Unit { word: "foot", inches: 12.0, code: 2 };
const MM: Unit = Unit { word: "mm", inches: 1.0 / 25.4, code: 4 };
const CM: Unit = Unit { word: "cm", inches: 1.0 / 2.54, code: 5 };
const M: Unit = Unit { word: "m", inches: 1.0 / 0.0254, code: 6 };

/// How a drawing's file is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Version {
    R12,
    R2000,
    R2007,
    R2013,
}

/// All that is decided before anything is drawn.
#[derive(Clone, Debug)]
pub(crate) struct Style {
    pub(crate) habits: BTreeSet<Habit>,
    pub(crate) layering: Layering,
    pub(crate) unit: Unit,
    /// What the header says; none where it says nothing.
    pub(crate) header: Option<u8>,
    pub(crate) version: Version,
    /// Which set of layer names, and of titles.
    pub(crate) words: usize,
    /// Patterns other than siding are loose lines too.
    pub(crate) all_exploded: bool,
    /// Boards are closed polylines rather than lines.
    pub(crate) closed_boards: bool,
    /// Which shingles: 0 is level lines alone, 1 standing seams, else level lines with butts.
    pub(crate) shingles: usize,
    /// Brick rather than stone.
    pub(crate) brick: bool,
    /// Hatch boundaries are lists of edges rather than polylines.
    pub(crate) edge_loops: bool,
}

impl Style {
    pub(crate) fn has(&self, habit: Habit) -> bool {
        self.habits.contains(&habit)
    }

    /// Of the drafting unit (inch or millimeter), how many make an inch.
    pub(crate) fn per_inch(&self) -> f64 {
        if self.has(Habit::Metric) { 25.4 } else { 1.0 }
    }

    /// So many inches, as a drafter of this drawing would round them.
    pub(crate) fn n(&self, inches: f64) -> f64 {
        let step = if self.has(Habit::Metric) { 5.0 } else { 0.5 };
        (inches * self.per_inch() / step).round() * step
    }

    /// Draws the lot. Layers go round by seed, so that each way has its quarter.
    pub(crate) fn of(seed: u64, dice: &mut Dice) -> Self {
        let mut habits: BTreeSet<Habit> =
            Habit::ALL.iter().copied().filter(|h| dice.odds(h.share())).collect();
        let layering = dealt(seed, &mut habits);
        let is_metric = dice.odds(0.45);
        let unit = match (is_metric, dice.unit()) {
            (false, u) => {
                if u < 0.9 {
                    INCH
                } else {
                    FOOT
                }
            }
            (true, u) => {
                if u < 0.7 {
                    MM
                } else if u < 0.8 {
                    CM
                } else {
                    M
                }
            }
        };
        set(&mut habits, Habit::Metric, is_metric);
        let is_wrong = habits.contains(&Habit::WrongHeader);
        let header = header(unit, is_wrong, dice);
        let version = dice.pick(&[
            Version::R12,
            Version::R2000,
            Version::R2000,
            Version::R2007,
            Version::R2013,
            Version::R2013,
            Version::R2013,
        ]);
        // The oldest format has no hatches.
        if version == Version::R12 {
            habits.insert(Habit::Exploded);
        }
        settle(&mut habits);
        Style {
            layering,
            unit,
            header,
            version,
            words: dice.count(0, 3),
            all_exploded: version == Version::R12
                || habits.contains(&Habit::Exploded) && dice.odds(0.5),
            closed_boards: dice.odds(0.4),
            edge_loops: dice.odds(0.5),
            shingles: dice.count(0, 3),
            brick: dice.odds(0.5),
            habits,
        }
    }
}

/// The way of layers of a seed, as a habit too.
fn dealt(seed: u64, habits: &mut BTreeSet<Habit>) -> Layering {
    let (layering, named) = match seed % 4 {
        0 => (Layering::Element, Habit::ByElement),
        1 => (Layering::Pen, Habit::ByPen),
        2 => (Layering::View, Habit::ByView),
        _ => (Layering::One, Habit::OneLayer),
    };
    for h in [Habit::ByElement, Habit::ByPen, Habit::ByView, Habit::OneLayer] {
        habits.remove(&h);
    }
    habits.insert(named);
    layering
}

fn set(habits: &mut BTreeSet<Habit>, habit: Habit, on: bool) {
    if on {
        habits.insert(habit);
    } else {
        habits.remove(&habit);
    }
}

/// Habits that need or shut out one another.
fn settle(habits: &mut BTreeSet<Habit>) {
    let exploded = habits.contains(&Habit::Exploded);
    if exploded {
        habits.remove(&Habit::Notched);
        habits.remove(&Habit::Pieces);
    }
    let loose = habits.contains(&Habit::LooseWindows);
    set(habits, Habit::Blocks, !loose);
    if loose {
        habits.remove(&Habit::Absolute);
    }
    // Which part of which view is drawn again is told by its title.
    if habits.contains(&Habit::Partial) {
        habits.insert(Habit::Views);
        habits.insert(Habit::Titles);
    }
    // A lower roof stands across a wall that goes on above it.
    if habits.contains(&Habit::Porch) {
        habits.insert(Habit::Stories);
    }
}

fn header(unit: Unit, is_wrong: bool, dice: &mut Dice) -> Option<u8> {
    if is_wrong {
        let others: Vec<u8> = [1, 2, 4, 5, 6].into_iter().filter(|c| *c != unit.code).collect();
        // The template of an office most often says inch or millimeter.
        let usual = if unit.code == 1 { 4 } else { 1 };
        return Some(if dice.odds(0.7) { usual } else { dice.pick(&others) });
    }
    match dice.count(0, 4) {
        0 => None,
        1 => Some(0),
        _ => Some(unit.code),
    }
}
