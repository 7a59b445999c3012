//! How far from a drawn corner siding ends, and how wide what stands there shows.

use super::root::Job;
use super::trim_style::InsideCorner;
use crate::model::corner::{Corner, CornerKind};
use crate::real::Real;

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
    /// What these are at a corner that is not square.
    angled: Angled,
}

/// What set-backs at corners that are not square follow from.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
struct Angled {
    /// The job's own, of posts outside and inside.
    given: [Option<f64>; 2],
    /// How far a post's faces stand off the sheathing, inches; 0 of boards, which are ripped to the angle
    /// and keep their width.
    pocket: f64,
    /// What stands in inside corners.
    inside: InsideCorner,
    /// Width of a cover over outside corners.
    cover: f64,
    /// An outside post's own, under a cover.
    post: f64,
}

/// Angles between walls that a post is bent to, degrees: beyond them the formulas run away.
const BENT: (f64, f64) = (30.0, 180.0);

impl Angled {
    /// A post bent to an angle keeps its faces and pockets: the edge where its faces meet lies cot(a/2) of
    /// their distance from the sheathing past the corner, where that of a square post lies the whole of
    /// it. Each pocket is off that edge by as much as a square post's. By geometry, for a post bent so:
    /// common practice, no source. Told, and laid, to the tape's sixteenth.
    fn post(self, corner: CornerKind, square: f64, angle: f64) -> f64 {
        let given = self.given[usize::from(corner == CornerKind::Inside)];
        let moved = self.pocket * (1.0 - half_cotangent(angle));
        let bent = if corner == CornerKind::Outside { square + moved } else { square - moved };
        given.unwrap_or((bent.max(0.0) * 16.0).round() / 16.0)
    }

    /// One channel's back stands against the siding of the wall sided first, which lies a pocket off that
    /// wall: its foot meets it where the corner opens, its lip where it closes.
    fn channel(self, angle: f64) -> f64 {
        let (low, high) = BENT;
        let turn = angle.clamp(low, high - low).to_radians();
        let off = if angle > 90.0 {
            self.pocket / turn.sine()
        } else {
            self.pocket * half_cotangent(angle)
        };
        (off * 16.0).round() / 16.0
    }
}

/// Cotangent of half an angle in degrees.
fn half_cotangent(angle: f64) -> f64 {
    1.0 / (angle.clamp(BENT.0, BENT.1) / 2.0).to_radians().tangent()
}

impl SetBacks {
    /// At a corner of the house, on one of its walls.
    pub fn at(self, corner: &Corner, wall: &str) -> f64 {
        let first = corner.is_sided_first(wall);
        let square = self.square(corner.kind, first);
        match corner.angle {
            Some(angle) => self.at_angle((corner.kind, first), angle),
            None => square,
        }
    }

    /// At a corner of so many degrees, on the wall that is sided first there or on the other one.
    pub fn at_angle(self, (corner, sided_first): (CornerKind, bool), angle: f64) -> f64 {
        let (square, angled) = (self.square(corner, sided_first), self.angled);
        match (corner, angled.inside) {
            (CornerKind::Outside, _) => angled.post(corner, angled.post, angle).max(angled.cover),
            (CornerKind::Inside, InsideCorner::Post) => angled.post(corner, square, angle),
            (CornerKind::Inside, InsideCorner::OneChannel) if !sided_first => angled.channel(angle),
            (CornerKind::Inside, _) => square,
        }
    }

    /// At a square corner, on the wall that is sided first there or on the other one.
    pub fn square(self, corner: CornerKind, sided_first: bool) -> f64 {
        match (corner, sided_first) {
            (CornerKind::Outside, _) => self.outside,
            (CornerKind::Inside, false) => self.inside,
            (CornerKind::Inside, true) => self.inside_first,
        }
    }

    /// The greatest at a square corner of this kind.
    pub fn most(self, corner: CornerKind) -> f64 {
        self.square(corner, false).max(self.square(corner, true))
    }
}

impl Job {
    /// Set-backs in force. A cover of outside corners stands over the post and takes the place of its
    /// set-back, unless it is narrower. A J-channel has no face to stand back for: of two, each has its
    /// back in the corner itself; of one, its back stands against the siding of the wall sided first, by
    /// the depth of its pocket.
    pub fn set_backs(&self) -> SetBacks {
        let post = self.post_set_back(CornerKind::Outside);
        let outside = post.max(self.trim.corner_cover);
        let angled = Angled {
            given: [CornerKind::Outside, CornerKind::Inside].map(|k| self.given_angled(k)),
            pocket: if self.siding().receivers.has_pockets() { self.pocket() } else { 0.0 },
            inside: self.trim.inside_corner,
            cover: self.trim.corner_cover,
            post,
        };
        let (inside, inside_first) = match self.trim.inside_corner {
            InsideCorner::Post => {
                let post = self.post_set_back(CornerKind::Inside);
                (post, post)
            }
            InsideCorner::OneChannel => (self.pocket(), 0.0),
            InsideCorner::TwoChannels => (0.0, 0.0),
        };
        SetBacks { outside, inside, inside_first, angled }
    }

    /// The set-back of posts for corners that are not square, where the job gives it, inches.
    pub fn given_angled(&self, corner: CornerKind) -> Option<f64> {
        match corner {
            CornerKind::Outside => self.product.angled_outside_post_set_back,
            CornerKind::Inside => self.product.angled_inside_post_set_back,
        }
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

    /// How wide what stands in a corner of the house shows on each wall, inches: at an angle by as much
    /// more or less as its set-back is.
    pub fn corner_face_at(&self, corner: &Corner) -> f64 {
        let square = self.corner_face(corner.kind);
        let posts =
            corner.kind == CornerKind::Outside || self.trim.inside_corner == InsideCorner::Post;
        let set_backs = self.set_backs();
        match corner.angle {
            Some(angle) if posts => {
                let usual = set_backs.square(corner.kind, false);
                square + set_backs.at_angle((corner.kind, false), angle) - usual
            }
            _ => square,
        }
    }

    /// How wide what stands in a square corner shows on each wall, inches: a post's face over the panels' ends,
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
