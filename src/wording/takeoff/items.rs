//! What is bought, and the units it is counted in.

use crate::language::{Language, Said, said};
use crate::model::flashed_run::FlashedRun;
use crate::model::item::{CountUnit, GivenThings, Item, MixedStock, SidingPiece};
use crate::model::quantity::{TakeoffLine, WallPart};
use crate::model::takeoff::{PanelUnit, Takeoff};
use crate::model::trim::{TrimKind, TrimStock};
use crate::units::{LengthStyle, inches_fraction};
use crate::wording::nouns::{self, Noun};
use crate::wording::trim;

/// Boxes that siding comes in.
const CARTONS: Said = said("cartons", "cartones");

/// One stock length of siding.
pub fn piece(piece: SidingPiece) -> Said {
    siding_noun(piece).one
}

/// One stock length of siding, and many.
pub fn siding_noun(piece: SidingPiece) -> Noun {
    match piece {
        SidingPiece::Panel => nouns::PANEL,
        SidingPiece::Board => nouns::BOARD,
    }
}

/// So many of them: `1 panel`, `3 panels`.
pub fn pieces(lang: Language, count: usize, of: SidingPiece) -> String {
    nouns::counted(lang, count, siding_noun(of))
}

/// Trim as it is bought.
pub fn trim_stock(stock: TrimStock, boards: bool) -> Said {
    trim::stock_on(stock, boards)
}

/// A kind of trim.
pub fn trim_kind(kind: TrimKind, boards: bool) -> Said {
    trim::kind_on(kind, boards)
}

/// What a line of the takeoff is of.
pub fn item(lang: Language, item: &Item, style: LengthStyle) -> String {
    match item {
        Item::Panels { piece: of, stock } => {
            of_length(lang, siding_noun(*of).many.of(lang).to_owned(), *stock, style)
        }
        Item::SparePanels { piece: of, stock } => {
            let many = siding_noun(*of).many.of(lang);
            of_length(lang, say!(lang, "spare {}", "{} de repuesto", many), *stock, style)
        }
        Item::Cartons { stock } => of_length(lang, CARTONS.of(lang).to_owned(), *stock, style),
        Item::Squares => said("squares", "cuadros").of(lang).to_owned(),
        Item::SquaresLaid => said("squares laid", "cuadros colocados").of(lang).to_owned(),
        Item::Trim { stock, boards, angle } => trim::stock_at(lang, *stock, *boards, *angle),
        Item::SpareTrim { stock, boards, angle } => {
            say!(lang, "spare {}", "{} de repuesto", trim::stock_at(lang, *stock, *boards, *angle))
        }
        Item::PostCaps => said("post caps", "tapas de esquinero").of(lang).to_owned(),
        // Nails are sold by the inch in both series.
        Item::SidingNails { piece: of, length } => {
            say!(
                lang,
                "nails for {}, {}",
                "clavos para {}, {}",
                siding_noun(*of).many.of(lang),
                inches_fraction(*length)
            )
        }
        Item::TrimNails => said("nails for trim", "clavos para molduras").of(lang).to_owned(),
        Item::MountingBlocks => said("mounting blocks", "bloques de montaje").of(lang).to_owned(),
        Item::OtherCladding { cladding, .. } => {
            say!(lang, "{cladding}, not laid out", "{cladding}, sin detallar")
        }
        Item::BareWall => said("wall without siding", "pared sin siding").of(lang).to_owned(),
        Item::ByNetArea { waste } => say!(
            lang,
            "for comparison: net area + {waste} %",
            "para comparar: área neta + {waste} %"
        ),
        flashing => flashing_item(lang, flashing, style),
    }
}

/// Flashing, and what backs joints.
fn flashing_item(lang: Language, item: &Item, style: LengthStyle) -> String {
    match item {
        Item::OpeningFlashing { width } => {
            say!(
                lang,
                "flashing at openings, {} wide",
                "tapajuntas en aberturas, {} de ancho",
                sheet_width(*width, style)
            )
        }
        Item::CornerFlashing { width } => {
            say!(
                lang,
                "flashing at corners, {} wide",
                "tapajuntas en esquinas, {} de ancho",
                sheet_width(*width, style)
            )
        }
        Item::StepFlashing => said("step flashing", "tapajuntas escalonado").of(lang).to_owned(),
        Item::KickOutFlashing => said("kick-out flashing", "desviadores").of(lang).to_owned(),
        Item::FlashedLength { over } => flashed(*over).of(lang).to_owned(),
        Item::RunFlashing { width } => {
            say!(
                lang,
                "flashing along level runs, {} wide",
                "tapajuntas en tramos a nivel, {} de ancho",
                sheet_width(*width, style)
            )
        }
        Item::DoorPans => said("door pans", "bandejas de puerta").of(lang).to_owned(),
        Item::JointBacking { width } => say!(
            lang,
            "joint backing, {} wide",
            "respaldo de juntas, {} de ancho",
            style.short(*width)
        ),
        other => estimated(lang, other),
    }
}

/// What the takeoff counts where the job asks for it.
fn estimated(lang: Language, item: &Item) -> String {
    match item {
        Item::Barrier => said("weather barrier", "barrera contra el agua").of(lang).to_owned(),
        Item::BarrierTape => {
            said("tape for the weather barrier", "cinta para la barrera contra el agua")
                .of(lang)
                .to_owned()
        }
        Item::Sealant => said("sealant", "sellador").of(lang).to_owned(),
        Item::Furring => said("furring strips", "listones").of(lang).to_owned(),
        Item::Coil => said("coil stock for wrapped trim", "rollo de lámina para forrar molduras")
            .of(lang)
            .to_owned(),
        Item::Soffit => said("soffit panels", "paneles de sofito").of(lang).to_owned(),
        Item::SoffitChannel => said("soffit channel", "canal de sofito").of(lang).to_owned(),
        Item::Fascia => said("fascia", "fascia").of(lang).to_owned(),
        Item::Given { things } => match things {
            GivenThings::Shutters => said("shutters", "contraventanas").of(lang),
            GivenThings::Vents => said("vents", "respiraderos").of(lang),
            GivenThings::Blocks => {
                said("blocks for fixtures not drawn", "bloques para accesorios sin dibujar")
                    .of(lang)
            }
        }
        .to_owned(),
        Item::Labor => said("labor", "mano de obra").of(lang).to_owned(),
        _ => String::new(),
    }
}

/// What the line of a short name is of.
pub fn of_line(lang: Language, takeoff: &Takeoff, id: &str, style: LengthStyle) -> String {
    takeoff.line(id).map_or_else(|| id.to_owned(), |l| item(lang, &l.item, style))
}

/// Flashing by what it lies over.
pub fn flashed(over: FlashedRun) -> Said {
    match over {
        FlashedRun::Roof => said("roof-to-wall flashing", "tapajuntas de techo a pared"),
        FlashedRun::Deck => said("deck ledger flashing", "tapajuntas entre terraza y pared"),
        FlashedRun::Ledge => said("ledge flashing", "tapajuntas de saliente"),
        FlashedRun::Cladding => {
            said("flashing at cladding changes", "tapajuntas en cambios de revestimiento")
        }
        FlashedRun::Band => said("flashing over bands", "tapajuntas sobre fajas"),
    }
}

/// A line's item and its unit.
pub fn item_and_unit(lang: Language, line: &TakeoffLine, style: LengthStyle) -> [String; 2] {
    [item(lang, &line.item, style), unit(line.unit).of(lang).to_owned()]
}

/// Where lengths are mixed, each line says its own.
fn of_length(
    lang: Language,
    name: String,
    stock: Option<MixedStock>,
    style: LengthStyle,
) -> String {
    match stock {
        Some(stock) => say!(lang, "{name} of {}", "{name} de {}", style.length(stock.length)),
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
pub fn unit(unit: CountUnit) -> Said {
    match unit {
        CountUnit::Piece => said("piece", "pieza"),
        CountUnit::Panel => said("panel", "panel"),
        CountUnit::Board => said("board", "tabla"),
        CountUnit::Carton => said("carton", "cartón"),
        CountUnit::Square => said("square", "cuadro"),
        CountUnit::SquareFoot => said("sq ft", "pies cuad."),
        CountUnit::Foot => said("ft", "pies"),
        CountUnit::Meter => said("m", "m"),
        CountUnit::FootOfSlope => said("ft of slope", "pies incl."),
        CountUnit::MeterOfSlope => said("m of slope", "m incl."),
        CountUnit::Roll => said("roll", "rollo"),
        CountUnit::Box => said("box", "caja"),
        CountUnit::Cartridge => said("cartridge", "cartucho"),
        CountUnit::Pair => said("pair", "par"),
        CountUnit::Hour => said("hour", "hora"),
        CountUnit::Nail => said("nail", "clavo"),
        CountUnit::Pound => said("lb", "lb"),
        CountUnit::Course => said("course", "hilera"),
    }
}

/// A unit, of several; what is measured has one word for both.
pub fn units(of: CountUnit) -> Said {
    match of {
        CountUnit::Piece => said("pieces", "piezas"),
        CountUnit::Panel => said("panels", "paneles"),
        CountUnit::Board => said("boards", "tablas"),
        CountUnit::Carton => said("cartons", "cartones"),
        CountUnit::Square => said("squares", "cuadros"),
        CountUnit::Roll => said("rolls", "rollos"),
        CountUnit::Box => said("boxes", "cajas"),
        CountUnit::Cartridge => said("cartridges", "cartuchos"),
        CountUnit::Pair => said("pairs", "pares"),
        CountUnit::Hour => said("hours", "horas"),
        CountUnit::Nail => said("nails", "clavos"),
        CountUnit::Course => said("courses", "hileras"),
        CountUnit::SquareFoot
        | CountUnit::Foot
        | CountUnit::Meter
        | CountUnit::FootOfSlope
        | CountUnit::MeterOfSlope
        | CountUnit::Pound => unit(of),
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
pub fn panel_unit(unit: PanelUnit, of: SidingPiece) -> Said {
    match (unit, of) {
        (PanelUnit::Cartons, _) => CARTONS,
        (PanelUnit::Panels, of) => siding_noun(of).many,
        (PanelUnit::Squares, _) => said("squares", "cuadros"),
    }
}
