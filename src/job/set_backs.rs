//! How far from a drawn corner siding ends, and how wide what stands there shows.

use super::root::Job;
use super::trim_style::InsideCorner;
use crate::model::corner::CornerKind;

/// How much wider a post's face is than its set-back, inches: the pocket that takes a panel's end,
/// 3/4 in and the end gap. Common practice, no source.
const PAST_SET_BACK: f64 = 1.0;

/// Distance along the wall from a drawn corner to where a panel's end would touch what stands there,
/// inches: the bottom of a post's pocket, the edge of a corner board or cover. The end gap comes on top.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct SetBacks {
    /// At an outside corner.
    pub outside: f64,
    /// At an inside corner; of one J-channel, on the wall that is sided second.
    pub inside: f64,
    /// At an inside corner of one J-channel, on the wall that is sided first, which runs into the
    /// corner.
    pub inside_first: f64,
}

impl SetBacks {
    /// At a corner, on the wall that is sided first there or on the other one.
    pub fn at(self, corner: CornerKind, sided_first: bool) -> f64 {
        match (corner, sided_first) {
            (CornerKind::Outside, _) => self.outside,
            (CornerKind::Inside, false) => self.inside,
            (CornerKind::Inside, true) => self.inside_first,
        }
    }

    /// The greatest at a corner of this kind.
    pub fn most(self, corner: CornerKind) -> f64 {
        self.at(corner, false).max(self.at(corner, true))
    }
}

impl Job {
    /// Set-backs in force. A cover of outside corners stands over the post and takes the place of its
    /// set-back, unless it is narrower. A J-channel has no face to stand back for: of two, each has its
    /// back in the corner itself; of one, its back stands against the siding of the wall sided first, by
    /// the depth of its pocket.
    pub fn set_backs(&self) -> SetBacks {
        let outside = self.post_set_back(CornerKind::Outside).max(self.trim.corner_cover);
        let (inside, inside_first) = match self.trim.inside_corner {
            InsideCorner::Post => {
                let post = self.post_set_back(CornerKind::Inside);
                (post, post)
            }
            InsideCorner::OneChannel => (self.pocket(), 0.0),
            InsideCorner::TwoChannels => (0.0, 0.0),
        };
        SetBacks { outside, inside, inside_first }
    }

    /// The set-back of a post, or the width of a corner board, in force, inches.
    pub fn post_set_back(&self, corner: CornerKind) -> f64 {
        let usual = self.siding().corners;
        match corner {
            CornerKind::Outside => self.given_set_back(corner).unwrap_or(usual.outside),
            CornerKind::Inside => self.given_set_back(corner).unwrap_or(usual.inside),
        }
    }

    /// The set-back of a post, or the width of a corner board, that the job gives, inches.
    pub fn given_set_back(&self, corner: CornerKind) -> Option<f64> {
        let p = &self.product;
        match (corner, self.siding().receivers.has_pockets()) {
            (CornerKind::Outside, true) => p.outside_post_set_back,
            (CornerKind::Outside, false) => p.corner_board,
            (CornerKind::Inside, true) => p.inside_post_set_back,
            (CornerKind::Inside, false) => p.inside_corner_board,
        }
    }

    /// How wide what stands in a corner shows on each wall, inches: a post's face over the panels' ends,
    /// a corner board, a cover, the face of a J-channel.
    pub fn corner_face(&self, corner: CornerKind) -> f64 {
        if corner == CornerKind::Inside && self.trim.inside_corner != InsideCorner::Post {
            return self.trim.channel_face;
        }
        let p = &self.product;
        let given = match corner {
            CornerKind::Outside => p.outside_post_face,
            CornerKind::Inside => p.inside_post_face,
        };
        let post = self.post_set_back(corner);
        let past = if self.siding().receivers.has_pockets() { PAST_SET_BACK } else { 0.0 };
        let face = given.unwrap_or(post + past);
        if corner == CornerKind::Outside { face.max(self.trim.corner_cover) } else { face }
    }
}
