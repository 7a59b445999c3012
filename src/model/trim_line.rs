//! Short names of the takeoff's lines of trim.

use super::ids::ItemId;
use super::post_angle::PostAngle;
use super::trim::TrimStock;

impl TrimStock {
    /// The short name of the line of posts for one angle.
    pub fn line_id_at(self, angle: Option<PostAngle>) -> ItemId {
        match angle {
            Some(angle) => format!("{}-{}", self.line_id(), angle.ending()).into(),
            None => self.line_id(),
        }
    }

    /// The short name of its line in the takeoff, whatever the siding is called.
    pub fn line_id(self) -> ItemId {
        match self {
            TrimStock::Starter => "starter-strip",
            TrimStock::OutsidePost => "outside-corner-post",
            TrimStock::InsidePost => "inside-corner-post",
            TrimStock::JChannel => "j-channel",
            TrimStock::FlexibleChannel => "flexible-j-channel",
            TrimStock::FinishTrim => "finish-trim",
            TrimStock::DripCap => "drip-cap",
            TrimStock::Surround => "flat-surround",
            TrimStock::CornerCover => "wide-corner-cover",
            TrimStock::Board => "trim-board",
            TrimStock::Filler => "filler-board",
            TrimStock::TopBase => "top-base",
            TrimStock::TopFace => "top-face-board",
            TrimStock::TopPanel => "top-panel",
            TrimStock::Crown => "crown-molding",
            TrimStock::Flashing => "opening-flashing",
        }
        .into()
    }
}
