//! Trim by name.

use crate::model::ids::TrimStockId;
use crate::model::post_angle::PostAngle;
use crate::model::trim::{TrimEnd, TrimKind, TrimPiece, TrimStock};
use crate::units::LengthStyle;

/// A kind of trim.
pub fn kind(kind: TrimKind) -> &'static str {
    match kind {
        TrimKind::Starter => "starter strip",
        TrimKind::OutsidePost => "outside corner post",
        TrimKind::InsidePost => "inside corner post",
        TrimKind::JambChannel => "J-channel, jamb",
        TrimKind::HeadChannel => "J-channel, head",
        TrimKind::SillChannel => "J-channel, sill",
        TrimKind::BentChannel => "flexible J-channel, bent",
        TrimKind::WallChannel => "J-channel, wall",
        TrimKind::CornerChannel => "J-channel, inside corner",
        TrimKind::RakeChannel => "J-channel, rake",
        TrimKind::RoofChannel => "J-channel, lower roof",
        TrimKind::FinishTrim => "undersill (finish) trim",
        TrimKind::DripCap => "drip cap",
        TrimKind::Surround => "flat surround",
        TrimKind::CornerCover => "wide corner cover",
        TrimKind::Frieze => "frieze board",
        TrimKind::Band => "band board",
        TrimKind::Filler => "filler board",
        TrimKind::TopBase => "top base",
        TrimKind::TopFace => "top face board",
        TrimKind::TopPanel => "top panel",
        TrimKind::Crown => "crown molding",
        TrimKind::SillFlashing => "flashing, sill",
        TrimKind::JambFlashing => "flashing, jamb",
        TrimKind::HeadFlashing => "flashing, head",
    }
}

/// The same on a wall of boards, where boards stand for posts.
pub fn kind_on(of_kind: TrimKind, boards: bool) -> &'static str {
    match of_kind {
        TrimKind::Starter | TrimKind::OutsidePost | TrimKind::InsidePost => {
            stock_on(of_kind.stock(), boards)
        }
        other => kind(other),
    }
}

/// A piece's kind, with the width it is ripped to.
pub fn piece_on(t: &TrimPiece, style: LengthStyle, boards: bool) -> String {
    let kind = kind_on(t.kind, boards);
    t.width.map_or(kind.to_owned(), |w| format!("{kind}, ripped to {}", style.short(w)))
}

/// Most sizes that the key of an elevation names.
const SIZES: usize = 8;

/// Sizes of what is ripped, by marks; none where nothing is.
pub fn sizes<'a>(
    ripped: impl Iterator<Item = &'a TrimPiece>,
    style: LengthStyle,
) -> Option<String> {
    let size = |t: &TrimPiece| {
        t.width.map(|w| format!("{} {} x {}", t.mark, style.short(w), style.length(t.length)))
    };
    let all: Vec<String> = ripped.filter_map(size).collect();
    let more = all.len().saturating_sub(SIZES);
    let rest = if more > 0 { format!(", {more} more in the trim list") } else { String::new() };
    let first = all.iter().take(SIZES).cloned().collect::<Vec<_>>().join(", ");
    (!all.is_empty()).then(|| format!("filler boards: {first}{rest}"))
}

/// A cut length, with the width it is ripped to.
pub fn cut_to(length: &str, t: &TrimPiece, style: LengthStyle) -> String {
    t.width.map_or(length.to_owned(), |w| format!("{length} x {}", style.short(w)))
}

/// What trim is bought as.
pub fn stock(stock: TrimStock) -> &'static str {
    match stock {
        TrimStock::Starter => "starter strip",
        TrimStock::OutsidePost => "outside corner post",
        TrimStock::InsidePost => "inside corner post",
        TrimStock::JChannel => "J-channel",
        TrimStock::FlexibleChannel => "flexible J-channel",
        TrimStock::FinishTrim => "undersill (finish) trim",
        TrimStock::DripCap => "drip cap",
        TrimStock::Surround => "flat surround",
        TrimStock::CornerCover => "wide corner cover",
        TrimStock::Board => "trim board",
        TrimStock::Filler => "filler board",
        TrimStock::TopBase => "top base",
        TrimStock::TopFace => "top face board",
        TrimStock::TopPanel => "top panel",
        TrimStock::Crown => "crown molding",
        TrimStock::Flashing => "flashing at openings",
    }
}

/// The same on a wall of boards, where boards stand for posts.
pub fn stock_on(of_stock: TrimStock, boards: bool) -> &'static str {
    match of_stock {
        TrimStock::Starter if boards => "starter piece",
        TrimStock::OutsidePost if boards => "pair of outside corner boards",
        TrimStock::InsidePost if boards => "inside corner board",
        other => stock(other),
    }
}

/// The same, of posts made for one angle.
pub fn stock_at(of_stock: TrimStock, boards: bool, angle: Option<PostAngle>) -> String {
    let stock = stock_on(of_stock, boards);
    match angle {
        None => stock.to_owned(),
        Some(PostAngle::Degrees(degrees)) => format!("{stock}, {degrees} degrees"),
        Some(PostAngle::Unknown) => format!("{stock}, angle to be told"),
    }
}

/// How trim ends, on a wall of boards or of panels: boards have no flange, and are beveled where
/// lengths of a corner board meet (common practice).
pub fn end_on(of_end: &TrimEnd, style: LengthStyle, boards: bool) -> String {
    match of_end {
        TrimEnd::Splice { lap, .. } if boards => format!("bevel, lap {}", style.short(*lap)),
        other => end(other, style),
    }
}

/// How trim ends.
fn end(end: &TrimEnd, style: LengthStyle) -> String {
    let degrees = |a: f64| (a * 100.0).round() / 100.0;
    match end {
        TrimEnd::Square => "square".to_owned(),
        TrimEnd::Miter(angle) => format!("miter {}", degrees(*angle)),
        TrimEnd::Tab(tab) => format!("water tab {}", style.short(*tab)),
        TrimEnd::MiterTab { angle, tab } => {
            format!("miter {}, water tab {}", degrees(*angle), style.short(*tab))
        }
        TrimEnd::Lap(lap) => format!("lap {}", style.short(*lap)),
        TrimEnd::Splice { lap, cut } => {
            format!("flange cut back {}, lap {}", style.short(*cut), style.short(*lap))
        }
        TrimEnd::Capped => "capped".to_owned(),
    }
}

/// An end other than square, in short; nothing for a square one.
pub fn end_in_short(end: &TrimEnd, style: LengthStyle, boards: bool) -> String {
    let angle = |a: f64| format!("{}°", (a * 10.0).round() / 10.0);
    match end {
        TrimEnd::Square => String::new(),
        TrimEnd::Miter(a) => angle(*a),
        TrimEnd::Tab(_) => "tab".to_owned(),
        TrimEnd::MiterTab { angle: a, .. } => format!("{} tab", angle(*a)),
        TrimEnd::Lap(_) => "lap".to_owned(),
        TrimEnd::Splice { .. } => end_on(end, style, boards),
        TrimEnd::Capped => "cap".to_owned(),
    }
}

/// A piece and its length, where it is bent: the length is the curve's.
pub fn along_the_curve(piece: &str) -> String {
    format!("{piece} along the curve")
}

/// A stock length: `J-channel 12`.
pub fn stock_length(id: &TrimStockId, boards: bool) -> String {
    match TrimStock::of_length(id) {
        Some((of, angle)) => format!("{} {}", stock_at(of, boards, angle), id.number()),
        None => id.to_string(),
    }
}
