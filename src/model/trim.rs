//! Trim pieces.

use super::ids::{ElevationName, OpeningId, TrimMark, TrimStockId, WallId};
use super::post_angle::PostAngle;
use crate::real::Real;
use serde::{Deserialize, Serialize};

/// How far sill flashing reaches past each jamb, and its height, inches (siding association's manual,
/// accessories).
// TrimFact::SillFlashing.
pub const SILL_PAST: f64 = 9.0;
/// How far jamb flashing runs over the head, inches (siding association's manual, accessories).
// TrimFact::JambFlashing.
pub const JAMB_OVER: f64 = 8.5;

/// Kinds of trim.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, schemars::JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
#[non_exhaustive]
pub enum TrimKind {
    /// Starter strip.
    Starter,
    /// Outside corner post.
    OutsidePost,
    /// Inside corner post.
    InsidePost,
    /// J-channel on a jamb.
    JambChannel,
    /// J-channel over a head, tabbed at both ends.
    HeadChannel,
    /// J-channel under a sill.
    SillChannel,
    /// J-channel bent round the curve of an opening.
    BentChannel,
    /// J-channel at a wall end, under an eave, or at a base off the course line.
    WallChannel,
    /// J-channel in an inside corner, in place of a post.
    CornerChannel,
    /// J-channel along a rake.
    RakeChannel,
    /// J-channel over a lower roof.
    RoofChannel,
    /// Finish trim under a sill or at a wall top.
    FinishTrim,
    /// Drip cap over an opening's head or a band.
    DripCap,
    /// Flat surround of an opening.
    Surround,
    /// Wide cover of an outside corner.
    CornerCover,
    /// Frieze board under a soffit.
    Frieze,
    /// Band board across a wall.
    Band,
    /// Filler board where no siding goes.
    Filler,
    /// Nailed base of a top finish.
    TopBase,
    /// Face board snapped on the base.
    TopFace,
    /// Panel made for the top of a wall.
    TopPanel,
    /// Crown molding at the top of a wall.
    Crown,
    /// Flashing under a sill.
    SillFlashing,
    /// Flashing beside a jamb.
    JambFlashing,
    /// Flashing over a head.
    HeadFlashing,
}

impl TrimKind {
    /// Every kind.
    pub const ALL: [TrimKind; 25] = [
        TrimKind::Starter,
        TrimKind::OutsidePost,
        TrimKind::InsidePost,
        TrimKind::JambChannel,
        TrimKind::HeadChannel,
        TrimKind::SillChannel,
        TrimKind::BentChannel,
        TrimKind::WallChannel,
        TrimKind::CornerChannel,
        TrimKind::RakeChannel,
        TrimKind::RoofChannel,
        TrimKind::FinishTrim,
        TrimKind::DripCap,
        TrimKind::Surround,
        TrimKind::CornerCover,
        TrimKind::Frieze,
        TrimKind::Band,
        TrimKind::Filler,
        TrimKind::TopBase,
        TrimKind::TopFace,
        TrimKind::TopPanel,
        TrimKind::Crown,
        TrimKind::SillFlashing,
        TrimKind::JambFlashing,
        TrimKind::HeadFlashing,
    ];

    /// Whether it lies behind the siding, out of sight, and is no trim to be nailed as such.
    pub fn behind(self) -> bool {
        self.stock() == TrimStock::Flashing
    }

    /// The stock it is cut from: several kinds share J-channel stock.
    pub fn stock(self) -> TrimStock {
        match self {
            TrimKind::Starter => TrimStock::Starter,
            TrimKind::OutsidePost => TrimStock::OutsidePost,
            TrimKind::InsidePost => TrimStock::InsidePost,
            TrimKind::BentChannel => TrimStock::FlexibleChannel,
            TrimKind::FinishTrim => TrimStock::FinishTrim,
            TrimKind::DripCap => TrimStock::DripCap,
            TrimKind::Surround => TrimStock::Surround,
            TrimKind::CornerCover => TrimStock::CornerCover,
            TrimKind::Frieze | TrimKind::Band => TrimStock::Board,
            TrimKind::Filler => TrimStock::Filler,
            TrimKind::TopBase => TrimStock::TopBase,
            TrimKind::TopFace => TrimStock::TopFace,
            TrimKind::TopPanel => TrimStock::TopPanel,
            TrimKind::Crown => TrimStock::Crown,
            TrimKind::SillFlashing | TrimKind::JambFlashing | TrimKind::HeadFlashing => {
                TrimStock::Flashing
            }
            TrimKind::JambChannel
            | TrimKind::HeadChannel
            | TrimKind::SillChannel
            | TrimKind::WallChannel
            | TrimKind::CornerChannel
            | TrimKind::RakeChannel
            | TrimKind::RoofChannel => TrimStock::JChannel,
        }
    }
}

/// What trim is bought as.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, schemars::JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
#[non_exhaustive]
pub enum TrimStock {
    /// Starter strip.
    Starter,
    /// Outside corner post.
    OutsidePost,
    /// Inside corner post.
    InsidePost,
    /// J-channel.
    JChannel,
    /// J-channel made to be bent, for curves.
    FlexibleChannel,
    /// Finish trim.
    FinishTrim,
    /// Drip cap.
    DripCap,
    /// Flat surround.
    Surround,
    /// Wide corner cover.
    CornerCover,
    /// Trim board, for friezes and bands.
    Board,
    /// Filler board, ripped to the width of its place.
    Filler,
    /// Base of a top finish.
    TopBase,
    /// Face board of a top finish.
    TopFace,
    /// Top panel.
    TopPanel,
    /// Crown molding.
    Crown,
    /// Flashing at openings, from the roll.
    Flashing,
}

impl TrimStock {
    /// Every stock.
    pub const ALL: [TrimStock; 16] = [
        TrimStock::Starter,
        TrimStock::OutsidePost,
        TrimStock::InsidePost,
        TrimStock::JChannel,
        TrimStock::FlexibleChannel,
        TrimStock::FinishTrim,
        TrimStock::DripCap,
        TrimStock::Surround,
        TrimStock::CornerCover,
        TrimStock::Board,
        TrimStock::Filler,
        TrimStock::TopBase,
        TrimStock::TopFace,
        TrimStock::TopPanel,
        TrimStock::Crown,
        TrimStock::Flashing,
    ];

    /// Its short name.
    pub fn slug(self) -> &'static str {
        match self {
            TrimStock::Starter => "starter",
            TrimStock::OutsidePost => "outside-post",
            TrimStock::InsidePost => "inside-post",
            TrimStock::JChannel => "j-channel",
            TrimStock::FlexibleChannel => "flexible-channel",
            TrimStock::FinishTrim => "finish-trim",
            TrimStock::DripCap => "drip-cap",
            TrimStock::Surround => "surround",
            TrimStock::CornerCover => "corner-cover",
            TrimStock::Board => "board",
            TrimStock::Filler => "filler",
            TrimStock::TopBase => "top-base",
            TrimStock::TopFace => "top-face",
            TrimStock::TopPanel => "top-panel",
            TrimStock::Crown => "crown",
            TrimStock::Flashing => "flashing",
        }
    }

    /// The name of one of its stock lengths, counted from 1, of posts for one angle.
    pub fn length_id(self, angle: Option<PostAngle>, number: usize) -> TrimStockId {
        match angle {
            Some(angle) => format!("{}-{}-{number}", self.slug(), angle.ending()).into(),
            None => format!("{}-{number}", self.slug()).into(),
        }
    }

    /// What a stock length is of, and the angle it is made for; `None` for a name that is none.
    pub fn of_length(id: &TrimStockId) -> Option<(TrimStock, Option<PostAngle>)> {
        let (name, _) = id.rsplit_once('-')?;
        let of = |slug: &str| TrimStock::ALL.into_iter().find(|s| s.slug() == slug);
        let square = of(name).map(|stock| (stock, None));
        square.or_else(|| {
            let (slug, ending) = name.rsplit_once('-')?;
            Some((of(slug)?, Some(PostAngle::of_ending(ending)?)))
        })
    }
}

/// How a trim piece ends.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, schemars::JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[non_exhaustive]
pub enum TrimEnd {
    /// Cut square.
    Square,
    /// Mitered, degrees off square.
    Miter(f64),
    /// A water tab bent down into the channel below, so that water runs over and not behind.
    Tab(f64),
    /// Mitered, degrees off square, with a water tab.
    MiterTab {
        /// Degrees off square.
        angle: f64,
        /// Length of the tab.
        tab: f64,
    },
    /// Flange cut back and lapped over the next length.
    Lap(f64),
    /// The foot of an upper length of a post: its flange cut back, its face lapped over the length
    /// below; what the cut is longer than the lap is left to move.
    Splice {
        /// How far the face laps.
        lap: f64,
        /// How much of the nail flange is cut off.
        cut: f64,
    },
    /// Closed with a cap: the foot of a post that stops over an overhang.
    Capped,
}

/// One length of trim in its place.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, schemars::JsonSchema)]
pub struct TrimPiece {
    /// Mark, unique in the house.
    pub mark: TrimMark,
    /// Kind.
    pub kind: TrimKind,
    /// Elevation it is drawn on.
    pub elevation: ElevationName,
    /// Wall.
    pub wall: WallId,
    /// Opening it frames.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub opening: Option<OpeningId>,
    /// From, elevation inches.
    pub from: [f64; 2],
    /// To.
    pub to: [f64; 2],
    /// The line it is bent along, from `from` to `to`, point by point; none where it is straight.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub path: Vec<[f64; 2]>,
    /// Cut length, tabs and laps included.
    pub length: f64,
    /// Width it is ripped to, inches: of filler boards.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub width: Option<f64>,
    /// The angle it is made for: of posts and covers of corners that are not square.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub angle: Option<PostAngle>,
    /// Its ends: at `from`, at `to`.
    pub ends: [TrimEnd; 2],
    /// Stock length it is cut from: `J-channel 12`.
    pub stock: TrimStockId,
    /// Elevation where the other side of the same corner post is drawn; the post is counted here.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shared_with: Option<ElevationName>,
}

impl TrimPiece {
    /// The line it lies along, point by point.
    pub fn line(&self) -> Vec<[f64; 2]> {
        if self.path.len() < 2 { vec![self.from, self.to] } else { self.path.clone() }
    }

    /// The place at a share of its way, 0 at `from`, 1 at `to`.
    pub fn place(&self, share: f64) -> [f64; 2] {
        let line = self.line();
        let reach = |w: &[[f64; 2]]| (w[1][0] - w[0][0]).hypotenuse(w[1][1] - w[0][1]);
        let mut left = share * line.windows(2).map(reach).sum::<f64>();
        for w in line.windows(2) {
            let long = reach(w);
            if left <= long && long > 0.0 {
                let k = left / long;
                return [w[0][0] + (w[1][0] - w[0][0]) * k, w[0][1] + (w[1][1] - w[0][1]) * k];
            }
            left -= long;
        }
        self.to
    }
}

/// Undersill trim of an opening.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, schemars::JsonSchema)]
pub struct SillTrim {
    /// Its mark.
    pub mark: TrimMark,
    /// The opening it goes under.
    pub opening: OpeningId,
}
