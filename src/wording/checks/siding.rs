//! What breaks the rules of runs, pieces and panels.

use crate::layout::breach::piece::{
    EndShape, HeldBreach, NotchSize, PanelBreach, PieceBreach, RunBreach,
};
use crate::units::{LengthStyle, counted};
use crate::wording::{figure, names};

pub(super) fn run(breach: &RunBreach, style: LengthStyle) -> String {
    let length = |v: f64| figure::length(v, style);
    match breach {
        RunBreach::NameTwice => "another run has the same name".to_owned(),
        RunBreach::EndReceiver { hand, receiver, drawn } => {
            let drawn: Vec<&str> = drawn.iter().map(|r| names::receiver(*r)).collect();
            let drawn = if drawn.is_empty() { "nothing".to_owned() } else { drawn.join(", ") };
            let (hand, receiver) = (names::hand(*hand), names::receiver(*receiver));
            format!("{hand} end says {receiver}, drawn there: {drawn}")
        }
        RunBreach::Slope { hand } => format!("lean of the {} end", names::hand(*hand)),
        RunBreach::Filled => "pieces less laps beside the run less its end gaps".to_owned(),
        RunBreach::EndGap => "end gap".to_owned(),
        RunBreach::SeamCount { pieces } => {
            format!("number of seams for {}", counted(*pieces, "piece"))
        }
        RunBreach::SeamOffLap { from, to, lap } => {
            let where_it_is = figure::span([*from, *to], style);
            let sort = if *lap < 0.0 { "joint" } else { "lap" };
            format!("{sort} from {where_it_is}, must be {} long; seam", length(lap.abs()))
        }
        RunBreach::SeamsNear { seam, course, other_seam, other_course } => format!(
            "seams of courses {} and {}, at {} and {}, too near one another",
            i64::from(*course) + 1,
            i64::from(*other_course) + 1,
            length(*seam),
            length(*other_seam)
        ),
        RunBreach::SeamOverObstacle => "a seam laps over the fixture".to_owned(),
        RunBreach::SeamMissing => "no seam past the fixture".to_owned(),
        RunBreach::SeamFixedByNothing => "seam fixed where no fixture is".to_owned(),
        RunBreach::JointFixed => "joint fixed by a fixture".to_owned(),
        RunBreach::JointOffStud => "joint off its stud by".to_owned(),
    }
}

pub(super) fn piece(breach: &PieceBreach, style: LengthStyle) -> String {
    match breach {
        PieceBreach::Length { cut, on_wall } => format!(
            "cut {} long, on the wall {}; length given",
            figure::length(*cut, style),
            figure::length(*on_wall, style)
        ),
        PieceBreach::StripUnderLeast => "a strip lower than told with the datum".to_owned(),
        PieceBreach::PeakUnderLeast => "a peak too low for a piece".to_owned(),
        PieceBreach::SeamEnds => "they do not meet with factory ends".to_owned(),
        PieceBreach::FactoryEnd { hand } => {
            format!("the {} end is given as a factory end and is none", names::hand(*hand))
        }
        PieceBreach::TooShort => "shorter than the shortest piece".to_owned(),
        PieceBreach::Extent { said, shown } => {
            format!("shows {}, given {}", shown_span(*shown, style), figure::span(*said, style))
        }
        PieceBreach::LeavesCourse => "leaves its course".to_owned(),
        PieceBreach::Rip { said, shown } => format!(
            "shows {} over the butt line, rip given {}",
            shown_span(*shown, style),
            figure::span(*said, style)
        ),
        PieceBreach::RipMissing { top } => {
            let edge = if *top { "top edge" } else { "bottom (butt) edge" };
            format!("{edge} is cut and no rip is given; over the butt line")
        }
        PieceBreach::End { hand, said, shown } => format!(
            "{} end is {}, given as {}",
            names::hand(*hand),
            end(shown, style),
            end(said, style)
        ),
        PieceBreach::LongPoint { hand } => {
            format!("long point of the {} end, from left", names::hand(*hand))
        }
        PieceBreach::NotchOfNothing { around } => {
            format!("a notch around {around}, which is not on its wall")
        }
        PieceBreach::NotchElsewhere => "no part of it is in the notch around it".to_owned(),
        PieceBreach::NotchSize { said, needed } => {
            format!("notch given {}, must be {}", notch(said, style), notch(needed, style))
        }
        PieceBreach::Held { how } => held(how),
        PieceBreach::HemInTheWay => {
            "what goes over its face, behind the next course, is in the way there".to_owned()
        }
        PieceBreach::LugsInNoTrim => {
            "lugs or trim nails, and no edge stands in undersill (finish) trim".to_owned()
        }
        PieceBreach::NotHeld { top } => {
            let edge = if *top { "hem" } else { "lock" };
            format!("keeps no {edge}, and nothing is said of how it is held")
        }
        PieceBreach::Cuts => "its cuts leave another shape than shows".to_owned(),
        PieceBreach::MarkTwice => "another piece has the same mark".to_owned(),
        PieceBreach::OfNoPanel => "is cut from no panel".to_owned(),
        PieceBreach::OfTwoPanels => "number of panels that list it".to_owned(),
    }
}

/// Of pieces that are held of an earlier layout.
fn held(how: &HeldBreach) -> String {
    match how {
        HeldBreach::Cut { panel } => {
            format!("is held, and was cut from panel {panel}; place on the panel")
        }
        HeldBreach::Offcut { panel } => {
            format!("is held, and panel {panel} is not the length it was cut from before")
        }
        HeldBreach::Elsewhere => "is held, and stands elsewhere than before".to_owned(),
        HeldBreach::Gone => "is held of the earlier layout, and is on no wall".to_owned(),
    }
}

fn shown_span(shown: Option<[f64; 2]>, style: LengthStyle) -> String {
    shown.map_or("nowhere".to_owned(), |s| figure::span(s, style))
}

fn end(e: &EndShape, style: LengthStyle) -> String {
    let cut = e.cut.map_or("cut", names::end_cut);
    let (long, short) = (figure::length(e.long_point, style), figure::length(e.short_point, style));
    let angle = figure::degrees(e.angle);
    format!("{cut} at {angle}, long point {long} and short point {short} from left")
}

fn notch(n: &NotchSize, style: LengthStyle) -> String {
    let length = |v: f64| figure::length(v, style);
    format!("{} wide and {} deep, {} from left", length(n.width), length(n.depth), length(n.left))
}

pub(super) fn panel(breach: &PanelBreach, style: LengthStyle) -> String {
    match breach {
        PanelBreach::StockLength { stocks } => {
            let stocks: Vec<String> = stocks.iter().map(|s| figure::length(*s, style)).collect();
            format!("length, stocked are {}", stocks.join(" and "))
        }
        PanelBreach::Empty => "no piece is cut from it".to_owned(),
        PanelBreach::PieceUnknown => "lists a piece that is on no wall".to_owned(),
        PanelBreach::PieceOfAnother { named } => format!("the piece says panel {named}"),
        PanelBreach::PieceBeyondEnds { from, to } => {
            format!("cut from {} of the panel", figure::span([*from, *to], style))
        }
        PanelBreach::BeyondOffcut { from, to } => {
            format!("at hand is {} of it", figure::span([*from, *to], style))
        }
        PanelBreach::SawCutMissing => "room for the saw cut between them".to_owned(),
        PanelBreach::Offcut => "offcut".to_owned(),
        PanelBreach::HalvesUnwanted => {
            "serves in halves, which the job does not ask for".to_owned()
        }
        PanelBreach::HalfMissing => "not every piece is of a half, or a half has none".to_owned(),
        PanelBreach::HalvesMeet => "room for the saw cut between the halves".to_owned(),
    }
}
