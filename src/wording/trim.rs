//! Trim by name.

use crate::language::{Language, Said, said};
use crate::model::ids::TrimStockId;
use crate::model::post_angle::PostAngle;
use crate::model::trim::{TrimEnd, TrimKind, TrimPiece, TrimStock};
use crate::units::LengthStyle;

/// A kind of trim.
pub fn kind(kind: TrimKind) -> Said {
    match kind {
        TrimKind::Starter => said("starter strip", "tira de inicio"),
        TrimKind::OutsidePost => said("outside corner post", "esquinero exterior"),
        TrimKind::InsidePost => said("inside corner post", "esquinero interior"),
        TrimKind::JambChannel => said("J-channel, jamb", "canal J, jamba"),
        TrimKind::HeadChannel => said("J-channel, head", "canal J, cabezal"),
        TrimKind::SillChannel => said("J-channel, sill", "canal J, repisa"),
        TrimKind::BentChannel => said("flexible J-channel, bent", "canal J flexible, doblado"),
        TrimKind::WallChannel => said("J-channel, wall", "canal J, pared"),
        TrimKind::CornerChannel => said("J-channel, inside corner", "canal J, esquina interior"),
        TrimKind::RakeChannel => said("J-channel, rake", "canal J, inclinación"),
        TrimKind::RoofChannel => said("J-channel, lower roof", "canal J, techo bajo"),
        TrimKind::FinishTrim => said("undersill (finish) trim", "moldura de remate"),
        TrimKind::DripCap => said("drip cap", "goterón"),
        TrimKind::Surround => said("flat surround", "contramarco plano"),
        TrimKind::CornerCover => said("wide corner cover", "cubreesquina ancho"),
        TrimKind::Frieze => said("frieze board", "tabla de friso"),
        TrimKind::Band => said("band board", "tabla de faja"),
        TrimKind::Filler => said("filler board", "tabla de relleno"),
        TrimKind::TopBase => said("top base", "base del remate"),
        TrimKind::TopFace => said("top face board", "tabla de frente del remate"),
        TrimKind::TopPanel => said("top panel", "panel de remate"),
        TrimKind::Crown => said("crown molding", "moldura de corona"),
        TrimKind::SillFlashing => said("flashing, sill", "tapajuntas, repisa"),
        TrimKind::JambFlashing => said("flashing, jamb", "tapajuntas, jamba"),
        TrimKind::HeadFlashing => said("flashing, head", "tapajuntas, cabezal"),
    }
}

/// The same on a wall of boards, where boards stand for posts.
pub fn kind_on(of_kind: TrimKind, boards: bool) -> Said {
    match of_kind {
        TrimKind::Starter | TrimKind::OutsidePost | TrimKind::InsidePost => {
            stock_on(of_kind.stock(), boards)
        }
        other => kind(other),
    }
}

/// A piece's kind, with the width it is ripped to.
pub fn piece_on(lang: Language, t: &TrimPiece, style: LengthStyle, boards: bool) -> String {
    let kind = kind_on(t.kind, boards).of(lang);
    t.width.map_or(kind.to_owned(), |w| {
        say!(lang, "{kind}, ripped to {}", "{kind}, cortada a lo largo a {}", style.short(w))
    })
}

/// Most sizes that the key of an elevation names.
const SIZES: usize = 8;

/// Sizes of what is ripped, by marks; none where nothing is.
pub fn sizes<'a>(
    lang: Language,
    ripped: impl Iterator<Item = &'a TrimPiece>,
    style: LengthStyle,
) -> Option<String> {
    let size = |t: &TrimPiece| {
        t.width.map(|w| format!("{} {} x {}", t.mark, style.short(w), style.length(t.length)))
    };
    let all: Vec<String> = ripped.filter_map(size).collect();
    let more = all.len().saturating_sub(SIZES);
    let rest = if more > 0 {
        say!(lang, ", {more} more in the trim list", ", {more} más en la lista de molduras")
    } else {
        String::new()
    };
    let first = all.iter().take(SIZES).cloned().collect::<Vec<_>>().join(", ");
    (!all.is_empty())
        .then(|| say!(lang, "filler boards: {first}{rest}", "tablas de relleno: {first}{rest}"))
}

/// A cut length, with the width it is ripped to.
pub fn cut_to(length: &str, t: &TrimPiece, style: LengthStyle) -> String {
    t.width.map_or(length.to_owned(), |w| format!("{length} x {}", style.short(w)))
}

/// What trim is bought as.
pub fn stock(stock: TrimStock) -> Said {
    match stock {
        TrimStock::Starter => said("starter strip", "tira de inicio"),
        TrimStock::OutsidePost => said("outside corner post", "esquinero exterior"),
        TrimStock::InsidePost => said("inside corner post", "esquinero interior"),
        TrimStock::JChannel => said("J-channel", "canal J"),
        TrimStock::FlexibleChannel => said("flexible J-channel", "canal J flexible"),
        TrimStock::FinishTrim => said("undersill (finish) trim", "moldura de remate"),
        TrimStock::DripCap => said("drip cap", "goterón"),
        TrimStock::Surround => said("flat surround", "contramarco plano"),
        TrimStock::CornerCover => said("wide corner cover", "cubreesquina ancho"),
        TrimStock::Board => said("trim board", "tabla de moldura"),
        TrimStock::Filler => said("filler board", "tabla de relleno"),
        TrimStock::TopBase => said("top base", "base del remate"),
        TrimStock::TopFace => said("top face board", "tabla de frente del remate"),
        TrimStock::TopPanel => said("top panel", "panel de remate"),
        TrimStock::Crown => said("crown molding", "moldura de corona"),
        TrimStock::Flashing => said("flashing at openings", "tapajuntas en aberturas"),
    }
}

/// The same on a wall of boards, where boards stand for posts.
pub fn stock_on(of_stock: TrimStock, boards: bool) -> Said {
    match of_stock {
        TrimStock::Starter if boards => said("starter piece", "pieza de inicio"),
        TrimStock::OutsidePost if boards => {
            said("pair of outside corner boards", "par de tablas de esquina exterior")
        }
        TrimStock::InsidePost if boards => said("inside corner board", "tabla de esquina interior"),
        other => stock(other),
    }
}

/// The same, of posts made for one angle.
pub fn stock_at(
    lang: Language,
    of_stock: TrimStock,
    boards: bool,
    angle: Option<PostAngle>,
) -> String {
    let stock = stock_on(of_stock, boards).of(lang);
    match angle {
        None => stock.to_owned(),
        Some(PostAngle::Degrees(degrees)) => {
            say!(lang, "{stock}, {degrees} degrees", "{stock}, {degrees} grados")
        }
        Some(PostAngle::Unknown) => {
            say!(lang, "{stock}, angle to be told", "{stock}, ángulo por confirmar")
        }
    }
}

/// How trim ends, on a wall of boards or of panels: boards have no flange, and are beveled where
/// lengths of a corner board meet (common practice).
pub fn end_on(lang: Language, of_end: &TrimEnd, style: LengthStyle, boards: bool) -> String {
    match of_end {
        TrimEnd::Splice { lap, .. } if boards => {
            say!(lang, "bevel, lap {}", "bisel, traslape {}", style.short(*lap))
        }
        other => end(lang, other, style),
    }
}

/// How trim ends.
fn end(lang: Language, end: &TrimEnd, style: LengthStyle) -> String {
    let degrees = |a: f64| (a * 100.0).round() / 100.0;
    match end {
        TrimEnd::Square => said("square", "a escuadra").of(lang).to_owned(),
        TrimEnd::Miter(angle) => say!(lang, "miter {}", "inglete {}", degrees(*angle)),
        TrimEnd::Tab(tab) => say!(lang, "water tab {}", "pestaña de agua {}", style.short(*tab)),
        TrimEnd::MiterTab { angle, tab } => {
            say!(
                lang,
                "miter {}, water tab {}",
                "inglete {}, pestaña de agua {}",
                degrees(*angle),
                style.short(*tab)
            )
        }
        TrimEnd::Lap(lap) => say!(lang, "lap {}", "traslape {}", style.short(*lap)),
        TrimEnd::Splice { lap, cut } => {
            say!(
                lang,
                "flange cut back {}, lap {}",
                "ala recortada {}, traslape {}",
                style.short(*cut),
                style.short(*lap)
            )
        }
        TrimEnd::Capped => said("capped", "con tapa").of(lang).to_owned(),
    }
}

/// An end other than square, in short; nothing for a square one.
pub fn end_in_short(lang: Language, end: &TrimEnd, style: LengthStyle, boards: bool) -> String {
    let angle = |a: f64| format!("{}°", (a * 10.0).round() / 10.0);
    match end {
        TrimEnd::Square => String::new(),
        TrimEnd::Miter(a) => angle(*a),
        TrimEnd::Tab(_) => said("tab", "pestaña").of(lang).to_owned(),
        TrimEnd::MiterTab { angle: a, .. } => say!(lang, "{} tab", "{} pestaña", angle(*a)),
        TrimEnd::Lap(_) => said("lap", "traslape").of(lang).to_owned(),
        TrimEnd::Splice { .. } => end_on(lang, end, style, boards),
        TrimEnd::Capped => said("cap", "tapa").of(lang).to_owned(),
    }
}

/// A piece and its length, where it is bent: the length is the curve's.
pub fn along_the_curve(lang: Language, piece: &str) -> String {
    say!(lang, "{piece} along the curve", "{piece} por la curva")
}

/// A stock length: `J-channel 12`.
pub fn stock_length(lang: Language, id: &TrimStockId, boards: bool) -> String {
    match TrimStock::of_length(id) {
        Some((of, angle)) => format!("{} {}", stock_at(lang, of, boards, angle), id.number()),
        None => id.to_string(),
    }
}
