//! What many houses come to, each in a few figures and what it takes: all that is kept of a house once its
//! files are written, so that any number of them have room.

use std::collections::BTreeSet;

use super::finished::Layout;
use super::laid::LaidHouse;
use crate::finding::Severity;
use crate::model::pole::PoleTable;
use crate::model::quantity::TakeoffLine;
use crate::model::takeoff::{OrderLine, PanelUnit, Takeoff};
use crate::real::Total;

/// How it went with a house.
#[derive(Clone, Debug, PartialEq)]
pub enum HowItWent {
    /// Laid out in this run.
    Laid {
        /// Seconds it took.
        seconds: f64,
    },
    /// Laid out by an earlier run of the same program from the same files, and not touched since.
    Before,
    /// Not laid out.
    Refused {
        /// Code of the finding that stopped it.
        code: String,
        /// What it says.
        message: String,
    },
}

/// One of many houses.
#[derive(Clone, Debug, PartialEq)]
pub struct HouseTold {
    /// Its name: that of its folder.
    pub name: String,
    /// The drawing, as it was given.
    pub drawing: String,
    /// The job, as it was given; empty where there is none.
    pub job: String,
    /// Its folder.
    pub folder: String,
    /// How it went.
    pub how: HowItWent,
    /// Its figures; none of one that was refused.
    pub figures: Option<HouseFigures>,
}

/// Figures of a house, all of its sets together.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct HouseFigures {
    /// Area of its walls, square feet.
    pub gross: f64,
    /// Area that is sided, square feet.
    pub net: f64,
    /// Panels.
    pub panels: usize,
    /// Fewest panels that are proven to be needed.
    pub least: usize,
    /// Pieces of trim.
    pub trims: usize,
    /// Findings that are warnings.
    pub warnings: usize,
    /// Findings that are remarks.
    pub remarks: usize,
    /// Places where a rule of the check is broken.
    pub broken: usize,
    /// What each set takes, without what it is laid of.
    pub takes: Vec<SetTakes>,
}

/// What a set takes of what is bought.
#[derive(Clone, Debug, PartialEq)]
pub struct SetTakes {
    /// Name of its house.
    pub name: String,
    /// The set, without walls and pieces.
    pub house: LaidHouse,
    /// Lines of its takeoff as counted, before any price.
    pub takeoff: Takeoff,
}

/// What to buy for all houses in one purchase.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Purchase {
    /// Panels by stock length, whatever unit they are bought in: the sum of the houses' panels.
    pub panels: Vec<OrderLine>,
    /// Line by line.
    pub lines: Vec<OrderLine>,
    /// Their costs, in the same order, where there are prices: hundredths; none of a line without one.
    pub costs: Vec<Option<i64>>,
    /// The currency; empty where there are no prices.
    pub currency: String,
    /// Costs of all lines, hundredths.
    pub total: i64,
    /// What the houses would cost each by itself, hundredths.
    pub apart: i64,
}

impl HouseFigures {
    /// The figures of a house of these sets, named `name`.
    pub fn of(name: &str, sets: impl IntoIterator<Item = Layout>) -> Self {
        let mut out = HouseFigures::default();
        for layout in sets {
            out.add(name, layout);
        }
        out
    }

    fn add(&mut self, name: &str, layout: Layout) {
        let walls = || layout.walls().map(|(_, w)| w);
        self.gross += walls().map(|w| w.gross_area).total();
        self.net += walls().map(|w| w.net_area).total();
        self.panels += layout.panels.len();
        self.least += layout.bound.panels;
        self.trims += layout.trims.len();
        let count = |s: Severity| layout.findings.iter().filter(|f| f.severity() == s).count();
        self.warnings += count(Severity::Warning);
        self.remarks += count(Severity::Info);
        self.broken += layout.verify.places();
        self.takes.push(takes(name, layout));
    }
}

/// What a set takes: lines without the names of what they count.
fn takes(name: &str, layout: Layout) -> SetTakes {
    let Layout { laid, takeoff, .. } = layout;
    let bare = |l: TakeoffLine| TakeoffLine {
        counts: Vec::new(),
        kinds: Vec::new(),
        shares: Vec::new(),
        ..l
    };
    let panels_by = if laid.job.sold_singly() { PanelUnit::Panels } else { PanelUnit::default() };
    let lines = takeoff.into_iter().map(bare).collect();
    let house = LaidHouse {
        story_pole: PoleTable::default(),
        elevations: Vec::new(),
        corners: Vec::new(),
        order: Vec::new(),
        panels: Vec::new(),
        trims: Vec::new(),
        ..laid
    };
    let takeoff = Takeoff { lines, panels_by, ..Takeoff::default() };
    SetTakes { name: name.to_owned(), house, takeoff }
}

/// How many houses take of a line, a house of several sets once.
pub fn houses_of(line: &OrderLine) -> usize {
    line.sets.iter().map(|s| &s.house).collect::<BTreeSet<_>>().len()
}
