//! What is bought, and the units it is counted in.

use crate::model::flashed_run::FlashedRun;
use crate::model::item::{CountUnit, GivenThings, Item, MixedStock, SidingPiece};
use crate::model::quantity::{TakeoffLine, WallPart};
use crate::model::takeoff::{PanelUnit, Takeoff};
use crate::model::trim::{TrimKind, TrimStock};
use crate::units::{LengthStyle, inches_fraction};
use crate::wording::trim;

/// One stock length of siding.
pub fn piece(piece: SidingPiece) -> &'static str {
    match piece {
        SidingPiece::Panel => "panel",
        SidingPiece::Board => "board",
    }
}

/// So many of them: `1 panel`, `3 panels`.
pub fn pieces(count: usize, of: SidingPiece) -> String {
    crate::units::counted(count, piece(of))
}

/// Trim as it is bought.
pub fn trim_stock(stock: TrimStock, boards: bool) -> &'static str {
    trim::stock_on(stock, boards)
}

/// A kind of trim.
pub fn trim_kind(kind: TrimKind, boards: bool) -> &'static str {
    trim::kind_on(kind, boards)
}

/// What a line of the takeoff is of.
pub fn item(item: &Item, style: LengthStyle) -> String {
    match item {
        Item::Panels { piece: of, stock } => of_length(format!("{}s", piece(*of)), *stock, style),
        Item::SparePanels { piece: of, stock } => {
            of_length(format!("spare {}s", piece(*of)), *stock, style)
        }
        Item::Cartons { stock } => of_length("cartons".to_owned(), *stock, style),
        Item::Squares => "squares".to_owned(),
        Item::SquaresLaid => "squares laid".to_owned(),
        Item::Trim { stock, boards, angle } => trim::stock_at(*stock, *boards, *angle),
        Item::SpareTrim { stock, boards, angle } => {
            format!("spare {}", trim::stock_at(*stock, *boards, *angle))
        }
        Item::PostCaps => "post caps".to_owned(),
        Item::OpeningFlashing { width } => {
            format!("flashing at openings, {} wide", sheet_width(*width, style))
        }
        Item::CornerFlashing { width } => {
            format!("flashing at corners, {} wide", sheet_width(*width, style))
        }
        Item::StepFlashing => "step flashing".to_owned(),
        Item::KickOutFlashing => "kick-out flashing".to_owned(),
        Item::FlashedLength { over } => flashed(*over).to_owned(),
        Item::RunFlashing { width } => {
            format!("flashing along level runs, {} wide", sheet_width(*width, style))
        }
        Item::DoorPans => "door pans".to_owned(),
        Item::JointBacking { width } => format!("joint backing, {} wide", style.short(*width)),
        // Nails are sold by the inch in both series.
        Item::SidingNails { piece: of, length } => {
            format!("nails for {}s, {}", piece(*of), inches_fraction(*length))
        }
        Item::TrimNails => "nails for trim".to_owned(),
        Item::MountingBlocks => "mounting blocks".to_owned(),
        Item::Barrier => "weather barrier".to_owned(),
        Item::BarrierTape => "tape for the weather barrier".to_owned(),
        Item::Sealant => "sealant".to_owned(),
        Item::Furring => "furring strips".to_owned(),
        Item::Coil => "coil stock for wrapped trim".to_owned(),
        Item::Soffit => "soffit panels".to_owned(),
        Item::SoffitChannel => "soffit channel".to_owned(),
        Item::Fascia => "fascia".to_owned(),
        Item::Given { things } => match things {
            GivenThings::Shutters => "shutters",
            GivenThings::Vents => "vents",
            GivenThings::Blocks => "blocks for fixtures not drawn",
        }
        .to_owned(),
        Item::Labor => "labor".to_owned(),
        Item::OtherCladding { cladding, .. } => format!("{cladding}, not laid out"),
        Item::BareWall => "wall without siding".to_owned(),
        Item::ByNetArea { waste } => format!("for comparison: net area + {waste} %"),
    }
}

/// What the line of a short name is of.
pub fn of_line(takeoff: &Takeoff, id: &str, style: LengthStyle) -> String {
    takeoff.line(id).map_or_else(|| id.to_owned(), |l| item(&l.item, style))
}

/// Flashing by what it lies over.
pub fn flashed(over: FlashedRun) -> &'static str {
    match over {
        FlashedRun::Roof => "roof-to-wall flashing",
        FlashedRun::Deck => "deck ledger flashing",
        FlashedRun::Ledge => "ledge flashing",
        FlashedRun::Cladding => "flashing at cladding changes",
        FlashedRun::Band => "flashing over bands",
    }
}

/// A line's item and its unit.
pub fn item_and_unit(line: &TakeoffLine, style: LengthStyle) -> [String; 2] {
    [item(&line.item, style), unit(line.unit).to_owned()]
}

/// Where lengths are mixed, each line says its own.
fn of_length(name: String, stock: Option<MixedStock>, style: LengthStyle) -> String {
    match stock {
        Some(stock) => format!("{name} of {}", style.length(stock.length)),
        None => name,
    }
}

/// A sheet's width as it is ordered: whole millimeters in metric.
fn sheet_width(inches: f64, style: LengthStyle) -> String {
    match style {
        LengthStyle::Feet => style.short(inches),
        LengthStyle::Mm => style.length(inches),
    }
}

/// A unit, of one.
pub fn unit(unit: CountUnit) -> &'static str {
    match unit {
        CountUnit::Piece => "piece",
        CountUnit::Panel => "panel",
        CountUnit::Board => "board",
        CountUnit::Carton => "carton",
        CountUnit::Square => "square",
        CountUnit::SquareFoot => "sq ft",
        CountUnit::Foot => "ft",
        CountUnit::Meter => "m",
        CountUnit::FootOfSlope => "ft of slope",
        CountUnit::MeterOfSlope => "m of slope",
        CountUnit::Roll => "roll",
        CountUnit::Box => "box",
        CountUnit::Cartridge => "cartridge",
        CountUnit::Pair => "pair",
        CountUnit::Hour => "hour",
        CountUnit::Nail => "nail",
        CountUnit::Pound => "lb",
        CountUnit::Course => "course",
    }
}

/// A part of a wall.
pub fn wall_part(part: WallPart) -> &'static str {
    match part {
        WallPart::Wall => "wall",
        WallPart::Gable => "gable",
    }
}

/// What panels are bought by.
pub fn panel_unit(unit: PanelUnit, of: SidingPiece) -> &'static str {
    match (unit, of) {
        (PanelUnit::Cartons, _) => "cartons",
        (PanelUnit::Panels, SidingPiece::Board) => "boards",
        (PanelUnit::Panels, SidingPiece::Panel) => "panels",
        (PanelUnit::Squares, _) => "squares",
    }
}
