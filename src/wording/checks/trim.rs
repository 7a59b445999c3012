//! What breaks the rules of openings, trim and corners.

use crate::layout::breach::trim::{CornerBreach, OpeningBreach, TrimBreach};
use crate::units::LengthStyle;
use crate::wording::{figure, names, trim};

pub(super) fn opening(breach: &OpeningBreach) -> String {
    match breach {
        OpeningBreach::ChannelsAtBoards => "channels around an opening in boards".to_owned(),
        OpeningBreach::Length { trim } => format!("length of {}", trim::kind(*trim).en),
        OpeningBreach::SideBare { trim, side } => {
            format!("length of its {} without {}", names::edge(*side), trim::kind(*trim).en)
        }
        OpeningBreach::MiteredEnds => "number of mitered ends".to_owned(),
        OpeningBreach::OnAnotherWall => "stands on another wall than the opening".to_owned(),
        OpeningBreach::HeadTabs => "the head channel is not tabbed down at both ends".to_owned(),
        OpeningBreach::JambTab => "the jamb channel is not tabbed over the sill channel".to_owned(),
        OpeningBreach::DripCap => "length of its head without drip cap".to_owned(),
        OpeningBreach::UndersillMissing => {
            "length of cut edge under its sill without undersill (finish) trim".to_owned()
        }
        OpeningBreach::UndersillNeedless => {
            "undersill (finish) trim under its sill, where the siding needs none".to_owned()
        }
        OpeningBreach::UndersillElsewhere => {
            "undersill (finish) trim where there is no sill".to_owned()
        }
        OpeningBreach::OffContour { trim } => {
            format!("{} is not along its outline", trim::kind(*trim).en)
        }
        OpeningBreach::ChannelCount => "number of channels round it".to_owned(),
        OpeningBreach::CornerCut => "miter of a channel at a corner".to_owned(),
        OpeningBreach::CornerTab => {
            "the upper channel at a corner is not tabbed or lapped over the lower".to_owned()
        }
        OpeningBreach::SidingAtCutSide { side } => {
            format!("siding meets its {}, given as cut off", names::opening_side(*side))
        }
    }
}

pub(super) fn trim(breach: &TrimBreach, style: LengthStyle) -> String {
    match breach {
        TrimBreach::SideBare { trim, side_length } => format!(
            "length without {} of a side of {}",
            trim::kind(*trim).en,
            figure::length(*side_length, style)
        ),
        TrimBreach::StarterGap => "gaps beside the starter strip".to_owned(),
        TrimBreach::CoverLength => "length of corner covers beside outside posts".to_owned(),
        TrimBreach::BandLength => "length of band board".to_owned(),
        TrimBreach::BandCap => "length of a band without cap".to_owned(),
        TrimBreach::JointPlaces { joints } => {
            let places: Vec<String> = joints.iter().map(|x| figure::length(*x, style)).collect();
            format!("movement joints at {} are not between its ends, in order", places.join(", "))
        }
        TrimBreach::RunAcrossJoint => "crosses the movement joint at".to_owned(),
        TrimBreach::JointChannel => "no channel beside the movement joint".to_owned(),
        TrimBreach::RakeCut => "cut off square by".to_owned(),
        TrimBreach::Length => "length beside that of its place".to_owned(),
        TrimBreach::OverStock => "longer than its stock".to_owned(),
        TrimBreach::OtherStock => "is cut from stock of another sort".to_owned(),
        TrimBreach::StockFull => "pieces and saw cuts of one stock length".to_owned(),
        TrimBreach::MarkTwice => "another piece of trim has the same mark".to_owned(),
        TrimBreach::Crumb => "too short to cut".to_owned(),
    }
}

pub(super) fn corner(breach: &CornerBreach, style: LengthStyle) -> String {
    match breach {
        CornerBreach::SideCorners { hand } => {
            format!("number of corners its {} side is part of", names::hand(*hand))
        }
        CornerBreach::NamedTwice => "another corner has the same name".to_owned(),
        CornerBreach::Bare => "is on no wall".to_owned(),
        CornerBreach::WallUnknown => "names a wall that is not there".to_owned(),
        CornerBreach::Height { said, walls } | CornerBreach::PostHeight { said, walls } => {
            let walls = walls.map_or("none".to_owned(), |w| figure::span(w, style));
            format!("given heights {}, those of its walls {walls}", figure::span(*said, style))
        }
        CornerBreach::SetBack => "limit of siding from the drawn corner".to_owned(),
        CornerBreach::PieceInPost => "end from the drawn corner, set-back and end gap".to_owned(),
        CornerBreach::TrimInPost => "end from the drawn corner, in what stands there".to_owned(),
        CornerBreach::OneElevation => "one elevation shows all of it".to_owned(),
        CornerBreach::ButtLine => "a butt line meets none around the corner".to_owned(),
        CornerBreach::PostMissing { trim, from, to } => {
            format!("no {} from height {}", trim::kind(*trim).en, figure::span([*from, *to], style))
        }
        CornerBreach::PostSplice => "its splice is not given, or is none".to_owned(),
        CornerBreach::PostCorners => "number of corners it stands at".to_owned(),
        CornerBreach::PostShared { shared_with: None } => {
            "given as not shared with the elevation around the corner".to_owned()
        }
        CornerBreach::PostShared { shared_with: Some(e) } => {
            format!("given as shared with {e}, which does not show the corner")
        }
        CornerBreach::PostAngle => "made for another angle than its corner's".to_owned(),
        CornerBreach::PostTwice => "stands where another post does".to_owned(),
    }
}
